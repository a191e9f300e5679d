"""Clasp, in two halves; of a toggle `a` is the ring and `b` the bar.

Closed and pulled taut, the bar's stem lies against the far inside of the ring, so the two halves
together add: eye hole of the ring, its wire, its inside, then stem and eye hole of the bar.
Geometry, worked out for this project. A slide clasp and ribbon ends are sewn, glued or clamped on
the end of a band, and have no eyes.
"""

from __future__ import annotations

from wellstrung.derived.declared import (
    GEOMETRY,
    allowed,
    constant,
    formula,
    mass,
    same_as,
    size,
    total,
    wire,
    written_or,
)
from wellstrung.formulas import rings
from wellstrung.kinds.plain import TWO_WIRES, end_wall
from wellstrung.model.looks import Look
from wellstrung.model.parts import BandEnd, EyeField, Kind, Part, Role, Traits
from wellstrung.model.plan import Quantities
from wellstrung.model.sold import Sold
from wellstrung.quantity.value import Quantity
from wellstrung_schemas import fragment

_STEM = size("bar", "stem", allowance="part length")
_CLOSED = size("closed_length", allowance="part length")
_RING_HALF = total("a.along", "mm", "a.hole", wire("ring", "wire"), "ring.inside", source=GEOMETRY)
_BAR_HALF = total(
    "b.along",
    "mm",
    _STEM,
    "b.hole",
    allowed(
        "seat",
        0.0,
        "toggle seat",
        "seat when closed",
        "close {part}, pull, measure between the eyes, write `closed_length: ...`",
    ),
    source=GEOMETRY,
)


#: all of a stated closed length less both end walls counts at the first half
_LESS_WALLS = formula(
    "a.along",
    "mm",
    lambda closed, wall_a, wall_b: closed - wall_a - wall_b,
    closed=_CLOSED,
    wall_a=end_wall("a"),
    wall_b=end_wall("b"),
)
#: what a pair of ribbon ends adds: over all, less what of the band lies in either jaw
_BETWEEN_BANDS = formula(
    "a.along",
    "mm",
    lambda closed, depth: closed - 2 * depth,
    closed=_CLOSED,
    depth=size("jaw", "depth", allowance="part length"),
    source=GEOMETRY,
)
#: the ends of a band that is snapped shut overlap
_OVERLAP = formula(
    "a.along",
    "mm",
    lambda overlap: -overlap,
    overlap=size("snap", "overlap", allowance="part length"),
    source=GEOMETRY,
)
_WITHOUT_EYES = {
    "button and loop": _CLOSED,
    "slide": _CLOSED,
    "ribbon end": _BETWEEN_BANDS,
    "snap": _OVERLAP,
}
_COUNTED = constant("b.along", 0.0, "mm", "counted at the first half")


def _stem_width(part: Part, ask: Quantities) -> Quantity:
    """As written; otherwise as wide as the wall of the bar's eye, common practice of castings."""
    if not (part.has("bar") or part.by_size):
        raise part.missing("bar", "stem_width")
    return _WRITTEN_WIDTH(part, ask)


_WRITTEN_WIDTH = written_or(
    size("bar", "stem_width", allowance="part length"),
    ("bar", "stem_width"),
    otherwise=same_as("b.wire"),
)


def _by_its_parts(part: Part) -> bool:
    """Whether a toggle is worked out from its ring and bar, with no closed length to go by."""
    return part.traits.swings and not part.has("closed_length")


def _first_half(part: Part, ask: Quantities) -> Quantity:
    half = _RING_HALF if _by_its_parts(part) else _LESS_WALLS
    if part.has("a"):
        return half(part, ask)  # a slide clasp whose tubes have loops
    return _WITHOUT_EYES.get(part.text("type"), half)(part, ask)


def _second_half(part: Part, ask: Quantities) -> Quantity:
    return (_BAR_HALF if _by_its_parts(part) else _COUNTED)(part, ask)


_SIZE_IS = {
    "slide": ("tube", "length"),
    "ribbon end": ("jaw", "width"),
    "snap": ("snap", "outside"),
}

CLASP = Kind(
    "clasp",
    fragment("clasp"),
    Role.CLASP,
    eyes={
        "a": EyeField(("a", "eye"), swinging=("ring", "eye"), called=("ring", "button", "hook")),
        "b": EyeField(("b", "eye"), swinging=("bar", "eye"), called=("bar", "loop", "eye")),
    },
    quantities={
        "ring.inside": written_or(
            size("ring", "inside", allowance="ring size"),
            ("ring", "inside"),
            otherwise=formula(
                "ring inside",
                "mm",
                rings.inside_of,
                outside=size("ring", "outside", allowance="ring size"),
                wire=wire("ring", "wire"),
                source=TWO_WIRES,
            ),
        ),
        "bar.length": size("bar", "length", allowance="part length"),
        "bar.thickness": wire("bar", "thickness"),
        "bar.stem_width": _stem_width,
        # from the bar to where the next part bears in its eye
        "bar.to_the_run": total("bar to the run", "mm", _STEM, "b.hole", source=GEOMETRY),
        "a.along": _first_half,
        "b.along": _second_half,
        "mass": mass("mass"),
    },
    types={
        "toggle": Traits(swings=True),
        "magnetic": Traits(magnetic=True),
        "button and loop": Traits(buttons=True),
        "slide": Traits(
            band_end=BandEnd(("tube", "length"), ("tube", "slot"), grips=("tube", "slot"))
        ),
        "ribbon end": Traits(
            band_end=BandEnd(("jaw", "width"), ("jaw", "gap"), grips=("jaw",), joined_by="crimp")
        ),
        "snap": Traits(
            band_end=BandEnd(("snap", "outside"), on=True),
            side_by_side=("snap", "count"),
        ),
    },
    look=Look(
        "lobster",
        types={
            "toggle": "toggle",
            "hook": "hook",
            "magnetic": "magnet",
            "box": "box",
            "spring ring": "spring ring",
            "button and loop": "button",
            "slide": "slide",
            "ribbon end": "jaws",
            "S-clasp": "S-hook",
            "fold-over": "fold-over",
            "barrel": "magnet",
            "snap": "snap",
        },
        label=(("ring.inside", "inside"), ("a.along", "closed")),
        second_label=(("bar.length", "bar"),),
    ),
    sold=Sold("clasps", size_is=_SIZE_IS),
)
