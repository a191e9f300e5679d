"""From a well-shaped tree to a plan, or to what is wrong with the names in it.

What is checked here is what a schema cannot see: names that point nowhere, a part that contradicts
itself, a ring hung from itself, a circle of hanging parts. All of it is told at once.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator, Mapping
from typing import TYPE_CHECKING

from wellstrung import tables
from wellstrung.common import units
from wellstrung.common.cache import Cache
from wellstrung.common.places import Edit, Fault, Place
from wellstrung.common.wording import article, listed, nearest
from wellstrung.model.parts import (
    WOVEN_WORK,
    Bead,
    Goal,
    Hung,
    Item,
    Kind,
    Part,
    Plan,
    Role,
    RunEntry,
    Step,
    Target,
    bead_mix,
    bead_row,
    counts_of,
    fills_rest,
)
from wellstrung.reading import tree as reading
from wellstrung.reading.settings import Bench

if TYPE_CHECKING:
    from wellstrung.stitches import Stitch


def build(
    read: reading.Read,
    kinds: Mapping[str, Kind],
    stitches: Mapping[str, Stitch],
    bench: Bench,
    drawer: reading.Read | None = None,
) -> tuple[Plan | None, tuple[Fault, ...]]:
    """The plan of a well-shaped tree, or the faults that keep it from being one."""
    assert read.tree is not None
    builder = _Builder(read.tree, kinds, bench)
    plan = builder.plan(read, stitches, drawer)
    return (None if builder.faults else plan), tuple(builder.faults)


class _Builder:
    """Builds a plan and gathers what is wrong with its names, all of it at once."""

    def __init__(self, tree: reading.Mapping, kinds: Mapping[str, Kind], bench: Bench) -> None:
        self.tree = tree
        self.kinds = kinds
        self.bench = bench
        self.cache = Cache()
        self.faults: list[Fault] = []
        self.beads: dict[str, Bead] = {}
        self.parts: dict[str, Part] = {}

    def plan(
        self, read: reading.Read, stitches: Mapping[str, Stitch], drawer: reading.Read | None
    ) -> Plan:
        value = self.tree.value
        self.beads = {
            key: Bead(key, entry.key, entry.node, self.bench, self.cache)
            for key, entry in self._entries("beads")
            if isinstance(entry.node, reading.Mapping)
        }
        self.parts = {
            key: Part(key, entry.key, node, self.bench, self.cache, self.kinds[node.value["kind"]])
            for key, entry in self._entries("parts")
            if isinstance(node := entry.node, reading.Mapping)
        }
        for bead in self.beads.values():
            self._check_bead(bead)
        for part in self.parts.values():
            self._check_part(part, stitches)
        self._check_supplies()
        self._check_prepared()
        run = tuple(self._run())
        self._check_rest(run)
        self._check_loop()
        self._check_closing(run)
        hung = tuple(self._hung())
        self._check_circles(hung)
        self._check_centre(run, hung)
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
            cache=self.cache,
            drawer=drawer,
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
        there = "the plan has" if what in ("part", "bead") else "there are"
        advice = f"write `{near}`" if near else f"{there} {listed(known) or 'none'}"
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
        if node is not None:
            stitch = stitches.get(str(node.value))
            if stitch is None:
                self._unknown("stitch", str(node.value), stitches, node)
            elif part.kind.name not in (stitch.makes, *stitch.also_makes):
                self._fault(
                    f"`{stitch.name}` makes {article(stitch.makes)}, and `{part.name}` is"
                    f" {article(part.kind.name)}: write `kind: {stitch.makes}`, or another stitch",
                    node.place,
                    part.place_of("kind"),
                )
            else:
                for says, place in stitch.refuses(part):
                    self._fault(says, place, node.place)
        named = [part.node_at(*path) for path in _BEADS_AT]
        for name in (name for node in named for name in _bead_names(node)):
            if str(name.value) not in self.beads:
                self._unknown("bead", str(name.value), self.beads, name)
        for field_name, table in (("metal", "metals"), ("type", "adhesives")):
            node = part.node_at(field_name)
            if node is not None and (table == "metals" or part.kind.name == "adhesive"):
                self._check_row(table, str(node.value), node)
        node = part.node_at("thread", "spool")
        spool = self._part(node)
        if node is not None and spool is not None and spool.kind.name != "thread":
            self._fault(
                f"`{spool.name}` is {article(spool.kind.name)}, and `spool` takes a thread",
                node.place,
                spool.key.place,
            )
        for says, place in part_contradictions(part):
            self._fault(says, place, part.key.place)
        node = part.node_at("core")
        if node is not None and str(node.value) not in ("yes", "no"):
            core = self._part(node)
            if core is not None and core.kind.name != "core":
                self._fault(
                    f"`{core.name}` is {article(core.kind.name)}: `core` takes `yes`, `no` or a"
                    " part of kind `core`",
                    node.place,
                    core.key.place,
                )
        node = part.node_at("covers")
        if node is not None and str(node.value) not in KNOTS:
            inside = self._part(node)
            if inside is not None and inside.kind.role is not Role.CRIMP:
                self._fault(
                    f"`{inside.name}` is {article(inside.kind.name)}: `covers` takes"
                    f" {listed(KNOTS)} or a part of kind `crimp`",
                    node.place,
                    inside.key.place,
                )
        node = part.node_at("over")
        over = self._part(node) if node is not None else None
        if over is not None and node is not None and over.kind.role not in (Role.CONE, Role.CAP):
            self._fault(
                f"`{part.name}` runs through `{over.name}`, which is {article(over.kind.name)}:"
                " name a cone or an end cap",
                node.place,
                over.key.place,
            )
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
            if isinstance(node, reading.Mapping) and "strands" in node.entries:
                yield from self._strands(node)
                continue
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
            if part.kind.role in (Role.LOOSE, Role.GLUE):
                self._no_place(part, "no place in the run", named)
                continue
            yield RunEntry(part, half, linked, node.place)

    def _strands(self, node: reading.Mapping) -> Iterator[RunEntry]:
        """Strands side by side: one place in the run."""
        listed_here = node.entries["strands"].node
        names = listed_here.items if isinstance(listed_here, reading.Sequence) else ()
        parts = [(name, self._part(name)) for name in names]
        strands = []
        for name, part in parts:
            if part is None:
                continue
            if part.kind.role not in (Role.STRAND, Role.ROPE):
                self._fault(
                    f"`{part.name}` is {article(part.kind.name)}, and `strands` gathers strands,"
                    " ropes and braids: name one of those",
                    name.place,
                    part.key.place,
                )
            strands.append(part)
        if strands:
            yield RunEntry(strands[0], "", 1, node.place, tuple(strands[1:]))

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
            if part.kind.role in (Role.LOOSE, Role.GLUE):
                self._no_place(part, "nothing to hang by", entries["part"].node)
                continue
            if part is source:
                self._fault(
                    f"`{part.name}` hangs from itself: name what it hangs from",
                    entries["part"].node.place,
                    source_node.place,
                )
            self._check_bail(part, source, by_node, entries["from"].node)
            found = _eyes_called(source, eyes)
            if eyes and found is None:
                known = {name.removesuffix("_eyes"): name for name in source.kind.eyes}
                self._unknown(f"set of eyes of `{source.name}`", eyes, known, source_node)
            times = self._times(part, node)
            yield Hung(part, source, found or "", by, times, node)

    def _check_bail(
        self, part: Part, source: Part, by: reading.Node | None, node: reading.Node
    ) -> None:
        """A bail goes round what it hangs from, without a ring."""
        if part.kind.role is not Role.BAIL:
            return
        if by is not None:
            self._fault(
                f"`{part.name}` is a bail, which goes round `{source.name}` itself: take `by` out,"
                " or say what hangs from the bail in a line of its own",
                by.place,
                part.key.place,
            )
        elif source.kind.role not in _GOES_ROUND and not source.has("of"):
            self._fault(
                f"`{source.name}` is {article(source.kind.name)}, and the bail `{part.name}` goes"
                " round a rope, a strand or a chain piece: name one of those, or hang a ring there",
                node.place,
                source.key.place,
            )

    def _times(self, part: Part, node: reading.Mapping) -> int:
        """How many a line hangs: as it says, or once each of drops whose counts are listed."""
        drops = len(counts_of(part, "count")) if part.kind.role is Role.DROP else 1
        at = node.value.get("at", ())
        times = int(node.value.get("times", len(at) or max(drops, 1)))
        if at and times != len(at):
            self._fault(
                f"`at` names {len(at)} eyes for `{part.name}`, and {times} hang: write"
                f" `times: {len(at)}`, or leave `times` out",
                node.entries["times"].node.place,
                node.entries["at"].node.place,
            )
        if drops > 1 and times % drops:
            self._fault(
                f"`{part.name}` lists the counts of {drops} drops, and {times} hang: write"
                f" `times: {drops}`, or as many counts",
                node.entries["times"].node.place,
                part.place_of("count"),
            )
        return times

    def _no_place(self, part: Part, what: str, node: reading.Node) -> None:
        says = f"`{part.name}` is {article(part.kind.name)}, which has {what}: name another part"
        self._fault(says, node.place, part.key.place)

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

    def _check_prepared(self) -> None:
        """What is brought to a class ready made is a part."""
        entry = self.tree.entries.get("class")
        node = entry.node if entry else None
        listed_there = node.entries.get("prepared") if isinstance(node, reading.Mapping) else None
        if listed_there is not None and isinstance(listed_there.node, reading.Sequence):
            for name in listed_there.node.items:
                self._part(name)

    def _check_loop(self) -> None:
        """A run that closes on itself is not open."""
        run_is, closes = self.tree.entries.get("run_is"), self.tree.entries.get("closes")
        if run_is is None or closes is None:
            return
        if run_is.node.value == "loop" and closes.node.value == "open":
            self._fault(
                "the run is a loop, and the piece stays open: write `run_is: open`, or how it"
                " closes",
                closes.node.place,
                run_is.node.place,
            )

    def _check_centre(self, run: tuple[RunEntry, ...], hung: tuple[Hung, ...]) -> None:
        """What is meant for the middle is a part or a bead with a place in the run."""
        entry = self.tree.entries.get("centre")
        if entry is None:
            return
        name = str(entry.node.value)
        if name not in self.parts and name not in self.beads:
            self._unknown("part or bead", name, {**self.parts, **self.beads}, entry.node)
            return
        placed = {part.name for place in run for part in place.parts}
        placed |= {line.part.name for line in hung}
        placed |= {bead for place in run for part in place.parts for bead in bead_mix(part)}
        if name not in placed:
            self._fault(
                f"`{name}` is meant for the middle, and it has no place in the piece: put it in"
                " `run`, or hang it there",
                entry.node.place,
            )

    def _check_closing(self, run: tuple[RunEntry, ...]) -> None:
        """What closes through its loop has a ring at one end for the other to go through."""
        closes = self.tree.entries.get("closes")
        if closes is None or closes.node.value != "through its loop":
            return
        ends = [entry.part.kind.role for entry in (*run[:1], *run[-1:])]
        if len(run) < 2 or Role.RING not in ends:
            self._fault(
                "the piece closes through its loop, and no end of the run is a ring: begin or end"
                " `run` with a jump ring",
                closes.node.place,
            )

    def _check_rest(self, run: tuple[RunEntry, ...]) -> None:
        """One part in the run may fill the rest, and of a length that is wanted."""
        filling = [part for part in self.parts.values() if fills_rest(part)]
        alone = {entry.part.name for entry in run if not entry.beside}
        for part in filling:
            place = part.place_of("length")
            if part.name not in alone:
                self._fault(
                    f"`{part.name}` fills the rest, and it has no place of its own in the run:"
                    " write its length",
                    place,
                )
            elif self._goal() is None:
                self._fault(
                    f"`{part.name}` fills the rest, and no length of the piece is wanted: write"
                    " `finished_length` or `inside`",
                    place,
                )
        if len(filling) > 1:
            *most, last = (f"`{part.name}`" for part in filling)
            self._fault(
                f"{', '.join(most)} and {last} fill the rest: write the length of all but one",
                filling[-1].place_of("length"),
                *(part.place_of("length") for part in filling[:-1]),
            )

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
            parts: dict[str, Part] = {}
            for name in ("part", "to", "with", "onto", "from", "by", "around"):
                if name in node.entries:
                    part = self._part(node.entries[name].node)
                    self._check_use(node, name, part)
                    if part is not None:
                        parts[name] = part
            yield Step(number, str(node.value["do"]), node, parts)

    def _check_use(self, step: reading.Mapping, field: str, part: Part | None) -> None:
        """A step works on the kind of part it is meant for; a clasp is glued to a band."""
        verb, node = str(step.value["do"]), step.entries[field].node
        wanted = _WORKS_ON.get((verb, field))
        glued = self.parts.get(str(step.value.get("part")))
        if (verb, field) == ("glue", "to") and glued and glued.kind.role is Role.CLASP:
            wanted = frozenset({Role.BAND})
        if part is not None and wanted is not None and part.kind.role not in wanted:
            takes = " or ".join(
                article(kind.name) for kind in self.kinds.values() if kind.role in wanted
            )
            self._fault(
                f"`{part.name}` is {article(part.kind.name)}, and `{field}` of `{verb}` takes"
                f" {takes}",
                node.place,
                part.key.place,
                found=part.kind.name,
                needed=takes,
            )


#: What a bead tip may cover beside a crimp: the knots whose width trade table `knots` has.
KNOTS = ("overhand", "double overhand")
#: What a bail goes round, beside a piece of chain.
_GOES_ROUND = (Role.ROPE, Role.BAND, Role.STRAND)
#: what a ring or a bail can slide along
_LONG = (Role.ROPE, Role.BAND, Role.STRAND)
#: what a step works on: verb and field -> roles of the part
_WORKS_ON: Mapping[tuple[str, str], Collection[Role]] = {
    ("weave", "part"): WOVEN_WORK,
    ("finish thread", "part"): WOVEN_WORK,
    ("slide", "onto"): _LONG,
    ("glue", "part"): (Role.CAP, Role.CLASP),
    ("glue", "to"): (Role.ROPE,),
    ("glue", "with"): (Role.GLUE,),
    ("close ring", "part"): (Role.RING,),
    ("hang", "by"): (Role.RING,),
    ("knot", "part"): (Role.STRAND,),
    ("crimp", "part"): (Role.CRIMP,),
    ("crimp", "to"): (Role.STRAND,),
}


#: Where a part may name beads of the palette.
_BEADS_AT = (("beads",), ("core_bead",), ("outer",), ("turn",), ("loop", "beads"))


def _bead_names(node: reading.Node | None) -> list[reading.Scalar]:
    """The names of beads where a part lists them: one, a repeat of several, or shares."""
    if isinstance(node, reading.Mapping):
        return [entry.key for entry in node.entries.values()]
    names = node.items if isinstance(node, reading.Sequence) else (node,)
    return [name for name in names if isinstance(name, reading.Scalar)]


def _eyes_called(part: Part, name: str) -> str | None:
    """The key of the eyes an author calls `name`; of the only eyes when the name is left out."""
    if not name and len(part.kind.eyes) == 1:
        return next(iter(part.kind.eyes))
    for key in (name, f"{name}_eyes"):
        if key in part.kind.eyes:
            return key
    return None


def part_contradictions(part: Part) -> Iterator[tuple[str, Place]]:
    """What two fields of one part say against each other, as they are written."""
    for outer, inner, words in (
        ("outside", "bore", "the bore of {} is smaller than its outside"),
        ("length", "depth", "the depth of {} is less than its length"),
    ):
        whole, hollow = _written(part, units.length, outer), _written(part, units.length, inner)
        if whole and hollow and hollow.value >= whole.value:
            yield (
                f"`{part.name}` has {inner} {hollow.text} and {outer} {whole.text}:"
                f" {words.format(article(part.kind.name))}, so mend one of them",
                part.place_of(inner),
            )
    if part.kind.role is Role.RING:
        outside, wire = _written(part, units.length, "outside"), _written(part, units.wire, "wire")
        if outside and wire and 2 * wire.value >= outside.value:
            yield (
                f"`{part.name}` is {outside.text} outside and its wire is {wire.text}: two wires"
                " leave no inside, so mend one of them",
                part.place_of("wire"),
            )
    links = part.node_at("links")
    for name in links.entries if isinstance(links, reading.Mapping) else ():
        length = _written(part, units.length, "links", name, "length")
        wire = _written(part, units.wire, "links", name, "wire")
        if length and wire and 2 * wire.value >= length.value:
            yield (
                f"link `{name}` of `{part.name}` is {length.text} long and its wire is"
                f" {wire.text}: two wires leave no inside, so mend one of them",
                part.place_of("links", name, "wire"),
            )


def _written(
    part: Part, read: Callable[[str | int | float], units.Parsed], *path: str
) -> units.Parsed | None:
    node = part.node_at(*path)
    return read(node.value) if node is not None and node.value != units.REST else None
