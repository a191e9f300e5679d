"""What hangs: the eyes that carry, the eyes a part hangs by, and bails that go round."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from itertools import count, islice

from wellstrung.common.cache import cached
from wellstrung.model.parts import Part, Role
from wellstrung.model.plan import Hung, Plan
from wellstrung.subjects.base import Eyes, Side, Subject, eyes_facing, hanging_eyes, last_eyes

#: what others go round, and slide along
CARRIERS = frozenset({Role.ROPE, Role.BAND, Role.STRAND})


class GoesRound(Subject, frozen=True):
    """A bail, an eye or a ring, and the rope, strand, band or chain that it goes round.

    Round a strand an eye or a ring may be strung between two beads. A ring round a rope, with all
    else that it holds, is `RingHolds`.
    """

    what: Side
    around: Part


_MOST = 5_000


class HungOnEyes(Subject, frozen=True):
    """Every line that hangs something from one set of eyes, in one layer, and those eyes.

    `filled` of them hold what stands beside their part in the run.
    """

    lines: tuple[Hung, ...]
    eyes: Eyes
    filled: int = 0

    @property
    def shared(self) -> bool:
        """Whether several threads go through one eye, as the legs of a tassel through its loop."""
        hung = sum(line.times for line in self.lines)
        by_thread = all(line.on_thread for line in self.lines)
        return by_thread and not self.eyes.woven and hung > self.eyes.count

    @property
    def in_order(self) -> dict[int, tuple[Hung, int]]:
        """By eye, from the left: the line that hangs a piece there, and its number in that line.

        Lines that say `at` hang there; the others take the eyes left free, in the plan's order. Of
        more than anyone hangs, the first `_MOST`.
        """
        placed = {eye: (line, n) for line in self.lines for n, eye in enumerate(line.at)}
        free = [line for line in self.lines if not line.at]
        others = islice(((line, n) for line in free for n in range(line.times)), _MOST)
        hung = sum(line.times for line in free)
        on = evenly(hung, self.eyes.count) if self.eyes.woven and not placed else count(1)
        placed |= dict(zip((eye for eye in on if eye not in placed), others, strict=False))
        return dict(sorted(placed.items()))


class FringeAlong(Subject, frozen=True):
    """Legs spread along a rope, a strand or a long edge of a band, in one layer.

    `edge` is empty where it is no edge; `line` is the last of its lines.
    """

    lines: tuple[Hung, ...]
    source: Part
    edge: str

    @property
    def hung(self) -> int:
        """How many legs hang there."""
        return sum(line.times for line in self.lines)

    @property
    def line(self) -> Hung:
        """The last line that hangs some."""
        return self.lines[-1]


@cached
def fringes_along(plan: Plan) -> tuple[FringeAlong, ...]:
    """Every fringe along what is long, each layer and each stretch of it by itself."""
    found: dict[tuple[Part, str, int, str], list[Hung]] = {}
    for line in plan.hung:
        edge, leg = line.source_eyes, line.part.kind.role is Role.DROP
        along = line.source.kind.eyes[edge].along if edge else line.source.kind.role in CARRIERS
        if leg and line.on_thread and along:
            found.setdefault((line.source, edge, line.layer, line.over), []).append(line)
    return tuple(
        FringeAlong(lines[-1].place_of("times"), tuple(lines), source, edge)
        for (source, edge, _, _), lines in found.items()
    )


class HungByEyes(Subject, frozen=True):
    """A part that hangs by several eyes of its own, and every line that hangs it."""

    eyes: Eyes
    lines: tuple[Hung, ...]


class Tassel(Subject, frozen=True):
    """Legs that hang by thread from one ring, eye or loop, `each` of them from one.

    `above` is the ring or the eyes; several eyes share the legs out.
    """

    lines: tuple[Hung, ...]
    above: Side

    @property
    def each(self) -> int:
        """How many legs hang from one ring or eye."""
        hung = sum(line.times for line in self.lines)
        return -(-hung // self.above.count) if isinstance(self.above, Eyes) else hung


@cached
def tassels(plan: Plan) -> tuple[Tassel, ...]:
    """Every tassel: legs of which more than one hang from one ring or eye, in no cone."""
    found: dict[Side, list[Hung]] = {}
    for line in plan.hung:
        eyes = line.source_eyes or last_eyes(line.source)
        above = Eyes(line.source, eyes) if eyes else line.source
        woven = isinstance(above, Eyes) and above.woven
        ring = not woven and (isinstance(above, Eyes) or above.kind.role is Role.RING)
        in_cone = line.source.part("over") is not None
        if ring and line.on_thread and line.part.kind.role is Role.DROP and not in_cone:
            found.setdefault(above, []).append(line)
    every = (Tassel(lines[-1].place_of("part"), (*lines,), one) for one, lines in found.items())
    return tuple(tassel for tassel in every if tassel.each > 1)


def evenly(hung: int, eyes: int) -> range:
    """The eyes of a woven edge that carry, from 1: every so many-th where that comes out even.

    From one end bead to the other, or as many beads before the first as after the last.

    >>> list(evenly(5, 9)), list(evenly(3, 9)), list(evenly(3, 12)), len(evenly(4, 9))
    ([1, 3, 5, 7, 9], [1, 5, 9], [2, 6, 10], 9)
    """
    if hung > 1 and (eyes - 1) % (hung - 1) == 0 and hung <= eyes:
        return range(1, eyes + 1, (eyes - 1) // (hung - 1))
    if hung and eyes % hung == 0:
        return range(1 + (eyes // hung - 1) // 2, eyes + 1, eyes // hung)
    return range(1, eyes + 1)


def goes_round(line: Hung) -> Side | None:
    """What of a line goes round what it hangs from."""
    if line.on_thread or line.source_eyes:
        return None
    if line.part.kind.role is Role.BAIL:
        return line.part
    if line.source.kind.role not in CARRIERS:
        return None
    return line.ring or hanging_eyes(line.part)


def round_others(plan: Plan) -> Iterator[tuple[Subject, int]]:
    """Everything that goes round something, and how many of them."""
    for line in plan.hung:
        what = goes_round(line)
        if what is not None and (what is not line.ring or line.source.kind.role is not Role.ROPE):
            yield GoesRound(line.place_of("from"), what, line.source), line.times


def on_eyes(plan: Plan) -> Iterator[Subject]:
    """Every set of eyes that something hangs from, once for each layer of a fringe."""
    lines: dict[tuple[Eyes, int], list[Hung]] = {}
    for line in plan.hung:
        eyes = Eyes(line.source, line.source_eyes) if line.source_eyes else None
        if eyes is not None and not eyes.field.along:
            lines.setdefault((eyes, line.layer), []).append(line)
    beside = Counter(eyes_facing(entry) for entry, _ in plan.meetings)
    for (eyes, _), hung in lines.items():
        yield HungOnEyes(hung[-1].place_of("times"), tuple(hung), eyes, beside[eyes])


def by_eyes(plan: Plan) -> Iterator[Subject]:
    """Parts whose own eyes are there to hang by; from a set of eyes below, each eye takes one."""
    lines: dict[Eyes, list[Hung]] = {}
    for line in plan.hung:
        own = hanging_eyes(line.part)
        # a part with one set of eyes hangs by one of them and carries by the others
        if own is not None and len(line.part.kind.eyes) > 1 and own.field.several:
            lines.setdefault(own, []).append(line)
    for eyes, hung in lines.items():
        if not any(line.source_eyes or line.by is None for line in hung):
            yield HungByEyes(hung[-1].place_of("times"), eyes, tuple(hung))
