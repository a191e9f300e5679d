"""Everything that one ring holds lies inside it, with room left to swing."""

from __future__ import annotations

from collections import Counter

from wellstrung.formulas.arithmetic import least
from wellstrung.rulebook import Answer, Ask, Misfit, RingHolds, Rule, holds, kept
from wellstrung.rulebook.remedies import sized_by, wider_ring
from wellstrung.rulebook.values import derived
from wellstrung.rulebook.wording import about, at_least, often, spelled
from wellstrung_rules.fit import IN_A_CIRCLE, held, packed
from wellstrung_rules.limits import RING_SWING, SWING_SHARE

_TWO = "two circles a and b fit exactly when a + b <= D"


def check(join: RingHolds, ask: Ask) -> Answer:
    sizes = held(join, ask, bridges=False)
    if not sizes:
        return None
    inside = ask.of(join.ring, "inside")
    taken = packed("room taken", sizes, _TWO if len(sizes) <= 2 else IN_A_CIRCLE)
    fits = inside - taken
    room = derived(
        "room to swing",
        "mm",
        _room,
        inside=inside,
        share=ask.limit(SWING_SHARE),
        most=ask.limit(RING_SWING),
    )
    swings = fits - room
    if answer := kept(swings):
        return answer
    forced, size = not holds(fits), ask.of(join.ring, sized_by(join.ring))
    written = "" if sized_by(join.ring) == "inside" else f"{spelled(size)} outside, "
    does = "{is|may be} too small to hold" if forced else "{holds|may hold}"
    short = -swings.likely.low
    return Misfit(
        says=f"ring `{join.ring.name}` ({written}inside {about(inside, size)}) {does}"
        f" {_words(join)}{'' if forced else ' with no room to swing'}, which"
        f" {'takes' if len(sizes) == 1 else 'take'} {about(taken, size)}",
        place=join.ring.place_of(sized_by(join.ring)),
        found=f"inside {about(inside, size)}",
        needed=f"inside {at_least(inside.middle + short, size)} or more",
        remedies=wider_ring(join.ring, size, short, "take thinner parts to hold"),
        margin=fits if forced else swings,
        at_most="error" if forced else "warning",
        also=(join.around.key.place,) if join.around else (),
    )


def _room(inside: float, share: float, most: float) -> float:
    """Room for what a ring holds to swing, mm: a share of its inside, up to a limit."""
    return least(share * inside, most)


def _words(join: RingHolds) -> str:
    words = [f"the rope `{join.around.name}`"] if join.around else []
    times = Counter(eyes.words for eyes in join.eyes)
    words += [eyes if n == 1 else f"{eyes} {often(n)}" for eyes, n in times.items()]
    words += [f"ring `{ring.name}`" for ring in join.rings if ring is not join.ring]
    more = join.rings.count(join.ring)
    words += [f"{more} more of its kind"] if more else []
    return " and ".join(words)


RULE = Rule(
    name="ring-room",
    family="fit",
    subject=RingHolds,
    check=check,
    fault="ring too full",
    title=(
        "all that a ring holds lies inside it with room to swing"
        " (its wire in each hole is `ring-through-eye`)"
    ),
    why=(
        "a ring that is filled by the rope it goes round will not close, or grips the rope and"
        " holds the pendant askew"
    ),
    limits=(RING_SWING, SWING_SHARE),
    sources=(
        "two circles a and b fit in D exactly when a + b <= D; three by Descartes' theorem",
        "a fiftieth of its inside left to swing, at most 0.2 mm: common practice, no source",
    ),
    bad="a ring of 14 mm, 10 AWG, round a rope of 7.9 mm and an eye of 0.9 mm: 8.82 mm inside",
    yields_to=("ring-through-eye",),
    good="a ring of 14 mm, 16 AWG, round a rope of 7.9 mm and an eye of 0.9 mm: 11.42 mm inside",
)
