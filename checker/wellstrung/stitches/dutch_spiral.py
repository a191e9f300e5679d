"""Dutch spiral: a strip of tubular peyote that winds, and a loose bridge of beads that closes it.

`beads` are those that a round adds in peyote, one for each stitch from the first edge of the strip
to the other; `outer` are the beads of the bridge, picked up at once in every round. The starting
ring has two of each but the first, and the bridge. All of it is geometry, worked out for this
project.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

from wellstrung.common.places import Place
from wellstrung.derived.declared import (
    GEOMETRY,
    formula,
    hand,
    measurable,
    product,
)
from wellstrung.formulas import thread as thread_paths
from wellstrung.formulas.arithmetic import pi
from wellstrung.model.beads import beads_named
from wellstrung.model.looks import Face, Pattern, Weave
from wellstrung.model.parts import Formula, Part, Stitch
from wellstrung.model.plan import Quantities
from wellstrung.quantity.arithmetic import derived
from wellstrung.quantity.value import Quantity
from wellstrung.stitches import making
from wellstrung.stitches.tubular_peyote import rise


def outside(strip: float, bridge: float, ridge: float, tension: float, hangs: float) -> float:
    """Outside diameter over its ridge, mm: the way round its strip and its bridge.

    `strip` is the length of the columns of peyote side by side, `bridge` of the beads of the
    bridge, `ridge` how thick the fattest bead is; `hangs` is how far the bridge is drawn in.
    Geometry, worked out for this project.

    >>> round(outside(strip=15.0, bridge=10.0, ridge=4.0, tension=1.05, hangs=0.9), 2)
    11.88
    """
    return (strip * tension + bridge * hangs) / pi + ridge


def thread_of_round(strip: float, outsides: float, bridge: float, step: float) -> float:
    """Thread for one round, mm: the strip as in peyote, the bridge strung once, a step to it.

    `strip` and `bridge` are lengths of the beads of one round, `outsides` how thick those of the
    strip are together; of how thick one of them is the `step` takes a fifth. Counted passes,
    walked through a model, +/- 12 %: the bridge takes no steps, so it is surer than peyote alone.

    >>> round(thread_of_round(strip=9.0, outsides=12.0, bridge=10.0, step=2.4), 2)
    34.36
    """
    return thread_paths.peyote(strip, outsides) + bridge + 0.2 * step


#: The pull on the thread, as in tubular peyote; how far the bridge hangs loose; how a strip whose
#: columns differ winds: no print of any of them.
_TENSION, _HANGS, _WINDS = (1.0, 1.05, 1.10), (0.75, 0.9, 1.0), (0.82, 0.92, 1.0)
_FEWEST = 3


def _strip(part: Part) -> dict[str, int]:
    return beads_named(part, "beads")


def _bridge(part: Part) -> dict[str, int]:
    return beads_named(part, "outer")


def each_round(part: Part) -> int:
    """How many beads a round adds, those of its bridge too."""
    return sum(_strip(part).values()) + sum(_bridge(part).values())


def refuses(part: Part) -> Iterator[tuple[str, Place]]:
    """A strip of three stitches or more, and a bridge; its beads count what is round it."""
    yield from making.lacking(part, "beads", "outer")
    counted = "a Dutch spiral is as wide as the beads that it lists"
    yield from making.unwanted(part, ("around", "each_round"), counted, "more `beads`")
    named = "a Dutch spiral has a bridge, and no core"
    yield from making.unwanted(part, ("core_bead", "core_at_start"), named, "`stitch: spiral rope`")
    yield from making.not_listed(part)
    stitches = sum(_strip(part).values())
    if part.has("beads") and stitches < _FEWEST:
        yield (
            f"`{part.name}` has {stitches} in a round beside its bridge, too few for a strip of"
            f" peyote: list {_FEWEST} or more, such as `beads: [sand, kelp, pebble]`",
            part.place_of("beads"),
        )


def _over(
    what: str, mix: Callable[[Part], dict[str, int]], size: str, *, columns: bool = False
) -> Formula:
    """A size summed over beads of a round; of `columns` of peyote two of each but the first."""

    def summed(part: Part, ask: Quantities) -> Quantity:
        beads = mix(part)
        each = 2 if columns else 1
        counts = tuple(n * each - (columns and not at) for at, n in enumerate(beads.values()))
        return derived(
            f"{part.name}.{what}",
            "mm",
            lambda **sizes: sum(n * one for n, one in zip(counts, sizes.values(), strict=True)),
            {f"bead{n}": ask.of(part.beads[name], size) for n, name in enumerate(beads, 1)},
            source="counting",
        )

    return summed


def _mean_outside(part: Part, ask: Quantities) -> Quantity:
    stitches = sum(_strip(part).values())
    return derived(
        f"{part.name}.bead of the strip",
        "mm",
        lambda outsides: outsides / stitches,
        outsides=_over("beads of the strip", _strip, "outside")(part, ask),
        source="mean by number",
    )


_tension = hand("thread tension", _TENSION, cure=making.swatch("weave"))
_RISE = product(
    "rise",
    "mm",
    formula(
        "rise of its strip",
        "mm",
        rise,
        bead_outside=_mean_outside,
        tension=_tension,
        source=GEOMETRY,
    ),
    hand(
        "how the strip winds",
        _WINDS,
        cure="weave ten rounds of {part}, measure, write `rounds: ...`",
    ),
)
_THREAD = formula(
    "thread",
    "mm",
    lambda rounds, strip, outsides, bridge, step, share: (
        rounds * thread_of_round(strip, outsides, bridge, step) * share
    ),
    rounds="rounds",
    strip=_over("strip of a round", _strip, "length"),
    outsides=_over("beads of the strip", _strip, "outside"),
    bridge=_over("bridge", _bridge, "length"),
    step=_mean_outside,
    share=making.thread_share(thread_paths.WALKED),
)

DUTCH = Stitch(
    name="Dutch spiral",
    quantities={
        "outside": measurable(
            "outside",
            formula(
                "outside",
                "mm",
                outside,
                strip=_over("columns of the strip", _strip, "length", columns=True),
                bridge=_over("bridge", _bridge, "length"),
                ridge=making.fattest,
                tension=_tension,
                hangs=hand("how far its bridge hangs", _HANGS, cure=making.swatch("weave")),
                source=GEOMETRY,
            ),
        ),
        **making.growth(_RISE),
        "beads": making.beads_by_round(each_round, "counting: the strip and the bridge"),
        "mass": making.mass,
        "thread": _THREAD,
    },
    refuses=refuses,
    held_against="no published figure of a size: print has rounds of five beads of five sizes and a"
    " bridge of seven (`Peyote stitch: Dutch spiral`, excerpt seen)",
    look=Weave(
        Pattern.COLUMNS,
        lambda part: Face(each_round(part)),
        "rounds",
        is_round=True,
        shifts=1,
    ),
)
