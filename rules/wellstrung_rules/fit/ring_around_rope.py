"""An open ring closed around a rope: how far it has to be opened to go on.

A ring is opened sideways by about the width of what it goes round. Up to about 0.6 of its inside
it comes back true; opened further, the ends no longer meet. A solid ring is slid on, and a split
ring is wound on, so that neither is judged here.
"""

from __future__ import annotations

import math

from wellstrung.rulebook import Answer, Ask, Limit, Misfit, Remedy, RingHolds, Rule, kept
from wellstrung.rulebook.values import Quantity, derived
from wellstrung.rulebook.wording import about, in_unit_of

RING_OPENED = Limit(
    "ring opened",
    0.6,
    "",
    "share of an open ring's inside that it still closes true around, common practice",
)


def check(join: RingHolds, ask: Ask) -> Answer:
    if join.around is None or not join.ring.traits.gapes:
        return None
    inside, outside = ask.of(join.ring, "inside"), ask.of(join.around, "outside")
    share = ask.limit(RING_OPENED)
    margin = derived(
        "room to close true", "mm", room_to_close, inside=inside, share=share, outside=outside
    )
    if answer := kept(margin):
        return answer
    size = ask.of(join.ring, _written(join))
    ring = f"open ring `{join.ring.name}` (inside {about(inside, size)})"
    rope = f"the rope `{join.around.name}` ({about(outside, size)} outside)"
    far = "be opened so far that it will not close true"
    short = -margin.likely.low / share.middle
    return Misfit(
        says=f"to go round {rope} the {ring} {{has|may have}} to {far}",
        place=join.ring.place_of(_written(join)),
        found=f"inside {about(inside, size)}",
        needed=f"inside {in_unit_of(inside.middle + short, size)} or more, or a soldered ring",
        remedies=_remedies(join, size, short),
        margin=margin,
        also=(join.around.key.place,),
    )


def room_to_close(inside: float, share: float, outside: float) -> float:
    """What is left, mm, of the share of a ring's inside around which it still closes true.

    The share is common practice, no source.

    >>> round(room_to_close(inside=16.0, share=0.6, outside=9.0), 2)
    0.6
    """
    return inside * share - outside


#: Rings are sold in half millimetres, common practice.
_STEP = 0.5


def _written(join: RingHolds) -> str:
    return "inside" if join.ring.has("inside") else "outside"


def _remedies(join: RingHolds, size: Quantity, short: float) -> tuple[Remedy, ...]:
    ring = join.ring
    wanted = in_unit_of(math.ceil((size.middle + short) / _STEP - 1e-9) * _STEP, size)
    slide = f"slide a soldered ring on for `{ring.name}` before the rope is capped"
    return (
        Remedy.write(ring.place_of("closing"), "soldered", f"{slide}: `closing: soldered`"),
        Remedy.write(
            ring.place_of(_written(join)),
            wanted,
            f"take a ring of {wanted} {_written(join)} for `{ring.name}`",
        ),
        Remedy(f"{slide}, or take one of {wanted} {_written(join)} or more"),
    )


RULE = Rule(
    name="ring-around-rope",
    family="fit",
    subject=RingHolds,
    check=check,
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
    bad="an open ring of 12 mm, 18 AWG, round a rope of 7.8 mm: 0.78 of its inside",
    good="an open ring of 18 mm, 12 AWG, round a rope of 7.8 mm: 0.56 of its inside",
)
