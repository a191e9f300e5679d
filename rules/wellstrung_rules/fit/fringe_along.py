"""Legs spread along a rope, a strand or a long edge: as far apart as they need, a bead for each."""

from __future__ import annotations

import math
from itertools import pairwise

from wellstrung.rulebook import (
    Answer,
    Ask,
    FringeAlong,
    Held,
    Misfit,
    Remedy,
    Rule,
    kept,
    side_by_side,
    tightest,
)
from wellstrung.rulebook.plan import drops_of
from wellstrung.rulebook.values import Quantity, derived, exact, product
from wellstrung.rulebook.wording import about
from wellstrung_rules.limits import FRINGE_CROWD

#: what counts the beads along what is long, each with a hole to hang a leg from
_COUNTED = ("edge_beads", "rounds", "beads")


def check(fringe: FringeAlong, ask: Ask) -> Answer:
    line, source = fringe.line, fringe.source
    if fringe.hung < 2:
        return None
    apart, wide = ask.apart(fringe), _wide(fringe, ask)
    if wide is None:
        return Held()
    room = product("room for a leg", "mm", apart, ask.limit(FRINGE_CROWD)) - wide
    margin = tightest(room, *(more for more in [_beads(fringe, apart, ask)] if more is not None))
    if answer := kept(margin):
        return answer
    most = max(1, math.floor(fringe.hung * (1 - max(0.0, -room.likely.low) / wide.middle)))
    along = f"the {fringe.edge} of `{source.name}`" if fringe.edge else f"`{source.name}`"
    graduated = margin is room and drops_of(line.part) > 1
    where = ", at a height where both have beads," if graduated else ","
    crowd = (
        f"{{crowd|may crowd}} each other: they need {about(wide, apart)}{where} and hang"
        f" {about(apart)} apart"
    )
    if margin is not room:
        crowd = "{outnumber|may outnumber} the beads that they hang from"
        most = max(1, math.floor(fringe.hung + margin.likely.low + 1e-9))
    rest = "put the others in a second `layer`"
    if graduated:
        rest += ", or let neighbours differ by more beads, so that what is wide misses the next"
    return Misfit(
        says=f"the {fringe.hung} legs of `{line.part.name}` along {along} {crowd}",
        place=line.place_of("times"),
        found=f"{fringe.hung} legs",
        needed=f"{most} legs or fewer in this layer",
        remedies=(Remedy(f"hang {most} legs or fewer, or {rest}"),),
        margin=margin,
        also=(source.key.place,),
    )


def _wide(fringe: FringeAlong, ask: Ask) -> Quantity | None:
    """From middle to middle of two neighbours; None where no two are wide at one height."""
    parts = [line.part for line in fringe.lines]
    if len(parts) > 1:  # the plan does not say which follows which
        return max((ask.across(part) for part in parts), key=lambda size: size.middle)
    # the counts begin again where more hang than they say, and only there is the last by the first
    many = min(fringe.hung, drops_of(parts[0]) + 1)
    legs = [ask.outline(parts[0], number) for number in range(many)]
    pairs = [side_by_side(one, other) for one, other in pairwise(legs)]
    return max(filter(None, pairs), key=lambda size: size.middle, default=None)


def _beads(fringe: FringeAlong, apart: Quantity, ask: Ask) -> Quantity | None:
    """How many more beads there are along the stretch than legs; None where nothing counts them."""
    of = next((what for what in _COUNTED if ask.offers(fringe.source, what)), None)
    if of is None or not (fringe.edge or of != "edge_beads"):
        return None
    along = derived(
        "beads along it",
        "",
        lambda beads, apart, legs, length: beads * apart * legs / length,
        beads=ask.of(fringe.source, of),
        apart=apart,
        legs=exact("legs", fringe.hung),
        length=ask.of(fringe.source, "length"),
    )
    return along - exact("legs", fringe.hung - 1)


RULE = Rule(
    name="fringe-along",
    family="fit",
    subject=FringeAlong,
    check=check,
    fault="fringe too dense",
    title=(
        "the legs along a rope, a strand or a long edge have room side by side, and a bead each to"
        " hang from (of counted eyes it is `fringe-spread`)"
    ),
    why="legs that are too many twist the edge to a ruffle, and their beads are bought for nothing",
    limits=(FRINGE_CROWD,),
    sources=(
        "spread evenly along it, half the width of either to each side: geometry",
        "legs up to 1.75 times as wide as they are apart: common practice, no source",
    ),
    level="warning",
    bad="{part: leg, from: rope, by: thread, times: 300} of legs 2.1 mm wide along 30 cm",
    good="{part: leg, from: rope, by: thread, times: 60} of legs 2.1 mm wide along 30 cm",
)
