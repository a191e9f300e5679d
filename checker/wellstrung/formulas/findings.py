"""Caps, crimps, buttons and toggles: what they hold, and what they let through. Sizes in mm."""

from __future__ import annotations

from wellstrung.formulas.arithmetic import least, most, opaque, pi


def room_in_bore(bore: float, outside: float, gives: float) -> float:
    """What is left, mm, when an end that gives by so much enters a bore.

    Counting; how far it gives is a limit of the bench.

    >>> round(room_in_bore(bore=8.0, outside=8.0, gives=0.4), 2)
    0.4
    """
    return bore - outside + gives


def depth_wanted(share: float, bore: float, most: float) -> float:
    """How deep a woven end needs to go in, mm: a share of the bore, and never more than `most`.

    Common practice, no source: glue holds over the width of about a bead or two.

    >>> depth_wanted(share=0.4, bore=5.0, most=4.0), depth_wanted(share=0.4, bore=12.0, most=4.0)
    (2.0, 4.0)
    """
    return least(share * bore, most)


def pressed(outside: float, inside: float, flat: float) -> float:
    """How wide a crimp is once it is closed, mm: as wide as before at `flat` 0, flattened at 1.

    Flattened, its wall lies double: half the way round the middle of the wall, and one wall more.
    Geometry, worked out for this project.

    >>> [round(pressed(outside=1.8, inside=1.3, flat=flat), 2) for flat in (0, 1)]
    [1.8, 2.68]
    """
    flattened = pi * (outside + inside) / 4 + (outside - inside) / 2
    return outside + flat * (flattened - outside)


@opaque("way round the edge of a button")
def edge(outside: float, thickness: float, shape: float) -> float:
    """The way round a button edge-on, mm: an oval at shape 0, with rounded ends at 1.

    A loop goes over a button that is tilted through it; geometry, worked out for this project. The
    oval's way round is pi (a + b) / 2 x (1 + h / 4), which is short by less than 1 % here.

    >>> [round(edge(12.0, 5.0, shape), 1) for shape in (0, 1)]
    [27.8, 29.7]
    """
    h = ((outside - thickness) / (outside + thickness)) ** 2
    oval = pi * (outside + thickness) / 2 * (1 + h / 4)
    stadium = 2 * (outside - thickness) + pi * thickness
    return oval + shape * (stadium - oval)


def widest_loop(edge: float, outside: float, loose: float) -> float:
    """The widest loop that holds a button, mm round inside: as wide as its face it falls through.

    Geometry. A ball's edge is its face: its loop may be `loose` times as wide (common practice).

    >>> round(widest_loop(edge=28.8, outside=12.0, loose=1.25), 1)
    37.7
    """
    return most(loose * edge, pi * outside)


def least_bar(opening: float, stem_width: float, more: float) -> float:
    """The shortest bar of a toggle, mm, that stays in its ring.

    It is sure to stay in by its length (geometry, worked out for this project), or is as much
    longer than the opening as practice asks (trade table `clasps`).

    >>> round(least_bar(opening=8.0, stem_width=3.0, more=6.0), 1)
    13.0
    >>> round(least_bar(opening=12.0, stem_width=1.2, more=6.0), 1)
    18.0
    """
    return least(2 * opening - stem_width, opening + more)
