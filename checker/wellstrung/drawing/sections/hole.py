"""Thread, needle, line or wire in the hole of a bead, cut across.

Thread gives: packed in a hole it takes 1.3 times its own area (`thread.hole_needed`), so passes of
it are drawn pressed together to just that, and the last pass as a needle with the rest beside it.
A strand's line and a pin's wire keep their round.
"""

from __future__ import annotations

from msgspec import Struct
from msgspec.structs import replace

from wellstrung.drawing import Figure, hatching
from wellstrung.drawing.sections import rounds
from wellstrung.drawing.sections.case import Case, marks, mm, size, with_range
from wellstrung.drawing.sections.frame import FINE, Section
from wellstrung.formulas import circles, thread
from wellstrung.quantity.value import Quantity
from wellstrung.rulebook import Threaded, passes_of

_MOST = max(circles.EQUAL_RATIOS)


class _Bead(Struct, frozen=True):
    """A bead cut across about (x, 0), on its section."""

    section: Section
    x: float
    hole: Quantity
    quantity: str
    outside: Quantity | None

    def behind(self) -> None:
        """The bead, under what goes through it."""
        if self.outside is not None and self.outside.middle > self.hole.middle:
            rims = [hatching.circle(self.x, 0, one.middle / 2) for one in (self.outside, self.hole)]
            self.section.canvas.area(rims, "bead")

    def before(self) -> None:
        """The edge of its hole, over what goes through it."""
        self.section.round_bands(self.x, 0, self.hole)
        self.section.canvas.circle(self.x, 0, self.hole.middle / 2, "edge", self.quantity)

    def clash(self, taken: float) -> None:
        """What of a round as large as this has no room in the hole."""
        outer, hole = (hatching.circle(self.x, 0, d / 2) for d in (taken, self.hole.middle))
        self.section.clash([outer], [hole])
        self.section.taken(self.x, 0, taken)


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
    bead.behind()
    held = rounds.pack(section, 0, 0, hole.middle, things, letters=False)
    bead.before()
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
    outside, needle = case.perhaps(join.bead, "outside"), case.perhaps(join.part, "needle")
    count = passes + round(case.ask.limit("weaving-in passes").middle)
    taken = thread.hole_needed(0.0, line.middle, count)
    wide = max(hole.middle, taken, outside.middle if outside else 0.0)
    section = Section(wide * (2.3 if needle else 1), wide, FINE)
    bead = _Bead(section, 0.0, hole, f"beads.{join.bead.name}.hole", outside)
    _threads(bead, taken, count)
    said = list(case.said(("hole-passes",), join.bead.key.place))
    if said:
        section.flag(0.2 * taken, -0.2 * taken, marks(said))
    found = (
        f"hole {with_range(hole)}; thread {with_range(line)}, {count} passes with a woven-in end"
    )
    needed = f"a hole of {mm(taken)}"
    rows = [
        (0.0, hole.middle, 0.0, f"hole {size(hole)}", bead.quantity),
        (0.0, taken, 0.0, f"{count} passes {mm(taken)}", ""),
    ]
    if needle is not None:
        last = replace(bead, x=1.3 * wide)
        with_it = thread.hole_needed(needle.middle, line.middle, passes - 1)
        low = (with_it - needle.middle) / 2
        name = f"{join.part.name}.needle"
        _needled(last, with_it, low, needle, name)
        collides = with_it > hole.middle
        passing = case.said(("needle-pass",), join.bead.key.place, collides=collides)
        if passing:
            section.flag(last.x, low, marks(passing))
        said += [one for one in passing if one.number not in {other.number for other in said}]
        found += f"; needle {with_range(needle)} on pass {passes}"
        needed += f", and of {mm(with_it)} for the needle"
        rows.insert(1, (last.x, needle.middle, low, f"needle {mm(needle.middle)}", name))
        rows.append((last.x, with_it, 0.0, f"with {passes - 1} there {mm(with_it)}", ""))
    for x, width, y, words, quantity in rows:
        section.across(x - width / 2, x + width / 2, y, words, quantity, same_row=x > 0)
    title = f"thread of `{join.part.name}` in bead `{join.bead.name}`"
    return case.figure(section, title, found, needed, said)


def _threads(bead: _Bead, taken: float, count: int) -> None:
    """Passes pressed together to the round that they take."""
    bead.behind()
    if count > _MOST:
        bead.section.cut([hatching.circle(bead.x, 0, taken / 2)], "thread")
    else:
        each = taken / circles.equal_ratio(count)
        for x, y in circles.packed([each] * count):
            bead.section.canvas.circle(bead.x + x, y, each / 2, "thread")
    bead.clash(taken)
    bead.before()


def _needled(bead: _Bead, taken: float, low: float, needle: Quantity, quantity: str) -> None:
    """A needle, and the thread that lies there pressed into the rest of what both take."""
    bead.behind()
    outer = hatching.circle(bead.x, 0, taken / 2)
    bead.section.cut([outer, hatching.circle(bead.x, low, needle.middle / 2)], "thread")
    bead.section.canvas.circle(bead.x, low, needle.middle / 2, "needle", quantity)
    bead.clash(taken)
    bead.before()
