"""What the bench holds to limits of the maker's own."""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung.common.places import Place
from wellstrung.model.item import Bead
from wellstrung.model.parts import Part
from wellstrung.model.plan import Plan
from wellstrung.reading.settings import PART, PIECE, HouseLimit
from wellstrung.subjects.base import Subject

BEAD = "bead"


class HeldToHouseLimit(Subject, frozen=True):
    """A part, a bead or the whole piece, with a limit that the bench sets to a quantity of it."""

    item: Part | Bead | None
    limit: HouseLimit


def held_to_house_limits(plan: Plan) -> Iterator[HeldToHouseLimit]:
    """Everything that a limit of the bench is for."""
    for limit in plan.bench.house:
        if limit.pieces and plan.piece not in limit.pieces:
            continue
        if limit.whose == PIECE:
            yield HeldToHouseLimit(plan.place_of(limit.what), None, limit)
        for item in _items(plan, limit):
            yield HeldToHouseLimit(_place(item, limit), item, limit)


def _items(plan: Plan, limit: HouseLimit) -> Iterator[Part | Bead]:
    """The part or the bead of a name, or else all of a kind; a kind by its own name is no name."""
    groups = () if limit.whose in (PIECE, PART, BEAD, limit.kind) else (plan.parts, plan.beads)
    named = [group[limit.whose] for group in groups if limit.whose in group]
    of_kind = [
        part for part in plan.parts.values() if limit.whose == PART or limit.kind == part.kind.name
    ]
    yield from named or of_kind
    yield from plan.beads.values() if limit.whose == BEAD else ()


def _place(item: Part | Bead, limit: HouseLimit) -> Place:
    """Where the author writes the size, or the name of what has it."""
    return item.place_of(*limit.what.split("."))
