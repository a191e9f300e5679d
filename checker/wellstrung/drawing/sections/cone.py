"""The gathered ends of strands in the wide end of a cone, or in a cap that takes them all."""

from __future__ import annotations

from wellstrung.drawing import Figure
from wellstrung.drawing.sections import rounds
from wellstrung.drawing.sections.case import Case, mm, with_range
from wellstrung.drawing.sections.section import Section
from wellstrung.model.parts import Role
from wellstrung.rulebook import StrandsInCone


def draw(case: Case[StrandsInCone]) -> Figure:
    """The wide end from the front with the strands packed in it."""
    cone, strands = case.join.cone, case.join.strands
    hole = rounds.hole_of(case, cone, "bore")
    wide_by = ["width" if one.kind.role is Role.DROP else "outside" for one in strands]
    things = [
        rounds.thing_of(case, one, what, f"`{one.name}`")
        for one, what in zip(strands, wide_by, strict=True)
    ]
    bundle = rounds.together(things)
    wide = hole.widest(bundle)
    section = Section(wide, wide)
    held = rounds.in_hole(section, hole, things)
    said = case.said(("cone-bundle",))
    rounds.finish(section, held, said, hole, [(bundle, f"side by side {mm(bundle)}", "")])
    names = " and ".join(dict.fromkeys(f"`{strand.name}`" for strand in strands))
    return case.figure(
        section,
        f"{names} in {cone.kind.name} `{cone.name}`",
        f"bore {with_range(hole.size)}; strands {held.words}",
        f"a bore of {mm(bundle)}",
        said,
    )
