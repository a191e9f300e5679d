"""Remedies that several rules offer: the next size that is sold."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from itertools import islice

from wellstrung.common import units
from wellstrung.common.places import Edit
from wellstrung.derived.line_and_needle import of_type, types_of
from wellstrung.derived.packs import weighed_or_strung
from wellstrung.model.item import Item
from wellstrung.model.parts import Part
from wellstrung.model.plan import Step
from wellstrung.quantity.value import Quantity
from wellstrung.quantity.working import number
from wellstrung.rulebook.answer import Remedy, Target
from wellstrung.rulebook.ask import Ask
from wellstrung.rulebook.longer import asked_longer as asked_longer
from wellstrung.rulebook.longer import places_of as places_of
from wellstrung.rulebook.longer import run_longer as run_longer
from wellstrung.rulebook.longer import with_length as with_length
from wellstrung.rulebook.wording import (
    article,
    at_least,
    in_unit_of,
    in_yaml,
    spelled_time,
)
from wellstrung.subjects.base import Eyes
from wellstrung.subjects.chain import links_of, pattern_of
from wellstrung.subjects.supplies import BeadsNeeded


def stronger_line(thread: Part, wanted: float, ask: Ask) -> tuple[Remedy, ...]:
    """Remedies for a line too weak: the weakest sold of its type that breaks at `wanted` N or more.

    Ratings are offered as edits where the author writes a rating of a type the tables know.
    """
    now = ask.of(thread, "breaking")
    pounds = f"{math.ceil(wanted / units.force('1 lb').value - 1e-9)} lb"
    least = pounds if now.spelled_unit in ("", "lb") else at_least(wanted, now)
    text = f"take a line for `{thread.name}` that is rated {least} or more"
    by_hand = in_words(text, thread, "thread", "rating", low=wanted, unit="N")
    if not thread.has("thread", "rating") or not thread.has("thread", "type"):
        return (by_hand,)
    rated = {
        row.cell("breaking").value: row.name.removeprefix(f"{kind} ")
        for kind in types_of(thread)
        for row in of_type(kind)
        if row.name.endswith(" lb")
    }
    sold = [rated[pull] for pull in sorted(rated) if pull >= wanted]
    place = thread.place_of("thread", "rating")
    return (
        *(
            Remedy(f"take {rating} line for `{thread.name}`", (Edit(place, rating),))
            for rating in sold[:1]
        ),
        by_hand,
    )


def other_closings(ring: Part, ask: Ask, *closings: str) -> Iterator[Remedy]:
    """Remedies that take a ring with another closing."""
    for closing in closings:
        text = f"take {article(closing)} ring for `{ring.name}`: `closing: {closing}`"
        yield Remedy(text, (ask.with_field(ring.node, "closing", closing),))


def longer_waits(steps: Iterable[Step], minutes: float) -> Iterator[Remedy]:
    """Remedies that let one of the waits among some steps last so many minutes longer."""
    for step in steps:
        if step.verb == "wait":
            time = spelled_time(step.minutes("time") + minutes)
            yield Remedy.write(step.place_of("time"), time, f"let step {step.number} wait {time}")


def next_up(value: float, step: float) -> float:
    """The next size of those that are sold in such steps.

    >>> next_up(7.2, 0.5), next_up(7.5, 0.5)
    (7.5, 7.5)
    """
    return math.ceil(value / step - 1e-9) * step


#: Steps in which findings are sold and listed, mm, the usual one first: common practice.
_SOLD_BY = (0.5, 0.1, 0.05)


def sold_within(low: float, high: float, coarsest: float = 0.5) -> float | None:
    """The size nearest the middle of a range, mm, that is sold; None where the range has none.

    >>> sold_within(3.0, 4.3), sold_within(9.15, 9.24), sold_within(9.21, 9.22)
    (3.5, 9.2, None)
    """
    for step in _SOLD_BY:
        size = round(round((low + high) / 2 / step) * step, 2)
        if step <= coarsest and low <= size <= high:
            return size
    return None


def in_words(
    text: str, item: Item, *path: str, low: float = 0.0, high: float = math.inf, unit: str = "mm"
) -> Remedy:
    """A remedy that leaves the value of a field open, from `low` to `high`.

    Of a field that the author did not write, words alone.
    """
    written = item.has(*path) or item.has("measured", *path)
    return Remedy(text, target=Target(item.place_of(*path), low, high, unit) if written else None)


def measured_anew(part: Part, field: str) -> str:
    """What a new count in a field asks for as well, where a size that it changes was measured."""
    along = field in ("rows", "rounds", "count")
    changed = ("length", "mass") if along else ("width", "outside", "inside", "mass")
    stale = any(part.has("measured", size) for size in changed)
    return f", and measure `{part.name}` anew" if stale else ""


def take_wire(
    part: Part, sizes: Iterable[str], low: float = 0.0, high: float = math.inf
) -> Iterator[Remedy]:
    """Remedies that give a part one of some sizes of wire, of `low` to `high` mm."""
    place = part.place_of("wire")
    for size in sizes:
        text = f"take {size} wire for `{part.name}`"
        yield Remedy(text, (Edit(place, size),), Target(place, low, high))


def wider_bore(cap: Part, wanted: float) -> tuple[Edit, ...]:
    """Edits that give a cap or a cone another bore, mm, and keep the wall round it."""
    return _around(cap, "bore", "outside", wanted)


def deeper(cap: Part, wanted: float) -> tuple[Edit, ...]:
    """Edits that give a cap another depth, mm, and keep what its closed end adds to it."""
    return _around(cap, "depth", "length", wanted)


def _around(cap: Part, hollow: str, outer: str, wanted: float) -> tuple[Edit, ...]:
    inner = cap.size(hollow)
    edits = [Edit(cap.place_of(hollow), in_unit_of(wanted, inner))]
    if cap.has(outer):
        outside = cap.size(outer)
        if outside.middle <= wanted:
            grown = next_up(outside.middle + wanted - inner.middle, _SOLD_BY[1])
            edits.append(Edit(cap.place_of(outer), in_unit_of(grown, outside)))
    return tuple(edits)


def _in_gauges(numbers: Iterable[int], unit: str) -> list[str]:
    """The first three gauges, the even ones before the odd: those are sold everywhere.

    Common practice, no source.
    """
    return [f"{n} {unit}" for n in sorted(islice(numbers, 3), key=lambda number: number % 2)]


def thinner_wires(wire: Quantity, limit: float) -> list[str]:
    """Up to three standard wires no thicker than `limit`, as the author names wire.

    An author who writes AWG or SWG gets the same system back, even numbers first, one who writes mm
    gets tenths, the thickest first.
    """
    unit = wire.spelled_unit
    gauges = {"AWG": units.awg, "SWG": units.swg}
    if unit.upper() in gauges:
        size, most = gauges[unit.upper()], min(limit, wire.middle - 1e-6)
        return _in_gauges((n for n in range(10, 31) if size(n) <= most), unit)
    tenths = int(min(limit, wire.middle) * 10 + 1e-6)
    return [
        in_unit_of(n / 10, wire)
        for n in range(tenths, max(tenths - 3, 2), -1)
        if n / 10 < wire.middle
    ]


def thicker_wires(wire: Quantity, limit: float) -> list[str]:
    """Up to three standard wires no thinner than `limit`, as the author names wire.

    An author who writes AWG or SWG gets the same system back, even numbers first, one who writes mm
    gets tenths, the thinnest first.

    >>> from wellstrung.quantity.arithmetic import leaf
    >>> thicker_wires(leaf("wire", 0.64, "mm", spelled_unit="AWG"), limit=0.7)
    ['20 AWG', '21 AWG', '19 AWG']
    """
    unit = wire.spelled_unit
    gauges = {"AWG": units.awg, "SWG": units.swg}
    if unit.upper() in gauges:
        size, least = gauges[unit.upper()], max(limit, wire.middle + 1e-6)
        return _in_gauges((n for n in range(30, 9, -1) if size(n) >= least), unit)
    first = math.ceil(max(limit, wire.middle + 1e-6) * 10 - 1e-6)
    return [in_unit_of(n / 10, wire) for n in range(first, first + 3)]


def end_link(eyes: Eyes) -> str | None:
    """The link at an end of a piece of chain; None for the eyes of other parts."""
    piece = eyes.part
    if piece.cut_from is None:
        return None
    first = eyes.key == next(iter(piece.kind.eyes))
    return links_of(piece, piece.cut_from)[0 if first else -1]


def other_end_link(eyes: Eyes, ask: Ask) -> Iterator[Remedy]:
    """Remedies that cut a piece of chain so that another link stands where a ring goes."""
    piece = eyes.part
    if piece.cut_from is None:
        return
    end, meets = (0, "begins") if eyes.key == next(iter(piece.kind.eyes)) else (-1, "ends")
    for first in dict.fromkeys(pattern_of(piece.cut_from)):
        links = links_of(piece, piece.cut_from, first)
        if links[end] == end_link(eyes):
            continue
        fields = {"starts_with": in_yaml(first)}
        if piece.has("ends_with"):
            fields["ends_with"] = in_yaml(links[-1])
        written = " and ".join(f"`{field}: {link}`" for field, link in fields.items())
        yield Remedy(
            f"cut `{piece.name}` so that it {meets} with `{links[end]}`: write {written}",
            tuple(ask.with_field(piece.node, field, link) for field, link in fields.items()),
        )


#: Rings are sold in half millimetres: common practice.
_RING_STEP = 0.5


def sized_by(ring: Part) -> str:
    """The field that the author sizes a ring by: `inside` or `outside`."""
    return "inside" if ring.has("inside") else "outside"


def wider_ring(ring: Part, size: Quantity, short: float, otherwise: str) -> tuple[Remedy, ...]:
    """Remedies for a ring too small by `short` mm: the next size sold, or what else to change."""
    wanted = next_up(size.middle + short, _RING_STEP)
    written = in_unit_of(wanted, size)
    text = f"{written} {sized_by(ring)}"
    place, wider = ring.place_of(sized_by(ring)), f"take a ring of {text} for `{ring.name}`"
    return (
        Remedy.write(place, written, wider),
        in_words(
            f"take a ring of {text} or more, or {otherwise}", ring, sized_by(ring), low=wanted
        ),
    )


def smaller_ring(ring: Part, size: Quantity, wire: Quantity, thinner: str) -> Iterator[Remedy]:
    """A remedy for a ring whose wire is too thick: one that is smaller by as much as it is thinner.

    It stays shut as the first one does.
    """
    step, by = _RING_STEP, sized_by(ring)
    smaller = math.floor(size.middle * units.wire(thinner).value / wire.middle / step) * step
    if smaller and ring.has(by):
        written = in_unit_of(smaller, size)
        text = f"take a ring of {written} {by} and {thinner} wire for `{ring.name}`"
        yield Remedy(text, (Edit(ring.place_of("wire"), thinner), Edit(ring.place_of(by), written)))


def bead_packs(need: BeadsNeeded, ask: Ask, wanted: str, note: str = "") -> tuple[Remedy, ...]:
    """Remedies for beads that run short: so many packs on the last line of supplies, or in all."""
    line, name = need.lines[-1], need.bead.name
    by_hand = Remedy(f"have {wanted} of `{name}` in all")
    if not weighed_or_strung(line) or not line.has("packs"):
        return (by_hand,)
    packs = number(ask.of(need.bead, "packs_wanted").middle)
    edit = Edit(line.place_of("packs"), packs)
    return (Remedy(f"have {packs} packs of `{name}`{note}", (edit,)), by_hand)
