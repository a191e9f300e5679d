"""A wire link or a pin through the holes of the beads that it carries."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Misfit, Rule, Threaded, kept
from wellstrung.rulebook.plan import Bead, Part
from wellstrung.rulebook.remedies import in_words, take_wire, thinner_wires
from wellstrung.rulebook.wording import at_most, raised, spelled
from wellstrung_rules.fit import REAM_WET


def check(join: Threaded, ask: Ask) -> Answer:
    if not join.part.traits.on_wire:
        return None
    return through(join.part, join.bead, f"the hole of bead `{join.bead.name}`", REAM_WET, ask)


def through(link: Part, bored: Part | Bead, its_hole: str, care: str, ask: Ask) -> Answer:
    """Whether the wire of a link passes the hole of what it carries; `care` is said of a wider."""
    wire, hole = ask.of(link, "wire"), ask.of(bored, "hole")
    margin = hole - wire
    if answer := kept(margin):
        return answer
    limit = wire.middle + margin.likely.low
    what = "bead" if isinstance(bored, Bead) else bored.kind.name
    wider = f"take a {what} with a hole of {raised(hole, margin)} or wider"
    return Misfit(
        says=f"the wire of `{link.name}` ({spelled(wire)}) {{does|may}} not pass {its_hole}"
        f" ({spelled(hole)})",
        place=link.place_of("wire"),
        found=spelled(wire),
        needed=f"{at_most(max(limit, 0), hole)} or thinner",
        remedies=(
            *take_wire(link, thinner_wires(wire, limit)),
            in_words(
                f"{wider}; {care}" if care else wider,
                bored,
                "hole",
                low=hole.middle - margin.likely.low,
            ),
        ),
        margin=margin,
        also=(bored.place_of("hole") if isinstance(bored, Part) else bored.key.place,),
    )


RULE = Rule(
    name="pin-in-bead",
    family="fit",
    subject=Threaded,
    check=check,
    title="the wire of a link or a pin passes the holes of its beads",
    why=(
        "stone holes are drilled from both ends and are narrowest in the middle, where nobody sees"
        " it; a pin that is forced splits a pearl"
    ),
    sources=(
        "pearls are drilled for 22 to 24 AWG, some take only 26: trade table `other_beads`",
        "a wire passes a hole that is no narrower than the wire: geometry",
    ),
    bad="pin of 20 AWG (0.81 mm) through a pearl with a hole of 0.6 mm",
    good="pin of 24 AWG (0.51 mm) through a pearl with a hole of 0.6 mm",
)
