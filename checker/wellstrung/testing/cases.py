"""Cases as data: what a case file says, and what its rule answers."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

import yaml
from msgspec import Struct, field

from wellstrung.judging.checker import Checker
from wellstrung.judging.result import PlanResult, Remark
from wellstrung.reading import bench as bench_file

_PINNED = ("says", "found", "needed", "remedy")
#: what a case pins in words
TEXTS = frozenset({*_PINNED, "fault", "missing", "and", "note"})


class Case(Struct, frozen=True):
    """One case of one rule; `file` is where it stands, to be written anew."""

    rule: str
    name: str
    text: str
    expect: str
    bench: str = ""
    pinned: Mapping[str, Any] = field(default_factory=dict)
    file: Path = Path()

    def __str__(self) -> str:
        return f"{self.rule}: {self.name}"


def rule_file(path: Path) -> Path | None:
    """The Python file that a case file names for a rule that is not installed."""
    data = yaml.load(path.read_text(encoding="utf-8"), Loader=yaml.CSafeLoader)
    return path.parent / data["rule_file"] if "rule_file" in data else None


def cases(path: Path) -> Iterator[Case]:
    """The cases of a file; raises ValueError if a change does not apply or a name stands twice."""
    data = yaml.load(path.read_text(encoding="utf-8"), Loader=yaml.CSafeLoader)
    names = [entry["name"] for entry in data["cases"]]
    if len(set(names)) < len(names):
        twice = next(name for name in names if names.count(name) > 1)
        raise ValueError(f"two cases of {path} are called `{twice}`: give each its own name")
    for entry in data["cases"]:
        text = data.get("plan") or (path.parent / data["plan_file"]).read_text(encoding="utf-8")
        text = changed(text, entry.get("change", {}))
        known = {"name", "change", "expect"}
        pinned = {key: value for key, value in entry.items() if key not in known}
        bench = data.get("bench", "")
        yield Case(data["rule"], entry["name"], text, entry["expect"], bench, pinned, path)


def changed(text: str, changes: Mapping[str, str]) -> str:
    """The text with words replaced; raises ValueError if an old one is not there exactly once.

    >>> changed("bore: 8 mm", {"8 mm": "6 mm"})
    'bore: 6 mm'
    """
    for old, new in changes.items():
        if text.count(old) != 1:
            raise ValueError(f"`{old}` must be there once, not {text.count(old)} times")
        text = text.replace(old, new)
    return text


def rewritten(case: Case, found: Mapping[str, Any], *, answers: bool = False) -> None:
    """Write what a rule now answers into the case file; all else stays as it is.

    Of texts, those that the case pins already; with `answers` everything that the rule answers.
    """
    text = case.file.read_text(encoding="utf-8")
    root = yaml.compose(text, Loader=yaml.CSafeLoader)
    assert root is not None
    entries = next(value for key, value in root.value if key.value == "cases")
    fields = next(
        entry.value
        for entry in entries.value
        if any(key.value == "name" and value.value == case.name for key, value in entry.value)
    )
    new = {key: found[key] for key in found if answers or key in TEXTS}
    last = fields[-1][1]
    more = [key for key in new if answers and key not in (name.value for name, _ in fields)]
    written = "".join(f"\n  {key}:{_dumped(new[key])}" for key in more)
    end = _end_of(last, text)
    text = text[:end] + written + text[end:]
    old = {"expect": case.expect, **case.pinned}
    for key, value in reversed(fields):
        if key.value in new and new[key.value] != old.get(key.value):
            end = _end_of(value, text)
            text = text[: value.start_mark.index] + _dumped(new[key.value]).lstrip() + text[end:]
    case.file.write_text(text, encoding="utf-8")


def _end_of(value: yaml.Node, text: str) -> int:
    """Where a value ends; a list ends where the next entry begins."""
    start = int(value.start_mark.index)
    return start + len(text[start : value.end_mark.index].rstrip())


def _dumped(value: Any) -> str:
    flow = isinstance(value, str)  # a list keeps a line for each of its entries
    dumped = yaml.safe_dump(value, default_flow_style=flow, allow_unicode=True, width=104)
    lines = dumped.removesuffix("...\n").strip().replace("\n", "\n  ")
    return f" {lines}" if flow else f"\n  {lines}"


def judged(case: Case, checker: Checker) -> Checker:
    """The checker with the case's own bench; raises ValueError if that cannot be used."""
    if not case.bench:
        return checker
    here = checker.installed
    bench, faults = bench_file.read_text(
        case.bench, "bench.yaml", here.stitches, here.limits, here.measures
    )
    if bench is None:
        raise ValueError(faults[0].says)
    return Checker(checker.installed, bench=bench)


def answer(case: Case, checker: Checker) -> dict[str, Any]:
    """What the rule answers, in the shape of a case's own entries."""
    result = judged(case, checker).check_text(case.text)
    if result.failures:
        return {"expect": "failure", "says": result.failures[0].message}
    refused = [remark for remark in result.remarks if remark.rule.startswith("plan-")]
    if refused:
        return {"expect": "refused", "says": refused[0].says}
    spoken = [remark for remark in result.remarks if remark.rule == case.rule]
    if spoken:  # the words for a fault are pinned where a rule has several
        own = {"fault": spoken[0].fault} if "fault" in case.pinned else {}
        return _spoken(spoken) | own
    return _silent(case.rule, result)


def _spoken(remarks: list[Remark]) -> dict[str, Any]:
    first = remarks[0]
    found: dict[str, Any] = {
        "expect": first.level,
        "at": f"{first.place.line}:{first.place.column}",
        **{key: getattr(first, key) for key in _PINNED if getattr(first, key)},
    }
    if first.also:
        found["also"] = [f"{place.line}:{place.column}" for place in first.also]
    if first.edits:
        found["edits"] = [edit.new for edit in first.edits]
    if len(remarks) > 1:
        found["and"] = [remark.says for remark in remarks[1:]]
    return found


def _silent(rule: str, result: PlanResult) -> dict[str, Any]:
    unjudged = [entry for entry in result.unjudged if entry.rule == rule]
    if unjudged:
        return {
            "expect": "unjudged",
            "missing": list(dict.fromkeys(field for entry in unjudged for field in entry.missing)),
        }
    held = [kept for kept in result.held if kept.rule == rule]
    if note := next((kept.note for kept in held if kept.note), ""):
        return {"expect": "held", "note": note}
    return {"expect": "held" if held else "silent"}
