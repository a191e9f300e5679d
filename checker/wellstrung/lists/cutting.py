"""The cutting list of plans: what to cut from which length, and at which link.

Chain is cut by counting links, since nobody lays a ruler along them: so many links, then cut
through the next. Every length of chain is taken to begin with the first link of its first piece;
what stands before that link is taken off. Thread, line, wire, cord and core are cut by length.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence
from itertools import accumulate
from typing import Literal

from msgspec import Struct
from msgspec.structs import replace

from wellstrung.common import units
from wellstrung.common.wording import together
from wellstrung.derived.amounts import (
    lines_of,
    tail_of,
    tails_at_ends,
    wire_of,
    working_length_of,
)
from wellstrung.derived.coils import ends_said
from wellstrung.formulas import chain as links
from wellstrung.formulas import thread
from wellstrung.formulas.rings import loop_wire
from wellstrung.kinds.chain import end_wall, link_inside, measured_off, one_stretch
from wellstrung.kinds.wire_link import wraps_of
from wellstrung.lists import chain_stock
from wellstrung.lists.behind import at_end, behind, between_cups, next_link
from wellstrung.model.item import Missing
from wellstrung.model.parts import WOVEN_WORK, Part, Role
from wellstrung.model.plan import Plan, Quantities
from wellstrung.subjects.chain import ChainCut
from wellstrung.subjects.counts import how_many, placed

#: less than this, mm, is what rounding leaves, and nothing to draw
_NOTHING = 1e-6
When = Literal["now", "after measuring"]


class ChainPiece(Struct, frozen=True):
    """One piece on a length of chain: its links by number, and the links lost behind it.

    Numbers count from 1 at the beginning of the length. `start` and `length` are mm, from outer end
    to outer end; `how` says what to do behind its last link; `turned` is whether it lies end for
    end. `unit` is what is counted: links, or cups. `asked` is a length, mm, that is measured off
    instead, to the nearest cup or link: how many it has depends on the chain.
    """

    name: str
    first: int
    last: int
    lost: tuple[int, ...]
    start: float
    length: float
    how: str
    turned: bool = False
    unit: str = "link"
    asked: float = 0.0

    @property
    def links(self) -> int:
        """How many links to count off."""
        return self.last - self.first + 1


class Bar(Struct, frozen=True):
    """One length of chain with the pieces cut from it, in turn; `left` is what stays whole, mm.

    `written` is the length as the author wrote it; empty for one that is still to be bought.
    `inches`, here and below, says that its maker goes by inches.
    """

    length: float
    written: str
    begins_with: str
    pieces: tuple[ChainPiece, ...]
    left: float
    inches: bool = False

    @property
    def lost(self) -> int:
        """How many links are lost between pieces."""
        return sum(len(piece.lost) for piece in self.pieces)

    @property
    def lost_length(self) -> float:
        """What is lost in cutting, mm, the link behind the last piece included."""
        return sum(end - start for what, start, end in spans(self) if what == "lost")


class ChainCuts(Struct, frozen=True):
    """All that is cut from one chain; `untouched` are the lengths on hand that stay whole, mm.

    Another way of cutting may get up to `more` pieces more from the chain on hand, or use up to
    `less` mm of chain less. Where both are 0, none does.
    """

    chain: str
    describes: str
    pattern: tuple[str, ...]
    soldered: bool
    when: When
    pieces: tuple[tuple[str, int], ...]
    bars: tuple[Bar, ...]
    untouched: tuple[float, ...]
    more: int
    less: float
    plans: tuple[str, ...]
    inches: bool = False


class Lengths(Struct, frozen=True):
    """So many pieces of one length: thread, line, warp, wire, cord or core, for one part.

    `most` is the number there may be, where how many the work takes is not sure. `total` is all of
    them together, mm; the last thread is cut to need.
    """

    part: str
    what: str
    count: int
    most: int
    length: float
    total: float
    when: When
    notes: tuple[str, ...]
    plan: str
    inches: bool = False
    file: str = ""


class CutList(Struct, frozen=True):
    """Chains, then what is cut by length, then what could not be worked out, in words."""

    chains: tuple[ChainCuts, ...]
    lengths: tuple[Lengths, ...]
    missing: tuple[str, ...]


def listed(plans: Sequence[Quantities], makers: int = 1) -> CutList:
    """The cutting list of plans, each for so many makers; chain of all plans is cut together."""
    missing: dict[str, None] = {}
    chains = tuple(_chains(plans, makers, missing))
    lengths = [
        one
        for ask in plans
        for part in ask.plan.parts.values()
        if part.has("thread") or placed(ask.plan).get(part.name)
        for one in _of(part, makers, ask, missing)
    ]
    return CutList(chains, tuple(lengths), tuple(missing))


# --- chain


def _chains(
    plans: Iterable[Quantities], makers: int, missing: dict[str, None]
) -> Iterator[ChainCuts]:
    for (name, describes), group in chain_stock.alike(plans).items():
        chain = chain_stock.merged([one for _, one in group], makers)
        try:
            laid = chain_stock.laid_out(chain)
            bars, untouched = _on_hand(chain, laid)
            rest = laid.left(chain)
            bought = [_to_buy(chain, rest)] if rest else []
        except Missing as lacks:
            missing[f"`{name}` needs {lacks.field}"] = None
            continue
        inches = all(plan.in_inches for plan, _ in group)
        yield ChainCuts(
            name,
            describes,
            chain.pattern,
            chain.soldered,
            "after measuring" if any(_adjusts(plan, one) for plan, one in group) else "now",
            tuple((one.piece.name, one.count) for one in chain.pieces),
            tuple(replace(bar, inches=inches) for bar in (*bars, *bought)),
            untouched,
            laid.more,
            laid.less or (chain_stock.stretch_to_spare(chain, rest) if rest else 0.0),
            tuple(dict.fromkeys(plan.title for plan, _ in group)),
            inches,
        )


def _adjusts(plan: Plan, chain: ChainCut) -> bool:
    """Whether chain stands in the run with woven work: what is woven comes out as it does."""
    woven = any(part.kind.role in WOVEN_WORK for part in plan.in_run)
    return woven and any(one.piece in plan.in_run for one in chain.pieces)


def _on_hand(chain: ChainCut, laid: chain_stock.Laid) -> tuple[tuple[Bar, ...], tuple[float, ...]]:
    """Every length on hand that is cut into, and the lengths that stay whole."""
    written = [line.text for line in chain.on_hand for _ in range(line.pieces)]
    stock = sorted(zip(chain.lengths, written, laid.of, strict=True), key=lambda one: one[0])
    bars = (_bar(chain, length, text, numbers) for length, text, numbers in stock if numbers)
    return tuple(bars), tuple(length for length, _, numbers in stock if not numbers)


def _to_buy(chain: ChainCut, rest: Sequence[int]) -> Bar:
    """The length that is still to be bought, for the pieces that no length on hand gives."""
    bought = one_stretch(chain, rest).likely.high
    return _bar(chain, math.ceil(bought / 10 - 1e-6) * 10.0, "", rest)


def _bar(chain: ChainCut, length: float, written: str, laid: Sequence[int]) -> Bar:
    every = [one.piece for one in chain.pieces for _ in range(one.count)]
    pieces = [chain.every_piece[number] for number in laid]
    insides = {link: link_inside(chain.chain, link).middle for link in dict.fromkeys(chain.pattern)}
    wires = {link: end_wall(chain.chain, link).middle for link in insides}
    places = links.numbered(chain.pattern, pieces, soldered=chain.soldered)
    run = links.run_of(chain.pattern, pieces, soldered=chain.soldered)
    ends = [0.0, *accumulate(insides[link] for link in run)]
    rest = length - links.length_of(run, insides, wires)
    if chain.soldered:
        rest -= insides[_after(chain.pattern, run)]  # the link behind the last piece is cut through
    counted, unit = [], "cup" if chain.chain.traits.cups else "link"
    for number, piece, here, following in zip(
        laid, pieces, places, [*places[1:], None], strict=True
    ):
        lost = tuple(range(here.stop, following.start)) if following else ()
        last_piece, of = following is None, every[number]
        asked = of.length("length").middle if measured_off(of) else 0.0
        if chain.chain.traits.cups:
            how = between_cups(rest, last_piece=last_piece)
        elif asked:
            how = next_link(rest, last_piece=last_piece, soldered=chain.soldered)
        elif following:
            how = behind(here[-1], lost, soldered=chain.soldered)
        else:
            how = at_end(here[-1], rest, soldered=chain.soldered)
        size = links.length_of(piece, insides, wires)
        start, turned = ends[here[0] - 1], tuple(run[link - 1] for link in here) != piece
        counted.append(
            ChainPiece(of.name, here[0], here[-1], lost, start, size, how, turned, unit, asked)
        )
    return Bar(length, written, run[0], tuple(counted), max(0.0, rest))


def _after(pattern: Sequence[str], run: Sequence[str]) -> str:
    """The link that follows a run of whole pieces along the pattern."""
    for start in range(len(pattern)):
        if all(pattern[(start + n) % len(pattern)] == link for n, link in enumerate(run)):
            return pattern[(start + len(run)) % len(pattern)]
    raise AssertionError("a run follows its pattern")


# --- what is cut by length


def _of(part: Part, makers: int, ask: Quantities, missing: dict[str, None]) -> Iterator[Lengths]:
    for what in (_thread, _cord, _wire, _core):
        try:
            yield from (
                replace(one, plan=ask.plan.title, inches=ask.plan.in_inches, file=ask.plan.file)
                for one in what(part, makers, ask)
            )
        except Missing as lacks:
            missing[f"`{part.name}` of {ask.plan.title} needs {lacks.field}"] = None


def _lengths(
    part: Part,
    what: str,
    count: int,
    length: float,
    *notes: str,
    when: When = "now",
    most: int = 0,
    total: float | None = None,
) -> Lengths:
    in_all = count * length if total is None else total
    return Lengths(part.name, what, count, max(count, most), length, in_all, when, notes, "")


def _thread(part: Part, makers: int, ask: Quantities) -> Iterator[Lengths]:
    """Line in one go for a strand; else threads as long as is worked with, and a loom's warps."""
    if not part.has("thread"):
        return
    count, tail = how_many(ask.plan, part) * makers, tail_of(part).middle
    path, total = ask.of(part, "thread"), ask.of(part, "thread_in_all").middle * makers
    ends = [one.middle for one in tails_at_ends(part, ask)]
    tails = f"a {ends_said(part, ends, ask)} included"
    if part.kind.role is Role.STRAND:
        for many, length, bars in lines_of(part, ask):
            names = [f"`{bar.name}`" for bar in dict.fromkeys(bars)]
            on = [f"through {together(names)}"] if names else []
            yield _lengths(part, "line", many * makers, length.middle, tails, *on)
        return
    weft, most = path.middle, path.likely.high
    if ask.offers(part, "warps"):
        warps, warp = round(ask.of(part, "warps").middle), ask.of(part, "warp_length").middle
        yield _lengths(part, "warp", warps * count, warp, "both ends to tie on included")
        weft, most, total = weft - warps * warp, most - warps * warp, total - warps * count * warp
    working = working_length_of(part).middle
    # the legs of a fringe hang on one thread in each piece; a woven part has its own threads
    lots = ask.plan.makes * makers if part.kind.role is Role.DROP else count
    numbers = [thread.threads(count // lots * one, working, tail) * lots for one in (weft, most)]
    last = "the last of each cut to need" if lots > 1 else "the last cut to need"
    needed = units.by_length(count // lots * weft + 2 * tail, inches=ask.plan.in_inches)
    how = last if numbers[0] > lots else f"{needed} needed {'of each' if lots > 1 else 'in all'}"
    yield _lengths(part, "thread", numbers[0], working, tails, how, most=numbers[1], total=total)


def _cord(part: Part, makers: int, ask: Quantities) -> Iterator[Lengths]:
    if ask.offers(part, "cord_in_all"):
        warps = round(ask.of(part, "cord_in_all").middle / ask.of(part, "cord").middle)
        count, each = how_many(ask.plan, part) * makers, ask.of(part, "cord").likely.high
        ends = "loop and knots included" if part.on_cords else f"{warps} warps"
        yield _lengths(part, "cord", warps * count, each, ends)


def _wire(part: Part, makers: int, ask: Quantities) -> Iterator[Lengths]:
    if part.traits.of_wire:
        hole, wire = ask.of(part, "loop.hole").middle, ask.of(part, "wire").middle
        note = f"{loop_wire(hole, wire, wraps_of(part)):.0f} mm of it in each loop"
        count = how_many(ask.plan, part) * makers
        yield _lengths(part, "wire", count, wire_of(part, ask).middle, note)


def _core(part: Part, makers: int, ask: Quantities) -> Iterator[Lengths]:
    core = part.part("core")
    if core is not None:
        note, count = f"as long as `{part.name}` comes out", how_many(ask.plan, part) * makers
        length = ask.of(part, "length").middle
        yield _lengths(core, "core", count, length, note, when="after measuring")


def spans(bar: Bar) -> Iterator[tuple[str, float, float]]:
    """A length of chain drawn as a bar: `piece`, `lost` and `left` with their ends, mm."""
    at = 0.0
    for number, piece in enumerate(bar.pieces):
        end = min(bar.length, piece.start + piece.length)
        if number and piece.start - at > _NOTHING:
            yield "lost", at, piece.start
        yield "piece", max(at, piece.start), end
        at = end
    if bar.left > 0:
        if bar.length - bar.left - at > _NOTHING:
            yield "lost", at, bar.length - bar.left
        yield "left", bar.length - bar.left, bar.length
