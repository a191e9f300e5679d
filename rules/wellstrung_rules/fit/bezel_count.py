"""Beads around a stone: enough to close round it, and not so many that the ring gapes."""

from __future__ import annotations

import math

from wellstrung.rulebook import (
    Answer,
    Ask,
    Limit,
    Misfit,
    Remedy,
    Rule,
    Woven,
    holds,
    kept,
    tightest,
)
from wellstrung.rulebook.values import exact, product
from wellstrung.rulebook.wording import spelled

BEZEL_SNUG = Limit(
    "bezel snug",
    0.05,
    "",
    "a ring that is a twentieth of its beads short still closes, common practice, no source",
)


def check(woven: Woven, ask: Ask) -> Answer:
    bezel = woven.part
    held = bezel.traits.made_round
    if not held:
        return None
    around, place = bezel.count("around"), bezel.place_of("around")
    back, behind = bezel.node_at(held, "back"), ask.of(bezel, "around_behind")
    pointed = back is not None and back.value == "pointed"
    least = behind if pointed else ask.of(bezel, "around_least")
    most, count = ask.of(bezel, "around_most"), exact("around", around, "beads")
    snug, fills = count - least, most - count
    if answer := kept(snug, fills):
        return answer
    sure = _even(least.likely.high, most.likely.low)
    needed, try_it = (
        f"a ring of {_listed(sure)}",
        f"try the {held} in three rounds, and add or leave",
    )
    try_it += " out two beads"
    if not sure:
        likely = _even(least.middle, most.middle) or [2 * round(least.middle / 2)]
        needed = f"a ring of {_listed(likely)}, by the length of its beads"
        try_it = (
            f"try the {held} in three rounds of {_listed(likely)}: over all that is sold no one"
        )
        try_it += " ring is sure"
    margin, does, takes = tightest(snug, fills), "{gapes|may gape} round", "which takes"
    if_pointed = False
    if margin is snug:
        closes = snug + product("drawn out", "beads", count, ask.limit(BEZEL_SNUG))
        if_pointed = back is None and closes.likely.high < 0 and holds(count - behind)
        margin, does = closes, "{does|may} not close round"
        if holds(closes):
            margin, does = snug, "{is|may be} tight round"
        elif if_pointed:
            does = "closes only behind the girdle of"
            takes = "if its back is pointed; the girdle takes"
    return Misfit(
        says=f"`{bezel.name}` with `around: {around}` {does} its {held}"
        f" ({spelled(ask.of(bezel, held))}), {takes} {needed}",
        place=place,
        found=f"around: {around}",
        needed=needed,
        remedies=(
            *(Remedy.write(place, str(n), f"write `around: {n}`") for n in sure),
            *([Remedy("if its back is pointed, write `back: pointed` in `stone`")] * if_pointed),
            Remedy(try_it),
        ),
        margin=margin,
        at_most="warning" if if_pointed or margin is snug else "error",
        also=(bezel.place_of(held, "outside"),),
    )


def _listed(counts: list[int]) -> str:
    """The counts in words."""
    between = " or " if len(counts) < 3 else " to "
    return between.join(str(count) for count in dict.fromkeys((*counts[:1], *counts[-1:])))


def _even(low: float, high: float) -> list[int]:
    """The even counts from `low` to `high`."""
    return [2 * half for half in range(math.ceil(low / 2), math.floor(high / 2) + 1)]


RULE = Rule(
    name="bezel-count",
    family="fit",
    subject=Woven,
    check=check,
    fault="bezel does not fit round its stone",
    title=(
        "the ring of a bezel closes round its stone, that of a beaded bead round its core, and does"
        " not gape (whether a bezel is high enough is `bezel-depth`)"
    ),
    why=(
        "two beads too few and the ring will not close, two too many and the stone rattles; it"
        " shows when the stone is in, and the ring is then undone"
    ),
    limits=(BEZEL_SNUG,),
    sources=(
        "pi x (stone + bead outside) over the pitch of the beads, as a polygon: geometry, worked"
        " out for this project",
        "32 cylinders of 11/0 for 12 mm: `Bead Weaving Techniques: Beaded Bezels`, excerpt seen",
        "26 for 12 mm, behind the girdle of a pointed stone: `Make a Peyote Bezel for a Rivoli`,"
        " excerpt seen; 32 for 14 mm: `Cabochon bezel setting`, excerpt seen",
        "a ring a twentieth short is only snug: common practice, no source",
        "closing rounds draw in half a millimetre: common practice, no source",
    ),
    bad="around: 26 of cylinders 11/0 and stone: {outside: 14 mm}",
    good="around: 36 of cylinders 11/0 and stone: {outside: 14 mm}",
)
