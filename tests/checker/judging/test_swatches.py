"""What swatches of a bench teach, and what plans make of it."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable
from random import Random

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from wellstrung.judging import swatches
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import PlanResult
from wellstrung.plugins.host import Host
from wellstrung.quantity.value import Quantity
from wellstrung.reading import bench as benches
from wellstrung.reading.settings import Bench
from wellstrung.stitches import tubular_peyote

BEADS = """
bench: 1
maker: Tamsin
beads:
  kelp: 8/0 round Japanese, matte green
  sand: 8/0 round Japanese, gold
swatches:
"""
ROPE = (
    "{stitch: tubular peyote, around: 12, bead: kelp, rows: 20, outside: 11.3 mm, length: 30.5 mm}"
)
PLAN = """
plan: 1
title: Rope
piece: necklace
beads: {bead: BEAD}
parts: {rope: {kind: woven rope, stitch: tubular peyote, around: 10, beads: bead, rows: 200}}
run: [rope]
"""
KELP = '"8/0 round Japanese, matte green"'
SAND = '"8/0 round Japanese, gold"'
NAMES = ("rope.outside", "rope.length", "rope.rise", "beads.bead.outside", "beads.bead.length")

BenchOf = Callable[..., Bench]
Sizes = Callable[[str], Quantity]


@pytest.fixture(scope="module")
def bench_of(installed: Host) -> BenchOf:
    """The bench of these swatches."""

    def read(*lines: str, head: str = BEADS) -> Bench:
        text = head.lstrip() + "".join(f"  - {line}\n" for line in lines)
        bench, faults = benches.read_text(
            text, "bench.yaml", installed.stitches, installed.limits, installed.measures
        )
        assert bench is not None, faults
        found, faults = swatches.learnt(bench, installed)
        assert found is not None, [one.says for one in faults]
        return found

    return read


@pytest.fixture(scope="module")
def checked(installed: Host) -> Callable[..., PlanResult]:
    def check(bench: Bench | None = None, bead: str = KELP, more: str = "") -> PlanResult:
        text = PLAN.lstrip().replace("BEAD", bead) + more
        return Checker(installed, bench=bench, quantities=True, trials=0).check_text(text)

    return check


@pytest.fixture(scope="module")
def sizes(checked: Callable[..., PlanResult]) -> Callable[..., Sizes]:
    def of(*args: object, **kwargs: object) -> Sizes:
        ask = checked(*args, **kwargs).ask
        assert ask is not None
        return ask.quantities.get

    return of


def width(quantity: Quantity) -> float:
    return quantity.likely.high - quantity.likely.low


def rope(outside: float, length: float, more: str = "") -> str:
    return (
        "{stitch: tubular peyote, around: 12, bead: kelp, rows: 20,"
        f" outside: {outside:.3f} mm, length: {length:.3f} mm{more}}}"
    )


def test_three_swatches_narrow_the_next_rope_and_less_one_of_another_bead(
    bench_of: BenchOf, sizes: Callable[..., Sizes]
) -> None:
    before = sizes()
    one, three = (bench_of(*[ROPE] * count) for count in (1, 3))
    first, third, other = sizes(one), sizes(three), sizes(three, SAND)
    for name in ("rope.outside", "rope.length"):
        assert width(third(name)) < width(first(name)) < 0.5 * width(before(name)), name
        assert width(third(name)) < width(other(name)) < width(before(name)), name
    assert other("beads.bead.outside").likely == before("beads.bead.outside").likely


def test_the_worst_range_stays(bench_of: BenchOf, sizes: Callable[..., Sizes]) -> None:
    before, after = sizes(), sizes(bench_of(ROPE, ROPE))
    for name in (*NAMES, "rope.mass", "rope.beads", "rope.inside"):
        assert after(name).worst == pytest.approx(before(name).worst), name
        low, high = after(name).worst
        assert low - 1e-9 <= after(name).likely.low <= after(name).likely.high <= high + 1e-9


def test_a_swatch_as_predicted_keeps_the_middle(
    bench_of: BenchOf, sizes: Callable[..., Sizes]
) -> None:
    before = sizes()
    pitch = tubular_peyote.pitch(2.1, 1.05)
    after = sizes(bench_of(rope(tubular_peyote.outside(pitch, 12, 3.0), 30.0)))
    for name in NAMES:
        assert after(name).middle == pytest.approx(before(name).middle, abs=1e-3), name


def test_the_order_of_swatches_does_not_matter(
    bench_of: BenchOf, sizes: Callable[..., Sizes]
) -> None:
    lines = [
        ROPE,
        rope(11.0, 30.2),
        "{bead: kelp, count: 10, in_a_row: 21.2 mm}",
        "{stitch: tubular peyote, around: 8, bead: sand, rows: 30, outside: 8.2 mm}",
    ]
    there, back = sizes(bench_of(*lines)), sizes(bench_of(*reversed(lines)))
    for name in NAMES:
        assert there(name).likely == pytest.approx(back(name).likely, abs=1e-12)


@settings(max_examples=12, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    st.lists(st.tuples(st.floats(10.2, 12.4), st.floats(28.5, 32)), min_size=1, max_size=4),
    st.randoms(use_true_random=False),
)
def test_whatever_is_measured_only_what_is_likely_changes(
    bench_of: BenchOf, sizes: Callable[..., Sizes], read: list[tuple[float, float]], chance: Random
) -> None:
    before, lines = sizes(), [rope(*one) for one in read]
    after = sizes(bench_of(*lines))
    chance.shuffle(lines)
    mixed = sizes(bench_of(*lines))
    for name in NAMES:
        low, high = after(name).worst
        assert low <= before(name).worst.low + 1e-6 and high >= before(name).worst.high - 1e-6
        assert low - 1e-6 <= after(name).likely.low <= after(name).likely.high <= high + 1e-6
        assert width(after(name)) <= width(before(name)) + 1e-6
        assert mixed(name).likely == pytest.approx(after(name).likely, abs=1e-9)


def test_no_number_of_swatches_makes_a_size_surer_than_gauge_and_day(
    bench_of: BenchOf, sizes: Callable[..., Sizes]
) -> None:
    last = math.inf
    for count in (1, 2, 4, 12, 30):
        after = sizes(bench_of(*[ROPE] * count))
        assert width(after("rope.outside")) <= last + 1e-9
        last = width(after("rope.outside"))
        assert min(width(after("rope.outside")), width(after("rope.length"))) >= 0.4 - 1e-9
        assert after("rope.outside").likely.low >= after("rope.outside").worst.low
        if count < 3:  # of three, the scatter says how far the hand is off
            rise = after("rope.rise")
            assert width(rise) / 2 >= 0.02 * rise.middle * 0.99


@pytest.mark.parametrize("count", [1, 3])
def test_it_is_what_weighted_chance_gives(
    bench_of: BenchOf, sizes: Callable[..., Sizes], count: int
) -> None:
    """Ropes by chance, each weighted by how well it explains the swatches: the same middle, width.

    Worked out by the float functions of the stitch, nowhere by causes.
    """
    read = [(11.45, 30.9), (11.3, 30.6), (11.4, 30.4)][:count]
    found = sizes(bench_of(*[rope(*one) for one in read]))
    chance, size = np.random.default_rng(7), 300_000
    length, outside = (2.1 + 0.18 * chance.normal(size=size), 3 + 0.2 * chance.normal(size=size))
    day = 0.021 * _day_scale(read)
    hand = 1.05 + math.sqrt(0.05**2 - day**2) * chance.normal(size=size)
    pull = math.pi / 12

    def sized(hand: np.ndarray, around: float) -> tuple[np.ndarray, np.ndarray]:
        across = length * hand / math.tan(math.pi / around) + outside
        return across, outside / 2 * hand / 1.05

    across, rise = sized(hand, 12)
    # of one unit of tension: what it adds to the outside and to twenty rows
    tilt = np.array([2.1 / math.tan(pull), 20 * 3 / 2 / 1.05])
    gauge = [0.2**2, 0.2**2]
    off = np.stack(
        [
            value - predicted
            for one in read
            for value, predicted in zip(one, (across, 20 * rise), strict=True)
        ]
    )
    anew = day**2 * np.outer(tilt, tilt) + 0.1**2 * np.eye(2)
    alike = np.kron(np.ones((count, count)), np.diag(gauge))
    covariance = alike + np.kron(np.eye(count), anew)
    unlike = np.einsum("is,ij,js->s", off, np.linalg.inv(covariance), off)
    weights = np.exp(-unlike / 2)
    weights /= weights.sum()
    assert 1 / (weights**2).sum() > 2000, "enough ropes are like the swatches"
    next_hand = hand + day * chance.normal(size=size)
    across, rise = sized(next_hand, 10)
    for name, values in {"rope.outside": across, "rope.length": 200 * rise}.items():
        mean = (weights * values).sum()
        half = math.sqrt((weights * (values - mean) ** 2).sum())
        assert found(name).middle == pytest.approx(mean, abs=0.06 * half), name
        assert width(found(name)) / 2 == pytest.approx(half, rel=0.06), name


def _day_scale(read: Iterable[tuple[float, float]]) -> float:
    """How far the hand is off from day to day over what is assumed: as the swatches scatter."""
    read = [*read]
    if len(read) < 3:
        return 1.0
    tilts = np.array([2.1 / math.tan(math.pi / 12), 20 * 3 / 2 / 1.05]) * 0.021
    scatter = 4 * np.var(np.array(read) / tilts, axis=0, ddof=1).mean()
    free = len(read) - 1
    return math.sqrt((2 + scatter * free) / (2 + free))


def test_swatches_that_scatter_say_how_far_the_hand_is_off(
    bench_of: BenchOf, sizes: Callable[..., Sizes]
) -> None:
    even = bench_of(*[rope(11.3, 30.5)] * 4)
    uneven = bench_of(*[rope(11.3 + by, 30.5 + by) for by in (-0.5, 0.4, -0.4, 0.5)])
    days = [next(r.day for r in one.learnt.causes if r.of == "hand") for one in (even, uneven)]  # type: ignore[union-attr]
    assert days[0] < 0.42 < days[1] <= 1
    assert width(sizes(even)("rope.length")) < width(sizes(uneven)("rope.length"))


def test_several_readings_of_one_size_show_their_own_scatter(
    bench_of: BenchOf, sizes: Callable[..., Sizes]
) -> None:
    line = "{stitch: tubular peyote, around: 12, bead: kelp, rows: 20, outside: %s}"
    calm, oval = (
        sizes(bench_of(line % listed))
        for listed in ("[11.3 mm, 11.4 mm, 11.2 mm]", "[10.6 mm, 12 mm, 11.3 mm]")
    )
    assert calm("rope.outside").middle == pytest.approx(oval("rope.outside").middle, abs=0.03)
    assert width(calm("rope.outside")) < width(oval("rope.outside"))
    wide = sizes(bench_of(line % "11.3 ± 0.6 mm"))
    assert width(calm("rope.outside")) < width(wide("rope.outside"))


@pytest.mark.parametrize(
    ("more", "hand"),
    [
        ("", True),
        ("maker: Tamsin\n", True),
        ("maker: TAMSIN\n", True),
        ("maker: Orla\n", False),
        ("class: {length: 2.5 h}\n", False),
        ("maker: Tamsin\nclass: {length: 2.5 h}\n", True),
    ],
)
def test_a_students_hand_is_never_the_makers(
    bench_of: BenchOf, checked: Callable[..., PlanResult], more: str, hand: bool
) -> None:
    result = checked(bench_of(ROPE), more=more)
    assert [names for _, names in result.swatches] == [
        ("`bead`", "`rope`") if hand else ("`bead`",)
    ]
    tension = next(one for one in _leaves(result) if one.name == "rope.tension")
    assert (tension.likely == (1.0, 1.1)) is not hand


def _leaves(result: PlanResult) -> Iterable[Quantity]:
    return result.quantities["rope.outside"].leaves


def test_a_swatch_of_another_hand_is_for_that_hand(
    bench_of: BenchOf, checked: Callable[..., PlanResult]
) -> None:
    bench = bench_of(rope(11.3, 30.5, ", hand: Orla"))
    mine, hers = checked(bench), checked(bench, more="maker: Orla\n")
    assert [one.swatches[0][1] for one in (mine, hers)] == [("`bead`",), ("`bead`", "`rope`")]


@pytest.mark.parametrize(
    ("lots", "of", "used"),
    [
        (("lot 12",), "", True),
        (("Lot  12",), "supplies: [{bead: bead, pack: 20 g, packs: 1, lot: lot 12}]\n", True),
        (("lot 12",), "supplies: [{bead: bead, pack: 20 g, packs: 1, lot: lot 13}]\n", False),
        (
            ("lot 12", "lot 13"),
            "supplies: [{bead: bead, pack: 20 g, packs: 1, lot: lot 13}]\n",
            True,
        ),
        (("lot 12", "lot 13"), "", False),
    ],
)
def test_what_is_learnt_of_a_bead_is_of_its_lot(
    bench_of: BenchOf, sizes: Callable[..., Sizes], lots: tuple[str, ...], of: str, used: bool
) -> None:
    line = "{bead: kelp, lot: %s, count: 10, in_a_row: 2%d mm}"
    found = sizes(bench_of(*[line % (lot, n) for n, lot in enumerate(lots)]), more=of)
    length = found("beads.bead.length")
    assert (length.likely.high - length.likely.low < 0.2) is used
    if used:
        assert length.middle == pytest.approx(2 + 0.1 * (len(lots) - 1), abs=0.02)


@pytest.mark.parametrize(
    ("bead", "same"),
    [
        (KELP, True),
        ('"8/0 round Japanese, MATTE green"', True),
        (SAND, False),
        ('"11/0 round Japanese, matte green"', False),
        ('"8/0 round Czech, matte green"', False),
        ('"8/0 round Japanese"', False),  # of no colour, and not of that name
    ],
)
def test_which_bead_is_the_same(
    bench_of: BenchOf, checked: Callable[..., PlanResult], bead: str, same: bool
) -> None:
    bench = bench_of("{bead: kelp, count: 10, in_a_row: 21 mm, side_by_side: 30.5 mm}")
    assert bool(checked(bench, bead).swatches) is same


def test_a_size_that_the_plan_measures_stands(
    bench_of: BenchOf, sizes: Callable[..., Sizes]
) -> None:
    bead = "{type: round, size: 8/0, make: Japanese, colour: matte green, measured: {length: 2 mm}}"
    found = sizes(bench_of("{bead: kelp, count: 10, in_a_row: 21.8 mm}"), bead)
    assert found("beads.bead.length").likely == (2, 2)


def test_work_with_another_thread_is_other_work(bench_of: BenchOf, installed: Host) -> None:
    bench = bench_of(rope(11.3, 30.5, ", thread: fused 8 lb"))
    for thread, used in (("fused 6 lb", True), ("nylon D", False)):
        text = PLAN.lstrip().replace("BEAD", KELP).replace("rows:", f"thread: {thread}, rows:")
        found = Checker(installed, bench=bench, trials=0).check_text(text).swatches
        assert ("`rope`" in found[0][1]) is used


def test_ten_knots_narrow_the_next_strand(bench_of: BenchOf, installed: Host) -> None:
    text = """
plan: 1
title: Strand
piece: necklace
beads: {pearl: "6 mm glass pearl, cream"}
parts: {strand: {kind: strand, stitch: knotted, beads: pearl, count: 60, thread: silk No. 4}}
run: [strand]
""".lstrip()
    line = "{stitch: knotted, thread: silk No. 4, knots: 10, adds: 11 mm}"
    found = [
        Checker(installed, bench=bench, quantities=True).check_text(text).quantities
        for bench in (None, bench_of(line))
    ]
    before, after = (one["strand.knot"] for one in found)
    assert after.likely.low > before.likely.low and after.likely.high < before.likely.high
    assert after.worst == before.worst
    assert width(found[1]["strand.length"]) < width(found[0]["strand.length"])


def test_what_was_timed_is_how_fast_one_is(bench_of: BenchOf, installed: Host) -> None:
    work = "work: [{do: weave, part: rope}, {do: close ring, part: ring}, {do: wear}]\n"
    text = (
        PLAN.lstrip()
        .replace("BEAD", KELP)
        .replace(
            "run:", "  ring: {kind: jump ring, outside: 5 mm, wire: 20 AWG, closing: open}\nrun:"
        )
        .replace("parts: {rope", "parts:\n  rope")
        .replace("rows: 200}}", "rows: 200}")
        + work
    )
    lines = (
        "{stitch: tubular peyote, count: 270, time: 30 min}",
        "{do: close ring, times: 12, time: 9 min}",
        "{stitch: tubular peyote, count: 135, time: 38 min, hand: students}",
    )
    found = []
    for bench in (None, bench_of(*lines)):
        result = Checker(installed, bench=bench, quantities=True).check_text(text)
        found.append(result.quantities)
    assert found[1]["piece.bench_time"].middle < found[0]["piece.bench_time"].middle
    for name in ("piece.bench_time", "piece.student_time"):
        assert width(found[1][name]) < 0.6 * width(found[0][name])
    assert [names for _, names in result.swatches] == [("the minutes",)] * 3


def test_a_swatch_that_contradicts_the_tables_is_said(
    bench_of: BenchOf, checked: Callable[..., PlanResult]
) -> None:
    far, absurd = bench_of(rope(9.7, 31)), bench_of(rope(97, 31))
    assert far.learnt is not None and absurd.learnt is not None
    [(place, says)] = far.learnt.doubts
    assert place.line == 7
    assert says == (
        "`swatch 1` has 9.7 mm (`outside`), and the tables expect 10.4..12.06 mm: measure its"
        " `outside` again, count it, and look which bead it is; it is used all the same"
    )
    assert absurd.learnt.doubts[0][1].endswith("it is not used")
    assert not absurd.learnt.causes
    result = checked(far)
    assert result.notes == (f"bench.yaml:7 {says}",)
    outside = result.quantities["rope.outside"]
    low, high = outside.worst
    assert low <= outside.likely.low < outside.likely.high <= high
    assert not checked(absurd).swatches


@pytest.mark.parametrize(
    ("line", "says"),
    [
        (
            "{stitch: tubular peyot, around: 12, bead: kelp, outside: 11 mm}",
            "there is no stitch called `tubular peyot`: write `tubular peyote`",
        ),
        (
            "{stitch: brick, across: 10, bead: klp, width: 30 mm}",
            "`swatch 1` is of `klp`, which is no bead of the bench: write one of `kelp`, `sand`",
        ),
        (
            "{stitch: brick, across: 10, bead: 9/0 round Japanese, width: 30 mm}",
            "the trade tables have no bead `round 9/0 Japanese`",
        ),
        (
            "{stitch: brick, across: 10, bead: kelp}",
            "`swatch 1` has nothing measured: write one of `width`, `thickness`, `length`",
        ),
        (
            "{stitch: brick, across: 10, bead: kelp, outside: 30 mm}",
            "`outside` is no size of brick: write `width`, `thickness`, `length` or `thread_used`",
        ),
        (
            "{stitch: brick, across: 10, bead: kelp, length: 30 mm}",
            "does not say how many rows or beads its length is of: write `rows: 20`",
        ),
        (
            "{stitch: tubular peyote, around: 11, bead: kelp, outside: 30 mm}",
            "even tubular peyote needs an even ring: write `around: 10` or `around: 12`",
        ),
        (
            "{stitch: brick, across: 10, bead: kelp, widht: 30 mm}",
            "`swatch 1` has no field called `widht`: write `width`",
        ),
        (
            "{stitch: brick, across: 10, bead: kelp, diameter: 30 mm}",
            "`swatch 1` has no field called `diameter`: write `",
        ),
        ("{bead: kelp, in_a_row: 21 mm}", "write `count: 10`"),
        ("{bead: [kelp, sand], count: 10, in_a_row: 21 mm}", "write `bead: kelp`, one name"),
        ("{bead: kelp, across: 9, in_a_row: 21 mm}", "no field called `across` without a `stitch`"),
        ("{stitch: knotted, knots: 10}", "write `knots: 10, adds: 8.4 mm`"),
        ("{stitch: brick, time: 30 min}", "write `count: 216`"),
        ("{do: dance, time: 30 min}", "times `dance`: write one of"),
    ],
)
def test_a_slip_in_a_swatch_is_answered(installed: Host, line: str, says: str) -> None:
    text = BEADS.lstrip() + f"  - {line}\n"
    bench, faults = benches.read_text(text, "bench.yaml", installed.stitches)
    assert bench is not None, faults
    found, faults = swatches.learnt(bench, installed)
    assert found is None
    assert says in faults[0].says
    assert faults[0].place.line == 7


def test_a_field_is_taken_in_a_word_of_the_trade(bench_of: BenchOf) -> None:
    bench = bench_of(
        ROPE.replace("outside", "OD"), "{bead: kelp, dye lot: 7a, count: 10, in_a_row: 21 mm}"
    )
    assert bench.learnt is not None
    assert {place.line for row in bench.learnt.causes for place in row.by} == {7, 8}


@pytest.mark.parametrize("stitch", ["tubular peyote", "peyote tube", "tubular gourd stitch"])
def test_the_stitch_is_taken_in_any_word_of_the_trade(bench_of: BenchOf, stitch: str) -> None:
    bench = bench_of(ROPE.replace("tubular peyote", stitch))
    assert bench.learnt is not None
    assert {row.whose for row in bench.learnt.causes if row.of == "hand"} == {"tubular peyote"}


def test_where_a_bench_knows_one_lot_all_is_of_that(
    bench_of: BenchOf, checked: Callable[..., PlanResult]
) -> None:
    found = checked(bench_of(ROPE, "{bead: kelp, lot: lot 12, count: 10, in_a_row: 21 mm}"))
    assert [place.line for place, _ in found.swatches] == [7, 8]
    assert all("`bead`" in names for _, names in found.swatches)
