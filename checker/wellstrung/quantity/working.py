"""A quantity in words: its number, its ranges, and the arithmetic that leads to it."""

from __future__ import annotations

import math
from collections.abc import Callable

from wellstrung.formulas.symbols import Symbol
from wellstrung.quantity.value import Quantity


def number(value: float) -> str:
    """A number as a beader writes it: at most three figures after the point, no trailing zeros."""
    size = abs(value)
    if size >= 1000:
        return f"{value:.0f}"
    text = f"{value:.1f}" if size >= 100 else f"{value:.2f}" if size >= 1 else f"{value:.3f}"
    text = text.rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text


def described(quantity: Quantity) -> str:
    """Middle, likely and worst in one phrase."""
    unit = f" {quantity.unit}" if quantity.unit else ""
    text = f"{number(quantity.middle)}{unit}"
    if quantity.causes:
        likely = f"{number(quantity.likely.low)}..{number(quantity.likely.high)}"
        worst = f"{number(quantity.worst.low)}..{number(quantity.worst.high)}"
        text += f" (likely {likely}" + (f", worst {worst})" if worst != likely else ")")
    return text


def working(quantity: Quantity) -> list[str]:
    """The arithmetic, leaves first, one line a step, for a person to follow."""
    lines: dict[int, str] = {}
    _work_out(quantity, lines)
    return list(dict.fromkeys(line for line in lines.values() if line))


def _work_out(quantity: Quantity, lines: dict[int, str]) -> None:
    if id(quantity) in lines:
        return
    if quantity.function is not None:
        keys: dict[str, str] = {}
        formula_of(quantity, lambda key: keys.setdefault(key, key))
        for key in keys:
            _work_out(quantity.args[key], lines)
    lines[id(quantity)] = _line(quantity)


def _line(quantity: Quantity) -> str:
    """The line of a quantity itself; empty for a bare constant (a count of eyes, a factor).

    Constants read well enough inside the formula that they are in.
    """
    if quantity.function is None:
        notes = notes_of(quantity)
        return "; ".join((f"{quantity.name} = {described(quantity)}", *notes)) if notes else ""
    args = quantity.args
    symbols = formula_of(quantity, lambda key: args[key].name)
    numbers = formula_of(quantity, lambda key: number(args[key].middle))
    return (
        f"{described(quantity)} = {symbols} = {numbers}"
        if quantity.name == symbols
        else f"{quantity.name} = {symbols} = {numbers} = {described(quantity)}"
    ) + (f"   [{quantity.source}]" if quantity.source else "")


def formula_of(quantity: Quantity, shown: Callable[[str], str]) -> str:
    """The formula of a node, its arguments written by `shown`, of ways that cannot be one only."""
    formula = quantity.traced.settled(lambda condition: _settled(condition, quantity))
    return formula.text(shown)


def notes_of(leaf: Quantity) -> list[str]:
    """As what a leaf was written, by how much it varies and why, and its source."""
    notes = [f"written `{leaf.spelling}`" if leaf.spelling else ""]
    notes += [
        f"{spread.cause} "
        + (
            f"± {number(spread.up)}"
            if math.isclose(spread.up, spread.down)
            else f"-{number(spread.down)} / +{number(spread.up)}"
        )
        for spread in leaf.spreads
        if (spread.down or spread.up) and not spread.cause.only  # what swatches narrowed says how
    ]
    return [note for note in (*notes, leaf.source) if note]


def _settled(condition: Symbol, quantity: Quantity) -> bool | None:
    """Whether a condition of the formula holds whatever its causes do; None where that depends."""
    left, right = (_window(side, quantity) for side in condition.of)
    if left is None or right is None:
        return None
    if condition.op == "!=":
        return None
    if condition.op == "==":
        return left == right if left[0] == left[1] and right[0] == right[1] else None
    if condition.op in (">", ">="):
        left, right = right, left
    if condition.op in ("<", ">"):
        return True if left[1] < right[0] else False if left[0] >= right[1] else None
    return True if left[1] <= right[0] else False if left[0] > right[1] else None


def _window(side: object, quantity: Quantity) -> tuple[float, float] | None:
    if isinstance(side, int | float):
        return side, side
    if isinstance(side, Symbol) and side.op == "name":
        return quantity.args[side.of[0]].worst
    return None
