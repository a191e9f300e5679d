"""Small parts and a child under three: told once a plan."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Caution, Rule, Worn


def check(worn: Worn, ask: Ask) -> Answer:
    if worn.age != "under three":
        return None
    return Caution(
        "this is for a child under three: whatever fits whole into a cylinder 31.7 mm wide and 25.4"
        " to 57.1 mm deep counts as a small part that can choke, and nearly every bead, ring and"
        " cap that comes loose does; jewellery at three and under is not advised without close"
        " supervision; local law and qualified advice come first",
        worn.place,
    )


RULE = Rule(
    name="small-parts",
    family="wearer",
    subject=Worn,
    check=check,
    title="small parts are named where a child under three wears the piece",
    why="a thread bitten through lets go of a hundred beads at once",
    sources=(
        "cylinder for small parts: 16 CFR 1501.4, in inches, 1.25 wide, 1 to 2.25 deep, copy seen",
        "three and under with close supervision only: ASTM F2923, excerpt seen",
    ),
    good="wearer: {age: under three}",
    level="caution",
)
