"""A fringe of different drops can be hung the same from both sides.

Seen from both sides alike, every drop but the middle one has its like across the middle: at most
one kind of drop is odd in number. The order along the eyes is not in a plan and is not judged.
"""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Edit, Held, HungOnEyes, Misfit, Remedy, Rule


def check(fringe: HungOnEyes, ask: Ask) -> Answer:
    counts: dict[str, int] = {}
    for line in fringe.lines:
        counts[line.part.name] = counts.get(line.part.name, 0) + line.times
    if len(counts) < 2 or sum(counts.values()) != fringe.eyes.stated_count:
        return None  # one kind mirrors itself; a wrong number is `fringe-count`
    odd = sorted((name for name, count in counts.items() if count % 2), key=counts.__getitem__)
    if len(odd) <= 1:
        return Held()
    drops = ", ".join(f"{counts[name]} of `{name}`" for name in odd)
    return Misfit(
        says=f"{drops} hang from {fringe.eyes.words}: no order of them is alike from both sides",
        place=fringe.lines[-1].place_of("times"),
        found=drops,
        needed="an even number of every drop but the middle one",
        remedies=_remedies(fringe, odd, counts),
        also=tuple(line.place_of("times") for line in fringe.lines[:-1]),
        working=(
            f"{len(odd)} kinds of drop are odd in number, and only one can hang in the middle",
        ),
    )


def _remedies(fringe: HungOnEyes, odd: list[str], counts: dict[str, int]) -> tuple[Remedy, ...]:
    """Of the odd ones the scarcest gains what the most numerous gives, pair by pair."""
    by_hand = Remedy("make every drop but the middle one even in number")
    change: dict[str, int] = {}
    for few, many in zip(odd[: len(odd) // 2], reversed(odd), strict=False):
        change |= {few: 1, many: -1}
    edits, words = [], []
    for name, by in change.items():
        line = next(line for line in fringe.lines if line.part.name == name)
        if line.times + by < 1 or "times" not in line.node.entries:
            return (by_hand,)
        edits.append(Edit(line.place_of("times"), str(line.times + by)))
        words.append(f"{counts[name] + by} of `{name}`")
    return (Remedy(f"hang {', '.join(words)}", tuple(edits)), by_hand)


RULE = Rule(
    name="fringe-mirror",
    family="count",
    subject=HungOnEyes,
    check=check,
    title=(
        "the drops of a fringe can hang alike from both sides (whether each has an eye is"
        " `fringe-count`)"
    ),
    why="a fringe is seen as a whole, and one drop that has no like across the middle looks lost",
    sources=("counting: alike from both sides, at most one kind of drop is odd in number",),
    bad="5 of one drop and 1 of another under six eyes",
    good="4 of one drop and 2 of another under six eyes",
    level="warning",
    yields_to=("fringe-count",),
)
