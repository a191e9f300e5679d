"""The supply list for programs: as JSON, and as a table for a spreadsheet."""

from __future__ import annotations

import csv
import json
from collections.abc import Iterator
from io import StringIO
from typing import Any

from wellstrung.common.money import PIECES, Money
from wellstrung.lists import shopping
from wellstrung.lists.line import SupplyLine
from wellstrung.report.heading import as_data
from wellstrung.report.supplies_list import Supplies


def as_json(found: Supplies) -> str:
    """The list as JSON, as its published schema describes it."""
    return json.dumps(data(found), indent=2, ensure_ascii=False)


def data(found: Supplies) -> dict[str, Any]:
    """The list as plain data."""
    return {
        "report": "wellstrung supplies",
        "version": 2,
        "makers": found.makers,
        "plans": as_data(found.results),
        "lines": [_line(line) for line in found.lines],
        "bill": [_money(money) for money in shopping.bill(found.lines)],
        "unpriced": [line.name for line in shopping.unpriced(found.lines)],
        "kits": [
            {
                "title": kit.title,
                "file": kit.file,
                "beads": [
                    {
                        "bag": bag.letter,
                        "name": bag.name,
                        "pieces": bag.pieces,
                        "grams": bag.grams,
                        "measured": bag.measured,
                    }
                    for bag in kit.beads
                ],
            }
            for kit in found.kits
        ],
        "substitutes": [
            {
                "plan": title,
                "part": size.part,
                "field": size.field,
                "says": size.says,
                "low": size.low,
                "high": size.high,
                "works": size.works,
            }
            for title, size in found.substitutes
        ],
    }


_UNITS = {PIECES: "pieces"}


def _line(line: SupplyLine) -> dict[str, Any]:
    pack = line.pack
    return {
        "group": line.group,
        "name": line.name,
        "describes": line.describes,
        "unit": _UNITS.get(line.unit, line.unit),
        "need": {"middle": line.need.middle, "likely": [line.need.low, line.need.high]},
        "spare": line.spare,
        "have": line.have,
        "short": line.short,
        "buy": line.buy,
        "grams": line.grams,
        "packs": line.packs,
        "pack": {"sold_as": pack.word, "holds": pack.holds, "text": pack.text} if pack else None,
        "price": line.price.text if line.price is not None else None,
        "cost": _money(line.cost) if line.cost is not None else None,
        "plans": list(line.plans),
        "missing": list(line.missing),
        "notes": [*line.amiss, *line.notes],
    }


def _money(money: Money) -> dict[str, str]:
    return {"amount": f"{money.amount:.2f}", "currency": money.currency}


# --- for a spreadsheet

_COLUMNS = (
    "bought", "group", "what", "description", "unit", "need", "spare", "have", "buy", "grams",
    "packs", "pack", "price", "cost", "currency", "also works", "plans", "note",
)  # fmt: skip
#: What a spreadsheet takes for the beginning of a formula: OWASP, CSV injection (from memory).
_FORMULA = ("=", "+", "-", "@", "\t", "\r", "\n")


def as_csv(found: Supplies) -> str:
    """The lines as comma-separated values (RFC 4180), safe from being read as formulas."""
    out = StringIO()
    writer = csv.writer(out)
    writer.writerow(_COLUMNS)
    for line in found.lines:
        writer.writerow([_cell(value) for value in _values(line, found)])
    return out.getvalue()


def _values(line: SupplyLine, found: Supplies) -> Iterator[str | float | None]:
    also = "; ".join(
        dict.fromkeys(
            size.says for _, size in found.substitutes if size.works and line.name == size.part
        )
    )
    yield "" if line.short else "x"
    yield from (line.group, line.name, line.describes, _UNITS.get(line.unit, line.unit))
    yield from (round(amount, 2) for amount in (line.need.middle, line.spare, line.have, line.buy))
    yield round(line.grams, 1) if line.grams is not None else None
    yield from (line.packs, f"{line.pack.word} {line.pack.text}".strip() if line.pack else None)
    yield line.price.text if line.price is not None else None
    yield f"{line.cost.amount:.2f}" if line.cost is not None else None
    yield line.cost.currency if line.cost is not None else None
    yield from (also, "; ".join(line.plans))
    yield "; ".join((*line.amiss, *line.notes, *(f"needs {field}" for field in line.missing)))


def _cell(value: str | float | None) -> str | float:
    """A value as a cell; an apostrophe stands before text that a spreadsheet would calculate."""
    if isinstance(value, str):
        return f"'{value}" if value.startswith(_FORMULA) else value
    return "" if value is None else value
