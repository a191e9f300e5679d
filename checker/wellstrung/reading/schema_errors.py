"""What the schemas find wrong, in the words of someone who writes plans."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from typing import Any

from wellstrung.common.places import Fault, Place
from wellstrung.common.wording import article
from wellstrung.reading import tree as reading
from wellstrung.reading.branch import Branch
from wellstrung.reading.faults import (
    LONGEST,
    choose,
    fault,
    in_quotes,
    meant_by,
    shown,
    unknown_word,
)
from wellstrung.reading.values import READERS, unit_fault

_TYPES = {
    "object": "a group of fields",
    "array": "a list",
    "integer": "a whole number",
    "number": "a number",
    "string": "words",
}


def explained(branch: Branch) -> list[Fault]:
    """Each independent fault of one branch, in plain words."""
    from jsonschema import Draft202012Validator

    faults: dict[Fault, None] = {}  # a dict, because `required` errs once for each missing field
    for error in Draft202012Validator(branch.schema).iter_errors(branch.node.value):
        faults.update(dict.fromkeys(_in_plain_words(branch, error)))
    return list(faults)


def _in_plain_words(branch: Branch, error: Any) -> Iterator[Fault]:
    """What one error of the schema means to the author."""
    path = tuple(error.absolute_path)
    name = branch.called(path)
    head, node = branch.walk(path)
    rule, value = error.validator, error.validator_value
    if "propertyNames" in error.absolute_schema_path and isinstance(node, reading.Mapping):
        yield _bad_key(error.instance, node.entries[error.instance].key)
    elif rule == "additionalProperties" and isinstance(node, reading.Mapping):
        yield from _unknown_fields(error.schema, name, node)
    elif rule == "required" and isinstance(node, reading.Mapping):
        # what a part lacks unless it is given as sold stands in its `then`, beside its fields
        schema = error.schema if path else branch.schema
        yield from _missing_fields(value, schema, name, node, head)
    elif rule in ("oneOf", "anyOf", "not"):
        if not isinstance(node, reading.Mapping):
            return  # its type is wrong, which is another error
        groups = [value] if rule == "not" else value
        choices = [word for group in groups for word in group.get("required", ())]
        # a part's groups of choices stand in its `allOf`, beside its fields
        schema = error.schema if path else branch.schema
        yield from _one_of(choices, schema, name, node, head)
    elif rule in ("enum", "const"):
        words = value if rule == "enum" else [value]
        yield choose(f"{name} is {shown(node)}", node, [str(word) for word in words])
    elif rule == "type":
        yield from _wrong_type(error, name, node)
    elif rule == "pattern":
        yield from _wrong_words(error, name, node)
    else:
        yield fault(f"{name} {_other(error, node)}", node.place)


def _unknown_fields(schema: Mapping[str, Any], name: str, node: reading.Mapping) -> Iterator[Fault]:
    fields = schema.get("properties", {})
    for word, near in _meant(fields, node).items():
        place, says = node.entries[word].key.place, f"`{word}` is not a field of {name}"
        holders = [field for field, inner in fields.items() if word in inner.get("properties", ())]
        if near is None and len(holders) == 1:
            moved = f"`{holders[0]}: {{{word}: {shown(node.entries[word].node).strip('`')}}}`"
            yield fault(f"{says}: it belongs in `{holders[0]}`, as in {moved}", place, word, moved)
        else:
            yield unknown_word(says, word, place, near, fields)


def _missing_fields(
    words: Collection[str], schema: Mapping[str, Any], name: str, node: reading.Mapping, head: Place
) -> Iterator[Fault]:
    fields = schema.get("properties", {})
    misspelt = _meant(fields, node).values()  # and so not missing: one cause, one remark
    for word in words:
        if word not in node.entries and word not in misspelt:
            says = f"{name} lacks `{word}`: write {_example(word, fields.get(word, {}))}"
            yield fault(says, head, needed=f"`{word}`")


def _one_of(
    choices: list[str], schema: Mapping[str, Any], name: str, node: reading.Mapping, head: Place
) -> Iterator[Fault]:
    found = [word for word in choices if word in node.entries]
    *most, last = [f"`{word}`" for word in choices]
    either = f"{', '.join(most)} or {last}"
    if found:
        places = [node.entries[word].key.place for word in found]
        both = " and ".join(f"`{word}`" for word in found)
        says = f"{name} has {both}: keep one"
        yield fault(says, places[-1], both, f"one of {either}", also=tuple(places[:-1]))
    elif not set(choices) & set(_meant(schema.get("properties", {}), node).values()):
        yield fault(f"{name} lacks one of {either}: write one", head, needed=either)


def _meant(fields: Collection[str], node: reading.Mapping) -> dict[str, str | None]:
    """The field that each unknown word of a group most likely means, of those not there yet."""
    free = [word for word in fields if word not in node.entries]
    meant: dict[str, str | None] = {}
    for word in node.entries:
        if word not in fields:
            meant[word] = near = meant_by(word, free)
            free = [known for known in free if known != near]
    return meant


def _bad_key(name: str, key: reading.Scalar) -> Fault:
    if not name.strip():
        return fault("a name is empty: write one", key.place)
    reason = "a name has no full stop in it" if "." in name else "it is reserved"
    return fault(f"`{name}` cannot be a name: {reason}, choose another", key.place, name)


def _wrong_type(error: Any, name: str, node: reading.Node) -> Iterator[Fault]:
    schema, allowed = error.schema, error.validator_value
    kind = schema.get("$comment", "")
    number = isinstance(node, reading.Scalar) and isinstance(node.value, int | float)
    if kind in READERS and number:
        return  # the reader of units says it better
    types = [allowed] if isinstance(allowed, str) else allowed
    if "string" in types and number and isinstance(node, reading.Scalar):
        yield in_quotes(f"{name} is {shown(node)}", node)
        return
    need = " or ".join(_TYPES[one] for one in types)
    if kind in READERS:
        need = article(kind.replace("_", " "))
    example = _written(schema.get("examples", [""])[0])
    such = f", such as `{example}`" if 0 < len(example) <= LONGEST else ""
    found = shown(node)
    fields = schema.get("properties", {})
    names = [field for field, inner in fields.items() if inner.get("$comment") == "name"]
    if len(names) == 1 and isinstance(node, reading.Scalar):  # of a part, where a group names one
        such += f", or name a part as in `{{{names[0]}: {fields[names[0]]['examples'][0]}}}`"
    yield fault(f"{name} is {found}: write {need}{such}", node.place, found.strip("`"), need)


def _wrong_words(error: Any, name: str, node: reading.Node) -> Iterator[Fault]:
    kind = error.schema.get("$comment", "")
    if kind in READERS and unit_fault(kind, node) is not None:
        return  # the reader of units says it better
    if not error.instance:
        says = f"{name} is empty: write something, or delete it"
    elif kind == "name":
        says = f"{name} is {shown(node)}: a name has no full stop in it, delete it"
    elif "eyes" in error.schema.get("properties", ()):
        part, _, eyes = str(error.instance).partition(".")
        both = f"`{{part: {part}, eyes: {eyes}}}`"
        says = f"{name} is {shown(node)}: write a part and its eyes, as {both}"
    elif kind in READERS:
        says = f"{name} is {shown(node)}: write it as in `{error.schema['examples'][0]}`"
    else:
        says = f"{name} is {shown(node)}: write a name, or a clasp and its half as in `toggle.a`"
    yield fault(says, node.place, error.instance)


def _other(error: Any, node: reading.Node) -> str:
    limit = error.validator_value
    match error.validator:
        case "minimum":
            return f"is {shown(node)}: write {limit} or more"
        case "exclusiveMinimum":
            return f"is {shown(node)}: write more than {limit}"
        case "maximum":
            return f"is {shown(node)}: write {limit} or less"
        case "minItems" | "minProperties" | "minLength":
            return "is empty: write something, or delete it"
        case "maxItems" | "maxProperties":
            return f"has too many entries: keep {limit} at most"
    return f"does not fit: {error.message}"


def _example(word: str, schema: Mapping[str, Any]) -> str:
    if schema.get("$comment") == "name":
        return f"`{word}:` and the name of a part"
    example = _written(schema.get("const", schema.get("examples", [""])[0]))
    if 0 < len(example) <= LONGEST:
        return f"`{word}: {example}`"
    return f"`{word}:` with what belongs under it"


def _written(example: object) -> str:
    """An example as an author would write it on one line."""
    if isinstance(example, dict):
        return f"{{{', '.join(f'{word}: {_written(value)}' for word, value in example.items())}}}"
    if isinstance(example, list):
        return f"[{', '.join(map(_written, example))}]"
    return str(example)
