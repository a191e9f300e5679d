"""The gathered ends of strands in the wide end of a cone: circles in a circle."""

from __future__ import annotations

import math

from wellstrung.formulas import circles
from wellstrung.rulebook import Answer, Ask, Misfit, Remedy, Rule, StrandsInCone, kept, taken
from wellstrung.rulebook.plan import Role
from wellstrung.rulebook.remedies import wider_bore
from wellstrung.rulebook.values import derived
from wellstrung.rulebook.wording import about, article, in_unit_of, spelled


def check(join: StrandsInCone, ask: Ask) -> Answer:
    bore = ask.of(join.cone, "bore")
    sizes = {f"strand{n}": ask.end(one, join.cone) for n, one in enumerate(join.strands, 1)}
    bundle = derived(
        "bundle",
        "mm",
        circles.side_by_side,
        sizes,
        source="circles in a circle, see `circles.py`",
    )
    margin = bore - bundle
    if answer := kept(margin):
        return answer
    several = len(join.strands) > 1
    names = " and ".join(f"`{strand.name}`" for strand in join.strands)
    ends = f"{'nub' if taken(join.cone) == 'nub' else 'end'}{'s' if several else ''} of {names}"
    kind, is_cone = join.cone.kind.name, join.cone.kind.role is Role.CONE
    mouth = "the wide end of cone" if is_cone else "the bore of cap"
    wide = f"{mouth} `{join.cone.name}` ({spelled(bore)})"
    side_by_side = f"which take {about(bundle, bore)} side by side"
    need = side_by_side if several else f"which takes {about(bundle, bore)}"
    wanted = math.ceil((bore.middle - margin.likely.low) * 2 - 1e-9) / 2
    size = in_unit_of(wanted, bore)
    narrower = "end the strands in smaller beads" if several else "take a thinner rope"
    return Misfit(
        says=f"{wide} {{is|may be}} too small for the {ends}, {need}",
        place=join.cone.place_of("bore"),
        found=spelled(bore),
        needed=f"{in_unit_of(bore.middle - margin.likely.low, bore)} or wider",
        remedies=(
            Remedy(f"take {article(kind)} of {size} inside", wider_bore(join.cone, wanted)),
            Remedy(f"take {article(kind)} of {size} or wider, or {narrower}"),
        ),
        margin=margin,
        also=(join.place,),
    )


RULE = Rule(
    name="cone-bundle",
    family="fit",
    subject=StrandsInCone,
    check=check,
    title="the gathered ends of all strands go into their cone or cap (of a rope: `cap-bore`)",
    why="three strands take more than twice the room of one, and a cone is bought by its look",
    sources=(
        "equal circles in a circle: published best ratios, Graham, Lubachevsky, Nurmela, Östergård"
        " 1998; three by Descartes' theorem; more by search",
    ),
    bad="cone: {kind: cone, bore: 5 mm} on three strands of 3 mm, which take 6.46 mm",
    good="cone: {kind: cone, bore: 7 mm} on three strands of 3 mm, which take 6.46 mm",
)
