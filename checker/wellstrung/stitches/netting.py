"""Netting: loops, each hooked into the middle bead of a loop before; flat, hung, or in the round.

A loop is `loop` beads: a leg, the bead that the next row shares, a leg. Laid out it is a mesh of
rhombi: a side is half a loop, and a shared bead lies at every crossing. The sides keep their
length while the mesh opens: the wider it lies the shorter it is. How far it is opened is the
hand's, within what the faces of its beads leave room for. All of it is geometry, worked out for
this project.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

from wellstrung.common.places import Place
from wellstrung.derived.declared import (
    FITTED,
    GEOMETRY,
    Argument,
    count,
    formula,
    hand,
    measurable,
    written_or,
)
from wellstrung.derived.nets import IN_LOOPS, in_net, lists_loops
from wellstrung.formulas import nets, thread_turns
from wellstrung.formulas import thread as thread_paths
from wellstrung.formulas.arithmetic import most, pi, sin, sqrt, tan
from wellstrung.model.beads import beads_of_loop
from wellstrung.model.looks import Face, Pattern, Thread, Weave
from wellstrung.model.parts import Formula, Part, Stitch
from wellstrung.model.plan import Quantities
from wellstrung.quantity.value import Quantity
from wellstrung.stitches import flat, making, tubular_peyote

#: Degrees of a side from the way in which the mesh is long: drawn out, laid square, spread wide.
_LAID = 35.0, 45.0, 55.0
#: The same of a net that hangs: its own weight draws it out.
_HUNG = 28.0, 38.0, 48.0
_FEWEST = 3


#: what spreads a net that closes over it
_CORE = "core", "outside"


def loop_of(part: Part) -> int:
    """Beads of a loop; raises Missing."""
    return part.count("loop")


def _loops(part: Part) -> Iterator[tuple[str, Place]]:
    """Loops of an odd number, so that one bead is in their middle."""
    if not part.has("loop"):
        yield (
            f"`{part.name}` does not say how many beads a loop has: write `loop: 5`",
            part.key.place,
        )
        return
    loop, place = loop_of(part), part.place_of("loop")
    if loop < _FEWEST:
        yield (
            f"`{part.name}` has `loop: {loop}`, too few for netting: write `loop: {_FEWEST}` or"
            f" more, or `stitch: {'flat' if part.has('across') else 'tubular'} peyote`",
            place,
        )
    elif loop % 2 == 0:
        yield (
            f"`{part.name}` has `loop: {loop}`, and a loop shares the bead in its middle: write"
            f" `loop: {loop - 1}` or `loop: {loop + 1}`",
            place,
        )


def refuses(part: Part) -> Iterator[tuple[str, Place]]:
    """Loops that share a bead, and rows alike."""
    yield from flat.refuses(part, "netting", uses=("loop",))
    yield from _loops(part)


def refuses_around(part: Part) -> Iterator[tuple[str, Place]]:
    """Loops that share a bead, and points enough to close a ring."""
    yield from making.counts_around(part, count=_FEWEST, idle=())
    yield from _loops(part)
    field = making.around_field(part)
    if part.has(field) and part.count(field) < _FEWEST:
        instead = making.so_many(field, _FEWEST)
        yield making.too_few(part, f"{part.count(field)} points", part.place_of(field), instead)


def _shared(what: str) -> Formula:
    """A size of the shared bead: of beads named one by one for a whole loop the one in its middle.

    Of any other mix the mean, as of all beads.
    """

    def size(part: Part, ask: Quantities) -> Quantity:
        names = beads_of_loop(part)
        middle = making.bead(what)
        return ask.of(part.beads[names[len(names) // 2]], what) if names else middle(part, ask)

    return size


_BEAD: dict[str, Argument] = {
    "loop": count("loop", loop_of),
    "bead_length": making.bead("length"),
    "bead_outside": making.bead("outside"),
}
_SHARED = {"shared_length": _shared("length"), "shared_outside": _shared("outside")}
_TENSION = hand(
    "thread tension",
    flat.TENSION,
    cure="draw 10 loops of {part} tight in a line, measure them, count their beads",
)
_SIDE = formula("side", "mm", nets.side, {**_BEAD, **_SHARED}, tension=_TENSION, source=GEOMETRY)


_TIGHT = formula("side drawn tight", "mm", nets.side, {**_BEAD, **_SHARED}, source=GEOMETRY)
_ROOM = formula("closed", "", nets.closed, _BEAD, side=_TIGHT, source=GEOMETRY)


def _laid(slant: tuple[float, float, float], measured: str) -> Formula:
    """How far the hand opens it that lays it."""
    spread = hand(
        "spread of the net",
        slant,
        source=f"degrees of a side, {FITTED}",
        cure=f"net 5 cm of {{part}}, lay it as it is worn, write `measured: {{{measured}: ...}}`",
    )
    return formula(
        "opened",
        "",
        lambda spread, closed: nets.opened(sin(spread / 180 * pi), closed),
        spread=spread,
        closed=_ROOM,
        source=GEOMETRY,
    )


def _opened(
    slant: tuple[float, float, float], measured: str, share: Callable[..., float], **args: Argument
) -> Formula:
    """How far it is opened: as the hand lays it, or as a size that was measured says, or a core.

    `share` works it out from the size, named as the quantity is, and the side.
    """
    found = formula(
        "opened",
        "",
        lambda closed, **sizes: nets.opened(share(**sizes), closed),
        {measured: measured, **args},
        side="side",
        closed=_ROOM,
        source=GEOMETRY,
    )
    written = ("measured", measured), (measured,), _CORE
    return written_or(found, *written, otherwise=_laid(slant, measured))


def _mesh(what: str, function: Callable[..., float]) -> Formula:
    return formula(what, "mm", function, side="side", opened="opened", source=GEOMETRY)


def _thread(turn: Callable[..., float], each: str) -> Formula:
    """Thread of its loops, and the turn of each row or round; closest in loops of three."""
    close, open_ = (
        making.thread(
            thread_paths.netting, share=share, turn=turn, each=each, scan=True, loop=loop_of
        )
        for share in (thread_paths.PEYOTE_WALKED, thread_paths.WALKED)
    )
    return lambda part, ask: (close if loop_of(part) == _FEWEST else open_)(part, ask)


def _mass(part: Part, ask: Quantities) -> Quantity:
    """Mass of its beads, g, where its loops are listed each by its own count."""
    if not lists_loops(part) or part.has("measured", "mass"):
        return making.mass(part, ask)
    names = dict.fromkeys(beads_of_loop(part))
    return making.weighed(
        part, ask, [(part.beads[name], in_net(part, name, ask), 1.0) for name in names]
    )


def _in_loops(rows: str, meshes: Callable[[Part], float]) -> dict[str, Formula]:
    """Beads of its loops alone: what its base and its turns add is the bead that loops share."""
    beads = formula(
        "beads of its loops",
        "",
        lambda rows, meshes, loop: rows * meshes * loop,
        rows=rows,
        meshes=count("loops of a row", meshes),
        loop=_BEAD["loop"],
        source="counting",
    )
    return {IN_LOOPS: beads}


def _flat(
    slant: tuple[float, float, float], share: Callable[..., float], half: Formula, rise: Formula
) -> dict[str, Formula]:
    """A flat net, opened by a slant, whose half mesh across its rows and whose rise are given."""
    across = count("across", flat.across_of)
    edge = _shared("length")
    by_opening = formula(
        "width", "mm", nets.width, across=across, half_mesh=half, bead_length=edge, source=GEOMETRY
    )
    return {
        "side": _SIDE,
        "opened": _opened(slant, "width", share, across=across, bead_length=edge),
        **flat.band(
            measurable("width", by_opening),
            flat.growth(rise, "outside", steps_less=0),
            _thread(thread_turns.net_turn, "rows"),
            flat.beads(nets.beads, across=flat.across_of, loop=loop_of),
        ),
        "mass": _mass,
    }


def _wide(width: float, across: float, bead_length: float, side: float) -> float:
    """How far a net is opened whose width lies across its meshes."""
    return (width - bead_length) / (2 * across * side)


def _deep(width: float, across: float, bead_length: float, side: float) -> float:
    """How far a net is opened whose width lies along its meshes."""
    return sqrt(most(0, 1 - _wide(width, across, bead_length, side) ** 2))


_HALF_ACROSS = _mesh("half mesh", nets.across_mesh)
_HALF_ALONG = _mesh("half mesh", nets.along_mesh)
_POINTS = {
    "ring": count("half meshes around", lambda part: 2 * making.around_of(part)),
    "bead_outside": making.bead("outside"),
}


def _around(outside: float, bead_outside: float, ring: float, side: float) -> float:
    """How far a net in the round is opened, from its outside: `tubular_peyote.outside` undone."""
    return (outside - bead_outside) * tan(pi / ring) / side


def _round(what: str, function: Callable[..., float], pitch: Formula = _HALF_ACROSS) -> Formula:
    """A size of the tube: half meshes lie along the sides of a polygon, as beads of peyote do."""
    return measurable(what, formula(what, "mm", function, _POINTS, pitch=pitch, source=GEOMETRY))


#: how wide the hand would lay it that closes over a core: whether its points are too few, or many
_FREE = formula(
    "half mesh",
    "mm",
    nets.across_mesh,
    side="side",
    opened=_laid(_LAID, "outside"),
    source=GEOMETRY,
)


def _face(part: Part) -> Face:
    return Face(flat.across_of(part), loop=loop_of(part))


def _front(part: Part) -> Face:
    return Face(making.around_of(part), loop=loop_of(part))


_NO_PRINT = (
    "no published figure: a net gives more than any other stitch, and its width and length are what"
    " the maker lays it to, so a swatch is worth more than this"
)
NETTING = Stitch(
    name="netting",
    makes=flat.BAND,
    columns="units",
    quantities=_flat(_LAID, _wide, _HALF_ACROSS, _HALF_ALONG),
    refuses=refuses,
    asides=_in_loops("rows", flat.across_of),
    held_against=_NO_PRINT,
    look=Weave(Pattern.LOOPS, _face, "rows", thread=Thread.SIDES),
)
VERTICAL = Stitch(
    name="vertical netting",
    makes=flat.BAND,
    columns="units",
    quantities={
        **_flat(_HUNG, _deep, _HALF_ALONG, _HALF_ACROSS),
        # a strand down and a strand up make a point
        "points": formula("points", "", lambda rows: rows / 2, rows="rows"),
    },
    refuses=refuses,
    asides=_in_loops("rows", flat.across_of),
    held_against=_NO_PRINT,
    look=Weave(Pattern.LOOPS, _face, "rows", thread=Thread.SIDES),
)
TUBULAR = Stitch(
    name="tubular netting",
    also_makes=("beaded bead",),
    columns="units",
    quantities={
        "side": _SIDE,
        "opened": _opened(_LAID, "outside", _around, **_POINTS),
        "outside": _round("outside", tubular_peyote.outside),
        "inside": written_or(
            _round("inside", tubular_peyote.inside, _FREE),
            _CORE,
            otherwise=_round("inside", tubular_peyote.inside),
        ),
        **making.growth(_HALF_ALONG),
        "beads": formula(
            "beads",
            "",
            nets.beads_around,
            rounds="rounds",
            points=count("points", making.around_of),
            loop=_BEAD["loop"],
            source="counted round by round",
        ),
        "mass": _mass,
        "thread": _thread(thread_turns.net_step_down, "rounds"),
    },
    refuses=refuses_around,
    asides={
        **_in_loops("rounds", making.around_of),
        "beads_over_ball": formula(
            "beads over a ball",
            "",
            nets.beads_over_ball,
            {**_BEAD, "points": count("points", making.around_of)},
            core="core",
            side="side",
            opened="opened",
            way="way",
            area="area",
            source=GEOMETRY,
        ),
    },
    held_against="ring to begin with, 10 points of loops of 3 -> 40 beads: `Net stitch` (amulet"
    " pouch, copy seen); no published outside",
    look=Weave(Pattern.LOOPS, _front, "rounds", is_round=True, thread=Thread.SIDES),
)
