"""Where each place of the run lies along it, and where a worked part is cut short by breaks."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from msgspec import Struct

from wellstrung.drawing.looks import shape_of
from wellstrung.drawing.looks.sizes import UNKNOWN, Sizes
from wellstrung.model.parts import Part, Role
from wellstrung.model.plan import Plan, RunEntry
from wellstrung.subjects.chain import of_cups

WORKED = frozenset({Role.ROPE, Role.BAND, Role.STRAND})
#: of a worked part that is cut short: how much of an end is drawn at least, and a break's gap, mm
STUB, GAP = 9.0, 5.0


class Stretch(Struct, frozen=True):
    """A place of the run as drawn: where it starts, how long it is, and how much of that is drawn.

    `turned` says that a part's outer end lies ahead, as that of a cap at the end of a rope does.
    """

    entry: RunEntry
    start: float
    length: float
    drawn: float
    turned: bool
    stub: float = STUB

    @property
    def end(self) -> float:
        """Where it ends as drawn."""
        return self.start + self.drawn

    @property
    def middle(self) -> float:
        """Halfway along what is drawn."""
        return self.start + self.drawn / 2

    @property
    def is_worked(self) -> bool:
        """Whether a rope, a band or strands lie here."""
        return self.entry.part.kind.role in WORKED

    @property
    def cut_short(self) -> bool:
        """Whether breaks take part of it out of the drawing."""
        return self.drawn < self.length

    @property
    def breaks(self) -> tuple[float, ...]:
        """Where its breaks begin, from its start; none where all of it is drawn."""
        return (self.stub, self.drawn - self.stub - GAP) if self.cut_short else ()

    @property
    def pieces(self) -> Iterator[tuple[float, float]]:
        """The pieces in which it is drawn: from where, how long."""
        at = 0.0
        for start in (*self.breaks, self.drawn):
            yield at, start - at
            at = start + GAP


def along_run(plan: Plan, sizes: Sizes, hung: Mapping[Part, float] | None) -> Iterator[Stretch]:
    """Every place of the run, one after another.

    `hung` is the width of what hangs from each part: then a worked part is cut short to its two
    ends and that. None draws all of it.
    """
    start = 0.0
    for index, entry in enumerate(plan.run):
        length = entry.linked * _along(plan, sizes, entry)
        stub = max(STUB, *(2.2 * sizes.longest_bead(part) for part in entry.parts))
        drawn = length
        if hung is not None and entry.part.kind.role in WORKED:
            between = sum(hung.get(part, 0.0) for part in entry.parts)
            drawn = min(length, 2 * (stub + GAP) + max(between + 6.0, stub))
        yield Stretch(entry, start, length, drawn, _turned(plan.run, index), stub)
        start += drawn


def _along(plan: Plan, sizes: Sizes, entry: RunEntry) -> float:
    """What a place adds to the run; of a clasp that gives one length for both halves, its share."""
    if not entry.half:
        return min(sizes.known(part, "along", UNKNOWN) for part in entry.parts)
    part, mine = entry.part, sizes.known(entry.part, f"{entry.half}.along", UNKNOWN)
    share = shape_of(part).second_takes
    second = sizes.known(part, "b.along", 0.0)
    if share is None or second or len({one.half for one in plan.run if one.part is part}) == 1:
        return mine
    whole = sizes.known(part, "a.along", UNKNOWN)
    taken = share(sizes, part, whole)
    return taken if entry.half == "b" else whole - taken


def _turned(run: tuple[RunEntry, ...], index: int) -> bool:
    """Whether a part's outer end lies ahead: the rope, cups, strands or their cone lie behind."""
    entry = run[index]
    if entry.part.kind.role is Role.CLASP:
        return index > 0
    if entry.part.traits.gathers:
        return entry.turned
    inner = WORKED | {Role.CONE, Role.CAP}
    behind = run[index - 1].part.kind.role if index else None
    ahead = run[index + 1].part.kind.role if index + 1 < len(run) else None
    if index and of_cups(run[index - 1].part):
        return True
    return behind in WORKED or (behind in inner and ahead not in inner)
