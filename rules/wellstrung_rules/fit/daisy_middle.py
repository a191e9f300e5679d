"""The petals of a daisy go round the bead in its middle."""

from __future__ import annotations

import math

from wellstrung.rulebook import Answer, Ask, Misfit, Remedy, Rule, Woven, kept
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
    more = count + 2 * math.ceil(count * (reach.middle / petals.middle - 1) / 2)
    return Misfit(
        says=f"the {count} petals of `{band.name}` ({about(petals)} in a row) {{do|may}} not go"
        f" round their middle ({about(middle)} across)",
        place=band.place_of("loop"),
        found=f"{about(petals)} in a row",
        needed=about(reach),
        remedies=(Remedy(f"take {more} petals and a middle, or a smaller middle"),),
        margin=margin,
        also=(band.place_of("beads"),),
    )


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
