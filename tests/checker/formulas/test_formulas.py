"""The formula that a working prints is the formula that was worked out.

Every node of every quantity and margin of the sample plans is worked out a second time from its
printed formula; a slip in either shows.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from pathlib import Path

import pytest

from ropes import EVERY_ROPE, checked
from running import SAMPLES
from wellstrung.formulas import circles, rings, thread
from wellstrung.judging.checker import Checker
from wellstrung.plugins.host import Host
from wellstrung.quantity.value import Quantity
from wellstrung_rules.fit.button_loop import edge
from wellstrung_rules.fit.link_clearance import taken_along

WORDS = {
    "pi": math.pi,
    "tan": math.tan,
    "atan": math.atan,
    "sin": math.sin,
    "cos": math.cos,
    "ceil": math.ceil,
    "max": max,
    "min": min,
    "sqrt": math.sqrt,
    "container": lambda *sizes: circles.container(sizes),
    "beside": rings.taken_beside,
    "open_across_first_yield": rings.open_across_first_yield,
    "closed_first_yield": rings.closed_first_yield,
    "along": lambda hole, following, *wires: taken_along(
        hole, next=following, **{f"ring{n}": wire for n, wire in enumerate(wires)}
    ),
    "edge": edge,
    "passes_possible": thread.passes_possible,
}


def nodes(quantity: Quantity) -> Iterator[Quantity]:
    """Every node under a quantity, itself included."""
    if quantity.function is not None:
        yield quantity
    for arg in quantity.args.values():
        yield from nodes(arg)


#: what is counted or searched, not a formula: see test_chain and test_bench_time
SEARCHED = ("cut in phase", "end of t1 ")


def worked_out_again(quantities: Iterable[Quantity]) -> int:
    """How many nodes were worked out from their printed formula, each with the same result."""
    checked = 0
    for quantity in quantities:
        for node in nodes(quantity):
            if any(words in node.formula for words in SEARCHED):
                continue
            names = {key: arg.middle for key, arg in node.args.items()}
            again = eval(node.formula.replace("^", "**"), {"__builtins__": {}}, {**WORDS, **names})
            if node.name.endswith(".inside") and "tan" in node.formula:
                again = max(0.0, again)
            assert again == pytest.approx(node.middle, abs=1e-9), (node.name, node.formula)
            checked += 1
    return checked


@pytest.mark.parametrize("path", sorted(SAMPLES.rglob("*.yaml")), ids=lambda path: path.stem)
def test_printed_formula_and_function_agree(path: Path, installed: Host) -> None:
    result = Checker(installed, quantities=True).check_file(path)
    margins = [kept.margin for kept in result.held if kept.margin is not None]
    assert worked_out_again((*result.quantities.values(), *margins)) > 40


@pytest.mark.parametrize("rope", EVERY_ROPE)
def test_printed_formula_and_function_agree_for_every_rope(rope: str, installed: Host) -> None:
    # a braid is given by its length, the others by either
    for size in ("length: 20 cm", "rounds: 90")[: 1 if "kind: braid" in rope else 2]:
        assert worked_out_again(checked(installed, f"{rope}, {size}").quantities.values()) > 6
