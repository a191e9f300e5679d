"""Flat netting: rows of loops, each hooked into the middle beads of the row before.

A loop is `loop` beads: a leg up, the bead that the next row shares, a leg down. Shared beads lie
across the width with half a bead on each side of them; legs stand aslant, and how steep they stand
is how far the net is spread: wider is shorter. The first row is strung with its base. All of it is
geometry, worked out for this project; with a loop of one bead it is flat peyote.
"""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung.common.places import Place
from wellstrung.derived.declared import FITTED, GEOMETRY, count, formula, hand, measurable
from wellstrung.formulas.arithmetic import cos, most, pi, sin
from wellstrung.model.looks import Face, Pattern, Weave
from wellstrung.model.parts import Part, Stitch
from wellstrung.stitches import flat, making

#: Degrees of a leg from the length: hung and drawn long, laid down square, spread wide.
_LONG, _SQUARE, _WIDE = 30.0, 45.0, 60.0
_FEWEST = 3


def leg(loop: float, bead_length: float) -> float:
    """Beads between two shared ones, mm.

    Counting.

    >>> leg(5, 1.45)
    2.9
    """
    return (loop - 1) / 2 * bead_length


def half_mesh(loop: float, bead_length: float, slant: float) -> float:
    """From one shared bead to the next across the width, mm; `slant` is a leg's, in degrees.

    Geometry, worked out for this project.

    >>> round(half_mesh(5, 1.45, 45), 2)
    3.5
    """
    return bead_length + leg(loop, bead_length) * sin(slant / 180 * pi)


def rise(loop: float, bead_length: float, bead_outside: float, slant: float) -> float:
    """From one row of shared beads to the next, mm; every second row they would touch at half d.

    Geometry, worked out for this project.

    >>> round(rise(5, 1.45, 2.1, 45), 2), rise(3, 1.45, 2.1, 60)
    (2.05, 1.05)
    """
    return most(bead_outside / 2, leg(loop, bead_length) * cos(slant / 180 * pi))


def width(across: float, loop: float, bead_length: float, slant: float) -> float:
    """Width, mm: two half meshes a loop, and half a bead beyond the shared bead at each edge.

    Geometry, worked out for this project.

    >>> round(width(4, 5, 1.45, 45), 2)
    29.45
    """
    return 2 * across * half_mesh(loop, bead_length, slant) + bead_length


def beads(rows: float, across: float, loop: float) -> float:
    """Beads of a net: its base, and each row's loops; every second row has a bead more to turn.

    An odd number of rows has half a bead less.

    Counting.

    >>> beads(2, 4, 5)
    46.0
    """
    return across + 1 + rows * (across * loop + 0.5)


def thread_per_bead(bead_length: float, bead_outside: float, loop: float) -> float:
    """Thread for one bead, mm: each loop goes through its beads and one shared bead, and a step.

    Counted passes, worked out for this project, +/- 20 %.

    >>> round(thread_per_bead(1.45, 2.1, 5), 2)
    1.95
    """
    return bead_length * (loop + 1) / loop + 0.5 * bead_outside / loop


def loop_of(part: Part) -> int:
    """Beads of a loop; raises Missing."""
    return part.count("loop")


def refuses(part: Part) -> Iterator[tuple[str, Place]]:
    """Loops of an odd number, so that one bead is in their middle, and rows alike."""
    yield from flat.refuses(part, "netting", idle=("bead_up", "warp", "each_row", "started_on"))
    if not part.has("loop"):
        yield (
            f"`{part.name}` does not say how many beads a loop has: write `loop: 5`",
            part.key.place,
        )
        return
    loop = loop_of(part)
    if loop < _FEWEST:
        yield (
            f"`{part.name}` has `loop: {loop}`, too few for netting: write `loop: {_FEWEST}` or"
            " more, or `stitch: flat peyote`",
            part.place_of("loop"),
        )
    elif loop % 2 == 0:
        yield (
            f"`{part.name}` has `loop: {loop}`, and a loop shares the bead in its middle: write"
            f" `loop: {loop - 1}` or `loop: {loop + 1}`",
            part.place_of("loop"),
        )


_LOOP = count("loop", loop_of)
_SLANT = hand(
    "spread of the net",
    (_LONG, _SQUARE, _WIDE),
    source=f"degrees of a leg, {FITTED}",
    cure="net 5 cm of {part}, lay it as it will be worn, measure it, count its rows",
)
_WIDTH = formula(
    "width",
    "mm",
    width,
    across=count("across", flat.across_of),
    loop=_LOOP,
    bead_length=making.bead("length"),
    slant=_SLANT,
    source=GEOMETRY,
)
_RISE = formula(
    "rise",
    "mm",
    rise,
    loop=_LOOP,
    bead_length=making.bead("length"),
    bead_outside=making.bead("outside"),
    slant=_SLANT,
    source=GEOMETRY,
)


def _face(part: Part) -> Face:
    return Face(flat.across_of(part), loop=loop_of(part))


NETTING = Stitch(
    name="netting",
    makes=flat.BAND,
    columns="units",
    quantities=flat.band(
        measurable("width", _WIDTH),
        flat.growth(_RISE, "outside", steps_less=0),
        making.thread(thread_per_bead, loop=loop_of),
        flat.beads(beads, across=flat.across_of, loop=loop_of),
    ),
    refuses=refuses,
    held_against="no published figure: a net gives more than any other stitch, and its width and"
    " length are what the maker lays it to, so a swatch is worth more than this",
    look=Weave(Pattern.LOOPS, _face, "rows"),
)
