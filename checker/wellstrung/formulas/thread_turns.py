"""Thread that a row or round takes beyond its beads, mm: geometry, walked through a model."""

from __future__ import annotations


def peyote_turn(bead_outside: float) -> float:
    """Thread from one row of flat peyote to the next, 0.4 d: geometry, walked through a model.

    >>> peyote_turn(bead_outside=2.0)
    0.8
    """
    return 0.4 * bead_outside


def peyote_step_up(bead_length: float, bead_outside: float) -> float:
    """Thread from one round of peyote to the next, up through its first bead.

    l + 0.25 d: geometry, walked through a model.

    >>> peyote_step_up(bead_length=1.5, bead_outside=2.0)
    2.0
    """
    return bead_length + 0.25 * bead_outside


def brick_turn(bead_length: float, bead_outside: float) -> float:
    """Thread that a row of brick takes beyond its beads: two are passed again to stand straight.

    2 l + 0.2 d: geometry, walked through a model.

    >>> round(brick_turn(bead_length=1.45, bead_outside=2.1), 2)
    3.32
    """
    return 2 * bead_length + 0.2 * bead_outside


def square_turn(bead_length: float, bead_outside: float) -> float:
    """Thread from one row of square stitch to the next, 0.5 d: geometry, walked through a model.

    >>> square_turn(bead_length=1.5, bead_outside=2.0)
    1.0
    """
    return 0.5 * bead_outside


def square_close(bead_length: float, bead_outside: float) -> float:
    """Thread that closes a round of square stitch, through its first bead, and goes up a round.

    l + d: geometry, walked through a model.

    >>> square_close(bead_length=1.5, bead_outside=2.0)
    3.5
    """
    return bead_length + bead_outside


def net_turn(bead_length: float, bead_outside: float, loop: float) -> float:
    """Thread from one row of flat netting to the next, back through half a loop.

    (loop - 1) / 2 l + 0.6 d: at one edge the needle goes back through the leg it came by, and down
    and up the leg of the bead beyond. Counted passes, walked through a model; makers turn in more
    ways than one.

    >>> round(net_turn(bead_length=1.45, bead_outside=2.1, loop=5), 2)
    4.16
    """
    return (loop - 1) / 2 * bead_length + 0.6 * bead_outside


def net_step_down(bead_length: float, bead_outside: float, loop: float) -> float:
    """Thread from one round of netting to the next, to the bead in the middle of its first loop.

    (loop + 1) / 2 l + 0.7 d: the beads are printed (`Net stitch`, copy seen: a red bead and a blue
    one of loops of three); walked through a model.

    >>> round(net_step_down(bead_length=1.45, bead_outside=2.1, loop=5), 2)
    5.82
    """
    return (loop + 1) / 2 * bead_length + 0.7 * bead_outside
