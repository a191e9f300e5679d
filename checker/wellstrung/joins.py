"""The physical connections that follow from the run and from what is hung, derived once a plan.

Rules ask for these subjects by type and never walk the plan themselves.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from itertools import pairwise, takewhile

from wellstrung import chain as chains
from wellstrung import units
from wellstrung.model import Hung, Part, Plan, Role, RunEntry, Step
from wellstrung.place import Place


@dataclass(frozen=True)
class Subject:
    """What a rule looks at: the parts it is about and where the plan says so.

    Two subjects that differ in their place alone are one: the same cap on both ends is judged once.
    """

    place: Place = field(compare=False)

    @property
    def parts(self) -> tuple[str, ...]:
        """Names of the parts concerned, the one most likely to be changed first."""
        return ()


@dataclass(frozen=True)
class Eyes:
    """A set of eyes of one part; `key` as the kind calls it, `count` where the plan says it."""

    part: Part
    key: str

    @property
    def count(self) -> int:
        """How many eyes there are; one where the kind has just one."""
        eye = self.part.kind.eyes[self.key]
        return self.part.count(*eye.path, "count", default=1) if eye.path else 1

    @property
    def stated_count(self) -> int:
        """How many eyes the plan says there are; raises Missing where it does not say."""
        eye = self.part.kind.eyes[self.key]
        return self.part.count(*eye.path, "count") if eye.several else 1

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


@dataclass(frozen=True)
class RopeInCap(Subject):
    """The end of a rope in an end cap."""

    rope: Part
    cap: Part

    @property
    def parts(self) -> tuple[str, ...]:
        """Cap, rope."""
        return (self.cap.name, self.rope.name)


@dataclass(frozen=True)
class RingThroughEye(Subject):
    """A ring's wire in a hole; `rings` of them share one eye."""

    ring: Part
    eyes: Eyes
    rings: int

    @property
    def parts(self) -> tuple[str, ...]:
        """Ring, then whose eye it is."""
        return (self.ring.name, self.eyes.part.name)


@dataclass(frozen=True)
class RingHolds(Subject):
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


@dataclass(frozen=True)
class HungOnEyes(Subject):
    """A set of eyes and every line that hangs something from it."""

    eyes: Eyes
    lines: tuple[Hung, ...]

    @property
    def parts(self) -> tuple[str, ...]:
        """What hangs, then from what."""
        return (*dict.fromkeys(line.part.name for line in self.lines), self.eyes.part.name)


@dataclass(frozen=True)
class CutFromChain:
    """One kind of piece cut from a chain: its links, first to last, and how many there are."""

    piece: Part
    links: tuple[str, ...]
    count: int


@dataclass(frozen=True)
class ChainCut(Subject):
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


@dataclass(frozen=True)
class Length:
    """One line of supplies: so many pieces of a length, as written."""

    mm: float
    pieces: int
    text: str
    unit: str
    place: Place


@dataclass(frozen=True)
class PieceCut(Subject):
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


@dataclass(frozen=True)
class Glue(Subject):
    """An adhesive in the plan."""

    adhesive: Part

    @property
    def parts(self) -> tuple[str, ...]:
        """The adhesive."""
        return (self.adhesive.name,)


@dataclass(frozen=True)
class RingInUse(Subject):
    """A ring that the run or something hung is held by, however often it is used."""

    ring: Part

    @property
    def parts(self) -> tuple[str, ...]:
        """The ring."""
        return (self.ring.name,)


@dataclass(frozen=True)
class Toggle(Subject):
    """A toggle in the run, and what stands behind its bar, nearest first."""

    clasp: Part
    behind: tuple[RunEntry, ...]

    @property
    def parts(self) -> tuple[str, ...]:
        """The clasp."""
        return (self.clasp.name,)


@dataclass(frozen=True)
class EyesMeet(Subject):
    """Two closed curves of metal that are linked: a ring and an eye, two rings, or two eyes.

    A ring stands as its part, an eye as `Eyes`; `line` is what hangs by it, where it is not in the
    run.
    """

    one: Eyes | Part
    other: Eyes | Part
    line: Hung | None = field(default=None, compare=False)

    @property
    def parts(self) -> tuple[str, ...]:
        """The part of either side."""
        sides = (self.one, self.other)
        return tuple(
            dict.fromkeys(side.part.name if isinstance(side, Eyes) else side.name for side in sides)
        )


@dataclass(frozen=True)
class Hangs(Subject):
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


@dataclass(frozen=True)
class EndLink(Subject):
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


@dataclass(frozen=True)
class Piece(Subject):
    """The piece as a whole."""


def find(plan: Plan) -> tuple[Subject, ...]:
    """Every join and every other subject of a plan that does not come from its work steps."""
    found: dict[Subject, None] = {}
    for subject in (
        *_run_joins(plan),
        *_hung_joins(plan),
        *_hung_on_eyes(plan),
        *chain_cuts(plan),
        *_piece_cuts(plan),
        *_rings_in_use(plan),
        *_toggles(plan),
        *_eyes_meet(plan),
        *(Hangs(line.place_of("part"), line) for line in plan.hung),
        *_end_links(plan),
    ):
        found.setdefault(subject)
    for part in plan.parts.values():
        if part.kind.role is Role.GLUE:
            found.setdefault(Glue(part.key.place, part))
    return (*found, Piece(plan.place_of("title")))


def _eyes_facing(entry: RunEntry, *, onwards: bool = False) -> Eyes | None:
    """The eyes by which a place in the run meets its neighbour; chain goes `onwards` by its last.

    Other parts meet both their neighbours by their first set of eyes.
    """
    keys = list(entry.part.kind.eyes)
    by_its_ends = onwards and entry.part.has("of")
    key = entry.half or (keys[-1 if by_its_ends else 0] if keys else "")
    return Eyes(entry.part, key) if key else None


def _run_joins(plan: Plan) -> Iterator[Subject]:
    run = plan.run
    for before, after in pairwise(run):
        roles = {before.part.kind.role: before.part, after.part.kind.role: after.part}
        if set(roles) == {Role.ROPE, Role.CAP}:
            cap_entry = before if before.part.kind.role is Role.CAP else after
            yield RopeInCap(cap_entry.place, roles[Role.ROPE], roles[Role.CAP])
    for index, entry in enumerate(run):
        if entry.part.kind.role is not Role.RING:
            continue
        behind, ahead = run[max(index - 1, 0) : index], run[index + 1 : index + 2]
        beside = (*behind, *ahead)
        met = [_eyes_facing(place, onwards=True) for place in behind]
        met += [_eyes_facing(place) for place in ahead]
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
    key = next(iter(part.kind.eyes), "")
    eye = part.kind.eyes.get(key)
    if eye is None or (eye.path and not part.has(*eye.path)):
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


def _hung_joins(plan: Plan) -> Iterator[Subject]:
    in_run = {_eyes_facing(entry, onwards=way) for entry in plan.run for way in (False, True)}
    for line in plan.hung:
        if line.by is None:
            continue
        place = line.place_of("by")
        held: list[Eyes] = []
        own = hanging_eyes(line.part)
        if own is not None:
            held.append(own)
            yield RingThroughEye(place, line.by, own, 1)
        if line.source_eyes:
            eyes = Eyes(line.source, line.source_eyes)
            held.append(eyes)
            # the eye of a part in the run holds the ring of the run already
            yield RingThroughEye(place, line.by, eyes, 2 if eyes in in_run else 1)
        around = line.source if line.source.kind.role is Role.ROPE else None
        yield RingHolds(place, line.by, tuple(held), around)


def _hung_on_eyes(plan: Plan) -> Iterator[Subject]:
    lines: dict[Eyes, list[Hung]] = {}
    for line in plan.hung:
        if line.source_eyes:
            lines.setdefault(Eyes(line.source, line.source_eyes), []).append(line)
    for eyes, hung in lines.items():
        yield HungOnEyes(hung[-1].place_of("times"), eyes, tuple(hung))


def chain_cuts(plan: Plan) -> Iterator[ChainCut]:
    """Every chain with the pieces that the plan hangs or runs of it."""
    counts: dict[str, int] = {}
    for line in plan.hung:
        counts[line.part.name] = counts.get(line.part.name, 0) + pieces_hung(line)
    for entry in plan.run:
        counts[entry.part.name] = counts.get(entry.part.name, 0) + entry.linked
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
        if entry.part.kind.role is Role.CLASP and entry.half == "b":
            inwards = plan.run[1:] if index == 0 else plan.run[:index][::-1]
            behind = takewhile(lambda place: place.part.kind.role is not Role.CLASP, inwards)
            yield Toggle(entry.place, entry.part, tuple(behind))


def opens(side: Eyes | Part, plan: Plan) -> bool | None:
    """Whether a ring or an eye can be opened; None where the plan does not say.

    A ring by its closing, a link of chain by whether the chain is soldered, another eye by its
    `opens`.
    """
    if isinstance(side, Part):
        return side.text("closing") in ("open", "split")
    part = side.part
    if part.has("of"):
        return plan.parts[part.text("of")].text("links_are") == "open"
    path = part.kind.eyes[side.key].path
    return part.text(*path, "opens") == "yes" if part.has(*path, "opens") else None


def _curve(entry: RunEntry, *, onwards: bool = False) -> Eyes | Part | None:
    """The ring, or the eye, by which a place in the run meets its neighbour."""
    is_ring = entry.part.kind.role is Role.RING
    return entry.part if is_ring else _eyes_facing(entry, onwards=onwards)


def _eyes_meet(plan: Plan) -> Iterator[Subject]:
    for before, after in pairwise(plan.run):
        one, other = _curve(before, onwards=True), _curve(after)
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
    for index, entry in enumerate(plan.run):
        if entry.part is piece:
            beside = plan.run[max(index - 1, 0) : index], plan.run[index + 1 : index + 2]
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
