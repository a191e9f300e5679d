"""A button through its loop: wide enough to go over, and not so wide that it comes off again."""

from __future__ import annotations

import math

from wellstrung.formulas.arithmetic import opaque, pi
from wellstrung.rulebook import Answer, Ask, ClaspClosed, Limit, Misfit, Remedy, Rule, kept
from wellstrung.rulebook.plan import Edit, Part
from wellstrung.rulebook.values import Cause, Quantity, Spread, derived, exact, leaf
from wellstrung.rulebook.wording import about, between

LOOP_LOOSE = Limit(
    "loop loose",
    1.25,
    "",
    "a loop a quarter wider than the button's edge comes off, common practice",
)


def check(clasp: ClaspClosed, ask: Ask) -> Answer:
    part = clasp.clasp
    if not part.traits.buttons:
        return None
    way_round, beads = _loop(part, ask)
    around = _button(part)
    passes = way_round - around
    stays = derived(
        "slack under the limit",
        "mm",
        lambda around, loop, loose: around * loose - loop,
        around=around,
        loop=way_round,
        loose=ask.limit(LOOP_LOOSE),
    )
    if answer := kept(passes, stays):
        return answer
    tight = passes.likely.low < stays.likely.low
    loop = f"the loop of `{part.name}` ({about(way_round)} round inside)"
    button = f"the button, which is {about(around)} round its edge"
    fault = "too small to go over" if tight else "so wide that it slips off"
    low = way_round.middle - passes.likely.low
    high = max(low, way_round.middle + stays.likely.low)
    return Misfit(
        says=f"{loop} {{is|may be}} {fault} {button}",
        place=part.place_of("loop", "count") if beads else part.place_of("loop", "around"),
        found=f"{about(way_round)} round inside",
        needed=f"{between(low, high, way_round)} round inside",
        remedies=_remedies(part, beads, low, high, way_round),
        margin=passes if tight else stays,
        at_most="error" if tight and not _stretches(part) else "warning",
        also=(part.place_of("button"),),
    )


@opaque("way round the edge of a button")
def edge(outside: float, thickness: float, shape: float) -> float:
    """The way round a button edge-on, mm: an oval at shape 0, with rounded ends at 1.

    A loop goes over a button that is tilted through it; geometry, worked out for this project. The
    oval's way round is pi (a + b) / 2 x (1 + h / 4), which is short by less than 1 % here.

    >>> [round(edge(12.0, 5.0, shape), 1) for shape in (0, 1)]
    [27.8, 29.7]
    """
    h = ((outside - thickness) / (outside + thickness)) ** 2
    oval = pi * (outside + thickness) / 2 * (1 + h / 4)
    stadium = 2 * (outside - thickness) + pi * thickness
    return oval + shape * (stadium - oval)


def _button(part: Part) -> Quantity:
    cure = f"lay a thread round the edge of the button of `{part.name}` and measure it"
    shape = Spread(Cause("shape of the button's edge", f"`{part.name}`", cure), 0.5, 0.5)
    return derived(
        "round the button",
        "mm",
        edge,
        outside=part.length("button", "outside"),
        thickness=part.length("button", "thickness"),
        shape=leaf("shape", 0.5, "", [shape], source="oval to rounded ends: geometry"),
    )


def _loop(part: Part, ask: Ask) -> tuple[Quantity, Quantity | None]:
    """The way round inside the loop, and one bead's length where it is strung of beads."""
    if part.has("loop", "around"):
        return part.length("loop", "around"), None
    bead = ask.plan.beads[part.text("loop", "beads")]
    length = ask.of(bead, "length")
    way_round = derived(
        "round the loop",
        "mm",
        lambda count, length, outside: count * length - pi * outside,
        count=exact("count", part.count("loop", "count")),
        length=length,
        outside=ask.of(bead, "outside"),
        source="inside = length - pi x thickness: trade table `bracelet_eases`, several pages",
    )
    return way_round, length


def _stretches(part: Part) -> bool:
    return part.has("loop", "stretch") and part.text("loop", "stretch") == "yes"


def _remedies(
    part: Part, bead: Quantity | None, low: float, high: float, way_round: Quantity
) -> tuple[Remedy, ...]:
    by_hand = Remedy(f"make the loop {between(low, high, way_round)} round inside")
    if bead is None:
        return (by_hand,)
    more = math.ceil((low - way_round.middle) / bead.middle - 1e-9)
    fewer = math.floor((high - way_round.middle) / bead.middle + 1e-9)
    wanted = part.count("loop", "count") + (more if more > 0 else min(fewer, 0))
    if wanted < 1:
        return (by_hand,)
    edit = Edit(part.place_of("loop", "count"), str(wanted))
    return (Remedy(f"string {wanted} beads for the loop", (edit,)), by_hand)


RULE = Rule(
    name="button-loop",
    family="fit",
    subject=ClaspClosed,
    check=check,
    title="a loop goes over its button, and holds it once it is over",
    why="a loop one bead short is found out when the cuff is done and the button sewn on",
    limits=(LOOP_LOOSE,),
    sources=(
        "round a button edge-on: oval to rounded ends, geometry, worked out for this project",
        "a loop a quarter wider than the button's edge comes off: common practice, no source",
    ),
    bad="button: {outside: 12 mm, thickness: 5 mm}, loop: {beads: kelp, count: 15}",
    good="button: {outside: 12 mm, thickness: 5 mm}, loop: {beads: kelp, count: 20}",
)
