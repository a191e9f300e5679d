"""The first row of a band that is started on a hoop, a ring, a bar or a chain: it finds room."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Misfit, Remedy, Rule, StartedOn, kept
from wellstrung.rulebook.plan import Edit
from wellstrung.rulebook.values import exact


def check(start: StartedOn, ask: Ask) -> Answer:
    band, what = start.band, start.what
    field = "each_row" if band.lists("each_row") else "across"
    across, place = band.counts(field)[0], band.place_of(field)
    margin = ask.of(band, "room_for") - exact("first row", across)
    if answer := kept(margin):
        return answer
    fits = int(across + margin.likely.low)
    edits = (Edit(place, str(fits)),) if field == "across" and fits > 1 else ()
    begin = f"begin with {fits} or fewer" if fits > 1 else "begin with fewer"
    return Misfit(
        says=f"the first row of `{band.name}` ({across} beads) {{does|may}} not find room on"
        f" `{what.name}`, which takes {fits}",
        place=place,
        found=f"{across} beads",
        needed=f"a first row of {fits} or fewer",
        remedies=(Remedy(f"{begin}, or take a larger `{what.name}`", edits),),
        margin=margin,
        also=(start.place,),
    )


RULE = Rule(
    name="first-row",
    family="fit",
    subject=StartedOn,
    check=check,
    fault="first row too long for its hoop",
    title="the first row of a band finds room on the hoop, bar or chain that it is woven onto",
    why="beads that find no room ride up over each other, and the rows that hang on them ruffle",
    sources=("beads side by side on the outside of a hoop: geometry of this project",),
    bad="across: 60 of 11/0, and started_on: a hoop of 25 mm",
    good="across: 36 of 11/0, and started_on: a hoop of 25 mm",
)
