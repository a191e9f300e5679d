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
    Limit,
    Misfit,
    Remedy,
    Rule,
    kept,
    side_by_side,
)
from wellstrung.rulebook.plan import Part, Place, drops_of
from wellstrung.rulebook.values import SLACK, Quantity, derived, exact
from wellstrung.rulebook.wording import about, in_unit_of, spelled

FRINGE_CROWD = Limit(
    "fringe crowd",
    1.75,
    "",
    (
        "a leg to every column of peyote is usual, and round beads are half as wide again as long:"
        " such legs lie a little behind each other, common practice, no source"
    ),
)

#: so many eyes away nothing touches that anyone hangs side by side
_FARTHEST = 50


def check(fringe: HungOnEyes, ask: Ask) -> Answer:
    if len(fringe.in_order) < 2:
        return None
    spacing = ask.get(fringe.eyes.quantity("spacing"))
    pairs = dict.fromkeys(_within_reach(fringe, spacing, ask))
    crowd = ask.limit(FRINGE_CROWD) if fringe.eyes.woven else exact(FRINGE_CROWD.name, 1.0)
    needs = {pair: need for pair in pairs if (need := _need(pair, ask)) is not None}
    if not needs:
        return Held()  # no two are wide at one height
    room = {pair: _room(spacing, pair.eyes, crowd, need) for pair, need in needs.items()}
    pair = min(room, key=lambda pair: room[pair].likely.low)
    margin, need = room[pair], needs[pair]
    if answer := kept(margin):
        return answer
    one, other = pair.one, pair.other
    things = f"`{one.name}` side by side" if one is other else f"`{one.name}` beside `{other.name}`"
    head = f"{things} from {fringe.eyes.words}"
    apart = pair.eyes * spacing.middle
    tail = f"{about(need, spacing)} from middle to middle, and hang {_apart(apart, spacing)} apart"
    width = need.middle + margin.likely.low
    narrow = f"pieces {in_unit_of(width, spacing)} wide or less" if width > 0 else ""
    wanted = apart - margin.likely.low / crowd.middle
    line = next(line for line in reversed(fringe.lines) if line.part is other)
    return Misfit(
        says=f"{head} {{|may }}crowd each other: they need {tail}",
        place=line.place_of("part"),
        found=f"{_apart(apart, spacing)} apart",
        needed=", or ".join(filter(None, (f"{in_unit_of(wanted, spacing)} apart or more", narrow))),
        remedies=(Remedy(_remedy(fringe, pair, wanted / spacing.middle, narrow)),),
        margin=margin,
        also=(spacing_place(fringe),),
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
    order = list(fringe.in_order.items())
    for index, (left, (one, n)) in enumerate(order):
        for right, (other, m) in order[index + 1 : index + 1 + reach]:
            away = right - left
            if away <= reach or right == order[index + 1][0]:
                yield Pair(
                    one.part, n % drops_of(one.part), other.part, m % drops_of(other.part), away
                )


def _need(pair: Pair, ask: Ask) -> Quantity | None:
    one = ask.outline(pair.one, pair.which)
    return side_by_side(one, ask.outline(pair.other, pair.which_other))


def _room(spacing: Quantity, eyes: int, crowd: Quantity, need: Quantity) -> Quantity:
    return derived(
        "room side by side",
        "mm",
        lambda eyes, spacing, crowd, need: eyes * spacing * crowd - need,
        eyes=exact("eyes apart", eyes),
        spacing=spacing,
        crowd=crowd,
        need=need,
    )


def _apart(apart: float, spacing: Quantity) -> str:
    return spelled(spacing) if apart == spacing.middle else in_unit_of(apart, spacing)


def spacing_place(fringe: HungOnEyes) -> Place:
    """Where the eyes say how far they are apart; of a woven edge the band itself."""
    part = fringe.eyes.part
    return part.key.place if fringe.eyes.woven else part.place_of(*fringe.eyes.path, "spacing")


def _remedy(fringe: HungOnEyes, pair: Pair, eyes: float, narrow: str) -> str:
    every = math.ceil(eyes - 1e-9)
    nth = {2: "every other", 3: "every third"}.get(every, f"every {every}th")
    name = f"`{pair.other.name}`"
    bead = "edge bead" if fringe.eyes.woven else "eye"
    narrower = f", take {narrow}," if narrow else ""
    return (
        f"hang {name} from {nth} {bead} (`at: [1, {1 + every}, ...]`){narrower} or let neighbours"
        " end at different heights"
    )


RULE = Rule(
    name="fringe-spread",
    family="fit",
    subject=HungOnEyes,
    check=check,
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
