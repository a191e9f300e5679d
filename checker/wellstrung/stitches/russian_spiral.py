"""Russian spiral: a netted tube that winds, each stitch a few beads that differ in size.

The ring is `around` times the beads of one stitch. Each later stitch picks up as many, skips those
of the stitch before but one, and goes through that one; without a step up the rounds run on as a
spiral. The fattest bead of each stitch lies beside that of the stitch below, and makes a ridge. All
of it is geometry, worked out for this project.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

from wellstrung.common.places import Place
from wellstrung.derived.declared import FITTED, GEOMETRY, count, formula, hand, measurable
from wellstrung.formulas.arithmetic import most, pi
from wellstrung.formulas.thread import WALKED
from wellstrung.model.beads import beads_named
from wellstrung.model.looks import Face, Pattern, Weave
from wellstrung.model.parts import Formula, Part, Stitch
from wellstrung.model.plan import Quantities
from wellstrung.quantity.arithmetic import derived
from wellstrung.quantity.value import Quantity
from wellstrung.stitches import making


def outside(stitch: float, around: float, ridge: float, drawn: float = 1.0) -> float:
    """Outside diameter over its ridge, mm, of a tube whose ring is `around` stitches long.

    `stitch` is the length of one stitch's beads in a row, `ridge` how thick the fattest is, `drawn`
    how much of its ring the tube keeps, since its beads stand aslant. Geometry, worked out for this
    project.

    >>> round(outside(stitch=4.9, around=3, ridge=3.0, drawn=0.87), 2)
    7.07
    """
    return stitch * around * drawn / pi + ridge


def inside(stitch: float, around: float, ridge: float, drawn: float = 1.0) -> float:
    """The bore within its ridge, mm; 0 where its beads close it (geometry of this project).

    >>> round(inside(stitch=4.9, around=3, ridge=3.0, drawn=0.87), 2)
    1.07
    """
    return most(0, stitch * around * drawn / pi - ridge)


def rise(face: float, stitch: float, drawn: float, filled: float) -> float:
    """Length that one round adds, mm: as far as its beads cover the way round.

    `face` is what the beads of one stitch cover laid side by side, mm2, so that a round is never
    shorter than its beads have room for; `filled` is how far they stand over each other. Geometry,
    worked out for this project.

    >>> round(rise(face=12.1, stitch=4.9, drawn=0.87, filled=0.9), 2)
    2.55
    """
    return filled * face / (stitch * drawn)


def thread_per_bead(bead_length: float, bead_outside: float, loop: float) -> float:
    """Thread for one bead, mm: each stitch goes through its beads and one of those below.

    l (loop + 1) / loop + 0.6 d / loop, +/- 12 %: counted passes, walked through a model.

    >>> round(thread_per_bead(1.5, 2.0, 3), 2)
    2.4
    """
    return bead_length * (loop + 1) / loop + 0.6 * bead_outside / loop


#: How much of its ring the tube keeps, and how far its beads stand over each other: no print.
_DRAWN, _FILLED = (0.78, 0.87, 0.96), (0.82, 0.9, 0.98)
_FEWEST_AROUND, _FEWEST = 2, 3


def beads_of_stitch(part: Part) -> int:
    """How many beads one stitch picks up."""
    return sum(beads_named(part, "beads").values())


def refuses(part: Part) -> Iterator[tuple[str, Place]]:
    """Two stitches around or more, of three beads or more."""
    yield from making.counts_around(part, count=3)
    if part.has("each_round"):
        each = part.count("each_round")
        yield (
            f"`{part.name}` counts {each} beads a round, and a Russian spiral counts the stitches"
            f" around: write `around: {max(each // 3, _FEWEST_AROUND)}`",
            part.place_of("each_round"),
        )
    elif part.has("around") and part.count("around") < _FEWEST_AROUND:
        instead = making.so_many("around", _FEWEST_AROUND)
        yield making.too_few(part, "1 stitch", part.place_of("around"), instead, closes="tube")
    if part.has("beads") and beads_of_stitch(part) < _FEWEST:
        one = next(iter(beads_named(part, "beads")))
        yield (
            f"`{part.name}` has {beads_of_stitch(part)} in a stitch, and a Russian spiral picks up"
            f" three or more: write them in their order, such as `beads: [{one}, sand, sand]`",
            part.place_of("beads"),
        )


def _over_stitch(
    what: str, unit: str, each: Callable[[Part, Quantities, str], Quantity]
) -> Formula:
    """A sum over the beads of one stitch."""

    def summed(part: Part, ask: Quantities) -> Quantity:
        mix = beads_named(part, "beads")
        args = {f"bead{n}": each(part, ask, name) for n, name in enumerate(mix, 1)}
        counts = tuple(mix.values())
        return derived(
            f"{part.name}.{what}",
            unit,
            lambda **sizes: sum(n * size for n, size in zip(counts, sizes.values(), strict=True)),
            args,
            source="counting",
        )

    return summed


def _length_of(part: Part, ask: Quantities, name: str) -> Quantity:
    return ask.of(part.beads[name], "length")


def _face_of(part: Part, ask: Quantities, name: str) -> Quantity:
    bead = part.beads[name]
    return derived(
        f"{name}.face",
        "mm2",
        lambda length, outside: length * outside,
        length=ask.of(bead, "length"),
        outside=ask.of(bead, "outside"),
    )


_STITCH = _over_stitch("beads of a stitch", "mm", _length_of)
_drawn = hand("how far the tube is drawn in", _DRAWN, cure=making.swatch("weave"))


def _across(what: str, function: Callable[..., float]) -> Formula:
    size = formula(
        what,
        "mm",
        function,
        stitch=_STITCH,
        around=count("stitches around", making.around_of),
        ridge=making.fattest,
        drawn=_drawn,
        source=GEOMETRY,
    )
    return measurable(what, size)


_RISE = formula(
    "rise",
    "mm",
    rise,
    face=_over_stitch("face of a stitch", "mm2", _face_of),
    stitch=_STITCH,
    drawn=_drawn,
    filled=hand(
        "how close its rounds lie",
        _FILLED,
        source=f"what its beads cover, {FITTED}",
        cure="weave ten rounds of {part}, measure, write `rounds: ...`",
    ),
    source=GEOMETRY,
)


def _each_round(part: Part) -> int:
    return making.around_of(part) * beads_of_stitch(part)


RUSSIAN = Stitch(
    name="Russian spiral",
    quantities={
        "outside": _across("outside", outside),
        "inside": _across("inside", inside),
        **making.growth(_RISE),
        "beads": making.beads_by_round(_each_round, "counting: the beads of a stitch, all round"),
        "mass": making.mass,
        "thread": making.thread(thread_per_bead, share=WALKED, loop=beads_of_stitch),
    },
    refuses=refuses,
    held_against="no published figure of a size: print has three stitches of one 8/0 and two 11/0"
    " around (`Russian spiral stitch`, excerpt seen) and more for a wider rope",
    columns="units",
    look=Weave(
        Pattern.ROWS,
        lambda part: Face((_each_round(part) + 1) // 2),
        "rounds",
        is_round=True,
        shifts=1,
    ),
)
