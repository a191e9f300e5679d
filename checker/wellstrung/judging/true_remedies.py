"""A remedy is offered only if it is true: on a copy, it removes its remark and adds none."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

from msgspec.structs import replace

from wellstrung.common.places import Edit
from wellstrung.judging.result import RANK, Identity, PlanResult, Remark
from wellstrung.model.plan import Plan
from wellstrung.reading import drawer as drawers
from wellstrung.reading import parser, tree
from wellstrung.rulebook import Remedy


def with_true_remedy(
    remark: Remark,
    remedies: Sequence[Remedy],
    before: Mapping[Identity, int],
    try_edits: Callable[[Sequence[Edit]], PlanResult],
) -> Remark:
    """The remark with the first remedy that is true; `before` has the rank of each remark so far.

    A remedy without edits cannot be tried and is taken at its word.
    """
    for remedy in remedies:
        if not remedy.edits or _is_true(remark, try_edits(remedy.edits), before):
            text = f"{remark.remedy}; or {remedy.text}" if remark.remedy else remedy.text
            return replace(remark, remedy=text, edits=remedy.edits)
    return remark


def _is_true(remark: Remark, after: PlanResult, before: Mapping[Identity, int]) -> bool:
    if any((left.rule, left.parts) == remark.identity for left in after.unjudged):
        return False  # what cannot be judged any more is not put right
    return after.readable and all(
        left.identity != remark.identity and RANK[left.level] <= before.get(left.identity, 0)
        for left in after.remarks
        if left.counts
    )


def edited(plan: Plan, edits: Sequence[Edit]) -> tuple[tree.Read, tree.Read | None]:
    """The plan, and its drawer if it has one, read again with these edits made."""
    texts = {
        file: tree.replaced(
            text, [(edit.place, edit.new) for edit in edits if edit.place.file == file]
        )
        for file, text in plan.texts.items()
    }
    kept = plan.drawer
    drawer = drawers.read_text(texts[kept.file], kept.file) if kept is not None else None
    return parser.read_text(texts[plan.file], plan.file), drawer
