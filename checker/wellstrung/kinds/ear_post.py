"""Ear post: goes through the ear; the earring hangs from its eye, or is glued to its pad."""

from __future__ import annotations

from wellstrung.derived.declared import constant, mass, size, wire
from wellstrung.kinds.plain import up_to_the_eye
from wellstrung.model.looks import Look
from wellstrung.model.parts import EyeField, Kind, Part, Role, Traits
from wellstrung.model.plan import Quantities
from wellstrung.model.sold import Sold
from wellstrung.quantity.value import Quantity
from wellstrung_schemas import fragment

_TO_EYE = up_to_the_eye("drop")
_BEHIND = constant("along", 0.0, "mm", "its pad lies behind what it carries")


def _along(part: Part, ask: Quantities) -> Quantity:
    """From the post to where the earring bears in its eye; none where it has but a pad."""
    looped = part.text("type") == "loop" if part.has("type") else part.has("eye")
    return (_TO_EYE if looped else _BEHIND)(part, ask)


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
        "along": _along,
        "mass": mass("mass"),
    },
    traits=Traits(in_ear=True, stays_in=True),
    look=Look("ear post", label=(("length", "long"),), hangs=True),
    sold=Sold("ear_wires", {"loop": "ear post with loop"}, size_is={"": ("length",)}),
)
