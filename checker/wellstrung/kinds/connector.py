"""Connector: a rigid part with an eye at each end."""

from __future__ import annotations

from wellstrung.kinds.metal import stated_mass
from wellstrung.kinds.plain import size
from wellstrung.model.parts import EyeField, Kind, Part, Quantities, Role, Traits
from wellstrung.quantity.arithmetic import derived
from wellstrung.quantity.value import Quantity
from wellstrung_schemas import fragment


def _along(part: Part, ask: Quantities) -> Quantity:
    """Length less one eye wall at each end, where the rings bear."""
    return derived(
        f"{part.name}.along",
        "mm",
        lambda length, eye_wire: length - 2 * eye_wire,
        length=ask.of(part, "length"),
        eye_wire=ask.of(part, "eyes.wire"),
        source="geometry, worked out for this project",
    )


CONNECTOR = Kind(
    "connector",
    fragment("connector"),
    Role.EYED,
    eyes={"eyes": EyeField(("eyes",), several=True)},
    quantities={
        "length": size("length", "part length"),
        "width": size("width", "part length"),
        "along": _along,
        "mass": stated_mass,
    },
    traits=Traits(stiff="length"),
)
