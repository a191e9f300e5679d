"""A snap that is sewn between the ends of a band, which cover it."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, BandInClasp, Misfit, Missing, Rule, kept
from wellstrung.rulebook.remedies import in_words
from wellstrung.rulebook.wording import about, lowered, spelled


def check(join: BandInClasp, ask: Ask) -> Answer:
    if not join.lies_on:
        return None
    if join.band.has("each_row"):
        raise Missing(f"the width of the end of `{join.band.name}`, whose rows grow or shrink")
    width = ask.of(join.band, "width")
    takes = join.clasp.size(*join.across, allowance="part length")
    if answer := kept(margin := width - takes):
        return answer
    (part, field), high = join.across, takes.middle + margin.likely.low
    wanted = f"{part} of {lowered(takes, margin)} or narrower"
    return Misfit(
        says=f"`{join.clasp.name}` ({spelled(takes)}) {{stands|may stand}} out on both sides of"
        f" `{join.band.name}` ({about(width, takes)} wide)",
        place=join.clasp.place_of(*join.across),
        found=f"a {part} of {spelled(takes)}",
        needed=f"a {wanted}",
        remedies=(in_words(f"take a {wanted}", join.clasp, part, field, high=high),),
        margin=margin,
        also=(join.band.key.place,),
    )


RULE = Rule(
    name="snap-width",
    family="fit",
    subject=BandInClasp,
    check=check,
    fault="snap wider than its band",
    title="a snap is no wider than the band that covers it",
    why="a snap that stands out at the edges is seen, and catches on a sleeve",
    sources=("no wider than what covers it: geometry",),
    bad="a band 6 mm wide and snap: {outside: 7 mm}",
    good="a band 12 mm wide and snap: {outside: 7 mm}",
    level="warning",
)
