"""Thread, needle, line or wire in the hole of a bead, cut across.

Thread gives: packed in a hole it takes 1.3 times its own area (`thread.hole_needed`), so passes of
it are drawn pressed together to just that, and the last pass as a needle with the rest beside it.
A strand's line and a pin's wire keep their round.
"""

from __future__ import annotations

from dataclasses import dataclass

from wellstrung import circles, thread
from wellstrung.drawing import Figure, hatching
from wellstrung.drawing.sections import rounds
from wellstrung.drawing.sections.case import Case, Said, marks, mm, size, with_range
from wellstrung.drawing.sections.frame import FINE, Section
from wellstrung.model import Missing
from wellstrung.quantity import Quantity
from wellstrung.rulebook import Threaded, passes_of

_MOST = max(circles.EQUAL_RATIOS)


@dataclass(frozen=True)
class _Bead:
    """A bead cut across about (x, 0)."""

    section: Section
    x: float
    hole: Quantity
    quantity: str
    outside: Quantity | None

    def draw(self) -> None:
        opening = hatching.circle(self.x, 0, self.hole.middle / 2)
        if self.outside is not None and self.outside.middle > self.hole.middle:
            rim = hatching.circle(self.x, 0, self.outside.middle / 2)
            self.section.canvas.area([rim, opening], "bead")

    def over(self) -> None:
        self.section.round_bands(self.x, 0, self.hole)
        self.section.canvas.circle(self.x, 0, self.hole.middle / 2, "edge", self.quantity)


def draw(case: Case[Threaded]) -> Figure | None:
    """The hole with all that goes through it: woven, strung or on a wire."""
    part = case.join.part
    passes = passes_of(case.ask.plan, part)
    if passes is not None:
        return _woven(case, passes)
    if part.kind.name == "strand":
        count = min(part.count("passes", default=1), _MOST)
        return _firm(case, case.of(part, "line"), f"{part.name}.line", "line", count)
    if "loop" in part.kind.eyes:
        return _firm(case, case.of(part, "wire"), f"{part.name}.wire", "wire", 1)
    return None


def _firm(case: Case[Threaded], thick: Quantity, name: str, word: str, count: int) -> Figure:
    """So many of a round line or wire that does not give."""
    join = case.join
    hole, outside = case.of(join.bead, "hole"), case.perhaps(join.bead, "outside")
    things = [rounds.Thing(f"the {word}", thick, name, "metal")] * count
    taken = rounds.together(things)
    wide = max(hole.middle, taken, outside.middle if outside else 0.0)
    section = Section(wide, wide, FINE)
    bead = _Bead(section, 0.0, hole, f"beads.{join.bead.name}.hole", outside)
    bead.draw()
    held = rounds.pack(section, 0, 0, hole.middle, things, letters=False)
    bead.over()
    said = case.said(("string-in-hole", "pin-in-bead"), join.bead.key.place)
    if said:
        section.flag(*held.furthest, marks(said))
    if count > 1:
        section.taken(0, 0, taken)
    rows = [(hole.middle, f"hole {size(hole)}", bead.quantity)]
    rows.append(
        (taken, f"{word} {size(thick)}", name) if count == 1 else (taken, f"needs {mm(taken)}", "")
    )
    for width, words, quantity in sorted(rows):
        section.across(-width / 2, width / 2, 0, words, quantity)
    times = "" if count == 1 else f", {count} times"
    return case.figure(
        section,
        f"{word} of `{join.part.name}` in bead `{join.bead.name}`",
        f"hole {with_range(hole)}; {word} {with_range(thick)}{times}",
        f"a hole of {mm(taken)}",
        said,
    )


def _woven(case: Case[Threaded], passes: int) -> Figure:
    """All passes of the thread with a woven-in end, and the needle on the last pass."""
    join = case.join
    line, hole = case.of(join.part, "line"), case.of(join.bead, "hole")
    outside = case.perhaps(join.bead, "outside")
    quantity = f"beads.{join.bead.name}.hole"
    needle = _needle(case)
    count = passes + round(case.ask.limit("weaving-in passes").middle)
    taken = thread.hole_needed(0.0, line.middle, count)
    wide = max(hole.middle, taken, outside.middle if outside else 0.0)
    section = Section(wide * (2.3 if needle else 1), wide, FINE)
    filled = _Bead(section, 0.0, hole, quantity, outside)
    filled.draw()
    _threads(section, taken, count, hole.middle)
    filled.over()
    section.taken(0, 0, taken)
    threaded = case.said(("hole-passes",), join.bead.key.place)
    if threaded:
        section.flag(0.2 * taken, -0.2 * taken, marks(threaded))
    found = (
        f"hole {with_range(hole)}; thread {with_range(line)}, {count} passes with a woven-in end"
    )
    needed = f"a hole of {mm(taken)}"
    passing: tuple[Said, ...] = ()
    if needle is not None:
        beside = 1.3 * wide
        last = _Bead(section, beside, hole, quantity, outside)
        last.draw()
        with_needle = thread.hole_needed(needle.middle, line.middle, passes - 1)
        _needled(section, beside, with_needle, needle, hole.middle, f"{join.part.name}.needle")
        last.over()
        section.taken(beside, 0, with_needle)
        collides = with_needle > hole.middle
        passing = case.said(("needle-pass",), join.bead.key.place, collides=collides)
        if passing:
            section.flag(beside, with_needle / 2 - needle.middle / 2, marks(passing))
        found += f"; needle {with_range(needle)} on pass {passes}"
        needed += f", and of {mm(with_needle)} for the needle"
    h = hole.middle / 2
    section.across(-h, h, 0, f"hole {size(hole)}", quantity)
    if needle is not None:
        n, top = needle.middle / 2, with_needle / 2 - needle.middle / 2
        section.across(
            beside - n, beside + n, top, f"needle {mm(needle.middle)}",
            f"{join.part.name}.needle", same_row=True,
        )  # fmt: skip
    section.across(-taken / 2, taken / 2, 0, f"{count} passes {mm(taken)}")
    if needle is not None:
        section.across(
            beside - with_needle / 2, beside + with_needle / 2, 0,
            f"with {passes - 1} there {mm(with_needle)}", same_row=True,
        )  # fmt: skip
    return case.figure(
        section,
        f"thread of `{join.part.name}` in bead `{join.bead.name}`",
        found,
        needed,
        [
            *threaded,
            *(one for one in passing if one.number not in {two.number for two in threaded}),
        ],
    )


def _needle(case: Case[Threaded]) -> Quantity | None:
    try:
        return case.of(case.join.part, "needle")
    except Missing:
        return None


def _threads(section: Section, taken: float, count: int, hole: float) -> None:
    """Passes pressed together to the round that they take."""
    if count > _MOST:
        section.cut([hatching.circle(0, 0, taken / 2)], "thread")
    else:
        each = taken / circles.equal_ratio(count)
        for x, y in circles.packed([each] * count):
            section.canvas.circle(x, y, each / 2, "thread")
    section.clash([hatching.circle(0, 0, taken / 2)], [hatching.circle(0, 0, hole / 2)])


def _needled(
    section: Section, x: float, needed: float, needle: Quantity, hole: float, quantity: str
) -> None:
    """A needle, and the thread that lies there pressed into the rest of what both take."""
    low = (needed - needle.middle) / 2
    section.cut(
        [hatching.circle(x, 0, needed / 2), hatching.circle(x, low, needle.middle / 2)], "thread"
    )
    section.canvas.circle(x, low, needle.middle / 2, "needle", quantity)
    section.clash([hatching.circle(x, 0, needed / 2)], [hatching.circle(x, 0, hole / 2)])
