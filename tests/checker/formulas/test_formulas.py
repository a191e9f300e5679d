"""The formula that a working prints is the formula that was worked out.

Every node of every quantity and margin of the sample plans is worked out a second time from its
printed formula; a slip of the printing shows.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from pathlib import Path

import pytest

from ropes import EVERY_ROPE, checked
from running import SAMPLES
from wellstrung.judging.checker import Checker
from wellstrung.plugins.host import Host
from wellstrung.quantity.value import Quantity

WORDS = {
    "pi": math.pi,
    "tan": math.tan,
    "atan": math.atan,
    "sin": math.sin,
    "cos": math.cos,
    "ceil": math.ceil,
    "floor": math.floor,
    "abs": abs,
    "max": max,
    "min": min,
    "sqrt": math.sqrt,
}


def nodes(quantity: Quantity) -> Iterator[Quantity]:
    """Every node under a quantity, itself included."""
    if quantity.function is not None:
        yield quantity
    for arg in quantity.args.values():
        yield from nodes(arg)


def worked_out_again(quantities: Iterable[Quantity]) -> int:
    """How many nodes were worked out from their printed formula, each with the same result."""
    checked = 0
    for quantity in quantities:
        for node in nodes(quantity):
            formula = node.traced.text()
            assert any(name in formula for name in node.args), (node.name, formula)
            if getattr(node.function, "opaque", None) or " round (" in formula:
                continue
            names = {key: arg.middle for key, arg in node.args.items()}
            again = eval(formula.replace("^", "**"), {"__builtins__": {}}, {**WORDS, **names})
            assert again == pytest.approx(node.middle, abs=1e-9), (node.name, formula)
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
