"""Rules of the family `length`, and what several of them share."""

from contextlib import suppress

from wellstrung.rulebook import Ask, Misfit, Missing, Remedy, Verdict, compare
from wellstrung.rulebook.plan import Goal
from wellstrung.rulebook.remedies import with_length
from wellstrung.rulebook.values import Cell, Quantity, exact, table, total
from wellstrung.rulebook.wording import at_least, between, in_unit_of


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
