"""Crystal on a child: cut crystal may be lead glass, far over what a child's piece may hold."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, BeadsOnChild, Caution, Rule
from wellstrung.rulebook.plan import Bead
from wellstrung.rulebook.wording import listed
from wellstrung_rules.wearer import CHILDREN, LAW_FIRST

#: words of a material that may be lead glass, and of one that is none
_MAY, _IS_NONE = ("crystal", "lead", "rhinestone"), ("lead free", "lead-free", "rock", "quartz")


def check(worn: BeadsOnChild, ask: Ask) -> Answer:
    asked = [bead for bead in worn.beads if _may_be_lead_glass(bead)]
    if not asked:
        return None
    return Caution(
        f"this is for {CHILDREN[worn.age]}, and {listed(bead.name for bead in asked)} may be lead"
        " crystal, about a quarter of which by weight is lead oxide; for children's products the"
        " US limit is 100 ppm of lead (CPSIA, section 101), and crystal beads are not exempt: ask"
        " the supplier for a statement and write what they are made of, such as `material: lead"
        f" free crystal`; {LAW_FIRST}",
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
    title="a child's piece with beads that may be lead crystal comes with a warning",
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
