"""Rules of the family `fit`, and the circles in a circle that several of them pack."""

from collections.abc import Iterable

from wellstrung.formulas import circles
from wellstrung.rulebook import Ask, RingHolds
from wellstrung.rulebook.plan import Eyes
from wellstrung.rulebook.values import Quantity, derived

IN_A_CIRCLE = "circles in a circle, see `circles.py`"
#: beside the advice to take wider holes, for those who widen theirs: common practice, no source
REAM_WET = (
    "to widen a hole in pearl, shell or stone, ream it under water, because the dust harms the"
    " lungs and a dry bit cracks the bead"
)


def packed(name: str, sizes: Iterable[Quantity], source: str = IN_A_CIRCLE) -> Quantity:
    """The smallest round hole, mm, that takes round things side by side."""
    numbered = {f"circle{number}": size for number, size in enumerate(sizes, 1)}
    return derived(name, "mm", circles.side_by_side, numbered, source=source)


def bridged(eyes: Eyes) -> bool:
    """Whether a ring through the eye goes round a bridge, from the hole to the edge of the part."""
    return bool(eyes.path) and eyes.part.has(*eyes.path, "edge")


def held(join: RingHolds, ask: Ask, *, bridges: bool) -> list[Quantity]:
    """What lies side by side inside a ring, mm: the rope, walls of eyes or bridges, other rings."""
    rope = [ask.of(join.around, "outside")] if join.around else []
    walls = ["edge" if bridges and bridged(eyes) else "wire" for eyes in join.eyes]
    eyes = [ask.get(eyes.quantity(wall)) for eyes, wall in zip(join.eyes, walls, strict=True)]
    return [*rope, *eyes, *(ask.of(ring, "wire") for ring in join.rings)]
