"""Fields that a group does not have, and those that it lacks: one slip, one fault.

A word that is no field and a field that is missing are often the same slip: the word is then
answered with the field whose values take what was written.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from typing import Any

import wellstrung_schemas as schemas
from wellstrung.common.places import Fault, Place
from wellstrung.common.wording import either, one_of, together
from wellstrung.reading import tree as reading
from wellstrung.reading.branch import Branch
from wellstrung.reading.faults import EVERY_WORD, LONGEST, fault, meant_by, shown, unknown_word
from wellstrung.reading.values import READERS, unit_fault

Schema = Mapping[str, Any]
#: the groups that a group stands in, by what messages call them, and their fields
Above = Sequence[tuple[str, Collection[str]]]
#: the names of groups, each within the one before
Path = tuple[str, ...]
#: a group that has many fields of its part once more
_ALIKE = ("measured",)
#: explain this many unknown words of a group at most: more are no slips
_MOST = 50


def unknown_fields(
    branch: Branch, schema: Schema, name: str, node: reading.Mapping, above: Above = ()
) -> list[Fault]:
    """The faults of the words in a group that are none of its fields.

    `above` are the groups that it stands in, with their fields, the nearest first.
    """
    fields = schema.get("properties", {})
    if moved := _not_of_this_kind(fields, name, node):
        return [moved]
    found = []
    groups = [either(f"`{one}`" for one in group) for group in _lacking(schema, node)]
    lacks = f", which lacks {together(groups)}" if groups else ""
    free = [field for field in fields if field not in node.entries]
    meant, told = _meant(schema, node), set[Path]()
    for word, near in meant.items():
        entry = node.entries[word]
        place, says = entry.key.place, f"`{word}` is not a field of {name}"
        holders = [] if near else _holders(fields, word, node)
        further = next((called for called, known in above if word in known), "")
        if _is_a_part(entry.node):
            says = f"`{word}` is a part of its own, and stands among the fields of {name}"
            found.append(fault(f"{says}: give it the indent of the other parts", place))
        elif len(holders) == 1 and not further:
            if holders[0] not in told:
                found.append(_to_move(holders[0], meant, name, fields, node))
            told.add(holders[0])
        elif named := _named_in_plan(branch, word, fields):
            advice = f"write `{named}: {word}`"
            found.append(fault(f"{says}: {advice}", place, word, remedy=advice))
        elif len(near) > 1:
            which = either(f"`{one}`" for one in near)
            found.append(fault(f"{says}: write {which}", place, word, which))
        elif near:
            found.append(unknown_word(says, word, place, near[0], fields))
        elif further:
            advice = f"move it out of {name}, to the fields of {further}"
            found.append(fault(f"{says}: {advice}", place, word, remedy=advice))
        elif holders:
            such = [_in_group(path, {word: entry}) for path in holders]
            says = f"{says}: it belongs in one of its groups"
            found.append(fault(says, place, word, one_of(such, word, EVERY_WORD)))
        else:  # one cause, one fault: what is missing may be what the word means
            found.append(unknown_word(f"{says}{lacks}", word, place, None, free))
    return found


def _to_move(
    holder: Path,
    meant: Mapping[str, tuple[str, ...]],
    name: str,
    fields: Schema,
    node: reading.Mapping,
) -> Fault:
    """The one fault of the words that belong in the same group, or in a group within one."""
    words = {
        word: node.entries[word]
        for word, near in meant.items()
        if not near and _holders(fields, word, node) == [holder]
    }
    places = [entry.key.place for entry in words.values()]
    each, many = together(f"`{one}`" for one in words), len(words) > 1
    says = f"{each} {'are not fields' if many else 'is not a field'} of {name}:"
    says += f" {'they belong' if many else 'it belongs'} in `{holder[0]}`"
    moved_to = f"`{_in_group(holder, words)}`"
    there = holder[0] in node.entries and len(holder) == 1
    advice = f"move {'them' if many else 'it'} there, into `{holder[0]}`"
    advice = advice if there else f"write {moved_to}"
    return fault(says, places[0], next(iter(words)), moved_to, advice, also=tuple(places[1:]))


def missing_fields(
    words: Iterable[str], schema: Schema, name: str, node: reading.Mapping, head: Place
) -> Iterator[Fault]:
    """The faults of the fields that a group must have and has not."""
    fields = schema.get("properties", {})
    explained = _explained(schema, node)
    lacks = [word for word in words if word not in node.entries and word not in explained]
    unsized = _without_a_size(schema, name, node, head)
    if unsized is not None and {*lacks} & {*schema["then"].get("required", ())}:
        yield unsized
    elif "do" in lacks and (step := _step_in(node)):
        yield fault(f"{name} does not say what is done after `do`: write {step}", head, needed=step)
    elif lacks:
        each = together(f"`{word}`" for word in lacks)
        examples = together(example(word, fields.get(word, {})) for word in lacks)
        yield fault(f"{name} lacks {each}: write {examples}", head, needed=each)


def one_of_fields(
    groups: list[Schema], schema: Schema, name: str, node: reading.Mapping, head: Place
) -> Iterator[Fault]:
    """The fault of a group that has none of several fields, or more than one of them."""
    # a group that another field excuses names no choice of its own
    groups = [group for group in groups if "not" not in group]
    choices = [word for group in groups for word in group.get("required", ())]
    found = [word for word in choices if word in node.entries]
    words = either(f"`{word}`" for word in choices)
    for group in groups:
        if (needs := group.get("required", ())) and {*found} < {*needs} and found:
            lacks = together(f"`{word}`" for word in needs if word not in found)
            has = together(f"`{word}`" for word in found)
            yield fault(f"{name} has {has}, and lacks {lacks}: write both", head, needed=lacks)
            return
    if found:
        places = [node.entries[word].key.place for word in found]
        both = together(f"`{word}`" for word in found)
        says = f"{name} has {both}: keep one"
        yield fault(says, places[-1], both, f"one of {words}", also=tuple(places[:-1]))
    elif not {*choices} & _explained(schema, node):
        unsized = _without_a_size(schema, name, node, head)
        yield unsized or fault(f"{name} lacks one of {words}: write one", head, needed=words)


def _without_a_size(schema: Schema, name: str, node: reading.Mapping, head: Place) -> Fault | None:
    """The one fault of a finding that says nothing of its size; None for any other part."""
    size, then = schema.get("properties", {}).get("size", {}), schema.get("then", {})
    own = {*then.get("required", ())}
    own |= {word for group in then.get("oneOf", ()) for word in group["required"]}
    if size.get("$comment") != "sold_size" or own & node.entries.keys() or not own:
        return None
    such = size["examples"][0]
    how = f"`size: {such}`, as it is sold, or `size: usual`" if such != "usual" else "`size: usual`"
    says = f"{name} says nothing of its size: write {how} for what any shop sells"
    return fault(says, head, needed="`size`")


def example(word: str, schema: Schema) -> str:
    """A field as it could be written."""
    if schema.get("$comment") == "name":
        return f"`{word}:` with the name of a part"
    value = written(schema.get("const", schema.get("examples", [""])[0]))
    if 0 < len(value) <= LONGEST:
        return f"`{word}: {value}`"
    return f"`{word}:` with what belongs under it"


def written(value: object) -> str:
    """An example as an author would write it on one line."""
    if isinstance(value, dict):
        return f"{{{', '.join(f'{word}: {written(inner)}' for word, inner in value.items())}}}"
    if isinstance(value, list):
        return f"[{', '.join(map(written, value))}]"
    return str(value)


def _meant(schema: Schema, node: reading.Mapping) -> dict[str, tuple[str, ...]]:
    """The fields that each unknown word of a group may mean, of those not there yet.

    First those that the word resembles; then the missing ones that take what it says.
    """
    fields: Collection[str] = schema.get("properties", {})
    free = [word for word in fields if word not in node.entries]
    meant: dict[str, tuple[str, ...]] = {}
    for word in node.entries:
        if word not in fields:
            near = meant_by(word, free) if len(meant) < _MOST else None
            meant[word] = (near,) if near else ()
            free = [known for known in free if known != near]
    unclear = [word for word, near in meant.items() if not near]
    lacks = [group for group in _lacking(schema, node) if {*group} <= {*free}]
    if len(unclear) == len(lacks) == 1:
        entry = node.entries[unclear[0]]
        meant[unclear[0]] = tuple(one for one in lacks[0] if _takes(schema, one, entry.node))
    return meant


def _lacking(schema: Schema, node: reading.Mapping) -> list[Path]:
    """Each field that a group must have and has not; alternatives stand together."""
    from jsonschema import Draft202012Validator

    applies = "if" in schema and Draft202012Validator(schema["if"]).is_valid(node.value)
    rules = [schema, *schema.get("allOf", ()), *([schema["then"]] if applies else [])]
    groups = [one.get("oneOf", one.get("anyOf", ())) for one in rules]
    choices = [tuple(word for one in group for word in one.get("required", ())) for group in groups]
    must = [(word,) for one in rules for word in one.get("required", ())]
    return [words for words in (*must, *choices) if words and not {*words} & {*node.entries}]


def _takes(schema: Schema, field: str, node: reading.Node) -> bool:
    """Whether a field takes a value."""
    from jsonschema import Draft202012Validator

    inner = schema["properties"].get(field, {})
    kind = inner.get("$comment", "")
    fits: bool = Draft202012Validator(inner).is_valid(node.value)
    return fits and not (kind in READERS and unit_fault(kind, node))


def _explained(schema: Schema, node: reading.Mapping) -> set[str]:
    """What a group lacks because a word that is no field means it, or may mean anything."""
    fields = schema.get("properties", {})
    if schema.get("additionalProperties") is not False:
        return set()
    if _not_of_this_kind(fields, "", node):
        return {*fields}
    explained: set[str] = set()
    for word, near in _meant(schema, node).items():
        holders = _holders(fields, word, node)
        unclear = not (near or holders or _is_a_part(node.entries[word].node))
        meant = near or (holders[0][:1] if len(holders) == 1 else ())
        explained.update(fields if unclear else meant)
    return explained


def _holders(fields: Schema, word: str, node: reading.Mapping) -> list[Path]:
    """The groups of fields, and the groups within them, that have a field of that name.

    Where some are there already, or are called like the type, it is one of these.
    """
    found: list[Path] = []
    for group, inner in fields.items():
        within = inner.get("properties", {}) if group not in _ALIKE else {}
        found += [(group,)] * (word in within)
        found += [
            (group, deeper)
            for deeper, last in within.items()
            if word in last.get("properties", ()) and word not in within
        ]
    typed = node.entries.get("type")
    likely = {*node.entries, *(str(typed.node.value).split() if typed else ())}
    return [path for path in found if path[0] in likely] or found


def _in_group(path: Path, entries: Mapping[str, reading.Entry]) -> str:
    """Fields as they stand in a group, or in a group within one."""
    said = ", ".join(f"{word}: {shown(one.node).strip('`')}" for word, one in entries.items())
    for group in reversed(path):
        said = f"{group}: {{{said}}}"
    return said


def _not_of_this_kind(fields: Schema, name: str, node: reading.Mapping) -> Fault | None:
    """The fault of a part among the beads, which would have one for each of its fields."""
    kind = node.entries.get("kind")
    if kind is None or "kind" in fields or "type" not in fields:
        return None
    says = f"{name} has a `kind`, as a part has and a bead has not: move it under `parts`"
    return fault(says, kind.key.place, "kind")


def _is_a_part(node: reading.Node) -> bool:
    return isinstance(node, reading.Mapping) and "kind" in node.entries


def _named_in_plan(branch: Branch, word: str, fields: Collection[str]) -> str | None:
    """The field under which a bead or a part of the plan belongs, if a word names one."""
    for section, field in (("beads", "bead"), ("parts", "part")):
        there = branch.node.entries.get(section)
        if there and field in fields and word in there.node.entries:
            return field
    return None


def _step_in(node: reading.Mapping) -> str | None:
    """A step as it should be written, where its verb stands for a field."""
    for verb, schema in schemas.verbs().items():
        entry = node.entries.get(verb)
        if entry is not None:
            needs = [word for word in schema["required"] if word != "do"]
            value = entry.node.text if isinstance(entry.node, reading.Scalar) else ""
            return f"`do: {verb}, {needs[0]}: {value}`" if needs and value else f"`do: {verb}`"
    return None
