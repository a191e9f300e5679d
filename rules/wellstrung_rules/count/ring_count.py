"""As many rings as a hung part has eyes to hang by.

This rule checks a part that hangs from a rope or another part; where it hangs from a set of eyes,
each of those takes one (`fringe-count`). A clasp often has more rings on one side than the other.
"""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Held, HungByEyes, Misfit, Remedy, Rule
from wellstrung.rulebook.wording import plural


def check(hung: HungByEyes, ask: Ask) -> Answer:
    eyes = hung.eyes.stated_count
    rings = sum(line.times for line in hung.lines)
    over = rings % eyes
    if not over:
        return Held()
    name, path = hung.eyes.part.name, hung.eyes.path
    empty = eyes - over
    rest = f"{empty} {'stays' if empty == 1 else 'stay'} empty"
    if rings > eyes:
        rest = f"{over} {'has' if over == 1 else 'have'} no eye, or with one more `{name}` {rest}"
    wanted = rings - over if rings > eyes else eyes
    return Misfit(
        says=f"{plural(rings, 'ring')} {'hold' if rings > 1 else 'holds'} `{name}`, but"
        f" {hung.eyes.words} number {eyes}: {rest}",
        place=hung.lines[-1].place_of("times"),
        found=plural(rings, "ring"),
        needed=f"{wanted} rings, one for each eye",
        remedies=_remedies(hung, wanted - rings, wanted),
        also=(hung.eyes.part.place_of(*path, "count"),),
    )


def _remedies(hung: HungByEyes, more: int, wanted: int) -> tuple[Remedy, ...]:
    last = hung.lines[-1]
    times = last.times + more
    by_hand = Remedy(f"hang `{last.part.name}` by {wanted} rings in all")
    if times < 1 or last.by is None:
        return (by_hand,)
    written = "times" in last.node.entries
    new = str(times) if written else f"{last.by.name}, times: {times}"
    place = last.place_of("times" if written else "by")
    return (Remedy.write(place, new, f"write `times: {times}`"), by_hand)


RULE = Rule(
    name="ring-count",
    family="count",
    subject=HungByEyes,
    check=check,
    fault="an eye without its ring",
    title=(
        "every eye that a part hangs by has its ring (eyes that carry drops are `fringe-count`,"
        " rings on hand `findings-enough`)"
    ),
    why="a frame with two top eyes that hangs by one of them hangs askew",
    sources=("counting",),
    bad="{part: frame, from: rope, by: carrier} for a frame with two top eyes",
    good="{part: frame, from: rope, by: carrier, times: 2} for a frame with two top eyes",
    level="warning",
)
