"""What goes through a piercing: whether it has healed, and what the metal gives off in it."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Caution, InEar, Rule
from wellstrung.rulebook.plan import Part
from wellstrung.rulebook.values import table


def check(join: InEar, ask: Ask) -> Answer:
    part = join.ear_wire
    return Caution(
        f"`{part.name}` ({_metal(part)}) goes through a piercing: wear it clean, and only once the"
        " piercing has healed; a post in it may release less than 0.2 µg/cm² of nickel a week"
        f" (REACH, annex XVII, entry 27, tested by EN 1811){_asked(part)}; local law and qualified"
        " advice come first",
        part.place_of("metal"),
    )


def _metal(part: Part) -> str:
    return part.text("metal") if part.has("metal") else "of a metal that is not told"


def _asked(part: Part) -> str:
    """What is left to ask, by what the supplier states and by what the tables know of the metal."""
    if "nickel free" in part.texts("states"):
        return ", and its supplier states none"
    known = part.has("metal") and not table("metals").row(part.text("metal")).text("nickel")
    return "" if known else ": ask its supplier for that very test"


RULE = Rule(
    name="piercing",
    family="wearer",
    subject=InEar,
    check=check,
    title="what goes through a piercing is told as such, with the limit that holds for it",
    why=(
        "the inside of a piercing is no skin: what a clasp may give off at the nape starts an"
        " allergy here"
    ),
    sources=(
        "REACH, annex XVII, entry 27, post assemblies in pierced parts; EN 1811: copies seen",
        "healed piercings only: common practice",
    ),
    good="hook: {kind: ear wire, wire: 20 AWG, metal: niobium, states: [nickel free]}",
    level="caution",
)
