"""The adhesive against the thread that it touches: some stiffen, swell or heat it."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, GlueOnThread, Held, Misfit, Remedy, Rule
from wellstrung.rulebook.values import table
from wellstrung_rules.adhesive import take_epoxy

#: other trade words for a fibre
_ALSO = {"linen": "cotton", "flax": "cotton", "polyamide": "nylon", "rubber": "elastic"}


def check(end: GlueOnThread, ask: Ask) -> Answer:
    glue, rope = end.adhesive, end.worked
    row = table("adhesives").row(glue.text("type"))
    if not any(column.startswith("on_") for column in row.texts):
        return Held()
    thread = rope.of_thread("type")
    if not thread:
        raise rope.missing("thread", "type")
    fibres = [_ALSO.get(word, word) for word in thread.lower().replace("-", " ").split()]
    spoiled = next((row.texts[f"on_{one}"] for one in fibres if f"on_{one}" in row.texts), None)
    if spoiled is None:
        return Held()
    made = "strung" if rope.traits.made_by == "string" else "woven"
    return Misfit(
        says=f"`{rope.name}` is {made} with {rope.thread_said}, and `{glue.name}` is {row.name},"
        f" which {spoiled}",
        place=glue.place_of("type"),
        found=f"{row.name} on {rope.thread_said}",
        needed="an adhesive that leaves the thread as it is",
        remedies=(
            take_epoxy(glue),
            Remedy(f"keep `{glue.name}` off the thread, or test it first on the same thread"),
        ),
        also=(rope.place_of("thread", "type"),),
    )


RULE = Rule(
    name="glue-material",
    family="adhesive",
    subject=GlueOnThread,
    check=check,
    fault="glue that harms its thread",
    title="the adhesive suits the thread that it touches",
    why="a thread that has gone stiff beside a joint bends in one place until it breaks",
    sources=(
        "cyanoacrylate grows hot on cotton, wool and leather: several pages, copies seen",
        "cyanoacrylate on nylon, silk and elastic, solvents on elastic: from memory",
    ),
    bad="rope: {..., thread: {type: nylon}} with glue: {kind: adhesive, type: cyanoacrylate}",
    good="rope: {..., thread: {type: nylon}} with glue: {kind: adhesive, type: two-part epoxy}",
    level="warning",
)
