"""Whether the face of what hangs looks to the front: each link turns the next by a quarter.

A ring round a rope looks to the side, along the rope. Of two loops that are linked the one looks to
the front and the other to the side, so that a ring between two eyes leaves them looking the same
way, and two eyes linked without one look different ways. Geometry, worked out for this project.
"""

from __future__ import annotations

from typing import Literal

from wellstrung.rulebook import Answer, Ask, Hangs, Held, Misfit, Remedy, Rule
from wellstrung.rulebook.plan import Eyes, Hung, Part, Role

Way = Literal["front", "side"]


def check(hangs: Hangs, ask: Ask) -> Answer:
    line, eyes = hangs.line, hangs.below
    if not isinstance(eyes, Eyes) or line.on_thread or not eyes.part.has(*eyes.path):
        return None
    if not eyes.part.has(*eyes.path, "faces"):
        return None
    hole = eyes.part.text(*eyes.path, "faces")
    hangs_as = _way(line, ask)
    if hangs_as is None:
        return None
    face = "front" if hole == hangs_as else "side"
    meant = line.part.text("faces") if line.part.has("faces") else "front"
    if face == meant:
        return Held()
    by = f"by one ring, `{line.by.name}`" if line.by else "without a ring"
    seen = f"seen from the front {eyes.words} {_look(eyes)} to the {hole}"
    return Misfit(
        says=(
            f"`{line.part.name}` hangs from `{line.source.name}` {by}, which turns the hole to the"
            f" {hangs_as}; {seen}, so that `{line.part.name}` shows its {_SHOWS[face]}"
        ),
        place=line.place_of("by"),
        found=f"shows its {_SHOWS[face]}",
        needed=f"shows its {_SHOWS[meant]}",
        remedies=(
            Remedy(f"{_other_count(line)}, or take a part whose hole looks to the {_turned(hole)}"),
        ),
        also=(eyes.part.place_of(*eyes.path, "faces"),),
    )


#: what a part shows to the front when its face looks that way
_SHOWS = {"front": "face", "side": "edge"}


def _look(eyes: Eyes) -> str:
    return "looks" if eyes.count == 1 else "look"


def _turned(way: str) -> Way:
    return "side" if way == "front" else "front"


def _way(line: Hung, ask: Ask) -> Way | None:
    """Which way what a line hangs has its hole; None where it may turn as it likes."""
    source = line.source
    above: str | None = None
    if line.source_eyes:
        eyes = Eyes(source, line.source_eyes)
        if not eyes.path:
            return None  # chain turns by itself
        above = source.text(*eyes.path, "faces")
    elif source.kind.role is Role.ROPE:
        above = "front"  # whatever is put round it looks to the side
    elif source.kind.role is Role.RING:
        above = _of_ring(source, ask)
    if above is None:
        return None
    return _turned(above) if line.by is None else _turned(_turned(above))


def _of_ring(ring: Part, ask: Ask) -> Way | None:
    carried = next((line for line in ask.plan.hung if line.part is ring), None)
    return None if carried is None or carried.on_thread else _way(carried, ask)


def _other_count(line: Hung) -> str:
    if line.by is None:
        return f"put one ring between `{line.part.name}` and `{line.source.name}`"
    return f"link two rings where `{line.by.name}` is one"


RULE = Rule(
    name="hangs-square",
    family="joining",
    subject=Hangs,
    check=check,
    title="the face of what hangs looks the way it is meant to, as its links turn it",
    why=(
        "each link turns the next by a quarter: a flat pendant on one ring too many shows its edge,"
        " and that is seen only when the piece is worn"
    ),
    sources=("linked loops lie a quarter turn to each other: geometry",),
    level="warning",
    bad="a pendant with top_eyes: {faces: side, ...} from a rope by one ring",
    good="a pendant with top_eyes: {faces: front, ...} from a rope by one ring",
)
