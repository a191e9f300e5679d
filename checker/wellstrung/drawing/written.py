"""What is written on a drawn piece: names and marks, a ruler below it, a bar to check its scale."""

from __future__ import annotations

import math

from wellstrung.drawing import labels
from wellstrung.drawing.labels import Label, Mark
from wellstrung.drawing.laid_out import LaidOut, Shown
from wellstrung.drawing.layout import WORKED
from wellstrung.judging.result import PlanResult, Remark
from wellstrung.model.parts import Part

#: the least that a check bar, and a step of a ruler, take on the page, mm
_LEAST_BAR, _LEAST_STEP = 15.0, 2.4
#: height of the words under rulers and bars on the page, mm
_SMALL = 2.3


class Written:
    """Names, marks, ruler and bar of one drawing; `marked` are the remarks that have a mark."""

    def __init__(self, result: PlanResult, piece: LaidOut) -> None:
        self.result, self.piece, self.canvas = result, piece, piece.canvas
        self.unit = 1 / self.canvas.scale
        self.marked: set[int] = set()
        self._label()
        if not piece.close:
            self._ruler()
        self._check_bar()

    def _label(self) -> None:
        """Names with their marks: of all parts close up, else of what is worked or marked.

        Where nothing hangs they stand by turns above and below the run.
        """
        piece, marks = self.piece, self._marks()
        top, bottom = piece.edges
        run = [one for one in piece.shown if not one.hung]
        hung = [one for one in piece.shown if one.hung]
        named: set[Part] = set()
        found: dict[int, Label] = {}
        for one in self.piece.shown:
            tell = one.part not in named
            named.add(one.part)
            words = piece.words(one, size=tell or bool(one.half))
            found[id(one)] = Label(one.x, one.y, words, marks.get(id(one), ()))
        if piece.upright:
            edge = max(self.canvas.extent[2], piece.hanging.right)
            labels.beside(self.canvas, list(found.values()), edge)
        elif piece.close:
            mine = [found[id(one)] for one in run]
            below = [] if hung else mine[1::2]
            labels.above(self.canvas, [one for one in mine if one not in below], top)
            labels.below(self.canvas, below, bottom)
            names = [found[id(one)] for one in hung]
            labels.beside(self.canvas, names, piece.hanging.right, bottom)
        else:
            told = [one for one in run if one.part.kind.role in WORKED or id(one) in marks]
            labels.above(self.canvas, [found[id(one)] for one in told], top)
            marks_hung = [found[id(one)] for one in hung if id(one) in marks]
            labels.beside(self.canvas, marks_hung, piece.hanging.right, bottom)

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
            mine = [one for one in self.piece.shown if one.part.name == name]
            if mine:
                return max(mine, key=lambda one: len(one.near & names))
        return None

    def _ruler(self) -> None:
        """A ruler below the run in cm, as long as the piece, and the window that is wanted."""
        last = self.piece.run[-1]
        end = last.start + last.drawn
        y = self.canvas.extent[3] + 6 * self.unit
        known = self.result.quantities.get("piece.length")
        told = "piece.length" if known is not None and abs(known.middle - end) < 0.01 else ""
        self.canvas.box(0, y, end, 0.9 * self.unit, "ruler", told, "width" if told else "")
        step = _round_length(_LEAST_STEP * self.unit, least=10.0)
        for count in range(math.floor(end / step) + 1):
            long = count % 5 == 0
            foot = y + (3.4 if long else 2.2) * self.unit
            self.canvas.line(count * step, y, count * step, foot, "tick")
            if long:
                words = f"{count * step / 10:g}" + (" cm" if count == 0 else "")
                self.canvas.text(count * step, y + 6.4 * self.unit, words, "small-words", _SMALL)
        self._mark_whole(end + 2 * self.unit, y)
        goal = self.piece.plan.goal
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
        length = _round_length(_LEAST_BAR * self.unit, least=1.0)
        left, y = self.canvas.extent[0], self.canvas.extent[3] + 4 * self.unit
        self.canvas.box(left, y, length, 1.4 * self.unit, "bar")
        words = f"{length:g} mm"
        x = left + length + 1.5 * self.unit
        self.canvas.text(x, y + 1.6 * self.unit, words, "small-words", _SMALL, "start")


def _round_length(mm: float, *, least: float) -> float:
    """The next round length from `mm` on, at least `least`: 1, 2 or 5 with noughts.

    >>> _round_length(15.0, least=1.0), _round_length(7.2, least=10.0), _round_length(45, least=1)
    (20.0, 10.0, 50.0)
    """
    ten = 10.0 ** math.floor(math.log10(max(mm, least)))
    return next(ten * by for by in (1, 2, 5, 10) if ten * by >= max(mm, least) - 1e-9)
