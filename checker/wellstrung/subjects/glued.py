"""Glue: every adhesive, what is glued with it, of which mix, and which steps load the joint."""

from __future__ import annotations

from bisect import bisect_right
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence

from wellstrung import tables
from wellstrung.common.cache import cached
from wellstrung.model.item import Item
from wellstrung.model.parts import Part, Role
from wellstrung.model.plan import Plan, Step
from wellstrung.subjects.base import Subject
from wellstrung.subjects.pulled import Pull, pulling_on, pulls
from wellstrung.subjects.supplies import supply_lines

#: Steps after which the piece is worn or leaves the bench.
WEARING = frozenset({"wear", "pack"})


class Glue(Subject, frozen=True):
    """An adhesive in the plan."""

    adhesive: Part


class Glues(Subject, frozen=True):
    """Every adhesive of the plan: what is shown once, however many there are."""

    adhesives: tuple[Part, ...]


class GluedJoint(Subject, frozen=True):
    """A glued cap (or a clasp glued to a band), and the first steps that pull on it and wear it."""

    step: Step
    adhesive: Part
    cap: Part
    loaded: Step | None
    worn: Step | None


class Mixed(Subject, frozen=True):
    """What is glued of one stirring: glue steps back to back, until one says its own `mixes`.

    `unsaid` is a step that does not say how many joints it makes, where its cap stands repeatedly.
    """

    adhesive: Part
    steps: tuple[Step, ...]
    joints: int
    mixes: int
    unsaid: Step | None


class GluedEnd(Subject, frozen=True):
    """The end of a rope in a cap and the adhesive that holds it there."""

    adhesive: Part
    cap: Part
    rope: Part


class GlueOnThread(Subject, frozen=True):
    """An adhesive on the thread of a part: at its end in a cap, or on its knots."""

    adhesive: Part
    worked: Part


class GlueUsed(Subject, frozen=True):
    """An adhesive, the ends it holds with how many joints of each, its mixes, and what is on hand.

    `films` are the stones that it holds, each on one of its layers, with how many of them.

    Joints and mixes are those of every piece that the plan makes.
    """

    adhesive: Part
    ends: tuple[tuple[GluedEnd, int], ...]
    films: tuple[tuple[Part, str, int], ...]
    mixes: int
    lines: tuple[Item, ...]

    @property
    def stirred(self) -> bool:
        """Whether the adhesive is stirred of two parts."""
        return "mixing" in tables.load("adhesives").row(self.adhesive.text("type")).cells


def adhesives(plan: Plan) -> Iterator[Subject]:
    """Every adhesive of the plan, whether a step uses it or not."""
    found = tuple(part for part in plan.parts.values() if part.kind.role is Role.GLUE)
    for part in found:
        yield Glue(part.key.place, part)
    if found:
        yield Glues(found[0].key.place, found)


def find(plan: Plan) -> Iterator[Subject]:
    """What the steps that glue give."""
    yield from _joints(plan)
    mixes = tuple(mixed(plan))
    yield from mixes
    for step in plan.steps_that("glue"):
        end = _glued_end(step)
        if end is not None:
            yield end
            yield GlueOnThread(step.place, end.adhesive, end.rope)
    for step in on_knots(plan):
        yield GlueOnThread(step.place, step.parts["with"], step.parts["part"])
    for adhesive in dict.fromkeys(mix.adhesive for mix in mixes):
        yield glue_used(plan, adhesive)


def on_knots(plan: Plan) -> list[Step]:
    """The steps that put a drop of glue on the knots that they tie."""
    return [step for step in plan.gluing if step.verb != "glue"]


def glue_used(plan: Plan, adhesive: Part) -> GlueUsed:
    """What the steps of a plan glue with one adhesive."""
    ends: Counter[GluedEnd] = Counter()
    for step in plan.steps_that("glue"):
        end = _glued_end(step)
        if end is not None and end.adhesive is adhesive:
            ends[end] += step.joints * plan.makes
    films = tuple(
        (step.parts["part"], str(step.get("to")), step.joints * plan.makes)
        for step in plan.steps_that("glue", **{"with": adhesive})
        if step.parts["part"].traits.glued_on
    )
    mixes = sum(mix.mixes for mix in mixed(plan) if mix.adhesive is adhesive)
    lines = supply_lines(plan, "part", adhesive.name)
    held, mixes = tuple(ends.items()), mixes * plan.makes
    return GlueUsed(adhesive.key.place, adhesive, held, films, mixes, lines)


def caps_at(plan: Plan, rope: Part) -> list[Part]:
    """The caps of a rope in the run's order, one for each end that has one."""
    return _caps(plan).get(rope, [])


@cached
def _caps(plan: Plan) -> Mapping[Part, list[Part]]:
    """The caps of every part that has one."""
    caps: dict[Part, list[Part]] = {}
    for pair in plan.neighbours:
        for cap, capped in (pair, pair[::-1]):
            if cap.part.kind.role is Role.CAP:
                for rope in dict.fromkeys(capped.parts):
                    caps.setdefault(rope, []).append(cap.part)
    return caps


def closing_glue(plan: Plan, rope: Part) -> tuple[Step, ...]:
    """The glue steps from the one that closes the last open end of a rope; none while one is open.

    Whatever has to be on the rope, or in it, comes before all of them.
    """
    steps, joints = plan.steps_that("glue", to=rope), 0
    ends = max(1, len(caps_at(plan, rope)))
    for index, step in enumerate(steps):
        joints += step.joints
        if joints >= ends:
            return tuple(steps[index:])
    return ()


def _joints(plan: Plan) -> Iterator[GluedJoint]:
    worn = wearing(plan)
    for step in plan.steps_that("glue"):
        adhesive, cap = step.parts["with"], step.parts["part"]
        loaded = _first_after(step, _loading(pulling_on(plan, step)))
        yield GluedJoint(step.place, step, adhesive, cap, loaded, _first_after(step, worn))
    for step in on_knots(plan):
        adhesive, strand = step.parts["with"], step.parts["part"]
        yield GluedJoint(step.place, step, adhesive, strand, None, _first_after(step, worn))


def loading(plan: Plan, part: Part) -> Sequence[Step]:
    """The steps that pull on a part in the order that the plan has."""
    return _loading(pulls(plan).get(part, ()))


def _loading(pulls_on: Iterable[Pull]) -> Sequence[Step]:
    found = {pull.step for pull in pulls_on if pull.as_written}
    return sorted(found, key=lambda step: step.number)


def wearing(plan: Plan) -> Sequence[Step]:
    """The steps after which the piece is worn or leaves the bench."""
    return [step for step in plan.steps_that(*WEARING) if not step.has("part")]


def _first_after(step: Step, others: Sequence[Step]) -> Step | None:
    at = bisect_right(others, step.number, key=lambda other: other.number)
    return others[at] if at < len(others) else None


def mixed(plan: Plan) -> Iterator[Mixed]:
    """Every stirring of glue, with what is glued of it."""
    rows: list[list[Step]] = []
    for step in plan.steps_that("glue"):
        if rows and _goes_on(rows[-1][-1], step):
            rows[-1].append(step)
        else:
            rows.append([step])
    stands = Counter(part for entry in plan.run for part in entry.parts)
    made: Counter[Part] = Counter()
    for step in plan.steps_that("glue"):
        made[step.parts["part"]] += step.joints
    for steps in rows:
        silent = (step for step in steps if not step.has("joints"))
        unsaid = (step for step in silent if stands[step.parts["part"]] > made[step.parts["part"]])
        first, joints = steps[0], sum(step.joints for step in steps)
        yield Mixed(
            first.place,
            first.parts["with"],
            tuple(steps),
            joints,
            first.mixes or 1,
            next(unsaid, None),
        )


def _goes_on(before: Step, step: Step) -> bool:
    """Whether a step glues with what was stirred for the glue step before it."""
    follows = before.number == step.number - 1 and step.mixes is None
    return follows and before.parts["with"] is step.parts["with"]


def _glued_end(step: Step) -> GluedEnd | None:
    """What a step glues into a bore; None for a clasp on a band, which has none."""
    adhesive, cap, rope = step.parts["with"], step.parts["part"], step.parts.get("to")
    if rope is None or cap.kind.role is not Role.CAP:
        return None
    return GluedEnd(step.place, adhesive, cap, rope)
