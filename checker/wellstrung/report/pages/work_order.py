"""The work on a time line, in the order that finishes first, with what cures by itself.

Hands work on one step at a time. A wait needs no hands, and what does not need the joint is done
meanwhile. Blocks are drawn as long as they take, but short ones keep room for their number, and
long stretches in which hands are idle are shortened.
"""

from __future__ import annotations

from itertools import pairwise

from msgspec import Struct

from wellstrung.common.wording import hours
from wellstrung.drawing import Figure
from wellstrung.drawing.canvas import Canvas, words_width
from wellstrung.judging.result import PlanResult
from wellstrung.model.item import Missing
from wellstrung.model.plan import Step
from wellstrung.work import hours as piece_hours
from wellstrung.work.dependencies import for_times
from wellstrung.work.schedule import SLACK, Times, Work, overlapping

#: width of a time line on the page, mm; the least that a block with a number takes; an idle stretch
_WIDTH, _BLOCK, _IDLE = 172.0, 4.4, 16.0
#: height of a row, with what cures and without; room for the names at their heads, mm
_ROW, _FLAT_ROW, _LEAST_NAME, _MOST_NAME = 16.0, 11.0, 26.0, 48.0


class Done(Struct, frozen=True):
    """One step: when it begins, how long hands take, and how long what they made then rests."""

    number: int
    words: str
    begins: float
    hands: float
    rest: float
    student_begins: float
    student_hands: float
    meanwhile: tuple[str, ...] = ()

    @property
    def waits(self) -> bool:
        """Whether it is a wait, which takes no hands."""
        return self.rest > 0 and not self.hands


class Order(Struct, frozen=True):
    """The steps in the order that finishes first; no time is known without the value `missing`.

    `longer_cure` says that a joint needs more time to cure than the plan gives it; here it has it.
    """

    steps: tuple[Done, ...] = ()
    maker_ends: float = 0.0
    student_ends: float = 0.0
    as_written: bool = True
    longer_cure: bool = False
    missing: str = ""
    untimed: tuple[str, ...] = ()

    @property
    def hands(self) -> float:
        """Minutes of hands at the maker's pace."""
        return sum(step.hands for step in self.steps)

    @property
    def student_hands(self) -> float:
        """Minutes of hands at a student's pace."""
        return sum(step.student_hands for step in self.steps)


def order_of(result: PlanResult) -> Order | None:
    """The work of a plan; None where it has none."""
    if result.ask is None or not result.ask.plan.steps:
        return None
    plan, steps = result.ask.plan, result.ask.plan.steps
    quantities = result.ask.quantities
    words = tuple(in_words(step) for step in steps)
    try:
        hands = [time.middle for time in piece_hours.hands(quantities)]
    except Missing as missing:
        return Order(missing=missing.field, untimed=words)
    pace = plan.bench.paces["student"].value
    work = for_times(quantities, hands)
    slow = work.taking([minutes * pace for minutes in hands])
    order = piece_hours.fastest_order(quantities).order or work.written
    times, slowly = overlapping(work, order), overlapping(slow, order)
    done = [
        Done(
            steps[index].number, words[index], times.starts[index], hands[index],
            work.tasks[index].rest, slowly.starts[index], slow.tasks[index].hands,
            _meanwhile(index, work, times, words),
        )
        for index in order
    ]  # fmt: skip
    as_given = overlapping(Work(work.tasks), order)
    longer_cure = times.finish > as_given.finish + SLACK or any(
        start > given + SLACK for start, given in zip(times.starts, as_given.starts, strict=True)
    )
    return Order(tuple(done), times.finish, slowly.finish, order == work.written, longer_cure)


def _meanwhile(wait: int, work: Work, times: Times, words: tuple[str, ...]) -> tuple[str, ...]:
    """What hands do while a wait runs."""
    end = times.over[wait]
    begins = end - work.tasks[wait].rest
    return tuple(
        words[index]
        for index, task in enumerate(work.tasks)
        if index != wait and task.hands and begins <= times.starts[index] < end
    )


def in_words(step: Step) -> str:
    """A step in words, names in backticks: glue `cap` to `rope`, 2 joints."""
    said = step.verb
    if step.verb == "wait":
        return f"wait {step.get('time')}" if step.get("time") else said
    for name, before in _NAMED:
        value = step.get(name)
        if value is not None:
            joined = "of" if (step.verb, name) == ("finish thread", "part") else before
            said += f" {joined} `{value}`" if joined else f" `{value}`"
    for name, one, many in _COUNTED:
        count = step.get(name)
        if count is not None:
            said += f", {count} {one if count == 1 else many}"
    return said


_NAMED = (
    ("part", ""), ("onto", "onto"), ("to", "to"), ("from", "from"), ("around", "around"),
    ("by", "by"), ("with", "with"),
)  # fmt: skip
_COUNTED = (("joints", "joint", "joints"), ("ends", "end", "ends"), ("times", "time", "times"))


def days(minutes: float) -> str:
    """A time in days, hours and minutes."""
    return hours(minutes, days=True)


class _Block(Struct, frozen=True):
    """A stretch of a time line: of hands, or of what cures."""

    start: float
    end: float
    name: str
    cures: bool


def time_line(title: str, rows: list[tuple[str, Order, bool]]) -> Figure:
    """Rows of one time line each: whose, their work, and whether at a student's pace."""
    canvas = Canvas()
    letters = int(_MOST_NAME / words_width("m"))
    heads = [name if len(name) <= letters else f"{name[: letters - 1]}…" for name, *_ in rows]
    room = max(*map(words_width, heads), _LEAST_NAME) + 2.0
    said, y = [], 0.0
    for head, (name, order, student) in zip(heads, rows, strict=True):
        blocks = _blocks(order, student=student)
        ends = days(order.student_ends if student else order.maker_ends)
        hands = days(order.student_hands if student else order.hands)
        canvas.text(0, y + 3.3, head, "label", anchor="start")
        canvas.text(0, y + 6.8, f"done in {ends}", anchor="start")
        _row(canvas, blocks, y, room)
        said.append(f"{name}: {hands} of hands, done in {ends}")
        y += _ROW if any(block.cures for block in blocks) else _FLAT_ROW
    alt = f"{title}. {'; '.join(said)}. The table below lists each step."
    caption = (
        "Numbers are the steps of the plan. Striped: cures by itself. Long waits are shortened."
    )
    return Figure(title, alt, caption, canvas.svg(title, alt, "timeline"))


def _blocks(order: Order, *, student: bool) -> list[_Block]:
    found = []
    for step in order.steps:
        start = step.student_begins if student else step.begins
        hands = step.student_hands if student else step.hands
        if hands:
            found.append(_Block(start, start + hands, str(step.number), False))
        if step.rest:
            end = start + hands + step.rest
            found.append(_Block(start + hands, end, days(step.rest), True))
    return found


def _row(canvas: Canvas, blocks: list[_Block], y: float, left_edge: float) -> None:
    """One time line: hands above, what cures below."""
    at = _places(blocks, left_edge)
    for block in blocks:
        left, right = at[block.start], at[block.end]
        top = y + 7.4 if block.cures else y + 1
        canvas.box(left, top, right - left, 5.2, "cure" if block.cures else "hands")
        if block.cures:
            for stripe in range(int((right - left) / 2.4)):
                x = left + 1.2 + stripe * 2.4
                canvas.line(x, top + 5.2, x + 1.2, top, "stripe")
        width = words_width(block.name)
        if width > right - left:
            continue  # the table below has it
        if block.cures:
            middle = (left + right) / 2
            canvas.box(middle - width / 2 - 0.5, top + 0.7, width + 1.0, 3.8, "words-ground")
        canvas.text((left + right) / 2, top + 2.6, block.name)


def _places(blocks: list[_Block], left: float) -> dict[float, float]:
    """Where each moment lies on the page: blocks of hands by their length, idle time shortened."""
    moments = sorted({moment for block in blocks for moment in (block.start, block.end)})
    spans = list(pairwise(moments))
    busy = [
        any(not b.cures and b.start < end and b.end > start for b in blocks) for start, end in spans
    ]
    idle = min(_IDLE, (_WIDTH - left) / 2 / max(busy.count(False), 1))
    room = _WIDTH - left - idle * busy.count(False)
    worked = sum(end - start for (start, end), one in zip(spans, busy, strict=True) if one)
    least = min(_BLOCK, room / max(busy.count(True), 1))
    spare = max(room - least * busy.count(True), 0.0)
    at, places = left, {}
    for (start, end), one in zip(spans, busy, strict=True):
        places[start] = at
        at += least + spare * (end - start) / worked if one else idle
        places[end] = at
    return places
