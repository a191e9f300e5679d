"""Whether a tree has the shape of a plan; where it has not, what is wrong in plain words.

A compiled validator decides, branch by branch: the plan, then every part by its `kind`, every step
by its verb. Only where it says no is `jsonschema` imported, to say what and where. Values with
units are then read one by one, so that a slip in a unit is told with the rest.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Iterator, Mapping
from typing import Any

import jsonschema_rs
from msgspec import Struct, field

import wellstrung_schemas as schemas
from wellstrung.common import money, units
from wellstrung.common.places import Edit, Fault, Place
from wellstrung.common.wording import article, listed, nearest
from wellstrung.reading import tree as reading

#: Who reads a value of each kind that the schemas name in `$comment`.
READERS: Mapping[str, Callable[[str | int | float], object]] = {
    "length": units.length,
    "length_or_rest": lambda value: value if value == units.REST else units.length(value),
    "window": units.target,
    "mass": units.mass,
    "rating": units.force,
    "duration": units.duration,
    "volume": units.volume,
    "temperature": units.temperature,
    "wire": units.wire,
    "bead_size": units.bead_size,
    "needle": units.needle,
    "amount": money.budget,
}

_SWITCHES = frozenset({"yes", "no", "on", "off", "true", "false", "y", "n"})
_TYPES = {
    "object": "a group of fields",
    "array": "a list",
    "integer": "a whole number",
    "number": "a number",
    "string": "words",
}
_LONGEST = 60  # of what is quoted from a plan or shown as an example; the rest is cut off
_Path = tuple[str | int, ...]


class Known(Struct, frozen=True):
    """The kinds of parts there are, by schema fragment, and the validators built so far."""

    kinds: Mapping[str, Mapping[str, Any]]
    _built: dict[int, Any] = field(default_factory=dict)

    def validator(self, schema: Mapping[str, Any]) -> Any:
        """The compiled validator of a schema, built when first asked for."""
        if id(schema) not in self._built:
            self._built[id(schema)] = jsonschema_rs.Draft202012Validator(dict(schema))
        return self._built[id(schema)]


class _Branch(Struct, frozen=True):
    """A stretch of the tree with the schema that holds for it and what the author calls it."""

    node: reading.Mapping
    schema: Mapping[str, Any]
    name: str = ""
    kind: str = ""
    key: reading.Scalar | None = None

    def called(self, path: _Path) -> str:
        """What the author calls a place in it: `hole` of `eye` of `cap`."""
        if not path:
            name = self.name or "the plan"
            return f"{name} ({article(self.kind)})" if self.kind else name
        steps = [f"entry {step + 1}" if isinstance(step, int) else f"`{step}`" for step in path]
        return " of ".join([*reversed(steps), *([self.name] if self.name else [])])

    def walk(self, path: _Path) -> tuple[Place, reading.Node]:
        """What stands at a path, and the place where something missing in it would go."""
        key = self.key
        node: reading.Node = self.node
        for step in path:
            if isinstance(node, reading.Mapping) and isinstance(step, str):
                key, node = node.entries[step].key, node.entries[step].node
            elif isinstance(node, reading.Sequence) and isinstance(step, int):
                key, node = None, node.items[step]
        if key is None and isinstance(node, reading.Mapping) and node.entries:
            key = next(iter(node.entries.values())).key
        return (key or node).place, node


def check(read: reading.Read, known: Known) -> tuple[Fault, ...]:
    """Every fault of shape, in the author's order; an empty tuple for a well-shaped plan."""
    assert read.tree is not None
    faults: list[Fault] = []
    for branch in _branches(read.tree, known, faults):
        faults += _told(branch, known)
    return tuple(sorted(faults, key=lambda fault: fault.place))


def against(tree: reading.Mapping, schema: Mapping[str, Any], name: str) -> tuple[Fault, ...]:
    """Every fault of a tree that has one schema; `name` is what the author calls the whole."""
    return tuple(_told(_Branch(tree, schema, name), Known({})))


def unknown(node: reading.Scalar, head: str, choices: Collection[str]) -> Fault:
    """The fault of a word that is none of the choices, with the nearest of them."""
    return _mend(head, node.text, node.place, _nearest(node.text, choices), choices)


def _told(branch: _Branch, known: Known) -> list[Fault]:
    """What is wrong in one branch."""
    told = list(_values(branch))
    if not known.validator(branch.schema).is_valid(branch.node.value):
        # should the two validators ever differ, the one that decides is believed
        told = [*_explained(branch), *told] or [_unexplained(branch)]
    return told


def _branches(tree: reading.Mapping, known: Known, faults: list[Fault]) -> Iterator[_Branch]:
    yield _Branch(tree, schemas.plan())
    parts = tree.entries.get("parts")
    if parts and isinstance(parts.node, reading.Mapping):
        for name, entry in parts.node.entries.items():
            if not isinstance(entry.node, reading.Mapping):
                continue  # the plan's own schema says so
            kind = _chosen(entry.node, "kind", "kind of part", known.kinds, faults)
            if kind:
                yield _Branch(entry.node, known.kinds[kind], f"`{name}`", kind, entry.key)
            elif "kind" not in entry.node.entries:
                says = f"`{name}` does not say its `kind`: write one of {listed(known.kinds)}"
                faults.append(_fault(says, entry.key.place, needed=listed(known.kinds)))
    work = tree.entries.get("work")
    if work and isinstance(work.node, reading.Sequence):
        for number, item in enumerate(work.node.items, 1):
            if isinstance(item, reading.Mapping):
                verb = _chosen(item, "do", "step", schemas.verbs(), faults)
                if verb:
                    yield _Branch(item, schemas.verbs()[verb], f"step {number}")


def _chosen(
    node: reading.Mapping,
    key: str,
    what: str,
    choices: Mapping[str, object],
    faults: list[Fault],
) -> str | None:
    """The word by which a part or a step chooses its schema; None where there is no such word."""
    entry = node.entries.get(key)
    if entry is None:
        return None
    chosen = entry.node.value
    if isinstance(chosen, str) and chosen in choices:
        return chosen
    shown = _shown(entry.node)
    word = isinstance(entry.node, reading.Scalar)
    head = f"there is no {what} called {shown}" if word else f"`{key}` is {shown}"
    faults.append(_choose(head, entry.node, choices))
    return None


def _explained(branch: _Branch) -> list[Fault]:
    """Each independent fault of one branch, said in plain words."""
    from jsonschema import Draft202012Validator

    faults: dict[Fault, None] = {}  # a dict, because `required` errs once for each missing field
    for error in Draft202012Validator(branch.schema).iter_errors(branch.node.value):
        faults.update(dict.fromkeys(_said(branch, error)))
    return list(faults)


def _unexplained(branch: _Branch) -> Fault:
    place, _ = branch.walk(())
    return _fault(f"{branch.called(())} does not fit its schema: compare its fields", place)


def _said(branch: _Branch, error: Any) -> Iterator[Fault]:
    """What one error of the schema means to the author."""
    path = tuple(error.absolute_path)
    name = branch.called(path)
    head, node = branch.walk(path)
    rule, wanted = error.validator, error.validator_value
    if "propertyNames" in error.absolute_schema_path and isinstance(node, reading.Mapping):
        yield _bad_key(error.instance, node.entries[error.instance].key)
    elif rule == "additionalProperties" and isinstance(node, reading.Mapping):
        yield from _unknown_fields(error.schema, name, node)
    elif rule == "required" and isinstance(node, reading.Mapping):
        yield from _missing_fields(error.schema, name, node, head)
    elif rule in ("oneOf", "not"):
        if not isinstance(node, reading.Mapping):
            return  # its type is wrong, which is told
        groups = [wanted] if rule == "not" else wanted
        choices = [word for group in groups for word in group.get("required", ())]
        # a part's groups of choices stand in its `allOf`, beside its fields
        schema = error.schema if path else branch.schema
        yield from _one_of(choices, schema, name, node, head)
    elif rule in ("enum", "const"):
        words = wanted if rule == "enum" else [wanted]
        yield _choose(f"{name} is {_shown(node)}", node, [str(word) for word in words])
    elif rule == "type":
        yield from _wrong_type(error, name, node)
    elif rule == "pattern":
        yield from _wrong_words(error, name, node)
    else:
        yield _fault(f"{name} {_other(error, node)}", node.place)


def _unknown_fields(schema: Mapping[str, Any], name: str, node: reading.Mapping) -> Iterator[Fault]:
    fields = schema.get("properties", {})
    for word, near in _meant(fields, node).items():
        place = node.entries[word].key.place
        yield _mend(f"`{word}` is not a field of {name}", word, place, near, fields)


def _missing_fields(
    schema: Mapping[str, Any], name: str, node: reading.Mapping, head: Place
) -> Iterator[Fault]:
    fields = schema.get("properties", {})
    misspelt = _meant(fields, node).values()  # and so not missing: one cause, one remark
    for word in schema["required"]:
        if word not in node.entries and word not in misspelt:
            says = f"{name} lacks `{word}`: write {_example(word, fields.get(word, {}))}"
            yield _fault(says, head, needed=f"`{word}`")


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
        yield _fault(says, places[-1], both, f"one of {either}", also=tuple(places[:-1]))
    elif not set(choices) & set(_meant(schema.get("properties", {}), node).values()):
        yield _fault(f"{name} lacks one of {either}: write one", head, needed=either)


def _meant(fields: Collection[str], node: reading.Mapping) -> dict[str, str | None]:
    """The field that each unknown word of a group most likely means, of those not there yet."""
    free = [word for word in fields if word not in node.entries]
    meant: dict[str, str | None] = {}
    for word in node.entries:
        if word not in fields:
            meant[word] = near = _nearest(word, free)
            free = [known for known in free if known != near]
    return meant


def _bad_key(name: str, key: reading.Scalar) -> Fault:
    if not name.strip():
        return _fault("a name is empty: write one", key.place)
    reason = "a name has no point in it" if "." in name else "it is kept for the program"
    return _fault(f"`{name}` cannot be a name: {reason}, choose another", key.place, name)


def _wrong_type(error: Any, name: str, node: reading.Node) -> Iterator[Fault]:
    schema, wanted = error.schema, error.validator_value
    kind = schema.get("$comment", "")
    number = isinstance(node, reading.Scalar) and isinstance(node.value, int | float)
    if kind in READERS and number:
        return  # the reader of units says it better
    types = [wanted] if isinstance(wanted, str) else wanted
    if "string" in types and number and isinstance(node, reading.Scalar):
        quoted = f'"{node.text}"'
        says = f"{name} is {_shown(node)}: write {quoted} in quotes"
        yield _fault(says, node.place, node.text, quoted, edits=(Edit(node.place, quoted),))
        return
    need = " or ".join(_TYPES[one] for one in types)
    if kind in READERS:
        need = article(kind.replace("_", " "))
    example = _written(schema.get("examples", [""])[0])
    such = f", such as `{example}`" if 0 < len(example) <= _LONGEST else ""
    found = _shown(node)
    yield _fault(f"{name} is {found}: write {need}{such}", node.place, found.strip("`"), need)


def _wrong_words(error: Any, name: str, node: reading.Node) -> Iterator[Fault]:
    kind = error.schema.get("$comment", "")
    if kind in READERS and _unit_fault(kind, node) is not None:
        return  # the reader of units says it better
    if not error.instance:
        says = f"{name} is empty: write something, or take it out"
    elif kind == "name":
        says = f"{name} is {_shown(node)}: a name has no point in it, take it out"
    elif kind in READERS:
        says = f"{name} is {_shown(node)}: write it as in `{error.schema['examples'][0]}`"
    else:
        says = f"{name} is {_shown(node)}: write a name, or a clasp and its half as in `toggle.a`"
    yield _fault(says, node.place, error.instance)


def _other(error: Any, node: reading.Node) -> str:
    limit = error.validator_value
    match error.validator:
        case "minimum":
            return f"is {_shown(node)}: write {limit} or more"
        case "exclusiveMinimum":
            return f"is {_shown(node)}: write more than {limit}"
        case "maximum":
            return f"is {_shown(node)}: write {limit} or less"
        case "minItems" | "minProperties" | "minLength":
            return "is empty: write something, or take it out"
        case "maxItems" | "maxProperties":
            return f"has too many entries: keep {limit} at most"
    return f"does not fit: {error.message}"


def _values(branch: _Branch) -> Iterator[Fault]:
    """Read every value with a unit, and ask for quotes where a word may be taken for a switch."""
    waiting: list[tuple[reading.Node, Mapping[str, Any], _Path]] = [
        (branch.node, branch.schema, ())
    ]
    while waiting:
        node, schema, path = waiting.pop()
        if isinstance(node, reading.Mapping):
            fields, rest = schema.get("properties", {}), schema.get("additionalProperties")
            for word, entry in node.entries.items():
                inner = fields.get(word, rest)
                if isinstance(inner, dict):
                    waiting.append((entry.node, inner, (*path, word)))
        elif isinstance(node, reading.Sequence):
            inner = schema.get("items")
            if isinstance(inner, dict):
                waiting += [(item, inner, (*path, at)) for at, item in enumerate(node.items)]
        elif isinstance(node, reading.Scalar):
            kind = schema.get("$comment", "")
            wrong = _unit_fault(kind, node) if kind in READERS else None
            if wrong is not None:
                near = wrong.suggestion
                yield _fault(
                    f"{branch.called(path)}: {wrong.says}",
                    node.place,
                    str(node.value),
                    remedy=f"write `{near}`" if near else "",
                    edits=(Edit(node.place, near),) if near else (),
                )
            elif kind in ("text", "name") and not node.quoted and node.text.lower() in _SWITCHES:
                quoted = f'"{node.text}"'
                says = f"`{node.text}` is a switch to some readers: write {quoted} in quotes"
                yield _fault(
                    f"{branch.called(path)}: {says}",
                    node.place,
                    node.text,
                    quoted,
                    edits=(Edit(node.place, quoted),),
                )


def _unit_fault(kind: str, node: reading.Node) -> units.UnitFault | None:
    try:
        READERS[kind](node.value)
    except units.UnitFault as wrong:
        return wrong
    return None


def _choose(head: str, node: reading.Node, choices: Collection[str]) -> Fault:
    """The fault of a word that is none of the choices."""
    if not isinstance(node, reading.Scalar):
        return _fault(f"{head}: it takes {listed(choices)}", node.place, needed=listed(choices))
    if node.quoted and node.text in choices:  # "1" for 1
        edits = (Edit(node.place, node.text),)
        says = f"{head}: write it without quotes"
        return _fault(says, node.place, f'"{node.text}"', node.text, edits=edits)
    return _mend(head, node.text, node.place, _nearest(node.text, choices), choices)


def _mend(head: str, word: str, place: Place, near: str | None, choices: Iterable[str]) -> Fault:
    """The fault of an unknown word: the nearest known one is offered, or all of them."""
    if near is None:
        return _fault(f"{head}: it takes {listed(choices)}", place, word, listed(choices))
    advice = f"write `{near}`"
    edits = (Edit(place, near),)
    return _fault(f"{head}: {advice}", place, word, f"`{near}`", remedy=advice, edits=edits)


def _nearest(word: str, known: Collection[str]) -> str | None:
    return nearest(word, known) or nearest(word.lower(), known)


def _shown(node: reading.Node) -> str:
    """A value as a message quotes it."""
    if not isinstance(node, reading.Scalar):
        return "a list" if isinstance(node, reading.Sequence) else "a group"
    text = " ".join(node.text.split())
    return f"`{text}`" if len(text) <= _LONGEST else f"`{text[:_LONGEST]}…`"


def _example(word: str, schema: Mapping[str, Any]) -> str:
    example = _written(schema.get("const", schema.get("examples", [""])[0]))
    if 0 < len(example) <= _LONGEST:
        return f"`{word}: {example}`"
    return f"`{word}:` with what belongs under it"


def _written(example: object) -> str:
    """An example as an author would write it on one line."""
    if isinstance(example, dict):
        return f"{{{', '.join(f'{word}: {_written(value)}' for word, value in example.items())}}}"
    if isinstance(example, list):
        return f"[{', '.join(map(_written, example))}]"
    return str(example)


def _fault(
    says: str,
    place: Place,
    found: str = "",
    needed: str = "",
    remedy: str = "",
    also: tuple[Place, ...] = (),
    edits: tuple[Edit, ...] = (),
) -> Fault:
    """A fault of shape; what it says is one line, whatever it quotes."""
    if place.line != place.end_line:
        edits = ()  # text over several lines ends with a line break that an edit would swallow
    return Fault("plan-shape", says.replace("\n", " "), place, found, needed, remedy, also, edits)
