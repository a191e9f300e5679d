"""Stitches: what a woven part measures and takes, one module a stitch."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from typing import TYPE_CHECKING, Literal

from msgspec import Struct, field

if TYPE_CHECKING:
    from wellstrung.common.places import Place
    from wellstrung.derived.of_plan import Quantities
    from wellstrung.model.parts import Part
    from wellstrung.quantity.value import Quantity


class Stitch(Struct, frozen=True):
    """One stitch: its name, what it gives for a part, and the print it was held against.

    `refuses` yields what is wrong with the counts of a part, with the place to mend; `makes` is the
    kind of part it is for, and `also_makes` other kinds that it can make. `columns` says what one
    of its columns is: a bead, a unit of several, or nothing, where its rounds run on as a spiral
    and a pattern need not come out in one. `passes` is how often the thread goes through a bead at
    least, through one of the core where it has one, and 0 where a cord carries the beads. `asides`
    are quantities that a rule asks for and no report lists: what the part would be, counted
    otherwise.
    """

    name: str
    quantities: Mapping[str, Callable[[Part, Quantities], Quantity]]
    held_against: str
    refuses: Callable[[Part], Iterator[tuple[str, Place]]]
    makes: str = "woven rope"
    also_makes: tuple[str, ...] = ()
    columns: Literal["beads", "units", ""] = ""
    passes: int = 2
    asides: Mapping[str, Callable[[Part, Quantities], Quantity]] = field(default_factory=dict)
