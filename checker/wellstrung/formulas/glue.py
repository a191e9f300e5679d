"""Glued joints: the gap, how much glue to mix, how many joints a mix reaches, cure in the cold.

Sizes in mm, volumes in mm3 (a thousand are a millilitre), times in minutes, temperatures in °C.
The limits of an adhesive are cells of the trade table `adhesives` and come in as arguments.
"""

from __future__ import annotations

import math

from wellstrung.formulas.arithmetic import most, pi, require

#: Where cure times are stated, and how much warmer halves them: epoxy makers' pages, copies seen.
STATED_AT, DEGREES_TO_DOUBLE = 25.0, 10.0
#: Where the doubling holds: about 30 to 120 °F (the same pages), -1 to 49 °C, in round figures.
COLDEST, WARMEST = 0.0, 50.0
#: Share of a small mix that stays on card and stick. Common practice, no source.
LEFT_BEHIND = 0.5


def gap(bore: float, end: float) -> float:
    """Thickness of the bond line all round an end that stands in the middle of a bore.

    Half the difference of the diameters; negative where the end is pressed in. Geometry.

    >>> round(gap(bore=8.0, end=7.8), 6)
    0.1
    """
    return (bore - end) / 2


def joint_volume(bore: float, end: float, depth: float, fill: float = 0.0) -> float:
    """Glue that an end in a bore holds, mm3: a sleeve `depth` long and a disc `fill` thick.

    pi / 4 x (bore^2 - end^2) x depth + pi / 4 x bore^2 x fill; the disc lies between the end and
    the floor of the cap. An end that is pressed in holds no sleeve. The end counts as solid: a
    hollow or open one soaks up more. Geometry.

    >>> round(joint_volume(bore=8.0, end=7.8, depth=6.0, fill=0.5), 1)
    40.0
    """
    sleeve = most(0, bore**2 - end**2) * depth
    return pi / 4 * (sleeve + bore**2 * fill)


def to_mix(volume: float, left_behind: float = LEFT_BEHIND) -> float:
    """Glue to mix so that `volume` gets into the joints: volume / (1 - share left behind).

    ValueError where the share leaves nothing, or is negative.

    Counting; the share left behind is the bench's own.

    >>> to_mix(40.0, left_behind=0.2)
    50.0
    """
    within = (left_behind >= 0) & (left_behind < 1)
    require(within, "the share left behind is from 0 to below 1, not {:g}", left_behind)
    return volume / (1 - left_behind)


def joints_in_a_mix(usable: float, each: float, mixing: float = 0.0) -> int:
    """Joints that one mix reaches before it thickens: (usable - mixing) / each, rounded down.

    Usable time runs from when the parts meet, so stirring uses some of it (common practice, no
    source; 1 to 2 min of stirring: a university shop procedure, copy seen). 0 where not even one
    joint can be done in time.

    >>> joints_in_a_mix(usable=5, each=1, mixing=1.5)
    3
    """
    if not each > 0:
        raise ValueError(f"a joint takes some time, not {each:g} min")
    # a joint that ends with the very last of the usable time still counts
    return max(0, math.floor((usable - mixing) / each + 1e-9))


def cure_at(
    temperature: float,
    stated: float,
    *,
    stated_at: float = STATED_AT,
    degrees_to_double: float = DEGREES_TO_DOUBLE,
) -> float:
    """Time that takes `stated` minutes at `stated_at`, at another temperature.

    stated x 2^((stated_at - temperature) / 10): the rate doubles for each 10 °C (epoxy makers'
    pages, copies seen). It holds for gel, handling and full cure alike. ValueError outside 0 to 50
    °C, where nothing was published; in the cold many epoxies stall (trade table `adhesives`).

    >>> cure_at(15, 24 * 60) / 60
    48.0
    """
    _within_reach(temperature)
    return stated * 2 ** ((stated_at - temperature) / degrees_to_double)


def _within_reach(temperature: float) -> None:
    require(
        (temperature >= COLDEST) & (temperature <= WARMEST),
        "how glue cures at {:g} °C is not known here, only from {:g} to {:g} °C",
        temperature,
        COLDEST,
        WARMEST,
    )
