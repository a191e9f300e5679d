"""Bars to cut chain by: as long as the length they stand for, with every piece in turn."""

from __future__ import annotations

import re
from pathlib import Path
from xml.etree import ElementTree

import pytest

from pages import ALL, SVG, checked
from running import SHARED
from wellstrung.judging.result import understood
from wellstrung.lists import cutting
from wellstrung.report.pages import sheet
from wellstrung.report.pages.cut_bars import cut_bars


@pytest.mark.parametrize("path", ALL, ids=lambda path: path.stem)
def test_a_bar_is_as_long_as_its_length_and_has_every_piece(path: Path) -> None:
    result = checked(path)
    chains = cutting.listed(understood([result])).chains
    bars = [bar for chain in chains for bar in chain.bars]
    figures = [figure for chain in chains for figure in cut_bars(chain)]
    assert len(figures) == len(bars)
    longest = max((bar.length for bar in bars), default=1.0)
    for figure, bar in zip(figures, bars, strict=True):
        boxes = list(ElementTree.fromstring(figure.svg).iter(f"{SVG}rect"))
        sizes = [(float(box.get("width", "")), box.get("class")) for box in boxes]
        assert sum(wide for wide, _ in sizes) == pytest.approx(150 * bar.length / longest, rel=1e-4)
        assert sum(look == "link" for _, look in sizes) == len(bar.pieces)
        for piece, (wide, _) in zip(
            bar.pieces, (one for one in sizes if one[1] == "link"), strict=True
        ):
            # the first link of a piece may lie over the wire of the last one before it
            assert wide == pytest.approx(150 * piece.length / longest, rel=0.1)
        numbers = [text.text for text in ElementTree.fromstring(figure.svg).iter(f"{SVG}text")]
        assert numbers == [str(n) for n in range(1, len(bar.pieces) + 1)]
        assert len(figure.steps) == len(bar.pieces)
        assert re.search(rf"\b{bar.pieces[0].links} (links|cups)\b", figure.steps[0])


def test_the_links_are_counted_off_in_a_list() -> None:
    page = sheet(checked(SHARED / "slack_tide_collar.yaml"))
    [cuts] = re.findall(r'(?s)<ol class="counted">(.*?)</ol>', page)
    assert len(re.findall("<li>6 links .*? for drop", cuts)) == 7
    assert "link 1 is a loop" in page
