"""What is linked: rings through eyes, rings in rings, and eyes in eyes, in the run and hung."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from itertools import product

from msgspec.structs import replace

from wellstrung.common.cache import cached
from wellstrung.model.parts import Part, Role
from wellstrung.model.plan import Hung, Plan, RunEntry
from wellstrung.subjects.base import (
    Eyes,
    Side,
    Subject,
    eyes_facing,
    hanging_eyes,
    last_eyes,
    named,
    opens,
    side_facing,
)
from wellstrung.subjects.chain import pattern_of
from wellstrung.subjects.counts import hung_in_all, rings_used


class RingThroughEye(Subject, frozen=True):
    """A ring's wire in a hole; `rings` of them share one eye."""

    ring: Part
    eyes: Eyes
    rings: int


class RingHolds(Subject, frozen=True):
    """Everything that one ring holds: a rope it goes round, eyes, other rings."""

    ring: Part
    around: Part | None
    eyes: tuple[Eyes, ...]
    rings: tuple[Part, ...] = ()

    @property
    def parts(self) -> tuple[str, ...]:
        """The ring, and what lies in it."""
        return named(self.ring, self.around, self.eyes, self.rings)


class RingInUse(Subject, frozen=True):
    """A ring that the run or something hung is held by, however often it is used."""

    ring: Part


class EyesMeet(Subject, frozen=True):
    """Two closed curves of metal that are linked: a ring and an eye, two rings, or two eyes.

    `line` is what hangs by it, where it is not in the run; it makes no other subject of the
    two, nor does their order.
    """

    one: Side
    other: Side
    line: Hung | None = None

    @property
    def parts(self) -> tuple[str, ...]:
        """What the two belong to, as they are linked."""
        return named(self.one, self.other)

    def _compared(self) -> tuple[object, ...]:
        return (frozenset((self.one, self.other)),)


class Hangs(Subject, frozen=True):
    """One line of `hung`; every line is a subject of its own."""

    line: Hung

    @property
    def parts(self) -> tuple[str, ...]:
        """What hangs, then from what."""
        return named(self.line.part, self.line.source)

    @property
    def below(self) -> Side | None:
        """The eye or the ring that hangs."""
        is_ring = self.line.part.kind.role is Role.RING
        return self.line.part if is_ring else hanging_eyes(self.line.part)

    @property
    def above(self) -> Side | None:
        """The eye or the ring that it hangs from; None where that has neither, as a rope.

        Where the plan names no set of eyes, things hang from the last.
        """
        source, eyes = self.line.source, self.line.source_eyes or last_eyes(self.line.source)
        if eyes:
            return Eyes(source, eyes)
        return source if source.kind.role is Role.RING else None


def in_run(plan: Plan) -> Iterator[tuple[Subject, int]]:
    """What the rings of the run hold, and in how many rings of the place."""
    for entry, (behind, ahead) in plan.with_neighbours():
        if entry.part.kind.role is not Role.RING:
            continue
        for held, many in _held_in_each(entry, behind, ahead):
            yield from _one_ring(plan, entry, (*behind, *ahead), held, many)


def _one_ring(
    plan: Plan, entry: RunEntry, beside: tuple[RunEntry, ...], held: tuple[Eyes, ...], many: int
) -> Iterator[tuple[Subject, int]]:
    """What the rings of one place hold, and how many of them hold just that."""
    for eyes in held:
        yield RingThroughEye(entry.place, entry.part, eyes, 1), many
    ring = entry.part
    rings = tuple(place.part for place in beside if place.part.kind.role is Role.RING)
    eyes_hung, rings_hung = plan.cache.get(_carried, plan, ring)
    for eyes in dict.fromkeys(eyes_hung):
        yield RingThroughEye(entry.place, ring, eyes, 1), eyes_hung.count(eyes)
    if entry.linked == 1:
        yield (
            RingHolds(entry.place, ring, None, held + eyes_hung, rings + rings_hung),
            many,
        )
        return
    # the first and the last of a row hold an eye each and one ring, those between two rings
    for eyes in held:
        yield (
            RingHolds(entry.place, ring, None, (eyes, *eyes_hung), (ring, *rings_hung)),
            many,
        )
    if entry.linked > 2:
        two = (ring, ring, *rings_hung)
        yield (
            RingHolds(entry.place, ring, None, eyes_hung, two),
            (entry.linked - 2) * many,
        )


def _held_in_each(
    entry: RunEntry, behind: tuple[RunEntry, ...], ahead: tuple[RunEntry, ...]
) -> Iterator[tuple[tuple[Eyes, ...], int]]:
    """The eyes that a ring of a place holds at its two sides, and how many rings hold just those.

    One ring takes the ends of all chains that lie side by side, or each has a ring of its own.
    """
    sides = [(place, True) for place in behind] + [(place, False) for place in ahead]
    chains = max((len(place.parts) for place, _ in sides if place.part.cut_from), default=1)
    apart = entry.rows > 1 and chains > 1
    for order in range(chains) if apart else (None,):
        found: list[Eyes | None] = []
        for place, onwards in sides:
            parts = place.parts if place.part.cut_from and order is None else place.parts[:1]
            parts = place.parts[order : order + 1] or parts if order is not None else parts
            found += [eyes_facing(replace(place, part=one), onwards=onwards) for one in parts]
        yield tuple(eyes for eyes in found if eyes), 1 if apart else entry.rows


def _carried(plan: Plan, ring: Part) -> tuple[tuple[Eyes, ...], tuple[Part, ...]]:
    """The eyes and the rings that hang on one of a ring, where several carry them in turn."""
    eyes: list[Eyes] = []
    rings: list[Part] = []
    for line in plan.hung:
        if line.source is not ring or line.on_thread:
            continue
        share = -(-hung_in_all(plan, line)[1] * plan.makes // rings_used(plan)[ring])
        side = line.ring or hanging_eyes(line.part)
        if isinstance(side, Eyes):
            eyes += [side] * share
        elif side is not None:
            rings += [side] * share
    return tuple(eyes), tuple(rings)


def hung(plan: Plan) -> Iterator[tuple[Subject, int]]:
    """What the rings hold that something hangs by, and in how many of them."""
    run = {eyes_facing(entry, onwards=way) for entry in plan.run for way in (False, True)}
    for line in plan.hung:
        ring = line.ring
        if ring is None:
            continue
        place, times = line.place_of("by" if line.by else "part"), hung_in_all(plan, line)[1]
        eyes_hung, rings_hung = plan.cache.get(_carried, plan, ring)
        own = hanging_eyes(line.part) if line.by else None
        held = [own] if own is not None else []
        held += eyes_hung
        for eyes in dict.fromkeys(held):
            yield RingThroughEye(place, ring, eyes, 1), times * held.count(eyes)
        if line.source_eyes:
            eyes = Eyes(line.source, line.source_eyes)
            held.append(eyes)
            # the eye of a part in the run holds the ring of the run already
            yield RingThroughEye(place, ring, eyes, 2 if eyes in run else 1), times
        elif _links_alike(line.source):
            yield RingThroughEye(place, ring, Eyes(line.source, last_eyes(line.source)), 1), times
        around = line.source if line.source.kind.role is Role.ROPE else None
        above = (line.source,) if line.source.kind.role is Role.RING else ()
        yield RingHolds(place, ring, around, tuple(held), above + rings_hung), times


def _links_alike(part: Part) -> bool:
    """Whether a ring anywhere on a piece of chain meets a link like its last one."""
    chain = part.cut_from
    return chain is not None and not chain.traits.cups and len({*pattern_of(chain)}) == 1


def held_by_ring(plan: Plan, ring: Part) -> Sequence[RingHolds]:
    """All that a ring holds, at each of its places."""
    return _holding(plan).get(ring, ())


@cached
def _holding(plan: Plan) -> Mapping[Part, list[RingHolds]]:
    found: dict[Part, list[RingHolds]] = {}
    for join, _ in (*in_run(plan), *hung(plan)):
        if isinstance(join, RingHolds):
            found.setdefault(join.ring, []).append(join)
    return found


def rings_in_use(plan: Plan) -> Iterator[Subject]:
    """Every ring of the plan that holds something."""
    for ring in rings_used(plan):
        yield RingInUse(ring.key.place, ring)


def hangs(plan: Plan) -> Iterator[Subject]:
    """Every line of `hung`."""
    for line in plan.hung:
        yield Hangs(line.place_of("part"), line)


def eyes_meet(plan: Plan) -> Iterator[EyesMeet]:
    """Every two closed curves that are linked.

    They come as the plan lists their parts, for a run may be written from either end.
    """
    order = {name: number for number, name in enumerate(plan.parts)}
    yield from sorted(_links(plan), key=lambda link: sorted(order[name] for name in link.parts))


def _links(plan: Plan) -> Iterator[EyesMeet]:
    """The same, along the run and then down what hangs."""
    for before, after in (two for pair in plan.neighbours for two in product(*map(_each, pair))):
        one, other = side_facing(before, onwards=True), side_facing(after)
        halves = before.half and after.half and before.part is after.part
        if one is not None and other is not None and not halves:
            yield EyesMeet(after.place, one, other)
    for entry in plan.run:
        if entry.linked > 1 and entry.part.kind.role is Role.RING:
            yield EyesMeet(entry.place, entry.part, entry.part)
    for line in plan.hung:
        if line.on_thread:
            continue
        hanging = Hangs(line.place_of("part"), line)
        below, above = hanging.below, hanging.above
        pairs = [(below, above)] if line.by is None else [(below, line.by), (above, line.by)]
        place = line.place_of("by" if line.by else "part")
        for one, other in pairs:
            if one is not None and other is not None:
                yield EyesMeet(place, one, other, line)


def _each(entry: RunEntry) -> list[RunEntry]:
    """A place, or each of the chains that lie side by side there."""
    if entry.part.cut_from is None:
        return [entry]
    return [replace(entry, part=part, beside=()) for part in entry.parts]


@cached
def rings_to_open(plan: Plan) -> list[Part]:
    """The rings to open so that no two closed curves are linked any more, as few as can be seen.

    First those that are linked to closed eyes, then whichever ends the most links, of equals the
    one that the plan names first: counting. What may open is left out.
    """
    order = {part: number for number, part in enumerate(plan.parts.values())}
    shut = [
        [side for side in dict.fromkeys((join.one, join.other)) if isinstance(side, Part)]
        for join in dict.fromkeys(eyes_meet(plan))
        if opens(join.one) is opens(join.other) is False
    ]
    found: list[Part] = []
    while shut := [rings for rings in shut if rings and not {*rings} & {*found}]:
        counts = Counter(ring for rings in shut for ring in rings)
        alone = [rings[0] for rings in shut if len(rings) == 1]
        found.append(min(alone or counts, key=lambda ring: (-counts[ring], order[ring])))
    return found
