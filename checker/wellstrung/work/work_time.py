"""The bench time of a plan: its steps as records with their minutes, and what follows from them.

What a step takes is what the plan writes (`takes:`), or the bench's rate for it, piece by piece.
What a step needs is read from the parts it names: it waits for every earlier step on whatever is
by then joined to them. A wait is for the joints glued since the wait before.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from wellstrung.formulas.arithmetic import opaque
from wellstrung.model.parts import Missing, Part, Plan, Step
from wellstrung.quantity.value import Cause, Quantity, Spread, derived, exact, leaf, total, worked
from wellstrung.reading import tree
from wellstrung.reading.settings import BEADS_PER_MINUTE, RATE_SPREAD, RATES, Setting
from wellstrung.subjects.counts import pieces_hung
from wellstrung.subjects.steps import done_at_home
from wellstrung.work import bench_time
from wellstrung.work.bench_time import Task

if TYPE_CHECKING:
    from wellstrung.derived.of_plan import Quantities

#: Verbs whose time is beads over a rate; the others have a rate by their own name.
_BEADING = {"weave": "weaving", "string": "stringing"}
#: Verbs that take no time of the maker's hands: the piece waits, or is done.
_IDLE = frozenset({"wait", "wear"})
#: Fields that say how often a step does its work.
_COUNTS = ("ends", "joints", "times")
#: Fields that name the parts a step works on. The ring that something hangs by is one of many.
_WORKED_ON = ("part", "to", "onto", "from", "around")
_COUNTED = "counting, waits not included"


def step_time(plan: Plan, step: Step, ask: Quantities) -> Quantity:
    """Minutes of hands that a step takes; raises Missing where nothing says."""
    name = f"step {step.number} ({step.verb})"
    if step.get("takes") is not None:
        node = step.node.entries["takes"].node
        spelling = str(node.value)
        return leaf(name, step.minutes("takes"), "min", place=node.place, spelling=spelling)
    if step.verb in _IDLE:
        return exact(name, 0.0, "min")
    part = plan.parts.get(str(step.get("part")))
    if step.verb in _BEADING:
        if part is None:
            raise Missing(f"`takes` of step {step.number}")
        return derived(
            name,
            "min",
            lambda beads, rate, pace: bench_time.beading_time(beads, rate) * pace,
            beads=ask.of(part, "beads"),
            rate=_rate(plan, _beading_rate(plan, part, step)),
            pace=_pace(plan, "maker"),
        )
    if step.verb not in plan.bench.rates:
        raise Missing(f"`takes` of step {step.number}")
    return derived(
        name,
        "min",
        lambda count, each, pace: count * each * pace,
        count=exact(f"{name} count", times_done(plan, step)),
        each=_rate(plan, step.verb),
        pace=_pace(plan, "maker"),
    )


def times_done(plan: Plan, step: Step) -> int:
    """How often a step does its work: as it says, or as the run and what is hung say."""
    written = next((count for name in _COUNTS if (count := step.get(name)) is not None), None)
    if written is not None:
        return int(written)
    part = step.get("part")
    if step.verb == "finish thread":
        return 2
    if step.verb in ("cut", "hang"):
        return sum(pieces_hung(line) for line in plan.hung if line.part.name == part) or 1
    if step.verb == "close ring" and step.get("around") is None:
        return _rings_closed(plan, step) or 1
    return 1


def tasks(plan: Plan, hands: Sequence[float]) -> tuple[Task, ...]:
    """The steps as records, with these minutes of hands and what each of them needs."""
    joined: list[set[str]] = []  # what hangs together by now, assembly by assembly
    touched: list[set[str] | None] = []  # by step; None for a step that is about everything
    glued: set[str] | None = set()
    curing: set[str] | None = None  # what the next wait is for; None where nothing says
    found = []
    for step, minutes in zip(plan.steps, hands, strict=True):
        if step.verb == "wait":
            parts = curing = glued or curing
            glued = set()
        else:
            parts = _parts_of(plan, step)
            if step.verb == "glue":
                glued = (glued or set()) | (parts or set())
        whole = None if parts is None else _together(joined, parts)
        needs = tuple(
            index
            for index, before in enumerate(touched)
            if whole is None or before is None or before & whole
        )
        rest = step.minutes("time") if step.verb == "wait" else 0.0
        found.append(Task(minutes, rest, needs))
        touched.append(parts)
    return tuple(found)


def hands_on(ask: Quantities) -> Quantity:
    """Minutes that hands are at work, at the maker's pace."""
    return total("piece.bench_time", "min", _times(ask), _COUNTED)


def student_time(ask: Quantities) -> Quantity:
    """The same at a student's pace."""
    return derived(
        "piece.student_time",
        "min",
        lambda time, pace: time * pace,
        time=ask.get("piece.bench_time"),
        pace=_pace(ask.plan, "student"),
    )


def student_step(ask: Quantities, number: int) -> Quantity:
    """Minutes that one step takes a student's hands, for every piece that the plan makes."""
    plan, step = ask.plan, ask.plan.steps[number - 1]
    return derived(
        f"step {number} ({step.verb}) in class",
        "min",
        lambda time, pace, makes: time * pace * makes,
        time=step_time(plan, step, ask),
        pace=_pace(plan, "student"),
        makes=exact("pieces made", plan.makes),
    )


def class_time(ask: Quantities) -> Quantity:
    """Minutes of class until a student's hands are done, step after step as the plan has them."""
    plan = ask.plan
    if plan.written("class") is None:
        raise Missing("`class`, how long it meets")
    if not plan.steps:
        raise Missing("`work`, the steps in their order")
    session, between = meeting(plan)
    whole = [index for index, step in enumerate(plan.steps) if step.verb == "glue"]
    none = exact("brought ready made", 0.0, "min")
    times = {
        f"t{step.number}": none if done_at_home(plan, step) else student_step(ask, step.number)
        for step in plan.steps
    }

    @opaque("minutes of class, what cures left to cure between meetings, of")
    def taken(**minutes: float) -> float:
        at = (minutes.pop("session"), minutes.pop("between"))
        steps = tasks(plan, list(minutes.values()))
        return bench_time.class_time(steps, range(len(steps)), *at, whole)

    return worked(
        "piece.class_time",
        "min",
        taken,
        {"session": session, "between": between, **times},
        source="what cures goes on curing between two meetings; waits that do not fit are added",
    )


def meeting(plan: Plan) -> tuple[Quantity, Quantity]:
    """How long a class meets, and how long it is from one meeting to the next."""
    entry = plan.tree.entries["class"]
    assert isinstance(entry.node, tree.Mapping)
    meets = plan.item("class", entry.key, entry.node)
    setting = plan.bench.limits["between sessions"]
    usual = exact("between sessions", setting.value, setting.unit, source=setting.reason)
    return meets.duration("length"), meets.duration("between") if meets.has("between") else usual


def as_written(ask: Quantities) -> Quantity:
    """Minutes to the end, every step and wait one after another as the plan has them."""
    waits = [
        exact(f"step {step.number} (wait) time", step.minutes("time"), "min")
        for step in ask.plan.steps
        if step.verb == "wait"
    ]
    return total("piece.finish_as_written", "min", [*_times(ask), *waits], "waits included")


def earliest(ask: Quantities) -> Quantity:
    """Minutes to the end in the order that is over first, with waits put to use.

    The order is the best for the times at rest; over their spread it is kept.
    """
    times = {f"t{number}": time for number, time in enumerate(_times(ask), 1)}
    best = bench_time.earliest(tasks(ask.plan, [time.middle for time in times.values()]))
    order = ", ".join(str(ask.plan.steps[index].number) for index in best.order)
    source = f"steps in the order {order}"
    if not best.exact:
        source += (
            f"; with more than {bench_time.MOST_OPEN} steps free to change places it is not proved"
            f" the best, and none is over before {best.at_least:g} min"
        )

    @opaque("end of the steps, waits put to use, that take")
    def finish(**hands: float) -> float:
        return bench_time.finish_in(tasks(ask.plan, list(hands.values())), best.order)

    return worked(
        "piece.finish_earliest",
        "min",
        finish,
        times,
        source=source,
    )


def _times(ask: Quantities) -> list[Quantity]:
    if not ask.plan.steps:
        raise Missing("`work`, the steps in their order")
    return [step_time(ask.plan, step, ask) for step in ask.plan.steps]


def _beading_rate(plan: Plan, part: Part, step: Step) -> str:
    stitch = part.node_at("stitch")
    name = str(stitch.value) if stitch is not None and step.verb == "weave" else ""
    return name if name in plan.bench.rates else _BEADING[step.verb]


def _rate(plan: Plan, name: str) -> Quantity:
    setting = plan.bench.rates[name]
    return _leaf(f"rate of {name}", setting, name, setting == RATES.get(name))


def _pace(plan: Plan, name: str) -> Quantity:
    setting = plan.bench.paces[name]
    return exact(f"pace of the {name}", setting.value, setting.unit, source=setting.reason)


def _leaf(name: str, setting: Setting, key: str, recalled: bool) -> Quantity:
    """A rate; a remembered one may be far off, one of the maker's own is taken as it is."""
    spreads = []
    if recalled:
        wide = RATE_SPREAD * setting.value
        example = "9 beads per min" if setting.unit == BEADS_PER_MINUTE else "4 min"
        cure = f"time your own and write `rates: {{{key}: {example}}}` in bench.yaml"
        spreads = [Spread(Cause(name, "", cure), wide, wide)]
    return leaf(
        name,
        setting.value,
        setting.unit,
        spreads,
        source=setting.reason,
        grade="from memory" if recalled else "",
    )


def _rings_closed(plan: Plan, step: Step) -> int:
    """The rings of the run that a step closes: between the parts it joins, or all of them."""
    joins = _names(step, "joins")
    closed = 0
    for at, entry in enumerate(plan.run):
        near = (*plan.run[max(at - 1, 0) : at], *plan.run[at + 1 : at + 2])
        beside = {f"{other.part.name}.{other.half}".removesuffix(".") for other in near}
        if entry.part.name == step.get("part") and (not joins or joins <= beside):
            closed += entry.linked
    return closed


def _names(step: Step, field: str) -> set[str]:
    """The places in the run that a list of a step names."""
    names = step.node.value.get(field)
    return {str(name) for name in names} if isinstance(names, list) else set()


def _parts_of(plan: Plan, step: Step) -> set[str] | None:
    """The parts that a step works on, or None for a step that is about the whole piece."""
    if step.verb == "close ring":
        around = step.get("around")
        ring = step.get("part")
        found = {name.partition(".")[0] for name in _names(step, "joins")}
        found |= {str(around)} if around is not None else set()
        if not found:
            for at, entry in enumerate(plan.run):
                if entry.part.name == ring:
                    near = (*plan.run[max(at - 1, 0) : at], *plan.run[at + 1 : at + 2])
                    found |= {other.part.name for other in near}
            for line in plan.hung:
                if line.by is not None and line.by.name == ring:
                    found |= {line.part.name, line.source.name}
        return found or None
    named = {str(step.get(field)) for field in _WORKED_ON if step.get(field) is not None}
    return named or None


def _together(joined: list[set[str]], parts: set[str]) -> set[str]:
    """All that hangs together once these parts are joined; notes it."""
    whole = set(parts)
    for group in [group for group in joined if group & parts]:
        whole |= group
        joined.remove(group)
    joined.append(whole)
    return whole
