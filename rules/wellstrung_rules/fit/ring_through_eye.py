"""The wire of a ring through the hole of an eye: a curved wire in a straight hole."""

from __future__ import annotations

from wellstrung.formulas import circles, rings
from wellstrung.rulebook import Answer, Ask, Misfit, Remedy, RingThroughEye, Rule, kept
from wellstrung.rulebook.plan import Eyes
from wellstrung.rulebook.remedies import (
    end_link,
    in_words,
    other_end_link,
    sized_by,
    smaller_ring,
    take_wire,
    thinner_wires,
)
from wellstrung.rulebook.values import derived, exact, product
from wellstrung.rulebook.wording import about, at_most, raised, spelled
from wellstrung_rules.limits import RING_WIRE

_EQUAL = "equal circles in a circle, Graham, Lubachevsky, Nurmela, Östergård 1998"


def check(join: RingThroughEye, ask: Ask) -> Answer:
    hole, wire = ask.get(join.eyes.quantity("hole")), ask.of(join.ring, "wire")
    ratio = exact("ratio", circles.equal_ratio(join.rings))
    several = join.rings > 1
    needed = derived(
        "hole needed",
        "mm",
        rings.hole_needed,
        wire=product("wires in the eye", "mm", wire, ratio, source=_EQUAL) if several else wire,
        inside=ask.of(join.ring, "inside"),
        through=ask.get(join.eyes.quantity("through")),
        source="curved wire in a straight hole, geometry, worked out for this project",
    )
    margin = hole - needed
    if answer := kept(margin):
        return answer
    limit = wire.middle + margin.likely.low / join.rings
    wider, at_hole = raised(hole, margin), join.eyes.part.place_of(*join.eyes.path, "hole")
    need, remedies = f"a hole of {wider} or wider", [*other_end_link(join.eyes, ask)]
    remedies.append(_wider(join.eyes, wider, hole.middle - margin.likely.low))
    place, found, also = at_hole, hole, join.ring.place_of("wire")
    sizes = thinner_wires(wire, limit)
    if sizes and (limit >= ask.limit(RING_WIRE).middle or not join.ring.traits.gapes):
        # another ring is sooner had than another charm
        place, found, also = also, wire, at_hole
        thin = f"wire of {at_most(limit, wire)} or thinner"
        text = f"take {thin} for `{join.ring.name}`, or {remedies[-1].text}"
        remedies[-1] = in_words(text, join.ring, "wire", high=limit)
        remedies[:0] = [
            *take_wire(join.ring, sizes, high=limit),
            *smaller_ring(join.ring, ask.of(join.ring, sized_by(join.ring)), wire, sizes[0]),
        ]
        need = f"{thin}, or {need}"
    return Misfit(
        says=f"the {f'{join.rings} wires' if several else 'wire'} of `{join.ring.name}`"
        f" ({spelled(wire)}) {{cannot|may not}} pass {join.eyes.words} ({spelled(hole)}), which"
        f" needs to be {about(needed, hole)}",
        place=place,
        found=spelled(found),
        needed=need,
        remedies=tuple(remedies),
        margin=margin,
        also=(also,),
    )


def _wider(eyes: Eyes, size: str, least: float) -> Remedy:
    """In words, another part; of a chain piece, another chain."""
    link, chain = end_link(eyes), eyes.part.cut_from
    if link and chain:
        text = f"take chain whose `{link}` has a hole of {size} or wider"
        return in_words(text, chain, "links", link, "hole", low=least)
    return in_words(
        f"take a part whose eye is {size} or wider", eyes.part, *eyes.path, "hole", low=least
    )


RULE = Rule(
    name="ring-through-eye",
    family="fit",
    subject=RingThroughEye,
    check=check,
    fault="ring wire too thick for an eye",
    limits=(RING_WIRE,),
    title="the wire of a ring passes the hole of every eye it holds (what fits in it: `ring-room`)",
    why=(
        "a ring whose wire does not pass a chain link or a cap's loop is found out with the pliers"
        " in hand, when the parts are bought and the class sits waiting"
    ),
    sources=(
        "hole >= wire + r - sqrt(r^2 - w^2/4): geometry, worked out for this project",
        "several rings in one eye: equal circles in a circle, published best ratios",
    ),
    bad="ring of 16 AWG (1.29 mm) through an eye of 1.1 mm",
    good="ring of 20 AWG (0.81 mm) through an eye of 1.1 mm",
)
