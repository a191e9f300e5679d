"""A fringe on its eyes, side by side at its true spacing and widths."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from itertools import combinations, product

from wellstrung.common.places import Place
from wellstrung.derived.outline import Slab, side_by_side
from wellstrung.drawing import Figure, outlines
from wellstrung.drawing.outlines import Outline
from wellstrung.drawing.sections.case import Case, drawable, marks_of, mm, size, with_range
from wellstrung.drawing.sections.section import Section
from wellstrung.model.item import Missing
from wellstrung.model.parts import Part, Role
from wellstrung.rulebook import HungOnEyes

#: how many neighbours are drawn
_MOST = 12
#: how much is drawn of what is as wide all the way down, mm: enough to see neighbours meet
_DROP = 9.0


def draw(case: Case[HungOnEyes]) -> Figure | None:
    """The eyes, and what hangs from each, as wide at every height as it is."""
    fringe = case.join
    hung = list(fringe.in_order.items())[:_MOST]
    if len(hung) < 2:
        return None
    spacing = case.get(fringe.eyes.quantity("spacing"))
    hole, wall = (case.get(fringe.eyes.quantity(what)) for what in ("hole", "wire"))
    step, rim, top = spacing.middle, hole.middle + 2 * wall.middle, hole.middle / 2
    legs = {eye: _leg(case, line.part, n) for eye, (line, n) in hung}
    left, right = hung[0][0], hung[-1][0]
    ends = (_wide(legs[left]) + _wide(legs[right])) / 2
    deep = max(slab.foot for leg in legs.values() for slab in leg)
    section = Section(step * (right - left) + ends, rim + deep)
    for eye in range(left, right + 1):
        rims = outlines.rim((eye - left) * step, 0, rim, hole.middle)
        section.canvas.area(rims, "bead" if fringe.eyes.woven else "metal")
    boxes = {eye: _boxes(leg, (eye - left) * step, top) for eye, leg in legs.items()}
    for eye, (line, _) in hung:
        for box in boxes[eye]:
            section.canvas.area([box], "held")
        if line.part.kind.role is not Role.DROP and legs[eye][-1].foot == _DROP:
            wide = _wide(legs[eye])
            section.goes_on(boxes[eye][0][0][0], top + _DROP, wide, level=True)
    said = case.said(("fringe-spread",), _place(case))
    # legs sewn to a woven edge may lie a little behind each other
    pairs = combinations(boxes.values(), 2) if said or not fringe.eyes.woven else ()
    crowded = [middle for one, other in pairs for middle in _overlaps(section, one, other)]
    if said:
        x, y = crowded[0] if crowded else (step / 2, top + _DROP / 3)
        section.mark(x, y, marks_of(said))
    part = hung[0][1][0].part
    widest = max(legs[left], key=lambda slab: slab.width.middle)
    half = widest.width.middle / 2
    below = top + deep
    section.across(-half, half, below, f"wide {size(widest.width)}", _across(case, part))
    section.across(0, step, 0, f"apart {size(spacing)}", fringe.eyes.quantity("spacing"))
    return case.figure(
        section,
        f"fringe on {fringe.eyes.words}",
        f"eyes {with_range(spacing)} apart; {', '.join(_named(case, section, legs, top))}"
        + _left_out(case),
        _need(legs),
        said,
    )


def _leg(case: Case[HungOnEyes], part: Part, number: int) -> list[Slab]:
    """The outline of one piece; of what is as wide all the way down its upper end."""
    slabs = case.ask.outline(part, number)
    if not math.isinf(slabs[-1].foot):
        return slabs
    tall = min(_DROP, _tall(case, part))
    return [Slab(0.0, tall, drawable(slabs[0].width))]


def _wide(leg: list[Slab]) -> float:
    return max(slab.width.middle for slab in leg)


def _boxes(leg: list[Slab], x: float, top: float) -> list[Outline]:
    return [
        outlines.box(x - s.width.middle / 2, top + s.top, s.width.middle, s.foot - s.top)
        for s in leg
    ]


def _overlaps(
    section: Section, one: list[Outline], other: list[Outline]
) -> Iterator[tuple[float, float]]:
    """Marks where two pieces lie over each other, and says where the middles of that are."""
    for box, beyond in product(one, other):
        left, top = max(box[0][0], beyond[0][0]), max(box[0][1], beyond[0][1])
        right, foot = min(box[2][0], beyond[2][0]), min(box[2][1], beyond[2][1])
        if right - left > 1e-9 and foot > top:
            section.clash([outlines.box(left, top, right - left, foot - top)])
            yield (left + right) / 2, (top + foot) / 2


def _named(
    case: Case[HungOnEyes], section: Section, legs: Mapping[int, list[Slab]], top: float
) -> list[str]:
    """Each part that hangs, with its letter where there are several."""
    first: dict[Part, int] = {}
    for eye, (line, _) in case.join.in_order.items():
        if eye in legs:
            first.setdefault(line.part, eye)
    left, step = min(legs), case.get(case.join.eyes.quantity("spacing")).middle
    named = []
    for part, eye in first.items():
        widest = max(legs[eye], key=lambda slab: slab.width.middle)
        words = f"`{part.name}` {with_range(widest.width)} wide"
        if len(first) > 1:
            letter = section.letter((eye - left) * step, top + _DROP / 3, step)
            words = f"({letter}) {words}"
        named.append(words)
    return named


def _left_out(case: Case[HungOnEyes]) -> str:
    all_of = len(case.join.in_order)
    return f"; {_MOST} of {all_of} are drawn" if all_of > _MOST else ""


def _need(legs: Mapping[int, list[Slab]]) -> str:
    """How far apart the nearest two would have to be to hang clear of each other."""
    needs = [
        need.middle / (right - left)
        for (left, one), (right, other) in combinations(legs.items(), 2)
        if (need := side_by_side(one, other)) is not None
    ]
    return f"eyes {mm(max(needs))} apart for all to hang clear" if needs else ""


def _place(case: Case[HungOnEyes]) -> Place:
    eyes = case.join.eyes
    return eyes.part.key.place if eyes.woven else eyes.part.place_of(*eyes.path, "spacing")


def _tall(case: Case[HungOnEyes], part: Part) -> float:
    """How far a part hangs down; twice its width where the plan does not say."""
    for what in ("length", "height"):
        try:
            return case.of(part, what).middle
        except Missing:
            continue
    return 2 * case.ask.across(part).middle


def _across(case: Case[HungOnEyes], part: Part) -> str:
    """The name of the quantity that says how wide a part is; of a leg of beads there is none."""
    if part.kind.role is Role.DROP:
        return ""
    return f"{part.name}.{'width' if case.ask.offers(part, 'width') else 'outside'}"
