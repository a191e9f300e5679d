"""What one plan takes of everything that is bought, and what of it is on hand, line by line.

Chain is left out: pieces for several plans are cut together, see `chain_stock`.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from functools import partial
from typing import TYPE_CHECKING

from msgspec.structs import replace

from wellstrung import tables
from wellstrung.common import units
from wellstrung.common.money import PIECES, Price, priced
from wellstrung.formulas import glue, thread
from wellstrung.lists.line import (
    BY_THE_LENGTH,
    LENGTH,
    VOLUME,
    Needed,
    Pack,
    SupplyLine,
)
from wellstrung.model.item import Item, Missing
from wellstrung.model.parts import UNPLACED, WOVEN_WORK, Part, Role
from wellstrung.model.plan import Plan, Step
from wellstrung.quantity.arithmetic import derived, exact, product, times, total
from wellstrung.quantity.value import Quantity
from wellstrung.subjects import glued
from wellstrung.subjects.counts import placed
from wellstrung.subjects.supplies import beads_needed, spool_of, supply_lines

if TYPE_CHECKING:
    from wellstrung.derived.of_plan import Quantities


def of_plan(ask: Quantities, makers: int, on_hand: bool) -> Iterator[SupplyLine]:
    """Every line of a plan but its chains, each with the plan it is for and its price."""
    for lines_of in (beads, _threads, _cords, _cores, _wires, _pieces, _adhesives):
        for line in lines_of(ask, makers, on_hand):
            yield stamped(line, ask.plan)


def stamped(line: SupplyLine, plan: Plan) -> SupplyLine:
    """The line with the plan it is for, and its price."""
    price = priced(plan.bench.prices, line.name)
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


def beads(ask: Quantities, makers: int, on_hand: bool) -> Iterator[SupplyLine]:
    """Beads of woven and strung parts with the spare ones, and of the loops of clasps."""
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
    counts = dict(placed(plan))
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
        holds = product("beads in a pack", "", grams, per_gram)  # fmt: skip
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
                had=partial(_in_lengths, part, ask.plan, on_hand),
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
                had=partial(_in_lengths, core, ask.plan, on_hand),
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
                had=partial(_in_lengths, part, ask.plan, on_hand),
            )


def is_wire(part: Part) -> bool:
    """Whether a part is made of a length of wire, and not bought as a pin."""
    return part.kind.name == "wire link" and part.text("type") == "link"


def _in_lengths(part: Part, plan: Plan, on_hand: bool) -> Quantity:
    """Cord, core or wire on hand, by the lengths in lines of supplies, mm; raises Missing."""
    lines = supply_lines(plan, "part", part.name) if on_hand else ()
    lengths = [times(line.length("length"), line.count("pieces", default=1)) for line in lines]
    return total("on hand", LENGTH, lengths)


def _by_count(part: Part, what: str, count: int, ask: Quantities) -> Quantity:
    return times(ask.of(part, what), count)


# --- what is bought by the piece


#: Roles of what is made at the bench, and not bought.
_MADE = WOVEN_WORK | UNPLACED | {Role.STRAND, Role.DROP}


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
    for part, count in _placed_parts(ask.plan):
        if part.has("stone"):
            yield _filled(
                SupplyLine(
                    group="findings",
                    name=f"stone of {part.name}",
                    describes=f"stone, outside {part.text('stone', 'outside')}",
                    unit=PIECES,
                ),
                makers,
                need=partial(exact, f"stone of {part.name} needed", count),
                had=_nothing(""),
            )


def bought_parts(plan: Plan) -> Iterator[tuple[Part, int]]:
    """Rings and findings with how many of each the plan takes."""
    for part, count in _placed_parts(plan):
        if part.kind.role not in _MADE and not part.has("of") and not is_wire(part):
            yield part, count


def _placed_parts(plan: Plan) -> Iterator[tuple[Part, int]]:
    """Every part that has a place in the piece, the rings that something hangs by included."""
    counts = dict(placed(plan))
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
    stirred = tuple(glued.mixed(plan))
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


def _mixes(adhesive: Part, mixed: Sequence[glued.Mixed], makers: int) -> tuple[str, ...]:
    if not _is_mixed(adhesive):
        return ()
    count = sum(mix.mixes for mix in mixed)
    each = " for each maker" if makers > 1 else ""
    return (f"stir {count} mix{'' if count == 1 else 'es'}{each}",)


def _volume(adhesive: Part, mixed: Sequence[glued.Mixed], ask: Quantities) -> Quantity:
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
        joints=exact("joints", step.joints),
        bore=ask.of(cap, "bore"),
        end=ask.of(end, "nub.outside" if nub else "outside"),
        depth=ask.of(cap, "depth"),
        left=exact("left behind of a mix", glue.LEFT_BEHIND if stirred else 0.0),
        source="sleeve between end and bore, the end taken as solid: geometry",
    )
