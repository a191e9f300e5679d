"""Parts and beads that have another name in a later version of a plan, and are the same."""

from __future__ import annotations

import json
from collections import Counter, defaultdict, deque
from collections.abc import Mapping
from typing import Any

from wellstrung.model.plan import Plan

#: by the name of a part or a bead, all that its plan says of it and where it stands
_Entries = Mapping[str, tuple[Any, frozenset[object]]]

#: so many parts that stand beside the same one are compared
_SOME = 50


def renamed(old: Plan, new: Plan) -> dict[str, str]:
    """The new name of each part and bead of `old` that `new` has under another one.

    Two are the same if they have the same kind and fields and a place in common: so many places
    from either end of the run, beside the same part, or in the same line of `hung`. One that was
    changed as well as renamed still has its kind and every one of its places.
    """
    names: dict[str, str] = {}
    while found := {
        **_matched(_beads(old), _beads(new), names),
        **_matched(_parts(old, names), _parts(new, {}), names),
    }:
        names |= found  # what names a renamed part or bead may now be found too
    return names | _changed_too(_parts(old, names), _parts(new, {}), names)


def _changed_too(before: _Entries, after: _Entries, known: Mapping[str, str]) -> dict[str, str]:
    """The parts that have a new name and other fields, by their kind and their places."""
    went, came = _left(before, after, known)
    at = {(after[name][0]["kind"], after[name][1]): name for name in came if after[name][1]}
    keys = {name: (before[name][0]["kind"], before[name][1]) for name in went}
    return {name: at[key] for name, key in keys.items() if key in at}


def _left(
    before: _Entries, after: _Entries, known: Mapping[str, str]
) -> tuple[list[str], list[str]]:
    """The names that only one of the two has, of what is not known to be renamed."""
    taken = {*known.values()}
    return (
        [name for name in before if name not in after and name not in known],
        [name for name in after if name not in before and name not in taken],
    )


def _matched(before: _Entries, after: _Entries, known: Mapping[str, str]) -> dict[str, str]:
    """The entries that have a new name, each with the one that shares most places with it."""
    went, came = _left(before, after, known)
    nowhere: dict[str, deque[str]] = defaultdict(deque)
    there: dict[tuple[str, object], list[str]] = defaultdict(list)
    for name in came:
        fields, places = after[name]
        if not places:
            nowhere[_key(fields, {})].append(name)
        for place in places:
            there[_key(fields, {}), place].append(name)
    found: dict[str, str] = {}
    taken: set[str] = set()
    for name in went:
        fields, places = before[name]
        keys = dict.fromkeys((_key(fields, {}), _key(fields, known)))
        shared = Counter(
            other
            for key in keys
            for place in places
            for other in there.get((key, place), ())[:_SOME]
            if other not in taken
        )
        best = max(shared, key=shared.__getitem__, default=None)
        if best is None and not places:
            best = next((nowhere[key].popleft() for key in keys if nowhere[key]), None)
        if best is not None:
            found[name] = best
            taken.add(best)
    return found


def _key(fields: Any, names: Mapping[str, str]) -> str:
    """The fields of an entry in one text, whatever their order."""
    return json.dumps(_in_names(fields, names), sort_keys=True, default=str)


def _in_names(value: Any, names: Mapping[str, str]) -> Any:
    """Plain data of a plan with parts and beads by their new names."""
    if isinstance(value, str):
        return names.get(value, value)
    if isinstance(value, dict):
        return {_in_names(key, names): _in_names(one, names) for key, one in value.items()}
    return [_in_names(one, names) for one in value] if isinstance(value, list) else value


def _beads(plan: Plan) -> _Entries:
    return {name: (bead.node.value, frozenset()) for name, bead in plan.beads.items()}


def _parts(plan: Plan, names: Mapping[str, str]) -> _Entries:
    places = _places(plan, names)
    return {
        name: (part.node.value, frozenset(places[name])) for name, part in plan.parts.items()
    }  # fmt: skip


def _places(plan: Plan, names: Mapping[str, str]) -> Mapping[str, set[object]]:
    """Where each part stands, in words that need not name it."""
    found: dict[str, set[object]] = defaultdict(set)
    run = plan.run
    for index, entry in enumerate(run):
        beside = [
            ("beside", names.get(one.part.name, one.part.name), one.half)
            for one in (*run[max(index - 1, 0) : index], *run[index + 1 : index + 2])
        ]
        for across, part in enumerate(entry.parts):
            found[part.name] |= {("first", index, across), ("last", len(run) - index, across)}
            found[part.name] |= {*beside}
    for index, line in enumerate(plan.hung):
        for word, part_ in (("part", line.part), ("from", line.source), ("by", line.by)):
            if part_ is not None:
                found[part_.name] |= {(word, index), (word, index - len(plan.hung))}
    return found


def same(old: Any, new: Any, names: Mapping[str, str]) -> bool:
    """Whether two values of a plan are the same, but for parts and beads that were renamed.

    >>> same([1, {"of": "sand"}], [1, {"of": "dune"}], {"sand": "dune"}), same([1, 2], [1, 3], {})
    (True, False)
    """
    if isinstance(old, dict) and isinstance(new, dict):
        keys = {names.get(key, key) if key not in new else key: key for key in old}
        return keys.keys() == new.keys() and all(
            same(old[keys[key]], one, names) for key, one in new.items()
        )
    if isinstance(old, list) and isinstance(new, list):
        return len(old) == len(new) and all(map(same, old, new, [names] * len(old)))
    return bool(old == new) or (isinstance(old, str) and names.get(old) == new)


def came_and_went(
    old: Plan, new: Plan, names: Mapping[str, str]
) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The parts and beads that only the new plan has, and those that only the old one had."""
    before = dict.fromkeys(names.get(name, name) for name in (*old.beads, *old.parts))
    after = dict.fromkeys((*new.beads, *new.parts))
    return (
        tuple(name for name in after if name not in before),
        tuple(name for name in before if name not in after),
    )
