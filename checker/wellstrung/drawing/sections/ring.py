"""All that one ring holds - a rope it goes round, eyes, other rings - packed inside it.

Where an eye lies back from the edge of its part, the ring also has to reach round that bridge while
it is put in: drawn as a figure of its own.
"""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung.common.places import Place
from wellstrung.drawing import Figure, hatching
from wellstrung.drawing.sections import rounds
from wellstrung.drawing.sections.case import Case, Said, marks, mm, size, with_range
from wellstrung.drawing.sections.frame import Section
from wellstrung.rulebook import Eyes, RingHolds


def holding(case: Case[RingHolds]) -> Figure | None:
    """The ring from the front, and what lies in it once it is closed."""
    around = case.join.around
    places = (around.key.place,) if around else ()
    things = list(_held(case, bridges=False))
    collides = rounds.together(things) > case.of(case.join.ring, "inside").middle
    said = case.said(("ring-room", "ring-around-rope"), *places, collides=collides)
    return _draw(case, things, "holding", said)


def reaching(case: Case[RingHolds]) -> Figure | None:
    """The same while the ring goes round a bridge; None where no eye has one."""
    bridged = [eyes for eyes in case.join.eyes if _has_edge(eyes)]
    if not bridged:
        return None
    places: list[Place] = [eyes.part.place_of(*eyes.path, "edge") for eyes in bridged]
    said = case.said(("ring-reach",), *places)
    return _draw(case, list(_held(case, bridges=True)), "reaching round", said)


def _draw(
    case: Case[RingHolds], things: list[rounds.Thing], does: str, said: tuple[Said, ...]
) -> Figure | None:
    if not things:
        return None
    ring = case.join.ring
    inside, outside = case.of(ring, "inside"), case.of(ring, "outside")
    taken = rounds.together(things)
    section = Section(max(outside.middle, taken), max(outside.middle, taken))
    rims = [hatching.circle(0, 0, one.middle / 2) for one in (outside, inside)]
    section.canvas.area(rims, "ring")
    held = rounds.pack(section, 0, 0, inside.middle, things)
    section.round_bands(0, 0, inside)
    section.canvas.circle(0, 0, inside.middle / 2, "edge", f"{ring.name}.inside")
    section.canvas.circle(0, 0, outside.middle / 2, "edge", f"{ring.name}.outside")
    rows = [
        (inside.middle, f"inside {size(inside)}", f"{ring.name}.inside"),
        (outside.middle, f"outside {size(outside)}", f"{ring.name}.outside"),
    ]
    if len(things) > 1:
        section.taken(0, 0, taken)
        rows.append((taken, f"together {mm(taken)}", ""))
    found = f"inside {with_range(inside)}; in it {held.words}"
    if case.join.around is not None and ring.text("closing") == "open" and does == "holding":
        true = inside.middle * case.ask.limit("ring opened").middle
        section.closes_true(*held.spots[0], true)
        found += f"; an open ring of this size closes true round {mm(true)} at most"
    if said:
        section.flag(*held.furthest, marks(said))
    for width, words, quantity in sorted(rows):
        section.across(-width / 2, width / 2, 0, words, quantity)
    swing = case.ask.limit("ring swing").middle
    return case.figure(
        section,
        f"ring `{ring.name}` {does} {' and '.join(_names(case.join))}",
        found,
        f"{mm(taken + swing)} inside, {mm(swing)} of it to swing",
        said,
    )


def _has_edge(eyes: Eyes) -> bool:
    return bool(eyes.path) and eyes.part.has(*eyes.path, "edge")


def _held(case: Case[RingHolds], *, bridges: bool) -> Iterator[rounds.Thing]:
    """Each round thing that lies in the ring, as `ring-room` and `ring-reach` count them."""
    join = case.join
    if join.around is not None:
        outside = case.of(join.around, "outside")
        yield rounds.Thing(f"the rope `{join.around.name}`", outside, f"{join.around.name}.outside")
    for eyes in join.eyes:
        bridge = bridges and _has_edge(eyes)
        name = eyes.quantity("edge" if bridge else "wire")
        words = f"the {'bridge' if bridge else 'wall'} of {eyes.words}"
        yield rounds.Thing(words, case.get(name), name, "metal")
    for _ in range(join.other_rings):
        wire = case.of(join.ring, "wire")
        yield rounds.Thing(f"another `{join.ring.name}`", wire, f"{join.ring.name}.wire", "metal")


def _names(join: RingHolds) -> list[str]:
    """What lies in the ring, in words."""
    names = [f"the rope `{join.around.name}`"] if join.around else []
    names += [eyes.words for eyes in join.eyes]
    return [*names, *([f"{join.other_rings} more of its kind"] if join.other_rings else [])]
