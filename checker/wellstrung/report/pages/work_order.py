"""The work in the order that is over first, on a time line, with what cures by itself.

Hands work on one step at a time; a wait needs no hands, and what does not need the joint is done
meanwhile. Drawn with its blocks as long as they take, but that short ones keep room for their
number, and long stretches in which hands are idle are shortened.
"""

from __future__ import annotations

from itertools import pairwise

from msgspec import Struct

from wellstrung.drawing import Figure
from wellstrung.drawing.shapes import LETTER, Canvas
from wellstrung.judging.result import PlanResult
from wellstrung.model.item import Missing
from wellstrung.model.plan import Step
from wellstrung.work import hours
from wellstrung.work.dependencies import for_times
from wellstrung.work.schedule import Times, Work, overlapping

#: width of a time line on the page, mm; the least that a block with a number takes; an idle stretch
_WIDTH, _BLOCK, _IDLE = 172.0, 4.4, 16.0
#: height of a row, with what cures and without; the longest name at its head, mm; height of words
_ROW, _FLAT_ROW, _NAME = 16.0, 11.0, 48.0
_SMALL, _NAME_SIZE, _LEAST_NAME = 2.3, 2.6, 26.0


class Done(Struct, frozen=True):
    """One step in its order: when it begins, how long hands take, how long it then rests."""

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
    """The steps in the order that is over first; `missing` is what has to be said to tell times."""

    steps: tuple[Done, ...] = ()
    maker_ends: float = 0.0
    student_ends: float = 0.0
    as_written: bool = True
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
        hands = [time.middle for time in hours.hands(quantities)]
    except Missing as missing:
        return Order(missing=missing.field, untimed=words)
    pace = plan.bench.paces["student"].value
    work = for_times(quantities, hands)
    slow = work.taking([minutes * pace for minutes in hands])
    order = hours.over_first(quantities).order or work.written
    times, slowly = overlapping(work, order), overlapping(slow, order)
    done = [
        Done(
            steps[index].number, words[index], times.starts[index], hands[index],
            work.tasks[index].rest, slowly.starts[index], slow.tasks[index].hands,
            _meanwhile(index, work, times, words),
        )
        for index in order
    ]  # fmt: skip
    return Order(tuple(done), times.finish, slowly.finish, order == work.written)


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
    """A step as one would tell it, names in backticks: glue `cap` to `rope`, 2 joints."""
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


def spoken(minutes: float) -> str:
    """A time as a person tells it.

    >>> spoken(4), spoken(95), spoken(1505), spoken(0.4)
    ('4 min', '1 h 35 min', '1 day 1 h', 'under 1 min')
    """
    if 0 < minutes < 1:
        return "under 1 min"
    whole = round(minutes) if minutes < 1440 else round(minutes / 60) * 60
    days, rest = divmod(whole, 1440)
    hours, left = divmod(rest, 60)
    said = [f"{days} day{'s' if days != 1 else ''}"] if days else []
    said += [f"{hours} h"] if hours else []
    said += [f"{left} min"] if left and not days else []
    return " ".join(said) or "0 min"


class _Block(Struct, frozen=True):
    """A stretch of a time line: of hands, or of what cures."""

    start: float
    end: float
    name: str
    cures: bool


def time_line(title: str, rows: list[tuple[str, Order, bool]]) -> Figure:
    """Rows of one time line each: whose, their work, and whether at a student's pace."""
    canvas = Canvas()
    letters = int(_NAME / (_NAME_SIZE * LETTER))
    heads = [name if len(name) <= letters else f"{name[: letters - 1]}…" for name, *_ in rows]
    room = max(max(len(head) for head in heads) * _NAME_SIZE * LETTER, _LEAST_NAME) + 2.0
    told, y = [], 0.0
    for head, (name, order, student) in zip(heads, rows, strict=True):
        blocks = _blocks(order, student=student)
        ends = spoken(order.student_ends if student else order.maker_ends)
        hands = spoken(order.student_hands if student else order.hands)
        canvas.text(0, y + 4.2, head, "label", _NAME_SIZE, "start")
        canvas.text(0, y + 7.6, f"done in {ends}", "small-words", _SMALL, "start")
        _row(canvas, blocks, y, room)
        told.append(f"{name}: {hands} of hands, done in {ends}")
        y += _ROW if any(block.cures for block in blocks) else _FLAT_ROW
    alt = f"{title}. {'; '.join(told)}. The table below tells each step."
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
            found.append(_Block(start + hands, end, spoken(step.rest), True))
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
        width = len(block.name) * _SMALL * LETTER
        if width > right - left:
            continue  # the table below tells it
        if block.cures:
            middle = (left + right) / 2
            canvas.box(middle - width / 2 - 0.5, top + 0.7, width + 1.0, 3.8, "words-ground")
        canvas.text((left + right) / 2, top + 3.5, block.name, "block-words", _SMALL)


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
