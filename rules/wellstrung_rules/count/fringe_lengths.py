"""Legs of listed counts are as long on both sides of the middle, or go one way as a slant does."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Held, HungOnEyes, Misfit, Remedy, Rule


def check(fringe: HungOnEyes, ask: Ask) -> Answer:
    line = fringe.lines[0]
    counts = line.part.counts("count")
    if fringe.shared or len(fringe.lines) > 1 or len(counts) < 2:
        return None  # a tassel has no sides
    if counts == counts[::-1] or list(counts) in (sorted(counts), sorted(counts)[::-1]):
        return Held()
    left = next(n for n, one in enumerate(counts) if one != counts[-1 - n])
    place, half = line.part.place_of("count"), counts[: (len(counts) + 1) // 2]
    mirrored = [*half, *half[: len(counts) // 2][::-1]]
    edit = ask.with_field(line.part.node, "count", [str(one) for one in mirrored])
    return Misfit(
        says=f"the legs of `{line.part.name}` count {', '.join(map(str, counts))} beads: number"
        f" {left + 1} from the left has {counts[left]} and number {left + 1} from the right has"
        f" {counts[-1 - left]}, so the fringe does not look the same from both sides",
        place=place,
        found=f"{counts[left]} and {counts[-1 - left]} beads",
        needed="as many beads at the same distance from either side",
        remedies=(
            Remedy(f"write `{mirrored}`", (edit,)),
            Remedy("make each leg as long as its match across the middle"),
        ),
        also=(line.place_of("part"),),
    )


RULE = Rule(
    name="fringe-lengths",
    family="count",
    subject=HungOnEyes,
    check=check,
    fault="fringe legs uneven",
    title="the legs of a fringe mirror in their bead counts, or go one way (which drop hangs where:"
    " `fringe-mirror`)",
    why="a list of counts is typed once and read by nobody: one bead too many on one side makes a"
    " foot that the eye finds at once",
    sources=("counting: the same from both sides, or a slant from one end to the other",),
    bad="count: [3, 4, 5, 4, 4]",
    good="count: {mirror: [3, 4, 5]}, which is 3, 4, 5, 4, 3",
    level="warning",
)
