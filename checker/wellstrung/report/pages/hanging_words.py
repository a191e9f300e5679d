"""What hangs, and the wrapped loops that it hangs in, in sentences for a student."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import suppress

from wellstrung.common.wording import together
from wellstrung.model.item import Missing
from wellstrung.model.parts import Part, Role
from wellstrung.model.plan import Hung, Plan, Step
from wellstrung.quantity.working import number
from wellstrung.report.pages.cut_words import Bench, to_cut
from wellstrung.report.pages.end_words import coil_loops, each_of, many_of
from wellstrung.report.pages.making_words import in_order, made
from wellstrung.report.pages.opening_words import opening, shutting
from wellstrung.report.terminal import counted
from wellstrung.subjects.base import Eyes, hanging_eyes, opens, shut_by_wraps
from wellstrung.subjects.counts import hung_in_all, is_safety_chain, pieces_hung
from wellstrung.subjects.hung import fringes_along
from wellstrung.work.minutes import times_done


def often(count: int) -> str:
    """How often a line goes through something, in words."""
    return {1: "once", 2: "twice"}.get(count) or f"{count} times"


def hang(step: Step, at: Bench) -> Iterator[str]:
    """Where each piece hangs, and what is opened and closed again for that."""
    part, source = step.parts["part"], step.parts.get("from")
    if part.kind.role is Role.DROP:
        yield from _legs(step, at)
    lines = _lines(step, at.plan)
    shut = _wrapped_by(part, at.plan)
    if shut is not None and shut.number < step.number and lines and all(map(_is_wrapped_in, lines)):
        onto = together(dict.fromkeys(map(hangs_from, lines)))
        yield f"`{part.name}` hangs from {onto} since step {shut.number}"
        yield "Try with a pull whether each loop is wrapped shut"
        return
    told = list[str]()  # what is so of several lines is said once, after the last
    for line in lines:
        pieces, joints = hung_in_all(at.plan, line)
        layer = f"Layer {line.layer}, counted from the front: hang" if line.layer > 1 else "Hang"
        yield f"{layer} {many_of(part, pieces)} from {hangs_from(line)}{_spread(line, at.plan)}"
        if is_safety_chain(part):
            yield "One end goes to each side of the clasp: it hangs slack beside it"
        told += _by(step, line, joints, at.plan)
    yield from dict.fromkeys(told)
    if not lines:
        many = many_of(part, times_done(at.plan, step))
        yield f"Hang {many}" + (f" from `{source.name}`" if source is not None else "")
        yield from _opened(_able(part, source), step, at.plan)


def _lines(step: Step, plan: Plan) -> list[Hung]:
    """The lines of `hung` that a step is about."""
    part, source = step.parts["part"], step.parts.get("from")
    return [line for line in plan.hung if line.part is part and source in (None, line.source)]


def open_since(ring: Part, step: Step, plan: Plan) -> Step | None:
    """The step that opens a ring to hang something, which this one closes; None where none does."""
    first = plan.cache.get(_opening, ring, plan)
    closes = step in plan.cache.get(_closing, ring, plan)
    return first if first and closes and first.number < step.number else None


def _opening(ring: Part, plan: Plan) -> Step | None:
    """The first step that opens a ring to hang something."""
    hangs = plan.steps_that("hang")
    return next((one for one in hangs if ring in map(_opens_for, _lines(one, plan))), None)


def _closing(ring: Part, plan: Plan) -> list[Step]:
    """The steps that close a ring where something hangs: in the run they close others like it."""
    steps = plan.steps_that("close ring", part=ring) if ring not in plan.in_run else ()
    return [one for one in steps if not (one.joins or one.has("around"))]


def _legs(step: Step, at: Bench) -> Iterator[str]:
    """How the legs of a fringe are made, at the first step that is about them."""
    first = at.plan.steps_that("string", "hang", part=step.parts["part"])[0]
    if first is step:
        yield from made(step.parts["part"], at)
    else:
        yield f"Make each leg as at step {first.number}"


def _spread(line: Hung, plan: Plan) -> str:
    """Where along its source the pieces of a line hang."""
    along = any(line in one.lines for one in fringes_along(plan))
    return f", spread evenly over {line.over or 'all its length'}" if along else _places(line, plan)


def _wrapped_by(part: Part, plan: Plan) -> Step | None:
    """The last step that wraps the loops of a part, where they are wrapped."""
    return (
        next(iter(plan.steps_that("wrap loop", part=part)[::-1]), None)
        if shut_by_wraps(part)
        else None
    )


def _is_wrapped_in(line: Hung) -> bool:
    """Whether what hangs is in a wrapped loop for good: nothing that it hangs from or by opens."""
    above = Eyes(line.source, line.source_eyes) if line.source_eyes else line.source
    carrier = line.ring or above
    return not line.on_thread and (shut_by_wraps(line.source) or not opens(carrier))


def hangs_from(line: Hung) -> str:
    """The eyes or the part that a line hangs its pieces from."""
    key = line.source_eyes
    return Eyes(line.source, key).words if key in line.source.kind.eyes else f"`{line.source.name}`"


def _eyes(line: Hung) -> int:
    """How many eyes there are to hang from; 0 where the plan does not say."""
    key = line.source_eyes
    with suppress(Missing):
        return Eyes(line.source, key).count if key in line.source.kind.eyes else 0
    return 0


def _places(line: Hung, plan: Plan) -> str:
    if line.at:
        return f", at number {together(map(str, line.at))}, counted from the left"
    alike = sum(entry.linked for entry in plan.run if line.source in entry.parts)
    if alike > 1 and pieces_hung(line) == 1 and line.source.kind.role is not Role.RING:
        return f", the middle one of {alike}"
    if line.times == 1 or not line.source_eyes or _eyes(line) == 1:
        return ""
    others = (one for one in plan.hung if one is not line and one.source is line.source)
    shared = any(one.source_eyes == line.source_eyes for one in others)
    return f", {'at those that are free' if shared else 'one at each'}, from the left"


def _by(step: Step, line: Hung, joints: int, plan: Plan) -> Iterator[str]:
    ring, opened = step.parts.get("by") or line.ring, _opens_for(line)
    if line.on_thread:
        yield f"Take the thread {often(line.passes)} through what each hangs from"
        return
    if ring is not None and ring is opened and ring is not line.part:
        begin = opening(many_of(ring, joints), ring)
        yield f"For that {begin[0].lower()}{begin[1:]}"
        yield _shut(each_of(joints), ring, step, plan)
        return
    if ring is not None and ring is not line.part:
        stays = "which stays closed" if joints == 1 else "which stay closed"
        yield f"What carries it is {many_of(ring, joints)}, {stays}"
    yield from _opened(opened, step, plan)


def _opens_for(line: Hung) -> Part | Eyes | None:
    """What is opened to hang a line: its ring, or else one of the two that meet."""
    if line.on_thread:
        return None
    if line.ring is None or line.ring is line.part:
        return _able(line.part, line.source)
    return line.ring if opens(line.ring) else _able(line.part, line.ring)


def _able(part: Part, source: Part | None) -> Part | Eyes | None:
    """Which of two that meet can be opened: a ring, or an eye of one."""
    able = [one for one in (part, source) if one is not None and not shut_by_wraps(one)]
    sides = (side for one in able for side in (one, hanging_eyes(one)))
    return next((side for side in sides if side is not None and opens(side)), None)


def _opened(side: Part | Eyes | None, step: Step, plan: Plan) -> Iterator[str]:
    """How what can be opened is opened, and closed again."""
    if side is not None:
        name = side.words if isinstance(side, Eyes) else f"`{side.name}`"
        yield opening(name, side)
        yield _shut("it", side, step, plan)


def _shut(what: str, opened: Part | Eyes, step: Step, plan: Plan) -> str:
    """How it is closed again, if no later step closes it."""
    closing = plan.cache.get(_closing, opened, plan) if isinstance(opened, Part) else []
    after = next((one for one in closing if one.number > step.number), None)
    return f"Leave {what} open until step {after.number}" if after else shutting(what, opened)


def wrap_loop(step: Step, at: Bench) -> Iterator[str]:
    """A loop of wire; before one is wrapped shut, what it takes is hung in it."""
    part, times = step.parts["part"], times_done(at.plan, step)
    if part.thread.springs:
        yield from coil_loops(part, times)
        return
    yield from to_cut(part, at)
    over = part.part("over")
    if part.traits.takes_tops:
        yield f"Put the wire of `{part.name}` through the hole of the drop, a third of it out"
        yield "Bend both ends up, cross them above the drop, and bend the longer one straight up"
    elif part.has("beads"):
        yield f"Put on `{part.name}`: {in_order(part, 'beads')}"
    hole = at.known(part, "loop.hole")
    wide = f", {number(hole.middle)} mm inside" if hole is not None else ""
    yield f"Turn {counted(times, 'loop')} at `{part.name}`{wide}"
    if over is not None:
        gathered = [
            one for inner, end in at.plan.meetings if end.part is over for one in inner.parts
        ]
        if lines := [f"`{one.name}`" for one in dict.fromkeys(gathered) if one.has("thread")]:
            yield f"Fix the ends of {together(lines)} in one loop, by a knot or a crimp"
        yield f"The wire runs through `{over.name}`: put it on before the second loop"
    if shut_by_wraps(part):
        turns = f", {part.text('wraps')} turns" if part.has("wraps") else ""
        hung = [line for line in at.plan.hung if line.part is part and _is_wrapped_in(line)]
        for line in hung:
            many = many_of(part, hung_in_all(at.plan, line)[0])
            where = f"{hangs_from(line)}{_spread(line, at.plan)}"
            yield f"While the loop is open, hang {many} from {where}"
        first = "Then" if hung else "Hang in what a loop carries, and then"
        yield f"{first} wrap it shut{turns}: it opens no more"
