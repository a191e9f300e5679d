"""The maker's own settings, with the defaults that hold where the maker says nothing.

Every default gives its reason; "common practice" means that no printed source was found.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import NamedTuple

from msgspec import Struct, field


class Setting(NamedTuple):
    """One setting: a length in mm, a time in min, or a plain share or factor without a unit."""

    value: float
    unit: str
    reason: str


#: How far a bought or made size may be off its nominal, either way.
ALLOWANCES: Mapping[str, Setting] = {
    "ring size": Setting(0.2, "mm", "spring-back and saw cut of jump rings, common practice"),
    "wire": Setting(0.02, "mm", "drawn wire against its gauge, common practice"),
    "cap size": Setting(0.1, "mm", "bore of cast or stamped caps, common practice"),
    "eye size": Setting(0.1, "mm", "hole of cast or stamped eyes, common practice"),
    "part length": Setting(0.3, "mm", "length of a bought metal part, common practice"),
    "link size": Setting(0.05, "mm", "links of machine-made chain, common practice"),
    "woven length": Setting(2.0, "mm", "stopping a woven rope at a length, common practice"),
    "crimp loop": Setting(1.0, "mm", "loop of wire in front of a crimp, 2 mm, common practice"),
    "stone size": Setting(0.1, "mm", "a calibrated stone against its nominal, common practice"),
    "toggle seat": Setting(1.0, "mm", "how a toggle settles when closed, common practice"),
}

#: Limits that a maker can hold an opinion on.
LIMITS: Mapping[str, Setting] = {
    "cap tight": Setting(
        0.05, "", "a hollow rope gives by about a twentieth of its outside, common practice"
    ),
    "cap loose": Setting(
        1.5, "mm", "end-cap check where the cap covers beads, -0.5..+1.5 mm: derived, no print"
    ),
    "plain braid tight": Setting(
        1.0,
        "mm",
        "whipping pulls a braid without beads together: trade table `caps`, -1.0..+0.3 mm",
    ),
    "plain braid loose": Setting(
        0.3, "mm", "end-cap check for braids without beads: trade table `caps`, -1.0..+0.3 mm"
    ),
    "bezel loose": Setting(
        0.5, "mm", "closing rounds of smaller beads draw in half a millimetre, common practice"
    ),
    "clasp wider": Setting(
        3.0, "mm", "a clasp up to 1.5 mm wider at each edge of its band, common practice, no source"
    ),
    "nub loose": Setting(
        1.0, "mm", "a nub whipped with thread, glue half a millimetre all round, common practice"
    ),
    "nub in cap": Setting(
        0.8, "", "a nub fills 0.8 of its cap's depth: trade table `caps`, derived"
    ),
    "tail woven in": Setting(
        75.0, "mm", "each tail turns through the beads for a hand's width, common practice"
    ),
    "strand off": Setting(
        5.0, "mm", "made up by how close the beads sit, common practice, no source"
    ),
    "strands as one": Setting(
        5.0, "mm", "strands within this lie as one bundle, common practice, no source"
    ),
    "beads alike": Setting(
        0.2, "", "beads in one grid differ by a fifth at most along the hole, common practice"
    ),
    "fringe crowd": Setting(
        1.75,
        "",
        "a leg to every column of peyote is usual, and round beads are half as wide again as long:"
        " such legs lie a little behind each other, common practice, no source",
    ),
    "loop loose": Setting(
        1.25, "", "a loop a quarter wider than the button's edge comes off, common practice"
    ),
    "weaving-in passes": Setting(1.0, "", "an end woven in passes once more, common practice"),
    "pin grip": Setting(10.0, "mm", "wire that the pliers hold at each loop, common practice"),
    "hold factor": Setting(
        5.0, "", "breaking over working load 5:1 to 12:1, CI 1401-06 (copy seen); the least of it"
    ),
    "magnet factor": Setting(
        2.0, "", "a tug in wear is about twice the weight, common practice, no source"
    ),
    "ear weight": Setting(
        8.0, "g", "the most for all day, trade table `earring_weights`: chosen from seven pages"
    ),
    "ring swing": Setting(0.2, "mm", "room left for a ring to swing, common practice"),
    "minutes a joint": Setting(
        1.5, "min", "to spread glue in a cap and seat the rope's end, common practice"
    ),
    "smallest mix": Setting(
        0.5, "ml", "less of two parts cannot be halved by eye, common practice, no source"
    ),
    "between sessions": Setting(
        10080.0, "min", "a class meets once a week, common practice; a plan's `between` beats it"
    ),
    "thread between tails": Setting(
        300.0, "mm", "less to weave with is more joins than weaving, common practice, no source"
    ),
    "spare Japanese beads": Setting(
        0.1, "", "a tenth is culled or lost, trade table `stitch_facts`: from memory, no print"
    ),
    "spare Czech beads": Setting(
        0.15, "", "Czech beads vary more, trade table `stitch_facts`: from memory, no print"
    ),
    "spare cylinder beads": Setting(
        0.05, "", "cylinders vary least, trade table `stitch_facts`: from memory, no print"
    ),
    "cap depth share": Setting(
        0.4, "", "a woven end goes into a cap by about 0.4 of its bore, common practice, no source"
    ),
    "cap depth": Setting(4.0, "mm", "deep enough for a woven end of any bore, common practice"),
    "ring opened": Setting(
        0.6, "", "share of an open ring's inside that it still closes true around, common practice"
    ),
    "ring wire": Setting(
        0.7, "mm", "21 AWG (0.72 mm) stays shut, 22 AWG is pulled open: trade table `jump_rings`"
    ),
    "ring slack": Setting(
        8.0, "", "inside over wire is 3 to 7.5 in the trade table `jump_rings`, a little more held"
    ),
    "centre off": Setting(
        3.0, "mm", "a centre piece further off the middle is seen, common practice, no source"
    ),
    "rigid curve": Setting(
        5.0, "mm", "a straight bar of 30 mm lies well on a wrist of 16.5 cm, common practice"
    ),
    "elastic stretch": Setting(
        1.5, "", "times its length that a strand on elastic goes on over a hand, common practice"
    ),
    "ring stiff": Setting(
        1.5, "", "inside over wire; 4 mm of 18 AWG, the stiffest common ring, has 1.9: derived"
    ),
}


#: What the unit of a weaving rate is called.
BEADS_PER_MINUTE = "beads/min"
_RECALLED = "from memory: time your own and write it in a bench file"
#: How fast hands are. Weaving and stringing in beads, every other step by the piece.
RATES: Mapping[str, Setting] = {
    # any stitch that has no rate of its own
    "weaving": Setting(7.0, BEADS_PER_MINUTE, _RECALLED),
    "tubular peyote": Setting(7.0, BEADS_PER_MINUTE, _RECALLED),
    "tubular herringbone": Setting(6.0, BEADS_PER_MINUTE, _RECALLED),
    "brick": Setting(5.0, BEADS_PER_MINUTE, _RECALLED),
    "ladder": Setting(4.0, BEADS_PER_MINUTE, _RECALLED),
    "square": Setting(4.0, BEADS_PER_MINUTE, _RECALLED),
    "loom": Setting(12.0, BEADS_PER_MINUTE, _RECALLED),
    "right-angle weave": Setting(5.0, BEADS_PER_MINUTE, _RECALLED),
    "slip-stitch bead crochet": Setting(8.0, BEADS_PER_MINUTE, _RECALLED),
    "8-warp beaded braid": Setting(12.0, BEADS_PER_MINUTE, _RECALLED),
    "stringing": Setting(20.0, BEADS_PER_MINUTE, _RECALLED),
    "finish thread": Setting(10.0, "min", f"each thread end, {_RECALLED}"),
    "slide": Setting(1.0, "min", _RECALLED),
    "close ring": Setting(1.0, "min", f"each ring, {_RECALLED}"),
    "glue": Setting(5.0, "min", f"each joint, mixing included, {_RECALLED}"),
    "hang": Setting(2.0, "min", f"each piece with its ring, {_RECALLED}"),
    "cut": Setting(1.0, "min", f"each piece, counting its links, {_RECALLED}"),
    "measure": Setting(3.0, "min", _RECALLED),
    "knot": Setting(0.5, "min", f"each knot, {_RECALLED}"),
    "crimp": Setting(2.0, "min", f"each crimp, {_RECALLED}"),
    "wrap loop": Setting(3.0, "min", f"each loop, {_RECALLED}"),
    "sew": Setting(10.0, "min", f"each place, {_RECALLED}"),
    "pack": Setting(5.0, "min", _RECALLED),
}
#: How much longer than by these rates the maker takes, and a student longer than the maker.
PACES: Mapping[str, Setting] = {
    "maker": Setting(1.0, "", "the rates as they stand"),
    "student": Setting(2.0, "", _RECALLED),
}
#: How far off a remembered rate may be, either way, as a share: from memory, like the rates.
RATE_SPREAD = 0.4


class Bench(Struct, frozen=True):
    """The settings in force: the maker's own over the defaults."""

    file: str | None = None
    allowances: Mapping[str, Setting] = field(default_factory=lambda: ALLOWANCES)
    limits: Mapping[str, Setting] = field(default_factory=lambda: LIMITS)
    rates: Mapping[str, Setting] = field(default_factory=lambda: RATES)
    paces: Mapping[str, Setting] = field(default_factory=lambda: PACES)
    prices: Mapping[str, str] = field(default_factory=dict)
    budget: str | None = None
