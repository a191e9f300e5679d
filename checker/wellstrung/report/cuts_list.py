"""The cutting list: for people, with a bar for every length of chain, and as JSON."""

from __future__ import annotations

import json
from collections.abc import Sequence
from functools import partial
from itertools import groupby
from typing import Any

from wellstrung.common import units
from wellstrung.common.wording import article
from wellstrung.judging.result import PlanResult, Result
from wellstrung.lists import cutting
from wellstrung.lists.cutting import Bar, ChainCuts, ChainPiece, CutList, Lengths
from wellstrung.report.heading import as_data, head, lacking
from wellstrung.report.styled import Text
from wellstrung.report.terminal import OUTCOMES, Page, counted
from wellstrung.report.writer import Options

_INDENT = 3
#: How a bar is drawn, in a terminal that shows more than ASCII and in one that does not.
_DRAWN = {"piece": "█", "lost": "x", "left": "·"}
_PLAINLY = {"piece": "=", "lost": "x", "left": "."}
WHEN = {"now": "cut now", "after measuring": "cut after measuring the woven part"}


def write(results: Sequence[PlanResult], makers: int, found: CutList, options: Options) -> str:
    """The list for people: chain by counting links, everything else by length."""
    page = Page(options)
    head(page, results, makers)
    page.line()
    several, every = len(results) > 1, Result(tuple(results))
    names = {plan.file: every.called(plan) for plan in results}
    names |= {plan.file: f"{plan.maker}: {names[plan.file]}" for plan in results if plan.maker}
    for chain in found.chains:
        _chain(page, chain, chain.plans if several else ())
    for file, lengths in groupby(found.lengths, key=lambda one: one.file):
        page.line(names[file] if several else "cut by length", style="bold")
        for one in lengths:
            _length(page, one)
        page.line()
    if found.missing:
        page.line("could not be worked out", style="bold")
        for lacks in found.missing:
            page.line(lacks, _INDENT)
    lacks = lacking(results)
    if lacks:
        page.line(lacks, style=OUTCOMES["not checked yet"])
    elif not (found.chains or found.lengths or found.missing):
        trimmed = ": ends of wire are trimmed as they are turned" if cautions(results) else ""
        page.line(f"there is nothing to cut{' to length' if trimmed else ''}{trimmed}")
    for says in cautions(results):
        page.line(f"CAUTION {says}")
    return page.text()


def cautions(results: Sequence[PlanResult]) -> tuple[str, ...]:
    """The safety texts for whoever cuts, each once."""
    every = (remark for result in results for remark in result.cautions)
    return tuple(dict.fromkeys(remark.says for remark in every if remark.cuts))


def _chain(page: Page, chain: ChainCuts, plans: Sequence[str]) -> None:
    page.line(Text(chain.chain, style="bold").append(f"  {chain.describes}"))
    page.pair("for", ", ".join(plans), _INDENT, gap=4)
    pieces = ", ".join(f"{count} {name}" for name, count in chain.pieces)
    page.line(f"{pieces}: {WHEN[chain.when]}; {how_good(chain)}", _INDENT)
    for bar in chain.bars:
        page.line()
        _bar(page, bar)
    if chain.untouched:
        shown = partial(units.by_length, inches=chain.inches)
        whole = ", ".join(map(shown, chain.untouched))
        page.line(f"not cut into: {whole}", _INDENT)
    page.line()


#: The least length, mm, that is not printed as nothing.
_SHOWN = 0.5


def how_good(chain: ChainCuts) -> str:
    """Whether another way of cutting may use less chain, and how much less."""
    if chain.more:
        pieces = counted(chain.more, "piece")
        return f"another way may get up to {pieces} more from the chain on hand"
    if chain.less >= _SHOWN:
        less = units.by_length(chain.less, inches=chain.inches)
        return f"another way may use up to {less} less chain"
    short = any(not bar.written for bar in chain.bars) and any(bar.written for bar in chain.bars)
    return "no way gets more from the chain on hand" if short else "no way uses less chain"


def _bar(page: Page, bar: Bar) -> None:
    page.line(source(bar), _INDENT)
    page.path(drawn(bar, page.width - _INDENT, ascii_only=page.ascii_only), _INDENT)
    page.line(begins(bar), _INDENT)
    for number, piece in enumerate(bar.pieces, 1):
        page.pair(f"{number}.".rjust(4), counted_off(piece, inches=bar.inches), _INDENT, gap=5)


def begins(bar: Bar) -> str:
    """What is counted, and from where."""
    if bar.pieces[0].unit == "link" and all(piece.asked for piece in bar.pieces):
        return "measure from one end, and on from each cut"
    if bar.pieces[0].unit == "link":
        return f"link 1 is {article(bar.begins_with)}"
    return f"count {bar.pieces[0].unit}s from one end, and on from each cut"


def source(bar: Bar) -> str:
    """A length, how many pieces it gives, what is lost and what is left."""
    shown = partial(units.by_length, inches=bar.inches)
    whole = bar.written or f"{shown(bar.length, side='up')}, to be bought"
    lost = f", {counted(bar.lost, 'link')} lost ({shown(bar.lost_length)})" if bar.lost else ""
    left = f", {shown(bar.left)} left" if bar.left else ", nothing left"
    return f"from {whole}: {counted(len(bar.pieces), 'piece')}{lost}{left}"


def drawn(bar: Bar, width: int, *, ascii_only: bool) -> str:
    """A length as a bar so many characters wide; every piece and every loss shows, if it can.

    >>> piece = ChainPiece("drop", 1, 6, (), 0.0, 60.0, "")
    >>> drawn(Bar(100.0, "10 cm", "loop", (piece,), 38.0), 22, ascii_only=True)
    '|============x.......|'
    """
    marks, room = _PLAINLY if ascii_only else _DRAWN, width - 2
    spans = list(cutting.spans(bar))
    least = 1 if len(spans) <= room else 0
    bars = ""
    for number, (what, _, end) in enumerate(spans, 1):
        most = room - least * (len(spans) - number)  # those that follow have to show as well
        reach = min(most, max(len(bars) + least, round(end / bar.length * room)))
        bars += marks[what] * (reach - len(bars))
    return f"|{bars.ljust(room, marks['left'])}|"


def counted_off(piece: ChainPiece, *, inches: bool) -> str:
    """A piece by counting its links, and what to do behind the last of them."""
    count = counted(piece.links, piece.unit)
    if piece.asked:
        long = units.by_length(piece.asked, inches=inches)
        unknown = "the size of its links is not known"
        often = unknown if piece.unit == "link" else f"about {count}"
        count = f"{long} to the nearest {piece.unit} ({often})"
    elif piece.unit == "link":  # cups are counted on from each cut
        count = f"{count} ({piece.first}..{piece.last})"
    turned = ", turned end for end" if piece.turned else ""
    return f"{count} for {piece.name}{turned}, then {piece.how}"


def _length(page: Page, one: Lengths) -> None:
    shown = partial(units.by_length, inches=one.inches)
    head = f"{one.part}: {_many(one)} x {shown(one.length)} of {one.what}"
    total = f", {shown(one.total)} in all" if one.count > 1 else ""
    when = f"; {WHEN[one.when]}" if one.when != "now" else ""
    notes = f" ({'; '.join(one.notes)})" if one.notes else ""
    page.pair("[ ]", f"{head}{total}{notes}{when}", 0, gap=4)


def _many(one: Lengths) -> str:
    return f"{one.count}" if one.most == one.count else f"{one.count}, perhaps {one.most},"


def length_cells(one: Lengths) -> tuple[str, ...]:
    """The cells of pieces of one length: for, of what, how many, how long, when, how."""
    many = _many(one).rstrip(",")
    notes = "; ".join(one.notes)
    length = units.by_length(one.length, inches=one.inches)
    return one.part, one.what, many, length, WHEN[one.when], notes


# --- for programs


def as_json(results: Sequence[PlanResult], makers: int, found: CutList) -> str:
    """The list as JSON, as its published schema describes it; lengths are mm."""
    return json.dumps(data(results, makers, found), indent=2, ensure_ascii=False)


def data(results: Sequence[PlanResult], makers: int, found: CutList) -> dict[str, Any]:
    """The list as plain data."""
    return {
        "report": "wellstrung cuts",
        "version": 2,
        "makers": makers,
        "plans": as_data(results),
        "cautions": list(cautions(results)),
        "chains": [
            {
                "chain": chain.chain,
                "describes": chain.describes,
                "pattern": list(chain.pattern),
                "soldered": chain.soldered,
                "when": chain.when,
                "pieces": [{"name": name, "count": count} for name, count in chain.pieces],
                "bars": [_bar_data(bar) for bar in chain.bars],
                "untouched": list(chain.untouched),
                "may_get_more": chain.more,
                "may_use_less": chain.less,
                "plans": list(chain.plans),
            }
            for chain in found.chains
        ],
        "lengths": [
            {
                "plan": one.plan,
                "part": one.part,
                "what": one.what,
                "count": one.count,
                "most": one.most,
                "length": one.length,
                "total": one.total,
                "when": one.when,
                "notes": list(one.notes),
            }
            for one in found.lengths
        ],
        "missing": list(found.missing),
    }


def _bar_data(bar: Bar) -> dict[str, Any]:
    return {
        "length": bar.length,
        "written": bar.written or None,
        "begins_with": bar.begins_with,
        "pieces": [
            {
                "name": piece.name,
                "links": piece.links,
                "first": piece.first,
                "last": piece.last,
                "lost": list(piece.lost),
                "start": piece.start,
                "length": piece.length,
                "turned": piece.turned,
                "then": piece.how,
            }
            for piece in bar.pieces
        ],
        "lost": bar.lost,
        "lost_length": bar.lost_length,
        "left": bar.left,
    }
