"""Button and loop: the way round inside the loop, and what the closed pair adds to its piece."""

from __future__ import annotations

from wellstrung.derived.declared import GEOMETRY, count, formula, hand, size, written_or
from wellstrung.formulas.arithmetic import pi
from wellstrung.model.parts import Formula


def reach(around: float, outside: float, sits: float) -> float:
    """From band to band, mm: the loop pulled out flat, less how far in the button sits.

    Geometry of this project; no published figure.

    >>> reach(around=45.0, outside=12.0, sits=0.25)
    19.5
    """
    return around / 2 - sits * outside


def _of_bead(what: str) -> Formula:
    return lambda part, ask: ask.of(part.beads[part.text("loop", "beads")], what)


#: the way round inside the loop, as written or of the beads that are strung for it
LOOP = written_or(
    size("loop", "around"),
    ("loop", "around"),
    otherwise=formula(
        "round the loop",
        "mm",
        lambda count, length, outside: count * length - pi * outside,
        count=count("count", lambda part: part.count("loop", "count")),
        length=_of_bead("length"),
        outside=_of_bead("outside"),
        source="inside = length - pi x thickness: trade table `bracelet_eases`, thick beads",
    ),
)
#: what the pair adds: as measured, or by the loop and the button
CLOSED = written_or(
    size("closed_length", allowance="part length"),
    ("closed_length",),
    otherwise=formula(
        "closed length",
        "mm",
        reach,
        around=LOOP,
        outside=size("button", "outside"),
        sits=hand(
            "how far in its button sits",
            (0.0, 0.25, 0.5),
            source="sewn on by its middle, at the end or up to its edge: geometry of this project",
            cure="close {part}, pull, measure from band to band, write `closed_length: ...`",
        ),
        source=GEOMETRY,
    ),
)
