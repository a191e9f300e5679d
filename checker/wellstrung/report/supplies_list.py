"""The supply list: for people, as JSON, and as a table for a spreadsheet."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import groupby

from msgspec import Struct

from wellstrung.common import units
from wellstrung.common.money import PIECES
from wellstrung.common.wording import some_of, together
from wellstrung.derived.amounts import LENGTH, VOLUME
from wellstrung.derived.purchase import bought
from wellstrung.judging.result import PlanResult, Result
from wellstrung.lists import shopping
from wellstrung.lists.line import GROUPS, SupplyLine
from wellstrung.lists.shopping import Kit
from wellstrung.report.heading import head, lacking
from wellstrung.report.styled import Text
from wellstrung.report.terminal import OUTCOMES, Page
from wellstrung.report.writer import Options
from wellstrung.what_if.other_sizes import Substitute

#: Below this many columns the list is stacked, since a table would break every word.
_TABLE_FROM = 76
_INDENT = 4
#: So many plans are named beside a thing, and the rest counted.
_NAMED = 4
#: Less glue than this, ml, two figures would round away.
_A_DROP = 0.005


class Supplies(Struct, frozen=True):
    """The plans, their lines and kits, and for each plan the sizes that would also work."""

    results: tuple[PlanResult, ...]
    makers: int
    lines: tuple[SupplyLine, ...]
    kits: tuple[Kit, ...]
    substitutes: tuple[tuple[str, Substitute], ...]


def write(found: Supplies, options: Options) -> str:
    """The list for people, with a box to tick for each thing to buy; last what is on hand."""
    page = Page(options)
    head(page, found.results, found.makers)
    page.line()
    names = _Names(found)
    lines = names.in_order(line for line in found.lines if not line.missing)
    buy = [line for line in lines if line.short or line.unfit]
    lacks = lacking(found.results)
    if not buy:
        if not lacks or lines:
            page.line(f"nothing to buy{' for the other plans' if lacks else ''}")
            page.line()
    elif options.width >= _TABLE_FROM:
        _table(page, buy, names)
    else:
        _stacked(page, buy, names)
    if more := [*filter(_more_than_the_middle, buy)]:
        whole = ", in whole beads" if any(line.group == "beads" for line in more) else ""
        each = " for each maker" if whole and found.makers > 1 else ""
        page.line(f"need is the likely middle; buy covers the likely most{whole}{each}")
        page.line()
    _bill(page, found.lines, names)
    _on_hand(page, [line for line in lines if not (line.short or line.unfit)], names)
    _substitutes(page, found)
    _kits(page, found.kits, names)
    _not_counted(page, found.lines, names)
    if lacks:
        page.line(lacks, style=OUTCOMES["not checked yet"])
    return page.text()


class _Names:
    """How a list calls what it lists: of several plans by what a shop calls it, and for whom."""

    def __init__(self, found: Supplies) -> None:
        every = Result(found.results)
        self.several = len(found.results) > 1
        self._of = {plan.file: every.known_by(plan) for plan in found.results}
        self._titles = {plan.file: every.called(plan) for plan in found.results}

    def in_order(self, lines: Iterable[SupplyLine]) -> list[SupplyLine]:
        """The lines by group; of several plans what is alike stands together."""
        if not self.several:
            return [*lines]
        return sorted(lines, key=lambda line: (GROUPS.index(line.group), line.describes))

    def of(self, line: SupplyLine) -> tuple[str, str]:
        """What a line is, and what more is to be said of it."""
        if not self.several:
            return line.name, line.describes
        whose = f"{line.name}, for {some_of([self._of[file] for file in line.files], _NAMED)}"
        return (line.describes, whose) if line.describes else (whose, "")

    def short(self, line: SupplyLine) -> str:
        """A line by its name, and by its plans where there are several."""
        if not self.several:
            return line.name
        return f"{line.name} of {some_of([self._of[file] for file in line.files], _NAMED)}"

    def plan(self, kit: Kit) -> str:
        """The plan of a kit."""
        return self._titles[kit.file]


def _more_than_the_middle(line: SupplyLine) -> bool:
    """Whether more is bought than need and spare, as they are printed, add up to."""
    middle = round(line.need.middle) if line.group == "beads" else line.need.middle
    lacks = middle + line.spare - line.have
    if line.pack is not None:
        return bool(line.short) and lacks <= 0
    return line.need.high > line.need.middle and line.buy > lacks + 1e-6


def _table(page: Page, lines: Sequence[SupplyLine], names: _Names) -> None:
    table = page.table()
    table.add_column("")
    table.add_column("what", ratio=1)
    for amount in ("need", "spare", "have"):
        table.add_column(amount, justify="right", no_wrap=True)
    table.add_column("buy", max_width=max(16, page.width // 5))
    priced = any(line.price is not None for line in lines)
    if priced:
        table.add_column("price", justify="right", no_wrap=True)
    for group, of_group in groupby(lines, key=lambda line: line.group):
        table.add_row("", Text(group, style="bold"))
        for line in of_group:
            name, more = names.of(line)
            what = Text(name).append(f"\n{more}" if more else "", "dim")
            what.append(
                "".join(f"\n{says}" for says in line.amiss),
                OUTCOMES["not makeable"],
            )
            amounts = cells(line) if priced else cells(line)[:-1]
            table.add_row(_box(line), what, *map(Text, amounts))
    page.draw(table)
    page.line()


def cells(line: SupplyLine) -> tuple[str, ...]:
    """The cells of a line: need, spare, have, buy and price."""
    need = shown(line.need.middle, line)
    return need, _spare(line), _had(line), buying(line), _price(line)


def _stacked(page: Page, lines: Sequence[SupplyLine], names: _Names) -> None:
    for group, of_group in groupby(lines, key=lambda line: line.group):
        page.line(group, style="bold")
        for line in of_group:
            name, more = names.of(line)
            page.pair(_box(line), name, 0, gap=_INDENT)
            if more:
                page.line(more, _INDENT, "dim")
            for says in line.amiss:
                page.line(says, _INDENT, OUTCOMES["not makeable"])
            page.pair("buy", buying(line), _INDENT)
            page.pair("need", _needed(line), _INDENT)
            page.pair("price", _price(line), _INDENT)
        page.line()


def _needed(line: SupplyLine) -> str:
    """What is needed, what of it to spare, and what is on hand."""
    spare = f", and {_spare(line)} spare" if line.spare else ""
    had = f"; have {_had(line)}" if line.have else ""
    return f"{shown(line.need.middle, line)}{spare}{had}"


def _on_hand(page: Page, lines: Sequence[SupplyLine], names: _Names) -> None:
    """What need not be bought, each in a line."""
    if not lines:
        return
    page.line("on hand, nothing to buy", style="bold")
    for line in lines:
        what = ", ".join(filter(None, names.of(line)))
        doubts = "".join(f"; {says}" for says in line.amiss)
        page.pair("-", f"{what}: need {_needed(line)}{doubts}", _INDENT - 2, gap=2)
    page.line()


def _box(line: SupplyLine) -> str:
    """A box to tick; none for what must not be bought as written."""
    return "[ ]" if line.short and not line.unfit else ""


def shown(amount: float, line: SupplyLine) -> str:
    """An amount in the unit that a shop uses: pieces, lengths, ml."""
    if line.unit == LENGTH:
        return units.by_length(amount, inches=line.inches)
    if line.unit == VOLUME:
        return units.show(amount, "ml", 2) if amount >= _A_DROP else "a drop"
    return f"{round(amount)}"


def _spare(line: SupplyLine) -> str:
    return shown(line.spare, line) if line.spare else ""


def _had(line: SupplyLine) -> str:
    """What is on hand; a bottle that does not say how much it holds is there, and that is all."""
    if line.have and line.unit == VOLUME and line.pack is not None and line.pack.holds is None:
        return "yes"
    return shown(line.have, line) if line.have else ""


def buying(line: SupplyLine) -> str:
    """What to buy: first what it is sold in, then grams and pieces; never as it does not work."""
    if line.unfit:
        return f"{bought(line)}, not as written" if line.short else "not as written"
    if not line.short:
        return "nothing, but look first whether it fits" if line.doubt else "nothing"
    more = []
    if line.grams:
        more.append(f"{line.grams:.1f}".removesuffix(".0") + " g")
    if line.packs is not None and line.unit == PIECES and line.pack and line.pack.holds:
        about = "about " if line.pack.less else ""
        more.append(f"{about}{shown(line.buy, line)} pieces")
    if line.packs == 1 and line.pack is not None:  # one pack has said one of them already
        more = [one for one in more if one.removesuffix(" pieces") != line.pack.text]
    more += line.notes
    more += ["look first whether it fits"] if line.doubt else []
    return bought(line) + (f" ({', '.join(more)})" if more else "")


def _price(line: SupplyLine) -> str:
    return str(line.cost) if line.cost is not None and line.short else ""


def _bill(page: Page, lines: Sequence[SupplyLine], names: _Names) -> None:
    bill, without = shopping.bill(lines), shopping.unpriced(lines)
    if any(line.price is not None for line in lines):
        if not without or any(line.short and line.cost is not None for line in lines):
            page.pair("total", " and ".join(map(str, bill)), 0, "bold")
        page.pair("no price", ", ".join(map(names.short, without)), 0)
        page.line()


def _substitutes(page: Page, found: Supplies) -> None:
    """Other sizes of what is to be bought that would also work, by part and plan."""
    works = [one for one in found.substitutes if one[1].works]
    if not works:
        return
    page.line("would also work", style="bold")
    several = len(found.results) > 1
    for (title, part), sizes in groupby(works, key=lambda one: (one[0], one[1].part)):
        also = ", ".join(size.says for _, size in sizes)
        page.pair("-", f"{part}{f' of {title}' if several else ''}: {also}", _INDENT - 2, gap=2)
    page.line()


def _kits(page: Page, kits: Sequence[Kit], names: _Names) -> None:
    if not kits:
        return
    page.line("in bags for each maker, spare beads included", style="bold")
    for kit in kits:
        beads = "; ".join(f"{bag.letter} {bag.name}: {bag.measured}" for bag in kit.beads)
        page.pair("-", f"{names.plan(kit)}: {beads}", _INDENT - 2, gap=2)
    page.line()


def _not_counted(page: Page, lines: Sequence[SupplyLine], names: _Names) -> None:
    lacking = [line for line in lines if line.missing]
    if lacking:
        page.line("not counted", style="bold")
        for line in lacking:
            page.pair(
                "-", f"{names.short(line)} needs {together(line.missing)}", _INDENT - 2, gap=2
            )
