"""Bezel: a ring of tubular peyote round a stone, drawn in over its edge in front and behind.

`beads` names the bead of every round, from the back edge to the front edge; all rounds have half
the beads of the starting ring. The fattest bead lies round the stone's girdle and gives the size.
A ring goes round an oval, a square or a pear as it does round a circle with the same way round.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from msgspec.structs import replace

from wellstrung.derived.base_bands import base_column, base_thick
from wellstrung.derived.bead_sizes import mean_size
from wellstrung.derived.declared import (
    GEOMETRY,
    Argument,
    constant,
    count,
    formula,
    hand,
    mass,
    product,
    same_as,
    size,
    written_or,
)
from wellstrung.formulas.arithmetic import atan, pi
from wellstrung.kinds.band import edge_sizes
from wellstrung.kinds.plain import WOVEN
from wellstrung.kinds.stone import SIZES, girth, shape
from wellstrung.model.beads import bead_rows
from wellstrung.model.item import Bead
from wellstrung.model.looks import Look
from wellstrung.model.parts import EyeField, Formula, Kind, Part, Role
from wellstrung.model.plan import Quantities
from wellstrung.quantity.arithmetic import derived, exact, total
from wellstrung.quantity.value import Quantity
from wellstrung.stitches import flat, making, tubular_peyote
from wellstrung_schemas import fragment


def strip(bead_outsides: Sequence[float], tension: float) -> float:
    """From edge to edge of rounds of peyote laid flat, mm: each half a bead up, and a bead more.

    Two rounds lie a quarter of each one's bead apart, so that beads of one size rise half a bead a
    round; the outermost reach half a bead beyond their middles. Geometry, worked out for this
    project.

    >>> round(strip([2.0, 2.0, 2.0], tension=1.05), 3)
    4.0
    """
    middles = sum(bead_outsides) / 2 - (bead_outsides[0] + bead_outsides[-1]) / 4
    return middles * tension / flat.USUAL + (bead_outsides[0] + bead_outsides[-1]) / 2


def ring_for(stone: float, bead_length: float, bead_outside: float, tension: float) -> float:
    """Beads in the starting ring, not yet whole, whose inside is as wide as a stone, mm.

    `tubular_peyote.inside` the other way round; for many beads it tends to pi x (stone + bead
    outside) over the pitch of the beads. Geometry, worked out for this project. Held against print:
    32 cylinders of 11/0 for 12 mm (`Bead Weaving Techniques: Beaded Bezels`), 96 rounds of 11/0
    for a donut of 45 mm where 102 were too many (`Flowered Donut Pendant`), excerpts seen.

    >>> round(ring_for(stone=12, bead_length=1.3, bead_outside=1.6, tension=1.05), 1)
    31.4
    >>> round(ring_for(stone=45, bead_length=1.45, bead_outside=2.1, tension=1.05), 1)
    97.2
    """
    return pi / atan(tubular_peyote.pitch(bead_length, tension) / (stone + bead_outside))


def rounds_of(part: Part, ask: Quantities) -> list[Bead]:
    """The bead of every round, from the back to the front; of several in one round the fattest."""
    rounds = [[part.beads[name] for name in row] for row in bead_rows(part, "beads")]
    return [max(row, key=lambda bead: ask.of(bead, "outside").middle) for row in rounds]


def _rounds(part: Part) -> int:
    return len(bead_rows(part, "beads"))


def _fattest(part: Part, ask: Quantities) -> Quantity:
    """How thick the bead is that lies round the girdle: the fattest, or that of its base."""
    if part.has("base"):
        return base_thick(part, ask)
    return max((ask.of(bead, "outside") for bead in rounds_of(part, ask)), key=_middle)


def _girdle_length(part: Part, ask: Quantities) -> Quantity:
    """How long a bead at the girdle is: the mean of those rounds that have the fattest bead."""
    if part.has("base"):
        return base_column(part, ask)
    rows = bead_rows(part, "beads")
    fattest = max(rounds_of(part, ask), key=lambda bead: ask.of(bead, "outside").middle).name
    girdle = [row for row in rows if fattest in row]
    shares: dict[str, float] = {}
    for row in girdle:
        for name in row:
            shares[name] = shares.get(name, 0.0) + 1 / (len(row) * len(girdle))
    return mean_size(part, "length", shares, ask)


def _middle(size: Quantity) -> float:
    return size.middle


def _beyond(what: str, stone: str) -> Formula:
    """Over all along the stone or across it: as far beyond it as round one of the same girth."""
    beyond = formula(
        what,
        "mm",
        lambda ring, stone, girth: ring + (stone - girth),
        ring="ring.outside",
        stone=stone,
        girth="girth",
        source=GEOMETRY,
    )
    return lambda part, ask: (_OUTSIDE if shape(part) == "round" else beyond)(part, ask)


_TENSION = hand(
    "thread tension",
    flat.TENSION,
    cure="weave three rounds of {part} and try the stone in them",
)


def _ring(what: str, function: Callable[..., float]) -> Formula:
    """A size of the ring at the girdle."""
    return formula(
        what,
        "mm",
        lambda bead_length, tension, ring, bead_outside: function(
            tubular_peyote.pitch(bead_length, tension), ring, bead_outside
        ),
        bead_length="girdle.length",
        tension=_TENSION,
        ring=count("ring", tubular_peyote.ring_of),
        bead_outside="girdle.outside",
        source=GEOMETRY,
    )


NO_MORE = constant("slack", 0.0, "mm")


def _around(
    what: str, tension: float, slack: Formula = NO_MORE, stone: Argument = "girth"
) -> Formula:
    """Beads around at one end of the thread's tension, with that much play round the stone."""
    return formula(
        what,
        "beads",
        lambda stone, slack, bead_length, bead_outside, tension: ring_for(
            stone + slack, bead_length, bead_outside, tension
        ),
        stone=stone,
        slack=slack,
        bead_length="girdle.length",
        bead_outside="girdle.outside",
        tension=constant("tension", tension),
        source=GEOMETRY,
    )


#: A ring that starts behind the girdle of a pointed stone: 26 cylinders of 11/0 for 12 mm (`Make a
#: Peyote Bezel for a Rivoli`, excerpt seen) are 9.6 mm inside, 32 for 14 mm (`Cabochon bezel
#: setting`, excerpt seen) 12.3 mm.
_BEHIND = constant("behind the girdle", 0.8, "", "the narrowest ring in print over its stone")


def slack_of(part: Part, ask: Quantities) -> Quantity:
    """The play that a ring may have round what it is woven round, mm."""
    limit = part.bench.limits["bezel loose"]
    return exact("slack", limit.value, "mm", limit.reason)


def _strip(part: Part, ask: Quantities) -> Quantity:
    beads = {f"bead{n}": ask.of(bead, "outside") for n, bead in enumerate(rounds_of(part, ask), 1)}
    return derived(
        f"{part.name}.length",
        "mm",
        lambda tension, **outsides: strip(tuple(outsides.values()), tension),
        {"tension": _TENSION(part, ask), **beads},
        source=GEOMETRY,
    )


def _beads_each_round(part: Part) -> int:
    return tubular_peyote.ring_of(part) // 2


def _with_stone(part: Part, ask: Quantities) -> Quantity:
    """Beads and stone, g."""
    stone = part.mass("stone", "mass")
    return total(f"{part.name}.mass", "g", [making.mass(part, ask), stone])


#: from bead to bead round the edge; what hangs there spreads no less than that
_SPACING = formula(
    "from bead to bead",
    "mm",
    lambda outside, count: pi * outside / count,
    outside="ring.outside",
    count=count("beads of a round", _beads_each_round),
    source=GEOMETRY,
)
_OUTSIDE = _ring("outside", tubular_peyote.outside)
_EDGES = {"edge": EyeField(several=True, counted=_beads_each_round, counted_by=("around",))}

#: what is made at the bench round a stone
WOVEN_ROUND = replace(WOVEN, made_round="stone")

BEZEL = Kind(
    "bezel",
    fragment("bezel"),
    Role.WOVEN,
    traits=WOVEN_ROUND,
    eyes={"top_eyes": EyeField(("top_eyes",), several=True), **_EDGES},
    quantities={
        **SIZES,
        "stone.edge": size("stone", "edge", allowance="stone size"),
        "girth": girth,
        "girdle.length": _girdle_length,
        "girdle.outside": _fattest,
        "around_least": _around("around at least", flat.LOOSE),
        "around_behind": _around(
            "around behind the girdle",
            flat.LOOSE,
            stone=product("stone behind its girdle", "mm", "girth", _BEHIND),
        ),
        "around_most": _around("around at most", flat.TIGHT, slack_of),
        "inside": _ring("inside", tubular_peyote.inside),
        "ring.outside": _OUTSIDE,
        "outside": _beyond("outside", "stone"),
        "width": _beyond("width", "stone.width"),
        "length": _strip,
        "rounds": count("rounds", _rounds, "one for each that is named"),
        "mass": written_or(mass("mass"), ("measured", "mass"), otherwise=_with_stone),
        "along": same_as("outside"),
        **edge_sizes(_EDGES, _SPACING),
    },
    look=Look("bezel", label=(("outside", "across"),)),
)
