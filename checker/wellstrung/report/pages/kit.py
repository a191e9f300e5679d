"""Pages of a kit: the list to pack it by, labels for its bags, and the notice before a class.

A kit in, HTML by file name out. The notice goes to students: no cost stands on it but the fees.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator
from pathlib import PurePath

from msgspec import Struct

from wellstrung.common.wording import article, hours, together
from wellstrung.judging.result import PlanResult
from wellstrung.model.item import Item
from wellstrung.model.parts import Part, Role
from wellstrung.quantity.value import Quantity
from wellstrung.report import kit_list, lot_words
from wellstrung.report.kit_list import ForMakers, cut_words, finding_words, stock_words
from wellstrung.report.pages import listings
from wellstrung.report.pages.rendering import render
from wellstrung.report.pages.steps import tools
from wellstrung.report.writer import Options
from wellstrung.subjects.worn import ROUND


class Label(Struct, frozen=True):
    """A label to cut out: the letter large, then a line for each thing that stands on the bag."""

    letter: str
    name: str
    lines: tuple[str, ...]


def pages(found: ForMakers, shown: PlanResult, options: Options) -> dict[str, str]:
    """The pages by file name; the notice only where the plan has a class."""
    stem = PurePath(found.result.file).stem
    made = {
        f"{stem}-kit.html": _list(found, options),
        f"{stem}-labels.html": render(
            "labels.html",
            result=found.result,
            large=options.large,
            labels=list(labels(found)),
        ),
    }
    meets = shown.ask.plan.section("class") if shown.ask is not None else None
    if meets is not None:
        made[f"{stem}-class.html"] = _notice(found, shown, meets, options)
    return made


def _list(found: ForMakers, options: Options) -> str:
    cost, of_class = found.cost, found.of_class
    return render(
        "kit.html",
        result=found.result,
        large=options.large,
        makers=found.makers,
        kit=found.kit,
        lots=lot_words.of_bags(found.kit, found.stock),
        cuts=[cut_words(one) for one in found.kit.cuts],
        findings=[finding_words(one) for one in found.kit.findings],
        stock=[(one.name, stock_words(one)) for one in found.stock],
        uncounted=found.uncounted,
        cost=list(kit_list.cost_lines(cost)) if cost is not None else [],
        of_class=list(kit_list.class_lines(of_class)) if of_class is not None else [],
    )


def labels(found: ForMakers) -> Iterator[Label]:
    """For each maker a label for each bag, one for what is cut, and one for the findings."""
    kit, makers = found.kit, found.makers
    for bag in kit.bags:
        serves = f"enough for {bag.serves}" if bag.serves else ""
        for lot in lot_words.of_labels(found.stock, bag.letter, makers):
            lines = (bag.describes, lot, bag.measured, serves)
            yield Label(bag.letter, bag.name, tuple(filter(None, lines)))
    if kit.cuts:
        yield from [Label("", "cut", tuple(map(cut_words, kit.cuts)))] * makers
    if kit.findings:
        yield from [Label("", "findings", tuple(map(finding_words, kit.findings)))] * makers


def _notice(found: ForMakers, shown: PlanResult, meets: Item, options: Options) -> str:
    assert shown.ask is not None
    plan = shown.ask.plan
    pricing, brings = plan.bench.pricing, meets.texts("bring")
    measure, prepared = ROUND.get(plan.piece, ""), meets.texts("prepared")
    return render(
        "class_notice.html",
        result=found.result,
        large=options.large,
        level=meets.text("level") if meets.has("level") else "",
        maker=listings.written(shown, "maker"),
        meets=_meets(meets),
        takes=_takes(shown.quantities.get("piece.class_time")),
        brings=[
            *brings,
            *(f"`{name}`, ready made" for name in prepared),
            *([f"the measure round your {measure}"] if measure and plan.goal is not None else []),
        ],
        kit=[f"{bag.letter}: {bag.name}, {bag.describes}" for bag in found.kit.bags]
        + [f"{one.name}, {one.describes}" for one in found.kit.findings],
        ready=[*(one for one in tools(shown) if one not in brings), *found.kit.shared],
        fees=[(name, pricing.written[name]) for name in _FEES if name in pricing.written],
        tell=list(_to_tell(plan.parts.values())),
        cautions=listings.cautions(shown),
    )


_FEES = ("class fee", "kit fee")


def _meets(meets: Item) -> str:
    """How often a class meets, and for how long."""
    sessions = meets.count("sessions", default=1)
    often = f"{sessions} times for" if sessions > 1 else "once for"
    apart = f", {meets.text('between')} apart" if sessions > 1 and meets.has("between") else ""
    return f"{often} {meets.text('length')}{' each' if sessions > 1 else ''}{apart}"


def _takes(time: Quantity | None) -> str:
    """How long the work takes a student, as far as it is known."""
    if time is None:
        return ""
    low, high = (hours(end) for end in time.likely)
    return f"about {hours(time.middle)}" + (f", likely {low} to {high}" if low != high else "")


def _to_tell(every: Collection[Part]) -> Iterator[str]:
    """What a student may react to, and what is known of it: nickel, latex, glue."""
    metals = [part for part in every if part.takes("metal") and part.has("metal")]
    free = [f"`{part.name}` ({part.text('metal')})" for part in metals if _nickel_free(part)]
    rest = [f"`{part.name}` ({part.text('metal')})" for part in metals if not _nickel_free(part)]
    if rest:
        yield f"Nickel: nothing is stated in writing about nickel in {together(rest)}"
    if free:
        yield f"Nickel: the supplier states {together(free)} nickel free"
    if any(part.thread.stretches for part in every if part.has("thread")):
        yield "Latex: elastic may have a core of natural rubber, which holds latex"
    glues = [part for part in every if part.kind.role is Role.GLUE]
    for glue in glues:
        kind = glue.text("type") if glue.has("type") else "glue"
        yield (
            f"Glue: {article(kind)} (`{glue.name}`) is used; its safety data sheet lies on the"
            " table and decides"
        )
    if glues:
        yield "Latex: gloves may hold it; ask for nitrile ones"


def _nickel_free(part: Part) -> bool:
    return any("nickel" in one for one in part.texts("states"))
