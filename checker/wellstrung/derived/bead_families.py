"""Beads sold by mm: a family and a size give the rest, by the trade table `other_beads`."""

from __future__ import annotations

from collections.abc import Callable

from wellstrung import tables
from wellstrung.common import units
from wellstrung.common.wording import either
from wellstrung.derived import weighing
from wellstrung.derived.declared import from_table
from wellstrung.derived.learnt import of_bead
from wellstrung.formulas.beads import by_volume
from wellstrung.model.item import Bead
from wellstrung.quantity.arithmetic import derived, leaf, product
from wellstrung.quantity.causes import Cause, Spread
from wellstrung.quantity.value import Quantity

#: another size of the same bead, mm
Sizes = Callable[[str], Quantity]

_TABLE = "other_beads"
_MEASURE = "measure ten of `{bead}` and write `{what}: ...` in the palette"
#: a bead as a ball of glass, g for the cube of its size in mm: enough to say how many to weigh
_BALL = 0.0013


def size(what: str, bead: Bead, other: Sizes) -> Quantity:
    """A size of a bead in mm; raises Missing where neither its size nor its family gives it."""
    family = bead.family
    written = _figures(bead).get(what)
    if written is not None:
        return written
    try:
        cell = family.at(what, _largest(bead)) if family is not None else None
    except KeyError:
        cell = None
    if family is None or cell is None:
        raise bead.missing(what)
    name, cause = f"{bead.name}.{what}", _cause(bead, what)
    if cell.unit:
        return _leaf(name, cell, cause, bead)
    share = _leaf(f"{name} share", cell, cause, bead)
    of = family.text("largest") if what == "outside" else "outside"
    return product(name, "mm", other(of), share, source=f"a share of its {of}")


def per_gram(bead: Bead, sizes: Sizes) -> Quantity:
    """How many weigh a gram: as printed for the size, or by volume and density."""
    family = bead.family
    if family is None or not family.text("largest"):
        raise bead.missing("per_gram")
    name, largest = f"{bead.name}.per gram", _largest(bead)
    printed = family.cells.get(f"per_gram at {largest:g} mm")
    stated = ("outside", "length", "hole", "material")
    if printed and not any(bead.has(what) or bead.has("measured", what) for what in stated):
        return _leaf(name, printed, _cause(bead, "per_gram"), bead)
    length = reach = sizes("length")
    if bead.hangs:
        reach = sizes("height")
    elif "deep" in family.cells:  # most of a cap lies over its bead
        deep = _leaf(f"{bead.name}.deep", family.cell("deep"), _cause(bead, "shape"), bead)
        reach = product(f"{bead.name}.depth", "mm", sizes("outside"), deep)
    return derived(
        name,
        "",
        by_volume,
        outside=sizes("outside"),
        reach=reach,
        length=length,
        hole=sizes("hole"),
        filled=_leaf(
            f"{bead.name}.filled", family.at("filled", largest), _cause(bead, "shape"), bead
        ),
        density=_density(bead, family),
        source="its volume and density",
    )


def _figures(bead: Bead) -> dict[str, Quantity]:
    """What the size says, by the names of its figures: the largest, then the other."""
    family, node = bead.family, bead.node_at("size")
    if family is None or node is None:
        return {}
    figures = sorted(units.bead_figures(node.value), key=lambda figure: -figure.value)
    names = (family.text("largest"), family.text("other"))
    off = family.cell("off")
    found = {}
    for name, figure in zip(names, figures, strict=False):
        down, up = figure.value - figure.low, figure.high - figure.value
        source = ""
        if not (down or up):  # never more than a tenth, however small the bead
            down = up = min(off.high, figure.value / 10)
            source = f"± {units.show(up, 'mm')}: trade tables, {_TABLE}, {family.name}: {off.grade}"
        spreads = [Spread(_cause(bead, name), down, up)]
        written = leaf(
            f"{bead.name}.{name}",
            figure.value,
            "mm",
            spreads,
            place=node.place,
            spelling=figure.text,
            spelled_unit="mm",
            source=source,
        )
        found[name] = of_bead(written, bead)
    return found


def _largest(bead: Bead) -> float:
    """The figure that a bead of its family is sold by, mm."""
    node = bead.node_at("size")
    if node is not None:
        return max(figure.value for figure in units.bead_figures(node.value))
    return bead.size(bead.family.text("largest") if bead.family is not None else "").middle


def _density(bead: Bead, family: tables.Row) -> Quantity:
    """Of the material that the plan states, where the tables have it; or what the family is of."""
    called, cause = f"{bead.name}.density", _cause(bead, "material")
    material = bead.text("material").casefold() if bead.has("material") else ""
    for table in ("materials", "metals"):
        row = tables.load(table).rows.get(material)
        if row is not None and "density" in row.cells:
            place = bead.place_of("material")
            return of_bead(from_table(called, table, row, "density", cause, place=place), bead)
    if "density" not in family.cells:
        raise bead.missing("material")
    return _leaf(called, family.cell("density"), cause, bead)


def _leaf(name: str, cell: tables.Cell, cause: Cause, bead: Bead) -> Quantity:
    """A value of the family, with its range as a spread of that cause."""
    spreads = [Spread(cause, cell.value - cell.low, cell.high - cell.value)]
    source = f"trade tables, {_TABLE}, {bead.text('type')}: {cell.grade}"
    place = bead.place_of("size")
    found = leaf(name, cell.value, cell.unit, spreads, place=place, source=source, grade=cell.grade)
    return of_bead(found, bead)


def _cause(bead: Bead, what: str) -> Cause:
    weighed = what in ("per_gram", "shape", "material")
    cure = _MEASURE.format(bead=bead.name, what=what)
    if weighed:
        cure = weighing.cure(bead, _BALL * _largest(bead) ** 3)
    which = bead.family.text("either") if bead.family is not None else ""
    if which:
        cure = f"write which `{bead.name}` is, {either(which.split(', '))}; or {cure}"
    return Cause(f"{bead.text('type')} {what.replace('_', ' ')}", f"`{bead.name}`", cure)
