"""A ring reaches round the bridge between a hole and the edge of its part.

What the ring holds of a drilled or pierced part is not a thin wall of wire but all that stands
between the hole and the edge; with whatever else the ring holds it must lie inside the ring.
"""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Misfit, RingHolds, Rule, holds, kept
from wellstrung.rulebook.remedies import sized_by, wider_ring
from wellstrung.rulebook.wording import about, at_least, spelled
from wellstrung_rules.fit import bridged, held, packed
from wellstrung_rules.limits import RING_SWING

_SOURCE = "a bridge as wide as the hole is from the edge, other parts beside it: see `circles.py`"


def check(join: RingHolds, ask: Ask) -> Answer:
    eyes = next((eyes for eyes in join.eyes if bridged(eyes)), None)
    if eyes is None:
        return None
    taken = packed("reach taken", held(join, ask, bridges=True), _SOURCE)
    inside = ask.of(join.ring, "inside")
    reaches = inside - taken
    swings = reaches - ask.limit(RING_SWING)
    if answer := kept(swings):
        return answer
    forced, size = not holds(reaches), ask.of(join.ring, sized_by(join.ring))
    tightly = "{reaches|may reach} so tightly that it does not swing round"
    short = -swings.likely.low
    return Misfit(
        says=f"ring `{join.ring.name}` (inside {about(inside, size)})"
        f" {'{does|may} not reach round' if forced else tightly} {eyes.words},"
        f" {spelled(ask.get(eyes.quantity('edge')))} from the edge, with all that it holds taking"
        f" {about(taken, size)}",
        place=join.ring.place_of(sized_by(join.ring)),
        found=f"inside {about(inside, size)}",
        needed=f"inside {at_least(inside.middle + short, size)} or more",
        remedies=wider_ring(join.ring, size, short, "take a part drilled nearer its edge"),
        margin=reaches if forced else swings,
        at_most="error" if forced else "warning",
        also=(eyes.part.place_of(*eyes.path, "edge"),),
    )


RULE = Rule(
    name="ring-reach",
    family="fit",
    subject=RingHolds,
    check=check,
    fault="ring too small to reach its hole",
    title=(
        "a ring reaches round what stands between a hole and the edge of its part"
        " (an eye of plain wire is `ring-room`)"
    ),
    why=(
        "a disc drilled 5 mm from its edge needs a far larger ring than its hole lets one think:"
        " the usual ring goes in and cannot be closed"
    ),
    limits=(RING_SWING,),
    sources=(
        "what one ring holds lies inside it: circles in a circle, see `circles.py`",
        "0.2 mm left to swing: common practice, no source",
    ),
    yields_to=("ring-through-eye", "ring-room"),
    bad="a ring 3.4 mm inside in a disc drilled 4 mm from its edge",
    good="a ring 6 mm inside in a disc drilled 4 mm from its edge",
)
