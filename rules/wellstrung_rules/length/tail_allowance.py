"""A tail long enough to weave in, to tie, or to sew the clasp on; a crimp takes wire of any end."""

from __future__ import annotations

import math

from wellstrung.rulebook import Answer, Ask, Limit, Misfit, Remedy, Rule, Woven, kept
from wellstrung.rulebook.plan import Role
from wellstrung.rulebook.values import Quantity, exact
from wellstrung.rulebook.wording import at_least, in_unit_of, spelled
from wellstrung_rules.length import fact, round_number

TIED = Limit("tail that is tied", 40.0, "mm", "4 to 5 cm to tie a strand, common practice")


def check(woven: Woven, ask: Ask) -> Answer:
    part = woven.part
    if not part.takes("thread") or (part.kind.role is Role.STRAND and part.thread.steel):
        return None  # wire ends in a crimp or a loop: how much goes back through beads is taste
    tail, place = part.length("thread", "tail"), part.place_of("thread", "tail")
    use, shortest, most, lengths = _needed(woven, ask)
    margin = tail - shortest
    if answer := kept(margin):
        return answer
    least, wanted = at_least(shortest.middle, tail), round_number(tail, *lengths)
    usual = f"leave a tail of {wanted} (up to {in_unit_of(most, tail)} is usual)"
    return Misfit(
        says=f"the tail of `{part.name}` ({spelled(tail)}) {{is|may be}} too short {use}, which"
        f" takes {least}",
        place=place,
        found=spelled(tail),
        needed=f"{least} or more",
        remedies=(Remedy.write(place, wanted, usual),),
        margin=margin,
        also=(part.key.place,),
    )


def _needed(woven: Woven, ask: Ask) -> tuple[str, Quantity, float, tuple[float, float]]:
    """What the tail is for, the shortest and the longest usual, mm, and two round lengths."""
    for inner, end in ask.plan.meetings:
        if inner.part is woven.part and end.part.traits.slides:
            # 1 cm over, up to a whole cm or inch; 4 cm more is usual: common practice, no source
            tail = ask.of(end.part, "tail")
            high = tail.likely.high + 10.0
            lengths = (math.ceil(high / 10) * 10.0, math.ceil(high / 25.4) * 25.4)
            return "to tie a sliding knot", tail, high + 50.0, lengths
    if woven.part.kind.role is Role.STRAND:
        return "to tie", ask.limit(TIED), 150.0, (50.0, 50.8)
    if woven.sewn_to_clasp:
        sews = fact("tail that sews a clasp")
        return "to sew a clasp on", _shortest(sews.low), sews.high, (254.0, 260.0)
    return "to weave in", _shortest(fact("shortest tail").value), fact("tail").high, (150.0, 152.4)


def _shortest(length: float) -> Quantity:
    return exact("shortest tail", length, "mm", source="trade table `stitch_facts`")


RULE = Rule(
    name="tail-allowance",
    family="length",
    subject=Woven,
    check=check,
    fault="tail too short",
    title="the tail of a thread is long enough to weave in, to tie, or to sew the clasp on",
    why=(
        "a short tail cannot be woven back through enough beads to hold, and the needle comes off"
        " before the end is secure"
    ),
    sources=(
        "4 in at least, 6 to 8 in usual, 10 to 12 in to sew a clasp: trade table `stitch_facts`,"
        " shortest tail, tail and tail that sews a clasp: several pages",
        "4 to 5 cm to tie: common practice, no source",
    ),
    limits=(TIED,),
    bad="thread: {type: fused, rating: 8 lb, tail: 8 cm}",
    good="thread: {type: fused, rating: 8 lb, tail: 15 cm}",
    level="warning",
)
