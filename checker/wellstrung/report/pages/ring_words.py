"""How a weave of rings is made, in sentences for a student."""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung import tables
from wellstrung.model.parts import Part
from wellstrung.quantity.value import Quantity
from wellstrung.report.pages.cut_words import Bench
from wellstrung.subjects.counts import woven_of


def of_rings(part: Part, at: Bench) -> Iterator[str]:
    """How many rings a weave of rings takes, and how they go."""
    ring, rings = woven_of(part), at.known(part, "rings")
    if ring is None:
        return
    if rings is not None:
        yield f"Lay {_about(rings)} of `{ring.name}` ready: close half of them, open the others"
    row = tables.load("ring_weaves").row(part.text("type"))
    rows = f", {part.count('rows', default=3)} rows side by side" if part.has("rows") else ""
    yield f"{row.name[0].upper()}{row.name[1:]}{rows}: {row.text('how')}"
    along = at.known(part, "along")
    if along is not None:
        yield f"Stop at {at.long(along.middle)}, pulled taut"


def _about(rings: Quantity) -> str:
    low, high = round(rings.likely.low), round(rings.likely.high)
    return f"{low} to {high}" if low < high else f"{low}"
