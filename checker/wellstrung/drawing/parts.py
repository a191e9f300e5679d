"""How each kind of part looks, to scale; what the plan does not say is dashed.

A part is drawn from the spot where its outer end bears on, so that two parts that hang in each
other overlap by their wires as they do at the bench. The looks are our own: seen from the front,
plain outlines, beads as ovals.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from itertools import cycle, islice

from wellstrung.derived.outline import beads_down
from wellstrung.drawing.pen import Pen
from wellstrung.model.beads import bead_mix, beads_named
from wellstrung.model.item import Missing
from wellstrung.model.parts import Part, Role
from wellstrung.quantity.value import Quantity
from wellstrung.rulebook import Ask
from wellstrung.subjects.chain import links_of

#: A size that the plan leaves open is drawn as this, mm, and dashed.
UNKNOWN = 8.0
#: No more beads, or links of one chain, are drawn one by one; beyond, an outline tells the size.
MOST_BEADS, MOST_LINKS = 1500, 120
_MOST_BANDS = 200


class Sizes:
    """What the plan says or implies of the sizes of its parts, mm."""

    def __init__(self, ask: Ask) -> None:
        self.ask = ask
        self.plan = ask.plan

    def quantity(self, part: Part, what: str) -> Quantity | None:
        """A quantity of a part, or None where the plan lacks a value for it."""
        try:
            return self.ask.of(part, what)
        except Missing:
            return None

    def mm(self, part: Part, what: str) -> float | None:
        """Its middle value."""
        found = self.quantity(part, what)
        return found.middle if found is not None else None

    def known(self, part: Part, what: str, otherwise: float) -> float:
        """Its middle value, or what to draw where the plan does not say."""
        found = self.mm(part, what)
        return otherwise if found is None else found

    def named(self, part: Part, what: str) -> str:
        """The quantity's name, for a shape that draws it; empty where the plan does not say it."""
        return f"{part.name}.{what}" if self.mm(part, what) is not None else ""

    def bead(self, name: str) -> tuple[float, float]:
        """Length along the hole and outside of a bead of the palette."""
        item = self.plan.beads[name]
        try:
            return self.ask.of(item, "length").middle, self.ask.of(item, "outside").middle
        except Missing:
            return UNKNOWN / 4, UNKNOWN / 4

    def look(self, bead: str) -> str:
        """The look of a bead: the palette has six, in the order of the plan."""
        return f"bead b{list(self.plan.beads).index(bead) % 6}"

    def mix(self, part: Part) -> dict[str, int]:
        """The beads of a part; of a rope with a core of beads those that are seen."""
        return bead_mix(part) if part.has("beads") else beads_named(part, "outer")

    def sequence(self, part: Part) -> Iterator[str]:
        """The beads of a part, one after another, without end."""
        node = part.node_at("beads")
        names = list(node.value) if node is not None and isinstance(node.value, list) else []
        if not names:
            names = [name for name, count in self.mix(part).items() for _ in range(count)]
        return cycle(str(name) for name in names)

    def across(self, part: Part) -> float:
        """How wide a part is across its line."""
        return self.known(part, self.breadth(part), UNKNOWN / 2)

    def breadth(self, part: Part) -> str:
        """The quantity that tells how wide a part is: a band's `outside` is its thickness."""
        return "width" if self.mm(part, "width") is not None else "outside"


def eye(pen: Pen, sizes: Sizes, part: Part, key: str, across: float = 0.0) -> float:
    """An eye whose hole begins here; returns how far it reaches, its far wall included."""
    hole = sizes.known(part, f"{key}.hole", 2.0)
    wall = sizes.known(part, f"{key}.wire", 1.0)
    pen.ring(hole / 2, hole + 2 * wall, wall, "metal", across=across)
    return hole + wall


# --- worked parts: ropes, bands, braids, strands


def worked(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """A stretch of a rope, a band or a braid, bead by bead."""
    width = sizes.across(part)
    pen.box(0, length, width, "cloth", of_width=sizes.named(part, sizes.breadth(part)))
    if part.has("beads") or part.has("outer"):
        _beads(pen, sizes, part, length, width)
    else:
        _braided(pen, length, width)


def banded(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """A worked part as an outline with bands of a round length, for where beads are too small."""
    width, band = sizes.across(part), band_of(length)
    pen.box(0, length, width, "cloth", of_length=sizes.named(part, "length"))
    for number in range(1, int(length // band), 2):
        pen.box(number * band, band, width, "band")


def band_of(length: float) -> float:
    """How long a band is, mm: 10, or more noughts where that would be too many.

    >>> band_of(397.0), band_of(50_000.0)
    (10.0, 1000.0)
    """
    band = 10.0
    while length / band > _MOST_BANDS:
        band *= 10
    return band


def bead_by_bead(sizes: Sizes, part: Part) -> bool:
    """Whether a strand is drawn whole by its beads: there are not too many."""
    return part.kind.role is Role.STRAND and sizes.known(part, "beads", 0) <= MOST_BEADS


def _beads(pen: Pen, sizes: Sizes, part: Part, length: float, width: float) -> None:
    """Rows of beads over the face that is seen; of round work those at the rim look narrow."""
    first = next(sizes.sequence(part))
    bead_length, outside = sizes.bead(first)
    stitch = part.text("stitch")
    hole_across = "peyote" in stitch or stitch in ("loom", "square", "slip-stitch bead crochet")
    along, over = (outside, bead_length) if hole_across else (bead_length, outside)
    lines = max(round(width / over), 1)
    step = width / lines
    staggered = any(word in stitch for word in ("peyote", "brick", "crochet", "braid", "netting"))
    count = max(round(length / along), 1)
    if lines * count > MOST_BEADS:
        return
    beads = sizes.sequence(part)
    for row in range(count):
        for line in range(lines):
            shift = 0.5 if staggered and line % 2 else 0.0
            middle = (row + 0.5 + shift) * along
            look = sizes.look(next(beads))
            if middle + along / 2 <= length + 0.02:
                across = (line + 0.5) * step - width / 2
                pen.oval(middle, along * 0.96, step * 0.96, look, across)


def _braided(pen: Pen, length: float, width: float) -> None:
    """Cords that cross: a row of slanted strokes."""
    step = width / 2
    for number in range(int(length / step)):
        start = number * step
        pen.line([(start, -width / 2), (min(start + step, length), width / 2)], "thread")
        pen.line([(start, width / 2), (min(start + step, length), -width / 2)], "thread")


def strung(pen: Pen, sizes: Sizes, part: Part, length: float, whole: float) -> None:
    """A stretch of a strand: its beads on their line, with a knot between where it is knotted."""
    told = sizes.named(part, "length") if length == whole else ""
    pen.line([(0, 0), (length, 0)], "thread", of_length=told)
    for middle, bead in bead_places(sizes, part, whole):
        along, outside = sizes.bead(bead)
        if middle + along / 2 > length + 0.05:
            return
        if part.text("stitch") == "knotted":
            pen.disc(middle + along / 2, min(0.9, outside / 4), "knot")
        pen.oval(middle, along, outside, sizes.look(bead))


def bead_places(sizes: Sizes, part: Part, whole: float) -> list[tuple[float, str]]:
    """Where the beads of a strand sit along it, evenly spaced over its whole length."""
    count = round(sizes.known(part, "beads", 0))
    beads = list(islice(sizes.sequence(part), min(count, MOST_BEADS)))
    lengths = [sizes.bead(bead)[0] for bead in beads]
    gap = max((whole - sum(lengths)) / max(count - 1, 1), 0.0)
    places, at = [], 0.0
    for bead, length in zip(beads, lengths, strict=True):
        places.append((at + length / 2, bead))
        at += length + gap
    return places


# --- findings


def jump_ring(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """From the front; its closing shows at one side: a slit, a seam, solder, or a second turn."""
    outside, wire = sizes.known(part, "outside", UNKNOWN), sizes.known(part, "wire", 1.0)
    inside = outside - 2 * wire
    middle = inside / 2
    pen.ring(middle, outside, wire, "metal", sizes.named(part, "outside"))
    rim, bore = outside / 2, inside / 2
    closing = part.text("closing") if part.has("closing") else "open"
    if closing == "soldered":
        pen.disc(middle, wire * 0.7, "solder", across=-(rim + bore) / 2)
    elif closing == "split":
        pen.ring(middle, outside - wire, wire * 0.12, "seam")
    else:
        look = "slit" if closing == "open" else "seam"
        pen.line([(middle, -rim), (middle + wire * 0.25, -bore)], look)


def ring_on_edge(pen: Pen, sizes: Sizes, part: Part) -> float:
    """A ring around something, seen on edge; returns where it bears at its other side."""
    outside, wire = sizes.known(part, "outside", UNKNOWN), sizes.known(part, "wire", 1.0)
    quantity = sizes.named(part, "outside")
    pen.box(-wire, outside, wire, "metal", corner=wire / 2, of_length=quantity)
    return outside - 2 * wire


def end_cap(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """From its eye to its rim, with the bore dashed as deep as the rope's end goes in."""
    bore = sizes.known(part, "bore", UNKNOWN)
    outside = sizes.mm(part, "outside")
    whole = sizes.known(part, "length", UNKNOWN * 1.5)
    wall = sizes.known(part, "eye.wire", 1.0)
    far = eye(pen, sizes, part, "eye")
    rim = max(whole - wall, far + 1.0)
    look = "metal" if outside is not None else "metal open-size"
    width = outside or bore + 1.0
    told = sizes.named(part, "outside")
    pen.box(far, rim - far, width, look, corner=1.0, of_width=told)
    depth = sizes.known(part, "depth", 0.0)
    if depth:
        pen.box(rim - depth, depth, bore, "hidden", of_width=sizes.named(part, "bore"))


def cone(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """From its narrow end to its wide one, which lies where the strands begin, less its depth."""
    bore = sizes.known(part, "bore", UNKNOWN)
    outside = sizes.known(part, "outside", bore + 1.0)
    whole = sizes.known(part, "length", UNKNOWN * 1.5)
    depth = sizes.known(part, "depth", whole * 0.6)
    narrow = sizes.known(part, "hole", 1.5) / 2 + 0.8
    start, wide = depth - whole, outside / 2
    spots = [(start, -narrow), (start, narrow), (depth, wide), (depth, -wide), (start, -narrow)]
    pen.line(spots, "metal sheer", of_width=sizes.named(part, "outside"))


def crimp(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """A tube, and before it the loop of wire in which the ring bears."""
    tube = sizes.known(part, "length", 2.0)
    loop = max(length - tube, 0.5)
    width = sizes.known(part, "outside", sizes.known(part, "inside", 1.2) + 0.6)
    pen.oval(loop / 2, loop, min(loop, width), "wire-loop")
    pen.box(loop, tube, width, "metal", of_length=sizes.named(part, "length"))


def wire_link(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """Its loops with their wraps, its beads, and a pin's head."""
    hole, wire = sizes.known(part, "loop.hole", 2.5), sizes.known(part, "wire", 0.8)
    stack = sizes.known(part, "stack", 0.0)
    wrapped = part.has("loops") and part.text("loops") == "wrapped"
    wraps = part.count("wraps", default=3) * wire if wrapped else 0.0
    start = hole + wire + wraps
    pen.box(hole, start + stack - hole, wire, "metal")
    pen.ring(hole / 2, hole + 2 * wire, wire, "metal")
    if wraps:
        pen.box(hole + wire, wraps, 3 * wire, "metal wraps")
    at = start
    if part.has("beads"):
        count = part.count("count", default=sum(bead_mix(part).values()))
        for bead in islice(sizes.sequence(part), count):
            along, outside = sizes.bead(bead)
            pen.oval(at + along / 2, along, outside, sizes.look(bead))
            at += along
    if part.text("type") == "head pin":
        pen.box(at, wire, 2.5 * wire, "metal")
    elif not part.has("over"):
        if wraps:
            pen.box(at, wraps, 3 * wire, "metal wraps")
        pen.ring(at + wraps + wire + hole / 2, hole + 2 * wire, wire, "metal")


def connector(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """Its two eyes and what lies between them."""
    hole, wall = sizes.known(part, "eyes.hole", 2.0), sizes.known(part, "eyes.wire", 1.0)
    width = sizes.mm(part, "width")
    pen.ring(hole / 2, hole + 2 * wall, wall, "metal")
    pen.ring(length - hole / 2, hole + 2 * wall, wall, "metal")
    look = "metal" if width else "metal open-size"
    body = max(length - 2 * (hole + wall), 0.5)
    pen.box(hole + wall, body, width or hole + 2 * wall, look, corner=1.0)


def spacer_bar(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """A bar across the strands with its holes."""
    count = part.count("holes", "count", default=1)
    hole = sizes.known(part, "holes.hole", 1.2)
    spacing = sizes.known(part, "holes.spacing", hole + 2.0)
    pen.box(0, length, (count - 1) * spacing + hole + 2.0, "metal", corner=0.5)
    for number in range(count):
        across = (number - (count - 1) / 2) * spacing
        pen.box(0, length, hole, "hidden", across=across)


def ear_wire(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """From where it bears in the ear down to its eye: a hook, a hoop or a post."""
    wire = sizes.known(part, "wire", 0.8)
    hole, wall = sizes.known(part, "eye.hole", 2.0), sizes.known(part, "eye.wire", wire)
    start = max(length - hole, wire)
    kind = part.text("type") if part.has("type") else "hook"
    if kind == "post":
        pen.box(-wire, start + wire, wire, "metal")
        pen.disc(start - 1.5, 3.0, "metal")
    elif kind == "hoop":
        pen.ring(start / 2, start, wire, "metal")
    else:
        r = min(start * 0.3, 4.0)
        turns = [math.pi * n / 12 for n in range(13)]
        arch = [(r - r * math.sin(turn), r - r * math.cos(turn)) for turn in turns]
        pen.line([(start, 0.0), *arch, (start * 0.8, 2 * r)], "wire-line")
    pen.ring(start + hole / 2, hole + 2 * wall, wall, "metal")


# --- clasps


def toggle_ring(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """The ring of a toggle; the bar's stem bears where it begins."""
    wire = sizes.known(part, "ring.wire", 1.5)
    inside = sizes.known(part, "ring.inside", UNKNOWN)
    pen.ring(inside / 2, inside + 2 * wire, wire, "metal")
    pen.disc(inside / 2, inside, "measured", sizes.named(part, "ring.inside"))
    eye(pen.moved(inside + wire), sizes, part, "a")


def toggle_bar(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """The bar of a toggle across the line, its stem and its eye."""
    bar = sizes.known(part, "bar.length", 2 * UNKNOWN)
    thick = sizes.known(part, "bar.thickness", 1.5)
    hole = sizes.known(part, "b.hole", 2.0)
    stem = max(length - hole, 0.5)
    pen.box(0, stem, sizes.known(part, "bar.stem_width", 1.0), "metal")
    pen.box(-thick, thick, bar, "metal", corner=thick / 2, of_width=sizes.named(part, "bar.length"))
    eye(pen.moved(stem), sizes, part, "b")


def closed_clasp(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """A clasp of one closed length, with the eyes of both its halves."""
    kind = part.text("type")
    if kind == "button and loop":
        button = part.length("button", "outside").middle if part.has("button", "outside") else 10.0
        pen.line([(0, 0), (length, 0)], "thread")
        pen.disc(length / 2, button, "metal")
        for side in (-1.0, 1.0):
            pen.disc(length / 2 + side, 1.2, "hole")
        return
    first, last = sizes.known(part, "b.hole", 2.0), sizes.known(part, "a.hole", 2.0)
    eye(pen, sizes, part, "b")
    eye(pen.turned(length), sizes, part, "a")
    start = first + sizes.known(part, "b.wire", 1.0)
    body = max(length - last - sizes.known(part, "a.wire", 1.0) - start, 1.0)
    if kind == "magnetic":
        pen.box(start, body / 2, body * 0.6, "metal", corner=0.8)
        pen.box(start + body / 2, body / 2, body * 0.6, "metal", corner=0.8)
    elif kind == "spring ring":
        pen.ring(start + body / 2, body, body * 0.16, "metal")
        pen.disc(start + body / 2, body * 0.2, "metal", across=-body * 0.45)
    else:
        wide, wire = (
            body * (0.3 if kind == "hook" else 0.5),
            body * (0.1 if kind == "hook" else 0.15),
        )
        pen.link(start + body / 2, body, wide, wire, "metal")
        gap = start + body * 0.3, wide / 2
        pen.line([(gap[0], gap[1]), (gap[0] + wire, gap[1] - wire)], "slit")


def gripping(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """A slide clasp as two tubes side by side, ribbon ends as their two jaws, across the band."""
    field = ("tube", "length") if part.has("tube") else ("jaw", "width")
    wide = part.length(*field).middle if part.has(*field) else UNKNOWN
    for half in range(2):
        pen.box(half * length / 2, length / 2, wide, "metal", corner=0.8)


def clasp_end(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """The other half of a clasp whose closed length is drawn at the first: its eye or its loop."""
    if part.has("loop", "beads"):
        bead = part.text("loop", "beads")
        count = part.count("loop", "count", default=12)
        along, outside = sizes.bead(bead)
        radius = along * count / (2 * math.pi)
        for number in range(count):
            turn = 2 * math.pi * number / count
            spot = (-radius + radius * math.cos(turn), radius * math.sin(turn))
            pen.disc(spot[0], min(along, outside), sizes.look(bead), across=spot[1])
        return
    hole, wall = sizes.known(part, "b.hole", 2.0), sizes.known(part, "b.wire", 1.0)
    pen.ring(-hole / 2 - wall, hole + 2 * wall, wall, "metal open-size")


# --- what hangs


def chain_piece(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """Link by link, pulled taut; of more links than can be told apart, an outline."""
    chain = sizes.plan.parts[part.text("of")]
    links, at = links_of(part, chain), 0.0
    if len(links) > MOST_LINKS:
        pen.box(0, length, sizes.known(part, "width", UNKNOWN / 2), "metal")
        return
    for link in links:
        outside = _of_link(chain, link, "length", 5.0)
        wire = _of_link(chain, link, "wire", 0.8)
        width = _of_link(chain, link, "width", outside * 0.7)
        pen.link(at + outside / 2 - wire, outside, width, wire, "metal")
        at += outside - 2 * wire


def _of_link(chain: Part, link: str, what: str, otherwise: float) -> float:
    """A size of a link as the plan has it."""
    if not chain.has("links", link, what):
        return otherwise
    size = chain.wire if what == "wire" else chain.length
    return size("links", link, what).middle


def bead_drop(pen: Pen, sizes: Sizes, part: Part, number: int) -> float:
    """One leg of beads and its turn bead; returns how long it is."""
    at = 0.0
    for bead, height, _ in beads_down(part, number):
        length, outside = sizes.bead(bead)
        along, across = (length, outside) if height == "length" else (outside, length)
        pen.oval(at + along / 2, along, across, sizes.look(bead))
        at += along
    return at


def pendant(pen: Pen, sizes: Sizes, part: Part) -> list[tuple[float, float]]:
    """Its top eyes, its body and its bottom eyes; returns where those below bear what hangs there.

    It is drawn from where its top eyes bear; a body whose height or width the plan does not say is
    dashed.
    """
    top, below = _eye_row(sizes, part, "top_eyes"), _eye_row(sizes, part, "bottom_eyes")
    needed = pendant_width(sizes, part)
    known = sizes.mm(part, "width") is not None and sizes.mm(part, "height") is not None
    height = sizes.known(part, "height", top.reach + below.reach + max(needed * 0.3, 3.0))
    start, end = top.hole + top.wall, height - top.wall - below.reach
    for across in top.places(needed):
        eye(pen, sizes, part, "top_eyes", across)
    body = max(end - start, 1.0)
    pen.box(start, body, needed, "metal" if known else "metal open-size", corner=1.2)
    spots = []
    for across in below.places(needed):
        eye(pen.moved(start + body), sizes, part, "bottom_eyes", across)
        spots.append((start + body + below.hole, across))
    return spots


def pendant_width(sizes: Sizes, part: Part) -> float:
    """Its width, or what its eyes take where the plan does not say it."""
    rows = (_eye_row(sizes, part, key) for key in ("top_eyes", "bottom_eyes"))
    return sizes.known(part, "width", max(UNKNOWN, *(row.width for row in rows)))


def top_places(sizes: Sizes, part: Part) -> list[float]:
    """Where the top eyes of a pendant lie across; its middle where the plan does not say."""
    return _eye_row(sizes, part, "top_eyes").places(pendant_width(sizes, part)) or [0.0]


class _Row:
    """A row of eyes: how many, their hole and wall, and how they are spaced where that is said."""

    def __init__(self, count: int, hole: float, wall: float, spacing: float | None) -> None:
        self.count, self.hole, self.wall, self.spacing = count, hole, wall, spacing

    @property
    def reach(self) -> float:
        """What the row takes along, one wall and hole and wall; nothing where there is none."""
        return self.hole + 2 * self.wall

    @property
    def width(self) -> float:
        """What the row takes across, with a little metal beyond."""
        step = self.spacing or self.reach + 1.5
        return (max(self.count, 1) - 1) * step + self.reach + 2.0

    def places(self, width: float) -> list[float]:
        """Where each lies across: as spaced, or spread over the width."""
        step = self.spacing or (width - self.hole - 2 * self.wall) / max(self.count, 1)
        return [(number - (self.count - 1) / 2) * step for number in range(self.count)]


def _eye_row(sizes: Sizes, part: Part, key: str) -> _Row:
    if not part.has(key):
        return _Row(0, 0.0, 0.0, None)
    return _Row(
        part.count(key, "count", default=1),
        sizes.known(part, f"{key}.hole", 2.0),
        sizes.known(part, f"{key}.wire", 1.0),
        sizes.mm(part, f"{key}.spacing"),
    )


def pouch(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """Laid flat: it adds its width to the run and hangs below it, or down an upright one."""
    tall = sizes.known(part, "length", UNKNOWN)
    if pen.upright:
        worked(pen, sizes, part, tall)
        return
    x, y = pen.at(length / 2)
    worked(Pen(pen.canvas, x, y, upright=True), sizes, part, tall)


def bezel(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """From the front: the beads of one round about the stone that they hold."""
    outside = sizes.known(part, "outside", length)
    stone = sizes.known(part, "stone", outside * 0.8)
    pen.disc(length / 2, outside, "frame", sizes.named(part, "outside"))
    beads, away = part.count("around", default=0) // 2, (outside + stone) / 4
    each = min((outside - stone) / 2, 2 * math.pi * away / max(beads, 1)) * 0.92
    rounds = part.texts("beads")
    for number in range(beads if each > 0 else 0):  # none where the ring is less than the stone
        turn = 2 * math.pi * number / beads
        pen.disc(
            length / 2 + away * math.cos(turn),
            each,
            sizes.look(rounds[len(rounds) // 2]),
            across=away * math.sin(turn),
        )
    pen.disc(length / 2, stone, "stone")


def foot_of(sizes: Sizes, part: Part) -> float:
    """How far below the line of a run that lies level a woven part reaches."""
    if part.kind.name == "pouch":
        return sizes.known(part, "length", UNKNOWN)
    return sizes.across(part) / 2


def _told_at_the_first_half(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """Closed, the whole clasp is drawn where its first half stands."""


def unknown(pen: Pen, sizes: Sizes, part: Part, length: float) -> None:
    """A part whose look or size is not known: a dashed box."""
    pen.box(0, length, UNKNOWN, "metal open-size", corner=1.0)


#: how a part is drawn that takes a stretch of the run, by its kind
FINDINGS: dict[str, Callable[[Pen, Sizes, Part, float], None]] = {
    "jump ring": jump_ring,
    "end cap": end_cap,
    "cone": cone,
    "crimp": crimp,
    "wire link": wire_link,
    "connector": connector,
    "spacer bar": spacer_bar,
    "ear wire": ear_wire,
    "chain piece": chain_piece,
    "pouch": pouch,
    "bezel": bezel,
}


def finding(pen: Pen, sizes: Sizes, part: Part, half: str, length: float) -> None:
    """A part of the run that is no worked one, from its outer end on."""
    if part.kind.name == "clasp":
        is_toggle = part.text("type") == "toggle" and part.has("ring")
        halves = (toggle_ring, toggle_bar) if is_toggle else (closed_clasp, clasp_end)
        if part.text("type") in ("slide", "ribbon end"):
            halves = (gripping, _told_at_the_first_half)
        halves[half == "b"](pen, sizes, part, length)
    elif part.kind.name == "pendant":
        pendant(pen, sizes, part)
    else:
        FINDINGS.get(part.kind.name, unknown)(pen, sizes, part, length)
