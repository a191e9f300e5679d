"""A ring's wire in the hole of an eye, cut along the hole: a curved wire in a straight hole.

Pulled, the inside of the ring lies on both edges of the wall below; above the wire is what the hole
leaves over the size that `rings.hole_needed` gives, so the drawing shows the margin of the rule.
"""

from __future__ import annotations

import math

from msgspec import Struct

from wellstrung.drawing import Figure, marks, outlines
from wellstrung.drawing.canvas import Spot
from wellstrung.drawing.sections import rounds
from wellstrung.drawing.sections.case import Case, marks_of, mm, size, with_range
from wellstrung.drawing.sections.section import Section
from wellstrung.formulas import circles, rings
from wellstrung.quantity.value import Quantity
from wellstrung.rulebook import RingThroughEye


class _Fit(Struct, frozen=True):
    """The sizes of a ring and of the eye that it goes through."""

    join: RingThroughEye
    wire: Quantity
    inside: Quantity
    hole: Quantity
    wall: Quantity
    through: Quantity

    def hole_needed(self, wire: float) -> float:
        """The hole that so thick a wire needs, bent like the ring, mm; infinite if it cannot go."""
        inside, through = self.inside.middle, self.through.middle
        return math.inf if through > inside else rings.hole_needed(wire, inside, through)

    @property
    def is_round(self) -> bool:
        """Whether the eye is of round wire, and no thicker to go through than its wall."""
        return math.isclose(self.through.middle, self.wall.middle, rel_tol=1e-6)


def draw(case: Case[RingThroughEye]) -> Figure:
    """The ring from its side, through its eye; several rings in one eye also from the front."""
    join = case.join
    ring, eyes = join.ring, join.eyes
    hole, wall, through = (case.get(eyes.quantity(what)) for what in ("hole", "wire", "through"))
    fit = _Fit(join, case.of(ring, "wire"), case.of(ring, "inside"), hole, wall, through)
    wire, inside = fit.wire, fit.inside
    outside = inside.middle + 2 * wire.middle
    several = join.rings > 1
    section = Section(
        max(outside, through.middle) + (1.5 * hole.middle + 2 * wall.middle) * several,
        outside + hole.middle + wall.middle,
        marks.CLOSE,
    )
    middle = _side(section, fit)
    half = hole.middle / 2
    section.down(-half, half, through.middle / 2, f"hole {size(hole)}", eyes.quantity("hole"))
    rim = inside.middle / 2
    section.across(rim, rim + wire.middle, middle, f"wire {size(wire)}", f"{ring.name}.wire")
    needed, tightest = fit.hole_needed(wire.middle), (0.0, -half)
    if several:
        needed, tightest = _front(section, fit)
    if not fit.is_round:
        thick = through.middle / 2
        section.across(-thick, thick, half, f"through {size(through)}", eyes.quantity("through"))
    section.rows([(inside.middle, f"inside {size(inside)}", f"{ring.name}.inside")])
    said = case.said(("ring-through-eye",), eyes.part.place_of(*eyes.path, "hole"))
    if said:
        section.mark(*tightest, marks_of(said))
    wires = f"wire {with_range(wire)}" if not several else f"{join.rings} wires of {size(wire)}"
    return case.figure(
        section,
        f"ring `{ring.name}` through {eyes.words}",
        f"hole {with_range(hole)}; {wires}, bent to {size(inside)} inside",
        f"a hole of {mm(needed)}" if needed < math.inf else "an eye less thick to go through",
        said,
    )


def _side(section: Section, fit: _Fit) -> float:
    """The ring in its own plane with the walls of the eye cut; the height of its middle.

    The rule takes an eye of round wire for a straight hole as thick as the wire.
    """
    r, w, h = fit.inside.middle / 2, fit.through.middle, fit.hole.middle
    wire, wall = fit.wire.middle, fit.wall.middle
    middle = h / 2 + math.sqrt(max(r * r - w * w / 4, 0.0))
    ring = outlines.rim(0, middle, 2 * (r + wire), 2 * r)
    section.canvas.area(ring, "ring")
    section.ranges(fit.hole, -w / 2, w / 2)
    for side in (-1, 1):
        level = side * (h + wall) / 2
        plate = outlines.box(-w / 2, level - wall / 2, w, wall)
        if fit.is_round:
            section.cut([outlines.circle(0, level, w / 2)])
            section.patterned([plate], "straight")
        else:
            section.cut([plate])
        # the part of the wall that lies in the ring's wire: all but what lies beside it
        around = outlines.box(-2 * w, -4 * (r + h), 4 * w, 8 * (r + h))
        section.clash([plate], [around, *ring])
    section.canvas.line(-w, 0, w, 0, "axis")
    return middle


def _front(section: Section, fit: _Fit) -> tuple[float, Spot]:
    """The wires of several rings in the eye, from the front; the hole they need, and where."""
    hole, wall = fit.hole.middle, fit.wall.middle
    y = 0.0
    x = section.canvas.extent[2] + section.paper(4) + hole / 2 + wall
    section.cut(outlines.rim(x, y, hole + 2 * wall, hole))
    thing = rounds.Thing("a wire", fit.wire, f"{fit.join.ring.name}.wire", "metal")
    held = rounds.pack(section, x, y, hole, [thing] * fit.join.rings, letters=False)
    section.canvas.circle(x, y, hole / 2, "edge", fit.join.eyes.quantity("hole"))
    bundle = fit.wire.middle * circles.equal_ratio(fit.join.rings)
    section.round_pattern(x, y, bundle, "taken")
    return fit.hole_needed(bundle), held.furthest
