"""What is glued into a hole that ends inside: room for glue all round it, and deep enough."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, EndInHole, Limit, Misfit, Remedy, Rule, kept
from wellstrung.rulebook.remedies import in_words, sold_within
from wellstrung.rulebook.wording import about, in_unit_of, raised, spelled, within
from wellstrung_rules.fit import sizes_of_hole

ROOM_LEAST = Limit(
    "least room for glue", 0.03, "mm", "over a wire: enough to push it in, common practice"
)
ROOM_MOST = Limit(
    "most room for glue",
    0.4,
    "mm",
    "over a wire, 0.2 mm all round: what thin glue bridges, trade table `adhesives`",
)
DEEP = Limit(
    "wire in a glued hole", 1.5, "mm", "a peg of 1.5 mm is called short on one page, copy seen"
)


def check(join: EndInHole, ask: Ask) -> Answer:
    bore, depth = ask.of(join.hole, "bore"), ask.of(join.hole, "depth")
    wire = ask.of(join.end, "line")
    tight, loose = bore - wire - ask.limit(ROOM_LEAST), wire + ask.limit(ROOM_MOST) - bore
    deep = depth - ask.limit(DEEP)
    if answer := kept(tight, loose, deep):
        return answer
    margin = min(tight, loose, deep, key=lambda one: one.likely.low)
    hole, end = f"the hole of `{join.hole.name}`", f"the wire of `{join.end.name}`"
    if margin is deep:
        needed, field = f"{raised(depth, deep)} deep or more", "depth"
        says = f"{hole} ({spelled(depth)} deep) {{is|may be}} too shallow to hold {end} by glue"
        remedy = in_words(
            f"take one drilled {needed}", join.hole, field, low=-deep.likely.low + depth.middle
        )
    else:
        room = wire + ask.limit(ROOM_LEAST), wire + ask.limit(ROOM_MOST)
        low, high = sizes_of_hole(bore, tight, loose, *room)
        field, needed = "bore", f"a hole of {within(low, high, bore)}"
        word = "narrow" if margin is tight else "wide"
        says = f"{hole} ({spelled(bore)}) {{is|may be}} too {word} for {end} ({about(wire, bore)})"
        if sold_within(low, high) is None:  # the wire is too little known for any one hole
            needed = f"a hole for a wire of {about(wire, bore)}"
            remedy = Remedy(f"take one drilled for the wire of `{join.end.name}`")
        else:
            remedy = in_words(f"take one with {needed}", join.hole, field, low=low, high=high)
    return Misfit(
        says=says,
        place=join.hole.place_of(field),
        found=in_unit_of((depth if margin is deep else bore).middle, bore),
        needed=needed,
        remedies=(remedy,),
        margin=margin,
        at_most="warning" if margin is loose else "error",
        also=(join.end.place_of("thread"),),
    )


RULE = Rule(
    name="end-in-hole",
    family="fit",
    subject=EndInHole,
    check=check,
    fault="glued end does not fit its hole",
    title="the end of memory wire goes into its ball or cap, with a film of glue round it",
    why="a ball that is glued on by a skin of glue, or by a millimetre of wire, pops off at the"
    " first twist, and the beads follow it",
    limits=(ROOM_LEAST, ROOM_MOST, DEEP),
    sources=(
        "a post slightly thinner than the hole and as long as it is deep: Professional Setting of a"
        " Half-Drilled Round Pearl, copy seen",
        "pegs of 0.65 to 0.7 mm in holes of 0.8 mm: Matching pearls to pearl pegs, copy seen",
    ),
    bad="a wire of 0.6 mm in a ball with a hole of 0.5 mm",
    good="a wire of 0.6 mm in a ball with a hole of 0.8 mm",
)
