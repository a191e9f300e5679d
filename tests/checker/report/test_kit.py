"""A kit: its bags, what is cut and counted, the stock that it leaves, its cost, and its pages."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator

import wellstrung_schemas as schemas
from pages import keeper
from running import SAMPLES, SHARED, Run
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import PlanResult
from wellstrung.lists import costs, stock
from wellstrung.lists.kit import Kit, kit
from wellstrung.plugins import host
from wellstrung.reading import bench, drawer
from wellstrung.report.kit_list import ForMakers, as_json, write
from wellstrung.report.pages.kit import labels as page_labels
from wellstrung.report.pages.kit import pages
from wellstrung.report.pages.steps import instructions
from wellstrung.report.pages.tables import to_take
from wellstrung.report.writer import Options
from wellstrung.what_if import stock_left

HOST = host.load()
VALIDATOR = Draft202012Validator(schemas.load("kit"))
LAMP, COLLAR = SAMPLES / "quay_lamp_necklace.yaml", SHARED / "slack_tide_collar.yaml"
BENCH = """\
bench: 1
prices:
  {buoy: 0.50 EUR each, ring: 2 EUR per 50, clasp: 3 EUR each, crimp: 0.10 EUR each,
   gull: 4 EUR per 10 g, wire: 8 EUR per spool}
rates: {stringing: 30 beads per min, crimp: 1 min, close ring: 1 min}
pricing:
  {wage: 20 EUR per h, teaching: 30 EUR per h, room: 25 EUR, preparing: 2 h, packing: 3 min,
   overhead: 10 %, fees: 5 %, class fee: 24 EUR, kit fee: 16 EUR}
"""
STOCK = """\
name;kind;type;size;make;lot;pack;packs;count;spools;on hand length
gull;bead;round;8/0;Japanese;12;8 g;1;;;
gull;bead;round;8/0;Japanese;14;10 g;2;;;
buoy;bead;pressed;6 mm;;;;;40;;
ring;jump ring;;5 mm;;;;;9;;
wire;thread;flexible wire;0.38 mm;;;;;;2;9 m
"""
LOTS = STOCK.replace(
    "buoy;bead;pressed;6 mm;;;;;40;;",
    "buoy;bead;pressed;6 mm;;L7;;;18;;\nbuoy;bead;pressed;6 mm;;L9;;;22;;",
)
PLAN = """\
plan: 1
title: Mooring buoys
piece: bracelet
wearer: {wrist: 16 cm}
inside: 17.5 cm ± 6 mm
drawer: stock.csv
beads: {gull: {from: gull}, buoy: {from: buoy}}
parts:
  band:
    {kind: strand, stitch: strung, beads: [buoy, gull, gull, gull], length: fills the rest,
     thread: {spool: wire}}
  wire: {from: wire}
  ring: {from: ring, wire: 20 AWG, closing: open}
  crimp: 2 mm crimp tube
  clasp: lobster 12 mm
run: [clasp.a, ring, crimp, band, crimp, ring, clasp.b]
work: [string band, "crimp crimp, 2 times", "close ring, 2 times", wear]
class: {length: 2 h, level: beginner, bring: [reading glasses]}
"""


def checked(text: str = PLAN, stock_list: str = STOCK, own: str = BENCH) -> PlanResult:
    settings, faults = bench.read_text(own, "bench.yaml", HOST.stitches, HOST.limits)
    assert settings is not None, faults
    kept = drawer.read_text(stock_list, "stock.csv")
    result = Checker(HOST, bench=settings, keep=True, quantities=True).check_text(
        text, "plan.yaml", kept
    )
    assert result.ask is not None, [one.says for one in result.remarks]
    return result


def of(result: PlanResult) -> Kit:
    assert result.ask is not None
    return kit(result.ask.quantities)


def for_makers(result: PlanResult, makers: int) -> ForMakers:
    assert result.ask is not None
    ask, one = result.ask.quantities, of(result)
    left = tuple(stock.taken(ask, one, makers))
    return ForMakers(result, makers, one, left, costs.of_piece(ask), costs.of_class(ask))


def test_bags_are_lettered_as_the_steps_call_them_and_measured_as_a_bench_can() -> None:
    lamp = keeper().check_file(LAMP)
    bags = of(lamp).bags
    # the lamp is woven first, then its rays hang, and the rope comes last
    assert [(bag.letter, bag.name) for bag in bags] == [
        ("A", "flame"), ("B", "rail"), ("C", "water"), ("D", "glint"), ("E", "night"),
    ]  # fmt: skip
    by_name = {bag.name: bag for bag in bags}
    assert by_name["flame"].grams and by_name["flame"].grams < 2
    assert by_name["flame"].measured.startswith("count 108, or string 1")
    assert by_name["water"].measured == f"weigh {by_name['water'].grams:g} g"
    assert by_name["glint"].measured == "count 13"  # one in each leg, and one over
    assert by_name["rail"].serves == "any size" and by_name["night"].serves.startswith("up to 5")
    said = " ".join(words for one in instructions(lamp) for words in one.says)
    assert "`flame` [A]" in said and "`night` [E]" in said and "`rope` [" not in said


def test_the_largest_size_is_what_the_spare_beads_make_longer() -> None:
    (bag, _) = of(checked()).bags
    result = checked(PLAN.replace("17.5 cm ± 6 mm", f"{bag.up_to} mm ± 6 mm"))
    assert result.ask is not None and bag.up_to is not None
    assert result.ask.quantities.get(f"beads.{bag.name}.needed").likely.high <= bag.pieces + 1
    assert bag.up_to >= 175


def test_a_kit_has_what_is_cut_and_one_over_of_what_is_small() -> None:
    found = of(checked())
    (line,) = found.cuts
    assert (line.what, line.part, line.count) == ("line", "band", 1)
    loose = {one.name: (one.count, one.over) for one in found.findings}
    assert loose == {"ring": (2, 1), "crimp": (2, 1), "clasp": (1, 0)}
    (chain,) = [one for one in of(keeper().check_file(COLLAR)).cuts if one.links]
    assert (chain.count, chain.links) == (7, 6)


def test_what_the_kits_take_is_the_new_stock_lot_by_lot() -> None:
    result = checked()
    found = for_makers(result, 4)
    had = {one.name: one for one in found.stock}
    gull = had["gull"]
    assert gull.had == 28 and gull.left == pytest.approx(28 - gull.takes)
    assert (had["ring"].takes, had["ring"].left, had["ring"].short) == (12, 0, 3)
    new = stock_left.written(STOCK, "stock.csv", found.stock)
    rows = new.text.splitlines()
    assert rows[0] == STOCK.splitlines()[0] and new.by_hand == ()
    opened = f"{8 - gull.takes:.1f}".removesuffix(".0")
    assert f"gull;bead;round;8/0;Japanese;12;{opened} g;1;;;" in rows
    assert "gull;bead;round;8/0;Japanese;14;10 g;2;;;" in rows
    assert "ring;jump ring;;5 mm;;;;;0;;" in rows
    again = drawer.read_text(new.text, "stock.csv")
    assert again.faults == ()


@pytest.mark.parametrize(
    ("point", "makers", "gull", "wire"),
    [(".", 1, "6.5 g", "8.4 m"), (".", 3, "3.5 g", "7.4 m"), (",", 1, "6,9 g", "8,4 m")],
)
def test_a_row_keeps_all_but_what_is_left(point: str, makers: int, gull: str, wire: str) -> None:
    """A spool that is opened has a row of its own, above the full one; a comma stays a comma."""
    listed = STOCK if point == "." else STOCK.replace("8 g", "8,4 g")
    found = for_makers(checked(stock_list=listed), makers)
    rows = stock_left.written(listed, "stock.csv", found.stock).text.splitlines()
    assert rows[1] == f"gull;bead;round;8/0;Japanese;12;{gull};1;;;"
    assert rows[-2:] == [
        f"wire;thread;flexible wire;0.38 mm;;;;;;1;{wire}",
        "wire;thread;flexible wire;0.38 mm;;;;;;1;9 m",
    ]


def test_what_cannot_be_counted_is_named_with_what_it_lacks() -> None:
    found = for_makers(checked(PLAN.replace("{from: gull}", "{type: round, size: 8/0}")), 1)
    lines = [line for line in write(found, Options(80)).splitlines() if "not counted" in line]
    assert lines == [
        "not counted: what needs `make` of `gull`",
        "not counted: `band` of Mooring buoys needs `make` of `gull`",
    ]


def test_a_row_without_a_cell_for_what_is_left_is_written_by_hand() -> None:
    bare = "\n".join(row.rpartition(";")[0] for row in STOCK.splitlines()) + "\n"
    text = PLAN.replace("wire: {from: wire}", "wire: {from: wire, length: 9 m}")
    found = for_makers(checked(text, bare), 4)
    new = stock_left.written(bare, "stock.csv", found.stock)
    assert [says.split(":")[0] for says in new.by_hand] == ["wire"]


def test_cost_hours_overhead_and_fees_stand_apart() -> None:
    cost = for_makers(checked(), 1).cost
    assert cost is not None and cost.unpriced == () and cost.missing == ()
    assert cost.hours and cost.wages and cost.overhead and cost.cost and cost.fees and cost.price
    assert cost.wages.middle == pytest.approx(cost.hours.middle / 60 * 20)
    assert cost.overhead.middle == pytest.approx((cost.used.middle + cost.wages.middle) * 0.1)
    parts = cost.used.middle + cost.wages.middle + cost.overhead.middle
    assert cost.cost.middle == pytest.approx(parts)
    assert cost.price.middle - cost.fees.middle == pytest.approx(cost.cost.middle)
    assert cost.used.middle < cost.bought.middle and cost.multiplier is None
    twice = for_makers(checked(own=BENCH.replace("fees: 5 %", "fees: 5 %, multiplier: 2")), 1).cost
    assert twice is not None and twice.price is not None
    assert twice.price.middle == pytest.approx(2 * cost.price.middle)


def test_the_fewest_heads_that_pay() -> None:
    """Two hours taught at 30, a room at 25, two hours before at 20: 125; of 24 come in 22.80."""
    found = for_makers(checked(), 1).of_class
    assert found is not None
    fee, own, both = found.fees
    assert (float(fee.fixed.amount), fee.heads) == (125.0, 6)
    assert own.heads is not None and both.heads is not None
    assert float(own.each.amount) > 16 * 0.95 and own.heads > 1
    lines = write(for_makers(checked(), 1), Options(100))
    assert "pays for 125.00 EUR however many come from 6 heads on" in lines


def test_without_prices_of_the_bench_nothing_is_said_of_cost() -> None:
    found = for_makers(checked(own="bench: 1"), 2)
    assert found.cost is None and found.of_class is None
    assert "cost" not in write(found, Options(80))
    without = for_makers(checked(own="bench: 1\nprices: {clasp: 3 EUR each}"), 1).cost
    assert without is not None and without.price is None
    assert without.missing == ("`wage` under `pricing` of a bench file",)


@pytest.mark.parametrize("path", [LAMP, COLLAR, SAMPLES / "spindrift_earrings.yaml"], ids=str)
def test_a_kit_fits_its_schema_and_its_page_its_width(path: Path) -> None:
    found = for_makers(keeper().check_file(path), 3)
    VALIDATOR.validate(json.loads(as_json(found)))
    for line in write(found, Options(60)).splitlines():
        assert len(line) <= 60 or str(path) in line


def test_pages_are_the_list_the_labels_and_the_notice_without_costs() -> None:
    result = checked()
    made = pages(for_makers(result, 3), result, Options())
    assert [*made] == ["plan-kit.html", "plan-labels.html", "plan-class.html"]
    assert made["plan-labels.html"].count('class="letter"') == 2 * 3
    notice = made["plan-class.html"]
    assert "The work takes a student about 17 min, likely 12 min to 23 min in class" in notice
    for words in ("level: beginner", "Reading glasses", "Class fee", "round your wrist", "latex"):
        assert words in notice
    assert "Overhead" not in notice and "Overhead" in made["plan-kit.html"]
    assert "safety data sheet" in notice and "guarantee" not in notice
    VALIDATOR.validate(json.loads(as_json(for_makers(result, 3))))


@pytest.mark.parametrize(
    ("own", "says"),
    [
        ("wage: 18 EUR", "is not what an hour costs"),
        ("overhead: 150 %", "is not a share"),
        ("room: 40 EUR, kit fee: £9", "in one currency"),
        ("wages: 18 EUR per h", "wage"),
    ],
)
def test_slips_of_pricing_are_named(own: str, says: str) -> None:
    settings, faults = bench.read_text(f"bench: 1\npricing: {{{own}}}", "bench.yaml")
    assert settings is None and says in " ".join(f"{one.says} {one.needed}" for one in faults)


_MIXED = "(mixed: no one lot is enough, and lots may differ in colour and size)"


@pytest.mark.parametrize(
    ("makers", "says", "left", "labels"),
    [
        (1, "lot L7", "25 left (3 of lot L7, 22 of lot L9)", ["lot L7"]),
        (2, "lot L7 for 1 kit, lot L9 for 1 kit", "10 left (3 of lot L7, 7 of lot L9)",
         ["lot L7", "lot L9"]),
        (3, "lot L7 for 1 kit, lot L9 for 1 kit, 3 of lot L7, 7 of lot L9 and 5 of what is bought"
         f" for 1 kit {_MIXED}", "0 left, 5 short",
         ["lot L7", "lot L9", "3 of lot L7, 7 of lot L9 and 5 of what is bought"]),
    ],
)  # fmt: skip
def test_each_kit_is_of_one_lot(makers: int, says: str, left: str, labels: list[str]) -> None:
    result = checked(stock_list=LOTS)
    found = for_makers(result, makers)
    text = " ".join(write(found, Options(200)).split())
    assert f"A buoy, 6 mm pressed: count 15; enough for up to 18 cm; {says} B" in text
    taken = f"40 on hand (lots L7 and L9), {15 * makers} taken"
    assert f"buoy: {taken}, {left} -" in text
    made = pages(found, result, Options())
    assert says in made["plan-kit.html"]
    assert [one.lines[1] for one in page_labels(found) if one.name == "buoy"] == labels
    VALIDATOR.validate(json.loads(as_json(found)))


def test_beads_of_no_named_lot_are_a_lot_of_their_own() -> None:
    found = for_makers(checked(stock_list=LOTS.replace(";L9;", ";;")), 2)
    text = " ".join(write(found, Options(200)).split())
    assert "; lot L7 for 1 kit, no named lot for 1 kit B" in text
    left = "30 taken, 10 left (3 of lot L7, 7 of no named lot)"
    assert f"buoy: 40 on hand (lot L7 and no named lot), {left}" in text


def test_what_lies_ready_is_what_the_piece_takes_and_no_whole_packs() -> None:
    (table,) = to_take(checked())
    assert {row[0]: row[1] for row in table.rows} == {
        "gull: round 8/0 Japanese [B]": "count 47",
        "buoy: 6 mm pressed [A]": "count 15",
        "wire: flexible wire 0.38 mm": "52 cm",
        "ring: open jump ring, size 5 mm, wire 20 AWG": "2",
        "crimp: tube crimp, size 2 mm": "2",
        "clasp: lobster clasp, size 12 mm": "1",
    }


def test_the_command_writes_pages_and_the_new_stock(run: Run, tmp_path: Path) -> None:
    for name, text in (("plan.yaml", PLAN), ("stock.csv", STOCK), ("bench.yaml", BENCH)):
        (tmp_path / name).write_text(text, encoding="utf-8")
    html = "--as", "html", "--out", "pages"
    ran = run("kit", "plan.yaml", *html, "--new-stock", "left.csv", cwd=tmp_path)
    assert "wrote pages/plan-kit.html and 2 more beside it" in ran.out
    assert "wrote left.csv" in ran.err
    ran = run("kit", "plan.yaml", "--new-stock", "stock.csv", cwd=tmp_path)
    assert "A   buoy" in ran.out and ran.code == 2 and "take --force" in ran.err
    assert (tmp_path / "stock.csv").read_text(encoding="utf-8") == STOCK


@pytest.mark.parametrize("out", ["plan.yaml", "bench.yaml", "link.yaml", "pages/plan-kit.html"])
def test_the_new_stock_is_written_over_the_list_alone(run: Run, tmp_path: Path, out: str) -> None:
    for name, text in (("plan.yaml", PLAN), ("stock.csv", STOCK), ("bench.yaml", BENCH)):
        (tmp_path / name).write_text(text, encoding="utf-8")
    (tmp_path / "link.yaml").symlink_to("plan.yaml")
    html = "--as", "html", "--out", "pages"
    ran = run("kit", "plan.yaml", *html, "--new-stock", out, "--force", cwd=tmp_path)
    says = f"{out} is one of the files that are read or written: give another --new-stock"
    assert ran.code == 2 and says in ran.err
    assert (tmp_path / "plan.yaml").read_text(encoding="utf-8") == PLAN
    assert (tmp_path / "bench.yaml").read_text(encoding="utf-8") == BENCH
    assert "<html" in (tmp_path / "pages" / "plan-kit.html").read_text(encoding="utf-8")
    ran = run("kit", "plan.yaml", "--new-stock", "stock.csv", "--force", cwd=tmp_path)
    assert ran.code != 2 and "wrote stock.csv" in ran.err


def test_a_kit_for_larger_sizes_has_what_the_largest_takes(run: Run, tmp_path: Path) -> None:
    for name, text in (("plan.yaml", PLAN), ("stock.csv", STOCK), ("bench.yaml", BENCH)):
        (tmp_path / name).write_text(text, encoding="utf-8")
    ran = run("kit", "plan.yaml", "--up-to", "21cm", "--as", "json", cwd=tmp_path)
    larger = checked(PLAN.replace("17.5 cm", "21 cm").replace("wrist: 16 cm", "wrist: 19.5 cm"))
    of_larger = {bag.name: bag for bag in of(larger).bags}
    packed = {bag["name"]: bag["pieces"] for bag in json.loads(ran.out)["bags"]}
    assert packed == {name: bag.pieces for name, bag in of_larger.items()}
    assert packed["gull"] > next(bag for bag in of(checked()).bags if bag.name == "gull").pieces
    assert all(bag.up_to is not None and bag.up_to >= 210 for bag in of_larger.values())
    ran = run("kit", "plan.yaml", "--up-to", "15cm", cwd=tmp_path)
    assert ran.code == 2 and "is shorter than the plan's own size, 17.5 cm" in ran.err


NEEDLES = """\
plan: 1
title: Two strands
piece: bracelet
drawer: stock.csv
beads: {seed: {from: seed}}
parts:
  one: {kind: strand, stitch: strung, beads: seed, count: 60, thread: fused 8 lb, needle: fine}
  other: {kind: strand, stitch: strung, beads: seed, count: 60, thread: fused 8 lb, needle: big eye}
  fine: beading needle 10
run: [{strands: [one, other]}]
supplies: [5 fine]
"""
MIXED = """\
name;kind;type;size;make;pack;packs;count
seed;bead;round;11/0;Japanese;10 g;2;
seed;bead;round;11/0;Japanese;;;120
"""


def test_a_class_buys_the_needles_of_its_kits_and_what_does_not_add_up_is_named(
    run: Run, tmp_path: Path
) -> None:
    (tmp_path / "plan.yaml").write_text(NEEDLES, encoding="utf-8")
    (tmp_path / "stock.csv").write_text(MIXED, encoding="utf-8")
    ran = run("kit", "plan.yaml", "--makers", "3", "--new-stock", "new.csv", cwd=tmp_path)
    says = "seed: on hand by weight and by count, so what is left is not worked out"
    assert (
        "fine, beading 10: 1 and 1 over" in ran.out and "needle, big-eye: 1 and 1 over" in ran.out
    )
    assert "fine: 5 on hand, 6 taken, 0 left, 1 short" in ran.out and says in ran.out
    assert f"write this by hand: {says}; write all of it by weight or by count\n" in ran.err
    data = json.loads(
        run("supplies", "plan.yaml", "--makers", "3", "--as", "json", cwd=tmp_path).out
    )
    needles = {one["name"]: one["buy"] for one in data["lines"] if one["group"] == "findings"}
    assert needles == {"fine": 1, "needle": 6}
    alone = run("supplies", "plan.yaml", cwd=tmp_path).out
    assert "needle" not in alone and "fine" not in alone
