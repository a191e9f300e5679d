"""What swatches teach: their readings held against what the tables expect, as `Learnt`.

Each reading is a sum of causes: the size of the bead's lot, the hand in that stitch, that hand on
that day, and the gauge. What they share with other work is kept (`quantity.conditioning`).
"""

from __future__ import annotations

import math
import statistics
from collections.abc import Mapping, Sequence

from msgspec.structs import replace

from wellstrung.common import units
from wellstrung.common.places import Fault, Place
from wellstrung.derived.learnt import identity, lot_of, work_of
from wellstrung.derived.of_plan import Quantities
from wellstrung.judging.readings import (
    BEADS,
    BEADWORK,
    COVERS,
    IN_ROWS,
    SCALES,
    TO_BEAD,
    WEIGHED,
    Measured,
    Swatch,
    measured,
)
from wellstrung.model.item import Missing
from wellstrung.quantity.causes import Cause, Hand
from wellstrung.quantity.conditioning import Key, Reading, conditioned
from wellstrung.quantity.value import Quantity
from wellstrung.quantity.working import number
from wellstrung.reading.faults import fault
from wellstrung.reading.learnt import Learnt, LearntCause

_DAY = {"hand": "hand from day to day", "rate": "timing from day to day"}
#: the settings that are for swatches alone
SETTINGS = frozenset({BEADWORK, BEADS, SCALES, TO_BEAD, *_DAY.values()})
#: so many standard deviations off what the tables expect is no chance
_FAR = 3.0
#: so many, and it is another bead, another count or a slip of the pen
_NO_CHANCE = 6.0
#: what is assumed from day to day counts as much as this many swatches beyond the first
_ASSUMED = 2.0
#: however little a factor is, a hand is off itself by this share of the range between makers, from
#: memory: knots and nets differ widely from maker to maker, and so they do from day to day
_AT_LEAST = 0.2
#: a step for a slope, in half ranges
_STEP = 0.05
#: so few swatches show nothing of how the hand varies
_FEWEST = 3


def taught(swatches: Sequence[Swatch], ask: Quantities, maker: str, faults: list[Fault]) -> Learnt:
    """All that swatches teach; what is wrong with them is added to `faults`."""
    found: list[Measured] = []
    for swatch in swatches:
        try:
            found += measured(swatch, ask, maker)
        except Missing as lacks:
            says = f"`{swatch.name}` needs {lacks.field}: write it where that stands"
            faults.append(fault(says, swatch.node.place))
        except units.UnitFault as wrong:
            faults.append(fault(f"`{swatch.name}`: {wrong.says}", swatch.node.place))
    return _Hand(ask, maker).learnt(found)


class _Hand:
    """The readings of one bench as a system of causes."""

    def __init__(self, ask: Quantities, maker: str) -> None:
        self.ask, self.maker = ask, maker
        self.bench = ask.plan.bench
        #: of each cause that is kept: the leaf that it moves, the cause itself, and its swatches
        self.leaves: dict[Key, tuple[Quantity, Cause]] = {}
        self.by: dict[Key, dict[Place, None]] = {}

    def learnt(self, found: Sequence[Measured]) -> Learnt:
        """What all readings teach together; those of swatches that cannot be right are left out."""
        doubts, wrong = [], set[str]()
        for one in found:
            if doubt := self._doubt(one):
                doubts.append((one.swatch.node.place, doubt[0]))
                if not doubt[1]:
                    wrong.add(one.swatch.name)
        trusted = [one for one in found if one.swatch.name not in wrong]
        parts = [(one, self._causes(one)) for one in trusted]
        days = self._days(parts)
        prior: dict[Key, float] = {}
        readings = [self._as_reading(one, causes, days, prior) for one, causes in parts]
        keep = sorted(self.by)
        left = conditioned(readings, keep, prior)
        if any(one.what == WEIGHED for one in trusted):
            there = [self._as_reading(*of, days, prior, left.shifts) for of in parts]
            left = conditioned(there, keep, prior)
        rows = [
            self._row(key, left.shifts[key], left.loadings[key], math.sqrt(1 - prior.get(key, 1.0)))
            for key in keep
        ]
        return Learnt(tuple(rows), tuple(sorted(doubts)), self.maker, self.maker)

    def _doubt(self, one: Measured) -> tuple[str, bool] | None:
        """What to measure again of a swatch that contradicts the tables, and whether it is used."""
        day = self._share("rate" if one.what == "time" else "hand") * one.expected.middle
        error = math.hypot(*one.expected.tilts.values(), one.gauge, one.scatter, day)
        off = abs(one.found - one.expected.middle) * COVERS / error
        if off <= _FAR:
            return None
        unit, likely = one.expected.unit or "mm", one.expected.likely
        again = f"measure its `{one.what}` again, count it, and look which bead it is"
        if one.what == "time":
            again = "time it again, and count what was done"
        elif one.what == WEIGHED:
            again = "weigh them again without their bag, count them, and look which bead it is"
        taken = "is not used" if off > _NO_CHANCE else "is used all the same"
        says = (
            f"`{one.swatch.name}` has {number(one.found)} {unit} (`{one.what}`), and the tables"
            f" expect {number(likely.low)}..{number(likely.high)} {unit}: {again}; it {taken}"
        )
        return says, off <= _NO_CHANCE

    def _causes(self, one: Measured) -> dict[Cause, Key]:
        """The causes that a swatch shares with other work, each with its key."""
        found: dict[Cause, Key] = {}
        for of in one.expected.leaves:
            for spread in of.spreads:
                key = self._key(one.swatch, spread.cause)
                if key is not None:
                    found[spread.cause] = key
                    self.leaves.setdefault(key, (of, spread.cause))
        return found

    def _key(self, swatch: Swatch, cause: Cause) -> Key | None:
        scope = cause.scope.strip("`")
        part, bead = self.ask.plan.parts.get(scope), self.ask.plan.beads.get(scope)
        if isinstance(cause, Hand) and part is not None and part.stitch is not None:
            hand = swatch.text("hand", self.maker)
            return ("hand", hand, part.stitch.name, *work_of(part), cause.name)
        if bead is not None:
            return ("bead", scope, cause.name)
        return ("rate", cause.name) if not scope and swatch.has("time") else None

    def _share(self, of: str) -> float:
        """How far the hand is off itself from day to day, as a share."""
        return self.bench.allowances[_DAY[of]].value

    def _assumed_day(self, key: Key) -> float:
        """The same in half ranges of a cause, before its own swatches say more."""
        if key[0] == "bead":
            return 0.0
        of, cause = self.leaves[key]
        half = sum(one.down + one.up for one in of.spreads if one.cause == cause) / 2
        return min(1.0, max(_AT_LEAST, self._share(key[0]) * abs(of.at_rest) / half))

    def _days(self, parts: Sequence[tuple[Measured, Mapping[Cause, Key]]]) -> dict[Key, float]:
        """How far each hand is off itself from day to day, in half ranges of each of its causes.

        What is assumed is set right by how far the swatches of one hand in one stitch scatter:
        their variance about the mean of those of one sort, over what is assumed, pooled.
        """
        sorts: dict[tuple[Key, str, object], list[float]] = {}
        names: dict[Key, set[str]] = {}
        for one, causes in parts:
            hands = [key for key in causes.values() if key[0] != "bead"]
            moves = [
                self._assumed_day(key) * one.expected.tilts[cause]
                for cause, key in causes.items()
                if key[0] != "bead" and cause in one.expected.tilts
            ]
            off = math.hypot(*moves)
            if hands and off:
                work = min(hands)[:-1] if hands[0][0] == "hand" else min(hands)
                names.setdefault(work, set()).add(one.swatch.name)
                sort = (work, one.what, str(one.swatch.bead))
                sorts.setdefault(sort, []).append((one.found - one.expected.middle) / off)
        found: dict[Key, float] = {}
        for work, of in names.items():
            ratio = 1.0
            if len(of) >= _FEWEST:
                alike = [offs for sort, offs in sorts.items() if sort[0] == work]
                spread = sum(
                    COVERS**2 * statistics.variance(one) * (len(one) - 1)
                    for one in alike
                    if len(one) > 1
                )
                free = sum(len(one) - 1 for one in alike)
                # the sizes of one swatch share its day, and count as one
                own = min(free, len(of) - 1)
                pooled = spread / free if free else 1.0
                ratio = math.sqrt((_ASSUMED + pooled * own) / (_ASSUMED + own))
            found[work] = ratio
        return {
            key: min(1.0, self._assumed_day(key) * found.get(key[:-1], found.get(key, 1.0)))
            for key in self.leaves
        }

    def _as_reading(
        self,
        one: Measured,
        causes: Mapping[Cause, Key],
        days: Mapping[Key, float],
        prior: dict[Key, float],
        shifts: Mapping[Key, float] | None = None,
    ) -> Reading:
        """A measurement as a sum of causes, at rest or where `shifts` has them."""
        off, tilts = _straight(one, {c: shifts[k] for c, k in causes.items()} if shifts else {})
        slopes: dict[Key, float] = {}
        by_hand = False
        for cause, tilt in tilts.items():
            key = causes.get(cause)
            if key is None:
                slopes["own", one.swatch.name, str(cause)] = tilt
                continue
            slopes[key] = slopes.get(key, 0.0) + tilt
            self.by.setdefault(key, {})[one.swatch.node.place] = None
            if key[0] != "bead":
                by_hand = True
                day = ("day", one.swatch.name, *key)
                slopes[day] = slopes.get(day, 0.0) + tilt
                prior[key], prior[day] = 1 - days[key] ** 2, days[key] ** 2
        slopes["gauge", one.what] = one.gauge
        beads = one.what in (*IN_ROWS, WEIGHED)
        own = 0.0 if by_hand or beads else self._share("hand") * one.expected.middle
        return Reading(off, slopes, one.scatter**2 + own**2)

    def _row(self, key: Key, shift: float, loadings: tuple[float, ...], day: float) -> LearntCause:
        of, cause = self.leaves[key]
        spread = next(one for one in of.spreads if one.cause == cause)
        row = LearntCause(
            *(key[0], "", key[-1], shift, loadings, of.at_rest, spread.down, spread.up),
            unit=of.unit or _share_of(key),
            by=tuple(sorted(self.by[key])),
            day=day,
        )
        if key[0] == "hand":
            _, hand, stitch, thread, passes, _ = key
            return replace(row, whose=stitch, hand=hand, thread=thread, passes=passes)
        if key[0] == "rate":
            return row
        whose, _, lot = key[1].partition(" lot ")
        bead = identity(self.ask.plan.beads[key[1]])
        return replace(row, whose=whose, bead=bead, lot=lot_of(lot))


def _straight(one: Measured, moved: Mapping[Cause, float]) -> tuple[float, Mapping[Cause, float]]:
    """How far a measurement is off what is expected, and the slopes of what moves that.

    Twice as many beads to the gram weigh half as much: over a range of a fifth one slope is off by
    more than good scales are. So a mass takes its slopes where its causes went at first (one step
    of Gauss and Newton); sizes are close enough to straight.
    """
    expected, tilts = one.expected, one.expected.tilts
    if one.what != WEIGHED or not moved:
        return one.found - expected.middle, tilts
    here = {}
    for cause, by in moved.items():
        ends = [expected.at({**moved, cause: by + step}) for step in (-_STEP, _STEP)]
        here[cause] = (ends[1] - ends[0]) / (2 * _STEP)
    line = math.fsum(here[cause] * by for cause, by in moved.items())
    return one.found - expected.at(moved) + line, {**tilts, **here}


def _share_of(key: Key) -> str:
    """What a cause without a unit is counted in: beads of a gram, or a share of the bead.

    >>> _share_of(("bead", "kelp", "8/0 bead per gram")), _share_of(("bead", "foam", "cube length"))
    ('to the gram', 'x its size')
    """
    if key[0] != "bead":
        return ""
    of = {"per gram": "to the gram", "shape": "of its block"}
    return next((unit for what, unit in of.items() if key[-1].endswith(what)), "x its size")
