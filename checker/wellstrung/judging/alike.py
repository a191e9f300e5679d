"""Alike remarks: many that differ in the names of their parts alone become one that names all."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence, Set
from itertools import pairwise

from msgspec import Struct
from msgspec.structs import replace

from wellstrung.common.patterns import Pattern
from wellstrung.common.places import Place
from wellstrung.common.wording import some_of
from wellstrung.judging.result import Identity, Remark
from wellstrung.model.plan import Plan
from wellstrung.rulebook import Remedy

#: So many alike remarks are shown one by one, each with what to do at its own place.
_FEW = 3
#: Up to so many are tried one by one where what they advise cannot be done at once.
_MANY = 6
#: So many names are written out, and the rest counted.
_NAMED = 40


class Alike(Struct, frozen=True):
    """A remark with its remedies; `stands_for` are the remarks that it was made of."""

    remark: Remark
    remedies: Sequence[Remedy]
    stands_for: frozenset[Identity]
    #: each by itself, for where what all of them advise at once cannot be followed
    apart: Sequence[Alike] = ()
    #: by a place that remedies write, the remarks that ask for another value there
    with_it: Mapping[Place, frozenset[Identity]] = {}


def together(remarks: Iterable[tuple[Remark, Sequence[Remedy]]], plan: Plan) -> list[Alike]:
    """The remarks, more than a few alike ones as one, at the place of the first.

    One whose part has its own line under `accept` stays by itself, so that only it is accepted.
    """
    lines = [line.value for line in plan.entries("accept")]
    own = {(line["rule"], line["part"]) for line in lines if "part" in line}
    groups: dict[object, list[tuple[Remark, Sequence[Remedy]]]] = {}
    names = plan.parts.keys() | plan.beads.keys()
    for number, (remark, remedies) in enumerate(remarks):
        alone = remark.level == "caution" or any(
            (remark.rule, name) in own for name in remark.parts
        )
        groups.setdefault(number if alone else _key(remark, names), []).append((remark, remedies))
    return [
        one
        for group in groups.values()
        for one in ([_one(group)] if len(group) > _FEW else [_one([each]) for each in group])
    ]


#: a name by itself, as `clasp.a`, or as the value of a field, as in `{do: crimp, part: tube}`
_NAME = Pattern(r"(?<=`)[^`{}]+(?=`)|(?<=: )[^`,{}]+(?=[,}])")


def _key(remark: Remark, names: Set[str]) -> tuple[object, ...]:
    """All that alike remarks have in common: what they say, with numbers in place of names."""
    numbers: dict[str, int] = {}

    def numbered(found: re.Match[str]) -> str:
        name, dot, half = found[0].partition(".")
        if name not in names and name not in remark.parts:
            return found[0]
        return f"{numbers.setdefault(name, len(numbers))}{dot}{half}"

    def blank(text: str) -> str:
        return _NAME.sub(numbered, text)

    words = (remark.says, remark.found, remark.needed, remark.remedy)
    return (remark.rule, remark.level, remark.affects, *map(blank, words))


def _one(group: Sequence[tuple[Remark, Sequence[Remedy]]]) -> Alike:
    """One remark for a group, at the place of the first."""
    remarks = [remark for remark, _ in group]
    first, remedies = group[0]
    stands_for = frozenset(remark.identity for remark in remarks)
    if len(group) == 1:
        return Alike(first, remedies, stands_for)
    names = list(dict.fromkeys(f"`{_other(one, first)}`" for one in remarks[1:] if one.parts))
    places = [place for remark in remarks for place in (remark.place, *remark.also)]
    also = tuple(place for place in dict.fromkeys(places) if place != first.place)
    remark = replace(
        first,
        says=f"{first.says}; the same goes for {some_of(names, _NAMED)}",
        parts=tuple(dict.fromkeys(name for remark in remarks for name in remark.parts)),
        also=also,
    )
    together = tuple(_remedies([offered for _, offered in group]))
    apart = [_one([each]) for each in group] if len(group) <= _MANY else ()
    return Alike(remark, together, stands_for, apart)


def _other(remark: Remark, first: Remark) -> str:
    """The part by which a remark differs from the first: both may be about the same clasp."""
    return next((name for name in remark.parts if name not in first.parts), remark.parts[0])


def _remedies(offered: Sequence[Sequence[Remedy]]) -> Iterable[Remedy]:
    """The remedies of all, those in the same position as one; edits that overlap are left out."""
    for each in zip(*offered, strict=False):
        edits = tuple(dict.fromkeys(edit for remedy in each for edit in remedy.edits))
        spans = sorted((edit.place for edit in edits), key=lambda place: place[:3])
        apart = all(a.file != b.file or a[3:] <= b[1:3] for a, b in pairwise(spans))
        if all(remedy.edits for remedy in each) and not apart:
            continue
        yield replace(
            each[0],
            text=f"{each[0].text}; do so with each of them",
            edits=edits if all(remedy.edits for remedy in each) else (),
            target=None,  # each has a place of its own
        )
