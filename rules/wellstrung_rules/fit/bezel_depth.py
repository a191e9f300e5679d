"""Rounds of a bezel: enough to go up the side of the stone and a bead over its edge, both ways."""

from __future__ import annotations

import math

from wellstrung.rulebook import Answer, Ask, Misfit, Remedy, Rule, Woven, kept
from wellstrung.rulebook.plan import Part, bead_rows
from wellstrung.rulebook.values import Quantity, total
from wellstrung.rulebook.wording import about, in_yaml, plural, raised


def check(woven: Woven, ask: Ask) -> Answer:
    bezel = woven.part
    if not bezel.takes("stone"):
        return None
    names = [row[0] for row in bead_rows(bezel, "beads")]
    back, front = (ask.of(ask.plan.beads[name], "outside") for name in (names[0], names[-1]))
    edge, has = ask.of(bezel, "stone.edge"), ask.of(bezel, "length")
    source = "a bead beyond where the stone slants inward, on either side"
    needed = total("up the edge and over it", "mm", [edge, back, front], source)
    margin = has - needed
    if answer := kept(margin):
        return answer
    return Misfit(
        says=f"`{bezel.name}` with {plural(len(names), 'round')} ({about(has, edge)} from back to"
        f" front) {{does|may}} not hold its stone, which takes {about(needed, edge)}: its edge, and"
        " a bead on either side",
        place=bezel.place_of("beads"),
        found=about(has, edge),
        needed=f"{raised(has, margin, edge)} or more",
        remedies=_remedies(bezel, ask, -margin.likely.low, back, front),
        margin=margin,
        also=(bezel.place_of("stone", "edge"),),
    )


def _remedies(
    bezel: Part, ask: Ask, short: float, back: Quantity, front: Quantity
) -> tuple[Remedy, ...]:
    """As many rounds more on either side: each adds half a bead."""
    rows = [[in_yaml(name) for name in row] for row in bead_rows(bezel, "beads")]
    names = [row[0] if len(row) == 1 else f"[{', '.join(row)}]" for row in rows]
    pairs = math.ceil(short / ((back.likely.low + front.likely.low) / 2) - 1e-9)
    rounds = [*names[:1] * pairs, *names, *names[-1:] * pairs]
    more = f"weave {plural(pairs, 'more round')} on either side"
    return (
        Remedy(
            f"{more}: `beads: [{', '.join(rounds)}]`",
            (ask.with_field(bezel.node, "beads", rounds),),
        ),
        Remedy(f"{more}, in the beads that close it"),
    )


RULE = Rule(
    name="bezel-depth",
    family="fit",
    subject=Woven,
    check=check,
    fault="bezel too low for its stone",
    title="a bezel goes up the side of its stone and a bead over its edge, in front and behind",
    why="a bezel that stops at the edge lets the stone drop out, in front or through the back",
    sources=(
        "one bead beyond where the stone slants inward: `The Complete Photo Guide to Beading`,"
        " beading the bezel, excerpt seen",
        "three rounds and one to three closing ones on each side: `Bead Weaving Techniques: Beaded"
        " Bezels`, excerpt seen",
        "rounds of peyote rise half a bead: geometry",
    ),
    bad="beads: [reed, reed, reed] round a stone with an edge of 1.2 mm",
    good="beads: [spray, reed, reed, reed, spray] round a stone with an edge of 1.2 mm",
)
