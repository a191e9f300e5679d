"""What was measured of a swatch: each reading, what the tables expect of it, and how sure it is.

The gauge is one error for all readings of a sort, since the same calipers are laid on in the same
way; half of it comes anew with each reading. A half range stands for two standard deviations (NIST
Technical Note 1297, section 6), wherever readings scatter.
"""

from __future__ import annotations

import math
import statistics
from collections.abc import Callable, Iterator
from typing import NamedTuple

from msgspec import Struct

from wellstrung.common import units
from wellstrung.common.wording import either
from wellstrung.derived.of_plan import Quantities
from wellstrung.model.parts import Stitch
from wellstrung.quantity.arithmetic import derived, exact, product, times
from wellstrung.quantity.value import Quantity
from wellstrung.reading import tree
from wellstrung.work.minutes import pace, rate_of

#: whose hand it is where a class was timed
STUDENTS = "students"
BEADWORK, BEADS, SCALES = "gauge on beadwork", "gauge on beads", "gauge of scales"
TO_BEAD = "bead to bead"
#: a half range in standard deviations
COVERS = 2.0
#: how much of the gauge comes anew each time that it is laid on: from memory
_ANEW = 0.5
#: what is measured of work, and the quantity of the part that it is
SIZES = {
    **{what: what for what in ("outside", "width", "thickness", "inside", "length")},
    "thread_used": "thread",
}
#: what is measured of beads in a row, and the size of one that adds up
IN_ROWS = {"in_a_row": "length", "side_by_side": "outside"}
#: what is weighed of beads
WEIGHED = "mass"
#: how far one bead is off its lot in mass, in that of a size: it grows with its length and twice
#: with its outside, each off by itself
_BY_SIZE = math.hypot(1, 2)


class Swatch(Struct):
    """A swatch of the bench: its node, its stitch, and the part and the bead that stand for it."""

    name: str
    node: tree.Mapping
    stitch: Stitch | None
    part: tree.Mapping | None
    bead: object

    def has(self, field: str) -> bool:
        """Whether the maker wrote the field."""
        return field in self.node.entries

    def text(self, field: str, default: str = "") -> str:
        """A field as written."""
        entry = self.node.entries.get(field)
        return " ".join(str(entry.node.value).split()) if entry is not None else default


class Measured(NamedTuple):
    """One measurement of a swatch: what is expected of it, what was found, and how sure."""

    swatch: Swatch
    what: str
    expected: Quantity
    found: float
    gauge: float
    scatter: float


def measured(swatch: Swatch, ask: Quantities, maker: str) -> Iterator[Measured]:
    """All that was measured of a swatch, `maker` being whose bench it is; raises UnitFault."""
    allowances, beads = ask.plan.bench.allowances, ask.plan.beads
    beadwork, on_beads = allowances[BEADWORK].value, allowances[BEADS].value
    part = ask.plan.parts.get(swatch.name)
    for what, quantity in SIZES.items():
        if swatch.has(what) and part is not None:
            given = swatch.stitch.quantities if swatch.stitch is not None else ()
            if quantity not in given:
                gives = [f"`{one}`" for one, name in SIZES.items() if name in given]
                says = f"`{what}` is no size of {part.text('stitch')}: write {either(gives)}"
                raise units.UnitFault(says)
            found, gauge, scatter = _read(swatch, what, beadwork)
            yield Measured(swatch, what, ask.of(part, quantity), found, gauge, scatter)
    count = int(swatch.text("count", "1"))
    for what, size in IN_ROWS.items():
        if swatch.has(what):
            bead = beads[str(swatch.bead)]
            found, gauge, scatter = _read(swatch, what, on_beads)
            alike = allowances[TO_BEAD].value * found / math.sqrt(count)
            row = times(ask.of(bead, size), count)
            yield Measured(swatch, what, row, found, gauge, math.hypot(scatter, alike))
    if swatch.has(WEIGHED):
        per_gram = ask.of(beads[str(swatch.bead)], "per_gram")
        found, gauge, scatter = _read(swatch, WEIGHED, allowances[SCALES].value, units.mass)
        alike = _BY_SIZE * allowances[TO_BEAD].value * found / math.sqrt(count)
        name = f"{swatch.name}.mass"
        weight = derived(
            name, "g", lambda count, each: count / each, count=exact("beads", count), each=per_gram
        )
        yield Measured(swatch, WEIGHED, weight, found, gauge, math.hypot(scatter, alike))
    if swatch.has("adds") and part is not None:
        found, gauge, scatter = _read(swatch, "adds", on_beads)
        knots = times(ask.of(part, "knot"), int(swatch.text("knots")))
        yield Measured(swatch, "adds", knots, found, gauge, scatter)
    if swatch.has("time") and swatch.text("hand", maker) in (maker, STUDENTS):
        yield _timed(swatch, ask, count, maker)


def _read(
    swatch: Swatch,
    what: str,
    gauge: float,
    parse: Callable[[str], units.Parsed] = units.size,
) -> tuple[float, float, float]:
    """What was measured, mm or g: the mean of all readings, the gauge, and how far they scatter."""
    node = swatch.node.entries[what].node
    written = node.value if isinstance(node.value, list) else [node.value]
    read = [parse(str(text)) for text in written]
    off = max((one.high - one.low) / 2 for one in read)
    beyond = math.sqrt(max(0.0, off * off - gauge * gauge))  # a tolerance wider than the gauge
    values = [one.value for one in read]
    scatter = statistics.stdev(values) if len(values) > 1 else 0.0
    anew = max(gauge * _ANEW, COVERS * scatter) / math.sqrt(len(values))
    return statistics.fmean(values), gauge, math.hypot(anew, beyond)


def _timed(swatch: Swatch, ask: Quantities, count: int, maker: str) -> Measured:
    """Beads in a minute, or minutes of a step; of a class, at the students' pace."""
    plan, minutes = ask.plan, units.duration(swatch.text("time")).value
    if swatch.has("do"):
        found, name = minutes / int(swatch.text("times", "1")), swatch.text("do")
    else:
        assert swatch.stitch is not None
        strung = swatch.stitch.makes == "strand"
        found, name = count / minutes, "stringing" if strung else swatch.stitch.name
    rate = rate_of(plan, name)
    if swatch.text("hand", maker) == STUDENTS:
        paced = pace(plan, "student")
        if swatch.has("do"):
            rate = product("students", rate.unit, rate, paced)
        else:
            rate = derived(
                "students", rate.unit, lambda rate, paced: rate / paced, rate=rate, paced=paced
            )
    return Measured(swatch, "time", rate, found, 0.0, 0.0)
