"""What the plan says or implies of the sizes of its parts and beads, for drawings."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import cycle, islice

from wellstrung.drawing.colours import colour_of, mixed
from wellstrung.drawing.looks.tones import grey_of
from wellstrung.model.beads import bead_mix, beads_named
from wellstrung.model.item import Missing
from wellstrung.model.looks import Weave
from wellstrung.model.parts import Part, Role
from wellstrung.rulebook import Ask

#: a size that the plan leaves open is drawn as this, mm, and dashed
UNKNOWN = 8.0
#: beads that repeat after more are drawn as if they repeated after these
_MOST_IN_REPEAT = 10_000


class Sizes:
    """The sizes of one plan, mm, each with a value to draw where the plan does not say."""

    def __init__(self, ask: Ask) -> None:
        self.ask = ask
        self.plan = ask.plan
        self._numbers = {name: number for number, name in enumerate(self.plan.beads)}

    def mm(self, part: Part, what: str) -> float | None:
        """The middle value of a quantity of a part, or None where the plan lacks a value for it."""
        try:
            return self.ask.of(part, what).middle
        except Missing:
            return None

    def known(self, part: Part, what: str, otherwise: float) -> float:
        """The same, or what to draw where the plan does not say."""
        found = self.mm(part, what)
        return otherwise if found is None else found

    def named(self, part: Part, what: str) -> str:
        """The quantity's name, for a shape that draws it; empty where the plan does not say it."""
        return f"{part.name}.{what}" if self.mm(part, what) is not None else ""

    def bead(self, name: str) -> tuple[float, float]:
        """Length along the hole and outside of a bead of the palette."""
        item = self.plan.beads[name]
        try:
            return self.ask.of(item, "length").middle, self.ask.of(item, "outside").middle
        except Missing:
            return UNKNOWN / 4, UNKNOWN / 4

    def mean_bead(self, part: Part) -> tuple[float, float]:
        """The first bead of a part; the mean of those listed for its columns or rounds."""
        look = part.stitch.look if part.stitch is not None else None
        if not part.has("one_for") and not (isinstance(look, Weave) and look.shifts):
            return self.bead(next(self.sequence(part)))
        mix = bead_mix(part)
        each = [(self.bead(name), count / sum(mix.values())) for name, count in mix.items()]
        return sum(bead[0] * n for bead, n in each), sum(bead[1] * n for bead, n in each)

    def height(self, name: str) -> float:
        """How far a bead of the palette hangs with its hole across."""
        try:
            return self.ask.of(self.plan.beads[name], "height").middle
        except Missing:
            return UNKNOWN / 4

    def outline(self, name: str) -> str:
        """The outline of a bead, as its family has it; empty for an oval."""
        family = self.plan.beads[name].family
        return family.text("outline") if family is not None else ""

    def number(self, bead: str) -> int:
        """The place of a bead in the palette, from 0."""
        return self._numbers[bead]

    def colour(self, bead: str) -> str:
        """The colour of a bead as `#rrggbb`: as its plan says, or a grey."""
        return self.own_colour(bead) or grey_of(self.number(bead))

    def own_colour(self, bead: str) -> str | None:
        """The colour that the plan's words give a bead; None where they give none."""
        item = self.plan.beads[bead]
        return colour_of(item.text("colour")) if item.has("colour") else None

    def look(self, bead: str) -> str:
        """The look of a bead: its number in the palette, and its colour."""
        return f"bead b{self.number(bead)} {self.colour(bead)}"

    def from_afar(self, part: Part) -> str:
        """The look of a woven part whose beads are too small to see: their colours mixed.

        Without a colour of its own where the plan gives none of them one.
        """
        mix = self.mix(part)
        own = {bead: self.own_colour(bead) for bead in mix}
        if not any(own.values()):
            return "cloth"
        classes = " ".join(f"b{self.number(bead)}" for bead in mix)
        return f"cloth {classes} {mixed((self.colour(bead), n) for bead, n in mix.items())}"

    def mix(self, part: Part) -> dict[str, int]:
        """The beads of a part; of a rope with a core of beads those that are seen."""
        cored = part.stitch is not None and part.stitch.cored
        return beads_named(part, "outer") if cored else bead_mix(part)

    def sequence(self, part: Part, count: int | None = None, *, first: int = 0) -> Iterator[str]:
        """The beads of a part from the `first` on, one after another: so many, or without end."""
        repeat = self.repeat(part)
        begun = first % len(repeat) if repeat else 0
        return islice(cycle(repeat[begun:] + repeat[:begun]), count)

    def repeat(self, part: Part) -> list[str]:
        """The beads of a part, one after another, once."""
        node = part.node_at("beads")
        names = list(node.value) if node is not None and isinstance(node.value, list) else []
        if not names:
            mix = beads_named(part, "beads") if part.has("sides") else self.mix(part)
            shared = (name for name, share in mix.items() for _ in range(share))
            names = list(islice(shared, _MOST_IN_REPEAT))
        return [str(name) for row in names for name in (row if isinstance(row, list) else [row])]

    def core(self, part: Part) -> str:
        """The bead of a core that loops lie round."""
        return part.text("core_bead")

    def longest_bead(self, part: Part) -> float:
        """Of a strand, whose beads are seen one by one; 0 for other parts."""
        if part.kind.role is not Role.STRAND:
            return 0.0
        return max((self.bead(bead)[0] for bead in self.mix(part)), default=0.0)

    def times_hung(self, part: Part) -> int:
        """How often lines of the plan hang it."""
        return sum(line.times for line in self.plan.hung if line.part is part)

    def across(self, part: Part) -> float:
        """How wide a part is across its line."""
        return self.known(part, self.breadth(part), UNKNOWN / 2)

    def as_woven(self, part: Part) -> float:
        """How wide the woven work of a part is, without the picots along its edges."""
        return self.known(part, "woven.width", self.across(part))

    def breadth(self, part: Part) -> str:
        """The quantity of how wide a part is: the `outside` of a band is its thickness."""
        look = part.stitch.look if part.stitch is not None else None
        own = look.breadth if isinstance(look, Weave) else ""
        return own or ("width" if self.mm(part, "width") is not None else "outside")
