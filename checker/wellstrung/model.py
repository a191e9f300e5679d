"""The plan as a person means it: parts, run, hung, work - frozen records over the located tree.

The shape has been checked before; what is checked here is what a schema cannot see: names that
point nowhere, a ring hung from itself, a circle of hanging parts.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator, Mapping
from dataclasses import dataclass, field
from enum import Enum, auto
from typing import TYPE_CHECKING, Any

from wellstrung import reading, tables, units
from wellstrung.bench import Bench
from wellstrung.place import Edit, Fault, Place
from wellstrung.quantity import Cause, Quantity, Spread, Window, leaf
from wellstrung.words import article, listed, nearest

if TYPE_CHECKING:
    from wellstrung.derive import Quantities
    from wellstrung.stitches import Stitch


class Missing(Exception):
    """A value that was asked for is not in the plan; `field` is what the author would fill in."""

    def __init__(self, field: str) -> None:
        super().__init__(field)
        self.field = field


class Role(Enum):
    """How a kind of part takes part in joins."""

    ROPE = auto()
    CAP = auto()
    RING = auto()
    EYED = auto()
    CLASP = auto()
    LOOSE = auto()


@dataclass(frozen=True)
class EyeField:
    """Where a kind keeps a set of eyes: the path of its fields; empty when they are worked out."""

    path: tuple[str, ...] = ()
    several: bool = False


@dataclass(frozen=True)
class Kind:
    """A kind of part: its name, schema fragment, role in joins, eyes and quantities."""

    name: str
    fragment: Mapping[str, object]
    role: Role = Role.LOOSE
    eyes: Mapping[str, EyeField] = field(default_factory=dict)
    quantities: Mapping[str, Callable[[Part, Quantities], Quantity]] = field(default_factory=dict)


@dataclass(frozen=True, eq=False)
class Item:
    """A named entry of the plan: a part or a bead of the palette."""

    name: str
    key: reading.Scalar
    node: reading.Mapping
    bench: Bench

    def node_at(self, *path: str) -> reading.Node | None:
        """The node at a path of field names, or None."""
        node: reading.Node = self.node
        for step in path:
            entry = node.entries.get(step) if isinstance(node, reading.Mapping) else None
            if entry is None:
                return None
            node = entry.node
        return node

    def has(self, *path: str) -> bool:
        """Whether the author wrote the field."""
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

    def _cure(self, path: tuple[str, ...], parsed: units.Parsed) -> str:
        """What the author can do about the spread of a field."""
        what = " ".join(path).replace("_", " ")
        if len(path) == 1 and path[0] in self.measurable:
            return f"measure the {what} and write `measured: {{{path[0]}: ...}}` in `{self.name}`"
        example = units.show(parsed.value, parsed.unit).replace(" ", " ± 0.05 ", 1)
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

    def duration(self, *path: str) -> Quantity:
        """A time in minutes."""
        return self._value(units.duration, "min", path, "")

    def _value(
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
            cause = Cause(what.replace(".", " "), f"`{self.name}`", self._cure(path, parsed))
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


@dataclass(frozen=True, eq=False)
class Part(Item):
    """One entry under `parts`."""

    kind: Kind

    @property
    def measurable(self) -> Collection[str]:
        """The fields that may stand under `measured:`, by the kind's schema."""
        fields: Any = self.kind.fragment["properties"]
        return tuple(fields.get("measured", {}).get("properties", ()))


@dataclass(frozen=True, eq=False)
class RunEntry:
    """One place in the run: a part, or one half of a clasp, with how many links of it follow."""

    part: Part
    half: str
    linked: int
    place: Place


@dataclass(frozen=True, eq=False)
class Hung:
    """One line under `hung`: `times` of `part` hang from `source` (or its eyes) by a ring."""

    part: Part
    source: Part
    source_eyes: str
    by: Part | None
    times: int
    node: reading.Mapping

    def place_of(self, field_name: str) -> Place:
        """Where a field of the line stands, or the line where it would go."""
        entry = self.node.entries.get(field_name)
        return entry.node.place if entry else self.node.place


@dataclass(frozen=True, eq=False)
class Step:
    """One line under `work`."""

    number: int
    verb: str
    node: reading.Mapping

    @property
    def place(self) -> Place:
        """The whole step, as the author would move or change it."""
        return self.node.place

    def get(self, name: str) -> str | int | None:
        """A field's plain value, or None."""
        value = self.node.value.get(name)
        return value if isinstance(value, str | int) else None

    def minutes(self, name: str) -> float:
        """A field's time in minutes, 0 where it is not written."""
        value = self.node.value.get(name)
        return units.duration(value).value if value is not None else 0.0


class Target(Window):
    """A window to land in, with the author's spelling."""


@dataclass(frozen=True, eq=False)
class Goal:
    """The length wanted: of the piece laid taut, or of the way round inside it."""

    field: str
    window: Target
    text: str
    unit: str
    place: Place


@dataclass(frozen=True, eq=False)
class Plan:
    """One piece."""

    file: str
    text: str
    tree: reading.Mapping
    bench: Bench
    title: str
    piece: str
    goal: Goal | None
    beads: Mapping[str, Item]
    parts: Mapping[str, Part]
    run: tuple[RunEntry, ...]
    hung: tuple[Hung, ...]
    steps: tuple[Step, ...]
    stitches: Mapping[str, Stitch]

    def entries(self, name: str) -> list[reading.Mapping]:
        """The lines of a top-level list such as `supplies` or `accept`."""
        entry = self.tree.entries.get(name)
        if entry is None or not isinstance(entry.node, reading.Sequence):
            return []
        return [item for item in entry.node.items if isinstance(item, reading.Mapping)]

    def place_of(self, name: str) -> Place:
        """Where a top-level field stands, or the head of the plan where it would go."""
        entry = self.tree.entries.get(name)
        return entry.key.place if entry else self.tree.entries["title"].key.place


def build(
    read: reading.Read, kinds: Mapping[str, Kind], stitches: Mapping[str, Stitch], bench: Bench
) -> tuple[Plan | None, tuple[Fault, ...]]:
    """The plan of a well-shaped tree, or the faults that keep it from being one."""
    assert read.tree is not None
    builder = _Builder(read.tree, kinds, bench)
    plan = builder.plan(read, stitches)
    return (None if builder.faults else plan), tuple(builder.faults)


class _Builder:
    """Builds a plan and gathers what is wrong with its names, all of it at once."""

    def __init__(self, tree: reading.Mapping, kinds: Mapping[str, Kind], bench: Bench) -> None:
        self.tree = tree
        self.kinds = kinds
        self.bench = bench
        self.faults: list[Fault] = []
        self.beads: dict[str, Item] = {}
        self.parts: dict[str, Part] = {}

    def plan(self, read: reading.Read, stitches: Mapping[str, Stitch]) -> Plan:
        value = self.tree.value
        self.beads = {
            key: Item(key, entry.key, entry.node, self.bench)
            for key, entry in self._entries("beads")
            if isinstance(entry.node, reading.Mapping)
        }
        self.parts = {
            key: Part(key, entry.key, entry.node, self.bench, self.kinds[entry.node.value["kind"]])
            for key, entry in self._entries("parts")
            if isinstance(entry.node, reading.Mapping)
        }
        for bead in self.beads.values():
            self._check_bead(bead)
        for part in self.parts.values():
            self._check_part(part, stitches)
        self._check_supplies()
        run = tuple(self._run())
        hung = tuple(self._hung())
        self._check_circles(hung)
        return Plan(
            file=read.file,
            text=read.text,
            tree=self.tree,
            bench=self.bench,
            title=str(value["title"]),
            piece=str(value["piece"]),
            goal=self._goal(),
            beads=self.beads,
            parts=self.parts,
            run=run,
            hung=hung,
            steps=tuple(self._steps()),
            stitches=stitches,
        )

    def _entries(self, name: str) -> list[tuple[str, reading.Entry]]:
        entry = self.tree.entries.get(name)
        node = entry.node if entry else None
        return list(node.entries.items()) if isinstance(node, reading.Mapping) else []

    def _items(self, name: str) -> list[reading.Node]:
        entry = self.tree.entries.get(name)
        node = entry.node if entry else None
        return list(node.items) if isinstance(node, reading.Sequence) else []

    def _fault(self, says: str, place: Place, *also: Place, **more: object) -> None:
        self.faults.append(Fault("plan-shape", says, place, also=also, **more))  # type: ignore[arg-type]

    def _unknown(
        self, what: str, name: str, known: Mapping[str, object], node: reading.Node
    ) -> None:
        near = nearest(name, known)
        advice = f"write `{near}`" if near else f"the plan has {listed(known) or 'none'}"
        self._fault(
            f"there is no {what} called `{name}`: {advice}",
            node.place,
            found=name,
            needed=near or listed(known),
            remedy=advice,
            edits=(Edit(node.place, near),) if near else (),
        )

    def _part(self, node: reading.Node | None) -> Part | None:
        if node is None:
            return None
        name = str(node.value)
        part = self.parts.get(name)
        if part is None:
            self._unknown("part", name, self.parts, node)
        return part

    def _check_part(self, part: Part, stitches: Mapping[str, Stitch]) -> None:
        node = part.node_at("stitch")
        if node is not None and str(node.value) not in stitches:
            self._unknown("stitch", str(node.value), stitches, node)
        node = part.node_at("beads")
        if node is not None and str(node.value) not in self.beads:
            self._unknown("bead", str(node.value), self.beads, node)
        for field_name, table in (("metal", "metals"), ("type", "adhesives")):
            node = part.node_at(field_name)
            if node is not None and (table == "metals" or part.kind.name == "adhesive"):
                self._check_row(table, str(node.value), node)
        for says, place in part_contradictions(part):
            self._fault(says, place, part.key.place)
        node = part.node_at("of")
        if node is None:
            return
        chain = self._part(node)
        if chain is not None and not chain.has("pattern"):
            self._fault(
                f"`{part.name}` is cut from `{chain.name}`, which is {article(chain.kind.name)},"
                " not a chain: name a part of kind `chain`",
                node.place,
                chain.key.place,
            )
        elif chain is not None:
            self._check_links(part, chain)

    def _check_row(self, table: str, name: str, node: reading.Node) -> None:
        rows = tables.load(table).rows
        if name not in rows:
            self._unknown(f"row in the trade table `{table}`", name, rows, node)

    def _check_bead(self, bead: Item) -> None:
        """A bead of the tables must be in them; one of type `other` brings its own sizes."""
        if bead.text("type") == "other":
            return
        size = bead.node_at("size")
        if size is None:
            self._fault(
                f"the bead `{bead.name}` lacks its `size`: write one such as `size: 8/0`",
                bead.key.place,
            )
        elif bead.text("type") == "cylinder" or bead.has("make"):
            row, rows = bead_row(bead), tables.load("beads").rows
            if row not in rows:
                same_size = [name for name in rows if f" {units.bead_size(size.value)}" in name]
                self._fault(
                    f"the trade tables have no bead `{row}`: they have"
                    f" {listed(same_size or rows)}; or write `type: other` with its own `outside`,"
                    " `length` and `hole`",
                    size.place,
                    found=row,
                )

    def _check_links(self, piece: Part, chain: Part) -> None:
        pattern = chain.node_at("pattern")
        words = pattern.value if pattern else []
        known = {str(word): word for word in words}
        named = [piece.node_at("starts_with"), piece.node_at("ends_with")]
        counted = piece.node_at("count_of")
        if isinstance(counted, reading.Mapping):
            named += [entry.key for entry in counted.entries.values()]
        for node in named:
            if node is not None and str(node.value) not in known:
                self._unknown(f"link of `{chain.name}`", str(node.value), known, node)

    def _run(self) -> Iterator[RunEntry]:
        for node in self._items("run"):
            named: reading.Node | None = node
            linked = 1
            if isinstance(node, reading.Mapping):
                named = node.entries["part"].node
                linked = int(node.value.get("linked", 1))
            assert named is not None
            name, _, half = str(named.value).partition(".")
            part = self.parts.get(name)
            if part is None:
                self._unknown("part", name, self.parts, named)
                continue
            if (part.kind.role is Role.CLASP) != bool(half) or (
                half and half not in part.kind.eyes
            ):
                halves = " and ".join(f"`{name}.{eye}`" for eye in part.kind.eyes)
                self._fault(
                    f"`{named.value}` is not a place in the run: "
                    + (
                        f"a clasp stands there by its halves, {halves}"
                        if part.kind.role is Role.CLASP
                        else f"`{name}` has no halves, write `{name}`"
                    ),
                    named.place,
                    part.key.place,
                )
                continue
            yield RunEntry(part, half, linked, node.place)

    def _hung(self) -> Iterator[Hung]:
        for node in self._items("hung"):
            assert isinstance(node, reading.Mapping)
            entries = node.entries
            source_node = entries["from"].node
            eyes = ""
            if isinstance(source_node, reading.Mapping):
                eyes_node = source_node.entries.get("eyes")
                eyes = str(eyes_node.node.value) if eyes_node else ""
                source_node = source_node.entries["part"].node
            part, source = self._part(entries["part"].node), self._part(source_node)
            by_node = entries["by"].node if "by" in entries else None
            by = None
            if by_node is not None and by_node.value != "thread":
                by = self._part(by_node)
                if by is not None and by.kind.role is not Role.RING:
                    self._fault(
                        f"`{by.name}` is {article(by.kind.name)}: `by` takes a jump ring or"
                        " `thread`",
                        by_node.place,
                        by.key.place,
                    )
            if part is None or source is None:
                continue
            if part is source:
                self._fault(
                    f"`{part.name}` hangs from itself: name what it hangs from",
                    entries["part"].node.place,
                    source_node.place,
                )
            found = _eyes_called(source, eyes)
            if eyes and found is None:
                known = {name.removesuffix("_eyes"): name for name in source.kind.eyes}
                self._unknown(f"set of eyes of `{source.name}`", eyes, known, source_node)
            yield Hung(part, source, found or "", by, int(node.value.get("times", 1)), node)

    def _check_circles(self, hung: tuple[Hung, ...]) -> None:
        above: dict[str, Hung] = {}
        for line in hung:
            above.setdefault(line.part.name, line)
        for line in hung:
            if line.part is line.source:
                continue
            trail, name = [line], line.source.name
            while name in above and name != line.part.name and len(trail) <= len(above):
                trail.append(above[name])
                name = above[name].source.name
            if name == line.part.name:
                round_trip = " from ".join(f"`{step.part.name}`" for step in trail)
                self._fault(
                    f"{round_trip} from `{name}` hangs in a circle: let one of them hang from the"
                    " run",
                    line.place_of("from"),
                    *(step.place_of("from") for step in trail[1:]),
                )
                return

    def _check_supplies(self) -> None:
        for node in self._items("supplies"):
            assert isinstance(node, reading.Mapping)
            for name, entry in node.entries.items():
                if name == "bead" and str(entry.node.value) not in self.beads:
                    self._unknown("bead", str(entry.node.value), self.beads, entry.node)
                elif name in ("part", "chain", "thread"):
                    self._part(entry.node)

    def _goal(self) -> Goal | None:
        for name in ("finished_length", "inside"):
            entry = self.tree.entries.get(name)
            if entry is not None:
                parsed = units.target(entry.node.value)
                window = Target(parsed.low, parsed.high)
                return Goal(name, window, parsed.text, parsed.unit, entry.node.place)
        return None

    def _steps(self) -> Iterator[Step]:
        for number, node in enumerate(self._items("work"), 1):
            assert isinstance(node, reading.Mapping)
            for name in ("part", "to", "with", "onto", "from", "by", "around"):
                if name in node.entries:
                    self._part(node.entries[name].node)
            yield Step(number, str(node.value["do"]), node)


def bead_row(bead: Item) -> str:
    """The name of a palette entry's row in the trade tables; raises Missing without a make."""
    size = units.bead_size(bead.text("size"))
    if bead.text("type") == "cylinder":
        return f"cylinder {size}"
    return f"{bead.text('type')} {size} {bead.text('make')}"


def _eyes_called(part: Part, name: str) -> str | None:
    """The key of the eyes an author calls `name`; of the only eyes when the name is left out."""
    if not name and len(part.kind.eyes) == 1:
        return next(iter(part.kind.eyes))
    for key in (name, f"{name}_eyes"):
        if key in part.kind.eyes:
            return key
    return None


def part_contradictions(part: Part) -> Iterator[tuple[str, Place]]:
    """What two fields of one part say against each other."""
    for outer, inner, words in (
        ("outside", "bore", "the bore of an end cap is smaller than its outside"),
        ("length", "depth", "the depth of an end cap is less than its length"),
    ):
        if part.has(outer) and part.has(inner):
            whole, hollow = part.length(outer), part.length(inner)
            if hollow.middle >= whole.middle:
                yield (
                    f"`{part.name}` has {inner} {hollow.spelling} and {outer} {whole.spelling}:"
                    f" {words}, so mend one of them",
                    part.place_of(inner),
                )
    if part.kind.role is Role.RING and part.has("outside"):
        outside, wire = part.length("outside"), part.wire("wire")
        if 2 * wire.middle >= outside.middle:
            yield (
                f"`{part.name}` is {outside.spelling} outside and its wire is {wire.spelling}:"
                " two wires leave no inside, so mend one of them",
                part.place_of("wire"),
            )
