"""The opening of a bail and what it goes round: it runs along it freely."""

from __future__ import annotations

import math

from wellstrung.rulebook import (
    Answer,
    Ask,
    BailAround,
    Edit,
    Held,
    Misfit,
    Remedy,
    Rule,
    Verdict,
    about,
    compare,
    in_unit_of,
    spelled,
)


def check(join: BailAround, ask: Ask) -> Answer:
    inside, across = ask.of(join.bail, "inside"), ask.across(join.around)
    fits = inside - across
    runs = fits - ask.limit("ring swing")
    if compare(runs) is Verdict.HOLDS:
        return Held(runs)
    forced = compare(fits) is not Verdict.HOLDS
    bail = f"the opening of bail `{join.bail.name}` ({spelled(inside)})"
    around = f"`{join.around.name}`, which is {about(across, inside)} across"
    # a tenth of a millimetre is as fine as bails are sold
    wanted = math.ceil((inside.middle - runs.likely.low) * 10 - 1e-9) / 10
    size = in_unit_of(wanted, inside)
    return Misfit(
        says=f"{bail} {'does not go' if forced else 'does not run freely'} round {around}",
        may=f"{bail} may not {'go' if forced else 'run freely'} round {around}",
        place=join.bail.place_of("inside"),
        found=spelled(inside),
        needed=f"an opening of {size} or wider",
        remedies=(
            Remedy(
                f"take a bail with an opening of {size} for `{join.bail.name}`",
                (Edit(join.bail.place_of("inside"), size),),
            ),
            Remedy(f"take a bail with an opening of {size} or wider, or hang it by a ring"),
        ),
        margin=fits if forced else runs,
        at_most="error" if forced else "warning",
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
    sources=(
        "what goes round something is wider than it: geometry",
        "0.2 mm left to run: common practice, no source",
    ),
    bad="bail: {kind: bail, inside: 6 mm} on a rope of 7.8 mm",
    good="bail: {kind: bail, inside: 9 mm} on a rope of 7.8 mm",
)
