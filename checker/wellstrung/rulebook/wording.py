"""Values in words, as the author of the plan writes them."""

from __future__ import annotations

import math
from collections.abc import Sequence

from wellstrung.common import units
from wellstrung.common.wording import article as article
from wellstrung.common.wording import either as either
from wellstrung.common.wording import hours as hours
from wellstrung.common.wording import in_steps as in_steps
from wellstrung.common.wording import in_yaml as in_yaml
from wellstrung.common.wording import listed as listed
from wellstrung.common.wording import together as together
from wellstrung.model.plan import Step
from wellstrung.quantity.value import Quantity
from wellstrung.quantity.working import number as number

#: Narrower than this, mm, a range has no size inside it that a shop could name.
_STEP = 0.01


def spelled(quantity: Quantity) -> str:
    """A value as the author wrote it; one that was worked out, with its likely range."""
    if quantity.spelling and _unit(quantity, quantity.unit) == "N":
        return f"{quantity.spelling}, or {units.hanging(quantity.middle)} hanging"
    if quantity.spelling:
        return quantity.spelling
    return about(quantity)


def about(quantity: Quantity, like: Quantity | None = None) -> str:
    """A value with its likely range, in the unit that `like` was written in."""
    model = like or quantity
    middle = in_unit_of(quantity.middle, model)
    ends = {in_unit_of(end, model) for end in quantity.likely}
    if ends == {middle}:
        return middle  # a range too narrow to print
    return f"{middle}, likely {between(*quantity.likely, model)}"


def between(low: float, high: float, like: Quantity) -> str:
    """A range in the unit that `like` was written in, as one would write it in a plan."""
    return _range(low, high, like, "nearest", "nearest")


def within(low: float, high: float, like: Quantity) -> str:
    """A range to stay in: its ends rounded inwards, where there is room for it."""
    inwards = _range(low, high, like, "up", "down")
    return inwards if high - low > 2 * _STEP else between(low, high, like)


def _range(low: float, high: float, like: Quantity, first: units.Side, last: units.Side) -> str:
    unit = _unit(like, like.unit)
    if unit == "N":
        begins, ends = units.hanging(low, first), units.hanging(high, last)
    else:
        begins, ends = units.show(low, unit, side=first), units.show(high, unit, side=last)
    if begins == ends:
        return begins
    head, _, named = begins.rpartition(" ")
    return f"{head}..{ends}" if head and ends.endswith(f" {named}") else f"{begins} to {ends}"


def in_unit_of(value: float, like: Quantity, side: units.Side = "nearest") -> str:
    """A value in base units, printed in the unit that `like` was written in.

    A force in newtons is the mass that pulls as much where it hangs.

    >>> from wellstrung.quantity.arithmetic import leaf
    >>> in_unit_of(6.67, leaf("pull", 3.0, "N")), in_unit_of(66.7, leaf("pull", 3.0, "N"))
    ('680 g hanging (6.67 N)', '6.8 kg hanging (66.7 N)')
    """
    unit = _unit(like, like.unit)
    shown = units.show(value, unit, side=side)
    return f"{units.hanging(value, side)} hanging ({shown})" if unit == "N" else shown


def by_ruler(length: float, like: Quantity) -> str:
    """A length in mm that is only roughly known, in the author's unit, as a ruler shows it.

    >>> from wellstrung.quantity.arithmetic import leaf
    >>> by_ruler(27.48, leaf("wanted", 180.0, "mm", spelled_unit="mm"))
    '27 mm'
    >>> by_ruler(27.48, leaf("wanted", 180.0, "mm", spelled_unit="cm"))
    '2.7 cm'
    >>> by_ruler(10.18, leaf("wanted", 381.0, "mm", spelled_unit="in"))
    '3/8 in'
    """
    unit = _unit(like, like.unit)
    if unit.startswith("in"):
        return units.by_length(length, inches=True)
    return units.show(length, unit, {"mm": 0, "cm": 1}.get(unit))


def at_least(value: float, like: Quantity) -> str:
    """A limit that must be reached, rounded up so that what is printed reaches it."""
    return in_unit_of(value, like, "up")


def at_most(value: float, like: Quantity) -> str:
    """A limit that must not be passed, rounded down so that what is printed does not pass it."""
    return in_unit_of(value, like, "down")


def raised(value: Quantity, margin: Quantity, like: Quantity | None = None) -> str:
    """The least that a value needs to be for a margin that grows with it to hold."""
    return at_least(value.middle - margin.likely.low, like or value)


def lowered(value: Quantity, margin: Quantity, like: Quantity | None = None) -> str:
    """The most that a value may be for a margin that shrinks as it grows to hold."""
    return at_most(value.middle + margin.likely.low, like or value)


def spelled_time(minutes: float) -> str:
    """A time as one would write it in a plan.

    >>> spelled_time(20), spelled_time(90), spelled_time(1440)
    ('20 min', '90 min', '24 h')
    """
    if minutes >= 120 and minutes % 60 == 0:
        return f"{number(minutes / 60)} h"
    return f"{number(minutes)} min"


def waited(minutes: float) -> float:
    """A time rounded up as one would wait: to whole minutes, or to hours from two hours on.

    >>> waited(72.3), waited(1483.5)
    (73, 1500)
    """
    if abs(minutes - round(minutes)) < 1e-6:
        return minutes
    whole = 60 if minutes >= 120 else 1
    return math.ceil(minutes / whole) * whole


def plural(count: int, noun: str) -> str:
    """So many of a thing.

    >>> plural(1, "ring"), plural(3, "ring")
    ('1 ring', '3 rings')
    """
    return f"{count} {noun}{'' if count == 1 else 's'}"


def steps_named(steps: Sequence[Step]) -> str:
    """Steps by their numbers: `step 3`, or `steps 3, 4 and 6`."""
    return in_steps([step.number for step in steps])


def often(count: int) -> str:
    """How many times, in words where there are words for it.

    >>> often(1), often(2), often(3)
    ('once', 'twice', '3 times')
    """
    return {1: "once", 2: "twice"}.get(count, f"{count} times")


def _unit(like: Quantity, base: str) -> str:
    return like.spelled_unit or next(
        (leaf.spelled_unit for leaf in like.leaves if leaf.spelled_unit and leaf.unit == base), base
    )
