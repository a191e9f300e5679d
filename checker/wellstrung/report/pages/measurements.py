"""What to measure before going on, and how the verdict would change."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from typing import NamedTuple

from msgspec import Struct
from msgspec.structs import replace

from wellstrung.judging.result import PlanResult
from wellstrung.model.beads import bead_mix
from wellstrung.model.item import Item, Missing
from wellstrung.model.parts import Part, Role
from wellstrung.quantity.arithmetic import exact
from wellstrung.quantity.assumed import assumed_in
from wellstrung.quantity.causes import Window
from wellstrung.quantity.value import Quantity
from wellstrung.quantity.verdict import Verdict, compare
from wellstrung.quantity.working import number
from wellstrung.rulebook import Ask
from wellstrung.subjects.base import Eyes

#: so far below and above its middle a measurement is tried, and in how many steps
_LOW, _HIGH, _STEPS = 0.4, 1.8, 28
#: halvings that find an edge to 0.1 micrometre in a kilometre
_HALVINGS = 60
#: a threshold of a passed check is given where it lies within so many times the worst spread
_NEAR = 2.5

#: what is measured of a part, where its field does not say it
_MEASURED = {"hole": "width of the hole", "wire": "thickness of the wire", "mass": "weight"}


class Measurement(Struct, frozen=True):
    """Something to measure: what, what the plan was checked with, and what would change."""

    what: str
    taken: Quantity
    times: int
    changes: tuple[str, ...]


class _Size(NamedTuple):
    """A size to measure: in words, of what, and of how many at once."""

    words: str
    item: Item
    what: str
    times: int = 1
    swatch: bool = False


def measurements(result: PlanResult) -> list[Measurement]:
    """What to find out by a swatch, ten beads and a needle, and how the verdict would change."""
    if result.ask is None:
        return []
    found: list[Measurement] = []
    for size in _to_measure(result.ask):
        try:
            taken = result.ask.of(size.item, size.what)
        except Missing:
            continue
        changes = tuple(_changes(result, size, taken))
        found.append(Measurement(size.words, taken, size.times, changes))
    return [*found, *_assumed(result)]


def _assumed(result: PlanResult) -> Iterator[Measurement]:
    """The assumed sizes of bought findings that open checks wait for."""
    waiting: dict[str, tuple[Quantity, list[str]]] = {}
    for check in result.unjudged:
        margin = check.margin
        for leaf in assumed_in(margin) if margin is not None else ():
            asked = any(lacks.startswith(_field(leaf)) for lacks in check.missing)
            window = held_for(margin, leaf) if asked and margin is not None else None
            if asked:
                _, changes = waiting.setdefault(leaf.name, (leaf, []))
                passes = f"passes {_reach(window, leaf, 1)}" if window else "waits for it"
                changes.append(f"{check.rule} {passes}")
    plan = result.ask.plan if result.ask is not None else None
    for leaf, changes in waiting.values():
        part = plan.parts.get(leaf.name.partition(".")[0]) if plan is not None else None
        words = _size_in_words(leaf, part) if part is not None else _field(leaf)
        yield Measurement(words, leaf, 1, tuple(dict.fromkeys(changes)))


def _field(leaf: Quantity) -> str:
    """An assumed value by its field and its part."""
    part, _, field = leaf.name.partition(".")
    return f"`{field}` of `{part}`"


def _size_in_words(leaf: Quantity, part: Part) -> str:
    """An assumed size as one asks for it at the bench: what to measure, and where on its part."""
    *inner, last = leaf.name.split(".")[1:]
    sets = (Eyes(part, key) for key in part.kind.eyes)
    eyes = next((one.words for one in sets if inner and one.path == tuple(inner)), "")
    where = eyes or (f"the {inner[-1]} of `{part.name}`" if inner else f"`{part.name}`")
    what = "inside width" if last == "hole" and inner else _MEASURED.get(last, last)
    return f"{what.replace('_', ' ')} of {where}"


def _to_measure(ask: Ask) -> Iterator[_Size]:
    """Swatches of woven parts, then ten beads of each kind that is used, and their holes."""
    used: dict[str, None] = {}
    for part in ask.plan.parts.values():
        bought = (name for name in bead_mix(part) if not ask.plan.beads[name].has("woven"))
        used |= dict.fromkeys(bought)
        what = "width" if part.kind.role is Role.BAND else "outside"
        if part.kind.role in (Role.ROPE, Role.BAND) and not part.has("measured", what):
            long = "1 in" if ask.plan.in_inches else "2 cm"
            yield _Size(f"{what} of a {long} swatch of `{part.name}`", part, what, swatch=True)
    for name in used:
        bead = ask.plan.beads[name]
        if not bead.has("measured", "length"):
            yield _Size(f"ten beads of `{name}` along the thread", bead, "length", times=10)
    narrow = _narrowest(ask, used)
    if narrow is not None:
        yield _Size(f"the smallest hole among ten beads of `{narrow.name}`", narrow, "hole")


def _narrowest(ask: Ask, names: Iterable[str]) -> Item | None:
    """The bead with the smallest hole, where that is not measured."""
    holes = {}
    for name in names:
        try:
            holes[name] = ask.of(ask.plan.beads[name], "hole").middle
        except Missing:
            continue
    found = ask.plan.beads[min(holes, key=holes.__getitem__)] if holes else None
    return None if found is None or found.has("measured", "hole") else found


#: the most remarks, and the most passed checks, tried at other sizes: no piece has as many
_MOST_HELD = 300
#: the most values that such a margin may depend on: the length of a piece has some fifty
_MOST_LEAVES = 400


def _changes(result: PlanResult, size: _Size, taken: Quantity) -> Iterator[str]:
    """The sizes that settle remarks, and those up to which passed checks would still pass.

    Only sizes that can be measured settle a remark; a swatch says too where it settles none.
    """
    for number_, remark in enumerate(result.numbered[:_MOST_HELD], 1):
        if remark.margin is None or not remark.counts:
            continue
        window = held_for(remark.margin, taken)
        if window is None:
            continue
        which = f"remark {number_} ({remark.rule})"
        if any(taken.worst.low < end < taken.worst.high for end in window):
            yield f"{which} is settled {_reach(window, taken, size.times)}"
        elif size.swatch:
            yield f"{which} stays at any likely size, {_reach(taken.likely, taken, size.times)}"
    named: set[str] = set()
    for kept in result.held[:_MOST_HELD]:
        if kept.margin is None or kept.margin.unit != taken.unit or kept.rule in named:
            continue
        window = held_for(kept.margin, taken)
        if window is not None and _is_near(window, taken):
            named.add(kept.rule)
            yield f"{kept.rule} passes {_reach(window, taken, size.times)}"


def _is_near(window: Window, taken: Quantity) -> bool:
    """Whether an end of a window lies where the measurement may well fall."""
    low, high = (_NEAR * (end - taken.middle) + taken.middle for end in taken.worst)
    return any(low < end < high for end in window)


def _reach(window: Window, taken: Quantity, times: int) -> str:
    """A window in words, times as many as are measured at once."""
    low, high = (number(round(end * times, 2)) for end in window)
    if window.low > -math.inf and window.high < math.inf:
        return f"from {low} to {high} {taken.unit}"
    return (
        f"at {low} {taken.unit} or more"
        if window.low > -math.inf
        else f"at {high} {taken.unit} or less"
    )


def held_for(margin: Quantity, taken: Quantity) -> Window | None:
    """The measurements of a quantity for which a margin passes over its whole likely range.

    All other values stay as they are. None where the margin does not depend on the quantity, or on
    more values than are worked out again at each measurement. Of
    several windows the one nearest to the middle is given; its ends are found by halving.

    >>> bore, rope = exact("bore", 8.0, "mm"), exact("rope", 9.0, "mm")
    >>> held_for(bore - rope, rope)  # the comparison forgives a micrometre
    Window(low=-inf, high=8.001)
    """
    if len(margin.leaves) > _MOST_LEAVES or not _has(margin, taken):
        return None
    span = (_HIGH - _LOW) / _STEPS
    tried = [taken.middle * (_LOW + span * step) for step in range(_STEPS + 1)]
    kept = [_holds(margin, taken, value) for value in tried]
    if all(kept) or not any(kept):
        return None
    nearest = min(
        (index for index, held in enumerate(kept) if held),
        key=lambda index: abs(tried[index] - taken.middle),
    )
    low = high = nearest
    while low > 0 and kept[low - 1]:
        low -= 1
    while high < _STEPS and kept[high + 1]:
        high += 1
    return Window(
        _edge(margin, taken, tried[low], tried[low - 1]) if low else -math.inf,
        _edge(margin, taken, tried[high], tried[high + 1]) if high < _STEPS else math.inf,
    )


def _edge(margin: Quantity, taken: Quantity, held: float, failed: float) -> float:
    """Where a margin begins to fail between a value for which it holds and one for which not."""
    for _ in range(_HALVINGS):
        if abs(held - failed) <= 1e-4:
            break
        middle = (held + failed) / 2
        if _holds(margin, taken, middle):
            held = middle
        else:
            failed = middle
    return round(held, 3)


def _holds(margin: Quantity, taken: Quantity, value: float) -> bool:
    measured = exact(taken.name, value, taken.unit)
    try:
        return compare(_put(margin, taken, measured, {})) is Verdict.HOLDS
    except (ArithmeticError, ValueError):  # no such rope can be
        return False


def _has(quantity: Quantity, sought: Quantity) -> bool:
    return quantity is sought or any(_has(arg, sought) for arg in quantity.args.values())


def _put(
    quantity: Quantity, taken: Quantity, measured: Quantity, done: dict[int, Quantity]
) -> Quantity:
    """The same graph with one quantity measured."""
    if quantity is taken:
        return measured
    if id(quantity) not in done:
        args = {key: _put(arg, taken, measured, done) for key, arg in quantity.args.items()}
        changed = any(args[key] is not arg for key, arg in quantity.args.items())
        done[id(quantity)] = replace(quantity, args=args) if changed else quantity
    return done[id(quantity)]
