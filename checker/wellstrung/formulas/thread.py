"""Thread: how much a stitch takes, how many threads that is, what a hole passes, what it carries.

Sizes and lengths in mm, pulls in N. Thread per bead is a count of passes, which is a floor, plus
the steps from hole to hole, and in many stitches a turn at the end of each row or round: counting
and geometry, worked out for this project; no published figure was found. Where a thread was walked
through a model of the work, bead by bead, narrow and wide, from 15/0 to 6/0, the steps are fitted
between thread drawn taut and a third of the way to the middle of its holes, and lie within `WALKED`
(`PEYOTE_WALKED`) of it. That a hand stays below that third is a guess; no thread of real work was
measured. What is sewn to a backing, to an edge or as a second layer is taken to be +/- 20 %
(`PATH_SHARE`): where the needle turns there is the maker's own choice. At worst a thread is tighter
still, or lies loose along the middles of the holes (`WALKED_WORST`).
"""

from __future__ import annotations

from wellstrung.formulas.arithmetic import ceil, floor, most, pi, require, sqrt

#: How far the thread of a piece may be off the formulas, either way.
PATH_SHARE = 0.2
#: The same where thread was walked through a model, and in peyote, and nets and spirals as close
#: as that, where holes count for most.
WALKED, PEYOTE_WALKED = 0.12, 0.13
#: At worst, below and above: no slack in the widest holes, and thread along the middles of holes.
WALKED_WORST = (0.2, 0.3)


def peyote(bead_length: float, bead_outside: float, bead_up: float = 1) -> float:
    """Thread for one bead of peyote: passed as it is added and by the next row, half a step.

    2 l + 0.49 d, +/- 13 %: counted passes, walked through a model. Two beads picked up at a
    time, `bead_up` 2, share the step.

    >>> round(peyote(bead_length=1.45, bead_outside=2.1), 2)
    3.93
    >>> round(peyote(bead_length=1.45, bead_outside=2.1, bead_up=2), 2)
    3.41
    """
    return 2 * bead_length + 0.49 * bead_outside / bead_up


def odd_turn(bead_length: float, bead_outside: float, bead_up: float = 1) -> float:
    """Thread that every second row of odd-count flat peyote takes beyond the others, to turn.

    2 l + d: between a loop round the thread of the edge, d, and a figure of eight through four
    beads there, 4 l + d, which hands take in turn. Counted passes, worked out for this project.

    >>> odd_turn(bead_length=1.45, bead_outside=2.1)
    5.0
    """
    return 2 * bead_length * bead_up + bead_outside


def herringbone(bead_length: float, bead_outside: float) -> float:
    """Thread for one bead of herringbone: up one stack and down the next, a bead sideways.

    2 l + 0.8 d, +/- 12 %: counted passes, walked through a model. From round to round the
    thread steps up through one bead more.

    >>> round(herringbone(bead_length=1.45, bead_outside=2.1), 2)
    4.58
    """
    return 2 * bead_length + 0.8 * bead_outside


def brick(bead_length: float, bead_outside: float) -> float:
    """Thread for one bead of brick stitch: down and up again, round the thread of the row below.

    2 l + 0.9 d, +/- 12 %: counted passes, walked through a model.

    >>> round(brick(bead_length=1.45, bead_outside=2.1), 2)
    4.79
    """
    return 2 * bead_length + 0.9 * bead_outside


def brick_first(bead_length: float, bead_outside: float) -> float:
    """Thread that one bead of the first row of brick stitch takes beyond the others: a ladder's.

    l + 1.1 d: `ladder` less `brick`, counted passes.

    >>> round(brick_first(bead_length=1.45, bead_outside=2.1), 2)
    3.76
    """
    return ladder(bead_length, bead_outside) - brick(bead_length, bead_outside)


def round_a_wire(wire: float) -> float:
    """Thread that one bead takes beyond the others where its row hangs on a wire: half round it.

    Counted passes, worked out for this project.

    >>> round(round_a_wire(1.0), 2)
    1.57
    """
    return pi / 2 * wire


def ladder(bead_length: float, bead_outside: float, rung: float = 1) -> float:
    """Thread for one bead of ladder stitch: a ring through two beads, then on through the new one.

    3 l + 2 d, +/- 12 %: counted passes, walked through a model. The beads of one `rung` share
    the steps.

    >>> round(ladder(bead_length=1.45, bead_outside=2.1), 2)
    8.55
    """
    return 3 * bead_length + 2 * bead_outside / rung


def square(bead_length: float, bead_outside: float) -> float:
    """Thread for one bead of square stitch: a ring with the bead below, and on through the new one.

    3 l + 1.5 d, +/- 12 %: counted passes, walked through a model.

    >>> round(square(bead_length=1.45, bead_outside=2.1), 2)
    7.5
    """
    return 3 * bead_length + 1.5 * bead_outside


def corner(bead_length: float, side: float) -> float:
    """Thread from one bead of a ring round the corner to the next, on a unit of that `side`.

    0.39 (side - l): of the room that the bead leaves on its side. Geometry, walked through squares,
    hexagons and cubes, +/- 12 % with the beads it lies between.

    >>> round(corner(bead_length=1.45, side=2.6), 2)
    0.45
    """
    return 0.39 * (side - bead_length)


def spiral_rope(core_length: float, core_outside: float, core: float, outer: float) -> float:
    """Thread for one core bead of a spiral rope: the bead, a loop outside it, `core` beads again.

    `outer` is the length of the loop's beads strung. The loop spans the `core` beads it lies
    beside, however short it is strung, and steps out and in again by half a core bead:
    (1 + core) l + max(outer, core l) + d, +/- 12 %, walked through a model. Counting passes
    alone, (1 + core) l + outer, leaves out the steps and comes out a quarter short.

    >>> round(spiral_rope(core_length=1.45, core_outside=2.1, core=4, outer=3 * 1.45), 2)
    15.15
    """
    return (1 + core) * core_length + most(outer, core * core_length) + core_outside


def netting(bead_length: float, bead_outside: float, loop: float) -> float:
    """Thread for one bead of netting: each loop is passed, one shared bead with it, and its steps.

    l (loop + 1) / loop + 0.55 d / loop, +/- 12 % with the turn of its row or round, +/- 13 % of
    loops of three: counted passes, walked through meshes from narrow to wide.

    >>> round(netting(bead_length=1.45, bead_outside=2.1, loop=5), 2)
    1.97
    """
    return bead_length * (loop + 1) / loop + 0.55 * bead_outside / loop


def daisy(bead_length: float, bead_outside: float, petals: float, rings: float = 2) -> float:
    """Thread for one bead of daisy chain: its ring, its middle, and a link to the next.

    ((rings petals + 9) l + 4.8 d) / (petals + 1), +/- 12 %, of a ring that is passed once as it is
    strung, and once again where `rings` is 2: counted passes, walked through a model.

    >>> round(daisy(bead_length=1.45, bead_outside=2.1, petals=8), 2)
    5.15
    """
    return ((rings * petals + 9) * bead_length + 4.8 * bead_outside) / (petals + 1)


def petersburg(bead_length: float, bead_outside: float, chains: float) -> float:
    """Thread for one bead of St. Petersburg chain: 13 passes a column, and its steps.

    (13 l + 3.5 d) a column of each chain, which adds 1 + 5 chains beads, +/- 12 %: counted passes,
    walked through a model.

    >>> round(petersburg(bead_length=1.45, bead_outside=2.1, chains=1), 2)
    4.37
    """
    return (13 * bead_length + 3.5 * bead_outside) * chains / (1 + 5 * chains)


def chevron(bead_length: float, bead_outside: float, leg: float) -> float:
    """Thread for one bead of chevron chain: an edge of three and a leg, and one bead across.

    ((leg + 4) l + 1.5 d) / (leg + 3), +/- 12 %: counted passes, walked through a model.

    >>> round(chevron(bead_length=1.45, bead_outside=2.1, leg=3), 2)
    2.22
    """
    return ((leg + 4) * bead_length + 1.5 * bead_outside) / (leg + 3)


def fringe(leg: float, step: float) -> float:
    """Thread for one leg of bead fringe: down, round the turn bead, up again, on to the next.

    2 x leg + step, +/- 12 %; `leg` counts the turn bead. Counting, walked through a model.

    >>> fringe(leg=30, step=6)
    66
    """
    return 2 * leg + step


def backstitch(bead_length: float) -> float:
    """Thread for one bead sewn on a backing, four at a time and back through two, then all again.

    3 l + 1.5, +/- 20 %: two passes and a run round the row, and down and up through the backing, 3
    mm for every two beads. Counting, worked out for this project.

    >>> round(backstitch(bead_length=1.45), 2)
    5.85
    """
    return 3 * bead_length + 1.5


def edging(bead_length: float, bead_outside: float) -> float:
    """Thread for one bead of brick-stitch edging: down, through both layers, and up again.

    2 l + d + 3, +/- 20 %: counting, worked out for this project; 1.5 mm from the edge.

    >>> round(edging(bead_length=1.45, bead_outside=2.1), 2)
    8.0
    """
    return 2 * bead_length + bead_outside + 3


#: Length of thread that is worked with, and of a tail, mm: pages on beading, copies seen (trade
#: table `stitch_facts`: 1.4 to 1.8 m, 15 to 20 cm).
USUAL_LENGTH, USUAL_TAIL = 1600.0, 175.0


def threads(path: float, length: float = USUAL_LENGTH, tail: float = USUAL_TAIL) -> int:
    """How many threads a path takes, each `length` long with a tail at both its ends.

    path / (length - 2 tail), rounded up. Where no length is given the usual 1.6 m is taken.
    ValueError where a thread is nothing but tails. Counting, worked out for this project.

    >>> threads(path=5700, length=1800, tail=200)
    5
    """
    worked = length - 2 * tail
    require(
        worked > 0,
        "a thread of {:g} mm is all tails with {:g} mm left at both its ends",
        length,
        tail,
    )
    # a path that ends with the very last of a thread needs no further one
    return most(0, ceil(path / worked - 1e-9))


def with_tails(path: float, length: float = USUAL_LENGTH, tail: float = USUAL_TAIL) -> float:
    """Thread that a path takes, its last thread cut to need: each thread costs two tails.

    This is the least to buy. A tail that sews the clasp too is longer: add what it is longer by.
    ValueError as for `threads`.

    Counting.

    >>> with_tails(path=5700.0, length=1800, tail=200)
    7700.0
    """
    return path + 2 * tail * threads(path, length, tail)


#: Room that a thread takes in a hole over its diameter squared: trade table `stitch_facts`, from
#: memory, held against printed limits.
PACKING = 1.3


def hole_needed(needle: float, thread: float, there: float) -> float:
    """The hole in which a needle passes beside so many threads that are there already.

    sqrt(needle^2 + 1.3 x threads x thread^2), the areas of needle and packed threads: from memory,
    held against three printed limits. A doubled thread counts twice.

    >>> round(hole_needed(needle=0.4, thread=0.2, there=2), 2)
    0.51
    """
    return sqrt(needle**2 + PACKING * there * thread**2)


def thickest(hole: float, needle: float, there: float) -> float:
    """The thickest thread of which so many leave a hole free for the needle; 0 where none does.

    `hole_needed` solved for the thread, from memory as that is; without a needle, so many threads
    fill the hole.

    >>> round(thickest(hole=0.51, needle=0.4, there=2), 2)
    0.2
    """
    return sqrt(most(0, hole**2 - needle**2) / (PACKING * there))


def passes_possible(hole: float, needle: float, thread: float, strands: int = 1) -> int:
    """How often a needle passes a hole, each pass leaving `strands` threads in it (2: doubled).

    0 where the needle does not pass the empty hole. ValueError without a thread. Counting, on the
    trade table that `hole_needed` names.

    >>> passes_possible(hole=0.70, needle=0.46, thread=0.28)
    3
    >>> passes_possible(hole=0.70, needle=0.46, thread=0.28, strands=2)
    2
    """
    require((thread > 0) & (strands > 0), "a pass leaves some thread in the hole")
    # a needle as thick as the room that is left passes, as it does in an empty hole
    room = (hole**2 - needle**2) / (PACKING * strands * thread**2) + 1e-9
    return most(0, floor(room) + 1)


#: Share of strength left at a sharp edge, such as a bugle's end: trade table `stitch_facts`, from
#: memory. What a knot leaves is in trade table `knots`.
SHARP_EDGE = 0.5


def strength_left(breaking: float, knot: float = 1.0, edge: float = 1.0) -> float:
    """Load that breaks a thread or wire with its knot over its edge: breaking x knot x edge.

    ValueError for a share outside 0 to 1. Shares of tests of rope: trade table `knots`. That knot
    and edge multiply is on the safe side: the line breaks at the worse of them (common practice).

    >>> strength_left(breaking=40, knot=0.45)
    18.0
    """
    for share in (knot, edge):
        within = (share >= 0) & (share <= 1)
        require(within, "the share of strength left is from 0 to 1, not {:g}", share)
    return breaking * knot * edge
