"""The JSON report, version 1; its names are fixed and its schema is published."""

from __future__ import annotations

import json
from typing import Any

from wellstrung.common.places import Place
from wellstrung.judging.result import PlanResult, Remark, Result
from wellstrung.quantity.value import Quantity
from wellstrung.quantity.working import working


def write(result: Result) -> str:
    """The result as JSON text."""
    return json.dumps(report(result), indent=2, ensure_ascii=False)


def report(result: Result) -> dict[str, Any]:
    """The result as plain data, as the report schema describes it."""
    return {
        "report": "wellstrung",
        "version": 1,
        "plans": [_plan(plan) for plan in result.plans],
        "totals": {
            "plans": len(result.plans),
            "errors": result.count("error"),
            "warnings": result.count("warning"),
            "cautions": result.count("caution"),
        },
        "failures": [
            {"rule": failure.rule, "plugin": failure.plugin, "message": failure.message}
            for failure in result.failures
        ],
    }


def _plan(plan: PlanResult) -> dict[str, Any]:
    return {
        "file": plan.file,
        "title": plan.title,
        "piece": plan.piece,
        "outcome": plan.outcome,
        "bench": plan.bench,
        "remarks": [_remark(remark) for remark in plan.remarks],
        "held": [
            {
                "rule": kept.rule,
                "parts": list(kept.parts),
                "margin": _quantity(kept.margin) if kept.margin else None,
                **({"note": kept.note} if kept.note else {}),
            }
            for kept in plan.held
        ],
        "unjudged": [
            {"rule": entry.rule, "parts": list(entry.parts), "missing": list(entry.missing)}
            for entry in plan.unjudged
        ],
        "quantities": {name: _quantity(value) for name, value in plan.quantities.items()},
    }


def _remark(remark: Remark) -> dict[str, Any]:
    return {
        "rule": remark.rule,
        "level": remark.level,
        "parts": list(remark.parts),
        "says": remark.says,
        "found": remark.found,
        "needed": remark.needed,
        "remedy": remark.remedy,
        "edits": [{"place": _place(edit.place), "new": edit.new} for edit in remark.edits],
        "working": list(remark.working),
        "sources": list(remark.sources),
        "place": _place(remark.place),
        "also": [_place(place) for place in remark.also],
        "affects": list(remark.affects),
        "accepted": remark.accepted,
    }


def _quantity(quantity: Quantity) -> dict[str, Any]:
    return {
        "middle": quantity.middle,
        "likely": list(quantity.likely),
        "worst": list(quantity.worst),
        "unit": quantity.unit,
        "working": working(quantity),
    }


def _place(place: Place) -> dict[str, Any]:
    return place._asdict()
