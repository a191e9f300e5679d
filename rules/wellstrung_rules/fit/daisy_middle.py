"""The petals of a daisy go round the bead in its middle."""

from __future__ import annotations

import math
from collections.abc import Iterator

from wellstrung.rulebook import Answer, Ask, Misfit, Remedy, Rule, Woven, kept
from wellstrung.rulebook.plan import Edit, Part, beads_named
from wellstrung.rulebook.values import exact, product
from wellstrung.rulebook.wording import about
from wellstrung_rules.limits import PETAL_ROUND


def check(woven: Woven, ask: Ask) -> Answer:
    band = woven.part
    if not ask.offers(band, "petals"):
        return None
    petals, middle = ask.of(band, "petals"), ask.of(band, "middle")
    share = ask.limit(PETAL_ROUND)
    reach = product("petals must reach", "mm", middle, exact("pi", math.pi), share)
    margin = petals - reach
    if answer := kept(margin):
        return answer
    count = band.count("loop")
    # so many that the shortest still reach round the widest; a ring of petals is even
    more = 2 * math.ceil(count * reach.likely.high / petals.likely.low / 2)
    return Misfit(
        says=f"the {count} petals of `{band.name}` ({about(petals)} in a row) {{do|may}} not go"
        f" round their middle ({about(middle)} across)",
        place=band.place_of("loop"),
        found=f"{about(petals)} in a row",
        needed=about(reach),
        remedies=(
            *_more_petals(band, more),
            Remedy(f"take {more} petals and a middle, or a smaller middle"),
        ),
        margin=margin,
        also=(band.place_of("beads"),),
    )


def _more_petals(band: Part, more: int) -> Iterator[Remedy]:
    """So many petals a daisy, where they are one bead; the middles stay as many."""
    loop, other = Edit(band.place_of("loop"), str(more)), "or take a smaller middle"
    mix, node = beads_named(band, "beads"), band.node_at("beads")
    if len(mix) == 1:
        yield Remedy(f"write `loop: {more}`, {other}", (loop,))
    elif len(mix) == 2 and node is not None and node.entries:
        [(petal, many), (_, middles)] = sorted(mix.items(), key=lambda one: -one[1])
        if many == middles * band.count("loop"):
            beads = Edit(band.place_of("beads", petal), str(more * middles))
            yield Remedy(f"write `loop: {more}` and `{petal}: {beads.new}`, {other}", (loop, beads))


RULE = Rule(
    name="daisy-middle",
    family="fit",
    subject=Woven,
    check=check,
    fault="too few petals round a middle",
    title="the petals of a daisy reach round the bead in its middle",
    why="too few petals leave gaps with bare thread, and the middle sits beside its ring",
    limits=(PETAL_ROUND,),
    sources=(
        "petals in a row against the way round the middle: geometry",
        "0.8 of the way is enough: common practice, no source",
    ),
    bad="loop: 6 of 11/0 round a middle of 6 mm",
    good="loop: 6 of 11/0 round a middle of 8/0",
    level="warning",
)
