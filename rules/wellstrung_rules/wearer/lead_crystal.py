"""Crystal on a child: cut crystal may be lead glass, far over what a child's piece may hold."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, BeadsOnChild, Caution, Rule
from wellstrung.rulebook.plan import Bead, Part
from wellstrung.rulebook.wording import listed
from wellstrung_rules.wearer import CHILDREN, LAW_FIRST

#: words of a material that may be lead glass, and of one that is none
_MAY, _IS_NONE = ("crystal", "lead", "rhinestone"), ("lead free", "lead-free", "rock", "quartz")


def check(worn: BeadsOnChild, ask: Ask) -> Answer:
    beads = [bead for bead in worn.beads if _may_be_lead_glass(bead)]
    cups = [chain for chain in worn.cups if "lead free" not in chain.texts("states")]
    asked: list[Bead | Part] = [*beads, *cups]
    if not asked:
        return None
    say = "what they are made of, such as `material: lead free crystal`" if beads else ""
    stated = "`states: [lead free]` of the chain, stones included" if cups else ""
    return Caution(
        f"this is for {CHILDREN[worn.age]}, and {listed(one.name for one in asked)} may be lead"
        " crystal, about a quarter of which by weight is lead oxide; for children's products the"
        " US limit is 100 ppm of lead (CPSIA, section 101), and crystal beads are not exempt: ask"
        f" the supplier for a statement and write {say}{' and ' if say and stated else ''}{stated};"
        f" {LAW_FIRST}",
        asked[0].key.place,
    )


def _may_be_lead_glass(bead: Bead) -> bool:
    """Whether its material says so, or is not written and its family may be of cut crystal."""
    if not bead.has("material"):
        return bead.family is None or bool(bead.family.text("lead"))
    material = bead.text("material").casefold()
    return any(one in material for one in _MAY) and not any(one in material for one in _IS_NONE)


RULE = Rule(
    name="lead-crystal",
    family="wearer",
    subject=BeadsOnChild,
    check=check,
    fault="lead in crystal",
    title="a child's piece with beads or stones that may be lead crystal comes with a warning",
    why="a child sucks on what sparkles; the lead in crystal does not show, and no polish keeps"
    " all of it in",
    sources=(
        "24 to 32 % of lead oxide: Handling lead crystal, beads.co, copy seen",
        "no exclusion for crystal and glass beads, 900 to 23,000 ppm found: vote of the CPSC of"
        " July 2009, report of International Trade Today, copy seen",
        "CPSIA, section 101: copies seen",
    ),
    good="star: {type: other, material: lead free crystal, outside: 4 mm, ...}",
    level="caution",
)
