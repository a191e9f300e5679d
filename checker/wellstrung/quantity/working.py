"""A quantity in words: its number, its ranges, and the arithmetic that leads to it."""

from __future__ import annotations

import math

from wellstrung.formulas.symbols import Symbol
from wellstrung.quantity.value import Quantity


def number(value: float) -> str:
    """A number as a beader writes it: at most three figures after the point, no trailing zeros."""
    size = abs(value)
    digits = 0 if size >= 1000 else 1 if size >= 100 else 2 if size >= 1 else 3
    text = f"{value:.{digits}f}"
    text = text.rstrip("0").rstrip(".") if "." in text else text
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
    if quantity.function is None:
        lines[id(quantity)] = _leaf_line(quantity)
        return
    args = quantity.args
    for arg in args.values():
        _work_out(arg, lines)
    formula = quantity.traced.settled(lambda condition: _settled(condition, quantity))
    symbols = formula.text(lambda key: args[key].name)
    numbers = formula.text(lambda key: number(args[key].middle))
    lines[id(quantity)] = (
        f"{described(quantity)} = {symbols} = {numbers}"
        if quantity.name == symbols
        else f"{quantity.name} = {symbols} = {numbers} = {described(quantity)}"
    ) + (f"   [{quantity.source}]" if quantity.source else "")


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


def _leaf_line(leaf: Quantity) -> str:
    # bare constants (a count of eyes, a factor) read well enough inside the formula itself
    if not leaf.spreads and not leaf.source and not leaf.spelling:
        return ""
    line = f"{leaf.name} = {described(leaf)}"
    notes = [f"written `{leaf.spelling}`" if leaf.spelling else ""]
    notes += [
        f"{spread.cause} "
        + (
            f"± {number(spread.up)}"
            if math.isclose(spread.up, spread.down)
            else f"-{number(spread.down)} / +{number(spread.up)}"
        )
        for spread in leaf.spreads
        if spread.down or spread.up
    ]
    notes += [leaf.source]
    return line + "".join(f"; {note}" for note in notes if note)
