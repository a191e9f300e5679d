"""A quantity's range holds whatever its causes do: at every corner, inside, and on the way.

Where the graph takes a quantity for a sum of its arguments, the sum is what the function gives.

Worked out directly, node by node, without the short cuts that the graph takes for sums.
"""

from __future__ import annotations

import random
from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping
from itertools import pairwise
from pathlib import Path

import pytest

from bands import EVERY_BAND, found
from generated.plans import PIECES, seeded
from ropes import EVERY_ROPE, checked
from running import ROOT, SAMPLES
from turns import some
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import PlanResult
from wellstrung.plugins.host import Host
from wellstrung.quantity.causes import Cause
from wellstrung.quantity.value import Quantity
from wellstrung.testing.cases import cases, judged

#: the samples, and the plans that rules are tried on
PLANS = sorted((*SAMPLES.rglob("*.yaml"), *(ROOT / "tests" / "rules").glob("*.yaml")))
CASE_FILES = sorted((ROOT / "tests" / "rules").glob("*/*.yaml"))
ENDS = (-1.0, 1.0)
#: where the graph looks for a quantity that may turn back on its way
SCAN = (-1.0, -0.75, -0.5, -0.25, 0.25, 0.5, 0.75, 1.0)
#: as fine as the graph itself looks where it has to search
STEPS = tuple(step / 4 for step in range(-4, 5))
POINTS = 12

#: values worked out at a point, by the identity of their quantity
Known = dict[int, float]


def of(result: PlanResult) -> Iterator[Quantity]:
    """The quantities of a plan, and the margins by which its rules were held."""
    yield from result.quantities.values()
    yield from (kept.margin for kept in result.held if kept.margin is not None)


@pytest.mark.parametrize("path", PLANS, ids=lambda path: path.stem)
def test_of_a_plan(path: Path, installed: Host) -> None:
    result = Checker(installed, quantities=True, trials=0).check_file(path)
    assert hold_everywhere(of(result)) > 5


@pytest.mark.slow
@pytest.mark.parametrize("file", some(CASE_FILES, 8), ids=lambda path: path.stem)
def test_what_is_reckoned_by_slopes_is_what_the_formula_gives(file: Path, installed: Host) -> None:
    checker = Checker(installed, quantities=True, trials=0)
    for case in cases(file):
        is_what_the_formulas_give(of(judged(case, checker).check_text(case.text)))


@pytest.mark.slow
def test_what_is_reckoned_by_slopes_is_what_the_formula_gives_in_generated_plans(
    installed: Host,
) -> None:
    checker = Checker(installed, quantities=True, trials=0)
    for text in seeded(2 * len(PIECES)):
        is_what_the_formulas_give(of(checker.check_text(text)))


@pytest.mark.parametrize("rope", EVERY_ROPE)
def test_of_a_rope(rope: str, installed: Host) -> None:
    result = checked(installed, f"{rope}, length: 20 cm")
    assert hold_everywhere(result.quantities.values()) > 2


@pytest.mark.parametrize("band", EVERY_BAND)
def test_of_a_band(band: str, installed: Host) -> None:
    assert hold_everywhere(found(installed, band).values()) > 4


def hold_everywhere(quantities: Iterable[Quantity]) -> int:
    """How many of them vary, every one of which stays in its range and bends nowhere unseen."""
    chance = random.Random(11)
    varying = is_what_the_formulas_give(quantities)
    for quantity in varying:
        for point in (*corners(quantity), *inside(quantity, chance)):
            stays(quantity, point)
        if not quantity._scanned:
            for cause in quantity.causes:
                goes_one_way(quantity, cause, {})
                goes_one_way(quantity, cause, next(inside(quantity, chance)))
    return len(varying)


def is_what_the_formulas_give(quantities: Iterable[Quantity]) -> list[Quantity]:
    """All that varies; every move and every slope of it is what its function really gives."""
    chance = random.Random(7)
    found = {id(one): one for quantity in quantities for one in nodes(quantity) if one.causes}
    known = defaultdict[tuple[Cause, float], Known](dict)
    for quantity in found.values():
        moves_as_far(quantity, known)
        if quantity.function is not None and quantity._slopes is not None:
            rises_by_its_slopes(quantity, quantity._slopes, chance)
    return list(found.values())


def moves_as_far(quantity: Quantity, known: Mapping[tuple[Cause, float], Known]) -> None:
    """Each cause alone moves it as far as the graph says."""
    for cause, moves in quantity._moves.items():
        ends = SCAN if len(moves) > len(ENDS) else ENDS
        for end, move in zip(ends, moves, strict=True):
            there = direct(quantity, {cause: end}, known[cause, end])
            slack = 1e-9 * max(1.0, abs(there))
            assert abs(there - quantity.middle - move) <= slack, (quantity.name, str(cause))


def rises_by_its_slopes(
    quantity: Quantity, slopes: Mapping[str, float], chance: random.Random
) -> None:
    """Anywhere in the ranges of its arguments the function gives the sum that slopes stand for."""
    assert quantity.function is not None
    rest = {key: arg.middle for key, arg in quantity.args.items()}
    for _ in range(POINTS):
        at = {key: chance.uniform(*quantity.args[key].worst) for key in slopes}
        summed = quantity.middle + sum(slopes[key] * (at[key] - rest[key]) for key in slopes)
        there = quantity.function(**{**rest, **at})
        slack = 1e-9 * max(1.0, *map(abs, at.values()), abs(there))
        assert abs(there - summed) <= slack, (quantity.name, quantity.traced.text(), at)


def nodes(quantity: Quantity) -> Iterator[Quantity]:
    yield quantity
    for arg in quantity.args.values():
        yield from nodes(arg)


def corners(quantity: Quantity) -> Iterator[dict[Cause, float]]:
    """Every cause at its end that helps, at its end that hinders, and alone at either."""
    for toward in ENDS:
        yield {
            cause: toward if effect.high >= -effect.low else -toward
            for cause, effect in quantity.effects.items()
        }
        yield from ({cause: toward} for cause in quantity.causes)


def inside(quantity: Quantity, chance: random.Random) -> Iterator[dict[Cause, float]]:
    for _ in range(POINTS):
        yield {cause: chance.uniform(*ENDS) for cause in quantity.causes}


def stays(quantity: Quantity, point: Mapping[Cause, float]) -> None:
    low, high = quantity.worst
    slack = 1e-9 * max(1.0, abs(low), abs(high))
    assert low - slack <= direct(quantity, point) <= high + slack, (quantity.name, point)


def goes_one_way(quantity: Quantity, cause: Cause, others: Mapping[Cause, float]) -> None:
    """From one end of a cause to the other a quantity only rises, or only falls."""
    values = [direct(quantity, {**others, cause: step}) for step in STEPS]
    slack = 1e-9 * max(1.0, *map(abs, values))
    rises = [after - before for before, after in pairwise(values)]
    assert max(rises) <= slack or min(rises) >= -slack, (quantity.name, str(cause), values)


def direct(quantity: Quantity, moved: Mapping[Cause, float], known: Known | None = None) -> float:
    """The value worked out node by node, each once a point, without any short cut for sums."""
    known = {} if known is None else known
    if id(quantity) not in known:
        if quantity.function is None:
            known[id(quantity)] = quantity.at_rest + sum(
                moved.get(cause, 0.0) * (up if moved.get(cause, 0.0) > 0 else down)
                for cause, down, up in quantity.spreads
            )
        else:
            args = {key: direct(arg, moved, known) for key, arg in quantity.args.items()}
            known[id(quantity)] = quantity.function(**args)
    return known[id(quantity)]
