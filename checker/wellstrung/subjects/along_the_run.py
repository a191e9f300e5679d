"""Where parts stand along the run, and what follows: what they have to pass to get there.

The ends of a rope or a strand are made at the bench - capped, crimped, knotted, sewn - and what is
closed goes on before that, or over all that an end carries.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence

from wellstrung.model.beads import bead_mix
from wellstrung.model.item import Bead
from wellstrung.model.parts import Part, Role
from wellstrung.model.plan import Plan, RunEntry, Step
from wellstrung.subjects.base import Eyes, Side, Subject, hanging_eyes, named, opens, side_facing
from wellstrung.subjects.counts import has_place
from wellstrung.subjects.hung import CARRIERS, goes_round
from wellstrung.subjects.steps import puts_on


class SlidesOn(Subject, frozen=True):
    """What is closed and goes round a rope or a strand, and what is in its way at either end.

    `what` is a ring, a bail, or the eye of a pendant. `ends` are the parts between it and either
    open end, nearest first, up to where the run can be undone. `step` is the one that brings it on,
    `made_by` the steps that had made both ends by then; empty while an end is free.
    """

    what: Side
    carrier: Part
    ends: tuple[tuple[RunEntry, ...], tuple[RunEntry, ...]]
    step: Step | None
    made_by: tuple[Step, ...]

    @property
    def slider(self) -> Part:
        """The part that slides."""
        return self.what.part if isinstance(self.what, Eyes) else self.what

    @property
    def parts(self) -> tuple[str, ...]:
        """What slides: others slide on the same rope."""
        return (self.slider.name,)


class TailThroughLoop(Subject, frozen=True):
    """The ring at one end of a piece that closes through it, and what is drawn through it.

    `tail` is what stands at the other end, from there to its rope or strand, and what hangs there.
    """

    loop: Part
    tail: tuple[Part, ...]


class Centred(Subject, frozen=True):
    """What is meant for the middle of the run, and what stands there before and after it.

    `item` is a part of the run, what hangs from one, or a bead of the strand there. The halves of
    the clasp are left out: its own middle lies at the back.
    """

    item: Part | Bead
    entry: RunEntry
    before: tuple[RunEntry, ...]
    after: tuple[RunEntry, ...]

    @property
    def parts(self) -> tuple[str, ...]:
        """What is meant for the middle, and where it stands."""
        return named(self.item, self.entry)


def find(plan: Plan) -> Iterator[Subject]:
    """Every subject that follows from where parts stand along the run."""
    yield from _slides_on(plan)
    yield from _tail_through_loop(plan)
    yield from _centred(plan)


#: what is made fast to the end of a rope or a strand, and its own eye opens beyond it
_FAST = frozenset({Role.CAP, Role.CONE, Role.CRIMP, Role.TIP, Role.SLEEVE})
#: verbs that make an end
_END_VERBS = frozenset({"glue", "crimp", "sew", "wrap loop"})


def _slides_on(plan: Plan) -> Iterator[Subject]:
    slid = [step for step in plan.steps_that("slide") if step.has("onto")]
    carriers = {line.source for line in plan.hung if line.source.kind.role in CARRIERS}
    carriers |= {step.parts["onto"] for step in slid}
    ends_of: dict[Part, tuple[tuple[RunEntry, ...], tuple[RunEntry, ...]]] = {}
    for at, entry in enumerate(() if plan.is_loop else plan.run):
        for part in entry.parts:
            if part in carriers and part not in ends_of:
                outwards = plan.run[:at][::-1], plan.run[at + 1 :]
                first, last = (tuple(_in_the_way(plan, way)) for way in outwards)
                ends_of[part] = first, last
    for line in plan.hung:
        what, carrier = goes_round(line), line.source
        if what is None or carrier not in ends_of or line.part.traits.on_wire:
            continue  # the loop of a wire link is turned round it
        ends = ends_of[carrier]
        if carrier.kind.role is Role.ROPE and line.ring is not None and _capped(ends):
            continue  # a ring and the caps of a rope are `RingOnCappedRope`
        slider = line.by or line.part
        step = next((s for s in plan.steps if puts_on(s, slider, line, carrier)), None)
        place = step.place if step else line.place_of("part")
        made_by = _made_by(plan, carrier, ends, step) if step else ()
        yield SlidesOn(place, what, carrier, ends, step, made_by)
    placed = has_place(plan)
    for step in slid:  # what only a step brings on, and no line hangs there
        slider, carrier = step.parts["part"], step.parts["onto"]
        itself = slider.kind.role in (Role.BAIL, Role.RING)
        what = slider if itself else hanging_eyes(slider)
        if what is not None and slider not in placed and carrier in ends_of:
            ends = ends_of[carrier]
            made_by = _made_by(plan, carrier, ends, step)
            yield SlidesOn(step.place, what, carrier, ends, step, made_by)


def _capped(ends: Sequence[Sequence[RunEntry]]) -> bool:
    return any(entry.part.kind.role is Role.CAP for end in ends for entry in end[:1])


def _in_the_way(plan: Plan, outwards: Sequence[RunEntry]) -> Iterator[RunEntry]:
    """The parts from a rope or strand outwards, up to the first place where the run is undone."""
    for entry in outwards:
        fast = entry.part.kind.role in _FAST
        side = side_facing(entry)
        loose = bool(side is not None and opens(side))
        if loose and not fast:
            return
        yield entry
        if loose:
            return


def _made_by(
    plan: Plan, carrier: Part, ends: Sequence[Sequence[RunEntry]], until: Step
) -> tuple[Step, ...]:
    """The steps that made both ends before a step; empty where one was still free by then."""
    free = list(ends)
    made: list[Step] = []
    for step in plan.steps[: until.number - 1]:
        times = step.get("joints") or step.get("times") or 1
        done = [end for end in free if any(_makes(step, carrier, entry.part) for entry in end)]
        for end in done[: int(times)]:
            free.remove(end)
            made.append(step)
    return tuple(made) if not free else ()


def _makes(step: Step, carrier: Part, part: Part) -> bool:
    """Whether a step makes an end of `carrier` fast in a part, or fixes that part beyond it."""
    if step.verb == "knot":
        return step.parts.get("part") is carrier and part.kind.role is Role.TIP
    return step.verb in _END_VERBS and step.parts.get("part") in (part, part.part("covers") or part)


def _tail_through_loop(plan: Plan) -> Iterator[Subject]:
    closes = plan.written("closes")
    if closes is None or closes.value != "through its loop" or not plan.run:
        return
    begins = plan.run[0].part.kind.role is Role.RING
    loop, *others = plan.run if begins else plan.run[::-1]
    tail: list[Part] = []
    for entry in reversed(others):
        tail += entry.parts
        if entry.part.kind.role in CARRIERS or entry.part.cut_from is not None:
            break
        tail += _below(plan, entry.part)
    yield TailThroughLoop(closes.place, loop.part, tuple(dict.fromkeys(tail)))


def _below(plan: Plan, part: Part) -> Iterator[Part]:
    """Everything that hangs from a part, and from what hangs there."""
    for line in plan.hung:
        if line.source is part:
            yield line.part
            yield from _below(plan, line.part)


def _centred(plan: Plan) -> Iterator[Subject]:
    centre = plan.written("centre")
    if centre is None or plan.is_loop:
        return
    name = str(centre.value)
    item = plan.parts.get(name) or plan.beads[name]
    # what goes round a rope, a strand or a band slides to its lowest place by itself
    sources = {line.source for line in plan.hung}
    above = {part for part in sources if any(below is item for below in _below(plan, part))}
    carrying = {part for part in above if part.kind.role not in CARRIERS}
    at = [n for n, entry in enumerate(plan.run) if _stands_at(entry, item, carrying)]
    if not at:
        return
    where = at[len(at) // 2]
    before, after = (
        tuple(entry for entry in side if entry.part.kind.role is not Role.CLASP)
        for side in (plan.run[:where], plan.run[where + 1 :])
    )
    yield Centred(centre.place, item, plan.run[where], before, after)


def _stands_at(entry: RunEntry, item: Part | Bead, carrying: Collection[Part]) -> bool:
    """Whether a place in the run is, or strings, or carries what is meant for the middle."""
    if isinstance(item, Part):
        return item in entry.parts or entry.part in carrying
    return entry.part.kind.role is Role.STRAND and item.name in bead_mix(entry.part)
