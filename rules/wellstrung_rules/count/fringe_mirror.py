"""A fringe of different drops can look the same from both sides.

Every drop but the middle one then has a match across the middle, so at most one kind of drop is odd
in number. Where the plan gives the eyes with `at`, their order is checked too.
"""

from __future__ import annotations

from collections import Counter

from wellstrung.rulebook import Answer, Ask, Held, HungOnEyes, Misfit, Remedy, Rule
from wellstrung.rulebook.plan import Edit


def check(fringe: HungOnEyes, ask: Ask) -> Answer:
    counts: Counter[str] = Counter()
    for line in fringe.lines:
        counts[line.part.name] += line.times
    if len(counts) < 2 or sum(counts.values()) != fringe.eyes.stated_count:
        return None  # one kind mirrors itself; a wrong number is `fringe-count`
    if any(line.at for line in fringe.lines):
        return _in_order(fringe)
    odd = sorted((name for name, count in counts.items() if count % 2), key=counts.__getitem__)
    if len(odd) <= 1:
        return Held()
    drops = ", ".join(f"{counts[name]} of `{name}`" for name in odd)
    return Misfit(
        says=f"{drops} hang from {fringe.eyes.words}: no order of them looks the same from both"
        " sides",
        place=fringe.lines[-1].place_of("times"),
        found=drops,
        needed="an even number of every drop but the middle one",
        remedies=_remedies(fringe, odd, counts),
        also=tuple(line.place_of("times") for line in fringe.lines[:-1]),
        working=(f"{len(odd)} kinds of drop are odd in number; only one can hang in the middle",),
    )


def _in_order(fringe: HungOnEyes) -> Answer:
    """Every eye has the same drop as the eye at the same distance from the other side."""
    eyes, order = fringe.eyes.stated_count, fringe.in_order
    names = {eye: line.part.name for eye, (line, _) in order.items()}
    pairs = [(eye, eyes + 1 - eye) for eye in names if names[eye] != names.get(eyes + 1 - eye)]
    if not pairs:
        return Held()
    left, right = sorted(pairs[0])
    named = [line for line in fringe.lines if line.at]
    line = next((line for line in reversed(named) if {left, right} & set(line.at)), named[-1])
    here, there = names[left], names.get(right, "nothing")
    return Misfit(
        says=f"`{here}` hangs from eye {left} of {eyes} and `{there}` from eye {right}, so the"
        f" fringe of {fringe.eyes.words} does not look the same from both sides",
        place=line.place_of("at"),
        found=f"eyes {left} and {right} differ",
        needed="the same drop at the same distance from either side",
        remedies=(Remedy(f"hang the same from eye {left} as from eye {right}"),),
        working=(", ".join(f"{eye} {name}" for eye, name in names.items()),),
    )


def _remedies(fringe: HungOnEyes, odd: list[str], counts: Counter[str]) -> tuple[Remedy, ...]:
    """The scarcest of the odd ones gains one, the most numerous loses one, pair by pair."""
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
    fault="fringe differs left and right",
    title="the drops of a fringe can look the same from both sides (their number: `fringe-count`;"
    " legs of listed counts: `fringe-lengths`)",
    why="a fringe is seen as a whole, and one drop without a match across the middle looks lost",
    sources=("counting: the same from both sides, at most one kind of drop is odd in number",),
    bad="5 of one drop and 1 of another under six eyes",
    good="4 of one drop and 2 of another under six eyes",
    level="warning",
    yields_to=("fringe-count",),
)
