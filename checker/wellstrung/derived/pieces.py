"""Rings and findings: how many a plan takes and how many are on hand."""

from __future__ import annotations

from wellstrung.model.item import Item, Missing
from wellstrung.model.parts import Formula, Part
from wellstrung.model.plan import Quantities
from wellstrung.quantity.arithmetic import exact, times, total
from wellstrung.quantity.value import Quantity
from wellstrung.subjects.counts import how_many, taken_in_all, weaves_of
from wellstrung.subjects.supplies import supply_lines


def pieces_needed(part: Part, ask: Quantities) -> Quantity:
    """How many of a ring or a finding the run and what is hung take."""
    placed = exact(f"{part.name}.needed", taken_in_all(ask.plan).get(part.name, 0))
    weaves = weaves_of(ask.plan).get(part, [])
    woven = [times(ask.of(one, "rings"), how_many(ask.plan, one)) for one in weaves]
    return total(f"{part.name}.needed", "", [placed, *woven]) if woven else placed


def pieces_on_hand(part: Part, ask: Quantities) -> Quantity:
    """How many of a part the lines of supplies hold; raises Missing."""
    lines = supply_lines(ask.plan, "part", part.name)
    if not lines:
        raise Missing(f"a line `{{part: {part.name}, count: ...}}` under `supplies`")
    return exact(f"{part.name}.on hand", sum(_counted(line) for line in lines))


def _counted(line: Item) -> int:
    packed = line.count("packs", default=1) * line.count("pack_of", default=0)
    counted = line.count("count", default=0)
    if not packed and not counted:
        raise line.missing("count")
    return packed + counted


OF_BOUGHT: dict[str, Formula] = {
    "pieces_needed": pieces_needed,
    "pieces_on_hand": pieces_on_hand,
}
