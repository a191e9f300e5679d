"""Neighbours in a fringe against the spacing of the eyes they hang from.

Two that hang side by side at one height each take half their width to either side of their eye.
Fringe sewn to a woven edge lies as close as its beads, by design, and is not judged.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from wellstrung import circles
from wellstrung.rulebook import (
    Answer,
    Ask,
    Held,
    HungOnEyes,
    Misfit,
    Part,
    Quantity,
    Remedy,
    Rule,
    Verdict,
    about,
    compare,
    derived,
    in_unit_of,
    spelled,
)


def check(fringe: HungOnEyes, ask: Ask) -> Answer:
    pairs = list(dict.fromkeys(_neighbours(fringe)))
    if fringe.eyes.woven or fringe.eyes.count < 2 or not pairs:
        return None
    spacing = ask.get(fringe.eyes.quantity("spacing"))
    room = {pair: spacing - _side_by_side(pair, ask) for pair in pairs}
    pair = min(pairs, key=lambda pair: room[pair].likely.low)
    margin = room[pair]
    if compare(margin) is Verdict.HOLDS:
        return Held(margin)
    need = _side_by_side(pair, ask)
    one, other = pair
    things = f"`{one.name}` side by side" if one is other else f"`{one.name}` beside `{other.name}`"
    head = f"{things} from {fringe.eyes.words}"
    tail = f"{about(need, spacing)} from middle to middle, and the eyes are {spelled(spacing)}"
    wanted = in_unit_of(spacing.middle - margin.likely.low, spacing)
    narrow = in_unit_of(need.middle + margin.likely.low, spacing)
    path = fringe.eyes.part.kind.eyes[fringe.eyes.key].path
    line = next(line for line in reversed(fringe.lines) if line.part is other)
    return Misfit(
        says=f"{head} crowd each other: they need {tail} apart",
        may=f"{head} may crowd each other: they need {tail} apart",
        place=line.place_of("part"),
        found=f"{spelled(spacing)} apart",
        needed=f"eyes {wanted} apart or more, or pieces {narrow} wide or less",
        remedies=(
            Remedy(
                f"hang narrower pieces ({narrow} or less), hang them from every other eye, or let"
                " neighbours hang at different heights"
            ),
        ),
        margin=margin,
        also=(fringe.eyes.part.place_of(*path, "spacing"),),
    )


def _neighbours(fringe: HungOnEyes) -> Iterator[tuple[Part, Part]]:
    """Every two parts that hang side by side, lines taken in the order of the plan."""
    for line in fringe.lines:
        if line.times > 1:
            yield line.part, line.part
    for before, after in pairwise(fringe.lines):
        yield before.part, after.part


def _side_by_side(pair: tuple[Part, Part], ask: Ask) -> Quantity:
    one, other = pair
    if one is other:
        return ask.across(one)
    return derived(
        "width side by side",
        "mm",
        circles.beside,
        "one / 2 + other / 2",
        one=ask.across(one),
        other=ask.across(other),
        source="geometry, worked out for this project",
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
    sources=("half the width of either to each side of its eye: geometry",),
    level="warning",
    bad="drops 7 mm wide from eyes of `spacing: 6 mm`",
    good="drops 4.4 mm wide from eyes of `spacing: 6 mm`",
)
