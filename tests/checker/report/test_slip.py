"""A repair: what came is on hand, what it makes when strung again, and the slip to sign."""

from __future__ import annotations

import html
import re
from pathlib import Path

import pytest

from pages import checked
from running import SAMPLES, Run
from wellstrung.derived.repair import thickest_sold, whole
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import PlanResult
from wellstrung.lists import costs, shopping
from wellstrung.plugins import host
from wellstrung.reading import bench
from wellstrung.report.pages.slip import slip
from wellstrung.report.pages.steps import instructions

HOST = host.load()
PEARLS = SAMPLES / "ferry_night_pearls.yaml"
TEXT = PEARLS.read_text(encoding="utf-8")
GRADUATED = """\
plan: 1
title: Fog bells
piece: necklace
finished_length: {wished}
beads:
  small: {{type: other, outside: 5 mm, length: 5 mm, hole: 1 mm, per_gram: 5}}
  middle: {{type: other, outside: 8 mm, length: 8 mm, hole: 1 mm, per_gram: 2}}
  large: {{type: other, outside: 11 mm, length: 11 mm, hole: 1 mm, per_gram: 0.8}}
parts:
  strand:
    {{kind: strand, stitch: strung, thread: silk No. 4,
     beads: {{mirror: [3 small, 3 middle, 3 large]}}}}
run: [strand]
repair: {{came: {{beads: {{small: 6, middle: 6, large: 3}}}}, wished: [shorter]}}
"""


def result_of(text: str, own: str = "bench: 1") -> PlanResult:
    settings, faults = bench.read_text(own, "bench.yaml", HOST.stitches, HOST.limits)
    assert settings is not None, faults
    found = Checker(HOST, bench=settings, quantities=True).check_text(text)
    assert found.ask is not None, [one.says for one in found.remarks]
    return found


def words(page: str) -> str:
    return " ".join(html.unescape(re.sub(r"<[^>]+>", " ", page)).split())


def test_what_came_is_on_hand_and_the_rest_is_bought() -> None:
    result = checked(PEARLS)
    assert result.ask is not None
    lines = {line.name: line for line in shopping.needed([result.ask.quantities])}
    assert (lines["pearl"].have, lines["pearl"].short) == (72, 0)
    assert (lines["hook"].have, lines["hook"].short) == (1, 0)
    fewer = result_of(TEXT.replace("beads: {pearl: 72}", "beads: {pearl: 60}"))
    assert any(one.rule == "beads-enough" for one in fewer.remarks)


def test_a_strand_again_by_hand() -> None:
    """72 pearls of 6 mm, knots of 0.8 mm between them; what 68 make with hook and French wire."""
    found = checked(PEARLS).quantities
    ends = found["piece.length"].middle - found["strand.length"].middle
    assert found["piece.restrung_length"].middle == pytest.approx(72 * 6.06 + 71 * 0.8 + ends)
    assert found["piece.came_length"].middle == pytest.approx(72 * 6.06)
    assert found["piece.came_mass"].middle == pytest.approx(72 / 3.42 + 2)
    over = found["piece.restrung_length"].middle - 490
    assert found["piece.beads_to_take_out"].middle == pytest.approx(over / 6.86)
    assert found["piece.thickest_line"].middle == pytest.approx(0.8)
    result = checked(PEARLS)
    assert result.ask is not None
    # silk No. 6 is 0.70 mm in print, No. 8 is 0.80
    assert thickest_sold(result.ask.quantities) == "silk 6"
    often = result_of(TEXT.replace("    kind: strand\n", "    kind: strand\n    passes: 30\n"))
    # more than twenty, for which no ratio is printed, lie as in a honeycomb
    assert often.quantities["piece.thickest_line"].middle == pytest.approx(0.8 / 6.2915, rel=1e-4)


def test_a_graduated_strand_stays_even() -> None:
    """Small beads of 5.05 mm go off both ends in pairs, and are added there in pairs."""
    result = result_of(GRADUATED.format(wished="9 cm ± 2 mm"))
    out = result.quantities["piece.beads_to_take_out"].middle
    length = result.quantities["piece.length"].middle
    assert length == pytest.approx(1.01 * (6 * 5 + 6 * 8 + 3 * 11))
    assert out == pytest.approx(4 + (length - 90 - 20.2) / 5.05)
    assert whole(out, even=True) == 4 and whole(-0.4, even=True) == 0
    assert "take out 4, as many at one end as at the other" in words(slip(result))
    more = result_of(GRADUATED.format(wished="13.2 cm ± 2 mm"))
    assert "add 4, as many at one end as at the other" in words(slip(more))


def test_the_slip_says_what_came_what_is_wished_and_what_is_planned() -> None:
    page = words(slip(checked(PEARLS)))
    for says in (
        "whole ones 72", "Weight, all of it 23 g", "cotton, frayed at the hook",
        "Four pearls worn at the hole", "The old hook on French wire",
        "1 piece of line (silk 4), 1.47 m",
        "up to 0.76 mm once (silk 6 at most)", "67 knots", "4 go back in a bag",
        "about 49.1 cm, likely 48.4 cm to 49.7 cm", "Left here as it stands above: owner",
        "From:",
    ):  # fmt: skip
        assert says in page, says
    assert not re.search(r"guarantee|warrant|promise|safe ", page, re.IGNORECASE)


def test_the_slip_counts_what_is_bought_once() -> None:
    """8 pearls are missing, and where the length is open as many as may be strung at most."""
    few = words(slip(result_of(TEXT.replace("beads: {pearl: 72}", "beads: {pearl: 60}"))))
    assert "All 60 of pearl that came are strung, and others with them" in few
    assert "To buy: 6 ± 0.1 mm bead, cream, 8 (" in few and "find" not in few
    open_ended = TEXT.replace("beads: {pearl: 72}", "beads: {pearl: 67}").replace(
        "count: 68 ", "length: fills the rest "
    )
    few = words(slip(result_of(open_ended)))
    assert "67 to 69 of pearl are strung, and 67 came" in few and "bead, cream, 2 (" in few


def test_its_price_is_a_range_of_the_bench_and_the_owners_beads_cost_nothing() -> None:
    own = (
        "bench: 1\nprices: {silk: 3.50 EUR per spool, gimp: 0.40 EUR each}\n"
        "pricing: {wage: 24 EUR per h}"
    )
    result = result_of(TEXT, own)
    assert result.ask is not None
    cost = costs.of_piece(result.ask.quantities)
    assert cost is not None and cost.price is not None and cost.unpriced == ()
    assert cost.bought.middle == pytest.approx(4.3)
    low, high = cost.price.likely
    assert f"Likely {low:.2f} EUR to {high:.2f} EUR" in words(slip(result))
    assert low < 24 * 2.3 < high


@pytest.mark.parametrize(
    ("own", "says"),
    [
        (
            "bench: 1",
            "beside the plan: pricing: {wage: 18 EUR per h} , with your own wage; prices: {silk:"
            " ..., gimp: ...} .",
        ),
        (
            "bench: 1\nprices: {silk: 3.50 EUR per spool}\npricing: {wage: 24 EUR per h}",
            "beside the plan: prices: {gimp: ...} , in EUR.",
        ),
    ],
)
def test_a_slip_without_a_price_says_what_to_write_for_one(own: str, says: str) -> None:
    page = words(slip(result_of(TEXT, own)))
    assert f"To have a price here, write in bench.yaml , {says}" in page and "Likely" not in page
    whole = "bench: 1\nprices: {silk: 3.50 EUR per spool, gimp: 0.40 EUR each}\n"
    priced = words(slip(result_of(TEXT, f"{whole}pricing: {{wage: 24 EUR per h}}")))
    assert "To have a price" not in priced


def test_it_is_taken_apart_and_cleaned_before_it_is_strung() -> None:
    first, second, *_ = instructions(checked(PEARLS))
    assert "before you cut its line" in " ".join(first.says)
    assert "soft damp cloth" in " ".join(second.says)


def test_names_that_are_not_in_the_plan_are_slips() -> None:
    text = TEXT.replace("beads: {pearl: 72}", "beads: {perl: 72}").replace("{hook: 1}", "{hok: 1}")
    found = Checker(HOST).check_text(text)
    assert {one.remedy for one in found.remarks} == {"write `pearl`", "write `hook`"}


def test_the_command_writes_the_slip_and_needs_a_repair(run: Run, tmp_path: Path) -> None:
    (tmp_path / "pearls.yaml").write_text(TEXT, encoding="utf-8")
    ran = run("sheet", "pearls.yaml", "--slip", cwd=tmp_path)
    assert ran.code == 0 and "wrote pearls-slip.html" in ran.out
    without = re.sub(r"(?ms)^repair:\n(?:  .*\n)+", "", TEXT)
    (tmp_path / "pearls.yaml").write_text(without, encoding="utf-8")
    ran = run("sheet", "pearls.yaml", "--slip", cwd=tmp_path)
    assert ran.code == 2 and "is of no repair" in ran.err
