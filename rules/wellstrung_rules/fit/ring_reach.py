"""A ring reaches round the bridge between a hole and the edge of its part.

What the ring holds of a drilled or pierced part is not a thin wall of wire but all that stands
between the hole and the edge; with whatever else the ring holds it must lie inside the ring.
"""

from __future__ import annotations

from wellstrung.formulas import circles
from wellstrung.rulebook import Answer, Ask, Misfit, RingHolds, Rule, holds, kept
from wellstrung.rulebook.plan import Eyes
from wellstrung.rulebook.remedies import sized_by, wider_ring
from wellstrung.rulebook.values import Quantity, derived
from wellstrung.rulebook.wording import about, in_unit_of, spelled
from wellstrung_rules.limits import RING_SWING


def check(join: RingHolds, ask: Ask) -> Answer:
    bridged = [eyes for eyes in join.eyes if _has_edge(eyes)]
    if not bridged:
        return None
    held = dict(_held(join, ask))
    taken = derived("reach taken", "mm", circles.side_by_side, held, source=_SOURCE)
    inside = ask.of(join.ring, "inside")
    margin = inside - taken
    swings = margin - ask.limit(RING_SWING)
    if answer := kept(swings):
        return answer
    forced = not holds(margin)
    size = ask.of(join.ring, sized_by(join.ring))
    edge = ask.get(bridged[0].quantity("edge"))
    ring = f"ring `{join.ring.name}` (inside {about(inside, size)})"
    bridge = f"{bridged[0].words}, {spelled(edge)} from the edge,"
    tightly = "{reaches|may reach} so tightly that it does not swing round"
    does = "{does|may} not reach round" if forced else tightly
    short = -swings.likely.low
    all_of = f", with all that it holds taking {about(taken, size)}"
    return Misfit(
        says=f"{ring} {does} {bridge[:-1]}{all_of}",
        place=join.ring.place_of(sized_by(join.ring)),
        found=f"inside {about(inside, size)}",
        needed=f"inside {in_unit_of(inside.middle + short, size)} or more",
        remedies=wider_ring(join.ring, size, short, "a part drilled nearer its edge"),
        margin=margin if forced else swings,
        at_most="error" if forced else "warning",
        also=(bridged[0].part.place_of(*bridged[0].path, "edge"),),
    )


_SOURCE = "a bridge as wide as the hole is from the edge, other parts beside it: see `circles.py`"


def _has_edge(eyes: Eyes) -> bool:
    return bool(eyes.path) and eyes.part.has(*eyes.path, "edge")


def _held(join: RingHolds, ask: Ask) -> list[tuple[str, Quantity]]:
    around = [("rope", ask.of(join.around, "outside"))] if join.around else []
    eyes = [
        (f"bridge{n}", ask.get(eyes.quantity("edge")))
        if _has_edge(eyes)
        else (f"eye{n}", ask.get(eyes.quantity("wire")))
        for n, eyes in enumerate(join.eyes, 1)
    ]
    rings = [(f"ring{n}", ask.of(join.ring, "wire")) for n in range(1, join.other_rings + 1)]
    return [*around, *eyes, *rings]


RULE = Rule(
    name="ring-reach",
    family="fit",
    subject=RingHolds,
    check=check,
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
