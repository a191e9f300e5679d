"""Cut ends of wire and chain fly: one caution for all that is cut."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Caution, Cutting, Rule


def check(cutting: Cutting, ask: Ask) -> Answer:
    springs = any(part.thread.springs for part in cutting.cut)
    return Caution(
        "cut ends of wire, pins and chain fly: wear safety glasses, hold or cover the"
        " short end with a finger, cut downward or inside a bag, and keep every face, your"
        f" neighbour's too, out of the line of the cut{_SPRINGS if springs else ''}; the workshop"
        " rules of the place where you teach come first",
        cutting.place,
        cutting.steps,
        cuts=True,
    )


_SPRINGS = (
    "; memory wire is hardened steel, which springs back when it is cut and dents ordinary cutters:"
    " use shears made for it, and turn its ends in, because they are sharp"
)

RULE = Rule(
    name="flying-ends",
    family="wearer",
    subject=Cutting,
    check=check,
    fault="cut ends that fly",
    title="all wire, pins and chain that are cut come with a reminder of eye protection",
    why="a cut link or wire end flies across the table at eye level, and so does the tail behind a"
    " crimp",
    sources=(
        "eye protection with side shields where objects fly: 29 CFR 1910.133, copy seen",
        "memory wire damages ordinary cutters and its ends fly: jewelrymaking.about.com, Memory"
        " Wire Shears, copy seen",
        "holding the short end, cutting into a bag: common practice",
    ),
    good="{do: cut, part: drop, every: 8}",
    level="caution",
)
