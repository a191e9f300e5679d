"""The schemas of plans: data only, and the few functions that put them together.

Fragments refer to the kinds of values in `common.json`; `inlined` writes those out, so that every
schema handed out stands alone, and leaves the kind's name in `$comment` (`length`, `wire`, ...).
"""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator, Mapping
from functools import cache, cached_property, partial
from pathlib import Path
from typing import Any

_HERE = Path(__file__).parent
_TO_COMMON = "common.json#/$defs/"
Schema = dict[str, Any]


class OnNeed(Mapping[str, Any]):
    """A schema that is read and written out when it is first looked into: a plan needs few."""

    def __init__(self, read: Callable[[], Schema]) -> None:
        self._read = read

    @cached_property
    def _whole(self) -> Schema:
        return _whole(self._read())

    def __getitem__(self, word: str) -> Any:
        return self._whole[word]

    def __iter__(self) -> Iterator[str]:
        return iter(self._whole)

    def __len__(self) -> int:
        return len(self._whole)


@cache
def load(name: str) -> Schema:
    """A schema file by name, as it stands.

    >>> load("plan")["type"]
    'object'
    """
    schema: Schema = json.loads((_HERE / f"{name}.json").read_text(encoding="utf-8"))
    return schema


@cache
def plan() -> Schema:
    """The schema of everything in a plan but the insides of parts and steps."""
    return _whole(load("plan"))


@cache
def bench() -> Schema:
    """The schema of a bench file; the names of settings are checked against the defaults."""
    return _whole(load("bench"))


@cache
def drawer() -> Schema:
    """The schema of a drawer but the insides of its beads and parts, which are a plan's."""
    own = _whole(load("drawer"))
    shared = {
        "supplies": plan()["properties"]["supplies"],
        "prices": bench()["properties"]["prices"],
    }
    return {**own, "properties": {**own["properties"], **shared}}


@cache
def fragment(kind: str) -> Mapping[str, Any]:
    """The schema of a built-in kind of part.

    >>> sorted(fragment("needle")["properties"])
    ['kind', 'note', 'size', 'source']
    """
    return OnNeed(lambda: load(f"kinds/{kind.replace(' ', '_')}"))


@cache
def verbs() -> Mapping[str, Mapping[str, Any]]:
    """The schema of a work step, by verb."""
    return {verb: OnNeed(partial(dict, schema)) for verb, schema in load("work")["verbs"].items()}


def kind_names() -> tuple[str, ...]:
    """The built-in kinds of parts."""
    return tuple(sorted(file.stem.replace("_", " ") for file in (_HERE / "kinds").glob("*.json")))


def _whole(schema: Schema) -> Schema:
    whole: Schema = inlined(schema)
    return whole


def inlined(schema: Any) -> Any:
    """The schema with every reference to `common.json` written out."""
    if isinstance(schema, list):
        return [inlined(entry) for entry in schema]
    if not isinstance(schema, dict):
        return schema
    written = {key: inlined(value) for key, value in schema.items() if key not in ("$ref", "$id")}
    reference = schema.get("$ref", "")
    if not reference:
        return written
    name = reference.removeprefix(_TO_COMMON)
    return {**inlined(load("common")["$defs"][name]), **written, "$comment": name}


def editor_schema(
    kinds: Mapping[str, Mapping[str, Any]] | None = None, *, or_one: bool = True
) -> Schema:
    """One schema for editors: the plan's, with each part's branch chosen by its `kind`.

    A single name may stand for a list of one, as in a plan, but not without `or_one`.

    >>> editor_schema()["properties"]["work"]["items"]["then"]["required"]
    ['do']
    """
    fragments = kinds or {kind: fragment(kind) for kind in kind_names()}
    schema = dict(plan())
    properties = dict(schema["properties"])
    properties["parts"] = {
        **properties["parts"],
        "additionalProperties": _or_phrase(_or_from_drawer(_branches("kind", fragments))),
    }
    properties["beads"] = {
        **properties["beads"],
        "additionalProperties": _or_from_drawer(
            properties["beads"]["additionalProperties"], both=True
        ),
    }
    properties["work"] = {
        **properties["work"],
        "items": _or_phrase(_branches("do", verbs()), "weave rope"),
    }
    whole: Schema = {**schema, "properties": properties}
    return dict(_or_one(whole)) if or_one else whole


def published_bench(settings: Mapping[str, Mapping[str, str]]) -> Schema:
    """The schema of a bench file that knows every setting: by group and name, with what it says.

    >>> limits = published_bench({"limits": {"pin grip": "10 mm"}})["properties"]["limits"]
    >>> limits["properties"]["pin grip"]["description"], limits["additionalProperties"]
    ('10 mm', False)
    """
    properties = dict(bench()["properties"])
    for group, names in settings.items():
        one = properties[group]["additionalProperties"]
        known = {name: {**one, "description": says} for name, says in names.items()}
        properties[group] = {
            **properties[group],
            "properties": known,
            "additionalProperties": False,
        }
    return {**bench(), "properties": properties}


def published_drawer(kinds: Mapping[str, Mapping[str, Any]] | None = None) -> Schema:
    """One schema of a drawer with the insides of its parts, each chosen by its `kind`.

    >>> published_drawer()["properties"]["parts"]["additionalProperties"]["then"]["required"]
    ['kind']
    """
    fragments = kinds or {kind: fragment(kind) for kind in kind_names()}
    properties = dict(drawer()["properties"])
    properties["parts"] = {
        **properties["parts"],
        "additionalProperties": _or_phrase(_branches("kind", fragments)),
    }
    properties["beads"] = plan()["properties"]["beads"]
    whole: Schema = _or_one({**drawer(), "properties": properties})
    return whole


def _or_phrase(part: Schema, example: str = "lobster 12 mm") -> Schema:
    """A part or a step as a group of fields, or as one says it."""
    said = {"type": ["object", "string"], "examples": [example]}
    return {**said, "if": {"type": "object"}, "then": part}


def one_of_a_list(schema: Mapping[str, Any]) -> tuple[str, ...]:
    """The types of a single value that is read as a list of one; none where a list is not all.

    >>> one_of_a_list({"type": "array", "items": {"type": ["string", "object"]}})
    ('string',)
    >>> one_of_a_list({"type": "array", "items": {"enum": ["roughened"]}})
    ('string',)
    """
    items = schema.get("items", {})
    if schema.get("type") != "array" or schema.get("minItems", 0) > 1:
        return ()
    types = items.get("type", "string" if "enum" in items else ())
    return tuple(
        one
        for one in ("string", "integer")
        if one in ((types,) if isinstance(types, str) else types)
    )


def _or_one(schema: Any) -> Any:
    """The schema with a single value beside each list that may be one."""
    if isinstance(schema, list):
        return [_or_one(entry) for entry in schema]
    if not isinstance(schema, Mapping):
        return schema
    whole = {word: rule if word == "examples" else _or_one(rule) for word, rule in schema.items()}
    one = one_of_a_list(schema)
    return {**whole, "type": ["array", *one]} if one else whole


def _or_from_drawer(part: Schema, *, both: bool = False) -> Schema:
    """A part of its own kind or a bead of its own type, or one taken from the drawer, or `both`."""
    taken = {
        **load("common")["$defs"]["name"],
        "description": "What in the drawer it is taken from.",
        "examples": ["small ring"],
    }
    rest = {word: rule for word, rule in part.items() if word != "required"}
    return {
        **rest,
        "anyOf" if both else "oneOf": [{"required": part["required"]}, {"required": ["from"]}],
        "properties": {**part["properties"], "from": taken},
    }


def _branches(key: str, schemas: Mapping[str, Mapping[str, Any]]) -> Schema:
    chosen = [
        {
            "if": {"properties": {key: {"const": name}}, "required": [key]},
            "then": {word: rule for word, rule in schema.items() if word != "$schema"},
        }
        for name, schema in schemas.items()
    ]
    return {
        "type": "object",
        "required": [key],
        "properties": {key: {"enum": list(schemas)}},
        "allOf": chosen,
    }
