"""Enough thread on hand for every part woven with it, with the tails of every change of thread."""

from __future__ import annotations

import math

from wellstrung.formulas.arithmetic import ceil
from wellstrung.rulebook import (
    Answer,
    Ask,
    Edit,
    Item,
    Misfit,
    Missing,
    Part,
    Quantity,
    Remedy,
    Rule,
    ThreadNeeded,
    about,
    derived,
    exact,
    in_unit_of,
    kept,
    total,
)


def check(need: ThreadNeeded, ask: Ask) -> Answer:
    if need.thread is None:
        raise Missing(
            f"`thread.spool` of `{need.woven[0][0].name}`, naming a part of kind `thread`"
        )
    name = need.thread.name
    if not need.lines:
        raise Missing(f"a line `{{thread: {name}, spools: ...}}` under `supplies`")
    if any(_all_tail(part) for part, _ in need.woven):
        return None  # `working-length` speaks
    had = total(f"{name} on hand", "mm", [_on_hand(need.thread, line) for line in need.lines])
    takes = total(f"{name} needed", "mm", [_takes(part, n, ask) for part, n in need.woven])
    margin = had - takes
    if answer := kept(margin):
        return answer
    names = " and ".join(f"`{part.name}`" for part, _ in need.woven)
    rest = f"for {names}, which takes {about(takes, had)} with its tails"
    on_hand = f"the thread `{name}` on hand ({in_unit_of(had.middle, had)})"
    # thread is wound by the metre: round up
    needed = in_unit_of(math.ceil(takes.likely.high / 1000) * 1000, had)
    line = need.lines[-1]
    return Misfit(
        says=f"{on_hand} {{is|may be}} too little {rest}",
        place=line.node.place,
        found=in_unit_of(had.middle, had),
        needed=needed,
        remedies=_remedies(need.thread, line, -margin.likely.low, needed),
        margin=margin,
        also=tuple(part.place_of("thread") for part, _ in need.woven),
    )


def thread_taken(thread: float, working: float, tail: float) -> float:
    """Thread cut for a woven part, mm: its path, and two tails for every working length.

    Counted for this project: a working length weaves what its two tails leave of it.

    >>> thread_taken(thread=7500, working=1800, tail=200)
    9900
    """
    return thread + 2 * tail * ceil(thread / (working - 2 * tail))


def _takes(part: Part, count: int, ask: Ask) -> Quantity:
    if part.kind.name == "strand":
        return derived(
            f"{part.name} line with tails",
            "mm",
            lambda count, line, tail: count * (line + 2 * tail),
            count=exact("strung", count),
            line=ask.of(part, "thread"),
            tail=part.length("thread", "tail"),
            source="strung in one go, a tail at each end: counting",
        )
    return derived(
        f"{part.name} thread with tails",
        "mm",
        lambda count, thread, working, tail: count * thread_taken(thread, working, tail),
        count=exact("woven", count),
        thread=ask.of(part, "thread"),
        working=part.length("thread", "working_length"),
        tail=part.length("thread", "tail"),
        source="two tails for every working length: counting",
    )


def _all_tail(part: Part) -> bool:
    if part.kind.name == "strand":
        return False
    working, tail = part.length("thread", "working_length"), part.length("thread", "tail")
    return working.worst.low <= 2 * tail.worst.high


def _on_hand(thread: Part, line: Item) -> Quantity:
    length = line.length("length") if line.has("length") else thread.length("length")
    return derived(
        f"{thread.name} wound",
        "mm",
        lambda times, length: times * length,
        times=exact("times", line.count("pieces", default=line.count("spools", default=1))),
        length=length,
    )


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
