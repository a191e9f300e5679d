"""What a plan takes of each supply, against what its `supplies` hold.

Lines of `supplies` are items of their own: they know their fields and places as parts do.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from wellstrung.common.cache import cached
from wellstrung.common.money import budget
from wellstrung.model.beads import takes_bead
from wellstrung.model.item import Bead, Item
from wellstrung.model.parts import Part, Role
from wellstrung.model.plan import Plan
from wellstrung.reading import tree
from wellstrung.subjects.base import Subject
from wellstrung.subjects.counts import how_many, is_bought, taken_in_all, woven_of


class BeadsNeeded(Subject, frozen=True):
    """A bead of the palette, the parts woven of it (and how many of each), what is on hand."""

    bead: Bead
    woven: tuple[tuple[Part, int], ...]
    lines: tuple[Item, ...]


class PiecesNeeded(Subject, frozen=True):
    """A ring or another finding that the piece takes, and what is on hand."""

    part: Part
    lines: tuple[Item, ...]


class ThreadNeeded(Subject, frozen=True):
    """A thread, the parts that are worked with it, what is on hand.

    `thread` is None where a part names a thread that no part of the plan is.
    """

    thread: Part | None
    woven: tuple[Part, ...]
    lines: tuple[Item, ...]


class Budgeted(Subject, frozen=True):
    """What all that the plan takes may cost, and what it is compared by: its currency."""

    amount: float
    currency: str
    text: str


#: what a line says of a supply that does not come by the piece
_MEASURED = ("length", "volume", "pack")
#: what tells a thread from others
_TELLS_APART = ("type", "rating", "size")


def find(plan: Plan) -> Iterator[Subject]:
    """Everything the plan takes that supplies may hold, and what all of it may cost."""
    for bead in plan.beads.values():
        need = beads_needed(plan, bead)
        if need.woven and not bead.has("woven"):
            yield need
    woven = {woven_of(part) for part in plan.parts.values()}
    for part in plan.parts.values():
        if is_bought(part) and (taken_in_all(plan).get(part.name) or part in woven):
            lines = supply_lines(plan, "part", part.name)
            counted = not all(any(map(line.has, _MEASURED)) for line in lines)
            # every ring is asked for, as rings run short; of other findings what the plan lists
            if part.kind.role is Role.RING or counted:
                yield PiecesNeeded(part.key.place, part, lines)
    yield from _threads(plan)
    yield from _budgeted(plan)


def supply_lines(plan: Plan, what: str, name: str) -> tuple[Item, ...]:
    """The lines of `supplies` for a bead, part, chain or thread of that name."""
    return tuple(
        [plan.item(name, key, line) for key, line in _supplied(plan).get((what, name), ())]
    )


@cached
def _supplied(plan: Plan) -> Mapping[tuple[str, str], list[tuple[tree.Scalar, tree.Mapping]]]:
    """The lines of `supplies` by what each holds, with the node that names it."""
    found: dict[tuple[str, str], list[tuple[tree.Scalar, tree.Mapping]]] = {}
    for line in plan.entries("supplies"):
        for what, entry in line.entries.items():
            if isinstance(entry.node, tree.Scalar):
                found.setdefault((what, str(entry.node.value)), []).append((entry.node, line))
    return found


def beads_needed(plan: Plan, bead: Bead) -> BeadsNeeded:
    """What a plan takes of one bead."""
    woven = tuple(
        (part, how_many(plan, part)) for part in plan.parts.values() if takes_bead(part, bead.name)
    )
    return BeadsNeeded(bead.key.place, bead, woven, supply_lines(plan, "bead", bead.name))


def _threads(plan: Plan) -> Iterator[Subject]:
    for thread, parts in threaded(plan).items():
        if thread is not None:
            lines = supply_lines(plan, "thread", thread.name)
            yield ThreadNeeded(thread.key.place, thread, parts, lines)
    for part in plan.parts.values():
        # a fringe without a thread of its own hangs by that of what it is sewn to
        worked = part.has("thread") or (part.stitch is not None and part.takes("thread"))
        if worked and spool_of(plan, part) is None:
            yield ThreadNeeded(part.place_of("thread"), None, (part,), ())


@cached
def threaded(plan: Plan) -> Mapping[Part | None, tuple[Part, ...]]:
    """The parts that are worked with each thread; with None, where no part of the plan is it."""
    found: dict[Part | None, tuple[Part, ...]] = {}
    for part in plan.parts.values():
        if part.has("thread"):
            spool = spool_of(plan, part)
            found[spool] = (*found.get(spool, ()), part)
    return found


def spool_of(plan: Plan, woven: Part) -> Part | None:
    """The thread of a woven part: the one it names, or the only one there is of its kind."""
    spools = spools_for(plan, woven)
    return spools[0] if len(spools) == 1 else None


def spools_for(plan: Plan, woven: Part) -> list[Part]:
    """The threads that a part may be woven with: the one it names, or all of its type and size."""
    if woven.has("thread", "spool"):
        named = woven.part("thread", "spool")
        return [named] if named is not None else []
    if not woven.has("thread", "type"):
        return []
    has = (field for field in _TELLS_APART if woven.has("thread", field))
    said = tuple([(field, woven.text("thread", field)) for field in has])
    return plan.cache.get(_spools_of, plan, said)


def _spools_of(plan: Plan, said: tuple[tuple[str, str], ...]) -> list[Part]:
    """The threads that say nothing else of a field than what is said of a part's thread."""
    spools = (part for part in plan.parts.values() if part.kind.role is Role.THREAD)
    return [
        spool
        for spool in spools
        if all(not spool.has(field) or spool.text(field) == text for field, text in said)
    ]


@cached
def spools_in_use(plan: Plan) -> frozenset[Part]:
    """The threads that any part may be woven with."""
    of_each = [spools_for(plan, woven) for woven in plan.parts.values()]  # many the very same
    return frozenset(
        spool for spools in {id(one): one for one in of_each}.values() for spool in spools
    )


def _budgeted(plan: Plan) -> Iterator[Subject]:
    """The plan's own budget, or the one that the bench has for every piece."""
    written = plan.tree.value.get("budget", plan.bench.budget)
    if written is not None:
        money = budget(written)
        yield Budgeted(plan.place_of("budget"), float(money.amount), money.currency, str(money))
