"""Parts, their kinds and their stitches: what a plugin can bring, as records."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator, Mapping
from enum import Enum, auto
from typing import Any, Literal

from msgspec import Struct, field

from wellstrung.common import units
from wellstrung.common.places import Place
from wellstrung.model.item import Bead, Item
from wellstrung.model.looks import Look, StitchLook
from wellstrung.model.sold import Sold, assumed
from wellstrung.quantity.value import Quantity


class Role(Enum):
    """How a kind of part takes part in joins.

    `WOVEN` is woven work that does not lie along the body: a pouch, a bezel. `GLUE` and what
    follows it have no place in the run, nor do they hang.
    """

    ROPE = auto()
    BAND = auto()
    WOVEN = auto()
    STRAND = auto()
    CAP = auto()
    CONE = auto()
    CRIMP = auto()
    TIP = auto()
    SLEEVE = auto()
    BAIL = auto()
    DROP = auto()
    RING = auto()
    EYED = auto()
    CLASP = auto()
    GLUE = auto()
    THREAD = auto()
    CORE = auto()
    CHAIN = auto()
    COVER = auto()
    BACK = auto()
    LOOSE = auto()


#: what is woven at the bench with a thread of its own
WOVEN_WORK = frozenset({Role.ROPE, Role.BAND, Role.WOVEN})
#: what has no place in the piece by itself
UNPLACED = frozenset(
    {Role.GLUE, Role.THREAD, Role.CORE, Role.CHAIN, Role.COVER, Role.BACK, Role.LOOSE}
)


class EyeField(Struct, frozen=True):
    """Where a kind keeps a set of eyes: the path of its fields; empty when they are worked out.

    `swinging` is where a type that swings keeps them, as at the ring and the bar of a toggle,
    unless it has them where the others do. `counted` counts the holes of beads along a woven edge,
    and `counted_by` are the fields of which the author would change the first that is there: such
    eyes carry what hangs from them, and their part neither runs nor hangs by them. `carries` says
    the same of the eyes of a part that goes round what it hangs from. Through eyes that are
    `strung`, strands run on from one side of the part to the other. An eye that `opens` is sold
    open, unless the plan says that it is closed. `called` are the trade's words for them, or for
    the half of a clasp that has them. Those `at_start` lie
    where drawings begin their part; those `along` a side as long as the work are seldom counted.
    """

    path: tuple[str, ...] = ()
    several: bool = False
    swinging: tuple[str, ...] = ()
    counted: Callable[[Part], int] | None = None
    counted_by: tuple[str, ...] = ()
    carries: bool = False
    strung: bool = False
    opens: bool = False
    at_start: bool = False
    called: tuple[str, ...] = ()
    along: bool = False

    @property
    def closed(self) -> bool:
        """Whether it is an edge that closes on itself, as its beads are counted around."""
        return "around" in self.counted_by


class BandEnd(Struct, frozen=True):
    """How half a clasp takes the end of a band: the fields for how wide and how thick it may be.

    What lies `on` the band is no wider than that; any other takes in its whole width.
    `grips` is the field that, where it is written, holds the band without thread; `joined_by` the
    verb of the step that puts it on.
    """

    across: tuple[str, ...]
    thick: tuple[str, ...] = ()
    grips: tuple[str, ...] = ()
    joined_by: str = "sew"
    on: bool = False


class Traits(Struct, frozen=True):
    """What a kind of part, or one type of it, is at the bench.

    made_by: the verb of the step that makes it; empty where no step of its own does.
    bought: whether it is bought by the piece; what is not is made of other supplies.
    of_wire: whether a length of wire is cut for it; on_wire_end: whether it is put on memory wire.
    on_wire: whether it is a wire whose loops are turned at the bench, with beads on it or without.
    takes_tops: whether its wire goes through the hole across the top of a drop, both its ends up.
    cut_from: the field that names the chain it is cut from.
    cups: whether its links are cups, none of which takes a ring; of a cap, whether it holds one.
    of_rings: the field that names the jump ring it is woven of.
    made_round: the field for the stone in it; glued_on: what that is glued on, in order.
    two_ends: whether it meets what stands before it by its first eyes, what follows by its last.
    pressed: whether flaps pressed over it hold what it takes, with glue or without.
    side_by_side: the field that counts how many of it lie side by side in one place.
    gathers: the same, and its last eyes take a strand each, whichever side of it they come from.
    opens: whether a ring, a link or the eyes of a part can be opened; None where each eye says it.
    gapes: whether it closes end to end, so that a pull opens it and thread slips out.
    stiff: the quantity that is its straight length where it lies stiff in the run.
    in_ear: whether its wire goes through an ear; `stays_in` where it stays there, as a post does.
    grips_spectacles: whether it takes the arm of spectacles; band_end: how it takes a band's end.
    hoop: the quantity that is the outside of a round wire, onto which a row can be woven.
    swings: whether it closes by a bar that swings through a ring.
    slides: whether knots close it that slide along its cord, so that it never opens.
    magnetic, buttons: whether magnets close it, or a button in a loop.
    named_by_type: whether its type alone names it in a shop.
    stretches, steel, resists_cuts: of thread: elastic; wire that no bead cuts and that is sold by
    its size alone; thread of which one pass still holds when an edge has cut another.
    springs: of thread: hardened steel wire, which stays coiled and springs away when it is cut.
    """

    made_by: str = ""
    bought: bool = True
    of_wire: bool = False
    on_wire: bool = False
    takes_tops: bool = False
    cut_from: str = ""
    cups: bool = False
    made_round: str = ""
    glued_on: tuple[str, ...] = ()
    of_rings: str = ""
    two_ends: bool = False
    gathers: bool = False
    pressed: bool = False
    on_wire_end: bool = False
    side_by_side: tuple[str, ...] = ()
    opens: bool | None = None
    gapes: bool = False
    stiff: str = ""
    in_ear: bool = False
    stays_in: bool = False
    grips_spectacles: bool = False
    band_end: BandEnd | None = None
    hoop: str = ""
    swings: bool = False
    slides: bool = False
    magnetic: bool = False
    buttons: bool = False
    named_by_type: bool = False
    stretches: bool = False
    steel: bool = False
    resists_cuts: bool = False
    springs: bool = False


#: how a quantity of a part is worked out: from the part and the `Quantities` of its plan
Formula = Callable[..., Quantity]


class Kind(Struct, frozen=True, eq=False):
    """A kind of part: its name, schema fragment, role in joins, eyes, quantities and traits.

    `types` are the traits of those that differ by type, by the text of the field `typed_by`. `look`
    is how it is drawn, `sold` how shops sell it by a size, and `bead_counts` how many of each bead
    a part takes, where shares of all do not say it. `passes` is how often thread goes through a
    bead at most of what is made without a stitch.
    """

    name: str
    fragment: Mapping[str, object]
    role: Role = Role.LOOSE
    eyes: Mapping[str, EyeField] = field(default_factory=dict)
    quantities: Mapping[str, Formula] = field(default_factory=dict)
    traits: Traits = Traits()
    types: Mapping[str, Traits] = field(default_factory=dict)
    typed_by: str = "type"
    look: Look = Look()
    passes: int = 0
    bead_counts: Callable[..., Mapping[str, Quantity]] | None = None
    sold: Sold | None = None


class Stitch(Struct, frozen=True, eq=False):
    """One stitch: its name, what it gives for a part, and the print it was held against.

    `refuses` yields what is wrong with the counts of a part, with the place to change; `makes` is
    the kind of part it is for, and `also_makes` other kinds that it can make. `columns` says what
    one of its columns is: a bead, a unit of several, or nothing, where its rounds run on as a
    spiral and a pattern need not come out in one. `passes` is how often the thread goes through a
    bead at least, through one of the core where it has one, and 0 where a cord carries the beads.
    `asides` are quantities that a rule asks for and no report lists: what the part would be,
    counted otherwise. `knot` is the row of trade table `knots` that ties it all along; `cored` has
    a core of beads and outer loops, `core_bead` and `outer`; `bare` is cord alone, without a bead.
    `side_every` says of a band which of its rows end at one of its long edges: each, or every
    second; the columns of one that weaves `in_pairs` are an even number. `how` is a sentence for a
    student on what the hand does. `look` is how it is drawn; without one as plain cloth.
    """

    name: str
    quantities: Mapping[str, Formula]
    held_against: str
    refuses: Callable[[Part], Iterator[tuple[str, Place]]]
    makes: str = "woven rope"
    also_makes: tuple[str, ...] = ()
    columns: Literal["beads", "units", ""] = ""
    passes: int = 2
    asides: Mapping[str, Formula] = field(default_factory=dict)
    knot: str = ""
    cored: bool = False
    bare: bool = False
    side_every: int = 1
    in_pairs: bool = False
    how: str = ""
    look: StitchLook | None = None


class Part(Item, frozen=True, eq=False):
    """One entry under `parts`.

    `stitch` is the one that makes it, None where no stitch does; `parts` and `beads` are those of
    the plan by name, `threads` the types of thread.
    """

    kind: Kind
    stitch: Stitch | None
    parts: Mapping[str, Part]
    beads: Mapping[str, Bead]
    threads: Mapping[str, Traits]

    @property
    def noun(self) -> str:
        """The kind of part in the author's word for it."""
        return self.said("kind")

    @property
    def type(self) -> str:
        """Its type as written; empty where it has none."""
        typed = self.node.entries.get(self.kind.typed_by)
        return str(typed.node.value) if typed else ""

    @property
    def traits(self) -> Traits:
        """What it is at the bench, by its type where its kind has types."""
        return self.kind.types.get(self.type, self.kind.traits)

    @property
    def by_size(self) -> bool:
        """Whether it is given as shops sell it, and what it does not state is assumed."""
        return self.kind.sold is not None and self.has("size")

    def implies(self, field_name: str) -> bool:
        """Whether nobody wrote a field, and the size by which it is sold fills it."""
        return field_name in self.node.added

    def assumed(self, *path: str) -> Quantity | None:
        """What is usual of a field that a finding given as sold does not state."""
        if self.kind.sold is None or not self.has("size"):
            return None
        row = self.kind.sold.row(self.kind.name, self.node)
        if row is None:
            return None
        return assumed(self.name, row, path, self.node, self.place_of(*path))

    @property
    def shape(self) -> str:
        """The shape that it is drawn in, by its type where types look different."""
        return self.kind.look.types.get(self.type, self.kind.look.shape)

    @property
    def thread(self) -> Traits:
        """What its thread is, by its type."""
        return self.threads.get(self.of_thread("type"), _PLAIN)

    def of_thread(self, field_name: str) -> str:
        """What it says of its thread, or else the spool that it names; empty where neither does."""
        if self.has("thread", field_name):
            return self.text("thread", field_name)
        spool = self.part("thread", "spool")
        return spool.text(field_name) if spool is not None and spool.has(field_name) else ""

    @property
    def without_needle(self) -> bool:
        """Whether it is worked without a needle, as with wire or a stiffened end."""
        return self.has("needle") and self.text("needle") == "none"

    @property
    def thread_said(self) -> str:
        """The type of its thread in the author's own words; empty where nothing shows it."""
        spool = self.part("thread", "spool")
        node = self.node_at("thread", "type") or (spool.node_at("type") if spool else None)
        return str(getattr(node, "text", "")) if node is not None else ""

    @property
    def cut_from(self) -> Part | None:
        """The chain that it is cut from; None where it is cut from none."""
        field_name = self.traits.cut_from
        return self.part(field_name) if field_name else None

    def part(self, *path: str) -> Part | None:
        """The part that a field names; None where it is not there, or names none."""
        return self.parts.get(self.text(*path)) if self.has(*path) else None

    def bead(self, *path: str) -> Bead | None:
        """The bead that a field names; None where it is not there."""
        return self.beads.get(self.text(*path)) if self.has(*path) else None

    def takes(self, field_name: str) -> bool:
        """Whether its kind has such a field, written or not."""
        fields: Any = self.kind.fragment["properties"]
        return field_name in fields

    @property
    def on_cords(self) -> bool:
        """Whether cords at its edges, and not its thread, hold what is at its ends."""
        return self.has("cords")

    @property
    def measurable(self) -> Collection[str]:
        """The fields that may stand under `measured:`, by the kind's schema."""
        fields: Any = self.kind.fragment["properties"]
        measured: Collection[str] = fields.get("measured", {}).get("properties", ())
        return measured

    @property
    def fills_rest(self) -> bool:
        """Whether it is as long as the rest of the run leaves room for; nothing bought can be."""
        node = self.node_at("length")
        return node is not None and not self.traits.bought and node.value == units.REST

    def eye_path(self, key: str) -> tuple[str, ...]:
        """Where the fields of a set of eyes stand in this part, or would stand."""
        eye = self.kind.eyes[key]
        swings = self.traits.swings and eye.swinging and not self.has(*eye.path[:-1])
        return eye.swinging if swings else eye.path


_PLAIN = Traits()
