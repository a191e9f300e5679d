"""Nickel against skin: one caution for the parts whose metal may release it."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Caution, MetalParts, Rule
from wellstrung_rules.wearer import LAW_FIRST, may_hold, with_metals

_RULED_OUT = {"nickel": {"nickel free", "nickel release below the limit"}}


def check(metal: MetalParts, ask: Ask) -> Answer:
    parts = may_hold(metal, _RULED_OUT)
    if not parts:
        return None
    return Caution(
        f"{with_metals(parts)} may release nickel, to which many people are allergic: ask the"
        " supplier for a statement and write `states: [nickel free]` or `states: [nickel release"
        " below the limit]`; in the EU the most on skin is 0.5 µg/cm² a week, and what goes through"
        f" a piercing must stay under 0.2 (REACH, annex XVII, entry 27); {LAW_FIRST}",
        next(iter(parts)).place_of("metal"),
    )


RULE = Rule(
    name="nickel-contact",
    family="wearer",
    subject=MetalParts,
    check=check,
    fault="nickel on the skin",
    title="where a metal may release nickel, the plan has a statement from the supplier",
    why="an allergy to nickel starts with a clasp or a post, and then rules out many pieces",
    sources=(
        "REACH, annex XVII, entry 27; test methods EN 1811 and EN 12472: copies seen",
        "trade table `metals`, nickel: which metals may release it, from memory",
    ),
    good="cap: {kind: end cap, bore: 10 mm, metal: plated brass, states: [nickel free]}",
    level="caution",
)
