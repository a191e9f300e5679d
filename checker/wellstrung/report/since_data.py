"""What changed in plans since earlier ones, as plain data for the JSON reports."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from wellstrung.judging.result import PlanResult, Result
from wellstrung.judging.versions import Fate, Since


def of_all(result: Result) -> dict[str, Any]:
    """What the report holds of all plans; nothing where none was compared with an earlier one."""
    if not result.since:
        return {}
    followed = [plan.since for plan in result.plans if plan.since is not None]
    return {
        "since": {
            "file": result.since,
            "came": [plan.file for plan in result.plans if plan.since is None],
            "gone": [{"file": plan.file, "title": plan.title} for plan in result.gone],
            "had": sum(one.had for one in followed),
            "mended": sum(len(one.mended) for one in followed),
            "new": sum(len(one.new) for one in followed),
            "still": sum(len(one.still) for one in followed),
        }
    }


def of_plan(plan: PlanResult) -> dict[str, Any]:
    """What the entry of a plan holds; nothing where it was not compared."""
    return {"since": _since(plan.since)} if plan.since is not None else {}


def _since(since: Since) -> dict[str, Any]:
    return {
        "file": since.file,
        "outcome": since.outcome,
        "readable": since.readable,
        "had": since.had,
        **{
            name: [_fate(fate) for fate in getattr(since, name)]
            for name in ("mended", "accepted", "unknown", "new", "still", "cautions")
        },
        "answered": _values(since.answered),
        "opened": _values(since.opened),
        "renamed": dict(since.renamed),
        "came": list(since.came),
        "went": list(since.went),
        "changed": [change._asdict() for change in since.changed],
        "notes": list(since.notes),
    }


def _fate(fate: Fate) -> dict[str, Any]:
    """A remark, enough of it to be found among the remarks of either version."""
    remark, note = fate
    return {
        "rule": remark.rule,
        "level": remark.level,
        "parts": list(remark.parts),
        "says": remark.says,
        "line": remark.place.line,
        **({"note": note} if note else {}),
    }


def _values(waited: Iterable[tuple[str, int]]) -> list[dict[str, Any]]:
    return [{"missing": value, "checks": number} for value, number in waited]
