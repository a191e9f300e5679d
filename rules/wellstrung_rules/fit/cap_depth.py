"""The depth of an end cap: enough of the rope's end goes in to be held."""

from __future__ import annotations

from wellstrung.formulas.findings import depth_wanted
from wellstrung.rulebook import Answer, Ask, Limit, Misfit, Remedy, RopeInCap, Rule, kept
from wellstrung.rulebook.remedies import deeper, in_words, next_up
from wellstrung.rulebook.values import derived
from wellstrung.rulebook.wording import in_unit_of, raised, spelled

NUB_IN_CAP = Limit(
    "nub in cap",
    0.8,
    "",
    "a nub fills 0.8 of its cap's depth: trade table `caps`, nub: from memory",
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
    share, most = ask.limit(CAP_DEPTH_SHARE), ask.limit(CAP_DEPTH)
    margin = depth - derived("depth needed", "mm", depth_wanted, share=share, bore=bore, most=most)
    if answer := kept(margin):
        return answer
    need, name, place = raised(depth, margin), cap.name, cap.place_of("depth")
    wanted = next_up(depth.middle - margin.likely.low, 0.5)
    text = f"take a cap of {in_unit_of(wanted, depth)} depth or more for `{name}`"
    return Misfit(
        says=f"cap `{name}` of {spelled(bore)} bore is {spelled(depth)} deep, which {{is|may be}}"
        f" too shallow to hold the end of the rope `{join.rope.name}`",
        place=place,
        found=f"{spelled(depth)} deep",
        needed=f"a depth of {need} or more",
        remedies=(Remedy(text, deeper(cap, wanted)), in_words(text, cap, "depth", low=wanted)),
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
    rope, least = join.rope, next_up(nub.middle - margin.likely.low, 0.5)
    need, path = in_unit_of(least, nub), ("nub", "length")
    longer = f"leave a nub of {need} at both ends of `{rope.name}`"
    less_deep = f"take a cap that is less deep, or leave a nub of {need} or more"
    return Misfit(
        says=f"the nub of `{rope.name}` ({spelled(nub)}) {{is|may be}} too short for cap"
        f" `{join.cap.name}`, which is {spelled(depth)} deep and needs {need} of it",
        place=rope.place_of(*path),
        found=spelled(nub),
        needed=f"{need} or more",
        remedies=(
            Remedy.write(rope.place_of(*path), need, longer),
            in_words(less_deep, rope, *path, low=least),
        ),
        margin=margin,
        also=(join.cap.place_of("depth"),),
    )


RULE = Rule(
    name="cap-depth",
    family="fit",
    subject=RopeInCap,
    check=check,
    fault="cap too shallow",
    title="the end of a rope goes deep enough into its end cap (how wide it is: `cap-bore`)",
    why=(
        "in a cap like a shallow dish the glue holds a single ring of beads, and the rope is pulled"
        " out the first time the clasp is tugged"
    ),
    limits=(NUB_IN_CAP, CAP_DEPTH_SHARE, CAP_DEPTH),
    sources=(
        "at least about 0.4 of the bore, and 4 mm for wide ones: common practice, no source",
        "a nub of 0.8 of the depth: trade table `caps`, nub: from memory",
        "caps are 6 to 10 mm deep: trade table `caps`, end cap: from memory",
    ),
    level="warning",
    bad="cap: {kind: end cap, bore: 10 mm, depth: 3 mm, ...}",
    good="cap: {kind: end cap, bore: 10 mm, depth: 7 mm, ...}",
)
