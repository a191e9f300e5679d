"""A button through its loop: wide enough to go over, and not so wide that it comes off again."""

from __future__ import annotations

import math
from collections.abc import Iterator

from wellstrung.formulas.findings import edge, widest_loop
from wellstrung.rulebook import Answer, Ask, ClaspClosed, Held, Limit, Misfit, Remedy, Rule, kept
from wellstrung.rulebook.plan import Part
from wellstrung.rulebook.values import Cause, Quantity, Spread, derived, leaf
from wellstrung.rulebook.wording import about, within

LOOP_LOOSE = Limit(
    "loop loose",
    1.25,
    "",
    "round a ball a loop a quarter wider than its edge comes off, common practice",
)


def check(clasp: ClaspClosed, ask: Ask) -> Answer:
    part = clasp.clasp
    if not part.traits.buttons:
        return None
    way_round, around = ask.of(part, "loop.around"), _button(part)
    strung = not part.has("loop", "around")
    bead = ask.of(ask.plan.beads[part.text("loop", "beads")], "length") if strung else None
    passes = way_round - around
    sizes = {"edge": around, "outside": part.size("button", "outside")}
    stays = derived("widest", "mm", widest_loop, sizes, loose=ask.limit(LOOP_LOOSE)) - way_round
    if answer := kept(passes, stays):
        return answer
    if bead and min(passes.middle, stays.middle) >= 0:
        return Held(min(passes, stays, key=lambda margin: margin.middle))  # tried before it is tied
    tight = passes.likely.low < stays.likely.low
    low = way_round.middle - passes.likely.low
    high = max(low, way_round.middle + stays.likely.low)
    gives = part.has("loop", "stretch") and part.text("loop", "stretch") == "yes"
    fits = f"{within(low, high, way_round)} round inside"
    return Misfit(
        says=f"the loop of `{part.name}` ({about(way_round)} round inside) {{is|may be}}"
        f" {'too small to go over' if tight else 'so wide that it slips off'} the button, which is"
        f" {about(around)} round its edge",
        place=part.place_of("loop", "count" if bead else "around"),
        found=f"{about(way_round)} round inside",
        needed=fits,
        remedies=(
            *_beads(part, bead, low - way_round.middle, high - way_round.middle),
            Remedy(f"make the loop {fits}"),
        ),
        margin=passes if tight else stays,
        at_most="error" if tight and not gives else "warning",
        fault=f"loop too {'small' if tight else 'wide'} for its button",
        also=(part.place_of("button"),),
    )


def _button(part: Part) -> Quantity:
    cure = f"lay a thread round the edge of the button of `{part.name}` and measure it"
    spread = Spread(Cause("shape of the button's edge", f"`{part.name}`", cure), 0.5, 0.5)
    shape = leaf("shape", 0.5, "", [spread], source="oval to rounded ends: geometry")
    sizes = {name: part.size("button", name) for name in ("outside", "thickness")}
    return derived("round the button", "mm", edge, sizes, shape=shape)


def _beads(part: Part, bead: Quantity | None, low: float, high: float) -> Iterator[Remedy]:
    """The number of beads that makes the loop longer by something between `low` and `high`, mm."""
    if bead is not None:
        more, fewer = math.ceil(low / bead.middle - 1e-9), math.floor(high / bead.middle + 1e-9)
        wanted = part.count("loop", "count") + (more if more > 0 else min(fewer, 0))
        if wanted > 0:
            place = part.place_of("loop", "count")
            yield Remedy.write(place, str(wanted), f"string {wanted} beads for the loop")


RULE = Rule(
    name="button-loop",
    family="fit",
    subject=ClaspClosed,
    check=check,
    fault="loop does not fit its button",
    title="a loop goes over its button, and holds it once it is over",
    why="a loop one bead short is found out when the cuff is done and the button sewn on",
    limits=(LOOP_LOOSE,),
    sources=(
        "round a button edge-on: oval to rounded ends, geometry, worked out for this project",
        "a loop as wide as the button's face lets it fall through: geometry; round a ball, one a"
        " quarter wider than its edge: common practice, no source",
        "a loop of beads is tried over its button before it is fastened, so that beads a little off"
        " their size do no harm: common practice, no source",
    ),
    bad="button: {outside: 12 mm, thickness: 5 mm}, loop: {beads: kelp, count: 15}",
    good="button: {outside: 12 mm, thickness: 5 mm}, loop: {beads: kelp, count: 20}",
)
