"""The leaf of a student as it is printed: what page 1 holds, on which paper, and how many pages."""

from __future__ import annotations

import io
import re
import unicodedata
from collections.abc import Iterator
from functools import cache
from itertools import cycle, islice
from typing import Any, NamedTuple

import pytest
from axe_playwright_python.sync_playwright import Axe
from msgspec.structs import replace
from playwright.sync_api import Browser, Page
from pypdf import PdfReader

from browser import PIXELS, started
from pages import ALL, checked, keeper
from running import ROOT, SAMPLES
from turns import some
from wellstrung.judging.result import PlanResult, Remark, Result
from wellstrung.report.pages import index, sheet
from wellstrung.report.writer import Options
from wellstrung.testing.cases import cases

pytestmark = pytest.mark.slow

PAPERS = ("A4", "Letter")
CLASS = sorted((SAMPLES / "class").glob("*.yaml"))
#: where the footer of a printed page begins, in parts of its height
FOOTER = 0.06
#: what is drawn, but words: it takes no room beside its drawing's, and much time to be read back
SHAPES = re.compile(r"<(?:path|circle|ellipse|rect|line|use)\b[^>]*/>")
#: a millimetre in points
MM = 72 / 25.4


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    with started() as found:
        yield found


@pytest.fixture(scope="module")
def tab(browser: Browser) -> Iterator[Page]:
    context = browser.new_context()
    yield context.new_page()
    context.close()


@pytest.fixture(autouse=True)
def as_on_screen(tab: Page) -> None:
    tab.emulate_media(media="screen", color_scheme="light")


@cache
def remarks() -> list[Remark]:
    """Remarks of the rules' own cases, one of each rule, those with the most words first."""
    found: dict[str, Remark] = {}
    for file in sorted((ROOT / "tests" / "rules").glob("*/*.yaml")):
        wrong = (case for case in cases(file) if case.expect in ("error", "warning"))
        for case in islice(wrong, 1):
            for one in keeper().check_text(case.text).numbered:
                if one.rule == case.rule:
                    found[f"{one.rule} {one.says}"] = one
    return sorted(found.values(), key=lambda one: -len(one.problem + one.remedy))


def with_remarks(number: int) -> PlanResult:
    """A sample with so many remarks of others."""
    result = checked(SAMPLES / "quay_lamp_necklace.yaml")
    assert not result.numbered
    return replace(result, remarks=(*remarks()[:number], *result.cautions))


class Printed(NamedTuple):
    """A page: its words, and its texts but the footer with where each begins, in points."""

    words: str
    texts: list[tuple[float, float, str]]

    def lines(self) -> list[str]:
        """Its texts but the footer, from the top down."""
        return [text for _, _, text in sorted(self.texts, key=lambda one: -one[1])]


def printed(tab: Page, html: str, paper: str) -> list[Printed]:
    """The pages of a sheet on paper."""
    tab.emulate_media(media="print")
    tab.set_content(SHAPES.sub("", html))
    return [
        read(page)
        for page in PdfReader(io.BytesIO(tab.pdf(format=paper, print_background=True))).pages
    ]


def read(page: Any) -> Printed:
    """What is on a page; the words of a drawing make it slow, so it is done once."""
    found: list[tuple[float, float, str]] = []

    def placed(text: str, page_at: list[float], at: list[float], *_: Any) -> None:
        x = at[4] * page_at[0] + at[5] * page_at[2] + page_at[4]
        y = at[4] * page_at[1] + at[5] * page_at[3] + page_at[5]
        if text.strip() and y > FOOTER * float(page.mediabox.height):
            found.append((x, y, text.strip()))

    words = unicodedata.normalize("NFKC", page.extract_text(visitor_text=placed))  # ﬁ: f, i
    return Printed(re.sub(r"\s+", " ", words), found)


def squeezed(text: str) -> str:
    """Letters and figures alone: on paper, code and words have gaps of their own."""
    return "".join(filter(str.isalnum, text)).casefold()


@pytest.mark.parametrize(("number", "paper"), [*zip((0, 1, 5, 14, 40, 40), cycle(PAPERS))])
def test_page_1_stands_alone_with_any_number_of_remarks(number: int, paper: str, tab: Page) -> None:
    result = with_remarks(number)
    front, *rest = printed(tab, sheet(result), paper)
    said, letters = front.words, squeezed(front.words)
    assert result.title in said and "Date:" in said and "Version:" in said
    assert result.outcome.upper() in said
    assert "on paper" in said or "life-size" in said  # the piece, drawn
    assert "What is right" in said
    for one in result.numbered:
        assert squeezed(one.problem)[:20] in letters
    assert ("Fix this first" in said) == (number > 0)
    assert said.count("Do this:") == min(number, 5)
    assert "Measure before next time" in said and "likely" in said
    assert "Teacher:" in said
    assert f"page 1 of {1 + len(rest)}" in said
    assert len(rest) <= 2


@pytest.mark.parametrize("paper", PAPERS)
def test_what_a_front_has_no_room_for_stands_behind_it(paper: str, tab: Page) -> None:
    result = with_remarks(60)
    pages = printed(tab, sheet(result), paper)
    assert "19 remarks more behind this leaf" in pages[0].words
    every = squeezed("".join(page.words for page in pages))
    assert all(squeezed(one.problem)[:20] in every for one in result.numbered)


@pytest.mark.parametrize("paper", PAPERS)
def test_every_printed_page_is_named_and_none_is_blank_and_a_class_takes_34(
    paper: str, tab: Page
) -> None:
    """The leaves of samples; those of the class of fifteen and its own page are counted."""
    taken = 0
    taken += len(printed(tab, index(Result(tuple(map(checked, CLASS)))), paper))
    assert 0 < taken <= 4
    for path in {*CLASS, *some(ALL, 3)} if paper == PAPERS[0] else CLASS:
        result = checked(path)
        html = sheet(result)
        headings = {squeezed(one) for one in re.findall(r"<h[23][^>]*>(.*?)</h[23]>", html, re.S)}
        pages = printed(tab, html, paper)
        taken += len(pages) if path in CLASS else 0
        assert len(pages) <= 3, path
        for number, page in enumerate(pages, 1):
            assert f"page {number} of {len(pages)}" in page.words, path
            assert path.name in page.words and squeezed(result.title) in squeezed(page.words)
            body = page.lines()
            assert len(body) > 3, path  # no page is blank
            assert squeezed(body[-1]) not in headings, path  # none ends with a heading
    assert taken <= 34


@pytest.mark.parametrize("paper", PAPERS)
def test_a_punch_has_20_mm_at_either_side_and_a_pen_25_mm_beside_the_remarks(
    paper: str, tab: Page
) -> None:
    for page in printed(tab, sheet(with_remarks(14)), paper):
        assert min(x for x, _, _ in page.texts) >= 20 * MM - 0.5
    tab.set_viewport_size({"width": round(170 * PIXELS), "height": 900})
    tab.emulate_media(media="print")
    right = "Math.max(...[...document.querySelectorAll('.remark, .others')].map(right))"
    reach = tab.evaluate(
        f"(() => {{ const right = e => e.getBoundingClientRect().right; return {right} }})()"
    )
    assert 100 < reach / PIXELS <= 170 - 5 + 0.3  # and the margin of the page beside it


@pytest.mark.parametrize(("large", "points"), [(False, 11), (True, 14)])
def test_type_is_of_11_points_and_of_14_in_large(large: bool, points: int, tab: Page) -> None:
    tab.set_content(sheet(checked(CLASS[0]), None, Options(large=large)))
    tab.emulate_media(media="print")
    sizes = tab.evaluate(
        "[...document.querySelectorAll('p, li, td, th, figcaption')]"
        ".map(e => parseFloat(getComputedStyle(e).fontSize) * 0.75)"
    )
    assert sizes and min(sizes) >= points - 0.01


@pytest.mark.parametrize("look", ["light", "dark", "print"])
def test_a_page_is_open_to_everyone(look: str, tab: Page) -> None:
    """Held against axe-core, the open rules of accessibility for pages."""
    turn, first = {"light": (10, 0), "dark": (20, 3), "print": (20, 6)}[look]
    for path in some(ALL, turn, first):
        tab.set_content(sheet(checked(path), None, Options(full=True)))
        if look == "print":
            tab.emulate_media(media="print")
        else:
            tab.emulate_media(color_scheme="light" if look == "light" else "dark")
        found = Axe().run(tab).response["violations"]
        assert [(one["id"], [node["target"] for node in one["nodes"]]) for one in found] == [], path
