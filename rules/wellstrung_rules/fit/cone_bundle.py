"""The gathered ends of strands in the wide end of a cone: circles in a circle."""

from __future__ import annotations

import math

from wellstrung import circles
from wellstrung.rulebook import (
    Answer,
    Ask,
    Edit,
    Held,
    Misfit,
    Remedy,
    Rule,
    StrandsInCone,
    Verdict,
    about,
    article,
    compare,
    in_unit_of,
    spelled,
    worked,
)


def check(join: StrandsInCone, ask: Ask) -> Answer:
    bore = ask.of(join.cone, "bore")
    ends = {f"strand{n}": ask.of(one, "outside") for n, one in enumerate(join.strands, 1)}
    bundle = worked(
        "bundle",
        "mm",
        bundle_of,
        f"container({', '.join(ends)})" if len(ends) > 1 else "strand1",
        ends,
        source="circles in a circle, see `circles.py`",
    )
    margin = bore - bundle
    if compare(margin) is Verdict.HOLDS:
        return Held(margin)
    names = " and ".join(f"`{strand.name}`" for strand in join.strands)
    kind = join.cone.kind.name
    mouth = "the wide end of cone" if kind == "cone" else "the bore of cap"
    wide = f"{mouth} `{join.cone.name}` ({spelled(bore)})"
    need = f"which take {about(bundle, bore)} side by side"
    wanted = math.ceil((bore.middle - margin.likely.low) * 2 - 1e-9) / 2
    size = in_unit_of(wanted, bore)
    return Misfit(
        says=f"{wide} is too small for the ends of {names}, {need}",
        may=f"{wide} may be too small for the ends of {names}, {need}",
        place=join.cone.place_of("bore"),
        found=spelled(bore),
        needed=f"{in_unit_of(bore.middle - margin.likely.low, bore)} or wider",
        remedies=(
            Remedy(
                f"take {article(kind)} of {size} inside",
                (Edit(join.cone.place_of("bore"), size),),
            ),
            Remedy(f"take {article(kind)} of {size} or wider, or end the strands in smaller beads"),
        ),
        margin=margin,
        also=(join.place,),
    )


def bundle_of(**ends: float) -> float:
    """Diameter, mm, of the smallest hole that takes these ends side by side.

    >>> round(bundle_of(strand1=3.0, strand2=3.0, strand3=3.0), 2)
    6.46
    """
    return circles.container(tuple(ends.values()))


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
