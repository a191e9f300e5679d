"""Spiral rope: a core of beads, and at each stitch a loop of outer beads that lies round it.

The first stitch strings a few core beads and a loop; each later one adds a core bead and a loop.
The float functions are counting and geometry worked out for this project.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

from wellstrung.common.places import Place
from wellstrung.derived.declared import (
    GEOMETRY,
    count,
    formula,
    hand,
    mass,
    measurable,
    product,
    total,
    written_or,
)
from wellstrung.formulas import thread as thread_paths
from wellstrung.formulas.arithmetic import most
from wellstrung.model.beads import beads_named
from wellstrung.model.item import Bead
from wellstrung.model.looks import Face, Pattern, Weave
from wellstrung.model.parts import Formula, Part, Stitch
from wellstrung.model.plan import Quantities
from wellstrung.quantity.arithmetic import derived
from wellstrung.quantity.value import Quantity
from wellstrung.stitches import making


def outside(core_outside: float, outer_outside: float, lie: float = 1.0) -> float:
    """Outside diameter, mm: the core, and the fattest outer bead on either side of it.

    `lie` is how close the loops lie, 12 % either way. Geometry, worked out for this project.

    >>> round(outside(2.1, 2.1), 2)
    6.3
    """
    return lie * (core_outside + 2 * outer_outside)


def core_beads(stitches: float, at_start: float) -> float:
    """Core beads of a rope: those of the first stitch, then one a stitch (counting).

    >>> core_beads(stitches=16, at_start=4)
    19
    """
    return at_start + stitches - 1


def stitches_for(length: float, rise: float, at_start: float) -> float:
    """Stitches for a length, mm; no fewer than the first one, whose core may be longer.

    Counting.

    >>> stitches_for(length=28.5, rise=1.5, at_start=4)
    16.0
    """
    return most(1, length / rise - at_start + 1)


def thread_for(
    stitches: float, at_start: float, core_length: float, core_outside: float, loop: float
) -> float:
    """Thread in the work, mm; `loop` is the length of the beads of one outer loop.

    `thread.spiral_rope` a stitch, and the first strings all core beads of the start. Counted
    passes and steps, walked through a model, +/- 12 %.

    >>> thread_for(stitches=2, at_start=4, core_length=1.5, core_outside=2.0, loop=6.5)
    36.5
    """
    each = thread_paths.spiral_rope(core_length, core_outside, at_start, loop)
    return stitches * each + (at_start - 1) * core_length


#: Core beads of the first stitch where the plan does not say: common practice, no source.
_AT_START = 4
#: How close the loops lie on the core: 12 % either way, no print of a diameter.
_LIE = (0.88, 1.0, 1.12)
#: A core bead takes more than its length, for a loop comes out between each two: 16 stitches of
#: 11/0 print as a touch over 1 in.
_SITS = (1.0, 1.05, 1.1)


def refuses(part: Part) -> Iterator[tuple[str, Place]]:
    """A core bead and a loop of two or more; what other ropes count by has no place here."""
    yield from making.lacking(part, "core_bead", "outer")
    counted = "a spiral rope is counted by its core"
    named = "a spiral rope names its `core_bead` and its `outer`"
    yield from making.unwanted(part, ("around", "each_round"), counted, "another stitch")
    yield from making.unwanted(part, ("beads",), named, "another stitch")
    yield from making.not_listed(part)
    if part.has("core") and part.text("core") != "no":
        filled = "a spiral rope is filled by the beads of its core"
        yield from making.unwanted(part, ("core",), filled, "`core_bead`, the bead of its core")
    if part.has("outer") and in_loop(part) < 2:
        yield (
            f"`{part.name}` has one bead in its outer loop, which would lie flat on the core: write"
            " two or more, such as `outer: [sand, sand, sand]`",
            part.place_of("outer"),
        )


def in_loop(part: Part) -> int:
    """Beads of one outer loop."""
    return sum(beads_named(part, "outer").values())


def _core(part: Part) -> Bead:
    return part.beads[part.text("core_bead")]


def _outer(part: Part) -> list[tuple[Bead, int]]:
    return [(part.beads[name], n) for name, n in beads_named(part, "outer").items()]


def core_bead(what: str) -> Formula:
    """A size of the bead of the core."""
    return lambda part, ask: ask.of(_core(part), what)


def fattest_outer(part: Part, ask: Quantities) -> Quantity:
    """How thick the fattest bead of an outer loop is."""
    sizes = [ask.of(item, "outside") for item, _ in _outer(part)]
    return max(sizes, key=lambda size: size.middle)


def at_start(part: Part) -> int:
    """Core beads of the first stitch."""
    return part.count("core_at_start", default=_AT_START)


START = count("core at start", at_start)
SIT = hand(
    "how close the core beads sit",
    _SITS,
    source="16 stitches of 11/0 a touch over 1 in, trade table `stitch_facts`",
    cure="weave ten stitches of {part}, measure, write `rounds: ...`",
)
_STITCHES = formula(
    "rounds",
    "",
    stitches_for,
    length="length",
    rise="rise",
    at_start=START,
    source="counting: the first stitch has several core beads, each later one adds one",
)
_LENGTH = product("length", "mm", "core_beads", "rise")


def thread(path: Callable[..., float], share: float) -> Formula:
    """Thread in the work, mm, by a path of stitches, core and loop; `share` off by the hand."""
    return formula(
        "thread",
        "mm",
        lambda stitches, at_start, core_length, core_outside, loop, share: (
            path(stitches, at_start, core_length, core_outside, loop) * share
        ),
        stitches="rounds",
        at_start=START,
        core_length=core_bead("length"),
        core_outside=core_bead("outside"),
        loop=loop,
        share=making.thread_share(share),
    )


def _mass(part: Part, ask: Quantities) -> Quantity:
    """Mass of core and loops, g; thread is left out (under 2 %)."""
    outer, each = ask.of(part, "outer_beads"), in_loop(part)
    loops = [(item, outer, n / each) for item, n in _outer(part)]
    return making.weighed(part, ask, [(_core(part), ask.of(part, "core_beads"), 1.0), *loops])


def loop(part: Part, ask: Quantities) -> Quantity:
    """Length of the beads of one outer loop."""
    outer = _outer(part)
    args = {f"bead{n}": ask.of(item, "length") for n, (item, _) in enumerate(outer, 1)}
    counts = tuple(count for _, count in outer)
    return derived(
        f"{part.name}.loop",
        "mm",
        lambda **beads: sum(n * bead for n, bead in zip(counts, beads.values(), strict=True)),
        args,
        source="counting",
    )


def _face(part: Part) -> Face:
    """All of it: a loop a round, along the core beads of the first stitch."""
    return Face(1, loop=in_loop(part), core=at_start(part))


SPIRAL = Stitch(
    name="spiral rope",
    quantities={
        "outside": measurable(
            "outside",
            formula(
                "outside",
                "mm",
                outside,
                core_outside=core_bead("outside"),
                outer_outside=fattest_outer,
                lie=hand("how close the loops lie", _LIE, cure=making.swatch("weave")),
                source=GEOMETRY,
            ),
        ),
        "rise": product("rise", "mm", core_bead("length"), SIT, source=GEOMETRY),
        "length": written_or(making.WOVEN_LENGTH, ("length",), otherwise=_LENGTH),
        "rounds": making.rounds_or(_STITCHES),
        "core_beads": formula(
            "core beads", "", core_beads, stitches="rounds", at_start=START, source="counting"
        ),
        "outer_beads": product(
            "outer beads", "", "rounds", count("beads in a loop", in_loop), source="counting"
        ),
        "beads": total("beads", "", "core_beads", "outer_beads"),
        "mass": written_or(mass("mass"), ("measured", "mass"), otherwise=_mass),
        "thread": thread(thread_for, thread_paths.WALKED),
    },
    refuses=refuses,
    held_against="16 stitches of 11/0 are a touch over 1 in: `Estimating and adjusting part 2`,"
    " copy seen; 16 core beads give 24.4 mm, with those of the start 29; of the outside no"
    " published figure",
    cored=True,
    passes=4,  # print asks for a core hole that takes four: trade table `stitch_facts`
    look=Weave(Pattern.COILS, _face, "rounds"),
)
