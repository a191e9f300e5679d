"""Named quantities of a plan, worked out when asked for and remembered for that plan.

A name is `<part>.<what>`, `beads.<bead>.<what>`, `piece.<what>` or, step by step, `piece.step 3`.
The kind of a part and its stitch bring the quantities of the part. A package that stands above
this one brings quantities of the piece: see `PieceQuantity`.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping

from msgspec import Struct

from wellstrung.common.wording import article
from wellstrung.derived import amounts, bead_sizes, line_and_needle, pieces
from wellstrung.derived.bead_sizes import of_woven
from wellstrung.derived.embellished import GIVES, embellished
from wellstrung.derived.eyes import OF_EYE
from wellstrung.derived.fill_rest import rest
from wellstrung.derived.learnt import MEASURED, no_surer
from wellstrung.derived.piece import OF_PIECE
from wellstrung.model.item import Item, Missing
from wellstrung.model.parts import Formula, Part
from wellstrung.model.plan import Plan
from wellstrung.quantity.arithmetic import exact
from wellstrung.quantity.value import Quantity
from wellstrung.subjects.base import Eyes

PIECE = "piece"
BEADS = "beads"


class PieceQuantity(Struct, frozen=True):
    """A quantity of the whole piece that a package above this one brings: `piece.<name>`."""

    name: str
    work_out: Callable[[Quantities], Quantity]
    unit: str = "min"


class StepQuantity(Struct, frozen=True):
    """A quantity of each step of the work, by its number: `piece.<name> 3`. No report lists it."""

    name: str
    work_out: Callable[[Quantities, int], Quantity]


Brought = PieceQuantity | StepQuantity


class Quantities:
    """The quantities of one plan, with those of the piece that other packages bring, by name.

    With `known_mass`, a part whose mass is not known weighs nothing: a load is the least it can be.
    """

    def __init__(
        self, plan: Plan, brought: Mapping[str, Brought] | None = None, *, known_mass: bool = False
    ) -> None:
        self.plan = plan
        self._brought = brought or {}
        self._known_mass = known_mass
        self._known: dict[str, Quantity | Missing] = {}

    def at_least(self) -> Quantities:
        """The same, where what is not known of a load counts as nothing."""
        return Quantities(self.plan, self._brought, known_mass=True)

    def of_changed(self, plan: Plan) -> Quantities:
        """The quantities of a changed plan."""
        return Quantities(plan, self._brought)

    def kept(self) -> Mapping[str, Quantity | Missing]:
        """What is worked out so far, to go back to."""
        return dict(self._known)

    def back_to(self, kept: Mapping[str, Quantity | Missing]) -> None:
        """Forget all but that."""
        self._known = dict(kept)

    def get(self, name: str) -> Quantity:
        """The quantity of that name; raises Missing when the plan lacks a value it needs."""
        found = self._known.get(name)
        if found is None:
            try:
                found = self._work_out(name)
            except Missing as missing:
                weightless = self._known_mass and name.endswith(".mass")
                found = exact(name, 0.0, "g", source="not known") if weightless else missing
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
                for what in OF_EYE
                if part.has(*part.eye_path(eye)) or part.by_size
            )
        yield from (f"{PIECE}.{what}" for what in OF_PIECE)
        for name, brought in self._brought.items():
            if isinstance(brought, PieceQuantity):
                yield f"{PIECE}.{name}"

    def _work_out(self, name: str) -> Quantity:
        owner, _, what = name.partition(".")
        if owner == PIECE:
            return OF_PIECE[what](self) if what in OF_PIECE else self._of_piece(what)
        if owner == BEADS:
            bead, _, what = what.partition(".")
            item = self.plan.beads[bead]
            amount = amounts.OF_BEAD.get(what)
            if amount is None and item.has("woven"):
                return of_woven(self.plan.parts[item.text("woven")], what, self)
            return amount(item, self) if amount else bead_sizes.OF_BEAD[what](item)
        part = self.plan.parts[owner]
        if what == "length" and part.fills_rest and not part.has("measured", "length"):
            return rest(part, self)
        formula = _formula(part, what)
        if formula is not None:
            found = formula(part, self)
            return no_surer(found, part) if what in MEASURED else found
        eye, _, of_eye = what.rpartition(".")
        if eye in part.kind.eyes and of_eye in OF_EYE:
            return OF_EYE[of_eye](part, eye)
        if what in line_and_needle.OF_PART:
            return line_and_needle.OF_PART[what](part)
        if what in amounts.OF_PART:
            return amounts.OF_PART[what](part, self)
        if part.traits.bought and what in pieces.OF_BOUGHT:
            return pieces.OF_BOUGHT[what](part, self)
        if what == "along":
            raise Missing(f"what `{part.name}`, {article(part.noun)}, adds to the run")
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
    offers = {**part.stitch.quantities, **part.kind.quantities}
    return embellished(part, offers) if any(map(part.has, GIVES)) else offers


def _formula(part: Part, what: str) -> Formula | None:
    """How a part's quantity is worked out: as its stitch says aside, its kind, or its stitch."""
    aside = part.stitch.asides.get(what) if part.stitch is not None else None
    return aside or _offers(part).get(what)
