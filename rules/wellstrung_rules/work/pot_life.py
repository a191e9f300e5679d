"""A mix is used up before it gels: so many joints at so many minutes each, after the stirring."""

from __future__ import annotations

import math

from wellstrung.rulebook import Answer, Ask, Misfit, Missing, Mixed, Remedy, Rule, kept, most_joints
from wellstrung.rulebook.plan import Edit, Step
from wellstrung.rulebook.values import Quantity, derived, exact, table
from wellstrung.rulebook.wording import number, spelled_time


def check(mix: Mixed, ask: Ask) -> Answer:
    glue = mix.adhesive
    if "mixing" not in table("adhesives").row(glue.text("type")).cells:
        return None  # nothing is stirred: what comes out of the bottle is used at once
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
    numbers = " and ".join(str(step.number) for step in mix.steps)
    where = f"step{'s' if len(mix.steps) > 1 else ''} {numbers}"
    many = f"{mix.joints} joint{'' if mix.joints == 1 else 's'} of {_mixes(mix.mixes)}"
    takes = "takes" if mix.joints == 1 else "take"
    head, tail = f"{many} of `{glue.name}` in {where}", f"than the {spelled_time(usable.middle)}"
    return Misfit(
        says=f"{head} {{{takes}|may take}} longer {tail} that a mix can be used",
        place=mix.steps[0].place_of("joints"),
        found=many,
        needed=_needed(fits, each, mixing),
        remedies=_remedies(mix, ask, usable, fits),
        margin=margin,
        also=(glue.place_of("type"),),
    )


def left(usable: float, mixing: float, joints: float, each: float) -> float:
    """Minutes left of a mix when its last joint is made; it begins to gel while it is stirred.

    Counting.

    >>> left(usable=5, mixing=1.5, joints=2, each=1.5)
    0.5
    """
    return usable - mixing - joints * each


def _needed(fits: int, each: Quantity, mixing: Quantity) -> str:
    rate = f"{number(each.middle)} min each after the mixing"
    if not fits:
        return f"a mix that can be used for {number(each.middle + mixing.likely.high)} min or more"
    return f"at most {fits} joint{'' if fits == 1 else 's'} of a mix, at {rate}"


def _mixes(count: int) -> str:
    return "one mix" if count == 1 else f"{count} mixes"


def _remedies(mix: Mixed, ask: Ask, usable: Quantity, fits: int) -> tuple[Remedy, ...]:
    slower = Remedy(
        f"take an adhesive that can be used longer and write its `usable: ...` in"
        f" `{mix.adhesive.name}`"
    )
    if not fits:
        return (slower,)
    count = math.ceil(mix.joints / fits)
    text = f"stir {count} mixes and write `mixes: {count}` in step {mix.steps[0].number}"
    stirred = Remedy(text, _written(mix.steps[0], ask, count))
    if len(mix.steps) == 1:
        return (stirred, slower)
    text = f"stir a new mix for step {mix.steps[1].number} and write `mixes: 1` there"
    return (Remedy(text, _written(mix.steps[1], ask, 1)), stirred, slower)


def _written(step: Step, ask: Ask, count: int) -> tuple[Edit, ...]:
    """The step with its count of mixes."""
    return (ask.with_field(step.node, "mixes", str(count)),)


RULE = Rule(
    name="pot-life",
    family="work",
    subject=Mixed,
    check=check,
    title="a mix of adhesive is used up before it begins to gel",
    why=(
        "a five-minute epoxy is stringy by the time the third cap is on, and wets neither metal nor"
        " thread: that joint lets go first"
    ),
    sources=(
        "trade table `adhesives`, usable and mixing times with their sources",
        "minutes a joint: common practice, no source",
    ),
    bad="{do: glue, part: cap, to: rope, with: glue, joints: 6}",
    good="{do: glue, part: cap, to: rope, with: glue, joints: 6, mixes: 3}",
    level="warning",
)
