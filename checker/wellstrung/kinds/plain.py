"""Sizes that a part simply states."""

from __future__ import annotations

from collections.abc import Callable

from wellstrung.derive import Quantities
from wellstrung.model import Part
from wellstrung.quantity import Quantity


def size(what: str, allowance: str = "") -> Callable[[Part, Quantities], Quantity]:
    """A length as the plan measures or states it, off its nominal by a bench allowance."""

    def stated(part: Part, ask: Quantities) -> Quantity:
        return part.length(what, allowance=allowance)

    return stated
