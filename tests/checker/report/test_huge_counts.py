"""Huge counts are summed up with a note, not drawn one by one."""

from __future__ import annotations

from pathlib import Path

from wellstrung.judging.checker import Checker
from wellstrung.plugins import host
from wellstrung.report import text
from wellstrung.report.pages import sheet
from wellstrung.report.writer import Options
from wellstrung.subjects.find import find
from wellstrung.subjects.hung import HungOnEyes

COLLAR = Path("tests/rules/collar.yaml").read_text(encoding="utf-8")
CHECKER = Checker(host.load(), quantities=True)


def _page(text: str) -> str:
    return sheet(CHECKER.check_text(text))


def test_a_run_of_very_many_places_is_not_drawn() -> None:
    bars = "bar, ring, " * 400
    page = _page(
        "plan: 1\ntitle: Long\npiece: necklace\nparts:\n"
        "  ring: {kind: jump ring, outside: 5 mm, wire: 20 AWG, closing: open}\n"
        "  bar: {kind: connector, length: 18 mm, eyes: {count: 2, hole: 2 mm, wire: 1 mm}}\n"
        f"run: [{bars}bar]\n"
    )
    assert "It has 801 things to draw, more than can be made out on a page" in page
    assert len(page) < 500_000


def test_very_many_steps_are_one_block_of_the_time_line() -> None:
    cut, wear = "  - {do: cut, part: drop, every: 8}\n", "  - {do: wear}\n"
    assert "stretches" not in _page(COLLAR)
    assert "stretches" in _page(COLLAR.replace(wear, cut * 300 + wear))


def test_of_more_pieces_than_anyone_hangs_the_first_are_placed() -> None:
    result = CHECKER.check_text(COLLAR.replace("by: small, times: 7", "by: small, times: 10000"))
    assert result.ask is not None
    (row,) = (one for one in find(result.ask.plan) if isinstance(one, HungOnEyes))
    assert sum(line.times for line in row.lines) == 10_000
    assert len(row.in_order) == 5_000


def test_of_more_remarks_than_anyone_reads_the_first_are_shown_and_the_rest_counted() -> None:
    rings = "".join(
        f"  loop {n}: {{kind: jump ring, outside: 5 mm, wire: {2 + n / 1e4} mm, closing: open}}\n"
        for n in range(320)
    )
    run = ", ".join(f"loop {n}" for n in range(320))
    plan = CHECKER.check_text(
        f"plan: 1\ntitle: Thick\npiece: necklace\nparts:\n{rings}run: [{run}]\n"
    )
    assert len(plan.numbered) == 391
    told = text.each(plan, Options())
    assert "300. WARNING" in told
    assert "301. WARNING" not in told
    assert "91 more remarks (" in told
    assert "open: 21 more, `wellstrung check plan.yaml --as json` lists them" in told
    assert len(text.each(plan, Options(brief=True)).splitlines()) == len(plan.numbered)
