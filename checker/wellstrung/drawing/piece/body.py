"""The run of a piece on a canvas, with what hangs from it; and where each thing is."""

from __future__ import annotations

from collections.abc import Callable

from msgspec import Struct

from wellstrung.common.places import Place
from wellstrung.drawing.canvas import Canvas, Extent, within
from wellstrung.drawing.looks import shape_of
from wellstrung.drawing.looks.beads import bead as one_bead
from wellstrung.drawing.looks.breaks import gap
from wellstrung.drawing.looks.sizes import Sizes
from wellstrung.drawing.looks.strung import bead_by_bead, bead_places, strung
from wellstrung.drawing.looks.woven import MOST_BEADS, band_of, banded, worked
from wellstrung.drawing.pen import Bend, Pen
from wellstrung.drawing.piece.hanging import Hanging
from wellstrung.drawing.piece.sagging import point_on, sagging
from wellstrung.drawing.piece.stretches import GAP, Stretch, along_run
from wellstrung.model.parts import Part, Role
from wellstrung.model.plan import Hung, Plan, RunEntry
from wellstrung.quantity.working import number
from wellstrung.subjects.run import at_holes

#: a band whose thickness the plan does not give is drawn so thick, mm
_THIN = 2.0
#: rings side by side whose spacing no strand shows are drawn so far apart, mm
_APART = 5.0
#: pieces that hang from something that is not part of them
_HUNG = frozenset({"pendant", "key ring"})
#: the course of a run, or of a strand that is so much longer than the run
Laid = Callable[[list[Stretch], float], Bend]


class Shown(Struct, frozen=True):
    """One thing as drawn: the part, how many, the spot a label points to, what it is joined to.

    `place` is the entry of the run or the line that hangs it; what is `level` is as high above the
    middle of the run as below.
    """

    part: Part
    half: str
    times: int
    x: float
    y: float
    near: frozenset[str]
    place: Place
    hung: bool = False
    level: bool = False

    @property
    def called(self) -> str:
        """What a plan calls it: its part, or `toggle.a` for half a clasp."""
        return f"{self.part.name}.{self.half}" if self.half else self.part.name


class Body:
    """A piece as it lies or hangs: all of it, or `close` with long parts cut short by breaks.

    Whole, its worked parts are drawn by bands, or bead by bead up to `most_beads` of each. It may
    be `laid` on a course, as it is worn. `shown` are the things on it, `edges` the top and the
    bottom of the run alone.
    """

    def __init__(
        self,
        sizes: Sizes,
        canvas: Canvas,
        *,
        upright: bool = False,
        close: bool = False,
        most_beads: int = 0,
        laid: Laid | None = None,
    ) -> None:
        self.sizes, self.canvas, self.plan = sizes, canvas, sizes.plan
        self.upright, self.close, self.most_beads = upright, close, most_beads
        self.shown: list[Shown] = []
        self._boxes: dict[tuple[RunEntry, int], Extent] = {}
        hangs = Hanging(canvas, sizes, self._show_hung, upright=upright)
        self.hanging = hangs
        hung = {part: self._hung_width(part) for part in self.plan.parts.values()}
        self.run = list(along_run(self.plan, sizes, hung if close and not upright else None))
        self._laid = laid
        if laid is not None:
            hangs.bend = laid(self.run, 0.0)
        for stretch in self.run:
            if stretch.is_worked:
                self._worked_place(stretch)
        for stretch in self.run:
            if stretch.entry.part.kind.role is Role.CONE:  # over the ends of what hangs in it
                self.hanging.from_run(stretch)
            if not stretch.is_worked:
                self._findings(stretch)
        self.edges = canvas.extent[1], canvas.extent[3]
        for index, stretch in enumerate(self.run):
            self._show_run(index, stretch)
        for pin in self.plan.parts.values():
            carrier = pin.part("behind")
            for stretch in self.run if carrier is not None else ():
                if carrier in stretch.entry.parts:
                    self._behind(pin, stretch)
        for part in dict.fromkeys(line.source for line in self.plan.hung):
            places = [one for one in self.run if part in one.entry.parts]
            if places and part.kind.role is not Role.CONE:
                self.hanging.from_run(
                    places[(len(places) - 1) // 2]
                )  # of many alike the middle one

    @property
    def cut_short(self) -> list[str]:
        """The parts that breaks cut short, with how long they are."""
        return [
            f"{part.name} ({number(self._length(stretch, part))} mm long)"
            for stretch in self.run
            if stretch.cut_short
            for part in stretch.entry.parts
        ]

    @property
    def band(self) -> float:
        """How long the bands are by which a worked part is drawn whole; 0 where there are none."""
        return max(
            (
                band_of(one.length)
                for one in self.run
                if one.is_worked and not self.close and not bead_by_bead(self.sizes, one.entry.part)
            ),
            default=0.0,
        )

    def _behind(self, pin: Part, stretch: Stretch) -> None:
        """A pin behind what carries it, dashed."""
        length = self.sizes.known(pin, "length", stretch.drawn * 0.6)
        pen = self._pen(stretch.middle - length / 2)
        with self.canvas.thing(pin.name):
            pen.box(0, length, self.sizes.known(pin, "width", 5.0), "hidden", corner=1.0)

    def _hung_width(self, part: Part) -> float:
        return sum(self.hanging.width(line) for line in self.plan.hung if line.source is part)

    def _length(self, stretch: Stretch, part: Part) -> float:
        """How long a part is, which may be longer than its place where strands lie side by side."""
        return self.sizes.known(part, "along", stretch.length)

    def _pen(self, along: float, across: float = 0.0, longer: float = 0.0) -> Pen:
        """A pen there; on a course, on that of a strand which is so much longer than the run."""
        bend = self._laid(self.run, longer) if self._laid is not None else None
        return Pen(self.canvas, upright=self.upright, bend=bend).moved(along, across)

    def _findings(self, stretch: Stretch) -> None:
        """A finding, as many times as it is linked, and side by side as often as it has rows."""
        entry = stretch.entry
        each = stretch.length / entry.linked
        for count in range(entry.linked):
            for across in self._rows(stretch):
                pen = self._pen(stretch.start + count * each, across)
                pen = pen.turned(each) if stretch.turned else pen
                self._finding(entry, pen, each)
            if count == entry.linked // 2:
                self._boxes[entry, 0] = self.canvas.last
        for order, part in enumerate(entry.beside, 1):  # chains side by side
            pen = self._pen(stretch.start, self._lane(stretch, order))
            with self.canvas.thing(part.name):
                shape_of(part).draw(pen, self.sizes, part, self._length(stretch, part))
            self._boxes[entry, order] = self.canvas.last

    def _finding(self, entry: RunEntry, pen: Pen, each: float) -> None:
        with self.canvas.thing(entry.part.name, entry.half):
            if self._laid is not None and entry.part.traits.band_end is not None:
                pen.box(0, each, self._thick(entry.part), "metal")
            else:
                shape_of(entry.part, entry.half).draw(pen, self.sizes, entry.part, each)

    def _rows(self, stretch: Stretch) -> tuple[float, ...]:
        """Where the pieces at one place lie across: each in the lane of its strand."""
        entry, at = stretch.entry, self.run.index(stretch)
        if entry.beside:
            return (self._lane(stretch, 0),)
        if entry.rows == 1 or entry.part.traits.side_by_side:
            return (0.0,)
        many = [one for one in self.run if len(one.entry.parts) == entry.rows]
        if not many:
            return tuple((order - (entry.rows - 1) / 2) * _APART for order in range(entry.rows))
        near = min(many, key=lambda one: abs(self.run.index(one) - at))
        return tuple(self._lane(near, order) for order in range(entry.rows))

    def _worked_place(self, stretch: Stretch) -> None:
        """A worked part, or strands side by side: whole, the longer ones sag below the shorter."""
        for order, part in enumerate(stretch.entry.parts):
            with self.canvas.thing(part.name):
                if self._laid is not None:
                    self._on_course(stretch, part, order)
                elif self._sags(stretch):
                    self._sagging(stretch, part)
                else:
                    self._worked(stretch, part, self._lane(stretch, order))
            self._boxes[stretch.entry, order] = self.canvas.last

    def _worked(self, stretch: Stretch, part: Part, across: float) -> None:
        beads = bool(self.most_beads) or bead_by_bead(self.sizes, part)
        most = (self.most_beads or MOST_BEADS) // (len(stretch.breaks) + 1)
        for start, length in stretch.pieces:
            pen = self._pen(stretch.start + start, across)
            if self.upright and shape_of(part).upside_down(self.sizes, part):
                pen = pen.turned(length)
            whole = self._length(stretch, part)
            from_start = start + (whole - stretch.drawn) * (start > stretch.drawn / 2)
            if part.kind.role is Role.STRAND and (self.close or beads):
                strung(pen, self.sizes, part, length, whole, from_start, most)
            elif self.close or self.most_beads:
                worked(pen, self.sizes, part, length, from_start, most=most)
            else:
                banded(pen, self.sizes, part, length)
        half = self.sizes.across(part) / 2 + 1.0
        for start in stretch.breaks:
            gap(self._pen(stretch.start, across), start, start + GAP, half)

    def _on_course(self, stretch: Stretch, part: Part, order: int) -> None:
        """A worked part as it is worn: a band from its edge, for it does not bend in its plane.

        Strands that come to loops of their own lie beside each other, the others in one bundle.
        """
        whole = self._length(stretch, part)
        apart = bool(stretch.entry.beside) and at_holes(self.plan, stretch.entry) is not None
        across = self._lane(stretch, order) if apart else 0.0
        pen = self._pen(stretch.start, across, longer=whole - stretch.length)
        if part.kind.role is Role.STRAND and bead_by_bead(self.sizes, part):
            strung(pen, self.sizes, part, whole, whole)
        elif part.kind.role is Role.BAND:
            pen.box(0, whole, self._thick(part), self.sizes.from_afar(part))
        elif self.most_beads:
            worked(pen, self.sizes, part, whole, most=self.most_beads)
        else:
            banded(pen, self.sizes, part, whole)

    def _thick(self, part: Part) -> float:
        """How thick a band is, and what closes it."""
        return self.sizes.known(part, "outside", _THIN)

    def _sagging(self, stretch: Stretch, part: Part) -> None:
        whole = self._length(stretch, part)
        curve = sagging(stretch.start, stretch.length, whole, self._straight(stretch))
        self.canvas.curve([(x, y) for _, x, y in curve], "thread")
        for along, bead, _ in bead_places(self.sizes, part, whole):
            one_bead(Pen(self.canvas, *point_on(curve, along)), self.sizes, bead, 0)

    def _straight(self, stretch: Stretch) -> float:
        """How far strands run straight from either end, in the cone that gathers them there."""
        at = self.run.index(stretch)
        ends = (
            one.entry.part for one in (*self.run[max(at - 1, 0) : at], *self.run[at + 1 : at + 2])
        )
        deep = (self.sizes.known(one, "depth", 0.0) for one in ends if one.kind.role is Role.CONE)
        return max(deep, default=0.0)

    def _sags(self, stretch: Stretch) -> bool:
        """Whether strands are drawn as they hang from one spot; those at loops of their own lie."""
        if self.close or len(stretch.entry.parts) == 1 or not stretch.is_worked:
            return False
        return self.upright or at_holes(self.plan, stretch.entry) is None

    def _lane(self, stretch: Stretch, order: int) -> float:
        """Where a strand lies across, of several side by side."""
        eyes, apart = at_holes(self.plan, stretch.entry), 0.0
        if eyes is not None:
            apart = self.sizes.known(eyes.part, f"{eyes.key}.spacing", 0.0)
        widths = [max(self.sizes.across(part) + 0.6, apart) for part in stretch.entry.parts]
        return sum(widths[:order]) + (widths[order] - sum(widths)) / 2

    def _show_run(self, index: int, stretch: Stretch) -> None:
        beside = (*self.run[max(index - 1, 0) : index], *self.run[index + 1 : index + 2])
        near = frozenset(part.name for one in beside for part in one.entry.parts)
        near |= {one.entry.called for one in beside}
        entry = stretch.entry
        for order, part in enumerate(entry.parts):
            shape = shape_of(part, entry.half)
            along, reach = stretch.middle, shape.reach(self.sizes, part)
            if part.kind.role is Role.STRAND:
                reach = self.sizes.longest_bead(part) / 4
            across = -reach
            if shape.spot is not None:
                along, across = shape.spot(self.sizes, part, stretch.drawn)
                along = stretch.end - along if stretch.turned else stretch.start + along
                reach = abs(across)
            if len(entry.parts) > 1:
                share = 0.2 + 0.6 * order / (len(entry.parts) - 1)
                along = stretch.start + stretch.drawn * share
                across = self._lane(stretch, order)
                if self._sags(stretch):
                    whole = self._length(stretch, part)
                    curve = sagging(stretch.start, stretch.length, whole, self._straight(stretch))
                    along, across = point_on(curve, whole * share)
            spot = (reach, along) if self.upright else (along, across)
            x, y = within(spot, self._boxes[entry, order])
            self.shown.append(
                Shown(
                    part, entry.half, entry.linked, x, y, near, entry.place,
                    level=not entry.beside,
                )
            )  # fmt: skip

    def _show_hung(self, part: Part, times: int, x: float, y: float, line: Hung) -> None:
        near = frozenset({line.part.name, line.source.name})
        self.shown.append(Shown(part, "", times, x, y, near, line.place, hung=True))

    def words(self, one: Shown, *, size: bool = True) -> str:
        """A part's name, how many of it, and the size that its look names."""
        words = one.called
        words += f" \N{MULTIPLICATION SIGN}{one.times}" if one.times > 1 else ""
        look = one.part.kind.look
        for what, after in (look.second_label if one.half == "b" else look.label) if size else ():
            found = self.sizes.mm(one.part, what)
            if found is not None:
                return f"{words}, {number(found)} mm {after}"
        return words


def hangs(plan: Plan) -> bool:
    """Whether a piece is drawn as it hangs, from the top down."""
    if any(entry.part.kind.look.hangs for entry in plan.run):
        return True
    clasped = any(entry.half for entry in plan.run)
    return plan.piece in _HUNG and not clasped and not plan.is_loop
