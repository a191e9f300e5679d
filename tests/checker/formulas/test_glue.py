"""Glue: volumes by layers and by counting cubes, mixes by doing one joint after another."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from wellstrung.formulas import glue

sizes = st.floats(1.0, 20.0)
room = st.floats(0.0, 3.0)
depths = st.floats(0.1, 15.0)
more = st.floats(0.01, 2.0)
temperatures = st.floats(0.0, 50.0)
times = st.floats(0.5, 5000.0)


@given(sizes, room)
def test_the_gap_by_laying_wall_gap_end_gap_wall_along_a_line(end: float, gap: float) -> None:
    bore = end + 2 * gap
    assert gap + end + gap == pytest.approx(bore)
    assert glue.gap(bore, end) == pytest.approx(gap, abs=1e-6)


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


@given(st.integers(1, 60), st.integers(1, 20), st.integers(0, 10))
def test_joints_in_a_mix_by_doing_them_one_by_one(usable: int, each: int, mixing: int) -> None:
    done, clock = 0, mixing
    while clock + each <= usable:
        done, clock = done + 1, clock + each
    # in tenths of a minute, so that times are not whole
    assert glue.joints_in_a_mix(usable / 10, each / 10, mixing / 10) == done


def test_a_joint_that_ends_with_the_usable_time_counts() -> None:
    """(2 - 0.6) / 0.2 is 7, and floats make it a little less."""
    assert (2 - 0.6) // 0.2 < 7
    assert glue.joints_in_a_mix(usable=2, each=0.2, mixing=0.6) == 7


def test_a_joint_takes_some_time() -> None:
    with pytest.raises(ValueError, match="a joint takes some time, not 0 min"):
        glue.joints_in_a_mix(5, 0)


@given(temperatures, temperatures, times)
def test_colder_is_slower(one: float, other: float, stated: float) -> None:
    colder, warmer = sorted((one, other))
    assert glue.cure_at(colder, stated) >= glue.cure_at(warmer, stated)
    assert glue.cure_at(one, stated) < glue.cure_at(one, stated + 1)


@given(temperatures, times)
def test_how_warm_and_how_long_belong_together(temperature: float, stated: float) -> None:
    takes = glue.cure_at(temperature, stated)
    assert glue.cure_at(25, stated) == pytest.approx(stated)
    assert 25 + 10 * math.log2(stated / takes) == pytest.approx(temperature, abs=1e-6)


@given(temperatures, times, st.floats(15, 30), st.floats(5, 15))
def test_another_room_and_another_step(
    temperature: float, stated: float, room: float, step: float
) -> None:
    """One step colder than stated takes twice as long, whatever the step and the room."""
    rates = {"stated_at": room, "degrees_to_double": step}
    assert glue.cure_at(room, stated, **rates) == pytest.approx(stated)
    assert glue.cure_at(room - step, stated, **rates) == pytest.approx(2 * stated)
    takes = glue.cure_at(temperature, stated, **rates)
    assert room + step * math.log2(stated / takes) == pytest.approx(temperature, abs=1e-6)


@pytest.mark.parametrize("temperature", [-0.1, 50.1, math.nan, math.inf])
def test_outside_the_published_range_there_is_no_answer(temperature: float) -> None:
    with pytest.raises(ValueError, match="is not known here, only from 0 to 50 °C"):
        glue.cure_at(temperature, 60)
