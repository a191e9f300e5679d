"""What is wrong with the type and size of a bead of the palette."""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung import tables
from wellstrung.common import units
from wellstrung.common.places import Edit, Fault
from wellstrung.common.wording import either, one_of
from wellstrung.model.item import Bead
from wellstrung.reading import tree as reading

#: the fields of a bead for its dimensions, besides `size`
_SIDES = ("outside", "length", "width", "height", "thickness")
_OR_OTHER = "or write `type: other` with its own `outside`, `length` and `hole`"


def wrong_with(bead: Bead) -> Iterator[Fault]:
    """The faults of a bead of the tables; one of type `other` brings its own sizes."""
    yield from _hole_too_wide(bead)
    family, size = bead.family, bead.node_at("size")
    if family is None:
        return
    largest = family.text("largest")
    if size is None:
        if not largest or not (bead.has(largest) or bead.has("measured", largest)):
            yield _without_size(bead, family)
    elif bead.seed:
        yield from _by_number(bead, family, size)
    elif not largest:
        yield _fault(
            f"`{family.name}` beads are sold by number, and `{size.value}` is none: write"
            f" {either(_numbers(family))}; {_OR_OTHER}",
            size,
        )
    elif len(units.bead_figures(size.value)) > 1 and not family.text("other"):
        yield _fault(
            f"`{size.value}` has two figures, and the size of `{family.name}` beads is one, how"
            f" wide they are: write one such as `{_example(family)}`, and beside it `length: ...`,"
            " along the hole",
            size,
        )


def _hole_too_wide(bead: Bead) -> Iterator[Fault]:
    """A hole that is at least as wide as its bead, by the sizes that the plan gives."""
    hole, size = bead.node_at("hole"), bead.node_at("size")
    sides = [units.size(side.value) for side in map(bead.node_at, _SIDES) if side is not None]
    sides += units.bead_figures(size.value) if size is not None else ()
    if hole is None or not sides or units.size(hole.value).low < max(one.high for one in sides):
        return
    widest = max(sides, key=lambda one: one.high)
    says = (
        f"the hole of `{bead.name}` ({hole.value}) is as wide as the bead ({widest.text}), or more"
    )
    yield _fault(f"{says}: correct the size of one", hole)


def _without_size(bead: Bead, family: tables.Row) -> Fault:
    kind = bead.node_at("type")
    says = f"the bead `{bead.name}` lacks its `size`: write one such as `{_example(family)}`"
    if kind is not None and bead.has("outside"):  # its own sizes, under another type
        says = f"{says}, or `type: other` for a bead with sizes of its own"
        return Fault("plan-shape", says, kind.place, edits=(Edit(kind.place, "other"),))
    return Fault("plan-shape", says, bead.key.place)


def _by_number(bead: Bead, family: tables.Row, size: reading.Node) -> Iterator[Fault]:
    """What is wrong with a seed bead; one without a make leaves its sizes open."""
    named, rows = family.text("seed"), tables.load("beads").rows
    if not named:
        yield _fault(
            f"`{size.value}` is a seed bead's size, and `{family.name}` beads are sold by mm:"
            f" write one such as `{_example(family)}`",
            size,
        )
    elif ("{make}" not in named or bead.has("make")) and bead.row not in rows:
        same_size = [name for name in rows if f" {units.bead_size(size.value)}" in name]
        yield _fault(
            f"the trade tables have no bead `{bead.row}`: take"
            f" {one_of(same_size or rows, bead.row, 'wellstrung tables beads')}, {_OR_OTHER}",
            size,
            bead.row,
        )


def _numbers(family: tables.Row) -> list[str]:
    """The sizes of seed beads that a family comes in, the largest bead first."""
    rows, named = tables.load("beads").rows, family.text("seed")
    sizes = {row.split()[1] for row in rows if named.format(size=row.split()[1]) in rows}
    return sorted(sizes, key=lambda size: int(size.partition("/")[0]))


def _example(family: tables.Row) -> str:
    return "size: 8/0" if family.text("seed") else f"size: {family.cell('size').value:g} mm"


def _fault(says: str, node: reading.Node, found: str = "") -> Fault:
    return Fault("plan-shape", says, node.place, found)
