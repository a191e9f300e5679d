"""Bezel: a ring of tubular peyote round a stone, drawn in over its edge in front and behind.

`beads` names the bead of every round, from the back edge to the front edge; all rounds have half
the beads of the starting ring. The fattest bead lies round the stone's girdle and gives the size.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from wellstrung.formulas.arithmetic import atan, pi
from wellstrung.kinds.band import edge_sizes
from wellstrung.kinds.plain import WOVEN
from wellstrung.model.item import Item
from wellstrung.model.parts import EyeField, Kind, Part, Quantities, Role
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


def rounds_of(part: Part, ask: Quantities) -> list[Item]:
    """The bead of every round, from the back to the front."""
    return [ask.plan.beads[name] for name in part.texts("beads")]


def _girdle(part: Part, ask: Quantities, what: str) -> Quantity:
    """A size of the bead that lies round the girdle: the fattest."""
    fattest = max(rounds_of(part, ask), key=lambda bead: ask.of(bead, "outside").middle)
    return ask.of(fattest, what)


def _girdle_length(part: Part, ask: Quantities) -> Quantity:
    return _girdle(part, ask, "length")


def _girdle_outside(part: Part, ask: Quantities) -> Quantity:
    return _girdle(part, ask, "outside")


def _stone(part: Part, ask: Quantities) -> Quantity:
    return part.length("stone", "outside", allowance="stone size")


def _edge(part: Part, ask: Quantities) -> Quantity:
    return part.length("stone", "edge", allowance="stone size")


def _inside(part: Part, ask: Quantities) -> Quantity:
    """Inside of the ring at the girdle."""
    return _ring(part, ask, "inside", tubular_peyote.inside)


def _outside(part: Part, ask: Quantities) -> Quantity:
    return _ring(part, ask, "outside", tubular_peyote.outside)


def _ring(part: Part, ask: Quantities, name: str, function: Callable[..., float]) -> Quantity:
    return derived(
        f"{part.name}.{name}",
        "mm",
        lambda bead_length, tension, ring, bead_outside: function(
            tubular_peyote.pitch(bead_length, tension), ring, bead_outside
        ),
        bead_length=ask.of(part, "girdle.length"),
        tension=_tension(part),
        ring=making.count(part, "ring", tubular_peyote.ring_of(part)),
        bead_outside=ask.of(part, "girdle.outside"),
        source=making.GEOMETRY,
    )


def _around(name: str, tension: float, slack: str = "") -> making.Formula:
    """Beads around at one end of the thread's tension; `slack` names a limit, mm, of play."""

    def around(part: Part, ask: Quantities) -> Quantity:
        limit = part.bench.limits[slack] if slack else None
        return derived(
            f"{part.name}.{name}",
            "beads",
            lambda stone, slack, bead_length, bead_outside, tension: ring_for(
                stone + slack, bead_length, bead_outside, tension
            ),
            stone=ask.of(part, "stone"),
            slack=exact(
                "slack", limit.value if limit else 0.0, "mm", limit.reason if limit else ""
            ),
            bead_length=ask.of(part, "girdle.length"),
            bead_outside=ask.of(part, "girdle.outside"),
            tension=exact("tension", tension),
            source=making.GEOMETRY,
        )

    return around


def _tension(part: Part) -> Quantity:
    return making.hand(
        part,
        "thread tension",
        flat.TIGHT,
        flat.USUAL,
        flat.LOOSE,
        source=making.GEOMETRY,
        cure=f"weave three rounds of `{part.name}` and try the stone in them",
    )


def _strip(part: Part, ask: Quantities) -> Quantity:
    beads = {f"bead{n}": ask.of(bead, "outside") for n, bead in enumerate(rounds_of(part, ask), 1)}
    return derived(
        f"{part.name}.length",
        "mm",
        lambda tension, **outsides: strip(tuple(outsides.values()), tension),
        {"tension": _tension(part), **beads},
        source=making.GEOMETRY,
    )


def _rounds(part: Part, ask: Quantities) -> Quantity:
    return exact(f"{part.name}.rounds", len(part.texts("beads")), source="one for each bead named")


def _beads_each_round(part: Part) -> int:
    return tubular_peyote.ring_of(part) // 2


def _mass(part: Part, ask: Quantities) -> Quantity:
    """Beads and stone."""
    if part.has("measured", "mass"):
        return part.mass("mass")
    stone = part.mass("stone", "mass")
    return total(f"{part.name}.mass", "g", [making.mass(part, ask), stone])


def _spacing(part: Part, ask: Quantities) -> Quantity:
    """From bead to bead round the edge; what hangs there spreads no less than that."""
    return derived(
        f"{part.name}.from bead to bead",
        "mm",
        lambda outside, count: pi * outside / count,
        outside=ask.of(part, "outside"),
        count=making.count(part, "beads of a round", _beads_each_round(part)),
        source=making.GEOMETRY,
    )


_EDGES = {
    "edge": EyeField(several=True, counted=_beads_each_round, counted_by="around"),
}

BEZEL = Kind(
    "bezel",
    fragment("bezel"),
    Role.WOVEN,
    traits=WOVEN,
    eyes={"top_eyes": EyeField(("top_eyes",), several=True), **_EDGES},
    quantities={
        "stone": _stone,
        "stone.edge": _edge,
        "girdle.length": _girdle_length,
        "girdle.outside": _girdle_outside,
        "around_least": _around("around at least", flat.LOOSE),
        "around_most": _around("around at most", flat.TIGHT, slack="bezel loose"),
        "inside": _inside,
        "outside": _outside,
        "width": _outside,
        "length": _strip,
        "rounds": _rounds,
        "mass": _mass,
        "along": _outside,
        **edge_sizes(_EDGES, _spacing),
    },
)
