"""The piece laid out straight, to scale, with what hangs from it and where its remarks are.

Two drawings: the whole piece over a ruler, and a close-up in which long worked parts are cut short
by breaks, so that the findings can be made out. Earrings are drawn as they hang.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from wellstrung.checking import PlanResult, Remark
from wellstrung.drawing import Figure, labels, parts
from wellstrung.drawing.hanging import Hanging
from wellstrung.drawing.labels import Label, Mark
from wellstrung.drawing.layout import GAP, WORKED, Stretch, along_run, point_on, sagging
from wellstrung.drawing.parts import Sizes
from wellstrung.drawing.pen import Pen
from wellstrung.drawing.shapes import Canvas
from wellstrung.model import Hung, Part, Role
from wellstrung.quantity import number

#: what fits between the margins of A4 and of Letter, and leaves room for a caption, mm
PAGE_WIDTH, PAGE_HEIGHT = 176.0, 190.0
#: scales as a drawing states them, the largest first
SCALES = {
    "5 : 1": 5.0, "4 : 1": 4.0, "3 : 1": 3.0, "2 : 1": 2.0, "3 : 2": 1.5, "1 : 1": 1.0,
    "4 : 5": 0.8, "2 : 3": 2 / 3, "1 : 2": 0.5, "2 : 5": 0.4, "1 : 3": 1 / 3, "1 : 4": 0.25,
    "1 : 5": 0.2, "1 : 6": 1 / 6, "1 : 8": 0.125, "1 : 10": 0.1, "1 : 15": 1 / 15,
    "1 : 20": 0.05, "1 : 40": 0.025, "1 : 100": 0.01,
}  # fmt: skip
#: lengths of the check bar, life-size, mm; the first that is long enough on the page is taken
_BARS = (5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0, 2000.0)
_LEAST_BAR = 15.0
#: height of the words under rulers and bars on the page, mm
_SMALL = 2.3


@dataclass(frozen=True)
class Shown:
    """One thing as drawn: the part, how many, the spot a label points to, what it is joined to."""

    part: Part
    half: str
    times: int
    x: float
    y: float
    near: frozenset[str]
    hung: bool = False


def drawings(result: PlanResult) -> list[Figure]:
    """The drawings of a checked plan; none where the result keeps no plan, or it has no run."""
    if result.ask is None or not result.ask.plan.run:
        return []
    sizes = Sizes(result.ask)
    if any(entry.part.kind.name == "ear wire" for entry in result.ask.plan.run):
        return [_fitted(result, sizes, "The piece as it hangs", upright=True, close=True, most=5.0)]
    whole = "The whole piece, laid out straight"
    return [
        _fitted(result, sizes, whole, upright=False, close=False, most=1.0),
        _fitted(result, sizes, "Close up", upright=False, close=True, most=3.0),
    ]


def _fitted(
    result: PlanResult, sizes: Sizes, title: str, *, upright: bool, close: bool, most: float
) -> Figure:
    """One drawing at the largest scale at which it fits on the page."""
    drawing = _Drawing(result, sizes, most, upright=upright, close=close)
    width, height = drawing.bare
    for scale in SCALES.values():
        # words keep their height on the page, so that only drawing tells whether all of it fits
        if scale > most or width * scale > PAGE_WIDTH or height * scale > PAGE_HEIGHT:
            continue
        drawing = _Drawing(result, sizes, scale, upright=upright, close=close)
        if drawing.fits:
            break
    caption = f"Drawn {_stated(drawing.canvas.scale)}."
    if drawing.cut_short:
        caption += f" Cut short at the breaks: {', '.join(drawing.cut_short)}."
    if drawing.hanging.left_out():
        caption += f" Drawn of many: {', '.join(drawing.hanging.left_out())}."
    if drawing.plan.is_loop:
        caption += " Laid open: its two ends meet."
    alt = drawing.in_words()
    svg = drawing.canvas.svg(title, alt, "piece")
    return Figure(title, alt, caption, svg, tuple(sorted(drawing.marked)))


def _stated(scale: float) -> str:
    """A scale in words, as `life-size` or `1 : 3, 33.33 % of life`."""
    if scale == 1:
        return "life-size"
    size = f"{number(scale)} times life" if scale > 1 else f"{number(scale * 100)} % of life"
    return f"{next(words for words, one in SCALES.items() if one == scale)}, {size}"


class _Drawing:
    """One drawing: the run, what hangs, ruler or check bar, labels and marks."""

    def __init__(
        self, result: PlanResult, sizes: Sizes, scale: float, *, upright: bool, close: bool
    ) -> None:
        self.result, self.sizes, self.plan = result, sizes, sizes.plan
        self.canvas = Canvas(scale=scale)
        self.unit = 1 / scale
        self.upright, self.close = upright, close
        self.shown: list[Shown] = []
        self.marked: set[int] = set()
        self.hanging = Hanging(self.canvas, sizes, self._tell_hung)
        between = {part: self._hung_width(part) for part in self.plan.parts.values()}
        self.run = list(along_run(self.plan, sizes, between if close and not upright else None))
        self.cut_short = [
            f"{part.name} ({number(sizes.known(part, 'along', stretch.length))} mm long)"
            for stretch in self.run
            if stretch.cut_short
            for part in stretch.entry.parts
        ]
        self._draw()

    @property
    def fits(self) -> bool:
        """Whether it fits on a page."""
        width, height = (side * self.canvas.scale for side in self.canvas.size)
        return width <= PAGE_WIDTH and height <= PAGE_HEIGHT

    def in_words(self) -> str:
        """What the drawing shows, for who cannot see it."""
        way = "from the top down" if self.upright else "from left to right"
        said = f"{self.plan.title}, {way}: "
        said += ", then ".join(self._words(one) for one in self.shown if not one.hung) + "."
        hung = [self._words(one) for one in self.shown if one.hung]
        if hung:
            said += f" From it hang: {', '.join(hung)}."
        if self.marked:
            said += f" Remarks marked at their place: {', '.join(map(str, sorted(self.marked)))}."
        return said

    def _draw(self) -> None:
        for stretch in self.run:
            if stretch.entry.part.kind.role in WORKED:
                self._worked_place(stretch)
        for stretch in self.run:
            if stretch.entry.part.kind.role not in WORKED:
                self._findings(stretch)
        foot = self.canvas.extent[1], self.canvas.extent[3]
        for index, stretch in enumerate(self.run):
            self._tell_run(index, stretch)
        for part in dict.fromkeys(line.source for line in self.plan.hung):
            place = next((one for one in self.run if part in one.entry.parts), None)
            if place is not None:
                self.hanging.from_run(place, upright=self.upright)
        left, top, right, bottom = self.canvas.extent
        #: width and height without words
        self.bare = right - left, bottom - top
        self._label(*foot)

    # --- the run

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
            if part.kind.role is Role.STRAND:
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

    # --- what is told of each thing

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
        if part.kind.role is Role.CLASP:
            return 0.0
        if part.kind.name == "ear wire":
            return known(part, "wire", 0.0) / 2
        if part.kind.name == "wire link":
            return known(part, "wire", 0.0) / 2
        return self.sizes.across(part) / 2

    def _words(self, one: Shown, *, size: bool = True) -> str:
        """A part's name, how many of it, and the size that tells it."""
        words = f"{one.part.name}.{one.half}" if one.half else one.part.name
        words += f" \N{MULTIPLICATION SIGN}{one.times}" if one.times > 1 else ""
        for what, more in _TELLING.get((one.part.kind.name, one.half), ()) if size else ():
            found = self.sizes.mm(one.part, what)
            if found is not None:
                return f"{words}, {number(found)} mm{more}"
        return words

    # --- labels, marks, ruler and bar

    def _label(self, top: float, bottom: float) -> None:
        """Labels with marks, then ruler and bar below all that is drawn so far.

        Close up every part of the run is named, by turns above and below where nothing hangs.
        """
        marks = self._marks()
        run = [one for one in self.shown if not one.hung]
        hung = [one for one in self.shown if one.hung]
        named: set[Part] = set()
        found: dict[int, Label] = {}
        for one in self.shown:
            tell = one.part not in named
            named.add(one.part)
            words = self._words(one, size=tell or bool(one.half))
            found[id(one)] = Label(one.x, one.y, words, marks.get(id(one), ()))
        if self.upright:
            edge = max(self.canvas.extent[2], self.hanging.right)
            labels.beside(self.canvas, list(found.values()), edge)
        elif self.close:
            mine = [found[id(one)] for one in run]
            below = [] if hung else mine[1::2]
            labels.above(self.canvas, [one for one in mine if one not in below], top)
            labels.below(self.canvas, below, bottom)
            names = [found[id(one)] for one in hung]
            labels.beside(self.canvas, names, self.hanging.right, bottom)
        else:
            told = [one for one in run if one.part.kind.role in WORKED or id(one) in marks]
            labels.above(self.canvas, [found[id(one)] for one in told], top)
            marks_hung = [found[id(one)] for one in hung if id(one) in marks]
            labels.beside(self.canvas, marks_hung, self.hanging.right, bottom)
            self._ruler()
        self._check_bar()

    def _marks(self) -> dict[int, tuple[Mark, ...]]:
        """The marks of remarks, by the thing shown that each is about."""
        found: dict[int, tuple[Mark, ...]] = {}
        for number_, remark in enumerate(self.result.numbered, 1):
            at = self._place_of(remark)
            if at is not None:
                found[id(at)] = (*found.get(id(at), ()), Mark(number_, remark.level))
                self.marked.add(number_)
        return found

    def _place_of(self, remark: Remark) -> Shown | None:
        """The first of a remark's parts that is shown, where it meets most of the others."""
        names = set(remark.parts)
        for name in remark.parts:
            mine = [one for one in self.shown if one.part.name == name]
            if mine:
                return max(mine, key=lambda one: len(one.near & names))
        return None

    def _ruler(self) -> None:
        """A ruler below the run in cm, as long as the piece, and the window that is wanted."""
        end = self.run[-1].start + self.run[-1].drawn
        y = self.canvas.extent[3] + 6 * self.unit
        known = self.result.quantities.get("piece.length")
        told = "piece.length" if known is not None and abs(known.middle - end) < 0.01 else ""
        self.canvas.box(0, y, end, 0.9 * self.unit, "ruler", told, "width" if told else "")
        for count in range(math.floor(end / 10) + 1):
            long = count % 5 == 0
            foot = y + (3.4 if long else 2.2) * self.unit
            self.canvas.line(count * 10, y, count * 10, foot, "tick")
            if long:
                words = f"{count} cm" if count == 0 else str(count)
                self.canvas.text(count * 10, y + 6.4 * self.unit, words, "small-words", _SMALL)
        self._mark_whole(end + 2 * self.unit, y)
        goal = self.plan.goal
        if goal is not None and goal.field == "finished_length":
            low, high = goal.window
            self.canvas.box(low, y - 1.8 * self.unit, high - low, 1.3 * self.unit, "wanted")
            words = f"wanted: {goal.text}"
            self.canvas.text(high, y - 2.8 * self.unit, words, "small-words", _SMALL, "end")

    def _mark_whole(self, x: float, y: float) -> None:
        """Remarks on the piece as a whole, at the end of the ruler."""
        for number_, remark in enumerate(self.result.numbered, 1):
            if not remark.parts:
                labels.mark(
                    self.canvas, x + labels.REACH * self.unit, y, Mark(number_, remark.level)
                )
                x += 2.3 * labels.REACH * self.unit
                self.marked.add(number_)

    def _check_bar(self) -> None:
        """A bar of a round length, to hold a ruler against."""
        length = next(one for one in _BARS if one * self.canvas.scale >= _LEAST_BAR)
        left, y = self.canvas.extent[0], self.canvas.extent[3] + 4 * self.unit
        self.canvas.box(left, y, length, 1.4 * self.unit, "bar")
        words = f"{length:g} mm"
        x = left + length + 1.5 * self.unit
        self.canvas.text(x, y + 1.6 * self.unit, words, "small-words", _SMALL, "start")


#: the size that tells a part, by its kind and half: the first of these that the plan has
_TELLING: dict[tuple[str, str], tuple[tuple[str, str], ...]] = {
    ("woven rope", ""): (("outside", " across"),),
    ("woven band", ""): (("width", " wide"),),
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
