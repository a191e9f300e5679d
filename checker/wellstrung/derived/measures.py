"""Which quantities each kind of part, a bead and the piece can have, with their units.

A bench sets limits of its own by these names, before any plan is read.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from wellstrung.derived import amounts, bead_sizes, line_and_needle
from wellstrung.derived.embellished import GIVES
from wellstrung.derived.eyes import OF_EYE
from wellstrung.derived.of_plan import PIECE, Brought, PieceQuantity
from wellstrung.derived.piece import OF_PIECE
from wellstrung.model.parts import Kind, Part, Stitch

#: what stands for every bead of the palette
BEAD = "bead"
#: units by the last word of a name; all else is a length in mm
_UNITS: Mapping[str, tuple[str, ...]] = {
    "g": ("mass",),
    "N": ("breaking",),
    "min": ("usable", "mixing", "handling", "full_cure"),
    "": (
        "beads", "core_beads", "outer_beads", "links", "links_per_piece", "lost", "pieces_had",
        "rounds", "rows", "rings", "room_for", "opened", "points", "warps", "picots", "covered",
        "per_gram", "spare", "packs_wanted",
    ),
    "beads": (
        "around_least", "around_most", "around_behind", "edge_beads", "edging_beads", "base",
        "last_round",
        *(f"row_{number}" for number in range(1, 13)),
    ),
    "mm2": ("area",),
    "ml": ("glue", "glue_on_foundation", "glue_on_backing"),
}  # fmt: skip
#: amounts have the unit of what is sold
_BY_THE_PART = ("needed", "on_hand", "knot")
Units = Mapping[str, str | None]


def measures(
    kinds: Mapping[str, Kind], stitches: Mapping[str, Stitch], brought: Iterable[Brought]
) -> Mapping[str, Units]:
    """The unit of each quantity by whose it is; None where it differs from part to part."""
    of_piece = {one.name: one.unit for one in brought if isinstance(one, PieceQuantity)}
    of_beads = {what: unit_of(what) or "" for what in (*bead_sizes.OF_BEAD, *amounts.OF_BEAD)}
    return {
        PIECE: {**{what: unit_of(what) for what in OF_PIECE}, **of_piece},
        BEAD: of_beads,
        **{
            name: {what: unit_of(what) for what in _of_kind(kind, stitches)}
            for name, kind in kinds.items()
        },
    }


def _of_kind(kind: Kind, stitches: Mapping[str, Stitch]) -> Iterable[str]:
    fields = kind.fragment.get("properties", {})
    assert isinstance(fields, Mapping)
    yield from kind.quantities
    if "stitch" in fields:
        yield from (what for stitch in stitches.values() for what in stitch.quantities)
    for field, names in GIVES.items():
        if field in fields:
            yield from names
    yield from (f"{eye}.{what}" for eye in kind.eyes for what in OF_EYE)
    if "thread" in fields:
        yield from (*line_and_needle.OF_PART, *amounts.OF_PART)


def has(part: Part, what: str) -> bool:
    """Whether a part can have a quantity: by its kind, its stitch, its eyes or its thread."""
    stitches = {"": part.stitch} if part.stitch is not None else {}
    return what in _of_kind(part.kind, stitches)


def unit_of(what: str) -> str | None:
    """The unit of a quantity; None where it differs from part to part.

    >>> unit_of("mass"), unit_of("eye.hole"), unit_of("rounds"), unit_of("needed")
    ('g', 'mm', '', None)
    """
    last = what.rpartition(".")[2]
    if last in _BY_THE_PART:
        return None
    return next((unit for unit, names in _UNITS.items() if last in names), "mm")
