"""The sizes of an eye, as the plan states them: hole, wire, how thick it is to go through."""

from __future__ import annotations

from collections.abc import Callable

from wellstrung.model.parts import Part
from wellstrung.quantity.value import Quantity


def _eye_hole(part: Part, eye: str) -> Quantity:
    return part.size(*part.eye_path(eye), "hole", allowance="eye size")


def _eye_wire(part: Part, eye: str) -> Quantity:
    return part.wire(*part.eye_path(eye), "wire")


def _eye_through(part: Part, eye: str) -> Quantity:
    """How thick the eye is to go through: of round wire, as thick as the wire."""
    path = part.eye_path(eye)
    return part.wire(*path, "through") if part.has(*path, "through") else _eye_wire(part, eye)


def _eye_edge(part: Part, eye: str) -> Quantity:
    return part.size(*part.eye_path(eye), "edge", allowance="eye size")


def _eye_spacing(part: Part, eye: str) -> Quantity:
    return part.size(*part.eye_path(eye), "spacing", allowance="eye size")


OF_EYE: dict[str, Callable[[Part, str], Quantity]] = {
    "hole": _eye_hole,
    "wire": _eye_wire,
    "through": _eye_through,
    "edge": _eye_edge,
    "spacing": _eye_spacing,
}
