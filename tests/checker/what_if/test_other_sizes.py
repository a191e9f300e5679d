"""What else would do: the ends of a range hold, and a step beyond them a rule fails."""

from __future__ import annotations

from functools import cache

import pytest

from generated.plans import seeded
from running import SAMPLES, SHARED
from turns import some
from wellstrung.judging.checker import Checker
from wellstrung.plugins import host
from wellstrung.quantity.arithmetic import leaf
from wellstrung.testing.cases import changed
from wellstrung.what_if import other_sizes
from wellstrung.what_if.other_sizes import STEP, Substitute, _range_words
from wellstrung.what_if.unsettled import Unsettling

CHECKER = Checker(host.load(), keep=True)
COLLAR = (SHARED / "slack_tide_collar.yaml").read_text(encoding="utf-8")


@cache
def found(text: str, *names: str) -> list[Substitute]:
    return other_sizes.found(CHECKER.check_text(text), CHECKER, names).found


def spoken(text: str) -> set[str]:
    return {remark.rule for remark in CHECKER.check_text(text).remarks if remark.counts}


#: sizes of the collar as they are written, and how another one is
WRITTEN = {
    ("cap", "bore"): ("bore: 10 mm", "bore: {} mm"),
    ("cap", "depth"): ("depth: 7 mm", "depth: {} mm"),
    ("small", "outside"): (
        "small: {kind: jump ring, outside: 6 mm",
        "small: {{kind: jump ring, outside: {} mm",
    ),
    ("toggle", "bar length"): ("bar: {length: 24 mm", "bar: {{length: {} mm"),
}


@pytest.mark.parametrize(("part", "field"), WRITTEN)
def test_the_ends_hold_and_a_step_beyond_a_rule_speaks(part: str, field: str) -> None:
    (size,) = [one for one in found(COLLAR, part) if one.field == field]
    old, new = WRITTEN[part, field]
    assert size.low is not None and size.high is not None and size.works
    for end, way in ((size.low, -1), (size.high, 1)):
        assert not spoken(changed(COLLAR, {old: new.format(round(end, 3))}))
        assert spoken(changed(COLLAR, {old: new.format(round(end + way * STEP, 3))}))


def test_a_range_is_told_in_the_spelling_of_the_author() -> None:
    says = {one.field: one.says for one in found(COLLAR, "cap", "small")}
    assert says["bore"] == "bore 10..10.55 mm"
    assert says["wire"] == "wire 20..16 AWG"
    assert says["eye hole"] == "eye hole from 1.25 mm"


def test_a_size_that_does_not_do_is_told_with_what_the_rule_needs() -> None:
    tight = changed(COLLAR, {"bore: 10 mm": "bore: 6 mm"})
    (bore,) = [one for one in found(tight, "cap") if one.field == "bore"]
    assert not bore.works and bore.says.startswith("a bore of ")
    assert bore.low is None and bore.high is None


def test_what_is_wrong_already_does_not_spoil_the_other_sizes() -> None:
    tight = changed(COLLAR, {"bore: 10 mm": "bore: 6 mm"})
    others = [one for one in found(tight, "cap") if one.works]
    assert others and all(one.low != one.high for one in others)


RING = """\
plan: 1
title: Charm
piece: bracelet
beads: {pearl: 6 mm glass pearl}
parts:
  strand: {kind: strand, stitch: strung, beads: pearl, count: 30, thread: flexible wire 0.38 mm}
  charm: {kind: pendant, top_eyes: {count: 1, hole: 2 mm, wire: 0.8 mm}, height: 12 mm}
  ring: 5 mm jump ring 20 AWG
  small: 4 mm jump ring 18 AWG
run: [ring, strand, ring]
hung: [{part: charm, from: ring, by: small}]
"""


def test_sizes_of_a_ring_keep_to_every_rule_of_rings_and_far_beyond_double() -> None:
    """20 mm of 18 AWG opens by itself; double the size as written, 8 mm, does not."""
    (size,) = [one for one in found(RING, "small") if one.field == "outside"]
    assert size.says == "outside 3.9..9.95 mm"


@pytest.mark.parametrize(
    "ring", ["3 mm jump ring 18 AWG", "{kind: jump ring, size: 3 mm, wire: 18 AWG}"]
)
def test_a_ring_too_small_is_offered_in_no_size_that_leaves_no_inside(ring: str) -> None:
    small = changed(RING, {"4 mm jump ring 18 AWG": ring})
    assert [one for one in found(small, "small") if one.works] == []


def test_no_size_is_offered_where_another_would_answer_a_remark() -> None:
    """The wire is too thick for its inside: the remark is about the wire, and larger rings do."""
    stiff = changed(RING, {"4 mm jump ring 18 AWG": "5 mm jump ring 14 AWG"})
    assert "ring-gauge" in spoken(stiff)
    assert not [one for one in found(stiff, "small") if one.works and one.field == "outside"]


@pytest.mark.parametrize(
    ("low", "high", "unit", "says"),
    [
        (0.76, 1.36, "AWG", "20..16 AWG"),
        (0.80, 0.82, "AWG", "20 AWG"),
        (0.80, None, "AWG", "20 AWG or thicker"),
        (None, 1.36, "AWG", "16 AWG or thinner"),
        (0.90, 1.20, "SWG", "20..19 SWG"),
        (0.825, 0.83, "AWG", "0.82..0.83 mm"),
        (9.85, 10.7, "mm", "9.85..10.7 mm"),
        (9.851, None, "mm", "from 9.86 mm"),
        (9.854, 10.708, "mm", "9.86..10.7 mm"),
        (None, 10.7, "mm", "up to 10.7 mm"),
    ],
)
def test_a_range_in_words(low: float | None, high: float | None, unit: str, says: str) -> None:
    assert _range_words(low, high, leaf("size", 1.0, "mm", spelled_unit=unit)) == says


def test_a_tolerance_that_is_written_is_kept_while_the_size_moves() -> None:
    sure, unsure = (
        next(
            one
            for one in found(changed(COLLAR, {"bore: 10 mm": f"bore: 10.3 ± {by} mm"}), "cap")
            if one.field == "bore"
        )
        for by in ("0.01", "0.25")
    )
    assert sure.low is not None and unsure.low is not None
    assert sure.high is not None and unsure.high is not None
    assert sure.high - sure.low > unsure.high - unsure.low


def test_a_size_that_no_rule_looks_at_is_not_told() -> None:
    """A pendant's mass and how long a cap is, which only the whole piece's length depends on."""
    fields = {one.field for one in found(COLLAR, "cap", "frame")}
    assert "length" not in fields and "mass" not in fields


IN_A_PHRASE = """
plan: 1
title: Shell on a strand
piece: bracelet
beads: {pea: {type: other, outside: 6 mm, length: 6 mm, hole: 1 mm}}
parts:
  row: {kind: strand, stitch: strung, beads: pea, count: 30}
  ring: RING
  shell: {kind: charm, height: 14 mm, top_eyes: {count: 1, hole: 1.6 mm, wire: 1 mm, opens: no}}
run: [row]
run_is: loop
hung: [ring from row, shell from ring]
"""


@pytest.mark.parametrize(
    "ring",
    [
        "6 mm jump ring 18 AWG",
        "6 mm jump ring, wire 18 AWG",
        "{kind: jump ring, outside: 6 mm, wire: 18 AWG, closing: open}",
    ],
)
def test_a_gauge_is_tried_in_a_phrase_as_in_a_field(ring: str) -> None:
    says = {one.says for one in found(IN_A_PHRASE.replace("RING", ring), "ring")}
    assert says == {"wire 20..16 AWG", "outside 3.8..9.95 mm"}


def test_only_parts_that_are_asked_for_are_told() -> None:
    assert found(COLLAR) == []
    assert {one.part for one in found(COLLAR, "cap")} == {"cap"}


def test_a_plan_that_is_not_understood_has_none() -> None:
    assert other_sizes.found(CHECKER.check_text("plan: 1"), CHECKER, ("cap",)).found == []


CLASS = SAMPLES / "class"
EITHER_WAY = {
    "collar": COLLAR,
    "a size that rules need": changed(COLLAR, {"bore: 10 mm": "bore: 6 mm"}),
    "bars and links": (CLASS / "lowena_bar_bracelet.yaml").read_text(encoding="utf-8"),
    "pearls": (CLASS / "massen_pearl_strand.yaml").read_text(encoding="utf-8"),
    "earrings": (CLASS / "elowen_earrings.yaml").read_text(encoding="utf-8"),
    **{f"by chance {number}": text for number, text in enumerate(seeded(5, seed=3))},
}


@pytest.mark.parametrize("name", some([*EITHER_WAY], 2))
def test_what_depends_on_a_size_alone_is_enough_to_judge(
    name: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The same ranges as by reading every changed text as a plan of its own."""
    result = CHECKER.check_text(EITHER_WAY[name])
    assert result.ask is not None
    names = set(result.ask.plan.parts)
    short, asked = other_sizes.found(result, CHECKER, names), []

    def none(_: Unsettling, *size: object) -> None:
        asked.append(size)

    monkeypatch.setattr(Unsettling, "of", none)
    assert other_sizes.found(result, CHECKER, names) == short
    assert asked or not short.found


@pytest.mark.parametrize("text", ["cap", "small", "toggle"])
def test_every_size_of_a_part_has_a_short_way(text: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """So no size of a ring or a finding is looked at before rules are asked."""

    def read(*_: object) -> None:
        raise AssertionError("a changed text was read as a plan of its own")

    monkeypatch.setattr(Checker, "raised_about", read)
    assert found.__wrapped__(COLLAR, text)


def test_a_search_that_stops_says_so(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(other_sizes, "MOST_READ", 20 * len(COLLAR))
    sizes = other_sizes.found(CHECKER.check_text(COLLAR), CHECKER, {"cap", "small"})
    assert sizes.stopped and "not every size was tried" in sizes.note
