"""How beads are held apart on their line, in words for a student: common practice, no source."""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung.common.wording import article
from wellstrung.model.beads import apart, held_by_crimps, knot_of
from wellstrung.model.parts import Part


def held(strand: Part) -> Iterator[str]:
    """What holds the beads of a spaced strand in their places, and the bare line at its ends."""
    group, crimp = strand.count("group", default=1), held_by_crimps(strand)
    if strand.has("bare_ends"):
        bare = strand.text("bare_ends")
        yield f"Leave {bare} of bare line before the first bead, and as much after the last"
    each, named = ("group" if group > 1 else "bead"), strand.part("held_by")
    if crimp is not None:
        yield f"String `{crimp.name}` before each {each} and after it"
    elif apart(strand):
        knot = knot_of(strand)
        tied = f"Tie {article(knot)} knot before each {each}, and one after it"
        yield f"{tied}, tight against the bead"
    elif named is not None:
        where = "the first and the last bead of each group" if group > 1 else "each bead"
        yield f"Mark each place on the line, and slide the {each} to it"
        yield f"Put a drop of `{named.name}` in the hole of {where} with the tip of a pin"
        yield "Let the drops set with the line drawn straight"
    elif group > 1:
        yield "Hold each group on both sides by a crimp or a knot, so that it stays"


def pressed(crimp: Part, strand: Part) -> Iterator[str]:
    """The crimps beside the beads of a spaced strand."""
    group = "group" if strand.count("group", default=1) > 1 else "bead"
    yield f"Measure to the place of each {group}, push `{crimp.name}` against it from both sides"
    how = "round there" if crimp.has("cover") else "flat there"
    yield f"Press each `{crimp.name}` {how}, and try whether the {group} stays"
