"""The wire of a ring through the hole of an eye: a curved wire in a straight hole."""

from __future__ import annotations

from wellstrung.formulas import circles, rings
from wellstrung.rulebook import Answer, Ask, Misfit, Remedy, RingThroughEye, Rule, kept
from wellstrung.rulebook.remedies import thinner_wires
from wellstrung.rulebook.values import Quantity, derived, exact, product
from wellstrung.rulebook.wording import about, in_unit_of, spelled


def check(join: RingThroughEye, ask: Ask) -> Answer:
    hole = ask.get(join.eyes.quantity("hole"))
    wire, inside = ask.of(join.ring, "wire"), ask.of(join.ring, "inside")
    through = ask.get(join.eyes.quantity("through"))
    bundle = product(
        "wires in the eye",
        "mm",
        wire,
        exact("ratio", circles.equal_ratio(join.rings)),
        source="equal circles in a circle, Graham, Lubachevsky, Nurmela, Östergård 1998",
    )
    needed = derived(
        "hole needed",
        "mm",
        rings.hole_needed,
        wire=bundle if join.rings > 1 else wire,
        inside=inside,
        through=through,
        source="curved wire in a straight hole, geometry, worked out for this project",
    )
    margin = hole - needed
    if answer := kept(margin):
        return answer
    wires = "wire" if join.rings == 1 else f"{join.rings} wires"
    subject = f"the {wires} of `{join.ring.name}` ({spelled(wire)})"
    eye = f"{join.eyes.words} ({spelled(hole)})"
    return Misfit(
        says=f"{subject} {{cannot|may not}} pass {eye}, which needs to be {about(needed, hole)}",
        place=join.ring.place_of("wire"),
        found=spelled(hole),
        needed=f"a hole of {in_unit_of(hole.middle - margin.likely.low, hole)} or wider",
        remedies=_remedies(join, wire, hole, margin),
        margin=margin,
        also=(join.eyes.part.place_of(*join.eyes.path, "hole"),),
    )


def _remedies(
    join: RingThroughEye, wire: Quantity, hole: Quantity, margin: Quantity
) -> tuple[Remedy, ...]:
    limit = wire.middle + margin.likely.low / join.rings
    hole_size = in_unit_of(hole.middle - margin.likely.low, hole)
    return (
        *(
            Remedy.write(
                join.ring.place_of("wire"), size, f"use {size} wire for `{join.ring.name}`"
            )
            for size in thinner_wires(wire, limit)
        ),
        Remedy(f"take a part whose eye is {hole_size} or wider"),
    )


RULE = Rule(
    name="ring-through-eye",
    family="fit",
    subject=RingThroughEye,
    check=check,
    title="the wire of a ring passes the hole of every eye it holds (what fits in it: `ring-room`)",
    why=(
        "a ring whose wire does not pass a chain link or a cap's loop is found out with the pliers"
        " in hand, when the parts are bought and the class sits waiting"
    ),
    sources=(
        "hole >= wire + r - sqrt(r^2 - w^2/4): geometry, worked out for this project",
        "several rings in one eye: equal circles in a circle, published best ratios",
    ),
    bad="ring of 16 AWG (1.29 mm) through an eye of 1.1 mm",
    good="ring of 20 AWG (0.81 mm) through an eye of 1.1 mm",
)
