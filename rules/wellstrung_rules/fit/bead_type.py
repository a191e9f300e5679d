"""The type of a bead, where the word for it may mean several."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Missing, PaletteBead, Rule
from wellstrung.rulebook.wording import either


def check(palette: PaletteBead, ask: Ask) -> Answer:
    family = palette.bead.family
    if family is not None and family.text("either"):
        which = either(f"`{kind}`" for kind in family.text("either").split(", "))
        raise Missing(f"`type` of `{palette.bead.name}`, since `{family.name}` may be {which}")
    return None  # its word names one type


RULE = Rule(
    name="bead-type",
    family="fit",
    subject=PaletteBead,
    check=check,
    fault="beads of an unclear type",
    title="the word for a bead names one type; until it does, its hole and weight may be any's",
    why="a glass pearl of 6 mm takes cord of 0.8 mm, a freshwater pearl of 6 mm often only 0.4 mm",
    sources=(
        "freshwater pearls are drilled finer than the holes of glass pearls: trade table"
        " `other_beads`",
        "`pearl` alone is used for both: common practice, no source",
    ),
    good="pearl: 6 mm glass pearl, cream",
    level="caution",
)
