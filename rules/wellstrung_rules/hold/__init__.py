"""Rules of the family `hold`, and how they state a load."""

from wellstrung.rulebook.values import Quantity
from wellstrung.rulebook.wording import about, number


def in_wear(load: Quantity, factor: Quantity, like: Quantity | None = None) -> str:
    """A load at rest, and the factor for the tugs of wear."""
    return f"{about(load, like)}, and like {number(factor.middle)} times that in wear"
