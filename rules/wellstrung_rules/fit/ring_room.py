"""Everything that one ring holds lies inside it, with room left to swing."""

from __future__ import annotations

import math

from wellstrung import circles
from wellstrung.rulebook import (
    Answer,
    Ask,
    Edit,
    Held,
    Misfit,
    Quantity,
    Remedy,
    RingHolds,
    Rule,
    Verdict,
    about,
    compare,
    derived,
    in_unit_of,
    spelled,
    worked,
)


def check(join: RingHolds, ask: Ask) -> Answer:
    held = dict(_held(join, ask))
    if not held:
        return None
    inside = ask.of(join.ring, "inside")
    if len(held) <= 2:
        formula, source = " + ".join(held), "two circles a and b fit exactly when a + b <= D"
    else:
        formula, source = f"container({', '.join(held)})", "circles in a circle, see `circles.py`"
    taken = worked("room taken", "mm", room_taken, formula, held, source=source)
    fits = inside - taken
    swings = derived(
        "room to swing",
        "mm",
        lambda inside, taken, swing: inside - taken - swing,
        "inside - taken - swing",
        inside=inside,
        taken=taken,
        swing=ask.limit("ring swing"),
    )
    if compare(swings) is Verdict.HOLDS:
        return Held(swings)
    forced = compare(fits) is not Verdict.HOLDS
    margin = fits if forced else swings
    size = ask.of(join.ring, _written(join))
    things = _words(join)
    written = "" if _written(join) == "inside" else f"{spelled(size)} outside, "
    subject = f"ring `{join.ring.name}` ({written}inside {about(inside, size)})"
    fault = f"is too small to hold {things}" if forced else f"holds {things} with no room to swing"
    may = (
        f"may be too small to hold {things}"
        if forced
        else f"may hold {things} too tightly to swing"
    )
    need = f"which take {about(taken, size)}"
    short = -swings.likely.low
    return Misfit(
        says=f"{subject} {fault}, {need}",
        may=f"{subject} {may}, {need}",
        place=join.ring.place_of(_written(join)),
        found=f"inside {about(inside, size)}",
        needed=f"inside {in_unit_of(inside.middle + short, size)} or more",
        remedies=_remedies(join, size, short),
        margin=margin,
        at_most="error" if forced else "warning",
        also=(join.around.key.place,) if join.around else (),
    )


def room_taken(**held: float) -> float:
    """Diameter, mm, of the smallest circle that holds circles of these diameters.

    >>> round(room_taken(rope=7.8, eye=1.0), 2)
    8.8
    """
    return circles.container(tuple(held.values()))


#: Rings are sold in half millimetres, common practice.
_STEP = 0.5


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


def _written(join: RingHolds) -> str:
    return "inside" if join.ring.has("inside") else "outside"


def _remedies(join: RingHolds, size: Quantity, short: float) -> tuple[Remedy, ...]:
    wanted = math.ceil((size.middle + short) / _STEP - 1e-9) * _STEP
    text = f"{in_unit_of(wanted, size)} {_written(join)}"
    edit = Edit(join.ring.place_of(_written(join)), in_unit_of(wanted, size))
    return (
        Remedy(f"take a ring of {text} for `{join.ring.name}`", (edit,)),
        Remedy(f"take a ring of {text} or more, or thinner parts to hold"),
    )


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
    sources=(
        "two circles a and b fit in D exactly when a + b <= D; three by Descartes' theorem",
        "0.2 mm left to swing: common practice, no source",
    ),
    bad="a ring of 12 mm, 12 AWG, round a rope of 7.8 mm and an eye of 1 mm: 7.9 mm inside",
    yields_to=("ring-through-eye",),
    good="a ring of 12 mm, 18 AWG, round a rope of 7.8 mm and an eye of 1 mm: 9.95 mm inside",
)
