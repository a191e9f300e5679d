"""How many of each bead a part takes: by shares, or as a list of beads is strung."""

from __future__ import annotations

import math

from wellstrung.derived.embellished import beads_added
from wellstrung.derived.nets import in_net, lists_loops
from wellstrung.model.beads import bead_shares, beads_listed, beads_named, strung_so_far
from wellstrung.model.item import Item
from wellstrung.model.parts import Part, Role
from wellstrung.model.plan import Quantities
from wellstrung.quantity.arithmetic import derived, exact, product, times, total
from wellstrung.quantity.value import Quantity


def beads_in(part: Part, bead: Item, count: int, ask: Quantities) -> Quantity:
    """How many of one bead a number of one part takes."""
    if part.stitch is not None and part.stitch.cored:
        return times(_of_cored(part, bead, ask), count)
    if part.kind.bead_counts is not None:
        return times(part.kind.bead_counts(part, ask)[bead.name], count)
    share = _share(part, bead.name, ask) / part.beads[bead.name].shared
    added = beads_added(part, bead.name, ask)
    if lists_loops(part):
        terms = [in_net(part, bead.name, ask), *added]
        return times(total(f"{bead.name} in {part.name}", "", terms), count)
    if added:
        if share:
            woven = product(bead.name, "", ask.of(part, "beads"), exact("share", share))
            added.append(woven)
        return times(total(f"{bead.name} in {part.name}", "", added), count)
    beads = ask.of(part, "beads")
    if share == 1:
        return times(beads, count)
    name = f"{bead.name} in {count} x {part.name}"
    return product(name, "", exact("count", count), beads, exact("share", share))


def _share(part: Part, name: str, ask: Quantities) -> float:
    """The share that a bead has of all the beads of a part.

    Rows that run on along a list, and whose beads are counted, may end within it.
    """
    share, listed = bead_shares(part).get(name, 0.0), beads_listed(part)
    runs_on = part.kind.role in (Role.ROPE, Role.BAND) and part.takes("thread")
    if not listed or not runs_on or any(map(part.has, _NOT_RUN_ON)):
        return share
    beads = ask.of(part, "beads")
    count = round(beads.middle)
    if beads.worst.high > beads.worst.low or not math.isclose(count, beads.middle):
        return share
    return strung_so_far(listed, count)[name] / count


#: fields beside which a list of beads is no row that runs on
_NOT_RUN_ON = ("one_for", "loop", "sides", "outer")


def _of_cored(part: Part, bead: Item, ask: Quantities) -> Quantity:
    """How many of one bead a cored rope takes: its core has more at the start than a repeat."""
    loop = beads_named(part, "outer")
    core = 1 if part.bead("core_bead") is bead else 0
    return derived(
        f"{bead.name} in {part.name}",
        "",
        lambda core, core_beads, share, outer_beads: core * core_beads + share * outer_beads,
        core=exact("core", core),
        core_beads=ask.of(part, "core_beads"),
        share=exact("share", loop.get(bead.name, 0) / sum(loop.values())),
        outer_beads=ask.of(part, "outer_beads"),
    )
