"""Beaded braid on 8 warps or more: each warp carries beads for half of the finished length.

The share is printed for 8 (see `BEADED.held_against`), and held for others, since half of the warps
lie outside at a time whatever their number. The outside is geometry worked out for this project: a
bead on either side of the cords, and one more cord where they cross; of many warps as wide as their
beads side by side in a ring.
"""

from __future__ import annotations

import math
from collections.abc import Iterator

from msgspec.structs import replace

from wellstrung import tables
from wellstrung.common.places import Place
from wellstrung.derived.declared import (
    FITTED,
    GEOMETRY,
    count,
    formula,
    hand,
    measurable,
    product,
    size,
    written_or,
)
from wellstrung.formulas.arithmetic import most
from wellstrung.formulas.circles import equal_ratio
from wellstrung.model.looks import Face, Pattern, Thread, Weave
from wellstrung.model.parts import Formula, Part, Stitch
from wellstrung.model.plan import Quantities
from wellstrung.quantity.value import Quantity
from wellstrung.stitches import making


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


def outside_of_many(
    bead_outside: float, cord: float, packed: float, ring: float, loose: float = 1.0
) -> float:
    """Outside diameter, mm, of a braid of other counts: on its packed cords, or a ring of beads.

    `packed` is how many cords wide its cords lie, `ring` how many beads wide is the ring on which
    the middles of half as many beads as warps lie, each touching the next. Geometry, worked out for
    this project.

    >>> round(outside_of_many(2.1, 0.467, packed=4.615, ring=2.613), 2)
    7.59
    """
    return loose * most(2 * bead_outside + (packed + 1) * cord, bead_outside * (1 + ring))


WARPS = 8
#: Round beaded braids take warps in fours (`Kumihimo fun`, excerpt seen: 8 or more, any multiple
#: of 4); as many as there are ratios for circles packed.
_MANY = (8, 12, 16, 20)
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
            f" `warps: {WARPS}`, or `stitch: beaded braid`",
            part.place_of("warps"),
        )


def refuses_many(part: Part) -> Iterator[tuple[str, Place]]:
    """Warps in fours, from 8 to 20, and beads to string on them."""
    yield from making.lacking(part, "beads")
    warps = warps_of(part)
    if warps not in _MANY:
        near = " or ".join(f"`warps: {n}`" for n in sorted(_MANY, key=lambda n: abs(n - warps))[:2])
        yield (
            f"`{part.name}` has {warps} warps, and a round beaded braid takes them in fours, from"
            f" {_MANY[0]} to {_MANY[-1]}: write {near}",
            part.place_of("warps"),
        )


WARPS_OF = count("warps", warps_of)


def _filled(part: Part, ask: Quantities) -> Quantity:
    row = tables.load("stitch_facts").row("cord in a beaded braid, part of the hole")
    cell = row.cell("figure")
    share = hand(
        "how much of the hole the cord fills",
        (cell.low, cell.value, cell.high),
        source=f"trade tables, stitch_facts, {row.name}: {cell.grade}",
        cure="write `cord: {outside: ...}` in {part}",
    )
    return share(part, ask)


#: the cord's thickness: as the plan says, or what fills the bead's hole as print advises
_CORD = written_or(
    size("cord", "outside"),
    ("cord", "outside"),
    otherwise=product("cord outside", "mm", making.bead("hole"), _filled),
)
_loose = hand("how loosely the beads ride", _LOOSE, cure=making.swatch("braid"))
_ON_EIGHT = formula(
    "outside",
    "mm",
    outside,
    bead_outside=making.bead("outside"),
    cord=_CORD,
    loose=_loose,
    source=f"a bead on either side of eight packed cords and one that crosses, {GEOMETRY}",
)
_ON_MANY = formula(
    "outside",
    "mm",
    outside_of_many,
    bead_outside=making.bead("outside"),
    cord=_CORD,
    packed=count("cords packed", lambda part: equal_ratio(warps_of(part))),
    ring=count("ring of beads", lambda part: 1 / math.sin(math.tau / warps_of(part))),
    loose=_loose,
    source=f"beads on its packed cords, or half as many as warps in a ring, {GEOMETRY}",
)


def _outside(part: Part, ask: Quantities) -> Quantity:
    return (_ON_EIGHT if warps_of(part) == WARPS else _ON_MANY)(part, ask)


_WITH_CORDS = product(
    "mass with its cords",
    "g",
    making.mass,
    hand(
        "the mass of the cords",
        _CORDS,
        source=f"up to a tenth of the beads, {FITTED}",
        cure="weigh it and write `measured: {mass: ...}` in {part}",
    ),
)


def _cord_to_length(part: Part, ask: Quantities) -> Quantity:
    row = tables.load("stitch_facts").row("plain braid of 8 cords, cord per finished length")
    cell = row.cell("figure")
    share = hand(
        "cord to the length",
        (cell.value - _CORD_EITHER_WAY, cell.value, cell.value + _CORD_EITHER_WAY),
        source=f"trade tables, stitch_facts, {row.name}: {cell.grade}",
        grade=cell.grade,
        cure="note the cord that 10 cm of {part} takes",
    )
    return share(part, ask)


#: Eight cords of 60 in for a necklace are 2.5 to 3.5 times the length of one of 17 to 24 in.
_CORD_EITHER_WAY = 0.5
#: Whipping squeezes the cords, crossings and glue swell them: no print of how much.
_BOUND = (0.85, 1.0, 1.15)


def _packed(part: Part) -> float:
    """How many cords wide the warps lie, packed as round things pack."""
    return equal_ratio(warps_of(part))


#: what braids of cord have in common: their length without the nubs, and their cord
CORD: dict[str, Formula] = {
    "length": making.WOVEN_LENGTH,
    # to cut for each warp: about three times the finished length
    "cord": product("cord", "mm", "length", _cord_to_length),
    "cord_in_all": product("cord in all", "mm", WARPS_OF, "cord"),
    "nub.length": size("nub", "length"),
}


def _face(part: Part) -> Face:
    """Half the warps lie on the outside at a time, and half of those in front."""
    return Face(max(warps_of(part) // 4, 1))


BEADED = Stitch(
    name="8-warp beaded braid",
    quantities={
        "outside": measurable("outside", _outside),
        "strung": formula(
            "strung",
            "mm",
            strung,
            length="length",
            share=hand(
                "the pull on the warps",
                _SHARE,
                source="strung on each warp : finished = 1 : 2, trade table `stitch_facts`, ± 8 %",
                cure="braid 5 cm of {part} and count the beads it took",
            ),
        ),
        "beads": formula(
            "beads",
            "",
            beads,
            strung="strung",
            warps=WARPS_OF,
            bead_length=making.bead("length"),
            source="counting",
        ),
        "mass": written_or(making.mass, ("measured", "mass"), otherwise=_WITH_CORDS),
        **CORD,
        # the bare end that a cap takes: as the plan says, or the warps' cords bound together
        "nub.outside": written_or(
            size("nub", "outside"),
            ("nub", "outside"),
            otherwise=formula(
                "nub outside",
                "mm",
                lambda cord, packed, bound: cord * packed * bound,
                cord=_CORD,
                packed=count("cords packed", _packed),
                bound=hand(
                    "how tightly the nub is bound",
                    _BOUND,
                    source=f"cords packed, ± 15 %, {FITTED}",
                    cure="bind an end, measure it, write `nub: {outside: ...}` in {part}",
                ),
                source="circles in a circle, best-known ratios (Graham et al. 1998)",
            ),
        ),
    },
    refuses=refuses,
    held_against="20 in of braid takes 10 in strung on each of 8 warps, 80 in in all: `Tip #6: how"
    " many tubes of seed beads`, copy seen; of the outside no published figure",
    makes="braid",
    passes=0,
    # the beads lie as the cords cross, half way between along and across: from memory
    look=Weave(Pattern.STEPS, _face, is_round=True, leans=(45.0,), thread=Thread.CORDS),
)

#: the same of any count of warps: no print of their outside or of what they take
BEADED_OF_MANY = replace(
    BEADED,
    name="beaded braid",
    refuses=refuses_many,
    held_against="no published figure of 12 warps or more; on 8 it is `8-warp beaded braid`",
)
