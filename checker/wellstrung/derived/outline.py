"""The outline of what hangs: how wide it is at each height below its eye.

Two that hang side by side meet where they are wide at one height, so a fringe whose fat beads
end at different heights may hang closer than the beads are wide.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import NamedTuple

from wellstrung.formulas import circles
from wellstrung.model.beads import beads_named
from wellstrung.model.parts import Part, Role
from wellstrung.model.plan import Quantities
from wellstrung.quantity.arithmetic import derived, exact
from wellstrung.quantity.value import Quantity
from wellstrung.subjects.hung import FringeAlong


class Slab(NamedTuple):
    """A stretch of a hanging part, mm below its eye, and how wide it is there."""

    top: float
    foot: float
    width: Quantity


def outline(part: Part, number: int, ask: Quantities) -> list[Slab]:
    """The slabs of one piece, top to foot; `number` counts the drops of a graduated fringe from 0.

    What is not strung bead by bead is as wide as it is at its widest, all the way down. Raises
    Missing where a size is missing.
    """
    if part.kind.role is not Role.DROP:
        return [Slab(0.0, math.inf, across(part, ask))]
    slabs, top = [], 0.0
    for bead, height, wide in beads_down(part, number):
        foot = top + ask.of(ask.plan.beads[bead], height).middle
        slabs.append(Slab(top, foot, ask.of(ask.plan.beads[bead], wide)))
        top = foot
    return slabs


def across(part: Part, ask: Quantities) -> Quantity:
    """How wide a part is across its own line: its outside or its width; raises Missing."""
    round_ones = (
        Role.ROPE,
        Role.STRAND,
        Role.CAP,
        Role.CONE,
        Role.CRIMP,
        Role.TIP,
        Role.SLEEVE,
        Role.RING,
    )
    return ask.of(part, "outside" if part.kind.role in round_ones else "width")


def beads_down(part: Part, number: int) -> list[tuple[str, str, str]]:
    """Each bead from the eye down: its name, and which of its sizes lie along and across.

    A turn bead hangs with its hole across. Of beads given by their share alone the order is open;
    they are taken one kind after the other.
    """
    node = part.node_at("beads")
    named = node.value if node is not None and isinstance(node.value, list) else None
    repeat = named or [name for name, n in beads_named(part, "beads").items() for _ in range(n)]
    counts = part.counts("count") or (len(repeat),)
    leg = [repeat[n % len(repeat)] for n in range(counts[number % len(counts)])]
    turn = part.bead("turn")
    foot = [(turn.name, "height", "outside" if turn.hangs else "length")] if turn else []
    return [*((str(bead), "length", "outside") for bead in leg), *foot]


def apart(fringe: FringeAlong, ask: Quantities) -> Quantity:
    """From leg to leg of a fringe along what is long, mm; raises Missing."""
    line, called = fringe.line, f"fringe along {fringe.source.name}"
    over = ask.plan.item(called, line.part.key, line.node) if line.over else None
    return derived(
        f"{line.part.name}.apart",
        "mm",
        lambda length, legs: length / legs,
        length=over.length("over") if over else ask.of(fringe.source, "length"),
        legs=exact("legs", fringe.hung),
        source="spread evenly: counting",
    )


def side_by_side(one: list[Slab], other: list[Slab]) -> Quantity | None:
    """From middle to middle, mm, where two outlines that hang side by side are widest together.

    None where they share no height.
    """
    meeting = list(_meeting(one, other))
    if not meeting:
        return None
    left, right = max(meeting, key=lambda pair: pair[0].middle + pair[1].middle)
    if left is right:
        return left
    return derived(
        "width side by side",
        "mm",
        circles.beside,
        one=left,
        other=right,
        source="geometry, worked out for this project",
    )


def _meeting(one: list[Slab], other: list[Slab]) -> Iterator[tuple[Quantity, Quantity]]:
    """The widths of each two slabs that share a height: both lists go from top to foot."""
    a = b = 0
    while a < len(one) and b < len(other):
        if min(one[a].foot, other[b].foot) - max(one[a].top, other[b].top) > 1e-6:
            yield one[a].width, other[b].width
        if one[a].foot < other[b].foot:
            a += 1
        else:
            b += 1
