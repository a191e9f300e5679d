"""Lead and cadmium in metal parts: those whose metal may hold them, told once a plan."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Caution, MetalParts, Missing, Rule
from wellstrung.rulebook.plan import Part
from wellstrung.rulebook.values import table


def check(metal: MetalParts, ask: Ask) -> Answer:
    told = {part: held for part in metal.metal_parts if (held := _may_hold(part))}
    if not told:
        # a part of unknown metal is asked for only where no other part tells the same
        for part in metal.metal_parts:
            if not part.has("metal") and not {"lead free", "cadmium free"} <= _stated(part):
                raise Missing(f"`metal` of `{part.name}`, or what its supplier `states`")
        return None
    held = [what for what in ("lead", "cadmium") if any(what in may for may in told.values())]
    names = ", ".join(f"`{part.name}`" for part in told)
    metals = ", ".join(dict.fromkeys(part.text("metal") for part in told))
    asked = ", ".join(f"{what} free" for what in held)
    return Caution(
        f"{names} ({metals}) may hold {' or '.join(held)}: ask the supplier for a statement and"
        f" write `states: [{asked}]`; {_limits(metal.age)}; local law and qualified advice come"
        " first",
        next(iter(told)).place_of("metal"),
    )


def _stated(part: Part) -> set[str]:
    return set(part.texts("states"))


def _may_hold(part: Part) -> list[str]:
    """Which of the two its metal may hold, by the trade tables, with no statement against it."""
    if not part.has("metal"):
        return []
    row = table("metals").row(part.text("metal"))
    return [
        what
        for what in ("lead", "cadmium")
        if row.text(what) and f"{what} free" not in _stated(part)
    ]


def _limits(age: str) -> str:
    if age in ("child", "under three"):
        return (
            "for children the limits are far lower, such as 100 ppm of lead in the US (CPSIA,"
            " section 101)"
        )
    return (
        "in the EU the limits are 0.05 % of lead and 0.01 % of cadmium by weight (REACH, annex"
        " XVII, entries 63 and 23)"
    )


RULE = Rule(
    name="lead-and-cadmium",
    family="wearer",
    subject=MetalParts,
    check=check,
    title="what suppliers state about lead and cadmium is named where a metal may hold them",
    why="both are swallowed with what is sucked and bitten, and neither can be seen in a finding",
    sources=(
        "REACH, annex XVII, entries 63 (lead) and 23 (cadmium); CPSIA, section 101: copies seen",
        "trade table `metals`, lead and cadmium: which metals may hold them, from memory",
    ),
    good="cap: {kind: end cap, bore: 10 mm, metal: brass, states: [lead free]}",
    level="caution",
)
