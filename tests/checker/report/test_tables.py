"""Tables of a page: what to buy, prices, and sizes that would also work."""

from __future__ import annotations

from pages import checked, keeper
from running import ROOT, SHARED
from wellstrung.judging.checker import Checker
from wellstrung.reading import bench
from wellstrung.report.pages import tables

ORLA = SHARED / "lantern_collar.yaml"


def test_what_is_on_hand_is_not_bought() -> None:
    bought, *_ = tables.supplies(checked(SHARED / "slack_tide_collar.yaml"))
    assert [(row[0].partition(":")[0], *row[2:]) for row in bought.rows] == [
        ("kelp", "2100", "nothing"),
        ("line", "45 m", "nothing"),
        ("bar chain", "50 cm", "nothing"),
        ("carrier", "2", "nothing"),
        ("small", "20", "nothing"),
        ("cap", "", "2"),
        ("frame", "", "1"),
        ("toggle", "", "1"),
        ("glue", "25 ml", "nothing"),
    ]


def test_a_price_has_its_column_where_there_is_one() -> None:
    plain, *_ = tables.supplies(checked(ORLA))
    assert plain.columns == ("what", "need", "have", "buy")
    assert all(len(row) == 4 for row in plain.rows)
    file = ROOT / "tests" / "checker" / "report" / "bench_of_prices.yaml"
    prices, faults = bench.read(file, keeper().installed.stitches, keeper().installed.limits)
    assert prices is not None, faults
    text = (SHARED / "slack_tide_collar.yaml").read_text(encoding="utf-8")
    result = Checker(keeper().installed, quantities=True, bench=prices).check_text(text)
    priced, *_ = tables.supplies(result)
    assert priced.columns[-1] == "price" and priced.notes[0].startswith("in all ")
    assert any(row[-1] for row in priced.rows)


def test_sizes_that_would_also_work_need_a_checker() -> None:
    assert not any("would also work" in one.caption for one in tables.supplies(checked(ORLA)))
    found = tables.supplies(checked(ORLA), keeper())
    (sizes,) = (one for one in found if "would also work" in one.caption)
    assert sizes.decides == 1 and ("carrier", "outside from 11.65 mm") in sizes.rows
