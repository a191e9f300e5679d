"""Follows what a remark advises, by its edits or by the target of its words, until it is gone."""

from __future__ import annotations

import re
from collections.abc import Iterator

from wellstrung.judging.checker import Checker
from wellstrung.judging.result import PlanResult, Remark
from wellstrung.reading import tree
from wellstrung.rulebook import Target

#: how often one may have to follow the same remark until nothing is left of it
ROUNDS = 3
#: steps in which lengths are sold, cut or woven, mm
_STEPS = (0.5, 0.1, 0.05)
_MM = re.compile(r"(\d+(?:\.\d+)?) mm")


def troubles(text: str, before: PlanResult, remark: Remark, checker: Checker) -> Iterator[str]:
    """What goes wrong when this remark is followed, and then what is left of it."""
    seen, errors = {text}, _errors(before)
    # what a deeper remark hides, or what the words say that they bring, is no surprise
    hidden = {rule for one in before.remarks for rule in one.affects}
    left: Remark | None = remark
    for _ in range(ROUNDS):
        assert left is not None
        changed, said = written(text, left), left.remedy
        if changed is None:
            yield f"no shop or hand makes what it asks for: {left.remedy}"
            return
        if changed in seen:
            yield f"back to a state that was seen: {left.remedy}"
            return
        seen.add(changed)
        after = checker.check_text(changed)
        if not after.readable or any(one.rule.startswith("plan-") for one in after.remarks):
            yield f"no plan any more: {left.remedy}: {after.remarks[0].says}"
            return
        yield from (
            f"a new error of {rule} about {', '.join(parts)}: {left.remedy}"
            for rule, parts in sorted(_errors(after) - errors)
            if rule not in hidden and f"`{rule}`" not in said
        )
        left = next((one for one in after.remarks if one.identity == remark.identity), None)
        if left is None or not left.counts:
            return
        if not left.edits and left.target is None:
            yield f"words alone are left: {left.remedy}"
            return
        text = changed
    yield f"not done in {ROUNDS} rounds: {left.remedy if left else ''}"


def written(text: str, remark: Remark) -> str | None:
    """The plan as a remark asks for it; None where no shop or hand makes that."""
    changes = [(edit.place, edit.new) for edit in remark.edits]
    if not changes:
        assert remark.target is not None
        value = sold(remark.target)
        if value is None:
            return None
        changes = [(remark.target.place, value)]
    if any(not _makeable(float(size)) for _, new in changes for size in _MM.findall(new)):
        return None
    return tree.replaced(text, changes)


def sold(target: Target) -> str | None:
    """The first value of a target that is sold, as one writes it; None where there is none."""
    if target.unit != "mm":
        steps: tuple[float, ...] = (1.0,) if not target.unit else (1.0, 0.1)
    else:
        steps = _STEPS
    for step in steps:
        value = round(-(-(target.low - 1e-9) // step) * step, 2)
        if not target.low:
            value = round((target.high + 1e-9) // step * step, 2)
        if 0 < value <= target.high + 1e-9:
            return f"{value:g} {target.unit}".strip()
    return None


def _makeable(size: float) -> bool:
    return abs(size / _STEPS[-1] - round(size / _STEPS[-1])) < 1e-6


def _errors(result: PlanResult) -> set[tuple[str, tuple[str, ...]]]:
    """What there are errors about."""
    return {one.identity for one in result.remarks if one.level == "error" and one.counts}
