"""What several kinds measure or are alike."""

from __future__ import annotations

from wellstrung.derived.declared import GEOMETRY, allowed, formula
from wellstrung.model.parts import Formula, Part, Traits
from wellstrung.model.plan import Quantities
from wellstrung.quantity.value import Quantity

#: what is woven at the bench
WOVEN = Traits(made_by="weave", bought=False)
#: why a ring's outside and inside differ as they do
TWO_WIRES = "outside = inside + 2 x wire, trade table `jump_rings`, several pages"


def end_wall(eye: str) -> Formula:
    """The end wall of an eye: as written, or the usual one, since nobody measures it to buy."""
    usual = allowed(
        f"{eye}.wall",
        0.9,
        "eye wall",
        f"wall of the eye of `{eye}`" if eye != "eye" else "wall of the eye",
        "measure the wall of the eye and write its `wire` in {part}",
    )

    def wall(part: Part, ask: Quantities) -> Quantity:
        written = part.has(*part.eye_path(eye), "wire")
        return ask.of(part, f"{eye}.wire") if written else usual(part, ask)

    return wall


def up_to_the_eye(what: str) -> Formula:
    """A length less the end wall of the eye, where ring or wire bears: geometry."""
    return formula(
        "along",
        "mm",
        lambda length, eye_wire: length - eye_wire,
        length=what,
        eye_wire=end_wall("eye"),
        source=GEOMETRY,
    )
