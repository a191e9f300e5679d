"""Beaded braid on 8 warps: each warp carries beads for half of the finished length.

The share is printed (see `BEADED.held_against`); the outside is geometry worked out for this
project: a bead on either side of the eight cords, and one more cord where they cross.
"""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung import tables
from wellstrung.common.places import Place
from wellstrung.formulas.circles import equal_ratio
from wellstrung.model.parts import Part, Quantities, Stitch
from wellstrung.quantity.arithmetic import derived, product
from wellstrung.quantity.value import Quantity
from wellstrung.stitches import making
from wellstrung.stitches.making import GEOMETRY


def strung(length: float, share: float = 0.5) -> float:
    """Beads to string on each warp, mm, for a finished length: half of it.

    20 in of braid takes 10 in on each of 8 warps: trade table `stitch_facts`, one page.

    >>> strung(508.0)
    254.0
    """
    return length * share


def beads(strung: float, warps: float, bead_length: float) -> float:
    """How many beads lie on all the warps (counting).

    >>> beads(strung=254.0, warps=8, bead_length=2.0)
    1016.0
    """
    return warps * strung / bead_length


def outside(bead_outside: float, cord: float, loose: float = 1.0) -> float:
    """Outside diameter, mm: a bead on either side of eight packed cords and of one that crosses.

    Geometry, worked out for this project; for 11/0, 8/0 and 6/0 it gives 6.2, 8.6 and 11.6 mm where
    6.5, 8.7 and 11.5 were noted from memory.

    >>> round(outside(2.1, 0.467), 2)
    6.21
    """
    return loose * (2 * bead_outside + (equal_ratio(8) + 1) * cord)


WARPS = 8
#: Half of the length is on the warps; how evenly depends on the pull: ± 8 %, no print of it.
_SHARE = (0.46, 0.5, 0.54)
#: How loosely the beads ride: 10 % either way, as the diameters from memory have it.
_LOOSE = (0.9, 1.0, 1.1)
#: What the cords add to the mass of the beads: up to a tenth, worked out from nylon in half a hole.
_CORDS = (1.0, 1.05, 1.1)


def warps_of(part: Part) -> int:
    """Warps of a braid: eight where it does not say."""
    return part.count("warps", default=WARPS)


def refuses(part: Part) -> Iterator[tuple[str, Place]]:
    """Eight warps, and beads to string on them."""
    yield from making.lacking(part, "beads")
    if warps_of(part) != WARPS:
        yield (
            f"`{part.name}` has {part.count('warps')} warps, and this braid has {WARPS}: write"
            f" `warps: {WARPS}`",
            part.place_of("warps"),
        )


def cord_of(part: Part, ask: Quantities) -> Quantity:
    """The cord's thickness: as the plan says, or what fills the bead's hole as print advises."""
    if part.has("cord", "outside"):
        return part.length("cord", "outside")
    advised = tables.load("stitch_facts").row("cord in a beaded braid, part of the hole")
    cell = advised.cell("figure")
    return product(
        f"{part.name}.cord outside",
        "mm",
        making.bead(part, ask, "hole"),
        making.hand(
            part,
            "how much of the hole the cord fills",
            cell.low,
            cell.value,
            cell.high,
            source=f"trade tables, stitch_facts, {advised.name}: {cell.grade}",
            cure=f"write `cord: {{outside: ...}}` in `{part.name}`",
        ),
    )


def _outside(part: Part, ask: Quantities) -> Quantity:
    return derived(
        f"{part.name}.outside",
        "mm",
        outside,
        bead_outside=making.bead(part, ask, "outside"),
        cord=cord_of(part, ask),
        loose=making.hand(
            part,
            "how loosely the beads ride",
            *_LOOSE,
            source=GEOMETRY,
            cure=making.swatch(part, "braid"),
        ),
        source=f"a bead on either side of eight packed cords and one that crosses, {GEOMETRY}",
    )


def _strung(part: Part, ask: Quantities) -> Quantity:
    return derived(
        f"{part.name}.strung",
        "mm",
        strung,
        length=ask.of(part, "length"),
        share=making.hand(
            part,
            "the pull on the warps",
            *_SHARE,
            source="strung on each warp : finished = 1 : 2, trade table `stitch_facts`, ± 8 %",
            cure=f"braid 5 cm of `{part.name}` and count the beads it took",
        ),
    )


def _beads(part: Part, ask: Quantities) -> Quantity:
    return derived(
        f"{part.name}.beads",
        "",
        beads,
        strung=ask.of(part, "strung"),
        warps=making.count(part, "warps", warps_of(part)),
        bead_length=making.bead(part, ask, "length"),
        source="counting",
    )


def _mass(part: Part, ask: Quantities) -> Quantity:
    beads = making.mass(part, ask)
    if part.has("measured", "mass"):
        return beads
    return product(
        f"{part.name}.mass with its cords",
        "g",
        beads,
        making.hand(
            part,
            "the mass of the cords",
            *_CORDS,
            source=f"up to a tenth of the beads, {GEOMETRY}",
            cure=f"weigh it and write `measured: {{mass: ...}}` in `{part.name}`",
        ),
    )


def length_of(part: Part, ask: Quantities) -> Quantity:
    """The braided length, without the nubs."""
    return part.length("length", allowance="woven length")


def cord_each(part: Part, ask: Quantities) -> Quantity:
    """Cord to cut for each warp, mm: about three times the finished length."""
    row = tables.load("stitch_facts").row("plain braid of 8 cords, cord per finished length")
    cell = row.cell("figure")
    return product(
        f"{part.name}.cord",
        "mm",
        ask.of(part, "length"),
        making.hand(
            part,
            "cord to the length",
            cell.value - _CORD_EITHER_WAY,
            cell.value,
            cell.value + _CORD_EITHER_WAY,
            source=f"trade tables, stitch_facts, {row.name}: {cell.grade}",
            grade=cell.grade,
            cure=f"note the cord that 10 cm of `{part.name}` takes",
        ),
    )


#: Eight cords of 60 in for a necklace are 2.5 to 3.5 times the length of one of 17 to 24 in.
_CORD_EITHER_WAY = 0.5


def cord_in_all(part: Part, ask: Quantities) -> Quantity:
    """Cord for all the warps, mm."""
    return product(
        f"{part.name}.cord in all",
        "mm",
        making.count(part, "warps", warps_of(part)),
        ask.of(part, "cord"),
    )


def nub_outside(part: Part, ask: Quantities) -> Quantity:
    """The bare end that a cap takes, mm: as the plan says, or the warps' cords bound together."""
    if part.has("nub", "outside"):
        return part.length("nub", "outside")
    warps = warps_of(part)
    return derived(
        f"{part.name}.nub outside",
        "mm",
        lambda cord, bound: cord * equal_ratio(warps) * bound,
        cord=cord_of(part, ask),
        bound=making.hand(
            part,
            "how tightly the nub is bound",
            *_BOUND,
            source=f"{warps} cords packed, ± 15 %, {GEOMETRY}",
            cure=f"bind an end, measure it, write `nub: {{outside: ...}}` in `{part.name}`",
        ),
        source="circles in a circle, best-known ratios (Graham et al. 1998)",
    )


#: Whipping squeezes the cords, crossings and glue swell them: no print of how much.
_BOUND = (0.85, 1.0, 1.15)


def nub_length(part: Part, ask: Quantities) -> Quantity:
    """How much of the end is bare, mm: as the plan says."""
    return part.length("nub", "length")


NUB = {"nub.outside": nub_outside, "nub.length": nub_length}

BEADED = Stitch(
    name="8-warp beaded braid",
    quantities={
        "outside": making.measurable("outside", _outside),
        "length": length_of,
        "strung": _strung,
        "beads": _beads,
        "mass": _mass,
        "cord": cord_each,
        "cord_in_all": cord_in_all,
        **NUB,
    },
    refuses=refuses,
    held_against="20 in of braid takes 10 in strung on each of 8 warps, 80 in in all: `Tip #6: how"
    " many tubes of seed beads`, copy seen; of the outside no published figure",
    makes="braid",
    passes=0,
)
