"""Thread, needle, line or wire in the hole of a bead, cut across.

Thread gives: packed in a hole it takes 1.3 times its own area (`thread.hole_needed`), so its passes
are drawn pressed together to that size, and the last pass as a needle with the rest beside it. A
strand's line and a pin's wire stay round.
"""

from __future__ import annotations

from wellstrung.drawing import Figure, marks, outlines
from wellstrung.drawing.looks.sizes import Sizes
from wellstrung.drawing.sections import rounds
from wellstrung.drawing.sections.case import Case, marks_of, mm, size, with_range
from wellstrung.drawing.sections.rounds import Hole
from wellstrung.drawing.sections.section import Section
from wellstrung.formulas import circles, thread
from wellstrung.model.parts import Role
from wellstrung.quantity.value import Quantity
from wellstrung.rulebook import Threaded, needle_from, passes_of

_MOST = max(circles.EQUAL_RATIOS)


def draw(case: Case[Threaded]) -> Figure | None:
    """The hole with all that goes through it: woven, strung or on a wire."""
    part = case.join.part
    passes = passes_of(case.ask.plan, part, case.join.bead)
    if passes is not None:
        return _woven(case, passes)
    if part.kind.role is Role.STRAND:
        return _firm(case, "line", min(case.join.lines, _MOST))
    if part.traits.on_wire:
        return _firm(case, "wire", 1)
    return None


def _hole(case: Case[Threaded]) -> Hole:
    bead = case.join.bead
    name = f"beads.{bead.name}.hole"
    outside = case.perhaps(bead, "outside")
    rim = Sizes(case.ask).look(bead.name)
    return Hole("hole", case.of(bead, "hole"), name, outside, look="bead", rim=rim)


def _firm(case: Case[Threaded], what: str, count: int) -> Figure:
    """So many of a round line or wire that does not give."""
    part, bead, hole = case.join.part, case.join.bead, _hole(case)
    things = [rounds.thing_of(case, part, what, f"the {what}", "metal")] * count
    taken, thick = rounds.together(things), things[0].thick
    wide = hole.widest(taken)
    section = Section(wide, wide, marks.FINE)
    held = rounds.in_hole(section, hole, things, letters=False)
    said = case.said(("string-in-hole", "pin-in-bead"), bead.key.place)
    rounds.finish(section, held, said, hole, rounds.thing_rows(things, what))
    times = "" if count == 1 else f", {count} times"
    return case.figure(
        section,
        f"{what} of `{part.name}` in bead `{bead.name}`",
        f"hole {with_range(hole.size)}; {what} {with_range(thick)}{times}",
        f"a hole of {mm(taken)}",
        said,
    )


def _woven(case: Case[Threaded], passes: int) -> Figure:
    """All passes of the thread with a woven-in end, and the needle on the last pass."""
    part, bead, hole = case.join.part, case.join.bead, _hole(case)
    worked = needle_from(case.ask.plan, part)
    line, needle = case.of(part, "line"), case.perhaps(worked, "needle")
    count = passes + round(case.limit("weaving-in passes"))
    taken = thread.hole_needed(0.0, line.middle, count)
    wide = hole.widest(taken)
    section = Section(wide * (2.3 if needle else 1), wide, marks.FINE)
    hole.behind(section)
    _threads(section, taken, count)
    _room(section, hole, 0.0, taken)
    said = list(case.said(("hole-passes",), bead.key.place))
    if said:
        section.mark(0.2 * taken, -0.2 * taken, marks_of(said))
    found = f"hole {with_range(hole.size)}; thread {with_range(line)}"
    found += f", {count} passes with a woven-in end"
    needed = f"a hole of {mm(taken)}"
    half, through = hole.size.middle / 2, taken / 2
    section.across(-half, half, 0.0, f"hole {size(hole.size)}", hole.quantity)
    if needle is None:
        section.across(-through, through, 0.0, f"{count} passes {mm(taken)}")
    else:
        x = 1.3 * wide
        with_it = thread.hole_needed(needle.middle, line.middle, passes - 1)
        low, name = (with_it - needle.middle) / 2, f"{worked.name}.needle"
        hole.behind(section, x)
        _needled(section, x, with_it, low, needle, name)
        _room(section, hole, x, with_it)
        passing = case.said(("needle-pass",), bead.key.place, collides=with_it > hole.size.middle)
        if passing:
            section.mark(x, low, marks_of(passing))
        said += [one for one in passing if one.number not in {other.number for other in said}]
        found += f"; needle {with_range(needle)} on pass {passes}"
        needed += f", and of {mm(with_it)} for the needle"
        for middle, width, y, words, quantity in (
            (x, needle.middle, low, f"needle {mm(needle.middle)}", name),
            (0.0, taken, 0.0, f"{count} passes {mm(taken)}", ""),
            (x, with_it, 0.0, f"with {passes - 1} there {mm(with_it)}", ""),
        ):
            section.across(middle - width / 2, middle + width / 2, y, words, quantity)
    title = f"thread of `{part.name}` in bead `{bead.name}`"
    return case.figure(section, title, found, needed, said)


def needled(case: Case[Threaded]) -> Figure | None:
    """The needle of a strand on its last pass, beside the line that lies in the hole."""
    part, bead = case.join.part, case.join.bead
    needle = case.perhaps(part, "needle") if part.kind.role is Role.STRAND else None
    if needle is None:
        return None
    hole, passes = _hole(case), case.join.lines
    line = case.of(part, "line").middle if passes > 1 else 0.0
    with_it = thread.hole_needed(needle.middle, line, passes - 1)
    low, half = (with_it - needle.middle) / 2, hole.size.middle / 2
    section = Section(hole.widest(with_it), hole.widest(with_it), marks.FINE)
    hole.behind(section)
    _needled(section, 0.0, with_it, low, needle, f"{part.name}.needle")
    _room(section, hole, 0.0, with_it)
    said = case.said(("needle-pass",), bead.key.place, collides=with_it > hole.size.middle)
    if said:
        section.mark(0.0, low, marks_of(said))
    section.across(-half, half, 0.0, f"hole {size(hole.size)}", hole.quantity)
    words, wide = f"needle {mm(needle.middle)}", needle.middle / 2
    section.across(-wide, wide, low, words, f"{part.name}.needle")
    title = f"needle of `{part.name}` in bead `{bead.name}`"
    found = f"hole {with_range(hole.size)}; needle {with_range(needle)} on pass {passes}"
    return case.figure(section, title, found, f"a hole of {mm(with_it)}", said)


def _threads(section: Section, taken: float, count: int) -> None:
    """Passes pressed together to the round that they take."""
    if count > _MOST:
        section.cut([outlines.circle(0, 0, taken / 2)], "thread")
        return
    each = taken / circles.equal_ratio(count)
    for x, y in circles.packed([each] * count):
        section.canvas.circle(x, y, each / 2, "thread")


def _needled(
    section: Section, x: float, taken: float, low: float, needle: Quantity, quantity: str
) -> None:
    """A needle, and the thread that lies there pressed into the rest of what both take."""
    whole = outlines.circle(x, 0, taken / 2)
    section.cut([whole, outlines.circle(x, low, needle.middle / 2)], "thread")
    section.canvas.circle(x, low, needle.middle / 2, "needle", quantity)


def _room(section: Section, hole: Hole, x: float, taken: float) -> None:
    """The edge of the hole, and what of a round this large has no room in it."""
    section.clash([outlines.circle(x, 0, taken / 2)], [outlines.circle(x, 0, hole.size.middle / 2)])
    section.round_pattern(x, 0, taken, "taken")
    hole.before(section, x)
