"""What the band that a bezel's rounds grow from adds: its beads, thread and height."""

from __future__ import annotations

from wellstrung.derived.bead_sizes import mean_size
from wellstrung.derived.declared import GEOMETRY, hand
from wellstrung.formulas.base_bands import BASE_BANDS, BaseBand
from wellstrung.formulas.thread import PATH_SHARE
from wellstrung.model.beads import beads_named
from wellstrung.model.parts import Part
from wellstrung.model.plan import Quantities
from wellstrung.quantity.arithmetic import derived, exact
from wellstrung.quantity.value import Quantity

#: how far the hand may be off the thread path of what is added
SHARE = hand(
    "thread path of what is added",
    (1 - PATH_SHARE, 1.0, 1 + PATH_SHARE),
    source="counted passes, worked out for this project, ± 20 %",
    cure="note the thread that 5 cm of {part} takes",
)


def mean_of(part: Part, what: str, ask: Quantities, *path: str) -> Quantity:
    """The mean size of the beads of a field, by their number."""
    if not (mix := beads_named(part, *path)):
        raise part.missing(*path)
    return mean_size(part, what, mix, ask, of=path[0])


def counted(what: str, of: int) -> Quantity:
    """A count of what is added."""
    return exact(what, of, source="counting")


def _band(part: Part) -> BaseBand:
    """The band that its rounds grow from, by its stitch."""
    return BASE_BANDS[part.text("base", "stitch")]


def base_column(part: Part, ask: Quantities) -> Quantity:
    """How much of its ring a bead of two rounds takes up on its base, mm."""
    column, sizes = _band(part).column
    called = f"{part.name}.column of its base"
    return derived(called, "mm", column, _base_sizes(part, ask, sizes), source=GEOMETRY)


def _base_sizes(part: Part, ask: Quantities, sizes: tuple[str, ...]) -> dict[str, Quantity]:
    return {size: mean_of(part, size, ask, "base", "beads") for size in sizes}


def _counts(part: Part) -> dict[str, Quantity]:
    """Beads round the ring, and how many rows of its base."""
    rows = counted("rows of its base", part.count("base", "rows", default=1))
    return {"around": counted("around", part.count("around")), "rows": rows}


def base_thick(part: Part, ask: Quantities) -> Quantity:
    """How thick its base is: its fattest bead."""
    names = beads_named(part, "base", "beads")
    return max((ask.of(part.beads[name], "outside") for name in names), key=lambda one: one.middle)


def base_beads(part: Part, ask: Quantities) -> Quantity:
    """Beads of its base."""
    return derived(
        f"{part.name}.beads of its base",
        "",
        _band(part).beads,
        _counts(part),
        source="counting",
    )


def base_length(part: Part, ask: Quantities) -> Quantity:
    """How much higher its base makes it, mm."""
    return derived(
        f"{part.name}.height of its base",
        "mm",
        _band(part).tall,
        _base_sizes(part, ask, ("length", "outside")),
        rows=_counts(part)["rows"],
        source=GEOMETRY,
    )


def base_thread(part: Part, ask: Quantities) -> Quantity:
    """Thread in its base, mm."""
    each = _band(part).thread
    return derived(
        f"{part.name}.thread of its base",
        "mm",
        lambda length, outside, around, rows, share: around * each(length, outside, rows) * share,
        {**_base_sizes(part, ask, ("length", "outside")), **_counts(part)},
        share=SHARE(part, ask),
        source="counted passes, worked out for this project",
    )
