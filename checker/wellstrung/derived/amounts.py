"""What a plan takes of each supply, and what of it is on hand.

Each amount is one quantity, over all the pieces that the plan makes. Rules, supply list, cutting
list, pages and JSON all ask for it.
"""

from __future__ import annotations

import math
from collections.abc import Callable

from wellstrung.model.beads import bead_shares, beads_named
from wellstrung.model.item import Bead, Item, Missing
from wellstrung.model.parts import Part
from wellstrung.model.plan import Quantities
from wellstrung.quantity.arithmetic import derived, exact, product, times, total
from wellstrung.quantity.value import Quantity
from wellstrung.subjects.supplies import beads_needed

# --- beads


def _beads_needed(bead: Bead, ask: Quantities) -> Quantity:
    """Beads that all the parts woven of it take."""
    woven = beads_needed(ask.plan, bead).woven
    return total(
        f"{bead.name}.needed", "", [beads_in(part, bead, count, ask) for part, count in woven]
    )


def beads_in(part: Part, bead: Item, count: int, ask: Quantities) -> Quantity:
    """How many of one bead a number of one part takes."""
    if part.has("core_bead"):
        return times(_of_spiral(part, bead, ask), count)
    beads, share = ask.of(part, "beads"), bead_shares(part)[bead.name]
    if share == 1:
        return times(beads, count)
    return product(
        f"{bead.name} in {count} x {part.name}",
        "",
        exact("count", count),
        beads,
        exact("share", share),
    )


def _of_spiral(part: Part, bead: Item, ask: Quantities) -> Quantity:
    """How many of one bead a spiral rope takes: its core has more at the start than a repeat."""
    loop = beads_named(part, "outer")
    core = 1 if part.text("core_bead") == bead.name else 0
    return derived(
        f"{bead.name} in {part.name}",
        "",
        lambda core, core_beads, share, outer_beads: core * core_beads + share * outer_beads,
        core=exact("core", core),
        core_beads=ask.of(part, "core_beads"),
        share=exact("share", loop.get(bead.name, 0) / sum(loop.values())),
        outer_beads=ask.of(part, "outer_beads"),
    )


def _beads_on_hand(bead: Bead, ask: Quantities) -> Quantity:
    """Beads in the packs on hand, by mass or by count."""
    lines = beads_needed(ask.plan, bead).lines
    if not lines:
        raise Missing(f"a line `{{bead: {bead.name}, pack: ..., packs: ...}}` under `supplies`")
    return total(f"{bead.name}.on hand", "", [in_packs(bead, line, ask) for line in lines])


def in_packs(bead: Item, line: Item, ask: Quantities) -> Quantity:
    """Beads in one line of supplies, by mass or by count."""
    packs = line.count("packs", default=1)
    if not line.has("pack"):
        each = line.count("pack_of") if line.has("pack_of") else 0
        counted = line.count("count") if line.has("count") else 0
        if not each and not counted:
            raise line.missing("pack")
        return exact(f"{bead.name} counted", packs * each + counted)
    return product(
        f"{bead.name} in packs",
        "",
        exact("packs", packs),
        line.mass("pack"),
        ask.of(bead, "per_gram"),
    )


def _spare(bead: Item, ask: Quantities) -> Quantity:
    """Beads wanted over, for culling: a share of those woven, by the make."""
    czech = bead.has("make") and bead.text("make") == "Czech"
    make = "Czech" if czech else "Japanese"
    name = f"spare {'cylinder' if bead.text('type') == 'cylinder' else make} beads"
    setting = ask.plan.bench.limits[name]
    return product(
        f"{bead.name}.spare",
        "",
        ask.of(bead, "needed"),
        exact(name, setting.value, setting.unit, source=setting.reason),
    )


def _packs_wanted(bead: Bead, ask: Quantities) -> Quantity:
    """Packs in the last line of the supplies that make the beads enough, spare ones included."""
    line = beads_needed(ask.plan, bead).lines[-1]
    over = ask.of(bead, "on_hand") - ask.of(bead, "needed") - ask.of(bead, "spare")
    each = line.mass("pack").middle * ask.of(bead, "per_gram").likely.low
    # packs are whole: rounded up at the end, from what is short over the likely range
    more = math.ceil(max(0.0, -over.likely.low) / each)
    return exact(f"{bead.name}.packs", line.count("packs") + more)


OF_BEAD: dict[str, Callable[[Bead, Quantities], Quantity]] = {
    "needed": _beads_needed,
    "spare": _spare,
    "packs_wanted": _packs_wanted,
    "on_hand": _beads_on_hand,
}
