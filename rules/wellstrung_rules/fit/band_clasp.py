"""The end of a band in a slide clasp or in ribbon ends: how wide it is."""

from __future__ import annotations

import math
from collections.abc import Iterator

from wellstrung.rulebook import (
    Answer,
    Ask,
    BandInClasp,
    Limit,
    Misfit,
    Missing,
    Remedy,
    Rule,
    kept,
    tightest,
)
from wellstrung.rulebook.plan import Edit
from wellstrung.rulebook.remedies import in_words, measured_anew, sold_within
from wellstrung.rulebook.values import Quantity
from wellstrung.rulebook.wording import about, spelled, within

CLASP_WIDER = Limit(
    "clasp wider",
    3.0,
    "mm",
    "a clasp up to 1.5 mm wider at each edge of its band, common practice, no source",
)


#: what a band does that is too narrow, and one that is too wide
_FAULTS = ("{leaves|may leave} bare the ends of", "{stands|may stand} out on both sides of")


def check(join: BandInClasp, ask: Ask) -> Answer:
    if join.lies_on:
        return None  # a snap has a rule of its own
    band, clasp = join.band, join.clasp
    if band.has("each_row"):
        raise Missing(f"the width of the end of `{band.name}`, whose rows grow or shrink")
    width, takes = ask.of(band, "width"), clasp.size(*join.across, allowance="part length")
    inside, covered = takes - width, width + ask.limit(CLASP_WIDER) - takes
    if answer := kept(margin := tightest(inside, covered)):
        return answer
    low, high = takes.middle - inside.likely.low, takes.middle + covered.likely.low
    needed, wide = f"a {join.across[0]} of {within(low, high, takes)}", about(width, takes)
    by_hand = in_words(f"take a clasp with {needed}", clasp, *join.across, low=low, high=high)
    if sold_within(low, high) is None:
        needed = "a measured band: its likely width varies by more than one clasp allows"
        by_hand = Remedy(f"weave 2 cm of `{band.name}`, measure it and take the clasp by that")
    return Misfit(
        says=f"`{band.name}` ({wide} wide) {_FAULTS[margin is inside]} the {join.across[0]} of"
        f" `{clasp.name}` ({spelled(takes)})",
        place=band.place_of("across"),
        found=f"{wide} wide",
        needed=needed,
        remedies=(*_columns(join, width, inside, covered, by_hand), by_hand),
        margin=margin,
        at_most="error" if margin is inside else "warning",
        also=(clasp.place_of(*join.across),),
    )


def _columns(
    join: BandInClasp, width: Quantity, inside: Quantity, covered: Quantity, by_hand: Remedy
) -> Iterator[Remedy]:
    """As many columns fewer or more as the band is too wide or narrow; an edit if that is all."""
    each = width.middle / (across := join.band.count("across"))
    fewer, more = (math.ceil(-end.likely.low / each - 1e-9) for end in (inside, covered))
    wanted = across - fewer if fewer > 0 else across + more
    if wanted >= 1:
        anew = measured_anew(join.band, "across")
        text = f"weave `across: {wanted}`{anew}, or {by_hand.text}"
        write = () if anew else (Edit(join.band.place_of("across"), str(wanted)),)
        yield Remedy(text, write, by_hand.target)


RULE = Rule(
    name="band-clasp",
    family="fit",
    subject=BandInClasp,
    check=check,
    fault="clasp does not fit its band",
    title=("the end of a band is no wider than its slide clasp or its ribbon ends, and fills them"),
    why=(
        "a band wider than its tube cups and rubs at the corners, and one much narrower leaves"
        " bare metal"
    ),
    limits=(CLASP_WIDER,),
    sources=(
        "no wider than what takes it: geometry",
        "up to 1.5 mm of bare clasp at each edge: common practice, no source",
    ),
    bad="a band 22 mm wide and tube: {length: 20 mm}",
    good="a band 18 mm wide and tube: {length: 20 mm}",
)
