"""The JSON report, version 2; its names are fixed, its schema is published.

`schemas/REPORT.md` shows how to read it.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator
from typing import Any

from wellstrung.common.places import Place
from wellstrung.judging.result import LEVELS, Failure, PlanResult, Remark, Result, Summary
from wellstrung.judging.summary import Totals
from wellstrung.report import since_data
from wellstrung.report.rows import COLUMNS, Rows

VERSION = 2


def plan_entry(plan: PlanResult, *, ascii_only: bool = False) -> str:
    """One plan of the report: each remark, check and quantity on a line of its own.

    In `ascii_only` other signs are escaped, so that a terminal without them changes no value.
    """
    return _text(as_data(plan), 2, ascii_only)


def plan_line(plan: PlanResult, *, ascii_only: bool = False) -> str:
    """One plan on one line, for JSON Lines."""
    return _text(as_data(plan), 0, ascii_only)


def whole(
    plans: Iterable[tuple[str, Summary]],
    *,
    ascii_only: bool = False,
    compared: Result | None = None,
) -> Iterator[str]:
    """The report piece by piece: each plan as soon as the next is there, and what they total.

    Where plans were `compared` with earlier ones, what became of all of them too.
    """
    entry = f'{{\n"report":"wellstrung",\n"version":{VERSION},\n"plans":['
    kept: list[Summary] = []
    for text, summary in plans:
        if kept:
            yield f"{entry},"
        entry = text if kept else f"{entry}\n{text}"
        kept.append(summary)
    totals = Totals(kept)
    end = {
        "totals": {
            "plans": len(kept),
            "not_checked": totals.not_checked,
            **{f"{level}s": totals.count(level) for level in LEVELS},
        },
        **(since_data.of_all(compared) if compared is not None else {}),
        "failures": [_failure(failure) for failure in totals.failures],
    }
    yield f"{entry}\n],\n{_text(end, 3, ascii_only).removeprefix('{').lstrip()}"


def as_data(plan: PlanResult) -> dict[str, Any]:
    """One plan as plain data, as the schema of the report describes it."""
    rows = Rows(plan.quantities)
    return {
        "file": plan.file,
        "title": plan.title,
        "piece": plan.piece,
        "outcome": plan.outcome,
        "bench": plan.bench,
        "drawer": plan.drawer,
        **({"swatches": [*map(_swatch, plan.swatches)]} if plan.swatches else {}),
        "failures": [_failure(failure) for failure in plan.failures],
        "remarks": [_remark(remark, rows) for remark in plan.remarks],
        "held": [
            {
                "rule": kept.rule,
                "parts": list(kept.parts),
                **rows.margin(kept.margin),
                **({"note": kept.note} if kept.note else {}),
            }
            for kept in plan.held
        ],
        "unjudged": [
            {"rule": entry.rule, "parts": list(entry.parts), "missing": list(entry.missing)}
            for entry in plan.unjudged
        ],
        "columns": list(COLUMNS),
        "quantities": rows.rows,
        "sources": rows.sources,
        **since_data.of_plan(plan),
    }


def _swatch(used: tuple[Place, tuple[str, ...]]) -> dict[str, Any]:
    return {"place": _place(used[0]), "narrows": list(used[1])}


def _failure(failure: Failure) -> dict[str, Any]:
    return {"rule": failure.rule, "plugin": failure.plugin, "message": failure.message}


def _remark(remark: Remark, rows: Rows) -> dict[str, Any]:
    """`working` holds the lines of a remark that are not those of its margin."""
    return {
        "rule": remark.rule,
        "level": remark.level,
        "parts": list(remark.parts),
        "says": remark.says,
        "found": remark.found,
        "needed": remark.needed,
        "remedy": remark.remedy,
        "edits": [{"place": _place(edit.place), "new": edit.new} for edit in remark.edits],
        "working": list(remark.lines),
        **rows.margin(remark.margin),
        "sources": list(remark.sources),
        "place": _place(remark.place),
        "also": [_place(place) for place in remark.also],
        "affects": list(remark.affects),
        "accepted": remark.accepted,
    }


def _place(place: Place) -> dict[str, Any]:
    return place._asdict()


def _text(data: Any, levels: int, ascii_only: bool) -> str:
    """Data as JSON, so many of its outer levels with each entry on a line of its own."""
    plain = json.JSONEncoder(ensure_ascii=ascii_only, separators=(",", ":")).encode

    def written(data: Any, levels: int) -> str:
        if not levels or not data or not isinstance(data, dict | list):
            return plain(data)
        if isinstance(data, list):
            return "[\n{}\n]".format(",\n".join(written(entry, levels - 1) for entry in data))
        named = (f"{written(name, 0)}:{written(entry, levels - 1)}" for name, entry in data.items())
        return "{{\n{}\n}}".format(",\n".join(named))

    return written(data, levels)
