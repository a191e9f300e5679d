"""What everything that one plan takes costs, bought in whole packs."""

from __future__ import annotations

from wellstrung.common.wording import listed
from wellstrung.derived.purchase import bought
from wellstrung.derived.taken import of_plan, purchase
from wellstrung.model.item import Missing
from wellstrung.model.plan import Quantities
from wellstrung.quantity.arithmetic import exact, total
from wellstrung.quantity.value import Quantity


def cost(ask: Quantities, currency: str) -> Quantity:
    """The cost with nothing on hand, a line for each thing.

    Raises Missing where an amount is not known, or something has no price in this currency.
    """
    things = [purchase(thing, on_hand=False) for thing in of_plan(ask)]
    unknown = next((lacks for thing in things for lacks in thing.missing), "")
    if unknown:
        raise Missing(unknown)
    lines, lacking = [], []
    for thing in things:
        if not thing.short:
            continue
        if thing.cost is None or thing.price is None or thing.cost.currency != currency:
            lacking.append(thing.name)
            continue
        source = f"{bought(thing)}, {thing.price.text}"
        lines.append(exact(thing.name, float(thing.cost.amount), currency, source=source))
    if lacking:
        raise Missing(f"a price in {currency} for {listed(lacking)} under `prices` of a bench file")
    return total("what it costs", currency, lines)
