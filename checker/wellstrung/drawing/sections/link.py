"""The end link of a chain from the front: the wires of its rings and of the next link in it."""

from __future__ import annotations

from wellstrung.drawing import Figure, marks, outlines
from wellstrung.drawing.sections.case import Case, drawable, marks_of, mm, size
from wellstrung.drawing.sections.section import Section
from wellstrung.model.item import Missing
from wellstrung.quantity.value import Quantity
from wellstrung.rulebook import EndLink


def draw(case: Case[EndLink]) -> Figure:
    """The link lying level, the next link at its right end, its rings at its left.

    Rings lie side by side where the link is wide enough for all of them, else one behind the other.
    """
    end = case.join
    length, wire = (
        drawable(end.chain.size("links", end.link, "length", allowance="link size")),
        drawable(end.chain.wire("links", end.link, "wire")),
    )
    hole = case.get(end.eyes.quantity("hole"))
    long, wide = length.middle, hole.middle + 2 * wire.middle
    inside = long - 2 * wire.middle
    if inside <= 0:
        raise Missing("a link that is longer than its two wires")
    rings = [(ring, case.of(ring, "wire")) for ring in end.rings]
    thick = [one.middle for _, one in rings]
    section = Section(max(long, sum(thick)), max(wide, sum(thick)), marks.CLOSE)
    outline = outlines.link(0, 0, long, wide)
    opening = outlines.link(wire.middle, 0, inside, hole.middle)
    section.canvas.area([outline, opening], "metal")
    section.canvas.area([opening], "edge")
    flat = len(rings) > 1 and sum(thick) <= hole.middle
    at, level = wire.middle, -sum(thick) / 2
    spots = []
    for (ring, size_), diameter in zip(rings, thick, strict=True):
        spots.append((at + diameter / 2, level + diameter / 2 if flat else 0.0, ring, size_))
        at, level = (at, level + diameter) if flat else (at + diameter, level)
    taken = max(thick) if flat else sum(thick)
    beyond = _next(end)
    start = long - wire.middle
    if beyond is not None:
        start -= beyond.middle
        section.canvas.circle(start + beyond.middle / 2, 0, beyond.middle / 2, "held metal")
    reach = [opening] if beyond is None else [outlines.box(0, -wide, start, 2 * wide)]
    named = []
    for x, y, ring, size_ in spots:
        section.canvas.circle(x, y, size_.middle / 2, "held", f"{ring.name}.wire")
        section.clash([outlines.circle(x, y, size_.middle / 2)], reach)
    for x, y, ring, size_ in spots:
        letter = section.letter(x, y, size_.middle)
        named.append(f"({letter}) `{ring.name}` {size(size_)}")
    if beyond is not None:
        letter = section.letter(start + beyond.middle / 2, 0, beyond.middle)
        named.append(f"({letter}) the next link {size(beyond)}")
        taken += beyond.middle
    place = end.chain.place_of("links", end.link, "length")
    said = case.said(("link-clearance",), place, collides=taken > inside)
    if said:
        section.mark(spots[-1][0], spots[-1][1], marks_of(said))
    section.across(wire.middle, long - wire.middle, 0, f"inside {mm(inside)}")
    section.across(0, long, 0, f"link {size(length)}")
    section.down(
        -hole.middle / 2, hole.middle / 2, long / 2, f"hole {size(hole)}", end.eyes.quantity("hole")
    )
    swing = case.limit("ring swing")
    return case.figure(
        section,
        f"wires in {end.eyes.words} (`{end.link}`)",
        f"{mm(inside)} inside, along the link; in it {', '.join(named)}",
        f"{mm(taken + swing)} inside, {mm(swing)} of it to move",
        said,
    )


def _next(end: EndLink) -> Quantity | None:
    return drawable(end.chain.wire("links", end.beyond, "wire")) if end.beyond else None
