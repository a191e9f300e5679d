"""Weights, strengths, and what is left of a strength over a load."""

from __future__ import annotations

from collections.abc import Mapping

from wellstrung import tables
from wellstrung.common.cache import cached
from wellstrung.common.choice import Choice
from wellstrung.model.item import Missing
from wellstrung.model.parts import Part
from wellstrung.model.plan import Plan
from wellstrung.quantity.arithmetic import derived, exact, leaf
from wellstrung.quantity.value import Quantity


def weight(mass: Quantity, share: float = 1.0, rest: float | None = None) -> Quantity:
    """The weight of a mass, N, or a share of it: g at standard gravity, 9.80665 m/s2.

    At `rest` it may be a smaller share; to take more is a careful choice.

    >>> round(weight(exact("charm", 100.0, "g")).middle, 5)
    0.98067
    """
    span = Choice(rest, share, "the load at rest", careful=True) if rest is not None else None
    return derived(
        f"weight of {mass.name}",
        "N",
        lambda mass, share, gravity: mass * share * gravity / 1000,
        mass=mass,
        share=exact("share", share, choice=span),
        gravity=exact("gravity", 9.80665, "m/s2"),
    )


def pull_at_clasp(plan: Plan, mass: Quantity, part: Part) -> tuple[Quantity, str]:
    """What pulls at an end of a part of the run, N, and that in words.

    What is worn hangs from both sides of its clasp, half at each, and strands side by side share
    that. A necklace is worn so; another piece may hang by one end.
    """
    strands = _side_by_side(plan).get(part, 1)
    if plan.piece == "necklace":
        words = "the necklace, half of it on each side of the neck,"
        return plan.cache.get(weight, mass, 0.5, 0.5 / strands), words
    return plan.cache.get(weight, mass, 1.0, 0.5 / strands), "the whole piece"


@cached
def _side_by_side(plan: Plan) -> Mapping[Part, int]:
    """How many strands lie side by side where each part of the run stands: the fewest."""
    found: dict[Part, int] = {}
    for entry in plan.run:
        for part in entry.parts:
            found[part] = min(found.get(part, len(entry.parts)), len(entry.parts))
    return found


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
