"""Glue enough on hand for every joint: what the gaps hold, and what stays on card and stick."""

from __future__ import annotations

import math

from wellstrung.rulebook import (
    Answer,
    Ask,
    GlueUsed,
    Misfit,
    Quantity,
    Remedy,
    Rule,
    in_unit_of,
    kept,
)


def check(used: GlueUsed, ask: Ask) -> Answer:
    glue = used.adhesive
    on_hand, needed = ask.of(glue, "on_hand"), ask.of(glue, "needed")
    margin = on_hand - needed
    if answer := kept(margin):
        return answer
    like = used.lines[-1].volume("volume")
    joints, had = sum(count for _, count in used.ends), on_hand.middle
    what = f"{joints} joint{'s' if joints > 1 else ''} of `{glue.name}`"
    if used.stirred:
        what += f" in {used.mixes} mix{'es' if used.mixes > 1 else ''}"
    one = "s" if joints == 1 else ""
    takes, most = (in_unit_of(ml, like) for ml in (needed.middle, needed.likely.high))
    tail = f"and {in_unit_of(had, like)} are on hand"
    return Misfit(
        says=f"{what} {{take{one} {takes}|may take up to {most}}}, {tail}",
        place=used.lines[-1].node.place,
        found=in_unit_of(had, like),
        needed=f"{most} or more",
        remedies=_remedies(used, ask, -margin.likely.low, like),
        margin=margin,
        also=(glue.key.place,),
    )


def _remedies(used: GlueUsed, ask: Ask, short: float, like: Quantity) -> tuple[Remedy, ...]:
    line = used.lines[-1]
    each = like.likely.low * line.count("count", default=1)
    packs = line.count("packs", default=1) + math.ceil(short / each - 1e-9)
    edit = ask.with_field(line.node, "packs", str(packs))
    text = f"have {packs} packs of `{used.adhesive.name}`"
    return (Remedy(text, (edit,)), Remedy(text))


RULE = Rule(
    name="glue-mixes",
    family="adhesive",
    subject=GlueUsed,
    check=check,
    fault="not enough glue",
    title="there is glue enough on hand for all the mixes",
    why=(
        "a joint holds a drop, but each mix of a two-part glue is half a millilitre at least, and"
        " half of that stays on the card: the small tubes are empty before the last caps are on"
    ),
    sources=(
        "sleeve of glue = pi / 4 x (bore^2 - end^2) x depth: geometry, worked out for this project",
        "half a mix stays on card and stick; the smallest mix: common practice, no source",
    ),
    bad="{do: glue, ..., joints: 12, mixes: 6} with {part: glue, volume: 2 ml}",
    good="{do: glue, ..., joints: 12, mixes: 6} with {part: glue, volume: 25 ml}",
    level="warning",
)
