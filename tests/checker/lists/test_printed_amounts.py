"""What people read is what programs read: the numbers on every list and page, read back."""

from __future__ import annotations

import csv
import html
import json
import re
from collections.abc import Iterator
from io import StringIO
from pathlib import Path
from typing import Any

import pytest

from generated.plans import seeded
from reports import report
from running import SAMPLES
from wellstrung.common import units
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import PlanResult, understood
from wellstrung.lists import cutting, shopping
from wellstrung.plugins import host
from wellstrung.report import cuts_list, pages, supplies_data, supplies_list
from wellstrung.report.writer import Options

CHECKER = Checker(host.load(), quantities=True, trials=0)
MAKERS = (1, 12)
#: wide enough for a line of figures, too narrow for a table
NARROW = Options(width=75)
#: half of the last figure that is printed of a length, in mm: of 1.23 m, 12.3 cm; of ml, of grams
_LAST = {"m": 5.0, "cm": 0.5, "ml": 0.005, "g": 0.05}
_AMOUNT = re.compile(r"(\d+(?:\.\d+)?)(?: (mm|cm|m|ml|g)\b)?")


def is_printed(text: str, amount: float) -> bool:
    """Whether an amount, in its base unit, is what the first number of a text says."""
    if text == "a drop":
        return amount < 0.005
    if in_inches := re.search(r"\d[\d. /]* (?:in|yd)\b", text):
        last = units.LENGTHS["yd"] / 100 if "yd" in in_inches[0] else units.INCH / 8
        return abs(units.length(in_inches[0]).value - amount) <= last
    found = _AMOUNT.search(text)
    if found is None:
        return False
    factor = {"m": 1000.0, "cm": 10.0}.get(found[2], 1.0)
    return abs(float(found[1]) * factor - amount) <= _LAST.get(found[2], 0.5) + 1e-6


def supplies(result: PlanResult, makers: int) -> supplies_list.Supplies:
    plans = understood([result])
    lines, kits = tuple(shopping.needed(plans, makers)), tuple(shopping.kits(plans))
    return supplies_list.Supplies((result,), makers, lines, kits, ())


def entries(text: str) -> Iterator[tuple[str, dict[str, str]]]:
    """The entries of a stacked supply list: the name, and what stands beside each word.

    Of what is on hand the name is followed by what the thing is.
    """
    text, _, on_hand = text.partition("on hand, nothing to buy\n")
    for entry in re.split(r"^\[ \] ", text, flags=re.MULTILINE)[1:]:
        name, _, rest = entry.partition("\n")
        # the last entry ends where the next group or list begins, at the margin
        rest = re.split(r"^\S", rest, flags=re.MULTILINE)[0]
        said = re.findall(r"^    (buy|need) +(.*(?:\n {6,}.*)*)", rest, re.MULTILINE)
        yield name, {word: " ".join(what.split()) for word, what in said}
    for entry in re.split(r"^  - ", on_hand.partition("\n\n")[0], flags=re.MULTILINE)[1:]:
        name, _, need = " ".join(entry.split()).rpartition(": need ")
        yield name, {"need": need, "buy": "nothing"}


def text_agrees(found: supplies_list.Supplies, lines: list[dict[str, Any]]) -> None:
    read = list(entries(supplies_list.write(found, NARROW)))
    lines = sorted(lines, key=lambda line: line["short"] <= 0)
    for (name, said), line in zip(read, lines, strict=True):
        assert name == line["name"] or (name.startswith(f"{line['name']}, ") and not line["short"])
        need, _, have = said["need"].partition("; have ")
        need, _, spare = need.partition(", and ")
        assert is_printed(need, line["need"]["middle"]), name
        assert is_printed(spare, line["spare"]) or not (spare or line["spare"]), name
        assert have in ("", "yes") or is_printed(have, line["have"]), name
        if line["short"] <= 0:
            assert said["buy"] == "nothing", name
        elif line["packs"] is not None:
            assert said["buy"].startswith(str(line["packs"])), name
        elif line["grams"] is None:
            assert is_printed(said["buy"], line["buy"]), (name, said["buy"], line["buy"])


def csv_agrees(found: supplies_list.Supplies, lines: list[dict[str, Any]]) -> None:
    rows = {row["what"]: row for row in csv.DictReader(StringIO(supplies_data.as_csv(found)))}
    for line in lines:
        row = rows[line["name"]]
        for column in ("spare", "have", "buy"):
            assert float(row[column]) == pytest.approx(line[column], abs=0.0051)
        assert float(row["need"]) == pytest.approx(line["need"]["middle"], abs=0.0051)
        assert row["packs"] == ("" if line["packs"] is None else str(line["packs"]))


def page_agrees(result: PlanResult, lines: list[dict[str, Any]]) -> None:
    """The table of a sheet, which is for one maker."""
    section = (
        pages.sheet(result, options=Options(full=True))
        .partition('<section id="supplies"')[2]
        .partition("</table>")[0]
    )
    cells = [
        [html.unescape(re.sub("<[^>]+>", "", cell)) for cell in re.findall(r"<td.*?</td>", row)]
        for row in re.findall(r"<tr>(?=<th scope=\"row\">).*?</tr>", section)
    ]
    assert len(cells) == len(lines)
    for (need, have, *_), line in zip(cells, lines, strict=True):
        need, _, spare = need.partition(" + ")
        assert is_printed(need, line["need"]["middle"])
        assert is_printed(spare, line["spare"]) or not (spare or line["spare"])
        assert have in ("", "yes") or is_printed(have, line["have"])


def cuts_agree(result: PlanResult, makers: int) -> None:
    found = cutting.listed(understood([result]), makers)
    written = json.loads(cuts_list.as_json([result], makers, found))
    text = " ".join(cuts_list.write([result], makers, found, NARROW).split())
    read = re.findall(r"\[ \] ([^:]+): (\d+)(?:, perhaps \d+,)? x (.+?) of ", text)
    assert [(part, int(count)) for part, count, _ in read] == [
        (one["part"], one["count"]) for one in written["lengths"]
    ]
    for (part, _, length), one in zip(read, written["lengths"], strict=True):
        assert is_printed(length, one["length"]), part
    for chain in written["chains"]:
        assert sum(len(bar["pieces"]) for bar in chain["bars"]) == sum(
            piece["count"] for piece in chain["pieces"]
        )


def agree(result: PlanResult) -> None:
    """Text, table, page and JSON say the same of every amount that they share."""
    quantities = report(result)["plans"][0]["quantities"]
    for makers in MAKERS:
        found = supplies(result, makers)
        lines = [
            one for one in json.loads(supplies_data.as_json(found))["lines"] if not one["missing"]
        ]
        text_agrees(found, lines)
        csv_agrees(found, lines)
        cuts_agree(result, makers)
        for line in lines:
            named = quantities.get(f"beads.{line['name']}.needed")
            if line["group"] == "beads" and named is not None:
                assert line["need"]["middle"] == pytest.approx(makers * named["middle"])
        if makers == 1:
            page_agrees(result, lines)


@pytest.mark.parametrize("path", sorted(SAMPLES.rglob("*.yaml")), ids=lambda path: path.stem)
def test_what_is_printed_of_a_sample_is_what_programs_read(path: Path) -> None:
    agree(CHECKER.check_text(path.read_text(encoding="utf-8")))


@pytest.mark.slow
def test_what_is_printed_of_generated_plans_is_what_programs_read() -> None:
    for number, text in enumerate(seeded(20)):
        result = CHECKER.check_text(text, f"plan {number}.yaml")
        if understood([result]):
            agree(result)


def test_a_number_is_read_as_it_is_printed() -> None:
    assert is_printed("2.16 m", 2160.0) and is_printed("46 cm", 460.0) and is_printed("a drop", 0.0)
    assert not is_printed("2.16 m", 2171.0) and not is_printed("12", 13.0)
    assert units.show(2160.0, "m") == "2.16 m"
