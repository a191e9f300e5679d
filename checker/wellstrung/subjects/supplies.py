"""What a plan needs against what its supplies hold, and what it names and never uses.

Lines of `supplies` are items of their own: they know their fields and places as parts do.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from wellstrung.common.money import budget
from wellstrung.model.parts import Item, Part, Plan, Role, bead_shares
from wellstrung.reading import tree
from wellstrung.subjects.joins import Subject, placed


class BeadsNeeded(Subject, frozen=True):
    """A bead of the palette, the parts woven of it (and how many of each), what is on hand."""

    bead: Item
    woven: tuple[tuple[Part, int], ...]
    lines: tuple[Item, ...]

    @property
    def parts(self) -> tuple[str, ...]:
        """Bead, then what is woven of it."""
        return (self.bead.name, *(part.name for part, _ in self.woven))


class RingsNeeded(Subject, frozen=True):
    """A ring, how many the run and what is hung take, and what is on hand."""

    ring: Part
    count: int
    lines: tuple[Item, ...]

    @property
    def parts(self) -> tuple[str, ...]:
        """The ring."""
        return (self.ring.name,)


class ThreadNeeded(Subject, frozen=True):
    """A thread, the woven parts that use it (and how many of each), what is on hand.

    `thread` is None where a woven part tells of a thread that no part of the plan is.
    """

    thread: Part | None
    woven: tuple[tuple[Part, int], ...]
    lines: tuple[Item, ...]

    @property
    def parts(self) -> tuple[str, ...]:
        """Thread, then what is woven with it."""
        thread = (self.thread.name,) if self.thread else ()
        return (*thread, *(part.name for part, _ in self.woven))


class Woven(Subject, frozen=True):
    """A woven part, and whether its own thread sews it to a clasp, with no cap between."""

    part: Part
    sewn_to_clasp: bool

    @property
    def parts(self) -> tuple[str, ...]:
        """The woven part."""
        return (self.part.name,)


class Fitted(Subject, frozen=True):
    """The piece on the one who wears it: round which measure of the body it goes."""

    wearer: Item
    measure: str


class PutOn(Subject, frozen=True):
    """A closed loop that goes on over a part of the body: `hand` or `head`.

    `wearer` is None where the plan tells of none; `strands` lie in the loop.
    """

    wearer: Item | None
    measure: str
    strands: tuple[Part, ...]

    @property
    def parts(self) -> tuple[str, ...]:
        """What lies in the loop."""
        return tuple(strand.name for strand in self.strands)


class Budgeted(Subject, frozen=True):
    """What all that the plan takes may cost, and what it is compared by: its currency."""

    amount: float
    currency: str
    text: str


class Named(Subject, frozen=True):
    """A part or a bead of the palette, under which heading it is named, and whether it is used."""

    item: Item
    heading: str
    used: bool

    @property
    def parts(self) -> tuple[str, ...]:
        """The part or the bead."""
        return (self.item.name,)


def find(plan: Plan) -> tuple[Subject, ...]:
    """Every need of a plan."""
    return (
        *_beads(plan),
        *_rings(plan),
        *_threads(plan),
        *_woven(plan),
        *_worn(plan),
        *_put_on(plan),
        *_budgeted(plan),
        *_named(plan),
    )


#: what a piece goes round
ROUND: Mapping[str, str] = {"necklace": "neck", "bracelet": "wrist", "anklet": "ankle"}


def supply_lines(plan: Plan, what: str, name: str) -> tuple[Item, ...]:
    """The lines of `supplies` for a bead, part, chain or thread of that name."""
    found = []
    for line in plan.entries("supplies"):
        key = line.entries[what].node if what in line.entries else None
        if isinstance(key, tree.Scalar) and str(key.value) == name:
            found.append(plan.item(name, key, line))
    return tuple(found)


def beads_needed(plan: Plan, bead: Item) -> BeadsNeeded:
    """What a plan asks of one bead: a part that has no place in it yet is woven once."""
    counts = placed(plan)
    woven = tuple(
        (part, counts.get(part.name) or plan.makes)
        for part in plan.parts.values()
        if bead.name in bead_shares(part)
    )
    return BeadsNeeded(bead.key.place, bead, woven, supply_lines(plan, "bead", bead.name))


def _beads(plan: Plan) -> Iterator[Subject]:
    for bead in plan.beads.values():
        need = beads_needed(plan, bead)
        if need.woven:
            yield need


def _rings(plan: Plan) -> Iterator[Subject]:
    counts: dict[str, int] = {}
    for entry in plan.run:
        counts[entry.part.name] = counts.get(entry.part.name, 0) + entry.linked
    for line in plan.hung:
        if line.by is not None:
            counts[line.by.name] = counts.get(line.by.name, 0) + line.times
    for part in plan.parts.values():
        if part.kind.role is Role.RING and counts.get(part.name):
            lines = supply_lines(plan, "part", part.name)
            yield RingsNeeded(part.key.place, part, counts[part.name] * plan.makes, lines)


def _threads(plan: Plan) -> Iterator[Subject]:
    counts = placed(plan)
    used: dict[str, list[tuple[Part, int]]] = {}
    for part in plan.parts.values():
        if not part.has("stitch") or not part.has("thread"):
            continue
        woven, spool = (part, counts.get(part.name) or plan.makes), spool_of(plan, part)
        if spool is None:
            yield ThreadNeeded(part.place_of("thread"), None, (woven,), ())
        else:
            used.setdefault(spool.name, []).append(woven)
    for name, parts in used.items():
        thread, lines = plan.parts[name], supply_lines(plan, "thread", name)
        yield ThreadNeeded(thread.key.place, thread, tuple(parts), lines)


def spool_of(plan: Plan, woven: Part) -> Part | None:
    """The thread of a woven part: the one it names, or the only one there is of its type."""
    if woven.has("thread", "spool"):
        return plan.parts[woven.text("thread", "spool")]
    if not woven.has("thread", "type"):
        return None
    alike = [
        part
        for part in plan.parts.values()
        if part.kind.name == "thread" and part.text("type") == woven.text("thread", "type")
    ]
    return alike[0] if len(alike) == 1 else None


def _woven(plan: Plan) -> Iterator[Subject]:
    sewn = {
        part.name
        for pair in plan.neighbours
        for entry, beside in (pair, pair[::-1])
        if beside.part.kind.role is Role.CLASP and not _gripped(beside.part)
        for part in entry.parts
    }
    for part in plan.parts.values():
        if part.has("stitch"):
            yield Woven(part.key.place, part, part.name in sewn)


def _gripped(clasp: Part) -> bool:
    """Whether a clasp holds a band without thread: by glue in its slot, or between its jaws."""
    return clasp.has("tube", "slot") or clasp.has("jaw")


def _worn(plan: Plan) -> Iterator[Subject]:
    wearer = wearer_of(plan)
    if wearer is None or plan.piece not in ROUND:
        return
    if plan.tree.value.get("closes") != "open":
        yield Fitted(wearer.key.place, wearer, ROUND[plan.piece])


def wearer_of(plan: Plan) -> Item | None:
    """Who wears the piece, with the fields that the plan gives; None where it tells of nobody."""
    entry = plan.tree.entries.get("wearer")
    if entry is None or not isinstance(entry.node, tree.Mapping):
        return None
    return plan.item("wearer", entry.key, entry.node)


#: over what a piece goes when nothing in it opens
OVER: Mapping[str, str] = {"necklace": "head", "bracelet": "hand"}


def _put_on(plan: Plan) -> Iterator[Subject]:
    """A piece that is said to go on over hand or head, or a loop that no clasp opens."""
    closes = str(plan.tree.value.get("closes", ""))
    over = closes.removeprefix("over the ") if closes.startswith("over the ") else ""
    clasp = any(entry.part.kind.role is Role.CLASP for entry in plan.run)
    if not over and plan.is_loop and not clasp and closes not in ("clasp", "open"):
        over = OVER.get(plan.piece, "")
    if over:
        place = plan.place_of("closes" if closes else "run_is")
        strands = dict.fromkeys(part for entry in plan.run for part in entry.parts)
        yield PutOn(place, wearer_of(plan), over, tuple(strands))


def _budgeted(plan: Plan) -> Iterator[Subject]:
    """The plan's own budget, or the one that the bench has for every piece."""
    written = plan.tree.value.get("budget", plan.bench.budget)
    if written is not None:
        money = budget(written)
        yield Budgeted(plan.place_of("budget"), float(money.amount), money.currency, str(money))


#: fields of a part whose text is no name of another part
_PLAIN = frozenset({"kind", "stitch", "metal", "type", "colour", "finish", "note", "source"})


def _named(plan: Plan) -> Iterator[Subject]:
    told = {
        str(text.value).partition(".")[0]
        for name in ("run", "hung", "work", "supplies")
        if name in plan.tree.entries
        for text in _texts(plan.tree.entries[name].node)
    }
    by_part = {
        part.name: {
            str(text.value)
            for field, entry in part.node.entries.items()
            if field not in _PLAIN
            for text in _texts(entry.node)
        }
        for part in plan.parts.values()
    }
    for heading, items in (("parts", plan.parts), ("beads", plan.beads)):
        for item in items.values():
            used = item.name in told or any(
                item.name in texts for name, texts in by_part.items() if name != item.name
            )
            yield Named(item.key.place, item, heading, used)


def _texts(node: tree.Node) -> Iterator[tree.Node]:
    """Every plain value under a node."""
    waiting = [node]
    while waiting:
        node = waiting.pop()
        if isinstance(node, tree.Mapping):
            waiting += [entry.node for entry in node.entries.values()]
        elif isinstance(node, tree.Sequence):
            waiting += node.items
        else:
            yield node
