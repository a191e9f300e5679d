"""Chain, and the pieces that are cut from it."""

from __future__ import annotations

from typing import NamedTuple

from generated.draft import STATES, Draft, Fields

#: weaves of rings, each with a ratio of inside to wire that works
WEAVES = {"single": 4.5, "two by two": 4.5, "Byzantine": 3.7, "four-in-one": 3.8}


class Piece(NamedTuple):
    """A piece of chain: how long it is, about, mm, and every how many links it is cut."""

    name: str
    length: float
    every: int


def chain(draft: Draft) -> tuple[str, dict[str, float], list[str]]:
    """A chain: its name, what each kind of link adds to it, mm, and its pattern."""
    wire = draft.between(0.6, 0.9, 0.1)
    small = draft.between(4.4, 6.4, 0.4)
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
    draft.maybe(30, fields, states=draft.pick(*STATES))
    draft.maybe(8, fields, mass="14 g")
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
    fields: Fields = {"kind": "chain piece", "of": name}
    first = pattern[0] if not draft.chance(20) else pattern[-1]
    draft.maybe(60 if first == pattern[0] else 100, fields, starts_with=first)
    at = pattern.index(first)
    order = [*pattern[at:], *pattern[:at]]
    repeats = max(1, round(length / sum(along[link] for link in pattern)))
    links = order * repeats
    if draft.chance(60):
        links += order[: draft.whole(0, len(order) - 1)]
        fields["links"] = len(links)
        draft.maybe(20, fields, ends_with=links[-1])
    else:
        last = order[-1]
        fields["count_of"] = {last: repeats * order.count(last)}
    long = sum(along[link] for link in links)
    if "links" in fields and "ends_with" not in fields and draft.chance(25):
        del fields["links"]
        fields["length"] = draft.length(round(long + 1.6, 1))
    every = _every(len(links), len(pattern), soldered=draft.parts[name]["links_are"] == "soldered")
    return Piece(draft.add(draft.pick("swag", "length of chain"), fields), long, every)


def _every(links: int, pattern: int, *, soldered: bool) -> int:
    """Links from the start of one piece to the start of the next, so that all begin alike."""
    least = links + 1 if soldered else links
    return -(-least // pattern) * pattern


def cups(draft: Draft, length: float) -> str:
    """Cup chain of about a length, by its length or by counting cups, with its step."""
    stone, across = draft.pick(("3 mm", 3.0), ("SS12", 3.1), ("pp18", 2.45), ("4 mm", 4.0))
    pitch, name = 1.42 * across, draft.pick("front", "sparkle")
    fields: Fields = {"kind": "chain", "type": "cup", "size": stone}
    draft.metalwork(fields, 0.05 * length)
    cup: Fields = {}
    draft.maybe(40, cup, outside=draft.length(round(1.3 * across, 2)))
    draft.maybe(60, cup, pitch=draft.length(round(pitch, 2)))
    draft.maybe(30, cup, height=draft.length(round(0.8 * across, 1)))
    if cup:
        fields["cup"] = cup
    draft.maybe(30, fields, links_are="cups")
    many: Fields = {"length": draft.length(length)}
    if draft.chance(50):
        many = {"links": round(length / pitch)}
    if draft.chance(50):  # the chain says itself how much is cut of it
        part = draft.add(name, fields | many)
    else:
        of = draft.add("chain", fields)
        part = draft.add(name, {"kind": "chain piece", "of": of, **many})
    draft.step("cut", "cut", part)
    return part


def cut(draft: Draft, of: Piece, *, off: int = 8) -> None:
    """The step that cuts it, often every so many links; `off` of a hundred are wrong."""
    every = of.every - 1 if draft.chance(off) and of.every > 1 else of.every
    step = {"every": every} if draft.chance(60) else {}
    draft.step("cut", "cut", of.name, **step)


def woven(draft: Draft, length: float, *, rest: bool = False) -> str:
    """A chain or a band woven of jump rings."""
    type_ = draft.pick(*WEAVES)
    of = draft.wire(0.8, 1.1)
    ring: Fields = {"kind": "jump ring", "inside": draft.length(round(of.mm * WEAVES[type_], 1))}
    ring |= {"wire": of.written, "closing": "open"}
    draft.metalwork(ring, 0.1)
    name = draft.add("link", ring)
    fields: Fields = {"kind": "ring weave", "type": type_, "rings": name}
    if draft.chance(30):
        fields["count"] = round(length / 2)
    else:
        fields["length"] = draft.length(length)
    if type_ == "four-in-one":
        draft.maybe(60, fields, rows=draft.pick(3, 5))
    draft.maybe(8, fields, measured={"length": draft.length(length)})
    draft.maybe(8, fields, measured={"width": "8 mm"})
    weave = draft.add("maille", fields)
    draft.step("make", "weave", weave)
    return weave
