"""A piece for repair: its length and its weight as it came agree with the beads counted."""

from __future__ import annotations

from wellstrung.rulebook import Answer, AsItCame, Ask, Held, Limit, Misfit, Remedy, Rule
from wellstrung.rulebook.values import derived
from wellstrung.rulebook.wording import about, spelled

LENGTH_OFF = Limit(
    "came length off", 0.03, "", "an old line has stretched, common practice, no source"
)
MASS_OFF = Limit("came mass off", 0.08, "", "line, dirt and worn holes, common practice, no source")
_LIMITS = {"length": LENGTH_OFF, "mass": MASS_OFF}
_SAID = {
    "length": ("is {} long", "measure ten of the beads"),
    "mass": ("weighs {}", "weigh ten of them"),
}


def check(one: AsItCame, ask: Ask) -> Answer:
    what = one.measured
    counted = ask.get(f"piece.came_{what}")
    had = one.came.length("length") if what == "length" else one.came.mass("mass")
    off = ask.limit(_LIMITS[what])
    margins = (
        derived("counted, not too little", had.unit, _over, one=counted, other=had, off=off),
        derived("counted, not too much", had.unit, _under, one=counted, other=had, off=off),
    )
    margin = min(margins, key=lambda side: side.middle)
    if margin.likely.high >= 0:
        return Held(margin)  # the two agree within their ranges, so the count may be right
    does, also = _SAID[what]
    return Misfit(
        says=f"what came {does.format(spelled(had))}, but the beads that were counted make"
        f" {about(counted, had)}",
        place=one.place,
        found=spelled(had),
        needed=about(counted, had),
        remedies=(Remedy(f"count them again, and {also}, before it is cut open"),),
        margin=margin,
        also=(one.came.place_of("beads"),),
        at_most="warning",
    )


def _over(one: float, other: float, off: float) -> float:
    return one - other * (1 - off)


def _under(one: float, other: float, off: float) -> float:
    return other * (1 + off) - one


RULE = Rule(
    name="as-it-came",
    family="count",
    subject=AsItCame,
    check=check,
    fault="what came was not counted right",
    title="a piece for repair: its length and its weight as it came agree with the beads counted",
    why=(
        "once the line is cut nobody can say what came: a bead left uncounted is missed by its"
        " owner, and a bead of another size makes the strand too short"
    ),
    limits=(LENGTH_OFF, MASS_OFF),
    sources=(
        "counting; a knot adds 0 to 2.2 x the narrowest hole, since no line is thicker: geometry of"
        " this project",
    ),
    bad="came: {beads: {pearl: 78}, length: 44 cm} with pearls of 6 mm",
    good="came: {beads: {pearl: 73}, length: 44 cm} with pearls of 6 mm",
    level="warning",
)
