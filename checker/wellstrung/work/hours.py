"""The hours of a piece as named quantities, which `work` brings to the quantities of a plan.

`piece.bench_time` and `piece.student_time` are of hands alone, `piece.class_time` the class that a
student needs, `piece.finish_as_written` the end with every wait as written, `piece.finish_earliest`
the end when waits are put to use, and `piece.step 3` a student's minutes for one step.
"""

from __future__ import annotations

from wellstrung.common.cache import cached
from wellstrung.derived.of_plan import Brought, PieceQuantity, Quantities, StepQuantity
from wellstrung.formulas.arithmetic import opaque
from wellstrung.model.item import Missing
from wellstrung.model.plan import Plan
from wellstrung.quantity.arithmetic import derived, exact, product, total
from wellstrung.quantity.value import Quantity
from wellstrung.subjects.steps import done_at_home
from wellstrung.work import search
from wellstrung.work.dependencies import for_times, wait_of
from wellstrung.work.minutes import minutes_of, pace
from wellstrung.work.schedule import InOrder, Meetings, Task, Times, Work, in_a_row


def hands(ask: Quantities) -> list[Quantity]:
    """Minutes of each step at the maker's pace, for every piece made.

    Raises Missing without steps or a time.
    """
    if not ask.plan.steps:
        raise Missing("`work`, the steps in their order")
    return [minutes_of(step, ask) for step in ask.plan.steps]


@cached
def written(plan: Plan) -> Times:
    """When each step starts and is over, in a row, by the times that the plan writes.

    A step that writes no time counts as quick: no joint is believed to have cured for longer than
    the plan says.
    """
    return in_a_row(Work(tuple(Task(step.minutes("takes"), wait_of(step)) for step in plan.steps)))


def fastest_order(ask: Quantities) -> search.Found:
    """The order of the steps that finishes first, by the middle of each time, found once."""
    return ask.plan.cache.get(_fastest_order, ask)


def _fastest_order(ask: Quantities) -> search.Found:
    return search.earliest(for_times(ask, [time.middle for time in hands(ask)]))


def _bench_time(ask: Quantities) -> Quantity:
    return total("piece.bench_time", "min", hands(ask), "counting, waits not included")


def _student_time(ask: Quantities) -> Quantity:
    return product(
        "piece.student_time", "min", ask.get("piece.bench_time"), pace(ask.plan, "student")
    )


def _student_step(ask: Quantities, number: int) -> Quantity:
    """Minutes that one step takes a student's hands, for every piece that the plan makes."""
    step = ask.plan.steps[number - 1]
    return product(
        f"step {number} ({step.verb}) in class",
        "min",
        minutes_of(step, ask),
        pace(ask.plan, "student"),
    )


def in_class(ask: Quantities) -> list[Quantity]:
    """A student's minutes for each step, none for what is brought ready made; raises Missing."""
    none = exact("brought ready made", 0.0, "min")
    return [
        none if done_at_home(ask.plan, step) else _student_step(ask, step.number)
        for step in ask.plan.steps
    ]


def _class_time(ask: Quantities) -> Quantity:
    """Minutes of class until a student's hands are done, step after step as the plan has them."""
    plan = ask.plan
    if plan.section("class") is None:
        raise Missing("`class`, how long it meets")
    if not plan.steps:
        raise Missing("`work`, the steps in their order")
    times = {f"t{number}": time for number, time in enumerate(in_class(ask), 1)}
    in_order = InOrder(for_times(ask, [0.0] * len(plan.steps)))
    whole = frozenset(index for index, step in enumerate(plan.steps) if step.verb == "glue")

    @opaque("minutes of class, what cures left to cure between meetings, of")
    def taken(session: float, between: float, **minutes: float) -> float:
        return in_order.times([*minutes.values()], Meetings(session, between, whole)).hands

    return derived(
        "piece.class_time",
        "min",
        taken,
        {**_meetings(plan), **times},
        source="what cures goes on curing between two meetings; waits that do not fit are added",
    )


def _meetings(plan: Plan) -> dict[str, Quantity]:
    """How long a class meets, and how long it is from one meeting to the next."""
    meets = plan.section("class")
    assert meets is not None
    setting = plan.bench.limits["between sessions"]
    usual = exact("between sessions", setting.value, setting.unit, source=setting.reason)
    between = meets.duration("between") if meets.has("between") else usual
    return {"session": meets.duration("length"), "between": between}


def _as_written(ask: Quantities) -> Quantity:
    """Minutes to the end, every step and wait one after another as the plan has them."""
    waits = [
        exact(f"step {step.number} (wait) time", wait_of(step), "min")
        for step in ask.plan.steps_that("wait")
    ]
    return total("piece.finish_as_written", "min", [*hands(ask), *waits], "waits included")


def _earliest(ask: Quantities) -> Quantity:
    """Minutes to the end in the order that finishes first, with waits put to use.

    The order is the best for the middle of each time; over their spread it is kept.
    """
    times = {f"t{number}": time for number, time in enumerate(hands(ask), 1)}
    work, found = for_times(ask, [0.0] * len(times)), fastest_order(ask)
    order = found.order or work.written
    source = f"steps in the order {', '.join(str(index + 1) for index in order)}"
    if found.stopped:
        source += (
            f"; the search for a better order stopped after it had looked at a step"
            f" {search.MOST_LOOKS:,} times, and no order is over before {found.cost:g} min"
        )

    in_order = InOrder(work, order)

    @opaque("end of the steps, waits put to use, that take")
    def finish(**minutes: float) -> float:
        return in_order.times([*minutes.values()]).finish

    return derived("piece.finish_earliest", "min", finish, times, source=source)


HOURS: tuple[Brought, ...] = (
    PieceQuantity("bench_time", _bench_time),
    PieceQuantity("student_time", _student_time),
    PieceQuantity("class_time", _class_time),
    PieceQuantity("finish_as_written", _as_written),
    PieceQuantity("finish_earliest", _earliest),
    StepQuantity("step", _student_step),
)
