"""Adhesive: how long it is usable and cures, what gap it bridges, as its pack or the table says."""

from __future__ import annotations

from wellstrung import tables
from wellstrung.derived import amounts
from wellstrung.derived.declared import from_table
from wellstrung.formulas import glue
from wellstrung.model.parts import Formula, Kind, Part, Role
from wellstrung.model.plan import Quantities
from wellstrung.quantity.arithmetic import derived, exact, leaf
from wellstrung.quantity.causes import Cause
from wellstrung.quantity.value import Quantity
from wellstrung_schemas import fragment


def _row(part: Part) -> tables.Row:
    return tables.load("adhesives").row(part.text("type"))


def _in_the_room(what: str) -> Formula:
    """A time that is stated for a warm room, in the room where the plan says that the glue is."""
    stated = _stated(what)

    def cure(part: Part, ask: Quantities) -> Quantity:
        """As stated; longer where it is colder, by the adhesives whose doubling is known."""
        cells = _row(part).cells
        if not part.has("room") or "degrees_to_double" not in cells:
            return stated(part, ask)
        return derived(
            f"{part.name}.{what.replace('_', ' ')} in the room",
            "min",
            lambda stated, room, stated_at, to_double: glue.cure_at(
                room, stated, stated_at=stated_at, degrees_to_double=to_double
            ),
            stated=stated(part, ask),
            room=part.temperature("room"),
            stated_at=_cell("stated at", cells["stated_at"]),
            to_double=_cell("degrees to double", cells["degrees_to_double"]),
        )

    return cure


def _cell(name: str, cell: tables.Cell) -> Quantity:
    return exact(name, cell.value, cell.unit, source=f"trade tables, adhesives: {cell.grade}")


def _stated(what: str) -> Formula:
    """A time as the plan states it, or from the trade tables by type of adhesive."""
    words = what.replace("_", " ")

    def time(part: Part, ask: Quantities) -> Quantity:
        if part.has(what):
            return part.duration(what)
        row = _row(part)
        if what not in row.cells:
            raise part.missing(what)
        advice = f"read the pack of `{part.name}` and write `{what}: ...`"
        cause = Cause(f"{words} of {row.name}", f"`{part.name}`", advice)
        place = part.place_of("type")
        return from_table(f"{part.name}.{words}", "adhesives", row, what, cause, place=place)

    return time


def _bridges(part: Part, ask: Quantities) -> Quantity:
    """The widest gap it fills with full strength: as the plan states it, or from the tables."""
    if part.has("bridges"):
        return part.size("bridges")
    row = _row(part)
    if "gap_most" not in row.cells:
        raise part.missing("bridges")
    cell, place = row.cell("gap_most"), part.place_of("type")
    source = f"trade tables, adhesives, {row.name}: {cell.grade}"
    name = f"{part.name}.bridges"
    return leaf(name, cell.value, "mm", place=place, source=source, grade=cell.grade)


ADHESIVE = Kind(
    "adhesive",
    fragment("adhesive"),
    Role.GLUE,
    quantities={
        **{name: _in_the_room(name) for name in ("usable", "handling", "full_cure")},
        "mixing": _stated("mixing"),
        "bridges": _bridges,
        "needed": amounts.glue_needed,
        "on_hand": amounts.glue_on_hand,
    },
)
