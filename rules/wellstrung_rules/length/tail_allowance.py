"""A tail long enough to weave in, and longer where it also sews the clasp on."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Misfit, Remedy, Rule, Woven, kept
from wellstrung.rulebook.plan import Edit
from wellstrung.rulebook.values import Cell, Quantity, exact, table
from wellstrung.rulebook.wording import in_unit_of, spelled


def check(woven: Woven, ask: Ask) -> Answer:
    if not woven.part.has("thread"):
        return None
    tail = woven.part.length("thread", "tail")
    shortest = _usual(woven).low if woven.sewn_to_clasp else _fact("shortest tail").value
    margin = tail - exact("shortest tail", shortest, "mm", source="trade table `stitch_facts`")
    if answer := kept(margin):
        return answer
    use = "to sew a clasp on" if woven.sewn_to_clasp else "to weave in"
    head = f"the tail of `{woven.part.name}` ({spelled(tail)})"
    return Misfit(
        says=f"{head} {{is|may be}} too short {use}, which takes {in_unit_of(shortest, tail)}",
        place=woven.part.place_of("thread", "tail"),
        found=spelled(tail),
        needed=f"{in_unit_of(shortest, tail)} or more",
        remedies=_remedies(woven, tail),
        margin=margin,
        also=(woven.part.key.place,),
    )


def _fact(name: str) -> Cell:
    return table("stitch_facts").row(name).cell("figure")


def _usual(woven: Woven) -> Cell:
    return _fact("tail that sews a clasp" if woven.sewn_to_clasp else "tail")


def _remedies(woven: Woven, tail: Quantity) -> tuple[Remedy, ...]:
    usual = _usual(woven)
    # what one would cut is a round number, in inches (6, 10) or in centimetres (15, 26)
    lengths = (254.0, 260.0) if woven.sewn_to_clasp else (150.0, 152.4)
    wanted = min((in_unit_of(length, tail) for length in lengths), key=len)
    edit = Edit(woven.part.place_of("thread", "tail"), wanted)
    most = in_unit_of(usual.high, tail)
    return (Remedy(f"leave a tail of {wanted} (up to {most} is usual)", (edit,)),)


RULE = Rule(
    name="tail-allowance",
    family="length",
    subject=Woven,
    check=check,
    title="the tail of a thread is long enough to weave in, or to sew the clasp on",
    why=(
        "a short tail cannot be woven back through enough beads to hold, and the needle comes off"
        " before the end is safe"
    ),
    sources=(
        "4 in at least, 6 to 8 in usual, 10 to 12 in to sew a clasp: trade table `stitch_facts`,"
        " several pages",
    ),
    bad="thread: {type: fused, rating: 8 lb, tail: 8 cm}",
    good="thread: {type: fused, rating: 8 lb, tail: 15 cm}",
    level="warning",
)
