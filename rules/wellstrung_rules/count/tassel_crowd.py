"""The legs of a tassel round the wire of the ring, the eye or the loop that they hang from."""

from __future__ import annotations

import math

from wellstrung.formulas.arithmetic import pi
from wellstrung.rulebook import Answer, Ask, Choice, Limit, Misfit, Remedy, Rule, Tassel, kept
from wellstrung.rulebook.plan import Eyes, Hung, Place
from wellstrung.rulebook.values import derived, exact
from wellstrung.rulebook.wording import about, together

TASSEL_ROWS = Limit(
    "tassel rows",
    3.0,
    "",
    "in front of the wire, behind it and between them; common practice, no source",
    Choice(3.0, 5.0),
)


def in_rows(rows: float, ring: float, leg: float) -> float:
    """Legs that hang from the lower half of a ring, their first beads in so many rows along it.

    Half the way round the middles of beads that touch the wire from outside, over the width of a
    leg: geometry, worked out for this project; no published figure.

    >>> round(in_rows(rows=3, ring=6.0, leg=2.1), 1)
    18.2
    """
    return rows * pi * (ring + leg) / 2 / leg


def check(tassel: Tassel, ask: Ask) -> Answer:
    above, legs = tassel.above, [line.part for line in tassel.lines]
    if isinstance(above, Eyes):
        hole, wire = (ask.get(above.quantity(what)) for what in ("hole", "wire"))
        ring = derived("outside", "mm", lambda hole, wire: hole + 2 * wire, hole=hole, wire=wire)
        words, place = above.words, above.part.place_of(*above.path, "hole")
    else:
        ring, words = ask.of(above, "outside"), f"ring `{above.name}`"
        place = above.place_of("outside")
    leg = max((ask.outline(part, 0)[0].width for part in legs), key=lambda size: size.middle)
    room = derived("legs it takes", "", in_rows, rows=ask.limit(TASSEL_ROWS), ring=ring, leg=leg)
    margin = room - exact("legs", tassel.each)
    if answer := kept(margin):
        return answer
    most = math.floor(room.likely.low + 1e-9)
    names = together(f"`{name}`" for name in dict.fromkeys(part.name for part in legs))
    return Misfit(
        says=f"{tassel.each} legs of {names} {{crowd|may crowd}} each other on {words}"
        f" ({about(ring)} outside)",
        place=_place(max(tassel.lines, key=lambda line: line.times)),
        found=f"{tassel.each} legs",
        needed=f"{most} legs or fewer, each {about(leg)} wide, on such a ring",
        remedies=(
            Remedy(
                f"hang {most} legs or fewer, take a wider ring, or gather them in a cone or an end"
                " cap"
            ),
        ),
        margin=margin,
        also=(place,),
    )


def _place(line: Hung) -> Place:
    return line.place_of("times") if line.has("times") else line.part.place_of("legs")


RULE = Rule(
    name="tassel-crowd",
    family="count",
    subject=Tassel,
    check=check,
    fault="too many legs on one ring",
    title=(
        "the legs of a tassel have room on the ring or loop that they hang from (in a cone it is"
        " `cone-bundle`)"
    ),
    why=(
        "legs that find no room at the wire ride on the others: they hang lower, and the tassel"
        " looks uneven however well its legs are counted"
    ),
    limits=(TASSEL_ROWS,),
    sources=(
        "the first beads of the legs in rows along the lower half of the wire: geometry, worked out"
        " for this project",
        "three such rows: common practice, no source",
    ),
    level="warning",
    bad="{part: leg, from: ring, by: thread, times: 40}, legs 2.1 mm wide on a ring of 5 mm",
    good="{part: leg, from: ring, by: thread, times: 14}, legs 2.1 mm wide on a ring of 6 mm",
)
