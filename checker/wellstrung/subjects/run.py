"""The joins of the run: two places that meet, what lies side by side in one, a toggle that swings.

What a ring joins is in `linked`.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import product, takewhile

from wellstrung.common.cache import cached
from wellstrung.model import rows
from wellstrung.model.item import Bead
from wellstrung.model.parts import WOVEN_WORK, BandEnd, Part, Role
from wellstrung.model.plan import Plan, RunEntry
from wellstrung.subjects import cups
from wellstrung.subjects.base import Eyes, Side, Subject, eyes_facing, named, side_facing
from wellstrung.subjects.counts import hung_over


class RopeInCap(Subject, frozen=True):
    """The end of a rope in an end cap."""

    cap: Part
    rope: Part

    @property
    def takes(self) -> str:
        """What of the rope goes in: see `taken`."""
        return taken(self.cap)

    @property
    def by_nub(self) -> bool:
        """Whether its nub goes in; a plain braid has one only where the plan says how thick."""
        return self.takes == "nub" and (self.rope.has("nub", "outside") or self.rope.has("beads"))


class EndInHole(Subject, frozen=True):
    """What is glued into a hole that ends inside: memory wire in an end ball or a cap."""

    hole: Part
    end: Part


class StrandsInCone(Subject, frozen=True):
    """The gathered ends of strands, or the first beads of a tassel's legs, in a cone or end cap."""

    cone: Part
    strands: tuple[Part, ...]


class StrandsBeside(Subject, frozen=True):
    """Strands that lie side by side in one place of the run, twisted round each other or not."""

    strands: tuple[Part, ...]
    twists: int = 0


class StopsAt(Subject, frozen=True):
    """What keeps a wire or a thread from slipping out of a hole, and whose hole that is.

    The loop of a wire link at the narrow hole of its cone, or the turn bead of a drop at the bead
    above it.
    """

    carrier: Part
    stop: Part | Bead
    at: Part | Bead


class StrandInCrimp(Subject, frozen=True):
    """A strand in a crimp: the line of its end goes through it and comes back.

    Beside its beads, `apart` from its ends, it goes through only as often as it passes them.
    """

    crimp: Part
    strand: Part
    apart: bool = False

    @property
    def lines(self) -> int:
        """How many lines lie in the crimp."""
        return self.strand.count("passes", default=1) if self.apart else 2


class TipOnStrands(Subject, frozen=True):
    """The ends of strands that come into a bead tip, and the knot or the crimp that it covers."""

    tip: Part
    strands: tuple[Part, ...]


class StrandsAtHoles(Subject, frozen=True):
    """Strands side by side where they meet the holes of a bar, a connector or half a clasp.

    `ends` is 2 where the part counts the eyes of both its ends together.
    """

    eyes: Eyes
    strands: tuple[Part, ...]
    ends: int


class LinesInEye(Subject, frozen=True):
    """The lines of strands that all go through one eye or ring: tied there, or back to a crimp."""

    loop: Side
    strands: tuple[Part, ...]
    crimp: Part | None = None

    @property
    def parts(self) -> tuple[str, ...]:
        """The strands, then what they are tied to, and the crimp between them."""
        return named(self.strands, self.loop, self.crimp)


class LineInSleeve(Subject, frozen=True):
    """The line of strands in a short coil that covers it, and the loop that the coil goes round."""

    sleeve: Part
    strands: tuple[Part, ...]
    loop: Side

    @property
    def parts(self) -> tuple[str, ...]:
        """The coil, its strands and what it goes round."""
        return named(self.sleeve, *self.strands, self.loop)


class BandInClasp(Subject, frozen=True):
    """The end of a band sewn or glued to the tube of a slide clasp, or between ribbon ends."""

    clasp: Part
    band: Part

    @property
    def _end(self) -> BandEnd:
        end = self.clasp.traits.band_end
        assert end is not None  # no other clasp is asked
        return end

    @property
    def across(self) -> tuple[str, ...]:
        """The field of the clasp that says how wide a band it takes."""
        return self._end.across

    @property
    def lies_on(self) -> bool:
        """Whether it is sewn between the ends, which cover it."""
        return self._end.on

    @property
    def thick(self) -> tuple[str, ...]:
        """The field of the clasp that says how thick a band goes in, where it goes in at all."""
        return self._end.thick


class EndsInKnots(Subject, frozen=True):
    """The end of what is closed by knots that slide along its cord."""

    clasp: Part
    work: Part


class Toggle(Subject, frozen=True):
    """A toggle in the run, and what stands behind its bar, nearest first."""

    clasp: Part
    behind: tuple[RunEntry, ...]

    @property
    def parts(self) -> tuple[str, ...]:
        """The clasp."""
        return named(self.clasp)


#: what a cone gathers
_GATHERED = frozenset({Role.STRAND, Role.ROPE})
#: what may have a hole for each strand
_HOLED = frozenset({Role.EYED, Role.CLASP})


def taken(cap: Part) -> str:
    """What a cap takes, `beads`, `nub`, `bundle` or `wire`: beads where it does not say."""
    usual = "wire" if cap.traits.on_wire_end else "beads"
    return cap.text("takes") if cap.has("takes") else usual


def joins(plan: Plan) -> Iterator[Subject]:
    """The joins of the run, once for every place where the plan makes them."""
    for entry in plan.run:
        if entry.beside:
            yield StrandsBeside(entry.place, entry.parts, entry.twists)
    for inner, end in plan.meetings:
        yield from _lines_at_once(inner, end)
        yield from _end_in(inner, end)
    for inner, end, apart in _beyond(plan):
        yield from _at_holes(inner, end, apart=apart)
    for crimp, (behind, ahead) in plan.with_neighbours():
        if crimp.part.kind.role is Role.CRIMP:
            yield from _through(crimp, behind, ahead, onwards=False)
            yield from _through(crimp, ahead, behind, onwards=True)
        elif crimp.part.kind.role is Role.SLEEVE:
            yield from _covered(crimp, behind, ahead, onwards=False)
            yield from _covered(crimp, ahead, behind, onwards=True)


def tassels(plan: Plan) -> Iterator[Subject]:
    """Legs that hang by thread from a cone, or from the wire that runs into an empty one.

    And the wire of a cone that hangs with its tassel, which stops at its narrow hole.
    """
    for line in plan.hung:
        if (cone := hung_over(plan, line.part)) is not None:
            yield StopsAt(line.place, line.part, line.part, cone)
    filled = {end.part for inner, end in plan.meetings if inner.part.kind.role in _GATHERED}
    for line in plan.hung:
        over = line.source.part("over")
        cone = line.source if over is None or over in filled else over
        if line.on_thread and cone.kind.role is Role.CONE:
            yield StrandsInCone(line.place_of("from"), cone, (line.part,) * line.times)


def _end_in(inner: RunEntry, end: RunEntry) -> Iterator[Subject]:
    """What ends in a cap, a cone, a crimp, a tip or half a clasp."""
    ends_in, role = end.part.kind.role, inner.part.kind.role
    alone = not (inner.beside or end.beside)
    if role is Role.ROPE and ends_in is Role.CAP and alone:
        yield RopeInCap(end.place, end.part, inner.part)
    if ends_in is Role.CAP and end.part.traits.cups:
        yield from cups.at_end(inner, end)
    if role is Role.BAND and end.half and end.part.traits.band_end is not None:
        yield BandInClasp(end.place, end.part, inner.part)
    if end.part.traits.slides:
        yield from (EndsInKnots(end.place, end.part, one) for one in inner.parts)
    if ends_in is Role.CAP and inner.part.thread.springs:
        yield from (EndInHole(end.place, end.part, one) for one in inner.parts)
    elif role in _GATHERED and _gathers(end.part, inner):
        yield StrandsInCone(end.place, end.part, inner.parts)
    elif ends_in is Role.CONE and inner.part.part("over") is not None:
        yield StopsAt(inner.place, inner.part, inner.part, end.part)
    elif role is Role.STRAND and ends_in is Role.CRIMP:
        yield from (StrandInCrimp(end.place, end.part, one) for one in inner.parts)
    elif ends_in is Role.TIP and (role is Role.STRAND or _on_thread(inner.part)):
        yield from (TipOnStrands(end.place, end.part, ends) for ends in _each(inner, end))
        inside = end.part.part("covers")
        if inside is not None:
            yield from (StrandInCrimp(end.place, inside, one) for one in inner.parts)


def _on_thread(part: Part) -> bool:
    """Whether a part is woven on thread, whose tail can be knotted at its ends."""
    return part.kind.role in WOVEN_WORK and part.takes("thread") and not part.on_cords


def _gathers(end: Part, inner: RunEntry) -> bool:
    """Whether a part gathers ends: a cone always, a cap several, or what is no rope."""
    if end.kind.role is not Role.CAP:
        return end.kind.role is Role.CONE
    strand = inner.part.kind.role is Role.STRAND
    return strand or bool(inner.beside) or taken(end) == "bundle"


def _through(
    crimp: RunEntry, inwards: Sequence[RunEntry], beyond: Sequence[RunEntry], *, onwards: bool
) -> Iterator[LinesInEye]:
    """The lines that come out of a crimp, go through what stands beyond it and come back."""
    for inner, end in product(inwards, beyond):
        loop = side_facing(end, onwards=onwards)
        if inner.part.kind.role is Role.STRAND and loop is not None:
            for strands in _each(inner, crimp):
                yield LinesInEye(crimp.place, loop, strands, crimp.part)


def _covered(
    sleeve: RunEntry, inwards: Sequence[RunEntry], beyond: Sequence[RunEntry], *, onwards: bool
) -> Iterator[LineInSleeve]:
    """The lines that go through a coil, and what the coil is bent round."""
    for inner, end in product(inwards, beyond):
        loop = side_facing(end, onwards=onwards)
        if inner.part.kind.role is Role.STRAND and loop is not None:
            for strands in _each(inner, sleeve):
                yield LineInSleeve(sleeve.place, sleeve.part, strands, loop)


def _each(inner: RunEntry, end: RunEntry) -> Sequence[tuple[Part, ...]]:
    """The strands that one of what stands at their end takes: all, or where it has rows each."""
    return [(one,) for one in inner.parts] if end.rows > 1 else [inner.parts]


def _lines_at_once(inner: RunEntry, end: RunEntry) -> Iterator[LinesInEye]:
    """The lines of strands that are tied to a ring, or to an eye that is the only one."""
    loop = side_facing(end)
    if inner.part.kind.role is not Role.STRAND or loop is None:
        return
    if isinstance(loop, Eyes):
        alone = end.part.kind.role in _HOLED and not list(_at_holes(inner, end))
        yield from [LinesInEye(inner.place, loop, inner.parts)] if alone else ()
    elif end.part.kind.role is Role.RING:
        yield from (LinesInEye(inner.place, loop, one) for one in _each(inner, end))


def _comes_to_holes(inner: RunEntry) -> bool:
    """Whether strands, ropes, or chains side by side lie at a place."""
    chains = bool(inner.beside) and inner.part.cut_from is not None
    return inner.part.kind.role in _GATHERED or chains


def _beyond(plan: Plan) -> Iterator[tuple[RunEntry, RunEntry, bool]]:
    """Strands, what stands at either end of them, and whether a ring, crimp or tip is between."""
    for index, inner in enumerate(plan.run):
        for way in (-1, 1) if _comes_to_holes(inner) else ():
            apart = len(rows.between(plan.run, index, way))
            far = index + way * (apart + 1)
            if 0 <= far < len(plan.run) or plan.is_loop:
                yield inner, plan.run[far % len(plan.run)], bool(apart)


def _at_holes(inner: RunEntry, end: RunEntry, *, apart: bool = False) -> Iterator[StrandsAtHoles]:
    """Strands against the holes they come to, where there are several; `apart` by a ring or so."""
    eyes = eyes_facing(end)
    if not _comes_to_holes(inner) or end.part.kind.role not in _HOLED or eyes is None:
        return
    ends = 1 if end.half or eyes.field.strung or end.part.traits.gathers else 2
    counted = apart or not eyes.field.several or eyes.part.has(*eyes.path, "count")
    if eyes.field.strung or eyes.count > ends or not counted:
        yield StrandsAtHoles(inner.place, eyes, inner.parts, ends)


def at_holes(plan: Plan, inner: RunEntry) -> Eyes | None:
    """The eyes at one end, where strands side by side go each to one of its own there."""
    return _holes_met(plan).get(id(inner))


@cached
def _holes_met(plan: Plan) -> Mapping[int, Eyes]:
    """The first eyes of its own that each place of the run comes to."""
    beyond = [(inner, _at_holes(inner, end, apart=apart)) for inner, end, apart in _beyond(plan)]
    return {id(inner): join.eyes for inner, joins in reversed(beyond) for join in joins}


def toggles(plan: Plan) -> Iterator[Subject]:
    """Every toggle by its bar, with the run from there inwards to the other half of a clasp."""
    for index, entry in enumerate(plan.run):
        if entry.half == "b" and entry.part.traits.swings:
            inwards = plan.run[1:] if index == 0 else plan.run[:index][::-1]
            behind = takewhile(lambda place: place.part.kind.role is not Role.CLASP, inwards)
            yield Toggle(entry.place, entry.part, tuple(behind))
