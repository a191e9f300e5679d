"""One round size in another: a core in its rope, a line in its crimp, an eye in a clasp's eye."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from wellstrung.common.places import Place
from wellstrung.drawing import Figure, marks
from wellstrung.drawing.sections import rounds
from wellstrung.drawing.sections.case import Case, clearance, mm, with_range
from wellstrung.drawing.sections.rounds import Hole, Thing
from wellstrung.drawing.sections.section import Section
from wellstrung.model.parts import Role
from wellstrung.quantity.arithmetic import total
from wellstrung.rulebook import CoreInRope, Eyes, EyesMeet, StrandInCrimp


def in_rope(case: Case[CoreInRope]) -> Figure:
    """A core in the bore of the rope that it fills."""
    core, rope = case.join.core, case.join.rope
    hole = rounds.hole_of(case, rope, "inside", word="bore", look="work")
    thing = rounds.thing_of(case, core, "outside", f"the core `{core.name}`", "metal")
    title = f"core `{core.name}` in rope `{rope.name}`"
    return _draw(case, title, hole, [thing], "core", "core-in-rope", [rope.key.place])


def in_crimp(case: Case[StrandInCrimp]) -> Figure:
    """A strand's line in its crimp, there and back."""
    crimp, strand = case.join.crimp, case.join.strand
    hole = rounds.hole_of(case, crimp, "inside", word="hole")
    line = rounds.thing_of(case, strand, "line", "the line", "thread")
    title = f"line of `{strand.name}`, there and back, in crimp `{crimp.name}`"
    places = [strand.place_of("thread")]
    return _draw(case, title, hole, [line, line], "line", "crimp-bore", places, marks.FINE)


def in_eye(case: Case[EyesMeet]) -> Figure | None:
    """An eye linked straight into a clasp's eye: the thicker wall in the narrower hole."""
    one, other = case.join.one, case.join.other
    if not (isinstance(one, Eyes) and isinstance(other, Eyes)):
        return None
    if {Role.CLASP, Role.BAIL}.isdisjoint((one.part.kind.role, other.part.kind.role)):
        return None
    ways = ((one, other), (other, one))
    outer, inner = min(ways, key=lambda way: _left(case, *way))
    hole, wall = (outer.quantity(what) for what in ("hole", "wire"))
    rim = total("rim", "mm", [case.get(name) for name in (wall, hole, wall)])
    wire = inner.quantity("wire")
    return _draw(
        case,
        f"{inner.words} linked into {outer.words}",
        Hole("hole", case.get(hole), hole, rim),
        [Thing(f"the wall of {inner.words}", case.get(wire), wire, "metal")],
        "wall",
        "clasp-eye",
        [eyes.part.place_of(*eyes.path, "hole") for eyes in (one, other)],
        marks.CLOSE,
    )


def _left(case: Case[EyesMeet], outer: Eyes, inner: Eyes) -> float:
    return case.get(outer.quantity("hole")).middle - case.get(inner.quantity("wire")).middle


def _draw(
    case: Case[Any],
    title: str,
    hole: Hole,
    things: Sequence[Thing],
    word: str,
    rule: str,
    places: Sequence[Place],
    most: float = marks.USUAL,
) -> Figure:
    """Things of one size in a hole; `word` is the short name of one."""
    taken = rounds.together(things)
    wide = hole.widest(taken)
    section = Section(wide, wide, most)
    held = rounds.in_hole(section, hole, things, letters=False)
    said = case.said((rule,), *places)
    rounds.finish(section, held, said, hole, rounds.thing_rows(things, word))
    thing, alone = things[0], len(things) == 1
    count = "" if alone else f"{len(things)} x "
    found = f"{hole.word} {with_range(hole.size)}; {count}{thing.words} {with_range(thing.thick)}"
    if alone:
        found += f"; {clearance(hole.size, thing.thick)}"
    return case.figure(section, title, found, f"a {hole.word} of {mm(taken)} or wider", said)
