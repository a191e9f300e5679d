"""What to buy for plans: everything they take, over what is on hand, in what it is sold in.

Each plan gives its lines; lines for the same thing are added up before anything is rounded, so a
class buys whole packs once and not plan by plan. What is written under `supplies` is on hand once,
however many makers there are.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import TYPE_CHECKING

from msgspec import Struct
from msgspec.structs import replace

from wellstrung.common import money
from wellstrung.common.wording import listed
from wellstrung.lists import chain_stock, taken
from wellstrung.lists.line import GROUPS, LENGTH, Needed, SupplyLine, added, bought, up
from wellstrung.model.item import Missing
from wellstrung.model.plan import Plan
from wellstrung.quantity.arithmetic import exact, total
from wellstrung.quantity.value import Quantity
from wellstrung.subjects.chain import ChainCut

if TYPE_CHECKING:
    from wellstrung.derived.of_plan import Quantities
    from wellstrung.judging.result import PlanResult


class Kit(Struct, frozen=True):
    """What to weigh out for one maker of one plan: of each bead its pieces and grams."""

    title: str
    file: str
    beads: tuple[KitBead, ...]


class KitBead(Struct, frozen=True):
    """One bead of a kit, spare ones included; grams up to the next tenth, None where unknown."""

    name: str
    pieces: int
    grams: float | None


def needed(
    results: Iterable[PlanResult], makers: int = 1, *, on_hand: bool = True
) -> list[SupplyLine]:
    """The shopping list of the plans, each made by so many makers, in the order of `GROUPS`.

    Without `on_hand` nothing counts as had already: what the pieces take in all. Plans that could
    not be understood give no lines.
    """
    asked = [result.ask.quantities for result in results if result.ask is not None]
    lines = [line for ask in asked for line in taken.of_plan(ask, makers, on_hand)]
    lines += _chains(asked, makers, on_hand)
    return sorted(added(lines), key=lambda line: GROUPS.index(line.group))


def bill(lines: Iterable[SupplyLine]) -> tuple[money.Money, ...]:
    """What the lines with a price cost, one sum for each currency."""
    return money.total(line.cost for line in lines if line.cost is not None)


def unpriced(lines: Iterable[SupplyLine]) -> list[str]:
    """Names of what has to be bought and has no price that fits."""
    return [line.name for line in lines if line.cost is None and (line.short or line.missing)]


def cost(ask: Quantities, currency: str) -> Quantity:
    """What all that one plan takes costs, with nothing on hand, in whole packs.

    Raises Missing where something has no price, or one in another currency.
    """
    lines = [*taken.of_plan(ask, 1, False), *_chains([ask], 1, False)]
    unknown = next((lacks for line in lines for lacks in line.missing), "")
    if unknown:
        raise Missing(unknown)
    costs = [(line, line.cost) for line in lines if line.short]
    lacking = [line.name for line, cost in costs if cost is None or cost.currency != currency]
    if lacking:
        raise Missing(f"a price in {currency} for {listed(lacking)} under `prices` of a bench file")
    return total(
        "what it costs",
        currency,
        [
            exact(line.name, float(cost.amount), currency, source=f"{bought(line)}, {price.text}")
            for line, cost in costs
            if cost is not None and (price := line.price) is not None
        ],
    )


def kits(results: Iterable[PlanResult]) -> list[Kit]:
    """For each plan what one maker is given of each bead, spare ones included."""
    found = []
    for result in results:
        if result.ask is not None:
            beads = tuple(_kit_beads(result.ask.quantities))
            if beads:
                found.append(Kit(result.title, result.file, beads))
    return found


def _kit_beads(ask: Quantities) -> Iterator[KitBead]:
    for line in taken.beads(ask, 1, False):
        if not line.missing:
            # weighed up to the next tenth of a gram
            grams = up(line.short / line.per_gram * 10) / 10 if line.per_gram else None
            yield KitBead(line.name, up(line.short), grams)


def _chains(asked: Iterable[Quantities], makers: int, on_hand: bool) -> Iterator[SupplyLine]:
    """The chain of all plans."""
    for (name, describes), group in chain_stock.alike(asked).items():
        blank = SupplyLine("chain", name, describes, LENGTH)
        line = _chain_line(blank, [cut for _, cut in group], makers, on_hand)
        plans: list[Plan] = [plan for plan, _ in group]
        yield replace(
            taken.stamped(line, plans[0]),
            plans=tuple(dict.fromkeys(plan.title for plan in plans)),
            files=tuple(dict.fromkeys(plan.file for plan in plans)),
        )


def _chain_line(
    blank: SupplyLine,
    cuts: Sequence[ChainCut],
    makers: int,
    on_hand: bool,
) -> SupplyLine:
    cut = chain_stock.merged(cuts, makers)
    lengths = cut.lengths if on_hand else []
    try:
        whole = chain_stock.one_stretch(cut, cut.every_piece)
        missing = [] if chain_stock.gives(lengths, whole) else chain_stock.not_had(cut, lengths)
        bought = chain_stock.one_stretch(cut, missing).likely.high if missing else 0.0
    except Missing as lacks:
        return replace(blank, missing=(lacks.field,))
    return replace(
        blank,
        need=Needed(whole.middle, *whole.likely),
        have=sum(lengths),
        cut_short=bought,
        notes=("in one length",) if bought else (),
    )
