"""Named quantities of a plan, worked out when asked for and remembered for that plan.

A name is `<part>.<what>`, `beads.<bead>.<what>`, `piece.<what>` or, step by step, `piece.step 3`.
The kind of a part and its stitch bring the quantities of the part. A package that stands above
this one brings quantities of the piece: see `PieceQuantity`.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping

from msgspec import Struct

from wellstrung.common.wording import article
from wellstrung.derived import fill_rest
from wellstrung.derived.bead_sizes import BEAD
from wellstrung.derived.line_and_needle import STRINGING
from wellstrung.formulas.arithmetic import pi
from wellstrung.model.beads import bead_shares, beads_named
from wellstrung.model.item import Bead, Item, Missing
from wellstrung.model.parts import Formula, Part, Role
from wellstrung.model.plan import Plan, RunEntry
from wellstrung.quantity.value import Quantity, derived, exact, times, total
from wellstrung.subjects.base import Eyes
from wellstrung.subjects.counts import pieces_hung
from wellstrung.subjects.supplies import beads_needed

PIECE = "piece"
BEADS = "beads"


class PieceQuantity(Struct, frozen=True):
    """A quantity of the whole piece that a package above this one brings: `piece.<name>`."""

    name: str
    work_out: Callable[[Quantities], Quantity]


class StepQuantity(Struct, frozen=True):
    """A quantity of each step of the work, by its number: `piece.<name> 3`. No report lists it."""

    name: str
    work_out: Callable[[Quantities, int], Quantity]


Brought = PieceQuantity | StepQuantity


class Quantities:
    """The quantities of one plan, with those of the piece that other packages bring, by name."""

    def __init__(self, plan: Plan, brought: Mapping[str, Brought] | None = None) -> None:
        self.plan = plan
        self._brought = brought or {}
        self._known: dict[str, Quantity | Missing] = {}

    def get(self, name: str) -> Quantity:
        """The quantity of that name; raises Missing when the plan lacks a value it needs."""
        found = self._known.get(name)
        if found is None:
            try:
                found = self._work_out(name)
            except Missing as missing:
                found = missing
            self._known[name] = found
        if isinstance(found, Missing):
            raise found
        return found

    def of(self, item: Item, what: str) -> Quantity:
        """`what` of a part or a bead."""
        owner = item.name if isinstance(item, Part) else f"{BEADS}.{item.name}"
        return self.get(f"{owner}.{what}")

    def offers(self, part: Part, what: str) -> bool:
        """Whether a part of its kind and stitch has such a quantity at all."""
        return what in _offers(part)

    def offered(self) -> Iterator[str]:
        """Every name this plan may have a value for, in the plan's order."""
        for part in self.plan.parts.values():
            # the edges of woven bands are there for the rules that ask what hangs from them
            woven = tuple(eye for eye in part.kind.eyes if Eyes(part, eye).woven)
            offers = (what for what in _offers(part) if not what.startswith(woven))
            yield from (f"{part.name}.{what}" for what in offers)
            yield from (
                f"{part.name}.{eye}.{what}"
                for eye in part.kind.eyes
                if eye not in woven
                for what in EYE
                if part.has(*part.eye_path(eye))
            )
        yield from (f"{PIECE}.{what}" for what in _PIECE)
        for name, brought in self._brought.items():
            if isinstance(brought, PieceQuantity):
                yield f"{PIECE}.{name}"

    def _work_out(self, name: str) -> Quantity:
        owner, _, what = name.partition(".")
        if owner == PIECE:
            return _PIECE[what](self) if what in _PIECE else self._of_piece(what)
        if owner == BEADS:
            bead, _, what = what.partition(".")
            item = self.plan.beads[bead]
            return _STOCK[what](item, self) if what in _STOCK else BEAD[what](item)
        part = self.plan.parts[owner]
        if what == "length" and fill_rest.fills(part):
            return _rest(part, self)
        formula = _formula(part, what)
        if formula is not None:
            return formula(part, self)
        eye, _, of_eye = what.rpartition(".")
        if eye in part.kind.eyes and of_eye in EYE:
            return EYE[of_eye](part, eye)
        if what in STRINGING:
            return STRINGING[what](part)
        if what == "along":
            raise Missing(f"what `{part.name}`, {article(part.kind.name)}, adds to the run")
        raise part.missing(what)

    def _of_piece(self, what: str) -> Quantity:
        """A quantity of the piece, or of one of its steps, that another package brings."""
        name, _, number = what.rpartition(" ")
        brought = self._brought[name or what]
        if isinstance(brought, StepQuantity):
            return brought.work_out(self, int(number))
        return brought.work_out(self)


def _offers(part: Part) -> Mapping[str, Formula]:
    if part.stitch is None:
        return part.kind.quantities
    return {**part.stitch.quantities, **part.kind.quantities}


def _formula(part: Part, what: str) -> Formula | None:
    """How a part's quantity is worked out: as its stitch says aside, its kind, or its stitch."""
    aside = part.stitch.asides.get(what) if part.stitch is not None else None
    return aside or _offers(part).get(what)


# --- eyes


def _eye_hole(part: Part, eye: str) -> Quantity:
    return part.length(*part.eye_path(eye), "hole", allowance="eye size")


def _eye_wire(part: Part, eye: str) -> Quantity:
    return part.wire(*part.eye_path(eye), "wire")


def _eye_through(part: Part, eye: str) -> Quantity:
    """How thick the eye is to go through: of round wire, as thick as the wire."""
    path = part.eye_path(eye)
    return part.wire(*path, "through") if part.has(*path, "through") else _eye_wire(part, eye)


def _eye_edge(part: Part, eye: str) -> Quantity:
    return part.length(*part.eye_path(eye), "edge", allowance="eye size")


def _eye_spacing(part: Part, eye: str) -> Quantity:
    return part.length(*part.eye_path(eye), "spacing", allowance="eye size")


EYE: dict[str, Callable[[Part, str], Quantity]] = {
    "hole": _eye_hole,
    "wire": _eye_wire,
    "through": _eye_through,
    "edge": _eye_edge,
    "spacing": _eye_spacing,
}

# --- beads needed and on hand


def _beads_needed(bead: Bead, ask: Quantities) -> Quantity:
    """Beads that all the parts woven of it take."""
    woven = beads_needed(ask.plan, bead).woven
    return total(
        f"{bead.name}.needed", "", [beads_in(part, bead, count, ask) for part, count in woven]
    )


def beads_in(part: Part, bead: Item, count: int, ask: Quantities) -> Quantity:
    """How many of one bead a number of one part takes."""
    if part.has("core_bead"):
        return times(_of_spiral(part, bead, ask), count)
    beads, share = ask.of(part, "beads"), bead_shares(part)[bead.name]
    if share == 1:
        return times(beads, count)
    return derived(
        f"{bead.name} in {count} x {part.name}",
        "",
        lambda count, beads, share: count * beads * share,
        count=exact("count", count),
        beads=beads,
        share=exact("share", share),
    )


def _of_spiral(part: Part, bead: Item, ask: Quantities) -> Quantity:
    """How many of one bead a spiral rope takes: its core has more at the start than a repeat."""
    loop = beads_named(part, "outer")
    core = 1 if part.text("core_bead") == bead.name else 0
    return derived(
        f"{bead.name} in {part.name}",
        "",
        lambda core, core_beads, share, outer_beads: core * core_beads + share * outer_beads,
        core=exact("core", core),
        core_beads=ask.of(part, "core_beads"),
        share=exact("share", loop.get(bead.name, 0) / sum(loop.values())),
        outer_beads=ask.of(part, "outer_beads"),
    )


def _beads_on_hand(bead: Bead, ask: Quantities) -> Quantity:
    """Beads in the packs on hand, by mass or by count."""
    lines = beads_needed(ask.plan, bead).lines
    if not lines:
        raise Missing(f"a line `{{bead: {bead.name}, pack: ..., packs: ...}}` under `supplies`")
    return total(f"{bead.name}.on hand", "", [in_packs(bead, line, ask) for line in lines])


def in_packs(bead: Item, line: Item, ask: Quantities) -> Quantity:
    """Beads in one line of supplies, by mass or by count."""
    packs = line.count("packs", default=1)
    if not line.has("pack"):
        each = line.count("pack_of") if line.has("pack_of") else 0
        counted = line.count("count") if line.has("count") else 0
        if not each and not counted:
            raise line.missing("pack")
        return exact(f"{bead.name} counted", packs * each + counted)
    return derived(
        f"{bead.name} in packs",
        "",
        lambda packs, pack, per_gram: packs * pack * per_gram,
        packs=exact("packs", packs),
        pack=line.mass("pack"),
        per_gram=ask.of(bead, "per_gram"),
    )


def _spare(bead: Item, ask: Quantities) -> Quantity:
    """Beads wanted over, for culling: a share of those woven, by the make."""
    czech = bead.has("make") and bead.text("make") == "Czech"
    make = "Czech" if czech else "Japanese"
    name = f"spare {'cylinder' if bead.text('type') == 'cylinder' else make} beads"
    setting = ask.plan.bench.limits[name]
    return derived(
        f"{bead.name}.spare",
        "",
        lambda needed, share: needed * share,
        needed=ask.of(bead, "needed"),
        share=exact(name, setting.value, setting.unit, source=setting.reason),
    )


def _packs_wanted(bead: Bead, ask: Quantities) -> Quantity:
    """Packs in the last line of the supplies that make the beads enough, spare ones included."""
    line = beads_needed(ask.plan, bead).lines[-1]
    over = ask.of(bead, "on_hand") - ask.of(bead, "needed") - ask.of(bead, "spare")
    each = line.mass("pack").middle * ask.of(bead, "per_gram").likely.low
    # packs are whole: rounded up at the end, from what is short over the likely range
    more = math.ceil(max(0.0, -over.likely.low) / each)
    return exact(f"{bead.name}.packs", line.count("packs") + more)


_STOCK: dict[str, Callable[[Bead, Quantities], Quantity]] = {
    "needed": _beads_needed,
    "spare": _spare,
    "packs_wanted": _packs_wanted,
    "on_hand": _beads_on_hand,
}

# --- the piece


def thickest(plan: Plan, ask: Quantities) -> Part | None:
    """The rope, band or strand in the run that lies thickest against the body."""
    worn = (Role.ROPE, Role.BAND, Role.STRAND)
    ropes = {
        part.name: part for entry in plan.run for part in entry.parts if part.kind.role in worn
    }
    return max(ropes.values(), key=lambda rope: thickness(rope, ask).middle, default=None)


def thickness(part: Part, ask: Quantities) -> Quantity:
    """How thick a part lies against the body: of round work its outside."""
    flat = ask.offers(part, "thickness")
    return ask.of(part, "thickness" if flat else "outside")


def _length(ask: Quantities) -> Quantity:
    """Taut, between bearing points, clasp closed: what each place in the run adds."""
    if not ask.plan.run:
        raise Missing("`run`, the parts from one end to the other")
    return total("piece.length", "mm", _adds(ask), "taut, between bearing points, clasp closed")


def _adds(ask: Quantities, but: Part | None = None) -> list[Quantity]:
    """What each place in the run adds, all but those of one part."""
    return [adds(entry, ask) for entry in ask.plan.run if entry.part is not but]


def adds(entry: RunEntry, ask: Quantities) -> Quantity:
    """What one place in the run adds to it, mm, with all the links that stand there.

    Of strands side by side the shortest lies innermost, and the piece is as long as it.
    """
    what = f"{entry.half}.along" if entry.half else "along"
    along = min((ask.of(part, what) for part in entry.parts), key=lambda length: length.middle)
    return times(along, entry.linked)


def _rest(part: Part, ask: Quantities) -> Quantity:
    """The length of the part that fills what the others leave of the length wanted."""
    others = total("the others", "mm", [exact("none", 0.0, "mm"), *_adds(ask, but=part)])
    goal, rope = ask.plan.goal, thickest(ask.plan, ask)
    inside = goal is not None and goal.field == "inside" and rope is not None
    return fill_rest.filled(part, others, thickness(rope, ask) if rope and inside else None, ask)


#: pieces that hang or are pinned on, and go round nothing
_HANGS = frozenset({"earrings", "pendant", "brooch", "key ring"})


def _inside(ask: Quantities) -> Quantity:
    """The way round inside: a thing of some thickness loses pi times that thickness."""
    if ask.plan.piece in _HANGS:
        raise Missing("a `piece` that goes round something")
    rope = thickest(ask.plan, ask)
    if rope is None:
        raise Missing("a rope, a band or a strand in the run, which lies against the body")
    return derived(
        "piece.inside",
        "mm",
        inside_length,
        length=ask.get("piece.length"),
        thickness=thickness(rope, ask),
        source="strung length = body + ease + pi x thickness, trade table `bracelet_eases`",
    )


def inside_length(length: float, thickness: float) -> float:
    """The way round the inside of a closed piece, mm: its middle line less pi times its thickness.

    Three printed forms of one geometry (trade tables, bracelets): strung length = wrist + ease +
    pi x thickness.

    >>> round(inside_length(460.0, 9.9), 1)
    428.9
    """
    return length - pi * thickness


def _mass(ask: Quantities) -> Quantity:
    """Every part in the run and every part hung, with the rings they hang by."""
    terms = []
    for entry in ask.plan.run:
        if entry.half in ("", next(iter(entry.part.kind.eyes), "")):
            terms += [times(ask.of(part, "mass"), entry.linked) for part in entry.parts]
    for line in ask.plan.hung:
        terms.append(times(ask.of(line.part, "mass"), pieces_hung(line)))
        if line.by is not None:
            terms.append(times(ask.of(line.by, "mass"), line.times))
    return total("piece.mass", "g", terms)


_PIECE: dict[str, Callable[[Quantities], Quantity]] = {
    "length": _length,
    "inside": _inside,
    "mass": _mass,
}
