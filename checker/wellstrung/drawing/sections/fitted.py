"""One round size in another: a core in its rope, a line in its crimp, an eye in a clasp's eye."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from wellstrung.common.places import Place
from wellstrung.drawing import Figure, hatching
from wellstrung.drawing.sections import rounds
from wellstrung.drawing.sections.case import Case, clearance, marks, mm, size, with_range
from wellstrung.drawing.sections.frame import CLOSE, FINE, SCALES, Section
from wellstrung.model.parts import Role
from wellstrung.quantity.value import Quantity
from wellstrung.rulebook import CoreInRope, Eyes, EyesMeet, StrandInCrimp


class _Hole(Struct, frozen=True):
    """A round hole: what it and what is in it are called, its size, and how far its wall goes."""

    word: str
    holds: str
    size: Quantity
    quantity: str
    outside: float | None
    look: str = "metal"


def in_rope(case: Case[CoreInRope]) -> Figure:
    """A core in the bore of the rope that it fills."""
    core, rope = case.join.core, case.join.rope
    outside = case.of(rope, "outside")
    hole = _Hole(
        "bore", "core", case.of(rope, "inside"), f"{rope.name}.inside", outside.middle, "work"
    )
    thing = rounds.Thing(
        f"the core `{core.name}`", case.of(core, "outside"), f"{core.name}.outside", "metal"
    )
    title = f"core `{core.name}` in rope `{rope.name}`"
    return _draw(case, title, hole, [thing], ("core-in-rope",), (rope.key.place,))


def in_crimp(case: Case[StrandInCrimp]) -> Figure:
    """A strand's line in its crimp, there and back."""
    crimp, strand = case.join.crimp, case.join.strand
    outside = case.perhaps(crimp, "outside")
    inside = case.of(crimp, "inside")
    hole = _Hole(
        "hole", "line", inside, f"{crimp.name}.inside", outside.middle if outside else None
    )
    line = rounds.Thing("the line", case.of(strand, "line"), f"{strand.name}.line", "thread")
    title = f"line of `{strand.name}`, there and back, in crimp `{crimp.name}`"
    places = (strand.place_of("thread"),)
    return _draw(case, title, hole, [line, line], ("crimp-bore",), places, FINE)


def in_eye(case: Case[EyesMeet]) -> Figure | None:
    """An eye linked straight into a clasp's eye: the thicker wall in the narrower hole."""
    one, other = case.join.one, case.join.other
    if not (isinstance(one, Eyes) and isinstance(other, Eyes)):
        return None
    if {Role.CLASP, Role.BAIL}.isdisjoint((one.part.kind.role, other.part.kind.role)):
        return None
    ways = ((one, other), (other, one))
    outer, inner = min(ways, key=lambda way: _left(case, *way))
    hole, wall = case.get(outer.quantity("hole")), case.get(outer.quantity("wire"))
    rim = hole.middle + 2 * wall.middle
    thing = rounds.Thing(
        f"the wall of {inner.words}", case.get(inner.quantity("wire")), inner.quantity("wire"),
        "metal",
    )  # fmt: skip
    return _draw(
        case,
        f"{inner.words} linked into {outer.words}",
        _Hole("hole", "wall", hole, outer.quantity("hole"), rim),
        [thing],
        ("clasp-eye",),
        [eyes.part.place_of(*eyes.path, "hole") for eyes in (one, other)],
        CLOSE,
    )


def _left(case: Case[EyesMeet], outer: Eyes, inner: Eyes) -> float:
    return case.get(outer.quantity("hole")).middle - case.get(inner.quantity("wire")).middle


def _draw(
    case: Case[CoreInRope] | Case[StrandInCrimp] | Case[EyesMeet],
    title: str,
    hole: _Hole,
    things: Sequence[rounds.Thing],
    rules: Sequence[str],
    places: Sequence[Place],
    scales: Sequence[float] = SCALES,
) -> Figure:
    taken = rounds.together(things)
    wide = max(hole.size.middle, taken, hole.outside or 0.0)
    section = Section(wide, wide, scales)
    opening = hatching.circle(0, 0, hole.size.middle / 2)
    if hole.outside is not None and hole.outside > hole.size.middle:
        section.cut([hatching.circle(0, 0, hole.outside / 2), opening], hole.look)
    held = rounds.pack(section, 0, 0, hole.size.middle, things, letters=False)
    section.round_bands(0, 0, hole.size)
    section.canvas.circle(0, 0, hole.size.middle / 2, "edge", hole.quantity)
    if len(things) > 1:
        section.taken(0, 0, taken)
    said = case.said(rules, *places)
    if said:
        section.flag(*held.furthest, marks(said))
    thing, alone = things[0], len(things) == 1
    rows = [(hole.size.middle, f"{hole.word} {size(hole.size)}", hole.quantity)]
    if alone:
        rows.append((taken, f"{hole.holds} {size(thing.thick)}", thing.quantity))
    else:
        rows.append((taken, f"together {mm(taken)}", ""))
    for width, words, quantity in sorted(rows):
        section.across(-width / 2, width / 2, 0, words, quantity)
    count = "" if alone else f"{len(things)} x "
    found = f"{hole.word} {with_range(hole.size)}; {count}{thing.words} {with_range(thing.thick)}"
    if alone:
        found += f"; {clearance(hole.size, thing.thick)}"
    return case.figure(section, title, found, f"a {hole.word} of {mm(taken)} or wider", said)
