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
from wellstrung.formulas.arithmetic import most, pi
from wellstrung.kinds import buttons, sliding
from wellstrung.kinds.plain import TWO_WIRES, end_wall
from wellstrung.model.looks import Look
from wellstrung.model.parts import BandEnd, EyeField, Formula, Kind, Part, Role, Traits
from wellstrung.model.plan import Quantities
from wellstrung.model.references import WOVEN_HALVES
from wellstrung.model.sold import Sold
from wellstrung.quantity.arithmetic import derived, exact
from wellstrung.quantity.arithmetic import total as total_of
from wellstrung.quantity.value import Quantity
from wellstrung.stitches import making
from wellstrung_schemas import fragment


def zipped_wall(rounds: float, rise: float, bead_outside: float) -> float:
    """How thick a hollow ring with zipped edges is, mm: its rounds lie side by side in a circle.

    Geometry, worked out for this project. Its middle line is as long as the hoop is round: 50
    cylinders, 10/0 with 11/0 in ten rounds, are then 29.9 mm outside and about 32 mm in print, 11/0
    with 15/0 24.0 mm and about 22 mm (`Boot camp: peyote hoops`, copy seen).

    >>> round(zipped_wall(rounds=10, rise=0.9, bead_outside=1.8), 1)
    4.7
    """
    return rounds * rise / pi + bead_outside


def ring_inside(middle: float, wall: float) -> float:
    """Inside of a ring, mm, from its middle line across and its wall; 0 where none is left.

    Geometry.

    >>> round(ring_inside(middle=25.0, wall=4.7), 1)
    20.3
    """
    return most(0, middle - wall)


def _woven_wall(part: Part, ask: Quantities) -> Quantity:
    """How thick a woven ring is: a bead, a zipped tube, or the rope that it is made of."""
    hoop = part.parts[part.text("ring", "woven")]
    bead = making.fattest(hoop, ask)
    joined = part.text("ring", "joined") if part.has("ring", "joined") else ""
    if joined == "ends":
        return ask.of(hoop, "outside")
    if not joined:
        return bead
    sizes = {"rounds": ask.of(hoop, "rounds"), "rise": ask.of(hoop, "rise"), "bead_outside": bead}
    return derived(f"{part.name}.ring wall", "mm", zipped_wall, sizes, source=GEOMETRY)


def _woven_inside(part: Part, ask: Quantities) -> Quantity:
    """The opening of a woven ring."""
    hoop, name = part.parts[part.text("ring", "woven")], f"{part.name}.ring inside"
    joined = part.text("ring", "joined") if part.has("ring", "joined") else ""
    if not joined:
        return ask.of(hoop, "inside")
    middle = {
        "ends": derived(
            "middle line", "mm", lambda length: length / pi, length=ask.of(hoop, "length")
        ),
        "edges": ask.of(hoop, "inside") + making.fattest(hoop, ask),
    }[joined]
    wall = ask.of(part, "ring.wire")
    return derived(name, "mm", ring_inside, middle=middle, wall=wall, source=GEOMETRY)


def _or_woven(half: str, field: str, bought: Formula, woven: Formula) -> Formula:
    """A size of the ring or the bar of a toggle: as written, or of the rope that it is woven as."""

    def found(part: Part, ask: Quantities) -> Quantity:
        own = part.has(half, "woven") and not part.has(half, field)
        return (woven if own else bought)(part, ask)

    return found


def _of_bar(what: str) -> Formula:
    return lambda part, ask: ask.of(part.parts[part.text("bar", "woven")], what)


def _hole(half: str, key: str) -> Formula:
    """The hole of the eye of half a toggle; none of a woven half that is sewn on by itself."""

    def hole(part: Part, ask: Quantities) -> Quantity:
        sewn = part.has(half, "woven") and not part.has(half, "eye")
        return exact(f"{part.name}.no eye", 0.0, "mm") if sewn else ask.of(part, f"{key}.hole")

    return hole


def _woven_mass(part: Part, ask: Quantities) -> Quantity:
    """Of a clasp that is woven, both halves."""
    halves = [part.parts[part.text(*path)] for path in WOVEN_HALVES if part.has(*path)]
    if len(halves) < len(WOVEN_HALVES):
        raise part.missing("mass")
    return total_of(f"{part.name}.mass", "g", [ask.of(half, "mass") for half in halves])


def _mass(part: Part, ask: Quantities) -> Quantity:
    """As written; the knots in its own ends weigh with the cord of the work."""
    if part.traits.slides and not part.has("mass"):
        return exact(f"{part.name}.mass", 0.0, "g")
    return mass("mass")(part, ask)


_STEM = size("bar", "stem", allowance="part length")
_CLOSED = size("closed_length", allowance="part length")
_RING_HALF = total("a.along", "mm", _hole("ring", "a"), "ring.wire", "ring.inside", source=GEOMETRY)
_BAR_HALF = total(
    "b.along",
    "mm",
    _STEM,
    _hole("bar", "b"),
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
    "button and loop": buttons.CLOSED,
    "slide": _CLOSED,
    "ribbon end": _BETWEEN_BANDS,
    "snap": _OVERLAP,
    "sliding knots": sliding.shut,
}
_COUNTED = constant("b.along", 0.0, "mm", "counted at the first half")


def _stem_width(part: Part, ask: Quantities) -> Quantity:
    """As written; else a bead of a woven bar, or the wall of a bar's eye, as castings have it."""
    if not (part.has("bar") or part.by_size):
        raise part.missing("bar", "stem_width")
    if part.has("bar", "woven") and not part.has("bar", "stem_width"):
        return making.fattest(part.parts[part.text("bar", "woven")], ask)  # a row of single beads
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
    "sliding knots": ("sliding", "ends"),
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
            otherwise=_or_woven(
                "ring",
                "outside",
                formula(
                    "ring inside",
                    "mm",
                    rings.inside_of,
                    outside=size("ring", "outside", allowance="ring size"),
                    wire="ring.wire",
                    source=TWO_WIRES,
                ),
                _woven_inside,
            ),
        ),
        "ring.wire": _or_woven("ring", "wire", wire("ring", "wire"), _woven_wall),
        "bar.length": _or_woven(
            "bar", "length", size("bar", "length", allowance="part length"), _of_bar("length")
        ),
        "bar.thickness": _or_woven(
            "bar", "thickness", wire("bar", "thickness"), _of_bar("outside")
        ),
        "bar.stem_width": _stem_width,
        # from the bar to where the next part bears in its eye
        "bar.to_the_run": total("bar to the run", "mm", _STEM, _hole("bar", "b"), source=GEOMETRY),
        "loop.around": buttons.LOOP,
        "a.along": _first_half,
        "b.along": _second_half,
        "knot": sliding.KNOT,
        "extends": sliding.extends,
        "tail": sliding.tail,
        "cord": sliding.own_cord,
        "mass": _or_woven("ring", "mass", _mass, _woven_mass),
    },
    types={
        "toggle": Traits(swings=True),
        "S-clasp": Traits(named_by_type=True),
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
        "sliding knots": Traits(slides=True, bought=False),
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
            "sliding knots": "sliding knots",
        },
        label=(("ring.inside", "inside"), ("a.along", "closed")),
        second_label=(("bar.length", "bar"),),
    ),
    sold=Sold("clasps", size_is=_SIZE_IS),
)
