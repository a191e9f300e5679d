"""Rules of the family `length`, and what several of them share."""

from collections.abc import Callable

from wellstrung.rulebook import Ask, Remedy
from wellstrung.rulebook.plan import Part
from wellstrung.rulebook.values import Cell, Quantity, table
from wellstrung.rulebook.wording import in_unit_of


def fact(name: str) -> Cell:
    """A figure of the trade table `stitch_facts`."""
    return table("stitch_facts").row(name).cell("figure")


def round_number(like: Quantity, *lengths: float) -> str:
    """A length as one would cut it: of some in mm, the first of the shortest to write like this."""
    return min((in_unit_of(length, like) for length in lengths), key=len)


def with_length(ask: Ask) -> list[Part]:
    """The woven parts of the run with a written length of their own."""
    return [
        part
        for part in ask.plan.in_run
        if part.stitch and part.has("length") and not part.fills_rest
    ]


def woven_longer(ask: Ask, more: float, rounded: Callable[[float], int]) -> tuple[Remedy, ...]:
    """A remedy that adds `more` mm to the run, if only one of its parts has a written length."""
    ropes = with_length(ask)
    if len(ropes) != 1:
        return ()
    (rope,) = ropes
    length = rope.length("length")
    new = length.middle + more / sum(entry.parts.count(rope) for entry in ask.plan.run)
    if new <= 0:
        return ()
    text = in_unit_of(rounded(new), length)
    words = f"weave {text} of `{rope.name}` instead of {length.spelling}"
    return (Remedy.write(rope.place_of("length"), text, words),)
