"""The table of sizes: against its published schema, and at every width."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator

import wellstrung_schemas as schemas
from running import SAMPLES
from wellstrung.judging.checker import Checker
from wellstrung.plugins import host
from wellstrung.report.sizes_list import as_json, write
from wellstrung.report.writer import Options
from wellstrung.what_if import size_range
from wellstrung.what_if.size_range import Sizes

HOST = host.load()
VALIDATOR = Draft202012Validator(schemas.load("sizes"))
FILLS = Path(__file__).parent / "fills_the_rest.yaml"


def over(first: str, last: str, step: str) -> Sizes:
    result = Checker(HOST, keep=True).check_file(FILLS)
    return size_range.over(result, HOST, first, last, step)


def test_fits_its_schema() -> None:
    found = json.loads(as_json(over("40 cm", "90 cm", "10 cm")))
    VALIDATOR.validate(found)
    assert [size["text"] for size in found["sizes"]][::5] == ["40 cm", "90 cm"]
    assert found["sizes"][-1]["breaks"][0]["rule"] == "beads-enough"


@pytest.mark.parametrize("width", [40, 60, 80, 120])
def test_no_line_is_wider_than_the_page(width: int) -> None:
    text = write(over("40 cm", "90 cm", "10 cm"), Options(width))
    for line in text.splitlines():
        assert len(line) <= width or str(FILLS) in line, line
        assert line == line.rstrip()


def test_what_breaks_is_told_once_with_the_sizes_at_which_it_does() -> None:
    text = write(over("46 cm", "100 cm", "18 cm"), Options(80))
    assert "ERROR at 82 cm, 100 cm; at 82 cm: `kelp` on hand" in " ".join(text.split())
    assert "46 cm *" in text and "* the plan's own size" in text


def test_of_a_plan_without_a_remark_nothing_breaks() -> None:
    lamp = (SAMPLES / "quay_lamp_necklace.yaml").read_text(encoding="utf-8")
    lamp = lamp.replace("length: 44.5 cm", "length: fills the rest")
    result = Checker(HOST, keep=True).check_text(lamp)
    text = write(size_range.over(result, HOST, "47 cm", "48 cm", "1 cm"), Options(80))
    assert text.endswith("\n\nnothing breaks at any of these sizes")


def test_where_nothing_breaks_it_says_so() -> None:
    text = write(over("44 cm", "48 cm", "2 cm"), Options(80, ascii_only=True))
    assert "nothing more breaks at any of these sizes" in text and text.isascii()
