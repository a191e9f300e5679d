"""What a bench says of the maker's time, classes and fees, from which a price is worked out."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Mapping
from typing import Any

from msgspec import Struct

from wellstrung.common import money, units
from wellstrung.common.money import Money
from wellstrung.common.places import Fault
from wellstrung.reading import tree
from wellstrung.reading.faults import fault


class Pricing(Struct, frozen=True):
    """Prices of an hour and of a meeting, shares, minutes and fees; None for what is not written.

    `wage` is for an hour at the bench, `teaching` for one in class, `room` for a meeting;
    `preparing` are the minutes before a class, `packing` those for one kit. `overhead` is a share
    of materials and hours, `fees` a share of what is paid. `written` has each as its author wrote.
    """

    wage: Money | None = None
    teaching: Money | None = None
    room: Money | None = None
    preparing: float = 0.0
    packing: float = 0.0
    overhead: float = 0.0
    multiplier: float | None = None
    fees: float = 0.0
    class_fee: Money | None = None
    kit_fee: Money | None = None
    written: Mapping[str, str] = {}

    @property
    def currency(self) -> str:
        """The currency of the first amount; empty where there is none."""
        every = (self.wage, self.teaching, self.room, self.class_fee, self.kit_fee)
        return next((one.currency for one in every if one is not None), "")


def _share(written: str | int | float) -> float:
    """A share below 1, as `15 %` or 0.15; raises UnitFault.

    >>> _share("15 %"), _share(0.15)
    (0.15, 0.15)
    """
    found = re.fullmatch(r"(\d+(?:\.\d+)?) ?(%?)", str(written).strip())
    value = float(found[1]) / (100 if found[2] else 1) if found else 1.0
    if value >= 1:
        raise units.UnitFault(f"`{written}` is not a share: write one such as `15 %`", "15 %")
    return value


def _times(written: str | int | float) -> float:
    """A number of times; raises UnitFault."""
    if not re.fullmatch(r"[1-9]\d?(?:\.\d+)?", str(written).strip()):
        raise units.UnitFault(f"`{written}` is not how many times: write a number such as `2.5`")
    return float(written)


_READERS: Mapping[str, Callable[[str | int | float], Any]] = {
    "wage": money.wage,
    "teaching": money.wage,
    "room": money.budget,
    "preparing": lambda written: units.duration(written).value,
    "packing": lambda written: units.duration(written).value,
    "overhead": _share,
    "multiplier": _times,
    "fees": _share,
    "class fee": money.budget,
    "kit fee": money.budget,
}
NAMES = tuple(_READERS)


def read(entries: Iterable[tree.Entry], faults: list[Fault]) -> Pricing:
    """The prices of a bench; what cannot be read is added to the faults.

    All amounts have one currency: nothing is added up over two.
    """
    found: dict[str, Any] = {}
    written: dict[str, str] = {}
    first: Money | None = None
    for entry in entries:
        name = entry.key.text
        if name not in _READERS:
            continue  # the schema says so
        try:
            value = _READERS[name](entry.node.value)
        except units.UnitFault as wrong:
            faults.append(fault(f"`{name}` of `pricing`: {wrong.says}", entry.node.place))
            continue
        if isinstance(value, Money):
            first = first or value
            if value.currency != first.currency:
                says = f"`{name}` of `pricing` is in {value.currency}, and another amount is in"
                says += f" {first.currency}: write all of them in one currency"
                faults.append(fault(says, entry.node.place))
        found[name.replace(" ", "_")] = value
        written[name] = " ".join(str(entry.node.value).split())
    return Pricing(**found, written=written)
