"""Cut ends of wire and chain fly: told once wherever a plan cuts."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Caution, Cutting, Rule


def check(cutting: Cutting, ask: Ask) -> Answer:
    numbers = [str(step.number) for step in cutting.steps]
    listed = " and ".join(part for part in (", ".join(numbers[:-1]), numbers[-1]) if part)
    steps = f"step{'s' if len(numbers) > 1 else ''} {listed}"
    return Caution(
        f"cut ends fly ({steps}): wear safety glasses, hold or cover the short end with a finger,"
        " cut downward or inside a bag, and keep every face off the line of the cut, your"
        " neighbour's too; workshop rules where you teach come first",
        cutting.place,
    )


RULE = Rule(
    name="flying-ends",
    family="wearer",
    subject=Cutting,
    check=check,
    title="eye protection is named wherever chain, wire or pins are cut",
    why="a snipped link or wire end flies across the table, at the height of the eyes round it",
    sources=(
        "eye protection with side shields where objects fly: 29 CFR 1910.133, copy seen",
        "holding the short end, cutting into a bag: common practice",
    ),
    good="{do: cut, part: drop, every: 8}",
    level="caution",
)
