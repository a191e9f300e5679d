"""A piece over its sizes: for people, and as JSON."""

from __future__ import annotations

import json
from typing import Any

from wellstrung.common import units
from wellstrung.derived.purchase import bought
from wellstrung.lists.line import SupplyLine
from wellstrung.report.heading import as_data, head
from wellstrung.report.styled import Text
from wellstrung.report.supplies_list import shown
from wellstrung.report.terminal import STYLES, Page, counted
from wellstrung.report.writer import Options
from wellstrung.what_if.size_range import Size, Sizes

_INDENT = 3
#: Groups whose amounts change with the size of the piece.
_CHANGES = ("beads", "thread", "cord", "core", "chain")


def write(found: Sizes, options: Options) -> str:
    """A table of the sizes, and below it what breaks at which of them."""
    page = Page(options)
    head(page, [found.result])
    page.line()
    moves = f", and the wearer's {found.moves} with it" if found.moves else ""
    page.line(f"`{found.part}` fills the rest; the {found.field.replace('_', ' ')} varies{moves}")
    page.line()
    _table(page, found)
    _breaks(page, found)
    return page.text()


def _table(page: Page, found: Sizes) -> None:
    table = page.table()
    table.add_column("size", no_wrap=True)
    table.add_column(found.part, justify="right", no_wrap=True)
    rounds = any(size.rounds is not None for size in found.sizes)
    if rounds:
        table.add_column("rounds", justify="right", no_wrap=True)
    table.add_column("takes", ratio=1)
    table.add_column("breaks", no_wrap=True)
    for size in found.sizes:
        cells = [
            Text(f"{size.text}{' *' if size.own else ''}", "bold" if size.own else ""),
            Text(_length(size.length, found)),
            *([Text(_count(size.rounds))] if rounds else []),
            Text("\n".join(_takes(line) for line in size.lines if line.group in _CHANGES)),
            _mark(size),
        ]
        table.add_row(*cells)
    page.draw(table)
    if any(size.own for size in found.sizes):
        page.line("* the plan's own size", style="dim")
    page.line()


def _length(length: float | None, found: Sizes) -> str:
    return units.show(length, "in" if found.inches else "cm", 1) if length is not None else "?"


def _count(count: float | None) -> str:
    return f"{round(count)}" if count is not None else "?"


def _takes(line: SupplyLine) -> str:
    """How much of one thing a size takes, and in what it is sold."""
    if line.missing:
        return f"{line.name}: not known"
    amount = shown(line.need.middle, line)
    return f"{line.name} {amount}" + (f", {bought(line)}" if line.pack is not None else "")


def _mark(size: Size) -> Text:
    if not size.breaks:
        return Text("-")
    errors = sum(remark.level == "error" for remark in size.breaks)
    level = "error" if errors else "warning"
    return Text(counted(errors or len(size.breaks), level), STYLES[level])


def _breaks(page: Page, found: Sizes) -> None:
    """Each new remark, with the sizes it is about."""
    at: dict[tuple[str, str, tuple[str, ...]], list[Size]] = {}
    for size in found.sizes:
        for remark in size.breaks:
            at.setdefault((remark.rule, remark.level, remark.parts), []).append(size)
    if not at:
        page.line(_nothing_more(found))
        return
    page.line("what breaks", style="bold")
    for (rule, level, parts), sizes in at.items():
        where = ", ".join(size.text for size in sizes)
        says = next(
            remark.says
            for remark in sizes[0].breaks
            if (remark.rule, remark.level, remark.parts) == (rule, level, parts)
        )
        first = f"; at {sizes[0].text}" if len(sizes) > 1 else ""
        text = Text(level.upper(), STYLES[level]).append(
            f" at {where}{first}: {says}", "not bold default"
        )
        page.hanging(text.append(f" [{rule}]", "dim"), 2 * _INDENT, _INDENT)


def _nothing_more(found: Sizes) -> str:
    """What it means that no size has a remark of its own."""
    if any(size.length is None for size in found.sizes):
        return f"not checked: how long `{found.part}` is at these sizes lacks a value"
    if found.result.count("error") or found.result.count("warning"):
        return "nothing more breaks at any of these sizes than in the plan as it is"
    return "nothing breaks at any of these sizes"


# --- for programs


def as_json(found: Sizes) -> str:
    """The sizes as JSON, as their published schema describes them; lengths are mm."""
    return json.dumps(data(found), indent=2, ensure_ascii=False)


def data(found: Sizes) -> dict[str, Any]:
    """The sizes as plain data."""
    return {
        "report": "wellstrung sizes",
        "version": 2,
        "plans": as_data([found.result]),
        "part": found.part,
        "field": found.field,
        "moves": found.moves,
        "sizes": [_size(size) for size in found.sizes],
    }


def _size(size: Size) -> dict[str, Any]:
    return {
        "wanted": size.wanted,
        "text": size.text,
        "own": size.own,
        "length": size.length,
        "rounds": size.rounds,
        "takes": [
            {
                "group": line.group,
                "name": line.name,
                "unit": line.unit or "pieces",
                "need": line.need.middle,
                "spare": line.spare,
                "packs": line.packs,
                "missing": list(line.missing),
            }
            for line in size.lines
        ],
        "breaks": [
            {
                "rule": remark.rule,
                "level": remark.level,
                "parts": list(remark.parts),
                "says": remark.says,
                "remedy": remark.remedy,
            }
            for remark in size.breaks
        ],
        "errors": size.errors,
        "warnings": size.warnings,
    }
