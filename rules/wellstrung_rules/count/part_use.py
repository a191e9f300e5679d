"""Every part and every bead that a plan lists is used somewhere in it."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Held, Misfit, Named, Remedy, Rule
from wellstrung.rulebook.plan import Bead, Hung, Part, Plan, Role

#: how another part names what has no place of its own in the piece
_NAMED_BY = {
    Role.THREAD: "thread: {{spool: {}}}",
    Role.CORE: "core: {}",
    Role.CHAIN: "of: {}",
    Role.COVER: "cover: {}",
}


def check(named: Named, ask: Ask) -> Answer:
    if named.used:
        return Held()
    name, bead = named.item.name, named.heading == "beads"
    unused = "no part is made with it" if bead else "`run`, `hung` and `work` do not use it"
    if named.carries is not None:
        return _carries(named.item, named.carries)
    if named.placeless:
        unused = "it neither stands in `run` nor hangs from anything"
    use = "add it where it goes, under `run`, `hung` or `work`"
    if bead:
        use = "name it in `beads` of a part that takes it"
    if isinstance(named.item, Part) and (field := _NAMED_BY.get(named.item.kind.role)):
        use = f"name it in the part that takes it, as in `{field.format(name)}`"
        if field.startswith("thread") and not ask.plan.cache.get(_works_with_thread, ask.plan):
            use = "add a part that is worked with it: a braid has its cord by its own size"
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


def _works_with_thread(plan: Plan) -> bool:
    return any(part.takes("thread") for part in plan.parts.values())


def _carries(item: Part | Bead, line: Hung) -> Misfit:
    """Something hangs from a part that has no place itself."""
    name, below = item.name, line.part.name
    return Misfit(
        says=f"`{below}` hangs from `{name}`, which neither stands in `run` nor hangs itself",
        place=line.place_of("from"),
        found=f"no place for `{name}`",
        needed=f"a place for `{name}`, or another part to hang `{below}` from",
        remedies=(
            Remedy(
                f"put `{name}` in `run`, or write a line under `hung` for what it hangs from; or"
                f" hang `{below}` from another part"
            ),
        ),
        also=(item.key.place,),
    )


RULE = Rule(
    name="part-use",
    family="count",
    subject=Named,
    check=check,
    fault="something is never used",
    title="every part and every bead of the palette is used somewhere in the plan",
    why="a listed part is bought and put in the kit; a forgotten line under `hung` shows only then",
    sources=("counting",),
    bad="halo: {kind: jump ring, ...} that no line of `run`, `hung` or `work` names",
    good="halo: {kind: jump ring, ...} and {part: charm, from: rope, by: halo}",
    level="warning",
)
