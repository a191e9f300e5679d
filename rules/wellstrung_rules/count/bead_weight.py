"""A bead's count a gram against what its own sizes weigh in glass."""

from __future__ import annotations

from wellstrung.formulas import beads
from wellstrung.formulas.arithmetic import either
from wellstrung.rulebook import Answer, Ask, Misfit, PaletteBead, Remedy, Rule, kept
from wellstrung.rulebook.plan import Bead, Place
from wellstrung.rulebook.values import Quantity, derived, exact, table
from wellstrung.rulebook.wording import number


def check(palette: PaletteBead, ask: Ask) -> Answer:
    bead = palette.bead
    stated = [what for what in _SIZES if bead.has(what) or bead.has("measured", what)]
    if bead.own_sizes or not stated:
        return None
    counted, weighed = ask.of(bead, "per_gram"), _weighed(bead, ask)
    row = table("bead_packing").row("bead weighed by its volume")
    low = _margin("least", counted, weighed, row.cell("least").value, sign=1)
    high = _margin("most", counted, weighed, row.cell("most").value, sign=-1)
    margin = min(low, high, key=lambda side: side.middle)
    if answer := kept(margin):
        return answer
    return Misfit(
        says=(
            f"bead `{bead.name}` counts {number(counted.middle)} a gram, but glass of its size"
            f" would count {number(weighed.middle)}: its {_listed(stated)} {{cannot|may not}} all"
            " be right"
        ),
        place=_place(bead, stated[-1]),
        found=f"{number(counted.middle)} a gram",
        needed=f"{number(weighed.middle * row.cell('least').value)}.."
        f"{number(weighed.middle * row.cell('most').value)} a gram",
        remedies=(Remedy(f"weigh and measure twenty of `{bead.name}`, and mend what is off"),),
        margin=margin,
        also=tuple(_place(bead, what) for what in stated[:-1]),
    )


_SIZES = ("outside", "length", "hole", "per_gram")


def _weighed(bead: Bead, ask: Ask) -> Quantity:
    row = table("bead_packing").row("bead weighed by its volume")
    filled = 1.0 if bead.cylinder else row.cell("glass").value
    return derived(
        "beads a gram by size",
        "",
        weighed,
        outside=ask.of(bead, "outside"),
        hole=ask.of(bead, "hole"),
        length=ask.of(bead, "length"),
        filled=exact("filled", filled),
        source="glass of 2.5 g/cm3, rounded edges: trade table `bead_packing`",
    )


def weighed(outside: float, hole: float, length: float, filled: float) -> float:
    """Beads a gram by size; 0 where the hole leaves no glass to weigh.

    Geometry: a cylinder less its hole, times the density of glass.

    >>> weighed(outside=1.0, hole=1.2, length=1.0, filled=1.0)
    0
    """
    return either(hole >= outside, 0, lambda: beads.by_size(outside, hole, length, filled))


def _margin(
    name: str, counted: Quantity, weighed: Quantity, limit: float, *, sign: int
) -> Quantity:
    return derived(
        f"room to the {name} a gram",
        "",
        lambda counted, weighed, limit: sign * (counted - weighed * limit),
        counted=counted,
        weighed=weighed,
        limit=exact(f"{name} share", limit),
    )


def _place(bead: Bead, what: str) -> Place:
    return bead.place_of("measured", what) if bead.has("measured", what) else bead.place_of(what)


def _listed(stated: list[str]) -> str:
    words = [f"`{what}`" for what in stated]
    if len(words) < len(_SIZES):
        return f"{', '.join(words)} and what the tables have for the rest"
    return f"{', '.join(words[:-1])} and {words[-1]}"


RULE = Rule(
    name="bead-weight",
    family="count",
    subject=PaletteBead,
    check=check,
    title="a bead's sizes and its count a gram agree with the weight of glass",
    why=(
        "packs are sold by the gram and work is counted in beads: one slip in size or count, and"
        " the packs run out in the last row"
    ),
    sources=(
        "mass = 0.85 x pi/4 (outside^2 - hole^2) x length x 2.5 mg/mm3, x 0.7 to x 1.4: trade table"
        " `bead_packing`, fits printed counts within 15 %",
    ),
    bad="{type: round, size: 11/0, make: Japanese, per_gram: 35}",
    good="{type: round, size: 11/0, make: Japanese, per_gram: 110}",
)
