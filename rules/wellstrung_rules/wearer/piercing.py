"""What goes through a piercing: only once it has healed, and with little nickel in its metal."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Caution, InEar, Rule
from wellstrung.rulebook.values import metal as metal_row
from wellstrung_rules.wearer import LAW_FIRST, metal_of


def check(join: InEar, ask: Ask) -> Answer:
    part = join.ear_wire
    metal = part.text("metal") if part.has("metal") else ""
    if "nickel free" in part.texts("states"):
        stated = "its supplier states that it is nickel free"
    elif metal and not metal_row(metal).text("nickel"):
        stated = f"{part.said('metal')} holds no nickel if it is what it is sold as"
    else:
        stated = "ask its supplier for the result of this test"
    return Caution(
        f"`{part.name}` ({metal_of(part)}) goes through a piercing: wear it clean, and"
        " only once the piercing has healed; for every part that goes through one - post, hook,"
        " hoop or lever back - the EU forbids a nickel release of 0.2 µg/cm² a week or more (REACH,"
        f" annex XVII, entry 27, tested by EN 1811), and less than that can still trouble a wearer"
        f" with an allergy: {stated}; {LAW_FIRST}",
        part.place_of("metal"),
    )


RULE = Rule(
    name="piercing",
    family="wearer",
    subject=InEar,
    check=check,
    fault="metal through a piercing",
    title="what goes through a piercing comes with the limit of nickel for it",
    why="the inside of a piercing is not protected as skin is: an amount of nickel that a clasp"
    " may release on the neck can start an allergy here",
    sources=(
        "REACH, annex XVII, entry 27, all post assemblies inserted into pierced ears and other"
        " pierced parts, read here as whatever goes through the piercing; EN 1811: copies seen",
        "healed piercings only: common practice",
    ),
    good="hook: {kind: ear wire, wire: 20 AWG, metal: niobium, states: [nickel free]}",
    level="caution",
)
