"""One bead: an oval, or the outline that its family has in the trade tables."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence

from msgspec.structs import replace

from wellstrung.drawing.canvas import Spot
from wellstrung.drawing.looks.laid import Laid
from wellstrung.drawing.looks.sizes import Sizes
from wellstrung.drawing.looks.tones import grain, grain_of
from wellstrung.drawing.pen import Pen

# Outlines are our own drawings from memory, no source: a bead's real shape is its maker's.
#: corners, in parts of the bead's length along its hole and of its outside
_OUTLINES: Mapping[str, Sequence[Spot]] = {
    "bicone": ((-0.5, -0.14), (0, -0.5), (0.5, -0.14), (0.5, 0.14), (0, 0.5), (-0.5, 0.14)),
    "box": ((-0.5, -0.5), (0.5, -0.5), (0.5, 0.5), (-0.5, 0.5)),
    "facets": (
        *((-0.5, -0.21), (-0.21, -0.5), (0.21, -0.5), (0.5, -0.21)),
        *((0.5, 0.21), (0.21, 0.5), (-0.21, 0.5), (-0.5, 0.21)),
    ),
    "chip": (
        *((-0.5, -0.1), (-0.3, -0.5), (0.2, -0.42), (0.5, -0.1)),
        *((0.38, 0.4), (-0.1, 0.5), (-0.45, 0.3)),
    ),
}
#: corners of what hangs by a hole through its top, in parts of its width and of its height, down
_HANGING: Mapping[str, Sequence[Spot]] = {
    "drop": (
        *((-0.14, -0.06), (0.14, -0.06), (0.25, 0.2), (0.44, 0.45), (0.5, 0.64), (0.42, 0.82)),
        *((0.22, 0.92), (0, 0.94), (-0.22, 0.92), (-0.42, 0.82), (-0.5, 0.64)),
        *((-0.44, 0.45), (-0.25, 0.2)),
    ),
    "dagger": (
        *((-0.2, -0.06), (0.2, -0.06), (0.32, 0.2), (0.5, 0.62), (0.36, 0.8)),
        *((0, 0.94), (-0.36, 0.8), (-0.5, 0.62), (-0.32, 0.2)),
    ),
}
#: how far the corners of a bead from the side are round, in parts of its length and its outside
_ROUNDED: Mapping[str, Spot] = {"barrel": (0.5, 0.3), "tube": (0.14, 0.12)}
#: how much of its place a bead of woven work fills at most, so that neighbours can be seen apart
FILLED = 0.96
#: the hole of a bead that is seen end on, in parts of its outside: from memory, no source
_HOLE = 0.36


def bead(pen: Pen, sizes: Sizes, name: str, middle: float, *, turned: bool = False) -> None:
    """A bead of the palette with its middle at `middle`; `turned` with its hole across the line."""
    length, outside = sizes.bead(name)
    if sizes.outline(name) in _HANGING:
        height, top = sizes.height(name), middle
        spots = [(outside * wide, height * down) for wide, down in _HANGING[sizes.outline(name)]]
        if turned:  # down the line, from where its top lies
            top = middle - height / 2
            spots = [(down + 0.06 * height, wide) for wide, down in spots]
        pen.line([(top + x, y) for x, y in (*spots, spots[0])], sizes.look(name))
        low, high = min(x for x, _ in spots), max(x for x, _ in spots)
        lies = math.pi / 2 if turned else 0
        across = min(outside, high - low)
        _grain(pen, sizes, name, Laid(top + (low + high) / 2, 0, across, across, lies))
        return
    _seen(pen, sizes, name, Laid(middle, 0, length, outside, math.pi / 2 if turned else 0))


def lay(pen: Pen, sizes: Sizes, name: str, place: Laid, *, as_seen: bool) -> None:
    """A bead of woven work in its place, no larger than it is but where it is `as_seen`."""
    most = (math.inf, math.inf) if as_seen else sizes.bead(name)
    long, wide = (
        min(room * FILLED, own) for room, own in zip((place.long, place.wide), most, strict=True)
    )
    if place.end_on:
        pen.disc(place.along, wide, sizes.look(name), across=place.across)
        pen.disc(place.along, _HOLE * wide, "bore", across=place.across)
        return
    _seen(pen, sizes, name, replace(place, long=long, wide=wide))


def swatch(pen: Pen, sizes: Sizes, name: str, size: float) -> None:
    """A bead of the key, about the pen's place: so large whatever its own size is."""
    long, wide = sizes.bead(name)
    share = size / max(long, wide)
    at_least = 0.6 * size
    place = Laid(0, 0, max(long * share, at_least), max(wide * share, at_least))
    _seen(pen, sizes, name, place)


def _seen(pen: Pen, sizes: Sizes, name: str, one: Laid) -> None:
    """A bead from the side, by the outline of its family."""
    outline, look = sizes.outline(name), sizes.look(name)
    if outline in _ROUNDED:
        x, y = _ROUNDED[outline]
        corner = one.long * x, one.wide * y
        pen.rounded(one.along, one.long, one.wide, look, corner, one.across, one.turn)
    elif outline in _OUTLINES:
        spots = [one.spot(*corner) for corner in _OUTLINES[outline]]
        pen.line([*spots, spots[0]], look)
    else:
        pen.oval(one.along, one.long, one.wide, look, one.across, one.turn)
    _grain(pen, sizes, name, one)


def _grain(pen: Pen, sizes: Sizes, name: str, one: Laid) -> None:
    grain(pen, one, grain_of(sizes.number(name)), sizes.colour(name))
