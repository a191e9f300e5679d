"""A magnetic clasp against the weight of the piece: its halves slide apart before they come off."""

from __future__ import annotations

from wellstrung.formulas import magnets
from wellstrung.rulebook import Answer, Ask, Choice, ClaspClosed, Limit, Misfit, Rule, kept
from wellstrung.rulebook.loads import pull_at_clasp, pull_to_spare, weakest
from wellstrung.rulebook.remedies import in_words
from wellstrung.rulebook.values import derived
from wellstrung.rulebook.wording import at_least, in_unit_of, spelled
from wellstrung_rules.hold import in_wear

MAGNET_FACTOR = Limit(
    "magnet factor",
    2.0,
    "",
    "a tug in wear is about twice the weight, common practice, no source",
    Choice(1.0, 2.0, "the load at rest", careful=True),
)


def check(join: ClaspClosed, ask: Ask) -> Answer:
    clasp = join.clasp
    if not clasp.traits.magnetic:
        return None
    field = "breakaway" if clasp.has("breakaway") and not clasp.has("pull") else "pull"
    pull, factor = clasp.force(field), ask.limit(MAGNET_FACTOR)
    share = weakest("share of the pull", "clasps", "magnetic", "slides_at")
    load, pulls = pull_at_clasp(ask.plan, ask.get("piece.mass"), clasp)
    slides_at = derived(
        f"{clasp.name} slides apart at", "N", magnets.slides_at, pull=pull, share=share
    )
    margin = pull_to_spare(slides_at, load, factor)
    if answer := kept(margin, over="worst"):
        return answer
    least = load.worst.high * factor.middle / share.middle
    wanted = at_least(least, pull)
    return Misfit(
        says=f"the halves of clasp `{clasp.name}` (straight pull {spelled(pull)}) slide apart at"
        f" {in_unit_of(slides_at.worst.low, pull)}; {pulls} pulls like"
        f" {in_wear(load, factor, pull)}",
        place=clasp.place_of(field),
        found=spelled(pull),
        needed=f"a straight pull of {wanted} or more",
        remedies=(
            in_words(
                f"take a clasp of {wanted} or more for `{clasp.name}`, one whose halves sit inside"
                " each other, or add a safety chain",
                *(clasp, field),
                low=least,
                unit="N",
            ),
        ),
        margin=margin,
    )


RULE = Rule(
    name="magnet-hold",
    family="hold",
    subject=ClaspClosed,
    check=check,
    fault="magnet too weak",
    title="a magnetic clasp holds the weight of the piece when its halves are pulled sideways",
    why="magnets are sold by their straight pull; round a wrist or a neck they slide off each"
    " other at a fifth of it, and the piece is lost without a sound",
    limits=(MAGNET_FACTOR,),
    sources=(
        "magnets slide at 15 to 25 % of their straight pull: What is the difference between"
        " adhesive force and displacement force/shear force?, copy seen",
        "a tug of twice the weight: common practice, no source",
    ),
    bad="magnet: {kind: clasp, type: magnetic, pull: 3 N} on a bracelet of 60 g",
    good="magnet: {kind: clasp, type: magnetic, pull: 12 N} on a bracelet of 60 g",
    over="worst",
    loads=True,
)
