"""Neighbours in a fringe against the spacing of the eyes they hang from.

Two that are wide at one height each take half that width to either side of their eye. Fringe sewn
to a woven edge lies as close as its beads, and its legs may ride a little behind each other.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import NamedTuple

from wellstrung.rulebook import (
    Answer,
    Ask,
    Held,
    HungOnEyes,
    Misfit,
    Remedy,
    Rule,
    kept,
    side_by_side,
)
from wellstrung.rulebook.plan import Part, drops_of
from wellstrung.rulebook.values import SLACK, Quantity, exact, product
from wellstrung.rulebook.wording import about, at_least, at_most, in_unit_of, spelled
from wellstrung_rules.limits import FRINGE_CROWD

#: so many eyes away nothing touches that anyone hangs side by side
_FARTHEST = 50


def check(fringe: HungOnEyes, ask: Ask) -> Answer:
    if fringe.shared or fringe.eyes.count == 1 or len(fringe.in_order) < 2:
        return None  # what hangs from one eye hangs as a tassel
    eyes, spacing = fringe.eyes, ask.get(fringe.eyes.quantity("spacing"))
    crowd = ask.limit(FRINGE_CROWD) if eyes.woven else exact(FRINGE_CROWD.name, 1.0)
    found = []
    for pair in dict.fromkeys(_within_reach(fringe, spacing, ask)):
        one, other = ask.outline(pair.one, pair.which), ask.outline(pair.other, pair.which_other)
        need = side_by_side(one, other)
        if need is not None:  # the two are wide at one height
            away = exact("eyes apart", pair.eyes)
            found.append((product("side by side", "mm", away, spacing, crowd) - need, pair, need))
    if not found:
        return Held()
    margin, pair, need = min(found, key=lambda one: one[0].likely.low)
    if answer := kept(margin):
        return answer
    apart, width = pair.eyes * spacing.middle, need.middle + margin.likely.low
    hang = spelled(spacing) if pair.eyes == 1 else in_unit_of(apart, spacing)
    wanted = apart - margin.likely.low / crowd.middle
    narrow = f"pieces {at_most(width, spacing)} wide or less" if width > 0 else ""
    beside = "side by side" if pair.one is pair.other else f"beside `{pair.other.name}`"
    line = next(line for line in reversed(fringe.lines) if line.part is pair.other)
    spaced = () if eyes.woven else (*eyes.path, "spacing")
    return Misfit(
        says=f"`{pair.one.name}` {beside} from {eyes.words} {{|may }}crowd each other: they need"
        f" {about(need, spacing)} from middle to middle, and hang {hang} apart",
        place=line.place_of("part"),
        found=f"{hang} apart",
        needed=", or ".join(filter(None, (f"{at_least(wanted, spacing)} apart or more", narrow))),
        remedies=(Remedy(_remedy(fringe, pair, wanted / spacing.middle, narrow)),),
        margin=margin,
        also=(eyes.part.place_of(*spaced) if spaced else eyes.part.key.place,),
        working=(crowd.source,) if crowd.source else (),
    )


class Pair(NamedTuple):
    """Two that hang side by side, which drop of a graduated fringe each is, and how far apart."""

    one: Part
    which: int
    other: Part
    which_other: int
    eyes: int


def _within_reach(fringe: HungOnEyes, spacing: Quantity, ask: Ask) -> Iterator[Pair]:
    """Neighbours, and those beyond them that the widest piece could touch over a short leg."""
    widest = max(ask.across(line.part).likely.high for line in fringe.lines)
    reach = min(max(1, math.ceil(widest / max(spacing.likely.low, SLACK))), _FARTHEST)
    order = [
        (place, line.part, n % drops_of(line.part)) for place, (line, n) in fringe.in_order.items()
    ]
    for index, (left, one, which) in enumerate(order):
        for right, other, which_other in order[index + 1 : index + 1 + reach]:
            if right - left <= reach or right == order[index + 1][0]:
                yield Pair(one, which, other, which_other, right - left)


def _remedy(fringe: HungOnEyes, pair: Pair, eyes: float, narrow: str) -> str:
    every = math.ceil(eyes - 1e-9)
    nth = {2: "every other", 3: "every third"}.get(every, f"every {every}th")
    bead = "edge bead" if fringe.eyes.woven else "eye"
    narrower = f", take {narrow}," if narrow else ""
    return (
        f"hang `{pair.other.name}` from {nth} {bead} (`at: [1, {1 + every}, ...]`){narrower} or let"
        " neighbours end at different heights"
    )


RULE = Rule(
    name="fringe-spread",
    family="fit",
    subject=HungOnEyes,
    check=check,
    fault="fringe too crowded",
    title=(
        "what hangs side by side from a row of eyes is no wider than the eyes are apart"
        " (how many hang there is `fringe-count`)"
    ),
    why=(
        "drops wider than their spacing ride over each other: the fringe fans out, tangles, and"
        " turns its faces sideways"
    ),
    limits=(FRINGE_CROWD,),
    sources=(
        "half the width of either to each side of its eye: geometry",
        "legs of a woven edge up to 1.75 times as wide as its beads: common practice, no source",
    ),
    level="warning",
    bad="drops 7 mm wide from eyes of `spacing: 6 mm`",
    good="drops 4.4 mm wide from eyes of `spacing: 6 mm`",
)
