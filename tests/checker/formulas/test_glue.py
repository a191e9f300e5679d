"""Glue: volumes by layers and by counting cubes, mixes by doing one joint after another."""

from __future__ import annotations

import math
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from wellstrung import tables
from wellstrung.formulas import glue

sizes = st.floats(1.0, 20.0)
room = st.floats(0.0, 3.0)
depths = st.floats(0.1, 15.0)
more = st.floats(0.01, 2.0)
temperatures = st.floats(0.0, 50.0)
times = st.floats(0.5, 5000.0)


def line_of(name: str) -> glue.BondLine:
    """The bond line of a row of the trade table."""
    cells = tables.load("adhesives").row(name).cells
    return glue.BondLine(
        cells["gap_best"].low,
        cells["gap_best"].high,
        cells["gap_least"].value if "gap_least" in cells else None,
        cells["gap_most"].value if "gap_most" in cells else None,
    )


LINES = {name: line_of(name) for name in ("cyanoacrylate", "UV resin", "two-part epoxy")}


@given(sizes, room)
def test_the_gap_by_laying_wall_gap_end_gap_wall_along_a_line(end: float, gap: float) -> None:
    bore = end + 2 * gap
    assert gap + end + gap == pytest.approx(bore)
    assert glue.gap(bore, end) == pytest.approx(gap, abs=1e-6)
    assert glue.widest_gap(bore, end) == pytest.approx(bore - end, abs=3e-6)


def test_a_pressed_end_has_a_negative_gap() -> None:
    assert glue.gap(bore=7.6, end=7.8) == pytest.approx(-0.1)


@given(sizes, room, depths, room)
def test_volume_by_thin_sleeves_laid_one_round_the_other(
    end: float, gap: float, depth: float, fill: float
) -> None:
    """A sleeve of middle radius r and thickness t, unrolled, is 2 pi r x t; the disc likewise."""
    bore, slices = end + 2 * gap, 200

    def unrolled(inner: float, outer: float) -> float:
        t = (outer - inner) / slices
        return math.fsum(2 * math.pi * (inner + (n + 0.5) * t) * t for n in range(slices))

    by_layers = unrolled(end / 2, bore / 2) * depth + unrolled(0, bore / 2) * fill
    assert glue.joint_volume(bore, end, depth, fill) == pytest.approx(by_layers, abs=1e-9)


def test_volume_by_counting_cubes() -> None:
    """A bore of 8 mm and 6 mm deep over an end of 7 mm, with 1 mm below it, in cubes of 0.05 mm."""
    edge, count = 0.05, 0
    middles = [(n + 0.5) * edge - 4 for n in range(160)]
    for x in middles:
        for y in middles:
            square = x * x + y * y
            count += 120 * (12.25 < square <= 16) + 20 * (square <= 16)
    assert glue.joint_volume(8, 7, 6, 1) == pytest.approx(count * edge**3, rel=2e-3)


def test_a_pressed_end_holds_the_disc_alone() -> None:
    assert glue.joint_volume(7.6, 7.8, 6.0) == 0.0
    assert glue.joint_volume(7.6, 7.8, 6.0, 0.5) == glue.joint_volume(7.6, 7.6, 0.0, 0.5) > 0


@given(sizes, room, depths, room, more)
def test_volume_grows_with_bore_depth_and_fill_and_falls_with_the_end(
    end: float, gap: float, depth: float, fill: float, by: float
) -> None:
    bore = end + 2 * gap + 0.01
    held = glue.joint_volume(bore, end, depth, fill)
    assert glue.joint_volume(bore + by, end, depth, fill) > held
    assert glue.joint_volume(bore, end, depth + by, fill) > held
    assert glue.joint_volume(bore, end, depth, fill + by) > held
    assert glue.joint_volume(bore, end + by, depth, fill) < held


@given(st.floats(0.1, 500), st.floats(0, 0.95))
def test_what_is_mixed_less_what_is_left_behind_is_what_is_wanted(
    volume: float, left: float
) -> None:
    mixed = glue.to_mix(volume, left)
    assert mixed >= volume
    assert mixed - left * mixed == pytest.approx(volume)


def test_by_habit_half_of_a_mix_is_left_behind() -> None:
    assert glue.to_mix(10) == 20


@pytest.mark.parametrize("left", [-0.1, 1.0, 1.5, math.nan])
def test_a_share_that_cannot_be_left_behind(left: float) -> None:
    with pytest.raises(ValueError, match="the share left behind is from 0 to below 1"):
        glue.to_mix(10, left)


def done_one_by_one(joints: int, usable: int, each: int, mixing: int) -> int | None:
    """Mix, glue as long as the next joint is finished in time, and mix again."""
    mixes = 0
    while joints:
        mixes, clock, before = mixes + 1, mixing, joints
        while joints and clock + each <= usable:
            clock, joints = clock + each, joints - 1
        if joints == before:
            return None
    return mixes


@given(st.integers(0, 40), st.integers(1, 60), st.integers(1, 20), st.integers(0, 10))
def test_mixes_by_doing_the_joints_one_by_one(
    joints: int, usable: int, each: int, mixing: int
) -> None:
    by_doing = done_one_by_one(joints, usable, each, mixing)
    # in tenths of a minute, so that times are not whole
    found = glue.mixes(joints, usable / 10, each / 10, mixing / 10)
    assert found == by_doing


@given(st.integers(1, 40), st.floats(2, 60), st.floats(0.1, 1.0), st.floats(0, 0.9), more)
def test_mixes_never_fall_with_more_joints_or_slower_hands(
    joints: int, usable: float, each: float, mixing: float, by: float
) -> None:
    asked = glue.mixes(joints, usable, each, mixing)
    assert asked is not None
    assert 1 <= asked <= joints
    many = glue.mixes(joints + 1, usable, each, mixing)
    longer = glue.mixes(joints, usable + by, each, mixing)
    assert many is not None
    assert longer is not None
    assert many >= asked >= longer
    slower = glue.mixes(joints, usable, each + by, mixing)
    assert slower is None or slower >= asked
    stirred = glue.mixes(joints, usable, each, mixing + by)
    assert stirred is None or stirred >= asked


def test_a_joint_that_ends_with_the_usable_time_counts() -> None:
    """(2 - 0.6) / 0.2 is 7, and floats make it a little less."""
    assert (2 - 0.6) // 0.2 < 7
    assert glue.joints_in_a_mix(usable=2, each=0.2, mixing=0.6) == 7


def test_a_joint_takes_some_time() -> None:
    with pytest.raises(ValueError, match="a joint takes some time, not 0 min"):
        glue.mixes(2, 5, 0)


def test_no_joint_needs_no_mix() -> None:
    assert glue.mixes(0, usable=0.1, each=1) == 0


@given(temperatures, temperatures, times)
def test_colder_is_slower(one: float, other: float, stated: float) -> None:
    colder, warmer = sorted((one, other))
    assert glue.cure_at(colder, stated) >= glue.cure_at(warmer, stated)
    assert glue.cure_at(one, stated) < glue.cure_at(one, stated + 1)


@given(temperatures, times)
def test_how_warm_and_how_long_belong_together(temperature: float, stated: float) -> None:
    takes = glue.cure_at(temperature, stated)
    assert glue.cure_at(25, stated) == pytest.approx(stated)
    if 0.01 < temperature < 49.99:
        assert glue.temperature_for(takes, stated) == pytest.approx(temperature, abs=1e-6)


@given(temperatures, times, st.floats(15, 30), st.floats(5, 15))
def test_another_room_and_another_step(
    temperature: float, stated: float, room: float, step: float
) -> None:
    """One step colder than stated takes twice as long, whatever the step and the room."""
    rates = {"stated_at": room, "degrees_to_double": step}
    assert glue.cure_at(room, stated, **rates) == pytest.approx(stated)
    assert glue.cure_at(room - step, stated, **rates) == pytest.approx(2 * stated)
    takes = glue.cure_at(temperature, stated, **rates)
    if 0.01 < temperature < 49.99:
        assert glue.temperature_for(takes, stated, **rates) == pytest.approx(temperature, abs=1e-6)


@pytest.mark.parametrize("temperature", [-0.1, 50.1, math.nan, math.inf])
def test_outside_the_published_range_there_is_no_answer(temperature: float) -> None:
    with pytest.raises(ValueError, match="is not known here, only from 0 to 50 °C"):
        glue.cure_at(temperature, 60)


def test_a_cure_that_no_bench_is_warm_or_cold_enough_for() -> None:
    assert glue.temperature_for(15, stated=15 * 2**2.5) == pytest.approx(50)
    with pytest.raises(ValueError, match="at 55 °C"):
        glue.temperature_for(7.5, stated=60)
    with pytest.raises(ValueError, match="at -5 °C"):
        glue.temperature_for(480, stated=60)
    with pytest.raises(ValueError, match="a cure takes some time, not 0 min"):
        glue.temperature_for(0, stated=60)


@pytest.mark.parametrize(
    ("name", "gap", "becomes"),
    [
        ("two-part epoxy", -0.1, "starved"),
        ("two-part epoxy", 0.048, "starved"),
        ("two-part epoxy", 0.0499999, "best"),
        ("two-part epoxy", 0.05, "best"),
        ("two-part epoxy", 0.2, "best"),
        ("two-part epoxy", 0.202, "thick"),
        ("two-part epoxy", 1.0, "thick"),
        ("cyanoacrylate", -0.1, "best"),
        ("cyanoacrylate", 0.05, "best"),
        ("cyanoacrylate", 0.06, "thick"),
        ("cyanoacrylate", 0.2, "thick"),
        ("cyanoacrylate", 0.2000001, "thick"),
        ("cyanoacrylate", 0.202, "not bridged"),
        ("cyanoacrylate", 0.25, "not bridged"),
        ("UV resin", 0.1, "best"),
        ("UV resin", 3.0, "thick"),
    ],
)
def test_bond_lines_of_the_trade_table(name: str, gap: float, becomes: str) -> None:
    assert glue.bond(gap, LINES[name]) == becomes


def test_between_starved_and_best_a_bond_line_is_thin() -> None:
    line = glue.BondLine(0.1, 0.2, least=0.05, most=0.5)
    found = [glue.bond(gap, line) for gap in (0.04, 0.05, 0.09, 0.1, 0.3, 0.6)]
    assert found == ["starved", "thin", "thin", "best", "thick", "not bridged"]


def test_which_adhesives_bridge_a_gap() -> None:
    assert glue.bridging(0.03, LINES) == ["cyanoacrylate", "UV resin"]
    assert glue.bridging(0.1, LINES) == ["UV resin", "two-part epoxy", "cyanoacrylate"]
    assert glue.bridging(0.15, LINES) == ["two-part epoxy", "cyanoacrylate", "UV resin"]
    assert glue.bridging(0.3, LINES) == ["UV resin", "two-part epoxy"]


@given(st.lists(st.floats(0, 1), min_size=4, max_size=4).map(sorted), st.floats(-0.5, 2))
def test_a_wider_gap_never_goes_back_to_an_earlier_state(limits: list[float], gap: float) -> None:
    least, low, high, most = limits
    line = glue.BondLine(low, high, least, most)
    order = ["starved", "thin", "best", "thick", "not bridged"]
    states = [order.index(glue.bond(gap + n * 0.05, line)) for n in range(40)]
    assert all(before <= after for before, after in pairwise(states))
    bridged = glue.bridging(gap, {"any": line})
    assert bool(bridged) == (glue.bond(gap, line) not in ("starved", "not bridged"))
