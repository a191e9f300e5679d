"""Beaded beads: woven round a ball or a tube, and strung as beads of the palette."""

from __future__ import annotations

import math

from generated import lines, palette
from generated.draft import Bead, Draft, Fields


def part(draft: Draft) -> tuple[str, Bead]:
    """A part woven round a core, and the bead of the palette that it is."""
    bead = palette.seed(draft, "11/0", kind=draft.pick("cylinder", "cylinder", "round"))
    wide, hole = draft.between(6, 12, 1), draft.pick(1.5, 2.0)
    ring = math.pi / math.atan(bead.length * 1.05 / (wide + bead.outside))
    core: Fields = {"outside": draft.length(wide), "hole": draft.length(hole)}
    long = wide
    if draft.chance(40):
        long = draft.between(8, 18, 1)
        core["length"] = draft.length(long)
    draft.maybe(80, core, mass=f"{round(wide / 20, 1)} g")
    draft.maybe(30, core, material=draft.pick("wood", "painted wood", "acrylic"))
    fields: Fields = {"kind": "beaded bead", "core": core, "beads": bead.name}
    if draft.chance(75):
        around = 2 * round(draft.fit(ring) / 2)
        fields |= {"stitch": "tubular peyote", "around": max(8, around)}
    else:
        fields |= {"stitch": "tubular netting", "around": max(4, round(ring / 4)), "loop": 5}
    lines.woven_on(draft, fields)
    if draft.chance(15):
        fields["measured"] = {"outside": f"{wide + 3} mm"}
        draft.maybe(60, fields["measured"], length=f"{long + 3} mm")
        draft.maybe(40, fields["measured"], mass="2 g")
    made = draft.add("beaded", fields)
    name = draft.free("knob")
    draft.beads[name] = {"type": "beaded bead", "woven": made}
    return made, Bead(name, wide + 3.2, long + 3.0, hole, 1)


def woven(draft: Draft) -> Bead:
    """A bead of the palette that is woven round a core, with the steps that make it."""
    made, bead = part(draft)
    draft.step("make", "weave", made)
    draft.step("finish", "finish thread", made)
    return bead
