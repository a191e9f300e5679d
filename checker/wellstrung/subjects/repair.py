"""A piece that came for repair, and what was measured of it as it came."""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung.model.item import Bead, Item, Missing
from wellstrung.model.plan import Plan
from wellstrung.reading import tree
from wellstrung.subjects.base import Subject


class AsItCame(Subject, frozen=True):
    """What was measured of a piece that came: its `length` or its `mass`, with what was counted."""

    came: Item
    measured: str


def find(plan: Plan) -> Iterator[Subject]:
    """What was measured of a piece that came."""
    if plan.section("repair") is None:
        return
    item = came(plan)
    for measured in ("length", "mass"):
        if item.has(measured):
            yield AsItCame(item.place_of(measured), item, measured)


def came(plan: Plan) -> Item:
    """The fields of what came; raises Missing where the plan is of no repair."""
    repair = plan.section("repair")
    node = repair.node_at("came") if repair is not None else None
    if repair is None or not isinstance(node, tree.Mapping):
        raise Missing("`repair`, what came and what is wished")
    return plan.item("came", repair.key, node)


def beads_that_came(plan: Plan) -> Iterator[tuple[Bead, int]]:
    """Each bead that came, with how many."""
    node = came(plan).node_at("beads")
    for name, count in (node.value if node is not None else {}).items():
        yield plan.beads[str(name)], int(count)
