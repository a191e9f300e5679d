"""What is on hand, what the kits of a class take of it, and what is left; what a bag says."""

from __future__ import annotations

import pytest

from pages import keeper
from running import SHARED
from wellstrung.lists import stock
from wellstrung.lists.kit import kit
from wellstrung.model.plan import Quantities

COLLAR = (SHARED / "slack_tide_collar.yaml").read_text(encoding="utf-8")
CHAIN = "  - {chain: bar chain, length: 50 cm}\n"
TWO_THREADS = """\
plan: 1
title: Two threads
piece: bracelet
beads: {gull: {type: round, size: 8/0, make: Japanese}}
parts:
  one: {kind: strand, stitch: strung, beads: gull, count: 40, thread: {type: silk, size: "2"}}
  two: {kind: strand, stitch: strung, beads: gull, count: 6, thread: {spool: line}}
  line: {kind: thread, type: nylon, size: D, length: 45 m}
run: [one, two]
supplies:
  - {thread: line, spools: 2}
  - {bead: gull, pack_of: 300}
"""


def asked(text: str) -> Quantities:
    ask = keeper().check_text(text).ask
    assert ask is not None
    return ask.quantities


def on_hand(text: str) -> list[tuple[str, ...]]:
    """Of each thing: its name, what the kits of two makers take, had, left and short, in words."""
    ask = asked(text)
    return [
        (one.name, *map(one.shown, (one.takes, one.had, one.left, one.short)))
        for one in stock.taken(ask, kit(ask), 2)
    ]


def test_two_kits_take_from_each_thing_on_hand() -> None:
    # 7 pieces of 6 links a maker: four come out of 30 cm, the others out of one of two 50 cm
    text = COLLAR.replace(CHAIN, f"{CHAIN.replace('50', '30')}{CHAIN[:-2]}, pieces: 2}}\n")
    assert on_hand(text) == [
        ("kelp", "96.8 g", "60 g", "none", "36.8 g"),
        ("carrier", "4", "2", "0", "2"),
        ("small", "30", "20", "0", "10"),
        ("line", "21.31 m", "45 m", "23.68 m", "none"),
        ("bar chain", "68.8 cm", "1.3 m", "61.2 cm", "none"),
    ]
    ask = asked(text)
    *_, chain = stock.taken(ask, kit(ask), 2)
    short, long = chain.lines
    assert (short.full, short.left_loose, short.opened) == (0, 0, ())
    assert (long.full, long.left_loose, [round(rest, 6) for rest in long.opened]) == (1, 0, [112])


def test_a_thread_without_a_spool_of_its_own_hides_no_other() -> None:
    assert on_hand(TWO_THREADS) == [
        ("gull", "100", "300", "200", "0"),
        ("line", "72.5 cm", "90 m", "89.27 m", "none"),
    ]


@pytest.mark.parametrize(
    ("count", "measured"),
    [(6, "count 50"), (7, "count 51, or string 11.9 cm"), (40, "weigh 2.9 g")],
)
def test_few_beads_are_counted_and_many_weighed(count: int, measured: str) -> None:
    (bag,) = kit(asked(TWO_THREADS.replace("count: 6,", f"count: {count},"))).bags
    assert bag.measured == measured


@pytest.mark.parametrize(("text", "up_to"), [(COLLAR, 495), (TWO_THREADS, None)])
def test_a_bag_serves_up_to_a_size_that_is_a_half_centimetre(text: str, up_to: int | None) -> None:
    (bag,) = kit(asked(text)).bags
    assert bag.up_to == up_to


LOTS = """\
plan: 1
title: Lots
piece: bracelet
beads: {gull: {type: bicone, size: 4 mm, make: Czech}}
parts: {one: {kind: strand, stitch: strung, beads: gull, count: 37, thread: silk No. 2}}
run: [one]
supplies: []
"""


@pytest.mark.parametrize(
    ("lines", "makers", "dealt", "left"),
    [
        # whole kits of one lot, in the order of the lines
        ("100 L7, 48 L9", 3, [(2, {"L7": 37}), (1, {"L9": 37})], {"L7": 26, "L9": 11}),
        ("74 L7, 48 L9", 2, [(2, {"L7": 37})], {"L7": 0, "L9": 48}),
        ("36 L7, 37 L9", 1, [(1, {"L9": 37})], {"L7": 36, "L9": 0}),
        # two lines of one lot are one lot
        ("20 L7, 48 L9, 20 L7", 1, [(1, {"L7": 37})], {"L7": 3, "L9": 48}),
        # mixed only where no lot is enough for a kit
        ("30 L7, 20 L9", 1, [(1, {"L7": 30, "L9": 7})], {"L7": 0, "L9": 13}),
        ("100 L7, 48 L9", 4, [(2, {"L7": 37}), (1, {"L9": 37}), (1, {"L7": 26, "L9": 11})],
         {"L7": 0, "L9": 0}),
        # a lot that is a number is its text
        ("36 12.10, 37 12.1", 1, [(1, {"12.1": 37})], {"12.10": 36, "12.1": 0}),
        ("20 401, 20 401", 1, [(1, {"401": 37})], {"401": 3}),
        # what is bought is another lot
        ("37 L7", 3, [(1, {"L7": 37}), (2, {"what is bought": 37})], {"L7": 0}),
        ("30 L7", 1, [(1, {"L7": 30, "what is bought": 7})], {"L7": 0}),
    ],
)  # fmt: skip
def test_a_kit_is_of_one_lot_while_one_is_enough(
    lines: str, makers: int, dealt: list[tuple[int, dict[str, int]]], left: dict[str, int]
) -> None:
    held = (one.split() for one in lines.split(", "))
    supplies = ", ".join(f"{{bead: gull, count: {count}, lot: {lot}}}" for count, lot in held)
    ask = asked(LOTS.replace("[]", f"[{supplies}]"))
    (found,) = stock.taken(ask, kit(ask), makers)
    assert [(share.kits, share.of) for share in found.shares] == dealt
    assert found.lots == left
    assert found.had - found.left + found.short == found.takes == 37 * makers


@pytest.mark.parametrize("line", ["sold_as: tube, packs: 2", "pack: 5 g}, {bead: gull, count: 9"])
def test_what_is_not_known_to_be_on_hand_is_not_said_to_be_none(line: str) -> None:
    ask = asked(LOTS.replace("[]", f"[{{bead: gull, {line}}}]"))
    assert stock.taken(ask, kit(ask), 1) == []


def test_beads_without_a_lot_are_not_dealt() -> None:
    ask = asked(LOTS.replace("[]", "[{bead: gull, count: 40}, {bead: gull, count: 40}]"))
    (found,) = stock.taken(ask, kit(ask), 2)
    assert (found.shares, found.left, found.short) == ((), 6, 0)
