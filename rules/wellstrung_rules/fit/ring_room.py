"""Everything that one ring holds lies inside it, with room left to swing."""

from __future__ import annotations

from wellstrung.formulas import circles
from wellstrung.rulebook import Answer, Ask, Misfit, RingHolds, Rule, holds, kept
from wellstrung.rulebook.remedies import sized_by, wider_ring
from wellstrung.rulebook.values import Quantity, derived
from wellstrung.rulebook.wording import about, in_unit_of, spelled
from wellstrung_rules.limits import RING_SWING


def check(join: RingHolds, ask: Ask) -> Answer:
    held = dict(_held(join, ask))
    if not held:
        return None
    inside = ask.of(join.ring, "inside")
    exactly = "two circles a and b fit exactly when a + b <= D"
    source = exactly if len(held) <= 2 else "circles in a circle, see `circles.py`"
    taken = derived("room taken", "mm", circles.side_by_side, held, source=source)
    fits = inside - taken
    swings = derived(
        "room to swing",
        "mm",
        lambda inside, taken, swing: inside - taken - swing,
        inside=inside,
        taken=taken,
        swing=ask.limit(RING_SWING),
    )
    if answer := kept(swings):
        return answer
    forced = not holds(fits)
    margin = fits if forced else swings
    size = ask.of(join.ring, sized_by(join.ring))
    things = _words(join)
    written = "" if sized_by(join.ring) == "inside" else f"{spelled(size)} outside, "
    subject = f"ring `{join.ring.name}` ({written}inside {about(inside, size)})"
    small, tight = f"{{is|may be}} too small to hold {things}", f"{{holds|may hold}} {things}"
    fault = small if forced else f"{tight} with no room to swing"
    one = len(held) == 1
    need = f"which {'takes' if one else 'take'} {about(taken, size)}"
    short = -swings.likely.low
    return Misfit(
        says=f"{subject} {fault}, {need}",
        place=join.ring.place_of(sized_by(join.ring)),
        found=f"inside {about(inside, size)}",
        needed=f"inside {in_unit_of(inside.middle + short, size)} or more",
        remedies=wider_ring(join.ring, size, short, "thinner parts to hold"),
        margin=margin,
        at_most="error" if forced else "warning",
        also=(join.around.key.place,) if join.around else (),
    )


def _held(join: RingHolds, ask: Ask) -> list[tuple[str, Quantity]]:
    around = [("rope", ask.of(join.around, "outside"))] if join.around else []
    eyes = [(f"eye{n}", ask.get(eyes.quantity("wire"))) for n, eyes in enumerate(join.eyes, 1)]
    rings = [(f"ring{n}", ask.of(join.ring, "wire")) for n in range(1, join.other_rings + 1)]
    return [*around, *eyes, *rings]


def _words(join: RingHolds) -> str:
    words = [f"the rope `{join.around.name}`"] if join.around else []
    words += [eyes.words for eyes in join.eyes]
    words += [f"{join.other_rings} more of its kind"] if join.other_rings else []
    return " and ".join(words)


RULE = Rule(
    name="ring-room",
    family="fit",
    subject=RingHolds,
    check=check,
    title=(
        "all that a ring holds lies inside it with room to swing"
        " (its wire in each hole is `ring-through-eye`)"
    ),
    why=(
        "a ring that is filled by the rope it goes round will not close, or grips the rope and"
        " holds the pendant askew"
    ),
    limits=(RING_SWING,),
    sources=(
        "two circles a and b fit in D exactly when a + b <= D; three by Descartes' theorem",
        "0.2 mm left to swing: common practice, no source",
    ),
    bad="a ring of 12 mm, 12 AWG, round a rope of 7.8 mm and an eye of 1 mm: 7.9 mm inside",
    yields_to=("ring-through-eye",),
    good="a ring of 12 mm, 18 AWG, round a rope of 7.8 mm and an eye of 1 mm: 9.95 mm inside",
)
