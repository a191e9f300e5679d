"""The cutting list: against its published schema, and its bars to the character."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from jsonschema import Draft202012Validator

import wellstrung_schemas as schemas
from running import SAMPLES, SHARED
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import understood
from wellstrung.lists import cutting
from wellstrung.lists.cutting import Bar, ChainPiece
from wellstrung.plugins import host
from wellstrung.report.cuts_list import as_json, drawn, how_good, write
from wellstrung.report.writer import Options

CHECKER = Checker(host.load(), keep=True)
VALIDATOR = Draft202012Validator(schemas.load("cuts"))
COLLAR = SHARED / "slack_tide_collar.yaml"
PLANS = [*sorted(SAMPLES.glob("*.yaml")), *sorted((SAMPLES / "class").glob("*.yaml"))]


def page(file: Path, options: Options, makers: int = 1) -> str:
    results = [CHECKER.check_file(file)]
    return write(results, makers, cutting.listed(understood(results), makers), options)


@pytest.mark.parametrize("file", PLANS, ids=lambda file: file.stem)
def test_fits_its_schema(file: Path) -> None:
    results = [CHECKER.check_file(file)]
    VALIDATOR.validate(json.loads(as_json(results, 2, cutting.listed(understood(results), 2))))


def test_of_links_whose_size_nobody_stated_no_number_is_said(tmp_path: Path) -> None:
    plan = tmp_path / "chain.yaml"
    plan.write_text(
        "plan: 1\ntitle: Chain\npiece: necklace\n"
        "parts:\n  row: cable chain, brass, 45 cm\n  ring: 4 mm jump ring 20 AWG\n"
        "run: [ring, row, ring]\n"
    )
    words = " ".join(page(plan, Options(width=200)).split())
    measured = "45 cm to the nearest link (the size of its links is not known) for row"
    assert f"measure from one end, and on from each cut 1. {measured}" in words
    assert "then open the next link" in words


def test_every_piece_is_in_the_report() -> None:
    results = [CHECKER.check_file(COLLAR)]
    (chain,) = json.loads(as_json(results, 12, cutting.listed(understood(results), 12)))["chains"]
    assert sum(len(bar["pieces"]) for bar in chain["bars"]) == 84
    assert chain["bars"][0]["written"] == "50 cm" and chain["bars"][-1]["written"] is None


@pytest.mark.parametrize("width", [40, 60, 80, 120])
def test_no_line_but_a_path_is_wider_than_the_page(width: int) -> None:
    for file in PLANS:
        for line in page(file, Options(width), makers=2).splitlines():
            assert len(line) <= width or "sample_plans/" in line, line
            assert line == line.rstrip()


def test_of_several_plans_each_is_named_with_its_maker_and_the_heading_takes_few_lines() -> None:
    results = [CHECKER.check_file(file) for file in PLANS[-15:]]
    text = write(results, 1, cutting.listed(understood(results)), Options(60))
    head, _, rest = text.partition("\n\n")
    assert head.startswith("15 plans: 14 not makeable, 1 ") and len(head.splitlines()) <= 5
    assert "\nDaveth: Lock Gate band\n[ ] band: 14 x" in rest
    assert "rowing chain  oar 14 mm, eye 4 mm, soldered\n   for Tideline necklace\n" in rest


def test_plans_of_one_title_show_their_files() -> None:
    text = COLLAR.read_text(encoding="utf-8")
    results = [CHECKER.check_text(text, f"{name}.yaml") for name in ("one", "two")]
    said = write(results, 1, cutting.listed(understood(results)), Options(80))
    for name in ("one", "two"):
        assert f"Slack Tide collar {name}.yaml\n[ ] rope: " in said


def test_a_terminal_without_unicode_gets_ascii() -> None:
    text = page(COLLAR, Options(60, ascii_only=True))
    assert text.isascii() and "|====" in text


bars = st.builds(
    lambda sizes, gap, left: Bar(
        sum(sizes) + gap * len(sizes) + left, "", "loop",
        tuple(
            ChainPiece("drop", 1, 1, (), sum(sizes[:n]) + gap * n, size, "")
            for n, size in enumerate(sizes)
        ),
        left,
    ),
    st.lists(st.floats(5, 80), min_size=1, max_size=12), st.floats(0.5, 20), st.floats(1, 200),
)  # fmt: skip


@given(bars, st.integers(60, 120))
def test_a_bar_is_as_wide_as_asked_and_shows_every_piece(bar: Bar, width: int) -> None:
    told = drawn(bar, width, ascii_only=True)
    assert len(told) == width and told[0] == told[-1] == "|"
    runs = [run for run in told.strip("|").split("x") if run.startswith("=")]
    assert len(runs) == len(bar.pieces)


def test_links_are_counted_before_they_are_cut() -> None:
    text = page(COLLAR, Options(80))
    assert "1. 6 links (1..6) for drop, then cut through link 7" in text
    assert "2. 6 links (8..13) for drop, turned end for end, then cut through link 14" in text
    assert "7 drop: cut now" in text


def test_whoever_cuts_reads_of_flying_ends() -> None:
    assert "CAUTION cut ends of wire, pins and chain fly" in page(COLLAR, Options(80))


def test_of_pins_only_the_ends_are_cut() -> None:
    plan = """
plan: 1
title: Two pins
piece: earrings
parts:
  hook: {kind: ear wire, wire: 20 AWG, eye: {hole: 2 mm, wire: 0.8 mm}}
  pin: {kind: wire link, type: head pin, wire: 22 AWG, loop: {hole: 2 mm}, length: 50 mm}
run: [hook]
hung: [{part: pin, from: hook}]
"""
    results = [CHECKER.check_text(plan)]
    text = write(results, 1, cutting.listed(understood(results), 1), Options(100))
    assert "nothing to cut to length: ends of wire are trimmed as they are turned" in text
    assert "CAUTION cut ends of wire, pins and chain fly" in text


def test_a_plan_that_cannot_be_read_is_never_nothing_to_cut() -> None:
    text = write([CHECKER.check_text("a: [", "a.yaml")], 1, cutting.listed([], 1), Options())
    assert text.endswith("\nnothing can be listed for `a.yaml` until its slip is mended")


def test_a_piece_that_nothing_is_cut_for_says_so() -> None:
    assert write([], 1, cutting.CutList((), (), ()), Options()).endswith("there is nothing to cut")


@pytest.mark.parametrize(
    ("on_hand", "says"),
    [
        ([], "another way may use up to 2.1 cm less chain"),
        (["50 cm"], "no way uses less chain"),
        (["30 cm"], "no way gets more from the chain on hand"),
    ],
)
def test_what_another_way_of_cutting_may_get(on_hand: list[str], says: str) -> None:
    text = COLLAR.read_text(encoding="utf-8")
    written = "  - {chain: bar chain, length: 50 cm}\n"
    lines = "".join(written.replace("50 cm", length) for length in on_hand)
    ask = CHECKER.check_text(text.replace(written, lines)).ask
    assert ask is not None
    (chain,) = cutting.listed([ask.quantities]).chains
    assert how_good(chain) == says
