"""All that one ring holds - a rope it goes round, eyes, other rings - packed inside it.

Where an eye lies back from the edge of its part, the ring also has to reach round that bridge while
it is put in: drawn as a figure of its own.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from wellstrung.drawing import Figure
from wellstrung.drawing.sections import rounds
from wellstrung.drawing.sections.case import Case, Said, mm, size, with_range
from wellstrung.drawing.sections.rounds import Thing
from wellstrung.drawing.sections.section import Section
from wellstrung.rulebook import Eyes, RingHolds


def holding(case: Case[RingHolds]) -> Figure | None:
    """The ring from the front, and what lies in it once it is closed."""
    around = case.join.around
    places = (around.key.place,) if around else ()
    things = list(_held(case, bridges=False))
    collides = rounds.together(things) > case.of(case.join.ring, "inside").middle
    said = case.said(("ring-room", "ring-around-rope"), *places, collides=collides)
    return _draw(case, things, "holding", said, shut=True)


def reaching(case: Case[RingHolds]) -> Figure | None:
    """The same while the ring goes round a bridge; None where no eye has one."""
    bridged = [eyes for eyes in case.join.eyes if _has_edge(eyes)]
    if not bridged:
        return None
    places = [eyes.part.place_of(*eyes.path, "edge") for eyes in bridged]
    things = list(_held(case, bridges=True))
    return _draw(case, things, "reaching round", case.said(("ring-reach",), *places), shut=False)


def _draw(
    case: Case[RingHolds], things: list[Thing], does: str, said: Sequence[Said], *, shut: bool
) -> Figure | None:
    if not things:
        return None
    ring = case.join.ring
    hole = rounds.hole_of(case, ring, "inside", look="ring")
    outside = case.of(ring, "outside")
    taken = rounds.together(things)
    wide = hole.widest(taken)
    section = Section(wide, wide)
    held = rounds.in_hole(section, hole, things)
    rows = [(outside.middle, f"outside {size(outside)}", f"{ring.name}.outside")]
    if len(things) > 1:
        rows += rounds.thing_rows(things, "")
    found = f"inside {with_range(hole.size)}; in it {held.words}"
    if shut and case.join.around is not None and ring.traits.gapes:
        true = hole.size.middle * case.limit("ring opened")
        section.round_pattern(*held.spots[0], true, "true")
        found += f"; an open ring of this size closes true round {mm(true)} at most"
    rounds.finish(section, held, said, hole, rows)
    swing = case.limit("ring swing")
    return case.figure(
        section,
        f"ring `{ring.name}` {does} {' and '.join(_names(case.join))}",
        found,
        f"{mm(taken + swing)} inside, {mm(swing)} of it to swing",
        said,
    )


def _has_edge(eyes: Eyes) -> bool:
    return bool(eyes.path) and eyes.part.has(*eyes.path, "edge")


def _held(case: Case[RingHolds], *, bridges: bool) -> Iterator[Thing]:
    """Each round thing that lies in the ring, as `ring-room` and `ring-reach` count them."""
    join = case.join
    if join.around is not None:
        yield rounds.thing_of(case, join.around, "outside", f"the rope `{join.around.name}`")
    for eyes in join.eyes:
        bridge = bridges and _has_edge(eyes)
        name = eyes.quantity("edge" if bridge else "wire")
        words = f"the {'bridge' if bridge else 'wall'} of {eyes.words}"
        yield Thing(words, case.get(name), name, "metal")
    for ring in join.rings:
        words = f"another `{ring.name}`" if ring is join.ring else f"ring `{ring.name}`"
        yield rounds.thing_of(case, ring, "wire", words, "metal")


def _names(join: RingHolds) -> list[str]:
    """The things in the ring, in words."""
    names = [f"the rope `{join.around.name}`"] if join.around else []
    names += [eyes.words for eyes in join.eyes]
    more = join.rings.count(join.ring)
    names += [f"ring `{ring.name}`" for ring in join.rings if ring is not join.ring]
    return [*names, *([f"{more} more of its kind"] if more else [])]
