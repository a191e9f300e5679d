"""How a part is made, in sentences for a student: what to cut, which beads, how many, how long."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence

from wellstrung.common.wording import article, together
from wellstrung.derived.taken import bead_words
from wellstrung.model.beads import (
    COLUMN,
    SIDE,
    UNIT,
    apart,
    bead_rows,
    beads_named,
    beads_picked_up,
    knot_of,
)
from wellstrung.model.looks import Pattern, Weave
from wellstrung.model.parts import Part, Role
from wellstrung.quantity.working import number
from wellstrung.report.pages.cut_words import Bench, running_on, to_cut
from wellstrung.report.pages.held_words import held
from wellstrung.report.pages.ring_words import of_rings
from wellstrung.report.pages.round_words import about, base_band, embroidered, over_core
from wellstrung.subjects.counts import how_many

_LOOP = "Pick up {} beads for a loop, and go through the middle bead of the next loop before it"
#: what a unit of a chain is, by how its beads lie
_UNITS: Mapping[Pattern, str] = {
    Pattern.DAISIES: "Each daisy: pick up a ring of {loop} beads and go through it again, then one"
    " bead for its middle; link it by two beads that lie beside two of its ring",
    Pattern.SLANTS: "Each column: pick up 4 beads, go up through the first 2 again, pick up 1, go"
    " back down through 3, pick up 1, go up through the 2 beside them",
    Pattern.CHEVRONS: "Begin with {loop} beads, and go through the first again: a triangle. Each"
    " stitch: pick up {stitch} beads, 3 for the edge and the others for a leg, and go through the"
    " last bead of the other edge",
}


def made(part: Part, at: Bench) -> Iterator[str]:
    """How to make a part: its thread, its beads, their counts, and the length to reach."""
    pieces = how_many(at.plan, part) // at.plan.makes
    if pieces > 1 and part.kind.role is not Role.DROP:
        yield f"Make {pieces} of them"
    yield from running_on(part, at)
    yield from to_cut(part, at)
    if part.has("needle") and not part.without_needle:
        yield f"Needle: {part.text('needle')}"
    yield from _beads(part, at)
    if part.stitch is not None and part.kind.role is not Role.STRAND:
        yield f"{'Stitch' if part.takes('thread') else 'Braid'}: {part.stitch.name}"
        if part.stitch.how:
            yield part.stitch.how
    how = HOW.get(part.kind.role)
    if how is not None:
        yield from how(part, at)
    yield from _added(part, at)


#: where an edging of several edges goes
_WHERE = {"both edges": "along both long edges", "all round": "all round"}


def _added(part: Part, at: Bench) -> Iterator[str]:
    """What is sewn on when it is woven: a second layer, then an edging."""
    if part.has("layer"):
        beads, each = at.known(part, "layer.beads"), in_order(part, "layer", "beads")
        often = part.count("layer", "every", default=1)
        over = "every bead" if often == 1 else f"every {often} beads"
        amount = f": {about(beads)} beads" if beads is not None else ""
        yield f"Then sew a second layer over it, {each} over {over}{amount}"
    if part.has("edging"):
        picots, each = at.known(part, "edging.picots"), in_order(part, "edging", "beads")
        along = part.text("edging", "along")
        amount = f": {about(picots)} picots" if picots is not None else ""
        yield f"Last sew picots {_WHERE.get(along, f'along the {along}')}, each of {each}{amount}"


def _beads(part: Part, at: Bench) -> Iterator[str]:
    """Which beads, each by its name and as a shop calls it."""
    palette = at.plan.beads
    named = [name for name in beads_picked_up(part) if name in palette]
    said = [f"`{name}` ({bead_words(palette[name])})" for name in named]
    if said:
        yield f"Beads: {together(said)}"


def in_order(part: Part, *field: str) -> str:
    """The beads of a field in the order to pick them up, equal ones counted; or a mix of them."""
    node = part.node_at(*field)
    value = node.value if node is not None else []
    if isinstance(value, dict):
        return "a mix of " + together(f"{count} of `{name}`" for name, count in value.items())
    names = ["`, `".join(row) for row in bead_rows(part, *field)] if value else []
    runs: list[tuple[str, int]] = []
    for name in names:
        if runs and runs[-1][0] == name:
            runs[-1] = (name, runs[-1][1] + 1)
        else:
            runs.append((name, 1))
    return ", ".join(f"{count} of `{name}`" for name, count in runs)


def _repeat(part: Part, field: str) -> str:
    """The same, and that it goes on from the first where it has an order."""
    node = part.node_at(field)
    ordered = node is not None and isinstance(node.value, list) and len(node.value) > 1
    return in_order(part, field) + (", and again from the first" if ordered else "")


def _several(part: Part, field: str) -> bool:
    """Whether a field has an order or a mix of beads, not one bead alone."""
    return sum(beads_named(part, field).values()) > 1


def _order_of_beads(part: Part) -> Iterator[str]:
    if part.has("one_for"):
        order = in_order(part, "beads")
        if part.text("one_for") == SIDE:
            yield f"Each unit is, side by side, {order}; its neighbours share sides, turned about"
        elif part.text("one_for") == UNIT:
            yield f"Unit by unit, the beads are those of {order}"
        elif part.text("one_for") == COLUMN:
            yield f"The ring is {order}; in every round pick up the bead that its column began with"
        else:
            yield f"Round by round, the beads are those of {order}"
    elif _several(part, "beads"):
        yield f"Pick up {_repeat(part, 'beads')}"


def _rope(part: Part, at: Bench) -> Iterator[str]:
    if part.takes("cord"):
        yield from _braid(part, at)
        return
    if part.stitch is not None and part.stitch.cored:
        first = part.count("core_at_start", default=4)
        yield f"Begin with {first} of `{part.text('core_bead')}` for the core"
        sides = "to its left and to its right" if at.known(part, "width") else "round it"
        yield f"Each stitch takes 1 more of it and, {sides}, a loop of {in_order(part, 'outer')}"
    else:
        if part.has("loop"):
            yield from _points(part)
        elif part.has("around"):
            shifts = part.stitch is not None and getattr(part.stitch.look, "shifts", False)
            of = f"times {in_order(part, 'beads')}" if shifts else "beads"
            yield f"Begin with a ring of {part.count('around')} {of}"
        elif part.has("each_round"):
            yield f"Every round has {part.count('each_round')} beads"
        yield from _order_of_beads(part)
        if part.has("outer"):
            yield f"Close each round with a bridge of {in_order(part, 'outer')}, picked up at once"
    strung = at.known(part, "strung")
    if strung is not None:
        yield f"Before you begin, string {at.long(strung.middle)} of beads on the thread"
    yield from _as_far(part, at)
    core = part.part("core")
    if core is not None:
        over = core.has("woven_over") and core.text("woven_over") == "yes"
        yield f"Weave it over `{core.name}`" if over else f"Draw `{core.name}` in when it is woven"


def _points(part: Part) -> Iterator[str]:
    """How a net in the round begins: its first round is strung with the beads it hangs from."""
    points, loop = part.count("around" if part.has("around") else "each_round"), part.count("loop")
    yield f"Begin with a ring of {points * (1 + loop)} beads: {points} times 1 and a loop of {loop}"
    yield f"{_LOOP.format(loop)}; {points} loops make a round"


def _braid(part: Part, at: Bench) -> Iterator[str]:
    strung = at.known(part, "strung")
    if strung is not None:
        each = f"String {at.long(strung.middle)} of beads on each cord"
        yield f"{each}: {_repeat(part, 'beads')}" if _several(part, "beads") else each
    yield from _as_far(part, at)
    if part.has("nub"):
        nub = at.known(part, "nub.length")
        long = f", {number(nub.middle)} mm long" if nub is not None else ""
        yield f"Bind both ends bare{long}: they go into the caps"


def _band(part: Part, at: Bench) -> Iterator[str]:
    look = part.stitch.look if part.stitch is not None else None
    unit = _UNITS.get(look.pattern) if isinstance(look, Weave) else None
    if unit is not None:
        loop = part.count("loop", default=0)
        yield unit.format(loop=loop, stitch=loop // 2 + 1)
        if part.count("across", default=1) > 1:
            yield "Weave the second chain to it: its first bead below is that of the first chain"
        yield from _order_of_beads(part)
        yield from _as_far(part, at)
        return
    units_ = "beads" if part.stitch is None or part.stitch.columns == "beads" else "units"
    if part.has("across") and part.count("across") > 1:
        yield f"Begin with a row of {part.count('across')} {units_}"
    if part.has("started_on"):
        onto = f"`{part.text('started_on')}`"
        yield f"Weave the first row onto {onto}: behind it and back up through each bead"
    if part.has("cords", "outside"):
        yield "Fix both cords side by side, a loop at one end of them; tie the thread to one"
        yield "Lay each row between them: through its beads below both cords, and back above them"
    if part.has("bead_up"):
        yield f"Pick up {part.count('bead_up')} beads for a stitch"
    if part.has("sides"):
        yield f"On the sides that run along it lies `{part.text('sides')}`"
    if part.has("needles") and part.count("needles") == 2:
        yield "Work with a needle at each end: both cross in the bead between two units"
    if part.has("between"):
        between = part.count("between")
        yield f"Between two pairs pick up {between} more, from the second row on"
    if part.has("loop"):
        yield _LOOP.format(part.count("loop"))
    if part.lists("each_row"):
        listed = ", ".join(map(str, part.counts("each_row")))
        yield f"Its rows have, one after another, {listed} {units_}"
    elif part.has("each_row"):
        more = part.number("each_row")
        yield f"Each row has {abs(more):g} {'more' if more > 0 else 'fewer'} than the one before"
    yield from _order_of_beads(part)
    warps = at.known(part, "warps")
    if warps is not None:
        yield f"Put {warps.middle:.0f} warps on the loom"
    yield from _as_far(part, at)


def _woven(part: Part, at: Bench) -> Iterator[str]:
    stone = part.traits.made_round
    if part.takes("edge_row"):
        yield from embroidered(part, at)
        return
    if part.has("loop"):
        yield from _points(part)
    elif part.has("base"):
        yield from base_band(part)
    elif part.has("around"):
        yield f"Begin with a ring of {part.count('around')} beads"
    if part.takes("core"):
        yield from _order_of_beads(part)
        yield from over_core(part, at)
        return
    if stone:
        yield f"Its rounds, from the back edge to the front: {in_order(part, 'beads')}"
        wide = f" ({part.text(stone, 'outside')})" if part.has(stone, "outside") else ""
        yield f"Before the front rounds close over it, lay the {stone}{wide} in"
        if part.has(stone, "shape") and part.text(stone, "shape") in ("square", "pear"):
            yield "Try it in three rounds: a gap between two beads lies at each corner or tip"
        return
    yield from _order_of_beads(part)
    yield from _as_far(part, at)


def _as_far(part: Part, at: Bench) -> Iterator[str]:
    """So many rounds or rows, until it is so long."""
    length = at.known(part, "length")
    long = "" if length is None else at.long(length.middle)
    if part.has("length") and not part.fills_rest:
        long = part.text("length")
    rows = next((row for row in ("rounds", "rows") if at.known(part, row) is not None), "")
    amount = at.known(part, rows) if rows else None
    of = "stitches" if part.stitch is not None and part.stitch.cored else rows
    if amount is not None and any(part.has(row) for row in ("rounds", "rows")):
        yield f"Go on for {about(amount)} {of}" + (f": it is then {long} long" if long else "")
    elif amount is not None:
        yield f"Go on until it is {long} long: {about(amount)} {of}"
    elif long:
        yield f"Go on until it is {long} long"


def _strand(part: Part, at: Bench) -> Iterator[str]:
    beads, length = at.known(part, "beads"), at.known(part, "length")
    if part.has("repeats"):
        often = part.count("repeats")
        yield f"String {in_order(part, 'beads')}" + (f"; {often} times so" if often > 1 else "")
    elif _several(part, "beads"):
        amount = f": {about(beads)} beads in all" if beads is not None else ""
        yield f"String {_repeat(part, 'beads')}{amount}"
    elif part.has("beads"):
        amount = about(beads) if beads is not None else "as many as it takes"
        yield f"String {amount} of `{next(iter(beads_named(part, 'beads')))}`"
    for name in beads_named(part, "beads"):
        if (many := part.beads[name].shared) > 1:
            yield f"Take the lines of {many} strands through the same `{name}`"
    if part.has("spacing"):
        group = part.count("group", default=1)
        two = f"two groups of {group} beads" if group > 1 else "two beads"
        stops = "what holds " if apart(part) else ""
        yield f"Leave {part.text('spacing')} of bare line between {stops}{two}"
    yield from held(part)
    if part.has("passes") and part.count("passes") > 1:
        yield _passed(part)
    knot = knot_of(part) if part.stitch is not None and part.stitch.knot else ""
    if knot and not at.plan.steps_that("knot", part=part):
        yield f"Tie {article(knot)} knot between every two beads, tight against the bead"
    if length is not None:
        long = f"{at.long(length.middle)} from first to last"
        yield (
            f"With its bare ends it is {at.long(length.middle)} long"
            if part.has("bare_ends")
            else f"The beads reach {long}"
        )


def _passed(part: Part) -> str:
    """How a line goes through every bead more than once: side by side where it is knotted."""
    many = part.count("passes")
    if part.stitch is not None and part.stitch.knot:
        return f"Take {many} lines through every bead side by side, and tie each knot with all"
    return f"Run the line through every bead {many} times"


def _drop(part: Part, at: Bench) -> Iterator[str]:
    counts, order = part.counts("count"), _repeat(part, "beads")
    if not _several(part, "beads"):
        order = f"`{next(iter(beads_named(part, 'beads')), '')}`"
    legs = f"{order}: {_legs(counts)}" if counts else in_order(part, "beads")
    yield f"For each leg pick up {legs}"
    if part.has("turn"):
        yield f"At its foot pick up `{part.text('turn')}`, and go back up past it"
    else:
        yield "Pass the bead at its foot, and go back up through the others"
    bundle = at.known(part, "bundle")
    if bundle is not None:
        yield f"Its legs hang together as a tassel, about {bundle.middle:.0f} mm thick"


def _legs(counts: Sequence[int]) -> str:
    """How many beads each leg of a fringe has."""
    if len(counts) == 1:
        return f"{counts[0]} beads"
    return f"{', '.join(map(str, counts))} beads, leg by leg in this order"


#: how a part of each role is made; what has another role is bought, or cut as its step says
HOW: Mapping[Role, Callable[[Part, Bench], Iterator[str]]] = {
    Role.ROPE: _rope,
    Role.BAND: _band,
    Role.WOVEN: _woven,
    Role.STRAND: _strand,
    Role.DROP: _drop,
    Role.EYED: of_rings,
}
