"""Beads of different length in a stitch that sets them in rows and columns."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Limit, Misfit, Remedy, Rule, Woven, kept
from wellstrung.rulebook.values import derived
from wellstrung.rulebook.wording import about, number

BEADS_ALIKE = Limit(
    "beads alike",
    0.2,
    "",
    "beads in one grid differ by a fifth at most along the hole, common practice",
)


def check(woven: Woven, ask: Ask) -> Answer:
    part, stitch = woven.part, woven.stitch
    beads = ask.beads_of(part)
    if stitch.makes != "woven band" or stitch.columns != "beads" or len(beads) < 2:
        return None
    lengths = {bead: ask.of(bead, "length") for bead in beads}
    short = min(beads, key=lambda bead: lengths[bead].middle)
    long = max(beads, key=lambda bead: lengths[bead].middle)
    limit = ask.limit(BEADS_ALIKE)
    margin = derived(
        "unlike by less than the limit",
        "mm",
        lambda short, long, limit: short * (1 + limit) - long,
        short=lengths[short],
        long=lengths[long],
        limit=limit,
    )
    if answer := kept(margin):
        return answer
    size, other = about(lengths[short]), about(lengths[long])
    return Misfit(
        says=f"`{short.name}` ({size} long) and `{long.name}` ({other}) lie in one grid in"
        f" `{part.name}`: its rows {{ripple, and thread shows beside the short beads|may ripple}}",
        place=part.place_of("beads"),
        found=f"{size} beside {other}",
        needed=f"beads that differ by {number(100 * limit.middle)} % or less along the hole",
        remedies=(
            Remedy(
                f"take `{long.name}` and `{short.name}` of one size and make, or give each columns"
                " of its own"
            ),
        ),
        margin=margin,
        also=(short.key.place, long.key.place),
    )


RULE = Rule(
    name="bead-mix",
    family="hold",
    subject=Woven,
    check=check,
    fault="beads too unlike for one grid",
    title="beads in one grid are about equally long",
    why="a longer bead pushes its row apart, and bare thread beside the short ones wears",
    limits=(BEADS_ALIKE,),
    sources=("a fifth more or less along the hole: common practice, no source",),
    bad="beads: [11/0 cylinder, 8/0 round] in flat peyote",
    good="beads: two colours of 11/0 cylinder in flat peyote",
    level="warning",
)
