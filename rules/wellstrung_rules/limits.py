"""Limits that several rules share; every other limit stands beside its rule."""

from wellstrung.rulebook import Choice, Limit

CAP_LOOSE = Limit(
    "cap loose",
    1.5,
    "mm",
    "trade table `caps`, cap over beads, -0.5..+1.5 mm: from memory",
)
CAP_TIGHT = Limit(
    "cap tight",
    0.05,
    "",
    "a hollow rope gives by about a twentieth of its outside, common practice",
)
PETAL_ROUND = Limit(
    "petals round a middle",
    0.8,
    "",
    "petals in a row against the way round the middle of a daisy; six 11/0 about an 8/0 reach 0.92"
    " of it, for the middle lies a little above them: common practice, no source",
)
FRINGE_CROWD = Limit(
    "fringe crowd",
    1.75,
    "",
    "a leg to every column of peyote is usual, and round beads are half as wide again as long:"
    " such legs lie a little behind each other, common practice, no source",
)
HOLD_FACTOR = Limit(
    "hold factor",
    5.0,
    "",
    "breaking over working load 5:1 to 12:1, CI 1401-06 (copy seen); the least of it",
    Choice(1.0, 5.0, "the load at rest", careful=True),
)
RING_SWING = Limit("ring swing", 0.2, "mm", "room left for a ring to swing, common practice")
RING_WIRE = Limit(
    "ring wire",
    0.7,
    "mm",
    "21 AWG (0.72 mm) stays shut, 22 AWG is pulled open: trade table `jump_rings`",
)
SWING_SHARE = Limit(
    "ring swing share",
    0.02,
    "",
    "a small ring swings in less: links of chain are 2 to 3 wires wide, common practice",
)
