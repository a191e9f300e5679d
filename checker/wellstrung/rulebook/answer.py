"""What a rule may answer: kept, a misfit with its remedies, or a caution."""

from __future__ import annotations

from typing import Literal

from msgspec import Struct

from wellstrung.common.places import Edit, Place
from wellstrung.quantity.value import Quantity

Level = Literal["error", "warning", "caution"]


class Held(Struct, frozen=True):
    """The rule was kept; `margin` is what is left, where there is one to name."""

    margin: Quantity | None = None


class Remedy(Struct, frozen=True):
    """What would put it right, in words and - where it can be said exactly - as edits.

    Edits are tried on a changed copy of the plan before they are offered.
    """

    text: str
    edits: tuple[Edit, ...] = ()


class Misfit(Struct, frozen=True):
    """The rule was not kept.

    `says` is for a margin that fails over its whole range, `may` for one that fails over part of
    it. Without a margin the misfit is a matter of counting and stands as it is. `at_most` lowers
    the level of one kind of misfit below the rule's own.
    """

    says: str
    place: Place
    found: str
    needed: str
    remedies: tuple[Remedy, ...]
    margin: Quantity | None = None
    may: str = ""
    at_most: Level = "error"
    also: tuple[Place, ...] = ()
    working: tuple[str, ...] = ()


class Caution(Struct, frozen=True):
    """A safety text; it never changes the outcome and cannot be accepted away."""

    says: str
    place: Place


Answer = Held | Misfit | Caution | None
