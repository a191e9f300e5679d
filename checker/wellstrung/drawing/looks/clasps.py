"""Clasps: toggles by their two halves, all others closed, from eye to eye."""

from __future__ import annotations

import math
from collections.abc import Callable

from wellstrung.drawing.looks.rings import eye, wire_eye
from wellstrung.drawing.looks.shape import Draw
from wellstrung.drawing.looks.sizes import UNKNOWN, Sizes
from wellstrung.drawing.pen import Pen
from wellstrung.model.parts import Part

#: draws the body of a clasp between its eyes: along from 0, so long
Body = Callable[[Pen, float], None]


def toggle_ring(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """The ring of a toggle; the bar's stem bears where it begins."""
    inside = sizes.mm(part, "ring.inside")
    if inside is None:
        catch(pen, sizes, part, length)
        return
    wire = sizes.known(part, "ring.wire", 1.5)
    wire_eye(pen, inside, wire)
    pen.disc(inside / 2, inside, "measured", sizes.named(part, "ring.inside"))
    eye(pen.moved(inside + wire), sizes, part, "a")


def ring_reach(sizes: Sizes, part: Part) -> float:
    """How far the ring of a toggle reaches across."""
    return sizes.known(part, "ring.inside", 0.0) / 2 + sizes.known(part, "ring.wire", 0.0)


def toggle_bar(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """The bar of a toggle across the line, its stem and its eye."""
    bar = sizes.mm(part, "bar.length")
    if bar is None:
        end_eye(pen, sizes, part, length)
        return
    thick = sizes.known(part, "bar.thickness", 1.5)
    stem = max(length - sizes.known(part, "b.hole", 2.0), 0.5)
    pen.box(0, stem, sizes.known(part, "bar.stem_width", 1.0), "metal")
    pen.box(-thick, thick, bar, "metal", corner=thick / 2, of_width=sizes.named(part, "bar.length"))
    eye(pen.moved(stem), sizes, part, "b")


def stem_reach(sizes: Sizes, part: Part) -> float:
    """A label points to the stem of the bar."""
    return sizes.known(part, "bar.stem_width", 0.0) / 2


def _closed(body: Body) -> Draw:
    """A clasp of one closed length, with the eyes of both its halves."""

    def draw(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
        eye(pen.turned(length), sizes, part, "a")
        start = eye(pen, sizes, part, "b")
        end = sizes.known(part, "a.hole", 2.0) + sizes.known(part, "a.wire", 1.0)
        body(pen.moved(start), max(length - end - start, 1.0))

    return draw


def _two_halves(pen: Pen, long: float) -> None:
    for half in (0.0, long / 2):
        pen.box(half, long / 2, long * 0.6, "metal", corner=0.8)


def _ring_with_lever(pen: Pen, long: float) -> None:
    pen.ring(long / 2, long, long * 0.16, "metal")
    pen.disc(long / 2, long * 0.2, "metal", across=-long * 0.45)


def _lever(broad: float, thick: float) -> Body:
    """A link that opens at one side, so broad and thick in parts of its length."""

    def draw(pen: Pen, long: float) -> None:
        wide, wire = long * broad, long * thick
        pen.link(long / 2, long, wide, wire, "metal")
        pen.line([(long * 0.3, wide / 2), (long * 0.3 + wire, wide / 2 - wire)], "slit")

    return draw


halves, spring_ring = _closed(_two_halves), _closed(_ring_with_lever)
hook, catch = _closed(_lever(0.3, 0.1)), _closed(_lever(0.5, 0.15))


def button(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """A button with its two holes on the line that it is sewn to."""
    outside = part.size("button", "outside").middle if part.has("button", "outside") else 10.0
    pen.line([(0, 0), (length, 0)], "thread")
    pen.disc(length / 2, outside, "metal")
    for side in (-1.0, 1.0):
        pen.disc(length / 2 + side, 1.2, "hole")


def bead_loop(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """A loop of beads that goes over the button; without beads an eye."""
    if not part.has("loop", "beads"):
        end_eye(pen, sizes, part, length)
        return
    bead, count = part.text("loop", "beads"), part.count("loop", "count", default=12)
    along, outside = sizes.bead(bead)
    r = along * count / (2 * math.pi)
    for number in range(count):
        turn = 2 * math.pi * number / count
        spot = r * math.cos(turn) - r, r * math.sin(turn)
        pen.disc(spot[0], min(along, outside), sizes.look(bead), across=spot[1])


def end_eye(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """The eye of the second half of a clasp that is drawn closed at its first."""
    hole, wall = sizes.known(part, "b.hole", 2.0), sizes.known(part, "b.wire", 1.0)
    pen.ring(-hole / 2 - wall, hole + 2 * wall, wall, "metal open-size")


def grips(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """Two halves that grip the ends of a band, side by side, as wide as the band that they take."""
    end = part.traits.band_end
    wide = part.size(*end.across).middle if end and part.has(*end.across) else UNKNOWN
    for half in range(2):
        pen.box(half * length / 2, length / 2, wide, "metal", corner=0.8)
