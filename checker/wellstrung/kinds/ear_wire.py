"""Ear wire or post: goes through the ear, and the earring hangs from its eye."""

from __future__ import annotations

from wellstrung.derived.declared import mass, size, wire
from wellstrung.kinds.plain import up_to_the_eye
from wellstrung.model.looks import Look
from wellstrung.model.parts import EyeField, Kind, Role, Traits
from wellstrung.model.sold import Sold
from wellstrung_schemas import fragment

EAR_WIRE = Kind(
    "ear wire",
    fragment("ear wire"),
    Role.EYED,
    eyes={"eye": EyeField(("eye",))},
    quantities={
        "wire": wire("wire"),
        "length": size("length", allowance="part length"),
        "along": up_to_the_eye("length"),  # from where it bears in the ear
        "mass": mass("mass"),
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
