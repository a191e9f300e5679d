"""Strands that are twisted together keep their slope: too many turns, and they kink."""

from __future__ import annotations

import math

from wellstrung.formulas.arithmetic import pi
from wellstrung.formulas.circles import side_by_side
from wellstrung.rulebook import Answer, Ask, Limit, Misfit, Remedy, Rule, StrandsBeside, kept
from wellstrung.rulebook.values import derived, exact
from wellstrung.rulebook.wording import about

TWIST = Limit(
    "steepest twist",
    0.7,
    "",
    "of its length that a strand goes round, about 45 degrees; beyond it the bundle stands stiff"
    " and kinks: from memory, no source",
)


def check(beside: StrandsBeside, ask: Ask) -> Answer:
    if not beside.twists:
        return None
    sizes = [ask.of(strand, "outside") for strand in beside.strands]
    lengths = [ask.of(strand, "length") for strand in beside.strands]
    shortest = min(lengths, key=lambda length: length.middle)
    round_ = derived(
        "one turn",
        "mm",
        lambda thick, **strands: pi * (side_by_side(**strands) - thick),
        {f"strand{n}": size for n, size in enumerate(sizes, 1)},
        thick=min(sizes, key=lambda size: size.middle),
        source="round the middle of the bundle: geometry",
    )
    room = derived(
        "turns that it takes",
        "",
        lambda length, share, turn: length * share / turn,
        length=shortest,
        share=ask.limit(TWIST),
        turn=round_,
    )
    margin = room - exact("turns", beside.twists)
    if answer := kept(margin):
        return answer
    most = max(1, math.floor(room.likely.low))
    return Misfit(
        says=f"the strands are twisted {beside.twists} times in {about(shortest)}, which {{is|may"
        f" be}} so steep that they kink",
        place=beside.place,
        found=f"{beside.twists} turns",
        needed=f"{most} turns or fewer",
        remedies=(Remedy(f"twist them {most} times or less, or make them longer"),),
        margin=margin,
        also=tuple(strand.place_of("length") for strand in beside.strands),
    )


RULE = Rule(
    name="strand-twist",
    family="length",
    subject=StrandsBeside,
    check=check,
    fault="twisted too steeply",
    title="strands are twisted so far that they lie in a slope that holds",
    why="each turn takes up length and sets the strands steeper: past half a right angle the bundle"
    " stands stiff, kinks, and the beads press the line",
    limits=(TWIST,),
    sources=("the slope of a screw: geometry", "about 45 degrees: from memory, no source"),
    bad="{strands: [one, two], twisted: 60} in two strands of 40 cm of 4 mm beads",
    good="{strands: [one, two], twisted: 8} in two strands of 40 cm of 4 mm beads",
    level="warning",
)
