"""Instructions on paper: type that can be read from the table, and no heading left alone."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser

from browser import started
from pages import checked
from running import SHARED
from wellstrung.report.pages.steps import steps
from wellstrung.report.writer import Options

pytestmark = pytest.mark.slow


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    with started() as found:
        yield found


@pytest.mark.parametrize(("large", "points"), [(False, 11.0), (True, 14.0)])
def test_the_type_on_paper_can_be_read_from_the_table(
    large: bool, points: float, browser: Browser
) -> None:
    page = browser.new_page()
    page.set_content(
        steps(checked(SHARED / "slack_tide_collar.yaml"), options=Options(large=large))
    )
    page.emulate_media(media="print")
    sizes: list[str] = page.evaluate(
        "[...document.querySelectorAll('.step li, .step p, .step .taken, td, th')]"
        ".map(e => getComputedStyle(e).fontSize)"
    )
    assert {round(float(size.removesuffix("px")) * 0.75, 1) for size in sizes} == {points}
    breaks: list[str] = page.evaluate(
        "[...document.querySelectorAll('h2, h3, caption')].map(e => getComputedStyle(e).breakAfter)"
    )
    assert set(breaks) == {"avoid"}
    page.close()


def test_every_page_has_the_title_and_its_number() -> None:
    page = steps(checked(SHARED / "slack_tide_collar.yaml"))
    assert '@bottom-left { content: "Slack Tide collar \\b7  step by step"; }' in page
    assert 'content: "page " counter(page) " of " counter(pages)' in page
