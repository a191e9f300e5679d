"""How rings and eyes are opened and closed, in sentences for a student."""

from __future__ import annotations

from wellstrung.model.parts import Part, Role
from wellstrung.subjects.base import Eyes

#: how a split ring is put on, and how a ring or an eye is opened: common practice, no source
_COILED = "apart with split-ring pliers or a fingernail"
_ROUND = "until what it carries hangs in both coils"
_SIDEWAYS = "turn one end away from you and the other towards you, and never pull them apart"
_SHUT = "until the ends touch without a gap"


def opening(what: str, opened: Part | Eyes) -> str:
    """How a ring or an eye is opened, as a sentence."""
    if _coiled(opened):
        return f"Hold the coils of {what} {_COILED}"
    return f"Open {what} sideways: {_SIDEWAYS}"


def shutting(what: str, opened: Part | Eyes) -> str:
    """How it is closed again."""
    if _coiled(opened):
        return f"Turn {what} {_ROUND}"
    return f"Close {what} the same way, {_SHUT}"


def _coiled(opened: Part | Eyes) -> bool:
    """Whether it is a split ring, whose two coils lie on each other: it opens but does not gape."""
    return isinstance(opened, Part) and opened.kind.role is Role.RING and not opened.traits.gapes
