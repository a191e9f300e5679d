"""Sizes of a finding by name, `spacing 4 mm` or `4 mm apart`, as the fields that they mean.

A size that is named is never the one that a finding is sold by.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator, Mapping, Sequence
from typing import Any, NamedTuple

from wellstrung.common.patterns import Pattern
from wellstrung.common.places import Fault
from wellstrung.common.wording import article
from wellstrung.reading import tree
from wellstrung.reading.faults import fault, shown
from wellstrung.short_forms.phrase import LENGTH, Phrase
from wellstrung_schemas import fragment

#: a field, or the groups that it is in and the field
Path = tuple[str, ...]


class _Name(NamedTuple):
    """A name of a size: the field that has it, of a group that is named alone, and its words."""

    field: str
    before: str
    after: str
    of: str = ""

    @property
    def pattern(self) -> Pattern:
        begin = r"(?<![\w-])(?:with\s+(?:an?\s+)?)?"
        said = rf"{begin}(?:{self.before})(?:\s+(?:size|of|at|is))*\s+({LENGTH})(?:\s+apart\b)?"
        return Pattern(rf"{said}|({LENGTH})\s+(?:{self.after})(?!\w)", re.IGNORECASE)


_BETWEEN = "apart|spacing|pitch|between (?:the )?(?:holes|loops)"
_NAMES = (
    _Name("spacing", "spacing|spaced|pitch", _BETWEEN),
    _Name("hole", "loops?|eyes?", "loops?|eyes?", of="eye"),
    _Name("length", "bar", "bar", of="bar"),
    _Name("hole", "holes?|openings?|\0\\s*of", "holes?|openings?"),
    _Name("inside", "inside|inner|ID|holes?", "inside|inner|ID|holes?"),
    _Name("bore", "bore", "bore"),
    _Name("depth", "depth", "deep"),
    _Name("length", "length", "long"),
    _Name("width", "width", "wide"),
    _Name("height", "height", "high|tall"),
    _Name("thickness", "thickness", "thick"),
    _Name("overlap", "overlap", "overlap"),
    _Name("gap", "gap", "gap"),
    _Name("slot", "slot", "slot"),
    _Name("wire", "wire", "wire"),
    _Name("closed_length", "closed length", "closed"),
)
#: what may name the size that a finding is sold by
_AS_SOLD = ("length",)


def named(
    phrase: Phrase, kind: str, groups: Collection[str], known: Mapping[str, tree.Node | None]
) -> dict[str, tree.Node]:
    """The sizes that a phrase gives by name, by field; `known` is what it says already."""
    fields, found = fragment(kind)["properties"], dict[str, tree.Node]()
    for name in _NAMES:
        paths = list(_paths(name, fields, groups))
        if not paths or (size := phrase.take(name.pattern)) is None:
            continue
        for group, *inner in paths:
            said = found.get(group) or known.get(group)
            found[group] = _with(said, inner, size)
    return found


def _paths(name: _Name, fields: Mapping[str, Any], groups: Collection[str]) -> Iterator[Path]:
    """The fields that a name means: that of the part, that in a group, or those of its halves."""
    if name.field in fields and not name.of:
        yield (name.field,)
        return
    for group in groups:
        inner = fields.get(group, {}).get("properties", {})
        if (name.field, group) == ("hole", "eye") and name.of != group and "bore" in fields:
            continue  # it may be the bore
        if name.of in ("", group) and name.field in inner:
            yield group, name.field
            return
        if name.of in ("", "eye") and name.field in inner.get("eye", {}).get("properties", {}):
            yield group, "eye", name.field  # of either half of a clasp


def _with(said: tree.Node | None, inner: Sequence[str], size: tree.Scalar) -> tree.Node:
    """What is said of a field already, with a size in it."""
    if not inner:
        return size
    held = {word: entry.node for word, entry in said.entries.items()} if said else {}
    first, *rest = inner
    return tree.Spelled(said or size, {**held, first: _with(held.get(first), rest, size)})


def of_no_field(phrase: Phrase, called: str, kind: str) -> Fault | None:
    """The fault of a size by a name for which the phrase of a kind has no field."""
    for name in _NAMES:
        size = phrase.take(name.pattern) if name.of or name.field not in _AS_SOLD else None
        if size is not None:
            what = (name.of or name.field).replace("_", " ")
            says = f"`{called}` says {shown(size)} as its {what}"
            no = f"which no phrase of {article(kind)} can say"
            advice = f"take it out, or write the part as fields, `{{kind: {kind}, ...}}`"
            return fault(f"{says}, {no}: {advice}", size.place)
    return None
