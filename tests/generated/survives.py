"""Whatever a file holds, its result is plain: no internal error, and places inside it."""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path

import jsonschema_rs

import wellstrung_schemas as schemas
from reports import report
from wellstrung.common.places import Place
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import PlanResult, Result
from wellstrung.report import text
from wellstrung.report.writer import Options


def survives(checker: Checker, file: Path, data: bytes) -> PlanResult:
    """The result of a file of these bytes, which must be one, whatever they are."""
    file.write_bytes(data)
    result = checker.check_file(file)
    assert not result.failures, "\n".join(one.says for one in result.failures)
    assert result.remarks or result.readable
    for remark in result.remarks:
        for place in (remark.place, *remark.also):
            assert place.file != result.file or inside(result.text, place), (remark.says, place)
    return result


def reports_well(result: PlanResult) -> None:
    """The result can be written as text and as JSON, and the JSON fits its schema."""
    assert text.write(Result((result,)), Options(80, workings=True))
    fault = next(_validator().iter_errors(report(result)), None)
    assert fault is None, fault


@cache
def _validator() -> jsonschema_rs.Validator:
    return jsonschema_rs.validator_for(schemas.load("report"))


def inside(read: str, place: Place) -> bool:
    """Whether a place lies in a text."""
    lines = re.split("\r\n|\r|\n", read)
    begins, ends = place[1:3], place[3:5]
    return begins <= ends and all(
        1 <= line <= len(lines) and 1 <= column <= len(lines[line - 1]) + 1
        for line, column in (begins, ends)
    )
