"""The end of a band in a slide clasp or in ribbon ends: its width, and how thick it goes in."""

from __future__ import annotations

import math

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
from wellstrung.rulebook.values import Quantity
from wellstrung.rulebook.wording import about, raised, spelled, within

CLASP_WIDER = Limit(
    "clasp wider",
    3.0,
    "mm",
    "a clasp up to 1.5 mm wider at each edge of its band, common practice, no source",
)


def check(join: BandInClasp, ask: Ask) -> Answer:
    band, clasp = join.band, join.clasp
    if band.has("each_row"):
        raise Missing(f"the width of the end of `{band.name}`, whose rows grow or shrink")
    margins = []
    if clasp.has(*join.thick):
        gap, thickness = clasp.size(*join.thick, allowance="eye size"), ask.of(band, "thickness")
        margins.append(gap - thickness)
        if not holds(margins[0]):
            return _too_thick(join, thickness, gap, margins[0])
    width, takes = ask.of(band, "width"), clasp.size(*join.across, allowance="part length")
    inside, covered = takes - width, width + ask.limit(CLASP_WIDER) - takes
    margin = tightest(*margins, inside, covered)
    if answer := kept(margin):
        return answer
    low = takes.middle - inside.likely.low
    fits = within(low, max(low, takes.middle + covered.likely.low), takes)
    out, bare = "{stands|may stand} out on both sides of", "{leaves|may leave} bare the ends of"
    return Misfit(
        says=f"`{band.name}` ({about(width, takes)} wide) {out if margin is inside else bare} the"
        f" {join.across[0]} of `{clasp.name}` ({spelled(takes)})",
        place=band.place_of("across"),
        found=f"{about(width, takes)} wide",
        needed=f"a {join.across[0]} of {fits}",
        remedies=_remedies(join, width, margin, fits, -1 if margin is inside else 1),
        margin=margin,
        at_most="error" if margin is inside else "warning",
        also=(clasp.place_of(*join.across),),
    )


def _remedies(
    join: BandInClasp, width: Quantity, margin: Quantity, fits: str, sign: int
) -> tuple[Remedy, ...]:
    """As many columns more or fewer as the misfit is wide; or a clasp that fits the band."""
    across = join.band.count("across")
    wanted = across + sign * math.ceil(-margin.likely.low / (width.middle / across) - 1e-9)
    clasp = f"take a clasp with a {join.across[0]} of {fits}"
    if wanted < 1:
        return (Remedy(clasp),)
    text = f"weave `across: {wanted}`, or {clasp}"
    return (Remedy.write(join.band.place_of("across"), str(wanted), text), Remedy(text))


def _too_thick(join: BandInClasp, thickness: Quantity, gap: Quantity, margin: Quantity) -> Misfit:
    part, field = join.thick
    wanted = f"a {field} of {raised(gap, margin)} or more"
    return Misfit(
        says=f"`{join.band.name}` ({about(thickness, gap)} thick) {{does|may}} not go into the"
        f" {field} of `{join.clasp.name}` ({spelled(gap)})",
        place=join.clasp.place_of(part, field),
        found=f"a {field} of {spelled(gap)}",
        needed=wanted,
        remedies=(Remedy(f"take a clasp with {wanted}"),),
        margin=margin,
        also=(join.band.key.place,),
    )


RULE = Rule(
    name="band-clasp",
    family="fit",
    subject=BandInClasp,
    check=check,
    title=(
        "the end of a band is no wider than its slide clasp or its ribbon ends, fills them, and is"
        " thin enough to go in"
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
