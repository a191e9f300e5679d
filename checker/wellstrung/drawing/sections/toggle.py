"""The bar of a toggle: lying in its ring, and swung through it with what stands behind it."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import chain, islice, repeat

from wellstrung.drawing import Figure, outlines
from wellstrung.drawing.sections.case import Case, drawable, marks_of, mm, size, with_range
from wellstrung.drawing.sections.section import Section
from wellstrung.model.parts import Part, Role
from wellstrung.rulebook import Toggle

#: how many parts behind the bar are drawn, and how far, in halves of the bar
_MOST, _BEYOND = 40, 1.6
#: an outline so far off that, with another within it, it is all but that other
_FAR = outlines.box(-1e4, -1e4, 2e4, 2e4)


def lying(case: Case[Toggle]) -> Figure:
    """The ring from the front, closed, with the bar across its opening."""
    clasp = case.join.clasp
    bar, opening = case.of(clasp, "bar.length"), case.of(clasp, "ring.inside")
    thick, wire = case.of(clasp, "bar.thickness"), drawable(case.of(clasp, "ring.wire"))
    outside = opening.middle + 2 * wire.middle
    section = Section(max(bar.middle, outside), outside)
    section.canvas.area(outlines.rim(0, 0, outside, opening.middle), "metal")
    section.round_ranges(0, 0, opening)
    section.canvas.circle(0, 0, opening.middle / 2, "edge", f"{clasp.name}.ring.inside")
    half, high = bar.middle / 2, thick.middle
    section.canvas.area([outlines.box(-half, -high / 2, bar.middle, high)], "metal")
    section.ranges(bar, -high / 2, high / 2, upright=True)
    stem = case.perhaps(clasp, "bar.stem_width")
    if stem is not None:
        section.canvas.area(
            [outlines.box(-stem.middle / 2, -high / 2, stem.middle, high)], "hidden"
        )
    said = case.said(("toggle-bar",), clasp.place_of("ring", "outside"))
    if said:
        section.mark(half, 0, marks_of(said))
    rows = [
        (bar.middle, f"bar {size(bar)}", f"{clasp.name}.bar.length"),
        (opening.middle, f"opening {mm(opening.middle)}", f"{clasp.name}.ring.inside"),
    ]
    section.rows(rows)
    over = bar.middle - opening.middle
    reach = f"{mm(over)} longer than the opening" if over > 0 else "no longer than the opening"
    return case.figure(
        section,
        f"bar of `{clasp.name}` lying in its ring",
        f"bar {with_range(bar)}; opening {with_range(opening)}; the bar is {reach}",
        "",
        said,
    )


def swung(case: Case[Toggle]) -> Figure | None:
    """The ring cut across as the last end of the bar passes, what hangs on the bar laid along it.

    The run folds back along the bar from its middle: what stands half a bar from it passes the ring
    together with the bar's end.
    """
    clasp = case.join.clasp
    bar, opening = case.of(clasp, "bar.length"), case.of(clasp, "ring.inside")
    thick, wire = case.of(clasp, "bar.thickness"), drawable(clasp.wire("ring", "wire"))
    stem = case.of(clasp, "bar.to_the_run")
    half = bar.middle / 2
    beside = list(_beside(case, stem.middle, half))
    if not beside:
        return None
    farthest = max(start + long for _, start, long, _ in beside)
    tallest = max(high for _, _, _, high in beside)
    section = Section(
        half + max(farthest, half), max(opening.middle, thick.middle + tallest) + 2 * wire.middle
    )
    floor = opening.middle / 2
    for side in (-1, 1):
        rim = outlines.circle(0, side * (opening.middle + wire.middle) / 2, wire.middle / 2)
        section.cut([rim])
    section.canvas.area(
        [outlines.box(-bar.middle, floor - thick.middle, bar.middle, thick.middle)], "metal"
    )
    top = floor - thick.middle
    rim = outlines.circle(0, -(opening.middle + wire.middle) / 2, wire.middle / 2)
    section.canvas.line(-half, top, -half + stem.middle, top - section.paper(0.6), "edge")
    for _, start, long, high in beside:
        outline = outlines.box(start - half, top - high, long, high)
        section.canvas.area([outline], "held")
        if start + long == _BEYOND * half:
            section.goes_on(start + long - half, top - high, high)
        section.clash([rim], [_FAR, outline])
    letters: dict[Part, str] = {}
    for part, start, long, high in beside:
        at = (start - half + long / 2, top - high / 2)
        again = letters.get(part, "")
        letters[part] = section.letter(*at, min(long, high), again)
    named = [
        f"({letter}) `{part.name}` {mm(case.ask.across(part).middle)} across"
        for part, letter in letters.items()
    ]
    section.canvas.line(0, -floor, 0, floor, "axis")
    said = case.said(("toggle-swing",), clasp.place_of("bar", "length"))
    if said:
        section.mark(0, -floor, marks_of(said))
    section.across(-half, 0, floor, f"half the bar {mm(half)}")
    section.across(-bar.middle, 0, floor, f"bar {size(bar)}", f"{clasp.name}.bar.length")
    section.down(-floor, floor, 0, f"opening {mm(opening.middle)}", f"{clasp.name}.ring.inside")
    return case.figure(
        section,
        f"bar of `{clasp.name}` swung through its ring",
        f"opening {with_range(opening)}; bar {size(thick)} thick; beside it {', '.join(named)}",
        f"at most {mm(opening.middle - thick.middle)} beside the bar, within half a bar",
        said,
    )


def _beside(
    case: Case[Toggle], start: float, half: float
) -> Iterator[tuple[Part, float, float, float]]:
    """The parts behind the bar up to half a bar: where each begins, how long and how high it is.

    A ring turns its flat side to the bar.
    """
    every = chain.from_iterable(repeat(one, one.linked) for one in case.join.behind)
    for entry in islice(every, _MOST):
        if start >= half:
            return
        part = entry.part
        across, along = case.ask.across(part).middle, case.of(part, "along").middle
        wire = case.of(part, "wire").middle if part.kind.role is Role.RING else 0.0
        # what goes on far beyond the ring, as a rope, is drawn some way only
        begin, end = max(start - wire, -half), min(start + along + wire, _BEYOND * half)
        yield part, begin, end - begin, wire or across
        start += along
