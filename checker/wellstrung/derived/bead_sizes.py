"""The beads of the palette: sizes as the plan measures or states them, or from the trade tables."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import partial

from wellstrung import tables
from wellstrung.derived import bead_families, weighing
from wellstrung.derived.declared import GEOMETRY, from_table
from wellstrung.derived.learnt import of_bead
from wellstrung.model.item import Bead
from wellstrung.model.parts import Part
from wellstrung.model.plan import Quantities
from wellstrung.quantity.arithmetic import derived
from wellstrung.quantity.causes import Cause
from wellstrung.quantity.value import Quantity

_MEASURE = "measure ten of `{bead}` together and write `measured: {{{what}: ...}}` in the palette"
_FINER = "weigh more of `{bead}`, count them, write `per_gram` with one figure more"


def _size(what: str, bead: Bead) -> Quantity:
    """A size in mm, as the plan has it, or the trade tables; raises Missing."""
    if bead.has("measured", what) or bead.has(what):
        return bead.size(what, allowance="bead length" if what == "length" else "")
    if bead.seed:
        return _from_table(what, bead)
    return bead_families.size(what, bead, partial(_size, bead=bead))


def _height(bead: Bead) -> Quantity:
    """How far it hangs with its hole across: more where the hole goes through its top."""
    return _size("height" if bead.hangs else "outside", bead)


def _per_gram(bead: Bead) -> Quantity:
    """How many weigh a gram."""
    if bead.has("measured", "per_gram") or bead.has("per_gram"):
        return bead.rounded("per_gram", cure=_FINER.format(bead=bead.name))
    if bead.seed:
        return _from_table("per_gram", bead)
    return bead_families.per_gram(bead, partial(_size, bead=bead))


def _from_table(what: str, bead: Bead) -> Quantity:
    row = tables.load("beads").row(bead.row)
    if what not in row.cells:
        raise bead.missing("measured", what)
    words = what.replace("_", " ")
    cure = _MEASURE.format(bead=bead.name, what=what)
    if what == "per_gram":
        cure = weighing.cure(bead, 1 / row.cell(what).value)
    cause = Cause(f"{bead.text('size')} bead {words}", f"`{bead.name}`", cure)
    name, place = f"{bead.name}.{words}", bead.key.place
    return of_bead(from_table(name, "beads", row, what, cause, place=place), bead)


def of_woven(part: Part, what: str, ask: Quantities) -> Quantity:
    """A size of a bead of the palette that is woven: that of the beaded bead which it is."""
    if what == "per_gram":
        mass = ask.of(part, "mass")
        if not mass.middle:  # not known, where a load is the least that it can be
            raise part.missing("core", "mass")
        return derived(f"{part.name}.per gram", "", lambda mass: 1 / mass, mass=mass)
    return ask.of(part, "outside" if what == "height" else what)


OF_BEAD: dict[str, Callable[[Bead], Quantity]] = {
    "outside": partial(_size, "outside"),
    "length": partial(_size, "length"),
    "height": _height,
    "hole": partial(_size, "hole"),
    "per_gram": _per_gram,
}


def mean_size(
    part: Part, what: str, mix: Mapping[str, float], ask: Quantities, of: str = ""
) -> Quantity:
    """A size of several beads by their names: the mean, each as often as it is counted.

    `of` names the field that has them, where that is not `beads`.
    """
    sizes, counts = [ask.of(part.beads[name], what) for name in mix], tuple(mix.values())
    if len(sizes) == 1:
        return sizes[0]
    return derived(
        f"{part.name}.bead {what}" + (f" of {of}" if of else ""),
        sizes[0].unit,
        lambda **values: (
            sum(n * v for n, v in zip(counts, values.values(), strict=True)) / sum(counts)
        ),
        {f"bead{n}": size for n, size in enumerate(sizes, 1)},
        source=f"mean by share, {GEOMETRY}",
    )
