"""The report as a SARIF log (OASIS Static Analysis Results Interchange Format, 2.1.0).

Code hosts and editors show such a log beside the lines that it is about. A caution is a `note`, a
check that lacks a value a result of the kind `open`, an internal error a notification. The outcome
of a plan stands with its artifact: one with slips is not checked yet.
"""

from __future__ import annotations

import json
import os
from collections.abc import Iterable, Mapping, Sequence
from importlib.metadata import version
from pathlib import Path, PurePath
from typing import Any
from urllib.parse import quote

from wellstrung.common import wording
from wellstrung.common.places import Edit, Place
from wellstrung.judging.result import PlanResult, Remark, Result, Unjudged
from wellstrung.report.checks import together
from wellstrung.report.writer import Options
from wellstrung.rulebook import Rule

SCHEMA = (
    "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"
)
LEVELS: Mapping[str, str] = {
    "slip": "error",
    "error": "error",
    "warning": "warning",
    "caution": "note",
}
#: what is found before any rule is asked
FAULTS = {
    "plan-file": "a plan file can be read",
    "plan-shape": "a plan has the shape that its schema describes",
}
#: what keeps a check from being made: the checker itself, or a file that a plan needs
_BROKEN, _UNUSABLE = "internal-error", "unusable-file"
_NOTES = {_BROKEN: "a check could not be made", _UNUSABLE: "a file of a plan cannot be used"}
#: the folder that paths are relative to, by the name that tools have agreed on
_ROOT = "%SRCROOT%"

Node = dict[str, Any]


def write(result: Result, options: Options) -> str:
    """The result as a SARIF log; in ASCII, so that no terminal or pipe can change it."""
    return json.dumps(log(result, options), indent=2)


def log(result: Result, options: Options) -> Node:
    """The same as plain data."""
    installed = options.installed
    rules = installed.rules if installed is not None else {}
    results = [one for plan in result.plans for one in _results(plan)]
    named = sorted({one["ruleId"] for one in results} | {f.rule for f in result.failures if f.rule})
    for one in results:
        one["ruleIndex"] = named.index(one["ruleId"])
    files = dict.fromkeys(file for plan in result.plans for file in (plan.file, *plan.beside))
    outcomes = {plan.file: plan.outcome for plan in result.plans}
    driver = {
        "name": "wellstrung",
        "version": version("wellstrung"),
        "rules": [_descriptor(name, rules.get(name)) for name in named],
        "notifications": [
            {"id": name, **_described(shortDescription=says)} for name, says in _NOTES.items()
        ],
    }
    run = {
        "tool": {"driver": driver},
        "language": "en",
        "columnKind": "unicodeCodePoints",
        "originalUriBaseIds": {
            _ROOT: {"description": _message("the folder that the plans were checked from")}
        },
        "artifacts": [
            {
                "location": _artifact(file),
                "sourceLanguage": "yaml",
                **({"properties": {"outcome": outcomes[file]}} if file in outcomes else {}),
            }
            for file in files
        ],
        "invocations": [
            {
                "executionSuccessful": not result.failures,
                "toolExecutionNotifications": _notifications(result, named, _BROKEN),
                "toolConfigurationNotifications": _notifications(result, named, _UNUSABLE),
            }
        ],
        "results": results,
    }
    return {"$schema": SCHEMA, "version": "2.1.0", "runs": [run]}


def _descriptor(name: str, rule: Rule | None) -> Node:
    """What is known of a rule, for whoever opens one of its results."""
    if rule is None:
        return {"id": name, **_described(shortDescription=FAULTS.get(name, ""))}
    return {
        "id": name,
        **_described(
            shortDescription=rule.title,
            fullDescription=rule.why,
            help="\n".join(
                [
                    *(f"right: {line}" for line in [rule.good] if line),
                    *(f"source: {source}" for source in rule.sources),
                ]
            ),
        ),
        "defaultConfiguration": {"level": LEVELS[rule.level]},
        "properties": {"tags": [rule.family]},
    }


def _described(**texts: str) -> Node:
    return {name: _message(text) for name, text in texts.items() if text}


def _results(plan: PlanResult) -> Iterable[Node]:
    for remark in plan.remarks:
        yield _of_remark(remark)
    for entry in plan.unjudged:
        yield _of_open(plan, entry)


def _of_remark(remark: Remark) -> Node:
    says = [remark.says]
    says += [f"you have: {remark.found}"] if remark.found else []
    says += [f"you need: {remark.needed}"] if remark.needed else []
    says += [f"do this: {remark.remedy}"] if remark.remedy else []
    node: Node = {
        "ruleId": remark.rule,
        "level": LEVELS[remark.level],
        "message": _message("\n".join(says)),
        "locations": [_location(remark.place)],
        "partialFingerprints": _fingerprint(remark.rule, remark.parts),
        "suppressions": [],
    }
    if remark.also:
        node["relatedLocations"] = [
            {"id": number, **_location(place), "message": _message("see also")}
            for number, place in enumerate(remark.also, 1)
        ]
    if remark.edits:
        node["fixes"] = [_fix(remark)]
    if remark.accepted is not None:
        # SARIF calls `in source` what stands in the file itself, as an acceptance does
        node["suppressions"] = [
            {"kind": "inSource", "status": "accepted", "justification": remark.accepted}
        ]
    if remark.parts or remark.working:
        node["properties"] = {"parts": list(remark.parts), "working": list(remark.working)}
    return node


def _of_open(plan: PlanResult, entry: Unjudged) -> Node:
    needs = f"not checked: {together(entry.parts)} needs {wording.together(entry.missing)}"
    return {
        "ruleId": entry.rule,
        "kind": "open",
        "level": "none",
        "message": _message(needs),
        "locations": [{"physicalLocation": {"artifactLocation": _artifact(plan.file)}}],
        "partialFingerprints": _fingerprint(entry.rule, entry.parts),
        "suppressions": [],
    }


def _fix(remark: Remark) -> Node:
    """All edits of a remedy: they carry it out when they are made together."""
    by_file: dict[str, list[Edit]] = {}
    for edit in remark.edits:
        by_file.setdefault(edit.place.file, []).append(edit)
    return {
        **_described(description=remark.remedy),
        "artifactChanges": [
            {
                "artifactLocation": _artifact(file),
                "replacements": [
                    {
                        "deletedRegion": _region(edit.place),
                        "insertedContent": {"text": edit.new},
                    }
                    for edit in edits
                ],
            }
            for file, edits in by_file.items()
        ],
    }


def _notifications(result: Result, named: Sequence[str], kind: str) -> list[Node]:
    """The failures of one kind, each once, at the first plan that has it."""
    first = {failure: plan.file for plan in reversed(result.plans) for failure in plan.failures}
    return [
        {
            "descriptor": {"id": kind, "index": list(_NOTES).index(kind)},
            **({"associatedRule": _reference(failure.rule, named)} if failure.rule else {}),
            "level": "error",
            "message": _message(failure.says),
            "locations": [{"physicalLocation": {"artifactLocation": _artifact(first[failure])}}],
        }
        for failure in result.failures
        if (kind == _BROKEN) == bool(failure.plugin)
    ]


def _reference(rule: str, named: Sequence[str]) -> Node:
    return {"id": rule, "index": named.index(rule)}


def _fingerprint(rule: str, parts: Iterable[str]) -> Node:
    """What stays of a result when lines move: its rule and its parts."""
    return {"ruleAndParts/v1": " ".join([rule, *parts])}


def _message(text: str) -> Node:
    """A text as SARIF has it: braces stand for something unless they are doubled."""
    return {"text": text.replace("{", "{{").replace("}", "}}")}


def _location(place: Place) -> Node:
    return {
        "physicalLocation": {
            "artifactLocation": _artifact(place.file),
            "region": _region(place),
        }
    }


def _region(place: Place) -> Node:
    """A place has the same bounds as a region: from 1, the end exclusive."""
    return {
        "startLine": place.line,
        "startColumn": place.column,
        "endLine": place.end_line,
        "endColumn": place.end_column,
    }


def _artifact(file: str) -> Node:
    """A file as an address: below the folder of the run, or an absolute one."""
    path = PurePath(file)
    if path.is_absolute() or ".." in path.parts:
        return {"uri": Path(os.path.abspath(file)).as_uri()}
    return {"uri": quote(path.as_posix()), "uriBaseId": _ROOT}
