"""Weights, strengths, and what is left of a strength over a load."""

from __future__ import annotations

from wellstrung import tables
from wellstrung.common.choice import Choice
from wellstrung.model.item import Missing
from wellstrung.model.plan import Plan
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


def pull_at_clasp(plan: Plan, mass: Quantity) -> tuple[Quantity, str]:
    """What pulls at an end of the piece, N, and that in words.

    A necklace hangs from both sides of its clasp, half at each; another piece may hang by one end.
    """
    if plan.piece == "necklace":
        return weight(mass, 0.5), "the necklace, half of it on each side of the neck,"
    return weight(mass), "the whole piece"


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


def weakest(
    name: str, table: str, row: str, column: str, unit: str = "", best: float | None = None
) -> Quantity:
    """The least that a table prints: hold is judged by the weakest; raises Missing without a cell.

    Taking it is a careful choice; the `best` may be more than the table's most.

    >>> weakest("share held", "crimps", "closed by hand", "held").grade
    'one page'
    """
    cell = tables.load(table).row(row).cells.get(column)
    if cell is None:
        raise Missing(f"a `{column.replace('_', ' ')}` of {row} in the trade table `{table}`")
    source = f"trade tables, {table}, {row}: {cell.grade}"
    span = Choice(cell.low, cell.high if best is None else best, source, careful=True)
    return leaf(name, cell.low, unit, source=source, grade=cell.grade, choice=span)
