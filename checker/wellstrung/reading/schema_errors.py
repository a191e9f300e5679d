"""What the schemas find wrong, in the words of someone who writes plans."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from typing import Any

from wellstrung.common.places import Edit, Fault
from wellstrung.common.wording import article, either
from wellstrung.reading import tree as reading
from wellstrung.reading.branch import Branch, Path
from wellstrung.reading.faults import APART, LONGEST, choose, fault, in_quotes, shown
from wellstrung.reading.field_errors import missing_fields, one_of_fields, unknown_fields, written
from wellstrung.reading.numbers import whole
from wellstrung.reading.values import READERS, unit_fault

_TYPES = {
    "object": "a group of fields",
    "array": "a list",
    "integer": "a whole number",
    "number": "a number",
    "string": "words",
}
#: what the only size of a group of fields is meant for
_SIZED = ("hole", "outside")


def explained(branch: Branch) -> list[Fault]:
    """Each independent fault of one branch, in plain words."""
    from jsonschema import Draft202012Validator

    faults: dict[Fault, None] = {}  # a dict, because `required` errs once for each missing field
    for error in Draft202012Validator(dict(branch.schema)).iter_errors(branch.node.value):
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
        yield from unknown_fields(
            branch, _schema_at(branch, path), name, node, _above(branch, path)
        )
    elif rule == "required" and isinstance(node, reading.Mapping):
        yield from missing_fields(value, _schema_at(branch, path), name, node, head)
    elif rule in ("oneOf", "anyOf", "not"):
        if not isinstance(node, reading.Mapping):
            return  # its type is wrong, which is another error
        groups = [value] if rule == "not" else value
        yield from one_of_fields(groups, _schema_at(branch, path), name, node, head)
    elif rule in ("enum", "const"):
        words = value if rule == "enum" else [value]
        yield choose(f"{name} is {shown(node)}", node, [str(word) for word in words])
    elif rule == "type":
        yield from _wrong_type(branch, error, name, node)
    elif rule == "pattern":
        yield from _wrong_words(error, name, node)
    else:
        yield fault(f"{name} {_other(error, node)}", node.place)


def _bad_key(name: str, key: reading.Scalar) -> Fault:
    if not name.strip():
        return fault("a name is empty: write one", key.place)
    reason = "for it has a full stop" if "." in name else "which a plan keeps for itself"
    return fault(f"`{name}` cannot be a name, {reason}: choose another", key.place, name)


def _wrong_type(branch: Branch, error: Any, name: str, node: reading.Node) -> Iterator[Fault]:
    from jsonschema import Draft202012Validator

    edits: tuple[Edit, ...] = ()
    schema, allowed = error.schema, error.validator_value
    fields = schema.get("properties", {})
    kind = schema.get("$comment", "")
    number = isinstance(node, reading.Scalar) and isinstance(node.value, int | float)
    if kind in READERS and number:
        return  # the reader of units says it better
    types = [allowed] if isinstance(allowed, str) else allowed
    if "string" in types and number and isinstance(node, reading.Scalar):
        yield in_quotes(f"{name} is {shown(node)}, a number where words are meant", node)
        return
    if "integer" in types and isinstance(node, reading.Scalar) and (meant := whole(node.text)):
        advice, edits = f"write `{meant}`", (Edit(node.place, str(meant)),)
        why = "is in quotes, as text is" if node.quoted else f"is {shown(node)}"
        says = f"{name} {why}: {advice}"
        yield fault(says, node.place, node.text, "a whole number", advice, edits=edits)
        return
    need = either(_TYPES[one] for one in types)
    if kind in READERS:
        need = article(kind.replace("_", " "))
    if kind == "name" and isinstance(node, reading.Sequence):
        need = "one name, in a line for each"
    example = written(schema.get("examples", [""])[0] or _in_the_list(branch, error))
    if "array" in types and isinstance(node, reading.Scalar) and node.line != node.end_line:
        need = "a dash and a space before each line of the list"
        yield fault(f"{name} has no dashes: write {need}", node.place, needed=need)
        return
    if types == ["object"] and isinstance(node, reading.Sequence) and not fields:
        need = "names with what each is"
    sized = next((field for field in _SIZED if field in fields), "")
    if sized and isinstance(node, reading.Scalar) and unit_fault("length", node) is None:
        example = f"{{{sized}: {node.text}}}"
        edits = (Edit(node.place, example),)
    in_words = "string" in schema.get("items", {}).get("type", "string")
    if types == ["array"] and isinstance(node, reading.Scalar) and in_words:
        entries = APART.split(node.text)
        example = f"[{', '.join(entries)}]"
        if Draft202012Validator(schema).is_valid(entries):
            edits = (Edit(node.place, example),)
    such = f", such as `{example}`" if 0 < len(example) <= LONGEST else ""
    found = shown(node)
    names = [field for field, inner in fields.items() if inner.get("$comment") == "name"]
    if len(names) == 1 and isinstance(node, reading.Scalar):  # of a part, where a group names one
        such += f", or name a part as in `{{{names[0]}: {fields[names[0]]['examples'][0]}}}`"
    says = f"{name} is {found}: write {need}{such}"
    yield fault(says, node.place, found.strip("`"), need, edits=edits)


def _schema_at(branch: Branch, path: Path) -> Mapping[str, Any]:
    """The schema that holds at a path: what a group needs may stand in a rule inside it."""
    schema = branch.schema
    for step in path:
        if isinstance(step, int):
            schema = schema.get("items", {})
        else:
            patterns = schema.get("patternProperties", {}).items()
            alike = [inner for pattern, inner in patterns if re.search(pattern, step)]
            rest = next(iter(alike), schema.get("additionalProperties", {}))
            schema = schema.get("properties", {}).get(step, rest)
    return schema


def _above(branch: Branch, path: Path) -> list[tuple[str, Mapping[str, Any]]]:
    """The groups that a path goes through, the nearest first, with their fields."""
    outer = [path[:end] for end in reversed(range(len(path)))]
    fields = [(one, _schema_at(branch, one).get("properties", {})) for one in outer]
    return [(branch.called(one), known) for one, known in fields if known]


def _in_the_list(branch: Branch, error: Any) -> object:
    """The first entry in the example of the list that an entry without its own stands in."""
    examples = _schema_at(branch, tuple(error.absolute_path)[:-1]).get("examples", [""])
    return examples[0][0] if isinstance(examples[0], list) else ""


def _wrong_words(error: Any, name: str, node: reading.Node) -> Iterator[Fault]:
    new = ""
    kind = error.schema.get("$comment", "")
    if kind in READERS and unit_fault(kind, node) is not None:
        return  # the reader of units says it better
    if not error.instance:
        says = f"{name} is empty: write something, or delete it"
    elif kind == "name":
        new = str(error.instance).partition(".")[0]
        says = f"{name} is {shown(node)}: write `{new}`"
    elif "eyes" in error.schema.get("properties", ()):
        part, _, eyes = str(error.instance).partition(".")
        new = f"{{part: {part}, eyes: {eyes}}}"
        says = f"{name} is {shown(node)}: write a part and its eyes, as `{new}`"
    elif kind in READERS:
        says = f"{name} is {shown(node)}: write it as in `{error.schema['examples'][0]}`"
    else:
        says = f"{name} is {shown(node)}: write a name, or a clasp and its half as in `toggle.a`"
    yield fault(says, node.place, error.instance, edits=(Edit(node.place, new),) if new else ())


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
            if error.validator == "minItems" and limit > 1:
                return f"has too few entries: write {limit} or more"
            return "is empty: write something, or delete it"
        case "maxItems" | "maxProperties":
            return f"has too many entries: keep {limit} at most"
    return f"does not fit: {error.message}"
