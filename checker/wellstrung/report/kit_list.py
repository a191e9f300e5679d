"""The kit of a plan: bags, pieces, findings, stock and cost, for people and as data."""

from __future__ import annotations

import json
from collections.abc import Iterator
from decimal import Decimal
from typing import Any

from msgspec import Struct

from wellstrung.common.money import Money
from wellstrung.common.wording import hours, together
from wellstrung.judging.result import PlanResult
from wellstrung.lists.costs import MOST_HEADS, ClassCost, Cost, Pays
from wellstrung.lists.kit import CutPiece, Kit, Loose
from wellstrung.lists.stock import Stocked
from wellstrung.quantity.value import Quantity
from wellstrung.report import lot_words
from wellstrung.report.heading import as_data, head
from wellstrung.report.terminal import Page, counted
from wellstrung.report.writer import Options

_INDENT, _GAP = 2, 4


class ForMakers(Struct, frozen=True):
    """A kit for so many makers, the stock that it is taken from, and what all of it costs.

    `uncounted` says what of the stock does not add up.
    """

    result: PlanResult
    makers: int
    kit: Kit
    stock: tuple[Stocked, ...]
    cost: Cost | None
    of_class: ClassCost | None
    uncounted: tuple[str, ...] = ()


def write(found: ForMakers, options: Options) -> str:
    """Everything that goes into one kit, then the stock and the cost."""
    page, kit = Page(options), found.kit
    head(page, [found.result], found.makers)
    page.line()
    each = f", for all {kit.makes} that one maker makes" if kit.makes > 1 else ""
    spare = ", spare beads included" if kit.bags else ""
    page.line(f"one kit{each}{spare}", style="bold")
    lots = lot_words.of_bags(kit, found.stock)
    for bag in kit.bags:
        lot = f"; {lots[bag.letter]}" if lots[bag.letter] else ""
        serves = f"; enough for {bag.serves}" if bag.serves else ""
        what = f"{bag.name}, {bag.describes}: {bag.measured}{serves}{lot}"
        page.pair(bag.letter, what, 2, gap=4)
    for one in kit.cuts:
        page.pair("-", cut_words(one), _INDENT, gap=_GAP)
    for finding in kit.findings:
        page.pair("-", finding_words(finding), _INDENT, gap=_GAP)
    page.line()
    if kit.shared:
        page.pair("for all, on the table:", together(kit.shared), 0, gap=24)
        page.line()
    for lacks in kit.missing:
        page.pair("not counted:", lacks, 0, gap=13)
    _stock(page, found)
    for title, lines in (("what one costs", _cost(found.cost)), ("class", _class(found.of_class))):
        if lines:
            page.line(title, style="bold")
            for name, says in lines:
                page.pair(name, says, _INDENT, gap=24)
            page.line()
    return page.text()


def cut_words(one: CutPiece) -> str:
    """A piece that is cut: how many, how long, of what and for what."""
    many = f"{one.count} pieces" if one.count > 1 else "1 piece"
    each = "each " if one.count > 1 else ""
    if one.links:
        links = f"to the nearest {one.unit}" if one.asked else counted(one.links, one.unit)
        long = f"{one.long} {links}" if one.asked else f"{links}, {one.long}"
        what = f"`{one.part}`: {many} of `{one.describes}`, {each}{long}"
    else:
        of = f" ({one.describes})" if one.describes and one.describes != one.what else ""
        what = f"`{one.part}`: {many} of {one.what}{of}, {each}{one.long}"
    return what + ("; cut when the woven part is measured" if one.later else "")


def finding_words(one: Loose) -> str:
    """A finding with how many are over."""
    over = f"{one.count} and {one.over} over" if one.over else f"{one.count}"
    return f"{one.name}, {one.describes}: {over}"


def _stock(page: Page, found: ForMakers) -> None:
    if not found.stock and not found.uncounted:
        return
    page.line(f"stock, when {_kits(found.makers)} packed", style="bold")
    for one in found.stock:
        page.pair("-", f"{one.name}: {stock_words(one)}", _INDENT, gap=_GAP)
    for says in found.uncounted:
        page.pair("-", says, _INDENT, gap=_GAP)
    page.line()


def _kits(makers: int) -> str:
    return f"{makers} kits are" if makers > 1 else "1 kit is"


def stock_words(one: Stocked) -> str:
    """What was on hand of a thing, what is taken, what is left, and what it falls short."""
    short = f", {one.shown(one.short, 'up')} short" if one.short else ""
    return (
        f"{one.shown(one.had)} on hand{lot_words.on_hand(one)}, {one.shown(one.takes, 'up')} taken,"
        f" {one.shown(one.left)} left{lot_words.left(one)}{short}"
    )


def _cost(cost: Cost | None) -> list[tuple[str, str]]:
    """The lines of what a piece costs; what is not known names what to write."""
    return [] if cost is None else list(cost_lines(cost))


def cost_lines(cost: Cost) -> Iterator[tuple[str, str]]:
    """Materials bought and used, hours, overhead, fees and price, each by itself."""
    without = f"; without {together(cost.unpriced)}, which have no price" if cost.unpriced else ""
    yield "materials, whole packs", amount(cost.bought) + without
    yield "materials, used", amount(cost.used) + without
    if cost.hours is not None:
        low, high = (hours(end) for end in cost.hours.likely)
        spread = f", likely {low} to {high}" if low != high else ""
        yield "hours at the bench", f"{hours(cost.hours.middle)}{spread}"
    for name, value in (("wages", cost.wages), ("overhead", cost.overhead), ("cost", cost.cost)):
        if value is not None:
            yield name, amount(value)
    if cost.price is not None and cost.fees is not None:
        if cost.multiplier is not None:
            yield "multiplier", f"{cost.multiplier:g}"
        if cost.fees.middle:
            yield "fees, of the price", amount(cost.fees)
        yield "price", amount(cost.price)
    for lacks in cost.missing:
        yield "not known without", lacks


def amount(found: Quantity) -> str:
    """An amount of money, with its likely range where it has one."""
    low, high = found.likely
    spread = f", likely {low:.2f} to {high:.2f}" if high - low >= 0.01 else ""
    return f"{Money(as_decimal(found.middle), found.unit)}{spread}"


def as_decimal(value: float) -> Decimal:
    """An amount as money is counted."""
    return Decimal(str(round(value, 4)))


def _class(cost: ClassCost | None) -> list[tuple[str, str]]:
    return [] if cost is None else list(class_lines(cost))


def class_lines(cost: ClassCost) -> Iterator[tuple[str, str]]:
    """What a class costs before anyone comes, and the fewest heads at which each fee pays."""
    for name, one in (
        (f"teaching, {hours(cost.hours * 60)}", cost.teaching),
        ("room", cost.room),
        ("preparing", cost.preparing),
    ):
        if one.amount:
            yield name, str(one)
    for fee in cost.fees:
        yield f"{fee.called} {fee.fee}", pays(fee)
    for lacks in cost.missing:
        yield "not known without", lacks


def pays(fee: Pays) -> str:
    """The fewest heads at which a fee pays for what it is for."""
    of = " and ".join(
        filter(
            None,
            (
                f"{fee.fixed} however many come" if fee.fixed.amount else "",
                f"whole packs, {fee.each} for the first head" if fee.each.amount else "",
            ),
        )
    )
    for_what = f" for {of}" if of else ""
    if fee.heads is None:
        return f"does not pay{for_what}, up to {MOST_HEADS} heads"
    again = (
        f"; not at {together(map(str, fee.not_at))}, where packs are opened" if fee.not_at else ""
    )
    return f"pays{for_what} from {fee.heads} head{'s' if fee.heads > 1 else ''} on{again}"


# --- for programs


def as_json(found: ForMakers) -> str:
    """The kit as JSON, as its published schema describes it."""
    kit = found.kit
    lots = lot_words.of_bags(kit, found.stock)
    data = {
        "report": "wellstrung kit",
        "version": 1,
        "makers": found.makers,
        "plan": as_data([found.result])[0],
        "makes": kit.makes,
        "bags": [
            {
                "bag": bag.letter,
                "name": bag.name,
                "describes": bag.describes,
                "lot": lots[bag.letter],
                "pieces": bag.pieces,
                "grams": bag.grams,
                "measured": bag.measured,
                "serves": bag.serves,
            }
            for bag in kit.bags
        ],
        "cut": [
            {
                "what": one.what,
                "part": one.part,
                "describes": one.describes,
                "count": one.count,
                "length": one.length,
                "links": one.links,
                "later": one.later,
            }
            for one in kit.cuts
        ],
        "findings": [
            {"name": one.name, "describes": one.describes, "count": one.count, "over": one.over}
            for one in kit.findings
        ],
        "shared": list(kit.shared),
        "missing": [*kit.missing, *found.uncounted],
        "stock": [
            {
                "name": one.name,
                "lot": ", ".join(filter(None, one.lots)),
                "unit": one.unit or "pieces",
                "had": one.had,
                "takes": one.takes,
                "left": one.left,
                "short": one.short,
                "lots": [{"kits": share.kits, "of": dict(share.of)} for share in one.shares],
            }
            for one in found.stock
        ],
        "cost": _cost_data(found.cost),
        "class": _class_data(found.of_class),
    }
    return json.dumps(data, indent=2, ensure_ascii=False)


def _cost_data(cost: Cost | None) -> dict[str, Any] | None:
    if cost is None:
        return None
    figures = ("bought", "used", "hours", "wages", "overhead", "cost", "fees", "price")
    values = {name: getattr(cost, name) for name in figures}
    return {
        "currency": cost.currency,
        **{name: value and _range(value) for name, value in values.items()},
        "multiplier": cost.multiplier,
        "unpriced": list(cost.unpriced),
        "missing": list(cost.missing),
    }


def _range(found: Quantity) -> dict[str, Any]:
    return {"middle": found.middle, "likely": list(found.likely), "unit": found.unit}


def _class_data(cost: ClassCost | None) -> dict[str, Any] | None:
    if cost is None:
        return None
    return {
        "teaching": float(cost.teaching.amount),
        "room": float(cost.room.amount),
        "preparing": float(cost.preparing.amount),
        "currency": cost.room.currency,
        "fees": [
            {
                "called": fee.called,
                "fee": float(fee.fee.amount),
                "heads": fee.heads,
                "not_at": list(fee.not_at),
            }
            for fee in cost.fees
        ],
        "missing": list(cost.missing),
    }
