"""Every part and every bead that a plan names is used somewhere in it."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Held, Misfit, Named, Remedy, Rule


def check(named: Named, ask: Ask) -> Answer:
    if named.used:
        return Held()
    name, bead = named.item.name, named.heading == "beads"
    places = "no part is woven of it" if bead else "`run`, `hung` and `work` do without it"
    use = "weave a part of it" if bead else "say where it goes, under `run`, `hung` or `work`"
    return Misfit(
        says=f"`{name}` is named under `{named.heading}`, and {places}",
        place=named.item.key.place,
        found="named and not used",
        needed="a use in the plan, or no such entry",
        remedies=(
            Remedy(f"take `{name}` out, or {use}", (ask.without(named.item),)),
            Remedy(f"{use}, or take `{name}` out"),
        ),
    )


RULE = Rule(
    name="part-use",
    family="count",
    subject=Named,
    check=check,
    title="every part and every bead of the palette is used somewhere in the plan",
    why=(
        "a part that is listed is bought and put in the kit, and a forgotten line under `hung` is"
        " found when the kit is laid out"
    ),
    sources=("counting",),
    bad="halo: {kind: jump ring, ...} that no line of `run`, `hung` or `work` names",
    good="halo: {kind: jump ring, ...} and {part: charm, from: rope, by: halo}",
    level="warning",
)
