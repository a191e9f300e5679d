"""The plan as a person means it: parts, run, hung, work - frozen records over the located tree.

Built by `building`; nothing here changes once it is made.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Collection, Iterator, Mapping
from enum import Enum, auto
from itertools import pairwise
from typing import TYPE_CHECKING, Any

from msgspec import Struct, field

from wellstrung.common import units
from wellstrung.common.cache import Cache, cached
from wellstrung.common.places import Place
from wellstrung.quantity.value import Cause, Quantity, Spread, Window, leaf
from wellstrung.reading import tree as reading
from wellstrung.reading.settings import Bench

if TYPE_CHECKING:
    from wellstrung.derived.of_plan import Quantities
    from wellstrung.stitches import Stitch


class Missing(Exception):
    """A value that was asked for is not in the plan; `field` is what the author would fill in."""

    def __init__(self, field: str) -> None:
        super().__init__(field)
        self.field = field


class Role(Enum):
    """How a kind of part takes part in joins.

    `WOVEN` is woven work that does not lie along the body: a pouch, a bezel.
    """

    ROPE = auto()
    BAND = auto()
    WOVEN = auto()
    STRAND = auto()
    CAP = auto()
    CONE = auto()
    CRIMP = auto()
    TIP = auto()
    BAIL = auto()
    DROP = auto()
    RING = auto()
    EYED = auto()
    CLASP = auto()
    GLUE = auto()
    LOOSE = auto()


#: what is woven at the bench with a thread of its own
WOVEN_WORK = frozenset({Role.ROPE, Role.BAND, Role.WOVEN})


class EyeField(Struct, frozen=True):
    """Where a kind keeps a set of eyes: the path of its fields; empty when they are worked out.

    `other` is the path for the types of that kind that keep them elsewhere. `counted` counts the
    holes of beads along a woven edge, and `counted_by` is the field that the author would change:
    such eyes carry what hangs from them, and their part neither runs nor hangs by them. `carries`
    says the same of the eyes of a part that goes round what it hangs from.
    """

    path: tuple[str, ...] = ()
    several: bool = False
    other: tuple[str, ...] = ()
    counted: Callable[[Part], int] | None = None
    counted_by: str = ""
    carries: bool = False


class Kind(Struct, frozen=True):
    """A kind of part: its name, schema fragment, role in joins, eyes and quantities."""

    name: str
    fragment: Mapping[str, object]
    role: Role = Role.LOOSE
    eyes: Mapping[str, EyeField] = field(default_factory=dict)
    quantities: Mapping[str, Callable[[Part, Quantities], Quantity]] = field(default_factory=dict)


class Item(Struct, frozen=True, eq=False):
    """A named entry of the plan: a part or a bead of the palette."""

    name: str
    key: reading.Scalar
    node: reading.Mapping
    bench: Bench
    cache: Cache

    def node_at(self, *path: str) -> reading.Node | None:
        """The node at a path of field names, or None."""
        node: reading.Node = self.node
        for step in path:
            entry = node.entries.get(step)
            if entry is None:
                return None
            node = entry.node
        return node

    def has(self, *path: str) -> bool:
        """Whether the author wrote the field."""
        if len(path) == 1:  # the usual question, asked a thousand times a plan
            return path[0] in self.node.entries
        return self.node_at(*path) is not None

    def place_of(self, *path: str) -> Place:
        """The field's place; where it is missing, the place of what should hold it."""
        for end in range(len(path), 0, -1):
            node = self.node_at(*path[:end])
            if node is not None:
                return node.place
        return self.key.place

    @property
    def measurable(self) -> Collection[str]:
        """The fields that may stand under `measured:`."""
        return ()

    def _cure(self, path: tuple[str, ...], parsed: units.Parsed, unit: str) -> str:
        """What the author can do about the spread of a field."""
        what = " ".join(path).replace("_", " ")
        if len(path) == 1 and path[0] in self.measurable:
            return f"measure the {what} and write `measured: {{{path[0]}: ...}}` in `{self.name}`"
        if unit == "°C":
            return f"measure how warm it is where `{self.name}` cures"
        if unit == "N":
            return f"ask for the {what} of `{self.name}` with a closer tolerance"
        if unit == "g":
            return f"weigh `{self.name}` to the tenth of a gram and write its `{path[-1]}`"
        plain = parsed.low == parsed.high and "±" not in parsed.text
        example = f"{parsed.text if plain else units.show(parsed.value, parsed.unit)} ± 0.05 mm"
        return (
            f"measure the {what} of `{self.name}` and write it with its tolerance, as `{example}`"
        )

    def missing(self, *path: str) -> Missing:
        """The exception to raise for a field that is not there."""
        return Missing(f"`{'.'.join(path)}` of `{self.name}`")

    def text(self, *path: str) -> str:
        """A text field as written; raises Missing."""
        node = self.node_at(*path)
        if node is None:
            raise self.missing(*path)
        return str(node.value)

    def texts(self, *path: str) -> tuple[str, ...]:
        """A list of texts as written; empty where it is not there."""
        node = self.node_at(*path)
        return tuple(str(text) for text in node.value) if node is not None else ()

    def count(self, *path: str, default: int | None = None) -> int:
        """A whole number; raises Missing when it is not there and has no default."""
        node = self.node_at(*path)
        if node is None:
            if default is None:
                raise self.missing(*path)
            return default
        return int(node.value)

    def length(self, *path: str, allowance: str = "") -> Quantity:
        """A length in mm; a `measured:` value of the same name beats it; raises Missing."""
        return self._value(units.length, "mm", path, allowance)

    def wire(self, *path: str) -> Quantity:
        """A wire thickness in mm."""
        return self._value(units.wire, "mm", path, "wire")

    def mass(self, *path: str) -> Quantity:
        """A mass in g."""
        return self._value(units.mass, "g", path, "")

    def force(self, *path: str) -> Quantity:
        """A pull in N."""
        return self._value(units.force, "N", path, "")

    def duration(self, *path: str) -> Quantity:
        """A time in minutes."""
        return self._value(units.duration, "min", path, "")

    def volume(self, *path: str) -> Quantity:
        """A volume in ml."""
        return self._value(units.volume, "ml", path, "")

    def temperature(self, *path: str) -> Quantity:
        """How warm it is, in °C."""
        return self._value(units.temperature, "°C", path, "")

    def _value(
        self,
        parse: Callable[[str | int | float], units.Parsed],
        unit: str,
        path: tuple[str, ...],
        allowance: str,
    ) -> Quantity:
        """The field as one leaf, whoever asks."""
        return self.cache.get(Item._read, self, parse, unit, path, allowance)

    def _read(
        self,
        parse: Callable[[str | int | float], units.Parsed],
        unit: str,
        path: tuple[str, ...],
        allowance: str,
    ) -> Quantity:
        measured = self.node_at("measured", *path)
        node = measured or self.node_at(*path)
        if node is None:
            raise self.missing(*path)
        parsed = parse(node.value)
        what = ".".join(path).replace("_", " ")
        down, up = parsed.value - parsed.low, parsed.high - parsed.value
        source = ""
        if not (down or up) and allowance and not measured:
            setting = self.bench.allowances[allowance]
            down = up = setting.value
            source = setting.reason
        spreads = []
        if down or up:
            cause = Cause(what.replace(".", " "), f"`{self.name}`", self._cure(path, parsed, unit))
            spreads.append(Spread(cause, down, up))
        return leaf(
            f"{self.name}.{what}",
            parsed.value,
            unit,
            spreads,
            place=node.place,
            spelling=parsed.text,
            spelled_unit=parsed.unit,
            source=source,
        )


class Bead(Item, frozen=True, eq=False):
    """A bead of the palette."""


class Part(Item, frozen=True, eq=False):
    """One entry under `parts`."""

    kind: Kind

    def takes(self, field_name: str) -> bool:
        """Whether its kind has such a field, written or not."""
        fields: Any = self.kind.fragment["properties"]
        return field_name in fields

    @property
    def measurable(self) -> Collection[str]:
        """The fields that may stand under `measured:`, by the kind's schema."""
        fields: Any = self.kind.fragment["properties"]
        measured: Collection[str] = fields.get("measured", {}).get("properties", ())
        return measured

    def eye_path(self, key: str) -> tuple[str, ...]:
        """Where the fields of a set of eyes stand in this part, or would stand."""
        eye = self.kind.eyes[key]
        return eye.other if eye.other and self.has(*eye.other[:-1]) else eye.path


class RunEntry(Struct, frozen=True, eq=False):
    """One place in the run: a part, or one half of a clasp, with how many links of it follow.

    `beside` are the other strands that lie side by side with the part, gathered at both ends.
    """

    part: Part
    half: str
    linked: int
    place: Place
    beside: tuple[Part, ...] = ()

    @property
    def parts(self) -> tuple[Part, ...]:
        """Every part at this place."""
        return (self.part, *self.beside)


#: the place behind one in the run and the place ahead, each empty at an end
Sides = tuple[tuple[RunEntry, ...], tuple[RunEntry, ...]]


class Hung(Struct, frozen=True, eq=False):
    """One line under `hung`: `times` of `part` hang from `source` (or its eyes) by a ring."""

    part: Part
    source: Part
    source_eyes: str
    by: Part | None
    times: int
    node: reading.Mapping

    @property
    def passes(self) -> int:
        """How often the thread goes through what it hangs from; once where it is not written."""
        return int(self.node.value.get("passes", 1))

    @property
    def at(self) -> tuple[int, ...]:
        """At which eyes it hangs, counted from 1; empty where the plan leaves that open."""
        return tuple(self.node.value.get("at", ()))

    @property
    def on_thread(self) -> bool:
        """Whether thread holds it, not a ring or an eye of its own."""
        return str(self.node.value.get("by", "")) == "thread"

    def place_of(self, field_name: str) -> Place:
        """Where a field of the line stands, or the line where it would go."""
        entry = self.node.entries.get(field_name)
        return entry.node.place if entry else self.node.place


class Step(Struct, frozen=True, eq=False):
    """One line under `work`; `parts` are those that it names, by the field that names each."""

    number: int
    verb: str
    node: reading.Mapping
    parts: Mapping[str, Part]

    @property
    def place(self) -> Place:
        """The whole step, as the author would move or change it."""
        return self.node.place

    def place_of(self, name: str) -> Place:
        """Where a field of the step stands, or the step where it would go."""
        entry = self.node.entries.get(name)
        return entry.node.place if entry else self.place

    def has(self, name: str) -> bool:
        """Whether the author wrote the field."""
        return name in self.node.entries

    def get(self, name: str) -> str | int | None:
        """A field's plain value, or None."""
        value = self.node.value.get(name)
        return value if isinstance(value, str | int) else None

    @property
    def joints(self) -> int:
        """How many joints a step makes: one where it does not say."""
        return int(self.node.value.get("joints", 1))

    @property
    def joins(self) -> tuple[str, ...]:
        """The places of the run that a ring joins when it is closed; empty where not written."""
        return tuple(str(name) for name in self.node.value.get("joins", ()))

    @property
    def mixes(self) -> int | None:
        """How many portions of glue a step mixes; None where it does not say."""
        mixes = self.node.value.get("mixes")
        return int(mixes) if mixes is not None else None

    def minutes(self, name: str) -> float:
        """A field's time in minutes, 0 where it is not written."""
        value = self.node.value.get(name)
        return units.duration(value).value if value is not None else 0.0


class Target(Window):
    """A window to land in, with the author's spelling."""


class Goal(Struct, frozen=True, eq=False):
    """The length wanted: of the piece laid taut, or of the way round inside it."""

    field: str
    window: Target
    text: str
    unit: str
    place: Place


class Plan(Struct, frozen=True, eq=False):
    """One piece."""

    file: str
    text: str
    tree: reading.Mapping
    bench: Bench
    title: str
    piece: str
    goal: Goal | None
    beads: Mapping[str, Bead]
    parts: Mapping[str, Part]
    run: tuple[RunEntry, ...]
    hung: tuple[Hung, ...]
    steps: tuple[Step, ...]
    stitches: Mapping[str, Stitch]
    cache: Cache
    drawer: reading.Read | None = None

    @property
    def texts(self) -> Mapping[str, str]:
        """The text of the plan, and of the drawer that some of its parts are taken from."""
        beside = {self.drawer.file: self.drawer.text} if self.drawer is not None else {}
        return {**beside, self.file: self.text}

    @property
    def makes(self) -> int:
        """How many of the piece the plan makes: two of a pair."""
        return int(self.tree.value.get("makes", 1))

    @property
    def is_loop(self) -> bool:
        """Whether the run closes on itself: its last place meets its first."""
        return bool(self.tree.value.get("run_is") == "loop")

    @property
    def neighbours(self) -> tuple[tuple[RunEntry, RunEntry], ...]:
        """Every two places of the run that meet, in its order."""
        round_again = self.run[:1] if self.is_loop and len(self.run) > 1 else ()
        return tuple(pairwise((*self.run, *round_again)))

    def with_neighbours(self) -> Iterator[tuple[RunEntry, Sides]]:
        """Every place of the run, with the place behind it and the place ahead; none at an end."""
        run, loop = self.run, self.is_loop and len(self.run) > 1
        for index, entry in enumerate(run):
            behind = run[index - 1 : index] if index else run[-1:] if loop else ()
            ahead = run[index + 1 : index + 2] or (run[:1] if loop else ())
            yield entry, (behind, ahead)

    def item(self, name: str, key: reading.Scalar, node: reading.Mapping) -> Item:
        """Fields of the plan that are neither a part nor a bead, read as those of an item."""
        return Item(name, key, node, self.bench, self.cache)

    def section(self, name: str) -> Item | None:
        """The fields under a top-level name such as `wearer`, or None."""
        entry = self.tree.entries.get(name)
        if entry is None or not isinstance(entry.node, reading.Mapping):
            return None
        return self.item(name, entry.key, entry.node)

    @property
    def meetings(self) -> Iterator[tuple[RunEntry, RunEntry]]:
        """Every place of the run with one that it meets: each two that meet, seen from both."""
        for pair in self.neighbours:
            yield pair
            yield pair[::-1]

    @property
    def in_run(self) -> tuple[Part, ...]:
        """The parts of the run, each once, in its order."""
        return tuple(dict.fromkeys(part for entry in self.run for part in entry.parts))

    def steps_that(self, *verbs: str, **parts: Part) -> list[Step]:
        """The steps that do one of these, to the parts given by the field that names them."""
        return [
            step
            for step in self.steps
            if step.verb in verbs
            and all(step.parts.get(name) is part for name, part in parts.items())
        ]

    def entries(self, name: str) -> list[reading.Mapping]:
        """The lines of a top-level list such as `supplies` or `accept`."""
        entry = self.tree.entries.get(name)
        if entry is None or not isinstance(entry.node, reading.Sequence):
            return []
        return [item for item in entry.node.items if isinstance(item, reading.Mapping)]

    def written(self, *path: str) -> reading.Node | None:
        """The node at a path of field names from the top, or None."""
        node: reading.Node = self.tree
        for step in path:
            entry = node.entries.get(step)
            if entry is None:
                return None
            node = entry.node
        return node

    def place_of(self, name: str) -> Place:
        """Where a top-level field stands, or the head of the plan where it would go."""
        entry = self.tree.entries.get(name)
        return entry.key.place if entry else self.tree.entries["title"].key.place


def fills_rest(part: Part) -> bool:
    """Whether a part's length is said to be what the rest of the run leaves."""
    node = part.node_at("length")
    return node is not None and node.value == units.REST


def counts_of(item: Item, *path: str) -> tuple[int, ...]:
    """A field that takes one count, a list of them, or a list that is mirrored; empty where unsaid.

    `mirror` goes up to its last count and back: `{mirror: [3, 5, 7]}` is 3 5 7 5 3.
    """
    node = item.node_at(*path)
    if node is None:
        return ()
    value = node.value
    if isinstance(value, Mapping):
        half = [int(count) for count in value["mirror"]]
        return (*half, *half[-2::-1])
    return tuple(int(count) for count in value) if isinstance(value, list) else (int(value),)


def bead_mix(part: Part) -> dict[str, int]:
    """How many of each bead a part takes in its repeat: one of the only bead it names.

    `beads: kelp` is one bead, `beads: [kelp, kelp, sand]` a repeat, `beads: {kelp: 2, sand: 1}`
    shares. A rope with a core of beads repeats one of those and an outer loop. Empty where the part
    has no beads.
    """
    if part.has("core_bead"):
        mix, core = beads_named(part, "outer"), part.text("core_bead")
        return {**mix, core: mix.get(core, 0) + 1}
    return beads_named(part, "beads")


def beads_named(part: Part, field_name: str) -> dict[str, int]:
    """How many of each bead one field names; empty where it is not written."""
    node = part.node_at(field_name)
    if node is None:
        return {}
    if isinstance(node, reading.Mapping):
        return {str(name): int(count) for name, count in node.value.items()}
    names = [str(name) for name in node.value] if isinstance(node.value, list) else [node.value]
    return dict(Counter(str(name) for name in names))


@cached
def bead_shares(part: Part) -> Mapping[str, float]:
    """The share that each bead has of all the beads of a part, its turn bead included."""
    mix = bead_mix(part)
    of_all = sum(mix.values())
    shares = {name: count / of_all for name, count in mix.items()}
    if part.has("turn"):
        counts = counts_of(part, "count") or (of_all,)
        leg = sum(counts) / len(counts)
        shares = {name: share * leg / (leg + 1) for name, share in shares.items()}
        turn = part.text("turn")
        shares[turn] = shares.get(turn, 0.0) + 1 / (leg + 1)
    return shares


def bead_row(bead: Item) -> str:
    """The name of a palette entry's row in the trade tables; raises Missing without a make."""
    size = units.bead_size(bead.text("size"))
    if bead.text("type") == "cylinder":
        return f"cylinder {size}"
    return f"{bead.text('type')} {size} {bead.text('make')}"
