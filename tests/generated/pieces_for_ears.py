"""Earrings: on wires and posts, with panels, pins, bezels, chain and drops; and key rings."""

from __future__ import annotations

from typing import Any

from generated import chains, ears, findings, hangers, strung, woven
from generated.draft import Draft


def earrings(draft: Draft) -> None:
    """A pair of earrings."""
    wire = ears.ear_post(draft) if draft.chance(30) else ears.ear_wire(draft)
    way = draft.pick("panel", "pin", "charm", "chain", "bezel", "drops")
    {"panel": _panel, "pin": _pin, "charm": _charm, "chain": _chain, "bezel": _bezel,
     "drops": _drops}[way](draft, wire)  # fmt: skip
    draft.head |= {"piece": "earrings"}
    if draft.chance(85):
        draft.head["makes"] = 2
    draft.maybe(75, draft.head, wearer={"age": draft.pick("adult", "adult", "adult", "child")})


def _held(draft: Draft, wire: str, *more: Any) -> None:
    draft.run = [wire, *more]


def _panel(draft: Draft, wire: str) -> None:
    panel = woven.panel(draft, draft.whole(5, 12))
    draft.step("make", "weave", panel.name)
    draft.step("finish", "finish thread", panel.name)
    shut = findings.ring(draft, inside=(2.4, 3.2), closing=draft.pick("soldered", "closed"))
    _held(draft, wire, shut.name, panel.name)
    draft.step("sew", "sew", shut.name, to=panel.name)
    draft.step("hang", "hang", shut.name, from_=wire)
    if draft.chance(75):
        hangers.fringe(draft, panel.name, "first edge", panel.across, panel.bead)


def _pin(draft: Draft, wire: str) -> None:
    pin = strung.wire_link(draft, draft.pick("head pin", "eye pin"))
    draft.step("wire", "wrap loop", pin.name)
    if draft.chance(50):
        link = strung.wire_link(draft, "link")
        draft.step("wire", "wrap loop", link.name, times=2)
        _held(draft, wire, link.name)
        hangers.hang(draft, pin.name, link.name)
    elif draft.chance(50):
        _held(draft, wire, pin.name)
        draft.step("hang", "hang", pin.name, from_=wire)
    else:
        _held(draft, wire)
        hangers.hang(draft, pin.name, wire)


def _charm(draft: Draft, wire: str) -> None:
    charm = findings.pendant(draft, grams=draft.between(1, 6, 0.5), bottom=draft.pick(0, 1, 3, 5))
    _held(draft, wire)
    if draft.chance(60):
        ring = findings.ring(draft, inside=(2.6, 3.6))
        hangers.hang(draft, charm.name, wire, ring.name)
    else:
        hangers.hang(draft, charm.name, wire)
    hangers.underneath(draft, charm)


def _chain(draft: Draft, wire: str) -> None:
    piece = chains.piece(draft, draft.between(15, 50, 5))
    draft.step("cut", "cut", piece.name)
    ring = findings.ring(draft, inside=(3.0, 4.0))
    _held(draft, wire)
    hangers.hang(draft, piece.name, wire, ring.name, draft.pick(1, 1, 3))
    if draft.chance(50):
        charm = findings.pendant(draft, grams=1.0)
        eyes = {"part": piece.name, "eyes": draft.pick("last link", "last link", "first link")}
        hangers.hang(draft, charm.name, eyes, ring.name, draft.hung[-1].get("times", 1))


def _bezel(draft: Draft, wire: str) -> None:
    setting = woven.bezel(draft)
    draft.step("make", "weave", setting.name)
    draft.step("finish", "finish thread", setting.name)
    ring = findings.ring(draft, inside=(3.0, 4.0), closing=draft.pick("soldered", "open"))
    _held(draft, wire, ring.name, setting.name)
    draft.step("sew", "sew", ring.name, to=setting.name)
    draft.step("hang", "hang", ring.name, from_=wire)


def _drops(draft: Draft, wire: str) -> None:
    drop = strung.drop(draft, legs=draft.pick(0, 3))
    shut = findings.ring(draft, inside=(3.0, 5.0), closing=draft.pick("closed", "soldered"))
    _held(draft, wire, shut.name)
    draft.step("hang", "hang", shut.name, from_=wire)
    times = drop.count or draft.pick(1, 2, 3)
    hangers.hang(draft, drop.name, shut.name, "thread", times, stage="fringe", passes=2)


def key_ring(draft: Draft) -> None:
    """A split ring with charms and chain."""
    ring = findings.ring(draft, inside=(18.0, 24.0), closing="split", wire=1.6)
    draft.run = [ring.name]
    piece = chains.piece(draft, draft.between(20, 60, 5))
    draft.step("cut", "cut", piece.name)
    small = findings.ring(draft)
    hangers.hang(draft, piece.name, ring.name, small.name)
    charm = findings.pendant(draft)
    hangers.hang(draft, charm.name, {"part": piece.name, "eyes": "last link"}, small.name)
    draft.head |= {"piece": draft.pick("key ring", "key ring", "pendant", "brooch")}


ALL = (earrings, earrings, earrings, key_ring)
