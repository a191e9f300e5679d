"""What a run keeps of each plan until its report ends: little, and data alone."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace

from wellstrung.judging.result import LEVELS, PlanResult, Summary, Together


class Totals(Together):
    """What the plans of a run have together, of which only summaries are kept."""

    plans: Sequence[Summary]

    def __init__(self, plans: Sequence[Summary]) -> None:
        self.plans = plans


def summary(plan: PlanResult) -> Summary:
    """What is kept of a plan."""
    first = plan.fix_first
    if first is not None:
        first = replace(first, edits=(), lines=(), sources=(), also=(), margin=None, target=None)
    return Summary(
        file=plan.file,
        title=plan.title,
        maker=plan.maker,
        bench=plan.bench,
        readable=plan.readable,
        outcome=plan.outcome,
        mostly_open=plan.mostly_open,
        counts={level: plan.count(level) for level in LEVELS},
        slips=plan.slips,
        passed=len(plan.held),
        open=plan.open,
        length_waits=plan.length_waits,
        fix_first=first,
        cautions=tuple((one.says, one.steps) for one in plan.cautions),
        failures=plan.failures,
        notes=plan.notes,
        says_more=bool(plan.numbered or plan.failures or plan.mostly_open),
    )
