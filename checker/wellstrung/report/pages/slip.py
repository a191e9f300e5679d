"""The slip of a repair: what came, what is wished, what will be done, a price range, signatures.

A checked plan in, HTML out. It says what was seen and what is planned, and promises nothing.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import suppress

from wellstrung.common import units
from wellstrung.common.money import Money
from wellstrung.common.wording import hours, in_yaml, together
from wellstrung.derived.purchase import up
from wellstrung.derived.repair import evened, restrung, thickest_sold, whole
from wellstrung.derived.taken import bead_words, thread_words
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import PlanResult
from wellstrung.lists import costs, shopping
from wellstrung.lists.kit import kit
from wellstrung.model.item import Missing
from wellstrung.model.plan import Goal, Quantities
from wellstrung.quantity.value import Quantity
from wellstrung.report.kit_list import as_decimal, cut_words
from wellstrung.report.pages import listings
from wellstrung.report.pages.rendering import render
from wellstrung.report.supplies_list import buying
from wellstrung.report.writer import Options
from wellstrung.subjects.repair import beads_that_came, came

PLAIN = Options()


def slip(result: PlanResult, checker: Checker | None = None, options: Options = PLAIN) -> str:
    """The slip of a plan with a `repair`."""
    assert result.ask is not None
    ask = result.ask.quantities
    repair = ask.plan.section("repair")
    assert repair is not None
    cost = costs.of_piece(ask)
    lacks = list(_unpriced(cost, ask))
    price = cost.price if cost is not None and not lacks else None
    return render(
        "slip.html",
        result=result,
        large=options.large,
        maker=listings.written(result, "maker"),
        came=list(_came(ask)),
        damage=came(ask.plan).texts("damage"),
        wished=repair.texts("wished"),
        done=list(_done(result, ask)),
        price=_range(price) if price is not None else (),
        to_price=lacks,
    )


def _came(ask: Quantities) -> Iterator[tuple[str, str]]:
    """What was counted, measured and weighed, each with its figure."""
    had = came(ask.plan)
    for bead, count in beads_that_came(ask.plan):
        yield f"{bead.name}, {bead_words(bead)}, whole ones", f"{count}"
        with suppress(Missing):
            yield f"narrowest hole of {bead.name}", f"{bead.text('hole')}"
    parts = had.node_at("parts")
    for name, count in (parts.value if parts is not None else {}).items():
        yield f"{name}, {ask.plan.parts[str(name)].noun}", f"{count}"
    written = {
        "length": "from the first bead to the last",
        "line": "line",
        "mass": "weight, all of it",
    }
    yield "knots between the beads", had.text("knots") if had.has("knots") else "none"
    for field, words in written.items():
        if had.has(field):
            yield words, had.text(field)


def _done(result: PlanResult, ask: Quantities) -> Iterator[str]:
    """What will be done: line and knots, beads taken out or added, the length after, the time."""
    yield from (cut_words(one) for one in kit(ask).cuts)
    with suppress(Missing):
        strand = restrung(ask)
        yield from _line(ask)
        knots = ask.of(strand, "beads").middle - 1
        if strand.stitch is not None and strand.stitch.knot:
            yield f"`{strand.name}`: a knot between every two beads, {knots:.0f} knots"
        yield from _beads(ask)
    length = result.quantities.get("piece.length")
    if length is not None:
        low, high = (_long(end, ask) for end in length.likely)
        yield f"Length when it is done: about {_long(length.middle, ask)}, likely {low} to {high}"
    for line in shopping.needed([ask]):
        if line.short:
            yield f"To buy: {line.describes or line.name}, {buying(line)}"
    time = result.quantities.get("piece.bench_time")
    if time is not None:
        low, high = (hours(end) for end in time.likely)
        yield f"Work at the bench: about {hours(time.middle)}, likely {low} to {high}"


def _line(ask: Quantities) -> Iterator[str]:
    """The line against the narrowest hole."""
    strand, thickest = restrung(ask), ask.get("piece.thickest_line")
    times = strand.count("passes", default=1)
    often = "once" if times == 1 else "twice" if times == 2 else f"{times} times"
    sold = thickest_sold(ask)
    yield (
        f"The narrowest hole takes a line of up to {thickest.likely.low:.2f} mm {often}"
        + (f" ({sold} at most)" if sold else "")
        + f"; it is strung on {thread_words(strand)}, {ask.of(strand, 'line').middle:.2f} mm"
    )


def _beads(ask: Quantities) -> Iterator[str]:
    """How long it is with all that came, and what to take out or to add for what is wished."""
    strand, goal = restrung(ask), ask.plan.goal
    every = ask.get("piece.restrung_length")
    least, most = (_long(end, ask) for end in every.likely)
    says = f"With every bead that came it would be {_long(every.middle, ask)}"
    says += f", likely {least} to {most}" if least != most else ""
    if goal is not None and _as_wished(goal, ask):
        says += f"; {_wished(goal)} is wished, and the plan keeps to it"
    elif goal is not None:
        even = evened(strand)
        count = whole(ask.get("piece.beads_to_take_out").middle, even=even)
        alike = ", as many at one end as at the other" if even and count else ""
        does = f"take out {count}" if count > 0 else f"add {-count}" if count else "keep them all"
        says += f"; {_wished(goal)} is wished: {does}{alike}"
    yield says
    for bead, had in beads_that_came(ask.plan):
        likely = ask.of(bead, "needed").likely
        low, high = round(likely.low), up(likely.high)
        strung = f"{low} to {high}" if low < high else f"{low}"
        if high < had:
            back = f"{'at least ' if low < high else ''}{had - high}"
            go = "goes" if had - high == 1 else "go"
            yield f"{strung} of `{bead.name}` are strung; {back} {go} back in a bag"
        elif low > had:  # how many more is said once, of what is to buy
            yield f"All {had} of `{bead.name}` that came are strung, and others with them"
        elif low < high:
            yield f"{strung} of `{bead.name}` are strung, and {had} came"


def _wished(goal: Goal) -> str:
    return f"{goal.text} {'inside' if goal.field == 'inside' else 'in all'}"


def _as_wished(goal: Goal, ask: Quantities) -> bool:
    """Whether the piece as planned is likely as long as it is wished."""
    long = ask.get("piece.inside" if goal.field == "inside" else "piece.length")
    return goal.window.low <= long.middle <= goal.window.high


def _long(length: float, ask: Quantities) -> str:
    return units.by_length(length, inches=ask.plan.in_inches)


def _unpriced(cost: costs.Cost | None, ask: Quantities) -> Iterator[str]:
    """What a price lacks, each as the line of a bench file that gives it."""
    if ask.plan.bench.pricing.wage is None:
        yield "`pricing: {wage: 18 EUR per h}`, with your own wage"
    names = costs.to_pay_for(ask) if cost is None else cost.unpriced
    if names:
        prices = ", ".join(f"{in_yaml(name)}: ..." for name in names)
        currency = f", in {cost.currency}" if cost is not None else ""
        yield f"`prices: {{{prices}}}`{currency}"
    if cost is not None and cost.hours is None:
        yield f"in the plan {together(cost.missing[:1])}, for the hours"


def _range(price: Quantity) -> tuple[str, str]:
    """A price from its least to its most, as is likely."""
    low, high = (Money(as_decimal(end), price.unit) for end in price.likely)
    return str(low), str(high)
