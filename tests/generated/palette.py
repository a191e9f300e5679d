"""Beads of the palette: seed beads of the tables, and others with sizes of their own."""

from __future__ import annotations

from generated.draft import Bead, Draft, Fields

#: seed beads by type, size and make, with outside, length, hole (mm) and how many weigh a gram
SEED_BEADS = {
    ("round", "11/0", "Japanese"): (2.1, 1.45, 0.8, 110),
    ("round", "8/0", "Japanese"): (3.0, 2.1, 1.05, 35),
    ("round", "15/0", "Japanese"): (1.5, 1.1, 0.6, 265),
    ("round", "6/0", "Japanese"): (4.0, 2.6, 1.45, 15),
    ("round", "11/0", "Czech"): (2.05, 1.45, 0.7, 125),
    ("round", "10/0", "Czech"): (2.3, 1.6, 0.8, 90),
    ("round", "8/0", "Czech"): (2.9, 2.1, 0.9, 41),
    ("round", "6/0", "Czech"): (4.0, 2.6, 1.1, 14),
    ("round", "13/0", "Czech"): (1.65, 1.04, 0.5, 290),
    ("round", "15/0", "Czech"): (1.5, 1.1, 0.45, 280),
    ("round", "12/0", "Czech"): (1.9, 1.15, 0.6, 180),
    ("cylinder", "11/0", ""): (1.6, 1.3, 0.8, 200),
    ("cylinder", "10/0", ""): (2.2, 1.7, 1.0, 95),
    ("cylinder", "8/0", ""): (3.0, 2.6, 1.3, 31),
    ("cylinder", "15/0", ""): (1.3, 1.1, 0.65, 365),
    ("hex", "11/0", ""): (1.8, 1.6, 0.8, 144),
    ("charlotte", "13/0", ""): (1.65, 1.04, 0.5, 290),
}
_NAMES = (
    "fern", "moss", "dusk", "chalk", "plum", "ember", "straw", "slate", "rye", "clay", "ivy",
    "frost", "sloe", "brine", "amber light", "night", "petal", "rust", "willow", "cream",
)  # fmt: skip
#: types that are sold by mm: by how wide, how long or how high they are
_WIDE = (
    "round", "glass pearl", "freshwater pearl", "pearl", "stone", "shell", "wood", "pressed",
    "fire-polished", "bicone", "cube", "acrylic", "triangle", "rondelle", "two-hole",
    "two-hole tile", "two-hole oval", "chip", "heishi", "spacer", "bead cap", "metal bead",
    "large-hole bead",
)  # fmt: skip
_HIGH = ("drop", "dagger", "magatama")
_FINISHES = ("matte", "lined", "opaque", "frosted", "glossy")


def _named(draft: Draft) -> str:
    return draft.free(draft.pick(*_NAMES))


def seed(draft: Draft, *sizes: str, kind: str = "", measured: int = 12) -> Bead:
    """A seed bead, of one of the sizes and of one type where that matters.

    `measured` is in how many of a hundred plans its maker has measured it.
    """
    rows = [
        key for key in SEED_BEADS if (not sizes or key[1] in sizes) and (not kind or key[0] == kind)
    ]
    key = draft.pick(*rows)
    outside, length, hole, per_gram = SEED_BEADS[key]
    fields: Fields = {"type": key[0], "size": key[1]}
    if key[2]:
        fields["make"] = key[2]
    name = _named(draft)
    draft.maybe(60, fields, colour=f"{name} {draft.pick('green', 'grey', 'blue', 'red')}")
    draft.maybe(30, fields, finish=draft.pick(*_FINISHES))
    draft.maybe(3, fields, note="from two lots")
    draft.maybe(4, fields, edges=draft.pick("smooth", "sharp"))
    if draft.chance(measured):
        of_lot: Fields = {"outside": f"{outside} ± 0.05 mm", "length": f"{length} ± 0.03 mm"}
        if draft.chance(40):
            of_lot["hole"] = f"{hole} mm"
        if draft.chance(30):
            of_lot["per_gram"] = per_gram
        fields["measured"] = of_lot
    draft.beads[name] = fields
    return Bead(name, outside, length, hole, per_gram)


def another(draft: Draft, like: Bead) -> Bead:
    """A bead of the same sizes in another colour."""
    fields = {**draft.beads[like.name]}
    name = _named(draft)
    fields["colour"] = f"{name} {draft.pick('white', 'black', 'brown')}"
    draft.beads[name] = fields
    return like._replace(name=name)


def two_hole(draft: Draft) -> Bead:
    """A flat bead with two holes, as it is sold."""
    name, size = _named(draft), draft.pick(5, 6)
    draft.beads[name] = {
        "type": draft.pick("two-hole tile", "two-hole"),
        "size": f"{size} x {size} mm",
    }
    return Bead(name, size, size, 0.8, 8.0)


def other(draft: Draft, low: float, high: float, *, hole: float = 0.0) -> Bead:
    """A bead with sizes of its own: a pearl, a stone, a pressed bead, a bugle."""
    outside = draft.between(low, high, 0.5)
    long = draft.chance(15)
    length = round(outside * (draft.pick(1.5, 2.0) if long else 1), 2)
    bore = hole or draft.pick(0.8, 0.9, 1.0, 1.0, 1.2, 1.5)
    volume = 0.52 * outside**2 * length if not long else 0.7 * outside**2 * length
    per_gram = round(1000 / (volume * draft.pick(2.5, 2.5, 2.7, 2.4)), 2)
    fields: Fields = {
        "type": "other",
        "outside": draft.sizes.length(outside, tolerance=50),
        "length": draft.sizes.length(length, tolerance=50),
        "hole": draft.sizes.length(bore, tolerance=20),
    }
    draft.maybe(85, fields, per_gram=per_gram)
    sharp = draft.chance(8)
    if sharp or draft.chance(40):
        fields["edges"] = "sharp" if sharp else "smooth"
    draft.maybe(3, fields, shared=2)
    draft.maybe(6, fields, curved="no" if length < 20 else "yes")
    draft.maybe(40, fields, colour=draft.pick("sea blue", "cream", "clear", "smoke"))
    draft.maybe(30, fields, material=draft.pick("glass", "freshwater pearl", "crystal", "quartz"))
    name = _named(draft)
    if long or draft.chance(35):  # one of the tables, whose sizes the plan writes
        kind = "bugle" if long else draft.pick(*_WIDE, *_HIGH)
        largest = length if long else outside * 1.5 if kind in _HIGH else outside
        fields |= {"type": kind, "size": f"{largest:g} mm"}
        if kind in _WIDE:
            del fields["outside"]
    draft.beads[name] = fields
    return Bead(name, outside, length, bore, per_gram, sharp)
