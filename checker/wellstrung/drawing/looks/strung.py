"""Beads on a line, legs of beads that hang, and chain link by link."""

from __future__ import annotations

import math
from collections.abc import Iterator

from wellstrung.derived.outline import beads_down
from wellstrung.drawing.looks.beads import bead as one_bead
from wellstrung.drawing.looks.shape import Drawn
from wellstrung.drawing.looks.sizes import UNKNOWN, Sizes
from wellstrung.drawing.looks.woven import MOST_BEADS
from wellstrung.drawing.pen import Pen
from wellstrung.model.looks import Strung
from wellstrung.model.parts import Part, Role
from wellstrung.subjects.chain import links_of

#: no more links of one chain are drawn one by one; beyond, an outline shows the size
_MOST_LINKS = 120
#: the largest knot that is drawn, mm
_KNOT = 0.9
#: how far a bead may reach over the ends of a stretch that it still counts to, mm
_LEEWAY = 0.05


def bead_by_bead(sizes: Sizes, part: Part) -> bool:
    """Whether a strand is drawn whole by its beads: there are not too many."""
    return part.kind.role is Role.STRAND and sizes.known(part, "beads", 0) <= MOST_BEADS


def strung(
    pen: Pen, sizes: Sizes, part: Part, length: float, whole: float, start: float = 0.0
) -> None:
    """A stretch of a strand from `start` on: its beads on their line, with knots where it has."""
    quantity = sizes.named(part, "length") if length == whole else ""
    pen.line([(0, 0), (length, 0)], "thread", of_length=quantity)
    look = part.stitch.look if part.stitch is not None else None
    knotted = isinstance(look, Strung) and look.knotted
    for middle, bead in bead_places(sizes, part, whole, start, start + length):
        along, outside = sizes.bead(bead)
        at = middle - start
        if not -_LEEWAY <= at - along / 2 <= at + along / 2 <= length + _LEEWAY:
            continue
        knot = min(_KNOT, outside / 4)
        if knotted and at + along / 2 + knot <= length:
            pen.disc(at + along / 2, knot, "knot")
        one_bead(pen, sizes, bead, at)


def bead_places(
    sizes: Sizes, part: Part, whole: float, start: float = 0.0, end: float = math.inf
) -> Iterator[tuple[float, str]]:
    """Where the beads of a strand sit along it, evenly spaced over its whole length.

    Those about a stretch from `start` to `end` alone, and of no more than so many.
    """
    count = round(sizes.known(part, "beads", 0))
    repeat = sizes.repeat(part)
    if not count or not repeat:
        return
    lengths = [sizes.bead(bead)[0] for bead in repeat]
    rounds, over = divmod(count, len(repeat))
    filled = rounds * sum(lengths) + sum(lengths[:over])
    gap = max((whole - filled) / max(count - 1, 1), 0.0)
    each = sum(lengths) + len(repeat) * gap
    # the repeat of beads in which the stretch begins
    skipped = max(int(start / each), 0) if each else 0
    at = skipped * each
    first = skipped * len(repeat)
    for number in range(first, min(count, first + len(repeat) + MOST_BEADS)):
        length = lengths[number % len(repeat)]
        if at > end:
            return
        if at + length >= start:
            yield at + length / 2, repeat[number % len(repeat)]
        at += length + gap


def leg(pen: Pen, sizes: Sizes, part: Part, number: int) -> Drawn:
    """One leg of beads and its turn bead."""
    at = 0.0
    for bead, height, _ in beads_down(part, number):
        turned = height != "length"
        along = sizes.height(bead) if turned else sizes.bead(bead)[0]
        one_bead(pen, sizes, bead, at + along / 2, turned=turned)
        at += along
    return Drawn(at, ())


def lying_leg(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """A leg of beads in the run."""
    leg(pen, sizes, part, 0)


def chain(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """Link by link, pulled taut; of more links than can be told apart, an outline."""
    of = sizes.plan.parts[part.text("of")]
    links, at = links_of(part, of), 0.0
    if len(links) > _MOST_LINKS:
        pen.box(0, length, sizes.known(part, "width", UNKNOWN / 2), "metal")
        return
    for link in links:
        outside = _of_link(of, link, "length", 5.0)
        wire = _of_link(of, link, "wire", 0.8)
        width = _of_link(of, link, "width", outside * 0.7)
        pen.link(at + outside / 2 - wire, outside, width, wire, "metal")
        at += outside - 2 * wire


def _of_link(chain: Part, link: str, what: str, otherwise: float) -> float:
    """A size of a link as the plan has it."""
    if not chain.has("links", link, what):
        return otherwise
    size = chain.wire if what == "wire" else chain.length
    return size("links", link, what).middle
