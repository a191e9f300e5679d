"""Glue enough on hand for every joint: what the gaps hold, and what stays on card and stick."""

from __future__ import annotations

import math
from collections.abc import Iterator

from wellstrung import tables
from wellstrung.formulas.arithmetic import most
from wellstrung.formulas.glue import joint_volume, to_mix
from wellstrung.rulebook import (
    Answer,
    Ask,
    GluedEnd,
    GlueUsed,
    Item,
    Misfit,
    Missing,
    Quantity,
    Remedy,
    Rule,
    derived,
    exact,
    in_unit_of,
    kept,
    times,
    total,
)


def check(used: GlueUsed, ask: Ask) -> Answer:
    glue = used.adhesive
    if not used.lines:
        raise Missing(f"a line `{{part: {glue.name}, volume: ...}}` under `supplies`")
    held = total("glue in the joints", "ml", _in_joints(used, ask))
    needed = _mixed(used, held, ask) if _is_stirred(used) else held
    margin = total("glue on hand", "ml", [_on_hand(line) for line in used.lines]) - needed
    if answer := kept(margin):
        return answer
    like = used.lines[-1].volume("volume")
    joints, had = sum(count for _, count in used.ends), needed.middle + margin.middle
    what = f"{joints} joint{'s' if joints > 1 else ''} of `{glue.name}`"
    if _is_stirred(used):
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


def _is_stirred(used: GlueUsed) -> bool:
    return "mixing" in tables.load("adhesives").row(used.adhesive.text("type")).cells


def _in_joints(used: GlueUsed, ask: Ask) -> Iterator[Quantity]:
    for end, count in used.ends:
        yield times(_in_one(end, ask), count)


def _in_one(end: GluedEnd, ask: Ask) -> Quantity:
    by_nub = end.cap.has("takes") and end.cap.text("takes") == "nub"
    return derived(
        f"glue in `{end.cap.name}`",
        "ml",
        lambda bore, end, depth: joint_volume(bore, end, depth) / 1000,
        bore=ask.of(end.cap, "bore"),
        end=ask.of(end.rope, "nub.outside" if by_nub else "outside"),
        depth=ask.of(end.cap, "depth"),
    )


def _mixed(used: GlueUsed, held: Quantity, ask: Ask) -> Quantity:
    """What is stirred: each mix twice what goes into its joints, and no less than can be halved."""
    return derived(
        "glue stirred",
        "ml",
        lambda mixes, least, joints: mixes * most(least, to_mix(joints / mixes)),
        mixes=exact("mixes", used.mixes),
        least=ask.limit("smallest mix"),
        joints=held,
    )


def _on_hand(line: Item) -> Quantity:
    if not line.has("volume"):
        raise Missing(f"`volume` in the line of `{line.name}` under `supplies`")
    count = line.count("packs", default=1) * line.count("count", default=1)
    return times(line.volume("volume"), count)


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
