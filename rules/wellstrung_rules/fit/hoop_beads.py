"""The beads on the wire of an ear hoop against the length of its wire."""

from __future__ import annotations

import math

from wellstrung.rulebook import Answer, Ask, InEar, Limit, Misfit, Remedy, Rule, kept
from wellstrung.rulebook.wording import about, in_unit_of

BARE_HOOP = Limit(
    "bare hoop",
    12.0,
    "mm",
    "wire of a hoop that goes through the ear and into its catch, common practice, no source",
)


def check(join: InEar, ask: Ask) -> Answer:
    hoop = join.ear_wire
    if not hoop.has("beads"):
        return None
    stack, bare = ask.of(hoop, "stack"), ask.limit(BARE_HOOP)
    margin = ask.of(hoop, "round") - bare - stack
    if answer := kept(margin):
        return answer
    beads = ask.of(hoop, "beads").middle
    fit = max(math.floor(beads * (1 + margin.likely.low / stack.middle)), 0)
    room = in_unit_of(stack.middle + margin.middle, stack)
    place = hoop.place_of("count" if hoop.has("count") else "beads")
    do = f"string {f'`count: {fit}`' if fit else 'no bead'}, or take a larger hoop"
    return Misfit(
        says=f"the {beads:.0f} beads on hoop `{hoop.name}` take {about(stack)} of its wire,"
        f" {{more|perhaps more}} than the {room} that are free for them",
        place=place,
        found=about(stack),
        needed=f"{room} or less",
        remedies=(*[Remedy.write(place, str(fit), do)] * (fit and hoop.has("count")), Remedy(do)),
        margin=margin,
        also=(hoop.key.place,),
    )


RULE = Rule(
    name="hoop-beads",
    family="fit",
    subject=InEar,
    check=check,
    fault="too many beads on a hoop",
    title="the beads on an ear hoop leave the wire free that goes through the ear",
    why="beads that lie side by side on a table take more of a wire once it is bent to a hoop, and"
    " a full hoop does not close",
    limits=(BARE_HOOP,),
    sources=("beads on a bent wire meet at its inside: geometry of this project",),
    bad="hoop: {..., length: 20 mm, beads: pearl, count: 16} with pearls of 4 mm",
    good="hoop: {..., length: 20 mm, beads: pearl, count: 9} with pearls of 4 mm",
)
