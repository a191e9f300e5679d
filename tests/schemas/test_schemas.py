"""Schemas: sound, explained field by field, and the published one is the sum of the fragments."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import jsonschema_rs
import pytest
import yaml
from jsonschema import Draft202012Validator

import wellstrung_schemas as schemas
from running import SAMPLES
from wellstrung import tables
from wellstrung.plugins.host import Host
from wellstrung.reading import parser
from wellstrung.reading import schema as shape
from wellstrung.reading.values import READERS
from wellstrung.short_forms import spelled_out

#: what is written and never read: its fields need no examples
REPORTS = ("report", "supplies", "cuts", "sizes", "kit")
ALL = {
    "plan": schemas.plan(),
    "bench": schemas.bench(),
    **{name: schemas.load(name) for name in REPORTS},
    "drawer": schemas.drawer(),
    **{f"kind {kind}": dict(schemas.fragment(kind)) for kind in schemas.kind_names()},
    **{f"verb {verb}": dict(schema) for verb, schema in schemas.verbs().items()},
}
KEYWORDS = {
    "$schema", "$id", "$comment", "$defs", "$ref", "title", "description", "examples", "type",
    "enum", "const", "pattern", "minLength", "minimum", "exclusiveMinimum", "properties",
    "required", "additionalProperties", "propertyNames", "minProperties", "maxProperties", "items",
    "prefixItems", "minItems", "maxItems", "maximum", "allOf", "anyOf", "oneOf", "not", "if",
    "then", "absent", "patternProperties", "dependentSchemas",
}  # fmt: skip


def subschemas(schema: Any) -> Iterator[dict[str, Any]]:
    """Every schema inside a schema, itself included."""
    if not isinstance(schema, dict):
        return
    yield schema
    for word in ("properties", "patternProperties", "$defs", "dependentSchemas"):
        for inner in schema.get(word, {}).values():
            yield from subschemas(inner)
    for word in ("additionalProperties", "propertyNames", "items", "not", "if", "then"):
        yield from subschemas(schema.get(word))
    for word in ("allOf", "anyOf", "oneOf", "prefixItems"):
        for inner in schema.get(word, ()):
            yield from subschemas(inner)


def fields(schema: dict[str, Any], path: str = "") -> Iterator[tuple[str, dict[str, Any]]]:
    for name, field in schema.get("properties", {}).items():
        yield f"{path}.{name}", field
        yield from fields(field, f"{path}.{name}")
        yield from fields(field.get("items") or {}, f"{path}.{name}[]")
        rest = field.get("additionalProperties")
        yield from fields(rest if isinstance(rest, dict) else {}, f"{path}.{name}.*")


@pytest.mark.parametrize("name", ALL)
def test_sound_and_without_stray_keywords(name: str) -> None:
    Draft202012Validator.check_schema(ALL[name])
    for schema in subschemas(ALL[name]):
        assert set(schema) <= KEYWORDS, set(schema) - KEYWORDS


@pytest.mark.parametrize("name", [name for name in ALL if name not in REPORTS])
def test_every_field_is_explained_and_its_examples_fit(name: str) -> None:
    for path, field in fields(ALL[name]):
        assert field.get("description"), path
        assert field.get("examples"), path
        for example in field["examples"]:
            assert Draft202012Validator(field).is_valid(example), (path, example)
    for example in ALL[name]["examples"]:
        assert Draft202012Validator(ALL[name]).is_valid(example), (name, example)


@pytest.mark.parametrize("name", [name for name in ALL if name not in REPORTS])
def test_every_example_with_a_unit_is_one_the_reader_takes(name: str) -> None:
    for path, field in fields(ALL[name]):
        read = READERS.get(field.get("$comment", ""))
        for example in field["examples"] if read else ():
            assert read is not None and read(example) is not None, path


def test_the_published_schema_is_the_sum_of_the_fragments() -> None:
    published = json.loads(
        (Path(schemas.__file__).parent / "editor.json").read_text(encoding="utf-8")
    )
    assert published == schemas.editor_schema(), "run python -m wellstrung_schemas"


def test_a_necklace_is_called_by_the_names_of_the_trade_table() -> None:
    called = schemas.load("plan")["properties"]["called"]
    assert called["enum"] == list(tables.load("necklace_lengths").rows)


def test_the_published_schema_knows_every_kind_that_the_host_has(installed: Host) -> None:
    assert set(installed.kinds) == set(schemas.kind_names())


def test_the_published_schema_takes_the_samples_and_refuses_what_the_fragments_refuse(
    collar: str,
) -> None:
    validator = jsonschema_rs.Draft202012Validator(schemas.editor_schema())
    for path in SAMPLES.rglob("*.yaml"):
        tree = parser.read(path).tree
        assert tree is not None
        assert validator.is_valid(tree.value), path.name
    right = yaml.load(collar, Loader=yaml.BaseLoader)
    assert right["title"]
    tree = parser.read_text(collar, "plan.yaml").tree
    assert tree is not None and validator.is_valid(tree.value)
    for old, new in (
        ("bore: 10 mm", "boar: 10 mm"),
        ("bore: 10 mm", "bore: 10"),
        ("kind: end cap", "kind: endcap"),
        ("do: weave", "do: weeve"),
        (", with: glue", ""),
        ("closing: open", "closing: ajar"),
        ("    length: 39.7 cm\n", ""),
        ("bottom_eyes: {count: 7", "bottom_eyes: {count: 0"),
    ):
        tree = parser.read_text(collar.replace(old, new), "plan.yaml").tree
        assert tree is not None and not validator.is_valid(tree.value), new


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("\nrun: [", "\nclass: {length: 2 h, prepared: rope, bring: glasses}\nrun: ["),
        ("joints: 2}", "joints: 2, prepared: roughened}"),
        ("{kind: end cap,", "{kind: end cap, states: nickel free,"),
        ("\nrun: [", "\nrun: [{repeat: 2, of: small}, "),
    ],
)
def test_an_editor_takes_a_single_name_where_the_reader_does(
    collar: str, old: str, new: str, installed: Host
) -> None:
    text = collar.replace(old, new)
    assert text != collar
    read = parser.read_text(text, "plan.yaml")
    assert read.tree is not None
    assert jsonschema_rs.Draft202012Validator(schemas.editor_schema()).is_valid(read.tree.value)
    kinds = {name: kind.fragment for name, kind in installed.kinds.items()}
    spelled, faults = spelled_out(read, kinds, tuple(installed.stitches))
    assert not faults and not shape.check(spelled, shape.Known(kinds))


CHANGES: tuple[Any, ...] = ("8", 0, 1.5, 99999, [], {}, ["x"], {"part": "cap"}, "x.y.z", "9 mm")


def changed(value: Any) -> Iterator[Any]:
    """The value with one thing in it replaced, or taken out, or misspelt."""
    if isinstance(value, dict):
        for key, inner in value.items():
            rest = {other: kept for other, kept in value.items() if other != key}
            yield rest
            yield {**rest, f"{key}x": inner}
            yield from ({**value, key: new} for new in (*CHANGES, *changed(inner)))
    elif isinstance(value, list):
        for at, inner in enumerate(value):
            yield from ([*value[:at], new, *value[at + 1 :]] for new in (*CHANGES, *changed(inner)))


def test_both_schemas_accept_the_same_and_what_they_refuse_is_told(
    collar: str, installed: Host
) -> None:
    tree = parser.read_text(collar, "plan.yaml").tree
    assert tree is not None
    editor = jsonschema_rs.Draft202012Validator(schemas.editor_schema(or_one=False))
    known = shape.Known({name: kind.fragment for name, kind in installed.kinds.items()})

    def fits(schema: Any, value: Any) -> bool:
        return bool(known.validator(schema).is_valid(value))

    def chosen(holder: Any, key: str, choices: Any) -> bool:
        return holder[key] in choices and fits(choices[holder[key]], holder)

    refused = 0
    for value in changed(tree.value):
        by_fragments = (
            fits(schemas.plan(), value)
            and all(
                isinstance(part, str)  # in a phrase
                or (
                    "kind" in part
                    and isinstance(part["kind"], str)
                    and chosen(part, "kind", known.kinds)
                )
                for part in value["parts"].values()
            )
            and all(
                isinstance(step, str)  # in a phrase
                or (isinstance(step["do"], str) and chosen(step, "do", schemas.verbs()))
                for step in value.get("work", ())
            )
        )
        assert editor.is_valid(value) == by_fragments, value
        if not by_fragments:
            refused += 1
            read = parser.read_text(json.dumps(value, ensure_ascii=False), "plan.json")
            assert shape.check(read, known), value
    assert refused > 1000
