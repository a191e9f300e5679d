"""Small parts and a child under three: one caution for the plan."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Caution, Rule, Worn
from wellstrung_rules.wearer import LAW_FIRST


def check(worn: Worn, ask: Ask) -> Answer:
    if worn.age != "under three":
        return None
    return Caution(
        "this is for a child under three: whatever fits whole into a cylinder 31.7 mm wide and"
        " 25.4 to 57.1 mm deep counts as a small part that can choke a child, and nearly every"
        " bead, ring and cap that comes loose fits into it; jewellery for children of three and"
        f" under is advised only with close supervision; {LAW_FIRST}",
        worn.place,
    )


RULE = Rule(
    name="small-parts",
    family="wearer",
    subject=Worn,
    check=check,
    fault="small parts for a child",
    title="a piece for a child under three comes with a warning of small parts",
    why="when a child bites through a thread, a hundred beads come loose at once",
    sources=(
        "cylinder for small parts: 16 CFR 1501.4, in inches, 1.25 wide, 1 to 2.25 deep, copy seen",
        "three and under with close supervision only: ASTM F2923, excerpt seen",
    ),
    good="wearer: {age: under three}",
    level="caution",
)
