"""Beads of unlike length in a stitch that sets them in rows and columns."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Limit, Misfit, Remedy, Rule, Woven, kept
from wellstrung.rulebook.values import Quantity, derived
from wellstrung.rulebook.wording import about, number

BEADS_ALIKE = Limit(
    "beads alike",
    0.2,
    "",
    "beads in one grid differ by a fifth at most along the hole, common practice",
)


def check(woven: Woven, ask: Ask) -> Answer:
    part = woven.part
    beads, stitch = ask.beads_of(part), woven.stitch
    in_a_grid = stitch.makes == "woven band" and stitch.columns == "beads"
    if not in_a_grid or len(beads) < 2:
        return None
    lengths = {bead: ask.of(bead, "length") for bead in beads}
    short = min(beads, key=lambda bead: lengths[bead].middle)
    long = max(beads, key=lambda bead: lengths[bead].middle)
    limit = ask.limit(BEADS_ALIKE)
    margin = _margin(lengths[short], lengths[long], limit)
    if answer := kept(margin):
        return answer
    pair = f"`{short.name}` ({about(lengths[short])} long) and `{long.name}`"
    head = f"{pair} ({about(lengths[long])}) stand in one grid in `{part.name}`"
    share = f"{number(100 * limit.middle)} %"
    return Misfit(
        says=f"{head}: rows of them {{ripple, and thread shows beside the short ones|may ripple}}",
        place=part.place_of("beads"),
        found=f"{about(lengths[short])} beside {about(lengths[long])}",
        needed=f"beads that differ by {share} or less along the hole",
        remedies=(
            Remedy(
                f"take `{long.name}` and `{short.name}` of one size and make, or keep each to"
                " columns of its own"
            ),
        ),
        margin=margin,
        also=(short.key.place, long.key.place),
    )


def _margin(short: Quantity, long: Quantity, limit: Quantity) -> Quantity:
    return derived(
        "unlike by less than the limit",
        "mm",
        lambda short, long, limit: short * (1 + limit) - long,
        short=short,
        long=long,
        limit=limit,
    )


RULE = Rule(
    name="bead-mix",
    family="hold",
    subject=Woven,
    check=check,
    title="beads that stand in one grid are about as long as each other",
    why="a longer bead pushes its row apart, and bare thread beside the short ones wears",
    limits=(BEADS_ALIKE,),
    sources=("a fifth more or less along the hole: common practice, no source",),
    bad="beads: [11/0 cylinder, 8/0 round] in flat peyote",
    good="beads: two colours of 11/0 cylinder in flat peyote",
    level="warning",
)
