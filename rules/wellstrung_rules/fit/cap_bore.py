"""The bore of an end cap against the rope whose beads enter it.

Workable from about 5 % under the outside of a hollow rope, which gives, to about 1.5 mm over it; a
cored or solid rope does not give.
"""

from __future__ import annotations

from wellstrung.fits import fit_class
from wellstrung.rulebook import (
    Answer,
    Ask,
    Edit,
    Held,
    Misfit,
    Quantity,
    Remedy,
    RopeInCap,
    Rule,
    Verdict,
    about,
    between,
    compare,
    derived,
    exact,
    in_unit_of,
    number,
    spelled,
)


def check(join: RopeInCap, ask: Ask) -> Answer:
    nub = join.takes == "nub"
    outside = ask.of(join.rope, "nub.outside" if nub else "outside")
    bore = ask.of(join.cap, "bore")
    tight = derived(
        "room in the cap",
        "mm",
        room,
        "bore - outside * (1 - give)",
        bore=bore,
        outside=outside,
        give=_give(join, ask),
    )
    loose = derived(
        "slack under the limit",
        "mm",
        lambda bore, outside, loose: outside + loose - bore,
        "outside + loose - bore",
        bore=bore,
        outside=outside,
        loose=ask.limit("nub loose" if nub else "cap loose"),
    )
    if compare(tight) is Verdict.HOLDS and compare(loose) is Verdict.HOLDS:
        return Held(min(tight, loose, key=lambda margin: margin.likely.low))
    too_tight = tight.likely.low < loose.likely.low
    word = "tight" if too_tight else "loose"
    end = f"the {'nub of ' if nub else 'rope '}`{join.rope.name}`"
    rope = f"{end} ({about(outside, bore)} outside)"
    low, high = bore.middle - tight.likely.low, bore.middle + loose.likely.low
    return Misfit(
        says=f"the bore of cap `{join.cap.name}` ({spelled(bore)}) is too {word} for {rope}",
        may=f"the bore of cap `{join.cap.name}` ({spelled(bore)}) may be too {word} for {rope}",
        place=join.cap.place_of("bore"),
        found=spelled(bore),
        needed=_needed(low, high, bore),
        remedies=tuple(_remedies(join, bore, low, high)),
        margin=tight if too_tight else loose,
        at_most="error" if too_tight else "warning",
        also=(join.rope.key.place,),
        working=(f"in the words of ISO 286-1: {_fit(bore, outside)}",),
    )


def room(bore: float, outside: float, give: float) -> float:
    """What is left, mm, when a rope that gives by a share of its outside enters a bore.

    >>> round(room(bore=8.0, outside=8.0, give=0.05), 2)
    0.4
    """
    return bore - outside * (1 - give)


def _fit(bore: Quantity, outside: Quantity) -> str:
    fit = fit_class(*bore.likely, *outside.likely)
    clearance = f"{number(fit.least_clearance)}..{number(fit.most_clearance)} mm"
    return f"{fit.name}, clearance {clearance} over the likely sizes"


def _give(join: RopeInCap, ask: Ask) -> Quantity:
    cored = join.rope.has("core") and join.rope.text("core") != "no"
    if cored or join.takes == "nub" or join.rope.kind.name == "braid":
        return exact("give", 0.0, source="a cored rope or a braid does not give, common practice")
    return ask.limit("cap tight")


def _needed(low: float, high: float, bore: Quantity) -> str:
    if low <= high:
        return f"a bore of {between(low, high, bore)}"
    return "a measured rope: its likely range is wider than any one cap takes"


def _remedies(join: RopeInCap, bore: Quantity, low: float, high: float) -> list[Remedy]:
    if low > high:
        return []
    middle = (low + high) / 2
    wanted = round(middle * 2) / 2 if low <= round(middle * 2) / 2 <= high else middle
    size = in_unit_of(wanted, bore)
    edits = [Edit(join.cap.place_of("bore"), size)]
    if join.cap.has("outside"):
        outside = join.cap.length("outside")
        if outside.middle <= wanted:  # keep the cap's wall
            grown = in_unit_of(outside.middle + wanted - bore.middle, outside)
            edits.append(Edit(join.cap.place_of("outside"), grown))
    reach = between(low, high, bore)
    return [
        Remedy(f"take a cap of {size} bore ({reach} works)", tuple(edits)),
        Remedy(f"take a cap with a bore of {reach}"),
    ]


RULE = Rule(
    name="cap-bore",
    family="fit",
    subject=RopeInCap,
    check=check,
    title=(
        "the end of a rope, with its beads or by its nub, enters its end cap, neither forced nor"
        " rattling"
    ),
    why=(
        "caps are bought before the rope is woven; beads crack when forced into a tight cap, and"
        " a loose one stands off crooked, with a gap that glue alone must bridge"
    ),
    sources=(
        "trade table `caps`, end-cap check where the cap covers beads: -0.5..+1.5 mm, derived",
        "about 5 % give of a hollow rope: common practice, no source",
    ),
    bad="cap: {kind: end cap, bore: 6 mm, ...} on a rope 7.8 mm outside",
    good="cap: {kind: end cap, bore: 8 mm, ...} on a rope 7.8 mm outside",
)
