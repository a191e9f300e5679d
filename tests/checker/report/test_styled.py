"""Text is wrapped as `rich` wraps it, which is written by others."""

from __future__ import annotations

import pytest
from rich.console import Console
from rich.text import Text as RichText

from wellstrung.report.styled import Text, columns_of


@pytest.mark.parametrize("width", [2, 4, 9, 20, 60])
@pytest.mark.parametrize(
    "text",
    [
        "",
        "a ring of 5 mm goes through the eye of 2.4 ± 0.1 mm of the cap",
        "  two blanks before,  two between, and two after  ",
        "a word of tableware-and-chandelier-and-lighthouse length among others",
        "lines\n\nof their own\n",
        "海の色 of 10/0 beads and élan",
    ],
)
def test_text_is_wrapped_as_elsewhere(text: str, width: int) -> None:
    console = Console(width=width)
    theirs = [line.plain.rstrip() for line in RichText(text).wrap(console, width)]
    assert [line.plain for line in Text(text).wrap(width)] == theirs
    assert all(columns_of(line) <= width for line in theirs)


def test_whole_words_stand_out_over_the_edge() -> None:
    address = "https://tide.example/tables/of-rings"
    lines = Text(f"see {address} there", whole=True).wrap(12)
    assert [line.plain for line in lines] == ["see", address, "there"]


def test_pieces_keep_their_styles_over_a_break() -> None:
    text = Text("ERROR", "bold red").append(": the ring is too small").append(" [fit]", "dim")
    assert [line.shown(colour=True) for line in text.wrap(18)] == [
        "\x1b[1;31mERROR\x1b[0m: the ring is",
        "too small\x1b[2m [fit]\x1b[0m",
    ]
    assert text[7:15].shown(colour=False) == "the ring"
