"""The stock when kits are packed: what is on hand of each thing, what they take, what is left.

The lines of `supplies` are used up in their order: whole packs, then one that is opened.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from msgspec import Struct

from wellstrung.common import units
from wellstrung.common.places import Place
from wellstrung.derived.amounts import LENGTH, VOLUME
from wellstrung.derived.packs import in_one_pack, one_spool, weighed_or_strung
from wellstrung.lists import cutting
from wellstrung.lists.bags import Bag, lots_of
from wellstrung.lists.kit import Kit
from wellstrung.model.item import Item, Missing
from wellstrung.model.parts import Role
from wellstrung.model.plan import Plan, Quantities
from wellstrung.subjects.supplies import supply_lines, threaded

GRAMS, PIECES = "g", ""
#: less than this of a pack, in its unit, is no rest: a tenth of a gram, a centimetre, a piece
_LEAST = {GRAMS: 0.1, LENGTH: 10.0, VOLUME: 0.1, PIECES: 1.0}


class Line(Struct, frozen=True):
    """One line of supplies: so many packs that hold `each`, and what is loose; then what is left.

    `unit` is g, mm, ml, or empty for pieces. `opened` are the rests of opened packs.
    """

    place: Place
    unit: str
    each: float
    packs: int
    loose: float
    full: int
    left_loose: float
    opened: tuple[float, ...]
    spelled: str

    @property
    def had(self) -> float:
        """All that the line holds."""
        return self.each * self.packs + self.loose

    @property
    def left(self) -> float:
        """All that is left of it."""
        return self.each * self.full + self.left_loose + sum(self.opened)


class Stocked(Struct, frozen=True):
    """One thing on hand, what the kits take of it, and the lines with what is left in each.

    `takes` is in the unit of the lines; `short` is what they do not hold.
    """

    name: str
    lot: str
    unit: str
    takes: float
    lines: tuple[Line, ...]
    short: float
    inches: bool = False

    @property
    def had(self) -> float:
        """All that is on hand."""
        return sum(line.had for line in self.lines)

    @property
    def left(self) -> float:
        """All that is left."""
        return sum(line.left for line in self.lines)

    def shown(self, amount: float) -> str:
        """An amount in words, no more of it than there is."""
        if self.unit == LENGTH:
            return units.by_length(amount, inches=self.inches, side="down") if amount else "none"
        if self.unit == PIECES:
            return f"{amount:.0f}"
        return units.show(amount, self.unit, 1) if amount else "none"


def taken(ask: Quantities, kit: Kit, makers: int) -> list[Stocked]:
    """Everything that is on hand for a plan, when so many makers have their kits."""
    plan = ask.plan
    found = [
        *(_beads(bag, makers, ask) for bag in kit.bags),
        *(_pieces(one.name, one.in_all * makers, plan) for one in kit.findings),
        *_threads(makers, ask),
        *_chains(makers, ask),
    ]
    return [one for one in found if one is not None]


def _beads(bag: Bag, makers: int, ask: Quantities) -> Stocked | None:
    lines = supply_lines(ask.plan, "bead", bag.name)
    grams = [line.has("pack") for line in lines]
    if not lines or len(set(grams)) > 1 or (grams[0] and bag.grams is None):
        return None  # nothing on hand, or in ways that do not add up
    takes = (bag.grams if grams[0] else bag.pieces) or 0
    bead = ask.plan.beads[bag.name]

    def has(line: Item) -> tuple[float, int, float]:
        packs = line.count("packs", default=1)
        if grams[0]:
            return line.mass("pack").middle, packs, 0
        if weighed_or_strung(line):
            return in_one_pack(bead, line, ask).middle, packs, 0
        return _counted(line)

    unit = GRAMS if grams[0] else PIECES
    return _used(bag.name, unit, takes * makers, [(line, *has(line)) for line in lines], ask.plan)


def _counted(line: Item) -> tuple[float, int, float]:
    each = line.count("pack_of") if line.has("pack_of") else 0
    return each, line.count("packs", default=1) if each else 0, line.count("count", default=0)


def _pieces(name: str, takes: float, plan: Plan) -> Stocked | None:
    lines = supply_lines(plan, "part", name)
    return _used(name, PIECES, takes, [(line, *_counted(line)) for line in lines], plan)


def _threads(makers: int, ask: Quantities) -> Iterator[Stocked | None]:
    for spool, parts in threaded(ask.plan).items():
        if spool is None:
            continue
        try:
            takes = sum(ask.of(part, "thread_in_all").middle for part in parts) * makers
            lines = [
                (line, one_spool(spool, line).middle, _packs(line), 0.0)
                for line in supply_lines(ask.plan, "thread", spool.name)
            ]
        except Missing:
            continue
        yield _used(spool.name, LENGTH, takes, lines, ask.plan)


def _packs(line: Item) -> int:
    return line.count("pieces", default=line.count("spools", default=1))


def _chains(makers: int, ask: Quantities) -> Iterator[Stocked | None]:
    """Chain on hand: each length that is cut into leaves what is behind its last piece."""
    cuts = {one.chain: one for one in cutting.listed([ask], makers).chains}
    for part in ask.plan.parts.values():
        lines = supply_lines(ask.plan, "chain", part.name)
        if part.kind.role is not Role.CHAIN or not lines or part.name not in cuts:
            continue
        bars = [(bar.length, bar.left) for bar in cuts[part.name].bars if bar.written]
        bought = sum(bar.length for bar in cuts[part.name].bars if not bar.written)
        found = []
        for line in lines:
            each, packs = line.length("length").middle, line.count("pieces", default=1)
            into = [bar for bar in bars if math.isclose(bar[0], each)][:packs]
            for bar in into:
                bars.remove(bar)
            opened = tuple(left for _, left in into if left >= _LEAST[LENGTH])
            found.append(_line(line, LENGTH, each, packs, 0, packs - len(into), 0, opened))
        takes = sum(one.had - one.left for one in found)
        yield Stocked(part.name, "", LENGTH, takes, tuple(found), bought, ask.plan.in_inches)


def _used(
    name: str,
    unit: str,
    takes: float,
    lines: Sequence[tuple[Item, float, int, float]],
    plan: Plan,
) -> Stocked | None:
    """A thing with its lines used up one after the other."""
    if not lines:
        return None
    wanted, found = takes, []
    for item, each, packs, loose in lines:
        from_loose = min(loose, wanted)
        rest = max(0.0, each * packs - (wanted - from_loose))
        full = math.floor(rest / each + 1e-9) if each else 0
        opened = rest - full * each
        kept = (opened,) if opened >= _LEAST[unit] - 1e-9 else ()
        one = _line(item, unit, each, packs, loose, full, loose - from_loose, kept)
        found.append(one)
        wanted = max(0.0, wanted - one.had)
    lot = ", ".join(lots_of(item for item, *_ in lines))
    return Stocked(name, lot, unit, takes, tuple(found), wanted, plan.in_inches)


def _line(
    item: Item,
    unit: str,
    each: float,
    packs: int,
    loose: float,
    full: int,
    left_loose: float,
    opened: tuple[float, ...],
) -> Line:
    field = {GRAMS: "pack", LENGTH: "length"}.get(unit, "")
    written = item.mass if unit == GRAMS else item.length
    spelled = written(field).spelled_unit if field and item.has(field) else unit
    return Line(
        item.node.place, unit, each, packs, loose, full, left_loose, opened, spelled or unit
    )
