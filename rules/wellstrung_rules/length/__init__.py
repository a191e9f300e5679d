"""Rules of the family `length`, and what several of them share."""

from wellstrung.rulebook.values import Cell, Quantity, table
from wellstrung.rulebook.wording import in_unit_of


def fact(name: str) -> Cell:
    """A figure of the trade table `stitch_facts`."""
    return table("stitch_facts").row(name).cell("figure")


def round_number(like: Quantity, *lengths: float) -> str:
    """A length as one would cut it: of some in mm, the first of the shortest to write like this."""
    return min((in_unit_of(length, like) for length in lengths), key=len)
