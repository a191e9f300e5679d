"""What hangs: each part below what carries it, by its ring, its eyes or its thread."""

from __future__ import annotations

import math
from collections.abc import Callable
from contextlib import suppress
from functools import cache
from itertools import count, islice

from wellstrung.drawing.canvas import Canvas, Spot, within
from wellstrung.drawing.looks import shape_of
from wellstrung.drawing.looks.rings import ring_on_edge
from wellstrung.drawing.looks.sizes import UNKNOWN, Sizes
from wellstrung.drawing.pen import Bend, Pen
from wellstrung.drawing.piece.stretches import WORKED, Stretch
from wellstrung.model.item import Missing
from wellstrung.model.parts import Part, Role
from wellstrung.model.plan import Hung, Plan
from wellstrung.subjects.base import Eyes
from wellstrung.subjects.counts import made_with, pieces_hung
from wellstrung.subjects.hung import FringeAlong, HungOnEyes, fringes_along, tassels

#: white between things that hang side by side, mm
_AIR = 2.0
#: the most things that are drawn, places of the run and what hangs from them; and the most of one
#: line, fewer where all lines together would be too many
_MOST_THINGS, _MOST = 500, (60, 24, 12, 6, 3, 1)
#: how many lines are named that hang more than is drawn
_MOST_NAMED = 8

#: what is drawn bead by bead, or ring by ring, counts as this many things
_BY_BEADS = 20

#: called once for all that a line hangs: the part, how many, and the spot that a label points to
Show = Callable[[Part, int, float, float, Hung], None]


def counted(plan: Plan, most: int = 1) -> int:
    """How many things a drawing of the piece shows, with up to `most` of what each line hangs."""
    by_source: dict[Part, list[Hung]] = {}
    for line in plan.hung:
        by_source.setdefault(line.source, []).append(line)

    @cache
    def below(part: Part) -> int:
        lines = by_source.get(part, ())
        return sum(min(line.times, most) * (1 + below(line.part)) for line in lines)

    parts = [part for entry in plan.run for part in entry.parts]
    worked = sum(part.kind.role in WORKED or bool(part.traits.of_rings) for part in parts)
    places = sum(entry.linked for entry in plan.run) + _BY_BEADS * worked
    return places + sum(below(part) for part in plan.in_run)


def can_be_seen(plan: Plan) -> bool:
    """Whether a drawing can show the piece, with one at least of what each line hangs."""
    return counted(plan) <= _MOST_THINGS


def _most(plan: Plan) -> int:
    """How many of what each line hangs are drawn: fewer where the lines are many."""
    return next((most for most in _MOST if counted(plan, most) <= _MOST_THINGS), 1)


class Hanging:
    """Draws what hangs from a run, and shows where each thing is.

    `right` is the right end of all that hangs; `bend` the course that the run takes.
    """

    bend: Bend | None = None

    def __init__(self, canvas: Canvas, sizes: Sizes, show: Show, *, upright: bool) -> None:
        self.canvas, self.sizes, self.upright = canvas, sizes, upright
        self.lines, self.most = sizes.plan.hung, _most(sizes.plan)
        self.right = 0.0
        self._show = show
        self._shown: set[tuple[Part, Hung]] = set()

    def width(self, line: Hung) -> float:
        """How wide all that a line hangs is, side by side."""
        drawn = min(pieces_hung(line), self.most)
        if self._tassel(line) is not None:
            return (drawn - 1) * self._step(line, drawn) + shape_of(line.part).width(
                self.sizes, line.part
            )
        return drawn * (self._with_all_below(line.part) + _AIR)

    def _tassel(self, line: Hung) -> float | None:
        """How thick the tassel is whose legs a line hangs; None where it hangs none."""
        is_leg = any(line in one.lines for one in tassels(self.sizes.plan))
        if line.on_thread and line.source.kind.role is Role.CONE:
            return self.sizes.known(line.part, "bundle", self.sizes.known(line.source, "bore", 6.0))
        return self.sizes.mm(line.part, "bundle") if is_leg else None

    def _step(self, line: Hung, together: int) -> float:
        """From one to the next of what hangs from one eye: the legs of a tassel over each other."""
        bundle = self._tassel(line)
        if bundle is not None:
            leg = self.sizes.bead(next(self.sizes.sequence(line.part)))[1]
            return max(bundle - leg, 0.0) / max(together - 1, 1)
        return self._with_all_below(line.part) + (0.2 if line.on_thread else 1.0)

    @property
    def left_out(self) -> list[str]:
        """The parts that are drawn less often than they hang."""
        counts = ((line, pieces_hung(line)) for line in self.lines)
        cut = [f"{self.most} of {n} {line.part.name}" for line, n in counts if n > self.most]
        more = [f"and {len(cut) - _MOST_NAMED} more lines"] if len(cut) > _MOST_NAMED else []
        return [*cut[:_MOST_NAMED], *more]

    def from_run(self, stretch: Stretch) -> None:
        """All that hangs from a place of the run."""
        fringes: dict[tuple[int, Eyes], list[Hung]] = {}
        others: list[Hung] = []
        along = [one for one in fringes_along(self.sizes.plan) if one.source in stretch.entry.parts]
        for line in self.lines:
            if line.source in stretch.entry.parts and not any(line in one.lines for one in along):
                eyes = Eyes(line.source, line.source_eyes) if line.source_eyes else None
                sewn = line.on_thread and self._tassel(line) is None
                if eyes is not None and (sewn or (self.upright and eyes.woven)):
                    fringes.setdefault((-line.layer, eyes), []).append(line)
                else:
                    others.append(line)
        for fringe in sorted(along, key=lambda one: -one.line.layer):
            self._along(fringe, stretch.middle, stretch.drawn, 0.0 if self.upright else None)
        for (_, eyes), lines in sorted(fringes.items(), key=lambda one: one[0][0]):
            self._fringe(eyes, lines, stretch)
        left = stretch.middle - sum(map(self.width, others)) / 2
        for line in others:
            self._side_by_side(line, stretch, left)
            left += self.width(line)

    def _side_by_side(self, line: Hung, stretch: Stretch, left: float) -> None:
        """What one line hangs from a run, or one below the other from an upright one."""
        pieces = pieces_hung(line)
        drawn = min(pieces, self.most)
        each, by_each = self.width(line) / drawn, line.times // pieces
        for number in range(drawn):
            first = number == 0
            if self.upright:
                step = self._step(line, drawn) if self._tassel(line) is not None else 0.0
                aside = (number - (drawn - 1) / 2) * step
                self._below(line, aside, stretch.end, number, first=first)
            else:
                rings = min(line.times - number * by_each, by_each)
                self._on_run(line, left + (number + 0.5) * each, rings, first=first)

    def _on_run(self, line: Hung, x: float, rings: int, *, first: bool) -> None:
        """One part on the run, by one ring or by one for each of its eyes."""
        half = self.sizes.across(line.source) / 2
        by, around = line.by, line.by is not None and not line.source_eyes
        top = -half if around and line.source.kind.role is not Role.BAND else half
        x, down = self._spot(x)
        top += down
        foot, across = top, 0.0
        for across in shape_of(line.part).tops(self.sizes, line.part)[: max(rings, 1)]:
            pen = Pen(self.canvas, x + across, top, upright=True)
            if by is not None and around:
                with self.canvas.thing(by.name):
                    foot = top + ring_on_edge(pen, self.sizes, by)
            elif by is not None:
                foot = top + self._ring(pen, by)
        drawn = self.canvas.last
        if by is not None and first:
            reach = self.sizes.known(by, "wire" if around else "outside", 1.0) / 2
            spot = within((x + across + reach, (down + half + foot) / 2), drawn)
            self._show_once(by, line.times, spot, line)
        self._piece(line, x, foot, 0, first=first)

    def _spot(self, x: float) -> Spot:
        """Where a place of the run lies."""
        return (x, 0.0) if self.bend is None else self.bend(x, 0.0)

    def _ring(self, pen: Pen, ring: Part) -> float:
        """Draw a ring as it hangs; returns where it bears below."""
        with self.canvas.thing(ring.name):
            shape_of(ring).draw(pen, self.sizes, ring, 0.0)
        return self.sizes.known(ring, "inside", UNKNOWN)

    def _along(
        self, fringe: FringeAlong, middle: float, drawn: float, beside: float | None = None
    ) -> None:
        """Legs spread along a place of the run as drawn, or down what hangs `beside` its line."""
        foot = shape_of(fringe.source).foot(self.sizes, fringe.source)
        apart = drawn / fringe.hung
        with suppress(Missing):
            apart = min(apart, self.sizes.ask.apart(fringe).middle)
        legs = [(line, n) for line in fringe.lines for n in range(line.times)][: self.most]
        last = {line: number for number, (line, _) in enumerate(legs)}
        for number, (line, n) in enumerate(legs):
            at = middle + (number - (fringe.hung - 1) / 2) * apart
            x, y = self._spot(at) if beside is None else (beside + foot, at)
            self._piece(line, x, y + foot * (beside is None), n, first=number == last[line])

    def _fringe(self, eyes: Eyes, lines: list[Hung], stretch: Stretch) -> None:
        """Legs sewn to the beads of a woven edge, each at its own."""
        foot, middle = shape_of(eyes.part).foot(self.sizes, eyes.part), stretch.middle
        if self.upright:
            foot, middle = stretch.start + self._edge(eyes, stretch.length), 0.0
        self._legs(eyes, lines, middle, foot, in_run=not self.upright)

    def _legs(
        self, eyes: Eyes, lines: list[Hung], middle: float, foot: float, *, in_run: bool = False
    ) -> None:
        """Legs from the beads of an edge whose lowest lies at (middle, foot).

        Along a round edge they follow its rim, those of its lower half. Those for which no bead is
        left hang beyond the last.
        """
        fringe = HungOnEyes(lines[0].place_of("part"), tuple(lines), eyes)
        step, r = self._spacing(eyes), 0.0
        if shape_of(eyes.part).is_round:
            r = self.sizes.across(eyes.part) / 2
        placed = fringe.in_order
        beyond = count(max([eyes.count, *placed]) + 1)
        for line in lines:
            over = min(line.times, self.most) - sum(one is line for one, _ in placed.values())
            for number in range(line.times - max(over, 0), line.times):
                placed[next(beyond)] = line, number
        aside = {eye: (eye - (eyes.count + 1) / 2) * step for eye in placed}
        seen = {eye: at for eye, at in aside.items() if not r or abs(at) < r * math.pi / 2}
        shown = [(eye, placed[eye]) for eye in islice(seen, self.most)]
        last = {line: eye for eye, (line, _) in shown}
        for eye, (line, number) in shown:
            x, up = seen[eye], 0.0
            if r:
                x, up = r * math.sin(x / r), r * (1 - math.cos(x / r))
            at, down = self._spot(middle + x) if in_run else (middle + x, 0.0)
            self._below(line, at, down + foot - up, number, first=eye == last[line])

    def _edge(self, eyes: Eyes, length: float) -> float:
        """How far below the top of a part that hangs its edge lies."""
        start_below = shape_of(eyes.part).upside_down(self.sizes, eyes.part)
        return length if start_below or not eyes.field.at_start else 0.0

    def _spacing(self, eyes: Eyes) -> float:
        """From bead to bead along a woven edge."""
        try:
            return self.sizes.ask.get(eyes.quantity("spacing")).middle
        except Missing:
            return self.sizes.across(eyes.part) / max(eyes.count, 1)

    def _below(self, line: Hung, x: float, y: float, number: int, *, first: bool) -> None:
        """One part below the spot (x, y) of an eye, by its ring where it has one."""
        if line.by is not None:
            inside = self._ring(Pen(self.canvas, x, y, upright=True), line.by)
            if first:
                reach = self.sizes.known(line.by, "outside", UNKNOWN) / 2
                spot = within((x + reach, y + inside / 2), self.canvas.last)
                self._show_once(line.by, line.times, spot, line)
            y += inside
        self._piece(line, x, y, number, first=first)

    def _piece(self, line: Hung, x: float, y: float, number: int, *, first: bool) -> None:
        """One hung part from where it bears on, and what hangs from it."""
        part, pen = line.part, Pen(self.canvas, x, y, upright=True)
        if part.kind.role is Role.CONE:  # over the ends of what hangs in it
            self._below_part(part, x, y, ((0.0, 0.0),))
        shape = shape_of(part)
        with self.canvas.thing(part.name):
            length, feet = shape.hung(pen, self.sizes, part, number)
        half = shape.width(self.sizes, part) / 2
        self.right = max(self.right, x + half)
        if first:
            spot = within((x + half, y + length * 0.6), self.canvas.last)
            self._show_once(part, pieces_hung(line), spot, line)
        if feet and part.kind.role is not Role.CONE:
            self._below_part(part, x, y, feet)
            self._cone_over(part, x, y + feet[0][0])

    def _cone_over(self, wire: Part, x: float, foot: float) -> None:
        """The cone that a hung wire runs into, over the ends of what it carries."""
        cone = wire.part("over")
        if cone is not None and cone in made_with(self.sizes.plan, wire):
            with self.canvas.thing(cone.name):
                length = self.sizes.known(cone, "length", UNKNOWN)
                shape_of(cone).draw(
                    Pen(self.canvas, x, foot, upright=True), self.sizes, cone, length
                )

    def _below_part(self, part: Part, x: float, y: float, feet: tuple[Spot, ...]) -> None:
        """What hangs from a hung part, eye by eye; what has no eye hangs beyond the last.

        What hangs from one eye together hangs about it.
        """
        edges: dict[Eyes, list[Hung]] = {}
        others: list[Hung] = []
        along = [one for one in fringes_along(self.sizes.plan) if one.source is part]
        for fringe in along:
            long = self.sizes.known(part, "along", UNKNOWN)
            self._along(fringe, y + long / 2, long, x)
        for line in self.lines:
            if line.source is part and not any(line in one.lines for one in along):
                eyes = Eyes(part, line.source_eyes) if line.source_eyes else None
                if eyes is not None and eyes.woven:
                    edges.setdefault(eyes, []).append(line)
                else:
                    others.append(line)
        for eyes, lines in edges.items():
            self._legs(eyes, lines, x, y + self._edge(eyes, feet[0][0]))
        used = 0
        alone = len(feet) == 1
        together = sum(min(line.times, self.most) for line in others) if alone else 1
        for line in others:
            step = self._step(line, together)
            if len(feet) > 1:
                step = feet[1][1] - feet[0][1]
            drawn = min(line.times, self.most)
            for number in range(drawn):
                place = used + number
                down, across = feet[min(place, len(feet) - 1)]
                beyond = max(place - len(feet) + 1, 0) * step - (together - 1) / 2 * step
                last = number == drawn - 1
                self._below(line, x + across + beyond, y + down, number, first=last)
            used += line.times

    def _show_once(self, part: Part, times: int, spot: Spot, line: Hung) -> None:
        """Show what a line hangs where it is drawn first: several frames have the same drops."""
        if (part, line) not in self._shown:
            self._shown.add((part, line))
            self._show(part, times, *spot, line)

    def _with_all_below(self, part: Part) -> float:
        below = (self.width(line) for line in self.lines if line.source is part)
        return max(shape_of(part).width(self.sizes, part), *below, 0.0)
