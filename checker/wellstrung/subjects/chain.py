"""Chain: what is cut from it, every kind of piece, and the end links that take rings."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import islice

from msgspec import Struct

from wellstrung.common import units
from wellstrung.common.cache import cached
from wellstrung.common.places import Place
from wellstrung.formulas import chain as chains
from wellstrung.model.parts import Part, Role
from wellstrung.model.plan import Plan, Step
from wellstrung.subjects.base import Eyes, Subject, named
from wellstrung.subjects.counts import placed


class CutFromChain(Struct, frozen=True):
    """One kind of piece cut from a chain: its links, first to last, and how many there are."""

    piece: Part
    links: tuple[str, ...]
    count: int


class Length(Struct, frozen=True):
    """One line of supplies: so many pieces of a length, as written."""

    mm: float
    pieces: int
    text: str
    unit: str
    place: Place


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
        return named(self.chain, *(cut.piece for cut in self.pieces))

    @property
    def every_piece(self) -> list[tuple[str, ...]]:
        """The links of every piece, piece by piece."""
        return [cut.links for cut in self.pieces for _ in range(cut.count)]

    @property
    def lengths(self) -> list[float]:
        """Every length on hand, mm."""
        return [line.mm for line in self.on_hand for _ in range(line.pieces)]


class PieceCut(Subject, frozen=True):
    """One kind of chain piece, how many are cut, and the step that does it, where there is one."""

    piece: Part
    chain: Part
    pattern: tuple[str, ...]
    soldered: bool
    links: tuple[str, ...]
    count: int
    step: Step | None


class EndLink(Subject, frozen=True):
    """The end link of a chain piece: the rings it takes, and the link it is linked with.

    `beyond` is the link next to it, None in a piece of one link.
    """

    rings: tuple[Part, ...]
    eyes: Eyes
    chain: Part
    link: str
    beyond: str | None

    @property
    def parts(self) -> tuple[str, ...]:
        """Rings, then the piece."""
        return named(self.rings, self.eyes)


def pattern_of(chain: Part) -> tuple[str, ...]:
    """The links of a chain, once through its pattern."""
    return chain.texts("pattern")


def of_cups(part: Part) -> bool:
    """Whether it is cut from cup chain, so that no ring goes through its ends."""
    return part.cut_from is not None and part.cut_from.traits.cups


def loses_links(chain: Part) -> bool:
    """Whether a link is lost where it is cut: none where links open, or between two cups."""
    return not (chain.traits.opens or chain.traits.cups)


def links_of(piece: Part, chain: Part, first: str | None = None) -> tuple[str, ...]:
    """The links of one piece, first to last, or what they would be with another first link."""
    counted = piece.node_at("count_of")
    pattern = pattern_of(chain)
    if first is None:
        first = piece.text("starts_with") if piece.has("starts_with") else pattern[0]
    if piece.has("length"):
        return _of_length(piece.length("length").middle, pattern, first, chain)
    counts: int | Mapping[str, int] = counted.value if counted else piece.count("links")
    return tuple(chains.piece(pattern, first, counts))


#: more links than anyone cuts: a bound on hostile plans
_MOST = 20_000


def _of_length(wanted: float, pattern: Sequence[str], first: str, chain: Part) -> tuple[str, ...]:
    """As many whole links as pulled taut are nearest to the wanted length, mm; at least one.

    Each link adds its length less two wires, and the two ends their walls.
    """
    sizes = {link: _outside_and_wire(chain, link) for link in pattern}
    links: list[str] = []
    reached = sizes[first][1]
    for link in islice(chains.links_from(pattern, first), _MOST):
        outside, wire = sizes[link]
        adds = outside - 2 * wire
        if links and (adds <= 0 or reached + wire + adds / 2 > wanted):
            break
        links.append(link)
        reached += adds
    return tuple(links)


def _outside_and_wire(chain: Part, link: str) -> tuple[float, float]:
    """How long a link is, mm, and what of it the next overlaps at either end; of cups a gap."""
    if chain.traits.cups:
        outside, pitch = (chain.size("cup", what).middle for what in ("outside", "pitch"))
        return outside, (outside - pitch) / 2
    long, wire = chain.size("links", link, "length"), chain.wire("links", link, "wire")
    return long.middle, wire.middle


def _pieces(plan: Plan) -> Iterator[tuple[Part, Part]]:
    """Every part cut from a chain, and its chain."""
    for part in plan.parts.values():
        if part.cut_from is not None:
            yield part, part.cut_from


@cached
def chain_cuts(plan: Plan) -> tuple[ChainCut, ...]:
    """Every chain with the pieces that the plan hangs or runs of it."""
    counts = placed(plan)
    return tuple(
        ChainCut(
            chain.key.place,
            chain,
            pattern_of(chain),
            loses_links(chain),
            tuple(
                CutFromChain(piece, links_of(piece, chain), counts[piece.name])
                for piece, its_chain in _pieces(plan)
                if its_chain is chain and counts.get(piece.name)
            ),
            tuple(_on_hand(plan, chain)),
        )
        for chain in plan.parts.values()
        if chain.kind.role is Role.CHAIN
    )


def _on_hand(plan: Plan, chain: Part) -> Iterator[Length]:
    for line in plan.entries("supplies"):
        if line.value.get("chain") == chain.name and "length" in line.entries:
            node = line.entries["length"].node
            parsed = units.length(node.value)
            count = int(line.value.get("pieces", 1))
            yield Length(parsed.value, count, parsed.text, parsed.unit, node.place)


def piece_cuts(plan: Plan) -> Iterator[Subject]:
    """Every kind of piece with the step that cuts it."""
    for piece, chain in _pieces(plan):
        yield PieceCut(
            piece.key.place,
            piece,
            chain,
            pattern_of(chain),
            loses_links(chain),
            links_of(piece, chain),
            placed(plan).get(piece.name, 0),
            next(iter(plan.steps_that("cut", part=piece)), None),
        )


def end_links(plan: Plan) -> Iterator[Subject]:
    """The end links of chain pieces that take a ring, once for every way they are hung or run."""
    for piece, chain in _pieces(plan):
        if chain.traits.cups:
            continue
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
                    yield EndLink(piece.key.place, rings, eyes, chain, link, beyond)


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
