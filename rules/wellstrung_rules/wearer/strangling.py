"""What goes round a child's neck can strangle, with a breakaway clasp too: one caution."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Caution, Rule, Worn
from wellstrung_rules.wearer import CHILDREN, LAW_FIRST, ROUND_THE_NECK


def check(worn: Worn, ask: Ask) -> Answer:
    if worn.age not in CHILDREN or worn.piece not in ROUND_THE_NECK:
        return None
    return Caution(
        f"this {worn.piece} is for {CHILDREN[worn.age]}, and whatever goes round a child's neck can"
        " strangle, with a breakaway clasp too: one may hold up to 15 lb (6.8 kg hanging), and in"
        " one study a mean pull of 724 g (7.1 N) closed an airway; a child wears it only while"
        f" somebody watches, and never to sleep, climb or play{_TOO_YOUNG[worn.age]}; {LAW_FIRST}",
        worn.place,
    )


_TOO_YOUNG = {
    "child": "",
    "under three": "; for a child under three make something else, that goes round no neck",
}

RULE = Rule(
    name="strangling",
    family="wearer",
    subject=Worn,
    check=check,
    fault="strangling",
    title="what goes round a child's neck comes with a warning that it can strangle",
    why="a breakaway that passes its test still holds about nine times the force that closed an"
    " airway in a study of children's necklaces",
    sources=(
        "ASTM F2923, breakaway at 15 lbf (66.7 N), as cited in the study below; standard not seen",
        "Soudek and McLaughlin, Paediatr Child Health 2018;23(2):106-110: mean force of 7.1 N,"
        " more than which eight of ten necklaces held; copy seen",
        "not for sleep or play: common practice, no source",
    ),
    good="wearer: {age: 7 years} with toggle: {kind: clasp, type: toggle, breakaway: 5 lb, ...}",
    level="caution",
)
