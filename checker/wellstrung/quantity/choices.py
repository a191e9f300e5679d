"""A value with its choices made otherwise: as favourably as any maker makes them."""

from __future__ import annotations

from msgspec.structs import replace

from wellstrung.common.choice import Choice
from wellstrung.quantity.value import Quantity


def freed(margin: Quantity, *, careful: bool = False) -> Quantity:
    """A margin with each choice made as it leaves most; those for safety only where `careful`.

    >>> from wellstrung.common.choice import Choice
    >>> from wellstrung.quantity.arithmetic import exact
    >>> ease = exact("ease", 13.0, "mm", choice=Choice(6.0, 25.0))
    >>> freed(exact("room", 8.0, "mm") - ease).middle
    2.0
    """
    for leaf in margin.leaves:
        choice = leaf.choice
        if choice is not None and (careful or not choice.careful):
            ends = (replaced(margin, leaf, end) for end in (choice.low, choice.high))
            margin = max(margin, *ends, key=lambda one: one.middle)
    return margin


def chosen(margin: Quantity) -> list[tuple[Quantity, Choice]]:
    """What is chosen by taste in a margin, each once, and its span."""
    leaves = {leaf.name: (leaf, leaf.choice) for leaf in margin.leaves}
    return [(leaf, span) for leaf, span in leaves.values() if span and not span.careful]


def replaced(quantity: Quantity, leaf: Quantity, value: float) -> Quantity:
    """A quantity with one leaf under it known exactly."""
    return with_leaf(quantity, leaf, replace(leaf, at_rest=value, spreads=()))


def with_leaf(quantity: Quantity, leaf: Quantity, other: Quantity) -> Quantity:
    """A quantity with another leaf in place of one under it."""
    if quantity is leaf:
        return other
    args = {key: with_leaf(arg, leaf, other) for key, arg in quantity.args.items()}
    if all(args[key] is arg for key, arg in quantity.args.items()):
        return quantity
    return replace(quantity, args=args)
