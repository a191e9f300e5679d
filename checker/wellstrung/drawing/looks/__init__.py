"""How parts look, to scale: a shape by the look of the part's kind, drawn with a pen.

A part of the plan in, shapes on the pen's canvas out. A part is drawn from the spot where its outer
end bears on, so that two parts that hang in each other overlap by their wires as they do at the
bench. The looks are our own: seen from the front, plain outlines, beads as ovals; a size that the
plan does not say is dashed.
"""

from __future__ import annotations

from wellstrung.drawing.looks import cabochons, clasps, ends, pendants, rings, strung, wires, woven
from wellstrung.drawing.looks.shape import Draw, Shape, Share, SpotOf, none_across
from wellstrung.drawing.looks.sizes import UNKNOWN, Sizes
from wellstrung.drawing.pen import Pen
from wellstrung.model.parts import Part


def unknown(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """A part without a look of its own: a dashed box."""
    pen.box(0, length, UNKNOWN, "metal open-size", corner=1.0)


def _clasp(
    first: tuple[Draw, SpotOf], second: tuple[Draw, SpotOf], share: Share = clasps.half_of_all
) -> Shape:
    """A clasp by its two halves, what a label of each points to, and what the second takes."""
    other = Shape(second[0], none_across, spot=second[1])
    return Shape(first[0], none_across, spot=first[1], second=other, second_takes=share)


_EYE = clasps.end_eye, clasps.on_eye


def _of_wire(draw: Draw) -> Shape:
    return Shape(draw, wires.half_wire)


#: every shape that a kind's look can name
SHAPES = {
    "ring": Shape(rings.closed_ring),
    "open ring": Shape(rings.open_ring),
    "split ring": Shape(rings.split_ring),
    "soldered ring": Shape(rings.soldered_ring),
    "ring weave": Shape(rings.ring_weave),
    "cap": Shape(ends.cap),
    "ball": Shape(ends.ball),
    "tip": Shape(ends.tip),
    "cone": Shape(ends.cone),
    "crimp": Shape(ends.crimp),
    "coil": Shape(ends.coil),
    "wire link": _of_wire(wires.wire_link),
    "head pin": _of_wire(wires.head_pin),
    "briolette wrap": _of_wire(wires.briolette_wrap),
    "connector": Shape(wires.connector),
    "spacer bar": Shape(wires.spacer_bar),
    "end bar": Shape(wires.end_bar),
    "bail": Shape(wires.bail),
    "ear hook": _of_wire(wires.ear_hook),
    "ear hoop": _of_wire(wires.ear_hoop),
    "ear post": _of_wire(wires.ear_post),
    "pendant": Shape(
        pendants.lying, width=pendants.width, tops=pendants.tops, hang=pendants.pendant
    ),
    "woven": Shape(woven.whole),
    "strand": Shape(strung.whole_strand),
    "chain": Shape(strung.chain),
    "leg": Shape(strung.lying_leg, hang=strung.leg),
    "pouch": Shape(woven.pouch, none_across, flat=True),
    "bezel": Shape(woven.bezel, is_round=True),
    "cabochon": Shape(cabochons.cabochon),
    "toggle": _clasp(
        (clasps.toggle_ring, clasps.on_ring), (clasps.toggle_bar, clasps.on_bar)
    ),
    "hook": _clasp((clasps.hook, clasps.on_wall), _EYE, clasps.an_eye),
    "lobster": _clasp((clasps.lobster, clasps.on_wall), _EYE, clasps.an_eye),
    "spring ring": _clasp((clasps.spring_ring, clasps.on_wall), _EYE, clasps.an_eye),
    "S-hook": _clasp((clasps.s_hook, clasps.on_wall), _EYE, clasps.an_eye),
    "fold-over": _clasp((clasps.fold_over, clasps.on_line), _EYE, clasps.an_eye),
    "snap": _clasp((clasps.snap, clasps.on_loop), (clasps.snap, clasps.on_loop)),
    "sliding knots": _clasp((clasps.sliding, clasps.on_line), (clasps.sliding, clasps.on_line)),
    "magnet": _clasp((clasps.magnet_a, clasps.on_line), (clasps.magnet_b, clasps.on_line)),
    "box": _clasp((clasps.box_a, clasps.on_line), (clasps.box_b, clasps.on_line)),
    "button": _clasp(
        (clasps.button, clasps.on_loop), (clasps.bead_loop, clasps.on_loop), clasps.a_loop
    ),
    "slide": _clasp((clasps.tube_a, clasps.on_line), (clasps.tube_b, clasps.on_line)),
    "jaws": _clasp((clasps.jaw, clasps.in_jaw), (clasps.jaw, clasps.in_jaw)),
}  # fmt: skip
_UNKNOWN = Shape(unknown)


def shape_of(part: Part, half: str = "") -> Shape:
    """The shape of a part, or of one half of a clasp."""
    return SHAPES.get(part.shape, _UNKNOWN).half(half)
