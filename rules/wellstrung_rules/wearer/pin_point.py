"""A brooch pin has a point: a reminder for who sews it on and who wears it."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Caution, PinBehind, Rule
from wellstrung_rules.wearer import LAW_FIRST


def check(join: PinBehind, ask: Ask) -> Answer:
    return Caution(
        f"`{join.pin.name}` has a sharp point: keep it shut while you sew or glue, see that its"
        " catch holds with the point inside it, and give it to no small child; for what children"
        f" wear {LAW_FIRST}",
        join.pin.key.place,
    )


RULE = Rule(
    name="pin-point",
    family="wearer",
    subject=PinBehind,
    check=check,
    fault="point of a brooch pin",
    title="a brooch pin comes with a reminder of its sharp point",
    why="an open pin runs into the hand that sews it on, and a catch that does not hold lets the"
    " point out on the one who wears it",
    sources=("common practice, no source",),
    good="pin: {kind: brooch pin, length: 32 mm, behind: panel}",
    level="caution",
)
