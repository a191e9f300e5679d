"""Rings and eyes of wire."""

from __future__ import annotations

from wellstrung.drawing.looks.sizes import UNKNOWN, Sizes
from wellstrung.drawing.pen import Pen
from wellstrung.model.parts import Part


def eye(pen: Pen, sizes: Sizes, part: Part, key: str, across: float = 0.0) -> float:
    """An eye whose hole begins here; returns how far it reaches, its far wall included."""
    hole = sizes.known(part, f"{key}.hole", 2.0)
    wall = sizes.known(part, f"{key}.wire", 1.0)
    wire_eye(pen, hole, wall, across)
    return hole + wall


def row_of_eyes(pen: Pen, sizes: Sizes, part: Part, key: str) -> float:
    """The same, as many side by side as there are."""
    reach = 0.0
    for across in rows_across(sizes, part, key):
        reach = eye(pen, sizes, part, key, across)
    return reach


def rows_across(sizes: Sizes, part: Part, key: str) -> tuple[float, ...]:
    """Where the eyes of a set lie across, from the first to the last."""
    count = part.count(*part.eye_path(key), "count", default=1)
    apart = sizes.known(part, f"{key}.spacing", 4.0) if count > 1 else 0.0
    return tuple((number - (count - 1) / 2) * apart for number in range(count))


def wire_eye(pen: Pen, hole: float, wall: float, across: float = 0.0) -> None:
    """The same by its sizes."""
    pen.ring(hole / 2, hole + 2 * wall, wall, "metal", across=across)


def closed_ring(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """From the front, with a seam where its ends meet."""
    _cut_ring(pen, sizes, part, "seam")


def open_ring(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """From the front, with a slit where it opens."""
    _cut_ring(pen, sizes, part, "slit")


def _cut_ring(pen: Pen, sizes: Sizes, part: Part, look: str) -> None:
    outside, wire = _ring(pen, sizes, part)
    middle, rim = outside / 2 - wire, outside / 2
    pen.line([(middle, -rim), (middle + wire * 0.25, wire - rim)], look)


def soldered_ring(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """From the front, with a spot of solder."""
    outside, wire = _ring(pen, sizes, part)
    pen.disc(outside / 2 - wire, wire * 0.7, "solder", across=(wire - outside) / 2)


def split_ring(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """From the front, with the line between its two turns."""
    outside, wire = _ring(pen, sizes, part)
    pen.ring(outside / 2 - wire, outside - wire, wire * 0.12, "seam")


def _ring(pen: Pen, sizes: Sizes, part: Part) -> tuple[float, float]:
    """Draw a plain ring; its outside and wire."""
    outside, wire = _outside(sizes, part)
    pen.ring(outside / 2 - wire, outside, wire, "metal", sizes.named(part, "outside"))
    return outside, wire


def ring_weave(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """Ring by ring as the weave lies; of more than can be told apart, an outline."""
    ring = part.part("rings")
    outside, wire = _outside(sizes, ring) if ring is not None else (UNKNOWN, 1.0)
    pitch, rows = sizes.known(part, "pitch", UNKNOWN), part.count("rows", default=3)
    units = round(length / pitch)
    if not 0 < units <= _MOST_UNITS:
        pen.box(-wire, length + 2 * wire, sizes.known(part, "width", outside), "metal")
        return
    of_row = (sizes.known(part, "width", outside) - outside) / max(rows - 1, 1)
    for unit in range(units):
        at = unit * length / units
        for on, wide in _WEAVES.get(part.type, ()):
            x = at + on * length / units + outside / 2 - wire
            pen.link(x, outside, outside * wide, wire, "metal")
        for row in range(rows if part.type not in _WEAVES else 0):
            x = at + outside / 2 - wire + pitch / 2 * (row % 2)
            pen.ring(x, outside, wire, "metal", across=(row - (rows - 1) / 2) * of_row)


#: of more units than this an outline alone is drawn
_MOST_UNITS = 200
#: the rings of a unit: how far along it each begins, how wide it looks, as shares of the unit and
#: of the ring's outside; by eye
_WEAVES = {
    "single": ((0.0, 1.0),),
    "two by two": ((-0.1, 1.0), (0.1, 1.0)),
    "Byzantine": ((0.28, 1.0), (0.36, 1.0), (-0.08, 0.7), (0.0, 0.7), (0.5, 0.7), (0.58, 0.7)),
}


def ring_on_edge(pen: Pen, sizes: Sizes, part: Part) -> float:
    """A ring around something, seen on edge; returns where it bears at its other side."""
    outside, wire = _outside(sizes, part)
    quantity = sizes.named(part, "outside")
    pen.box(-wire, outside, wire, "metal", corner=wire / 2, of_length=quantity)
    return outside - 2 * wire


def _outside(sizes: Sizes, part: Part) -> tuple[float, float]:
    return sizes.known(part, "outside", UNKNOWN), sizes.known(part, "wire", 1.0)
