"""Every part and every bead that a plan lists is used somewhere in it."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Held, Misfit, Named, Remedy, Rule
from wellstrung.rulebook.plan import Part, Role

#: how another part names what has no place of its own in the piece
_NAMED_BY = {
    Role.THREAD: "thread: {{spool: {}}}",
    Role.CORE: "core: {}",
    Role.CHAIN: "of: {}",
}


def check(named: Named, ask: Ask) -> Answer:
    if named.used:
        return Held()
    name, bead = named.item.name, named.heading == "beads"
    unused = "no part is woven from it" if bead else "`run`, `hung` and `work` do not use it"
    if named.placeless:
        unused = "it neither stands in `run` nor hangs from anything"
    use = "weave a part from it" if bead else "add it where it goes, under `run`, `hung` or `work`"
    if isinstance(named.item, Part) and (field := _NAMED_BY.get(named.item.kind.role)):
        use = f"name it in the part that takes it, as in `{field.format(name)}`"
    return Misfit(
        says=f"`{name}` is listed under `{named.heading}`, but {unused}",
        place=named.item.key.place,
        found="listed, not used",
        needed="used in the plan, or not listed",
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
    why="a listed part is bought and put in the kit; a forgotten line under `hung` shows only then",
    sources=("counting",),
    bad="halo: {kind: jump ring, ...} that no line of `run`, `hung` or `work` names",
    good="halo: {kind: jump ring, ...} and {part: charm, from: rope, by: halo}",
    level="warning",
)
