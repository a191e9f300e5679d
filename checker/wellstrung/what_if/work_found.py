"""The steps of a plan that has no `work`: what run and hung ask for, in an order that works.

The steps are written into a copy of the plan, which is checked as any plan is: where that brings a
remark that was not there before, no order is known.
"""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung.common.wording import in_yaml
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import PlanResult
from wellstrung.model.parts import WOVEN_WORK, Part, Role
from wellstrung.model.plan import Hung, Plan
from wellstrung.reading import parser
from wellstrung.subjects import bare_ends, joins_made
from wellstrung.subjects.base import opens
from wellstrung.subjects.glued import caps_at
from wellstrung.work.dependencies import order_that_works

#: how long a glued joint rests where nobody says: until the next day (common practice, no source)
_REST = "24 h"
#: what lies along the body and can carry what goes round it
_LINES = (Role.ROPE, Role.STRAND)


def with_work(result: PlanResult, checker: Checker) -> PlanResult | None:
    """The plan with steps that work, checked; None where it has some, or none are found."""
    if result.ask is None or result.ask.plan.written("work") is not None:
        return None
    lines = steps_of(result.ask.plan)
    for _ in range(2):
        found = _checked(result, lines, checker)
        if found is None or found.ask is None:
            return None
        before = {remark.identity for remark in result.numbered}
        if all(remark.identity in before for remark in found.numbered):
            return found
        better = order_that_works(found.ask.quantities)
        if better is None or better.order is None:
            return None
        lines = [lines[index] for index in better.order]
    return None


def _checked(result: PlanResult, lines: list[str], checker: Checker) -> PlanResult | None:
    assert result.ask is not None
    plan = result.ask.plan
    work = "".join(f"  - {line}\n" for line in lines)
    read = parser.read_text(f"{plan.text.rstrip()}\nwork:\n{work}", plan.file)
    found = checker.check_read(read, plan.bench, plan.drawer)
    return found if found.readable else None


def steps_of(plan: Plan) -> list[str]:
    """The steps that run and hung ask for, as they would be written, in the usual order."""
    every = (*joins_made.every(plan), *bare_ends.every(plan))
    joins = [join.line for join in every if join.line]
    on_thread = [line for line in joins if line in _hung_on_thread(plan)]
    soft = [line for line in joins if line.startswith(_BY_THREAD)]
    rest = [line for line in joins if line not in (*on_thread, *soft)]
    lines = (
        *_made(plan, cut=False),
        *on_thread,
        *soft,
        *_finished(plan),
        *_slid(plan),
        *_glued(plan),
        *_made(plan, cut=True),
        *rest,
        "{do: wear}",
    )
    # that one is sewn to another, and the other to it, is one step
    return list({frozenset(line.strip("{}").split(": ")): line for line in lines}.values())


#: steps that need the thread that a part was made with
_BY_THREAD = ("{do: sew", "{do: knot", "{do: crimp")


def _made(plan: Plan, *, cut: bool) -> Iterator[str]:
    """Every part that is made at the bench, what hangs first; what is cut comes later."""
    for part in dict.fromkeys((*(line.part for line in plan.hung), *plan.in_run)):
        verb = part.traits.made_by
        if verb and (verb == "cut") is cut:
            yield f"{{do: {verb}, part: {in_yaml(part.name)}}}"


def _hung_on_thread(plan: Plan) -> frozenset[str]:
    """The steps that hang what thread holds: they come before its ends are finished."""
    lines = zip(plan.hung, joins_made.hung(plan), strict=True)
    return frozenset(join.line for line, join in lines if line.on_thread)


def _finished(plan: Plan) -> Iterator[str]:
    parts = dict.fromkeys((*(line.source for line in plan.hung), *plan.in_run))
    parts |= dict.fromkeys(line.part for line in plan.hung)
    for part in parts:
        if part.kind.role in WOVEN_WORK:
            yield f"{{do: finish thread, part: {in_yaml(part.name)}}}"


def _slid(plan: Plan) -> Iterator[str]:
    """What is closed and goes round a rope: it is slid on before the ends are made."""
    for line in plan.hung:
        if line.source.kind.role in _LINES and _closed(line):
            part = line.ring or line.part
            onto = in_yaml(line.source.name)
            yield f"{{do: slide, part: {in_yaml(part.name)}, onto: {onto}}}"


def _closed(line: Hung) -> bool:
    part = line.ring or line.part
    return not line.on_thread and opens(part) is False


def _glued(plan: Plan) -> Iterator[str]:
    """Every end that goes into a cap, where one adhesive is in the plan; then a wait."""
    glues = [part for part in plan.parts.values() if part.kind.role is Role.GLUE]
    if len(glues) != 1:
        return
    any_glued = False
    for rope in plan.in_run:
        caps = caps_at(plan, rope) if rope.kind.role is Role.ROPE else []
        for cap in dict.fromkeys(caps):
            any_glued = True
            yield _glue(cap, rope, glues[0], caps.count(cap))
    if any_glued:
        yield f"{{do: wait, time: {_REST}}}"


def _glue(cap: Part, rope: Part, glue: Part, joints: int) -> str:
    part, to, by = (in_yaml(one.name) for one in (cap, rope, glue))
    how = f"joints: {joints}, prepared: [roughened, degreased]"
    return f"{{do: glue, part: {part}, to: {to}, with: {by}, {how}}}"
