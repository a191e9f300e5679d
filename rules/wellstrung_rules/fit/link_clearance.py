"""The end link of a chain: its rings and the next link lie in it with room to move.

A ring's wire may pass the link and still be wedged there against the wire of the next link. Along
the link lie the next link's wire and those of the rings: side by side where the link is wide
enough for all of them, one behind the other where it is not.
"""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung.formulas import rings
from wellstrung.rulebook import Answer, Ask, EndLink, Misfit, Remedy, Rule, holds, kept
from wellstrung.rulebook.remedies import other_end_link, take_wire, thinner_wires
from wellstrung.rulebook.values import Quantity, derived, exact
from wellstrung.rulebook.wording import about, raised, spelled
from wellstrung_rules.limits import RING_SWING


def check(end: EndLink, ask: Ask) -> Answer:
    wires = {f"ring{n}": ask.of(ring, "wire") for n, ring in enumerate(end.rings, 1)}
    # one ring lies along the link however wide it is
    width = {"hole": ask.get(end.eyes.quantity("hole"))} if len(wires) > 1 else {}
    taken = derived(
        "taken along the link",
        "mm",
        rings.taken_along,
        {**width, **wires},
        next=_wire(end, end.beyond) if end.beyond else exact("next", 0.0, "mm"),
        source="side by side or one behind the other: geometry, worked out for this project",
    )
    inside = derived(
        "inside of the link",
        "mm",
        rings.inside_of,
        outside=end.chain.size("links", end.link, "length", allowance="link size"),
        wire=_wire(end, end.link),
        source="inside = outside - 2 x wire, trade table `chains`",
    )
    fits = inside - taken
    moves = fits - ask.limit(RING_SWING)
    if answer := kept(moves):
        return answer
    forced = not holds(fits)
    ring = max(end.rings, key=lambda ring: ask.of(ring, "wire").middle)
    wire, several = ask.of(ring, "wire"), len(end.rings) > 1
    bound, other = wire.middle + moves.likely.low, ", or hang the rings from each other"
    return Misfit(
        says=f"link `{end.link}` of `{end.eyes.part.name}` ({about(inside)} long inside)"
        f" {{has|may have}} no room {'for' if forced else 'to move beside'}"
        f" {' and '.join(_things(end, ask))}, which take {about(taken)}",
        place=ring.place_of("wire"),
        found=f"{about(inside)} inside",
        needed=f"{raised(inside, moves)} inside, or thinner rings",
        remedies=(
            *take_wire(ring, thinner_wires(wire, bound), high=bound),
            *other_end_link(end.eyes, ask),
            Remedy(f"take chain with longer links{other if several else ''}"),
        ),
        margin=fits if forced else moves,
        at_most="error" if forced else "warning",
        also=(end.chain.place_of("links", end.link, "length"),),
    )


def _things(end: EndLink, ask: Ask) -> Iterator[str]:
    for ring in dict.fromkeys(end.rings):
        count = end.rings.count(ring)
        wires = "the wire" if count == 1 else f"{count} wires"
        yield f"{wires} of `{ring.name}` ({spelled(ask.of(ring, 'wire'))})"
    if end.beyond:
        yield "the next link"


def _wire(end: EndLink, link: str) -> Quantity:
    return end.chain.wire("links", link, "wire")


RULE = Rule(
    name="link-clearance",
    family="fit",
    subject=EndLink,
    check=check,
    fault="end link of the chain too full",
    title=(
        "rings and the next link lie in the end link of a chain with room to move (what passes its"
        " hole is `ring-through-eye`, what a ring holds is `ring-room`)"
    ),
    why=(
        "in fine chain a thick ring is wedged against the next link: the drop stands off stiffly,"
        " and the link is bent or broken at the first pull"
    ),
    limits=(RING_SWING,),
    sources=(
        "inside = outside - 2 x wire: trade table `chains`; the wires lie along the link: geometry",
        "0.2 mm left to swing: common practice, no source",
    ),
    yields_to=("ring-through-eye",),
    bad="a ring of 18 AWG (1.02 mm) in a link 1.5 mm long inside, next to a wire of 0.5 mm",
    good="a ring of 21 AWG (0.72 mm) in a link 1.5 mm long inside, next to a wire of 0.5 mm",
)
