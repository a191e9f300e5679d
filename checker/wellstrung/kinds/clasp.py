"""Clasp, in two halves; of a toggle `a` is the ring and `b` the bar.

Closed and pulled taut, the bar's stem lies against the far inside of the ring, so the two halves
together add: eye hole of the ring, its wire, its inside, then stem and eye hole of the bar.
Geometry, worked out for this project. A slide clasp and ribbon ends are sewn, glued or clamped on
the end of a band, and have no eyes.
"""

from __future__ import annotations

from wellstrung.formulas import rings
from wellstrung.kinds.metal import stated_mass
from wellstrung.model.parts import BandEnd, EyeField, Kind, Part, Quantities, Role, Traits
from wellstrung.quantity.arithmetic import derived, leaf, total
from wellstrung.quantity.causes import Cause, Spread
from wellstrung.quantity.value import Quantity
from wellstrung_schemas import fragment


def _ring_inside(part: Part, ask: Quantities) -> Quantity:
    return derived(
        f"{part.name}.ring inside",
        "mm",
        rings.inside_of,
        outside=part.length("ring", "outside", allowance="ring size"),
        wire=part.wire("ring", "wire"),
        source="outside = inside + 2 x wire, trade table `jump_rings`, several pages",
    )


def _ring_half(part: Part, ask: Quantities) -> Quantity:
    return total(
        f"{part.name}.a.along",
        "mm",
        [ask.of(part, "a.hole"), part.wire("ring", "wire"), ask.of(part, "ring.inside")],
        source="geometry, worked out for this project",
    )


def _bar_half(part: Part, ask: Quantities) -> Quantity:
    allowance = ask.plan.bench.allowances["toggle seat"]
    cure = f"close `{part.name}`, pull, measure between the eyes, write `closed_length: ...`"
    seat = leaf(
        f"{part.name}.seat",
        0.0,
        "mm",
        [Spread(Cause("seat when closed", f"`{part.name}`", cure), *[allowance.value] * 2)],
        source=allowance.reason,
    )
    return total(
        f"{part.name}.b.along",
        "mm",
        [part.length("bar", "stem", allowance="part length"), ask.of(part, "b.hole"), seat],
        source="geometry, worked out for this project",
    )


def _bar_length(part: Part, ask: Quantities) -> Quantity:
    return part.length("bar", "length", allowance="part length")


def _bar_thickness(part: Part, ask: Quantities) -> Quantity:
    return part.wire("bar", "thickness")


def _stem_width(part: Part, ask: Quantities) -> Quantity:
    """As written; otherwise as wide as the wall of the bar's eye, common practice of castings."""
    if not part.has("bar"):
        raise part.missing("bar", "stem_width")
    if part.has("bar", "stem_width"):
        return part.length("bar", "stem_width", allowance="part length")
    return ask.of(part, "b.wire")


def _to_the_run(part: Part, ask: Quantities) -> Quantity:
    """From the bar to where the next part bears in its eye."""
    return total(
        f"{part.name}.bar to the run",
        "mm",
        [part.length("bar", "stem", allowance="part length"), ask.of(part, "b.hole")],
        source="geometry, worked out for this project",
    )


def _first_half(part: Part, ask: Quantities) -> Quantity:
    """All of a stated closed length less both end walls counts at the first half."""
    if part.text("type") in ("button and loop", "slide"):
        return part.length("closed_length", allowance="part length")
    if part.text("type") == "ribbon end":
        return _between_bands(part)
    if not part.has("closed_length") and part.text("type") == "toggle":
        return _ring_half(part, ask)
    return derived(
        f"{part.name}.a.along",
        "mm",
        lambda closed, wall_a, wall_b: closed - wall_a - wall_b,
        closed=part.length("closed_length", allowance="part length"),
        wall_a=ask.of(part, "a.wire"),
        wall_b=ask.of(part, "b.wire"),
    )


def _between_bands(part: Part) -> Quantity:
    """What a pair of ribbon ends adds: over all, less what of the band lies in either jaw."""
    return derived(
        f"{part.name}.a.along",
        "mm",
        lambda closed, depth: closed - 2 * depth,
        closed=part.length("closed_length", allowance="part length"),
        depth=part.length("jaw", "depth", allowance="part length"),
        source="geometry, worked out for this project",
    )


def _second_half(part: Part, ask: Quantities) -> Quantity:
    if part.text("type") == "toggle" and not part.has("closed_length"):
        return _bar_half(part, ask)
    return leaf(f"{part.name}.b.along", 0.0, "mm", source="counted at the first half")


CLASP = Kind(
    "clasp",
    fragment("clasp"),
    Role.CLASP,
    eyes={
        "a": EyeField(("ring", "eye"), other=("a", "eye")),
        "b": EyeField(("bar", "eye"), other=("b", "eye")),
    },
    quantities={
        "ring.inside": _ring_inside,
        "bar.length": _bar_length,
        "bar.thickness": _bar_thickness,
        "bar.stem_width": _stem_width,
        "bar.to_the_run": _to_the_run,
        "a.along": _first_half,
        "b.along": _second_half,
        "mass": stated_mass,
    },
    types={
        "toggle": Traits(swings=True),
        "magnetic": Traits(magnetic=True),
        "button and loop": Traits(buttons=True),
        "slide": Traits(
            band_end=BandEnd(("tube", "length"), ("tube", "slot"), grips=("tube", "slot"))
        ),
        "ribbon end": Traits(band_end=BandEnd(("jaw", "width"), ("jaw", "gap"), grips=("jaw",))),
    },
)
