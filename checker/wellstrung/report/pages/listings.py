"""What a page lists of one plan: sizes as drawn, passed checks, cautions, how long glue cures."""

from __future__ import annotations

from collections import defaultdict
from string import ascii_lowercase

from msgspec import Struct

from wellstrung.judging.result import HeldCheck, PlanResult
from wellstrung.model.parts import Part, Role
from wellstrung.quantity.value import Quantity

#: sizes that a table of parts lists, in this order, by the quantity's name
_SIZES = (
    "outside", "width", "inside", "length", "height", "thickness", "bore", "depth", "wire",
    "ring.inside", "bar.length", "first link.hole", "eye.hole", "top_eyes.hole",
    "bottom_eyes.hole",
)  # fmt: skip


class Sizes(Struct, frozen=True):
    """A part with its sizes: each in words, with the quantity's name, and the quantity."""

    part: str
    kind: str
    sizes: tuple[tuple[str, str, Quantity], ...]


def written(result: PlanResult, field: str) -> str:
    """A field at the top of a plan, as written; empty where it is not."""
    node = result.ask.plan.written(field) if result.ask is not None else None
    return str(node.value) if node is not None else ""


def sizes(result: PlanResult) -> list[Sizes]:
    """Every part that has some of the sizes that drawings use."""
    if result.ask is None:
        return []
    every = (Sizes(p.name, p.noun, _of(p, result)) for p in result.ask.plan.parts.values())
    return [one for one in every if one.sizes]


def _of(part: Part, result: PlanResult) -> tuple[tuple[str, str, Quantity], ...]:
    """The sizes of a part; the `outside` of a band is what it stands off the body."""
    names = [what for what in _SIZES if what != "outside" or part.kind.role is not Role.BAND]
    return tuple(
        (what.replace("_", " ").replace(".", " "), name, result.quantities[name])
        for what, name in ((what, f"{part.name}.{what}") for what in names)
        if name in result.quantities
    )


def passed(result: PlanResult) -> dict[str, list[HeldCheck]]:
    """The checks that passed, by rule."""
    found = defaultdict(list)
    for check in result.held:
        found[check.rule].append(check)
    return dict(found)


class Care(Struct, frozen=True):
    """A safety text: its letter, what it is about, and the steps that it is for."""

    letter: str
    name: str
    says: str
    steps: tuple[int, ...] = ()


def cautions(result: PlanResult) -> list[Care]:
    """Every safety text of a plan once; those of a step have a small letter, which it names."""
    letters = iter(ascii_lowercase)
    return [
        Care(next(letters, "…") if one.steps else "", one.fault, one.says, one.steps)
        for one in {one.says: one for one in result.cautions}.values()
    ]


def cures(result: PlanResult) -> list[tuple[str, Quantity]]:
    """Every adhesive of a plan with the time of its full cure, where that is known."""
    if result.ask is None:
        return []
    glues = (part for part in result.ask.plan.parts.values() if part.kind.role is Role.GLUE)
    times = ((glue.name, result.quantities.get(f"{glue.name}.full_cure")) for glue in glues)
    return [(name, time) for name, time in times if time is not None]
