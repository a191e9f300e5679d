"""The piece as it is worn: round a neck or a wrist of the wearer's size, if the plan gives it."""

from __future__ import annotations

from wellstrung.derived.piece import turns
from wellstrung.drawing import Figure, marks
from wellstrung.drawing.canvas import Canvas
from wellstrung.drawing.looks import shape_of
from wellstrung.drawing.looks.sizes import Sizes
from wellstrung.drawing.pen import Bend
from wellstrung.drawing.piece import course
from wellstrung.drawing.piece.body import Body
from wellstrung.drawing.piece.course import Course
from wellstrung.drawing.piece.hanging import can_be_seen
from wellstrung.drawing.piece.stretches import WORKED, Stretch
from wellstrung.judging.result import PlanResult
from wellstrung.model.item import Missing
from wellstrung.model.plan import Plan
from wellstrung.quantity.working import number
from wellstrung.subjects.worn import ROUND

#: round a neck that the plan does not give, mm: usual for a grown woman, from memory, no source
_NECK = 355.0
#: a piece that lies open round the neck, both its ends in front
_OPEN = "lariat"
#: the most that a drawing takes on paper, mm, and how large it is drawn, times life: our own choice
_PAPER, _LARGEST = (93.0, 90.0), 1.0
#: more turns than a drawing has room to show: our own choice
_MOST_TURNS = 40


def worn(result: PlanResult) -> Figure | None:
    """The piece on its course, without words; None where it goes round nothing."""
    body = on_course(result)
    if body is None:
        return None
    left, top, right, bottom = body.canvas.extent
    canvas = Canvas(marks.fitting(right - left, bottom - top, _PAPER, _LARGEST))
    canvas.take(body.canvas, "piece")
    left, _, _, bottom = canvas.extent
    marks.check_bar(canvas, left, bottom + canvas.paper(4), on_paper=False)
    size = _measured(body.plan)
    said = "As it is worn"
    if size is not None:
        said += f", round the dashed {ROUND[_round(body.plan)]} of {number(size / 10)} cm"
    alt = f"{body.plan.title}. {said}."
    svg = canvas.svg("The piece as it is worn", alt, "piece")
    return Figure("The piece as it is worn", alt, f"{said}.", svg, (), canvas.paper_size[1])


def on_course(result: PlanResult, most_beads: int = 0) -> Body | None:
    """The piece drawn as it is worn, life-size; None where it goes round nothing."""
    if result.ask is None or not result.ask.plan.run or _round(result.ask.plan) not in ROUND:
        return None
    plan, canvas, sizes = result.ask.plan, Canvas(), Sizes(result.ask)
    if not can_be_seen(plan):
        return None
    size = _measured(plan)
    if size is not None:
        _body_part(canvas, plan, size)

    ways: dict[float, Course] = {}

    def laid(run: list[Stretch], longer: float) -> Bend:
        length, start = run[-1].end + longer, 0.0
        if longer not in ways:
            ways[longer] = _course(plan, length, size)
        way = ways[longer]
        if plan.is_loop:  # what is heavy hangs lowest
            start = length / 2 - _lowest(run)
        return lambda along, across: way.bend(along + start, across)

    return Body(sizes, canvas, most_beads=most_beads, laid=laid)


def _round(plan: Plan) -> str:
    """The piece that is worn as this one is."""
    return "necklace" if plan.piece == _OPEN else plan.piece


def _measured(plan: Plan) -> float | None:
    """How large the neck or the wrist of the wearer is, mm, if the plan says so."""
    wearer = plan.section("wearer")
    if wearer is None or not wearer.has(ROUND[_round(plan)]):
        return None
    try:
        return wearer.girth(ROUND[_round(plan)]).middle
    except Missing:
        return None


def _course(plan: Plan, length: float, size: float | None) -> Course:
    if plan.piece == _OPEN and not plan.is_loop:
        return course.over_neck(length, size or _NECK)
    if ROUND[_round(plan)] == "neck":
        return course.on_neck(length, size or _NECK)
    times = round(turns(plan).middle)
    if 1 < times <= _MOST_TURNS and not plan.is_loop:
        clasped = any(entry.half for entry in plan.run)
        return course.coil(length, times, *_round_as(plan), meets=clasped)
    return course.oval(length, *_round_as(plan))


def _round_as(plan: Plan) -> tuple[float, ...]:
    """How much wider than high what it goes round is: a finger is round."""
    return (1.0,) if ROUND[_round(plan)] == "finger" else ()


def _lowest(run: list[Stretch]) -> float:
    """The middle of the longest part that hangs lowest: a pouch, else any part not worked."""
    flat = [one for one in run if shape_of(one.entry.part).flat]
    others = [one for one in run if one.entry.part.kind.role not in WORKED]
    return max(flat or others or run, key=lambda one: one.length).middle


def _body_part(canvas: Canvas, plan: Plan, size: float) -> None:
    """The neck or the wrist that the piece goes round, dashed."""
    neck = ROUND[_round(plan)] == "neck"
    way = course.on_neck(size, size) if neck else course.oval(size, *_round_as(plan))
    canvas.curve(way.spots, "hidden")
