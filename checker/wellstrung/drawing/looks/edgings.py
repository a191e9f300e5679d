"""What lies on woven work and along its edges: a second layer of beads, and picots."""

from __future__ import annotations

import math
from collections.abc import Iterator

from wellstrung.drawing.looks.faces import Cloth
from wellstrung.drawing.looks.laid import Laid
from wellstrung.drawing.looks.sizes import Sizes
from wellstrung.model.beads import beads_named
from wellstrung.model.edging import edges_of
from wellstrung.model.parts import Part

#: on which side each long edge of a band lies, as it lies in the run
_SIDES = {"top edge": -1, "bottom edge": 1}


def _named(part: Part, field: str) -> list[str]:
    """The beads of one picot, or of one place of a layer, in their order."""
    mix = beads_named(part, field, "beads").items()
    return (
        list(part.texts(field, "beads"))
        if _listed(part, field)
        else [name for name, count in mix for _ in range(count)]
    )


def _listed(part: Part, field: str) -> bool:
    node = part.node_at(field, "beads")
    return node is not None and isinstance(node.value, list)


def added(
    sizes: Sizes, part: Part, cloth: Cloth, beads: list[tuple[Laid, str]], start: float
) -> Iterator[tuple[Laid, str]]:
    """The beads of a layer over those drawn, then those of picots along the long edges."""
    if part.has("layer"):
        names, every = _named(part, "layer"), part.count("layer", "every", default=1)
        for one, _ in beads[::every]:
            for number, name in enumerate(names):
                length, outside = sizes.bead(name)
                along = one.along + (number - (len(names) - 1) / 2) * length
                yield Laid(along, one.across, length, outside, 0.0, 1.0), name
    if part.has("edging"):
        yield from _picots(sizes, part, cloth, start)


def _picots(sizes: Sizes, part: Part, cloth: Cloth, start: float) -> Iterator[tuple[Laid, str]]:
    names, half = _named(part, "edging"), cloth.width / 2
    sides = [_SIDES[edge] for edge in edges_of(part) if edge in _SIDES]
    each = sizes.known(part, "edging.picots", 0.0) / max(len(edges_of(part)), 1)
    tall = sizes.known(part, "edging.height", 0.0)
    count = round(each)
    gap = cloth.length / count if count > 0 else 0.0
    for number in range(count):
        middle = (number + 0.5) * gap - start
        for side in sides:
            for place, name in enumerate(names):
                length, outside = sizes.bead(name)
                # half a round from one bead of the edge to the next
                turn = math.pi * (place + 0.5) / len(names)
                along = middle - math.cos(turn) * min(gap, 2 * length) / 2
                out = (tall - outside / 2) * math.sin(turn) if len(names) > 1 else outside / 2
                top = len(names) % 2 and place == len(names) // 2
                lies = 0.0 if top else math.pi / 2
                yield Laid(along, side * (half + out), length, outside, lies), name
