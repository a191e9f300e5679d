"""Sliding knots: the ends of the cord are long enough for the knots to slide along them."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, EndsInKnots, Limit, Misfit, Rule, kept
from wellstrung.rulebook.remedies import in_words
from wellstrung.rulebook.wording import about, at_least, raised

SLIDES = Limit(
    "knots slide", 20.0, "mm", "less than an inch to open is not worth a knot, common practice"
)


def check(join: EndsInKnots, ask: Ask) -> Answer:
    clasp = join.clasp
    opens = ask.of(clasp, "extends")
    if answer := kept(margin := opens - ask.limit(SLIDES)):
        return answer
    ends = clasp.size("sliding", "ends", allowance="part length")
    longer = raised(ends, margin)
    return Misfit(
        says=f"the knots of `{clasp.name}` {{slide|may slide}} only {about(opens, ends)}, as the"
        " ends of the cord are short",
        place=clasp.place_of("sliding", "ends"),
        found=f"{about(opens, ends)} to slide",
        needed=f"{at_least(ask.limit(SLIDES).middle, ends)} or more",
        remedies=(
            in_words(
                f"leave ends of {longer} or more",
                *(clasp, "sliding", "ends"),
                low=ends.middle - margin.likely.low,
            ),
        ),
        margin=margin,
        also=(join.work.key.place,),
    )


RULE = Rule(
    name="sliding-range",
    family="length",
    subject=EndsInKnots,
    check=check,
    fault="knots hardly slide",
    title="the cord ends of a piece with sliding knots are longer than the knots need",
    why="ends that the knots fill do not slide: the piece goes on over no hand and no head",
    limits=(SLIDES,),
    sources=(
        "each end comes up to the other's knot: geometry of this project",
        "an inch or so to open: common practice, no source",
    ),
    bad="sliding: {ends: 2 cm} on a cord of 2 mm",
    good="sliding: {ends: 8 cm} on a cord of 1 mm",
    level="warning",
)
