"""Enough thread on hand for every part woven with it, with the tails of every change of thread."""

from __future__ import annotations

import math

from wellstrung.rulebook import (
    Answer,
    Ask,
    Edit,
    Item,
    Misfit,
    Missing,
    Part,
    Remedy,
    Role,
    Rule,
    ThreadNeeded,
    about,
    at_least,
    in_unit_of,
    kept,
)


def check(need: ThreadNeeded, ask: Ask) -> Answer:
    if need.thread is None:
        part = need.woven[0]
        if not part.of_thread("type"):
            raise Missing(f"`thread.type` or `thread.spool` of `{part.name}`")
        raise Missing(f"`thread.spool` of `{part.name}`, naming a part of kind `thread`")
    if need.lines and any(_all_tail(part) for part in need.woven):
        return None  # `working-length` reports it
    had, takes = ask.of(need.thread, "on_hand"), ask.of(need.thread, "needed")
    margin = had - takes
    if answer := kept(margin):
        return answer
    names = " and ".join(f"`{part.name}`" for part in need.woven)
    rest = f"for {names}, which takes {about(takes, had)} with its tails"
    on_hand = f"the thread `{need.thread.name}` on hand ({in_unit_of(had.middle, had)})"
    # thread is wound by the metre: round up
    needed = at_least(math.ceil(takes.likely.high / 1000) * 1000, had)
    line = need.lines[-1]
    return Misfit(
        says=f"{on_hand} {{is|may be}} too little {rest}",
        place=line.node.place,
        found=in_unit_of(had.middle, had),
        needed=needed,
        remedies=_remedies(need.thread, line, -margin.likely.low, needed),
        margin=margin,
        also=tuple(part.place_of("thread") for part in need.woven),
    )


def _all_tail(part: Part) -> bool:
    """Whether nothing is left between the tails; raises Missing where a woven part has none."""
    if part.kind.role in (Role.DROP, Role.STRAND):
        return False  # strung in one go; without a `thread.tail` it has the usual one
    working, tail = part.length("thread", "working_length"), part.length("thread", "tail")
    return working.worst.low <= 2 * tail.worst.high


def _remedies(thread: Part, line: Item, short: float, needed: str) -> tuple[Remedy, ...]:
    by_hand = Remedy(f"have {needed} of `{thread.name}`")
    for field in ("pieces", "spools"):
        if line.has(field):
            length = line.length("length") if line.has("length") else thread.length("length")
            wanted = line.count(field) + math.ceil(short / length.middle)
            edit = Edit(line.place_of(field), str(wanted))
            return (Remedy(f"have {wanted} {field} of `{thread.name}`", (edit,)), by_hand)
    if line.has("length"):
        return (Remedy(by_hand.text, (Edit(line.place_of("length"), needed),)),)
    return (by_hand,)


RULE = Rule(
    name="thread-enough",
    family="length",
    subject=ThreadNeeded,
    check=check,
    fault="not enough thread",
    title="the thread on hand weaves every part with its tails (how it is cut is `working-length`)",
    why="the end of the spool comes in the middle of a rope, and another make has another feel",
    sources=(
        "thread of a woven part: counted passes, worked out for this project, ± 20 %",
        "two tails for every working length: counting",
    ),
    bad="{thread: line, length: 5 m} for a rope that takes 9.9 m",
    good="{thread: line, spools: 1} with 45 m on the spool",
    yields_to=("working-length",),
)
