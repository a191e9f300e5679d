"""How many of each part a plan takes."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping

from wellstrung.common.cache import cached
from wellstrung.model.beads import (
    bead_mix,
    bead_shares,
    held_by_crimps,
    holds,
    legs_of,
)
from wellstrung.model.parts import Part, Role
from wellstrung.model.plan import Hung, Plan
from wellstrung.model.references import WOVEN_HALVES
from wellstrung.subjects.base import hanging_eyes


def pieces_hung(line: Hung) -> int:
    """How many parts a line hangs: one for each eye below, or for each full set of its own eyes.

    A frame with two top eyes hung by two rings is one frame; five charms of one eye are five.
    """
    own = hanging_eyes(line.part)
    if line.source_eyes or own is None:
        return line.times
    return -(-line.times // (2 if is_safety_chain(line.part) else own.count))


def is_extender(part: Part) -> bool:
    """Whether a piece of chain lets its clasp be closed in any of its links."""
    return part.has("extender") and part.text("extender") == "yes"


def is_safety_chain(part: Part) -> bool:
    """Whether it is a chain that hangs by both its ends, beside the clasp."""
    return part.has("safety") and part.text("safety") == "yes"


def hung_in_all(plan: Plan, line: Hung) -> tuple[int, int]:
    """How many parts a line hangs in one piece, and by how many joints.

    It stands for each of what it hangs from: three rings on a rope carry three charms.
    """
    on = _copies(plan)[line.source]
    return pieces_hung(line) * on, line.times * on


@cached
def _copies(plan: Plan) -> Mapping[Part, int]:
    """How many of each part that something hangs from one piece has."""
    found = dict.fromkeys(plan.in_run, 1)
    return {line.source: _count(line.source, plan, found) or 1 for line in plan.hung}


def _count(part: Part, plan: Plan, found: dict[Part, int]) -> int:
    """How many of a part there are, of which `found` has those that were counted."""
    if part not in found:
        above = [line for line in plan.hung if line.part is part]
        found[part] = sum(
            pieces_hung(line) * (_count(line.source, plan, found) or 1) for line in above
        )
    return found[part]


@cached
def placed(plan: Plan) -> Mapping[str, int]:
    """How many of each part the plan hangs or runs, over all the pieces it makes.

    What has its place in another part counts with that.
    """
    counts: Counter[str] = Counter()
    for line in plan.hung:
        pieces = hung_in_all(plan, line)[0]
        counts[line.part.name] += pieces
        for inside in made_with(plan, line.part):
            counts[inside.name] += pieces * (holds(line.part) or 1)
    for entry in plan.run:
        for part in entry.parts if entry.counts else ():
            counts[part.name] += entry.pieces
            for inside in made_with(plan, part):
                counts[inside.name] += entry.pieces * (holds(part) or 1)
    for bead in plan.beads.values():
        if bead.has("woven"):
            strung = (_strung(one, counts[one.name], bead.name) for one in plan.parts.values())
            counts[bead.text("woven")] += sum(strung)
    return {name: count * plan.makes for name, count in counts.items()}


def _strung(part: Part, many: int, bead: str) -> int:
    """How many of a bead so many of a part string, as it counts or names them.

    A part that has no place yet is one, of a drop all of its legs.
    """
    counts = part.counts("count") or (sum(bead_mix(part).values()),)
    repeats = part.count("repeats", default=1)
    each = repeats * sum(counts) / len(counts) + part.has("turn")
    return round((many or legs_of(part)) * each * bead_shares(part).get(bead, 0.0))


def has_place(plan: Plan) -> frozenset[Part]:
    """The parts that stand in the piece: in the run, hung, hung by, or in another part.

    Without a run, what others hang from begins the piece.
    """
    placed = {*plan.in_run}
    for line in plan.hung:
        placed |= {line.part, *([line.by] if line.by else []), *(() if plan.run else [line.source])}
    placed |= {plan.parts[one.text("woven")] for one in plan.beads.values() if one.has("woven")}
    rings = {ring for part in placed if (ring := woven_of(part))}
    return frozenset(
        placed | rings | {inside for part in placed for inside in made_with(plan, part)}
    )


def woven_of(part: Part) -> Part | None:
    """The jump ring that a part is woven of; None where it is woven of none."""
    return part.part(part.traits.of_rings) if part.traits.of_rings else None


def is_bought(part: Part) -> bool:
    """Whether a shop sells it; a clasp whose two halves are woven is made at the bench."""
    halves = (part.part("ring", "woven"), part.part("bar", "woven"))
    return part.traits.bought and None in halves


@cached
def weaves_of(plan: Plan) -> Mapping[Part, list[Part]]:
    """The parts that are woven of each jump ring."""
    found: dict[Part, list[Part]] = {}
    for part in plan.parts.values():
        if (ring := woven_of(part)) is not None:
            found.setdefault(ring, []).append(part)
    return found


def made_with(plan: Plan, part: Part) -> tuple[Part, ...]:
    """The parts that have their place in another, and those in these.

    A crimp in its tip or beside beads, the cover of a crimp, the woven halves of a clasp, a pin on
    its back, the cone over a wire.
    """
    named = [part.part(*path) for path in (("covers",), ("cover",), *WOVEN_HALVES)]
    found = [
        one for one in (*named, held_by_crimps(part), hung_over(plan, part)) if one is not None
    ]
    deeper = (more for one in found for more in made_with(plan, one))
    return (*found, *deeper, *_backs_of(plan).get(part, ()))


def hung_over(plan: Plan, wire: Part) -> Part | None:
    """The cone that a hung wire runs into, where it has no place of its own."""
    if (cone := wire.part("over")) is None:
        return None
    in_run = {cone, wire} & {*plan.in_run}  # in the run both stand there
    return None if in_run or any(line.part is cone for line in plan.hung) else cone


@cached
def _backs_of(plan: Plan) -> Mapping[Part, list[Part]]:
    """The pins on the back of each part."""
    found: dict[Part, list[Part]] = {}
    for pin in plan.parts.values():
        if (front := pin.part("behind")) is not None:
            found.setdefault(front, []).append(pin)
    return found


def how_many(plan: Plan, part: Part) -> int:
    """How many of a part all the pieces take; one for each piece while it has no place there."""
    return placed(plan).get(part.name) or plan.makes


@cached
def taken_in_all(plan: Plan) -> Mapping[str, int]:
    """How many of each part all the pieces take, the rings that something hangs by included."""
    counts = Counter(placed(plan))
    for line in plan.hung:
        if line.by is not None:
            counts[line.by.name] += hung_in_all(plan, line)[1] * plan.makes
    return counts


@cached
def rings_used(plan: Plan) -> Mapping[Part, int]:
    """How many of each ring the run and what is hung take, over all the pieces of the plan."""
    counts: Counter[Part] = Counter()
    for entry in plan.run:
        if entry.part.kind.role is Role.RING:
            counts[entry.part] += entry.pieces
    for line in plan.hung:
        if line.ring is not None:
            counts[line.ring] += hung_in_all(plan, line)[1]
    return {ring: count * plan.makes for ring, count in counts.items()}
