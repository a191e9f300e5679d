"""Chain, and the pieces that are cut from it."""

from __future__ import annotations

from typing import NamedTuple

from generated.draft import Draft, Fields


class Piece(NamedTuple):
    """A piece of chain, with how long it is, about, mm."""

    name: str
    chain: str
    length: float


def chain(draft: Draft) -> tuple[str, dict[str, float], list[str]]:
    """A chain: its name, what each kind of link adds to it, mm, and its pattern."""
    wire = draft.between(0.6, 1.0, 0.1)
    small = draft.between(3.6, 6, 0.4)
    links: Fields = {"loop": _link(draft, small, small * 0.9, wire)}
    along = {"loop": small - 2 * wire}
    pattern = ["loop"]
    if draft.chance(65):
        long = draft.between(10, 18, 1)
        links["bar"] = _link(draft, long, max(3.2, small * 0.8), wire)
        along["bar"] = long - 2 * wire
        pattern = list(draft.pick(["loop", "bar"], ["loop", "loop", "bar"], ["bar", "loop"]))
    fields: Fields = {"kind": "chain", "pattern": pattern, "links": links}
    fields["links_are"] = draft.pick("soldered", "soldered", "open")
    draft.maybe(85, fields, mass_per_metre=f"{draft.pick(12, 18, 22, 30)} g")
    draft.maybe(75, fields, metal=draft.metal)
    draft.maybe(20, fields, states=["nickel free"])
    draft.maybe(4, fields, mass="14 g")
    return draft.add(draft.pick("chain", "bar chain"), fields), along, pattern


def _link(draft: Draft, length: float, width: float, wire: float) -> Fields:
    fields: Fields = {"length": draft.length(length)}
    draft.maybe(90, fields, width=draft.length(round(width, 1)))
    fields["wire"] = draft.length(wire)
    draft.maybe(10, fields, hole=draft.length(round(width - 2 * wire, 1)))
    return fields


def piece(
    draft: Draft,
    length: float,
    *,
    of: tuple[str, dict[str, float], list[str]] | None = None,
) -> Piece:
    """A piece of chain of about a length, counted by its links or by one kind of them."""
    name, along, pattern = of or chain(draft)
    once = sum(along[link] for link in pattern)
    fields: Fields = {"kind": "chain piece", "of": name}
    first = pattern[0] if not draft.chance(15) else pattern[-1]
    draft.maybe(60, fields, starts_with=first)
    repeats = max(1, round(length / once))
    if draft.chance(60):
        count = repeats * len(pattern) + (1 if len(pattern) > 1 and draft.chance(30) else 0)
        fields["links"] = count
        if draft.chance(15) and "starts_with" not in fields:
            fields["ends_with"] = pattern[-1] if count % len(pattern) == 0 else pattern[0]
    else:
        fields["count_of"] = {pattern[-1]: repeats * pattern.count(pattern[-1])}
    return Piece(draft.add(draft.pick("swag", "length of chain"), fields), name, repeats * once)
