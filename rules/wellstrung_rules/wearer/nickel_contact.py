"""Nickel against skin: the parts whose metal may give it off, told once a plan."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Caution, MetalParts, Missing, Rule
from wellstrung.rulebook.values import table

_STATED = {"nickel free", "nickel release below the limit"}


def check(metal: MetalParts, ask: Ask) -> Answer:
    open_parts = [part for part in metal.metal_parts if not _STATED & set(part.texts("states"))]
    rows = table("metals")
    told = [
        part
        for part in open_parts
        if part.has("metal") and rows.row(part.text("metal")).text("nickel")
    ]
    if not told:
        # a part of unknown metal is asked for only where no other part tells the same
        unknown = next((part for part in open_parts if not part.has("metal")), None)
        if unknown is not None:
            raise Missing(f"`metal` of `{unknown.name}`, or what its supplier `states`")
        return None
    names = ", ".join(f"`{part.name}`" for part in told)
    metals = ", ".join(dict.fromkeys(part.text("metal") for part in told))
    return Caution(
        f"{names} ({metals}) may give off nickel, to which many people react: ask the supplier for"
        " a statement and write `states: [nickel free]` or `states: [nickel release below the"
        " limit]`; in the EU the limit on skin is 0.5 µg/cm² a week, for posts in pierced parts 0.2"
        " (REACH, annex XVII, entry 27); local law and qualified advice come first",
        told[0].place_of("metal"),
    )


RULE = Rule(
    name="nickel-contact",
    family="wearer",
    subject=MetalParts,
    check=check,
    title="what suppliers state about nickel is named where a metal may give it off",
    why="an allergy to nickel begins with a clasp or a post, and keeps its owner from many pieces",
    sources=(
        "REACH, annex XVII, entry 27; test methods EN 1811 and EN 12472: copies seen",
        "trade table `metals`, nickel: which metals may give it off, from memory",
    ),
    good="cap: {kind: end cap, bore: 10 mm, metal: plated brass, states: [nickel free]}",
    level="caution",
)
