"""Stones sewn down on a backing: their outline, and the rows of beads round it."""

from __future__ import annotations

import math
from itertools import accumulate

from wellstrung.drawing.looks.beads import lay
from wellstrung.drawing.looks.faces import Laid
from wellstrung.drawing.looks.sizes import Sizes
from wellstrung.drawing.pen import Pen
from wellstrung.model.beads import bead_rows
from wellstrung.model.parts import Part

#: into how many pieces an outline is cut
_POINTS = 720
#: how much of the width of a round that draws in over the stone is seen: judged by eye
_SEEN = 0.5
Points = list[tuple[float, float]]


def cabochon(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """From the front, its tip or its longest side up: backing, edging, rows, bezel and stone."""
    long = sizes.known(part, "stone", length * 0.8)
    stone = _outline(sizes, part, long)
    middle, width = length / 2, sizes.known(part, "width", length)
    rows = bead_rows(part, "beads")
    wide = [max(sizes.bead(name)[1] for name in row) for row in rows]
    backing = (sizes.known(part, "backing_length", length) - long) / 2
    if part.has("edge_row"):
        name = part.text("edge_row")
        out = sizes.bead(name)[0]
        _row(pen, sizes, [name], _away(stone, backing + out / 2), middle, out, along=False)
    pen.area([_placed(_away(stone, backing), middle)], "frame")
    for row, inner, own in zip(rows, accumulate(wide, initial=0.0), wide, strict=False):
        _row(pen, sizes, row, _away(stone, inner + own / 2), middle, own, along=True)
    pen.area([_placed(stone, middle)], "stone")
    rounds = bead_rows(part, "bezel")
    if rounds:
        own = max(sizes.bead(name)[1] for name in rounds[-1]) * _SEEN
        _row(pen, sizes, rounds[-1], _away(stone, -own / 2), middle, own, along=True, every=2)
    if width:
        pen.box(0, 0.0, width, "edge", of_width=sizes.named(part, "width"))


def bezelled(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """A stone that is not round in its bezel: the beads of its middle round about it."""
    outline = _outline(sizes, part, sizes.known(part, "stone", length * 0.8))
    rounds, middle = bead_rows(part, "beads"), length / 2
    row = rounds[len(rounds) // 2]
    wide = max(sizes.bead(name)[1] for name in row)
    pen.area([_placed(_away(outline, wide), middle)], "frame")
    _row(pen, sizes, row, _away(outline, wide / 2), middle, wide, along=True, every=2)
    pen.area([_placed(outline, middle)], "stone")
    if width := sizes.known(part, "width", 0.0):
        pen.box(0, 0.0, width, "edge", of_width=sizes.named(part, "width"))


def _row(
    pen: Pen, sizes: Sizes, row: list[str], line: Points, middle: float, wide: float, *,
    along: bool, every: int = 1,
) -> None:  # fmt: skip
    """Beads of a row side by side on its middle line, with their holes `along` it or across."""
    steps = [math.dist(one, other) for one, other in zip(line, [*line[1:], line[0]], strict=True)]
    whole = sum(steps)
    each = sum(sizes.bead(name)[0 if along else 1] for name in row) / len(row)
    beads = round(whole / (each * 1.05 * every))
    at, passed = 0, 0.0
    for number in range(beads):
        while at < len(line) - 1 and passed + steps[at] < number * whole / beads:
            passed, at = passed + steps[at], at + 1
        x, y = line[at]
        ahead, behind = line[(at + 1) % len(line)], line[at - 1]
        turn = math.atan2(ahead[1] - behind[1], ahead[0] - behind[0])
        size = (each, wide) if along else (wide, each)
        lean = turn if along else turn + math.pi / 2
        lay(pen, sizes, row[number % len(row)], Laid(middle + x, y, *size, lean), as_seen=False)


def _placed(points: Points, middle: float) -> Points:
    return [(middle + x, y) for x, y in points]


def _outline(sizes: Sizes, part: Part, long: float) -> Points:
    """Points round a stone of that length about its middle, its tip where it begins."""
    wide = sizes.known(part, "stone.width", long)
    shape = part.node_at("stone", "shape")
    turns = [2 * math.pi * number / _POINTS for number in range(_POINTS)]
    if shape is not None and shape.value == "pear":
        r = wide / 2
        tip = long - r
        touch = math.acos(min(r / tip, 1.0))
        centre = long / 2 - r
        arc = [touch + (2 * math.pi - 2 * touch) * n / _POINTS for n in range(_POINTS + 1)]
        round_end = [(centre - r * math.cos(t), -r * math.sin(t)) for t in arc]
        return _filled([(-long / 2, 0.0), *round_end])
    if shape is not None and shape.value == "square":
        rounded = part.node_at("stone", "corner")
        corner = part.size("stone", "corner").middle if rounded is not None else 0.0
        a, b = long / 2 - corner, wide / 2 - corner
        found: Points = []
        for quarter, (sx, sy) in enumerate(((1, 1), (-1, 1), (-1, -1), (1, -1))):
            for turn in (math.pi / 2 * (quarter + n / 60) for n in range(61)):
                x, y = corner * math.cos(turn), corner * math.sin(turn)
                found.append((sx * a + x, sy * b + y))
        return _filled(found)
    return [(long / 2 * math.cos(t), wide / 2 * math.sin(t)) for t in turns]


def _filled(corners: Points) -> Points:
    """Points at even steps along the sides of an outline."""
    sides = list(zip(corners, [*corners[1:], corners[0]], strict=True))
    step = sum(math.dist(*side) for side in sides) / _POINTS
    found: Points = []
    for one, other in sides:
        pieces = max(1, round(math.dist(one, other) / step))
        found += [
            (one[0] + (other[0] - one[0]) * n / pieces, one[1] + (other[1] - one[1]) * n / pieces)
            for n in range(pieces)
            if math.dist(one, other) > 1e-9
        ]
    return found


def _away(points: Points, away: float) -> Points:
    """The outline so far outside another: along the normal of each side, round each corner."""
    found: Points = []
    for at, (x, y) in enumerate(points):
        behind, ahead = points[at - 1], points[(at + 1) % len(points)]
        first = math.atan2(behind[0] - x, y - behind[1])
        turn = (math.atan2(x - ahead[0], ahead[1] - y) - first + math.pi) % (2 * math.pi) - math.pi
        pieces = max(1, round(abs(turn) / 0.05)) if away > 0 else 1
        for n in range(pieces):
            normal = first + turn * (n + 0.5) / pieces
            found.append((x + away * math.cos(normal), y + away * math.sin(normal)))
    return found
