"""Thread of nets, units, spirals and chains, by walking a thread through them bead by bead.

As in `test_thread`: each formula is held against thread drawn taut and a third of the way to
loose, narrow and wide, and over what the hand does to mesh or unit where the formula leaves it out.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from itertools import product

import pytest

from turns import some
from walks import ALONG, BEADS, THREAD, UP, Bead, Point, Walk, held, loop_of
from wellstrung.formulas import nets, thread, thread_turns
from wellstrung.stitches import chains, dutch_spiral, flat_spiral, hexagon, right_angle, wrap
from wellstrung.stitches import cubic_right_angle as cubic
from wellstrung.stitches import russian_spiral as russian

#: beads on one thread lie a little apart, as in all the walks
GAP = 1.05
Spot = tuple[int, int]


def way(start: Point, end: Point) -> Point:
    """The direction from one point to another."""
    far = math.dist(start, end)
    x, y, z = ((b - a) / far for a, b in zip(start, end, strict=True))
    return x, y, z


def on(start: Point, along: Point, by: float) -> Point:
    """A point so far from another."""
    x, y, z = (a + by * b for a, b in zip(start, along, strict=True))
    return x, y, z


@dataclass
class Net:
    """A net under way: shared beads at its crossings, legs of `loop` aslant between them."""

    walk: Walk
    loop: int
    place: Callable[[Spot], Point]
    hole: Callable[[Spot], Point]

    def shared(self, spot: Spot, ahead: int = 1) -> None:
        self.walk.through(spot, self.place(spot), self.hole(spot), ahead)

    def leg(self, start: Spot, end: Spot) -> None:
        """Through the beads between two crossings."""
        here, there = self.place(start), self.place(end)
        along, many = way(here, there), (self.loop - 1) // 2
        for at in range(many):
            off = (at - (many - 1) / 2) * self.walk.bead.length * GAP
            name = (min(start, end), max(start, end), at if start < end else many - 1 - at)
            self.walk.through(name, on(here, along, math.dist(here, there) / 2 + off), along, 1)


def half_mesh(bead: Bead, loop: int, slant: float) -> tuple[float, float]:
    """How wide and how long half a mesh is whose sides lie so many degrees from its length."""
    sizes = bead.length, bead.outside
    side = nets.side(loop, *sizes, *sizes, GAP)
    share = math.sin(math.radians(slant))
    opened = nets.opened(share, nets.closed(side / GAP, loop, *sizes))
    return nets.across_mesh(side, opened), nets.along_mesh(side, opened)


def flat_net(bead: Bead, across: int, loop: int, slant: float) -> tuple[Walk, float]:
    """Rows to and fro; after every second one back through the leg it came by, and a leg beyond."""
    walk, rows = Walk(bead), 6
    wide, high = half_mesh(bead, loop, slant)
    net = Net(walk, loop, lambda at: (at[0] * wide, -at[1] * high, 0.0), lambda at: ALONG)
    net.shared((0, 0))
    edge = 2 * across
    for row in range(1, rows, 2):
        for column in range(1, edge, 2):
            net.leg((column - 1, row - 1), (column, row))
            net.shared((column, row))
            net.leg((column, row), (column + 1, row - 1))
            net.shared((column + 1, row - 1))
        net.leg((edge, row - 1), (edge - 1, row))
        net.leg((edge - 1, row), (edge, row + 1))
        net.shared((edge, row + 1))
        for column in range(edge - 1, 0, -2):
            net.leg((column + 1, row + 1), (column, row))
            net.shared((column, row), -1)
            net.leg((column, row), (column - 1, row + 1))
            net.shared((column - 1, row + 1), -1)
    beads = nets.beads(rows, across, loop)
    assert len(walk.passed) == beads
    turns = rows * thread_turns.net_turn(bead.length, bead.outside, loop)
    return walk, beads * thread.netting(bead.length, bead.outside, loop) + turns


def tubular_net(bead: Bead, points: int, loop: int, slant: float) -> tuple[Walk, float]:
    """Rounds, each ended by going down to the middle of its first loop, as print has it."""
    walk, rounds = Walk(bead), 5
    wide, high = half_mesh(bead, loop, slant)
    ring = 2 * points
    radius = wide / 2 / math.tan(math.pi / ring)

    def place(at: Spot) -> Point:
        turn = math.tau * at[0] / ring
        return radius * math.cos(turn), -at[1] * high, radius * math.sin(turn)

    def hole(at: Spot) -> Point:
        turn = math.tau * at[0] / ring
        return -math.sin(turn), 0.0, math.cos(turn)

    net, column = Net(walk, loop, place, hole), 0
    net.shared((0, 0))
    for row in range(1, rounds + 1):
        for _ in range(points):
            net.leg((column, row - 1), (column + 1, row))
            net.shared((column + 1, row))
            net.leg((column + 1, row), (column + 2, row - 1))
            net.shared((column + 2, row - 1))
            column += 2
        net.leg((column, row - 1), (column + 1, row))
        net.shared((column + 1, row))
        column += 1
    steps = rounds * thread_turns.net_step_down(bead.length, bead.outside, loop)
    woven = rounds * points * loop
    return walk, woven * thread.netting(bead.length, bead.outside, loop) + steps


def cubes(bead: Bead, tension: float = 1.02, tall: int = 8) -> tuple[Walk, float]:
    """Round the wall on each side of a ring of four, then round the four beads on top."""
    walk, side = Walk(bead), right_angle.pitch(bead.length, bead.outside, tension)
    corners = (0, 0), (1, 0), (1, 1), (0, 1)

    def lying(at: int, level: int, ahead: int = 1) -> None:
        (x, z), (past_x, past_z) = corners[at % 4], corners[(at + 1) % 4]
        middle = ((x + past_x) / 2 * side, level * side, (z + past_z) / 2 * side)
        walk.through((at % 4, level), middle, (past_x - x, 0.0, past_z - z), ahead)

    def upright(at: int, level: int, ahead: int) -> None:
        x, z = corners[at]
        walk.through(("up", at, level), (x * side, (level + 0.5) * side, z * side), UP, ahead)

    lying(0, 0)
    for level in range(tall):
        for wall in range(3):
            upright(wall + 1, level, 1)
            lying(wall, level + 1, -1)
            upright(wall, level, -1)
            lying(wall, level)
            lying(wall + 1, level)
        upright(0, level, 1)
        lying(3, level + 1, -1)
        upright(3, level, -1)
        lying(3, level)
        upright(0, level, 1)
        for at in range(5):
            lying(at, level + 1)
    assert len(walk.passed) == cubic.beads(tall)
    return walk, 8 * tall * cubic.thread_per_bead(bead.length, side)


def squares(bead: Bead, loop: int, tension: float, needles: int = 1) -> tuple[Walk, float]:
    """Units in one line, with one needle or by one of two that cross."""
    walk, along, units = Walk(bead), (loop - 2) // 2, 12
    wide = right_angle.pitch(along * bead.length, bead.outside, tension)
    high = right_angle.pitch(bead.length, bead.outside, tension)

    def lying(unit: int, top: int, ahead: int) -> None:
        for at in range(along)[::ahead]:
            x = (unit + 0.5) * wide + (at - (along - 1) / 2) * bead.length
            walk.through((unit, top, at), (x, high * top, 0.0), ALONG, ahead)

    def upright(unit: int, ahead: int) -> None:
        walk.through(unit, (unit * wide, high / 2, 0.0), UP, ahead)

    for unit in range(units):
        top, up = (1, 1) if unit % 2 == 0 else (0, -1)
        lying(unit, top, 1)
        upright(unit + 1, -up)
        if needles == 1:
            lying(unit, 1 - top, -1)
            upright(unit, up)
            lying(unit, top, 1)
            upright(unit + 1, -up)
    corner = thread.corner(bead.length, high)
    passes, corners = right_angle.passes(loop, needles), right_angle.corners(needles)
    return walk, units / needles * (passes * bead.length + corners * corner)


def combs(bead: Bead, tension: float) -> tuple[Walk, float]:
    """Units of six side by side: round one from its shared bead, through that, and on by three."""
    walk, side, units = Walk(bead), hexagon.side(bead.length, bead.outside, tension), 8

    def edge(unit: int, at: int, ahead: int) -> None:
        turn = math.radians(60 * at)
        far = side * math.sqrt(3) / 2
        x = unit * math.sqrt(3) * side + far * math.cos(turn)
        name = (unit - 1, 0) if at == 3 else (unit, at % 6)
        along = (-math.sin(turn), math.cos(turn), 0.0)
        walk.through(name, (x, far * math.sin(turn), 0.0), along, ahead)

    edge(0, 3, 1)
    for unit in range(units):
        ahead = 1 if unit % 2 == 0 else -1
        after = [3 + ahead * step for step in range(1, 6)]
        for at in (*after, 3, *after[:3]):
            edge(unit, at, ahead)
    return walk, units * 9 * (bead.length + thread.corner(bead.length, side))


def petersburg(bead: Bead) -> tuple[Walk, float]:
    """Four beads and through two of them, a bead on top, back through three, a bead, up two."""
    walk, columns, long = Walk(bead), 12, bead.length * GAP

    def bead_of(column: int, at: int, ahead: int) -> None:
        walk.through(
            (column, at), (column * bead.outside, (2 * column + at) * long, 0.0), UP, ahead
        )

    bead_of(0, 1, 1)
    bead_of(0, 2, 1)
    for column in range(columns):
        for at, aside, ahead in (
            (3, 0, 1),
            (4, 0, 1),
            (2, 1, -1),
            (1, 1, -1),
            (3, 0, 1),
            (4, 0, 1),
        ):
            bead_of(column + aside, at, ahead)
        height = (2 * column + 4.5) * long + bead.outside / 2
        walk.through((column, 5), (column * bead.outside, height, 0.0), ALONG, 1)
        for at in (4, 3, 2):
            bead_of(column, at, -1)
        for at in (0, 1, 2):
            bead_of(column + 1, at, 1)
    return walk, 6 * columns * thread.petersburg(bead.length, bead.outside, 1)


def chevrons(bead: Bead, leg: int) -> tuple[Walk, float]:
    """Three beads along an edge, a leg to the other edge, and forward through its last bead."""
    walk, stitches, long = Walk(bead), 12, bead.length * GAP
    step = chains.chevron_step(long, bead.outside)
    wide = chains.chevron_width(leg, long, bead.outside, bead.outside) - bead.outside
    for stitch in range(stitches):
        here, there = (wide, 0.0) if stitch % 2 else (0.0, wide)
        end = (stitch + 2) * step
        for at in range(3):
            walk.through((stitch, at), (end + (at - 2.5) * step * 2 / 3, here, 0.0), ALONG, 1)
        start, foot = (end, here, 0.0), (end - step, there, 0.0)
        along = way(start, foot)
        for at in range(leg):
            off = math.dist(start, foot) / 2 + (at - (leg - 1) / 2) * long
            walk.through((stitch, "leg", at), on(start, along, off), along, 1)
        walk.through((stitch - 1, 2), (end - step * 4 / 3, there, 0.0), ALONG, 1)
    return walk, stitches * (leg + 3) * thread.chevron(bead.length, bead.outside, leg)


def daisies(bead: Bead, petals: int, rings: int = 2) -> tuple[Walk, float]:
    """Two petals tied to two of the daisy before, the other petals, round again, the middle."""
    walk, many, half = Walk(bead), 5, petals // 2
    long = bead.length * GAP
    radius = long / 2 / math.tan(math.pi / petals)
    step = chains.daisy_step(long, petals, bead.outside)

    def petal(daisy: int, at: int, ahead: int = 1) -> None:
        turn, up = math.pi - math.tau * (at - 0.5) / petals, -1 if daisy % 2 else 1
        spot = (daisy * step + radius * math.cos(turn), up * radius * math.sin(turn), 0.0)
        walk.through((daisy, at), spot, (math.sin(turn), -up * math.cos(turn), 0.0), ahead)

    petal(0, half + 1, -1)
    petal(0, half, -1)
    for daisy in range(1, many):
        petal(daisy, 0)
        petal(daisy, 1)
        petal(daisy - 1, half + 1, -1)
        petal(daisy - 1, half, -1)
        for at in (0, 1, *range(2, petals), *(range(petals) if rings == 2 else ()), 0, 1):
            petal(daisy, at)
        turn, up = math.tau * 2 / petals, -1 if daisy % 2 else 1
        along = (math.cos(turn), -up * math.sin(turn), 0.0)
        walk.through((daisy, "middle"), (daisy * step, 0.0, 0.0), along, 1)
        petal(daisy, half + 1, -1)
        petal(daisy, half, -1)
    beads = (many - 1) * (petals + 1)
    return walk, beads * thread.daisy(bead.length, bead.outside, petals, rings)


def half_arc(span: float, long: float) -> float:
    """Half the angle of an arc of a circle that is so long over a span."""
    low, high = 0.0, math.pi
    for _ in range(60):
        half = (low + high) / 2
        low, high = (half, high) if math.sin(half) / half > span / long else (low, half)
    return half


def russian_spiral(bead: Bead, loop: int, drawn: float) -> tuple[Walk, float]:
    """Stitches that bow up from one bead of the round below to the next, drawn in to a tube."""
    walk, stitches, strung = Walk(bead), 12, loop * bead.length
    span = strung * drawn
    # shared bead and loop touch as ovals aslant, as in a net
    aslant = math.sqrt(2) * bead.length * bead.outside / math.hypot(bead.length, bead.outside)
    half = half_arc(span, strung + aslant)
    radius = (strung + aslant) / 2 / half
    for stitch in range(stitches):
        walk.through((stitch, "shared"), (stitch * span, 0.0, 0.0), ALONG, 1)
        for at in range(loop):
            turn = half * ((aslant + (2 * at + 1) * bead.length) / (strung + aslant) - 1)
            x = (stitch + 0.5) * span + radius * math.sin(turn)
            spot = (x, radius * (math.cos(turn) - math.cos(half)), 0.0)
            walk.through((stitch, at), spot, (math.cos(turn), -math.sin(turn), 0.0), 1)
    return walk, stitches * loop * russian.thread_per_bead(bead.length, bead.outside, loop)


def dutch(bead: Bead, strip: int, bridge: int) -> tuple[Walk, float]:
    """Peyote across the strip, rolled off flat, then the bridge that bows to the next round."""
    walk, rounds, long = Walk(bead), 8, GAP * bead.length
    strung, span = bridge * bead.length, bridge * bead.length * 0.9
    half = half_arc(span, strung)
    radius, all_round = strung / 2 / half, 2 * strip * long + span
    for row in range(rounds):
        for column in range(2 * strip):
            height = row - column % 2
            middle = (row * all_round + column * long, height * bead.outside / 2, 0.0)
            walk.through((height, column), middle, ALONG, 1)
        end = row * all_round + (2 * strip - 0.5) * long
        for at in range(bridge):
            share = (at + 0.5) / bridge
            turn = half * (2 * share - 1)
            x = end + span / 2 + radius * math.sin(turn)
            high = (row - 1) * bead.outside / 2 + share * bead.outside
            spot = (x, high, radius * (math.cos(turn) - math.cos(half)))
            walk.through((row, "bridge", at), spot, (math.cos(turn), 0.0, -math.sin(turn)), 1)
    each = dutch_spiral.thread_of_round(
        strip * bead.length, strip * bead.outside, strung, bead.outside
    )
    return walk, rounds * each


def flat_spiral_of(bead: Bead, outer: int) -> tuple[Walk, float]:
    """A core bead, a loop to the left and up the core again, a loop to the right and up again."""
    walk, stitches, core = Walk(bead), 14, 4
    for number in range(core - 1, core - 1 + stitches):
        foot = (number + 1 - core) * bead.length
        walk.through(number, (0.0, (number + 0.5) * bead.length, 0.0), UP, 1)
        for aside in (1, -1):
            for at, (off, height, (out, rise)) in enumerate(loop_of(bead, core, outer)):
                spot = (aside * off, foot + height, 0.0)
                walk.through((number, aside, at), spot, (aside * out, rise, 0.0), -1)
            for at in range(number + 1 - core, number + 1):
                walk.through(at, (0.0, (at + 0.5) * bead.length, 0.0), UP, 1)
    sizes = bead.length, bead.outside, outer * bead.length
    taken = flat_spiral.thread_for(stitches, core, *sizes)
    return walk, taken - (core - 1) * bead.length  # which it strings at the start


def wrapped(bead: Bead, cord: float, across: int) -> tuple[Walk, float]:
    """A row below one cord, round the other and back above, and round the first to the next row."""
    walk, rows = Walk(bead), 8
    wide, radius = across * bead.length * GAP, (cord + THREAD) / 2

    def round_a_cord(row: int, right: int, step: float) -> None:
        """From below, outside it, to above, or the other way; a sixteenth of the way each."""
        middle = wide + cord / 2 if right > 0 else -cord / 2
        for part in range(17):
            turn = math.radians(160) * (part / 8 - 1) * right
            x = middle + right * radius * math.cos(turn)
            y = row * bead.outside + step * part / 16
            walk.round_a_thread((x, y, radius * math.sin(turn)))

    for row in range(rows):
        for ahead, step in ((1, 0.0), (-1, bead.outside)):
            for at in range(across)[::ahead]:
                x = (at + 0.5) * bead.length * GAP
                walk.through((row, at), (x, row * bead.outside, 0.0), ALONG, ahead)
            round_a_cord(row, ahead, step)
    each = wrap.thread_per_bead(bead.length, bead.outside, cord, across)
    return walk, rows * across * each


CLOSE, WALKED = thread.PEYOTE_WALKED, thread.WALKED
Model = Callable[..., tuple[Walk, float]]
Choices = tuple[tuple[float, ...], ...]
SLANTS, TENSIONS = (35, 45, 55), (0.95, 1.02, 1.1)
#: Stitch: how it is walked, over which choices, how far the formula may be off, and what was found:
#: thread over formula from taut to a third of the way to loose, loose. Where a choice is a cause of
#: its own beside the hand's (how a net is spread, how close a unit is drawn) its ends stand apart.
WALKS: dict[str, tuple[Model, Choices, float, str]] = {
    "netting of loops of 3": (
        flat_net,
        ((2, 4, 8), (3,), SLANTS),
        CLOSE,
        "0.87..1.08, 1.23",
    ),
    "netting": (flat_net, ((2, 4, 8), (5, 9), SLANTS), WALKED, "0.93..1.08, 1.19"),
    "tubular netting of 3": (
        tubular_net,
        ((4, 6, 12), (3,), SLANTS),
        CLOSE,
        "0.87..1.13, 1.30",
    ),
    "tubular netting": (
        tubular_net,
        ((3, 6, 12), (5, 9), SLANTS),
        WALKED,
        "0.88..1.10, 1.22",
    ),
    "cubic right-angle weave": (cubes, ((1.02,),), WALKED, "0.89..1.10, 1.22"),
    "cubes drawn close and loose": (cubes, (TENSIONS,), 0.15, "0.86..1.13, 1.24"),
    "right-angle weave in a line": (squares, ((4, 6, 8), (1.02,)), WALKED, "0.89..1.10, 1.21"),
    "units drawn close and loose": (squares, ((4, 6, 8), TENSIONS), 0.15, "0.85..1.12, 1.23"),
    "two needles": (squares, ((4, 6, 8), (1.02,), (2,)), WALKED, "0.92..1.09, 1.19"),
    "hexagon weave": (combs, ((1.02,),), WALKED, "0.93..1.08, 1.17"),
    "Saint Petersburg chain": (petersburg, (), WALKED, "0.97..1.04, 1.09"),
    "chevron chain": (chevrons, ((2, 3, 4, 6),), WALKED, "0.97..1.03, 1.06"),
    "daisy chain": (daisies, ((6, 8, 10, 12), (1, 2)), WALKED, "0.96..1.06, 1.12"),
    "Russian spiral": (
        russian_spiral,
        ((3, 4, 5, 6), (0.78, 0.87, 0.96)),
        WALKED,
        "0.91..1.09, 1.20",
    ),
    "Dutch spiral": (dutch, ((3, 4, 5), (3, 5, 12)), WALKED, "0.88..1.11, 1.26"),
    "flat spiral": (flat_spiral_of, ((3, 4, 5, 7),), WALKED, "0.95..1.12, 1.16"),
    "ladder between cords": (
        wrapped,
        ((1.0, 1.5, 2.0, 3.0), (1, 2, 3)),
        WALKED,
        "0.95..1.05, 1.09",
    ),
}


def walked(model: Model, choices: Choices) -> Iterable[tuple[Walk, int, float]]:
    for bead in BEADS.values():
        for chosen in product(*choices):
            walk, formula = model(bead, *chosen)
            yield walk, 1, formula


@pytest.mark.slow
@pytest.mark.parametrize("stitch", some([*WALKS], 2))
def test_thread_by_walking_through_the_work(stitch: str) -> None:
    model, choices, share, found = WALKS[stitch]
    assert held(walked(model, choices), share) == found


@pytest.mark.parametrize("stitch", WALKS)
def test_a_walk_never_leaps_over_a_bead(stitch: str) -> None:
    """No way from hole to hole is longer than a bead is thick, but to the middle of a daisy."""
    model, choices, share, _ = WALKS[stitch]
    bead, most = BEADS["round 11/0 Japanese"], 1.4 if stitch == "daisy chain" else 1.05
    walk, formula = model(bead, *(each[0] for each in choices))
    assert max(walk.steps) <= bead.outside * most
    assert 1 - share <= walk.taut / formula <= walk.middle / formula
