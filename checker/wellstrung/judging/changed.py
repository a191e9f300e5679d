"""What two versions of a plan have in different ways: fields, sizes, amounts, time and cost.

What reads the same in the unit of the later plan, as a bench can measure it, has not changed.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping
from functools import partial
from typing import NamedTuple

from wellstrung.common import units
from wellstrung.common.money import total
from wellstrung.common.wording import hours
from wellstrung.derived.amounts import LENGTH, VOLUME
from wellstrung.derived.taken import of_plan, purchase
from wellstrung.judging.renamed import same
from wellstrung.judging.result import PlanResult
from wellstrung.judging.versions import Change
from wellstrung.model.item import Missing
from wellstrung.model.plan import Plan, Quantities
from wellstrung.quantity.value import Quantity
from wellstrung.quantity.working import number
from wellstrung.reading import tree
from wellstrung.subjects.counts import taken_in_all

#: what changed, where it is no part and no bead
PIECE, WORK, SUPPLIES = "piece", "work", "supplies"
#: fields at the top of a plan that say what the piece is to be
_ASKED = (
    "finished_length", "inside", "called", "makes", "closes", "run_is", "metal", "wearer",
    "class", "budget",
)  # fmt: skip
#: those that name a size that the piece has as well
_TARGETS = ("finished_length", "inside")
#: sizes of parts that follow from what is written, by the quantity's name
_SIZES = ("outside", "width", "inside", "length", "height", "thickness", "rounds", "rows")
#: times of the piece, each with what it is called, and whether waits make days of it
_TIMES = {
    "bench_time": ("time at the bench", False),
    "class_time": ("time in class", False),
    "finish_earliest": ("done after, waits included", True),
}
#: a length from which on it is read off a ruler, mm
_BY_RULER = 100.0
#: so many signs of a list are shown
_LONGEST = 40
#: what is cut for a part and listed by the part's name
_CUT_FOR = ("wire", "cord")
_NONE, _NOT_GIVEN = "none", "not given"

Names = Mapping[str, str]


class _Side(NamedTuple):
    """One version: its plan, its quantities by name, and what is asked for when it is needed."""

    plan: Plan
    listed: Mapping[str, Quantity]
    ask: Quantities


def changes(old: PlanResult, new: PlanResult, names: Names) -> Iterator[Change]:
    """Every change: the piece first, then its beads and parts, what is taken, time and cost.

    `names` are the new names of parts and beads that were renamed.
    """
    if old.ask is None or new.ask is None:
        return
    was = _Side(old.ask.plan, old.quantities, old.ask.quantities)
    now = _Side(new.ask.plan, new.quantities, new.ask.quantities)
    yield from _of_piece(was, now)
    before = {names.get(name, name): name for name in (*was.plan.beads, *was.plan.parts)}
    for name, bead in now.plan.beads.items():
        other = was.plan.beads.get(before.get(name, ""))
        if other is not None:
            yield from _fields(name, other.node, bead.node, names)
    for name, part in now.plan.parts.items():
        other_part = was.plan.parts.get(before.get(name, ""))
        if other_part is not None:
            yield from _fields(name, other_part.node, part.node, names)
            sizes = (what for what in _SIZES if not (part.has(what) and other_part.has(what)))
            for what in sizes:
                pair = was.listed.get(f"{before[name]}.{what}"), now.listed.get(f"{name}.{what}")
                yield from _size(name, what, *pair, now.plan)
    yield from _amounts(was, now, names)
    yield from _times(was, now)
    yield from _costs(was, now)


def _of_piece(was: _Side, now: _Side) -> Iterator[Change]:
    """What the plan asks for, and how large and heavy the piece will be."""
    for name in _ASKED:
        old, new = was.plan.tree.entries.get(name), now.plan.tree.entries.get(name)
        if old is not None or new is not None:
            before = {name: old.node} if old is not None else {}
            after = {name: new.node} if new is not None else {}
            asked = " asked for" if name in _TARGETS else ""
            for change in _written(PIECE, before, after, {}):
                yield change._replace(what=f"{change.what}{asked}")
    for what in ("length", "inside", "mass"):
        pair = was.listed.get(f"{PIECE}.{what}"), now.listed.get(f"{PIECE}.{what}")
        yield from _size(PIECE, what, *pair, now.plan)


# --- what is written


def _fields(of: str, old: tree.Mapping, new: tree.Mapping, names: Names) -> Iterator[Change]:
    return _written(of, *_nodes(old, new, names), names)


def _nodes(
    old: tree.Node | None, new: tree.Node | None, names: Names
) -> tuple[dict[str, tree.Node], dict[str, tree.Node]]:
    """What stands in both versions of a group, by its field, or by the name of a bead or a part."""
    was, now = (
        {name: entry.node for name, entry in node.written.items()}
        if isinstance(node, tree.Mapping)
        else {}
        for node in (old, new)
    )
    return {name if name in now else names.get(name, name): n for name, n in was.items()}, now


def _written(
    of: str,
    before: Mapping[str, tree.Node],
    after: Mapping[str, tree.Node],
    names: Names,
    *within: str,
) -> Iterator[Change]:
    """The fields that differ, those of a group each by itself."""
    for name in dict.fromkeys((*after, *before)):
        old, new = before.get(name), after.get(name)
        if all(node is None or isinstance(node, tree.Mapping) for node in (old, new)):
            yield from _written(of, *_nodes(old, new, names), names, *within, name)
            continue
        if old is not None and new is not None and same(old.value, new.value, names):
            continue
        what = " ".join((*within, name)).replace("_", " ")
        was, now = (_read(node) for node in (old, new))
        unit = ""
        if was is not None and now is not None and was[1] == now[1]:
            if units.show(was[0], now[2]) == units.show(now[0], now[2]):
                continue
            unit = now[1]
        yield Change(
            of,
            what,
            _text(old),
            _text(new),
            unit or (now or was or (0, "", ""))[1],
            was[0] if was else None,
            now[0] if now else None,
        )


_READERS: Mapping[str, Callable[[str | int | float], units.Parsed]] = {
    "mm": units.length,
    "mm thick": units.wire,
    "g": units.mass,
    "min": units.duration,
    "ml": units.volume,
    "N": units.force,
    "°C": units.temperature,
}


def _read(node: tree.Node | None) -> tuple[float, str, str] | None:
    """A value in its base unit, with that unit and the author's; None for what is no number."""
    if node is None or isinstance(node.value, list | dict | bool):
        return None
    if isinstance(node.value, int | float):
        return float(node.value), "", ""
    for unit, reader in _READERS.items():
        try:
            parsed = reader(node.value)
        except units.UnitFault:
            continue
        return parsed.value, unit.split()[0], parsed.unit
    return None


def _text(node: tree.Node | None) -> str:
    """A value as its author wrote it, a list by its entries."""
    if node is None:
        return _NOT_GIVEN
    if isinstance(node, tree.Scalar):
        return " ".join(str(node.text).split())
    text = ", ".join(map(str, node.value)) if isinstance(node.value, list) else str(node.value)
    return text if len(text) <= _LONGEST else f"{text[: _LONGEST - 3]}..."


# --- what follows from it


def _size(
    of: str, what: str, old: Quantity | None, new: Quantity | None, plan: Plan
) -> Iterator[Change]:
    if old is None or new is None:
        return
    ruled = new.unit == "mm" and (of == PIECE or min(old.middle, new.middle) >= _BY_RULER)
    unit = _ruler(new, plan) if ruled else new.unit

    def shown(value: float) -> str:
        if ruled:
            return _ruled(value, unit)
        return f"{number(value)} {unit}" if unit else f"{round(value)}"

    yield from _differ(of, what, old.middle, new.middle, new.unit, shown)


def _differ(
    of: str, what: str, was: float, now: float, unit: str, shown: Callable[[float], str]
) -> Iterator[Change]:
    """The change, if it shows and is more than floats are off by."""
    before, after = shown(was), shown(now)
    if before != after and not math.isclose(was, now, rel_tol=1e-6, abs_tol=1e-6):
        yield Change(of, what, before, after, unit, was, now)


def _ruler(size: Quantity, plan: Plan) -> str:
    """The unit in which the author measures a length: its own, or that of the whole piece."""
    own = size.spelled_unit
    return own or (plan.goal.unit if plan.goal is not None else "cm")


def _ruled(value: float, unit: str) -> str:
    if unit.startswith("in"):
        return units.by_length(value, inches=True)
    return units.show(value, unit, {"mm": 0, "cm": 1}.get(unit))


def _amounts(was: _Side, now: _Side, names: Names) -> Iterator[Change]:
    """How many of each part the piece has, and how much of what is bought it takes."""
    old = {names.get(name, name): count for name, count in taken_in_all(was.plan).items()}
    new = taken_in_all(now.plan)
    for name, part in now.plan.parts.items():
        counts = old.get(name, 0), new.get(name, 0)
        if name in old and counts[0] != counts[1]:
            yield Change(
                part.name, "how many", f"{counts[0]}", f"{counts[1]}", "", *map(float, counts)
            )
    before, after = _taken(was, names), _taken(now, {})
    for key in dict.fromkeys((*after, *before)):
        name, what, unit = key
        had, has = before.get(key, 0.0), after.get(key, 0.0)
        if had is not None and has is not None:
            shown = _amount(unit, inches=now.plan.in_inches)
            yield from _differ(name, what, had, has, unit, shown)


def _taken(side: _Side, names: Names) -> dict[tuple[str, str, str], float | None]:
    """How much is taken of all that does not come by the piece; None where that is not known."""
    found = {}
    for thing in of_plan(side.ask):
        if thing.group not in ("rings", "findings"):
            what = f"takes {thing.group}" if thing.group in _CUT_FOR else "takes"
            key = names.get(thing.name, thing.name), what, thing.unit
            found[key] = None if isinstance(thing.need, Missing) else thing.need.middle
    return found


def _amount(unit: str, *, inches: bool) -> Callable[[float], str]:
    def shown(value: float) -> str:
        if not value:
            return _NONE
        if unit == LENGTH:
            return units.by_length(value, inches=inches)
        return units.show(value, "ml", 2) if unit == VOLUME else f"{round(value)}"

    return shown


def _times(was: _Side, now: _Side) -> Iterator[Change]:
    """Time at the bench, in class, and until it is done, where waits make that longer."""
    for what, (called, days) in _TIMES.items():
        pair = [side.listed.get(f"{PIECE}.{what}") for side in (was, now)]
        hands = [side.listed.get(f"{PIECE}.bench_time") for side in (was, now)]
        old, new = pair
        if old is None or new is None:
            continue
        if what == "class_time" and now.plan.section("class") is None:
            continue
        if what == "finish_earliest" and all(
            one is not None and other is not None and math.isclose(one.middle, other.middle)
            for one, other in zip(pair, hands, strict=True)
        ):
            continue
        shown = partial(hours, days=days)
        yield from _differ(WORK, called, old.middle, new.middle, new.unit, shown)


def _costs(was: _Side, now: _Side) -> Iterator[Change]:
    """What all that has a price costs, bought in whole packs with nothing on hand."""
    before, after = _cost(was), _cost(now)
    for currency in before.keys() & after.keys():
        (old, some), (new, more) = before[currency], after[currency]
        if old != new:
            called = "cost" if not (some or more) else "cost of what has a price"
            yield Change(SUPPLIES, called, old, new, currency)


def _cost(side: _Side) -> dict[str, tuple[str, bool]]:
    """By currency what the supplies cost, and whether that leaves some of them out."""
    if not side.plan.bench.prices:
        return {}
    lines = [purchase(thing, on_hand=False) for thing in of_plan(side.ask)]
    costs = [line.cost for line in lines if line.cost is not None]
    unpriced = any(line.cost is None and (line.short or line.missing) for line in lines)
    return {money.currency: (str(money), unpriced) for money in total(costs)}
