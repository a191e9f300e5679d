"""The cutting list: links counted along a chain that is written out, and lengths by hand."""

from __future__ import annotations

from itertools import pairwise
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from running import ROOT, SAMPLES, SHARED
from wellstrung.formulas.chain import length_of, links_from, numbered, piece
from wellstrung.formulas.chain_cutting import laid_out, pieces_had
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import understood
from wellstrung.lists import cutting, shopping
from wellstrung.lists.cutting import Bar, CutList, Lengths
from wellstrung.plugins import host
from wellstrung.testing.cases import changed

KEEPS = Checker(host.load(), keep=True)
COLLAR = (ROOT / "tests" / "rules" / "collar.yaml").read_text(encoding="utf-8")


def listed(text: str, makers: int = 1) -> CutList:
    result = KEEPS.check_text(text)
    assert result.ask is not None, [remark.says for remark in result.remarks]
    return cutting.listed(understood([result]), makers)


def of_file(path: Path) -> CutList:
    return cutting.listed(understood([KEEPS.check_file(path)]))


def bars(text: str, makers: int = 1) -> tuple[Bar, ...]:
    (chain,) = listed(text, makers).chains
    return chain.bars


def cut_of(part: str, found: CutList) -> Lengths:
    (one,) = [one for one in found.lengths if one.part == part]
    return one


def test_the_collar_is_cut_every_seventh_link_and_every_second_piece_turned() -> None:
    (chain,) = listed(COLLAR).chains
    (bar,) = chain.bars
    assert [(one.first, one.last) for one in bar.pieces] == [
        (7 * n + 1, 7 * n + 6) for n in range(7)
    ]
    assert [one.turned for one in bar.pieces] == [False, True] * 3 + [False]
    assert [one.how for one in bar.pieces[:2]] == [
        "cut through link 7",
        "cut through link 14",
    ]
    assert bar.pieces[-1].how == "cut through link 49"
    assert bar.written == "45 cm" and bar.begins_with == "loop" and bar.lost == 6
    assert bar.left == pytest.approx(450 - 332.8 - 3.4)
    # of every link lost, the inside but for the walls of the pieces beside it
    assert bar.lost_length == pytest.approx(3 * (3.4 + 10.4 - 2 * 1.6) + 3.4)
    assert chain.when == "now" and chain.pieces == (("drop", 7),)


def test_a_chain_that_opens_loses_no_link() -> None:
    (bar,) = bars(COLLAR.replace("links_are: soldered", "links_are: open"))
    assert [one.how for one in bar.pieces[:2]] == ["open link 7", "open link 13"]
    assert bar.lost == 0


def test_links_that_are_skipped_in_an_open_chain_are_left_over() -> None:
    opened = COLLAR.replace("links_are: soldered", "links_are: open")
    (bar,) = bars(changed(opened, {"ends_with: bar, links: 6": "links: 5"}))
    assert bar.pieces[0].how == "open links 6 and 7, link 6 left over"


def test_several_links_that_are_skipped_are_told_from_first_to_last() -> None:
    opened = COLLAR.replace("links_are: soldered", "links_are: open")
    three = {
        "pattern: [loop, bar]": "pattern: [loop, bar, bar]",
        "ends_with: bar, links: 6": "links: 4",
    }
    (bar,) = bars(changed(opened, three))
    assert bar.pieces[0].how == "open links 5 and 7, links 5..6 left over"


def test_of_three_lost_links_the_middle_one_falls_away() -> None:
    longer = {
        "pattern: [loop, bar]": "pattern: [loop, bar, bar, bar]",
        "ends_with: bar, links: 6": "links: 5",
        "45 cm": "90 cm",
    }
    (bar,) = bars(changed(COLLAR, longer))
    assert bar.pieces[0].how == "cut through links 6 and 8, link 7 falls away"


def test_a_length_that_ends_with_its_last_piece_is_not_cut_there() -> None:
    sure = {
        "loop: {length: 5 mm, width: 4.4 mm, wire: 0.8": "loop: {length: 5 ± 0.001 mm, width: 4.4"
        " mm, wire: 0.8 ± 0.001",
        "bar: {length: 12 mm, width: 3 mm, wire: 0.8": "bar: {length: 12 ± 0.001 mm, width: 3 mm,"
        " wire: 0.8 ± 0.001",
        "chain: bar chain, length: 45 cm": "chain: bar chain, length: 333 mm",
    }
    (bar,) = bars(changed(COLLAR, sure))
    assert bar.pieces[-1].how == "the chain ends here" and bar.left == 0


def with_chain(*lengths: str) -> str:
    """The collar with these lengths of chain on hand."""
    lines = "\n".join(f"  - {{chain: bar chain, length: {length}}}" for length in lengths)
    return changed(COLLAR, {"  - {chain: bar chain, length: 45 cm}": lines})


def test_as_little_chain_as_can_be_is_cut_into() -> None:
    """Ends are used up where they give every piece, and stay whole where a length has to be cut."""
    (chain,) = listed(with_chain("45 cm", "11 cm, pieces: 2")).chains
    assert [(bar.written, len(bar.pieces)) for bar in chain.bars] == [("45 cm", 7)]
    assert chain.untouched == (110.0, 110.0)
    (chain,) = listed(with_chain("45 cm", "11 cm, pieces: 4")).chains
    assert [(bar.written, len(bar.pieces)) for bar in chain.bars] == [
        ("11 cm", 2), ("11 cm", 2), ("11 cm", 2), ("11 cm", 1),
    ]  # fmt: skip
    assert chain.untouched == (450.0,) and (chain.more, chain.less) == (0, 0.0)


def test_what_is_not_on_hand_is_cut_from_a_length_to_buy() -> None:
    found = bars(changed(COLLAR, {"length: 45 cm": "length: 11 cm"}))
    assert [(bar.written, bar.length, len(bar.pieces)) for bar in found] == [
        ("11 cm", 110.0, 2), ("", 240.0, 5),
    ]  # fmt: skip


def test_a_length_that_nothing_is_cut_from_stays_whole() -> None:
    lines = "chain: bar chain, length: 45 cm}\n  - {chain: bar chain, length: 3 cm}"
    (chain,) = listed(changed(COLLAR, {"chain: bar chain, length: 45 cm}": lines})).chains
    assert chain.untouched == (30.0,)


def test_a_class_cuts_for_all_its_makers() -> None:
    found = bars(COLLAR, makers=3)
    assert sum(len(bar.pieces) for bar in found) == 21


@settings(max_examples=60)
@given(
    st.lists(st.sampled_from(["loop", "bar", "bead"]), min_size=1, max_size=3, unique=True),
    st.lists(st.tuples(st.integers(0, 2), st.integers(1, 6)), min_size=1, max_size=6),
    st.lists(st.floats(10, 150), min_size=1, max_size=3),
    st.booleans(),
)
def test_pieces_as_numbered_are_there_on_a_chain_written_out(
    pattern: list[str], wanted: list[tuple[int, int]], lengths: list[float], soldered: bool
) -> None:
    insides, wires = {"loop": 3.4, "bar": 10.4, "bead": 6.0}, dict.fromkeys(pattern, 0.8)
    pieces = [piece(pattern, pattern[first % len(pattern)], count) for first, count in wanted]
    laid = laid_out(lengths, pattern, pieces, insides, wires, soldered=soldered)
    assert sum(map(len, laid)) == pieces_had(
        lengths, pattern, pieces, insides, wires, soldered=soldered
    )
    assert len({number for one in laid for number in one}) == sum(map(len, laid))
    for length, one in zip(lengths, laid, strict=True):
        if not one:
            continue
        chosen = [pieces[number] for number in one]
        places = numbered(pattern, chosen, soldered=soldered)
        along = links_from(pattern, chosen[0][0])
        chain = [next(along) for _ in range(places[-1].stop)]
        assert places[0].start == 1
        for place, links in zip(places, chosen, strict=True):
            there = [chain[number - 1] for number in place]
            assert links in (there, there[::-1])
        for before, after in pairwise(places):
            assert after.start - before.stop >= (1 if soldered else 0)
        assert length_of(chain[: places[-1].stop - 1], insides, wires) <= length + 1e-5


def test_spans_of_a_bar_lie_end_to_end() -> None:
    (bar,) = bars(COLLAR)
    spans = list(cutting.spans(bar))
    assert spans[0][1] == 0 and spans[-1][2] == bar.length
    assert all(before[2] == pytest.approx(after[1]) for before, after in pairwise(spans))
    assert [what for what, _, _ in spans].count("piece") == 7


def test_threads_of_a_working_length_with_their_tails() -> None:
    one = cut_of("rope", of_file(SHARED / "slack_tide_collar.yaml"))
    path = 397 / 1.5 * 5 * (2 * 2.1 + 0.5 * 3.0)
    assert (one.what, one.length) == ("thread", 1800.0)
    assert one.count == -(-path // 1400) and one.most > one.count


def test_a_strand_is_strung_on_one_line() -> None:
    found = of_file(SAMPLES / "ebb_line_three_strand.yaml")
    assert [(one.part, one.count, one.length) for one in found.lengths] == [
        ("inner", 1, 440 + 240), ("middle", 1, 465 + 240), ("outer", 1, 490 + 240),
        ("link", 2, 90),
    ]  # fmt: skip
    assert cut_of("link", found).notes == ("27 mm of it in each loop",)


def test_the_cords_of_a_braid_are_cut_alike() -> None:
    one = cut_of("braid", of_file(SAMPLES / "hawser_braid.yaml"))
    assert (one.what, one.count) == ("cord", 8)
    assert one.length == pytest.approx(602, abs=1)
    result = KEEPS.check_file(SAMPLES / "hawser_braid.yaml")
    assert cut_of("braid", cutting.listed(understood([result]), 3)).count == 24


def test_both_of_a_pair_are_cut_for() -> None:
    found = of_file(SAMPLES / "spindrift_earrings.yaml")
    assert cut_of("panel", found).count == 2 and cut_of("drip leg", found).count == 2


def test_a_core_waits_until_the_rope_is_measured() -> None:
    cored = changed(
        COLLAR,
        {
            "    length: 39.7 cm\n": "    length: 39.7 cm\n    core: cord\n",
            "  cap: {": "  cord: {kind: core, outside: 3 mm}\n  cap: {",
        },
    )
    one = cut_of("cord", listed(cored))
    assert (one.what, one.length, one.when) == ("core", 397.0, "after measuring")


def test_chain_that_runs_on_from_a_rope_waits_until_the_rope_is_measured() -> None:
    run = changed(COLLAR, {"rope, cap, {part: small, linked: 4}": "rope, cap, small, drop, small"})
    (chain,) = listed(run).chains
    assert chain.when == "after measuring" and chain.pieces == (("drop", 8),)


def test_a_loom_has_warps_beside_its_weft() -> None:
    cuff = (SAMPLES / "breakwater_cuff.yaml").read_text(encoding="utf-8")
    loomed = changed(cuff, {"stitch: flat peyote": "stitch: loom"})
    found = [one for one in listed(loomed).lengths if one.part == "band"]
    assert [one.what for one in found] == ["warp", "thread"]
    assert (found[0].count, found[0].length) == (15, 171 + 550)
    # the weft alone: 2 (l + 0.2 mm) for each of 14 beads in 82 rows, a metre to each thread
    assert (found[1].count, found[1].most, found[1].length) == (4, 5, 1600)


def test_what_cannot_be_worked_out_is_named() -> None:
    taught = (SHARED / "slack_tide_collar.yaml").read_text(encoding="utf-8")
    found = listed(changed(taught, {"make: Japanese, ": ""}))
    assert found.lengths == () and len(found.chains) == 1
    assert found.missing == ("`rope` of Slack Tide collar needs `make` of `kelp`",)


def test_more_chain_than_anyone_cuts_is_listed_and_not_laid_out() -> None:
    found = listed(COLLAR, makers=1000)
    assert found.chains == ()
    assert found.missing == ("`bar chain` needs fewer than 20000 links to be cut from `bar chain`",)


@pytest.mark.parametrize(
    ("tail", "long"),
    [
        # 14 beads that sit 1 % apart, and at each end 80 mm to slide on, a knot of four turns round
        # two cords of 1 mm, and 5 cm to hold
        ("", 14 * 8 * 1.01 + 2 * (80 + 4 * 8.28 + 5 + 50)),
        (", tail: 20 cm", 14 * 8 * 1.01 + 2 * 200),
    ],
)
def test_cord_of_sliding_knots_is_cut_with_what_they_take(tail: str, long: float) -> None:
    plan = f"""\
plan: 1
title: Sliding bracelet
piece: bracelet
beads:
  stone: {{type: other, outside: 8 mm, length: 8 mm, hole: 1.5 mm, per_gram: 1}}
parts:
  row:
    {{kind: strand, stitch: strung, beads: stone, count: 14,
     thread: {{type: waxed cotton, outside: 1 mm{tail}}}}}
  slider: {{kind: clasp, type: sliding knots, sliding: {{ends: 8 cm}}}}
run: [slider.a, row, slider.b]
"""
    assert cut_of("row", listed(plan)).length == pytest.approx(long, rel=1e-3)


def test_the_cord_of_one_sliding_knot_is_bought_with_that_of_the_strand() -> None:
    plan = """\
plan: 1
title: Sliding bracelet
piece: bracelet
beads:
  stone: {type: other, outside: 8 mm, length: 8 mm, hole: 1.5 mm, per_gram: 1}
parts:
  row: {kind: strand, stitch: strung, beads: stone, count: 14, thread: waxed cotton 1 mm}
  slider: {kind: clasp, type: sliding knots, sliding: {ends: 8 cm, knots: 1}}
run: [slider.a, row, slider.b]
"""
    result = KEEPS.check_text(plan)
    assert result.ask is not None
    [line] = [one for one in shopping.needed([result.ask.quantities]) if one.group == "thread"]
    ask = result.ask.quantities
    both = ask.get("row.thread_in_all").middle + ask.get("slider.cord").middle
    assert line.need.middle == pytest.approx(both) and ask.get("slider.cord").middle > 100


def test_a_strand_that_meets_the_knots_by_one_end_leaves_their_cord_there_alone() -> None:
    plan = """\
plan: 1
title: Half sliding bracelet
piece: bracelet
beads: {stone: {type: other, outside: 8 mm, length: 8 mm, hole: 1.5 mm, per_gram: 1}}
parts:
  row:
    {kind: strand, stitch: strung, beads: stone, count: 14,
     thread: {type: waxed cotton, outside: 1 mm}}
  other:
    {kind: strand, stitch: strung, beads: stone, count: 2,
     thread: {type: waxed cotton, outside: 1 mm}}
  ring: {kind: jump ring, outside: 8 mm, wire: 1 mm, closing: soldered}
  slider: {kind: clasp, type: sliding knots, sliding: {ends: 8 cm}}
run: [slider.a, row, ring, other, slider.b]
"""
    knots, usual = 80 + 4 * 8.28 + 5 + 50, 175
    cut = cut_of("row", listed(plan))
    assert cut.length == pytest.approx(14 * 8 * 1.01 + knots + usual, rel=1e-3)


def test_memory_wire_is_cut_with_the_loops_at_its_ends() -> None:
    """By hand: 3 x pi x 60.6 mm of coils, and pi x (2.5 + 0.6 mm) in each of two loops."""
    piece = (ROOT / "tests" / "ordinary" / "memory_wire_in_words.yaml").read_text(encoding="utf-8")
    (one,) = listed(piece).lengths
    assert one.length == pytest.approx(571.1 + 2 * 9.74, abs=0.1)
    assert one.notes == ("a loop of 10 mm at both ends included",)


def test_memory_wire_in_half_drilled_balls_is_cut_as_deep_as_they_are_drilled() -> None:
    piece = (ROOT / "tests" / "ordinary" / "memory_wire_balls.yaml").read_text(encoding="utf-8")
    (one,) = listed(piece).lengths
    assert one.length == pytest.approx(571.1 + 2 * 2.0, abs=0.1)
    assert one.notes == ("a length of 2 mm at both ends, in `ball`, included",)
