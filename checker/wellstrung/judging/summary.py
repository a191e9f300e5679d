"""What a run keeps of each plan until its report ends: little, and data alone."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from msgspec.structs import replace

from wellstrung.judging.result import LEVELS, Counted, PlanResult, Remark, Together
from wellstrung.rulebook import Level


class Summary(Counted, frozen=True, kw_only=True):
    """What the end of a report shows of one plan; what it has of a result, it calls the same.

    Ten thousand of them take some 20 MB, and one goes from process to process.
    """

    outcome: str = ""
    mostly_open: bool = False
    #: how many remarks of each level affect the outcome (all of them, for cautions)
    counts: Mapping[Level, int]
    slips: int = 0
    passed: int = 0
    open: int = 0
    #: without what only its own lines show
    fix_first: Remark | None = None
    #: each safety text with the steps that it is for
    cautions: tuple[tuple[str, tuple[int, ...]], ...] = ()
    #: whether there is more to say of it than how it stands
    says_more: bool = False

    def count(self, level: Level) -> int:
        """How many remarks of a level affect the outcome (all of them, for cautions)."""
        return self.counts[level]


class Totals(Together):
    """What the plans of a run have together, of which only summaries are kept."""

    def __init__(self, plans: Sequence[Summary]) -> None:
        self.plans = plans

    @property
    def all(self) -> Sequence[Summary]:
        """The plans."""
        return self.plans


def summary(plan: PlanResult) -> Summary:
    """What is kept of a plan."""
    first = plan.fix_first
    if first is not None:
        first = replace(first, edits=(), working=(), sources=(), also=(), margin=None, target=None)
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
        fix_first=first,
        cautions=tuple((one.says, one.steps) for one in plan.cautions),
        failures=plan.failures,
        notes=plan.notes,
        says_more=bool(plan.numbered or plan.failures or plan.mostly_open),
    )
