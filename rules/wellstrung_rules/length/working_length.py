"""A working length of thread that does not tangle and leaves enough to weave with."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Choice, Held, Limit, Misfit, Remedy, Rule, Woven, holds
from wellstrung.rulebook.plan import Role
from wellstrung.rulebook.values import Quantity, derived, exact
from wellstrung.rulebook.wording import at_least, at_most, spelled
from wellstrung_rules.length import fact, round_number

THREAD_BETWEEN_TAILS = Limit(
    "thread between tails",
    300.0,
    "mm",
    "less to weave with is more joins than weaving, common practice, no source",
    Choice(100.0, 300.0, "some work with an arm's length of thread, common practice, no source"),
)


def check(woven: Woven, ask: Ask) -> Answer:
    if not woven.part.takes("thread") or woven.part.kind.role is Role.STRAND:
        return None  # beads are strung in one go
    length = woven.part.length("thread", "working_length")
    longest = exact("longest working length", fact("longest working length of thread").value, "mm")
    tangles = longest - length
    if not holds(tangles):
        return _misfit(woven, length, tangles, "is so long that it tangles", longest.middle)
    tail = woven.part.length("thread", "tail")
    weaves = derived(
        "left to weave with, beyond the least",
        "mm",
        left_to_weave,
        length=length,
        tail=tail,
        least=ask.limit(THREAD_BETWEEN_TAILS),
    )
    if holds(weaves):
        return Held(min(tangles, weaves, key=lambda margin: margin.likely.low))
    shortest = 2 * tail.middle + ask.limit(THREAD_BETWEEN_TAILS).middle
    fault = f"leaves too little to weave with between two tails of {spelled(tail)}"
    return _misfit(woven, length, weaves, fault, shortest)


def left_to_weave(length: float, tail: float, least: float) -> float:
    """Thread between the tails at both its ends, mm, beyond the least worth threading up.

    Counting.

    >>> left_to_weave(length=1800, tail=200, least=300)
    1100
    """
    return length - 2 * tail - least


def _misfit(woven: Woven, length: Quantity, margin: Quantity, fault: str, limit: float) -> Misfit:
    place, wanted = (
        woven.part.place_of("thread", "working_length"),
        round_number(length, 1800.0, 1828.8),
    )
    less = length.middle > limit
    needed = f"{at_most(limit, length)} or less" if less else f"{at_least(limit, length)} or more"
    return Misfit(
        says=f"the working length of `{woven.part.name}` ({spelled(length)}) {fault}",
        place=place,
        found=spelled(length),
        needed=needed,
        remedies=(
            Remedy.write(place, wanted, f"work with {wanted} at a time"),
            Remedy(f"work with {needed}"),
        ),
        margin=margin,
        also=(woven.part.place_of("thread", "tail"),),
    )


RULE = Rule(
    name="working-length",
    family="length",
    subject=Woven,
    check=check,
    fault="working thread too long or too short",
    title="thread is cut neither so long that it tangles nor so short that it is all tail",
    why=(
        "an over-long thread knots and frays on its way through every bead, and a short one costs"
        " two tails to weave in for a few rounds"
    ),
    limits=(THREAD_BETWEEN_TAILS,),
    sources=(
        "1 1/2 to 2 yd usual, over 3 yd tangles: trade table `stitch_facts`, working length of"
        " thread and longest working length of thread: several pages",
        "30 cm between the tails, 10 cm by some: common practice, no source",
    ),
    bad="thread: {type: fused, tail: 20 cm, working_length: 4.5 m}",
    good="thread: {type: fused, tail: 20 cm, working_length: 1.8 m}",
    level="warning",
)
