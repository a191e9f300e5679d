"""What hangs: each part below what carries it, by its ring, its eyes or its thread."""

from __future__ import annotations

from collections.abc import Callable

from wellstrung.drawing import parts
from wellstrung.drawing.layout import Stretch
from wellstrung.drawing.parts import UNKNOWN, Sizes
from wellstrung.drawing.pen import Pen
from wellstrung.drawing.shapes import Canvas
from wellstrung.model.item import Missing
from wellstrung.model.parts import Part, Role
from wellstrung.model.plan import Hung
from wellstrung.subjects.base import Eyes
from wellstrung.subjects.counts import pieces_hung
from wellstrung.subjects.hung import HungOnEyes

#: white between things that hang side by side, mm
_AIR = 2.0
#: so many things of one line are drawn; a page with more tells nothing more
MOST = 60

#: told of each thing that hangs once: the part, how many, and the spot that a label would point to
Tell = Callable[[Part, int, float, float, Hung], None]


class Hanging:
    """Draws what hangs from a run, and tells of each thing where it is."""

    def __init__(self, canvas: Canvas, sizes: Sizes, tell: Tell) -> None:
        self.canvas, self.sizes, self._tell = canvas, sizes, tell
        self._told: set[tuple[Part, Hung]] = set()
        self.lines = sizes.plan.hung
        #: the right end of all that hangs
        self.right = 0.0

    def width(self, line: Hung) -> float:
        """How wide all that a line hangs is, side by side."""
        pieces = min(pieces_hung(line), MOST)
        return pieces * (self._with_all_below(line.part) + _AIR)

    def left_out(self) -> list[str]:
        """What is drawn less often than it hangs."""
        counts = ((line, pieces_hung(line)) for line in self.lines)
        return [f"{MOST} of {n} {line.part.name}" for line, n in counts if n > MOST]

    def from_run(self, stretch: Stretch, *, upright: bool) -> None:
        """All that hangs from a place of the run."""
        mine = [line for line in self.lines if line.source in stretch.entry.parts]
        others = [line for line in mine if not (line.source_eyes and line.on_thread)]
        edges: dict[Eyes, list[Hung]] = {}
        for line in mine:
            if line not in others:
                edges.setdefault(Eyes(line.source, line.source_eyes), []).append(line)
        for eyes, lines in edges.items():
            self._fringe(eyes, lines, stretch, upright=upright)
        at = stretch.middle - sum(map(self.width, others)) / 2
        for line in others:
            pieces = pieces_hung(line)
            drawn = min(pieces, MOST)
            each = self.width(line) / drawn
            for piece in range(drawn):
                rings = min(line.times - piece * (line.times // pieces), line.times // pieces)
                spot = at + (piece + 0.5) * each
                if upright:
                    self._below(line, 0.0, stretch.start + stretch.drawn, piece, piece == 0)
                else:
                    self._on_run(line, spot, rings, first=piece == 0)
            at += self.width(line)

    def _on_run(self, line: Hung, x: float, rings: int, *, first: bool) -> None:
        """One part on the run, by one ring or by one for each of its eyes."""
        half = self.sizes.across(line.source) / 2
        around = line.by is not None and not line.source_eyes
        top = -half if around and line.source.kind.role is not Role.BAND else half
        foot = top
        places = [0.0]
        if line.part.kind.name == "pendant":
            places = parts.top_places(self.sizes, line.part)[: max(rings, 1)]
        for across in places:
            pen = Pen(self.canvas, x + across, top, upright=True)
            if line.by is not None and around:
                foot = top + parts.ring_on_edge(pen, self.sizes, line.by)
            elif line.by is not None:
                parts.jump_ring(pen, self.sizes, line.by, 0.0)
                foot = top + self.sizes.known(line.by, "inside", UNKNOWN)
        if line.by is not None and first:
            reach = self.sizes.known(line.by, "wire" if around else "outside", 1.0) / 2
            self._tell_once(line.by, line.times, x + places[-1] + reach, (half + foot) / 2, line)
        self._piece(line, x, foot, 0, first=first)

    def _fringe(self, eyes: Eyes, lines: list[Hung], stretch: Stretch, *, upright: bool) -> None:
        """Legs sewn to the beads of a woven edge, each at its own."""
        fringe = HungOnEyes(lines[0].place_of("part"), tuple(lines), eyes)
        shown = list(fringe.in_order.items())[:MOST]
        last = {line: eye for eye, (line, _) in shown}
        foot, middle = parts.foot_of(self.sizes, eyes.part), stretch.middle
        if upright:
            foot, middle = stretch.start + stretch.drawn, 0.0
        step = self._spacing(eyes)
        for eye, (line, number) in shown:
            x = middle + (eye - (eyes.count + 1) / 2) * step
            self._piece(line, x, foot, number, first=eye == last[line])

    def _spacing(self, eyes: Eyes) -> float:
        """From bead to bead along a woven edge."""
        try:
            return self.sizes.ask.get(eyes.quantity("spacing")).middle
        except Missing:
            return self.sizes.across(eyes.part) / max(eyes.count, 1)

    def _below(self, line: Hung, x: float, y: float, number: int, first: bool) -> None:
        """One part below the spot (x, y) of an eye, by its ring where it has one."""
        if line.by is not None:
            parts.jump_ring(Pen(self.canvas, x, y, upright=True), self.sizes, line.by, 0.0)
            inside = self.sizes.known(line.by, "inside", UNKNOWN)
            if first:
                reach = self.sizes.known(line.by, "outside", UNKNOWN) / 2
                self._tell_once(line.by, line.times, x + reach, y + inside / 2, line)
            y += inside
        self._piece(line, x, y, number, first=first)

    def _piece(self, line: Hung, x: float, y: float, number: int, *, first: bool) -> None:
        """One hung part from where it bears on, and what hangs from it."""
        part, pen = line.part, Pen(self.canvas, x, y, upright=True)
        spots: list[tuple[float, float]] = []
        if part.kind.name == "pendant":
            spots = parts.pendant(pen, self.sizes, part)
            length = spots[0][0] if spots else self.sizes.known(part, "height", UNKNOWN)
        elif part.kind.name == "bead drop":
            length = parts.bead_drop(pen, self.sizes, part, number)
        else:
            length = self.sizes.known(part, "along", UNKNOWN)
            parts.finding(pen, self.sizes, part, "", length)
            spots = [(length, 0.0)]
        half = self._own_width(part) / 2
        self.right = max(self.right, x + half)
        if first:
            self._tell_once(part, pieces_hung(line), x + half, y + length * 0.6, line)
        self._below_part(part, x, y, spots)

    def _below_part(self, part: Part, x: float, y: float, spots: list[tuple[float, float]]) -> None:
        """What hangs from a hung part, eye by eye; what has no eye hangs beyond the last."""
        used = 0
        for line in self.lines if spots else ():
            if line.source is not part:
                continue
            step = self._with_all_below(line.part) + 1.0
            if len(spots) > 1:
                step = spots[1][1] - spots[0][1]
            for number in range(min(line.times, MOST)):
                place = used + number
                down, across = spots[min(place, len(spots) - 1)]
                beyond = max(place - len(spots) + 1, 0) * step
                last = number == min(line.times, MOST) - 1
                self._below(line, x + across + beyond, y + down, number, last)
            used += line.times

    def _tell_once(self, part: Part, times: int, x: float, y: float, line: Hung) -> None:
        """Tell of what a line hangs where it is drawn first: several frames have the same drops."""
        if (part, line) not in self._told:
            self._told.add((part, line))
            self._tell(part, times, x, y, line)

    def _with_all_below(self, part: Part) -> float:
        below = (self.width(line) for line in self.lines if line.source is part)
        return max(self._own_width(part), *below, 0.0)

    def _own_width(self, part: Part) -> float:
        if part.kind.name == "pendant":
            return parts.pendant_width(self.sizes, part)
        return self.sizes.known(part, "width", self.sizes.known(part, "outside", UNKNOWN / 2))
