"""Plain round braid: cords without beads, packed as round things pack."""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung.common.places import Place
from wellstrung.derived.declared import (
    FITTED,
    formula,
    hand,
    measurable,
    same_as,
    size,
    written_or,
)
from wellstrung.formulas.circles import equal_ratio
from wellstrung.model.looks import Braided
from wellstrung.model.parts import Part, Stitch
from wellstrung.model.plan import Quantities
from wellstrung.quantity.value import Quantity
from wellstrung.stitches import making
from wellstrung.stitches.beaded_braid import CORD, warps_of


def outside(cord: float, warps: int, pulled: float = 1.0) -> float:
    """Outside diameter, mm, of a braid of `warps` round cords: the smallest circle that holds them.

    Geometry, worked out for this project, on the best-known ratios for equal circles; soft cord
    pulls tighter, cords that cross stand off. ValueError above twenty warps.

    >>> round(outside(2.0, 8), 2)
    6.61
    """
    return pulled * cord * equal_ratio(warps)


#: Soft cord flattens under the pull, cords that cross stand off: 15 % either way, no print.
_PULLED = (0.85, 1.0, 1.15)
_FEWEST, _MOST = 4, 20


def refuses(part: Part) -> Iterator[tuple[str, Place]]:
    """Cords of a known thickness, as many as there are ratios for, and no beads."""
    if not part.has("cord", "outside"):
        yield (
            f"`{part.name}` does not say how thick its cord is: write `cord: {{outside: 2 mm}}`",
            part.place_of("cord"),
        )
    yield from making.unwanted(
        part, ("beads",), "a plain braid has none", "`stitch: 8-warp beaded braid`"
    )
    warps = warps_of(part)
    if not _FEWEST <= warps <= _MOST:
        yield (
            f"`{part.name}` has {warps} warps, and a plain braid here has {_FEWEST} to {_MOST}:"
            f" write `warps: {min(max(warps, _FEWEST), _MOST)}`, or another kind of part",
            part.place_of("warps"),
        )


def _outside(part: Part, ask: Quantities) -> Quantity:
    warps = warps_of(part)
    size_of = formula(
        "outside",
        "mm",
        lambda cord, pulled: outside(cord, warps, pulled),
        cord=size("cord", "outside"),
        pulled=hand(
            "how hard the braid is pulled",
            _PULLED,
            source=f"{warps} cords packed, ± 15 %, {FITTED}",
            cure=making.swatch("braid"),
        ),
        source="circles in a circle, best-known ratios (Graham et al. 1998)",
    )
    return size_of(part, ask)


def _mass(part: Part, ask: Quantities) -> Quantity:
    """As it was weighed: what cord weighs by the metre no table here says."""
    if part.has("measured", "mass"):
        return part.mass("mass")
    raise part.missing("measured", "mass")


PLAIN_BRAID = Stitch(
    name="plain braid",
    quantities={
        "outside": measurable("outside", _outside),
        "mass": _mass,
        **CORD,
        "nub.outside": written_or(
            size("nub", "outside"), ("nub", "outside"), otherwise=same_as("outside")
        ),
    },
    refuses=refuses,
    held_against="no published figure of an outside; eight cords of 60 in make a necklace"
    " (`Kumihimo instructions for blind braiders`), which three times its length allows",
    makes="braid",
    passes=0,
    bare=True,
    look=Braided(warps_of),
)
