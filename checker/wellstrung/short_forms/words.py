"""Words of the trade as the plan's own: `kind: calotte` means `kind: bead tip`.

A value keeps the author's text, and a field the author's name, so that messages quote what stands
in the plan. A word with several meanings, and one for what a plan cannot describe yet, is answered.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping
from typing import Any

from msgspec import Struct, field

import wellstrung_schemas as schemas
from wellstrung.common.places import Edit, Fault
from wellstrung.common.trade_words import (
    ACCEPTED,
    answer,
    close,
    fields_meant,
    meaning,
    said,
    words_at,
)
from wellstrung.common.wording import either, nearest
from wellstrung.reading import tree
from wellstrung.reading.faults import APART, fault, shown
from wellstrung.short_forms.coils import on_memory_wire

_Schema = Mapping[str, Any]


def in_our_words(
    whole: tree.Mapping, kinds: Mapping[str, _Schema], stitches: Collection[str]
) -> tuple[tree.Mapping, tuple[Fault, ...]]:
    """The plan in words of the schemas, and what to say of words that have no single meaning."""
    words = _Words({"kind": kinds, "stitch": stitches, "do": schemas.verbs()})
    return words.plan(whole, kinds), tuple(words.faults)


#: the schema of the plan but of its parts and steps, each of which chooses its own
_TOP: _Schema = {
    **schemas.plan(),
    "properties": {**schemas.plan()["properties"], "parts": None, "work": None},
}


def with_sections(whole: tree.Mapping) -> tree.Mapping:
    """The plan with the names of its sections by the schema, which is all that phrases need."""
    fields = _TOP["properties"]
    if all(word in fields for word in whole.entries):
        return whole
    entries: dict[str, tree.Entry] = {}
    for word, entry in whole.entries.items():
        meant = () if word in fields else fields_meant(word, fields, "plan")
        own = meant[0] if len(meant) == 1 and meant[0] not in whole.entries else word
        entries.setdefault(own, entry)
    return tree.group(whole, entries) if len(entries) == len(whole.entries) else whole


class _Words(Struct):
    """Puts words of the trade into the plan's own; `known` are those of what is installed."""

    known: Mapping[str, Collection[str]]
    faults: list[Fault] = field(default_factory=list)

    def plan(self, whole: tree.Mapping, kinds: Mapping[str, _Schema]) -> tree.Mapping:
        """The whole plan."""
        whole = self._group(whole, _TOP, "plan", "the plan")
        new: dict[str, tree.Node] = {}
        parts, work = whole.entries.get("parts"), whole.entries.get("work")
        if parts and isinstance(parts.node, tree.Mapping):
            metal, palette = whole.entries.get("metal"), whole.entries.get("beads")
            beads = palette.node.entries if palette and palette.node is not None else {}
            new["parts"] = tree.with_nodes(
                parts.node,
                {
                    name: _of_metal(
                        self._part(_of_beads(entry.node, beads), kinds, f"`{name}`"),
                        metal,
                        kinds,
                    )
                    for name, entry in parts.node.entries.items()
                    if isinstance(entry.node, tree.Mapping)
                },
            )
        steps = _listed(work.node, schemas.plan()["properties"]["work"]) if work else None
        if isinstance(steps, tree.Sequence):
            items = [
                self._chosen(item, "do", schemas.verbs(), f"step {number}")
                if isinstance(item, tree.Mapping)
                else item
                for number, item in enumerate(steps.items, 1)
            ]
            new["work"] = tree.with_items(steps, items)
        return tree.with_nodes(whole, new)

    def _part(self, node: tree.Mapping, kinds: Mapping[str, _Schema], name: str) -> tree.Mapping:
        """A part; one that is named by its memory wire is a strand on it."""
        return self._chosen(on_memory_wire(_with_key(node, "kind")), "kind", kinds, name)

    def _chosen(
        self, node: tree.Mapping, key: str, schemas_of: Mapping[str, _Schema], name: str
    ) -> tree.Mapping:
        """A part or a step, whose word under `key` chooses its schema."""
        node = _with_key(node, key)
        entry = node.entries.get(key)
        if entry is None or not isinstance(entry.node, tree.Scalar):
            return node
        word, more = self._word(entry.node, {}, key, "", name)
        node = tree.with_nodes(node, {key: word})
        schema = schemas_of.get(str(word.value))
        if schema is None:
            return node
        place = "step" if key == "do" else str(word.value)
        return self._also(self._group(node, schema, place, name), entry, more)

    def _group(self, node: tree.Mapping, schema: _Schema, place: str, name: str) -> tree.Mapping:
        """A group of fields, with the groups and lists in it."""
        fields = schema.get("properties", {})
        if fields and schema.get("additionalProperties") is False:
            node = self._fields(node, fields, place, name)
        new: dict[str, tree.Node] = {}
        also: list[tuple[tree.Entry, Mapping[str, str]]] = []
        for word, entry in node.entries.items():
            inner, called = fields.get(word), word
            if inner is None:
                inner, called = schema.get("additionalProperties"), place
            if not isinstance(inner, dict):
                continue
            said = f"`{entry.key.text}` of {name}" if called == word else f"`{word}`"
            value, more = self._value(entry.node, inner, called, place, said)
            new[word] = value
            if more:
                also.append((entry, more))
        node = tree.with_nodes(node, new)
        for entry, more in also:
            node = self._also(node, entry, more)
        return node

    def _value(
        self, node: tree.Node, schema: _Schema, called: str, place: str, name: str
    ) -> tuple[tree.Node, Mapping[str, str]]:
        node = _listed(node, schema)
        if isinstance(node, tree.Mapping):
            return self._group(node, schema, called, name), {}
        if isinstance(node, tree.Sequence):
            inner = schema.get("items")
            if not isinstance(inner, dict):
                return node, {}
            items = [self._value(item, inner, called, place, name)[0] for item in node.items]
            return tree.with_items(node, items), {}
        assert isinstance(node, tree.Scalar)
        return self._word(node, schema, called, place, name)

    def _word(
        self, node: tree.Scalar, schema: _Schema, called: str, place: str, name: str
    ) -> tuple[tree.Scalar, Mapping[str, str]]:
        """A word in the plan's own, and the fields that it says beside; unchanged if it is one.

        One of ours may mean another in its place: netting, of a rope, is tubular.
        """
        own: Collection[str] = schema.get("enum", self.known.get(called, ()))
        elsewhere = node.value in own and not meaning(f"{called} of {place}", node.text)
        if node.value is None or elsewhere:
            return node, {}
        places = [where for where in (f"{called} of {place}", called) if where in ACCEPTED]
        if not own and not places:  # any text
            return node, {}
        for where in places:
            if node.value in ACCEPTED[where]:
                return node, {}
            meant = said(where, node.text)
            if meant is not None:
                return tree.meaning(node, meant[0]), meant[1]
            known = answer(where, node.text)
            if known is not None:
                self.faults.append(answered(name, node, *known))
                return node, {}
        alike = [word for word in own if isinstance(word, str) and close(word) == close(node.text)]
        if len(alike) == 1:
            return tree.meaning(node, alike[0]), {}
        taken = [word for where in places for word in words_at(where)] if own else []
        near = nearest(node.text, taken) if taken else None
        if near and nearest(node.text, map(str, own)) is None:
            edits = (Edit(node.place, near),)
            says, advice = f"{name} is {shown(node)}, which is not known", f"write `{near}`"
            self.faults.append(
                fault(f"{says}: {advice}", node.place, node.text, f"`{near}`", advice, edits=edits)
            )
        return node, {}

    def _also(self, node: tree.Mapping, said: tree.Entry, more: Mapping[str, str]) -> tree.Mapping:
        """A group with what a word of it says beside, such as the type of a clasp."""
        entries = dict(node.entries)
        for word, value in more.items():
            entry = entries.get(word)
            if entry is None:
                implied = tree.implied(said.node, value)
                implied.value = int(value) if value.isdigit() else value
                entries[word] = tree.Entry(said.key, implied)
            elif str(entry.node.value) != value:
                says = f"{shown(said.node)} says `{word}: {value}`, and {shown(entry.node)} stands"
                self.faults.append(
                    fault(
                        f"{says} in `{entry.key.text}`: correct one of them",
                        entry.node.place,
                        also=(said.node.place,),
                    )
                )
        return tree.group(node, entries) if more else node

    def _fields(
        self, node: tree.Mapping, fields: Collection[str], place: str, name: str
    ) -> tree.Mapping:
        """A group with its fields by the schema's names."""
        if all(word in fields for word in node.entries):
            return node
        entries: dict[str, tree.Entry] = {}
        for word, entry in node.entries.items():
            own = word if word in fields else self._field(entry.key, fields, place, name)
            other = entries.get(own)
            if other is None or other.key.file != entry.key.file:  # the drawer's, replaced
                entries[own] = entry
            else:
                both = f"`{other.key.text}` and `{entry.key.text}`"
                single = isinstance(entry.node, tree.Scalar)
                advice = "keep one" if single else "put all under one of them"
                says = f"{name} has {both}, which mean the same: {advice}"
                self.faults.append(fault(says, entry.key.place, also=(other.key.place,)))
        return tree.group(node, entries)

    def _field(self, key: tree.Scalar, fields: Collection[str], place: str, name: str) -> str:
        """The schema's name of a field, or the author's where it has none."""
        meant = fields_meant(key.text, fields, place)
        if len(meant) > 1:
            says = f"`{key.text}` of {name} has more than one meaning: write"
            which = either(f"`{word}`" for word in meant)
            self.faults.append(fault(f"{says} {which}", key.place, key.text, which))
        if meant:
            return meant[0]
        known = answer("field", key.text)
        if known is not None:
            says = f"`{key.text}` is not a field of {name}: {known[0]}"
            self.faults.append(fault(says, key.place))
        return key.text


_JSON = {str: "string", int: "integer"}


def _listed(node: tree.Node, schema: _Schema) -> tree.Node:
    """Make a single name or number a list, where the schema takes only lists of such values.

    Words on several lines, or with a comma or its like, are meant as more than one.
    """
    several = node.line != node.end_line or APART.search(str(node.value)) is not None
    one = _JSON.get(type(node.value)) in schemas.one_of_a_list(schema)
    return tree.sequence(node, [node]) if one and not several else node


def _with_key(node: tree.Mapping, key: str) -> tree.Mapping:
    """A group with the field that chooses its schema under the schema's name."""
    if key in node.entries:
        return node
    called = {word: key for word in node.entries if key in (close(word), *meaning("field", word))}
    return tree.group(node, {called.get(word, word): e for word, e in node.entries.items()})


def answered(name: str, node: tree.Scalar, advice: str, several: bool) -> Fault:
    """The fault of a word that is asked about, as it has several meanings, or is answered."""
    why = "has more than one meaning" if several else "a plan cannot describe yet"
    return fault(f"{name} is {shown(node)}, which {why}: {advice}", node.place, node.text)


def _of_beads(part: tree.Mapping, beads: Collection[str]) -> tree.Mapping:
    """A part whose core is one of the plan's beads, which it has under a name of its own."""
    core = part.entries.get("core")
    if core is None or "core_bead" in part.entries or not isinstance(core.node, tree.Scalar):
        return part
    if core.node.text not in beads:
        return part
    called = {"core": "core_bead"}
    return tree.group(part, {called.get(word, word): e for word, e in part.entries.items()})


def _of_metal(
    part: tree.Mapping, metal: tree.Entry | None, kinds: Mapping[str, _Schema]
) -> tree.Mapping:
    """A finding that states no metal is of the metal at the top of the plan, if there is one."""
    if metal is None or "metal" in part.entries:
        return part
    fields = kinds.get(str(part.value.get("kind")), {}).get("properties", {})
    if fields.get("metal", {}).get("$comment") != "metal":
        return part
    return tree.group(part, {**part.entries, "metal": metal})
