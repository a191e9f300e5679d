"""Sizes that a part simply states."""

from __future__ import annotations

from collections.abc import Callable

from wellstrung.model.parts import Part, Quantities, Traits
from wellstrung.quantity.arithmetic import derived
from wellstrung.quantity.value import Quantity

#: what is woven at the bench
WOVEN = Traits(made_by="weave", bought=False)


def size(what: str, allowance: str = "") -> Callable[[Part, Quantities], Quantity]:
    """A length as the plan measures or states it, off its nominal by a bench allowance."""

    def stated(part: Part, ask: Quantities) -> Quantity:
        return part.length(what, allowance=allowance)

    return stated


def up_to_the_eye(what: str) -> Callable[[Part, Quantities], Quantity]:
    """A length less the end wall of the eye, where ring or wire bears: geometry."""

    def along(part: Part, ask: Quantities) -> Quantity:
        return derived(
            f"{part.name}.along",
            "mm",
            lambda length, eye_wire: length - eye_wire,
            length=ask.of(part, what),
            eye_wire=ask.of(part, "eye.wire"),
            source="geometry, worked out for this project",
        )

    return along
