"""The depth of an end cap: enough of the rope's end goes in to be held."""

from __future__ import annotations

import math

from wellstrung.formulas.arithmetic import least
from wellstrung.rulebook import Answer, Ask, Limit, Misfit, Remedy, RopeInCap, Rule, kept
from wellstrung.rulebook.plan import Edit
from wellstrung.rulebook.values import derived
from wellstrung.rulebook.wording import in_unit_of, spelled

NUB_IN_CAP = Limit(
    "nub in cap", 0.8, "", "a nub fills 0.8 of its cap's depth: trade table `caps`, derived"
)
CAP_DEPTH_SHARE = Limit(
    "cap depth share",
    0.4,
    "",
    "a woven end goes into a cap by about 0.4 of its bore, common practice, no source",
)
CAP_DEPTH = Limit(
    "cap depth", 4.0, "mm", "deep enough for a woven end of any bore, common practice"
)


def check(join: RopeInCap, ask: Ask) -> Answer:
    if join.takes == "nub":
        return _nub(join, ask)
    cap = join.cap
    depth, bore = ask.of(cap, "depth"), ask.of(cap, "bore")
    wanted = derived(
        "depth wanted",
        "mm",
        depth_wanted,
        share=ask.limit(CAP_DEPTH_SHARE),
        bore=bore,
        most=ask.limit(CAP_DEPTH),
    )
    margin = depth - wanted
    if answer := kept(margin):
        return answer
    short = -margin.likely.low
    need = in_unit_of(depth.middle + short, depth)
    size = in_unit_of(math.ceil((depth.middle + short) * 2 - 1e-6) / 2, depth)
    edits = [Edit(cap.place_of("depth"), size)]
    head = f"cap `{cap.name}` of {spelled(bore)} bore is {spelled(depth)} deep, which"
    hold = f"too shallow to hold the end of the rope `{join.rope.name}`"
    return Misfit(
        says=f"{head} {{is|may be}} {hold}",
        place=cap.place_of("depth"),
        found=f"{spelled(depth)} deep",
        needed=f"a depth of {need} or more",
        remedies=(
            Remedy(f"take a cap of {size} depth or more for `{cap.name}`", tuple(edits)),
            Remedy(f"take a longer cap, with a depth of {need} or more, for `{cap.name}`"),
        ),
        margin=margin,
        also=(cap.place_of("bore"),),
    )


def _nub(join: RopeInCap, ask: Ask) -> Answer:
    """A bare nub is long enough to be held by its cap."""
    depth, nub = ask.of(join.cap, "depth"), ask.of(join.rope, "nub.length")
    margin = derived(
        "nub to spare",
        "mm",
        lambda nub, share, depth: nub - share * depth,
        nub=nub,
        share=ask.limit(NUB_IN_CAP),
        depth=depth,
    )
    if answer := kept(margin):
        return answer
    need = in_unit_of(nub.middle - margin.likely.low, nub)
    head = f"the nub of `{join.rope.name}` ({spelled(nub)}) {{is|may be}} too short"
    return Misfit(
        says=(
            f"{head} for cap `{join.cap.name}`, which is {spelled(depth)} deep and needs {need}"
            " of it"
        ),
        place=join.rope.place_of("nub", "length"),
        found=spelled(nub),
        needed=f"{need} or more",
        remedies=(
            Remedy.write(
                join.rope.place_of("nub", "length"),
                need,
                f"leave a nub of {need} at both ends of `{join.rope.name}`",
            ),
            Remedy(f"take a cap that is less deep, or leave a nub of {need} or more"),
        ),
        margin=margin,
        also=(join.cap.place_of("depth"),),
    )


def depth_wanted(share: float, bore: float, most: float) -> float:
    """How deep a woven end is to go in, mm: a share of the bore, and never more than `most`.

    Common practice, no source: glue holds over the width of about a bead or two.

    >>> depth_wanted(share=0.4, bore=5.0, most=4.0), depth_wanted(share=0.4, bore=12.0, most=4.0)
    (2.0, 4.0)
    """
    return least(share * bore, most)


RULE = Rule(
    name="cap-depth",
    family="fit",
    subject=RopeInCap,
    check=check,
    title="the end of a rope goes deep enough into its end cap (how wide it is: `cap-bore`)",
    why=(
        "in a cap like a shallow dish the glue holds a single ring of beads, and the rope is pulled"
        " out the first time the clasp is tugged"
    ),
    limits=(NUB_IN_CAP, CAP_DEPTH_SHARE, CAP_DEPTH),
    sources=(
        "at least about 0.4 of the bore, and 4 mm for wide ones: common practice, no source",
        "a nub of 0.8 of the depth: trade table `caps`, derived",
        "caps are 6 to 10 mm deep: trade table `caps`, from memory",
    ),
    level="warning",
    bad="cap: {kind: end cap, bore: 10 mm, depth: 3 mm, ...}",
    good="cap: {kind: end cap, bore: 10 mm, depth: 7 mm, ...}",
)
