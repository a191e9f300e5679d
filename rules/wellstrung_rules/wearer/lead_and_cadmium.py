"""Lead and cadmium: one caution for the parts whose metal may hold them."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Caution, MetalParts, Rule
from wellstrung_rules.wearer import CHILDREN, LAW_FIRST, may_hold, with_metals

_RULED_OUT = {"lead": {"lead free"}, "cadmium": {"cadmium free"}}


def check(metal: MetalParts, ask: Ask) -> Answer:
    parts = may_hold(metal, _RULED_OUT)
    if not parts:
        return None
    held = [what for what in _RULED_OUT if any(what in each for each in parts.values())]
    asked = ", ".join(f"{what} free" for what in held)
    limits = f"in the EU no metal part may hold {' or '.join(_LIMITS[what] for what in held)}"
    child = _CHILD if metal.age in CHILDREN and "lead" in held else ""
    return Caution(
        f"{with_metals(parts)} may hold {' or '.join(held)}: ask the supplier for a statement and"
        f" write `states: [{asked}]`; {limits}, whatever the age{child}; {LAW_FIRST}",
        next(iter(parts)).place_of("metal"),
    )


#: the limits of the EU, which are the same at all ages
_LIMITS = {
    "lead": "0.05 % of lead or more by weight (REACH, annex XVII, entry 63)",
    "cadmium": "0.01 % of cadmium or more (REACH, annex XVII, entry 23)",
}
_CHILD = "; for children's products the US limit is far lower, 100 ppm of lead (CPSIA, section 101)"

RULE = Rule(
    name="lead-and-cadmium",
    family="wearer",
    subject=MetalParts,
    check=check,
    fault="lead or cadmium in metal",
    title="where a metal may hold lead or cadmium, the plan has a statement from the supplier",
    why="both are swallowed when a piece is sucked or bitten, and neither shows in a finding",
    sources=(
        "REACH, annex XVII, entries 63 (lead) and 23 (cadmium); CPSIA, section 101: copies seen",
        "trade table `metals`, lead and cadmium: which metals may hold them, from memory",
    ),
    good="cap: {kind: end cap, bore: 10 mm, metal: brass, states: [lead free]}",
    level="caution",
)
