"""Ear wire or post: goes through the ear, and the earring hangs from its eye."""

from __future__ import annotations

from wellstrung.derived.declared import GEOMETRY, count, formula, mass, size, wire, written_or
from wellstrung.formulas.arithmetic import atan, pi
from wellstrung.kinds.plain import up_to_the_eye
from wellstrung.kinds.wire_link import beads_on
from wellstrung.model.looks import Look
from wellstrung.model.parts import EyeField, Kind, Part, Role, Traits
from wellstrung.model.plan import Quantities
from wellstrung.model.sold import Sold
from wellstrung.quantity.arithmetic import leaf
from wellstrung.quantity.causes import Cause, Spread
from wellstrung.quantity.value import Quantity
from wellstrung.stitches import making
from wellstrung_schemas import fragment


def round_hoop(
    beads: float, length: float, outside: float, across: float, wire: float, square: float
) -> float:
    """How far round a hoop its beads reach, mm along its wire.

    Geometry, worked out for this project; no published figure. Beads with square ends (`square` 1)
    meet at their inner edges, and each lies against the circle through these; balls (`square` 0)
    meet at the wire.

    >>> round(round_hoop(beads=20, length=4, outside=4, across=40, wire=0.8, square=1), 1)
    88.7
    >>> round(round_hoop(beads=20, length=4, outside=4, across=40, wire=0.8, square=0), 1)
    79.7
    """
    middle = (across - wire) / 2
    return beads * 2 * atan(length / 2 / (middle - square * outside / 2)) * middle


def _square(part: Part, ask: Quantities) -> Quantity:
    """How square the ends of beads are: no plan says whether they are nearer to balls or tubes."""
    cure = "slide the beads on the hoop, and look how far they reach"
    shape = Cause("the shape of the beads", f"`{part.name}`", cure)
    return leaf("square ends", 0.5, "", [Spread(shape, 0.5, 0.5)])


def _mass(part: Part, ask: Quantities) -> Quantity:
    """The bare hoop as shops sell it, and its beads."""
    bare = mass("mass")(part, ask)
    return bare + making.mass(part, ask) if part.has("beads") else bare


EAR_WIRE = Kind(
    "ear wire",
    fragment("ear wire"),
    Role.EYED,
    eyes={"eye": EyeField(("eye",))},
    quantities={
        "wire": wire("wire"),
        "length": size("length", allowance="part length"),
        "along": up_to_the_eye("length"),  # from where it bears in the ear
        "beads": count("beads", beads_on),
        "stack": formula(
            "stack",
            "mm",
            round_hoop,
            beads=count("beads", beads_on),
            length=making.bead("length"),
            outside=making.fattest,
            across="length",
            wire="wire",
            square=_square,
            source=GEOMETRY,
        ),
        "round": formula(
            "round",
            "mm",
            lambda across, wire: pi * (across - wire),
            across="length",
            wire="wire",
            source=GEOMETRY,
        ),
        "mass": written_or(mass("mass"), ("mass",), otherwise=_mass),
    },
    traits=Traits(in_ear=True),
    types={
        "post": Traits(in_ear=True, stays_in=True),
        "hoop": Traits(in_ear=True, hoop="length"),
        "clip-on": Traits(),
    },
    look=Look(
        "ear hook",
        types={"hoop": "ear hoop", "post": "ear post", "clip-on": "ear post"},
        label=(("length", "long"),),
        hangs=True,
    ),
    sold=Sold("ear_wires", size_is={"": ("length",)}),
)
