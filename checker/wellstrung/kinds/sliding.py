"""Sliding knots: the cord ends of a piece lie over each other, and knots slide along them.

Of two knots each end is tied round the other, and pulled apart they lie at the work. One knot of a
cord of its own lies over both ends, each of which has a stopper knot. Geometry of this project;
how thick a knot comes out is from memory.
"""

from __future__ import annotations

from wellstrung import tables
from wellstrung.derived.declared import formula, from_table, size, written_or
from wellstrung.formulas.knots import of_turns, taken_by_turns
from wellstrung.model.parts import Part
from wellstrung.model.plan import Quantities
from wellstrung.quantity.arithmetic import derived, exact, leaf, product, times
from wellstrung.quantity.causes import Cause, Spread
from wellstrung.quantity.value import Quantity

#: turns in a knot where the plan writes none: one page has 4 to 6, "How to Make Cord Bracelet
#: Adjustable" (copy seen)
_TURNS = 4
#: cord that is left to hold while a knot is drawn tight, mm: common practice, no source
_TO_HOLD = 50.0


def reach(ends: float, knot: float, two: float) -> float:
    """How much longer the piece is with its knots slid together, mm.

    With two knots the end of each cord comes up to the other's knot; with one, both stoppers come
    up to it. Geometry of this project; no published figure.

    >>> reach(ends=80.0, knot=5.0, two=1), reach(ends=80.0, knot=5.0, two=0)
    (70.0, 150.0)
    """
    return two * (ends - 2 * knot) + (1 - two) * 2 * (ends - knot)


def knots(part: Part) -> int:
    """How many knots slide: two, or one of a cord of its own."""
    return part.count("sliding", "knots", default=2)


def _line(part: Part, ask: Quantities) -> Quantity:
    """The cord of what ends in the knots."""
    if not part.traits.slides:
        raise part.missing("sliding")
    work = next((one for one in ask.plan.met[part] if one.takes("thread")), None)
    if work is None:
        raise part.missing("sliding", "knot")
    return ask.of(work, "line")


def _turns(part: Part, ask: Quantities) -> Quantity:
    return exact(f"{part.name}.turns", part.count("sliding", "turns", default=_TURNS))


def _wraps(part: Part, ask: Quantities) -> Quantity:
    """How often cord lies round both ends: once a turn; twice in a square knot, of two halves."""
    return times(_turns(part, ask), 1 if knots(part) > 1 else 2)


def _takes(knot: str, part: Part) -> Quantity:
    """What one knot takes of a cord that ties it, in cords."""
    row, cure = tables.load("knots").row(knot), "tie one, and note the cord that it takes"
    cause = Cause(f"how the {knot} is tied", f"`{part.name}`", cure)
    return from_table(f"{knot} takes", "knots", row, "takes", cause)


def _tight(part: Part, ask: Quantities) -> Quantity:
    cure = f"tie one, measure it and write `sliding: {{knot: ...}}` in `{part.name}`"
    cause = Cause("how tight the knot is drawn", f"`{part.name}`", cure)
    return leaf("tightness", 1.0, "", [Spread(cause, 0.15, 0.3)], source="from memory")


_ENDS = size("sliding", "ends", allowance="part length")
KNOT = written_or(
    size("sliding", "knot", allowance="part length"),
    ("sliding", "knot"),
    otherwise=formula("knot", "mm", of_turns, turns=_wraps, line=_line, tight=_tight),
)


def shut(part: Part, ask: Quantities) -> Quantity:
    """From work to work where the piece is shortest."""
    return _ENDS(part, ask) if knots(part) > 1 else ask.of(part, "knot")


def extends(part: Part, ask: Quantities) -> Quantity:
    """How much longer the piece is where it is widest."""
    if not part.traits.slides:
        raise part.missing("sliding")
    return derived(
        f"{part.name}.extends",
        "mm",
        reach,
        ends=_ENDS(part, ask),
        knot=ask.of(part, "knot"),
        two=exact("two knots", float(knots(part) > 1)),
        source="geometry of this project",
    )


def tail(part: Part, ask: Quantities) -> Quantity:
    """The cord to leave at either end of the work: as far as it reaches, its knot, and to hold."""
    line = _line(part, ask)
    if knots(part) > 1:
        knot = derived(
            f"cord in a knot of {part.name}",
            "mm",
            taken_by_turns,
            turns=_turns(part, ask),
            line=line,
            source="geometry of this project",
        )
    else:
        knot = product(f"cord in a stopper of {part.name}", "mm", _takes("overhand", part), line)
    return derived(
        f"{part.name}.tail",
        "mm",
        lambda ends, knot: ends + knot + _TO_HOLD,
        ends=_ENDS(part, ask),
        knot=knot,
        source="geometry of this project, and 5 cm to hold: common practice, no source",
    )


def own_cord(part: Part, ask: Quantities) -> Quantity:
    """The cord of one knot that is tied over both ends."""
    if knots(part) > 1:
        raise part.missing("sliding", "knots")
    return derived(
        f"{part.name}.cord",
        "mm",
        lambda turns, square, line: 2 * turns * square * line + 2 * _TO_HOLD,
        turns=_turns(part, ask),
        square=_takes("square over two cords", part),
        line=_line(part, ask),
        source="either end of it ties every knot: counting",
    )
