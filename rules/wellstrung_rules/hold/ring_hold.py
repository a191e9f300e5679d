"""A ring against the weight that hangs from it: first yield of its wire, with room for wear."""

from __future__ import annotations

from wellstrung.formulas import rings
from wellstrung.rulebook import Answer, Ask, Hangs, Misfit, Missing, Remedy, Rule, kept, pieces_hung
from wellstrung.rulebook.loads import pull_to_spare, weakest, weight
from wellstrung.rulebook.plan import Part
from wellstrung.rulebook.remedies import thicker_wires
from wellstrung.rulebook.values import Quantity, derived, table
from wellstrung.rulebook.wording import about, number
from wellstrung_rules.limits import HOLD_FACTOR


def check(join: Hangs, ask: Ask) -> Answer:
    ring, line = join.line.by, join.line
    if ring is None:
        return None
    load = weight(ask.hanging(line.part), pieces_hung(line) / line.times)
    bears = _bears(ring, ask)
    margin = pull_to_spare(bears, load, ask.limit(HOLD_FACTOR))
    if answer := kept(margin, over="worst"):
        return answer
    gives = "opens" if ring.traits.gapes else "bends"
    says = (
        f"ring `{ring.name}` {gives} at a pull of {about(bears)}, and `{line.part.name}` hangs"
        f" {about(load)} from each, {number(ask.limit(HOLD_FACTOR).middle)} times that in wear"
    )
    wire = ask.of(ring, "wire")
    return Misfit(
        says=says,
        place=ring.place_of("wire"),
        found=about(bears),
        needed=f"{number(load.worst.high * ask.limit(HOLD_FACTOR).middle)} N",
        remedies=(
            *(
                Remedy.write(ring.place_of("wire"), size, f"take {size} wire for `{ring.name}`")
                for size in thicker_wires(wire, wire.middle * _thicker(margin, bears))
            ),
            Remedy(f"take a thicker wire, a harder temper or a soldered ring for `{ring.name}`"),
        ),
        margin=margin,
        at_most="warning",
        also=(line.place_of("by"),),
        working=(f"a snag opens it for good at {about(_hinge(ring, ask))}",),
    )


def _thicker(margin: Quantity, bears: Quantity) -> float:
    """How many times the wire: strength goes with its cube."""
    return float((1 - min(margin.worst.low, 0) / bears.middle) ** (1 / 3))


def _bears(ring: Part, ask: Ask) -> Quantity:
    """The pull, N, at first yield: across the cut of an open ring, on a whole one anywhere."""
    opened = ring.traits.gapes
    formula = rings.open_across_first_yield if opened else rings.closed_first_yield
    return derived(
        f"{ring.name} yields at",
        "N",
        formula,
        inside=ask.of(ring, "inside"),
        wire=ask.of(ring, "wire"),
        yield_stress=_yield(ring),
        source="curved beam, Winkler; statics",
    )


def _hinge(ring: Part, ask: Ask) -> Quantity:
    opened = ring.traits.gapes
    formula = rings.open_across_hinge if opened else rings.closed_hinge
    return derived(
        f"{ring.name} hinges at",
        "N",
        formula,
        inside=ask.of(ring, "inside"),
        wire=ask.of(ring, "wire"),
        yield_stress=_yield(ring),
        source="full hinge, statics",
    )


def _yield(ring: Part) -> Quantity:
    """Yield stress of its metal and temper; of the softest where no temper is said."""
    row = table("metals").row(ring.text("metal"))
    temper = ring.text("temper").replace(" ", "_") if ring.has("temper") else "annealed"
    column = f"yield_{temper}"
    if column not in row.cells:
        raise Missing(f"a `metal` and `temper` of `{ring.name}` whose strength the tables have")
    name = f"yield of {row.name}, {temper.replace('_', ' ')}"
    return weakest(name, "metals", row.name, column, "MPa")


RULE = Rule(
    name="ring-hold",
    family="hold",
    subject=Hangs,
    check=check,
    title="a ring holds what hangs from it, with room for wear",
    why="a thin ring does not break: it opens a little each day, until the pendant is gone",
    limits=(HOLD_FACTOR,),
    sources=(
        "curved beam by Winkler's theory; checked against published hooks and a frame solver",
        "breaking over working load 5:1 to 12:1: CI 1401-06, copy seen",
    ),
    bad="a frame of 60 g on one open ring of 22 AWG brass, 6 mm outside",
    good="a frame of 9 g on two open rings of 18 AWG brass, 6 mm outside",
    level="warning",
    over="worst",
)
