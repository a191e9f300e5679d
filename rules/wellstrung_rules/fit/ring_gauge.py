"""The wire of an open ring against its size: thick enough to stay shut, thin enough to bend."""

from __future__ import annotations

from wellstrung.rulebook import (
    Answer,
    Ask,
    Limit,
    Misfit,
    Missing,
    RingInUse,
    Rule,
    held_by_ring,
    kept,
    tightest,
)
from wellstrung.rulebook.plan import Part
from wellstrung.rulebook.remedies import (
    in_words,
    sized_by,
    take_wire,
    thicker_wires,
    thinner_wires,
    wider_ring,
)
from wellstrung.rulebook.values import derived
from wellstrung.rulebook.wording import about, number, spelled, within
from wellstrung_rules.fit import held, packed
from wellstrung_rules.limits import RING_WIRE, SWING_SHARE

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

#: what else to do about thin wire
_OTHER = (
    "a smaller or a split ring, or have it soldered shut (soldering and pickling are not checked"
    " here)"
)


def check(used: RingInUse, ask: Ask) -> Answer:
    ring = used.ring
    if not ring.traits.gapes:
        return None
    wire, inside = ask.of(ring, "wire"), ask.of(ring, "inside")
    least, most = (
        derived(f"{end} wire", "mm", lambda inside, times: inside / times, inside=inside, times=by)
        for end, by in (("least", ask.limit(RING_SLACK)), ("most", ask.limit(RING_STIFF)))
    )
    thin, wide, narrow = wire - ask.limit(RING_WIRE), wire - least, most - wire
    if answer := kept(thin, wide, narrow):
        return answer
    margin = tightest(thin, wide, narrow)
    its_inside = f"for its inside ({number(inside.middle / wire.middle)} times the wire)"
    fault = "thin to stay shut under a pull"
    if margin is wide:
        fault = f"thin {its_inside}, so that it opens easily"
    bigger = 0 if ring.has("inside") else 2  # thicker wire leaves less inside a ring sized outside
    low = wire.middle - min(
        thin.likely.low, wide.likely.low / (1 + bigger / ask.limit(RING_SLACK).middle)
    )
    high = wire.middle + narrow.likely.low / (1 + bigger / ask.limit(RING_STIFF).middle)
    short = (max(low, wire.middle) - high) * (ask.limit(RING_STIFF).middle + bigger)
    sizes, other = thicker_wires(wire, low), _OTHER
    if margin is narrow:
        lacks = _room_needed(ring, ask) - inside.likely.low if bigger else 0.0
        high, short = min(high, wire.middle - lacks / 2), max(short, lacks)
        fault = f"thick {its_inside} to be opened and shut true"
        sizes, other = thinner_wires(wire, high), "a larger ring"
    need = f"a wire of {within(low, high, wire)}"
    text = f"take {need} for `{ring.name}`, or take {other}"
    remedies = (
        *take_wire(ring, sizes, low, high),
        in_words(text, ring, "wire", low=low, high=high),
    )
    if low > high:
        need = "a larger ring"
        remedies = wider_ring(ring, ask.of(ring, sized_by(ring)), short, "solder it shut")
    return Misfit(
        says=f"the wire of open ring `{ring.name}` ({spelled(wire)}) {{is|may be}} too {fault}",
        place=ring.place_of("wire"),
        found=f"{spelled(wire)}, inside {about(inside)}",
        needed=need,
        remedies=remedies,
        margin=margin,
        also=(ring.place_of(sized_by(ring)),),
    )


def _room_needed(ring: Part, ask: Ask) -> float:
    """How wide inside a ring has to be for all that it may hold, mm; 0 where nobody knows."""
    taken = [0.0]
    for join in held_by_ring(ask.plan, ring):
        try:
            sizes = held(join, ask, bridges=False)
        except Missing:  # open by itself
            continue
        taken += [packed("room taken", sizes).likely.high] if sizes else []
    return max(taken) / (1 - ask.limit(SWING_SHARE).middle)


RULE = Rule(
    name="ring-gauge",
    family="fit",
    subject=RingInUse,
    check=check,
    fault="ring wire too thin or too thick",
    title=(
        "the wire of an open ring suits its size: thick enough to stay shut, thin enough to bend"
        " (whether it passes an eye is `ring-through-eye`)"
    ),
    why=(
        "a wide ring of thin wire is pulled open at the first snag and the pendant is lost; a small"
        " one of thick wire is marked by the pliers and never meets true"
    ),
    limits=(RING_WIRE, RING_SLACK, RING_STIFF, SWING_SHARE),
    sources=(
        "trade table `jump_rings`, stays closed unsoldered: 18 to 21 AWG, 22 AWG is pulled open",
        "inside over wire 3 to 7.5: worked out from the rows by use of trade table `jump_rings`",
    ),
    level="warning",
    bad="ring: {kind: jump ring, outside: 6 mm, wire: 24 AWG, closing: open}",
    good="ring: {kind: jump ring, outside: 6 mm, wire: 18 AWG, closing: open}",
)
