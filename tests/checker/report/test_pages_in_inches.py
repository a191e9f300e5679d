"""Every page: inches as a ruler shows them, parts in mm, grams that hang, and no path."""

from __future__ import annotations

import html
import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest

from pages import ALL, keeper
from rulers import DECIMAL, TOO_FINE, in_inches
from running import SHARED
from turns import some
from wellstrung.common import units
from wellstrung.judging.result import PlanResult, Result
from wellstrung.report.pages import folder, index, sheet
from wellstrung.report.pages.steps import steps
from wellstrung.report.writer import Options

pytestmark = pytest.mark.slow

#: a size with the same in other units beside it
NUMBER = r"\d+(?:\.\d+)?(?:[ -]\d+/\d+|/\d+)?"
BESIDE = re.compile(
    rf"(?<![\d.])({NUMBER})(?:\.\.({NUMBER}))?(?: ± [\d.]+)? (mm|cm|m|in)"
    r"(?: <span class=\"taken\">[^<]*</span>)?\s*<span class=\"other\">≈? ?([^<]*)</span>"
)
#: how far a conversion may be off
OFF = 0.02


@cache
def result(path: Path, *, inches: bool) -> PlanResult:
    text = path.read_text(encoding="utf-8")
    return keeper().check_text(in_inches(text) if inches else text, str(path.resolve()))


@cache
def of_steps(path: Path, *, inches: bool) -> str:
    return steps(result(path, inches=inches), keeper())


@cache
def pages(path: Path, *, inches: bool) -> dict[str, str]:
    found = result(path, inches=inches)
    return {
        "sheet": sheet(found, options=Options(full=True)),
        "steps": of_steps(path, inches=inches),
        "class": index(Result((found,))),
    }


def words(page: str) -> str:
    """What a page says, style left out."""
    body = re.sub(r"(?s)<style>.*?</style>", "", page)
    cells = re.sub(r"</t[dh]>", "; ", body)
    return html.unescape(re.sub(r"<[^>]+>", "", cells))


def conversions(page: str) -> Iterator[tuple[str, str]]:
    """Each size with what stands beside it, end by end of a range."""
    for low, high, unit, other in BESIDE.findall(html.unescape(page.replace("</b>", ""))):
        ends, beside = other.rpartition(" ")[::2]
        for size, shown in zip(filter(None, (low, high)), ends.split(".."), strict=False):
            yield f"{size.strip()} {unit}", f"{shown} {beside}"


@pytest.mark.parametrize("inches", [False, True], ids=["metric", "inches"])
@pytest.mark.parametrize("path", some(ALL, 2), ids=lambda path: path.stem)
def test_the_pages_of_a_sample(path: Path, inches: bool) -> None:
    for name, page in pages(path, inches=inches).items():
        said = words(page)
        for wrong in (DECIMAL, TOO_FINE):
            assert not wrong.search(said), (name, wrong.search(said))
        for size, other in conversions(page):
            mm, shown = (units.length(one).value for one in (size, other))
            assert abs(mm - shown) <= OFF * mm, (name, size, other)
        # the arithmetic stays in newtons, and what stands in the plan as it does there
        for found in re.finditer(r"[^;\n]{0,60}\d N\b.{0,20}", said.partition("Workings")[0]):
            as_written = "pull: " in found[0] or "(straight pull " in found[0]
            assert as_written or re.search(r"\d k?g\b", found[0]), (name, found[0])
        assert str(path.resolve().parent) not in page, name


def test_conversions_are_looked_at() -> None:
    """Nothing is held where nothing is found."""
    for inches in (False, True):
        looked_at = some(ALL, 2)
        every = (page for path in looked_at for page in pages(path, inches=inches).values())
        assert sum(len([*conversions(page)]) for page in every) > 30


@pytest.mark.parametrize("path", ALL, ids=lambda path: path.stem)
def test_what_is_cut_or_worn_is_in_inches_on_the_steps_of_such_a_plan(path: Path) -> None:
    """No metric length stands alone."""
    alone = BESIDE.sub("", of_steps(path, inches=True))
    assert re.findall(r"[^\n]{0,30}\d (?:cm|m)\b", words(alone)) == []


@pytest.mark.parametrize("path", some(ALL, 2), ids=lambda path: path.stem)
def test_sizes_of_parts_stay_in_mm_in_a_plan_in_inches(path: Path) -> None:
    """A bore, a ring or a hole that the plan has in mm is never said in inches alone."""
    text = path.read_text(encoding="utf-8")
    for name, page in pages(path, inches=True).items():
        said = words(re.sub(r'<span class="other">[^<]*</span>', "", page))
        for found in re.findall(r"\b(?:bore|hole|wire|outside|depth):? (\d[\d /]* in)\b", said):
            assert found in text, (name, found)


def test_a_page_names_files_without_their_way(tmp_path: Path) -> None:
    """And with their folder where two have one name."""
    text = (SHARED / "lantern_collar.yaml").read_text(encoding="utf-8")
    [cap] = re.findall(r"^  cap: (.*)$", text, re.M)
    for name in ("monday", "friday"):
        (tmp_path / name).mkdir()
        (tmp_path / name / "plan.yaml").write_text(text, encoding="utf-8")
    mine = f"drawer: 1\nparts:\n  tight: {cap}\n"
    (tmp_path / "mine.yaml").write_text(mine, encoding="utf-8")
    taken = text.replace(f"cap: {cap}", "cap: {from: tight}")
    for name in ("mine", "gone"):
        drawn = taken.replace("plan: 1\n", f"plan: 1\ndrawer: {name}.yaml\n", 1)
        (tmp_path / f"of_{name}.yaml").write_text(drawn, encoding="utf-8")
    files = [*sorted(tmp_path.rglob("*plan.yaml")), *tmp_path.glob("of_*.yaml")]
    found = Result(tuple(map(keeper().check_file, [*files, tmp_path / "not_there.yaml"])))
    made = folder(found, keeper())
    for page in (*made.values(), *(steps(plan) for plan in found.plans)):
        assert str(tmp_path) not in page
    assert "line 3 of mine.yaml" in made["of_mine.html"]
    assert "monday/plan.yaml" in words(made["index.html"])
