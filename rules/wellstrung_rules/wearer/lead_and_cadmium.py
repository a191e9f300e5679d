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
    return Caution(
        f"{with_metals(parts)} may hold {' or '.join(held)}: ask the supplier for a statement and"
        f" write `states: [{asked}]`; {_LIMITS[metal.age in CHILDREN]}; {LAW_FIRST}",
        next(iter(parts)).place_of("metal"),
    )


#: by law, and whether a child wears the piece
_LIMITS = {
    True: "for children the limits are far lower, such as 100 ppm of lead in the US (CPSIA, section"
    " 101)",
    False: "in the EU the limits are 0.05 % of lead and 0.01 % of cadmium by weight (REACH, annex"
    " XVII, entries 63 and 23)",
}

RULE = Rule(
    name="lead-and-cadmium",
    family="wearer",
    subject=MetalParts,
    check=check,
    title="where a metal may hold lead or cadmium, the plan has a statement from the supplier",
    why="both are swallowed when a piece is sucked or bitten, and neither shows in a finding",
    sources=(
        "REACH, annex XVII, entries 63 (lead) and 23 (cadmium); CPSIA, section 101: copies seen",
        "trade table `metals`, lead and cadmium: which metals may hold them, from memory",
    ),
    good="cap: {kind: end cap, bore: 10 mm, metal: brass, states: [lead free]}",
    level="caution",
)
