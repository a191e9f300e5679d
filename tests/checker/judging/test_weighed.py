"""Beads that were weighed: what a bench makes of it, in supplies, kits and checks."""

from __future__ import annotations

import math
from collections.abc import Callable

import numpy as np
import pytest

from wellstrung.judging import swatches
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import PlanResult
from wellstrung.lists import kit
from wellstrung.plugins.host import Host
from wellstrung.reading import bench as benches
from wellstrung.reading.settings import Bench

HEAD = """
bench: 1
allowances: {gauge of scales: GAUGE}
beads:
  kelp: 11/0 cylinder, matte green
  tide: 10/0 cylinder, blue
  foam: 3 mm glass cube, white
  pearl: 6 mm glass pearl, cream
swatches:
"""
PLAN = """
plan: 1
title: Slipway cuff
piece: bracelet
beads: {bead: BEAD}
parts: {strand: {kind: strand, stitch: strung, beads: bead, count: 1000}}
run: [strand]
"""
KELP, TIDE = '"11/0 cylinder, matte green"', '"10/0 cylinder, blue"'
FOAM, PEARL = '"3 mm glass cube, white"', '"6 mm glass pearl, cream"'

Read = Callable[..., tuple[Bench | None, list[str]]]
Check = Callable[..., PlanResult]


@pytest.fixture(scope="module")
def read(installed: Host) -> Read:
    """The bench of these swatches, or what is wrong with them."""

    def of(*lines: str, gauge: str = "0.01 g") -> tuple[Bench | None, list[str]]:
        text = HEAD.lstrip().replace("GAUGE", gauge) + "".join(f"  - {line}\n" for line in lines)
        bench, faults = benches.read_text(text, "bench.yaml", installed.stitches, installed.limits)
        assert bench is not None, faults
        found, faults = swatches.learnt(bench, installed)
        return found, [one.says for one in faults]

    return of


@pytest.fixture(scope="module")
def checked(installed: Host, read: Read) -> Check:
    """The plan of a thousand beads, checked with these swatches."""

    def check(*lines: str, bead: str = KELP, more: str = "", gauge: str = "0.01 g") -> PlanResult:
        bench = read(*lines, gauge=gauge)[0] if lines else None
        text = PLAN.lstrip().replace("BEAD", bead) + more
        return Checker(installed, bench=bench, quantities=True, trials=0).check_text(text)

    return check


def mass(result: PlanResult) -> tuple[float, float]:
    """What a thousand beads weigh, and half of its likely range, g."""
    found = result.quantities["strand.mass"]
    return found.middle, (found.likely.high - found.likely.low) / 2


@pytest.mark.parametrize("weighed", [0.47, 0.5, 0.52, 0.56])
def test_a_weighed_lot_narrows_what_its_beads_weigh(checked: Check, weighed: float) -> None:
    before, after = checked(), checked(f"{{bead: kelp, count: 100, mass: {weighed} g}}")
    assert mass(after)[1] < 0.5 * mass(before)[1]
    assert mass(after)[0] == pytest.approx(10 * weighed, abs=mass(after)[1])
    low, high = after.quantities["strand.mass"].worst
    assert low <= before.quantities["strand.mass"].worst.low + 1e-9
    assert high >= before.quantities["strand.mass"].worst.high - 1e-9


@pytest.mark.parametrize(("bead", "name", "grams"), [(TIDE, "tide", 1.0), (FOAM, "foam", 6.4)])
@pytest.mark.parametrize("times", [1, 3, 40])
def test_no_weighing_is_surer_than_the_scales(
    checked: Check, bead: str, name: str, grams: float, times: int
) -> None:
    lines = [f"{{bead: {name}, count: 100, mass: {grams} g}}"] * times
    for gauge in (0.01, 0.03, 0.1):
        middle, half = mass(checked(*lines, bead=bead, gauge=f"{gauge} g"))
        prior = mass(checked(bead=bead))
        least = 1 / math.hypot(grams / gauge, prior[0] / prior[1])  # of the scales and the tables
        assert half / middle >= 0.93 * least


def test_scales_that_show_too_little_teach_little(checked: Check) -> None:
    line = "{bead: kelp, count: 100, mass: 0.56 g}"
    fine, kitchen = checked(line), checked(line, gauge="0.1 g")
    assert mass(kitchen)[1] > 0.85 * mass(checked())[1] > 2 * mass(fine)[1]
    assert mass(checked())[0] < mass(kitchen)[0] < mass(fine)[0]


@pytest.mark.parametrize("weighed", [0.96, 1.0, 1.18, 1.35])
def test_a_count_is_what_weighted_chance_gives(checked: Check, weighed: float) -> None:
    """Counts a gram by chance, each weighted by how well it explains what was weighed."""
    found = mass(checked(f"{{bead: tide, count: 100, mass: {weighed} g}}", bead=TIDE))
    z = np.random.default_rng(5).normal(size=400_000)
    per_gram = 85 + np.where(z > 0, 23, 15) * z  # the table: 70..108
    assert _by_chance(100 / per_gram, 1000 / per_gram, weighed, 0.01, 100) == pytest.approx(
        found, rel=0.1
    )


@pytest.mark.parametrize("weighed", [5.1, 5.4, 5.6])
def test_a_volume_is_what_weighted_chance_gives(checked: Check, weighed: float) -> None:
    """Pearls by chance, their mass by their sizes: an ellipsoid less its hole, of glass."""
    found = mass(checked(f"{{bead: pearl, count: 20, mass: {weighed} g}}", bead=PEARL))
    chance, size = np.random.default_rng(5), 400_000

    def value(middle: float, down: float, up: float) -> np.ndarray:
        z = chance.normal(size=size)
        return middle + np.where(z > 0, up, down) * z

    outside, flat, hole = value(6, 0.2, 0.2), value(0.98, 0.03, 0.02), value(1, 0.3, 0.2)
    filled, density = value(math.pi / 6, 0.0136, 0.0002), value(2.52, 0.03, 0.01)
    length = outside * flat
    each = density * (filled * outside**2 * length - math.pi / 4 * hole**2 * length) / 1000
    middle, half = _by_chance(20 * each, 1000 * each, weighed, 0.01, 20)
    assert found[0] == pytest.approx(middle, rel=0.01)
    assert 0.85 * half < found[1] < 1.5 * half  # no surer; ranges that lean one way stay wider


def _by_chance(
    expected: np.ndarray, asked: np.ndarray, weighed: float, gauge: float, count: int
) -> tuple[float, float]:
    """Mean and spread of `asked`, each weighted by how likely what was weighed is for it."""
    alike = math.sqrt(5) * 0.05 * weighed / math.sqrt(count)
    error = math.hypot(gauge, gauge / 2, alike)
    weights = np.exp(-(((expected - weighed) / error) ** 2) / 2)
    weights /= weights.sum()
    assert 1 / (weights**2).sum() > 1000, "enough of them are like what was weighed"
    middle = float((weights * asked).sum())
    return middle, math.sqrt(float((weights * (asked - middle) ** 2).sum()))


def test_a_kit_weighs_out_by_it(checked: Check) -> None:
    before, after = checked(), checked("{bead: kelp, count: 100, mass: 0.52 g}")
    grams = []
    for result in (before, after):
        assert result.ask is not None
        [bag] = kit.kit(result.ask.quantities).bags
        grams.append((bag.grams, bag.measured))
    assert grams == [(5.9, "weigh 5.9 g"), (5.6, "weigh 5.6 g")]


def test_supplies_go_by_it_and_it_is_no_value_from_memory_then(checked: Check) -> None:
    pack = "supplies: [{bead: bead, pack: 5 g, packs: 1}]\n"
    before = checked(more=pack).remarks
    after = checked("{bead: kelp, count: 100, mass: 0.54 g}", more=pack).remarks
    line = "`bead` on hand ({}) {} too little for `strand`, which takes 1000 beads"
    [first], [then] = ([one for one in r if one.rule == "beads-enough"] for r in (before, after))
    assert first.says.startswith(line.format("1000 beads, likely 900..1165", "may be"))
    assert then.says == line.format("929 beads, likely 907..951", "is")
    assert (first.level, then.level) == ("warning", "error")


def test_a_lot_is_its_own(checked: Check) -> None:
    lines = [
        "{bead: kelp, lot: lot 12, count: 100, mass: 0.52 g}",
        "{bead: kelp, lot: lot 13, count: 100, weight: 0.48 g}",
    ]
    supplies = "supplies: [{bead: bead, pack: 10 g, packs: 1, lot: lot %d}]\n"
    found = [mass(checked(*lines, more=supplies % lot))[0] for lot in (12, 13)]
    assert found == pytest.approx([5.2, 4.8], abs=0.04)
    assert mass(checked(*lines))[0] == mass(checked())[0]  # of two lots, neither


def test_a_count_that_the_plan_states_stands(checked: Check) -> None:
    bead = "{type: cylinder, size: 11/0, colour: matte green, per_gram: 190}"
    result = checked("{bead: kelp, count: 100, mass: 0.52 g}", bead=bead)
    assert mass(result)[0] == pytest.approx(1000 / 190)
    assert [names for _, names in result.swatches] == []


@pytest.mark.parametrize(
    ("line", "says"),
    [
        (
            "{bead: kelp, mass: 0.52 g}",
            "`swatch 1` does not say how many beads are weighed: write `count: 100`",
        ),
        (
            "{bead: [kelp, tide], count: 100, mass: 0.52 g}",
            "`swatch 1` has beads weighed, and does not say of which: write `bead: kelp`, one name",
        ),
        (
            "{stitch: brick, across: 10, rows: 20, bead: kelp, mass: 2 g}",
            "`swatch 1` is woven, and what is weighed is loose beads: write `{bead: kelp, count:"
            " 100, mass: 2.86 g}`, without a stitch",
        ),
    ],
)
def test_a_slip_is_answered(read: Read, line: str, says: str) -> None:
    assert read(line)[1][0].startswith(says)


def test_a_mass_that_contradicts_the_tables_is_said(read: Read) -> None:
    bench = read("{bead: kelp, count: 100, mass: 0.9 g}")[0]
    assert bench is not None and bench.learnt is not None
    assert [says for _, says in bench.learnt.doubts] == [
        "`swatch 1` has 0.9 g (`mass`), and the tables expect 0.429..0.556 g: weigh them again"
        " without their bag, count them, and look which bead it is; it is not used"
    ]


@pytest.mark.parametrize(
    ("bead", "pack", "gauge", "says"),
    [
        (
            '"8/0 round Japanese, matte green"',
            "30 g",
            "0.1 g",
            "weigh 200 of `bead` and write `swatches: [{bead: bead, count: 200, mass: ... g}]` in"
            " the bench, with `bead` under its `beads`; or have 1000 beads of `bead` in all",
        ),
        (
            '"11/0 cylinder, gold"',
            "5 g",
            "0.1 g",
            "weigh 100 of `bead` on scales that show 0.01 g and write `allowances: {gauge of"
            " scales: 0.01 g}` and `swatches: [{bead: bead, count: 100, mass: ... g}]` in the"
            " bench, with `bead` under its `beads`; or have 1000 beads of `bead` in all",
        ),
        (
            '"1.8 mm cube, gold"',
            "13 g",
            "0.01 g",
            "weigh 100 of `bead` and write `swatches: [{bead: bead, count: 100, mass: ... g}]` in"
            " the bench, with `bead` under its `beads`; or have 1000 beads of `bead` in all",
        ),
    ],
)
def test_where_the_count_decides_the_lines_to_write_are_said(
    checked: Check, bead: str, pack: str, gauge: str, says: str
) -> None:
    more = f"supplies: [{{bead: bead, pack: {pack}, packs: 1}}]\n"
    line = "{bead: pearl, count: 20, mass: 5.4 g}"  # of another bead: the bench has its scales
    result = checked(line, bead=bead, gauge=gauge, more=more)
    [found] = [one.remedy for one in result.remarks if one.rule == "beads-enough"]
    assert found == says
