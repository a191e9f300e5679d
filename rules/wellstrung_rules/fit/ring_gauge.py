"""The wire of an open ring against its size: thick enough to stay shut, thin enough to bend."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Limit, Misfit, Remedy, RingInUse, Rule, kept
from wellstrung.rulebook.plan import Part
from wellstrung.rulebook.remedies import thicker_wires, thinner_wires
from wellstrung.rulebook.values import Quantity, derived
from wellstrung.rulebook.wording import about, in_unit_of, number, spelled

RING_WIRE = Limit(
    "ring wire",
    0.7,
    "mm",
    "21 AWG (0.72 mm) stays shut, 22 AWG is pulled open: trade table `jump_rings`",
)
RING_SLACK = Limit(
    "ring slack",
    8.0,
    "",
    "inside over wire is 3 to 7.5 in the trade table `jump_rings`, a little more held",
)
RING_STIFF = Limit(
    "ring stiff",
    1.5,
    "",
    "inside over wire; 4 mm of 18 AWG, the stiffest common ring, has 1.9: derived",
)


def check(used: RingInUse, ask: Ask) -> Answer:
    ring = used.ring
    if not ring.traits.gapes:
        return None
    wire, inside = ask.of(ring, "wire"), ask.of(ring, "inside")
    slack, stiff = ask.limit(RING_SLACK), ask.limit(RING_STIFF)
    least = ask.limit(RING_WIRE)
    thin = wire - least
    wide = derived(
        "wire to spare",
        "mm",
        lambda wire, most, inside: wire - inside / most,
        wire=wire,
        most=slack,
        inside=inside,
    )
    narrow = derived(
        "wire under the limit",
        "mm",
        lambda inside, least, wire: inside / least - wire,
        inside=inside,
        least=stiff,
        wire=wire,
    )
    margin = min((thin, wide, narrow), key=lambda room: room.likely.low)
    if answer := kept(margin):
        return answer
    off = -margin.likely.low
    bound = wire.middle - off if margin is narrow else wire.middle + off
    ratio = number(inside.middle / wire.middle)
    ends = {
        id(thin): "too thin to stay shut under a pull",
        id(wide): f"too thin for its inside ({ratio} times the wire), so that it opens easily",
        id(narrow): f"too thick for its inside ({ratio} times the wire) to be opened and shut true",
    }
    subject = f"the wire of open ring `{ring.name}` ({spelled(wire)})"
    way = "thinner" if margin is narrow else "thicker"
    need = f"{in_unit_of(bound, wire)} or {way}"
    return Misfit(
        says=f"{subject} {{is|may be}} {ends[id(margin)]}",
        place=ring.place_of("wire"),
        found=f"{spelled(wire)}, inside {about(inside)}",
        needed=f"a wire of {need}",
        remedies=_remedies(ring, wire, bound, way, need),
        margin=margin,
        also=(ring.place_of("inside" if ring.has("inside") else "outside"),),
    )


def _remedies(ring: Part, wire: Quantity, bound: float, way: str, need: str) -> tuple[Remedy, ...]:
    find = thinner_wires if way == "thinner" else thicker_wires
    other = "a larger ring" if way == "thinner" else "a smaller or a split ring, or solder it shut"
    return (
        *(
            Remedy.write(ring.place_of("wire"), size, f"use {size} wire for `{ring.name}`")
            for size in find(wire, bound)
        ),
        Remedy(f"use wire of {need} for `{ring.name}`, or take {other}"),
    )


RULE = Rule(
    name="ring-gauge",
    family="fit",
    subject=RingInUse,
    check=check,
    title=(
        "the wire of an open ring suits its size: thick enough to stay shut, thin enough to bend"
        " (whether it passes an eye is `ring-through-eye`)"
    ),
    why=(
        "a wide ring of thin wire is pulled open at the first snag and the pendant is lost; a small"
        " one of thick wire is marked by the pliers and never meets true"
    ),
    limits=(RING_WIRE, RING_SLACK, RING_STIFF),
    sources=(
        "trade table `jump_rings`, stays closed unsoldered: 18 to 21 AWG, 22 AWG is pulled open",
        "inside over wire 3 to 7.5: the rows by use of trade table `jump_rings`, derived",
    ),
    level="warning",
    bad="ring: {kind: jump ring, outside: 6 mm, wire: 24 AWG, closing: open}",
    good="ring: {kind: jump ring, outside: 6 mm, wire: 18 AWG, closing: open}",
)
