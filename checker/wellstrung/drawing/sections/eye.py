"""A ring's wire in the hole of an eye, cut along the hole: a curved wire in a straight hole.

Pulled, the inside of the ring lies on both edges of the wall below; what is left above the wire is
the hole less what `rings.hole_needed` asks for, so that the drawing shows the margin of the rule.
"""

from __future__ import annotations

import math

from wellstrung.drawing import Figure, hatching
from wellstrung.drawing.sections import rounds
from wellstrung.drawing.sections.case import Case, drawable, marks, mm, size, with_range
from wellstrung.drawing.sections.frame import CLOSE, Section
from wellstrung.formulas import circles, rings
from wellstrung.quantity.value import Quantity
from wellstrung.rulebook import RingThroughEye


def draw(case: Case[RingThroughEye]) -> Figure:
    """The ring from its side, through its eye; several rings in one eye also from the front."""
    join = case.join
    wire, inside = case.of(join.ring, "wire"), case.of(join.ring, "inside")
    hole, wall = case.get(join.eyes.quantity("hole")), case.get(join.eyes.quantity("wire"))
    through = case.get(join.eyes.quantity("through"))
    outside = inside.middle + 2 * wire.middle
    several = join.rings > 1
    section = Section(
        max(outside, through.middle) + (1.5 * hole.middle + 2 * wall.middle) * several,
        outside + hole.middle + wall.middle,
        CLOSE,
    )
    needed = _side(section, wire, inside, hole, wall, through, f"{join.ring.name}.wire")
    section.down(
        -hole.middle / 2, hole.middle / 2, through.middle / 2, f"hole {size(hole)}",
        join.eyes.quantity("hole"),
    )  # fmt: skip
    tightest = (0.0, -hole.middle / 2)
    if several:
        needed, tightest = _front(section, join, wire, inside, hole, wall, through)
    if through is not wall and through.middle != wall.middle:
        section.across(
            -through.middle / 2, through.middle / 2, hole.middle / 2,
            f"through {size(through)}", join.eyes.quantity("through"),
        )  # fmt: skip
    section.across(
        -inside.middle / 2, inside.middle / 2, 0, f"inside {size(inside)}",
        f"{join.ring.name}.inside",
    )  # fmt: skip
    said = case.said(("ring-through-eye",), join.eyes.part.place_of(*join.eyes.path, "hole"))
    if said:
        section.flag(*tightest, marks(said))
    wires = f"wire {with_range(wire)}" if not several else f"{join.rings} wires of {size(wire)}"
    return case.figure(
        section,
        f"ring `{join.ring.name}` through {join.eyes.words}",
        f"hole {with_range(hole)}; {wires}, bent to {size(inside)} inside",
        f"a hole of {mm(needed)}" if needed < math.inf else "an eye less thick to go through",
        said,
    )


def _side(
    section: Section,
    wire: Quantity,
    inside: Quantity,
    hole: Quantity,
    wall: Quantity,
    through: Quantity,
    quantity: str,
) -> float:
    """The ring in its own plane with the walls of the eye cut; the hole that one wire needs.

    An eye of round wire is reckoned as a straight hole as thick as the wire, as the rule does.
    """
    r, w, h = inside.middle / 2, through.middle, hole.middle
    middle = h / 2 + math.sqrt(max(r * r - w * w / 4, 0.0))
    ring = [hatching.circle(0, middle, one) for one in (r + wire.middle, r)]
    section.canvas.area(ring, "ring")
    section.strips(hole, -w / 2, w / 2)
    for side in (-1, 1):
        level = side * (h + wall.middle) / 2
        plate = hatching.box(-w / 2, level - wall.middle / 2, w, wall.middle)
        if math.isclose(w, wall.middle, rel_tol=1e-6):
            section.cut([hatching.circle(0, level, w / 2)])
            section.reckoned([plate])
        else:
            section.cut([plate])
        # what of the wall lies in the ring's wire: less all that lies beside it
        around = hatching.box(-2 * w, -4 * (r + h), 4 * w, 8 * (r + h))
        section.clash([plate], [around, *ring])
    section.canvas.line(-w, 0, w, 0, "axis")
    section.across(r, r + wire.middle, middle, f"wire {size(wire)}", quantity)
    return math.inf if w > inside.middle else rings.hole_needed(wire.middle, inside.middle, w)


def _front(
    section: Section,
    join: RingThroughEye,
    wire: Quantity,
    inside: Quantity,
    hole: Quantity,
    wall: Quantity,
    through: Quantity,
) -> tuple[float, tuple[float, float]]:
    """The wires of several rings in the eye, from the front; the hole they need, and where."""
    y = 0.0
    x = section.box[2] + section.paper(4) + hole.middle / 2 + wall.middle
    rims = [hatching.circle(x, y, hole.middle / 2 + wall.middle)]
    section.cut([*rims, hatching.circle(x, y, hole.middle / 2)])
    things = [rounds.Thing("a wire", wire, f"{join.ring.name}.wire", "metal")] * join.rings
    held = rounds.pack(section, x, y, hole.middle, things, letters=False)
    section.canvas.circle(x, y, hole.middle / 2, "edge", join.eyes.quantity("hole"))
    bundle = drawable(wire).middle * circles.equal_ratio(join.rings)
    section.taken(x, y, bundle)
    needed = rings.hole_needed(bundle, inside.middle, through.middle)
    return math.inf if through.middle > inside.middle else needed, held.furthest
