"""A wire link or a pin through the holes of the beads that it carries."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Rule, Threaded
from wellstrung_rules.fit import REAM_WET, through


def check(join: Threaded, ask: Ask) -> Answer:
    if not (join.part.traits.on_wire or join.part.traits.in_ear):
        return None
    care = "" if join.bead.reamed_dry else REAM_WET
    return through(join.part, join.bead, f"the hole of bead `{join.bead.name}`", care, ask)


RULE = Rule(
    name="pin-in-bead",
    family="fit",
    subject=Threaded,
    check=check,
    fault="wire too thick for its beads",
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
