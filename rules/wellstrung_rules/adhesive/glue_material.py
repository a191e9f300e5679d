"""The adhesive against the thread that it touches: some stiffen, swell or heat it."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, GlueOnThread, Held, Misfit, Remedy, Rule
from wellstrung.rulebook.values import table
from wellstrung_rules.adhesive import take_what_suits

#: other trade words for a fibre
_ALSO = {"linen": "cotton", "flax": "cotton", "polyamide": "nylon", "rubber": "elastic"}


def check(end: GlueOnThread, ask: Ask) -> Answer:
    glue, rope = end.adhesive, end.worked
    row = table("adhesives").row(glue.text("type"))
    thread = rope.of_thread("type")
    if not thread:
        if any(column.startswith("on_") for column in row.texts):
            raise rope.missing("thread", "type")
        return Held()
    fibres = [_ALSO.get(word, word) for word in thread.lower().replace("-", " ").split()]
    # `also_on_`: a fibre so rare under it that nobody is asked whether the thread is of it
    columns = [f"{on}{one}" for one in fibres for on in ("on_", "also_on_")]
    spoiled = next((row.texts[column] for column in columns if column in row.texts), None)
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
            take_what_suits(glue, fibres),
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
        "cyanoacrylate on nylon and silk, epoxy and contact cement on elastic: from memory",
        "a cement that stays flexible on the knot of stretch cord, no superglue: common practice,"
        " tutorials, copies seen",
    ),
    bad="rope: {..., thread: {type: nylon}} with glue: {kind: adhesive, type: cyanoacrylate}",
    good="rope: {..., thread: {type: nylon}} with glue: {kind: adhesive, type: two-part epoxy}",
    level="warning",
)
