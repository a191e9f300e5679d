"""Of very many things a drawing sums up: it stays small, says so, and is quickly made."""

from __future__ import annotations

import re
from xml.etree import ElementTree

import pytest

from pages import keeper, parsed
from running import SHARED
from wellstrung.drawing.canvas import Canvas
from wellstrung.drawing.piece import drawings, worn
from wellstrung.drawing.piece.picture import picture

COLLAR = (SHARED / "slack_tide_collar.yaml").read_text(encoding="utf-8")
LINE = "  - {part: drop, from: {part: frame, eyes: bottom}, by: small, times: 7}\n"
STRUNG = """plan: 1
title: Very long
piece: necklace
beads:
  a: {type: round, size: 4 mm}
  b: {type: round, size: 6 mm}
parts:
  strand: {kind: strand, stitch: strung, beads: [a, b], count: COUNT}
run: [strand]
"""


def shapes(tree: ElementTree.Element) -> int:
    return sum(not one.tag.endswith("}g") for one in tree.iter())


def all_of(text: str) -> list[ElementTree.Element]:
    """Every drawing of a plan: the page's, the worn one, and the picture."""
    result = keeper().check_text(text)
    figures = [figure.svg for figure in drawings(result) if figure.svg]
    figures += [figure.svg for figure in [worn(result)] if figure is not None]
    canvas = picture(result)
    assert isinstance(canvas, Canvas)
    return [parsed(svg) for svg in (*figures, canvas.svg("t", "a", "piece"))]


@pytest.mark.parametrize("times", [7, 10_000])
@pytest.mark.parametrize("lines", [1, 20, 200])
def test_many_lines_that_hang_many_are_summed_up(lines: int, times: int) -> None:
    hung = "".join(LINE.replace("7}", f"{times}}}") for _ in range(lines))
    for tree in all_of(COLLAR.replace(LINE, hung)):
        assert shapes(tree) < 12_000


def test_very_many_that_hang_from_the_run_itself_are_summed_up() -> None:
    for tree in all_of(COLLAR.replace("by: carrier, times: 2", "by: carrier, times: 1000")):
        assert shapes(tree) < 12_000


def test_what_is_left_out_is_said_for_the_first_few_lines() -> None:
    text = COLLAR.replace(LINE, LINE.replace("times: 7", "times: 10000") * 200)
    caption = drawings(keeper().check_text(text))[-1].caption
    assert caption.count("of 10000 drop") == 8 and "and 192 more lines" in caption
    assert len(caption) < 600


@pytest.mark.parametrize("count", [20, 2_000, 10_000])
def test_a_run_of_very_many_beads_is_summed_up(count: int) -> None:
    for tree in all_of(STRUNG.replace("COUNT", str(count))):
        assert shapes(tree) < 12_000
        beads = [one for one in tree.iter() if re.search(r"\bbead\b", one.get("class", ""))]
        assert len(beads) <= 6_010
    if count == 10_000:
        said = [
            one.text for tree in all_of(STRUNG.replace("COUNT", str(count))) for one in tree.iter()
        ]
        assert any("10,000" in (text or "") for text in said)


def test_a_run_of_very_many_places_is_not_drawn() -> None:
    text = COLLAR.replace("{part: small, linked: 3}", ", ".join(["carrier"] * 900))
    result = keeper().check_text(text)
    [figure] = drawings(result)
    assert figure.svg == "" and "things to draw" in figure.caption and worn(result) is None
