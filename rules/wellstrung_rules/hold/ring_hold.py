"""A ring against the weight that hangs from it: the first yield of its wire, with room for wear."""

from __future__ import annotations

from collections.abc import Callable

from wellstrung.formulas import rings
from wellstrung.rulebook import Answer, Ask, Hangs, Misfit, Missing, Remedy, Rule, kept, pieces_hung
from wellstrung.rulebook.loads import pull_to_spare, weakest, weight
from wellstrung.rulebook.plan import Part
from wellstrung.rulebook.remedies import thicker_wires
from wellstrung.rulebook.values import Quantity, derived
from wellstrung.rulebook.values import metal as metal_row
from wellstrung.rulebook.wording import about, at_least
from wellstrung_rules.hold import in_wear
from wellstrung_rules.limits import HOLD_FACTOR


def check(join: Hangs, ask: Ask) -> Answer:
    ring, line = join.line.by, join.line
    if ring is None:
        return None
    load = weight(ask.hanging(line.part), pieces_hung(line) / line.times)
    factor, is_open = ask.limit(HOLD_FACTOR), ring.traits.gapes
    # across the cut of an open ring; anywhere on a whole one
    yields = rings.open_across_first_yield if is_open else rings.closed_first_yield
    bears = _pull("yields", yields, "curved beam, Winkler; statics", ring, ask)
    margin = pull_to_spare(bears, load, factor)
    if answer := kept(margin, over="worst"):
        return answer
    wire, place = ask.of(ring, "wire"), ring.place_of("wire")
    # strength goes with the cube of the wire
    thicker = (1 - min(margin.worst.low, 0) / bears.middle) ** (1 / 3)
    hinges = rings.open_across_hinge if is_open else rings.closed_hinge
    for_good = _pull("hinges", hinges, "full hinge, statics", ring, ask)
    return Misfit(
        says=f"ring `{ring.name}` {'opens' if is_open else 'bends'} at a pull of {about(bears)};"
        f" `{line.part.name}` pulls each ring like {in_wear(load, factor)}",
        place=place,
        found=about(bears),
        needed=at_least(load.worst.high * factor.middle, bears),
        remedies=(
            *(
                Remedy.write(place, size, f"take {size} wire for `{ring.name}`")
                for size in thicker_wires(wire, wire.middle * thicker)
            ),
            Remedy(f"take a thicker wire, a harder temper or a soldered ring for `{ring.name}`"),
        ),
        margin=margin,
        also=(line.place_of("by"),),
        working=(f"a snag opens it for good at {about(for_good)}",),
    )


def _pull(verb: str, formula: Callable[..., float], source: str, ring: Part, ask: Ask) -> Quantity:
    return derived(
        f"{ring.name} {verb} at",
        "N",
        formula,
        inside=ask.of(ring, "inside"),
        wire=ask.of(ring, "wire"),
        yield_stress=_yield(ring),
        source=source,
    )


def _yield(ring: Part) -> Quantity:
    """Yield stress of its metal and temper; of the softest where the plan names no temper."""
    row = metal_row(ring.text("metal"))
    tempers = {name: cell.high for name, cell in row.cells.items() if name.startswith("yield_")}
    temper = ring.text("temper") if ring.has("temper") else "annealed"
    column = f"yield_{temper.replace(' ', '_')}"
    if column not in tempers:
        raise Missing(f"a `metal` and `temper` of `{ring.name}` whose strength the tables have")
    best = tempers[column] if ring.has("temper") else max(tempers.values())
    return weakest(f"yield of {row.name}, {temper}", "metals", row.name, column, "MPa", best)


RULE = Rule(
    name="ring-hold",
    family="hold",
    subject=Hangs,
    check=check,
    fault="ring too weak",
    title="a ring holds what hangs from it, with room for wear",
    why="a thin ring does not break: it opens a little each day, until the pendant is gone",
    limits=(HOLD_FACTOR,),
    sources=(
        "curved beam by Winkler's theory; checked against published hooks and a frame solver",
        "breaking over working load 5:1 to 12:1: CI 1401-06, copy seen",
    ),
    bad="a frame of 60 g on one open ring of 22 AWG brass, 6 mm outside",
    good="a frame of 9 g on two open rings of 18 AWG brass, 6 mm outside",
    over="worst",
    loads=True,
)
