"""A mix is used up before it gels: so many joints at so many minutes each, after the mixing."""

from __future__ import annotations

import math

from wellstrung.rulebook import Answer, Ask, Misfit, Missing, Mixed, Remedy, Rule, kept, most_joints
from wellstrung.rulebook.values import derived, exact, table
from wellstrung.rulebook.wording import number, plural, spelled_time, steps_named


def check(mix: Mixed, ask: Ask) -> Answer:
    glue = mix.adhesive
    if "mixing" not in table("adhesives").row(glue.text("type")).cells:
        return None  # nothing is mixed: it is used straight from the bottle
    if mix.unsaid is not None:
        raise Missing(f"`joints` of step {mix.unsaid.number}")
    usable, mixing = ask.of(glue, "usable"), ask.of(glue, "mixing")
    each = ask.limit("minutes a joint")
    margin = derived(
        "time left of the mix",
        "min",
        left,
        usable=usable,
        mixing=mixing,
        joints=exact("joints of one mix", math.ceil(mix.joints / mix.mixes)),
        each=each,
    )
    if answer := kept(margin):
        return answer
    fits = most_joints(glue, ask.quantities)
    mixes = "one mix" if mix.mixes == 1 else f"{mix.mixes} mixes"
    many = f"{plural(mix.joints, 'joint')} of {mixes}"
    takes = "takes" if mix.joints == 1 else "take"
    rate = f"{number(each.middle)} min each after the mixing"
    needed = f"at most {plural(fits, 'joint')} of a mix, at {rate}"
    if not fits:
        least = number(each.middle + mixing.likely.high)
        needed = f"a mix that can be used for {least} min or more"
    return Misfit(
        says=f"{many} of `{glue.name}` in {steps_named(mix.steps)} {{{takes}|may take}} longer"
        f" than the {spelled_time(usable.middle)} that a mix can be used",
        place=mix.steps[0].place_of("joints"),
        found=many,
        needed=needed,
        remedies=_remedies(mix, ask, fits),
        margin=margin,
        also=(glue.place_of("type"),),
    )


def left(usable: float, mixing: float, joints: float, each: float) -> float:
    """Minutes left of a mix when its last joint is made; it begins to gel while it is mixed.

    Counting.

    >>> left(usable=5, mixing=1.5, joints=2, each=1.5)
    0.5
    """
    return usable - mixing - joints * each


def _remedies(mix: Mixed, ask: Ask, fits: int) -> tuple[Remedy, ...]:
    slower = Remedy(
        "take an adhesive that can be used longer and write its `usable: ...` in"
        f" `{mix.adhesive.name}`"
    )
    if not fits:
        return (slower,)
    first, *more = mix.steps
    count = math.ceil(mix.joints / fits)
    text = f"make {count} mixes and write `mixes: {count}` in step {first.number}"
    mixed = Remedy(text, (ask.with_field(first.node, "mixes", str(count)),))
    if not more:
        return (mixed, slower)
    text = f"make a new mix for step {more[0].number} and write `mixes: 1` there"
    return (Remedy(text, (ask.with_field(more[0].node, "mixes", "1"),)), mixed, slower)


RULE = Rule(
    name="pot-life",
    family="work",
    subject=Mixed,
    check=check,
    fault="mixed glue used too late",
    title="a mix of adhesive is used up before it begins to gel",
    why="a five-minute epoxy is stringy by the time the third cap is on, and no longer wets metal"
    " or thread: that joint lets go first",
    sources=(
        "trade table `adhesives`, usable and mixing times with their sources",
        "minutes a joint: common practice, no source",
    ),
    bad="{do: glue, part: cap, to: rope, with: glue, joints: 6}",
    good="{do: glue, part: cap, to: rope, with: glue, joints: 6, mixes: 3}",
    level="warning",
)
