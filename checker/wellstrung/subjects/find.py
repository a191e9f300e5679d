"""Every subject of a plan, each once."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Iterator

from wellstrung.model.plan import Plan
from wellstrung.subjects import (
    alone,
    along_the_run,
    bare_ends,
    behind,
    chain,
    closed,
    cups,
    glued,
    held,
    house,
    hung,
    in_place,
    joins_made,
    linked,
    on_thread,
    repair,
    run,
    steps,
    stones,
    supplies,
    worn,
    woven_rings,
)
from wellstrung.subjects.base import Subject


def find(plan: Plan) -> tuple[Subject, ...]:
    """Every subject of a plan."""
    return _found(plan, (*_STANDING, *_NAMES, *_OF_WORK))


def standing(plan: Plan) -> tuple[Subject, ...]:
    """Every subject of a plan that does not come from its work steps."""
    return _found(plan, (*_STANDING, *_NAMES))


def standing_but_names(plan: Plan) -> tuple[Subject, ...]:
    """The same without the names of the plan, for which every text in it is looked at."""
    return _found(plan, _STANDING)


def times_made(plan: Plan) -> Counter[Subject]:
    """How often one piece has each join of its run and of what is hung."""
    counts: Counter[Subject] = Counter()
    for join, times in _counted(plan):
        counts[join] += times
    return counts


def _found(
    plan: Plan, finders: Iterable[Callable[[Plan], Iterable[Subject]]]
) -> tuple[Subject, ...]:
    return tuple(dict.fromkeys(subject for find in finders for subject in find(plan)))


def _counted(plan: Plan) -> Iterator[tuple[Subject, int]]:
    yield from ((join, 1) for join in run.joins(plan))
    yield from linked.in_run(plan)
    yield from hung.round_others(plan)
    yield from linked.hung(plan)


def _joins(plan: Plan) -> Iterator[Subject]:
    return (join for join, _ in _counted(plan))


_STANDING: tuple[Callable[[Plan], Iterable[Subject]], ...] = (
    _joins,
    run.tassels,
    cups.hung,
    hung.on_eyes,
    hung.tassels,
    hung.fringes_along,
    hung.by_eyes,
    chain.chain_cuts,
    chain.piece_cuts,
    on_thread.threaded,
    on_thread.turns,
    held.find,
    on_thread.caps_on_beads,
    woven_rings.find,
    on_thread.ties,
    linked.rings_in_use,
    run.toggles,
    linked.eyes_meet,
    linked.hangs,
    in_place.find,
    chain.end_links,
    glued.adhesives,
    alone.find,
    worn.find,
    on_thread.find,
    on_thread.woven,
    supplies.find,
    worn.put_on,
    along_the_run.find,
    house.held_to_house_limits,
    repair.find,
    behind.find,
)
_NAMES = (alone.names,)
_OF_WORK: tuple[Callable[[Plan], Iterable[Subject]], ...] = (
    closed.find,
    steps.find,
    stones.find,
    glued.find,
    joins_made.find,
    held.joins,
    behind.put_on,
    bare_ends.find,
)
