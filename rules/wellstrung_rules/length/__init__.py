"""Rules of the family `length`, and what several of them share."""

from contextlib import suppress

from wellstrung.rulebook import (
    Ask,
    Choice,
    Fitted,
    Limit,
    Misfit,
    Missing,
    Remedy,
    Verdict,
    compare,
)
from wellstrung.rulebook.plan import Goal, Role
from wellstrung.rulebook.remedies import with_length
from wellstrung.rulebook.values import Cell, Quantity, exact, table, total
from wellstrung.rulebook.wording import at_least, between, in_unit_of

_PRINTED = "trade table `bracelet_eases`, the widest range seen"
_WORN = table("bracelet_eases").row("worn")
EASE_LEAST = Limit(
    "least ease",
    6.0,
    "mm",
    "over a wrist, common practice, no source",
    Choice(_WORN.cell("ease_least").value, 6.0, _PRINTED),
)
EASE_MOST = Limit(
    "most ease",
    25.0,
    "mm",
    "over a wrist, common practice, no source",
    Choice(25.0, _WORN.cell("ease_most").value, _PRINTED),
)
_SNUGLY = "trade table `anklets`, snug: several pages"
_LOOSELY = "trade table `anklets`, loose: one page"
_SNUG, _LOOSE = (table("anklets").row(name).cell("ease") for name in ("snug", "loose"))
ANKLET_LEAST = Limit(
    "least ease of an anklet", _SNUG.value, "mm", _SNUGLY, Choice(_SNUG.low, _SNUG.high, _SNUGLY)
)
ANKLET_MOST = Limit(
    "most ease of an anklet",
    _LOOSE.value,
    "mm",
    _LOOSELY,
    Choice(_LOOSE.low, _LOOSE.high, _LOOSELY),
)
_WIDE = "a wide band takes a quarter to half a US size more, common practice, no source"
_SIZE = "a US size is 2.55 mm round, see `wellstrung.common.units.ring_sizes`; common practice"
RING_LEAST = Limit("least ease of a ring", -0.6, "mm", _WIDE, Choice(-0.6, 1.3, _WIDE))
RING_MOST = Limit("most ease of a ring", 2.6, "mm", _SIZE, Choice(1.3, 2.6, _SIZE))
SNUG = Limit("snug", 6.0, "mm", "skin gives a quarter of an inch, common practice, no source")
SNUG_BEADS = Limit(
    "snug beads", 12.7, "mm", "beads press into the skin twice as far, common practice, no source"
)
RING_SNUG = Limit(
    "snug ring", 2.6, "mm", "no ring two sizes too small passes the knuckle: " + _SIZE
)
#: the least and the most ease round what is measured
EASES = {
    "wrist": (EASE_LEAST, EASE_MOST),
    "ankle": (ANKLET_LEAST, ANKLET_MOST),
    "finger": (RING_LEAST, RING_MOST),
}


def fact(name: str) -> Cell:
    """A figure of the trade table `stitch_facts`."""
    return table("stitch_facts").row(name).cell("figure")


def round_number(like: Quantity, *lengths: float) -> str:
    """A length as one would cut it: of some in mm, the first of the shortest to write like this."""
    return min((in_unit_of(length, like) for length in lengths), key=len)


def asked_for(goal: Goal) -> str:
    """The length that the plan asks for, in words, with what is assumed of it."""
    return f"the plan asks for {goal.text}" + (f" ({goal.assumed})" if goal.assumed else "")


def long_already(goal: Goal, wanted: Quantity, lacks: str, ask: Ask) -> Misfit | None:
    """A run that is too long by what is known of it, whatever the rest adds."""
    known: list[Quantity] = []
    for entry in ask.plan.run:
        with suppress(Missing):
            known.append(ask.adds(entry))
    so_far = total("known of the run", "mm", known)
    margin = exact("longest wanted", goal.window.high, "mm") - so_far
    if compare(margin) is not Verdict.FAILS:
        return None
    over = so_far.middle - goal.window.high
    comes_to = f"{in_unit_of(so_far.middle, wanted)}, likely {between(*so_far.likely, wanted)}"
    shorter = Remedy(f"make the run at least {at_least(over, wanted)} shorter, and write {lacks}")
    says = f"what is known of its run is {comes_to} already"
    return off_length(goal, "long", says, comes_to, (shorter,), margin, ask)


def off_length(
    goal: Goal,
    word: str,
    says: str,
    found: str,
    remedies: tuple[Remedy, ...],
    margin: Quantity,
    ask: Ask,
) -> Misfit:
    """A piece that is too `word`, short or long, for the length that its plan asks for."""
    return Misfit(
        says=f"the piece {{is|may be}} too {word}: {says}; {asked_for(goal)}",
        place=goal.place,
        found=found,
        needed=goal.text,
        remedies=remedies,
        margin=margin,
        fault=f"piece too {word}",
        also=tuple(rope.place_of("length") for rope in with_length(ask)),
    )


def closed_by(worn: Fitted, ask: Ask, room: Quantity) -> Quantity | None:
    """By how much the piece can be closed at all, mm; None on elastic or coils, which open."""
    strands = [part for part in ask.plan.in_run if part.kind.role is Role.STRAND]
    if any(strand.thread.stretches or strand.thread.springs for strand in strands):
        return None
    snug = SNUG_BEADS if strands else SNUG
    return room + ask.limit(RING_SNUG if worn.measure == "finger" else snug)
