"""Quantities of the whole piece: its length, the way round inside it, its mass."""

from __future__ import annotations

from collections.abc import Callable

from wellstrung.formulas.arithmetic import pi
from wellstrung.model.item import Missing
from wellstrung.model.parts import Part, Role
from wellstrung.model.plan import Plan, Quantities, RunEntry
from wellstrung.quantity.arithmetic import derived, times, total
from wellstrung.quantity.value import Quantity
from wellstrung.subjects.counts import hung_in_all


def thickest(plan: Plan, ask: Quantities) -> Part | None:
    """What lies thickest against the body: woven or strung work, else chain or wire links."""
    worn = (Role.ROPE, Role.BAND, Role.STRAND)
    ropes = [part for part in plan.in_run if part.kind.role in worn]
    links = [part for part in plan.in_run if ask.offers(part, "thickness")]
    return max(ropes or links, key=lambda rope: thickness(rope, ask).middle, default=None)


def thickness(part: Part, ask: Quantities) -> Quantity:
    """How thick a part lies against the body: of round work its outside."""
    flat = ask.offers(part, "thickness")
    return ask.of(part, "thickness" if flat else "outside")


def _length(ask: Quantities) -> Quantity:
    """Taut, between bearing points, clasp closed: what each place in the run adds."""
    if not ask.plan.run:
        raise Missing("`run`, the parts from one end to the other")
    each = [adds(entry, ask) for entry in ask.plan.run]
    return total("piece.length", "mm", each, "taut, between bearing points, clasp closed")


def adds(entry: RunEntry, ask: Quantities) -> Quantity:
    """What one place in the run adds to it, mm, with all the links that stand there.

    Of strands side by side the shortest lies innermost, and the piece is as long as it.
    """
    what = f"{entry.half}.along" if entry.half else "along"
    along = min((ask.of(part, what) for part in entry.parts), key=lambda length: length.middle)
    return times(along, entry.linked)


#: pieces that hang or are pinned on, and go round nothing
_HANGS = frozenset({"earrings", "pendant", "brooch", "key ring"})


def _inside(ask: Quantities) -> Quantity:
    """The way round inside: a thing of some thickness loses pi times that thickness."""
    if ask.plan.piece in _HANGS:
        raise Missing("a `piece` that goes round something")
    rope = thickest(ask.plan, ask)
    if rope is None:
        raise Missing("a rope, a band, a strand, chain or wire links in the run")
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
        if entry.counts:
            terms += [times(ask.of(part, "mass"), entry.linked) for part in entry.parts]
    for line in ask.plan.hung:
        pieces, joints = hung_in_all(ask.plan, line)
        terms.append(times(ask.of(line.part, "mass"), pieces))
        if line.by is not None:
            terms.append(times(ask.of(line.by, "mass"), joints))
    return total("piece.mass", "g", terms)


OF_PIECE: dict[str, Callable[[Quantities], Quantity]] = {
    "length": _length,
    "inside": _inside,
    "mass": _mass,
}
