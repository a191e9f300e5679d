"""Memory wire: how long so many of its coils are, and the wire that its ends take. Sizes in mm."""

from __future__ import annotations

from collections.abc import Sequence

from wellstrung.common import units
from wellstrung.formulas.rings import coiled, loop_wire
from wellstrung.model.parts import Formula, Part, Role
from wellstrung.model.plan import Quantities
from wellstrung.quantity.arithmetic import derived, exact, leaf
from wellstrung.quantity.causes import Cause, Spread
from wellstrung.quantity.value import Quantity

#: inside of the loop that is turned at an end: from memory; with wire of 0.6 mm it takes 8 to 11 mm
LOOP = (2.0, 2.5, 3.0)


def by_turns(part: Part) -> bool:
    """Whether so many coils of memory wire, and nothing else, say how long a part is."""
    counted = part.has("length") or part.has("count") or part.has("repeats")
    return part.has("thread", "turns") and not counted


def decides(part: Part) -> bool:
    """Whether the coils of memory wire say how wide it lies, however much of it is strung."""
    return part.thread.springs and (by_turns(part) or part.has("thread", "coil"))


def by_turns_or(otherwise: Formula) -> Formula:
    """The length that so many coils of memory wire have, end to end of its beads; else another."""

    def found(part: Part, ask: Quantities) -> Quantity:
        if not by_turns(part):
            return otherwise(part, ask)
        return in_turns(part, part.count("thread", "turns"), ask)

    return found


def in_turns(part: Part, turns: int, ask: Quantities, what: str = "length") -> Quantity:
    """Memory wire in so many coils as they lie, mm."""
    return derived(
        f"{part.name}.{what}",
        "mm",
        coiled,
        turns=exact("turns", turns),
        coil=ask.of(part, "coil"),
        line=ask.of(part, "line"),
        source="turns x pi x (coil + wire): geometry",
    )


def at_ends(part: Part, ask: Quantities) -> Quantity:
    """Memory wire beyond the beads, mm an end: in the ball glued on it, or in the loop turned."""
    ends = [ask.of(cap, "depth") for cap in caps_on(part, ask)]
    ends += [_loop(part, ask)] * (2 - len(ends))
    return derived(
        f"{part.name}.wire at its ends",
        "mm",
        lambda first, last: (first + last) / 2,
        first=ends[0],
        last=ends[1],
        source="the depth of a ball, or the way round a loop: geometry",
    )


def caps_on(part: Part, ask: Quantities) -> list[Part]:
    """The balls and caps that are glued on the ends of memory wire, two at most."""
    return [end for end in ask.plan.met[part] if end.kind.role is Role.CAP][:2]


def ends_said(part: Part, ends: Sequence[float], ask: Quantities) -> str:
    """What of its line, so long at either end, mm, the length to cut includes."""
    said = [units.by_length(one, inches=ask.plan.in_inches) for one in dict.fromkeys(ends)]
    if not part.thread.springs or part.has("thread", "tail"):
        other = "the other" if said[1:] else "both ends"
        return f"tail of {' at one end, '.join(said)} at {other}"
    long = said[0] if ask.plan.in_inches else f"{ends[0]:.0f} mm"
    balls = " and ".join(dict.fromkeys(f"`{cap.name}`" for cap in caps_on(part, ask)))
    return (
        f"length of {long} at both ends, in {balls}," if balls else f"loop of {long} at both ends"
    )


def _loop(part: Part, ask: Quantities) -> Quantity:
    low, usual, high = LOOP
    cause = Cause("how wide its loops are", f"`{part.name}`", "turn one and measure inside it")
    size = [Spread(cause, usual - low, high - usual)]
    return derived(
        f"{part.name}.loop",
        "mm",
        loop_wire,
        hole=leaf("loop inside", usual, "mm", size, source="from memory", grade="from memory"),
        wire=ask.of(part, "line"),
        wraps=exact("wraps", 0),
    )
