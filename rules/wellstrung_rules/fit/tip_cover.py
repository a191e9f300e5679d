"""What a bead tip covers: the line comes in, the knot or crimp fits the cup and cannot slip out."""

from __future__ import annotations

import math

from wellstrung.formulas import circles
from wellstrung.formulas.arithmetic import pi
from wellstrung.rulebook import Answer, Ask, Misfit, Remedy, Rule, TipOnStrands, kept
from wellstrung.rulebook.plan import Edit, Part
from wellstrung.rulebook.values import Cause, Quantity, Spread, derived, leaf, product
from wellstrung.rulebook.wording import about, in_unit_of, spelled


def check(join: TipOnStrands, ask: Ask) -> Answer:
    tip = join.tip
    hole, inside = ask.of(tip, "hole"), ask.of(tip, "inside")
    lines = _lines(join, ask)
    covered = _covered(tip, lines, ask)
    enters, stays, fits = hole - lines, covered - hole, inside - covered
    margin = min((enters, stays, fits), key=lambda room: room.likely.low)
    if answer := kept(margin):
        return answer
    what, cup = _what(tip, ask), f"bead tip `{tip.name}`"
    if margin is enters:
        head, fault = f"the line of `{join.strands[0].name}` ({about(lines, hole)})", "not come in"
        head += "" if len(join.strands) == 1 else f" and {len(join.strands) - 1} more"
        tail = f"by the hole of {cup} ({spelled(hole)})"
        size, way = hole.middle - margin.likely.low, "wider"
    elif margin is stays:
        head, fault = f"{what} ({about(covered, hole)})", "slip out"
        tail = f"through the hole of {cup} ({spelled(hole)})"
        size, way = hole.middle + margin.likely.low, "narrower"
    else:
        head, fault = f"{what} ({about(covered, inside)})", "not go into"
        tail = f"{cup}, which has room for {spelled(inside)}"
        size, way = inside.middle - margin.likely.low, "wider"
    field, had = ("inside", inside) if margin is fits else ("hole", hole)
    # a tenth of a millimetre is as fine as tips are sold
    tenths = math.floor(size * 10 + 1e-9) if way == "narrower" else math.ceil(size * 10 - 1e-9)
    need = in_unit_of(max(tenths, 1) / 10, had)
    return Misfit(
        says=f"{head} {{{'does' if fault.startswith('not') else 'will'}|may}} {fault} {tail}",
        place=tip.place_of(field),
        found=spelled(had),
        needed=f"{'a hole' if field == 'hole' else 'room inside'} of {need} or {way}",
        remedies=_remedies(tip, field, need, way),
        margin=margin,
        also=(tip.place_of("covers"), *(strand.key.place for strand in join.strands)),
    )


def pressed(outside: float, inside: float, flat: float) -> float:
    """How wide a crimp is once it is closed, mm: as wide as before at `flat` 0, flattened at 1.

    Flattened, its wall lies double: half the way round the middle of the wall, and one wall more.
    Geometry, worked out for this project.

    >>> [round(pressed(outside=1.8, inside=1.3, flat=flat), 2) for flat in (0, 1)]
    [1.8, 2.68]
    """
    flattened = pi * (outside + inside) / 4 + (outside - inside) / 2
    return outside + flat * (flattened - outside)


def _lines(join: TipOnStrands, ask: Ask) -> Quantity:
    """Across all the lines that come in, side by side."""
    lines = {
        f"line{number}{'abcdefgh'[again]}": ask.of(strand, "line")
        for number, strand in enumerate(join.strands, 1)
        for again in range(min(strand.count("passes", default=1), 8))
    }
    return derived(
        "lines",
        "mm",
        circles.side_by_side,
        lines,
        source="circles in a circle, see `circles.py`",
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
    return derived(
        "crimp, pressed",
        "mm",
        pressed,
        outside=ask.of(crimp, "outside"),
        inside=ask.of(crimp, "inside"),
        flat=leaf("flat", 0.5, "", [spread], source="folded round to flattened: geometry"),
        source="geometry, worked out for this project",
    )


def _what(tip: Part, ask: Ask) -> str:
    if not tip.has("covers"):
        return "what is inside"
    covers = tip.text("covers")
    return f"crimp `{covers}`" if covers in ask.plan.parts else f"the {covers} knot"


def _remedies(tip: Part, field: str, need: str, way: str) -> tuple[Remedy, ...]:
    other = "a thinner line" if field == "hole" else "a smaller knot or crimp"
    by_hand = f"take a bead tip with {'a hole' if field == 'hole' else 'room'} of {need} or {way}"
    if way == "wider":
        edit = Edit(tip.place_of(field), need)
        named = "a hole" if field == "hole" else "room"
        return (
            Remedy(f"take a bead tip with {named} of {need} for `{tip.name}`", (edit,)),
            Remedy(f"{by_hand}, or {other}"),
        )
    bead = "or knot a seed bead in, and measure it with its knot"
    if tip.has("covers") and tip.text("covers") == "overhand":
        twice = Edit(tip.place_of("covers"), "double overhand")
        return (
            Remedy(f"tie a second overhand over it: `covers: {twice.new}`", (twice,)),
            Remedy(f"{by_hand}, {bead}"),
        )
    return (Remedy(f"{by_hand}, {bead}"),)


RULE = Rule(
    name="tip-cover",
    family="fit",
    subject=TipOnStrands,
    check=check,
    title=(
        "the line comes into a bead tip, and the knot or crimp there fits the cup and does not slip"
        " out through its hole"
    ),
    why=(
        "a knot on fine thread slips through a hole made for silk on the first evening it is worn,"
        " and one too thick keeps the cup from closing over it"
    ),
    sources=(
        "lines across a knot: trade table `knots`, from memory, at least as many as lie side by"
        " side",
        "a crimp folded round to flattened, lines side by side: geometry, worked out for this"
        " project",
    ),
    bad="hole: 1 mm, covers: overhand on a line of 0.3 mm",
    good="hole: 1 mm, covers: double overhand on a line of 0.5 mm",
)
