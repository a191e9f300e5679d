"""The kit of one maker: bags of beads, what is cut for it, its findings, and what all share."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct

from wellstrung.common import units
from wellstrung.derived import taken
from wellstrung.derived.purchase import up
from wellstrung.derived.taken import cord_words, thread_words
from wellstrung.lists import cutting
from wellstrung.lists.bags import Bag, bags
from wellstrung.lists.cutting import ChainCuts, CutList, Lengths
from wellstrung.lists.needles import needles
from wellstrung.model.parts import Part
from wellstrung.model.plan import Quantities


class CutPiece(Struct, frozen=True):
    """So many pieces of one length in a kit, for one part; chain is counted by its `links`.

    Each of those is a `unit`, a link or a cup. `later` says that it is cut when the woven part is
    measured: the kit has it a little longer. `asked` is a length, mm, that is measured off, not
    counted.
    """

    what: str
    part: str
    describes: str
    count: int
    length: float
    links: int = 0
    unit: str = "link"
    later: bool = False
    inches: bool = False
    asked: float = 0.0

    @property
    def long(self) -> str:
        """Its length in the maker's unit."""
        return units.by_length(self.asked or self.length, inches=self.inches)


class Loose(Struct, frozen=True):
    """A finding of a kit: how many the work takes, and how many over.

    One over of what is small is in the kit; of what costs more, one for all stays with the teacher.
    """

    name: str
    describes: str
    count: int
    over: int

    @property
    def in_all(self) -> int:
        """How many are put in the bag."""
        return self.count + self.over


class Kit(Struct, frozen=True):
    """What one maker is given; `shared` is for all on the table, `missing` what is not known."""

    title: str
    file: str
    makes: int
    bags: tuple[Bag, ...]
    cuts: tuple[CutPiece, ...]
    findings: tuple[Loose, ...]
    shared: tuple[str, ...]
    missing: tuple[str, ...]


def kit(ask: Quantities) -> Kit:
    """The kit of one maker of a plan."""
    cuts, things = cutting.listed([ask]), list(taken.of_plan(ask))
    unknown = [one for thing in things for one in taken.purchase(thing, on_hand=False).missing]
    return Kit(
        ask.plan.title,
        ask.plan.file,
        ask.plan.makes,
        tuple(bags(ask)),
        tuple(_cuts(cuts, ask)),
        tuple(_findings(ask)),
        tuple(f"{one.name} ({one.describes})" for one in things if one.group == "adhesive"),
        tuple(dict.fromkeys((*(f"what needs {one}" for one in unknown), *cuts.missing))),
    )


def _cuts(cuts: CutList, ask: Quantities) -> Iterator[CutPiece]:
    for chain in cuts.chains:
        yield from _of_chain(chain)
    for one in cuts.lengths:
        part, later = ask.plan.parts[one.part], one.when != "now"
        words = _words(part, one)
        yield CutPiece(
            one.what, one.part, words, one.most, one.length, later=later, inches=one.inches
        )


def _words(part: Part, one: Lengths) -> str:
    """Which thread, wire, cord or core it is, as a shop calls it."""
    if one.what in ("thread", "line", "warp"):
        return thread_words(part)
    if one.what == "cord":
        return cord_words(part)
    fields = {"wire": ("wire",), "core": ("outside",)}
    path = fields.get(one.what, ())
    return part.text(*path) if path and part.has(*path) else ""


def _of_chain(chain: ChainCuts) -> Iterator[CutPiece]:
    """Each piece of chain once, by how many links it has."""
    first = {piece.name: piece for bar in chain.bars for piece in bar.pieces}
    for name, count in chain.pieces:
        piece, later = first[name], chain.when != "now"
        many = (count, piece.length, piece.links, piece.unit)
        yield CutPiece("chain", name, chain.chain, *many, later, chain.inches, piece.asked)


def _findings(ask: Quantities) -> Iterator[Loose]:
    for thing in (*taken.of_plan(ask), *needles(ask)):
        if thing.group in ("rings", "findings"):
            count = up(taken.purchase(thing, on_hand=False).short)
            if count:
                yield Loose(thing.name, thing.describes, count, thing.over)
