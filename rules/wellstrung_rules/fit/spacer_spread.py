"""Strands side by side against the spacing of the holes or loops that they are kept at."""

from __future__ import annotations

from itertools import pairwise

from wellstrung.formulas import circles
from wellstrung.rulebook import Answer, Ask, Misfit, Remedy, Rule, StrandsAtHoles, kept
from wellstrung.rulebook.plan import Part
from wellstrung.rulebook.remedies import in_words, next_up
from wellstrung.rulebook.values import Quantity, derived
from wellstrung.rulebook.wording import about, in_unit_of, raised, spelled


def check(join: StrandsAtHoles, ask: Ask) -> Answer:
    bar = join.eyes.part
    if len(join.strands) < 2:
        return None
    spacing = ask.get(join.eyes.quantity("spacing"))
    widths = [(_side_by_side(one, other, ask), one, other) for one, other in pairwise(join.strands)]
    need, one, other = max(widths, key=lambda found: found[0].likely.high)
    margin = spacing - need
    if answer := kept(margin):
        return answer
    least, path = next_up(spacing.middle - margin.likely.low, 0.5), (*join.eyes.path, "spacing")
    wanted, place = in_unit_of(least, spacing), bar.place_of(*path)
    noun, holes = bar.kind.name, "holes" if join.eyes.field.strung else "loops"
    wider = f"take a {noun} with {holes} {wanted} apart"
    return Misfit(
        says=f"`{one.name}` and `{other.name}` side by side {{|may }}bulge at `{bar.name}`: they"
        f" need {about(need, spacing)} from middle to middle, and its {holes} are"
        f" {spelled(spacing)} apart",
        place=place,
        found=f"{spelled(spacing)} apart",
        needed=f"{raised(spacing, margin)} apart or more",
        remedies=(
            Remedy.write(place, wanted, wider),
            in_words(f"{wider}, or thinner strands", bar, *path, low=least),
        ),
        margin=margin,
        also=(join.place, one.key.place, other.key.place),
    )


def _side_by_side(one: Part, other: Part, ask: Ask) -> Quantity:
    return derived(
        f"{one.name} beside {other.name}",
        "mm",
        circles.beside,
        one=ask.of(one, "outside"),
        other=ask.of(other, "outside"),
        source="geometry, worked out for this project",
    )


RULE = Rule(
    name="spacer-spread",
    family="fit",
    subject=StrandsAtHoles,
    check=check,
    fault="holes for strands too close",
    title=(
        "strands side by side are no wider than the holes of their spacer bar or end bar, or the"
        " loops of their clasp, are apart (a hole for each strand: `strand-holes`)"
    ),
    why=(
        "strands thicker than the holes are apart push each other up there and spread between:"
        " the piece ripples instead of lying flat"
    ),
    sources=("half the width of either strand to each side of its hole: geometry",),
    bad="strands of 8 mm beads at a spacer bar with `spacing: 6 mm`",
    good="strands of 5 mm beads at a spacer bar with `spacing: 6 mm`",
    level="warning",
)
