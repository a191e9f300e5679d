"""A bead's count a gram against the weight of glass of its own sizes."""

from __future__ import annotations

from wellstrung.formulas import beads
from wellstrung.formulas.arithmetic import either
from wellstrung.rulebook import Answer, Ask, Misfit, PaletteBead, Remedy, Rule, kept
from wellstrung.rulebook.plan import Bead, Place
from wellstrung.rulebook.values import Quantity, derived, exact, leaf, product, table
from wellstrung.rulebook.wording import number, together


def check(palette: PaletteBead, ask: Ask) -> Answer:
    bead = palette.bead
    stated = [what for what in _SIZES if bead.has(what) or bead.has("measured", what)]
    if not bead.seed or not stated:
        return None
    row = table("bead_packing").row("bead weighed by its volume")
    counted, outside, hole, length = (
        _value(ask.of(bead, what), what in stated) for what in ("per_gram", *_MEASURES)
    )
    by_size = derived(
        "beads a gram by size",
        "",
        weighed,
        outside=outside,
        hole=hole,
        length=length,
        filled=exact("filled", 1.0 if bead.cylinder else row.cell("glass").value),
        source="glass of 2.5 g/cm3, rounded edges: trade table `bead_packing`",
    )
    least, most = (
        product(f"{share} a gram", "", by_size, exact(f"{share} share", row.cell(share).value))
        for share in ("least", "most")
    )
    margin = min(counted - least, most - counted, key=lambda side: side.middle)
    if answer := kept(margin):
        return answer
    sizes = [f"`{what}`" for what in stated]
    if len(sizes) < len(_SIZES):
        sizes.append("the tables' values for the rest")
    return Misfit(
        says=f"bead `{bead.name}` has {number(counted.middle)} beads a gram, but glass beads of its"
        f" size have {number(by_size.middle)}: its {together(sizes)} {{cannot|may not}} all be"
        " right",
        place=_place(bead, stated[-1]),
        found=f"{number(counted.middle)} a gram",
        needed=f"{number(least.middle)}..{number(most.middle)} a gram",
        remedies=(Remedy(f"weigh and measure twenty of `{bead.name}`, and correct what is off"),),
        margin=margin,
        also=tuple(_place(bead, what) for what in stated[:-1]),
    )


_MEASURES = ("outside", "hole", "length")
_SIZES = ("outside", "length", "hole", "per_gram")


def _value(value: Quantity, stated: bool) -> Quantity:
    """As the plan has it; a table's without its range, which the limits of a slip make up for."""
    if stated:
        return value
    return leaf(value.name, value.middle, value.unit, source=value.source, grade=value.grade)


def weighed(outside: float, hole: float, length: float, filled: float) -> float:
    """Beads a gram by size; 0 where the hole leaves no glass to weigh.

    Geometry: a cylinder less its hole, times the density of glass.

    >>> weighed(outside=1.0, hole=1.2, length=1.0, filled=1.0)
    0
    """
    return either(hole >= outside, 0, lambda: beads.by_size(outside, hole, length, filled))


def _place(bead: Bead, what: str) -> Place:
    return bead.place_of("measured", what) if bead.has("measured", what) else bead.place_of(what)


RULE = Rule(
    name="bead-weight",
    family="count",
    subject=PaletteBead,
    check=check,
    fault="bead size and weight disagree",
    title="a bead's sizes and its count a gram agree with the weight of glass",
    why=(
        "packs are sold by the gram and work is counted in beads: one slip in size or count, and"
        " the packs run out in the last row"
    ),
    sources=(
        "mass = 0.85 x pi/4 (outside^2 - hole^2) x length x 2.5 mg/mm3, x 0.7 to x 1.4: trade table"
        " `bead_packing`, fits printed counts within a fifth, Czech 13/0 within a quarter",
    ),
    bad="{type: round, size: 11/0, make: Japanese, per_gram: 35}",
    good="{type: round, size: 11/0, make: Japanese, per_gram: 110}",
)
