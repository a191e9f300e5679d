"""What a sheet shows beside what the check found: fits in section, what to buy, what to cut."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from msgspec import Struct

from wellstrung.drawing import Figure
from wellstrung.drawing.canvas import Canvas
from wellstrung.drawing.sections import sections
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import PlanResult, understood
from wellstrung.lists import cutting, shopping
from wellstrung.lists.cutting import Bar, ChainCuts, Lengths
from wellstrung.lists.line import SupplyLine
from wellstrung.report import cuts_list, supplies_list
from wellstrung.report.pages.tables import Table
from wellstrung.what_if import other_sizes

#: how wide the longest length of chain is drawn on the page, mm, and how high
_WIDE, _HIGH = 150.0, 7.0
#: a sheet shows so many fits; those that fail come first
_FITS = 8
#: the class that a stretch of a length is drawn with
_LOOKS = {"piece": "link", "lost": "lost", "left": "bar"}


class Extras(Struct, frozen=True):
    """What a sheet shows beside what the check found: fits in section, supplies, cuts."""

    fits: Sequence[Figure] = ()
    supplies: Sequence[Table] = ()
    cut_figures: Sequence[Figure] = ()
    cuts: Sequence[Table] = ()


def gathered(result: PlanResult, checker: Checker | None = None) -> Extras:
    """All of it for one plan; with a checker to try by, the sizes that would also do."""
    found = cutting.listed(understood([result]))
    return Extras(
        fits=sections(result)[:_FITS],
        supplies=tuple(_supplies(result, checker)),
        cut_figures=tuple(bar for chain in found.chains for bar in _bars(chain)),
        cuts=tuple(_lengths(found.lengths)),
    )


def _supplies(result: PlanResult, checker: Checker | None) -> Iterator[Table]:
    lines = [line for line in shopping.needed(understood([result])) if not line.missing]
    if lines:
        told = 6 if any(line.price is not None for line in lines) else 5
        columns = ("what", "need", "spare", "have", "buy", "price")[:told]
        rows = tuple((_called(line), *supplies_list.cells(line))[:told] for line in lines)
        bill = [f"in all {money}" for money in shopping.bill(lines)]
        yield Table("what the piece takes, and what is still to buy", columns, rows, tuple(bill))
    if checker is not None:
        names = {line.name for line in lines}
        sizes = other_sizes.found(result, checker, names)
        also = tuple((one.part, one.says) for one in sizes if one.works)
        if also:
            words = "sizes that would also do, each changed alone"
            yield Table(words, ("part", "size"), also, decides=1)
    for kit in shopping.kits(understood([result])):
        if kit.beads:
            yield Table(
                "to weigh out for one maker",
                ("bead", "pieces", "grams"),
                tuple((b.name, str(b.pieces), supplies_list.grams(b)) for b in kit.beads),
            )


def _called(line: SupplyLine) -> str:
    return f"{line.name}: {line.describes}" if line.describes else line.name


def _bars(chain: ChainCuts) -> Iterator[Figure]:
    """A drawing for each length of chain, its pieces in turn, and the links to count in words."""
    longest = max((bar.length for bar in chain.bars), default=1.0)
    for number, bar in enumerate(chain.bars, 1):
        steps = " ".join(
            f"{n}. {cuts_list.counted_off(piece)}." for n, piece in enumerate(bar.pieces, 1)
        )
        when, good = cuts_list.WHEN[chain.when], cuts_list.how_good(chain)
        words = f"{when}; {good}; {cuts_list.source(bar)}. {steps}"
        several = f", length {number} of {len(chain.bars)}" if len(chain.bars) > 1 else ""
        title = f"`{chain.chain}`{several}"
        yield Figure(title, f"{title}: {words}", words, _drawn(bar, longest, title, words))


def _drawn(bar: Bar, longest: float, title: str, words: str) -> str:
    """The length as a bar on paper; numbers stand in the pieces, crosses in what is lost."""
    per_mm = _WIDE / longest
    canvas, number = Canvas(), 0
    for what, start, end in cutting.spans(bar):
        left, wide = start * per_mm, (end - start) * per_mm
        canvas.box(left, 0, wide, _HIGH, _LOOKS[what])
        if what == "piece":
            number += 1
            canvas.text(left + wide / 2, _HIGH / 2, str(number), "label")
        elif what == "lost":
            canvas.line(left, 0, left + wide, _HIGH, "scissors")
            canvas.line(left, _HIGH, left + wide, 0, "scissors")
    return canvas.svg(title, words, "section")


def _lengths(found: Sequence[Lengths]) -> Iterator[Table]:
    if found:
        columns = ("for", "what", "pieces", "each", "when", "how")
        rows = tuple(cuts_list.length_cells(one) for one in found)
        yield Table("thread, wire, cord and core, by the length", columns, rows)
