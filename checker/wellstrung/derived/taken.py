"""Everything that one plan takes and that is bought: how much of it, and what of it is on hand."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from functools import partial

from msgspec import Struct
from msgspec.structs import replace

from wellstrung.common import units
from wellstrung.common.money import Price, priced
from wellstrung.derived import amounts, sold_in
from wellstrung.derived.amounts import LENGTH, PIECES, VOLUME
from wellstrung.derived.pieces import pieces_needed, pieces_on_hand
from wellstrung.derived.purchase import Needed, Pack, Purchase, up
from wellstrung.model.item import Bead, Item, Missing
from wellstrung.model.parts import Part, Role
from wellstrung.model.plan import Plan, Quantities
from wellstrung.quantity.arithmetic import exact, times, total
from wellstrung.quantity.value import Quantity
from wellstrung.reading import tree
from wellstrung.subjects.counts import is_bought, taken_in_all, woven_of
from wellstrung.subjects.glued import glue_used, mixed, on_knots
from wellstrung.subjects.supplies import beads_needed, supply_lines, threaded

#: Small parts that are spoilt or lost most often; of rings, those that are opened. Each kit gets
#: one spare: common practice, no source.
_SMALL = (Role.RING, Role.CRIMP, Role.TIP, Role.SLEEVE, Role.COVER)
#: what is asked for by the length, and cut off to it: priced by what is bought, not by the pack
_BY_THE_LENGTH = frozenset({"cord", "core", "chain", "wire"})


class Taken(Struct, frozen=True):
    """One thing that a plan takes, as quantities; `describes` is what a shop needs to know of it.

    A quantity that lacks a value is the `Missing` that names the field. `on_hand` is None where no
    line of supplies is about the thing. `over` is how many more go into each kit of a class,
    `mixes` how often an adhesive is stirred.
    """

    group: str
    name: str
    describes: str
    unit: str
    need: Quantity | Missing
    on_hand: Quantity | Missing | None = None
    spare: Quantity | None = None
    over: int = 0
    mixes: int = 0
    pack: Pack | None = None
    per_gram: float | None = None
    price: Price | None = None


def of_plan(ask: Quantities) -> Iterator[Taken]:
    """Everything the plan takes, each with its price, chain included."""
    for things in (_beads, _threads, _by_the_length, _pieces, _adhesives, _chains):
        for thing in things(ask):
            price = priced(ask.plan.bench.prices, thing.name)
            yield replace(thing, price=price, pack=thing.pack or _pack_of_price(thing, price))


def purchase(thing: Taken, makers: int = 1, *, on_hand: bool = True) -> Purchase:
    """What a class buys of a thing: whole pieces for each maker, less what is on hand."""
    blank = Purchase(
        group=thing.group,
        name=thing.name,
        unit=thing.unit,
        pack=thing.pack,
        per_gram=thing.per_gram,
        price=thing.price,
    )
    if isinstance(thing.need, Missing):
        return replace(blank, missing=(thing.need.field,))
    need = times(thing.need, makers)
    spare = times(thing.spare, makers) if thing.spare else exact("spare", 0.0, thing.unit)
    in_all = need + spare
    blank = replace(
        blank,
        need=Needed(need.middle, *need.likely),
        spare=spare.middle + (thing.over * makers if makers > 1 else 0),
        up=in_all.likely.high - in_all.middle + _to_whole(in_all, makers),
    )
    if not on_hand or thing.on_hand is None:
        return blank
    if isinstance(thing.on_hand, Missing):
        # how much a bottle holds may not be written: one on hand is taken as enough
        return replace(blank, have=need.likely.high) if thing.unit == VOLUME else blank
    had = thing.on_hand
    return replace(blank, have=had.middle, down=had.middle - had.likely.low)


def _to_whole(in_all: Quantity, makers: int) -> float:
    """How much more several makers get because each is given whole pieces."""
    each = in_all.likely.high / makers
    return makers * (up(each) - each) if makers > 1 and in_all.unit == PIECES else 0.0


def bought_parts(plan: Plan) -> Iterator[Part]:
    """Rings and findings that the plan takes."""
    return (part for part, _ in _placed(plan) if is_bought(part))


def _placed(plan: Plan) -> Iterator[tuple[Part, int]]:
    """Every part that has a place in the piece, and how many of it, in the order of the plan."""
    counts, woven = taken_in_all(plan), {woven_of(part) for part in plan.parts.values()}
    for part in plan.parts.values():
        if counts.get(part.name) or part in woven:
            yield part, counts.get(part.name, 0)


def described(item: Item, *fields: str) -> str:
    """What a shop needs to know of a thing: the values of its fields, as the author wrote them."""
    paths = [name.split(".") for name in fields]
    return " ".join(item.text(*path) for path in paths if item.has(*path))


#: what a shop asks of a thread
_SOLD_AS = ("type", "rating", "size", "colour")


def thread_words(part: Part) -> str:
    """The thread of a part as a shop asks for it, where no part of the plan is that thread."""
    return described(part, *(f"thread.{field}" for field in _SOLD_AS)) or "thread"


def cord_words(part: Part) -> str:
    """The cord of a braid, or the two that beads are sewn between, as a shop asks for it."""
    return described(part, "cord.outside", "cords.outside", "cords.type")


def _known(work: Callable[[], Quantity]) -> Quantity | Missing:
    try:
        return work()
    except Missing as missing:
        return missing


def _beads(ask: Quantities) -> Iterator[Taken]:
    for bead in ask.plan.beads.values():
        needed = beads_needed(ask.plan, bead)
        if bead.has("woven"):
            continue  # made at the bench, of beads of its own
        if needed.woven or amounts.beads_in_loops(bead, ask):
            need = _known(partial(ask.of, bead, "needed"))
            per_gram = _known(partial(ask.of, bead, "per_gram"))
            weight = None if isinstance(per_gram, Missing) else per_gram
            yield Taken(
                "beads",
                bead.name,
                bead_words(bead),
                PIECES,
                need,
                _known(partial(ask.of, bead, "on_hand")) if needed.lines else None,
                None if isinstance(need, Missing) else ask.of(bead, "spare"),
                pack=sold_in.of_beads(bead, needed.lines, weight, ask),
                per_gram=weight.middle if weight else None,
            )


#: how a shop calls a bead that is sold by mm
_SOLD_BY = ("size", "make", "material", "type")


def bead_words(bead: Bead) -> str:
    """A bead as a shop asks for it: its kind, colour and finish."""
    if bead.has("woven"):
        size = "beaded bead"
    elif bead.family is None:
        size = f"{described(bead, 'outside')} bead"
    else:
        size = described(bead, *(("type", "size", "make") if bead.seed else _SOLD_BY))
    looks = described(bead, "colour", "finish")
    return f"{size}, {looks}" if looks else size


def _threads(ask: Quantities) -> Iterator[Taken]:
    by_words: dict[str, list[Part]] = {}
    for spool, parts in threaded(ask.plan).items():
        if spool is None:
            for part in parts:
                by_words.setdefault(thread_words(part), []).append(part)
            continue
        lines = supply_lines(ask.plan, "thread", spool.name)
        yield Taken(
            "thread",
            spool.name,
            described(spool, *_SOLD_AS),
            LENGTH,
            _known(partial(amounts.thread_needed, spool, ask)),
            _known(partial(amounts.thread_on_hand, spool, ask)) if lines else None,
            pack=sold_in.of_thread(spool, lines),
        )
    for words, same in by_words.items():
        need = _known(partial(amounts.thread_for, words, same, ask))
        yield Taken("thread", words, words, LENGTH, need)


def _by_the_length(ask: Quantities) -> Iterator[Taken]:
    """The cords of braids, cores as long as the ropes they fill, and wire for links."""
    cores: dict[Part, list[Quantity | Missing]] = {}
    for part, count in _placed(ask.plan):
        if ask.offers(part, "cord_in_all"):
            words = f"{cord_words(part)} cord".strip()
            cord = _times(partial(ask.of, part, "cord_in_all"), count)
            yield _cut("cord", part, words, [cord], ask)
        if part.traits.of_wire:
            words = f"{described(part, 'wire', 'metal')} wire"
            wire = _times(partial(amounts.wire_of, part, ask), count)
            yield _cut("wire", part, words, [wire], ask)
        core = part.part("core")
        if core is not None:
            length = _times(partial(ask.of, part, "length"), count)
            cores.setdefault(core, []).append(length)
    for core, lengths in cores.items():
        yield _cut("core", core, described(core, "outside", "material"), lengths, ask)


def _times(work: Callable[[], Quantity], count: int) -> Quantity | Missing:
    return _known(lambda: times(work(), count))


def _cut(
    group: str, part: Part, words: str, terms: Sequence[Quantity | Missing], ask: Quantities
) -> Taken:
    known = [term for term in terms if not isinstance(term, Missing)]
    lacking = next((term for term in terms if isinstance(term, Missing)), None)
    need = lacking or (known[0] if len(known) == 1 else total(f"{part.name}.needed", LENGTH, known))
    lines = supply_lines(ask.plan, "part", part.name)
    had = _known(partial(amounts.lengths_on_hand, part, ask)) if lines else None
    return Taken(group, part.name, words, LENGTH, need, had)


def _chains(ask: Quantities) -> Iterator[Taken]:
    """Chain cut in one length; what is on hand is cut, and does not add up: see the lists."""
    for part in ask.plan.parts.values():
        if part.kind.role is Role.CHAIN:
            need = _known(partial(ask.of, part, "needed"))
            if isinstance(need, Missing) or need.middle:
                yield Taken("chain", part.name, "", LENGTH, need)


def _pieces(ask: Quantities) -> Iterator[Taken]:
    """Rings and findings, what bezels are made round, and what a stone is sewn on."""
    for part in bought_parts(ask.plan):
        lines = supply_lines(ask.plan, "part", part.name)
        yield Taken(
            "rings" if part.kind.role is Role.RING else "findings",
            part.name,
            _finding(part),
            PIECES,
            _known(partial(pieces_needed, part, ask)),
            _known(partial(pieces_on_hand, part, ask)) if lines else None,
            over=int(part.kind.role in _SMALL and part.traits.opens is not False),
            pack=sold_in.counted(lines),
        )
    for part, _ in _placed(ask.plan):
        stone = part.traits.made_round
        layers = [(layer, _sheet(part, layer, ask)) for layer in part.traits.glued_on]
        for name, words in ((stone, _stone(part, stone)), *layers) if stone else ():
            need = pieces_needed(part, ask)
            yield Taken("findings", f"{name} of {part.name}", words, PIECES, need)


def _stone(part: Part, stone: str) -> str:
    """The stone or the core that a part is made round: its shape, and its sizes."""
    sizes = (f for f in ("outside", "width", "length", "hole") if part.has(stone, f))
    shape = f"{part.text(stone, 'shape')} " if part.has(stone, "shape") else ""
    return ", ".join((f"{shape}{stone}", *(f"{name} {part.text(stone, name)}" for name in sizes)))


def _sheet(part: Part, layer: str, ask: Quantities) -> str:
    """A piece of foundation or backing, as it is cut."""
    found = [_known(partial(ask.of, part, f"{layer}_{side}")) for side in ("length", "width")]
    known = [side for side in found if not isinstance(side, Missing)]
    return f"{layer}, {side_by_side(known)} or larger" if known == found else layer


def side_by_side(sides: Iterable[Quantity | None]) -> str:
    """A size by another, in whole mm."""
    return " x ".join("?" if side is None else f"{side.middle:.0f}" for side in sides) + " mm"


def _finding(part: Part) -> str:
    """A finding as a shop asks for it: its kind, the sizes that decide, its metal."""
    sizes = [
        f"{name.replace('_', ' ')} {part.said(name)}"
        for name in ("size", "bore", "outside", "inside", "wire", "depth", "length")
        if part.has(name) and part.text(name) != units.USUAL and not part.implies(name)
    ]
    return ", ".join(filter(None, (asked_for(part), *sizes, described(part, "metal"))))


def asked_for(part: Part) -> str:
    """The noun by which a shop knows a finding: `soldered jump ring`, or the author's for it."""
    fields = [field for field in ("closing", "type") if part.has(field)]
    noun = "" if part.traits.named_by_type else part.kind.name
    word = part.node.entries["kind"].node
    if isinstance(word, tree.Scalar) and word.text != word.value:  # it may say the type as well
        noun, place = word.text, word.place
        fields = [field for field in fields if part.place_of(field) != place]
    said = [part.said(field) for field in fields]
    named = noun and " ".join(said).endswith(noun)
    return " ".join(filter(None, (*said, "" if named else noun)))


def _adhesives(ask: Quantities) -> Iterator[Taken]:
    """Adhesive for every glued joint, its mixes included."""
    dropped = [step.parts["with"] for step in on_knots(ask.plan)]
    for part in dict.fromkeys([*(mix.adhesive for mix in mixed(ask.plan)), *dropped]):
        used = glue_used(ask.plan, part)
        yield Taken(
            "adhesive",
            part.name,
            described(part, "type"),
            VOLUME,
            _known(partial(ask.of, part, "needed")),
            _known(partial(ask.of, part, "on_hand")) if used.lines else None,
            mixes=used.mixes if used.stirred else 0,
            pack=sold_in.of_glue(used.lines),
        )


def _pack_of_price(thing: Taken, price: Price | None) -> Pack | None:
    """What a thing is sold in by its price, where no line of supplies says it."""
    if price is None or thing.group in _BY_THE_LENGTH or thing.group == "adhesive":
        return None
    if price.unit == "g" and thing.per_gram:
        holds, text = price.per * thing.per_gram, units.show(price.per, "g")
        return Pack(holds, "pack", text, grams=price.per)
    if price.unit == thing.unit == LENGTH:
        return Pack(price.per, "spool", units.show(price.per, "m"))
    if price.unit == thing.unit == PIECES and price.per > 1:
        return Pack(price.per, "pack", f"{price.per:g}")
    return None
