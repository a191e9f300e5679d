"""A tail long enough to weave in, and longer where it also sews the clasp on."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Misfit, Remedy, Rule, Woven, kept
from wellstrung.rulebook.values import exact
from wellstrung.rulebook.wording import in_unit_of, spelled
from wellstrung_rules.length import fact, round_number


def check(woven: Woven, ask: Ask) -> Answer:
    part, sews = woven.part, woven.sewn_to_clasp
    if not part.has("thread"):
        return None
    tail, place = part.length("thread", "tail"), part.place_of("thread", "tail")
    usual = fact("tail that sews a clasp" if sews else "tail")
    shortest = usual.low if sews else fact("shortest tail").value
    margin = tail - exact("shortest tail", shortest, "mm", source="trade table `stitch_facts`")
    if answer := kept(margin):
        return answer
    use, least = "to sew a clasp on" if sews else "to weave in", in_unit_of(shortest, tail)
    wanted = round_number(tail, *((254.0, 260.0) if sews else (150.0, 152.4)))
    most = in_unit_of(usual.high, tail)
    return Misfit(
        says=f"the tail of `{part.name}` ({spelled(tail)}) {{is|may be}} too short {use}, which"
        f" takes {least}",
        place=place,
        found=spelled(tail),
        needed=f"{least} or more",
        remedies=(
            Remedy.write(place, wanted, f"leave a tail of {wanted} (up to {most} is usual)"),
        ),
        margin=margin,
        also=(part.key.place,),
    )


RULE = Rule(
    name="tail-allowance",
    family="length",
    subject=Woven,
    check=check,
    title="the tail of a thread is long enough to weave in, or to sew the clasp on",
    why=(
        "a short tail cannot be woven back through enough beads to hold, and the needle comes off"
        " before the end is secure"
    ),
    sources=(
        "4 in at least, 6 to 8 in usual, 10 to 12 in to sew a clasp: trade table `stitch_facts`,"
        " several pages",
    ),
    bad="thread: {type: fused, rating: 8 lb, tail: 8 cm}",
    good="thread: {type: fused, rating: 8 lb, tail: 15 cm}",
    level="warning",
)
