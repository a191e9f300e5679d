"""The end of a band in the slot of a slide clasp or between the jaws of a ribbon end: how thick."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, BandInClasp, Misfit, Rule, kept
from wellstrung.rulebook.remedies import in_words
from wellstrung.rulebook.wording import about, raised, spelled


def check(join: BandInClasp, ask: Ask) -> Answer:
    if not join.thick or not join.clasp.has(*join.thick):
        return None  # it is sewn on, or nobody says how far it opens
    gap, thickness = (
        join.clasp.size(*join.thick, allowance="eye size"),
        ask.of(join.band, "thickness"),
    )
    if answer := kept(margin := gap - thickness):
        return answer
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
    name="clasp-gap",
    family="fit",
    subject=BandInClasp,
    check=check,
    fault="band too thick for its clasp",
    title="the end of a band is thin enough for the slot or the jaws that take it",
    why="a band that is too thick does not go in, or the jaws crush it and glass beads break",
    sources=("no thicker than what takes it: geometry",),
    bad="a band 2 mm thick and jaw: {gap: 1.5 mm}",
    good="a band 1.5 mm thick and jaw: {gap: 3 mm}",
)
