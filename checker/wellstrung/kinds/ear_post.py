"""Ear post: goes through the ear; the earring hangs from its eye, or is glued to its pad."""

from __future__ import annotations

from wellstrung.derived.declared import constant, mass, size, wire, written_or
from wellstrung.kinds.plain import up_to_the_eye
from wellstrung.model.looks import Look
from wellstrung.model.parts import EyeField, Kind, Role, Traits
from wellstrung.model.sold import Sold
from wellstrung_schemas import fragment

EAR_POST = Kind(
    "ear post",
    fragment("ear post"),
    Role.EYED,
    eyes={"eye": EyeField(("eye",))},
    quantities={
        "wire": wire("wire"),
        "length": size("length", allowance="part length"),
        "pad": size("pad", allowance="part length"),
        "drop": size("drop", allowance="part length"),
        # from the post to where the earring bears in its eye
        "along": written_or(
            up_to_the_eye("drop"),
            ("eye",),
            otherwise=constant("along", 0.0, "mm", "its pad lies behind what it carries"),
        ),
        "mass": mass("mass"),
    },
    traits=Traits(in_ear=True, stays_in=True),
    look=Look("ear post", label=(("length", "long"),), hangs=True),
    sold=Sold("ear_wires", size_is={"": ("length",)}),
)
