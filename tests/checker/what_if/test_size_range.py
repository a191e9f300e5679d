"""A plan over a range of sizes: each is checked as a plan of its own."""

from __future__ import annotations

import pytest

from running import SAMPLES, SHARED
from wellstrung.judging.checker import Checker
from wellstrung.plugins import host
from wellstrung.testing.cases import changed
from wellstrung.what_if import size_range
from wellstrung.what_if.size_range import NoSizes, Sizes

HOST = host.load()
KEEPS = Checker(HOST, keep=True)
COLLAR = (SHARED / "slack_tide_collar.yaml").read_text(encoding="utf-8")
FILLS = changed(COLLAR, {"length: 39.7 cm": "length: fills the rest"})


def over(text: str, *ends: str | None) -> Sizes:
    return size_range.over(KEEPS.check_text(text), HOST, *ends)


def refusal(text: str, *ends: str | None) -> str:
    with pytest.raises(NoSizes) as why:
        over(text, *ends)
    return str(why.value)


def test_the_rope_takes_up_the_difference() -> None:
    found = over(FILLS, "40 cm", "50 cm", "5 cm")
    assert [size.text for size in found.sizes] == ["40 cm", "45 cm", "50 cm"]
    lengths = [size.length for size in found.sizes]
    assert lengths[0] is not None and lengths[2] is not None
    assert lengths[2] - lengths[0] == pytest.approx(100)
    for size in found.sizes:
        assert size.length is not None and size.rounds == pytest.approx(size.length / 1.5)
    assert (found.part, found.field, found.moves) == ("rope", "finished_length", "neck")


def test_beads_packs_and_thread_follow_and_chain_stays() -> None:
    small, large = over(FILLS, "40 cm", "70 cm", "30 cm").sizes
    for name, grows in (("kelp", True), ("line", True), ("bar chain", False), ("small", False)):
        before, after = (
            next(line for line in size.lines if line.name == name) for size in (small, large)
        )
        assert (after.need.middle > before.need.middle) is grows, name
    kelp = next(line for line in large.lines if line.name == "kelp")
    assert kelp.need.middle == pytest.approx((large.length or 0) / 1.5 * 5)
    assert kelp.packs == 4


def test_three_sizes_to_each_side_where_none_are_named() -> None:
    found = over(FILLS)
    assert [size.text for size in found.sizes] == [
        "38.5 cm", "41 cm", "43.5 cm", "46 cm", "48.5 cm", "51 cm", "53.5 cm",
    ]  # fmt: skip
    assert [size.own for size in found.sizes].index(True) == 3


def test_inches_go_by_inches() -> None:
    inches = changed(FILLS, {"finished_length: 46 cm ± 1 cm": "finished_length: 18 in ± 1/2 in"})
    assert [size.text for size in over(inches).sizes][:2] == ["15 in", "16 in"]


def test_a_bracelet_goes_by_the_centimetre_and_inside() -> None:
    cuff = (SAMPLES / "breakwater_cuff.yaml").read_text(encoding="utf-8")
    found = over(changed(cuff, {"length: 17.1 cm": "length: fills the rest"}))
    assert [size.text for size in found.sizes][2:5] == ["17.2 cm", "18.2 cm", "19.2 cm"]
    assert (found.field, found.moves) == ("inside", "wrist")


def test_what_breaks_is_what_the_plan_does_not_have_at_its_own_size() -> None:
    found = over(FILLS, "46 cm", "90 cm", "44 cm")
    own, long = found.sizes
    assert own.own and own.breaks == ()
    assert [(remark.rule, remark.level) for remark in long.breaks] == [("beads-enough", "error")]
    assert long.errors == 1


def test_the_wearers_neck_moves_with_the_length_so_that_the_ease_stays() -> None:
    found = over(FILLS, "36 cm", "56 cm", "10 cm")
    assert all(remark.rule != "wearer-fit" for size in found.sizes for remark in size.breaks)
    pinned = changed(FILLS, {"wearer: {age: adult, neck: 36 cm}": "wearer: {age: adult}"})
    assert over(pinned).moves is None


def test_a_remark_that_the_plan_has_anyway_is_none_of_a_size() -> None:
    wrong = changed(FILLS, {"bore: 10 mm": "bore: 6 mm"})
    found = over(wrong, "46 cm", "51 cm", "5 cm")
    assert all(size.errors == 1 and size.breaks == () for size in found.sizes)


def test_where_nothing_fills_the_rest_the_part_to_change_is_named() -> None:
    assert refusal(COLLAR) == (
        "no part of plan.yaml fills the rest: write `length: fills the rest` for"
        " `length: 39.7 cm` of `rope` (line 20)"
    )
    strand = (SAMPLES / "sounding_line_strand.yaml").read_text(encoding="utf-8")
    assert "for `count: 49` of `strand` (line 19)" in refusal(strand)


@pytest.mark.parametrize(
    ("ends", "says"),
    [
        (("50 cm", "40 cm"), "--from 50 cm is longer than --to 40 cm"),
        ((None, "10 cm"), "--from 38.5 cm is longer than --to 10 cm"),
        (("40",), "--from: a length needs a unit: write `40 mm` or `40 cm`"),
        (("40..50 cm",), "--from: `40..50 cm` is a range: write one length"),
        (
            ("1 cm", "10 m", "1 mm"),
            "these are 9991 sizes: take a longer --step, for at most 60",
        ),
    ],
)
def test_a_slip_in_a_range_is_told(ends: tuple[str | None, ...], says: str) -> None:
    assert refusal(FILLS, *ends) == says


def test_a_plan_that_is_not_understood_has_no_sizes() -> None:
    assert refusal("plan: 1") == (
        "plan.yaml cannot be read: `wellstrung check` shows what is wrong"
    )


def test_strands_side_by_side_take_up_no_difference() -> None:
    strands = (SAMPLES / "ebb_line_three_strand.yaml").read_text(encoding="utf-8")
    assert refusal(strands) == (
        "no rope, band, braid or strand of plan.yaml has a place of its own in the run, where it"
        " could fill the rest"
    )


def test_a_plan_without_a_length_wanted_is_told_what_to_write() -> None:
    earrings = (SAMPLES / "spindrift_earrings.yaml").read_text(encoding="utf-8")
    assert refusal(earrings) == (
        "plan.yaml gives no length for the piece: write `finished_length: ...` or `inside: ...`"
    )
