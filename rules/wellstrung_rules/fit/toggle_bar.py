"""The bar of a toggle against the opening of its ring: too short falls out, too long will not pass.

The bar is held at its middle by the stem, which can go no further than the edge of the opening. A
half bar that still reaches over the far edge then cannot slide out, whichever way it is pushed:
bar >= 2 x opening - width of the stem. Shorter bars hold by the pull alone; practice asks for 6 mm
more than the opening at least, so the lesser of the two is asked for. A bar that is not 3 mm longer
slips out.
"""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung.formulas.findings import least_bar
from wellstrung.rulebook import (
    Answer,
    Ask,
    Misfit,
    Remedy,
    Rule,
    Toggle,
    Verdict,
    compare,
    kept,
    tightest,
)
from wellstrung.rulebook.plan import Part, Place
from wellstrung.rulebook.values import derived, printed, product
from wellstrung.rulebook.wording import about, in_unit_of, spelled, within


def check(toggle: Toggle, ask: Ask) -> Answer:
    clasp, woven = toggle.clasp, toggle.clasp.part("bar", "woven")
    of_bar = woven if woven is not None and clasp.node_at("bar", "length") is None else None
    place = clasp.place_of("bar", "length") if of_bar is None else of_bar.place_of("length")
    bar, opening = ask.of(clasp, "bar.length"), ask.of(clasp, "ring.inside")
    slides, slips = (
        bar
        - derived(
            "least bar",
            "mm",
            least_bar,
            opening=opening,
            stem_width=ask.of(clasp, "bar.stem_width"),
            more=printed("clasps", "toggle", more),
            source="geometry, worked out for this project; trade table `clasps`, toggle",
        )
        for more in ("bar_short", "bar_least")
    )
    share = printed("clasps", "toggle", "bar_share_most")
    passes = product("longest bar", "mm", opening, share) - bar
    out = compare(slips) is Verdict.FAILS
    margin = slips if out else tightest(slides, passes)
    if answer := kept(margin):
        return answer
    ring = f"the opening of its ring ({about(opening, bar)})"
    fault = f"so short for {ring} that it {'slips' if out else 'slides'} out"
    if compare(bar - opening) is Verdict.FAILS:
        fault = f"no longer than {ring}, so that it falls out"
    elif margin is passes:
        fault = f"too long to pass {ring}"
    low, high = bar.middle - slides.likely.low, bar.middle + passes.likely.low
    size = in_unit_of(round(min(max(bar.middle, (low + high) / 2), high)), bar)
    works = within(low, high, bar)
    needed = f"a bar of {works}"
    remedies = (
        *_other_bar(of_bar, place, size, works),
        Remedy(f"{_TAKE[of_bar is not None]} with {needed}, or with another ring"),
    )
    if low > high:  # no bar stays in so small a ring and passes it
        needed = "a wider ring"
        remedies = (Remedy(f"{_TAKE[of_bar is not None]} with {needed}"),)
    return Misfit(
        says=f"the bar of `{clasp.name}` ({spelled(bar)}) {{is|may be}} {fault}",
        place=place,
        found=spelled(bar),
        needed=needed,
        remedies=remedies,
        margin=margin,
        at_most="error" if out else "warning",
        also=(clasp.place_of("ring", "outside"),),
    )


_TAKE = {False: "take a toggle", True: "weave the toggle"}


def _other_bar(woven: Part | None, place: Place, size: str, works: str) -> Iterator[Remedy]:
    """The length of a bar written down, unless a woven one is counted by its rounds."""
    if woven is None or woven.has("length"):
        take = _TAKE[woven is not None]
        yield Remedy.write(place, size, f"{take} with a bar of {size} ({works} works)")


RULE = Rule(
    name="toggle-bar",
    family="fit",
    subject=Toggle,
    check=check,
    fault="toggle bar too short or too long",
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
        "trade table `clasps`, toggle: 6 mm over the opening, 3 mm at the very least, at most 2.4"
        " times it, derived from pages that differ",
    ),
    bad="bar: {length: 14 mm, ...} in a ring of 12 mm opening",
    good="bar: {length: 22 mm, ...} in a ring of 12 mm opening",
)
