"""The physical connections that follow from the run and from what is hung, derived once a plan.

Rules ask for these subjects by type and never walk the plan themselves.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping
from itertools import count, takewhile

from msgspec import Struct
from msgspec.structs import astuple

from wellstrung.common import units
from wellstrung.common.cache import cached
from wellstrung.common.places import Place
from wellstrung.formulas import chain as chains
from wellstrung.model.parts import Hung, Item, Part, Plan, Role, RunEntry, Step, beads_named


class Subject(Struct, frozen=True):
    """What a rule looks at: the parts it is about and where the plan says so.

    Two subjects that differ in their place alone are one: the same cap on both ends is judged once.
    """

    place: Place

    def _compared(self) -> tuple[object, ...]:
        """All fields but the place, which is the first."""
        return astuple(self)[1:]

    def __eq__(self, other: object) -> bool:
        return type(self) is type(other) and self._compared() == other._compared()

    def __hash__(self) -> int:
        return hash(self._compared())

    @property
    def parts(self) -> tuple[str, ...]:
        """Names of the parts concerned, the one most likely to be changed first."""
        return ()


class Eyes(Struct, frozen=True):
    """A set of eyes of one part; `key` as the kind calls it, `count` where the plan says it."""

    part: Part
    key: str

    @property
    def count(self) -> int:
        """How many eyes there are; one where the kind has just one."""
        counted = self.part.kind.eyes[self.key].counted
        if counted is not None:
            return counted(self.part)
        path = self.path
        return self.part.count(*path, "count", default=1) if path else 1

    @property
    def stated_count(self) -> int:
        """How many eyes the plan says there are; raises Missing where it does not say."""
        eye = self.part.kind.eyes[self.key]
        if eye.counted is not None:
            return eye.counted(self.part)
        return self.part.count(*self.path, "count") if eye.several else 1

    @property
    def woven(self) -> bool:
        """Whether they are the holes of beads along a woven edge."""
        return self.part.kind.eyes[self.key].counted is not None

    @property
    def count_place(self) -> Place:
        """Where the plan says how many there are, or would say it."""
        counted_by = self.part.kind.eyes[self.key].counted_by
        return self.part.place_of(*((counted_by,) if self.woven else (*self.path, "count")))

    @property
    def path(self) -> tuple[str, ...]:
        """Where their fields stand in the part."""
        return self.part.eye_path(self.key)

    @property
    def words(self) -> str:
        """The eyes in the author's words."""
        name = self.key.replace("_", " ")
        if self.count == 1 and name.endswith("eyes"):
            name = name.removesuffix("s")
        return (
            f"the {name} of `{self.part.name}`"
            if len(name) > 1
            else f"the eye of `{self.part.name}.{name}`"
        )

    def quantity(self, what: str) -> str:
        """The name of one of their quantities."""
        return f"{self.part.name}.{self.key}.{what}"


def taken(cap: Part) -> str:
    """What of a rope a cap takes, `beads`, `nub` or `bundle`: its beads where it does not say."""
    return cap.text("takes") if cap.has("takes") else "beads"


class RopeInCap(Subject, frozen=True):
    """The end of a rope in an end cap; `takes` says what of it goes in."""

    rope: Part
    cap: Part

    @property
    def takes(self) -> str:
        """What goes in: see `taken`."""
        return taken(self.cap)

    @property
    def by_nub(self) -> bool:
        """Whether its nub goes in; a plain braid has one only where the plan says how thick."""
        return self.takes == "nub" and (self.rope.has("nub", "outside") or self.rope.has("beads"))

    @property
    def parts(self) -> tuple[str, ...]:
        """Cap, rope."""
        return (self.cap.name, self.rope.name)


class RingThroughEye(Subject, frozen=True):
    """A ring's wire in a hole; `rings` of them share one eye."""

    ring: Part
    eyes: Eyes
    rings: int

    @property
    def parts(self) -> tuple[str, ...]:
        """Ring, then whose eye it is."""
        return (self.ring.name, self.eyes.part.name)


class RingHolds(Subject, frozen=True):
    """Everything that one ring holds: eyes, a rope it goes round, other rings."""

    ring: Part
    eyes: tuple[Eyes, ...]
    around: Part | None = None
    other_rings: int = 0

    @property
    def parts(self) -> tuple[str, ...]:
        """Ring, then all that it holds."""
        held = dict.fromkeys(eyes.part.name for eyes in self.eyes)
        around = (self.around.name,) if self.around else ()
        return (self.ring.name, *around, *held)


class HungOnEyes(Subject, frozen=True):
    """A set of eyes and every line that hangs something from it."""

    eyes: Eyes
    lines: tuple[Hung, ...]

    @property
    def parts(self) -> tuple[str, ...]:
        """What hangs, then from what."""
        return (*dict.fromkeys(line.part.name for line in self.lines), self.eyes.part.name)

    @property
    def in_order(self) -> dict[int, tuple[Hung, int]]:
        """By eye, from the left: the line that hangs a piece there, and its number in that line.

        Lines that say `at` hang there; the others take the eyes left free, in the plan's order.
        """
        placed = {eye: (line, n) for line in self.lines for n, eye in enumerate(line.at)}
        others = [(line, n) for line in self.lines if not line.at for n in range(line.times)]
        on = evenly(len(others), self.eyes.count) if self.eyes.woven and not placed else count(1)
        placed |= dict(zip((eye for eye in on if eye not in placed), others, strict=False))
        return dict(sorted(placed.items()))


def evenly(hung: int, eyes: int) -> range:
    """The eyes of a woven edge that carry, from 1: every so many-th where that comes out even.

    From one end bead to the other, or as many beads before the first as after the last.

    >>> list(evenly(5, 9)), list(evenly(3, 9)), len(evenly(4, 9))
    ([1, 3, 5, 7, 9], [1, 5, 9], 9)
    """
    if hung > 1 and (eyes - 1) % (hung - 1) == 0 and hung <= eyes:
        return range(1, eyes + 1, (eyes - 1) // (hung - 1))
    if hung and eyes % hung == 0:
        return range(1 + (eyes // hung - 1) // 2, eyes + 1, eyes // hung)
    return range(1, eyes + 1)


class HungByEyes(Subject, frozen=True):
    """A part that hangs by several eyes of its own, and every line that hangs it."""

    eyes: Eyes
    lines: tuple[Hung, ...]

    @property
    def parts(self) -> tuple[str, ...]:
        """The part that hangs."""
        return (self.eyes.part.name,)


class CutFromChain(Struct, frozen=True):
    """One kind of piece cut from a chain: its links, first to last, and how many there are."""

    piece: Part
    links: tuple[str, ...]
    count: int


class ChainCut(Subject, frozen=True):
    """A chain, all that is cut from it, and the lengths on hand (mm, by line of `supplies`)."""

    chain: Part
    pattern: tuple[str, ...]
    soldered: bool
    pieces: tuple[CutFromChain, ...]
    on_hand: tuple[Length, ...]

    @property
    def parts(self) -> tuple[str, ...]:
        """Chain, then pieces."""
        return (self.chain.name, *(cut.piece.name for cut in self.pieces))

    @property
    def every_piece(self) -> list[tuple[str, ...]]:
        """The links of every piece, piece by piece."""
        return [cut.links for cut in self.pieces for _ in range(cut.count)]

    @property
    def lengths(self) -> list[float]:
        """Every length on hand, mm."""
        return [line.mm for line in self.on_hand for _ in range(line.pieces)]


class Length(Struct, frozen=True):
    """One line of supplies: so many pieces of a length, as written."""

    mm: float
    pieces: int
    text: str
    unit: str
    place: Place


class PieceCut(Subject, frozen=True):
    """One kind of chain piece and the step that cuts it, where there is one."""

    piece: Part
    chain: Part
    pattern: tuple[str, ...]
    soldered: bool
    links: tuple[str, ...]
    step: Step | None

    @property
    def parts(self) -> tuple[str, ...]:
        """Piece, chain."""
        return (self.piece.name, self.chain.name)


class Glue(Subject, frozen=True):
    """An adhesive in the plan."""

    adhesive: Part

    @property
    def parts(self) -> tuple[str, ...]:
        """The adhesive."""
        return (self.adhesive.name,)


class StrandsInCone(Subject, frozen=True):
    """The gathered ends of strands in a cone, or in an end cap that takes them all."""

    cone: Part
    strands: tuple[Part, ...]

    @property
    def parts(self) -> tuple[str, ...]:
        """Cone, strands."""
        return (self.cone.name, *(strand.name for strand in self.strands))


class StrandsBeside(Subject, frozen=True):
    """Strands that lie side by side in one place of the run."""

    strands: tuple[Part, ...]

    @property
    def parts(self) -> tuple[str, ...]:
        """Them."""
        return tuple(strand.name for strand in self.strands)


class LinkThroughCone(Subject, frozen=True):
    """A wire link in the narrow hole of the cone that it runs through."""

    link: Part
    cone: Part

    @property
    def parts(self) -> tuple[str, ...]:
        """Link, cone."""
        return (self.link.name, self.cone.name)


class StrandInCrimp(Subject, frozen=True):
    """The end of a strand in a crimp: its line goes through it and comes back."""

    crimp: Part
    strand: Part

    @property
    def parts(self) -> tuple[str, ...]:
        """Crimp, strand."""
        return (self.crimp.name, self.strand.name)


class TipOnStrands(Subject, frozen=True):
    """The ends of strands that come into a bead tip, and the knot or the crimp that it covers."""

    tip: Part
    strands: tuple[Part, ...]

    @property
    def parts(self) -> tuple[str, ...]:
        """Tip, strands."""
        return (self.tip.name, *(strand.name for strand in self.strands))


class BailAround(Subject, frozen=True):
    """A bail and the rope, strand or chain that it goes round."""

    bail: Part
    around: Part

    @property
    def parts(self) -> tuple[str, ...]:
        """Bail, what it goes round."""
        return (self.bail.name, self.around.name)


class Threaded(Subject, frozen=True):
    """A bead on the thread, line or wire of a part."""

    part: Part
    bead: Item

    @property
    def parts(self) -> tuple[str, ...]:
        """The part, then the bead."""
        return (self.part.name, self.bead.name)


class WireLink(Subject, frozen=True):
    """A wire link or a pin, with what it carries."""

    link: Part

    @property
    def parts(self) -> tuple[str, ...]:
        """The link."""
        return (self.link.name,)


class InEar(Subject, frozen=True):
    """The wire or the post of an earring in the ear that it goes through."""

    ear_wire: Part

    @property
    def parts(self) -> tuple[str, ...]:
        """The ear wire."""
        return (self.ear_wire.name,)


class ClaspClosed(Subject, frozen=True):
    """A clasp whose halves meet."""

    clasp: Part

    @property
    def parts(self) -> tuple[str, ...]:
        """The clasp."""
        return (self.clasp.name,)


class RingInUse(Subject, frozen=True):
    """A ring that the run or something hung is held by, however often it is used."""

    ring: Part

    @property
    def parts(self) -> tuple[str, ...]:
        """The ring."""
        return (self.ring.name,)


class Toggle(Subject, frozen=True):
    """A toggle in the run, and what stands behind its bar, nearest first."""

    clasp: Part
    behind: tuple[RunEntry, ...]

    @property
    def parts(self) -> tuple[str, ...]:
        """The clasp."""
        return (self.clasp.name,)


class CoreInRope(Subject, frozen=True):
    """A core in the bore of the rope that it fills."""

    rope: Part
    core: Part

    @property
    def parts(self) -> tuple[str, ...]:
        """Core, rope."""
        return (self.core.name, self.rope.name)


class BandInClasp(Subject, frozen=True):
    """The end of a band sewn or glued to the tube of a slide clasp, or between ribbon ends."""

    band: Part
    clasp: Part

    @property
    def parts(self) -> tuple[str, ...]:
        """Clasp, band."""
        return (self.clasp.name, self.band.name)

    @property
    def across(self) -> tuple[str, str]:
        """The field of the clasp that says how wide a band it takes."""
        return TAKES_BAND[self.clasp.text("type")][0]

    @property
    def thick(self) -> tuple[str, str]:
        """The field of the clasp that says how thick a band goes in, where it goes in at all."""
        return TAKES_BAND[self.clasp.text("type")][1]


#: the types of clasp that take the end of a band: the fields for how wide, and how thick
TAKES_BAND = {
    "slide": (("tube", "length"), ("tube", "slot")),
    "ribbon end": (("jaw", "width"), ("jaw", "gap")),
}


class PaletteBead(Subject, frozen=True):
    """A bead of the palette."""

    bead: Item

    @property
    def parts(self) -> tuple[str, ...]:
        """The bead."""
        return (self.bead.name,)


class EyesMeet(Subject, frozen=True):
    """Two closed curves of metal that are linked: a ring and an eye, two rings, or two eyes.

    A ring stands as its part, an eye as `Eyes`; `line` is what hangs by it, where it is not in the
    run.
    """

    one: Eyes | Part
    other: Eyes | Part
    line: Hung | None = None

    def _compared(self) -> tuple[object, ...]:
        return astuple(self)[1:-1]

    @property
    def parts(self) -> tuple[str, ...]:
        """The part of either side."""
        sides = (self.one, self.other)
        return tuple(
            dict.fromkeys(side.part.name if isinstance(side, Eyes) else side.name for side in sides)
        )


class Hangs(Subject, frozen=True):
    """One line of `hung`; every line is a subject of its own."""

    line: Hung

    @property
    def parts(self) -> tuple[str, ...]:
        """What hangs, then from what."""
        return (self.line.part.name, self.line.source.name)

    @property
    def below(self) -> Eyes | Part | None:
        """The eye or the ring that hangs."""
        is_ring = self.line.part.kind.role is Role.RING
        return self.line.part if is_ring else hanging_eyes(self.line.part)

    @property
    def above(self) -> Eyes | Part | None:
        """The eye or the ring that it hangs from; None where that has neither, as a rope."""
        if self.line.source_eyes:
            return Eyes(self.line.source, self.line.source_eyes)
        return self.line.source if self.line.source.kind.role is Role.RING else None


class EndLink(Subject, frozen=True):
    """The end link of a chain piece: the rings it takes, and the link it is linked with.

    `beyond` is the link next to it, None in a piece of one link.
    """

    eyes: Eyes
    chain: Part
    link: str
    beyond: str | None
    rings: tuple[Part, ...]

    @property
    def parts(self) -> tuple[str, ...]:
        """Rings, then the piece."""
        return (*dict.fromkeys(ring.name for ring in self.rings), self.eyes.part.name)


class StrandsAtHoles(Subject, frozen=True):
    """Strands side by side where they meet the holes of a bar, a connector or half a clasp.

    `ends` is 2 where the part counts the eyes of both its ends together.
    """

    eyes: Eyes
    strands: tuple[Part, ...]
    ends: int

    @property
    def parts(self) -> tuple[str, ...]:
        """The part with the holes, then the strands."""
        return (self.eyes.part.name, *(strand.name for strand in self.strands))


class Piece(Subject, frozen=True):
    """The piece as a whole."""


class Glues(Subject, frozen=True):
    """Every adhesive of the plan: what is told once, however many there are."""

    adhesives: tuple[Part, ...]

    @property
    def parts(self) -> tuple[str, ...]:
        """The adhesives."""
        return tuple(adhesive.name for adhesive in self.adhesives)


class MetalParts(Subject, frozen=True):
    """Every metal part of the plan, and the wearer's age (empty where the plan does not say)."""

    metal_parts: tuple[Part, ...]
    age: str

    @property
    def parts(self) -> tuple[str, ...]:
        """The parts."""
        return tuple(part.name for part in self.metal_parts)


class Worn(Subject, frozen=True):
    """A piece, how old its wearer is, and what closes it (empty where the plan does not say)."""

    age: str
    piece: str
    closes: str
    clasps: tuple[Part, ...]

    @property
    def parts(self) -> tuple[str, ...]:
        """Its clasps."""
        return tuple(clasp.name for clasp in self.clasps)


def find(plan: Plan) -> tuple[Subject, ...]:
    """Every join and every other subject of a plan that does not come from its work steps."""
    found: dict[Subject, None] = {}
    for subject in (
        *_run_joins(plan),
        *(join for join, _ in _hung_joins(plan)),
        *_hung_on_eyes(plan),
        *_hung_by_eyes(plan),
        *chain_cuts(plan),
        *_piece_cuts(plan),
        *_threaded(plan),
        *_rings_in_use(plan),
        *_toggles(plan),
        *_eyes_meet(plan),
        *(Hangs(line.place_of("part"), line) for line in plan.hung),
        *_end_links(plan),
    ):
        found.setdefault(subject)
    for subject in (*_by_part(plan), *_worn(plan)):
        found.setdefault(subject)
    return (*found, Piece(plan.place_of("title")))


def _by_part(plan: Plan) -> Iterator[Subject]:
    glues = tuple(part for part in plan.parts.values() if part.kind.role is Role.GLUE)
    for part in glues:
        yield Glue(part.key.place, part)
    if glues:
        yield Glues(glues[0].key.place, glues)
    for part in plan.parts.values():
        if part.kind.role is Role.CLASP:
            yield ClaspClosed(part.key.place, part)
        elif part.kind.name == "ear wire":
            yield InEar(part.key.place, part)
        elif _bent_from_wire(part):
            yield WireLink(part.key.place, part)
        core = plan.parts.get(part.text("core")) if part.has("core") else None
        if core is not None:
            yield CoreInRope(part.place_of("core"), part, core)
    for bead in plan.beads.values():
        yield PaletteBead(bead.key.place, bead)


def _worn(plan: Plan) -> Iterator[Subject]:
    age, closes = plan.written("wearer", "age"), plan.written("closes")
    old = str(age.value) if age else ""
    metal_parts = tuple(part for part in plan.parts.values() if part.takes("metal"))
    if metal_parts:
        yield MetalParts(metal_parts[0].key.place, metal_parts, old)
    if age is not None:
        clasps = dict.fromkeys(e.part for e in plan.run if e.part.kind.role is Role.CLASP)
        how = str(closes.value) if closes else ""
        yield Worn(age.place, old, plan.piece, how, tuple(clasps))


def passes_of(plan: Plan, part: Part) -> int | None:
    """How often the thread goes through a woven bead at least; None for what is not woven.

    The fullest bead counts: along an edge that carries a fringe, the thread of the fringe too.
    """
    if part.kind.role is Role.DROP:
        return 2  # down the leg and up again
    if part.kind.role is Role.STRAND or not part.has("stitch"):
        return None
    passes = plan.stitches[part.text("stitch")].passes
    return passes + fringe_passes(plan, part) if passes else None


def fringe_passes(plan: Plan, part: Part) -> int:
    """How often thread goes through a bead of a woven edge to hang what hangs there; at most."""
    if all(eye.counted is None for eye in part.kind.eyes.values()):
        return 0
    return max((line.passes for line in plan.hung if _sewn_to_edge(line, part)), default=0)


def _sewn_to_edge(line: Hung, part: Part) -> bool:
    """Whether a line hangs something from a woven edge of the part, by thread."""
    on_edge = line.source is part and line.source_eyes and line.on_thread
    return bool(on_edge) and Eyes(part, line.source_eyes).woven


#: what a cone gathers
_GATHERED = frozenset({Role.STRAND, Role.ROPE})


#: what may have a hole for each strand
_HOLED = frozenset({Role.EYED, Role.CLASP})


def _threaded(plan: Plan) -> Iterator[Threaded]:
    """Each bead that a thread or a wire of a part goes through, once."""
    for part in plan.parts.values():
        fields = ("beads", "core_bead", "turn")
        names = [name for one_of in fields for name in beads_named(part, one_of)]
        for name in dict.fromkeys(names):
            yield Threaded(part.place_of("beads"), part, plan.beads[name])


def _own_eyes(part: Part) -> list[str]:
    """The sets of eyes by which a part runs and hangs: all but those that only carry."""
    eyes = part.kind.eyes.items()
    return [key for key, eye in eyes if eye.counted is None and not eye.carries]


def eyes_facing(entry: RunEntry, *, onwards: bool = False) -> Eyes | None:
    """The eyes by which a place in the run meets its neighbour; chain goes `onwards` by its last.

    Other parts meet both their neighbours by their first set of eyes.
    """
    keys = [entry.half] if entry.half else _own_eyes(entry.part)
    if not keys:
        return None
    by_its_ends = onwards and entry.part.has("of")
    return Eyes(entry.part, keys[-1] if by_its_ends else keys[0])


def _strands_at_holes(inner: RunEntry, end: RunEntry) -> Iterator[Subject]:
    """Strands against the holes they meet; into a single eye all of them are gathered."""
    eyes = eyes_facing(end)
    if inner.part.kind.role not in _GATHERED or end.part.kind.role not in _HOLED or eyes is None:
        return
    ends = 1 if end.half or "holes" in end.part.kind.eyes else 2
    if "holes" in end.part.kind.eyes or eyes.count > ends:
        yield StrandsAtHoles(inner.place, eyes, inner.parts, ends)


def _run_joins(plan: Plan) -> Iterator[Subject]:
    for entry in plan.run:
        if entry.beside:
            yield StrandsBeside(entry.place, entry.parts)
    for before, after in plan.neighbours:
        roles = {before.part.kind.role: before.part, after.part.kind.role: after.part}
        if set(roles) == {Role.ROPE, Role.CAP} and not (before.beside or after.beside):
            cap_entry = before if before.part.kind.role is Role.CAP else after
            yield RopeInCap(cap_entry.place, roles[Role.ROPE], roles[Role.CAP])
        for end, inner in ((before, after), (after, before)):
            yield from _strands_at_holes(inner, end)
            on_band = inner.part.kind.role is Role.BAND and end.half
            if on_band and end.part.text("type") in TAKES_BAND:
                yield BandInClasp(end.place, inner.part, end.part)
            gathers = end.part.kind.role is Role.CONE or (
                end.part.kind.role is Role.CAP
                and (
                    inner.part.kind.role is Role.STRAND
                    or inner.beside
                    or taken(end.part) == "bundle"
                )
            )
            if gathers and inner.part.kind.role in _GATHERED:
                yield StrandsInCone(end.place, end.part, inner.parts)
            elif end.part.kind.role is Role.CONE and inner.part.has("over"):
                yield LinkThroughCone(inner.place, inner.part, end.part)
            elif end.part.kind.role is Role.CRIMP and inner.part.kind.role is Role.STRAND:
                yield from (StrandInCrimp(end.place, end.part, one) for one in inner.parts)
            elif end.part.kind.role is Role.TIP and inner.part.kind.role is Role.STRAND:
                yield TipOnStrands(end.place, end.part, inner.parts)
    for entry, (behind, ahead) in plan.with_neighbours():
        if entry.part.kind.role is not Role.RING:
            continue
        beside = (*behind, *ahead)
        met = [eyes_facing(place, onwards=True) for place in behind]
        met += [eyes_facing(place) for place in ahead]
        held = [eyes for eyes in met if eyes is not None]
        for eyes in held:
            yield RingThroughEye(entry.place, entry.part, eyes, 1)
        rings = sum(place.part.kind.role is Role.RING for place in beside)
        if entry.linked == 1:
            yield RingHolds(entry.place, entry.part, tuple(held), other_rings=rings)
        else:
            # the first and the last of a row hold an eye each and one ring, those between two rings
            for eyes in held:
                yield RingHolds(entry.place, entry.part, (eyes,), other_rings=1)
            if entry.linked > 2:
                yield RingHolds(entry.place, entry.part, (), other_rings=2)


def hanging_eyes(part: Part) -> Eyes | None:
    """The eyes a part hangs by: its first set."""
    key = next(iter(_own_eyes(part)), "")
    if not key or (part.eye_path(key) and not part.has(*part.eye_path(key))):
        return None
    return Eyes(part, key)


def pieces_hung(line: Hung) -> int:
    """How many parts a line hangs: one for each eye below, or for each full set of its own eyes.

    A frame with two top eyes hung by two rings is one frame; five charms of one eye are five.
    """
    own = hanging_eyes(line.part)
    if line.source_eyes or own is None:
        return line.times
    return -(-line.times // own.count)


def _hung_joins(plan: Plan) -> Iterator[tuple[Subject, int]]:
    """The joins of what is hung, and how often the plan hangs it so."""
    in_run = {eyes_facing(entry, onwards=way) for entry in plan.run for way in (False, True)}
    for line in plan.hung:
        if line.part.kind.role is Role.BAIL:
            yield BailAround(line.place_of("from"), line.part, line.source), line.times
        if line.by is None:
            continue
        place = line.place_of("by")
        held: list[Eyes] = []
        own = hanging_eyes(line.part)
        if own is not None:
            held.append(own)
            yield RingThroughEye(place, line.by, own, 1), line.times
        if line.source_eyes:
            eyes = Eyes(line.source, line.source_eyes)
            held.append(eyes)
            # the eye of a part in the run holds the ring of the run already
            yield RingThroughEye(place, line.by, eyes, 2 if eyes in in_run else 1), line.times
        around = line.source if line.source.kind.role is Role.ROPE else None
        yield RingHolds(place, line.by, tuple(held), around), line.times


def times_made(plan: Plan) -> Counter[Subject]:
    """How often one piece has each join of its run and of what is hung."""
    counts = Counter(_run_joins(plan))
    for entry in plan.run:
        if entry.linked > 3 and entry.part.kind.role is Role.RING:
            between = RingHolds(entry.place, entry.part, (), other_rings=2)
            counts[between] += entry.linked - 3  # the first of those between is counted already
    for join, times in _hung_joins(plan):
        counts[join] += times
    return counts


def _hung_on_eyes(plan: Plan) -> Iterator[Subject]:
    lines: dict[Eyes, list[Hung]] = {}
    for line in plan.hung:
        if line.source_eyes:
            lines.setdefault(Eyes(line.source, line.source_eyes), []).append(line)
    for eyes, hung in lines.items():
        yield HungOnEyes(hung[-1].place_of("times"), eyes, tuple(hung))


def _hung_by_eyes(plan: Plan) -> Iterator[Subject]:
    """Parts whose own eyes are there to hang by; from a set of eyes below, each eye takes one."""
    lines: dict[Eyes, list[Hung]] = {}
    for line in plan.hung:
        own = hanging_eyes(line.part)
        # a part with one set of eyes hangs by one of them and carries by the others
        if (
            own is not None
            and len(line.part.kind.eyes) > 1
            and line.part.kind.eyes[own.key].several
        ):
            lines.setdefault(own, []).append(line)
    for eyes, hung in lines.items():
        if not any(line.source_eyes or line.by is None for line in hung):
            yield HungByEyes(hung[-1].place_of("times"), eyes, tuple(hung))


@cached
def placed(plan: Plan) -> Mapping[str, int]:
    """How many of each part the plan hangs or runs, over all the pieces it makes.

    The crimp inside a bead tip counts with its tip.
    """
    counts: dict[str, int] = {}
    for line in plan.hung:
        counts[line.part.name] = counts.get(line.part.name, 0) + pieces_hung(line)
    for entry in plan.run:
        # a clasp stands in the run by its halves: the first of them is the clasp
        if entry.half in ("", next(iter(entry.part.kind.eyes), "")):
            for part in entry.parts:
                counts[part.name] = counts.get(part.name, 0) + entry.linked
                if part.kind.role is Role.TIP and part.has("covers"):
                    inside = part.text("covers")
                    counts[inside] = counts.get(inside, 0) + entry.linked
    return {name: count * plan.makes for name, count in counts.items()}


@cached
def chain_cuts(plan: Plan) -> tuple[ChainCut, ...]:
    """Every chain with the pieces that the plan hangs or runs of it."""
    return tuple(_chain_cuts(plan, placed(plan)))


def _chain_cuts(plan: Plan, counts: Mapping[str, int]) -> Iterator[ChainCut]:
    for chain in plan.parts.values():
        if not chain.has("pattern"):
            continue
        pieces = tuple(
            CutFromChain(part, links_of(part, chain), counts[part.name])
            for part in plan.parts.values()
            if part.has("of") and part.text("of") == chain.name and counts.get(part.name)
        )
        yield ChainCut(
            chain.key.place,
            chain,
            pattern_of(chain),
            chain.text("links_are") == "soldered",
            pieces,
            tuple(_on_hand(plan, chain)),
        )


def _on_hand(plan: Plan, chain: Part) -> Iterator[Length]:
    for line in plan.entries("supplies"):
        if line.value.get("chain") == chain.name and "length" in line.entries:
            node = line.entries["length"].node
            parsed = units.length(node.value)
            count = int(line.value.get("pieces", 1))
            yield Length(parsed.value, count, parsed.text, parsed.unit, node.place)


def pattern_of(chain: Part) -> tuple[str, ...]:
    """The links of a chain, once through its pattern."""
    node = chain.node_at("pattern")
    return tuple(str(link) for link in node.value) if node else ()


def links_of(piece: Part, chain: Part) -> tuple[str, ...]:
    """The links of one piece, first to last."""
    counted = piece.node_at("count_of")
    counts: int | Mapping[str, int] = counted.value if counted else piece.count("links")
    pattern = pattern_of(chain)
    first = piece.text("starts_with") if piece.has("starts_with") else pattern[0]
    return tuple(chains.piece(pattern, first, counts))


def _piece_cuts(plan: Plan) -> Iterator[Subject]:
    for piece in plan.parts.values():
        if piece.has("of"):
            chain = plan.parts[piece.text("of")]
            steps = (s for s in plan.steps if s.verb == "cut" and s.get("part") == piece.name)
            yield PieceCut(
                piece.key.place,
                piece,
                chain,
                pattern_of(chain),
                chain.text("links_are") == "soldered",
                links_of(piece, chain),
                next(steps, None),
            )


def _rings_in_use(plan: Plan) -> Iterator[Subject]:
    used = [entry.part for entry in plan.run] + [line.by for line in plan.hung if line.by]
    for ring in dict.fromkeys(used):
        if ring.kind.role is Role.RING:
            yield RingInUse(ring.key.place, ring)


def _toggles(plan: Plan) -> Iterator[Subject]:
    """Every toggle by its bar, with the run from there inwards to the other half of a clasp."""
    for index, entry in enumerate(plan.run):
        if entry.half == "b" and entry.part.text("type") == "toggle":
            inwards = plan.run[1:] if index == 0 else plan.run[:index][::-1]
            behind = takewhile(lambda place: place.part.kind.role is not Role.CLASP, inwards)
            yield Toggle(entry.place, entry.part, tuple(behind))


def _bent_from_wire(part: Part) -> bool:
    return "loop" in part.kind.eyes and part.has("wire")


def opens(side: Eyes | Part, plan: Plan) -> bool | None:
    """Whether a ring or an eye can be opened; None where the plan does not say.

    A ring by its closing, a link of chain by whether the chain is soldered, another eye by its
    `opens`. The loops of a wire link are bent round what they take, so they always let it in.
    """
    if isinstance(side, Part):
        return side.text("closing") in ("open", "split")
    part = side.part
    if side.woven:
        return False
    if _bent_from_wire(part):
        return True
    if part.has("of"):
        return plan.parts[part.text("of")].text("links_are") == "open"
    if part.kind.role is Role.BAIL and part.has("type") and part.text("type") == "pinch":
        return True  # its prongs are bent apart and pressed together
    path = side.path
    return part.text(*path, "opens") == "yes" if part.has(*path, "opens") else None


def curve(entry: RunEntry, *, onwards: bool = False) -> Eyes | Part | None:
    """The ring, or the eye, by which a place in the run meets its neighbour."""
    is_ring = entry.part.kind.role is Role.RING
    return entry.part if is_ring else eyes_facing(entry, onwards=onwards)


def _eyes_meet(plan: Plan) -> Iterator[Subject]:
    for before, after in plan.neighbours:
        one, other = curve(before, onwards=True), curve(after)
        halves = before.half and after.half and before.part is after.part
        if one is not None and other is not None and not halves:
            yield EyesMeet(after.place, one, other)
    for entry in plan.run:
        if entry.linked > 1 and entry.part.kind.role is Role.RING:
            yield EyesMeet(entry.place, entry.part, entry.part)
    for line in plan.hung:
        if line.on_thread:
            continue
        hangs = Hangs(line.place_of("part"), line)
        below, above = hangs.below, hangs.above
        pairs = [(below, above)] if line.by is None else [(below, line.by), (above, line.by)]
        place = line.place_of("by" if line.by else "part")
        for one, other in pairs:
            if one is not None and other is not None:
                yield EyesMeet(place, one, other, line)


def _end_links(plan: Plan) -> Iterator[Subject]:
    """The end links of chain pieces that take a ring, once for every way they are hung or run."""
    for piece in plan.parts.values():
        if not piece.has("of"):
            continue
        chain = plan.parts[piece.text("of")]
        links = links_of(piece, chain)
        below = {key: tuple(_rings_below(plan, piece, key)) for key in piece.kind.eyes}
        for above in dict.fromkeys(_rings_above(plan, piece)) or [((), ())]:
            first, last = (
                (Eyes(piece, key), (*rings, *below[key]))
                for key, rings in zip(below, above, strict=True)
            )
            found: list[tuple[Eyes, str, str | None, tuple[Part, ...]]]
            if len(links) == 1:
                found = [(first[0], links[0], None, first[1] + last[1])]
            else:
                found = [
                    (first[0], links[0], links[1], first[1]),
                    (last[0], links[-1], links[-2], last[1]),
                ]
            for eyes, link, beyond, rings in found:
                if rings:
                    yield EndLink(piece.key.place, eyes, chain, link, beyond, rings)


def _rings_above(plan: Plan, piece: Part) -> Iterator[tuple[tuple[Part, ...], tuple[Part, ...]]]:
    """The rings at the first and at the last link by which a piece hangs, or stands in the run."""
    for line in plan.hung:
        if line.part is piece and line.by is not None:
            yield (line.by,), ()
    for entry, beside in plan.with_neighbours():
        if entry.part is piece:
            first, last = (
                tuple(place.part for place in side if place.part.kind.role is Role.RING)
                for side in beside
            )
            yield first, last


def _rings_below(plan: Plan, piece: Part, key: str) -> Iterator[Part]:
    """The rings that hang something from one end of a piece, a ring for each line."""
    for line in plan.hung:
        if line.source is piece and line.source_eyes == key and line.by is not None:
            yield line.by
