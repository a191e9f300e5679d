"""A shop's list as a drawer: its columns, what a row becomes, and slips at their cells."""

from __future__ import annotations

import csv
import io
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from running import Run
from wellstrung.common.places import Fault
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import PlanResult, understood
from wellstrung.lists import shopping
from wellstrung.plugins.host import Host
from wellstrung.reading import drawer

STOCK = """\
Name;Category;Type;Size;Make;Color;Gauge;Outside (mm);Closing;Bore;Depth;Lot;Pack;Packs;Qty;Price;At
kelp;seed beads;round;8/0;Japanese;matte green;;;;;;lot 12;20 g;3;;4,20 EUR per 10 g;A3
kelp;seed beads;round;8/0;Japanese;matte green;;;;;;lot 13;20 g;1;;;A3
small ring;jump rings;;;;gold;18 AWG;6;open;;;;;;14;0,10 EUR each;B1

brass cap;end cap;;;;;;13;;10 mm;7 mm;;;;4;1,80 EUR each;B2
"""
PLAN = """\
plan: 1
title: Two caps
piece: bracelet
drawer: stock.csv
beads:
  green: {from: kelp}
parts:
  rope: {kind: woven rope, stitch: tubular peyote, around: 10, beads: green,
    length: 16 cm, measured: {outside: 9.8 mm}}
  cap: {from: brass cap}
run: [cap, rope, cap]
"""


def read(text: str, file: str = "stock.csv") -> dict[str, Any]:
    found = drawer.read_text(text, file)
    assert not found.faults and found.tree is not None
    value: dict[str, Any] = found.tree.value
    return value


def refusal(text: str, file: str = "stock.csv") -> list[str]:
    return [told(fault) for fault in drawer.read_text(text, file).faults]


def told(fault: Fault) -> str:
    return f"{fault.place.line}:{fault.place.column} {fault.says}"


def test_a_list_is_a_drawer() -> None:
    assert read(STOCK) == {
        "drawer": 1,
        "beads": {
            "kelp": {"type": "round", "size": "8/0", "make": "Japanese", "colour": "matte green"}
        },
        "parts": {
            "small ring": {
                "kind": "jump ring",
                "wire": "18 AWG",
                "outside": "6 mm",
                "closing": "open",
            },
            "brass cap": {
                "kind": "end cap",
                "outside": "13 mm",
                "bore": "10 mm",
                "depth": "7 mm",
            },
        },
        "prices": {
            "kelp": "4.20 EUR per 10 g",
            "small ring": "0.10 EUR each",
            "brass cap": "1.80 EUR each",
        },
        "supplies": [
            {"bead": "kelp", "lot": "lot 12", "pack": "20 g", "packs": 3},
            {"bead": "kelp", "lot": "lot 13", "pack": "20 g", "packs": 1},
            {"part": "small ring", "count": 14},
            {"part": "brass cap", "count": 4},
        ],
    }


def test_what_is_not_used_is_noted_once() -> None:
    assert drawer.read_text(STOCK, "stock.csv").notes == (
        "stock.csv: not used: the column `At`; `Color` of a jump ring (row 4)",
    )


HEADINGS = {
    "name,kind,bore\ncap,end cap,8 mm": {"kind": "end cap", "bore": "8 mm"},
    "item,category,bore [mm]\ncap,end caps,8": {"kind": "end cap", "bore": "8 mm"},
    "name,kind,eye hole\ncap,end cap,2 mm": {"kind": "end cap", "eye": {"hole": "2 mm"}},
    "name,kind,eye.hole,eye.wire\ncap,end cap,2 mm,1 mm": {
        "kind": "end cap",
        "eye": {"hole": "2 mm", "wire": "1 mm"},
    },
    "name,kind,weight\ncap,end cap,2 g": {"kind": "end cap", "mass": "2 g"},
    "name,kind,closed_length\ncap,lobster claw,12 mm": {
        "kind": "clasp",
        "closed_length": "12 mm",
        "type": "lobster",
    },
    "name,kind,states\ncap,end cap,nickel free; lead free": {
        "kind": "end cap",
        "states": ["nickel free", "lead free"],
    },
    "name,kind,metal,bore\ncap,cone,brass,": {"kind": "cone", "metal": "brass"},
    "\ufeffname,kind\ncap,calotte": {"kind": "bead tip"},
}


@pytest.mark.parametrize("text", HEADINGS)
def test_a_heading_is_a_field_by_any_word_for_it(text: str) -> None:
    assert read(text)["parts"]["cap"] == HEADINGS[text]


SUPPLIES = {
    "name,kind,count\nline,thread,2": {"thread": "line", "pieces": 2},
    "name,kind,on hand length,count\nbars,chain,60 cm,2": {
        "chain": "bars",
        "length": "60 cm",
        "pieces": 2,
    },
    "name,kind,volume,count\nresin,adhesive,25 ml,2": {
        "part": "resin",
        "volume": "25 ml",
        "count": 2,
    },
    "name,kind,pack,packs\nsmall,jump ring,50,2": {"part": "small", "pack_of": 50, "packs": 2},
    "name,kind,pack,count\nkelp,bead,20 g,3": {"bead": "kelp", "pack": "20 g", "packs": 3},
    "name,kind,pack,count\nsmall,jump ring,100,14": {"part": "small", "count": 14},
    "name,kind,pack (g)\nkelp,bead,7.2": {"bead": "kelp", "pack": "7.2 g"},
    "name,kind,tubes,sold in,pack\nkelp,bead,3,tube,20 g": {
        "bead": "kelp",
        "packs": 3,
        "sold_as": "tube",
        "pack": "20 g",
    },
    "name,kind,count,lot\nkelp,bead,9,007": {"bead": "kelp", "count": 9, "lot": "007"},
    "name,kind,count\nsmall,jump ring,0": None,
    "name,kind,lot\nkelp,bead,lot 12": None,
    "name,kind,pack,packs\nkelp,bead,20 g,": None,
}


@pytest.mark.parametrize("text", SUPPLIES)
def test_what_is_on_hand_is_a_line_of_supplies(text: str) -> None:
    line = SUPPLIES[text]
    assert read(text).get("supplies") == (None if line is None else [line])


SLIPS = {
    "": ["1:1 the list is empty: name its columns in the first row, as `name` and `kind`"],
    "bead,hole\nkelp,1 mm": [
        "1:1 the list has no column `name`: its first row needs `name` and `kind`",
        "1:1 the list has no column `kind`: its first row needs `name` and `kind`",
    ],
    "name,kind,hole,hole\nkelp,bead,1 mm,": ["1:16 `hole` is a second column for `hole`: keep one"],
    "name,kind,count\nkelp,bead,1.000": [
        "2:11 `count` of `kelp` in row 2 is `1.000`: write a whole number, such as `12`"
    ],
    "name,kind,count,qty\nkelp,bead,1,": ["1:17 `qty` is a second column for `count`: keep one"],
    "name,kind\nkelp,\n,bead\n": [
        "2:1 row 2 has no `kind`: write it, or empty the row",
        "3:1 row 3 has no `name`: write it, or empty the row",
    ],
    "name,kind\nkelp,bead,1 mm": [
        "2:11 row 2 has a cell beyond the columns of the first row: name its column"
    ],
    "name,kind,bore\ncap,end capp,8 mm\nring,jump rng,": [
        "2:5 there is no kind called `end capp` in row 2: write `end cap`",
        "3:6 there is no kind called `jump rng` in row 3: write `jump ring`",
    ],
    "name,kind,hole,type\nkelp,bead,1,round\nsand,bead,-1 mm,round": [
        "2:11 `hole` of `kelp` in row 2: a length needs a unit: write `1 mm` or `1 cm`",
        "3:11 `hole` of `sand` in row 3: `-1 mm` is negative: write a length of more than 0",
    ],
    "name,kind,bore\ncap,end cap,8 mm\ncap,end cap,9 mm": [
        "3:13 `cap` in row 3 differs in `bore` from row 2, which has that name:"
        " give it a name of its own"
    ],
    "name,kind,packs\nkelp,bead,some": [
        "2:11 `packs` of `kelp` in row 2 is `some`: write a whole number, such as `3`"
    ],
    "name,kind,price\nkelp,bead,4": [
        "2:11 the price of `kelp`: `4` is not a price: write it with its currency, as in"
        " `1.80 EUR each`"
    ],
    'name,kind\n"kelp,bead': [
        "2:1 a cell begins with a quotation mark here and has none at its end: close it"
    ],
    "name,kind\nkelp\x07,bead": ["2:5 a drawer cannot contain this character (U+0007): delete it"],
    'name,kind,size\npearl,glass pearl,"6,5 mm"\noval,glass pearl,"6,5 x 4 mm"': [
        "2:19 `size` of `pearl` in row 2: `6,5 mm` has a comma as its decimal point: write"
        " `6.5 mm`",
        "3:18 `size` of `oval` in row 3: `6,5 x 4 mm` has a comma as its decimal point: write"
        " `6.5 x 4 mm`",
    ],
    "name,kind\na.b,bead": ["2:1 `a.b` cannot be a name, for it has a full stop: choose another"],
}


@pytest.mark.parametrize("text", SLIPS)
def test_slips_are_told_at_their_cells_in_one_round(text: str) -> None:
    assert refusal(text) == SLIPS[text]


@given(st.text(alphabet=st.sampled_from('name,kind;bead\t\n"8 mgcapor.'), max_size=80))
def test_no_text_breaks_it(text: str) -> None:
    for whole in (text, f"name,kind,hole,count,price\n{text}"):
        found = drawer.read_text(whole, "stock.csv")
        assert (found.tree is None) <= bool(found.faults)


@given(
    st.lists(st.sampled_from(["", ",,,", " , ,,", '"",,,', "\r"]), max_size=4), st.integers(0, 3)
)
def test_an_empty_row_changes_nothing(empty: list[str], at: int) -> None:
    rows = ["name,kind,bore,count", "cap,end cap,8 mm,4", "small,jump ring,,14", "kelp,bead,,"]
    among = [*rows[:at], *empty, *rows[at:]]
    assert read("\n".join(among)) == read("\n".join(rows))


WORDS = st.text("ab é,;\"'\t", min_size=1, max_size=8).map(str.strip).filter(bool)


@given(st.lists(st.tuples(WORDS, WORDS), min_size=1, max_size=5, unique_by=lambda row: row[0]))
def test_what_a_spreadsheet_writes_is_what_is_read(rows: list[tuple[str, str]]) -> None:
    stream = io.StringIO()
    writer = csv.writer(stream)
    writer.writerow(["name", "kind", "colour", "count"])
    writer.writerows(
        [name, "bead", colour, number] for number, (name, colour) in enumerate(rows, 1)
    )
    found = read(stream.getvalue())
    single = {" ".join(name.split()): " ".join(colour.split()) for name, colour in rows}
    if len(single) == len(rows):
        assert {name: bead["colour"] for name, bead in found["beads"].items()} == single
        assert [line["count"] for line in found["supplies"]] == [*range(1, len(rows) + 1)]


# --- what a plan makes of it


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "stock.csv").write_text(STOCK, encoding="utf-8-sig")
    (tmp_path / "plan.yaml").write_text(PLAN, encoding="utf-8")
    return tmp_path


def wrong(result: PlanResult) -> list[tuple[str, str, str]]:
    return [
        (Path(one.place.file).name, f"{one.place.line}:{one.place.column}", one.says)
        for one in result.numbered
    ]


def test_a_plan_takes_beads_parts_and_stock_from_a_list(folder: Path, checker: Checker) -> None:
    result = checker.check_file(folder / "plan.yaml")
    assert result.readable and wrong(result) == []
    passed = {check.rule for check in result.held}
    assert {"cap-bore", "beads-enough", "one-lot"} <= passed


SHOP = """\
item,category,type,size,colour,hole,rating,on hand,price
moon,glass pearls,,6 mm,white,,,100,3 EUR per 50
star,bicone,,4 mm,crystal,,,144,2.5 EUR per 72
kelp,seed beads,rocaille,11/0,green,,,,
line,thread,fused line,,crystal,,8 lb,2,9 EUR per spool
ring,jump rings,,6 mm,,,,50,
hook,lobster clasp,,12 mm,,,,4,
"""
FROM_SHOP = """\
plan: 1
title: From the shop
piece: bracelet
drawer: stock.csv
beads: {moon: {from: moon}, star: {from: star}, kelp: {from: kelp, make: Japanese}}
parts:
  line: {from: line}
  hook: {from: hook}
  ring: {from: ring}
  s: {kind: strand, stitch: strung, beads: [moon, star, kelp], length: 17 cm, thread: {spool: line}}
run: [hook.a, s, ring, hook.b]
"""


def test_a_list_in_the_words_of_a_shop(checker: Checker) -> None:
    kept = drawer.read_text(SHOP, "stock.csv")
    result = Checker(checker.installed, keep=True).check_text(FROM_SHOP, drawer=kept)
    assert result.ask is not None, [one.says for one in result.remarks]
    plan = result.ask.plan
    types = {name: bead.text("type") for name, bead in plan.beads.items()}
    assert types == {"moon": "glass pearl", "star": "bicone", "kelp": "round"}
    assert plan.parts["hook"].text("type") == "lobster"
    assert plan.bench.prices["moon"] == "3 EUR per 50"


def test_every_slip_in_the_words_of_a_list_comes_at_once(checker: Checker) -> None:
    text = SHOP.replace("rocaille", "rocail").replace("bicone,,4 mm", "bead,bicon,4 mm")
    result = checker.check_text(FROM_SHOP, drawer=drawer.read_text(text, "stock.csv"))
    found = [(place, says.partition(":")[0]) for _, place, says in wrong(result)]
    assert found == [
        ("3:11", "`type` of `star` is `bicon`"),
        ("4:17", "`type` of `kelp` is `rocail`"),
    ]


def test_a_remark_stands_at_the_cell(folder: Path, checker: Checker) -> None:
    text = STOCK.replace(";10 mm;", ";6 mm;")
    (folder / "stock.csv").write_text(text, encoding="utf-8")
    ((file, place, says),) = wrong(checker.check_file(folder / "plan.yaml"))
    assert (file, place) == ("stock.csv", "6:28")
    assert says.startswith("the bore of cap `cap` (6 mm) is too tight")


def test_an_edit_of_a_cell_leaves_a_list(folder: Path, checker: Checker) -> None:
    (folder / "stock.csv").write_text(STOCK.replace(";10 mm;", ";6 mm;"), encoding="utf-8")
    (remark,) = checker.check_file(folder / "plan.yaml").numbered
    (edit,) = remark.edits
    assert edit.place.file.endswith("stock.csv") and edit.new == "10.5 mm"


def test_a_field_that_the_list_lacks_is_asked_for_when_it_is_taken(
    folder: Path, checker: Checker
) -> None:
    (folder / "stock.csv").write_text(STOCK.replace(";13;;10 mm;", ";13;;;"), encoding="utf-8")
    ((file, place, says),) = wrong(checker.check_file(folder / "plan.yaml"))
    assert (file, place) == ("plan.yaml", "10:3")
    head = "`cap` (an end cap) says nothing of its size: write `size: 8 mm`, as it is sold, or"
    assert says == f"{head} `size: usual` for what any shop sells"


def test_what_the_plan_writes_beside_replaces_the_list(folder: Path, checker: Checker) -> None:
    text = PLAN.replace("{from: kelp}", "{from: kelp, size: 11/0}")
    (folder / "plan.yaml").write_text(text, encoding="utf-8")
    asked = Checker(checker.installed, keep=True).check_file(folder / "plan.yaml").ask
    assert asked is not None and asked.plan.beads["green"].text("size") == "11/0"
    assert asked.plan.beads["green"].text("make") == "Japanese"


def bought(folder: Path, installed: Host, *names: str) -> dict[str, tuple[float, str]]:
    """What is on hand of each thing, and its price, for plans bought for together."""
    checker = Checker(installed, keep=True)
    plans = [checker.check_file(folder / name) for name in names]
    assert all(plan.readable for plan in plans)
    lines = shopping.needed(understood(plans))
    return {line.name: (line.have, line.price.text if line.price else "") for line in lines}


def test_stock_and_prices_go_by_the_names_of_the_plan(folder: Path, installed: Host) -> None:
    found = bought(folder, installed, "plan.yaml")
    assert found["cap"] == (4, "1.80 EUR each")
    assert found["green"][0] > 2000 and found["green"][1] == "4.20 EUR per 10 g"


def test_stock_counts_once_over_several_plans(folder: Path, installed: Host) -> None:
    other = PLAN.replace("Two caps", "Two more caps")
    (folder / "other.yaml").write_text(other, encoding="utf-8")
    alone = bought(folder, installed, "plan.yaml")
    assert bought(folder, installed, "plan.yaml", "other.yaml")["cap"] == alone["cap"]
    assert bought(folder, installed, "plan.yaml", "other.yaml")["green"] == alone["green"]


def test_stock_counts_once_for_two_names_of_one_bead(folder: Path, installed: Host) -> None:
    text = PLAN.replace("  green: {from: kelp}\n", "  green: {from: kelp}\n  g2: {from: kelp}\n")
    text = text.replace("beads: green", "beads: [green, g2]")
    (folder / "plan.yaml").write_text(text, encoding="utf-8")
    found = bought(folder, installed, "plan.yaml")
    assert found["green"][0] > 2000 and found["g2"][0] == 0


def test_the_supplies_of_a_plan_replace_those_of_the_list(folder: Path, installed: Host) -> None:
    text = f"{PLAN}supplies: [{{part: cap, count: 1}}]\n"
    (folder / "plan.yaml").write_text(text, encoding="utf-8")
    found = bought(folder, installed, "plan.yaml")
    assert found["cap"][0] == 1 and found["green"][0] > 2000


def test_the_bench_beats_the_price_of_a_list(folder: Path, installed: Host, run: Run) -> None:
    (folder / "bench.yaml").write_text("bench: 1\nprices: {cap: 2 EUR each}\n", encoding="utf-8")
    ran = run("supplies", "plan.yaml", "--makers", "4", cwd=folder)
    assert "8.00 EUR" in ran.out
    assert ran.err.count("not used: the column `At`") == 1


def test_a_named_list_replaces_the_plans_own(folder: Path, run: Run) -> None:
    (folder / "elsewhere").mkdir()
    (folder / "elsewhere" / "mine.CSV").write_text(STOCK.replace("10 mm", "6 mm"), "utf-8")
    ran = run("check", "plan.yaml", "--drawer", "elsewhere/mine.CSV", cwd=folder)
    assert ran.code == 1 and "mine.CSV:6:28" in ran.out
    ran = run("check", "stock.csv", cwd=folder)
    assert "stock.csv is a drawer, not a plan: skipped; give it as --drawer stock.csv" in ran.err


def test_a_list_outside_the_folder_is_not_read(folder: Path, checker: Checker) -> None:
    plans = folder / "plans"
    plans.mkdir()
    for name in ("../stock.csv", "link.csv"):
        (plans / "plan.yaml").write_text(PLAN.replace("stock.csv", name), encoding="utf-8")
        if name == "link.csv":
            (plans / name).symlink_to(folder / "stock.csv")
        result = checker.check_file(plans / "plan.yaml")
        assert not result.readable and result.beside == {}
        assert "kelp" not in "".join(one.says for one in result.remarks)
        assert [place for _, place, _ in wrong(result)] == ["4:9"]
