"""Beads on a line, legs of beads that hang, and chain link by link."""

from __future__ import annotations

import math
from bisect import bisect_left
from collections.abc import Iterator
from itertools import accumulate

from wellstrung.derived.outline import beads_down
from wellstrung.drawing.looks.beads import bead as one_bead
from wellstrung.drawing.looks.breaks import left_out
from wellstrung.drawing.looks.shape import Drawn
from wellstrung.drawing.looks.sizes import UNKNOWN, Sizes
from wellstrung.drawing.pen import Pen
from wellstrung.model.beads import apart, held_by_crimps
from wellstrung.model.item import Missing
from wellstrung.model.looks import Strung
from wellstrung.model.parts import Part, Role
from wellstrung.subjects.chain import links_of

#: no more links of one chain are drawn one by one; beyond, an outline shows the size
_MOST_LINKS = 120
#: the most beads that are drawn one by one, of a strand, of a leg, and of all legs that are alike;
#: and the fewest of each leg where there are very many
MOST_STRUNG, _MOST_IN_LEG, _MOST_IN_LEGS, _FEWEST_IN_LEG = 900, 100, 3_000, 20
#: how long the break in a leg is, mm
_BREAK = 5.0
#: the largest knot that is drawn, mm
_KNOT = 0.9
#: how far a bead may reach over the ends of a stretch and still be drawn with it, mm
_LEEWAY = 0.05


def bead_by_bead(sizes: Sizes, part: Part) -> bool:
    """Whether a strand is drawn whole by its beads: there are not too many."""
    return part.kind.role is Role.STRAND and sizes.known(part, "beads", 0) <= MOST_STRUNG


def strung(
    pen: Pen,
    sizes: Sizes,
    part: Part,
    length: float,
    whole: float,
    start: float = 0.0,
    most: int = MOST_STRUNG,
) -> None:
    """A stretch of a strand from `start` on: its beads on their line, with knots where it has.

    Of `most` beads; where there are more those at both ends, and a break between.
    """
    quantity = sizes.named(part, "length") if length == whole else ""
    pen.line([(0, 0), (length, 0)], "thread", of_length=quantity)
    look = part.stitch.look if part.stitch is not None else None
    knotted = isinstance(look, Strung) and look.knotted
    end = 0.0
    for middle, bead, left in bead_places(sizes, part, whole, start, start + length, most):
        along, outside = sizes.bead(bead)
        at = middle - start
        if not -_LEEWAY <= at - along / 2 <= at + along / 2 <= length + _LEEWAY:
            continue
        if left:
            half = sizes.across(part) / 2 + 1.0
            left_out(pen, end, at - along / 2, half, round(sizes.known(part, "beads", 0)))
        if at - along / 2 - end > _LEEWAY or not end:
            _hold(pen, sizes, part, end, at - along / 2)
        end = at + along / 2
        knot = min(_KNOT, outside / 4)
        if knotted and end + knot <= length:
            pen.disc(end + knot / 2, knot, "knot")
        one_bead(pen, sizes, bead, at)
    _hold(pen, sizes, part, end, 0.0)


def _group(part: Part) -> int:
    """How many of its beads stand close together before bare line follows."""
    look = part.stitch.look if part.stitch is not None else None
    grouped = isinstance(look, Strung) and look.in_groups
    return part.count("group", default=1) if grouped else 1


def whole_strand(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """All of a strand; the more that are alike, the fewer beads of each."""
    most = max(MOST_STRUNG // max(sizes.times_hung(part), 1), _FEWEST_IN_LEG)
    strung(pen, sizes, part, length, length, most=most)


def bead_places(
    sizes: Sizes,
    part: Part,
    whole: float,
    start: float = 0.0,
    end: float = math.inf,
    most: int = MOST_STRUNG,
) -> Iterator[tuple[float, str, bool]]:
    """Where the beads of a strand sit along it, evenly spaced over its whole length.

    Those about a stretch from `start` to `end`, and whether beads before this one are left out: of
    more than `most` only the first and the last are given.
    """
    count, repeat = round(sizes.known(part, "beads", 0)), sizes.repeat(part)
    if not count or not repeat:
        return
    group = _group(part)
    repeat = [*repeat] * (group // math.gcd(group, len(repeat)))
    lengths = [sizes.bead(bead)[0] for bead in repeat]
    rounds, over = divmod(count, len(repeat))
    filled = rounds * sum(lengths) + sum(lengths[:over])
    held, bare = _held(sizes, part)[0], sizes.known(part, "bare", 0.0)
    taken = filled + 2 * bare + 2 * held * -(-count // group)
    gap = max((whole - taken) / max((count - 1) // group, 1), 0.0) + 2 * held
    lead, start, end = bare + held, start - bare - held, end - bare - held
    ends = ((number + 1) % group == 0 for number in range(len(lengths)))
    begins = [0.0, *accumulate(long + gap * end for long, end in zip(lengths, ends, strict=True))]

    def first_from(along: float) -> int:
        """The first bead that begins there or after."""
        turns, rest = divmod(along, begins[-1])
        return min(int(turns) * len(repeat) + bisect_left(begins, rest), count)

    low = max(first_from(max(start, 0.0)) - 1, 0)
    high = count if end == math.inf else first_from(max(end, 0.0))
    given: list[tuple[int, bool]] = [
        (number, False) for number in range(low, min(high, low + most))
    ]
    if high - low > most:
        half = most // 2
        given[half:] = [(number, number == high - half) for number in range(high - half, high)]
    for number, left in given:
        turns, place = divmod(number, len(repeat))
        at = lead + turns * begins[-1] + begins[place] + lengths[place] / 2
        yield at, repeat[place], left


def _held(sizes: Sizes, part: Part) -> tuple[float, float]:
    """How long and wide what stands on both sides of each group is, mm; 0 where nothing does."""
    if not apart(part):
        return 0.0, 0.0
    return sizes.known(part, "hold", 1.0), sizes.known(part, "stop", 1.5)


def _hold(pen: Pen, sizes: Sizes, part: Part, behind: float, ahead: float) -> None:
    """The crimps or the knots in a gap: behind the group before it, and ahead of the next."""
    long, wide = _held(sizes, part)
    for begin in [behind] * bool(behind) + [ahead - long] * bool(ahead) if long else ():
        if held_by_crimps(part) is not None:
            pen.box(begin, long, wide, "metal")
        else:
            pen.disc(begin + long / 2, min(long, wide), "knot")


def leg(pen: Pen, sizes: Sizes, part: Part, number: int) -> Drawn:
    """One leg of beads and its turn bead; a very long one is cut short by a break."""
    down, at = beads_down(part, number), 0.0
    legs = max(sizes.times_hung(part), 1)
    most = min(max(_MOST_IN_LEGS // legs, _FEWEST_IN_LEG), _MOST_IN_LEG)
    half = len(down) if len(down) <= most else most // 2
    for place, (bead, height, _) in enumerate(down[:half] + down[half:][-half:]):
        turned = height != "length"
        along = sizes.height(bead) if turned else sizes.bead(bead)[0]
        if place == half:
            wide = sizes.bead(bead)[1]
            left_out(pen, at, at + _BREAK, wide / 2 + 0.5, len(down))
            at += _BREAK
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
    if of.traits.cups:
        _cups(pen, sizes, part, of, len(links))
        return
    for link in links:
        outside = _of_link(of, link, "length", 5.0)
        wire = _of_link(of, link, "wire", 0.8)
        width = _of_link(of, link, "width", outside * 0.7)
        pen.link(at + outside / 2 - wire, outside, width, wire, "metal")
        at += outside - 2 * wire


def _cups(pen: Pen, sizes: Sizes, part: Part, chain: Part, count: int) -> None:
    """Stones in their cups, and the little links between them."""
    cup, stone = sizes.known(part, "width", UNKNOWN / 2), chain.size("size").middle
    long = sizes.known(part, "length", count * cup * 1.1)
    pitch = (long - cup) / (count - 1) if count > 1 else cup
    for number in range(count - 1):
        pen.box(number * pitch + cup * 0.9, pitch - cup * 0.8, cup * 0.2, "metal")
    for number in range(count):
        middle = cup / 2 + number * pitch
        pen.rounded(middle, cup, cup, "metal", (cup / 4, cup / 4))
        for round_ in (1.0, 0.5):  # the stone, and the facet on its top
            pen.disc(middle, min(stone, cup) * round_, "stone")


def _of_link(chain: Part, link: str, what: str, otherwise: float) -> float:
    """A size of a link as the plan has it, or as is usual of a chain that is given as sold."""
    size = chain.wire if what == "wire" else chain.size
    try:
        return size("links", link, what).middle
    except Missing:
        return otherwise
