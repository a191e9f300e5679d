"""Beaded bead: a tube woven round a core, a ball or a tube, and closed over both its ends.

Its stitch says what a straight tube of its ring takes; the rounds go from hole to hole, and it
narrows to the hole as the area of the core does. A bead of the palette that is `woven` of it
strings it: its outside, length, hole and mass are then those of that bead.
"""

from __future__ import annotations

from collections.abc import Callable

from msgspec.structs import replace

from wellstrung.derived.declared import (
    GEOMETRY,
    Argument,
    formula,
    hand,
    mass,
    measurable,
    same_as,
    size,
    written_or,
)
from wellstrung.formulas import covered
from wellstrung.formulas.arithmetic import pi
from wellstrung.kinds.bezel import NO_MORE, ring_for, slack_of
from wellstrung.kinds.plain import WOVEN
from wellstrung.model.looks import Look
from wellstrung.model.parts import Formula, Kind, Part, Role
from wellstrung.model.plan import Quantities
from wellstrung.quantity.arithmetic import derived, exact, total
from wellstrung.quantity.value import Quantity
from wellstrung.stitches import flat, making
from wellstrung_schemas import fragment

_BEAD = making.bead("outside")


def _left(part: Part, ask: Quantities) -> Quantity:
    """The hole that is left open: that of the core; a core without one is closed over."""
    return ask.of(part, "hole") if part.has("core", "hole") else exact("hole", 0.0, "mm")


def _over(what: str, unit: str, function: Callable[..., float], *of: str) -> Formula:
    """What beads measure that close over a core, by those of its sizes which decide it."""
    sizes = {name: _SIZES[name] for name in of}
    return formula(what, unit, function, sizes, source=GEOMETRY)


_SIZES: dict[str, Argument] = {
    "outside": "core",
    "length": "core.length",
    "bead": _BEAD,
    "hole": _left,
}
_BALL, _TUBE = ("outside", "bead", "hole"), ("outside", "length", "bead", "hole")


def _either(ball: Formula, tube: Formula) -> Formula:
    """What it is over a tube, where its core has a length, or else over a ball."""
    return written_or(tube, ("core", "length"), otherwise=ball)


#: no print; every maker decreases otherwise
_DECREASES = hand(
    "how closely the decreases lie",
    (0.92, 1.0, 1.08),
    cure="note the beads that one {part} takes",
)


def _beads(part: Part, ask: Quantities) -> Quantity:
    """Its beads: those of a straight tube as long, by how much less area it covers.

    A stitch that does not cover evenly says itself what a ball takes.
    """
    if part.stitch is None:
        raise part.missing("stitch")
    if "beads_over_ball" in part.stitch.asides and not part.has("core", "length"):
        return derived(
            f"{part.name}.beads",
            "",
            lambda over, closely: over * closely,
            over=part.stitch.asides["beads_over_ball"](part, ask),
            closely=_DECREASES(part, ask),
            source=GEOMETRY,
        )
    around = formula("round the beads", "mm", lambda outside: pi * outside, outside=_MIDDLE)
    return derived(
        f"{part.name}.beads",
        "",
        lambda straight, area, around, way, closely: (
            covered.narrowed(straight, area, around, way) * closely
        ),
        straight=part.stitch.quantities["beads"](part, ask),
        area=ask.of(part, "area"),
        around=around(part, ask),
        way=ask.of(part, "way"),
        closely=_DECREASES(part, ask),
        source=GEOMETRY,
    )


_MIDDLE = formula("across the beads", "mm", lambda core, bead: core + bead, core="core", bead=_BEAD)


def _around(what: str, slack: Formula, *, least: bool) -> Formula:
    """Beads around whose bore is as wide as the core, at one end of what the hand does."""

    def found(part: Part, ask: Quantities) -> Quantity:
        bore = ask.of(part, "inside").worst
        return derived(
            f"{part.name}.{what}",
            "beads",
            lambda around, core, slack, bead, bore: around * (core + slack + bead) / (bore + bead),
            around=exact("around", making.around_of(part), "beads"),
            core=ask.of(part, "core"),
            slack=slack(part, ask),
            bead=_BEAD(part, ask),
            bore=exact("bore", bore.high if least else bore.low, "mm"),
            source=GEOMETRY,
        )

    return found


def _with_core(part: Part, ask: Quantities) -> Quantity:
    """Beads and core, g."""
    return total(f"{part.name}.mass", "g", [making.mass(part, ask), part.mass("core", "mass")])


_LEAST = _around("around at least", NO_MORE, least=True)

BEADED_BEAD = Kind(
    "beaded bead",
    fragment("beaded bead"),
    Role.WOVEN,
    traits=replace(WOVEN, made_round="core"),
    quantities={
        "core": size("core", "outside", allowance="cap size"),
        "core.length": written_or(
            size("core", "length"), ("core", "length"), otherwise=same_as("core")
        ),
        "hole": size("core", "hole"),
        "way": _either(
            _over("from hole to hole", "mm", covered.ball_way, *_BALL),
            _over("from hole to hole", "mm", covered.tube_way, *_TUBE),
        ),
        "area": _either(
            _over("area", "mm2", covered.ball_area, *_BALL),
            _over("area", "mm2", covered.tube_area, *_TUBE),
        ),
        "outside": measurable(
            "outside",
            formula(
                "outside", "mm", lambda core, bead: core + 2 * bead, core="core", bead=_BEAD,
                source="its beads lie on the core: geometry",
            ),
        ),
        "length": measurable(
            "length",
            _either(
                _over("length", "mm", covered.ball_length, *_BALL),
                _over("length", "mm", covered.tube_length, "length", "bead"),
            ),
        ),
        "rounds": formula("rounds", "", lambda way, rise: way / rise, way="way", rise="rise"),
        "last_round": formula(
            "last round",
            "beads",
            lambda hole, bead_length, bead: ring_for(hole, bead_length, bead, flat.USUAL),
            hole=_left,
            bead_length=making.bead("length"),
            bead=_BEAD,
            source=GEOMETRY,
        ),
        "around_least": _LEAST,
        "around_behind": _LEAST,
        "around_most": _around("around at most", slack_of, least=False),
        "beads": _beads,
        "mass": written_or(mass("mass"), ("measured", "mass"), otherwise=_with_core),
        "along": same_as("length"),
    },
    look=Look("woven", label=(("outside", "across"),)),
)  # fmt: skip
