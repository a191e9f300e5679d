"""Caps, cones, crimps and tips: what closes the end of a rope or a strand."""

from __future__ import annotations

from wellstrung.drawing.looks.rings import eye
from wellstrung.drawing.looks.sizes import UNKNOWN, Sizes
from wellstrung.drawing.pen import Pen
from wellstrung.model.parts import Part


def cap(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """From its eye to its rim, with the bore dashed as deep as the rope's end goes in."""
    bore, outside = sizes.known(part, "bore", UNKNOWN), sizes.mm(part, "outside")
    far, rim = _to_rim(pen, sizes, part, sizes.known(part, "length", UNKNOWN * 1.5))
    look = "metal" if outside is not None else "metal open-size"
    quantity = sizes.named(part, "outside")
    if part.traits.cups:  # tabs at both sides of the cup, whose stone is seen
        tab = max(((outside or bore + 1.0) - bore) / 2, 0.2)
        pen.box(far, tab, bore + 2 * tab, look)
        for side in (-1, 1):
            across = side * (bore + tab) / 2
            pen.box(far, rim - far, tab, look, across=across, corner=tab / 2)
        return
    pen.box(far, rim - far, outside or bore + 1.0, look, corner=1.0, of_width=quantity)
    depth = sizes.known(part, "depth", 0.0)
    if depth:
        pen.box(rim - depth, depth, bore, "hidden", of_width=sizes.named(part, "bore"))


def ball(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """A ball, with its hole dashed as deep as the wire goes in."""
    outside = sizes.mm(part, "outside")
    wide = outside or UNKNOWN
    look = "metal" if outside is not None else "metal open-size"
    pen.oval(length / 2, wide, wide, look)
    depth = sizes.known(part, "depth", 0.0)
    if depth:
        bore = sizes.known(part, "bore", 1.0)
        pen.box(length - depth, depth, bore, "hidden", of_width=sizes.named(part, "bore"))


def tip(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """From its loop to its hole, with a cup that closes over a knot or a crimp."""
    outside = sizes.mm(part, "outside")
    far, rim = _to_rim(pen, sizes, part, sizes.known(part, "length", UNKNOWN))
    look = "metal" if outside is not None else "metal open-size"
    width = outside or sizes.known(part, "inside", UNKNOWN / 2) + 0.6
    quantity = sizes.named(part, "outside")
    pen.box(far, rim - far, width, look, corner=width / 2, of_width=quantity)
    hole = sizes.known(part, "hole", 1.0)
    pen.box(rim - 0.4, 0.4, hole, "hole")


def _to_rim(pen: Pen, sizes: Sizes, part: Part, whole: float) -> tuple[float, float]:
    """Draw the eye of a part; how far it reaches, and where the part's other end lies."""
    far = eye(pen, sizes, part, "eye")
    return far, max(whole - sizes.known(part, "eye.wire", 1.0), far + 1.0)


def cone(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """From its narrow end to its wide one, which lies where the strands begin, less its depth."""
    bore = sizes.known(part, "bore", UNKNOWN)
    outside = sizes.known(part, "outside", bore + 1.0)
    whole = sizes.known(part, "length", UNKNOWN * 1.5)
    depth = sizes.known(part, "depth", whole * 0.6)
    narrow = sizes.known(part, "hole", 1.5) / 2 + 0.8
    start, wide = depth - whole, outside / 2
    spots = [(start, -narrow), (start, narrow), (depth, wide), (depth, -wide), (start, -narrow)]
    pen.line(spots, "metal sheer", of_width=sizes.named(part, "outside"))


def coil(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """A fine coil, bent to a loop round the eye."""
    thick = sizes.known(part, "outside", 0.9)
    wide = sizes.known(part, "wall", 0.9) + 2 * thick
    pen.oval(length / 2, length, wide, "metal")
    pen.oval(length / 2, max(length - 2 * thick, 0.3), wide - 2 * thick, "hole")


def crimp(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """A tube or its cover, and before it the loop of wire in which the ring bears."""
    if (cover := part.part("cover")) is not None:
        ball = sizes.known(cover, "outside", 3.0)
        loop = max(length - ball, 0.5)
        pen.oval(loop / 2, loop, min(loop, ball / 2), "wire-loop")
        pen.box(loop, ball, ball, "metal", corner=ball / 2, of_width=sizes.named(cover, "outside"))
        return
    tube = sizes.known(part, "length", 2.0)
    loop = max(length - tube, 0.5)
    width = sizes.known(part, "outside", sizes.known(part, "inside", 1.2) + 0.6)
    pen.oval(loop / 2, loop, min(loop, width), "wire-loop")
    pen.box(loop, tube, width, "metal", of_length=sizes.named(part, "length"))
