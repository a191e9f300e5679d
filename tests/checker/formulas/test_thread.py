"""Thread per bead, by walking a thread through a model bead by bead, in the published order.

The formulas are held against thread drawn taut and a third of the way to loose, narrow and wide
(`walks`); nets, units and chains have a module of their own.
"""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Callable
from dataclasses import dataclass
from functools import partial

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import minimize

from turns import some
from walks import ALONG, BEADS, THREAD, UP, Bead, Floats, Point, Walk, held, loop_of, to_and_fro
from wellstrung.formulas import thread, thread_turns
from wellstrung.stitches import right_angle
from wellstrung.stitches.brick import BRICK
from wellstrung.stitches.flat_peyote import FLAT_PEYOTE
from wellstrung.stitches.ladder import LADDER
from wellstrung.stitches.loom import LOOM, weft_per_bead
from wellstrung.stitches.right_angle import RIGHT_ANGLE
from wellstrung.stitches.square import SQUARE
from wellstrung.stitches.tubular_herringbone import HERRINGBONE


def peyote(bead: Bead, columns: int = 12, rows: int = 12, up: int = 1) -> tuple[Walk, int]:
    """Even flat peyote: each row adds `up` beads to every other step, through those between.

    Columns a twentieth more than a bead apart, rows half a bead.
    """
    walk, added = Walk(bead), 0
    for row in range(rows):
        for number, column in enumerate(to_and_fro(columns, row)):
            height = row if number // up % 2 == 0 else row - 1
            middle = (column * 1.05 * bead.length, height * bead.outside / 2, 0.0)
            walk.through((column, height), middle, ALONG, 1 if row % 2 else -1)
            added += number // up % 2 == 0
    return walk, added


def on_a_ring(bead: Bead, around: int, column: int, height: float) -> tuple[Point, Point]:
    """Middle and direction of a bead that lies along the side of a polygon about a tube."""
    turn = 2 * math.pi * column / around
    radius = 1.05 * bead.length / 2 / math.tan(math.pi / around)
    middle = (radius * math.cos(turn), height, radius * math.sin(turn))
    return middle, (-math.sin(turn), 0.0, math.cos(turn))


def tubular_peyote(bead: Bead, around: int = 12, rounds: int = 12) -> tuple[Walk, int]:
    """Even tubular peyote: a bead over every other column, then up through the first again."""
    walk, column = Walk(bead), 0
    for row in range(rounds):
        for number in range(around + 1):
            height = row if number % 2 == 0 else row - 1
            spot = on_a_ring(bead, around, column + number, height * bead.outside / 2)
            walk.through(((column + number) % around, height), *spot, 1)
        column += around + 1
    return walk, rounds * around // 2


def tubular_square(bead: Bead, around: int = 8, rounds: int = 10) -> tuple[Walk, int]:
    """Tubular square: as flat square, and each round is closed through its first bead."""
    walk = Walk(bead)
    for row in range(1, rounds):
        for column in range(row, row + around):
            for at, way in ((row, 1), (row - 1, -1), (row, 1)):
                spot = on_a_ring(bead, around, column, at * bead.outside)
                walk.through((column % around, at), *spot, way)
        spot = on_a_ring(bead, around, row, row * bead.outside)
        walk.through((row % around, row), *spot, 1)
    return walk, around * (rounds - 1)


def flat_herringbone(bead: Bead, stacks: int = 8, rows: int = 10) -> tuple[Walk, int]:
    """Flat herringbone: as tubular, and at an edge round the thread beside it and up."""
    walk = Walk(bead)
    for row in range(1, rows):
        order = list(to_and_fro(stacks, row))

        def stitch(stack: int, height: int, ahead: int) -> None:
            spot = (stack * bead.outside, height * bead.length, 0.0)
            walk.through((stack, height), spot, UP, ahead)

        for at in range(0, stacks, 2):
            stitch(order[at], row, 1)
            stitch(order[at + 1], row, -1)
            stitch(order[at + 1], row - 1, -1)
            if at + 2 < stacks:
                stitch(order[at + 2], row - 1, 1)
        edge = (order[-1] + (0.5 if row % 2 else -0.5)) * bead.outside
        for height in (row - 1.5, row - 0.5):
            walk.round_a_thread((edge, height * bead.length, 0.0))
        stitch(order[-1], row, 1)
    return walk, stacks * (rows - 1)


def herringbone(bead: Bead, stacks: int = 6, rounds: int = 12) -> tuple[Walk, int]:
    """Tubular herringbone: two new beads, down through the next stack, up through the one after."""
    walk, added = Walk(bead), 0
    radius = bead.outside / 2 / math.sin(math.pi / stacks)

    def stitch(stack: int, height: int, ahead: int) -> None:
        turn = 2 * math.pi * (stack % stacks) / stacks
        spot = (radius * math.cos(turn), height * bead.length, radius * math.sin(turn))
        walk.through((stack % stacks, height), spot, UP, ahead)

    for height in range(1, rounds):
        for stack in range(0, stacks, 2):
            stitch(stack, height, 1)
            stitch(stack + 1, height, -1)
            stitch(stack + 1, height - 1, -1)
            stitch(stack + 2, height - 1, 1)
            added += 2
        stitch(0, height, 1)  # the step up
    return walk, added


def brick(bead: Bead, columns: int = 12, rows: int = 10) -> tuple[Walk, int]:
    """Brick stitch: down a new bead, under the thread below, up again.

    A row begins with two beads that are passed once more, so that the first stands straight.
    """
    walk = Walk(bead)
    for row in range(rows):
        spots = [(column + row % 2 / 2) * bead.outside for column in to_and_fro(columns, row)]
        base = row * bead.length

        def stitch(number: int, ahead: int, x: float, base: float = base, row: int = row) -> None:
            walk.through((row, number), (x, base + bead.length / 2, 0.0), UP, ahead)

        stitch(0, 1, spots[0])
        for number, x in enumerate(spots[1:], start=1):
            stitch(number, -1, x)
            walk.round_a_thread((x, base - THREAD, 0.0))
            stitch(number, 1, x)
            if number == 1:
                stitch(0, -1, spots[0])
                stitch(1, 1, x)
    return walk, columns * rows


def ladder(bead: Bead, columns: int = 24) -> tuple[Walk, int]:
    """Ladder: new bead, the one before again in the way it was passed, and the new one again."""
    walk = Walk(bead)
    walk.through(0, (0.0, 0.0, 0.0), UP, 1)
    for column in range(1, columns):
        ahead = -1 if column % 2 else 1
        for at, way in ((column, ahead), (column - 1, -ahead), (column, ahead)):
            walk.through(at, (at * bead.outside, 0.0, 0.0), UP, way)
    return walk, columns


def square(bead: Bead, columns: int = 12, rows: int = 10) -> tuple[Walk, int]:
    """Square stitch: new bead, back through the one below, and the new one again."""
    walk = Walk(bead)
    for row in range(1, rows):
        ahead = 1 if row % 2 else -1
        for column in to_and_fro(columns, row):
            for at, way in ((row, ahead), (row - 1, -ahead), (row, ahead)):
                middle = (column * 1.05 * bead.length, at * bead.outside, 0.0)
                walk.through((column, at), middle, ALONG, way)
    return walk, columns * (rows - 1)


def loom(bead: Bead, columns: int = 12, rows: int = 8, warp: float = 0.2) -> tuple[Walk, int]:
    """Weft of a loom: all beads of a row under the warps, round the edge, back over them."""
    walk = Walk(bead)
    pitch = bead.length + warp
    for row in range(rows):
        height = row * bead.outside
        for ahead in (1, -1):
            for column in range(columns)[::ahead]:
                walk.through((column, row), (column * pitch, height, 0.0), ALONG, ahead)
            edge = (columns - 0.5) * pitch if ahead > 0 else -0.5 * pitch
            walk.round_a_thread((edge, height, 0.0))
    return walk, columns * rows


#: The beads round a unit of right-angle weave, in the order of the clock, and which way each goes.
UNIT = {"left": 1, "top": 1, "right": -1, "bottom": -1}


@dataclass
class Woven:
    """Right-angle weave under way. Units are squares, their beads lie along the sides."""

    walk: Walk
    clockwise: int = 1

    def side(self, column: int, row: int, name: str) -> None:
        """Through a bead on one side of a unit, the way the unit is woven."""
        pitch = right_angle.pitch(self.walk.bead.length, self.walk.bead.outside, 1.02)
        x = column + {"left": 0.0, "right": 1.0}.get(name, 0.5)
        y = row + {"bottom": 0.0, "top": 1.0}.get(name, 0.5)
        along = UP if name in ("left", "right") else ALONG
        ahead = UNIT[name] * self.clockwise
        self.walk.through((x, y), (x * pitch, y * pitch, 0.0), along, ahead)

    def unit(self, column: int, row: int, start: str, end: str) -> None:
        """Round a unit from its shared bead and through that again, then on to where it goes on."""
        order = list(UNIT)[:: self.clockwise]
        at = order.index(start)
        after = [*order[at + 1 :], *order[:at]]
        for name in (*after, start, *after[: after.index(end) + 1]):
            self.side(column, row, name)
        self.clockwise *= -1  # the shared bead is passed the other way about the next unit


def right_angle_weave(bead: Bead, columns: int = 10, rows: int = 8) -> tuple[Walk, Walk, int, int]:
    """The walk of the first row, that of the later rows, and the beads that each added."""
    work = Woven(Walk(bead))
    work.side(0, 0, "left")
    for column in range(columns):
        work.unit(column, 0, "left", "right")
    first, work.walk = work.walk, Walk(bead)
    end = "right"
    for row in range(1, rows):
        # back round the last unit to its top, which is the bottom of the first unit above
        work.clockwise *= -1
        turn = list(UNIT)[:: work.clockwise]
        last = columns - 1 if row % 2 else 0
        names = (turn * 2)[turn.index(end) + 1 :]
        for name in names[: names.index("top") + 1]:
            work.side(last, row - 1, name)
        work.clockwise *= -1
        start, end = "bottom", "left" if row % 2 else "right"
        for column in to_and_fro(columns, row + 1):
            work.unit(column, row, start, end)
            start = "right" if row % 2 else "left"
    beads = len(first.passed.keys())
    return first, work.walk, beads, len(work.walk.passed.keys() - first.passed.keys())


def spiral_rope(bead: Bead, core: int, outer: int, stitches: int = 16) -> tuple[Walk, int]:
    """Spiral rope: a core bead, a loop of outer beads down to the core bead where it began, up.

    The loop hangs from the top of the new core bead to the bottom of the `core`-th below, spread
    over that height where it is strung shorter, else as an arc of a circle beside the core.
    """
    walk = Walk(bead)
    for number in range(core - 1, core - 1 + stitches):
        foot = (number + 1 - core) * bead.length
        turn = 0.6 * number
        walk.through(number, (0.0, (number + 0.5) * bead.length, 0.0), UP, 1)
        for at, (off, height, (out, rise)) in enumerate(loop_of(bead, core, outer)):
            spot = (off * math.cos(turn), foot + height, off * math.sin(turn))
            along = (out * math.cos(turn), rise, out * math.sin(turn))
            walk.through((number, at), spot, along, -1)
        for at in range(number + 1 - core, number + 1):
            walk.through(at, (0.0, (at + 0.5) * bead.length, 0.0), UP, 1)
    return walk, stitches


def fringe(bead: Bead, beads: int = 12, legs: int = 8) -> tuple[Walk, int]:
    """Bead fringe: a base bead, down a leg, through the turn bead that lies across, and up."""
    walk = Walk(bead)
    for leg in range(legs):
        x = (leg + 0.5) * bead.length
        walk.through((leg, "base"), (x - bead.length / 2, 0.0, 0.0), ALONG, 1)
        for at in range(beads):
            down = -bead.outside / 2 - (at + 0.5) * bead.length
            walk.through((leg, at), (x, down, 0.0), UP, -1)
        turn = -bead.outside - beads * bead.length
        walk.through((leg, "turn"), (x, turn, 0.0), ALONG, 1)
        for at in reversed(range(beads)):
            down = -bead.outside / 2 - (at + 0.5) * bead.length
            walk.through((leg, at), (x, down, 0.0), UP, 1)
    return walk, legs


def spiral(bead: Bead, outer: int) -> float:
    return thread.spiral_rope(bead.length, bead.outside, 4, outer * bead.length)


def squares(bead: Bead, columns: int = 10, rows: int = 8) -> tuple[Walk, int]:
    """All rows of right-angle weave one after the other, for each of its units."""
    first, later, _, _ = right_angle_weave(bead, columns, rows)
    for each in ("points", "holes", "steps"):
        getattr(first, each).extend(getattr(later, each))
    first.passed += later.passed
    return first, columns * rows


def per_unit(bead: Bead, columns: int = 10) -> float:
    # eight rows have seven ways from one to the next
    passes = right_angle.passes(4, 1) + right_angle.steps(columns, 4) / columns * 7 / 8
    side = right_angle.pitch(bead.length, bead.outside, 1.02)
    return passes * (bead.length + thread.corner(bead.length, side))


def sized(
    per_bead: Callable[[float, float], float],
    turn: Callable[[float, float], float] = lambda length, outside: 0.0,
    each_row: float = 1.0,
) -> Callable[[Bead, int], float]:
    """A formula a bead, with the turn of its row, which has `each_row` beads a column."""

    def taken(bead: Bead, columns: int) -> float:
        turned = turn(bead.length, bead.outside) / (columns * each_row)
        return per_bead(bead.length, bead.outside) + turned

    return taken


Walked = Callable[[Bead], tuple[Walk, int]]
#: Stitches walked narrow and wide: how, the formula with its turns, how far it may be off, the
#: columns, and what was found: thread over formula from taut to a third of the way to loose, loose.
WIDTHS: dict[
    str,
    tuple[
        Callable[[Bead, int], tuple[Walk, int]],
        Callable[[Bead, int], float],
        float,
        tuple[int, ...],
        str,
    ],
] = {
    "peyote": (
        peyote,
        sized(thread.peyote, lambda _, outside: thread_turns.peyote_turn(outside), 0.5),
        thread.PEYOTE_WALKED,
        (4, 6, 12, 24),
        "0.87..1.13, 1.29",
    ),
    "two-drop peyote": (
        lambda bead, columns: peyote(bead, columns, up=2),
        sized(
            partial(thread.peyote, bead_up=2),
            lambda _, outside: thread_turns.peyote_turn(outside),
            0.5,
        ),
        thread.WALKED,
        (8, 12, 24),
        "0.95..1.10, 1.19",
    ),
    "tubular peyote": (
        tubular_peyote,
        sized(thread.peyote, thread_turns.peyote_step_up, 0.5),
        thread.PEYOTE_WALKED,
        (6, 8, 12, 24),
        "0.87..1.13, 1.29",
    ),
    "tubular herringbone": (
        herringbone,
        sized(thread.herringbone, lambda length, outside: length),
        thread.WALKED,
        (4, 6, 12, 24),
        "0.94..1.03, 1.10",
    ),
    "flat herringbone": (
        flat_herringbone,
        sized(thread.herringbone, lambda length, outside: outside / 2),
        thread.WALKED,
        (4, 8, 24),
        "0.94..1.05, 1.11",
    ),
    "brick": (
        brick,
        sized(thread.brick, thread_turns.brick_turn),
        thread.WALKED,
        (3, 6, 12, 24),
        "0.92..1.08, 1.16",
    ),
    "square": (
        square,
        sized(thread.square, thread_turns.square_turn),
        thread.WALKED,
        (3, 6, 12, 24),
        "0.93..1.09, 1.18",
    ),
    "tubular square": (
        tubular_square,
        sized(thread.square, thread_turns.square_close),
        thread.WALKED,
        (4, 8, 24),
        "0.91..1.07, 1.15",
    ),
    "right-angle weave": (
        squares,
        per_unit,
        thread.WALKED,
        (2, 3, 6, 10),
        "0.88..1.10, 1.22",
    ),
}
#: The same of stitches that have no width: stitch, walk, formula, found as above.
STITCHES: dict[str, tuple[Walked, Callable[[Bead], float], str]] = {
    "ladder": (
        ladder,
        lambda b: thread.ladder(b.length, b.outside),
        "0.94..1.11, 1.21",
    ),
    "loom weft": (
        loom,
        lambda b: weft_per_bead(b.length, 0.2),
        "1.03..1.05, 1.05",
    ),
    "spiral rope of 3 to 4": (
        lambda b: spiral_rope(b, 4, 3),
        lambda b: spiral(b, 3),
        "1.00..1.08, 1.12",
    ),
    "spiral rope of 5 to 4": (
        lambda b: spiral_rope(b, 4, 5),
        lambda b: spiral(b, 5),
        "0.95..0.98, 1.01",
    ),
    "spiral rope of 7 to 4": (
        lambda b: spiral_rope(b, 4, 7),
        lambda b: spiral(b, 7),
        "0.97..0.99, 1.01",
    ),
    "fringe": (
        fringe,
        lambda b: thread.fringe(12 * b.length + b.outside, b.length),
        "1.00..1.03, 1.05",
    ),
}


@pytest.mark.slow
@pytest.mark.parametrize("stitch", some([*WIDTHS], 2))
def test_thread_of_narrow_and_wide_work_by_walking_through_it(stitch: str) -> None:
    walked, formula, share, widths, found = WIDTHS[stitch]
    each = ((*walked(b, wide), formula(b, wide)) for b in BEADS.values() for wide in widths)
    assert held(each, share) == found


@pytest.mark.slow
@pytest.mark.parametrize("stitch", STITCHES)
def test_thread_per_bead_by_walking_through_the_work(stitch: str) -> None:
    walked, formula, found = STITCHES[stitch]
    assert held(((*walked(b), formula(b)) for b in BEADS.values()), thread.WALKED) == found


#: every walk, at the width that it has where none is asked
WALKS: dict[str, Walked] = {
    **{stitch: walk for stitch, (walk, *_) in STITCHES.items()},
    "peyote": peyote,
    "tubular peyote": tubular_peyote,
    "tubular herringbone": herringbone,
    "flat herringbone": flat_herringbone,
    "brick": brick,
    "square": square,
    "tubular square": tubular_square,
    "right-angle weave": squares,
}


@pytest.mark.parametrize("stitch", WALKS)
def test_a_walk_never_leaps_over_a_bead(stitch: str) -> None:
    """No way from hole to hole is longer than a bead is thick; so none was left out."""
    bead = BEADS["round 11/0 Japanese"]
    walk, _ = WALKS[stitch](bead)
    assert max(walk.steps) <= bead.outside * 1.02
    assert walk.taut <= walk.middle


def test_a_taut_thread_by_minimising_all_its_points_at_once() -> None:
    """In flat work a point moves across its hole; scipy finds where all of them lie best."""
    for walk, _ in (
        peyote(BEADS["round 11/0 Japanese"], 6, 3),
        square(BEADS["cylinder 8/0"], 4, 3),
    ):
        rest, hole = np.array(walk.points), np.array(walk.holes)
        across, free = hole[:, [1, 0, 2]], (walk.bead.hole - THREAD) / 2

        def length(off: Floats, rest: Floats = rest, way: Floats = across) -> float:
            spots = rest + off[:, None] * way
            return float(np.linalg.norm(np.diff(spots, axis=0), axis=1).sum())

        # a thread's ends are where they are
        bounds = [(0.0, 0.0), *[(-free, free)] * (len(rest) - 2), (0.0, 0.0)]
        found = minimize(length, np.zeros(len(rest)), bounds=bounds, method="L-BFGS-B")
        assert walk.taut == pytest.approx(found.fun, rel=2e-3)
        assert walk.middle == pytest.approx(length(np.zeros(len(rest))))
        assert walk.taut < 0.95 * walk.middle


PASSES = {
    "peyote": FLAT_PEYOTE.passes,
    "tubular herringbone": HERRINGBONE.passes,
    "brick": BRICK.passes,
    "ladder": LADDER.passes,
    "square": SQUARE.passes,
    "right-angle weave": RIGHT_ANGLE.passes,
    "loom": LOOM.passes,
}


@pytest.mark.parametrize("stitch", PASSES)
def test_passes_of_a_bead_by_counting_them_on_the_walk(stitch: str) -> None:
    bead = BEADS["round 11/0 Japanese"]
    passed = WALKS["loom weft" if stitch == "loom" else stitch](bead)[0].passed
    counts = Counter(passed.values())
    assert counts.most_common(1)[0][0] == PASSES[stitch]
    assert max(counts) <= PASSES[stitch] + 1


def test_counting_passes_alone_is_short_for_a_spiral_rope() -> None:
    """(1 + outer + core) l is under the shortest thread that can lie in the rope."""
    for bead in BEADS.values():
        walk, beads = spiral_rope(bead, 4, 3)
        assert walk.taut / beads > 1.2 * (1 + 3 + 4) * bead.length


lengths = st.floats(0.5, 6.0)
more = st.floats(0.01, 3.0)
PER_BEAD: list[Callable[[float, float], float]] = [
    thread.peyote,
    thread.herringbone,
    thread.brick,
    thread.ladder,
    thread.square,
    weft_per_bead,
    thread.fringe,
]


@pytest.mark.parametrize("formula", PER_BEAD)
@given(length=lengths, outside=lengths, by=more)
def test_longer_and_thicker_beads_take_more_thread(
    formula: Callable[[float, float], float], length: float, outside: float, by: float
) -> None:
    taken = formula(length, outside)
    assert formula(length + by, outside) > taken
    assert formula(length, outside + by) > taken
    assert taken > 2 * length


@given(lengths, lengths, st.integers(2, 8), st.floats(0, 30), more)
def test_a_spiral_rope_takes_more_with_more_of_anything(
    length: float, outside: float, core: int, outer: float, by: float
) -> None:
    taken = thread.spiral_rope(length, outside, core, outer)
    assert taken > (1 + core) * length + outer
    assert thread.spiral_rope(length + by, outside, core, outer) > taken
    assert thread.spiral_rope(length, outside + by, core, outer) > taken
    assert thread.spiral_rope(length, outside, core + 1, outer) > taken
    assert thread.spiral_rope(length, outside, core, outer + by) >= taken


paths = st.floats(0, 50_000)
tails = st.floats(0, 300)
worked = st.floats(50, 3000)


def sewn_bead_by_bead(path: int, length: int, tail: int) -> tuple[int, int]:
    """Threads begun, and thread used, sewing a path a millimetre at a time."""
    begun, used, left = 0, 0, 0
    for _ in range(path):
        if left == 0:
            begun, used, left = begun + 1, used + 2 * tail, length - 2 * tail
        left, used = left - 1, used + 1
    return begun, used


@given(st.integers(0, 4000), st.integers(0, 100), st.integers(1, 900))
def test_threads_by_sewing_a_millimetre_at_a_time(path: int, tail: int, works: int) -> None:
    length = works + 2 * tail
    begun, used = sewn_bead_by_bead(path, length, tail)
    # in tenths, so that lengths are not whole
    asked = (path / 10, length / 10, tail / 10)
    assert thread.threads(*asked) == begun
    assert thread.with_tails(*asked) == pytest.approx(used / 10)


@given(paths, tails, worked)
def test_what_is_bought_is_no_less_than_path_and_tails(
    path: float, tail: float, works: float
) -> None:
    asked = (path, works + 2 * tail, tail)
    taken = thread.with_tails(*asked)
    assert taken >= path + (2 * tail if path > 1e-3 else 0)
    assert taken == pytest.approx(path + 2 * tail * thread.threads(*asked))


@given(paths, tails, worked, st.floats(0, 5000))
def test_threads_and_totals_never_fall_with_the_path(
    path: float, tail: float, works: float, by: float
) -> None:
    length = works + 2 * tail
    for total in (thread.threads, thread.with_tails):
        assert total(path + by, length, tail) >= total(path, length, tail)
    assert thread.threads(path, length + by, tail) <= thread.threads(path, length, tail)
    if by < works / 2 - 1:
        assert thread.threads(path, length, tail + by) >= thread.threads(path, length, tail)
        assert thread.with_tails(path, length, tail + by) >= thread.with_tails(path, length, tail)


def test_a_thread_is_enough_to_its_very_end() -> None:
    """0.1 + 0.2 is a little more than three times 0.1 in floats."""
    assert (0.1 + 0.2) / 0.1 > 3
    assert thread.threads(0.1 + 0.2, length=0.1, tail=0) == 3
    assert thread.threads(0.301, length=0.1, tail=0) == 4


def test_without_a_length_the_usual_one_is_taken() -> None:
    """1.6 m with tails of 17.5 cm leaves 1.25 m to work with."""
    assert [thread.threads(path) for path in (0, 1250, 1251, 2500)] == [0, 1, 2, 2]
    assert thread.with_tails(2000) == 2000 + 4 * 175


@pytest.mark.parametrize("length", [350.0, 300.0, math.nan])
def test_a_thread_of_tails_alone(length: float) -> None:
    for total in (thread.threads, thread.with_tails):
        with pytest.raises(ValueError, match="mm is all tails with 175 mm left at both its ends"):
            total(1000, length, 175)


holes = st.floats(0.2, 2.0)
fine = st.floats(0.1, 0.6)


@given(holes, fine, fine, st.integers(1, 2))
def test_passes_by_passing_until_the_needle_sticks(
    hole: float, needle: float, thick: float, strands: int
) -> None:
    """Room is reckoned in areas: the needle's square and 1.3 of each thread that is there."""
    passed, there = 0, 0
    while needle**2 + 1.3 * there * thick**2 <= hole**2 + 1e-12:
        passed, there = passed + 1, there + strands
    assert thread.passes_possible(hole, needle, thick, strands) == passed
    assert thread.hole_needed(needle, thick, there) > hole
    if passed:
        assert thread.hole_needed(needle, thick, there - strands) <= hole + 1e-9


@given(holes, fine, fine, st.integers(0, 9), st.floats(0.001, 0.5))
def test_a_hole_has_to_be_wider_for_more_of_anything(
    hole: float, needle: float, thick: float, there: int, by: float
) -> None:
    needed = thread.hole_needed(needle, thick, there)
    assert needed >= needle - 1e-12
    assert thread.hole_needed(needle + by, thick, there) > needed
    assert thread.hole_needed(needle, thick + by, there) >= needed
    assert thread.hole_needed(needle, thick, there + 1) > needed
    possible = thread.passes_possible(hole, needle, thick)
    assert thread.passes_possible(hole + by, needle, thick) >= possible
    assert thread.passes_possible(hole, needle + by, thick) <= possible
    assert thread.passes_possible(hole, needle, thick + by) <= possible
    assert thread.passes_possible(hole, needle, thick, 2) <= possible


def test_a_needle_as_thick_as_the_hole_passes_once() -> None:
    assert thread.passes_possible(hole=0.4, needle=0.4, thread=0.15) == 1
    assert thread.passes_possible(hole=0.39, needle=0.4, thread=0.15) == 0


@pytest.mark.parametrize(
    ("thick", "strands"), [(0, 1), (-0.1, 1), (0.2, 0), (0.2, -1), (math.nan, 1)]
)
def test_a_pass_leaves_some_thread(thick: float, strands: int) -> None:
    with pytest.raises(ValueError, match="a pass leaves some thread in the hole"):
        thread.passes_possible(0.8, 0.4, thick, strands)


@pytest.mark.parametrize("share", [-0.1, 1.1, 45.0, math.nan])
def test_a_share_that_cannot_be_left(share: float) -> None:
    with pytest.raises(ValueError, match="the share of strength left is from 0 to 1"):
        thread.strength_left(40, knot=share)
    with pytest.raises(ValueError, match="the share of strength left is from 0 to 1"):
        thread.strength_left(40, edge=share)
