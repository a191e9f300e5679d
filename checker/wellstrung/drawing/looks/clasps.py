"""Clasps, each half at its own end: drawn from where the halves meet when it is closed.

A part of a clasp's length that its halves share is divided where they bear on each other, so that
the piece laid out straight is as long as it is closed. Shapes are our own, from the geometry alone;
the shares of a length that they take, and what is drawn for a size that the plan does not give, are
from memory.
"""

from __future__ import annotations

import math

from wellstrung.drawing.canvas import Spot
from wellstrung.drawing.looks.beads import lay
from wellstrung.drawing.looks.laid import Laid
from wellstrung.drawing.looks.rings import eye, row_of_eyes, rows_across
from wellstrung.drawing.looks.sizes import UNKNOWN, Sizes
from wellstrung.drawing.looks.woven import worked
from wellstrung.drawing.outlines import arc, rod
from wellstrung.drawing.pen import Pen
from wellstrung.model.parts import Part

#: a loop of more beads is drawn as its thread alone
_MOST_IN_LOOP = 500
#: of a button and loop whose sizes the plan does not give: the button, mm, and the loop's beads
_BUTTON, _IN_LOOP = 10.0, 12


def toggle_ring(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """The ring of a toggle; the bar's stem bears where it begins."""
    known = sizes.mm(part, "ring.inside")
    inside = known if known is not None else max(length - _hole(sizes, part, "a"), 4.0)
    wire = sizes.known(part, "ring.wire", 1.5)
    woven = part.part("ring", "woven")
    look = "metal" if known else "metal open-size"
    look = look if woven is None else sizes.from_afar(woven)
    pen.ring(inside / 2, inside + 2 * wire, wire, look)
    if known:
        pen.disc(inside / 2, inside, "measured", sizes.named(part, "ring.inside"))
    if woven is None or sizes.mm(part, "a.hole") is not None:
        eye(pen.moved(inside + wire), sizes, part, "a")


def on_ring(sizes: Sizes, part: Part, length: float) -> Spot:
    """A label points to the wire of the ring."""
    inside = sizes.known(part, "ring.inside", max(length - _hole(sizes, part, "a"), 4.0))
    return inside / 2, -inside / 2 - sizes.known(part, "ring.wire", 1.5) / 2


def toggle_bar(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """The bar of a toggle across the line, its stem and its eye."""
    bar = sizes.mm(part, "bar.length")
    thick = sizes.known(part, "bar.thickness", 1.5)
    woven = part.part("bar", "woven")
    if woven is not None:
        _woven_bar(pen, sizes, part, woven, length)
        return
    stem = max(length - _hole(sizes, part, "b"), 0.5)
    pen.box(0, stem, sizes.known(part, "bar.stem_width", 1.0), "metal")
    look = "metal" if bar is not None else "metal open-size"
    quantity = sizes.named(part, "bar.length")
    pen.box(-thick, thick, bar or 2 * UNKNOWN, look, corner=thick / 2, of_width=quantity)
    eye(pen.moved(stem), sizes, part, "b")


def _woven_bar(pen: Pen, sizes: Sizes, part: Part, woven: Part, length: float) -> None:
    """A bar woven of beads across the line, on its stem."""
    bar = sizes.known(part, "bar.length", 2 * UNKNOWN)
    thick = sizes.known(part, "bar.thickness", 4.0)
    pen.box(0, length, sizes.known(part, "bar.stem_width", 1.0), sizes.from_afar(woven))
    x, y = pen.at(-thick / 2, -bar / 2)
    across = Pen(pen.canvas, x, y, upright=not pen.upright)
    worked(across, sizes, woven, bar)
    if sizes.mm(part, "b.hole") is not None:
        eye(pen.moved(length - _hole(sizes, part, "b")), sizes, part, "b")


def on_bar(sizes: Sizes, part: Part, length: float) -> Spot:
    """A label points to the bar."""
    across = sizes.known(part, "bar.length", 2 * UNKNOWN) / 4
    return -sizes.known(part, "bar.thickness", 1.5) / 2, -across


def half_of_all(sizes: Sizes, part: Part, whole: float) -> float:
    """Both halves take as much of the clasp's length."""
    return whole / 2


def an_eye(sizes: Sizes, part: Part, whole: float) -> float:
    """The second half is an eye, and takes its hole."""
    return min(_hole(sizes, part, "b"), whole * 0.4)


def _hole(sizes: Sizes, part: Part, half: str) -> float:
    return sizes.known(part, f"{half}.hole", 2.0)


def _to_eye(pen: Pen, sizes: Sizes, part: Part, half: str, length: float) -> float:
    """Draw the eye at the inner end of a half; where its body ends."""
    return max(length - row_of_eyes(pen.turned(length), sizes, part, half), 1.0)


def hook(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """A hook of wire, its tip bent back; the eye of the other half lies in its bend."""
    end = _to_eye(pen, sizes, part, "a", length)
    wire = sizes.known(part, "a.wire", 1.0)
    r = min(max(sizes.known(part, "b.wire", wire), 1.0), end / 3) + wire / 2
    middle = r - wire / 2
    bend = arc(middle, 0.0, r, -90, -180)
    tip = [(middle + 1.2 * r, r * 1.05), (middle + 1.7 * r, r * 1.35)]
    shank = [(end, 0.0), (end - 0.15 * (end - middle), -r * 0.35), (middle + 0.4 * r, -r)]
    pen.area([rod([*shank, *bend, *tip], wire)], "metal")


def lobster(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """A claw with its lever; the eye of the other half lies at the tip of its opening."""
    end = _to_eye(pen, sizes, part, "a", length)
    wall = min(sizes.known(part, "a.wire", 1.0), end / 5)
    wide, long = (end + wall) * 0.6, end + wall
    turns = [math.radians(n * 10) for n in range(36)]

    def drop(start: float, long: float, wide: float) -> list[Spot]:
        """An oval that is wider where it starts."""
        return [
            (
                start + long * (1 - math.cos(turn)) / 2,
                wide / 2 * math.sin(turn) * (1 + 0.35 * math.cos(turn)),
            )
            for turn in turns
        ]

    opening = drop(0.0, end * 0.66, wide - 2.4 * wall)
    pen.line([(end * 0.62, wide * 0.3), (end * 0.55, wide * 0.6)], "wire-line")
    pen.area([drop(-wall, long, wide), opening], "metal")
    # the gate that the lever opens, from its tip to its hinge
    for at in (0.0, 0.55):
        pen.line([(end * at, wide * 0.28), (end * at - wall * 0.6, wide * 0.56)], "seam")


def spring_ring(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """A round of tube with its lever, and the eye that it hangs by."""
    end = _to_eye(pen, sizes, part, "a", length)
    tube = end * 0.16
    pen.line([(end * 0.2, -end * 0.42), (end * 0.02, -end * 0.62)], "wire-line")
    pen.ring((end - tube) / 2, end + tube, tube, "metal")
    for turn in (-40, 20):
        near, far = (arc(end / 2, 0.0, r, turn - 100, 0, 1)[0] for r in (end * 0.42, end * 0.58))
        pen.line([near, far], "seam")


def s_hook(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """An S of wire: its closed bend holds the piece, its open one the ring of the other half."""
    wire = sizes.known(part, "a.wire", 1.2)
    small = sizes.known(part, "a.hole", 4.0) / 2 + wire / 2
    large = max((length + wire - 2 * small) / 2, small * 0.6)
    near = arc(large - wire / 2, 0.0, large, -20, -250)
    far = arc(length - small + wire / 2, 0.0, small, -90, 300)
    pen.area([rod([*near, *far], wire)], "metal")


def fold_over(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """A flat tongue that folds over a bar and snaps shut, and its eye."""
    end = _to_eye(pen, sizes, part, "a", length)
    wide = max(end * 0.35, _over_eyes(sizes, part, "a"))
    pen.box(-0.8, end + 0.8, wide, "metal", corner=0.8)
    pen.line([(end * 0.12, -wide / 2), (end * 0.12, wide / 2)], "seam")


def snap(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """Half a snap under the end of its band: hidden, as many as lie side by side."""
    across = part.size("snap", "outside").middle if part.has("snap", "outside") else UNKNOWN
    count = part.count("snap", "count", default=1)
    for number in range(count):
        at = (number - (count - 1) / 2) * 1.5 * across
        pen.disc(across / 2, across, "hidden", across=at)
        pen.disc(across / 2, across * 0.3, "hidden", across=at)


def end_eye(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """The eye that the other half closes into; dashed where the plan does not give it."""
    hole, wall = sizes.mm(part, "b.hole"), sizes.known(part, "b.wire", 1.0)
    look = "metal" if hole is not None else "metal open-size"
    inside = hole if hole is not None else length
    for across in rows_across(sizes, part, "b"):
        pen.ring(length - inside / 2, inside + 2 * wall, wall, look, across=across)


def on_eye(sizes: Sizes, part: Part, length: float) -> Spot:
    """A label points to the wire of an eye at the inner end."""
    hole = sizes.known(part, "b.hole", length)
    return length - hole / 2, -hole / 2 - sizes.known(part, "b.wire", 1.0) / 2


def magnet_a(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """One half of a magnetic clasp: a barrel with the magnet in its face, and its eye."""
    _barrel(pen, sizes, part, "a", length)


def magnet_b(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """The other half."""
    _barrel(pen, sizes, part, "b", length)


def _barrel(pen: Pen, sizes: Sizes, part: Part, half: str, length: float) -> None:
    end = _to_eye(pen, sizes, part, half, length)
    wide = max(end * 1.1, 3.0, _over_eyes(sizes, part, half))
    pen.box(0, end, wide, "metal", corner=0.6)
    pen.box(0, min(end * 0.25, 1.0), wide * 0.7, "hole")


def _over_eyes(sizes: Sizes, part: Part, half: str) -> float:
    """How wide a body is that carries a row of eyes; 0 where it has one."""
    first, *others = rows_across(sizes, part, half)
    return 2 * (abs(first) + _hole(sizes, part, half)) if others else 0.0


def box_a(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """The box of a box clasp, its slot in front, and its eye."""
    end = _to_eye(pen, sizes, part, "a", length)
    pen.box(0, end, max(end * 0.9, _over_eyes(sizes, part, "a")), "metal", corner=0.6)
    pen.box(0, end * 0.35, end * 0.2, "hole")


def box_b(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """The tongue of a box clasp, folded and bare, its plate and its eye."""
    end = _to_eye(pen, sizes, part, "b", length)
    wide = max(end * 0.9, _over_eyes(sizes, part, "b"))
    pen.box(-end * 0.9, end * 0.9, wide * 0.45, "metal", corner=0.4)
    pen.line([(-end * 0.75, -wide * 0.12), (0.0, -wide * 0.12)], "seam")
    pen.box(0, end, wide, "metal", corner=0.6)


def sliding(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """Both cords side by side, and a knot round them: two at the work, one where they cross."""
    knot = sizes.known(part, "knot", 5.0)
    turns = part.count("sliding", "turns", default=4)
    across = knot / (turns + 1)
    for side in (-across / 2, across / 2):
        pen.line([(0, side), (length, side)], "thread")
    one = part.count("sliding", "knots", default=2) == 1
    start, long = (0.0, knot / 2) if one else (max(length - knot, 0.0), knot)
    pen.box(start, long, 3 * across, "cord", corner=across / 2)


def button(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """A button with its two holes, over the thread that it is sewn with."""
    pen.line([(0, 0), (length, 0)], "thread")
    known = part.has("button", "outside")
    pen.disc(0, _across_button(part), "metal" if known else "metal open-size")
    for side in (-1.0, 1.0):
        pen.disc(side, 1.2, "hole")


def _across_button(part: Part) -> float:
    known = part.has("button", "outside")
    return part.size("button", "outside").middle if known else _BUTTON


def a_loop(sizes: Sizes, part: Part, whole: float) -> float:
    """The loop pulled long takes half of its way round, of what the clasp takes closed."""
    return min(_round_loop(sizes, part) * 0.45, whole * 0.8)


def _round_loop(sizes: Sizes, part: Part) -> float:
    """How long a loop is all the way round: of its beads, or what a button needs."""
    if part.has("loop", "beads"):
        bead, count = _in_loop(part)
        return sizes.bead(bead)[0] * count
    return math.pi * _across_button(part) * 0.8


def _in_loop(part: Part) -> tuple[str, int]:
    """The bead of a loop, and how many it has."""
    return part.text("loop", "beads"), part.count("loop", "count", default=_IN_LOOP)


def bead_loop(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """A loop that goes over the button, of beads or of thread alone."""
    round_loop = _round_loop(sizes, part)
    wide = max(2 * round_loop / math.pi - length, length * 0.35)
    turns = [2 * math.pi * n / 48 for n in range(49)]
    oval = [(length / 2 * (1 + math.cos(turn)), wide / 2 * math.sin(turn)) for turn in turns]
    pen.line(oval, "thread")
    if not part.has("loop", "beads"):
        return
    bead, count = _in_loop(part)
    along, outside = sizes.bead(bead)
    for number in range(count if count <= _MOST_IN_LOOP else 0):
        turn = 2 * math.pi * (number + 0.5) / count
        x, y = length / 2 * (1 + math.cos(turn)), wide / 2 * math.sin(turn)
        leaning = math.atan2(wide * math.cos(turn), -length * math.sin(turn))
        lay(pen, sizes, bead, Laid(x, y, along, outside, leaning), as_seen=False)


def on_loop(sizes: Sizes, part: Part, length: float) -> Spot:
    """A label points to where the loop bears."""
    return 0.0, 0.0


def on_line(sizes: Sizes, part: Part, length: float) -> Spot:
    """A label points to the body on the line itself."""
    return length * 0.3, 0.0


def on_wall(sizes: Sizes, part: Part, length: float) -> Spot:
    """A label points to the wire of a claw or a hook where the other half bears."""
    return -sizes.known(part, "a.wire", 1.0) * 0.3, 0.0


def _width(sizes: Sizes, part: Part) -> float:
    """How wide an end of a band is, by the band that it takes."""
    end = part.traits.band_end
    return part.size(*end.across).middle if end and part.has(*end.across) else UNKNOWN


def tube_a(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """The outer tube of a slide clasp across the band, with the slot that the other slides in."""
    wide = max(_width(sizes, part), _over_eyes(sizes, part, "a"))
    length = _to_eye(pen, sizes, part, "a", length) if part.has("a") else length
    pen.box(0, length, wide, "metal", corner=0.5)
    pen.box(0, length * 0.3, wide * 0.94, "hole")


def tube_b(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """The inner tube, which slides into the outer one, on its rail."""
    wide = max(_width(sizes, part), _over_eyes(sizes, part, "b"))
    length = _to_eye(pen, sizes, part, "b", length) if part.has("b") else length
    pen.box(length * 0.4, length * 0.6, wide, "metal", corner=0.5)
    pen.box(-length * 0.35, length * 0.5, wide * 0.92, "metal", corner=length * 0.2)
    pen.box(length * 0.15, length * 0.25, wide * 0.92, "metal")


def jaw(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """A ribbon end: its jaw over the end of the band, with teeth, and a ring at its outer end."""
    wide = _width(sizes, part)
    depth = sizes.known(part, "depth", 2.0)
    start = max(length - 2.0, length * 0.5)
    pen.ring(start / 2, start + 1.0, 0.8, "metal")
    pen.box(start, length + depth - start, wide, "metal", corner=0.4)
    teeth = max(round(wide / 1.5), 2)
    zigzag = [
        (length + depth * (0.35, 0.75)[n % 2], wide * (n / teeth - 0.5)) for n in range(teeth + 1)
    ]
    pen.line(zigzag, "seam")


def in_jaw(sizes: Sizes, part: Part, length: float) -> Spot:
    """A label points to the jaw."""
    return length, -_width(sizes, part) * 0.3
