"""What several kinds measure or are alike."""

from __future__ import annotations

from wellstrung.derived.declared import GEOMETRY, formula
from wellstrung.model.parts import Formula, Traits

#: what is woven at the bench
WOVEN = Traits(made_by="weave", bought=False)
#: why a ring's outside and inside differ as they do
TWO_WIRES = "outside = inside + 2 x wire, trade table `jump_rings`, several pages"


def up_to_the_eye(what: str) -> Formula:
    """A length less the end wall of the eye, where ring or wire bears: geometry."""
    return formula(
        "along",
        "mm",
        lambda length, eye_wire: length - eye_wire,
        length=what,
        eye_wire="eye.wire",
        source=GEOMETRY,
    )
