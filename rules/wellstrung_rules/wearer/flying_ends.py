"""Cut ends of wire and chain fly: one caution for all the steps that cut."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Caution, Cutting, Rule
from wellstrung.rulebook.wording import steps_named


def check(cutting: Cutting, ask: Ask) -> Answer:
    return Caution(
        f"cut ends fly ({steps_named(cutting.steps)}): wear safety glasses, hold or cover the"
        " short end with a finger, cut downward or inside a bag, and keep every face, your"
        " neighbour's too, out of the line of the cut; the workshop rules of the place where you"
        " teach come first",
        cutting.place,
    )


RULE = Rule(
    name="flying-ends",
    family="wearer",
    subject=Cutting,
    check=check,
    title="every step that cuts chain, wire or pins comes with a reminder of eye protection",
    why="a cut link or wire end flies across the table at eye level",
    sources=(
        "eye protection with side shields where objects fly: 29 CFR 1910.133, copy seen",
        "holding the short end, cutting into a bag: common practice",
    ),
    good="{do: cut, part: drop, every: 8}",
    level="caution",
)
