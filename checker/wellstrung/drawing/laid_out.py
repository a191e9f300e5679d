"""The run of a piece on a canvas, straight, with what hangs from it; and where each thing is."""

from __future__ import annotations

from msgspec import Struct

from wellstrung.drawing import parts
from wellstrung.drawing.hanging import Hanging
from wellstrung.drawing.layout import GAP, WORKED, Stretch, along_run, point_on, sagging
from wellstrung.drawing.parts import Sizes
from wellstrung.drawing.pen import Pen
from wellstrung.drawing.shapes import Canvas
from wellstrung.model.parts import Part, Role
from wellstrung.model.plan import Hung
from wellstrung.quantity.working import number


class Shown(Struct, frozen=True):
    """One thing as drawn: the part, how many, the spot a label points to, what it is joined to."""

    part: Part
    half: str
    times: int
    x: float
    y: float
    near: frozenset[str]
    hung: bool = False


class LaidOut:
    """A piece as it lies or hangs: all of it, or `close` with long parts cut short by breaks."""

    def __init__(self, sizes: Sizes, canvas: Canvas, *, upright: bool, close: bool) -> None:
        self.sizes, self.canvas, self.plan = sizes, canvas, sizes.plan
        self.upright, self.close = upright, close
        self.shown: list[Shown] = []
        self.hanging = Hanging(canvas, sizes, self._tell_hung)
        between = {part: self._hung_width(part) for part in self.plan.parts.values()}
        self.run = list(along_run(self.plan, sizes, between if close and not upright else None))
        self._draw()

    @property
    def cut_short(self) -> list[str]:
        """The parts that breaks cut short, with how long they are."""
        return [
            f"{part.name} ({number(self.sizes.known(part, 'along', stretch.length))} mm long)"
            for stretch in self.run
            if stretch.cut_short
            for part in stretch.entry.parts
        ]

    @property
    def band(self) -> float:
        """How long the bands are by which a worked part is drawn whole; 0 where there are none."""
        banded = [one for one in self.run if one.entry.part.kind.role in WORKED and not self.close]
        lengths = [
            one.length for one in banded if not parts.bead_by_bead(self.sizes, one.entry.part)
        ]
        return max(map(parts.band_of, lengths), default=0.0)

    def _draw(self) -> None:
        for stretch in self.run:
            if stretch.entry.part.kind.role in WORKED:
                self._worked_place(stretch)
        for stretch in self.run:
            if stretch.entry.part.kind.role not in WORKED:
                self._findings(stretch)
        #: top and bottom of the run alone
        self.edges = self.canvas.extent[1], self.canvas.extent[3]
        for index, stretch in enumerate(self.run):
            self._tell_run(index, stretch)
        for part in dict.fromkeys(line.source for line in self.plan.hung):
            place = next((one for one in self.run if part in one.entry.parts), None)
            if place is not None:
                self.hanging.from_run(place, upright=self.upright)

    def _hung_width(self, part: Part) -> float:
        return sum(self.hanging.width(line) for line in self.plan.hung if line.source is part)

    def _pen(self, along: float, across: float = 0.0) -> Pen:
        return Pen(self.canvas, upright=self.upright).moved(along, across)

    def _findings(self, stretch: Stretch) -> None:
        """A finding, as many times as it is linked."""
        entry = stretch.entry
        each = stretch.length / entry.linked
        for number_ in range(entry.linked):
            pen = self._pen(stretch.start + number_ * each)
            pen = pen.turned(each) if stretch.turned else pen
            parts.finding(pen, self.sizes, entry.part, entry.half, each)

    def _worked_place(self, stretch: Stretch) -> None:
        """A worked part, or strands side by side: whole, the longer ones sag below the shorter."""
        entry = stretch.entry
        for order, part in enumerate(entry.parts):
            if len(entry.parts) > 1 and not self.close:
                self._sagging(stretch, part)
            else:
                self._worked(stretch, part, self._lane(stretch, order))

    def _worked(self, stretch: Stretch, part: Part, across: float) -> None:
        for start, length in stretch.pieces:
            pen = self._pen(stretch.start + start, across)
            if part.kind.role is Role.STRAND and (
                self.close or parts.bead_by_bead(self.sizes, part)
            ):
                whole = self.sizes.known(part, "along", stretch.length)
                parts.strung(pen, self.sizes, part, length, whole)
            elif self.close:
                parts.worked(pen, self.sizes, part, length)
            else:
                parts.banded(pen, self.sizes, part, length)
        half = self.sizes.across(part) / 2 + 1.0
        for start in stretch.breaks:
            for edge in (start + 0.8, start + GAP - 0.8):
                zigzag = [(edge + (-0.5, 0.5)[n % 2], half * (n / 3 - 1)) for n in range(7)]
                self._pen(stretch.start, across).line(zigzag, "broken")

    def _sagging(self, stretch: Stretch, part: Part) -> None:
        whole = self.sizes.known(part, "along", stretch.length)
        curve = sagging(stretch.start, stretch.length, whole)
        self.canvas.curve([(x, y) for _, x, y in curve], "thread")
        for along, bead in parts.bead_places(self.sizes, part, whole):
            length, outside = self.sizes.bead(bead)
            x, y = point_on(curve, along)
            self.canvas.ellipse(x, y, length / 2, outside / 2, self.sizes.look(bead))

    def _lane(self, stretch: Stretch, order: int) -> float:
        """Where a strand lies across, of several side by side."""
        widths = [self.sizes.across(part) + 0.6 for part in stretch.entry.parts]
        return sum(widths[:order]) + (widths[order] - sum(widths)) / 2

    def _tell_run(self, index: int, stretch: Stretch) -> None:
        beside = (*self.run[max(index - 1, 0) : index], *self.run[index + 1 : index + 2])
        near = frozenset(part.name for one in beside for part in one.entry.parts)
        entry = stretch.entry
        for order, part in enumerate(entry.parts):
            along, reach = stretch.middle, self._reach(part, entry.half)
            across = -reach
            if len(entry.parts) > 1:
                share = 0.2 + 0.6 * order / (len(entry.parts) - 1)
                along = stretch.start + stretch.drawn * share
                across = self._lane(stretch, order)
                if not self.close:
                    whole = self.sizes.known(part, "along", stretch.length)
                    curve = sagging(stretch.start, stretch.length, whole)
                    along, across = point_on(curve, whole * share)
            if entry.half == "b" and not part.has("bar"):
                along = stretch.start + stretch.drawn
            x, y = (reach, along) if self.upright else (along, across)
            self.shown.append(Shown(part, entry.half, entry.linked, x, y, near))

    def _tell_hung(self, part: Part, times: int, x: float, y: float, line: Hung) -> None:
        near = frozenset({line.part.name, line.source.name})
        self.shown.append(Shown(part, "", times, x, y, near, hung=True))

    def _reach(self, part: Part, half: str) -> float:
        """Half of what a part takes across, for a line to end at its edge."""
        known = self.sizes.known
        if part.kind.role is Role.CLASP and part.has("ring"):
            if half == "b":
                return known(part, "bar.stem_width", 0.0) / 2
            return known(part, "ring.inside", 0.0) / 2 + known(part, "ring.wire", 0.0)
        if part.kind.role is Role.CLASP or (part.kind.name == "pouch" and not self.upright):
            return 0.0
        if part.kind.name in ("ear wire", "wire link"):
            return known(part, "wire", 0.0) / 2
        return self.sizes.across(part) / 2

    def words(self, one: Shown, *, size: bool = True) -> str:
        """A part's name, how many of it, and the size that tells it."""
        words = f"{one.part.name}.{one.half}" if one.half else one.part.name
        words += f" \N{MULTIPLICATION SIGN}{one.times}" if one.times > 1 else ""
        for what, more in _TELLING.get((one.part.kind.name, one.half), ()) if size else ():
            found = self.sizes.mm(one.part, what)
            if found is not None:
                return f"{words}, {number(found)} mm{more}"
        return words


#: the size that tells a part, by its kind and half: the first of these that the plan has
_TELLING: dict[tuple[str, str], tuple[tuple[str, str], ...]] = {
    ("woven rope", ""): (("outside", " across"),),
    ("woven band", ""): (("width", " wide"),),
    ("pouch", ""): (("width", " wide"),),
    ("bezel", ""): (("outside", " across"),),
    ("braid", ""): (("outside", " across"),),
    ("strand", ""): (("along", " long"),),
    ("end cap", ""): (("outside", " outside"), ("bore", " bore")),
    ("cone", ""): (("outside", " outside"), ("bore", " bore")),
    ("jump ring", ""): (("outside", " outside"),),
    ("crimp", ""): (("length", " long"),),
    ("wire link", ""): (("along", " inside its loops"),),
    ("connector", ""): (("along", " between rings"),),
    ("ear wire", ""): (("length", " long"),),
    ("chain piece", ""): (("length", " long"),),
    ("bead drop", ""): (("length", " long"),),
    ("pendant", ""): (("height", " tall"),),
    ("clasp", "a"): (("ring.inside", " inside"), ("a.along", " closed")),
    ("clasp", "b"): (("bar.length", " bar"),),
}
