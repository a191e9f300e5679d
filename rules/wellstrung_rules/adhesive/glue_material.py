"""The adhesive against the thread it touches: what stiffens, swells or heats it."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, GluedEnd, Held, Misfit, Remedy, Rule
from wellstrung.rulebook.plan import Edit
from wellstrung.rulebook.values import table

#: trade words that name the same stuff
_ALSO = {"linen": "cotton", "flax": "cotton", "polyamide": "nylon", "rubber": "elastic"}


def check(end: GluedEnd, ask: Ask) -> Answer:
    glue, rope = end.adhesive, end.rope
    row = table("adhesives").row(glue.text("type"))
    spoils = {
        column.removeprefix("on_"): text
        for column, text in row.texts.items()
        if column.startswith("on_")
    }
    if not spoils:
        return Held()
    thread = rope.text("thread", "type")
    words = [_ALSO.get(word, word) for word in thread.lower().replace("-", " ").split()]
    fibre = next((word for word in words if word in spoils), None)
    if fibre is None:
        return Held()
    epoxy = (Edit(glue.place_of("type"), "two-part epoxy"),)
    return Misfit(
        says=(
            f"`{rope.name}` is woven with {thread}, and `{glue.name}` is {row.name}, which"
            f" {spoils[fibre]}"
        ),
        place=glue.place_of("type"),
        found=f"{row.name} on {thread}",
        needed="an adhesive that leaves the thread as it is",
        remedies=(
            Remedy(f"take a two-part epoxy for `{glue.name}`", epoxy),
            Remedy("keep it off the thread, or try it on the same thread first"),
        ),
        also=(rope.place_of("thread", "type"),),
    )


RULE = Rule(
    name="glue-material",
    family="adhesive",
    subject=GluedEnd,
    check=check,
    title="the adhesive suits the thread it touches",
    why="a thread gone stiff beside its joint bends in one place until it breaks, beads and all",
    sources=(
        "cyanoacrylate grows hot on cotton, wool and leather: several pages, copies seen",
        "cyanoacrylate on nylon, silk and elastic, solvents on elastic: from memory",
    ),
    bad="rope: {..., thread: {type: nylon}} with glue: {kind: adhesive, type: cyanoacrylate}",
    good="rope: {..., thread: {type: nylon}} with glue: {kind: adhesive, type: two-part epoxy}",
    level="warning",
)
