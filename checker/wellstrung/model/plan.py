"""The plan as a person means it: run, hung and work - frozen records over the located tree."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Iterator, Mapping, Sequence
from itertools import pairwise
from typing import Protocol

from msgspec import Struct
from msgspec.structs import replace

from wellstrung.common import units
from wellstrung.common.cache import Cache, cached
from wellstrung.common.places import Place
from wellstrung.model.item import Bead, Item, node_at
from wellstrung.model.parts import Part, Role
from wellstrung.quantity.causes import Window
from wellstrung.quantity.value import Quantity
from wellstrung.reading import tree as reading
from wellstrung.reading.settings import Bench


class RunEntry(Struct, frozen=True, eq=False):
    """One place in the run: a part, or one half of a clasp, with how many links of it follow.

    `beside` are the other strands that lie side by side with the part, gathered at both ends.
    `rows` of it stand side by side, where each of several strands meets a loop of its own by it,
    and a part that is `turned` has strands behind it: they come to its last eyes.
    Strands that are twisted together go round each other `twists` times.
    """

    part: Part
    half: str
    linked: int
    place: Place
    beside: tuple[Part, ...] = ()
    rows: int = 1
    turned: bool = False
    twists: int = 0

    @property
    def pieces(self) -> int:
        """How many of its part stand there."""
        return self.linked * self.rows

    @property
    def parts(self) -> tuple[Part, ...]:
        """Every part at this place."""
        return (self.part, *self.beside)

    @property
    def called(self) -> str:
        """What a plan calls the place: its part, or `toggle.a` for half a clasp."""
        return f"{self.part.name}.{self.half}" if self.half else self.part.name

    @property
    def counts(self) -> bool:
        """Whether its part is counted here: a clasp is, where the first of its halves stands."""
        return self.half in ("", next(iter(self.part.kind.eyes), ""))


#: the place behind one in the run and the place ahead, each empty at an end
Sides = tuple[tuple[RunEntry, ...], tuple[RunEntry, ...]]


class Line(Struct, frozen=True, eq=False):
    """A line of a list of the plan."""

    node: reading.Mapping

    @property
    def place(self) -> Place:
        """The whole line, as the author would move or change it."""
        return self.node.place

    def has(self, name: str) -> bool:
        """Whether the author wrote the field."""
        return name in self.node.entries

    def place_of(self, name: str) -> Place:
        """Where a field of the line stands, or the line where it would go."""
        entry = self.node.entries.get(name)
        return entry.node.place if entry else self.node.place


class Hung(Line, frozen=True, eq=False):
    """One line under `hung`: `times` of `part` hang from `source` (or its eyes) by a ring."""

    part: Part
    source: Part
    source_eyes: str
    by: Part | None
    times: int

    @property
    def ring(self) -> Part | None:
        """The ring that carries it: what it hangs by, or itself where a ring hangs by nothing."""
        bare = self.part.kind.role is Role.RING and not self.on_thread
        return self.by or (self.part if bare else None)

    @property
    def passes(self) -> int:
        """How often the thread goes through what it hangs from; once where it is not written."""
        return int(self.node.value.get("passes", 1))

    @property
    def at(self) -> tuple[int, ...]:
        """At which eyes it hangs, counted from 1; empty where the plan leaves that open."""
        return tuple(self.node.value.get("at", ()))

    @property
    def over(self) -> str:
        """Along how much of what is long it is spread, as written; empty for all of it."""
        return str(self.node.value.get("over", ""))

    @property
    def layer(self) -> int:
        """In which row of a fringe in layers it hangs, from the front."""
        return int(self.node.value.get("layer", 1))

    @property
    def on_thread(self) -> bool:
        """Whether thread holds it, not a ring or an eye of its own."""
        return str(self.node.value.get("by", "")) == "thread"


class Step(Line, frozen=True, eq=False):
    """One line under `work`; `parts` are those that it names, by the field that names each."""

    number: int
    verb: str
    parts: Mapping[str, Part]

    def get(self, name: str) -> str | int | None:
        """A field's plain value, or None."""
        value = self.node.value.get(name)
        return value if isinstance(value, str | int) else None

    @property
    def in_words(self) -> bool:
        """Whether it is written as a phrase."""
        return isinstance(self.node, reading.Spelled)

    @property
    def joints(self) -> int:
        """How many joints a step makes: one where it does not say."""
        return int(self.node.value.get("joints", 1))

    @property
    def mixes(self) -> int | None:
        """How many portions of glue a step mixes; None where it does not say."""
        mixes = self.node.value.get("mixes")
        return int(mixes) if mixes is not None else None

    @property
    def joins(self) -> tuple[str, ...]:
        """The places of the run that a ring joins when it is closed; empty where not written."""
        return tuple(str(name) for name in self.node.value.get("joins", ()))

    def minutes(self, name: str) -> float:
        """A field's time in minutes, 0 where it is not written."""
        value = self.node.value.get(name)
        return units.duration(value).value if value is not None else 0.0


class Goal(Struct, frozen=True, eq=False):
    """The length the plan asks for: of the piece laid taut, or of the way round inside it.

    `called` is the author's word for the field; `assumed` the tolerance that the plan leaves open.
    """

    field: str
    called: str
    window: Window
    text: str
    unit: str
    place: Place
    assumed: str = ""

    @property
    def middle(self) -> float:
        """The middle of the window, mm."""
        return (self.window.low + self.window.high) / 2


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
    parts: dict[str, Part]
    run: tuple[RunEntry, ...]
    hung: tuple[Hung, ...]
    steps: tuple[Step, ...]
    cache: Cache
    drawer: reading.Read | None = None

    def let_go(self) -> None:
        """Undo the circles in it when it is done with: its memory is free at once.

        A run over many plans spent 6 % of its time on looking for such circles.
        """
        self.cache.clear()
        self.parts.clear()

    @property
    @cached
    def in_inches(self) -> bool:
        """Whether its maker goes by inches: the length that the plan asks for is in them.

        Where it asks for none, the first length or tail of what is made at the bench decides.
        """
        if self.goal is not None:
            return self.goal.unit.startswith("in")
        paths = (("length",), ("thread", "tail"), ("thread", "working_length"))
        made = (part for part in self.parts.values() if not part.traits.bought)
        lengths = (part.text(*path) for part in made for path in paths if part.has(*path))
        return next(lengths, "").rstrip().endswith(("in", '"'))

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
    def in_run(self) -> tuple[Part, ...]:
        """The parts of the run, each once, in its order."""
        return tuple(dict.fromkeys(part for entry in self.run for part in entry.parts))

    @property
    def neighbours(self) -> tuple[tuple[RunEntry, RunEntry], ...]:
        """Every two places of the run that meet, in its order."""
        round_again = self.run[:1] if self.is_loop and len(self.run) > 1 else ()
        return tuple(pairwise((*self.run, *round_again)))

    @property
    def meetings(self) -> Iterator[tuple[RunEntry, RunEntry]]:
        """Every place of the run with one that it meets: each two that meet, seen from both."""
        for pair in self.neighbours:
            yield pair
            yield pair[::-1]

    @property
    @cached
    def met(self) -> Mapping[Part, Sequence[Part]]:
        """The parts that stand beside each part in the run, in order, once for each meeting."""
        met: Mapping[Part, list[Part]] = defaultdict(list)
        for end, inner in self.meetings:
            for part in inner.parts:
                met[part].append(end.part)
        return met

    def with_neighbours(self) -> Iterator[tuple[RunEntry, Sides]]:
        """Every place of the run, with the place behind it and the place ahead; none at an end."""
        run, loop = self.run, self.is_loop and len(self.run) > 1
        for index, entry in enumerate(run):
            behind = run[index - 1 : index] if index else run[-1:] if loop else ()
            ahead = run[index + 1 : index + 2] or (run[:1] if loop else ())
            yield entry, (behind, ahead)

    def steps_that(self, *verbs: str, **parts: Part) -> list[Step]:
        """The steps that do one of these, to the parts given by the field that names them."""
        return [
            step
            for step in self.steps
            if step.verb in verbs
            and all(step.parts.get(name) is part for name, part in parts.items())
        ]

    @property
    def gluing(self) -> list[Step]:
        """The steps that take an adhesive: a joint is glued, or a drop goes on a knot."""
        return [step for step in self.steps if "with" in step.parts]

    def item(self, name: str, key: reading.Scalar, node: reading.Mapping) -> Item:
        """Fields of the plan that are neither a part nor a bead, read as those of an item."""
        return Item(name, key, node, self.bench, self.cache)

    @property
    def age(self) -> str:
        """Whether its wearer is an adult, a child or under three; empty where it is not written."""
        written = self.written("wearer", "age")
        return units.age(written.value) if written is not None else ""

    def section(self, name: str) -> Item | None:
        """The fields under a top-level name such as `wearer`, or None."""
        entry = self.tree.entries.get(name)
        if entry is None or not isinstance(entry.node, reading.Mapping):
            return None
        return self.item(name, entry.key, entry.node)

    def entries(self, name: str) -> list[reading.Mapping]:
        """The lines of a top-level list such as `supplies` or `accept`."""
        node = node_at(self.tree, name)
        if not isinstance(node, reading.Sequence):
            return []
        return [item for item in node.items if isinstance(item, reading.Mapping)]

    def without_supplies(self, gone: Collection[Place]) -> Plan:
        """The plan without the lines of `supplies` at these places."""
        entry = self.tree.entries["supplies"]
        left = [line for line in self.entries("supplies") if line.place not in gone]
        lines = reading.Entry(entry.key, reading.sequence(entry.node, [*left]))
        tree = reading.group(self.tree, {**self.tree.entries, "supplies": lines})
        return replace(self, tree=tree, cache=Cache())

    def written(self, *path: str) -> reading.Node | None:
        """The node at a path of field names from the top, or None."""
        return node_at(self.tree, *path)

    def place_of(self, name: str) -> Place:
        """Where a top-level field stands, or the head of the plan where it would go."""
        entry = self.tree.entries.get(name)
        return entry.key.place if entry else self.tree.entries["title"].key.place


class Quantities(Protocol):
    """The quantities of a plan, as the formula of a kind or a stitch asks for them."""

    @property
    def plan(self) -> Plan:
        """The plan."""

    def get(self, name: str) -> Quantity:
        """The quantity of that name; raises Missing."""

    def of(self, item: Item, what: str) -> Quantity:
        """`what` of a part or a bead; raises Missing."""

    def offers(self, part: Part, what: str) -> bool:
        """Whether a part of its kind and stitch has such a quantity at all."""
