"""As many drops are hung as there are eyes for them."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Held, HungOnEyes, Misfit, Remedy, Rule, evenly
from wellstrung.rulebook.plan import Edit
from wellstrung.rulebook.wording import plural


def check(fringe: HungOnEyes, ask: Ask) -> Answer:
    eyes = fringe.eyes.stated_count
    hung = sum(line.times for line in fringe.lines)
    named = [eye for line in fringe.lines for eye in line.at if not fringe.shared]
    if named and (max(named) > eyes or len(set(named)) < len(named)):
        return _at_no_eye(fringe, eyes, named)
    even = fringe.eyes.woven and len(evenly(hung, eyes)) == hung
    # in an eye that the run fills, what hangs shares it
    free = eyes - fringe.filled
    if fringe.shared or free <= hung <= eyes or even or all(line.at for line in fringe.lines):
        return Held()
    names = ", ".join(dict.fromkeys(f"`{line.part.name}`" for line in fringe.lines))
    right = eyes if hung > eyes else free
    off = abs(hung - right)
    no_eye, empty = ("has no eye", "stays empty") if off == 1 else ("have no eye", "stay empty")
    added = " + ".join(str(line.times) for line in fringe.lines)
    run = f", {fringe.filled} of them filled by the run" if fringe.filled else ""
    return Misfit(
        says=f"{hung} of {names} hang from {fringe.eyes.words}, which has {eyes}{run}:"
        f" {off} {no_eye if hung > eyes else empty}",
        place=fringe.lines[-1].place_of("times"),
        found=f"{hung} hung",
        needed=f"{right}, one for each eye",
        remedies=_remedies(fringe, eyes, right, hung, ask),
        at_most="error" if hung > eyes > 1 else "warning",  # rings can share one eye
        fault="more drops than eyes" if hung > eyes else "eyes without a drop",
        also=(fringe.eyes.count_place,),
        working=(f"{added} = {hung} hung, {eyes} eyes{run}",),
    )


def _at_no_eye(fringe: HungOnEyes, eyes: int, named: list[int]) -> Misfit:
    """`at` names an eye that does not exist, or the same eye twice."""
    wrong = max(named) if max(named) > eyes else next(n for n in named if named.count(n) > 1)
    line = next(line for line in reversed(fringe.lines) if wrong in line.at)
    head = f"`at` hangs `{line.part.name}` from eye {wrong} of {fringe.eyes.words}"
    return Misfit(
        says=f"{head}, of which there are {eyes}" if wrong > eyes else f"{head} a second time",
        place=line.place_of("at"),
        found=f"eye {wrong}",
        needed=f"eyes from 1 to {eyes}, each once",
        remedies=(Remedy(f"name eyes from 1 to {eyes}, each once"),),
        also=(fringe.eyes.count_place,),
    )


def _remedies(fringe: HungOnEyes, eyes: int, right: int, hung: int, ask: Ask) -> tuple[Remedy, ...]:
    last = fringe.lines[-1]
    wanted = last.times + right - hung
    other = f"take a part with {plural(hung + eyes - right, 'eye')}"
    if fringe.eyes.woven:
        other = f"weave an edge of {hung} beads"
        if 1 < last.times == hung <= eyes / 2:  # a fringe of few legs: which beads carry them
            at = [1 + round(leg * (eyes - 1) / (hung - 1)) for leg in range(hung)]
            other = f"name the beads that carry them, as in `at: {at}` instead of `times`"
    by_hand = (Remedy(f"hang {right} in all, or {other}"),)
    if wanted < 1 or "times" not in last.node.entries:
        return by_hand
    steps = [  # a step that hangs as many of them as the line changes with it
        step.place_of("times")
        for step in ask.plan.steps_that("hang")
        if (step.get("part"), step.get("times")) == (last.part.name, last.times)
    ]
    edits = tuple(Edit(place, str(wanted)) for place in (last.place_of("times"), *steps))
    also = " here and in its step" if steps else ""
    return (Remedy(f"write `times: {wanted}`{also}, or {other}", edits), *by_hand)


RULE = Rule(
    name="fringe-count",
    family="count",
    subject=HungOnEyes,
    check=check,
    fault="drops and eyes differ in number",
    title="as many drops hang from a part as it has eyes for them",
    why="a drop too many has nowhere to hang, and an empty eye in a fringe is seen at once",
    sources=(
        "counting",
        "a fringe that skips edge beads evenly is complete, and the legs of a tassel share one"
        " loop: common practice, no source",
    ),
    bad="{part: drop, from: {part: frame, eyes: bottom}, by: small, times: 6} under seven eyes",
    good="{part: drop, from: {part: frame, eyes: bottom}, by: small, times: 7} under seven eyes",
)
