"""From a well-shaped tree to a plan, or to what is wrong with the names in it."""

from __future__ import annotations

from collections import deque
from collections.abc import Collection, Iterable, Iterator, Mapping
from itertools import islice

from msgspec.structs import replace

from wellstrung.common import units
from wellstrung.common.cache import Cache
from wellstrung.common.places import Fault
from wellstrung.common.wording import article, either, in_yaml
from wellstrung.model.beads import legs_of
from wellstrung.model.came import CAME, with_what_came
from wellstrung.model.contradictions import MOST_PLACES, contradictions
from wellstrung.model.item import Bead, node_at
from wellstrung.model.parts import UNPLACED, Kind, Part, Role, Stitch
from wellstrung.model.plan import Goal, Hung, Plan, RunEntry, Step
from wellstrung.model.references import LONG, WORKS_ON, Names
from wellstrung.model.rows import in_rows
from wellstrung.model.sold import as_sold
from wellstrung.model.sound import Sound, sound
from wellstrung.model.thread_of_work import with_thread_of_work
from wellstrung.quantity.causes import Window
from wellstrung.reading import tree as reading
from wellstrung.reading.settings import ALLOWANCES, Bench


def build(
    read: reading.Read,
    kinds: Mapping[str, Kind],
    stitches: Mapping[str, Stitch],
    bench: Bench,
    drawer: reading.Read | None = None,
    *,
    within_parts: bool = True,
) -> tuple[Plan | None, tuple[Fault, ...]]:
    """The plan of a well-shaped tree, or the faults that keep it from being one.

    What stands against itself `within` a part can be left to be looked for later.
    """
    tree, cache = read.tree, Cache()
    assert tree is not None
    if bench.learnt is not None:
        bench = replace(bench, learnt=bench.learnt.for_plan(tree))
    names = _names(Sound(tree), kinds, stitches, bench, cache)
    builder = _Builder(tree, names)
    builder.check_supplies()
    builder.check_prepared()
    builder.check_came()
    builder.check_centre()
    run = in_rows(tuple(islice(builder.run(), MOST_PLACES + 1)))
    plan = Plan(
        file=read.file,
        text=read.text,
        tree=with_what_came(tree),
        bench=bench,
        title=str(tree.value["title"]),
        piece=str(tree.value["piece"]),
        goal=_goal(tree, bench, run),
        beads=names.beads,
        parts=names.parts,
        run=run,
        hung=tuple(builder.hung()),
        steps=tuple(builder.steps()),
        cache=cache,
        drawer=drawer,
    )
    faults = (*names.faults, *contradictions(plan, within_parts=within_parts))
    return (None if faults else plan), faults


def names_beside(
    read: reading.Read,
    shape: Collection[Fault],
    kinds: Mapping[str, Kind],
    stitches: Mapping[str, Stitch],
    bench: Bench,
) -> tuple[Fault, ...]:
    """What is wrong with the names of a plan whose shape has faults elsewhere."""
    taken = sound(read.tree, shape) if read.tree is not None else None
    if taken is None:
        return ()
    names = _names(taken, kinds, stitches, bench, Cache())
    builder = _Builder(taken.tree, names)
    builder.check_supplies()
    builder.check_prepared()
    builder.check_came()
    builder.check_centre()
    for each in (islice(builder.run(), MOST_PLACES), builder.hung(), builder.steps()):
        deque(each, maxlen=0)
    return tuple(names.faults)


def _names(
    taken: Sound,
    kinds: Mapping[str, Kind],
    stitches: Mapping[str, Stitch],
    bench: Bench,
    cache: Cache,
) -> Names:
    """The beads and parts of a tree by name, with what is wrong with the names they give."""
    tree = taken.tree
    beads = {
        key: Bead(key, entry.key, entry.node, bench, cache)
        for key, entry in _entries(tree, "beads")
        if isinstance(entry.node, reading.Mapping)
    }
    parts: dict[str, Part] = {}
    spools = (kind for kind in kinds.values() if kind.role is Role.THREAD)
    threads = {name: traits for kind in spools for name, traits in kind.types.items()}
    keys = {key: entry.key for key, entry in _entries(tree, "parts")}
    for key, node in with_thread_of_work(tree, kinds).items():
        kind, stitch = kinds[node.value["kind"]], stitches.get(str(node.value.get("stitch")))
        node = as_sold(node, kind.sold)
        parts[key] = Part(key, keys[key], node, bench, cache, kind, stitch, parts, beads, threads)
    names = Names(kinds, parts, beads, taken.unread, taken.doubtful)
    for bead in beads.values():
        names.check_bead(bead)
    for part in parts.values():
        names.check_part(part, stitches)
    return names


def _entries(tree: reading.Mapping, name: str) -> list[tuple[str, reading.Entry]]:
    entry = tree.entries.get(name)
    node = entry.node if entry else None
    return list(node.entries.items()) if isinstance(node, reading.Mapping) else []


def _goal(tree: reading.Mapping, bench: Bench, run: Iterable[RunEntry]) -> Goal | None:
    for name in ("finished_length", "inside"):
        entry = tree.entries.get(name)
        if entry is not None:
            parsed, place, word = units.target(entry.node.value), entry.node.place, entry.key.text
            if parsed.low < parsed.high:
                window = Window(parsed.low, parsed.high)
                return Goal(name, word, window, parsed.text, parsed.unit, place)
            called = _allowance(str(tree.value["piece"]), run)
            # never as much as the length itself, however small the piece
            off = min(bench.allowances[called].value, parsed.value / 10)
            in_inches = parsed.unit.startswith("in")
            written = units.by_length(off, inches=True) if in_inches else units.show(off, "mm")
            shown = f"± {written}"
            window = Window(parsed.value - off, parsed.value + off)
            assumed = f"{shown} is assumed, the bench's allowance `{called}`"
            return Goal(name, word, window, f"{parsed.text} {shown}", parsed.unit, place, assumed)
    return None


def _allowance(piece: str, run: Iterable[RunEntry]) -> str:
    """The allowance for the length of a piece: a woven cuff does not give as a bracelet does."""
    woven = any(part.kind.role is Role.BAND for entry in run for part in entry.parts)
    called = f"{'woven cuff' if woven and piece == 'bracelet' else piece} length"
    return called if called in ALLOWANCES else "other length"


class _Builder:
    """Builds what names parts: the run, what is hung, the work."""

    def __init__(self, tree: reading.Mapping, names: Names) -> None:
        self.tree = tree
        self.names = names

    def _items(self, name: str) -> list[reading.Node]:
        entry = self.tree.entries.get(name)
        node = entry.node if entry else None
        return list(node.items) if isinstance(node, reading.Sequence) else []

    def run(self) -> Iterator[RunEntry]:
        """The places of the run."""
        for node in self._items("run"):
            if "strands" in node.entries:
                yield from self._strands(node)
            elif "of" in node.entries:
                names = node.entries["of"].node
                assert isinstance(names, reading.Sequence)
                group = [entry for name in names.items for entry in self._place(name)]
                for _ in range(int(node.value["repeat"])):
                    yield from map(replace, group)  # each place is one of its own
            else:
                yield from self._place(node)

    def _place(self, node: reading.Node) -> Iterator[RunEntry]:
        """One place of the run: a part by its name, or with how many of it are linked in a row."""
        named, linked = node, 1
        if isinstance(node, reading.Mapping):
            named = node.entries["part"].node
            linked = int(node.value.get("linked", 1))
        name, _, half = str(named.value).partition(".")
        part = self.names.parts.get(name)
        if part is not None and part.kind.role is Role.CLASP:
            half = next((eye for eye, one in part.kind.eyes.items() if half in one.called), half)
        if part is None:
            self.names.unknown("part", name, self.names.parts, named)
        elif self._stands_there(part, half, named):
            yield RunEntry(part, half, linked, node.place)

    def _stands_there(self, part: Part, half: str, named: reading.Node) -> bool:
        """Whether a name is one of a place in the run: a part, or half a clasp."""
        is_clasp = part.kind.role is Role.CLASP
        if is_clasp != bool(half) or (half and half not in part.kind.eyes):
            halves = [f"`{part.name}.{eye}`" for eye in part.kind.eyes]
            why = "a clasp stands there by its halves" if is_clasp else "it has no halves"
            advice = f"write {either(halves)}" if is_clasp else f"write `{part.name}`"
            says = f"`{named.value}` is not a place in the run, for {why}: {advice}"
            new = "" if is_clasp else in_yaml(part.name)
            self.names.fault(says, named.place, part.key.place, new=new)
            return False
        return self._placed(part, "no place in the run", named)

    def _placed(self, part: Part, lacks: str, node: reading.Node) -> bool:
        """Whether a part can have a place in the piece; a fault where it cannot."""
        if part.kind.role in UNPLACED:
            says = f"`{part.name}` is {article(part.noun)}, which has {lacks}"
            self.names.fault(f"{says}: name another part", node.place, part.key.place)
            return False
        return True

    def _strands(self, node: reading.Node) -> Iterator[RunEntry]:
        """Strands side by side: one place in the run."""
        listed_here = node.entries["strands"].node
        strands = []
        for name in listed_here.items if isinstance(listed_here, reading.Sequence) else ():
            part = self.names.part(name, (Role.STRAND, Role.ROPE))
            if part is not None:
                if part.cut_from is None:  # chain lies side by side as strands do
                    self.names.takes("`strands`", part, name, (Role.STRAND, Role.ROPE))
                strands.append(part)
        if strands:
            twists = int(node.value.get("twisted", 0))
            beside = tuple(strands[1:])
            yield RunEntry(strands[0], "", 1, node.place, beside, twists=twists)

    def hung(self) -> Iterator[Hung]:
        """The lines that hang a part."""
        for node in self._items("hung"):
            assert isinstance(node, reading.Mapping)
            named, source_node, eyes = node.entries["part"].node, node.entries["from"].node, ""
            if isinstance(source_node, reading.Mapping):
                eyes = str(source_node.value.get("eyes", ""))
                source_node = source_node.entries["part"].node
            part, source = self.names.part(named), self.names.part(source_node)
            by_node = node.entries["by"].node if "by" in node.entries else None
            by = None
            if by_node is not None and by_node.value != "thread":
                by = self.names.part(by_node, (Role.RING,))
                if by is not None:
                    self.names.takes("`by`", by, by_node, (Role.RING,), ("thread",))
            if part is None or source is None:
                continue
            if not self._placed(part, "nothing to hang by", named):
                continue
            self._check_bail(part, source, by_node, node.entries["from"].node)
            found = _eyes_called(source, eyes)
            if eyes and found is None:
                known = {name.removesuffix("_eyes"): name for name in source.kind.eyes}
                self.names.unknown(f"set of eyes of `{source.name}`", eyes, known, source_node)
            # as the line says, or each leg of a tassel and each drop whose counts are listed once
            times = int(node.value.get("times", len(node.value.get("at", ())) or legs_of(part)))
            yield Hung(node, part, source, found or "", by, times)

    def _check_bail(
        self, part: Part, source: Part, by: reading.Node | None, node: reading.Node
    ) -> None:
        """A bail goes round what it hangs from, without a ring."""
        if part.kind.role is not Role.BAIL:
            return
        if by is not None:
            self.names.fault(
                f"`{part.name}` is a bail, which goes round `{source.name}` itself: take `by` out,"
                " or say what hangs from the bail in a line of its own",
                by.place,
                part.key.place,
            )
        elif source.kind.role not in LONG and source.cut_from is None:
            self.names.fault(
                f"`{source.name}` is {article(source.noun)}, and the bail `{part.name}` goes"
                " round a rope, a strand or a chain piece: name one of those, or hang a ring there",
                node.place,
                source.key.place,
            )

    def steps(self) -> Iterator[Step]:
        """The steps of the work."""
        for number, node in enumerate(self._items("work"), 1):
            assert isinstance(node, reading.Mapping)
            verb, parts = str(node.value["do"]), dict[str, Part]()
            for name in ("part", "to", "with", "onto", "from", "by", "around"):
                layers = parts["part"].traits.glued_on if name == "to" and "part" in parts else ()
                if name in node.entries and node.entries[name].node.value not in layers:
                    part = self.names.part(node.entries[name].node, WORKS_ON.get((verb, name), ()))
                    if part is not None:
                        parts[name] = part
            held = parts["part"].part("held_by") if verb == "string" and "part" in parts else None
            self.names.check_glued_to(verb, node, parts)
            for name in parts:
                self.names.check_use(verb, name, node.entries[name].node, parts)
            if held is not None and held.kind.role is Role.GLUE:
                parts["with"] = held  # a drop of it holds each bead as it is strung
            yield Step(node, number, verb, parts)

    def check_supplies(self) -> None:
        """What supplies are of is a bead or a part."""
        for node in self._items("supplies"):
            assert isinstance(node, reading.Mapping)
            for name, entry in node.entries.items():
                if name == "bead" and str(entry.node.value) not in self.names.beads:
                    self.names.unknown("bead", str(entry.node.value), self.names.beads, entry.node)
                elif name in ("part", "chain", "thread"):
                    self.names.part(entry.node)

    def check_prepared(self) -> None:
        """What is brought to a class ready made is a part."""
        entry = self.tree.entries.get("class")
        prepared = entry.node.entries.get("prepared") if entry else None
        if prepared is not None and isinstance(prepared.node, reading.Sequence):
            for name in prepared.node.items:
                self.names.part(name)

    def check_came(self) -> None:
        """What came for repair is of beads of the palette, and of parts."""
        for group, what in CAME.items():
            node = node_at(self.tree, "repair", "came", group)
            known = self.names.beads if what == "bead" else self.names.parts
            for name, entry in node.entries.items() if isinstance(node, reading.Mapping) else ():
                if name not in known:
                    self.names.unknown(what, name, known, entry.key)

    def check_centre(self) -> None:
        """What is meant for the middle is a part or a bead."""
        entry, known = self.tree.entries.get("centre"), {**self.names.parts, **self.names.beads}
        if entry is not None and str(entry.node.value) not in known:
            self.names.unknown("part or bead", str(entry.node.value), known, entry.node)


def _eyes_called(part: Part, name: str) -> str | None:
    """The key of the eyes an author calls `name`; without one the only eyes, or the lower ones."""
    eyes_of = part.kind.eyes
    eyes, hangs_on = [*eyes_of], part.kind.role is Role.EYED and not part.traits.two_ends
    if not name and eyes and (len(eyes) == 1 or hangs_on):
        return eyes[-1]
    for key in (name, f"{name}_eyes"):
        if key in part.kind.eyes:
            return key
    return next((key for key, eye in eyes_of.items() if eye.along and name in eye.called), None)
