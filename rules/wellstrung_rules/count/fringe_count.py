"""As many hung as there are eyes to hang them from."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Edit, Held, HungOnEyes, Misfit, Remedy, Rule


def check(fringe: HungOnEyes, ask: Ask) -> Answer:
    eyes = fringe.eyes.stated_count
    hung = sum(line.times for line in fringe.lines)
    if hung == eyes or (fringe.eyes.woven and _evenly(hung, eyes)):
        return Held()
    names = ", ".join(dict.fromkeys(f"`{line.part.name}`" for line in fringe.lines))
    last = fringe.lines[-1]
    words = fringe.eyes.words
    off = abs(hung - eyes)
    short = f"{off} {'has' if off == 1 else 'have'} no eye"
    empty = f"{off} {'stays' if off == 1 else 'stay'} empty"
    rest = short if hung > eyes else empty
    return Misfit(
        says=f"{hung} of {names} hang from {words}, which has {eyes}: {rest}",
        place=last.place_of("times"),
        found=f"{hung} hung",
        needed=f"{eyes}, one for each eye",
        remedies=_remedies(fringe, eyes, hung),
        at_most="error" if hung > eyes else "warning",
        also=(fringe.eyes.count_place,),
        working=(
            " + ".join(str(line.times) for line in fringe.lines) + f" = {hung} hung, {eyes} eyes",
        ),
    )


def _evenly(hung: int, eyes: int) -> bool:
    """Whether a fringe hangs from every so many-th bead of a woven edge, end beads or not."""
    return hung <= eyes and (eyes % hung == 0 or (eyes - 1) % max(hung - 1, 1) == 0)


def _remedies(fringe: HungOnEyes, eyes: int, hung: int) -> tuple[Remedy, ...]:
    last = fringe.lines[-1]
    wanted = last.times + eyes - hung
    other = (
        f"weave an edge of {hung} beads" if fringe.eyes.woven else f"take a part with {hung} eyes"
    )
    by_hand = Remedy(f"hang {eyes} in all, or {other}")
    if wanted < 1 or "times" not in last.node.entries:
        return (by_hand,)
    edit = Edit(last.place_of("times"), str(wanted))
    return (Remedy(f"write `times: {wanted}`, or {other}", (edit,)), by_hand)


RULE = Rule(
    name="fringe-count",
    family="count",
    subject=HungOnEyes,
    check=check,
    title="as many drops hang from a part as it has eyes for them",
    why="a drop too many has nowhere to hang, and an empty eye in a fringe is seen at once",
    sources=(
        "counting",
        "a fringe that skips edge beads evenly is whole: common practice, no source",
    ),
    bad="{part: drop, from: {part: frame, eyes: bottom}, by: small, times: 6} under seven eyes",
    good="{part: drop, from: {part: frame, eyes: bottom}, by: small, times: 7} under seven eyes",
)
