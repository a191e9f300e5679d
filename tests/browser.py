"""A browser for tests: Debian's chromium, without a window, kept off the network.

Without chromium the tests that need it are skipped, but never where `CI` is set: there they fail.
"""

from __future__ import annotations

import os
import shutil
from collections.abc import Iterator
from contextlib import contextmanager

import pytest
from playwright.sync_api import Browser, Page, sync_playwright

FLAGS = (
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
)
#: pixels of the browser in a millimetre
PIXELS = 96 / 25.4


@contextmanager
def started() -> Iterator[Browser]:
    """The browser while tests run."""
    chromium = shutil.which("chromium")
    if chromium is None:
        if os.environ.get("CI"):
            pytest.fail("there is no chromium: the pages have not been looked at")
        pytest.skip("there is no chromium here")
    with sync_playwright() as driver:
        browser = driver.chromium.launch(executable_path=chromium, args=list(FLAGS))
        yield browser
        browser.close()


class Watched:
    """A page that remembers what it asked of the network and what its console said."""

    def __init__(self, page: Page) -> None:
        self.page = page
        self.asked: list[str] = []
        self.said: list[str] = []
        page.on("request", lambda request: self.asked.append(request.url))
        page.on("console", lambda message: self.said.append(message.text))
        page.on("pageerror", lambda error: self.said.append(str(error)))
