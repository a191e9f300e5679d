"""What holds the beads of a spaced strand apart: crimps or knots beside them, and their steps."""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung.common.wording import in_yaml
from wellstrung.model.beads import apart, beads_on_thread, held_by_crimps, holds
from wellstrung.model.plan import Plan
from wellstrung.subjects.joins_made import JoinAtWork
from wellstrung.subjects.run import StopsAt, StrandInCrimp


def find(plan: Plan) -> Iterator[StrandInCrimp | StopsAt]:
    """A crimp on the line, and each bead that a crimp or a knot stops at."""
    for strand in plan.parts.values():
        place, crimp = strand.place_of("held_by"), held_by_crimps(strand)
        if crimp is not None:
            yield StrandInCrimp(place, crimp, strand, apart=True)
        for name in beads_on_thread(strand) if apart(strand) else ():
            yield StopsAt(place, strand, crimp or strand, plan.beads[name])


def joins(plan: Plan) -> Iterator[JoinAtWork]:
    """The crimps or knots of each strand, with the steps that press or tie them."""
    for strand in plan.in_run if plan.steps else ():
        if not apart(strand):
            continue
        what, times = held_by_crimps(strand) or strand, holds(strand)
        verb, does = ("knot", "ties them") if what is strand else ("crimp", "presses them")
        by = "knots" if what is strand else f"of `{what.name}`"
        words = f"{times} {by} hold the beads of `{strand.name}`"
        line = f"{{do: {verb}, part: {in_yaml(what.name)}, times: {times}}}"
        made = tuple(plan.steps_that(verb, part=what))
        yield JoinAtWork(strand.place_of("held_by"), (what, strand), words, does, line, made)
