"""The piece on its wearer: age, metal and skin, the ear, what of the body it goes round or over."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from wellstrung.common import units
from wellstrung.model.beads import bead_mix
from wellstrung.model.item import Bead, Item
from wellstrung.model.parts import Part, Role
from wellstrung.model.plan import Hung, Plan
from wellstrung.model.references import WOVEN_HALVES
from wellstrung.subjects.base import Subject
from wellstrung.subjects.counts import is_safety_chain

#: what a piece goes round
ROUND: Mapping[str, str] = {
    "necklace": "neck",
    "lanyard": "neck",
    "bracelet": "wrist",
    "anklet": "ankle",
    "ring": "finger",
}
#: what a piece goes over when nothing in it opens
_OVER: Mapping[str, str] = {"necklace": "head", "lanyard": "head", "bracelet": "hand"}


class Worn(Subject, frozen=True):
    """A piece, how old its wearer is, and what closes it (empty where the plan does not say)."""

    wearer: Item
    age: str
    piece: str
    closes: str
    clasps: tuple[Part, ...]


class MetalParts(Subject, frozen=True):
    """Every metal part of the plan, and the wearer's age (empty where the plan does not say)."""

    metal_parts: tuple[Part, ...]
    age: str


class InEar(Subject, frozen=True):
    """The wire or the post of an earring in the ear that it goes through."""

    ear_wire: Part


class OnElastic(Subject, frozen=True):
    """Every part that is strung on elastic."""

    strung: tuple[Part, ...]


class BeadsOnChild(Subject, frozen=True):
    """The beads with sizes of their own that a child wears, no seed beads, and its cup chains."""

    beads: tuple[Bead, ...]
    age: str
    cups: tuple[Part, ...] = ()


class Fitted(Subject, frozen=True):
    """The piece on the one who wears it: round which measure of the body it goes."""

    wearer: Item
    measure: str


class PutOn(Subject, frozen=True):
    """A closed loop that goes on over a part of the body: `hand` or `head`.

    `wearer` is None where the plan names none; `strands` lie in the loop.
    """

    wearer: Item | None
    measure: str
    strands: tuple[Part, ...]


class SafetyChain(Subject, frozen=True):
    """A chain that hangs beside the clasp by both its ends, and the wearer; None if unsaid."""

    chain: Part
    line: Hung
    clasp: Part
    wearer: Item | None


class Rigid(Subject, frozen=True):
    """What is stiff in the run - a part, or a bead of one - and whose measure it goes round.

    `size` names its straight length, and `curved` says that it is bent to the body.
    """

    item: Part | Bead
    size: str
    curved: bool
    wearer: Item
    measure: str


def find(plan: Plan) -> Iterator[Subject]:
    """What follows from who wears the piece, where the plan says it."""
    wearer, closes = plan.section("wearer"), plan.written("closes")
    metal_parts = tuple(
        part
        for part in plan.parts.values()
        if part.takes("metal") and not part.traits.slides
        if not all(part.has(*half) for half in WOVEN_HALVES)
    )
    if metal_parts:
        yield MetalParts(metal_parts[0].key.place, metal_parts, plan.age)
    if wearer is not None:
        clasps = tuple(part for part in plan.in_run if part.kind.role is Role.CLASP)
        closed = str(closes.value) if closes else ""
        yield Worn(wearer.place_of("age"), wearer, plan.age, plan.piece, closed, clasps)
    strung = tuple(part for part in plan.parts.values() if part.thread.stretches)
    if strung:
        yield OnElastic(strung[0].key.place, strung)
    beads = tuple(bead for bead in plan.beads.values() if not bead.seed)
    chains = (part for part in plan.parts.values() if part.kind.role is Role.CHAIN)
    cups = tuple(chain for chain in chains if chain.traits.cups)
    if (beads or cups) and plan.age in (units.CHILD, units.UNDER_THREE):
        yield BeadsOnChild((*beads, *cups)[0].key.place, beads, plan.age, cups)
    for part in plan.parts.values():
        if part.traits.in_ear:
            yield InEar(part.key.place, part)


def put_on(plan: Plan) -> Iterator[Subject]:
    """What the piece goes round, what of it is stiff there, and what it has to go on over."""
    wearer = plan.section("wearer")
    if wearer is not None and plan.piece in ROUND:
        measure = ROUND[plan.piece]
        coiled = any(part.thread.springs for part in plan.in_run)
        if coiled or plan.tree.value.get("closes") != "open":
            yield Fitted(wearer.key.place, wearer, measure)
        for item, size in _stiff(plan):
            curved = item.has("curved") and item.text("curved") == "yes"
            yield Rigid(item.key.place, item, size, curved, wearer, measure)
    clasp = next((part for part in plan.in_run if part.kind.role is Role.CLASP), None)
    for line in plan.hung:
        if clasp is not None and is_safety_chain(line.part):
            yield SafetyChain(line.place, line.part, line, clasp, wearer)
    over = _over(plan)
    if over:
        slider = next((part for part in plan.in_run if part.traits.slides), None)
        says = "closes" if plan.written("closes") is not None else "run_is"
        place = slider.key.place if slider else plan.place_of(says)
        yield PutOn(place, wearer, over, plan.in_run)


def _stiff(plan: Plan) -> Iterator[tuple[Part | Bead, str]]:
    """What is stiff in the run, and the name of its straight length."""
    for part in plan.in_run:
        # a wire is stiff along its beads
        if part.traits.stiff and (bead_mix(part) or not part.traits.on_wire):
            yield part, part.traits.stiff
        elif part.kind.role is Role.STRAND:
            yield from ((plan.beads[name], "length") for name in bead_mix(part))


def _over(plan: Plan) -> str:
    """What a piece goes on over: as the plan says, or as a loop does that no clasp opens."""
    closes = str(plan.tree.value.get("closes", ""))
    if closes.startswith("over the "):
        return closes.removeprefix("over the ")
    if any(part.traits.slides for part in plan.in_run):
        return _OVER.get(plan.piece, "")
    clasp = any(part.kind.role is Role.CLASP for part in plan.in_run)
    closed = plan.is_loop and not clasp and closes not in ("clasp", "open")
    return _OVER.get(plan.piece, "") if closed else ""
