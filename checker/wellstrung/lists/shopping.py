"""What to buy for plans: everything they take, over what is on hand, in what it is sold in.

Each plan gives its lines; lines for the same thing are added up before anything is rounded, so a
class buys whole packs once and not plan by plan. What is written under `supplies` is on hand once,
however many makers there are.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import Any

from msgspec import Struct
from msgspec.structs import replace

from wellstrung.common.money import Money, priced, total
from wellstrung.derived.amounts import LENGTH
from wellstrung.derived.purchase import Needed
from wellstrung.kinds.chain import one_stretch
from wellstrung.lists import chain_stock, of_a_plan
from wellstrung.lists.bags import Bag, bags
from wellstrung.lists.line import GROUPS, SupplyLine, added
from wellstrung.model.item import Missing
from wellstrung.model.plan import Quantities
from wellstrung.subjects.chain import ChainCut


class Kit(Struct, frozen=True):
    """The bags of beads for one maker of one plan."""

    title: str
    file: str
    beads: tuple[Bag, ...]


def needed(
    plans: Sequence[Quantities], makers: int = 1, *, on_hand: bool = True
) -> list[SupplyLine]:
    """The supply list of the plans, each made by so many makers, in the order of `GROUPS`.

    Without `on_hand` the list has everything that the pieces take.
    """
    lines = [line for ask in plans for line in of_a_plan.lines(ask, makers, on_hand=on_hand)]
    lines += _chains(plans, makers, on_hand=on_hand)
    return sorted(added(lines), key=lambda line: GROUPS.index(line.group))


def bill(lines: Iterable[SupplyLine]) -> tuple[Money, ...]:
    """What the lines with a price cost, one sum for each currency."""
    return total(line.cost for line in lines if line.cost is not None)


def unpriced(lines: Iterable[SupplyLine]) -> list[SupplyLine]:
    """What has to be bought and has no price that fits."""
    return [line for line in lines if line.cost is None and (line.short or line.missing)]


def kits(plans: Iterable[Quantities]) -> list[Kit]:
    """For each plan with beads what one maker is given of each, spare ones included."""
    found = ((ask.plan, tuple(bags(ask))) for ask in plans)
    return [Kit(plan.title, plan.file, beads) for plan, beads in found if beads]


def _chains(plans: Iterable[Quantities], makers: int, *, on_hand: bool) -> Iterator[SupplyLine]:
    """The chain of all plans, a line for each chain."""
    for (name, describes), group in chain_stock.alike(plans).items():
        cut = chain_stock.merged([cut for _, cut in group], makers)
        yield SupplyLine(
            group="chain",
            name=name,
            unit=LENGTH,
            describes=describes,
            price=priced(group[0][0].bench.prices, name),
            inches=all(plan.in_inches for plan, _ in group),
            plans=tuple(dict.fromkeys(plan.title for plan, _ in group)),
            files=tuple(dict.fromkeys(plan.file for plan, _ in group)),
            **_amounts(cut if on_hand else replace(cut, on_hand=())),
        )


def _amounts(cut: ChainCut) -> dict[str, Any]:
    """What a chain's line says of its need and of what has to be bought."""
    try:
        need = one_stretch(cut)
        buy = one_stretch(cut, chain_stock.laid_out(cut).left(cut)).likely.high
    except Missing as lacks:
        return {"missing": (lacks.field,)}
    return {
        "need": Needed(need.middle, *need.likely),
        "have": sum(cut.lengths),
        "cut_short": buy,
        "notes": ("in one length",) if buy else (),
    }
