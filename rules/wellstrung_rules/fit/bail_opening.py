"""The opening of a bail and what it goes round: it runs along it freely.

A bail too narrow for the beads of a strand may be strung between two of them, where it stays; round
a rope or a chain there is no such place.
"""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, BailAround, Misfit, Remedy, Rule, holds, kept
from wellstrung.rulebook.plan import Role
from wellstrung.rulebook.remedies import next_up
from wellstrung.rulebook.wording import about, in_unit_of, spelled
from wellstrung_rules.limits import RING_SWING

#: a tenth of a millimetre is as fine as bails are sold
_STEP = 0.1


def check(join: BailAround, ask: Ask) -> Answer:
    inside, across = ask.of(join.bail, "inside"), ask.across(join.around)
    fits = inside - across
    runs = fits - ask.limit(RING_SWING)
    if answer := kept(runs):
        return answer
    forced, beaded = not holds(fits), join.around.kind.role is Role.STRAND
    name, place = join.bail.name, join.bail.place_of("inside")
    goes = "go" if forced else "run freely"
    stays = ": it stays between the two beads where it is strung" if forced and beaded else ""
    size = in_unit_of(next_up(inside.middle - runs.likely.low, _STEP), inside)
    return Misfit(
        says=f"the opening of bail `{name}` ({spelled(inside)}) {{does|may}} not {goes} round"
        f" `{join.around.name}`, which is {about(across, inside)} across{stays}",
        place=place,
        found=spelled(inside),
        needed=f"an opening of {size} or wider",
        remedies=(
            Remedy.write(place, size, f"take a bail with an opening of {size} for `{name}`"),
            Remedy(f"take a bail with an opening of {size} or wider, or hang it by a ring"),
        ),
        margin=fits if forced else runs,
        at_most="error" if forced and not beaded else "warning",
        also=(join.around.key.place,),
    )


RULE = Rule(
    name="bail-opening",
    family="fit",
    subject=BailAround,
    check=check,
    title=(
        "a bail goes round its rope, strand or chain and runs along it (whether a closed one gets"
        " there at all is `passes-over-end`)"
    ),
    why="a bail that grips the rope holds the pendant askew and frays the thread it slides on",
    limits=(RING_SWING,),
    sources=(
        "what goes round something is wider than it: geometry",
        "0.2 mm left to run: common practice, no source",
    ),
    bad="bail: {kind: bail, inside: 6 mm} on a rope of 7.8 mm",
    good="bail: {kind: bail, inside: 9 mm} on a rope of 7.8 mm",
)
