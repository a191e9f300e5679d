"""Embroidered cabochon: a stone sewn down on a backing, with rows of beads round it.

Rows lie flat, one round the other; the first is the base from which rounds of peyote rise as a
bezel. A row holds as many beads as its middle line is long: the way round the stone, and 2 pi for
every millimetre further out.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping

from msgspec.structs import replace

from wellstrung.common.money import PIECES
from wellstrung.derived.declared import (
    GEOMETRY,
    count,
    formula,
    hand,
    mass,
    of_each,
    same_as,
    size,
    written_or,
)
from wellstrung.formulas import stones, thread
from wellstrung.kinds.bezel import WOVEN_ROUND, strip
from wellstrung.kinds.stone import SIZES, of_stone
from wellstrung.model.beads import bead_rows
from wellstrung.model.item import Bead
from wellstrung.model.looks import Look
from wellstrung.model.parts import EyeField, Formula, Kind, Part, Role
from wellstrung.model.plan import Quantities
from wellstrung.quantity.arithmetic import derived, exact, times, total
from wellstrung.quantity.value import Quantity
from wellstrung.stitches import flat, making
from wellstrung_schemas import fragment

#: what of the backing stands out beyond the last row where the plan does not say, mm; foundation
#: left all round while it is sewn, mm; glue under stone and backing, mm: common practice, no source
SEAM, ROUND_ABOUT, GLUE = 0.5, 10.0, 0.1

_TENSION = hand("thread tension", flat.TENSION, cure="lay ten beads of {part} along its stone")


def _rows(part: Part, field: str) -> list[list[Bead]]:
    return [[part.beads[name] for name in row] for row in bead_rows(part, field)]


def _fattest(row: list[Bead], ask: Quantities) -> Quantity:
    return max((ask.of(bead, "outside") for bead in row), key=lambda size: size.middle)


def _rows_wide(part: Part, ask: Quantities) -> Quantity:
    wide = [_fattest(row, ask) for row in _rows(part, "beads")]
    return total(f"{part.name}.rows wide", "mm", wide)


def _seam(part: Part, ask: Quantities) -> Quantity:
    return part.size("seam") if part.has("seam") else exact("seam", SEAM, "mm")


def _in_row(part: Part, row: list[Bead], inner: list[Quantity], ask: Quantities) -> Quantity:
    """As many beads as fit on the middle line of a row that lies outside others."""
    wide = {f"row{number}": one for number, one in enumerate(inner, 1)}
    mean = {f"bead{number}": ask.of(bead, "length") for number, bead in enumerate(row, 1)}
    many = len(row)

    def fits(perimeter: float, own: float, tension: float, **others: float) -> float:
        away = sum(size for name, size in others.items() if name.startswith("row")) + own / 2
        length = sum(size for name, size in others.items() if name.startswith("bead")) / many
        return stones.outside_of(perimeter, away) / (length * tension)

    return derived(
        f"{part.name}.beads of row {len(inner) + 1}",
        "beads",
        fits,
        {**wide, **mean},
        perimeter=ask.of(part, "perimeter"),
        own=_fattest(row, ask),
        tension=_TENSION(part, ask),
        source="the way round its middle line over its beads",
    )


def _counts(part: Part, ask: Quantities) -> list[tuple[str, list[Bead], Quantity]]:
    """Every row and round with its beads: in which field it stands, and how many it takes."""
    rows, found = _rows(part, "beads"), list[tuple[str, list[Bead], Quantity]]()
    widths = [_fattest(row, ask) for row in rows]
    rounds = _rows(part, "bezel")
    for number, row in enumerate(rows):
        found.append(("beads", row, _in_row(part, row, widths[:number], ask)))
    if rounds:
        half = derived(
            f"{part.name}.beads of a round", "beads", lambda base: base / 2, base=found[0][2]
        )
        found += [("bezel", row, half) for row in rounds]
    if part.has("edge_row"):
        found.append(
            ("edge_row", [part.beads[part.text("edge_row")]], ask.of(part, "edging_beads"))
        )
    return found


#: so many rows are counted for the report; beyond, they are counted in all alone
_MOST_ROWS = 12


def _row_of(number: int) -> Formula:
    """The beads of one row, from the stone outwards."""

    def row(part: Part, ask: Quantities) -> Quantity:
        rows = [many for field, _, many in _counts(part, ask) if field == "beads"]
        if number > len(rows):
            raise part.missing("beads")
        return rows[number - 1]

    return row


def _edging(part: Part, ask: Quantities) -> Quantity:
    """Beads of the edging, side by side round the backing."""
    if not part.has("edge_row"):
        return exact(f"{part.name}.edging", 0, "beads")
    return derived(
        f"{part.name}.beads of the edging",
        "beads",
        lambda perimeter, away, seam, bead, tension: (
            stones.outside_of(perimeter, away + seam) / flat.side_by_side(bead, tension)
        ),
        perimeter=ask.of(part, "perimeter"),
        away=ask.of(part, "rows_wide"),
        seam=_seam(part, ask),
        bead=ask.of(part.beads[part.text("edge_row")], "outside"),
        tension=_TENSION(part, ask),
        source="the way round the backing over the width of a bead",
    )


def bead_counts(part: Part, ask: Quantities) -> dict[str, Quantity]:
    """How many of each bead one takes, by its name."""
    terms: dict[str, list[Quantity]] = {}
    for _, row, many in _counts(part, ask):
        for bead in row:
            share = derived(
                f"{bead.name} of {many.name}",
                PIECES,
                lambda n, k: n / k,
                n=many,
                k=exact("repeat", len(row)),
            )
            terms.setdefault(bead.name, []).append(share)
    return {name: total(f"{name} in {part.name}", PIECES, each) for name, each in terms.items()}


def _beads(part: Part, ask: Quantities) -> Quantity:
    return total(f"{part.name}.beads", "", [many for _, _, many in _counts(part, ask)])


def _mass(part: Part, ask: Quantities) -> Quantity:
    """Beads and stone, g; fabric and glue are left out, about a tenth of a gram a cm2."""
    counts = bead_counts(part, ask)
    weighs = of_each((part.beads[name] for name in counts), "per_gram", ask)
    each = [
        derived(
            f"{part.name}.mass of {name}",
            "g",
            lambda beads, per_gram: beads / per_gram,
            beads=many,
            per_gram=per_gram,
        )
        for (name, many), per_gram in zip(counts.items(), weighs, strict=True)
    ]
    return total(f"{part.name}.mass", "g", [*each, part.mass("stone", "mass")])


_PATHS: Mapping[str, Callable[..., float]] = {
    "beads": lambda bead_length, many, share: many * thread.backstitch(bead_length) * share,
    "bezel": lambda bead_length, bead_outside, many, share: (
        many * thread.peyote(bead_length, bead_outside) * share
    ),
    "edge_row": lambda bead_length, bead_outside, many, share: (
        many * thread.edging(bead_length, bead_outside) * share
    ),
}


def _thread(part: Part, ask: Quantities) -> Quantity:
    share, terms = making.thread_share()(part, ask), []
    for field, row, many in _counts(part, ask):
        sizes = {"bead_length": ask.of(row[0], "length")}
        if field != "beads":
            sizes["bead_outside"] = ask.of(row[0], "outside")
        called = f"{part.name}.thread of {many.name.removeprefix(f'{part.name}.')}"
        terms.append(
            derived(
                called,
                "mm",
                _PATHS[field],
                {**sizes, "many": many, "share": share},
                source="counted passes, worked out for this project",
            )
        )
    return total(f"{part.name}.thread", "mm", terms)


def _backing(what: str) -> Formula:
    """The finished backing along the stone or across it: rows on either side, and the seam."""
    return formula(
        f"backing {what}",
        "mm",
        lambda stone, rows, seam: stone + 2 * (rows + seam),
        stone="stone" if what == "length" else "stone.width",
        rows="rows_wide",
        seam=_seam,
        source=GEOMETRY,
    )


def _over_all(backing: str) -> Formula:
    """Over all: the backing, and the beads of its edging as long as they stand out."""

    def found(part: Part, ask: Quantities) -> Quantity:
        if not part.has("edge_row"):
            return ask.of(part, backing)
        out = times(ask.of(part.beads[part.text("edge_row")], "length"), 2)
        called = f"{part.name}.over all {backing.removeprefix('backing_')}"
        return total(called, "mm", [ask.of(part, backing), out])

    return found


def _foundation(backing: str) -> Formula:
    return formula(
        f"{backing.replace('backing_', 'foundation ')}",
        "mm",
        lambda backing, round_about: backing + 2 * round_about,
        backing=backing,
        round_about=count("left round it", lambda part: ROUND_ABOUT, "common practice, no source"),
    )


def _glue(on: str) -> Formula:
    """A film of glue, ml: under the stone, on its foundation; between foundation and backing."""

    def found(part: Part, ask: Quantities) -> Quantity:
        film = exact("layer of glue", GLUE, "mm", "common practice, no source")
        name, area = f"{part.name}.glue on {on}", ask.of(part, "area")
        if on == "foundation":
            return derived(name, "ml", _under_stone, area=area, thick=film, source=GEOMETRY)
        return derived(
            name,
            "ml",
            lambda area, perimeter, rows, seam, thick: (
                stones.area_outside(area, perimeter, rows + seam) * thick / 1000
            ),
            area=area,
            perimeter=ask.of(part, "perimeter"),
            rows=ask.of(part, "rows_wide"),
            seam=_seam(part, ask),
            thick=film,
            source=GEOMETRY,
        )

    return found


def _under_stone(area: float, thick: float) -> float:
    return area * thick / 1000


def _glue_in_all(part: Part, ask: Quantities) -> Quantity:
    """Glue under the stone, and between foundation and backing, ml."""
    both = [ask.of(part, "glue_on_foundation"), ask.of(part, "glue_on_backing")]
    return total(f"{part.name}.glue", "ml", both)


def _rise(part: Part, ask: Quantities) -> Quantity:
    """How high the bezel stands over the foundation: its base row and the rounds above it."""
    base, *rounds = [_rows(part, "beads")[0], *_rows(part, "bezel")]
    beads = {f"bead{number}": _fattest(row, ask) for number, row in enumerate((base, *rounds), 1)}
    return derived(
        f"{part.name}.rise",
        "mm",
        lambda tension, **outsides: strip(tuple(outsides.values()), tension),
        {"tension": _TENSION(part, ask), **beads},
        source="rounds of peyote rise half a bead: geometry",
    )


CABOCHON = Kind(
    "embroidered cabochon",
    fragment("embroidered cabochon"),
    Role.WOVEN,
    traits=replace(WOVEN_ROUND, glued_on=("foundation", "backing")),
    eyes={
        "top_eyes": EyeField(("top_eyes",), several=True),
        "bottom_eyes": EyeField(("bottom_eyes",), several=True, carries=True),
    },
    quantities={
        **SIZES,
        "area": of_stone("area", "mm2", stones.AREAS),
        "rows_wide": _rows_wide,
        "base": lambda part, ask: _counts(part, ask)[0][2],
        "edging_beads": _edging,
        **{f"row_{number}": _row_of(number) for number in range(1, _MOST_ROWS + 1)},
        "beads": _beads,
        "backing_length": _backing("length"),
        "backing_width": _backing("width"),
        "foundation_length": _foundation("backing_length"),
        "foundation_width": _foundation("backing_width"),
        "along": _over_all("backing_length"),
        "width": _over_all("backing_width"),
        "outside": same_as("width"),
        "thread": _thread,
        "glue_on_foundation": _glue("foundation"),
        "glue_on_backing": _glue("backing"),
        "glue": _glue_in_all,
        "rise": _rise,
        "stone.edge": size("stone", "edge", allowance="stone size"),
        "stone.thickness": size("stone", "thickness", allowance="stone size"),
        "mass": written_or(mass("mass"), ("measured", "mass"), otherwise=_mass),
    },
    look=Look("cabochon", label=(("width", "wide"),)),
    passes=4,  # twice as it is sewn on, once round the row, once for what is joined to it
    bead_counts=bead_counts,
)
