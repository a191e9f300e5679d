"""Kinds that a plugin brings are judged by what they are, with no word of them anywhere else."""

from __future__ import annotations

import types
from collections.abc import Callable, Sequence
from typing import Any

import pytest
from msgspec.structs import replace

from wellstrung import builtin
from wellstrung.judging.checker import Checker
from wellstrung.kinds.chain import CHAIN_PIECE
from wellstrung.kinds.clasp import CLASP
from wellstrung.kinds.connector import CONNECTOR
from wellstrung.kinds.ear_wire import EAR_WIRE
from wellstrung.kinds.jump_ring import JUMP_RING
from wellstrung.kinds.wire_link import WIRE_LINK
from wellstrung.model.parts import Kind, Traits
from wellstrung.plugins import host
from wellstrung.plugins.hooks import hookimpl

#: what the built-in kinds are, under names that nothing else knows
OWN = {
    "quick ring": JUMP_RING,
    "snap lock": CLASP,
    "stick": CONNECTOR,
    "pin stem": WIRE_LINK,
    "festoon": CHAIN_PIECE,
    "lobe hook": EAR_WIRE,
}
PLAN = """\
plan: 1
title: A plan with parts of our own
piece: bracelet
wearer: {age: adult, wrist: 16 cm}
beads:
  kelp: {type: round, size: 8/0, make: Japanese}
parts:
  lock: {kind: clasp, type: magnetic, mass: 3 g, pull: 1 N, closed_length: 14 mm,
    a: {eye: {hole: 1 mm, wire: 1 mm, opens: no}}, b: {eye: {hole: 2 mm, wire: 1 mm, opens: no}}}
  ring: {kind: jump ring, outside: 5 mm, wire: 1.2 mm, closing: open, metal: brass}
  bar: {kind: connector, length: 60 mm, mass: 2 g,
    eyes: {count: 2, hole: 2 mm, wire: 1 mm, opens: no}, metal: brass}
  stem: {kind: wire link, type: link, wire: 0.8 mm, loop: {hole: 2 mm}, beads: kelp, count: 30,
    length: 40 mm, metal: brass}
  chain: {kind: chain, pattern: [loop], links: {loop: {length: 5 mm, width: 4 mm, wire: 1 mm}},
    links_are: soldered}
  drop: {kind: chain piece, of: chain, links: 3}
  hook: {kind: ear wire, type: post, wire: 1.2 mm, length: 10 mm, eye: {hole: 2 mm, wire: 1 mm}}
  strand: {kind: strand, stitch: strung, beads: kelp, length: 3 cm,
    thread: {type: fused, rating: 6 lb}}
run: [lock.a, ring, bar, ring, stem, ring, lock.b]
hung:
  - {part: drop, from: bar, by: ring, times: 2}
  - {part: hook, from: strand, by: thread}
work:
  - {do: cut, part: drop}
supplies:
  - {chain: chain, length: 20 cm}
"""


def renamed(name: str, kind: Kind) -> Kind:
    fragment: dict[str, Any] = {**kind.fragment}
    properties = {**fragment["properties"], "kind": {"const": name, "description": "Ours."}}
    return replace(kind, name=name, fragment={**fragment, "properties": properties})


def with_kinds(kinds: Sequence[Kind], installed: host.Host) -> Checker:
    brought: Callable[[], Sequence[Kind]] = lambda: kinds  # noqa: E731 - a hook is a function
    ours = types.SimpleNamespace(wellstrung_kinds=hookimpl(specname="wellstrung_kinds")(brought))
    loaded = host.assemble([("core", builtin), ("ours", ours)])
    return Checker(replace(loaded, rules=installed.rules, owners=installed.owners))


def found(checker: Checker, text: str) -> list[object]:
    """All that the rules say of a plan, but for columns: a longer name moves them."""
    result = checker.check_text(text)
    assert result.readable and not result.failures
    remarks = [(one.rule, one.level, one.parts, one.place.line) for one in result.remarks]
    held = [(kept.rule, kept.parts) for kept in result.held]
    return [*sorted(remarks), *held, *result.unjudged]


@pytest.mark.parametrize("name", OWN)
def test_a_kind_under_another_name_is_judged_alike(name: str, installed: host.Host) -> None:
    kind = OWN[name]
    checker = with_kinds([renamed(name, kind)], installed)
    own = PLAN.replace(f"kind: {kind.name},", f"kind: {name},")
    assert own != PLAN
    assert found(checker, own) == found(Checker(installed), PLAN)


def test_a_trait_of_a_kind_of_ones_own_decides(installed: host.Host) -> None:
    """A snap lock is a clasp; one that is magnetic needs the caution for those with a pacemaker."""
    lock = renamed("snap lock", replace(CLASP, types={}, traits=Traits(magnetic=True)))
    text = PLAN.replace("kind: clasp, type: magnetic", "kind: snap lock, type: hook")
    remarks = with_kinds([lock], installed).check_text(text).remarks
    assert [one.parts for one in remarks if one.rule == "strong-magnet"] == [("lock",)]
