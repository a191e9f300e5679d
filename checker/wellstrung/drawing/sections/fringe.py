"""A fringe on its eyes, side by side at its true spacing and widths."""

from __future__ import annotations

from itertools import pairwise

from wellstrung.drawing import Figure, hatching
from wellstrung.drawing.sections.case import Case, drawable, marks, mm, size, with_range
from wellstrung.drawing.sections.frame import Section
from wellstrung.model import Missing, Part, Role
from wellstrung.rulebook import HungOnEyes

#: how many neighbours are drawn
_MOST = 12
#: how much of what hangs is drawn, mm: enough to see neighbours meet
_DROP = 9.0


def draw(case: Case[HungOnEyes]) -> Figure | None:
    """The eyes, and the upper end of what hangs from each, as wide as it is."""
    fringe = case.join
    if fringe.eyes.woven or fringe.eyes.count < 2:
        return None
    spacing = case.get(fringe.eyes.quantity("spacing"))
    hung = [line.part for line in fringe.lines for _ in range(min(line.times, _MOST))][:_MOST]
    if len(hung) < 2:
        return None
    widths = {part: drawable(case.ask.across(part)) for part in dict.fromkeys(hung)}
    hole = case.get(fringe.eyes.quantity("hole"))
    wall = case.get(fringe.eyes.quantity("wire"))
    step, rim = spacing.middle, hole.middle + 2 * wall.middle
    reach = (widths[hung[0]].middle + widths[hung[-1]].middle) / 2
    section = Section(step * (len(hung) - 1) + reach, rim + _DROP)
    for number in range(len(hung)):
        rims = [hatching.circle(number * step, 0, one / 2) for one in (rim, hole.middle)]
        section.canvas.area(rims, "metal")
    top = hole.middle / 2
    boxes = []
    for number, part in enumerate(hung):
        wide = widths[part].middle
        tall = min(_DROP, _tall(case, part))
        boxes.append(hatching.box(number * step - wide / 2, top, wide, tall))
        section.canvas.area([boxes[-1]], "held")
        if tall == _DROP:
            section.goes_on(boxes[-1][0][0], top + tall, wide, level=True)
    crowded = []
    for number, (one, other) in enumerate(pairwise(boxes)):
        overlap = one[1][0] - other[0][0]
        if overlap > 0:
            low = min(one[2][1], other[2][1])
            section.clash([hatching.box(other[0][0], top, overlap, low - top)])
            crowded.append((number + 0.5) * step)
    named = []
    for part in widths:
        words = f"`{part.name}` {with_range(widths[part])} wide"
        if len(widths) > 1:
            first = hung.index(part) * step
            words = f"({section.letter(first, top + _DROP / 3, step)}) {words}"
        named.append(words)
    said = case.said(("fringe-spread",), fringe.eyes.part.place_of(*fringe.eyes.path, "spacing"))
    if said:
        section.flag(crowded[0] if crowded else step / 2, top + _DROP / 3, marks(said))
    part = hung[0]
    wide = widths[part].middle
    below = top + _DROP
    section.across(-wide / 2, wide / 2, below, f"wide {size(widths[part])}", _across(part))
    section.across(0, step, 0, f"apart {size(spacing)}", fringe.eyes.quantity("spacing"))
    all_of = sum(line.times for line in fringe.lines)
    shown = "" if all_of <= len(hung) else f"; {len(hung)} of {all_of} are drawn"
    need = max(widths[one].middle / 2 + widths[other].middle / 2 for one, other in pairwise(hung))
    return case.figure(
        section,
        f"fringe on {fringe.eyes.words}",
        f"eyes {with_range(spacing)} apart; {', '.join(named)}{shown}",
        f"eyes {mm(need)} apart",
        said,
    )


def _tall(case: Case[HungOnEyes], part: Part) -> float:
    """How far a part hangs down; twice its width where the plan does not say."""
    for what in ("length", "height"):
        try:
            return case.of(part, what).middle
        except Missing:
            continue
    return 2 * case.ask.across(part).middle


def _across(part: Part) -> str:
    round_ones = (Role.ROPE, Role.CAP, Role.RING)
    return f"{part.name}.{'outside' if part.kind.role in round_ones else 'width'}"
