"""Limits of the maker's own: `piece.mass: at most 60 g`, for any quantity by its name.

Before the full stop stands whose quantity it is: `piece`, a kind of part (`jump ring`), `part` or
`bead` for every one, or the name of a part or a bead in the plans. A word of the trade for a kind
(`calotte`) is a name where a plan has a part of that name, and else the kind.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Mapping
from typing import NamedTuple

from wellstrung.common import units
from wellstrung.common.patterns import Pattern
from wellstrung.common.places import Edit, Fault
from wellstrung.common.trade_words import fields_meant, said
from wellstrung.common.wording import listed, nearest, same_as
from wellstrung.reading import tree
from wellstrung.reading.faults import fault
from wellstrung.reading.settings import PART, PIECE, HouseLimit

#: the unit of each quantity by whose it is, as is installed; None where it differs
Measures = Mapping[str, Mapping[str, str | None]]
_ENDS = Pattern(r"(at most|at least) (.+)|between (.+) and (.+)", re.IGNORECASE)
#: what reads a value with its unit, by the base unit
BY_UNIT: Mapping[str, Callable[[str | int | float], units.Parsed]] = {
    "mm": units.length,
    "g": units.mass,
    "N": units.force,
    "min": units.duration,
    "ml": units.volume,
}
_WHOLE = Pattern(r"\d+(?:\.\d+)?")
_FEW = 12
_FIELDS = {"at most", "at least", "level", "pieces", "because"}


def is_one(name: str) -> bool:
    """Whether a name under `limits` is of a quantity: the names of rules' limits have no stop."""
    return "." in name


def house_limits(
    entries: Iterable[tree.Entry], measures: Measures, faults: list[Fault]
) -> Iterator[HouseLimit]:
    """The limits of these entries; what is wrong with one is a fault."""
    for entry in entries:
        try:
            found = _limit(entry, measures, faults)
        except units.UnitFault as wrong:
            faults.append(fault(f"`{entry.key.text}` of `limits`: {wrong.says}", entry.node.place))
        else:
            if found is not None:
                yield found


def _limit(entry: tree.Entry, measures: Measures, faults: list[Fault]) -> HouseLimit | None:
    name, node = entry.key.text, entry.node
    whose, _, what = (word.strip() for word in name.partition("."))
    meant = said("kind", whose) or ("", {})
    kind = same_as(whose, measures) or (meant[0] if meant[0] in measures else None)
    near = nearest(whose, measures) if kind is None and whose != PART else None
    if near:
        says = f"there is no kind of part called `{whose}`: write `{near}.{what}`"
        faults.append(fault(says, entry.key.place, name, edits=(_named(entry, near, what),)))
        return None
    known = measures[kind] if kind else _of_any(measures)
    if what not in known:
        faults.append(_unknown(entry, kind or whose, what, known))
        return None
    ends = _written(node)
    if ends is None and {*node.entries} - _FIELDS:
        return None  # the schema says what is wrong with its fields
    if ends is None:
        example = _example(known[what])
        says = f"`{name}` of `limits`: write `at most {example}`, `at least {example}` or both"
        faults.append(fault(f"{says}, as `between ... and ...`", node.place, str(node.value)))
        return None
    unit = known[what]
    low, high = (_read(end, unit) for end in ends)
    if low and high and low.value > high.value:
        says = f"`{name}` of `limits`: `{low.text}` is more than `{high.text}`: put them right"
        faults.append(fault(says, node.place))
        return None
    group = node.value if isinstance(node.value, dict) else {}
    return HouseLimit(
        name=name,
        whose=whose,
        kind=kind or "",
        what=what,
        low=low.value if low else None,
        high=high.value if high else None,
        unit=low.unit if low else high.unit if high else "",
        text=_text(low, high),
        level=group.get("level", "warning"),
        pieces=tuple(group.get("pieces", ())),
        because=str(group.get("because", "")),
        place=entry.key.place,
    )


def _of_any(measures: Measures) -> Mapping[str, str | None]:
    """What some part or bead may have."""
    return {
        what: unit
        for whose, known in measures.items()
        if whose != PIECE
        for what, unit in known.items()
    }


def _unknown(entry: tree.Entry, whose: str, what: str, known: Mapping[str, str | None]) -> Fault:
    near = next(iter(fields_meant(what, known)), None) or nearest(what, known)
    edits = (_named(entry, whose, near),) if near else ()
    if near:
        says = f"write `{whose}.{near}`"
    elif len(known) <= _FEW:
        says = f"it has {listed(known)}"
    else:
        says = "`wellstrung bench` lists those that there are"
    head = f"there is no quantity `{what}` of `{whose}`"
    return fault(f"{head}: {says}", entry.key.place, entry.key.text, near or "", edits=edits)


def _named(entry: tree.Entry, whose: str, what: str) -> Edit:
    return Edit(entry.key.place, f"{whose}.{what}")


def _written(node: tree.Node) -> tuple[object, object] | None:
    """The least and the most as they are written; None where neither is."""
    if isinstance(node.value, dict):
        ends = node.value.get("at least"), node.value.get("at most")
        return ends if any(end is not None for end in ends) else None
    found = _ENDS.fullmatch(" ".join(str(node.value).split()))
    if found is None:
        return None
    if found[3] is not None:
        return found[3], found[4]
    return (None, found[2]) if found[1].lower() == "at most" else (found[2], None)


class _End(NamedTuple):
    """One end of a limit, in the base unit of its quantity, and as it is written."""

    value: float
    unit: str
    text: str


def _read(written: object, unit: str | None) -> _End | None:
    """An end in base units; where the unit differs from part to part, in any; raises UnitFault."""
    if written is None:
        return None
    assert isinstance(written, str | int | float)
    if unit is None:
        for base in (*BY_UNIT, ""):
            try:
                return _read(written, base)
            except units.UnitFault:
                continue
        raise units.UnitFault(f"`{written}` is no length, mass, time, volume or number")
    if unit in BY_UNIT:
        parsed = BY_UNIT[unit](written)
        if parsed.low != parsed.high:
            raise units.UnitFault(f"`{written}` is a range: write one value for each end")
        return _End(parsed.value, unit, " ".join(str(written).split()))
    text = str(written)
    if not _WHOLE.fullmatch(text):
        raise units.UnitFault(f"`{text}` is not a number: write one such as `{_example('')}`")
    return _End(float(text), unit, text)


def _text(low: _End | None, high: _End | None) -> str:
    if low and high:
        return f"between {low.text} and {high.text}"
    return f"at most {high.text}" if high else f"at least {low.text}" if low else ""


def _example(unit: str | None) -> str:
    return {"mm": "9 mm", "g": "60 g", "N": "20 N", "min": "90 min", "ml": "2 ml"}.get(
        unit or "", "12"
    )
