"""Instructions for a student: the work of one plan as numbered steps in words.

A checked plan in, HTML out. Where something at a step does not work as the plan has it, the step
says so and holds back what to do.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence

from msgspec import Struct

from wellstrung.common.wording import hours
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import PlanResult, Remark, understood
from wellstrung.lists import cutting
from wellstrung.lists.bags import lettered
from wellstrung.model.beads import beads_on_thread
from wellstrung.model.item import Item
from wellstrung.model.parts import WOVEN_WORK, Part, Role
from wellstrung.model.plan import Plan, Step
from wellstrung.quantity.value import Quantity
from wellstrung.report.pages import listings, step_tools, step_words
from wellstrung.report.pages.cut_words import Bench
from wellstrung.report.pages.measurements import measurements
from wellstrung.report.pages.rendering import render
from wellstrung.report.pages.tables import to_take
from wellstrung.report.pages.work_order import in_words, order_of
from wellstrung.report.writer import Options
from wellstrung.what_if.unfit import concerns
from wellstrung.what_if.work_found import steps_of, with_work

PLAIN = Options()
#: steps that join a part to what stands beside it, or what it hangs from
_JOINING = frozenset({"close ring", "hang", "wrap loop", "crimp"})


class Check(Struct, frozen=True):
    """What to measure at a step, in words, with the size that is likely; both already times."""

    what: str
    taken: Quantity
    times: int = 1


class Instruction(Struct, frozen=True):
    """One step: what it is, what to do, what to measure, and what to take care of.

    `held` says what keeps it from being done, and then nothing is said of what to do; `doubts` what
    to look at first.
    """

    number: int
    what: str
    says: tuple[str, ...]
    held: tuple[str, ...]
    doubts: tuple[str, ...]
    checks: tuple[Check, ...]
    hands: str
    meanwhile: tuple[str, ...]
    care: tuple[str, ...]


def steps(result: PlanResult, checker: Checker | None = None, options: Options = PLAIN) -> str:
    """The page of instructions; with a checker, an order is found for a plan without `work`."""
    found = with_work(result, checker) if checker is not None else None
    shown = found or result
    written = shown.ask is not None and bool(shown.ask.plan.steps)
    return render(
        "steps.html",
        result=result,
        large=options.large,
        bags=shown.ask is not None and bool(shown.ask.plan.beads),
        makes=shown.ask.plan.makes if shown.ask is not None else 1,
        maker=listings.written(result, "maker"),
        to_fix=[remark for remark in result.numbered if remark.counts and remark.level == "error"],
        derived=found is not None,
        to_write=() if written or result.ask is None else steps_of(result.ask.plan),
        supplies=list(to_take(shown)),
        tools=tools(shown),
        instructions=instructions(shown),
        cautions=[one for one in listings.cautions(shown) if not (written and one.steps)],
        cures=listings.cures(shown),
    )


def instructions(result: PlanResult) -> list[Instruction]:
    """Every step of a plan in the order written."""
    if result.ask is None:
        return []
    plan = result.ask.plan
    at = Bench(result, plan, cutting.listed(understood([result])))
    order, care = order_of(result), listings.cautions(result)
    timed = {done.number: done for done in order.steps} if order is not None else {}
    things = _things(plan)
    checks = _checks(result, things)
    # what is about the steps says itself which
    of_work = {
        index
        for index, remark in enumerate(result.numbered)
        if any(step.place.holds(remark.place) for step in plan.steps)
    }
    first: dict[int, int] = {}  # the step that a remark, by its place in the list, is said at
    found = []
    for step, here in zip(plan.steps, things, strict=True):
        done = timed.get(step.number)
        said: dict[bool, list[str]] = {True: [], False: []}
        for index, remark in enumerate(result.numbered):
            if not remark.counts:
                continue
            if _names(step, remark) or (index not in of_work and _is_about(remark, here)):
                at_step = first.setdefault(index, step.number)
                says = _says(remark) if at_step == step.number else f"see step {at_step}"
                said[remark.level == "error"].append(says)
        held = tuple(dict.fromkeys(said[True]))
        found.append(
            Instruction(
                step.number,
                in_words(step),
                () if held else _with_bags(step_words.words(step, at), plan),
                held,
                tuple(dict.fromkeys(said[False])),
                () if held else tuple(checks.get(step.number, ())),
                hours(done.student_hands) if done is not None and done.student_hands else "",
                done.meanwhile if done is not None else (),
                tuple(_care(care, step.number)),
            )
        )
    return found


def _with_bags(says: Sequence[str], plan: Plan) -> tuple[str, ...]:
    """Sentences in which the letter of its bag stands behind each bead, as the kit has it."""
    letters = {f"`{name}`": letter for name, letter in lettered(plan).items()}
    only = {name: letter for name, letter in letters.items() if name[1:-1] not in plan.parts}
    if not only:
        return tuple(says)
    named = re.compile("|".join(map(re.escape, only)))
    return tuple(named.sub(lambda one: f"{one[0]} [{only[one[0]]}]", words) for words in says)


def _care(cautions: Sequence[listings.Care], number: int) -> Iterator[str]:
    """The safety texts for a step: whole at the first step that each is for."""
    for one in cautions:
        if number in one.steps:
            yield one.says if number == one.steps[0] else f"{one.name}, as at step {one.steps[0]}"


def _says(remark: Remark) -> str:
    """What is wrong, and what to do about it."""
    return f"{remark.problem}: {remark.remedy}" if remark.remedy else remark.problem


def _things(plan: Plan) -> list[dict[str, Item]]:
    """For each step its parts, the beads on their thread, and what it joins them to, by name."""
    beside: dict[Part, list[Part]] = {}
    for entry, (behind, ahead) in plan.with_neighbours():
        near = (part for place in (*behind, *ahead) for part in place.parts)
        beside.setdefault(entry.part, []).extend(near)
    for line in plan.hung:
        beside.setdefault(line.part, []).extend(filter(None, (line.source, line.by)))
    found = []
    for step in plan.steps:
        made = step.parts.get("part")
        joined = beside.get(made, []) if made is not None and step.verb in _JOINING else []
        here: dict[str, Item] = {part.name: part for part in (*step.parts.values(), *joined)}
        strung = beads_on_thread(made) if made is not None else ()
        here |= {name: plan.beads[name] for name in strung if name in plan.beads}
        found.append(here)
    return found


def _names(step: Step, remark: Remark) -> bool:
    """Whether a remark is about the line of a step."""
    return concerns(remark, step.place) or any(step.place.holds(at) for at in remark.also)


def _is_about(remark: Remark, things: Mapping[str, Item]) -> bool:
    """Whether a remark is about one of these things, or about some of them together."""
    together = bool(remark.parts) and set(remark.parts) <= set(things)
    return together or any(concerns(remark, one.node.place) for one in things.values())


def _checks(result: PlanResult, things: Sequence[Mapping[str, Item]]) -> dict[int, list[Check]]:
    """What to measure, at the first step that it is for: swatches, beads, and what is made."""
    assert result.ask is not None
    plan, found = result.ask.plan, dict[int, list[Check]]()
    for one in measurements(result):
        item = one.taken.name.partition(".")[0]
        number = next((number for number, here in enumerate(things, 1) if item in here), None)
        if number is not None:
            found.setdefault(number, []).append(Check(one.what, one.taken, one.times))
    for step in plan.steps_that("measure"):
        part = step.parts["part"]
        wide = "width" if part.kind.role is Role.BAND else "outside"
        for what in ("length", wide if part.kind.role in WOVEN_WORK else ""):
            size = result.quantities.get(f"{part.name}.{what}")
            if size is not None:
                found.setdefault(step.number, []).append(Check(f"{what} of `{part.name}`", size))
    return found


def tools(result: PlanResult) -> list[str]:
    """What to have on the table: by the verbs of the steps, and the needles of the parts."""
    if result.ask is None:
        return []
    plan = result.ask.plan
    needles = (
        f"needle {part.text('needle')}"
        for part in plan.parts.values()
        if part.has("needle") and not part.without_needle
    )
    lying = (tool for step in plan.steps for tool in step_tools.tools(step))
    return list(dict.fromkeys((*needles, *lying)))
