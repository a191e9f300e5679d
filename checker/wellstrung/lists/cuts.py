"""What to cut for plans, from which length, at which link: the cutting list.

Chain is told by counting, since nobody lays a ruler along links: so many links, cut through the
next. Every length of chain is taken to begin with the first link of the piece cut from it first;
what stands before that link is taken off. Thread, line, wire, cord and core are told by length.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence
from itertools import accumulate
from typing import TYPE_CHECKING, Literal

from msgspec import Struct
from msgspec.structs import replace

from wellstrung.formulas import chain as links
from wellstrung.formulas import thread
from wellstrung.kinds.chain import link_inside
from wellstrung.kinds.wire_link import loop_wire, wraps_of
from wellstrung.lists import chain_stock, taken
from wellstrung.model.item import Missing
from wellstrung.model.parts import WOVEN_WORK, Part, Role
from wellstrung.model.plan import Plan
from wellstrung.stitches.loom import SPARE_WARP
from wellstrung.subjects.chain import ChainCut
from wellstrung.subjects.counts import placed

if TYPE_CHECKING:
    from wellstrung.derived.of_plan import Quantities
    from wellstrung.judging.result import PlanResult

#: less than this, mm, is what rounding leaves, and nothing to draw
_NOTHING = 1e-6
When = Literal["now", "after measuring"]


class ChainPiece(Struct, frozen=True):
    """One piece on a length of chain: its links by number, and the links lost behind it.

    Numbers count from 1 at the beginning of the length. `start` and `length` are mm, from outer end
    to outer end; `how` says in words what to do behind its last link.
    """

    name: str
    first: int
    last: int
    lost: tuple[int, ...]
    start: float
    length: float
    how: str

    @property
    def links(self) -> int:
        """How many links to count off."""
        return self.last - self.first + 1


class Bar(Struct, frozen=True):
    """One length of chain with the pieces cut from it, in turn; `left` is what stays whole, mm.

    `written` is the length as the author wrote it; empty for one that is still to be bought.
    """

    length: float
    written: str
    begins_with: str
    pieces: tuple[ChainPiece, ...]
    left: float

    @property
    def lost(self) -> int:
        """How many links are lost between pieces."""
        return sum(len(piece.lost) for piece in self.pieces)

    @property
    def lost_length(self) -> float:
        """What is lost in cutting, mm, the link behind the last piece included."""
        return sum(end - start for what, start, end in spans(self) if what == "lost")


class ChainCuts(Struct, frozen=True):
    """All that is cut from one chain; `untouched` are the lengths on hand that stay whole, mm."""

    chain: str
    describes: str
    pattern: tuple[str, ...]
    soldered: bool
    when: When
    pieces: tuple[tuple[str, int], ...]
    bars: tuple[Bar, ...]
    untouched: tuple[float, ...]
    plans: tuple[str, ...]


class Lengths(Struct, frozen=True):
    """So many pieces of one length: thread, line, warp, wire, cord or core, for one part.

    `most` is the number there may be, where how many the work takes is not sure.
    """

    part: str
    what: str
    count: int
    most: int
    length: float
    when: When
    notes: tuple[str, ...]
    plan: str

    @property
    def total(self) -> float:
        """All of them together, mm."""
        return self.count * self.length


class CutList(Struct, frozen=True):
    """What is cut: chain, then what is told by its length; and what could not be worked out."""

    chains: tuple[ChainCuts, ...]
    lengths: tuple[Lengths, ...]
    missing: tuple[str, ...]


def listed(results: Iterable[PlanResult], makers: int = 1) -> CutList:
    """The cutting list of plans, each made by so many makers; chain of all plans is cut together.

    Plans that could not be understood give nothing.
    """
    asked = [result.ask.quantities for result in results if result.ask is not None]
    missing: dict[str, None] = {}
    chains = tuple(_chains(asked, makers, missing))
    lengths = [
        one
        for ask in asked
        for part, count in _made(ask.plan)
        for one in _of(part, count * makers, ask, missing)
    ]
    return CutList(chains, tuple(lengths), tuple(missing))


# --- chain


def _chains(
    asked: Sequence[Quantities], makers: int, missing: dict[str, None]
) -> Iterator[ChainCuts]:
    for (name, describes), group in chain_stock.alike(asked).items():
        cut = chain_stock.merged([one for _, one in group], makers)
        try:
            bars, untouched = _bars(cut)
        except Missing as lacks:
            missing[f"`{name}` is not laid out: it lacks {lacks.field}"] = None
            continue
        yield ChainCuts(
            name,
            describes,
            cut.pattern,
            cut.soldered,
            "after measuring" if any(_adjusts(plan, one) for plan, one in group) else "now",
            tuple((one.piece.name, one.count) for one in cut.pieces),
            bars,
            untouched,
            tuple(dict.fromkeys(plan.title for plan, _ in group)),
        )


def _adjusts(plan: Plan, cut: ChainCut) -> bool:
    """Whether chain stands in the run with woven work: what is woven comes out as it does."""
    in_run = {part.name for entry in plan.run for part in entry.parts}
    woven = any(part.kind.role in WOVEN_WORK for entry in plan.run for part in entry.parts)
    return woven and any(one.piece.name in in_run for one in cut.pieces)


def _bars(cut: ChainCut) -> tuple[tuple[Bar, ...], tuple[float, ...]]:
    """Every length cut into, those to be bought last, and the lengths that stay whole."""
    names = [one.piece.name for one in cut.pieces for _ in range(one.count)]
    pieces = cut.every_piece
    written = [line.text for line in cut.on_hand for _ in range(line.pieces)]
    laid = chain_stock.laid_out(cut, cut.lengths)
    stock = sorted(zip(cut.lengths, written, laid, strict=True), key=lambda one: one[0])
    bars = [
        _bar(cut, length, text, [(names[n], pieces[n]) for n in numbers])
        for length, text, numbers in stock
        if numbers
    ]
    untouched = tuple(length for length, _, numbers in stock if not numbers)
    had = {number for numbers in laid for number in numbers}
    rest = [number for number in range(len(pieces)) if number not in had]
    if rest:
        bought = chain_stock.one_stretch(cut, [pieces[n] for n in rest]).likely.high
        length = math.ceil(bought / 10 - 1e-6) * 10.0
        bars.append(_bar(cut, length, "", [(names[n], pieces[n]) for n in rest]))
    return tuple(bars), untouched


def _bar(
    cut: ChainCut, length: float, written: str, laid: Sequence[tuple[str, tuple[str, ...]]]
) -> Bar:
    names, pieces = [name for name, _ in laid], [links_ for _, links_ in laid]
    insides = {link: link_inside(cut.chain, link).middle for link in dict.fromkeys(cut.pattern)}
    wires = {link: cut.chain.wire("links", link, "wire").middle for link in insides}
    numbers = links.numbered(cut.pattern, pieces, soldered=cut.soldered)
    run = links.run_of(cut.pattern, pieces, soldered=cut.soldered)
    ends = [0.0, *accumulate(insides[link] for link in run)]
    rest = length - links.length_of(run, insides, wires)
    if cut.soldered:
        rest -= insides[_after(cut.pattern, run)]  # the link behind the last piece is cut through
    told = []
    for name, piece, here, following in zip(
        names, pieces, numbers, [*numbers[1:], None], strict=True
    ):
        lost = tuple(range(here.stop, following.start)) if following else ()
        if following:
            how = _behind(here[-1], lost, soldered=cut.soldered)
        else:
            how = _at_end(here[-1], rest, soldered=cut.soldered)
        size = links.length_of(piece, insides, wires)
        told.append(ChainPiece(name, here[0], here[-1], lost, ends[here[0] - 1], size, how))
    return Bar(length, written, run[0], tuple(told), max(0.0, rest))


def _after(pattern: Sequence[str], run: Sequence[str]) -> str:
    """The link that follows a run of whole pieces along the pattern."""
    for start in range(len(pattern)):
        if all(pattern[(start + n) % len(pattern)] == link for n, link in enumerate(run)):
            return pattern[(start + len(run)) % len(pattern)]
    raise AssertionError("a run follows its pattern")


def _behind(last: int, lost: tuple[int, ...], *, soldered: bool) -> str:
    """What to do between two pieces: cut through the lost links at both ends of them, or open."""
    if not soldered:
        if not lost:
            return f"open link {last + 1}"
        return f"open links {lost[0]} and {lost[-1] + 1}, {_numbers(lost)} left over"
    if len(lost) == 1:
        return f"cut through link {lost[0]}"
    cut = f"cut through links {lost[0]} and {lost[-1]}"
    return cut if len(lost) == 2 else f"{cut}, {_numbers(lost[1:-1])} falls away"


def _at_end(last: int, rest: float, *, soldered: bool) -> str:
    """What to do behind the last piece: nothing where the chain ends with it."""
    if rest <= 0:
        return "the chain ends here"
    return f"{'cut through' if soldered else 'open'} link {last + 1}"


def _numbers(numbers: Sequence[int]) -> str:
    return f"link {numbers[0]}" if len(numbers) == 1 else f"links {numbers[0]}..{numbers[-1]}"


# --- what is told by its length


def _made(plan: Plan) -> Iterator[tuple[Part, int]]:
    """Parts that something is cut for, and how many: with thread, or with a place in the piece."""
    counts = placed(plan)
    for part in plan.parts.values():
        if part.has("thread") or counts.get(part.name):
            yield part, counts.get(part.name) or plan.makes


def _of(part: Part, count: int, ask: Quantities, missing: dict[str, None]) -> Iterator[Lengths]:
    for what in (_thread, _cord, _wire, _core):
        try:
            yield from (replace(one, plan=ask.plan.title) for one in what(part, count, ask))
        except Missing as lacks:
            missing[f"`{part.name}` of {ask.plan.title}: it lacks {lacks.field}"] = None


def _lengths(
    part: Part, what: str, count: int, length: float, *notes: str, when: When = "now", most: int = 0
) -> Lengths:
    return Lengths(part.name, what, count, max(count, most), length, when, notes, "")


def _thread(part: Part, count: int, ask: Quantities) -> Iterator[Lengths]:
    """Line in one go for a strand; else threads as long as is worked with, and a loom's warps."""
    if not part.has("thread"):
        return
    tail = taken.tail_of(part).middle
    path = ask.of(part, "thread")
    if part.kind.name == "strand":
        yield _lengths(part, "line", count, path.middle + 2 * tail, _tails(tail))
        return
    weft, most = path.middle, path.likely.high
    if part.has("stitch") and part.text("stitch") == "loom":
        warps, length = ask.of(part, "warps").middle, ask.of(part, "length").middle
        warp = length + SPARE_WARP
        yield _lengths(part, "warp", round(warps) * count, warp, "both ends to tie on included")
        weft, most = weft - warps * warp, most - warps * warp
    working = taken.working_length_of(part).middle
    # the legs of a fringe hang on one thread; a woven part has its own threads
    each, lots = (count, 1) if part.kind.role is Role.DROP else (1, count)
    numbers = [thread.threads(each * one, working, tail) * lots for one in (weft, most)]
    yield _lengths(
        part,
        "thread",
        numbers[0],
        working,
        _tails(tail),
        "the last of each as it comes" if numbers[0] > lots else "cut to need",
        most=numbers[1],
    )


def _tails(tail: float) -> str:
    return f"a tail of {tail / 10:g} cm at both ends included"


def _cord(part: Part, count: int, ask: Quantities) -> Iterator[Lengths]:
    if part.kind.name == "braid":
        warps = round(ask.of(part, "cord_in_all").middle / ask.of(part, "cord").middle)
        each = ask.of(part, "cord").likely.high
        yield _lengths(part, "cord", warps * count, each, f"{warps} warps")


def _wire(part: Part, count: int, ask: Quantities) -> Iterator[Lengths]:
    if taken.is_wire(part):
        what = "length" if part.has("length") else "needed"
        hole, wire = ask.of(part, "loop.hole").middle, ask.of(part, "wire").middle
        loop = loop_wire(hole, wire, wraps_of(part))
        note = f"{loop:.0f} mm of it in each loop"
        yield _lengths(part, "wire", count, ask.of(part, what).middle, note)


def _core(part: Part, count: int, ask: Quantities) -> Iterator[Lengths]:
    core = ask.plan.parts.get(part.text("core")) if part.has("core") else None
    if core is not None:
        length = ask.of(part, "length").middle
        yield _lengths(
            core,
            "core",
            count,
            length,
            f"as long as `{part.name}` comes out",
            when="after measuring",
        )


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
