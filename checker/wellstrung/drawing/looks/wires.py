"""Links of wire, pins, bars and what goes through the ear."""

from __future__ import annotations

import math

from wellstrung.drawing.looks.beads import bead as one_bead
from wellstrung.drawing.looks.breaks import left_out
from wellstrung.drawing.looks.rings import eye, row_of_eyes, rows_across, wire_eye
from wellstrung.drawing.looks.sizes import UNKNOWN, Sizes
from wellstrung.drawing.pen import Pen
from wellstrung.model.beads import bead_mix
from wellstrung.model.parts import Part

#: no more beads on a wire are drawn one by one
_MOST_ON_WIRE = 200
#: how far from its middle the wire goes into the top of a drop, in parts of its width: by eye
_TOP = 0.2


def half_wire(sizes: Sizes, part: Part) -> float:
    """What is seen of it beside its line is its wire."""
    return sizes.known(part, "wire", 0.0) / 2


def wire_link(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """A loop with its wraps, beads, and a loop at the other end, but where a cone covers that."""
    at = _loop_and_beads(pen, sizes, part)
    if part.part("over") is None:
        hole, wire, wraps = _loop(sizes, part)
        if wraps:
            pen.box(at, wraps, 3 * wire, "metal wraps")
        wire_eye(pen.moved(at + wraps + wire), hole, wire)


def head_pin(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """A loop with its wraps, beads, and the head of the pin."""
    at = _loop_and_beads(pen, sizes, part)
    _, wire, _ = _loop(sizes, part)
    pen.box(at, wire, 2.5 * wire, "metal")


def briolette_wrap(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """A loop with its wraps, the two sides of the wire down to the hole, and the drop below."""
    hole, wire, wraps = _loop(sizes, part)
    wraps = wraps or 3 * wire
    wire_eye(pen, hole, wire)
    pen.box(hole + wire, wraps, 3 * wire, "metal wraps")
    for name in list(sizes.mix(part))[:1]:
        at, half = hole + wire + wraps, sizes.bead(name)[0] / 2
        for side in (-1, 1):  # into the hole from both sides of its narrow top
            edge = side * min(half, sizes.bead(name)[1] * _TOP)
            pen.line([(at, 0.0), (at + half * 0.7, edge), (at + half * 1.2, edge)], "wire-line")
        one_bead(pen, sizes, name, at + half + sizes.height(name) / 2, turned=True)


def _loop(sizes: Sizes, part: Part) -> tuple[float, float, float]:
    """Hole of its loops, wire, and how far the wraps reach that close them."""
    wire = sizes.known(part, "wire", 0.8)
    wrapped = part.has("loops") and part.text("loops") == "wrapped"
    wraps = part.number("wraps", default=3) * wire if wrapped else 0.0
    return sizes.known(part, "loop.hole", 2.5), wire, wraps


def _loop_and_beads(pen: Pen, sizes: Sizes, part: Part) -> float:
    """The first loop and the beads; returns where they end."""
    hole, wire, wraps = _loop(sizes, part)
    at = hole + wire + wraps
    pen.box(hole, at + sizes.known(part, "stack", 0.0) - hole, wire, "metal")
    wire_eye(pen, hole, wire)
    if wraps:
        pen.box(hole + wire, wraps, 3 * wire, "metal wraps")
    if part.has("beads"):
        count = part.count("count", default=sum(bead_mix(part).values()))
        at = _stacked(pen, sizes, part, count, at)
    return at


def _stacked(pen: Pen, sizes: Sizes, part: Part, count: int, at: float) -> float:
    """Beads on a wire, one after another, of very many the first and a break; where they end."""
    end = at + sizes.known(part, "stack", 0.0)
    some = count if count <= _MOST_ON_WIRE else _MOST_ON_WIRE // 2
    for bead in sizes.sequence(part, some):
        along, _ = sizes.bead(bead)
        one_bead(pen, sizes, bead, at + along / 2)
        at += along
    if some == count:
        return at
    half = max(sizes.bead(bead)[1] for bead in sizes.mix(part)) / 2 + 1.0
    left_out(pen, at, end, half, count)
    return end


def connector(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """Its two eyes and the body between them."""
    hole, wall = sizes.known(part, "eyes.hole", 2.0), sizes.known(part, "eyes.wire", 1.0)
    width = sizes.mm(part, "width")
    for end in (pen, pen.turned(length)):
        wire_eye(end, hole, wall)
    look = "metal" if width else "metal open-size"
    body = max(length - 2 * (hole + wall), 0.5)
    pen.box(hole + wall, body, width or hole + 2 * wall, look, corner=1.0)


def spacer_bar(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """A bar across the strands with its holes."""
    count = part.count("holes", "count", default=1)
    hole = sizes.known(part, "holes.hole", 1.2)
    spacing = sizes.known(part, "holes.spacing", hole + 2.0)
    pen.box(0, length, (count - 1) * spacing + hole + 2.0, "metal", corner=0.5)
    for number in range(count):
        pen.box(0, length, hole, "hidden", across=(number - (count - 1) / 2) * spacing)


def end_bar(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """From its one eye to the bar with a loop for each strand."""
    reach = eye(pen, sizes, part, "eye")
    back = row_of_eyes(pen.turned(length), sizes, part, "holes")
    first = rows_across(sizes, part, "holes")[0]
    wide = 2 * (abs(first) + sizes.known(part, "holes.hole", 1.5))
    pen.box(reach, max(length - reach - back, 0.8), wide, "metal", corner=0.5)


def bail(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """A loop that goes round what carries it, and the eye at its foot."""
    eye_hole = sizes.known(part, "eye.hole", 2.0)
    loop = max(length - eye_hole, sizes.known(part, "inside", UNKNOWN / 2))
    pen.oval(loop / 2, loop, loop * 0.6, "metal")
    eye(pen.moved(loop), sizes, part, "eye")


def ear_hook(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """From where it bears in the ear, over the lobe and down to its eye."""
    start = _eye_below(pen, sizes, part, length)
    r = min(start * 0.3, 4.0)
    turns = [math.pi * n / 12 for n in range(13)]
    arch = [(r - r * math.sin(turn), r - r * math.cos(turn)) for turn in turns]
    pen.line([(start, 0.0), *arch, (start * 0.8, 2 * r)], "wire-line")


def ear_hoop(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """A ring through the ear, with its eye below."""
    start = _eye_below(pen, sizes, part, length)
    pen.ring(start / 2, start, sizes.known(part, "wire", 0.8), "metal")
    if not part.has("beads"):
        return
    count = min(part.count("count", default=sum(bead_mix(part).values())), _MOST_ON_WIRE)
    middle = (start - sizes.known(part, "wire", 0.8)) / 2
    row = [(bead, *sizes.bead(bead)) for bead in sizes.sequence(part, count)]
    turns = [2 * math.atan(along / (2 * middle - wide)) for _, along, wide in row]
    turned = -sum(turns) / 2
    for (bead, _, wide), turn in zip(row, turns, strict=True):  # from the foot, to both sides
        at, across = math.cos(turned + turn / 2), math.sin(turned + turn / 2)
        pen.disc(start / 2 + middle * at, wide, sizes.look(bead), across=middle * across)
        turned += turn


def ear_post(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """A post, its pad seen from the front, and its eye where it has one."""
    wire = sizes.known(part, "wire", 0.8)
    start = _eye_below(pen, sizes, part, length) if length else 0.0
    pen.box(-wire, start + wire, wire, "metal")
    pen.disc(start - 1.5 if length else 0.0, sizes.known(part, "pad", 3.0), "metal")


def _eye_below(pen: Pen, sizes: Sizes, part: Part, length: float) -> float:
    """The eye at the foot, in its own wire where the plan does not say; returns where it begins."""
    wire = sizes.known(part, "wire", 0.8)
    hole = sizes.known(part, "eye.hole", 2.0)
    start = max(length - hole, wire)
    wire_eye(pen.moved(start), hole, sizes.known(part, "eye.wire", wire))
    return start
