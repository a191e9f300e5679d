"""What a step pulls on: the weight that it hangs goes up to the run, and along it to both ends."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import NamedTuple

from wellstrung.common.cache import cached
from wellstrung.model.parts import Part
from wellstrung.model.plan import Plan, Step
from wellstrung.subjects import joins_made
from wellstrung.subjects.stones import sets_stone

#: Steps that put a pull on what was glued.
LOADING = frozenset({"hang", "close ring"})


class Pull(NamedTuple):
    """A step that pulls on a part where it comes after some others, in whatever order those do."""

    step: Step
    after: frozenset[Step] = frozenset()

    @property
    def as_written(self) -> bool:
        """Whether it pulls in the order that the plan has."""
        return all(step.number < self.step.number for step in self.after)


def pulling_on(plan: Plan, glued: Step) -> list[Pull]:
    """The pulls on what a step glues: the rows of a stone are none on its backing, its edge is."""
    found, none = pulls(plan).get(glued.parts["part"], ()), "edge" if sets_stone(glued) else "weave"
    return [pull for pull in found if pull.step.verb != none]


@cached
def pulls(plan: Plan) -> Mapping[Part, Iterable[Pull]]:
    """The pulls on each part: of steps at hand, and of the weights that it carries.

    A weight pulls from the last step on that hangs it or joins what is between.
    """
    found: dict[Part, dict[Pull, None]] = {}
    for step in plan.steps_that(*LOADING):
        for part in _named(plan, step):
            found.setdefault(part, {})[Pull(step)] = None
    for glued in plan.steps_that("glue"):
        part = glued.parts["part"]
        if part.traits.glued_on:  # the needle and the rows pull on the stone, the edge on both
            verb = "weave" if sets_stone(glued) else "edge"
            sewn = {Pull(step): None for step in plan.steps_that(verb, part=part)}
            found.setdefault(part, {}).update(sewn)
    for step, parts in _weights(plan).items():
        for part, between in _carrying(plan, parts).items():
            steps = between | {step}
            last = (one for one in steps if one.verb in LOADING)
            found.setdefault(part, {}).update({Pull(one, steps - {one}): None for one in last})
    return found


def _named(plan: Plan, step: Step) -> set[Part]:
    """The parts that a step names, and those beside the ring of the run that it closes."""
    named = {part for name, part in step.parts.items() if name != "with"}
    if step.verb == "close ring" and not step.has("around"):
        for entry, (behind, ahead) in plan.with_neighbours():
            beside = {near.called: near.part for near in (*behind, *ahead)}
            if entry.part is step.parts.get("part") and set(step.joins) <= set(beside):
                named |= set(beside.values())
    return named


def _weights(plan: Plan) -> Mapping[Step, set[Part]]:
    """The steps that hang something, each with that and what it hangs from."""
    found = {
        step: {step.parts[name] for name in ("part", "from") if name in step.parts}
        for step in plan.steps_that("hang")
    }
    for join in joins_made.hung(plan):
        for step in join.made:
            if step.verb in LOADING:
                found.setdefault(step, set()).update(join.joined)
    return found


def _carrying(plan: Plan, parts: Iterable[Part]) -> Mapping[Part, frozenset[Step]]:
    """What carries some parts, and the steps that make the joins on the shortest way there."""
    held, found = _held(plan), {part: frozenset[Step]() for part in parts}
    left = list(found)
    for part in left:
        for other, steps in held.get(part, {}).items():
            if other not in found:
                found[other] = found[part] | steps
                left.append(other)
    return found


@cached
def _held(plan: Plan) -> Mapping[Part, Mapping[Part, frozenset[Step]]]:
    """For each part what holds it, and the steps that join them; none where no step is known.

    What stands in several places of the plan is held from the first that is made. Of two rings that
    are linked both are closed.
    """
    first: dict[tuple[Part, Part], dict[Part, Step | None]] = {}  # by the part that is closed
    for join in joins_made.every(plan):
        one, *others = join.joined
        made = min(join.made, key=_at_hand, default=None)
        for other in others:
            for pair in ((one, other), (other, one)):
                old = first.setdefault(pair, {}).setdefault(one, made)
                if made is None or (old is not None and _at_hand(made) < _at_hand(old)):
                    first[pair][one] = made
    for entry, beside in plan.meetings:
        for part in entry.parts:
            for other in beside.parts:
                first.setdefault((part, other), {})
    for line in plan.hung:  # what hangs does not hold
        first.pop((line.source, line.part), None)
    held: dict[Part, dict[Part, frozenset[Step]]] = {}
    for (part, other), steps in first.items():
        held.setdefault(part, {})[other] = frozenset(filter(None, steps.values()))
    return held


def _at_hand(step: Step) -> tuple[bool, int]:
    """The order in which steps join: a ring that is slid on a rope carries nothing yet."""
    return step.verb == "slide", step.number
