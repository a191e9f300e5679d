"""Rounds that rise round a stone on a backing: a bead over its edge, and not over most of it."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Limit, Misfit, Remedy, Rule, StoneInRounds, kept
from wellstrung.rulebook.plan import bead_rows
from wellstrung.rulebook.values import Quantity, derived, total
from wellstrung.rulebook.wording import about, at_most, plural, raised

COVERS = Limit(
    "bezel over the dome",
    0.6,
    "",
    "of the height of the dome above its edge: more hides the stone, common practice, no source",
)


def check(stone: StoneInRounds, ask: Ask) -> Answer:
    part = stone.part
    rounds = bead_rows(part, "bezel")
    front = max((ask.of(part.beads[name], "outside") for name in rounds[-1]), key=_middle)
    edge, has = ask.of(part, "stone.edge"), ask.of(part, "rise")
    needed = total("up the edge and a bead over it", "mm", [edge, front])
    dome = derived(
        "as much of the stone as it may cover",
        "mm",
        lambda edge, thickness, share: edge + share * (thickness - edge),
        edge=edge,
        thickness=ask.of(part, "stone.thickness"),
        share=ask.limit(COVERS),
    )
    # what holds it never hides it, however flat the stone is: rounds rise half a bead, and the
    # next one after a round that only may hold it lies within a bead
    low, high = has - needed, max(dome, needed + front, key=_middle) - has
    if answer := kept(low, high):
        return answer
    too_low = low.likely.low < high.likely.low
    says = f"`{part.name}` with {plural(len(rounds), 'round')} over its base row"
    says += f" ({about(has, edge)} high) "
    if too_low:
        says += f"{{does|may}} not hold its stone, which takes {about(needed, edge)}: its edge,"
        says += " and a bead over it"
    else:
        says += f"{{hides|may hide}} much of its stone, whose dome begins at {about(edge)}"
    margin = low if too_low else high
    most = at_most(has.middle + high.likely.low, edge)
    return Misfit(
        says=says,
        place=part.place_of("bezel"),
        found=about(has, edge),
        needed=f"{raised(has, low, edge)} or more" if too_low else f"{most} or less",
        remedies=(_remedy(part.name, len(rounds), -margin.likely.low, front, too_low=too_low),),
        margin=margin,
        at_most="error" if too_low else "warning",
        fault=f"bezel too {'low' if too_low else 'high'} for its stone",
        also=(part.place_of("stone", "edge"),),
    )


def _middle(size: Quantity) -> float:
    return size.middle


def _remedy(name: str, had: int, off: float, front: Quantity, *, too_low: bool) -> Remedy:
    """So many rounds more or fewer, of which one stays: each rises half a bead."""
    rounds = max(1, -int(-off // (front.middle / 2)))
    if too_low:
        return Remedy(f"weave {plural(rounds, 'more round')} in the `bezel` of `{name}`")
    bezel = f"the `bezel` of `{name}`"
    if rounds >= had:
        return Remedy(f"weave {bezel} in smaller beads")
    return Remedy(f"leave {plural(rounds, 'round')} out of {bezel}, or weave it in smaller beads")


RULE = Rule(
    name="bezel-rise",
    family="fit",
    subject=StoneInRounds,
    check=check,
    fault="bezel does not suit its stone",
    title="the rounds round a stone on a backing rise a bead over its edge, and leave it seen",
    why="a bezel that ends at the edge lets the stone slip out, and one that climbs the dome covers"
    " what the piece is made for",
    limits=(COVERS,),
    sources=(
        "one bead taller than where the stone slants inward; too high covers too much of it: `The"
        " Complete Photo Guide to Beading`, beading the bezel, excerpt seen",
        "rounds of peyote rise half a bead: geometry",
    ),
    bad="bezel: [kelp] round a stone with an edge of 4 mm",
    good="bezel: [kelp, small] round a stone with an edge of 2 mm",
)
