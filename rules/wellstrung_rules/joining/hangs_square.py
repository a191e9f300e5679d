"""Whether what hangs shows its face to the front: each link turns the next by a quarter.

A ring round a rope looks to the side, along the rope. Of two linked loops one looks to the front
and the other to the side. So two eyes with a ring between them look the same way, and two eyes that
are linked directly look different ways. Geometry, worked out for this project.
"""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Hangs, Held, Misfit, Remedy, Rule
from wellstrung.rulebook.plan import Eyes, Hung, Role

#: what a part shows to the front when its face looks that way
_SHOWS = {"front": "face", "side": "edge"}
_TURNED = {"front": "side", "side": "front"}


def check(hangs: Hangs, ask: Ask) -> Answer:
    line, eyes = hangs.line, hangs.below
    if not isinstance(eyes, Eyes) or line.on_thread:
        return None
    if not eyes.part.has(*eyes.path, "faces") and not line.part.has("faces"):
        return None
    hole, hangs_as = eyes.part.text(*eyes.path, "faces"), _way(line, ask)
    if hangs_as is None:
        return None
    face = "front" if hole == hangs_as else "side"
    meant = line.part.text("faces") if line.part.has("faces") else "front"
    if face == meant:
        return Held()
    name, source = line.part.name, line.source.name
    by, links = "without a ring", f"put one ring between `{name}` and `{source}`"
    if line.by is not None:
        by = f"by one ring, `{line.by.name}`"
        links = f"hang another ring from `{source}`, and `{name}` from that by `{line.by.name}`"
    return Misfit(
        says=f"`{name}` hangs from `{source}` {by}, which turns its hole to the {hangs_as}; with"
        f" the face of `{name}` to the front, the hole of {eyes.words} looks to the {hole}, so it"
        f" shows its {_SHOWS[face]}",
        place=line.place_of("by"),
        found=f"shows its {_SHOWS[face]}",
        needed=f"shows its {_SHOWS[meant]}",
        remedies=(Remedy(f"{links}, or take a part whose hole looks to the {_TURNED[hole]}"),),
        also=(eyes.part.place_of(*eyes.path, "faces"),),
    )


def _way(line: Hung, ask: Ask) -> str | None:
    """Which way the hole of what hangs looks; None where it may turn freely."""
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
        carried = next((other for other in ask.plan.hung if other.part is source), None)
        if carried is not None and not carried.on_thread:
            above = _way(carried, ask)
    if above is None or line.by is not None:
        return above  # two links turn it back
    return _TURNED[above]


RULE = Rule(
    name="hangs-square",
    family="joining",
    subject=Hangs,
    check=check,
    fault="drop hangs edge on",
    title="what hangs shows the side it is meant to show, as its links turn it",
    why="each link turns the next by a quarter: a flat pendant on one ring too many shows its"
    " edge, and nobody notices until the piece is worn",
    sources=("linked loops lie a quarter turn to each other: geometry",),
    level="warning",
    bad="a pendant with top_eyes: {faces: side, ...} from a rope by one ring",
    good="a pendant with top_eyes: {faces: front, ...} from a rope by one ring",
)
