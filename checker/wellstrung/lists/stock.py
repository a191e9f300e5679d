"""The stock when kits are packed: what is on hand of each thing, what they take, what is left.

Each kit is dealt from one lot while one is enough; the lines of a lot are used up in their order:
whole packs, then one that is opened.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence

from msgspec import Struct

from wellstrung.common import units
from wellstrung.common.places import Place
from wellstrung.common.units import Side
from wellstrung.derived import taken as things
from wellstrung.derived.amounts import LENGTH, VOLUME
from wellstrung.derived.packs import in_one_pack, one_spool, weighed_or_strung
from wellstrung.lists import cutting
from wellstrung.lists.bags import Bag
from wellstrung.lists.kit import Kit
from wellstrung.lists.lots import BOUGHT, Share, dealt
from wellstrung.lists.needles import needles
from wellstrung.model.item import Item, Missing
from wellstrung.model.parts import Role
from wellstrung.model.plan import Quantities
from wellstrung.quantity.verdict import SLACK
from wellstrung.subjects.supplies import supply_lines, threaded

GRAMS, PIECES = "g", ""
#: less than this of a pack, in its unit, is no rest: a tenth of a gram, a centimetre, a piece
_LEAST = {GRAMS: 0.1, LENGTH: 10.0, VOLUME: 0.1, PIECES: 1.0}


class Line(Struct, frozen=True):
    """One line of supplies: so many packs that hold `each`, and what is loose; then what is left.

    `unit` is g, mm, ml, or empty for pieces. `opened` are the rests of opened packs.
    """

    place: Place
    lot: str
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

    `takes` is in the unit of the lines; `short` is what comes of what is bought. `letter` is the
    bag that holds it, `shares` the lots of the kits where the lines name lots.
    """

    name: str
    unit: str
    takes: float
    lines: tuple[Line, ...]
    short: float
    inches: bool = False
    letter: str = ""
    shares: tuple[Share, ...] = ()

    @property
    def lots(self) -> Mapping[str, float]:
        """What is left of each lot; nothing where no line names one."""
        left = dict.fromkeys((line.lot for line in self.lines), 0.0)
        for line in self.lines:
            left[line.lot] += line.left
        return left if any(left) else {}

    @property
    def had(self) -> float:
        """All that is on hand."""
        return sum(line.had for line in self.lines)

    @property
    def left(self) -> float:
        """All that is left."""
        return sum(line.left for line in self.lines)

    def shown(self, amount: float, side: Side = "down") -> str:
        """An amount in words: what there is rounded down, what is taken or lacks rounded up."""
        if self.unit == LENGTH:
            return units.by_length(amount, inches=self.inches, side=side) if amount else "none"
        if self.unit == PIECES:
            return f"{amount:.0f}"
        return units.show(amount, self.unit, 1) if amount else "none"


def taken(ask: Quantities, kit: Kit, makers: int) -> list[Stocked]:
    """Everything that is on hand for a plan, when so many makers have their kits."""
    stock = _Stock(ask, makers)
    found = [
        *(stock.beads(bag) for bag in kit.bags),
        *(stock.pieces(one.name, one.in_all) for one in kit.findings),
        *stock.threads(),
        *_chains(makers, ask),
    ]
    return [one for one in found if one is not None]


def uncounted(ask: Quantities) -> Iterator[str]:
    """What is on hand of beads and does not add up, and what to do: packs by weight and pieces."""
    for bead in ask.plan.beads.values():
        lines = supply_lines(ask.plan, "bead", bead.name)
        if len({line.has("pack") for line in lines}) > 1:
            says = "on hand by weight and by count, so what is left is not worked out"
            yield f"{bead.name}: {says}; write all of it by weight or by count"


class _Stock:
    """What is on hand for a plan, for so many makers."""

    def __init__(self, ask: Quantities, makers: int) -> None:
        self._ask, self._makers = ask, makers
        self._bought = {
            (thing.group == "beads", thing.name): things.purchase(thing, makers)
            for thing in (*things.of_plan(ask), *needles(ask))
        }

    def beads(self, bag: Bag) -> Stocked | None:
        """The beads of a bag; None where nothing is on hand, or in ways that do not add up."""
        lines = supply_lines(self._ask.plan, "bead", bag.name)
        grams = [line.has("pack") for line in lines]
        if not all(map(_says_how_much, lines)) or len(set(grams)) > 1:
            return None
        if not lines or (grams[0] and bag.grams is None):
            return None
        bead, buys = self._ask.plan.beads[bag.name], self._bought[True, bag.name]

        def has(line: Item) -> tuple[float, int, float]:
            packs = line.count("packs", default=1)
            if grams[0]:
                return line.mass("pack").middle, packs, 0
            if weighed_or_strung(line):
                return in_one_pack(bead, line, self._ask).middle, packs, 0
            return _counted(line)

        held = [(line, *has(line)) for line in lines]
        if grams[0]:
            return self._used(bag.name, GRAMS, bag.grams or 0.0, held, buys.grams, bag.letter)
        return self._used(bag.name, PIECES, bag.pieces, held, buys.buy, bag.letter)

    def pieces(self, name: str, each: int) -> Stocked | None:
        """A finding of which a kit has so many; None where a line does not say how many it has."""
        lines = supply_lines(self._ask.plan, "part", name)
        if not all(map(_says_how_much, lines)):
            return None
        buys = self._bought.get((False, name))
        held = [(line, *_counted(line)) for line in lines]
        return self._used(name, PIECES, each, held, buys.buy if buys else 0)

    def threads(self) -> Iterator[Stocked | None]:
        """Each thread that is a part of the plan."""
        for spool, parts in threaded(self._ask.plan).items():
            if spool is None:
                continue
            try:
                each = sum(self._ask.of(part, "thread_in_all").middle for part in parts)
                held = [
                    (line, one_spool(spool, line).middle, _packs(line), 0.0)
                    for line in supply_lines(self._ask.plan, "thread", spool.name)
                ]
            except Missing:
                continue
            yield self._used(spool.name, LENGTH, each, held, self._bought[False, spool.name].buy)

    def _used(
        self,
        name: str,
        unit: str,
        each: float,
        held: Sequence[tuple[Item, float, int, float]],
        bought: float | None,
        letter: str = "",
    ) -> Stocked | None:
        """What the kits leave of each line of a thing; None where it has no lines."""
        if not held:
            return None
        holds: dict[str, float] = {}
        for item, of_pack, packs, loose in held:
            holds[_lot(item)] = holds.get(_lot(item), 0.0) + of_pack * packs + loose
        # nobody buys the tenth of a gram by which a bag is rounded up, or a spare for one kit
        takes = min(each * self._makers, sum(holds.values()) + (bought or 0.0))
        shares: tuple[Share, ...] = ()
        wanted = {"": takes}
        if any(holds):
            shares = tuple(dealt(holds | {BOUGHT: bought or 0.0}, each, self._makers))
            wanted = {
                lot: sum(share.kits * share.of.get(lot, 0.0) for share in shares) for lot in holds
            }
        lines, used = [], []
        for item, of_pack, packs, loose in held:
            line = _after(item, unit, of_pack, packs, loose, wanted[_lot(item)])
            lines.append(line)
            used.append(min(line.had, wanted[line.lot]))
            wanted[line.lot] -= used[-1]
        short = takes - math.fsum(used)
        inches = self._ask.plan.in_inches
        short = short if short > SLACK else 0.0
        return Stocked(name, unit, takes, tuple(lines), short, inches, letter, shares)


def _lot(item: Item) -> str:
    """The lot that a line of supplies names; empty where it names none."""
    return item.text("lot").removeprefix("lot ") if item.has("lot") else ""


def _says_how_much(line: Item) -> bool:
    """Whether a line holds so many grams, strands or pieces."""
    return weighed_or_strung(line) or line.has("pack_of") or line.has("count")


def _counted(line: Item) -> tuple[float, int, float]:
    each = line.count("pack_of") if line.has("pack_of") else 0
    return each, line.count("packs", default=1) if each else 0, line.count("count", default=0)


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
        yield Stocked(part.name, LENGTH, takes, tuple(found), bought, ask.plan.in_inches)


def _after(item: Item, unit: str, each: float, packs: int, loose: float, wanted: float) -> Line:
    """What is left of a line: loose pieces are taken first, then whole packs, then part of one."""
    from_loose = min(loose, wanted)
    rest = max(0.0, each * packs - (wanted - from_loose))
    full = math.floor(rest / each + 1e-9) if each else 0
    opened = rest - full * each
    kept = (opened,) if opened >= _LEAST[unit] - 1e-9 else ()
    return _line(item, unit, each, packs, loose, full, loose - from_loose, kept)


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
        item.node.place,
        _lot(item),
        unit,
        each,
        packs,
        loose,
        full,
        left_loose,
        opened,
        spelled or unit,
    )
