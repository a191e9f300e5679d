"""What a bead tip covers: the line comes in, the knot or crimp fits the cup and cannot slip out."""

from __future__ import annotations

from math import inf

from wellstrung.formulas.findings import pressed
from wellstrung.rulebook import Answer, Ask, Misfit, Remedy, Rule, TipOnStrands, kept, tightest
from wellstrung.rulebook.plan import Part
from wellstrung.rulebook.remedies import in_words, next_up
from wellstrung.rulebook.values import Cause, Quantity, Spread, derived, leaf, product
from wellstrung.rulebook.wording import about, in_unit_of, spelled
from wellstrung_rules.fit import packed

#: a tenth of a millimetre is as fine as tips are sold
_STEP = 0.1
_SOURCE = "geometry, worked out for this project"


def check(join: TipOnStrands, ask: Ask) -> Answer:
    tip, cup = join.tip, f"bead tip `{join.tip.name}`"
    hole, inside = ask.of(tip, "hole"), ask.of(tip, "inside")
    times = [(strand, strand.count("passes", default=1)) for strand in join.strands]
    lines = packed("lines", [ask.of(one, "line") for one, n in times for _ in range(min(n, 8))])
    covered = _covered(tip, lines, ask)
    enters, stays, fits = hole - lines, covered - hole, inside - covered
    if answer := kept(enters, stays, fits):
        return answer
    margin = tightest(enters, stays, fits)
    covers = tip.text("covers") if tip.has("covers") else ""
    what = f"crimp `{covers}`" if covers in ask.plan.parts else f"the {covers} knot"
    what = what if covers else "what is inside"
    had, named = (inside, "room") if margin is fits else (hole, "a hole")
    field = "inside" if margin is fits else "hole"
    place, low, high = tip.place_of(field), next_up(had.middle - margin.likely.low, _STEP), inf
    size, way = in_unit_of(low, had), "wider"
    other = "a smaller knot or crimp" if margin is fits else "a thinner line"
    first = [Remedy.write(place, size, f"take a bead tip with {named} of {size} for `{tip.name}`")]
    if margin is enters:
        more = f" and {len(join.strands) - 1} more" if len(join.strands) > 1 else ""
        says = f"the line of `{join.strands[0].name}` ({about(lines, hole)}){more} {{does|may}} not"
        says += f" come in by the hole of {cup} ({spelled(hole)})"
    elif margin is fits:
        says = f"{what} ({about(covered, inside)}) {{does|may}} not go into {cup}, which"
        says += f" has room for {spelled(inside)}"
    else:
        says = f"{what} ({about(covered, hole)}) {{will|may}} slip out through the hole"
        says += f" of {cup} ({spelled(hole)})"
        down = -next_up(-had.middle - margin.likely.low, _STEP)
        low, high = 0.0, max(down, _STEP)
        size, way = in_unit_of(high, had), "narrower"
        other = "knot a seed bead in, and measure it with its knot"
        twice = "tie a second overhand over it: `covers: double overhand`"
        again = Remedy.write(tip.place_of("covers"), "double overhand", twice)
        first = [again] if covers == "overhand" else []
    by_hand = f"take a bead tip with {named} of {size} or {way}, or {other}"
    return Misfit(
        says=says,
        place=place,
        found=spelled(had),
        needed=f"{named} of {size} or {way}",
        remedies=(*first, in_words(by_hand, tip, field, low=low, high=high)),
        margin=margin,
        also=(tip.place_of("covers"), *(strand.key.place for strand in join.strands)),
    )


def _covered(tip: Part, lines: Quantity, ask: Ask) -> Quantity:
    """Across the knot or the crimp: as measured, or worked out."""
    if tip.has("measured", "covered"):
        return ask.of(tip, "covered")
    crimp = ask.plan.parts.get(tip.text("covers"))
    if crimp is None:
        return product("knot", "mm", lines, ask.of(tip, "knot"))
    cure = f"press one, measure it and write `measured: {{covered: ...}}` in `{tip.name}`"
    spread = Spread(Cause("how the crimp is pressed", f"`{crimp.name}`", cure), 0.5, 0.5)
    flat = leaf("flat", 0.5, "", [spread], source="folded round to flattened: geometry")
    sizes = {"outside": ask.of(crimp, "outside"), "inside": ask.of(crimp, "inside"), "flat": flat}
    return derived("crimp, pressed", "mm", pressed, sizes, source=_SOURCE)


RULE = Rule(
    name="tip-cover",
    family="fit",
    subject=TipOnStrands,
    check=check,
    fault="knot or crimp does not suit its tip",
    title=(
        "the line comes into a bead tip, and the knot or crimp there fits the cup and does not slip"
        " out through its hole"
    ),
    why=(
        "a knot on fine thread slips through a hole made for silk on the first evening it is worn,"
        " and one too thick keeps the cup from closing over it"
    ),
    sources=(
        "lines across a knot, at least as many as lie side by side: trade table `knots`, overhand"
        " and double overhand: from memory",
        "a crimp folded round to flattened, lines side by side: geometry, worked out for this"
        " project",
    ),
    bad="hole: 1 mm, covers: overhand on a line of 0.3 mm",
    good="hole: 1 mm, covers: double overhand on a line of 0.5 mm",
)
