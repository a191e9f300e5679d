"""The needles of a plan: one of each for every maker, and one over, since a needle bends."""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung.derived import sold_in
from wellstrung.derived.amounts import PIECES
from wellstrung.derived.pieces import pieces_on_hand
from wellstrung.derived.taken import Taken
from wellstrung.model.item import Missing
from wellstrung.model.parts import Part
from wellstrung.model.plan import Quantities
from wellstrung.quantity.arithmetic import exact
from wellstrung.quantity.value import Quantity
from wellstrung.subjects.supplies import supply_lines

#: what a needle is called that is no part of its plan
_NEEDLE = "needle"


def needles(ask: Quantities) -> Iterator[Taken]:
    """Each needle that parts are worked with; no rule asks for it, and no cost has it in."""
    parts, found = ask.plan.parts, dict[str, str]()
    for part in parts.values():
        if part.has("needle") and not part.without_needle:
            found.setdefault(part.text("needle"), part.said("needle"))
    for size, named in found.items():
        own = parts.get(named)
        lines = supply_lines(ask.plan, "part", named) if own else ()
        yield Taken(
            "findings",
            named if own else _NEEDLE,
            size,
            PIECES,
            exact(f"{named}.needed", 1),
            _on_hand(own, ask) if own and lines else None,
            over=1,
            pack=sold_in.counted(lines),
        )


def _on_hand(needle: Part, ask: Quantities) -> Quantity | Missing:
    try:
        return pieces_on_hand(needle, ask)
    except Missing as missing:
        return missing
