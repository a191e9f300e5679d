"""Weights, strengths, and what is left of a strength over a load."""

from __future__ import annotations

from wellstrung import tables
from wellstrung.model.item import Missing
from wellstrung.quantity.arithmetic import derived, exact, leaf
from wellstrung.quantity.value import Quantity


def weight(mass: Quantity, share: float = 1.0) -> Quantity:
    """The weight of a mass, N, or a share of it: g at standard gravity, 9.80665 m/s2.

    >>> round(weight(exact("charm", 100.0, "g")).middle, 5)
    0.98067
    """
    return derived(
        f"weight of {mass.name}",
        "N",
        lambda mass, share, gravity: mass * share * gravity / 1000,
        mass=mass,
        share=exact("share", share),
        gravity=exact("gravity", 9.80665, "m/s2"),
    )


def pull_to_spare(bears: Quantity, load: Quantity, factor: Quantity) -> Quantity:
    """What is left of a strength, N, over a load so many times taken.

    >>> bears, load = exact("wire", 12.0, "N"), exact("charm", 2.0, "N")
    >>> pull_to_spare(bears, load, exact("hold factor", 5.0)).middle
    2.0
    """
    return derived(
        "pull to spare",
        "N",
        lambda bears, load, factor: bears - load * factor,
        bears=bears,
        load=load,
        factor=factor,
    )


def weakest(name: str, table: str, row: str, column: str, unit: str = "") -> Quantity:
    """The least that a table prints: hold is judged by the weakest; raises Missing without a cell.

    >>> weakest("share held", "crimps", "closed by hand", "held").grade
    'one page'
    """
    cell = tables.load(table).row(row).cells.get(column)
    if cell is None:
        raise Missing(f"a `{column.replace('_', ' ')}` of {row} in the trade table `{table}`")
    source = f"trade tables, {table}, {row}: {cell.grade}"
    return leaf(name, cell.low, unit, source=source, grade=cell.grade)
