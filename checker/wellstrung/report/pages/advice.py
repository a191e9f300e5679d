"""What a page says first: what to mend, what is right, and what to measure before going on."""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Iterable, Iterator
from functools import partial
from typing import NamedTuple

from msgspec import Struct
from msgspec.structs import replace

from wellstrung.judging.result import PlanResult, Remark
from wellstrung.model.beads import bead_mix
from wellstrung.model.item import Item, Missing
from wellstrung.model.parts import Role
from wellstrung.quantity.arithmetic import exact
from wellstrung.quantity.causes import Window
from wellstrung.quantity.value import Quantity
from wellstrung.quantity.verdict import Verdict, compare
from wellstrung.quantity.working import number
from wellstrung.rulebook import Ask

#: so many remarks stand on the first page, so many margins are praised
FIRST_PAGE, PRAISED = 5, 3
#: the largest size, mm, g or N, that is still one of a fit
_FIT = 100.0
#: what a rule's title adds of its namesakes, of no use to who reads a sheet
_POINTER = re.compile(r" \([^()]*`[^()]*\)")
#: so far below and above its middle a measurement is tried, and in how many steps
_LOW, _HIGH, _STEPS = 0.4, 1.8, 28
#: a threshold of a rule that holds is told where it lies within so many times the worst spread
_NEAR = 2.5


class Numbered(Struct, frozen=True):
    """A remark with its number and the line of the plan that it is about, cut at what is meant."""

    number: int
    remark: Remark
    line: tuple[str, str, str]


class Right(Struct, frozen=True):
    """A check that was kept with room to spare."""

    parts: str
    title: str
    spare: Quantity | None


class Measurement(Struct, frozen=True):
    """Something to measure: what, what the plan was checked with, and what would change."""

    what: str
    taken: Quantity
    times: int
    changes: tuple[str, ...]


class _Wanted(NamedTuple):
    """Something to measure: what, how many at once, the quantity, and whether it is a swatch."""

    what: str
    times: int
    get: Callable[[], Quantity]
    swatch: bool = False


def numbered(result: PlanResult) -> list[Numbered]:
    """Every remark but the cautions, errors first; each keeps its number in reading order."""
    lines = result.text.splitlines()
    found = [
        Numbered(number_, remark, _line(lines, remark))
        for number_, remark in enumerate(result.numbered, 1)
    ]
    return sorted(found, key=lambda one: (not one.remark.counts, one.remark.level != "error"))


def _line(lines: list[str], remark: Remark) -> tuple[str, str, str]:
    """The line as written: before what is meant, what is meant, and after it."""
    place = remark.place
    if not 0 < place.line <= len(lines):
        return "", "", ""
    line = lines[place.line - 1]
    end = place.end_column - 1 if place.end_line == place.line else len(line.rstrip())
    return line[: place.column - 1].lstrip(), line[place.column - 1 : end], line[end:].rstrip()


def right(result: PlanResult) -> list[Right]:
    """What is right: the checks with the most room for their size, each of another rule.

    Room is the least of the likely range, as a share of the largest size that it was worked out of.
    Fits come before lengths; where fewer have a margin, checks of counting fill up.
    """
    chosen: dict[str, Right] = {}
    ranked = sorted(result.held, key=lambda kept: -_room(kept.margin))
    for kept in ranked:
        if kept.rule not in chosen and len(chosen) < PRAISED:
            spare = kept.margin if _room(kept.margin) > 0 else None
            title = _POINTER.sub("", kept.title)
            chosen[kept.rule] = Right(", ".join(kept.parts) or "the piece", title, spare)
    return list(chosen.values())


def _room(margin: Quantity | None) -> float:
    if margin is None or margin.unit not in ("mm", "g", "N"):
        return 0.0
    scale = max((abs(leaf.middle) for leaf in margin.leaves if leaf.unit == margin.unit), default=0)
    if not scale or margin.likely.low <= 0:
        return 0.0
    return margin.likely.low / scale / (1.0 if scale <= _FIT else 1000.0)


def measurements(result: PlanResult) -> list[Measurement]:
    """What a swatch, ten beads and a needle would tell, and how the verdict would change."""
    if result.ask is None:
        return []
    found: list[Measurement] = []
    for wanted in _wanted(result.ask):
        try:
            taken = wanted.get()
        except Missing:
            continue
        changes = tuple(_changes(result, wanted, taken))
        found.append(Measurement(wanted.what, taken, wanted.times, changes))
    return found


def _wanted(ask: Ask) -> Iterator[_Wanted]:
    """Swatches of what is woven, then ten beads of each kind that is used, and their holes."""
    used: dict[str, None] = {}
    for part in ask.plan.parts.values():
        used |= dict.fromkeys(bead_mix(part))
        what = "width" if part.kind.role is Role.BAND else "outside"
        if part.kind.role in (Role.ROPE, Role.BAND) and not part.has("measured", what):
            words = f"{what} of a 2 cm swatch of `{part.name}`"
            yield _Wanted(words, 1, partial(ask.of, part, what), swatch=True)
    for name in used:
        bead = ask.plan.beads[name]
        if not bead.has("measured", "length"):
            words = f"ten beads of `{name}` along the thread"
            yield _Wanted(words, 10, partial(ask.of, bead, "length"))
    narrow = _narrowest(ask, used)
    if narrow is not None:
        words = f"the smallest hole among ten beads of `{narrow.name}`"
        yield _Wanted(words, 1, partial(ask.of, narrow, "hole"))


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


def _changes(result: PlanResult, wanted: _Wanted, taken: Quantity) -> Iterator[str]:
    """How remarks would go, and from where on checks that hold would fail.

    Of a swatch every remark is told that turns on it; else what a measurement may well reach.
    """
    for number_, remark in enumerate(result.numbered, 1):
        if remark.margin is None or not remark.counts:
            continue
        window = held_for(remark.margin, taken)
        if window is not None and (wanted.swatch or _is_near(window, taken)):
            only = "" if _is_near(window, taken) else "only "
            reach = _reach(window, taken, wanted.times)
            yield f"remark {number_} ({remark.rule}) is settled {only}{reach}"
    told: set[str] = set()
    for kept in result.held:
        if kept.margin is None or kept.margin.unit != taken.unit or kept.rule in told:
            continue
        window = held_for(kept.margin, taken)
        if window is not None and _is_near(window, taken):
            told.add(kept.rule)
            yield f"{kept.rule} holds {_reach(window, taken, wanted.times)}"


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
    """The measurements of a quantity for which a margin holds over its whole likely range.

    The others stay as they are. None where the margin does not turn on the quantity. Of several
    windows the one nearest to the middle is told; ends are found by halving.

    >>> bore, rope = exact("bore", 8.0, "mm"), exact("rope", 9.0, "mm")
    >>> held_for(bore - rope, rope)  # the comparison forgives a micrometre
    Window(low=-inf, high=8.001)
    """
    if not _has(margin, taken):
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
    while abs(held - failed) > 1e-4:
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


def _has(quantity: Quantity, wanted: Quantity) -> bool:
    return quantity is wanted or any(_has(arg, wanted) for arg in quantity.args.values())


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
