"""What a sheet has beside what the check found: its fits, what to buy, and bars to cut by."""

from __future__ import annotations

from pathlib import Path
from xml.etree import ElementTree

import pytest

from pages import ALL, checked, keeper
from running import ROOT, SAMPLES
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import understood
from wellstrung.lists import cutting
from wellstrung.reading import bench
from wellstrung.report.pages.extras import gathered

ORLA = SAMPLES / "class" / "orla_lantern_collar.yaml"
SVG = "{http://www.w3.org/2000/svg}"


@pytest.mark.parametrize("path", ALL, ids=lambda path: path.stem)
def test_a_bar_is_as_long_as_its_length_and_has_every_piece(path: Path) -> None:
    result = checked(path)
    bars = [bar for chain in cutting.listed(understood([result])).chains for bar in chain.bars]
    figures = gathered(result).cut_figures
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
        assert f"{bar.pieces[0].links} links" in figure.caption


def test_what_fails_is_drawn_first_and_no_more_than_eight() -> None:
    fits = gathered(checked(ORLA)).fits
    assert len(fits) == 8 and fits[0].remarks == (1,) and not any(one.remarks for one in fits[1:])


def test_a_price_has_its_column_where_there_is_one() -> None:
    plain, *_ = gathered(checked(ORLA)).supplies
    assert plain.columns == ("what", "need", "spare", "have", "buy")
    assert all(len(row) == 5 for row in plain.rows)
    file = ROOT / "tests" / "checker" / "report" / "bench_of_prices.yaml"
    prices, faults = bench.read(file, keeper().installed.stitches, keeper().installed.limits)
    assert prices is not None, faults
    text = (SAMPLES / "slack_tide_collar.yaml").read_text(encoding="utf-8")
    result = Checker(keeper().installed, quantities=True, bench=prices).check_text(text)
    priced, *_ = gathered(result).supplies
    assert priced.columns[-1] == "price" and priced.notes[0].startswith("in all ")
    assert any(row[-1] for row in priced.rows)


def test_sizes_that_would_also_do_want_a_checker() -> None:
    assert not any("would also do" in one.caption for one in gathered(checked(ORLA)).supplies)
    tables = gathered(checked(ORLA), keeper()).supplies
    (sizes,) = (one for one in tables if "would also do" in one.caption)
    assert sizes.decides == 1 and ("carrier", "outside from 11.65 mm") in sizes.rows
