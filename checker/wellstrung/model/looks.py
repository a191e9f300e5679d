"""How kinds of parts and stitches look, as plain data: drawings are made from it and no name.

A drawing never asks for the name of a kind, a type or a stitch; what a plugin brings is drawn by
its look as all others are.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from enum import Enum, auto

from msgspec import Struct, field

#: a size that a label adds to the name of a part: its quantity, and the words after it
LabelSize = tuple[str, str]


class Look(Struct, frozen=True, eq=False):
    """How drawings show a kind of part.

    `shape` is one that `drawing.looks` has; a part without one is a dashed box. `types` has the
    shapes of those types of the kind that look otherwise. A label adds the first size of `label`
    that the plan has to the part's name, for the second half of a clasp of `second_label`. A piece
    with a part in its run that `hangs` is drawn as it hangs, from there down.
    """

    shape: str = ""
    types: Mapping[str, str] = field(default_factory=dict)
    label: tuple[LabelSize, ...] = ()
    second_label: tuple[LabelSize, ...] = ()
    hangs: bool = False


class Pattern(Enum):
    """How the beads of woven work lie, seen from the front.

    * `ROWS`: side by side, row on row.
    * `BRICKS`: every second row half a bead aside, holes along the work.
    * `COLUMNS`: a row on every other column, half a bead on from the columns beside it.
    * `STEPS`: a row climbs round the work, half a bead aside of the row before.
    * `SQUARES`: on the sides of squares, holes along each side; a column is a square.
    * `LOOPS`: loops of several beads, each hooked into those of the row before; a column is a loop,
      of round work half a mesh.
    * `COILS`: a core of beads, and a row is a loop of beads that lies round it.
    * `WINGS`: a core of beads, and a row is two loops of beads that lie to its left and its right.
    * `DAISIES`: a row is a ring of a loop's beads with one in its middle.
    * `SLANTS`: a row is a column of six beads, aslant, in each of one or two chains.
    * `CHEVRONS`: a row is three beads along one edge and a leg that leads to the other.
    * `COMBS`: on the sides of hexagons, holes along each side; a column is a hexagon, and every
      second row lies half of one aside.
    """

    ROWS = auto()
    BRICKS = auto()
    COLUMNS = auto()
    STEPS = auto()
    SQUARES = auto()
    LOOPS = auto()
    COILS = auto()
    WINGS = auto()
    DAISIES = auto()
    SLANTS = auto()
    CHEVRONS = auto()
    COMBS = auto()


class Thread(Enum):
    """What is seen of the thread between the beads.

    * `WARPS`: a straight warp beside every column, from end to end.
    * `EDGES`: a cord along both edges, from end to end.
    * `BRIDGES`: from bead to bead along the edge that the next row hangs from.
    * `LINKS`: straight from row to row, at both ends of every bead.
    * `RUNGS`: from row to row along both edges.
    * `ROUND`: round every corner from bead to bead.
    * `CORDS`: cords that cross under the beads.
    * `SIDES`: along the sides of a mesh, from shared bead to shared bead.
    """

    WARPS = auto()
    EDGES = auto()
    BRIDGES = auto()
    LINKS = auto()
    RUNGS = auto()
    ROUND = auto()
    CORDS = auto()
    SIDES = auto()


class Face(Struct, frozen=True):
    """What of a woven part is counted on its face.

    `columns` are those that are seen in its first row; a shaped part counts each of its `rows`, and
    how far aside of the middle each lies, in beads: `asides`. `group` neighbouring beads lie as
    one; `between` two pairs of columns lie so many beads across; a loop has `loop` beads, and
    reaches along `core` of those that it lies round; `sides` is the field of a part that names the
    bead of those that lie along it, where it is another.
    """

    columns: int
    rows: tuple[int, ...] = ()
    group: int = 1
    loop: int = 1
    core: int = 1
    between: int = 0
    sides: str = ""
    asides: tuple[float, ...] = ()


class Weave(Struct, frozen=True, eq=False):
    """The look of a stitch that weaves beads.

    `face` counts what is seen of a part; raises Missing. `rows` is the quantity that counts its
    rows; without one they follow from its beads. Of work that `is_round` half of each row is seen.
    Holes run across the work, or `along` it, and the beads of each column lean from there by
    `leans`, degrees, one column after another and again from the first; columns that `wind` go
    round the work as their beads lean; `shifts` is how many beads further round each row begins, of
    work whose listed beads go round it again and again. Of work that is `deep` beads that point
    away from the eye are seen at the corners. `breadth` is the quantity of how wide it is seen;
    without one its width or its outside.
    """

    pattern: Pattern
    face: Callable[..., Face]
    rows: str = ""
    is_round: bool = False
    along: bool = False
    leans: tuple[float, ...] = (0.0,)
    winds: bool = False
    shifts: int = 0
    deep: bool = False
    thread: Thread | None = None
    breadth: str = ""


class Strung(Struct, frozen=True):
    """The look of beads on a line, with a knot after each where it is `knotted`.

    Those `in_groups` have bare line after every so many, as the part's `group` says.
    """

    knotted: bool = False
    in_groups: bool = False


class Braided(Struct, frozen=True, eq=False):
    """The look of cords that cross: `warps` counts those of a part."""

    warps: Callable[..., int]


#: the look of a stitch
StitchLook = Weave | Strung | Braided
