"""What to buy for plans: everything they take, over what is on hand, in what it is sold in.

Each plan gives its lines; lines for the same thing are added up before anything is rounded, so a
class buys whole packs once and not plan by plan. What is written under `supplies` is on hand once,
however many makers there are.

Amounts are pieces, mm (thread, chain, cord, wire) or mm3 (adhesive).
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import partial
from typing import TYPE_CHECKING

from wellstrung import chain as links
from wellstrung import glue, prices, tables, thread, units
from wellstrung.joins import ChainCut, CutFromChain, chain_cuts, placed
from wellstrung.kinds.chain import MOST_LINKS, link_inside, run_length
from wellstrung.model import Item, Missing, Part, Plan, Role, Step
from wellstrung.needs import beads_needed, spool_of, supply_lines
from wellstrung.prices import SOLD, Money, Price
from wellstrung.quantity import SLACK, Quantity, derived, exact, times, total
from wellstrung.words import listed
from wellstrung.work import Mixed, joints_of, simulate

if TYPE_CHECKING:
    from wellstrung.checking import PlanResult
    from wellstrung.derive import Quantities

#: Groups of a shopping list, in the order it is read in a shop.
GROUPS = (
    "beads", "thread", "cord", "core", "chain", "wire", "rings", "findings", "adhesive",
)  # fmt: skip
PIECES, LENGTH, VOLUME = "", "mm", "mm3"
#: What is asked for by the length, and cut off to it: priced by what is bought, not by the pack.
BY_THE_LENGTH = frozenset({"cord", "core", "chain", "wire"})
#: Lengths are bought by the centimetre, mm.
_CENTIMETRE, _METRE = 10.0, 1000.0
#: A bound on hostile plans.
MOST_PACKS = 100_000


@dataclass(frozen=True)
class Pack:
    """What a thing is sold in: how much one holds, in the line's unit, and how it is written.

    `holds` is None where one is enough whatever it holds, as a bottle of adhesive. It may hold
    `less` than that, as likely; `grams` is what beads in it weigh.
    """

    holds: float | None
    word: str
    text: str = ""
    less: float = 0.0
    grams: float | None = None


@dataclass(frozen=True)
class Needed:
    """How much of a thing is taken: the middle and its likely range."""

    middle: float
    low: float
    high: float


@dataclass(frozen=True)
class SupplyLine:
    """One thing to buy.

    `up` is how far need and spare may likely be above their middle, `down` how far what is on hand
    may be below its own. `cut_short` is what has to be bought of a chain, whose lengths do not add
    up. `missing` names the fields that would let the amount be known; `notes` are for people.
    """

    group: str
    name: str
    describes: str
    unit: str
    need: Needed = Needed(0.0, 0.0, 0.0)
    spare: float = 0.0
    up: float = 0.0
    have: float = 0.0
    down: float = 0.0
    cut_short: float | None = None
    pack: Pack | None = None
    per_gram: float | None = None
    price: Price | None = None
    plans: tuple[str, ...] = ()
    files: tuple[str, ...] = ()
    missing: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()

    def left(self, packs: int = 0) -> float:
        """What is left over, at its likely least, when so many packs more have been bought.

        Need and what is had vary apart from each other: root-sum-square, as a rule compares them.
        """
        holds, less = (self.pack.holds or 0.0, self.pack.less) if self.pack else (0.0, 0.0)
        middle = self.have + packs * holds - self.need.middle - self.spare
        return middle - math.hypot(self.up, self.down + packs * less)

    @property
    def short(self) -> float:
        """What has to be bought, before it is rounded to pieces and packs."""
        return max(0.0, -self.left()) if self.cut_short is None else self.cut_short

    @property
    def packs(self) -> int | None:
        """Whole packs to buy; None where nothing says what it is sold in."""
        if self.pack is None:
            return None
        if self.pack.holds is None or not self.short:
            return 1 if self.short else 0
        packs = _up(self.short / self.pack.holds)
        while self.left(packs) < -SLACK and packs < MOST_PACKS:
            packs += 1
        return packs

    @property
    def buy(self) -> float:
        """What is bought: whole packs, whole pieces, whole centimetres."""
        if self.pack is not None and self.pack.holds is not None:
            return (self.packs or 0) * self.pack.holds
        if self.unit == LENGTH:
            return _up(self.short / _CENTIMETRE) * _CENTIMETRE
        return _up(self.short) if self.unit == PIECES else self.short

    @property
    def grams(self) -> float | None:
        """What the beads to buy weigh, g; None for what is not weighed."""
        if self.pack is not None and self.pack.grams is not None:
            return (self.packs or 0) * self.pack.grams
        return self.buy / self.per_gram if self.per_gram else None

    @property
    def cost(self) -> Money | None:
        """What it costs to buy; None without a price that says for how much."""
        bought = self._bought(self.price) if self.price is not None and not self.missing else None
        return self.price.of(bought) if self.price is not None and bought is not None else None

    def _bought(self, price: Price) -> float | None:
        """How much is bought, in a price's unit; None where the price does not fit the thing."""
        if price.unit == "g":
            return self.grams
        if price.unit == self.unit:
            return self.buy
        if self.packs is not None and price.unit in (SOLD, PIECES):
            return self.packs  # `each` is each spool of thread, each bottle of adhesive
        # a finding with a bare price is sold by the piece; a bead with one may be sold in anything
        bare = price.unit == SOLD and " per " not in price.text
        return self.buy if bare and self.unit == PIECES and self.group != "beads" else None

    @property
    def key(self) -> tuple[str, str, str]:
        """Two lines with one key are for the same thing."""
        return self.group, self.name, self.describes


@dataclass(frozen=True)
class Kit:
    """What to weigh out for one maker of one plan: of each bead its pieces and grams."""

    title: str
    file: str
    beads: tuple[KitBead, ...]


@dataclass(frozen=True)
class KitBead:
    """One bead of a kit, spare ones included; grams up to the next tenth, None where unknown."""

    name: str
    pieces: int
    grams: float | None


def needed(
    results: Iterable[PlanResult], makers: int = 1, *, on_hand: bool = True
) -> list[SupplyLine]:
    """The shopping list of the plans, each made by so many makers, in the order of `GROUPS`.

    Without `on_hand` nothing counts as had already: what the pieces take in all. Plans that could
    not be understood give no lines.
    """
    asked = [result.worked for result in results if result.worked is not None]
    lines = [line for ask in asked for line in _of_plan(ask, makers, on_hand)]
    lines += _chains(asked, makers, on_hand)
    return sorted(added(lines), key=lambda line: GROUPS.index(line.group))


def added(lines: Iterable[SupplyLine]) -> list[SupplyLine]:
    """Lines for the same thing as one, added up before anything is rounded."""
    found: dict[tuple[str, str, str], SupplyLine] = {}
    for line in lines:
        found[line.key] = _sum(found[line.key], line) if line.key in found else line
    return list(found.values())


def _sum(one: SupplyLine, other: SupplyLine) -> SupplyLine:
    need = Needed(
        one.need.middle + other.need.middle,
        one.need.low + other.need.low,
        one.need.high + other.need.high,
    )
    return replace(
        one,
        need=need,
        spare=one.spare + other.spare,
        up=one.up + other.up,
        have=one.have + other.have,
        down=one.down + other.down,
        pack=one.pack or other.pack,
        price=one.price or other.price,
        plans=tuple(dict.fromkeys((*one.plans, *other.plans))),
        files=tuple(dict.fromkeys((*one.files, *other.files))),
        missing=tuple(dict.fromkeys((*one.missing, *other.missing))),
        notes=tuple(dict.fromkeys((*one.notes, *other.notes))),
    )


def bill(lines: Iterable[SupplyLine]) -> tuple[Money, ...]:
    """What the lines with a price cost, one sum for each currency."""
    return prices.total(line.cost for line in lines if line.cost is not None)


def unpriced(lines: Iterable[SupplyLine]) -> list[str]:
    """Names of what has to be bought and has no price that fits."""
    return [line.name for line in lines if line.cost is None and (line.short or line.missing)]


def cost(ask: Quantities, currency: str) -> Quantity:
    """What all that one plan takes costs, with nothing on hand, in whole packs.

    Raises Missing where something has no price, or one in another currency.
    """
    lines = [*_of_plan(ask, 1, False), *_chains([ask], 1, False)]
    unknown = next((lacks for line in lines for lacks in line.missing), "")
    if unknown:
        raise Missing(unknown)
    costs = [(line, line.cost) for line in lines if line.short]
    lacking = [line.name for line, cost in costs if cost is None or cost.currency != currency]
    if lacking:
        raise Missing(f"a price in {currency} for {listed(lacking)} under `prices` of a bench file")
    return total(
        "what it costs",
        currency,
        [
            exact(line.name, float(cost.amount), currency, source=f"{bought(line)}, {price.text}")
            for line, cost in costs
            if cost is not None and (price := line.price) is not None
        ],
    )


def bought(line: SupplyLine) -> str:
    """What is bought, in words: what it is sold in, or pieces, or a length.

    >>> bought(SupplyLine("rings", "small", "", "", Needed(14, 14, 14)))
    '14'
    """
    if line.packs is not None and line.pack is not None:
        word = line.pack.word if line.packs == 1 else _several(line.pack.word)
        return f"{line.packs} {word}" + (f" of {line.pack.text}" if line.pack.text else "")
    if line.unit == LENGTH:
        return units.show(line.buy, "m" if line.buy >= _METRE else "cm")
    return f"{line.buy:g}"


def _several(word: str) -> str:
    return f"{word}es" if word.endswith("x") else f"{word}s"


def kits(results: Iterable[PlanResult]) -> list[Kit]:
    """For each plan what one maker is given of each bead, spare ones included."""
    found = []
    for result in results:
        if result.worked is not None:
            beads = tuple(_kit_beads(result.worked))
            if beads:
                found.append(Kit(result.title, result.file, beads))
    return found


def _kit_beads(ask: Quantities) -> Iterator[KitBead]:
    for line in _beads(ask, 1, False):
        if not line.missing:
            # weighed up to the next tenth of a gram
            grams = _up(line.short / line.per_gram * 10) / 10 if line.per_gram else None
            yield KitBead(line.name, _up(line.short), grams)


def _up(value: float) -> int:
    """A whole number that is enough; a millionth over it still counts as it."""
    return max(0, math.ceil(value - 1e-6))


# --- one plan


def _of_plan(ask: Quantities, makers: int, on_hand: bool) -> Iterator[SupplyLine]:
    """Every line of a plan but its chains, which are cut together with those of other plans."""
    for lines_of in (_beads, _threads, _cords, _cores, _wires, _pieces, _adhesives):
        for line in lines_of(ask, makers, on_hand):
            yield _stamped(line, ask.plan)


def _stamped(line: SupplyLine, plan: Plan) -> SupplyLine:
    """The line with the plan it is for, and its price."""
    price = prices.priced(plan.bench.prices, line.name)
    pack = line.pack or _pack_of_price(line, price)
    return replace(line, plans=(plan.title,), files=(plan.file,), price=price, pack=pack)


def _pack_of_price(line: SupplyLine, price: Price | None) -> Pack | None:
    """What a thing is sold in by its price, where no line of supplies says it."""
    if price is None or line.group in BY_THE_LENGTH or line.group == "adhesive":
        return None
    if price.unit == "g" and line.per_gram:
        holds, text = price.per * line.per_gram, units.show(price.per, "g")
        return Pack(holds, "pack", text, grams=price.per)
    if price.unit == line.unit == LENGTH:
        return Pack(price.per, "spool", units.show(price.per, "m"))
    if price.unit == line.unit == PIECES and price.per > 1:
        return Pack(price.per, "pack", f"{price.per:g}")
    return None


def _filled(
    blank: SupplyLine,
    makers: int,
    need: Callable[[], Quantity],
    had: Callable[[], Quantity],
    spare: Callable[[], Quantity] | None = None,
) -> SupplyLine:
    """A line with its amounts, or with the fields that are missing for them."""
    try:
        takes = times(need(), makers)
        over = times(spare(), makers) if spare else exact("spare", 0.0, takes.unit)
    except Missing as lacks:
        return replace(blank, missing=(lacks.field,))
    notes = blank.notes
    try:
        have = had()
    except Missing as lacks:
        have = exact("on hand", 0.0, takes.unit)
        notes = (*notes, f"what is on hand is not counted: it lacks {lacks.field}")
    in_all = takes + over
    return replace(
        blank,
        need=Needed(takes.middle, *takes.likely),
        spare=over.middle,
        up=in_all.likely.high - in_all.middle,
        have=have.middle,
        down=have.middle - have.likely.low,
        notes=notes,
    )


def described(item: Item, *fields: str) -> str:
    """What a shop needs to know of a thing: the values of its fields, as the author wrote them."""
    paths = [name.split(".") for name in fields]
    return " ".join(item.text(*path) for path in paths if item.has(*path))


def _sold_as(line: Item, usual: str) -> str:
    return line.text("sold_as") if line.has("sold_as") else usual


def _nothing(unit: str) -> Callable[[], Quantity]:
    return partial(exact, "on hand", 0.0, unit)


# --- beads


def _beads(ask: Quantities, makers: int, on_hand: bool) -> Iterator[SupplyLine]:
    in_loops = _in_loops(ask.plan)
    for bead in ask.plan.beads.values():
        need, loops = beads_needed(ask.plan, bead), in_loops.get(bead.name, 0)
        if need.woven or loops:
            yield _filled(
                _bead_line(bead, need.lines, ask),
                makers,
                need=partial(_bead_need, bead, loops, ask),
                had=partial(ask.of, bead, "on_hand") if on_hand and need.lines else _nothing(""),
                spare=partial(ask.of, bead, "spare"),
            )


def _bead_need(bead: Item, loops: int, ask: Quantities) -> Quantity:
    """Beads of the woven parts, and of the loops that buttons go through."""
    return ask.of(bead, "needed") + exact("beads of loops", loops)


def _in_loops(plan: Plan) -> dict[str, int]:
    """Beads that the loops of the plan's clasps take, by name."""
    counts = placed(plan)
    found: dict[str, int] = {}
    for part in plan.parts.values():
        if part.has("loop", "beads"):
            beads = part.count("loop", "count", default=0) * counts.get(part.name, plan.makes)
            found[part.text("loop", "beads")] = found.get(part.text("loop", "beads"), 0) + beads
    return found


def _bead_line(bead: Item, lines: Sequence[Item], ask: Quantities) -> SupplyLine:
    kind = "" if bead.text("type") == "other" else described(bead, "type", "size", "make")
    size = kind or f"{described(bead, 'outside')} bead"
    looks = described(bead, "colour", "finish")
    try:
        per_gram = ask.of(bead, "per_gram")
    except Missing:
        per_gram = None
    return SupplyLine(
        group="beads",
        name=bead.name,
        describes=f"{size}, {looks}" if looks else size,
        unit=PIECES,
        pack=_bead_pack(lines[-1], per_gram) if lines else None,
        per_gram=per_gram.middle if per_gram is not None else None,
    )


def _bead_pack(line: Item, per_gram: Quantity | None) -> Pack | None:
    """What beads are sold in, by the last line of supplies: so many grams, or so many beads."""
    if line.has("pack") and per_gram is not None:
        grams = line.mass("pack")
        holds = derived(
            "beads in a pack", "", lambda grams, each: grams * each, "grams * each",
            grams=grams, each=per_gram,
        )  # fmt: skip
        return Pack(
            holds.middle,
            _sold_as(line, "pack"),
            grams.spelling,
            holds.middle - holds.likely.low,
            grams.middle,
        )
    if line.has("pack_of"):
        count = line.count("pack_of")
        weighs = count / per_gram.middle if per_gram is not None else None
        return Pack(count, _sold_as(line, "pack"), f"{count}", grams=weighs)
    return None


# --- what is bought by the length


def _threads(ask: Quantities, makers: int, on_hand: bool) -> Iterator[SupplyLine]:
    plan = ask.plan
    used: dict[str, list[Part]] = {}
    for part in plan.parts.values():
        if part.has("thread"):
            spool = spool_of(plan, part)
            name = spool.name if spool else described(part, *_THREAD) or "thread"
            used.setdefault(name, []).append(part)
    for name, parts in used.items():
        spool = plan.parts.get(name)
        lines = supply_lines(plan, "thread", name) if spool else ()
        blank = SupplyLine(
            group="thread",
            name=name,
            describes=described(spool, "type", "rating", "size") if spool else name,
            unit=LENGTH,
            pack=_spool(spool, lines),
        )
        yield _filled(
            blank,
            makers,
            need=partial(_thread_need, name, parts, ask),
            had=partial(_wound, name, spool, lines) if on_hand and spool else _nothing(LENGTH),
        )


_THREAD = ("thread.type", "thread.rating", "thread.size")


def _thread_need(name: str, parts: Sequence[Part], ask: Quantities) -> Quantity:
    counts = placed(ask.plan)
    terms = [_thread_of(part, counts.get(part.name) or ask.plan.makes, ask) for part in parts]
    return total(f"{name} needed", LENGTH, terms)


def _thread_of(part: Part, count: int, ask: Quantities) -> Quantity:
    """Thread for so many of a part, with the tails of every thread, mm."""
    if part.kind.name == "strand":
        return derived(
            f"{part.name} line with tails",
            LENGTH,
            lambda count, line, tail: count * (line + 2 * tail),
            "count * (line + 2 * tail)",
            count=exact("strung", count),
            line=ask.of(part, "thread"),
            tail=tail_of(part),
            source="strung in one go, a tail at each end: counting",
        )
    # the legs of a fringe hang on one thread, which goes on from one to the next
    fringe = part.kind.role is Role.DROP
    path = times(ask.of(part, "thread"), count) if fringe else ask.of(part, "thread")
    return derived(
        f"{part.name} thread with tails",
        LENGTH,
        lambda count, path, working, tail: count * thread.with_tails(path, working, tail),
        "count * (path + 2 * tail * ceil(path / (working - 2 * tail)))",
        count=exact("woven", 1 if fringe else count),
        path=path,
        working=working_length_of(part),
        tail=tail_of(part),
        source="two tails for every working length: counting",
    )


def tail_of(part: Part) -> Quantity:
    """The tail at each end of a thread, as written or as is usual, mm."""
    return _of_thread(part, "tail", thread.USUAL_TAIL)


def working_length_of(part: Part) -> Quantity:
    """What is worked with at a time, as written or as is usual, mm.

    Raises Missing where it is nothing but tails.
    """
    working = _of_thread(part, "working_length", thread.USUAL_LENGTH)
    if working.worst.low <= 2 * tail_of(part).worst.high:
        raise Missing(f"a `thread.working_length` of `{part.name}` that is longer than two tails")
    return working


def _of_thread(part: Part, what: str, usual: float) -> Quantity:
    if part.has("thread", what):
        return part.length("thread", what)
    return exact(what.replace("_", " "), usual, LENGTH, "usual: trade table `stitch_facts`")


def _spool(spool: Part | None, lines: Sequence[Item]) -> Pack | None:
    """A spool by the last line of supplies that has a length, or by the thread's own."""
    for item in (*reversed(lines), *([spool] if spool else ())):
        if item.has("length"):
            length = item.length("length")
            word = _sold_as(item, "spool") if item is not spool else "spool"
            return Pack(length.middle, word, length.spelling, length.middle - length.likely.low)
    return None


def _wound(name: str, spool: Part, lines: Sequence[Item]) -> Quantity:
    """Thread on hand, mm."""
    return total(f"{name} on hand", LENGTH, [_on_line(spool, line) for line in lines])


def _on_line(spool: Part, line: Item) -> Quantity:
    wound = line.length("length") if line.has("length") else spool.length("length")
    return times(wound, line.count("pieces", default=line.count("spools", default=1)))


def _cords(ask: Quantities, makers: int, on_hand: bool) -> Iterator[SupplyLine]:
    """The cords of braids, by the braid's name."""
    for part, count in _placed_parts(ask.plan):
        if part.kind.name == "braid":
            thick = described(part, "cord.outside")
            yield _filled(
                SupplyLine("cord", part.name, f"{thick} cord".strip(), LENGTH),
                makers,
                need=partial(_by_count, part, "cord_in_all", count, ask),
                had=_nothing(LENGTH),
            )


def _cores(ask: Quantities, makers: int, on_hand: bool) -> Iterator[SupplyLine]:
    """Cores as long as the ropes they fill."""
    for part, count in _placed_parts(ask.plan):
        core = ask.plan.parts.get(part.text("core")) if part.has("core") else None
        if core is not None:
            yield _filled(
                SupplyLine("core", core.name, described(core, "outside", "material"), LENGTH),
                makers,
                need=partial(_by_count, part, "length", count, ask),
                had=_nothing(LENGTH),
            )


def _wires(ask: Quantities, makers: int, on_hand: bool) -> Iterator[SupplyLine]:
    """Wire for links, which are cut from it; pins are bought as they are."""
    for part, count in _placed_parts(ask.plan):
        if is_wire(part):
            what = "length" if part.has("length") else "needed"
            yield _filled(
                SupplyLine("wire", part.name, f"{described(part, 'wire', 'metal')} wire", LENGTH),
                makers,
                need=partial(_by_count, part, what, count, ask),
                had=_nothing(LENGTH),
            )


def is_wire(part: Part) -> bool:
    """Whether a part is made of a length of wire, and not bought as a pin."""
    return part.kind.name == "wire link" and part.text("type") == "link"


def _by_count(part: Part, what: str, count: int, ask: Quantities) -> Quantity:
    return times(ask.of(part, what), count)


# --- what is bought by the piece


#: Roles of what is made at the bench, and not bought.
_MADE = frozenset({Role.ROPE, Role.BAND, Role.STRAND, Role.DROP, Role.GLUE, Role.LOOSE})


def _pieces(ask: Quantities, makers: int, on_hand: bool) -> Iterator[SupplyLine]:
    """Rings and findings, by the piece."""
    for part, count in bought_parts(ask.plan):
        lines = supply_lines(ask.plan, "part", part.name)
        yield _filled(
            SupplyLine(
                group="rings" if part.kind.role is Role.RING else "findings",
                name=part.name,
                describes=_finding(part),
                unit=PIECES,
                pack=_part_pack(lines),
            ),
            makers,
            need=partial(exact, f"{part.name} needed", count),
            had=partial(_counted, lines) if on_hand and lines else _nothing(""),
        )


def bought_parts(plan: Plan) -> Iterator[tuple[Part, int]]:
    """Rings and findings with how many of each the plan takes."""
    for part, count in _placed_parts(plan):
        if part.kind.role not in _MADE and not part.has("of") and not is_wire(part):
            yield part, count


def _placed_parts(plan: Plan) -> Iterator[tuple[Part, int]]:
    """Every part that has a place in the piece, the rings that something hangs by included."""
    counts = placed(plan)
    for line in plan.hung:
        if line.by is not None:
            counts[line.by.name] = counts.get(line.by.name, 0) + line.times * plan.makes
    for part in plan.parts.values():
        if counts.get(part.name):
            yield part, counts[part.name]


def _finding(part: Part) -> str:
    """A finding as one asks for it: its kind, the sizes that decide, its metal."""
    kind = described(part, "closing", "type")
    noun = part.kind.name if part.kind.name != "wire link" else ""
    sizes = [
        f"{name.replace('_', ' ')} {part.text(name)}"
        for name in ("bore", "outside", "inside", "wire", "depth", "length")
        if part.has(name)
    ]
    head = " ".join(filter(None, (kind, noun)))
    return ", ".join(filter(None, (head, *sizes, described(part, "metal"))))


def _part_pack(lines: Sequence[Item]) -> Pack | None:
    """A pack by the last line of supplies that counts one."""
    for line in reversed(lines):
        if line.has("pack_of"):
            count = line.count("pack_of")
            return Pack(count, _sold_as(line, "pack"), f"{count}")
    return None


def _counted(lines: Sequence[Item]) -> Quantity:
    """Pieces in every line of supplies."""
    return exact("on hand", sum(on_line(line) for line in lines))


def on_line(line: Item) -> int:
    """Pieces in one line of supplies; raises Missing where it has no number."""
    packed = line.count("packs", default=1) * line.count("pack_of", default=0)
    counted = line.count("count", default=0)
    if not packed and not counted:
        raise line.missing("count")
    return packed + counted


# --- adhesive


def _adhesives(ask: Quantities, makers: int, on_hand: bool) -> Iterator[SupplyLine]:
    """Adhesive for every glued joint, with what stays on card and stick; one pack is enough."""
    plan = ask.plan
    stirred = [mix for mix in simulate(plan) if isinstance(mix, Mixed)]
    for part in dict.fromkeys(mix.adhesive for mix in stirred):
        mixed = [mix for mix in stirred if mix.adhesive is part]
        lines = supply_lines(plan, "part", part.name)
        line = _filled(
            SupplyLine(
                "adhesive",
                part.name,
                described(part, "type"),
                VOLUME,
                pack=Pack(None, _sold_as(lines[-1], "pack") if lines else "pack"),
                notes=_mixes(part, mixed, makers),
            ),
            makers,
            need=partial(_volume, part, mixed, ask),
            had=_nothing(VOLUME),
        )
        # what a bottle holds is not written: one on hand is taken as enough
        yield replace(line, have=line.need.high) if on_hand and lines else line


def _is_mixed(adhesive: Part) -> bool:
    """Whether it is stirred of two parts."""
    return "mixing" in tables.load("adhesives").row(adhesive.text("type")).cells


def _mixes(adhesive: Part, mixed: Sequence[Mixed], makers: int) -> tuple[str, ...]:
    if not _is_mixed(adhesive):
        return ()
    count = sum(mix.mixes for mix in mixed)
    each = " for each maker" if makers > 1 else ""
    return (f"stir {count} mix{'' if count == 1 else 'es'}{each}",)


def _volume(adhesive: Part, mixed: Sequence[Mixed], ask: Quantities) -> Quantity:
    """Glue to take, mm3: the sleeves between ends and bores, and what is left behind of a mix."""
    joints = [_joint(step, ask) for mix in mixed for step in mix.steps]
    return times(total(f"{adhesive.name} in its joints", VOLUME, joints), ask.plan.makes)


def _joint(step: Step, ask: Quantities) -> Quantity:
    cap, end = (ask.plan.parts[str(step.get(name))] for name in ("part", "to"))
    nub = cap.has("takes") and cap.text("takes") == "nub"
    stirred = _is_mixed(ask.plan.parts[str(step.get("with"))])
    return derived(
        f"glue of step {step.number}",
        VOLUME,
        lambda joints, bore, end, depth, left: (
            joints * glue.to_mix(glue.joint_volume(bore, end, depth), left)
        ),
        "joints * pi / 4 * (bore^2 - end^2) * depth / (1 - left)",
        joints=exact("joints", joints_of(step)),
        bore=ask.of(cap, "bore"),
        end=ask.of(end, "nub.outside" if nub else "outside"),
        depth=ask.of(cap, "depth"),
        left=exact("left behind of a mix", glue.LEFT_BEHIND if stirred else 0.0),
        source="sleeve between end and bore, the end taken as solid: geometry",
    )


# --- chain


def _chains(asked: Sequence[Quantities], makers: int, on_hand: bool) -> Iterator[SupplyLine]:
    """The chain of all plans: pieces of one chain are cut together, from what is on hand first."""
    alike: dict[tuple[str, str], list[tuple[Quantities, ChainCut]]] = {}
    for ask in asked:
        for cut in chain_cuts(ask.plan):
            if cut.pieces:
                key = (cut.chain.name, chain_described(cut.chain))
                alike.setdefault(key, []).append((ask, cut))
    for (name, describes), group in alike.items():
        blank = SupplyLine("chain", name, describes, LENGTH)
        line = _chain_line(blank, group, makers, on_hand)
        plans = [ask.plan for ask, _ in group]
        yield replace(
            _stamped(line, plans[0]),
            plans=tuple(dict.fromkeys(plan.title for plan in plans)),
            files=tuple(dict.fromkeys(plan.file for plan in plans)),
        )


def chain_described(chain: Part) -> str:
    """A chain as one asks for it: its links in turn with their sizes, and whether they open."""
    names = dict.fromkeys(str(link) for link in chain.node_at("pattern").value)  # type: ignore[union-attr]
    sizes = ", ".join(
        f"{link} {chain.text('links', link, 'length')}"
        for link in names
        if chain.has("links", link, "length")
    )
    ends = described(chain, "links_are", "metal")
    return f"{sizes}, {ends}" if sizes else ends


def merged(cuts: Sequence[ChainCut], makers: int) -> ChainCut:
    """The cuts of one chain for several plans and makers as one."""
    pieces: dict[tuple[str, tuple[str, ...]], CutFromChain] = {}
    for cut in cuts:
        for one in cut.pieces:
            before = pieces.get((one.piece.name, one.links))
            count = one.count * makers + (before.count if before else 0)
            pieces[one.piece.name, one.links] = replace(one, count=count)
    on_hand = tuple(length for cut in cuts for length in cut.on_hand)
    return replace(cuts[0], pieces=tuple(pieces.values()), on_hand=on_hand)


def _chain_line(
    blank: SupplyLine,
    group: Sequence[tuple[Quantities, ChainCut]],
    makers: int,
    on_hand: bool,
) -> SupplyLine:
    cut = merged([cut for _, cut in group], makers)
    lengths = cut.lengths if on_hand else []
    try:
        whole = one_stretch(cut, cut.every_piece)
        missing = [] if _gives(lengths, whole) else not_had(cut, lengths)
        bought = one_stretch(cut, missing).likely.high if missing else 0.0
    except Missing as lacks:
        return replace(blank, missing=(lacks.field,))
    return replace(
        blank,
        need=Needed(whole.middle, *whole.likely),
        have=sum(lengths),
        cut_short=bought,
        notes=("in one length",) if bought else (),
    )


def _gives(lengths: Sequence[float], whole: Quantity) -> bool:
    """Whether one length on hand gives every piece, as the check holds it."""
    return len(lengths) == 1 and lengths[0] >= whole.likely.high - SLACK


def one_stretch(cut: ChainCut, pieces: Sequence[Sequence[str]]) -> Quantity:
    """The length that gives these pieces when they are cut from one, mm; raises Missing."""
    _bounded(cut)
    run = links.run_of(cut.pattern, pieces, soldered=cut.soldered)
    return run_length(f"{cut.chain.name} needed", cut.chain, run)


def _bounded(cut: ChainCut) -> None:
    """More links than anyone cuts are not laid out; raises Missing."""
    if sum(len(one.links) * one.count for one in cut.pieces) > MOST_LINKS:
        raise Missing(f"fewer than {MOST_LINKS} links to be cut from `{cut.chain.name}`")


def not_had(cut: ChainCut, lengths: Sequence[float]) -> list[tuple[str, ...]]:
    """The pieces that lengths do not give, with every link as long as is likely."""
    had = {number for one in laid_out(cut, lengths) for number in one}
    return [piece for number, piece in enumerate(cut.every_piece) if number not in had]


def laid_out(cut: ChainCut, lengths: Sequence[float]) -> list[list[int]]:
    """For each length the numbers of the pieces cut from it, with every link as long as likely.

    Raises Missing, as `one_stretch` does.
    """
    _bounded(cut)
    names = dict.fromkeys(cut.pattern)
    insides = {link: link_inside(cut.chain, link).likely.high for link in names}
    wires = {link: cut.chain.wire("links", link, "wire").middle for link in names}
    return links.laid_out(
        lengths, cut.pattern, cut.every_piece, insides, wires, soldered=cut.soldered
    )
