"""The gathered ends of strands in the wide end of a cone, or in a cap that takes them all."""

from __future__ import annotations

from wellstrung.drawing import Figure, hatching
from wellstrung.drawing.sections import rounds
from wellstrung.drawing.sections.case import Case, marks, mm, size, with_range
from wellstrung.drawing.sections.frame import Section
from wellstrung.rulebook import StrandsInCone


def draw(case: Case[StrandsInCone]) -> Figure:
    """The wide end from the front with the strands packed in it."""
    join = case.join
    bore, outside = case.of(join.cone, "bore"), case.perhaps(join.cone, "outside")
    things = [
        rounds.Thing(f"`{one.name}`", case.of(one, "outside"), f"{one.name}.outside")
        for one in join.strands
    ]
    bundle = rounds.together(things)
    wide = max(bore.middle, bundle, outside.middle if outside else 0.0)
    section = Section(wide, wide)
    mouth = hatching.circle(0, 0, bore.middle / 2)
    if outside is not None and outside.middle > bore.middle:
        section.cut([hatching.circle(0, 0, outside.middle / 2), mouth])
        section.canvas.circle(0, 0, outside.middle / 2, "edge", f"{join.cone.name}.outside")
    held = rounds.pack(section, 0, 0, bore.middle, things)
    section.round_bands(0, 0, bore)
    section.canvas.circle(0, 0, bore.middle / 2, "edge", f"{join.cone.name}.bore")
    section.taken(0, 0, bundle)
    said = case.said(("cone-bundle",))
    if said:
        section.flag(*held.furthest, marks(said))
    rows = [
        (bore.middle, f"bore {size(bore)}", f"{join.cone.name}.bore"),
        (bundle, f"side by side {mm(bundle)}", ""),
    ]
    for width, words, quantity in sorted(rows):
        section.across(-width / 2, width / 2, 0, words, quantity)
    names = " and ".join(f"`{strand.name}`" for strand in join.strands)
    return case.figure(
        section,
        f"{names} in {join.cone.kind.name} `{join.cone.name}`",
        f"bore {with_range(bore)}; strands {held.words}",
        f"a bore of {mm(bundle)}",
        said,
    )
