"""What a teacher reads of a folder on the screen, and the report of one line a remark."""

from __future__ import annotations

import re
from collections import Counter

import pytest

from running import SAMPLES
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import Result
from wellstrung.report.text import write
from wellstrung.report.writer import Options

WIDTHS = (40, 60, 80, 120)


@pytest.fixture(scope="module")
def result(checker: Checker) -> Result:
    """The class, and two plans that are right."""
    right = [SAMPLES / f"{name}.yaml" for name in ("sand_hopper_bracelet", "sea_wall_band")]
    files = [*right, *sorted((SAMPLES / "class").glob("*.yaml"))]
    return Result(tuple(checker.check_file(file) for file in files))


def lines(result: Result, width: int = 80, *, brief: bool = False) -> list[str]:
    return write(result, Options(width=width, brief=brief)).splitlines()


def flat(result: Result, width: int) -> str:
    """The page without what stands beside texts and without line ends."""
    return " ".join(" ".join(line.strip("┃ ") for line in lines(result, width)).split())


@pytest.mark.parametrize("width", WIDTHS)
def test_the_first_line_says_how_the_class_stands(width: int, result: Result) -> None:
    assert flat(result, width).startswith(
        "17 plans: 14 not makeable, 1 makeable with warnings, 2 makeable "
    )


@pytest.mark.parametrize("width", WIDTHS)
def test_each_caution_stands_once_with_the_plans_it_is_for(width: int, result: Result) -> None:
    shown = flat(result, width)
    every = Counter(one.says for plan in result.plans for one in plan.cautions)
    assert max(every.values()) > 5
    for says in every:
        assert shown.count(" ".join(f"CAUTION {says}".split())) == 1
    assert "local rules come first for Tressa (step 3)" in shown
    assert shown.index("CAUTION") > shown.rindex("you wrote")


@pytest.mark.parametrize("width", WIDTHS)
def test_the_table_is_last_with_names_and_the_worst_first(width: int, result: Result) -> None:
    shown = lines(result, width)
    head = next(number for number, line in enumerate(shown) if line.startswith("who"))
    assert shown[head].split()[:3] == ["who", "piece", "outcome"] and "to fix" in shown[head]
    assert ("fix first" in shown[head]) is (width >= 100)
    makers = [line.split()[0] for line in shown[head + 2 : -2] if line[:1].isalpha()]
    assert makers[:2] == ["Kerra", "Merryn"] and makers[-1] == "Gerens" and len(makers) == 17
    assert shown[-1] == "17 plans: 21 errors, 9 warnings"


def test_a_plan_that_is_fine_takes_one_line(result: Result) -> None:
    shown = lines(result, 120)
    (line,) = (line for line in shown if line.startswith("Sea Wall band:"))
    assert re.fullmatch(
        r"Sea Wall band: makeable, \d+ checks passed, \d+ open  \S+/sea_wall_band\.yaml", line
    )
    assert [line for line in shown if line.startswith("Sea Wall band, ")] == []


def test_in_a_folder_what_most_checks_wait_for_stands_for_the_rest(result: Result) -> None:
    shown = lines(result, 120)
    assert any(re.search(r"open: 10 more, `wellstrung check \S+` lists them", one) for one in shown)
    merryn = next(plan for plan in result.plans if plan.maker == "Merryn")
    alone = lines(Result((merryn,)), 120)
    assert sum("open: needs" in line for line in alone) == 13


@pytest.mark.parametrize("width", WIDTHS)
def test_brief_is_one_line_a_remark(width: int, result: Result) -> None:
    *remarks, how_many, cautions = lines(result, width, brief=True)
    assert len(remarks) == sum(len(plan.numbered) for plan in result.plans)
    for line in remarks:
        assert re.fullmatch(r"\S+\.yaml:\d+: (error|warning): .+ \[[a-z-]+\]", line)
    assert how_many.startswith("17 plans: 14 not makeable")
    assert cautions == "there are cautions too: leave out --brief to read them"


def test_plans_of_one_title_show_their_files(checker: Checker) -> None:
    text = (SAMPLES / "class" / "kerra_lariat.yaml").read_text(encoding="utf-8")
    plans = [checker.check_text(text, file) for file in ("first.yaml", "second.yaml")]
    shown = flat(Result(tuple(plans)), 120)
    assert (
        "for Long Mooring lariat first.yaml (step 4) and Long Mooring lariat second.yaml" in shown
    )
    assert shown.count("Kerra Long Mooring lariat first.yaml not makeable") == 1


def test_a_slip_is_shown_in_words_alone(checker: Checker) -> None:
    text = (SAMPLES / "class" / "kerra_lariat.yaml").read_text(encoding="utf-8")
    plan = checker.check_text(text.replace("piece: lariat", "piece: lariatt"), "slip.yaml")
    assert [one.level for one in plan.remarks] == ["slip"]
    shown = lines(Result((plan,)))
    assert any(line.startswith("1. SLIP: ") for line in shown)
    assert not any(plan.remarks[0].rule in line for line in shown)
