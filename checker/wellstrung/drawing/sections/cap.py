"""The end of a rope, by its beads or by its nub, in an end cap: lengthwise, and from the end."""

from __future__ import annotations

from wellstrung.derived.ends import end_in_cap
from wellstrung.drawing import Figure, outlines
from wellstrung.drawing.sections.case import Case, clearance, marks_of, size, with_range
from wellstrung.drawing.sections.section import Section
from wellstrung.quantity.value import Quantity
from wellstrung.rulebook import RopeInCap

#: what of the rope is drawn before the rim, in parts of the bore
_BEFORE = 0.4


def draw(case: Case[RopeInCap]) -> Figure:
    """The cap cut lengthwise where its depth is known, and its rim from the front."""
    join = case.join
    nub = join.by_nub
    size_of_end = end_in_cap(join.rope, join.cap, case.ask.quantities)
    end = case.of(join.rope, size_of_end)
    bore = case.of(join.cap, "bore")
    outside, depth = case.perhaps(join.cap, "outside"), case.perhaps(join.cap, "depth")
    wide = max(bore.middle, end.worst.high, outside.middle if outside else 0.0)
    long = depth.middle + _BEFORE * bore.middle + _back(case) + wide / 5 if depth else 0.0
    section = Section(long + wide, wide)
    name = "nub" if nub else "rope"

    _rim(section, bore, end, outside)
    rows = [
        (end.middle, f"{name} {size(end)}", f"{join.rope.name}.{size_of_end}"),
        (bore.middle, f"bore {size(bore)}", f"{join.cap.name}.bore"),
    ]
    if outside is not None:
        rows.append((outside.middle, f"cap {size(outside)}", f"{join.cap.name}.outside"))
    if depth is not None:
        _lengthwise(case, section, bore, end, outside, depth, wide)
    section.rows(rows)
    across = case.said(("cap-bore",), join.rope.key.place)
    along = case.said(("cap-depth",), join.cap.place_of("bore"), join.cap.place_of("depth"))
    if across:
        edge = (bore.middle + end.middle) / 4
        section.mark(0.7 * edge, -0.7 * edge, marks_of(across))
    if along and depth is not None:
        section.mark(_left(case, wide, depth) + depth.middle * 0.8, 0, marks_of(along))
    said = sorted({*across, *along}, key=lambda one: one.number)
    return case.figure(
        section,
        f"{'nub of ' if nub else 'rope '}`{join.rope.name}` in cap `{join.cap.name}`",
        f"bore {with_range(bore)}; {name} {with_range(end)}; {clearance(bore, end)}",
        "",
        said,
    )


def _rim(section: Section, bore: Quantity, end: Quantity, outside: Quantity | None) -> None:
    """The rim from the front, about (0, 0): the cap's wall, the rope and how thick it may be."""
    hole = outlines.circle(0, 0, bore.middle / 2)
    if outside is not None and outside.middle > bore.middle:
        section.cut(outlines.rim(0, 0, outside.middle, bore.middle))
    section.canvas.circle(0, 0, bore.middle / 2, "opening")
    body = outlines.circle(0, 0, end.middle / 2)
    section.cut([body], "work")
    section.round_ranges(0, 0, end)
    section.clash([body], [hole])
    section.canvas.circle(0, 0, end.middle / 2, "edge")
    section.round_ranges(0, 0, bore)
    section.canvas.circle(0, 0, bore.middle / 2, "edge")


def _left(case: Case[RopeInCap], wide: float, depth: Quantity) -> float:
    """Where the rim of the lengthwise section stands, left of the view from the front."""
    return -0.7 * wide - depth.middle - _back(case)


def _back(case: Case[RopeInCap]) -> float:
    """How thick the closed end of the cap is: what its length leaves behind depth and eye."""
    cap = case.join.cap
    length, depth = case.perhaps(cap, "length"), case.perhaps(cap, "depth")
    hole, wire = case.perhaps(cap, "eye.hole"), case.perhaps(cap, "eye.wire")
    if not (length and depth and hole and wire):
        return 0.0
    return max(length.middle - depth.middle - hole.middle - 2 * wire.middle, 0.0)


def _lengthwise(
    case: Case[RopeInCap],
    section: Section,
    bore: Quantity,
    end: Quantity,
    outside: Quantity | None,
    depth: Quantity,
    wide: float,
) -> None:
    rim, half, deep = _left(case, wide, depth), bore.middle / 2, depth.middle
    back, start = _back(case), rim - _BEFORE * bore.middle
    shell = max(outside.middle, bore.middle) / 2 if outside is not None else half
    walls = [
        outlines.box(rim, side * (shell + half) / 2 - (shell - half) / 2, deep + back, shell - half)
        for side in (-1, 1)
    ]
    if shell > half:
        for wall in walls:
            section.cut([wall])
    if back:
        section.cut([outlines.box(rim + deep, -half, back, bore.middle)])
    else:
        section.canvas.line(rim + deep, -half, rim + deep, half, "edge")
    nub = case.join.by_nub
    inside = deep
    if nub:
        long = case.perhaps(case.join.rope, "nub.length")
        inside = deep if long is None else min(deep, long.middle)
        rope = case.perhaps(case.join.rope, "outside")
        if rope is not None:
            thick = rope.middle
            section.cut([outlines.box(start, -thick / 2, rim - start, thick)], "work")
    first = rim if nub else start
    body = outlines.box(first, -end.middle / 2, rim + inside - first, end.middle)
    section.cut([body], "work")
    section.ranges(end, first, rim + inside)
    room = [outlines.box(rim, -half, deep, bore.middle)]
    entered = outlines.box(rim, -end.middle / 2, inside, end.middle)
    section.clash([entered], room)
    for side in (-half, half):
        section.canvas.line(rim, side, rim + deep, side, "edge")
    section.canvas.line(start, 0, rim + deep + back, 0, "axis")
    section.across(rim, rim + deep, shell, f"depth {size(depth)}", f"{case.join.cap.name}.depth")
