"""A part or a bead by itself, the piece as a whole, and what is named and never used."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from wellstrung.model.beads import bead_mix
from wellstrung.model.item import Bead
from wellstrung.model.parts import UNPLACED, Part, Role
from wellstrung.model.plan import Hung, Plan
from wellstrung.reading import tree
from wellstrung.subjects.base import Subject
from wellstrung.subjects.counts import has_place
from wellstrung.subjects.supplies import spools_in_use


class Piece(Subject, frozen=True):
    """The piece as a whole."""


class ClaspClosed(Subject, frozen=True):
    """A clasp whose halves meet."""

    clasp: Part


class WireLink(Subject, frozen=True):
    """A wire link or a pin, with what it carries."""

    link: Part


class CoreInRope(Subject, frozen=True):
    """A core in the bore of the rope that it fills."""

    core: Part
    rope: Part


class CrimpInCover(Subject, frozen=True):
    """A crimp in the cover that is closed over it."""

    crimp: Part
    cover: Part


class StoneInRounds(Subject, frozen=True):
    """A stone that is sewn on a backing, with rounds of beads that rise round it."""

    part: Part


class StartedOn(Subject, frozen=True):
    """A band, and the ring, hoop, bar or chain that its first row is woven onto."""

    band: Part
    what: Part


class PaletteBead(Subject, frozen=True):
    """A bead of the palette."""

    bead: Bead


class Named(Subject, frozen=True):
    """A part or a bead of the palette, under which heading it stands, and whether it is used.

    `placeless` says that the plan names a part and gives it no place of its own in the piece;
    `carries` is then the first line that hangs something from it.
    """

    item: Part | Bead
    heading: str
    used: bool
    placeless: bool
    carries: Hung | None


def find(plan: Plan) -> Iterator[Subject]:
    """Each part and each bead that is judged by itself, and the piece."""
    for part in plan.parts.values():
        if part.kind.role is Role.CLASP:
            yield ClaspClosed(part.key.place, part)
        elif part.traits.on_wire:
            yield WireLink(part.key.place, part)
        core = part.part("core")
        if core is not None:
            yield CoreInRope(part.place_of("core"), core, part)
        if part.traits.glued_on and part.has("bezel"):
            yield StoneInRounds(part.place_of("bezel"), part)
        cover = part.part("cover")
        if cover is not None:
            yield CrimpInCover(part.place_of("cover"), part, cover)
        start = part.part("started_on")
        if start is not None:
            yield StartedOn(part.place_of("started_on"), part, start)
    for bead in plan.beads.values():
        yield PaletteBead(bead.key.place, bead)
    yield Piece(plan.place_of("title"))


#: fields of a part whose text is no name of another part
_PLAIN = frozenset({"kind", "stitch", "metal", "type", "colour", "finish", "note", "source"})


def names(plan: Plan) -> Iterator[Subject]:
    """Every name of the plan, and whether it is used."""
    used_outside = {
        str(text.value).partition(".")[0]
        for name in ("run", "hung", "work")
        if name in plan.tree.entries
        for text in _texts(plan.tree.entries[name].node)
    }
    used_outside |= {bead.text("woven") for bead in plan.beads.values() if bead.has("woven")}
    used_outside |= {part.name for part in plan.parts.values() if _used_unnamed(plan, part)}
    by_part = {
        part.name: {
            str(text.value)
            for field, entry in part.node.entries.items()
            if field not in _PLAIN
            for text in _texts(entry.node)
        }
        | bead_mix(part).keys()  # beads in shares are keys, as in `{milk: 1, rose: 2}`
        for part in plan.parts.values()
    }
    users = Counter(text for texts in by_part.values() for text in texts)
    for name, texts in by_part.items():
        users[name] -= name in texts  # itself is no user
    carried = {line.source: line for line in reversed(plan.hung)}
    in_piece = {*has_place(plan), *(part for step in plan.steps for part in step.parts.values())}
    lost = {p for p in plan.parts.values() if p.kind.role not in UNPLACED} - in_piece
    headings: tuple[tuple[str, list[Part | Bead]], ...] = (
        ("parts", [*plan.parts.values()]),
        ("beads", [*plan.beads.values()]),
    )
    for heading, items in headings:
        for item in items:
            used = item.name in used_outside or users[item.name] > 0
            placeless = used and isinstance(item, Part) and item in lost
            carries = carried.get(item) if placeless and isinstance(item, Part) else None
            yield Named(item.key.place, item, heading, used and not placeless, placeless, carries)


def _used_unnamed(plan: Plan, part: Part) -> bool:
    """Whether a part is used though nothing but `supplies` need name it.

    A tool is bought and that is all; thread is known by its type; glue is named by steps alone.
    """
    role = part.kind.role
    if role is Role.THREAD:
        return part in spools_in_use(plan)
    if role is Role.BACK:
        return part.has("behind")
    return role is Role.LOOSE or (role is Role.GLUE and not plan.steps)


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
