"""An open ring closed around a rope: how far it has to be opened to go on.

A ring is opened sideways by about the width of what it goes round. Up to about 0.6 of its inside
it comes back true; opened further, the ends no longer meet. A solid ring is slid on, and a split
ring is wound on, so that neither is judged here.
"""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Limit, Misfit, Remedy, RingHolds, Rule, kept
from wellstrung.rulebook.remedies import sized_by, wider_ring
from wellstrung.rulebook.values import product
from wellstrung.rulebook.wording import about, at_least

RING_OPENED = Limit(
    "ring opened",
    0.6,
    "",
    "share of an open ring's inside that it still closes true around, common practice",
)


def check(join: RingHolds, ask: Ask) -> Answer:
    ring = join.ring
    if join.around is None or not ring.traits.gapes:
        return None
    inside, outside = ask.of(ring, "inside"), ask.of(join.around, "outside")
    share = ask.limit(RING_OPENED)
    margin = product("closes true around", "mm", inside, share) - outside
    if answer := kept(margin):
        return answer
    size = ask.of(ring, sized_by(ring))
    short = -margin.likely.low / share.middle
    slide = f"slide a soldered ring on for `{ring.name}` before the rope is capped"
    return Misfit(
        says=f"to go round the rope `{join.around.name}` ({about(outside, size)} outside) the open"
        f" ring `{ring.name}` (inside {about(inside, size)}) {{has|may have}} to be opened so far"
        " that it will not close true",
        place=ring.place_of(sized_by(ring)),
        found=f"inside {about(inside, size)}",
        needed=f"inside {at_least(inside.middle + short, size)} or more, or a soldered ring",
        remedies=(
            Remedy(
                f"{slide}: `closing: soldered`",
                (ask.with_field(ring.node, "closing", "soldered"),),
            ),
            *wider_ring(ring, size, short, slide),
        ),
        margin=margin,
        also=(join.around.key.place,),
    )


RULE = Rule(
    name="ring-around-rope",
    family="fit",
    subject=RingHolds,
    check=check,
    fault="ring opened too far",
    title=(
        "an open ring goes round a rope without being opened too far to close true"
        " (whether it holds the rope at all is `ring-room`)"
    ),
    why=(
        "a ring bent wide open to get over a rope comes back as an oval with a gap, and the"
        " pendant slips out of the gap"
    ),
    limits=(RING_OPENED,),
    sources=("a ring closes true around up to 0.6 of its inside: common practice, no source",),
    level="warning",
    yields_to=("ring-room",),
    bad="an open ring of 11 mm, 17 AWG, round a rope of 6.2 mm: 0.71 of its inside",
    good="an open ring of 15 mm, 14 AWG, round a rope of 6.2 mm: 0.53 of its inside",
)
