"""The bar of a toggle against the opening of its ring: too short falls out, too long will not pass.

The bar is held at its middle by the stem, which can go no further than the edge of the opening. A
half bar that still reaches over the far edge then cannot slide out, whichever way it is pushed:
bar >= 2 x opening - width of the stem. Shorter bars hold by the pull alone; practice asks for 6 mm
more than the opening at least, so the lesser of the two is asked for.
"""

from __future__ import annotations

from wellstrung.formulas.arithmetic import least
from wellstrung.rulebook import Answer, Ask, Misfit, Remedy, Rule, Toggle, holds, kept
from wellstrung.rulebook.plan import Part
from wellstrung.rulebook.values import Quantity, derived, exact, product, table
from wellstrung.rulebook.wording import about, between, in_unit_of, spelled


def check(toggle: Toggle, ask: Ask) -> Answer:
    clasp = toggle.clasp
    bar, opening = ask.of(clasp, "bar.length"), ask.of(clasp, "ring.inside")
    least = derived(
        "least bar",
        "mm",
        least_bar,
        opening=opening,
        stem_width=ask.of(clasp, "bar.stem_width"),
        more=_cell("bar_short", "mm"),
        source="geometry, worked out for this project; trade table `clasps`, toggle",
    )
    most = product("longest bar", "mm", opening, _cell("bar_share_most"))
    falls, slides, passes = bar - opening, bar - least, most - bar
    out = not holds(falls)
    margin = falls if out else min(slides, passes, key=lambda room: room.likely.low)
    if answer := kept(margin):
        return answer
    words = f"the bar of `{clasp.name}` ({spelled(bar)})"
    ring = f"the opening of its ring ({about(opening, bar)})"
    long = margin is passes
    if out:
        fault = f"no longer than {ring}, so that it falls out"
    else:
        fault = f"too long to pass {ring}" if long else f"so short for {ring} that it slides out"
    low, high = bar.middle - slides.likely.low, bar.middle + passes.likely.low
    need = f"a bar of {between(low, high, bar)}"
    return Misfit(
        says=f"{words} {{is|may be}} {fault}",
        place=clasp.place_of("bar", "length"),
        found=spelled(bar),
        needed=need,
        remedies=_remedies(clasp, bar, low, high, need),
        margin=margin,
        at_most="error" if out else "warning",
        also=(clasp.place_of("ring", "outside"),),
    )


def least_bar(opening: float, stem_width: float, more: float) -> float:
    """The shortest bar, mm, that stays in: sure by its length, or as long as practice asks.

    Geometry and common practice: see the sources of the rule.

    >>> round(least_bar(opening=8.0, stem_width=3.0, more=6.0), 1)
    13.0
    >>> round(least_bar(opening=12.0, stem_width=1.2, more=6.0), 1)
    18.0
    """
    return least(2 * opening - stem_width, opening + more)


def _cell(column: str, unit: str = "") -> Quantity:
    cell = table("clasps").row("toggle").cell(column)
    return exact(column, cell.value, unit, source=f"trade table `clasps`, toggle: {cell.note}")


def _remedies(clasp: Part, bar: Quantity, low: float, high: float, need: str) -> tuple[Remedy, ...]:
    size = in_unit_of(round(min(max(bar.middle, (low + high) / 2), high)), bar)
    return (
        Remedy.write(
            clasp.place_of("bar", "length"),
            size,
            f"take a toggle with a bar of {size} ({between(low, high, bar)} works)",
        ),
        Remedy(f"take a toggle with {need}, or with another ring"),
    )


RULE = Rule(
    name="toggle-bar",
    family="fit",
    subject=Toggle,
    check=check,
    title=(
        "the bar of a toggle is long enough to stay in its ring, and not too long to be passed"
        " (what stands behind the bar is `toggle-swing`)"
    ),
    why=(
        "a short bar turns as the wearer moves and slips out, and the necklace is gone; one too"
        " long is never fastened without help"
    ),
    sources=(
        "bar >= 2 x opening - width of the stem: geometry, worked out for this project",
        "trade table `clasps`, toggle: 6 mm over the opening, at most 2.4 times it, derived from"
        " pages that differ",
    ),
    bad="bar: {length: 14 mm, ...} in a ring of 12 mm opening",
    good="bar: {length: 22 mm, ...} in a ring of 12 mm opening",
)
