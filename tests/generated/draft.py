"""A plan while it is being written: its palette, its parts, and what is known of their sizes."""

from __future__ import annotations

from typing import Any, NamedTuple

from generated.choices import Choices, between, chance, pick
from generated.sizes import Sizes, Wire

Fields = dict[str, Any]


class Bead(NamedTuple):
    """A bead of the palette and its sizes, mm."""

    name: str
    outside: float
    length: float
    hole: float
    per_gram: float
    sharp: bool = False


class Draft:
    """One plan in the making. Parts are added by functions that give back their names."""

    def __init__(self, choices: Choices) -> None:
        self.choices = choices
        self.sizes = Sizes(choices)
        self.head: Fields = {}
        self.beads: Fields = {}
        self.parts: Fields = {}
        self.run: list[Any] = []
        self.hung: list[Any] = []
        self.steps: list[tuple[int, Fields]] = []
        self.supplies: list[Fields] = []
        self.tail: Fields = {}
        #: how far sizes are off from what fits: a share of plans is meant to be near a limit
        self.off = pick(choices, (0.0, 0.0, 0.0, 0.0, 0.03, -0.03, 0.1, -0.1))
        self.metal = pick(choices, METALS)

    def pick(self, *options: Any) -> Any:
        """One of the options."""
        return pick(self.choices, options)

    def chance(self, percent: int) -> bool:
        """Whether something happens that does so in so many of a hundred plans."""
        return chance(self.choices, percent)

    def whole(self, low: int, high: int) -> int:
        """A whole number."""
        return self.choices.whole(low, high)

    def between(self, low: float, high: float, step: float = 0.1) -> float:
        """A number, in steps."""
        return between(self.choices, low, high, step)

    def within(self, limits: tuple[float, float], step: float) -> float:
        """A number between two limits, in steps."""
        return between(self.choices, *limits, step)

    def length(self, mm: float, tolerance: int = 0) -> str:
        """A length as written."""
        return self.sizes.length(mm, tolerance=tolerance)

    def fit(self, mm: float) -> float:
        """A size that has to fit, put off a little in some plans."""
        return round(mm * (1 + self.off), 2)

    def wire(self, low: float, high: float) -> Wire:
        """A wire between two thicknesses."""
        return self.sizes.wire(low, high)

    def add(self, name: str, fields: Fields) -> str:
        """Adds a part under a name of its own, and gives that name."""
        if self.chance(6):
            fields["note"] = self.pick(*NOTES)
        if self.chance(6):
            fields["source"] = self.pick(*SOURCES)
        name = self.free(name)
        self.parts[name] = fields
        return name

    def free(self, name: str) -> str:
        """A name that no part has yet."""
        taken, number = name, 2
        while taken in self.parts or taken in self.beads:
            taken, number = f"{name} {number}", number + 1
        return taken

    def maybe(self, percent: int, fields: Fields, **more: Any) -> None:
        """Sets fields in so many of a hundred plans."""
        if self.chance(percent):
            fields.update({key.replace("__", " "): value for key, value in more.items()})

    def metalwork(self, fields: Fields, grams: float) -> None:
        """What metal a bought part is of, what its supplier states and what it weighs."""
        metal = self.metal if self.chance(85) else pick(self.choices, METALS)
        self.maybe(88, fields, metal=metal)
        self.maybe(40, fields, states=self.pick(*STATES))
        self.maybe(90, fields, mass=f"{max(0.02, round(grams, 2))} g")

    def step(self, stage: str, do: str, part: str = "", **more: Any) -> None:
        """A step of the work; steps come in the order of their stages."""
        fields: Fields = {"do": do}
        if part:
            fields["part"] = part
        fields.update({key.rstrip("_"): value for key, value in more.items()})
        self.maybe(6, fields, takes=self.pick("20 min", "5 min", "1 h"))
        self.maybe(6, fields, note=self.pick("slowly", "in good light"))
        self.steps.append((STAGES.index(stage), fields))

    def in_order(self) -> list[Fields]:
        """The steps of the work, stage by stage."""
        return [fields for _, fields in sorted(self.steps, key=lambda step: step[0])]

    @property
    def made_by_hand(self) -> tuple[str, ...]:
        """Names of what is woven, braided or strung."""
        kinds = ("woven rope", "woven band", "braid", "strand", "pouch", "bezel")
        return tuple(name for name, part in self.parts.items() if part["kind"] in kinds)


#: what is done first, and what after it
STAGES = (
    "apart", "make", "measure", "slide", "fringe", "sew", "finish", "knot", "glue", "wait", "cut",
    "wire", "hang", "close", "wear",
)  # fmt: skip

METALS = (
    "brass", "sterling silver", "plated brass", "stainless steel", "copper", "bronze", "pewter",
    "plated steel", "plated pewter", "niobium", "titanium", "14k gold", "gold-filled brass",
    "aluminium", "phosphor bronze", "fine silver", "red brass",
)  # fmt: skip
STATES = (
    ["lead free", "cadmium free"], ["nickel free"], ["nickel free", "lead free", "cadmium free"],
    ["nickel release below the limit"],
)  # fmt: skip
NOTES = ("the last of the box", "culled", "look at the hole first", "bought loose")
SOURCES = ("page 12 of the catalogue", "the label on the bag", "measured on the sample card")
