"""What stands at a place of a plan: a part with the field, or all that a line is about."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from wellstrung.common.cache import cached
from wellstrung.common.places import Place
from wellstrung.model.parts import Part
from wellstrung.model.plan import Plan
from wellstrung.what_if.unfit import path_to


def part_at(plan: Plan, place: Place) -> tuple[Part, tuple[str, ...]] | None:
    """The part that a place lies in, and the path of the field; None where it lies in none."""
    for part in plan.parts.values():
        if part.node.place.holds(place) or place == part.key.place:
            return part, path_to(part.node, place)
    return None


def supplies_at(plan: Plan, place: Place) -> Part | None:
    """The part that a line of supplies at a place is about; None where there is none."""
    lines = (line for line in plan.entries("supplies") if line.place.holds(place))
    return next((plan.parts.get(str(line.value.get("part", ""))) for line in lines), None)


def named_at(plan: Plan, place: Place) -> Iterator[str]:
    """The names of the parts that a place is about; none where it is the whole piece."""
    found = part_at(plan, place)
    if found is not None:
        yield found[0].name
    for bead in plan.beads.values():
        if bead.node.place.holds(place) or place == bead.key.place:
            yield from users(plan, bead.name)
    for hung in plan.hung:
        if hung.place.holds(place):
            yield hung.part.name
    for line in plan.entries("supplies"):
        if line.place.holds(place):
            for thing in map(str, line.value.values()):
                yield from (thing,) if thing in plan.parts else ()
                yield from users(plan, thing) if thing in plan.beads else ()
    for entry in plan.run:
        if place.holds(entry.place) or entry.place.holds(place):
            yield from (part.name for part in entry.parts)


def users(plan: Plan, name: str) -> frozenset[str]:
    """The parts that name a bead or a part in one of their fields."""
    return frozenset(_named_by(plan).get(name, ()))


@cached
def _named_by(plan: Plan) -> Mapping[str, Sequence[str]]:
    found: dict[str, list[str]] = {}
    for part in plan.parts.values():
        for word in _words(part.node.value):
            found.setdefault(word, []).append(part.name)
    return found


def near(plan: Plan, names: frozenset[str]) -> frozenset[str]:
    """These parts, with those that stand next to them, carry them or hang from them."""
    found = set(names)
    for entry, other in plan.meetings:
        if names & {part.name for part in entry.parts}:
            found |= {part.name for part in other.parts}
    for line in plan.hung:
        held = {part.name for part in (line.part, line.source, line.by) if part is not None}
        found |= held if held & names else set()
    return frozenset(found)


def _words(value: object) -> Iterator[str]:
    if isinstance(value, dict):
        for key, one in value.items():
            yield str(key)
            yield from _words(one)
    elif isinstance(value, list):
        for one in value:
            yield from _words(one)
    else:
        yield str(value)
