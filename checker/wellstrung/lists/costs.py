"""What a piece and a class cost, and what pays for them, by the prices of the bench.

Materials in whole packs and what of them is used, hours, overhead and fees stand apart. Counting,
with the bench's own figures: no multiplier unless the bench has one.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from decimal import Decimal

from msgspec import Struct
from msgspec.structs import replace

from wellstrung.common.money import Money
from wellstrung.derived import taken
from wellstrung.derived.purchase import Needed, Purchase
from wellstrung.derived.taken import Taken
from wellstrung.model.came import CAME
from wellstrung.model.item import Missing
from wellstrung.model.plan import Quantities
from wellstrung.quantity.arithmetic import derived, exact, product, total
from wellstrung.quantity.value import Quantity

#: No class of beading has more heads: from memory.
MOST_HEADS = 30
_HOUR = 60.0


class Cost(Struct, frozen=True):
    """What one plan costs, in one currency; a quantity is None where a figure is not known.

    `bought` is the material in whole packs with nothing on hand, `used` what of it goes into the
    work. `wages` are for the hours at the bench, `overhead` a share of both; `fees` are what a
    market takes of the `price`. `unpriced` has no price in this currency, `missing` says what to
    write where a figure is not known.
    """

    currency: str
    bought: Quantity
    used: Quantity
    unpriced: tuple[str, ...]
    hours: Quantity | None
    wages: Quantity | None
    overhead: Quantity | None
    cost: Quantity | None
    multiplier: float | None
    fees: Quantity | None
    price: Quantity | None
    missing: tuple[str, ...]


class Pays(Struct, frozen=True):
    """A fee, what it is to pay for, and the fewest heads at which it does; None: not by 30 heads.

    `fixed` is paid however many come, `each` for every head (in packs that are whole for one
    head). `not_at` are larger classes at which another pack is opened and the fee falls short.
    """

    called: str
    fee: Money
    fixed: Money
    each: Money
    heads: int | None
    not_at: tuple[int, ...] = ()


class ClassCost(Struct, frozen=True):
    """What a class costs before anyone comes, its kits apart, and what pays for each."""

    teaching: Money
    room: Money
    preparing: Money
    hours: float
    fees: tuple[Pays, ...]
    missing: tuple[str, ...]


def of_piece(ask: Quantities) -> Cost | None:
    """What a plan costs; None where the bench has neither a price nor a wage."""
    things = list(taken.of_plan(ask))
    bought = list(_to_pay_for(things, ask))
    currency = _currency(bought, ask)
    if not currency:
        return None
    prices = [(one, one.cost, one.used_cost) for one in bought]
    paid = [one for one in prices if one[1] is not None and one[1].currency == currency]
    used = _sum("materials used", currency, [(one.name, cost) for one, _, cost in paid])
    pricing, missing = ask.plan.bench.pricing, []
    hours = wages = None
    try:
        hours = ask.get("piece.bench_time")
    except Missing as lacks:
        missing.append(lacks.field)
    if pricing.wage is None:
        missing.append("`wage` under `pricing` of a bench file")
    elif hours is not None:
        hour = exact("wage", float(pricing.wage.amount), f"{currency}/h", "`wage` of the bench")
        wages = derived(
            "wages", currency, lambda time, wage: time / _HOUR * wage, time=hours, wage=hour
        )
    known = [part for part in (used, wages) if part is not None]
    overhead = cost = fees = price = None
    if wages is not None:
        share = exact("overhead", pricing.overhead, "", "`overhead` of the bench")
        overhead = product(
            "overhead", currency, total("materials and hours", currency, known), share
        )
        cost = total("cost", currency, [*known, overhead])
        times, taken_of_it = pricing.multiplier or 1.0, pricing.fees
        price = derived(
            "price",
            currency,
            lambda cost, times, fees: cost * times / (1 - fees),
            cost=cost,
            times=exact("multiplier", times),
            fees=exact("fees", taken_of_it),
        )
        fees = product("fees", currency, price, exact("fees", taken_of_it))
    return Cost(
        currency,
        _sum("materials bought", currency, [(one.name, cost) for one, cost, _ in paid]),
        used,
        tuple(one.name for one in bought if one not in [two for two, *_ in paid]),
        hours,
        wages,
        overhead,
        cost,
        pricing.multiplier,
        fees,
        price,
        tuple(missing),
    )


def to_pay_for(ask: Quantities) -> tuple[str, ...]:
    """The names of all that a piece takes and its owner did not bring."""
    return tuple(one.name for one in _to_pay_for(taken.of_plan(ask), ask))


def _to_pay_for(things: Iterable[Taken], ask: Quantities) -> Iterator[Purchase]:
    """Everything with nothing on hand; but what came for repair is its owner's, up to its number.

    What came and is too little is bought.
    """
    owned = {str(name) for group in CAME for name in _that_came(ask, group)}
    for thing in things:
        if thing.name not in owned:
            yield taken.purchase(thing, on_hand=False)
            continue
        over = taken.purchase(thing)
        if over.missing or over.short:
            short = Needed(over.short, over.short, over.short)
            yield replace(over, need=short, spare=0.0, up=0.0, have=0.0, down=0.0)


def _that_came(ask: Quantities, group: str) -> Iterable[object]:
    node = ask.plan.written("repair", "came", group)
    return node.value if node is not None else ()


def _currency(bought: Sequence[Purchase], ask: Quantities) -> str:
    """The currency of the bench's own amounts, or that of the first price."""
    prices = (one.price.money.currency for one in bought if one.price is not None)
    return ask.plan.bench.pricing.currency or next(prices, "")


def _sum(name: str, currency: str, costs: Sequence[tuple[str, Money | None]]) -> Quantity:
    terms = [exact(called, float(one.amount), currency) for called, one in costs if one is not None]
    return total(name, currency, terms or [exact("nothing with a price", 0.0, currency)])


def of_class(ask: Quantities) -> ClassCost | None:
    """What the class of a plan costs, and the fewest heads that pay; None where it has no class."""
    meets, pricing = ask.plan.section("class"), ask.plan.bench.pricing
    hourly, currency = pricing.teaching or pricing.wage, pricing.currency
    if meets is None or not currency:
        return None
    sessions = meets.count("sessions", default=1)
    hours = meets.duration("length").middle * sessions / _HOUR
    taught = _times(hourly, hours, currency)
    room = _times(pricing.room, sessions, currency)
    before = _times(pricing.wage, pricing.preparing / _HOUR, currency)
    fixed = Money(taught.amount + room.amount + before.amount, currency)
    missing = [f"`{name}` under `pricing` of a bench file" for name in _lacking(ask)]
    found = []
    kept = Decimal(1) - Decimal(str(pricing.fees))
    things = list(taken.of_plan(ask))
    packing = _times(pricing.wage, pricing.packing / _HOUR, currency)

    def kits(heads: int) -> Decimal:
        return _bill(things, heads, currency) + packing.amount * heads

    nothing = Money(Decimal(), currency)
    if pricing.class_fee is not None:
        taken_in = pricing.class_fee.amount * kept
        heads, short = _fewest(lambda many: taken_in * many - fixed.amount)
        found.append(Pays("class fee", pricing.class_fee, fixed, nothing, heads, short))
    one = Money(kits(1), currency)
    if pricing.kit_fee is not None:
        paid = pricing.kit_fee.amount * kept
        heads, short = _fewest(lambda many: paid * many - kits(many))
        found.append(Pays("kit fee", pricing.kit_fee, nothing, one, heads, short))
    if pricing.class_fee is not None and pricing.kit_fee is not None:
        both = Money(pricing.class_fee.amount + pricing.kit_fee.amount, currency)
        heads, short = _fewest(lambda many: both.amount * kept * many - fixed.amount - kits(many))
        found.append(Pays("both fees", both, fixed, one, heads, short))
    return ClassCost(taught, room, before, hours, tuple(found), tuple(missing))


def _lacking(ask: Quantities) -> list[str]:
    pricing = ask.plan.bench.pricing
    asked = {"wage": pricing.wage, "class fee": pricing.class_fee, "kit fee": pricing.kit_fee}
    return [name for name, value in asked.items() if value is None]


def _times(one: Money | None, many: float, currency: str) -> Money:
    return Money(one.amount * Decimal(str(many)) if one is not None else Decimal(), currency)


def _bill(things: Sequence[Taken], makers: int, currency: str) -> Decimal:
    """What everything for so many makers costs in whole packs, nothing on hand."""
    costs = (taken.purchase(thing, makers, on_hand=False).cost for thing in things)
    return sum((one.amount for one in costs if one and one.currency == currency), Decimal())


def _fewest(left: Callable[[int], Decimal]) -> tuple[int | None, tuple[int, ...]]:
    """The fewest heads at which something is left over, and the larger classes where it is not."""
    pays = [heads for heads in range(1, MOST_HEADS + 1) if left(heads) >= 0]
    if not pays:
        return None, ()
    return pays[0], tuple(n for n in range(pays[0], MOST_HEADS + 1) if n not in pays)
