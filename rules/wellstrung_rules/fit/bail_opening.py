"""The opening of a bail and what it goes round: it runs along it freely.

A bail too narrow for the beads of a strand may be strung between two of them, where it stays; on a
spaced strand that is bare line, along which it runs. Round a rope or a chain is no such place.
"""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, GoesRound, Misfit, Remedy, Rule, holds, kept
from wellstrung.rulebook.plan import Eyes, Part, Role
from wellstrung.rulebook.remedies import in_words, next_up, sized_by
from wellstrung.rulebook.wording import about, article, in_unit_of, spelled
from wellstrung_rules.limits import RING_SWING

#: a tenth of a millimetre is as fine as bails are sold
_STEP = 0.1


def check(join: GoesRound, ask: Ask) -> Answer:
    what, beaded = join.what, join.around.kind.role is Role.STRAND
    is_bail = isinstance(what, Part) and what.kind.role is Role.BAIL
    if isinstance(what, Eyes):
        inside, words = ask.get(what.quantity("hole")), what.words
        part, path = what.part, (*what.path, "hole")
    else:
        inside, words = ask.of(what, "inside"), f"the opening of {what.noun} `{what.name}`"
        part, path = what, ("inside" if is_bail else sized_by(what),)
    # an eye or a ring is strung between two beads, a bail where the line is bare
    strung = beaded and not (is_bail and not join.around.has("spacing"))
    across = ask.of(join.around, "line") if strung else ask.across(join.around)
    fits = inside - across
    runs = fits - ask.limit(RING_SWING)
    if answer := kept(runs):
        return answer
    forced = not holds(fits)
    goes = "go" if forced else "run freely"
    between = forced and beaded and not strung
    stays = ": it stays between the two beads where it is strung" if between else ""
    place, least = part.place_of(*path), next_up(inside.middle - runs.likely.low, _STEP)
    size = in_unit_of(least, inside)
    wider = f"take {article(part.noun)} with an opening of {size}"
    return Misfit(
        says=f"{words} ({spelled(inside)}) {{does|may}} not {goes} round"
        f" {'the line of ' if strung else ''}`{join.around.name}`, which is"
        f" {about(across, inside)} across{stays}",
        place=place,
        found=spelled(inside),
        needed=f"an opening of {size} or wider",
        remedies=(
            *([Remedy.write(place, size, f"{wider} for `{part.name}`")] if is_bail else []),
            in_words(
                f"{wider} or wider, or hang it by a ring that goes round `{join.around.name}`",
                part,
                *path,
                low=least,
            ),
        ),
        margin=fits if forced else runs,
        at_most="error" if forced and not between else "warning",
        also=(join.around.key.place,),
    )


RULE = Rule(
    name="bail-opening",
    family="fit",
    subject=GoesRound,
    check=check,
    fault="bail too narrow",
    title=(
        "a bail, or an eye that hangs without a ring, goes round its rope, strand or chain and runs"
        " along it (a ring round a rope is `ring-room`; whether a closed one gets there at all is"
        " `passes-over-end`)"
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
