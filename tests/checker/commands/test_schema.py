"""`schema` prints a schema that is valid, stands alone, and takes what the reader takes."""

from __future__ import annotations

import json
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from running import SAMPLES
from wellstrung.commands.cli import main
from wellstrung.reading import parser

PLANS = sorted(SAMPLES.glob("*.yaml"))


def printed(of: str, capsys: pytest.CaptureFixture[str]) -> dict[str, Any]:
    assert main(["schema", of]) == 0
    schema: dict[str, Any] = json.loads(capsys.readouterr().out)
    return schema


@pytest.mark.parametrize("of", ["plan", "bench", "drawer"])
def test_a_schema_is_valid_and_stands_alone(of: str, capsys: pytest.CaptureFixture[str]) -> None:
    schema = printed(of, capsys)
    assert schema["$schema"] == "https://json-schema.org/draft/2020-12/schema"
    Draft202012Validator.check_schema(schema)
    assert '"$ref"' not in json.dumps(schema)
    assert schema["examples"]
    for example in schema["examples"]:
        Draft202012Validator(schema).validate(example)


def test_the_schema_of_a_plan_takes_the_samples(capsys: pytest.CaptureFixture[str]) -> None:
    validator = Draft202012Validator(printed("plan", capsys))
    for file in PLANS:
        tree = parser.read(file).tree
        assert tree is not None
        if "drawer" not in tree.value:
            validator.validate(tree.value)


def test_the_schema_of_a_bench_knows_every_setting(capsys: pytest.CaptureFixture[str]) -> None:
    schema = printed("bench", capsys)
    validator = Draft202012Validator(schema)
    right = {
        "cap loose": "2 mm",
        "piece.mass": "at most 60 g",
        "end cap.bore": {"at least": "8 mm"},
    }
    assert validator.is_valid(
        {"bench": 1, "limits": right, "rates": {"netting": "5 beads per min"}}
    )
    for limits in ({"cap lose": "2 mm"}, {"piece.mass": {"most": "60 g"}}):
        assert not validator.is_valid({"bench": 1, "limits": limits})
    says = schema["properties"]["limits"]["properties"]["cap loose"]["description"]
    assert says.startswith("1.5 mm by default: trade table `caps`")


def test_the_schema_of_a_drawer_looks_into_its_parts(capsys: pytest.CaptureFixture[str]) -> None:
    validator = Draft202012Validator(printed("drawer", capsys))
    ring = {"kind": "jump ring", "outside": "6 mm", "wire": "18 AWG", "closing": "open"}
    assert validator.is_valid({"drawer": 1, "parts": {"small": ring}})
    assert not validator.is_valid({"drawer": 1, "parts": {"small": {**ring, "closing": "shut"}}})
    assert not validator.is_valid({"drawer": 1, "parts": {"small": {"outside": "6 mm"}}})
