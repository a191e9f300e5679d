"""Room in the holes of a woven part to weave all its tails in.

Every thread has two tails, and each is woven through beads that the thread has passed already. The
passes that a hole takes beyond those of the stitch are left for them.
"""

from __future__ import annotations

import math

from wellstrung.formulas import thread
from wellstrung.formulas.arithmetic import most
from wellstrung.rulebook import Answer, Ask, Limit, Misfit, Remedy, Rule, Woven, kept, passes_of
from wellstrung.rulebook.plan import Item, Part, beads_named
from wellstrung.rulebook.values import Quantity, derived, exact, times, total
from wellstrung.rulebook.wording import about, in_unit_of

TAIL_WOVEN_IN = Limit(
    "tail woven in",
    75.0,
    "mm",
    "each tail turns through the beads for a hand's width, common practice",
)


def check(woven: Woven, ask: Ask) -> Answer:
    part = woven.part
    passes = passes_of(ask.plan, part)
    if passes is None or not part.takes("needle"):
        return None
    room, tails = _room(woven, passes, ask), _tails(woven, ask)
    each = ask.limit(TAIL_WOVEN_IN)
    needed = times(each, tails)
    margin = room - needed
    if answer := kept(margin):
        return answer
    return Misfit(
        says=f"the holes of `{part.name}` {{are|may be}} too full: they leave {about(room)} for"
        f" {tails} tails, each woven in for {in_unit_of(each.middle, each)}",
        place=part.place_of("thread"),
        found=about(room),
        needed=f"{in_unit_of(needed.middle, each)} of free holes",
        remedies=(
            Remedy(
                "take a thinner thread or a finer needle, work with longer threads, or weave a"
                " tail in while the work still grows"
            ),
        ),
        margin=margin,
    )


def _room(woven: Woven, passes: int, ask: Ask) -> Quantity:
    part, beads = woven.part, ask.beads_of(woven.part)
    groups = [(bead, ask.beads_in(part, bead, 1), passes) for bead in beads]
    core = part.bead("core_bead")
    if core is not None:  # the stitch goes on through the core, and once through each loop
        outer = [ask.plan.beads[name] for name in beads_named(part, "outer")]
        tightest = min(outer, key=lambda bead: ask.of(bead, "hole").middle)
        groups = [(core, ask.of(part, "core_beads"), passes)]
        groups += [(tightest, ask.of(part, "outer_beads"), 1)]
    free = [_free(part, *group, ask) for group in groups]
    return total(f"{part.name} free in its holes", "mm", free)


def _free(part: Part, bead: Item, beads: Quantity, passes: int, ask: Ask) -> Quantity:
    return derived(
        f"free in {bead.name}",
        "mm",
        room_for_tails,
        beads=beads,
        bead_length=ask.of(bead, "length"),
        hole=ask.of(bead, "hole"),
        needle=ask.of(part, "line" if part.without_needle else "needle"),
        line=ask.of(part, "line"),
        passes=exact("passes", passes),
        source="passes that a hole takes: see `thread.py`; counting",
    )


def room_for_tails(
    beads: float, bead_length: float, hole: float, needle: float, line: float, passes: float
) -> float:
    """Length of tail, mm, that goes into the holes beside the passes of the stitch.

    Counting, on the passes that `thread.passes_possible` gives.

    >>> room_for_tails(beads=100, bead_length=1.5, hole=0.7, needle=0.46, line=0.28, passes=2)
    150.0
    """
    return beads * bead_length * most(0, thread.passes_possible(hole, needle, line) - passes)


def _tails(woven: Woven, ask: Ask) -> int:
    """Two for every thread that the work may take; two in all where the plan gives no length."""
    part = woven.part
    if not part.has("thread", "working_length") or not part.has("thread", "tail"):
        return 2
    working, tail = part.length("thread", "working_length"), part.length("thread", "tail")
    woven_with = max(working.likely.low - 2 * tail.likely.high, 1.0)
    return 2 * math.ceil(ask.of(part, "thread").likely.high / woven_with)


RULE = Rule(
    name="tail-hides",
    family="length",
    subject=Woven,
    check=check,
    fault="no room for the tails",
    title=(
        "the holes of a woven part have room for all its tails (how long a tail is:"
        " `tail-allowance`)"
    ),
    why="in a small panel of full holes the last tail has nowhere to go, and its stub shows",
    limits=(TAIL_WOVEN_IN,),
    sources=(
        "passes that a hole takes, k = 1.3, held against print: trade table `stitch_facts`, thread"
        " packed in a hole, per thread: from memory",
        "each tail woven in for about 75 mm: common practice, no source",
    ),
    bad="a panel of 40 beads of 15/0 on thread of 0.2 mm with four tails",
    good="a panel of 200 beads of 11/0 on thread of 0.15 mm with four tails",
    level="warning",
    yields_to=("hole-passes", "needle-pass"),
)
