"""Remarks that ask for one size of one part ask for a value that serves them all."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from math import inf
from typing import NamedTuple

from msgspec.structs import replace

from wellstrung.common import units
from wellstrung.common.places import Place
from wellstrung.judging.alike import Alike
from wellstrung.judging.result import Identity, Remark
from wellstrung.rulebook import Remedy, Target
from wellstrung.rulebook.remedies import sold_within


class _Shared(NamedTuple):
    """What remarks that ask for different values at one place have in common.

    `target` is None where no value serves all of them. `writes` are their edits of that place.
    """

    target: Target | None
    wanted_by: tuple[Identity, ...]
    writes: tuple[Remedy, ...]

    @property
    def words(self) -> str:
        """What asks for the values, by rules, or all that one rule says."""
        rules = list(dict.fromkeys(rule for rule, _ in self.wanted_by))
        return " and ".join(f"`{one}`" for one in rules) if rules[1:] else "every remark about it"


def one_size_each(
    found: Iterable[Alike], every: Sequence[tuple[Remark, Sequence[Remedy]]]
) -> list[Alike]:
    """The remarks, those that ask for different values at one place with what serves them all.

    `every` has the remarks that a deeper one hides as well: they would only come next.
    """
    found = list(found)
    shown = {identity for alike in found for identity in alike.stands_for}
    asked: dict[Place, list[tuple[Identity, Target, Sequence[Remedy]]]] = {}
    for remark, remedies in sorted(every, key=lambda one: one[0].identity not in shown):
        targets = {one.target.place: one.target for one in remedies if one.target is not None}
        for place, target in targets.items():
            asked.setdefault(place, []).append((remark.identity, target, remedies))
    shared = {
        place: _common(place, those, shown)
        for place, those in asked.items()
        if len({target for _, target, _ in those}) > 1
    }
    return [_serving(alike, shared) for alike in found] if shared else found


def _common(
    place: Place, those: Sequence[tuple[Identity, Target, Sequence[Remedy]]], shown: set[Identity]
) -> _Shared:
    """The common range; a hidden remark that leaves none follows from another, and is left out."""
    first = those[0][1]
    low, high = first.low, first.high
    by: list[tuple[float, Identity, Sequence[Remedy]]] = []
    for identity, target, remedies in those:
        ends = max(low, target.low), min(high, target.high)
        if identity in shown or ends[0] <= ends[1]:
            low, high = ends
            by.append((target.low, identity, remedies))
    by.sort(key=lambda one: -one[0])  # what the most is asked for serves the others
    edits = [one for _, _, remedies in by for one in remedies if one.edits[:1]]
    at_place = {one.edits: one for one in edits if one.edits[0].place == place}
    sold = low <= high if high == inf or first.unit != "mm" else sold_within(low, high) is not None
    return _Shared(
        Target(place, low, high, first.unit) if sold else None,
        tuple(identity for _, identity, _ in by),
        tuple(at_place.values()),
    )


def _serving(alike: Alike, shared: dict[Place, _Shared]) -> Alike:
    places = {place: frozenset(one.wanted_by) for place, one in shared.items()}
    return replace(alike, remedies=tuple(_remedies(alike.remedies, shared)), with_it=places)


def _remedies(remedies: Sequence[Remedy], shared: dict[Place, _Shared]) -> Iterator[Remedy]:
    """The same remedies; where one writes a shared place, what serves all is written."""
    written, note = set[Place](), ""
    for remedy in remedies:
        places = [edit.place for edit in remedy.edits[:1]]
        places += [remedy.target.place] if remedy.target is not None else []
        place = next((place for place in places if place in shared), None)
        target = shared[place].target if place is not None else remedy.target
        if place is not None and place not in written:
            written.add(place)
            words = shared[place].words
            note = f"; no one size serves {words}"
            if target is not None:
                note = f"; {_span(target)} serves {words}" if target != remedy.target else ""
                for write in shared[place].writes:
                    yield replace(write, text=f"{write.text} (it serves {words})")
        if not remedy.edits:
            yield replace(remedy, text=remedy.text + note, target=target)
        elif place is None:
            yield remedy


def _span(target: Target) -> str:
    low = units.show(target.low, target.unit, side="up")
    if target.high == inf:
        return f"{low} or more"
    high = units.show(target.high, target.unit, side="down")
    return f"{low} to {high}" if target.low else f"{high} or less"
