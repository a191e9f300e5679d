"""The end of a band in a slide clasp or in ribbon ends: its width, and how thick it goes in."""

from __future__ import annotations

from wellstrung.rulebook import (
    Answer,
    Ask,
    BandInClasp,
    Limit,
    Misfit,
    Missing,
    Remedy,
    Rule,
    holds,
    kept,
    tightest,
)
from wellstrung.rulebook.remedies import in_words, sold_within
from wellstrung.rulebook.values import Quantity
from wellstrung.rulebook.wording import about, raised, spelled, within
from wellstrung_rules.fit import columns_woven, snap_too_wide

CLASP_WIDER = Limit(
    "clasp wider",
    3.0,
    "mm",
    "a clasp up to 1.5 mm wider at each edge of its band, common practice, no source",
)


#: what a band does that is too narrow, and one that is too wide
_FAULTS = ("{leaves|may leave} bare the ends of", "{stands|may stand} out on both sides of")


def check(join: BandInClasp, ask: Ask) -> Answer:
    band, clasp, margins = join.band, join.clasp, list[Quantity]()
    if band.has("each_row"):
        raise Missing(f"the width of the end of `{band.name}`, whose rows grow or shrink")
    if join.thick and clasp.has(*join.thick):
        gap, thickness = clasp.size(*join.thick, allowance="eye size"), ask.of(band, "thickness")
        if not holds(margin := gap - thickness):
            return _too_thick(join, thickness, gap, margin)
        margins.append(margin)
    width, takes = ask.of(band, "width"), clasp.size(*join.across, allowance="part length")
    if join.lies_on:
        return snap_too_wide(join, width, takes)
    inside, covered = takes - width, width + ask.limit(CLASP_WIDER) - takes
    if answer := kept(margin := tightest(*margins, inside, covered)):
        return answer
    low, high = takes.middle - inside.likely.low, takes.middle + covered.likely.low
    needed, wide = f"a {join.across[0]} of {within(low, high, takes)}", about(width, takes)
    by_hand = in_words(f"take a clasp with {needed}", clasp, *join.across, low=low, high=high)
    if sold_within(low, high) is None:
        needed = "a measured band: its likely width is wider than any one clasp takes"
        by_hand = Remedy(f"weave 2 cm of `{band.name}`, measure it and take the clasp by that")
    return Misfit(
        says=f"`{band.name}` ({wide} wide) {_FAULTS[margin is inside]} the {join.across[0]} of"
        f" `{clasp.name}` ({spelled(takes)})",
        place=band.place_of("across"),
        found=f"{wide} wide",
        needed=needed,
        remedies=(*columns_woven(join, width, inside, covered, by_hand), by_hand),
        margin=margin,
        at_most="error" if margin is inside else "warning",
        also=(clasp.place_of(*join.across),),
    )


def _too_thick(join: BandInClasp, thickness: Quantity, gap: Quantity, margin: Quantity) -> Misfit:
    (part, field), low = join.thick, gap.middle - margin.likely.low
    wanted = f"a {field} of {raised(gap, margin)} or more"
    return Misfit(
        says=f"`{join.band.name}` ({about(thickness, gap)} thick) {{does|may}} not go into the"
        f" {field} of `{join.clasp.name}` ({spelled(gap)})",
        place=join.clasp.place_of(part, field),
        found=f"a {field} of {spelled(gap)}",
        needed=wanted,
        remedies=(in_words(f"take a clasp with {wanted}", *(join.clasp, part, field), low=low),),
        margin=margin,
        also=(join.band.key.place,),
    )


RULE = Rule(
    name="band-clasp",
    family="fit",
    subject=BandInClasp,
    check=check,
    fault="clasp does not fit its band",
    title=(
        "the end of a band is no wider than its slide clasp or its ribbon ends, fills them, and is"
        " thin enough to go in; a snap is no wider than its band"
    ),
    why=(
        "a band wider than its tube cups and rubs at the corners; one much narrower leaves bare"
        " metal; one too thick is crushed by the jaws, and glass beads break"
    ),
    limits=(CLASP_WIDER,),
    sources=(
        "no wider and no thicker than what takes it: geometry",
        "up to 1.5 mm of bare clasp at each edge: common practice, no source",
    ),
    bad="a band 22 mm wide and tube: {length: 20 mm}",
    good="a band 18 mm wide and tube: {length: 20 mm}",
)
