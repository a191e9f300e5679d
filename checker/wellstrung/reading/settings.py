"""The maker's own settings, with the defaults that hold where the maker says nothing.

Every default gives its reason; "common practice" means that no printed source was found.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal, NamedTuple

from msgspec import Struct, field

from wellstrung.common.choice import Choice
from wellstrung.common.places import Place
from wellstrung.reading import tree
from wellstrung.reading.learnt import Learnt
from wellstrung.reading.pricing import Pricing


class Setting(NamedTuple):
    """One setting: a length in mm, a time in min, or a plain share or factor without a unit.

    Where makers differ, a default has the span in which they choose; a bench settles it.
    """

    value: float
    unit: str
    reason: str
    choice: Choice | None = None


_ASKED = "common practice, no source"
#: How far a bought or made size may be off its nominal, either way unless in `UPWARDS`.
ALLOWANCES: Mapping[str, Setting] = {
    "ring size": Setting(0.2, "mm", "spring-back and saw cut of jump rings, common practice"),
    "ring spring-back": Setting(
        0.26,
        "mm",
        "a ring is wider than its mandrel: trade table `jump_rings`, ring by inside",
    ),
    "bead length": Setting(
        0.1, "mm", "a bead against its stated length, at most 2 % of it, common practice"
    ),
    "wire": Setting(0.02, "mm", "drawn wire against its gauge, common practice"),
    "cap size": Setting(0.1, "mm", "bore of cast or stamped caps, common practice"),
    "eye size": Setting(0.1, "mm", "hole of cast or stamped eyes, common practice"),
    "part length": Setting(0.3, "mm", "length of a bought metal part, common practice"),
    "link size": Setting(0.05, "mm", "links of machine-made chain, common practice"),
    "woven length": Setting(2.0, "mm", "stopping a woven rope at a length, common practice"),
    "crimp hole": Setting(
        0.08,
        "mm",
        "a crimp's hole against its size: crimps of 1.0 and 1.3 mm are sold for two wires of 0.46"
        " and 0.61 mm, trade table `beading_wires`",
    ),
    "crimp loop": Setting(1.0, "mm", "loop of wire in front of a crimp, 2 mm, common practice"),
    "stone size": Setting(0.1, "mm", "a calibrated stone against its nominal, common practice"),
    "eye wall": Setting(
        0.4, "mm", "the unmeasured wall of a bought eye, 0.5 to 1.3 mm, common practice, no source"
    ),
    "toggle seat": Setting(1.0, "mm", "how a toggle settles when closed, common practice"),
    # of what is measured for `swatches`
    "gauge on beadwork": Setting(
        0.2, "mm", "calipers just touching woven work, which gives: common practice, no source"
    ),
    "gauge on beads": Setting(
        0.1, "mm", "calipers on a row of beads or knots, its ends included: common practice"
    ),
    "gauge of scales": Setting(
        0.1,
        "g",
        "scales that show tenths of a gram, which a seller of scales calls the most used for"
        " jewellery: quicktest.co.uk, Weights and weighing machines, copy seen",
    ),
    "bead to bead": Setting(
        0.05, "", "one bead against the mean of its lot, which ten stand for: from memory"
    ),
    "hand from day to day": Setting(
        0.02,
        "",
        "one hand in one stitch, from swatch to swatch: from memory; three swatches or more show"
        " your own",
    ),
    "timing from day to day": Setting(
        0.1, "", "the same hands at the same work: from memory; three timings or more show your own"
    ),
    # of a length that a plan asks for without a tolerance; `other` is every other piece
    "necklace length": Setting(13.0, "mm", f"half an inch, {_ASKED}"),
    "bracelet length": Setting(6.0, "mm", f"a quarter of an inch, {_ASKED}"),
    "woven cuff length": Setting(3.0, "mm", f"a woven cuff does not give, {_ASKED}"),
    "anklet length": Setting(6.0, "mm", f"a quarter of an inch, {_ASKED}"),
    "lariat length": Setting(25.0, "mm", f"an inch, {_ASKED}"),
    "ring length": Setting(0.6, "mm", f"a quarter of a US ring size, {_ASKED}"),
    "other length": Setting(3.0, "mm", f"an eighth of an inch, {_ASKED}"),
}
#: Allowances by which a size may be more than its nominal, and never less.
UPWARDS = frozenset({"ring spring-back"})
#: Allowances that are no more than this share of a small size: wire springs back by its curve.
SHARE_AT_MOST = {"bead length": 0.02, "ring size": 0.05, "ring spring-back": 0.052}

_SPARE = Choice(0.05, 0.2)
#: Limits that quantities and the work need; every other limit is declared beside its rule.
LIMITS: Mapping[str, Setting] = {
    "bezel loose": Setting(
        0.5, "mm", "closing rounds of smaller beads draw in half a millimetre, common practice"
    ),
    "pin grip": Setting(10.0, "mm", "wire that the pliers hold at each loop, common practice"),
    "minutes a joint": Setting(
        1.5, "min", "to spread glue in a cap and seat the rope's end, common practice"
    ),
    "smallest mix": Setting(
        0.5, "ml", "less of two parts cannot be halved by eye, common practice, no source"
    ),
    "strands as one": Setting(
        5.0, "mm", "strands within this lie as one bundle, common practice, no source"
    ),
    "between sessions": Setting(
        10080.0, "min", "a class meets once a week, common practice; a plan's `between` beats it"
    ),
    "spare Japanese beads": Setting(
        0.1,
        "",
        "a tenth is culled or lost: trade table `stitch_facts`, spare Japanese beads: from memory",
        _SPARE,
    ),
    "spare Czech beads": Setting(
        0.15,
        "",
        "Czech beads vary more: trade table `stitch_facts`, spare Czech beads: from memory",
        _SPARE,
    ),
    "spare cylinder beads": Setting(
        0.05,
        "",
        "cylinders vary least: trade table `stitch_facts`, spare cylinder beads: from memory",
        _SPARE,
    ),
}


#: What the unit of a weaving rate is called.
BEADS_PER_MINUTE = "beads/min"
_YOUR_OWN = "time your own and write it in a bench file"
_RECALLED = f"from memory: {_YOUR_OWN}"
_TIMED = "a teacher's timing of one class, common practice"
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
    "beaded braid": Setting(12.0, BEADS_PER_MINUTE, _RECALLED),
    "stringing": Setting(20.0, BEADS_PER_MINUTE, _RECALLED),
    # a leg of fringe goes down, round its last bead and up again, and is drawn up to its place
    "fringe": Setting(10.0, BEADS_PER_MINUTE, f"{_TIMED}: {_YOUR_OWN}"),
    "finish thread": Setting(4.0, "min", f"each thread end, back through a few rows, {_RECALLED}"),
    "slide": Setting(1.0, "min", _RECALLED),
    "close ring": Setting(1.0, "min", f"each ring, {_RECALLED}"),
    "glue": Setting(5.0, "min", f"each joint, mixing included, {_RECALLED}"),
    "hang": Setting(2.0, "min", f"each piece with its ring, {_RECALLED}"),
    "cut": Setting(1.0, "min", f"each piece, counting its links, {_RECALLED}"),
    "measure": Setting(3.0, "min", _RECALLED),
    "knot": Setting(1.2, "min", f"each knot, drawn up to its bead, {_TIMED}: {_YOUR_OWN}"),
    "crimp": Setting(2.0, "min", f"each crimp, {_RECALLED}"),
    "wrap loop": Setting(3.0, "min", f"each loop, {_RECALLED}"),
    "sew": Setting(10.0, "min", f"each place, {_RECALLED}"),
    "pack": Setting(5.0, "min", _RECALLED),
    "take apart": Setting(15.0, "min", f"each strand, its beads counted on a board, {_RECALLED}"),
    "clean": Setting(15.0, "min", f"each part, {_RECALLED}"),
}
#: How much longer than by these rates the maker takes, and a student longer than the maker.
PACES: Mapping[str, Setting] = {
    "maker": Setting(1.0, "", "the rates as they stand"),
    "student": Setting(3.0, "", f"{_TIMED}: {_YOUR_OWN}", Choice(2.0, 4.0, _TIMED)),
}
#: How far off a rate that nobody timed here may be, either way, as a share: from memory.
RATE_SPREAD = 0.4


#: whose quantity a limit of the maker's own may be, beside kinds of parts and names
PIECE, PART = "piece", "part"


class HouseLimit(Struct, frozen=True):
    """A limit of the maker's own for a quantity, in base units, and as it is written.

    `whose` is `piece`, `part` or `bead` for every one, a name in the plans, or a `kind` of part or
    a word for it. With `pieces` it is for those alone; `because` is the maker's reason.
    """

    name: str
    whose: str
    kind: str
    what: str
    low: float | None
    high: float | None
    unit: str
    text: str
    level: Literal["warning", "error"]
    pieces: tuple[str, ...]
    because: str
    place: Place


class Bench(Struct, frozen=True):
    """The settings in force: the maker's own over the defaults.

    `places` says where the maker writes one, by its group and its name. `swatches` is the file
    where it has some, and `learnt` what they teach.
    """

    file: str | None = None
    allowances: Mapping[str, Setting] = field(default_factory=lambda: ALLOWANCES)
    limits: Mapping[str, Setting] = field(default_factory=lambda: LIMITS)
    rates: Mapping[str, Setting] = field(default_factory=lambda: RATES)
    paces: Mapping[str, Setting] = field(default_factory=lambda: PACES)
    prices: Mapping[str, str] = field(default_factory=dict)
    budget: str | None = None
    places: Mapping[tuple[str, str], Place] = field(default_factory=dict)
    house: tuple[HouseLimit, ...] = ()
    pricing: Pricing = Pricing()
    swatches: tree.Read | None = None
    learnt: Learnt | None = None
