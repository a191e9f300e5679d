"""What lies on the table for each step of the work, by its verb."""

from __future__ import annotations

from collections.abc import Mapping

from wellstrung.model.parts import Role
from wellstrung.model.plan import Step

_PLIERS, _CUTTERS, _GLASSES = "two pairs of flat pliers", "flush cutters", "safety glasses"
#: what lies on the table for a step, by its verb: common practice, no source
TOOLS: Mapping[str, tuple[str, ...]] = {
    "weave": ("bead mat", "scissors"),
    "string": ("bead board or towel", "scissors or cutters for the line"),
    "finish thread": ("fine needle", "scissors"),
    "glue": ("gloves", "stick and card to stir on", "stand to let it lie in"),
    "wait": (),
    "slide": (),
    "close ring": (_PLIERS,),
    "hang": (),
    "cut": (_CUTTERS, _GLASSES),
    "measure": ("calipers", "ruler"),
    "pack": (),
    "take apart": ("bead board", "scissors"),
    "clean": ("soft cloths", "water"),
    "wear": (),
    "sew": ("scissors",),
    "edge": ("bead mat", "scissors"),
    "knot": ("knotting tweezers or awl",),
    "crimp": ("crimping pliers", _CUTTERS, _GLASSES),
    "wrap loop": ("round pliers", _PLIERS, _CUTTERS, _GLASSES),
}
#: memory wire is cut by what is made for it alone: common practice, several pages seen
_SHEARS = "memory wire shears (hard-wire cutters)"
_ON_MEMORY_WIRE: Mapping[str, tuple[str, ...]] = {
    "string": ("bead mat", _SHEARS, _GLASSES),
    "wrap loop": ("strong round pliers", "flat pliers", _SHEARS, "fine file", _GLASSES),
    "take apart": ("bead board", _SHEARS, _GLASSES),
}
_TIP = ("knotting tweezers or awl", "chain-nose pliers", "round-nose pliers", "scissors")


def tools(step: Step) -> tuple[str, ...]:
    """What lies on the table for a step: by its verb, and by what it closes."""
    part = step.parts.get("part")
    if part is None:
        return TOOLS[step.verb]
    if part.thread.springs and step.verb in _ON_MEMORY_WIRE:
        return _ON_MEMORY_WIRE[step.verb]
    if part.traits.of_rings and step.verb == part.traits.made_by:
        return (_PLIERS,)
    if step.verb == "crimp" and part.kind.role is not Role.CRIMP:
        if part.kind.role is not Role.TIP:
            return ("flat pliers",)
        return TOOLS["crimp"] if part.part("covers") is not None else _TIP
    return TOOLS[step.verb]
