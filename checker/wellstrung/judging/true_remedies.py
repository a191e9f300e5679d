"""A remedy is offered only if it is true: on a copy, it removes its remark and adds none."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Iterator, Mapping, Sequence

from msgspec.structs import replace

from wellstrung.common.places import Edit, Place
from wellstrung.common.wording import listed
from wellstrung.judging.alike import Alike
from wellstrung.judging.result import RANK, Identity, PlanResult, Remark
from wellstrung.model.plan import Plan
from wellstrung.quantity.verdict import SLACK
from wellstrung.reading import drawer as drawers
from wellstrung.reading import parser, tree


def with_true_remedies(
    found: Iterable[Alike],
    before: Mapping[Identity, int],
    try_edits: Callable[[Sequence[Edit]], PlanResult | None],
) -> Iterator[Remark]:
    """The remarks with their first true remedies.

    Alike ones stay apart where they offer edits that cannot be made all at once: of a plan of which
    every part can be taken out, but not all of them.
    """
    for one in found:
        remark = with_true_remedy(one, before, try_edits)
        if one.apart and not remark.edits and any(remedy.edits for remedy in one.remedies):
            yield from (with_true_remedy(each, before, try_edits) for each in one.apart)
        else:
            yield remark


def with_true_remedy(
    alike: Alike,
    before: Mapping[Identity, int],
    try_edits: Callable[[Sequence[Edit]], PlanResult | None],
) -> Remark:
    """The remark with the first remedy that is true; `before` has the rank of each remark so far.

    A remedy without edits cannot be tried and is taken at its word. Where another value of the same
    field was tried and broke another rule, the words name that rule; so do they where no remedy is
    left but one that breaks a rule. Edits that there is no trial left for are not offered.
    """
    remark = alike.remark
    alone = ""  # what puts it right, and breaks another rule
    brings: dict[Place, tuple[str, ...]] = {}  # what an edit at a place breaks
    for remedy in alike.remedies:
        after = try_edits(remedy.edits) if remedy.edits else None
        cured = alike.stands_for.union(*(alike.with_it.get(e.place, ()) for e in remedy.edits))
        new = _new(cured, after, before) if after else None if remedy.edits else ()
        brings.update({edit.place: new for edit in remedy.edits if new})
        alone = alone or (_with(remedy.text, new) if new else "")
        if new == ():
            text = remedy.text
            if not remedy.edits and remedy.target is not None and remedy.target.place in brings:
                text = _with(text, brings[remedy.target.place])
            ways = [way for way in (remark.remedy, text) if way]
            if remark.margin is not None and remark.margin.middle < -SLACK:
                ways.reverse()  # a closer measurement would likely find the same fault
            text = "; or ".join(ways)
            return replace(remark, remedy=text, edits=remedy.edits, target=remedy.target)
    return remark if remark.remedy else replace(remark, remedy=alone)


def _with(text: str, rules: tuple[str, ...]) -> str:
    return f"{text} (changed alone, that brings {listed(rules)})"


def _new(
    cured: Collection[Identity], after: PlanResult, before: Mapping[Identity, int]
) -> tuple[str, ...] | None:
    """The rules that edits break; None where they do not put the remark right."""
    if not after.readable or any((left.rule, left.parts) in cured for left in after.unjudged):
        return None  # what cannot be judged any more is not put right
    worse = [
        left
        for left in after.remarks
        if left.counts
        and (left.identity in cured or RANK[left.level] > before.get(left.identity, 0))
    ]
    if any(left.identity in cured or left.rule.startswith("plan-") for left in worse):
        return None
    return tuple(dict.fromkeys(left.rule for left in worse))


def edited(
    plan: Plan, edits: Sequence[Edit], kinds: drawers.Kinds | None = None
) -> tuple[tree.Read, tree.Read | None]:
    """The plan, and its drawer if it has one, read again with these edits made."""
    texts = {
        file: tree.replaced(
            text, [(edit.place, edit.new) for edit in edits if edit.place.file == file]
        )
        for file, text in plan.texts.items()
    }
    kept = plan.drawer
    drawer = drawers.read_text(texts[kept.file], kept.file, kinds) if kept is not None else None
    return parser.read_text(texts[plan.file], plan.file), drawer
