"""The bore of an end cap against what enters it: a rope's beads, a plain braid, or a nub.

Workable from about 5 % under the outside of a hollow rope, which gives, to about 1.5 mm over it; a
cored or solid rope does not give. A braid without beads is whipped into a cap up to 1 mm narrower.
"""

from __future__ import annotations

from wellstrung.formulas.findings import room_in_bore
from wellstrung.formulas.fits import fit_class
from wellstrung.rulebook import Answer, Ask, Limit, Misfit, Remedy, RopeInCap, Rule, kept
from wellstrung.rulebook.plan import Part
from wellstrung.rulebook.remedies import in_words, sold_within, wider_bore
from wellstrung.rulebook.values import Quantity, derived, exact, product
from wellstrung.rulebook.wording import about, in_unit_of, number, spelled, within
from wellstrung_rules.limits import CAP_LOOSE, CAP_TIGHT

PLAIN_BRAID_TIGHT = Limit(
    "plain braid tight",
    1.0,
    "mm",
    "whipping pulls a braid without beads together: trade table `caps`, bare braid in a cap",
)
PLAIN_BRAID_LOOSE = Limit(
    "plain braid loose",
    1.8,
    "mm",
    "print puts a braid of 4.96 mm, likely 4.22 mm or more, in a cap of 6 mm: trade table `caps`,"
    " bare braid in a cap",
)
NUB_LOOSE = Limit(
    "nub loose",
    1.0,
    "mm",
    "a nub whipped with thread, glue half a millimetre all round, common practice",
)


def check(join: RopeInCap, ask: Ask) -> Answer:
    if join.takes == "bundle":
        return None  # `cone-bundle` packs it
    outside, bore = ask.end(join.rope, join.cap), ask.of(join.cap, "bore")
    words, gives, loose_by = _end(join, ask)
    tight = derived("room in the cap", "mm", room_in_bore, bore=bore, outside=outside, gives=gives)
    loose = outside + ask.limit(loose_by) - bore
    if answer := kept(tight, loose):
        return answer
    too_tight = tight.likely.low < loose.likely.low
    low, high = bore.middle - tight.likely.low, bore.middle + loose.likely.low
    size = sold_within(low, high)
    needed = f"a bore of {within(low, high, bore)}"
    if size is None:
        needed = "a measured rope: its likely size varies by more than one cap allows"
    return Misfit(
        says=f"the bore of cap `{join.cap.name}` ({spelled(bore)}) {{is|may be}} too"
        f" {'tight' if too_tight else 'loose'} for the {words} `{join.rope.name}`"
        f" ({about(outside, bore)} outside)",
        place=join.cap.place_of("bore"),
        found=spelled(bore),
        needed=needed,
        remedies=_remedies(join, size, needed, low, high, bore),
        margin=tight if too_tight else loose,
        at_most="error" if too_tight else "warning",
        fault=f"cap too {'small' if too_tight else 'large'}",
        also=(join.rope.key.place,),
        working=(f"in the words of ISO 286-1: {_fit(bore, outside)}",),
    )


def _fit(bore: Quantity, outside: Quantity) -> str:
    fit = fit_class(*bore.likely, *outside.likely)
    clearance = f"{number(fit.least_clearance)}..{number(fit.most_clearance)} mm"
    return f"{fit.name}, clearance {clearance} over the likely sizes"


def _end(join: RopeInCap, ask: Ask) -> tuple[str, Quantity, Limit]:
    """What of the rope goes in, by how much it gives, mm, and the limit of how loose it may sit."""
    rope = join.rope
    if join.by_nub:
        return "nub of", exact("give of a nub", 0.0, "mm"), NUB_LOOSE
    if rope.stitch is not None and rope.stitch.bare:
        return "braid", ask.limit(PLAIN_BRAID_TIGHT), PLAIN_BRAID_LOOSE
    return "rope", _give(rope, ask), CAP_LOOSE


def _give(rope: Part, ask: Ask) -> Quantity:
    """A rope gives, mm, where it has a bore to give into, and nothing that fills it."""
    cored = rope.has("core") and rope.text("core") != "no"
    if cored or not ask.offers(rope, "inside") or ask.of(rope, "inside").middle <= 0:
        return exact("give of a solid rope", 0.0, "mm", source="common practice, no source")
    return product(f"{rope.name} gives", "mm", ask.limit(CAP_TIGHT), ask.of(rope, "outside"))


def _remedies(
    join: RopeInCap, size: float | None, needed: str, low: float, high: float, bore: Quantity
) -> tuple[Remedy, ...]:
    if size is None:
        return (Remedy(f"make 2 cm of `{join.rope.name}`, measure it and take the cap by that"),)
    text = f"take a cap with {needed}"
    if size % 0.5 == 0:
        text = f"take a cap of {in_unit_of(size, bore)} bore ({within(low, high, bore)} works)"
    by_hand = in_words(f"take a cap with {needed}", join.cap, "bore", low=low, high=high)
    return (Remedy(text, wider_bore(join.cap, size)), by_hand)


RULE = Rule(
    name="cap-bore",
    family="fit",
    subject=RopeInCap,
    check=check,
    fault="cap does not fit",
    title=(
        "the end of a rope, with its beads or by its nub, enters its end cap, neither forced nor"
        " rattling"
    ),
    why=(
        "caps are bought before the rope is woven; beads crack when forced into a tight cap, and"
        " a loose one stands off crooked, with a gap that glue alone must bridge"
    ),
    limits=(CAP_TIGHT, CAP_LOOSE, PLAIN_BRAID_TIGHT, PLAIN_BRAID_LOOSE, NUB_LOOSE),
    sources=(
        "trade table `caps`, cap over beads, -0.5..+1.5 mm: from memory",
        "trade table `caps`, bare braid in a cap, 1 mm narrower to 1 mm wider: several pages",
        "about 5 % give of a hollow rope: common practice, no source",
    ),
    bad="cap: {kind: end cap, bore: 6 mm, ...} on a rope 7.8 mm outside",
    good="cap: {kind: end cap, bore: 8 mm, ...} on a rope 7.8 mm outside",
)
