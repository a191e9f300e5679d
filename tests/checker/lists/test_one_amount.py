"""One amount: check, supply list, cutting list, page, sizes and JSON agree on what a plan takes."""

from __future__ import annotations

import json
from collections import defaultdict
from collections.abc import Iterator
from pathlib import Path

import pytest

from generated.plans import seeded
from reports import report
from running import SAMPLES, middle_of
from wellstrung.derived.purchase import up
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import PlanResult, understood
from wellstrung.lists import cutting, shopping, stock
from wellstrung.lists.kit import kit
from wellstrung.lists.line import SupplyLine
from wellstrung.model.item import Missing
from wellstrung.model.plan import Quantities
from wellstrung.plugins import host
from wellstrung.report import cuts_list, supplies_data, supplies_list
from wellstrung.report.pages import tables
from wellstrung.subjects.supplies import spool_of
from wellstrung.what_if import size_range
from wellstrung.what_if.unfit import to_buy

INSTALLED = host.load()
CHECKER = Checker(INSTALLED, quantities=True, trials=0)
MAKERS = (1, 12)
#: the rules that report less is on hand than the piece takes, by the group of the list
RULES = {
    "beads": ("beads-enough", "spare-share"),
    "thread": ("thread-enough",),
    "chain": ("chain-enough",),
    "rings": ("findings-enough",),
    "findings": ("findings-enough",),
    "adhesive": ("glue-mixes",),
}
#: groups that are counted in pieces
PIECES = ("rings", "findings")
SAMPLE_PLANS = sorted(SAMPLES.rglob("*.yaml"))
#: the groups whose amounts the JSON report has, to five figures
REPORTED = ("thread", "adhesive", "rings", "chain")
FEW, MANY = 40, 80


def results(texts: Iterator[str]) -> Iterator[PlanResult]:
    for number, text in enumerate(texts):
        result = CHECKER.check_text(text, f"plan {number}.yaml")
        assert not result.failures
        if result.ask is not None:
            yield result


def close(number: float) -> object:
    return pytest.approx(number, rel=1e-9, abs=1e-6)


def agree(result: PlanResult) -> None:
    """Everything that can be asked about the amounts of one plan gives the same answer."""
    (ask,) = understood([result])
    for makers in MAKERS:
        lines = shopping.needed([ask], makers)
        cuts = cutting.listed([ask], makers)
        for line in lines:
            if not line.missing:
                quantities_agree(line, ask, makers)
        cuts_agree(cuts, lines, ask)
        kits_agree(lines, ask, makers)
        json_agrees(result, lines, cuts, makers)
    lines = shopping.needed([ask])
    (reported,) = report(result)["plans"]
    for line in lines:
        rules_agree(line, result)
        written = f"{line.name}.needed"
        if written in reported["quantities"] and line.group in REPORTED:
            assert not line.missing
            assert line.need.middle == pytest.approx(middle_of(reported, written), rel=1e-4)
    page_agrees(result, [line for line in lines if not line.missing])


def quantities_agree(line: SupplyLine, ask: Quantities, makers: int) -> None:
    """A line of the supply list is a named quantity, once for each maker."""
    owner = f"beads.{line.name}" if line.group == "beads" else line.name
    named = line.name in ask.plan.parts or line.group == "beads"
    if line.group not in RULES or not named:
        return
    of = "pieces_" if line.group in PIECES else ""
    need = ask.get(f"{owner}.{of}needed")
    if line.group == "chain":
        # cut together, the pieces of two makers lose links between them and share their end walls
        assert makers > 1 or line.need.middle == close(need.middle)
        return
    assert line.need.middle == close(makers * need.middle)
    assert line.need.high == close(makers * need.likely.high)
    if line.group == "beads":
        assert line.spare == close(makers * ask.get(f"{owner}.spare").middle)
    try:
        had = ask.get(f"{owner}.{of}on_hand").middle
    except Missing:
        return
    assert line.have == close(had)


def cuts_agree(cuts: cutting.CutList, lines: list[SupplyLine], ask: Quantities) -> None:
    """What is cut of a thread, cord, wire, core or chain is what the supply list has of it."""
    totals: dict[tuple[str, str], float] = defaultdict(float)
    for one in cuts.lengths:
        part = ask.plan.parts[one.part]
        group, name = one.what, one.part
        if group in ("line", "thread", "warp"):
            spool = spool_of(ask.plan, part)
            group, name = "thread", spool.name if spool else ""
        totals[group, name] += one.total
    for line in lines:
        total = totals.get((line.group, line.name))
        if total is not None and not line.missing:
            # a cord is cut as long as it is likely to be needed
            need = line.need.high if line.group == "cord" else line.need.middle
            assert total == close(need), line.name
    for cut in cuts.chains:
        (line,) = (line for line in lines if (line.group, line.name) == ("chain", cut.chain))
        to_buy = sum(bar.length for bar in cut.bars if not bar.written)
        assert to_buy == close(line.buy)
        assert sum(len(bar.pieces) for bar in cut.bars) == sum(count for _, count in cut.pieces)


def kits_agree(lines: list[SupplyLine], ask: Quantities, makers: int) -> None:
    """So many kits hold what the supply list has in all, and lack no more than it has to buy."""
    one = kit(ask)
    in_all = {
        (line.group == "beads", line.name): up(line.short)
        for line in shopping.needed([ask], makers, on_hand=False)
    }
    for bag in one.bags:
        assert in_all[True, bag.name] == makers * bag.pieces
    for loose in one.findings:
        if (False, loose.name) in in_all and makers > 1:
            assert in_all[False, loose.name] == makers * loose.in_all
    by_name = {(line.group == "beads", line.name): line for line in lines}
    for stocked in stock.taken(ask, one, makers):
        line = by_name[bool(stocked.letter), stocked.name]
        bought = line.grams if stocked.unit == stock.GRAMS else line.buy
        assert stocked.short <= (bought or 0.0) + 1e-6, line
        assert stocked.had - stocked.left + stocked.short >= stocked.takes - 1e-6, line


def json_agrees(
    result: PlanResult, lines: list[SupplyLine], cuts: cutting.CutList, makers: int
) -> None:
    kits = tuple(shopping.kits(understood([result])))
    found = supplies_list.Supplies((result,), makers, tuple(lines), kits, ())
    for line, written in zip(lines, json.loads(supplies_data.as_json(found))["lines"], strict=True):
        assert (written["name"], written["need"]["middle"]) == (line.name, line.need.middle)
        assert (written["buy"], written["grams"], written["packs"]) == (
            line.buy, line.grams, line.packs,
        )  # fmt: skip
    written = json.loads(cuts_list.as_json([result], makers, cuts))
    assert [one["total"] for one in written["lengths"]] == [one.total for one in cuts.lengths]


def rules_agree(line: SupplyLine, result: PlanResult) -> None:
    """A rule reports what the list has to buy, and holds where it has nothing.

    A rule that holds by the choice of some makers only, as of fewer spare beads, says nothing of
    the list, which buys by the usual choice.
    """
    rules = RULES.get(line.group, ())
    spoken = any(one.rule in rules and line.name in one.parts for one in result.remarks)
    held = {one.rule for one in result.held if line.name in one.parts and not one.note}
    if spoken:
        assert line.short > 0, line
    elif held.issuperset(rules) and rules:
        assert line.short == 0, line


def page_agrees(result: PlanResult, lines: list[SupplyLine]) -> None:
    found = list(tables.supplies(result))
    if lines:
        cells = [
            supplies_list.cells(line) for line in to_buy([result], on_hand=True) if not line.missing
        ]
        amounts = [(f"{need} + {spare}" if spare else need, *rest) for need, spare, *rest in cells]
        assert [row[1:4] for row in found[0].rows] == [tuple(one)[:3] for one in amounts]
        assert len(amounts) == len(lines)
    kits = {bead.name: bead for kit in shopping.kits(understood([result])) for bead in kit.beads}
    for line in shopping.needed(understood([result]), on_hand=False):
        if line.name in kits and line.group == "beads" and line.pack is None:
            bead = kits[line.name]
            assert bead.pieces == line.buy
            # a bag holds enough of a heavy lot, too
            assert (bead.grams is None) == (line.grams is None)
            assert bead.grams is None or line.grams is None or bead.grams >= line.grams


@pytest.mark.parametrize("path", SAMPLE_PLANS, ids=lambda path: path.stem)
def test_all_agree_on_a_sample(path: Path) -> None:
    for result in results(iter([path.read_text(encoding="utf-8")])):
        agree(result)


@pytest.mark.slow
def test_all_agree_on_generated_plans() -> None:
    found = list(results(iter(seeded(MANY))))
    assert len(found) > MANY / 2
    for result in found:
        agree(result)


def sizes_agree(result: PlanResult) -> bool:
    """Whether the plan comes in sizes; its own size takes what the supply list has."""
    try:
        sizes = size_range.over(result, INSTALLED)
    except size_range.NoSizes:
        return False
    own = [size for size in sizes.sizes if size.own]
    lines = shopping.needed(understood([result]), on_hand=False)
    for size in own:
        assert [(line.name, line.need, line.buy) for line in size.lines] == [
            (line.name, line.need, line.buy) for line in lines
        ]
    return bool(own)


@pytest.mark.slow
def test_sizes_have_the_amounts_of_the_supply_list() -> None:
    text = (Path(__file__).parent.parent / "report" / "fills_the_rest.yaml").read_text("utf-8")
    assert all(sizes_agree(result) for result in results(iter([text])))
    assert sum(sizes_agree(result) for result in results(iter(seeded(FEW)))) > 1
