"""Ways of making a piece: which pieces they suit, which beads they take, what may close them."""

from __future__ import annotations

from collections.abc import Callable

from msgspec import Struct

from wellstrung.start.making.draft import Draft
from wellstrung.start.question import Choice

EYED = ("lobster", "toggle", "spring ring", "hook", "magnetic")
#: the only clasp that is offered for a child's neck
BREAKAWAY = "breakaway clasp"
BUTTON = "button and loop"
SLIDE = "slide"
KNOT = "knot"
OVER_HEAD = "over the head"
THROUGH = "through its loop"
OPEN = "open ends"


class Role(Struct, frozen=True):
    """Beads that a way of making asks for; `several` may be given as a repeat."""

    name: str
    asks: str
    proposes: str
    several: bool = False


class Style(Struct, frozen=True):
    """A stitch, or a way of stringing or wiring, as a maker would name it."""

    name: str
    about: str
    technique: str
    pieces: tuple[str, ...]
    roles: tuple[Role, ...]
    build: Callable[[Draft], None]
    closings: tuple[str, ...] = ()
    #: how many beads round or across: the name of the question's field, and its answers
    wide: str = ""
    counts: tuple[Choice, ...] = ()
    usual: str = ""
    threads: tuple[str, ...] = ()
    #: which parts end it: `cap`, `crimp`, `bead tip`, `cone` or none
    ends: str = ""
    #: the tolerance of what comes out in whole beads or links, where the author gave none
    counted: str = ""
    #: other words for it, beside those of the trade for its stitch
    also: tuple[str, ...] = ()
    #: the part that a bail slides over
    work: str = "strand"
    #: whether it is made of links of wire
    linked: bool = False
    #: whether rings join it to its clasp
    ringed: bool = True
