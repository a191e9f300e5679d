"""Sizes that the plan does not state and the trade tables give: the span of all that is sold."""

from __future__ import annotations

from msgspec.structs import replace

from wellstrung.quantity.causes import Spread
from wellstrung.quantity.choices import replaced, with_leaf
from wellstrung.quantity.value import Quantity
from wellstrung.quantity.verdict import Verdict, compare

#: the grade of such a value, whatever the grade of the table's own
ASSUMED = "assumed"
#: Grades of a value that makes no error alone, and how a remark calls such a value.
UNSURE = {
    "from memory": "a value from memory",
    "weak page": "a value from a weak page",
    ASSUMED: "an assumed size",
}
#: How many times its span such a value may be off, of our own choice: what is assumed has the span
#: of all that is sold, and what one remembers may be remembered wrong.
_OFF = {"from memory": 3, "weak page": 3, ASSUMED: 2}


def assumed_in(quantity: Quantity) -> list[Quantity]:
    """The assumed values under a quantity, each once."""
    return [leaf for leaf in quantity.leaves if leaf.grade == ASSUMED]


def rests_on(margin: Quantity, *, over: str) -> list[Quantity]:
    """The assumed values by which alone a margin may fail; empty where something else does.

    A margin that holds somewhere in their span has to be looked at, and so has one whose doubt is
    mostly of them. Of several, those that matter most.
    """
    reach = {leaf.name: _reach(margin, leaf) for leaf in assumed_in(margin)}
    most, chief = max(reach.values(), default=0.0), margin.chief_cause
    if not most or chief is None:
        return []
    doubtful = compare(margin, over=over) is Verdict.MAY_FAIL and most >= chief[1]
    if not doubtful and compare(_kindest(margin), over=over) is not Verdict.HOLDS:
        return []
    return [leaf for leaf in assumed_in(margin) if reach[leaf.name] > most / 2]


def fails_anyway(margin: Quantity, *, over: str) -> bool:
    """Whether a margin fails even where each value that is unsure is off by far more than its span.

    A value without a span may be off by anything, unless it is an assumed one that is made up for.

    >>> from wellstrung.quantity.arithmetic import exact, leaf
    >>> from wellstrung.quantity.causes import Cause
    >>> bar = leaf("bar", 4.0, "mm", [Spread(Cause("bar"), 1.0, 1.0)], grade=ASSUMED)
    >>> [fails_anyway(bar - exact("least", least, "mm"), over="likely") for least in (5.9, 6.1)]
    [False, True]
    """
    for leaf in margin.leaves:
        times = _OFF.get(leaf.grade)
        if times is None:
            continue
        varies = any(one.down or one.up for one in leaf.spreads)
        if not varies and leaf.grade != ASSUMED:
            return False
        off = [Spread(one.cause, times * one.down, times * one.up) for one in leaf.spreads]
        margin = with_leaf(margin, leaf, replace(leaf, spreads=tuple(off)))
    return compare(margin, over=over) is Verdict.FAILS


def _kindest(margin: Quantity) -> Quantity:
    """A margin where each assumed value is the one within its span that helps."""
    for leaf in assumed_in(margin):
        ends = (leaf.worst.low, leaf.at_rest, leaf.worst.high)
        margin = max((replaced(margin, leaf, end) for end in ends), key=lambda one: one.middle)
    return margin


def _reach(margin: Quantity, leaf: Quantity) -> float:
    """How far the causes of an assumed value may move a margin, each by itself."""
    moves = (margin.effects.get(spread.cause) for spread in leaf.spreads)
    return max((max(-move.low, move.high) for move in moves if move), default=0.0)
