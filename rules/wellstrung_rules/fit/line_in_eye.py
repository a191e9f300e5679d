"""The lines of strands through the one eye or ring that they are tied or crimped to."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, LinesInEye, Misfit, Remedy, Rule, kept
from wellstrung.rulebook.plan import Eyes, Part
from wellstrung.rulebook.remedies import sized_by, wider_ring
from wellstrung.rulebook.values import Quantity
from wellstrung.rulebook.wording import about, raised, spelled
from wellstrung_rules.fit import packed


def check(join: LinesInEye, ask: Ask) -> Answer:
    lines: list[Quantity] = []
    for strand in join.strands:
        lines += [ask.of(strand, "line")] * strand.count("passes", default=1)
    loop = join.loop
    if isinstance(loop, Eyes):
        hole, words = ask.get(loop.quantity("hole")), loop.words
        wide = loop.part.place_of(*loop.path, "hole")
    else:
        hole, words = ask.of(loop, "inside"), f"ring `{loop.name}`"
        wide = loop.place_of(sized_by(loop))
    place, also = (join.place, wide) if isinstance(loop, Eyes) else (wide, join.place)
    bundle = packed("lines in the eye", lines)
    margin = hole - bundle
    if answer := kept(margin):
        return answer
    names = ", ".join(f"`{strand.name}`" for strand in join.strands)
    many = len(lines) > 1
    lines_of = (
        f"{len(lines)} lines of {names} {{do|may}}" if many else f"the line of {names} {{does|may}}"
    )
    return Misfit(
        says=f"{lines_of} not go through {words} ({spelled(hole)}), which needs"
        f" to be {about(bundle, hole)}",
        place=place,
        found=spelled(hole),
        needed=f"a hole of {raised(hole, margin)} or wider",
        remedies=_remedies(loop, -margin.likely.low, len(lines), ask),
        margin=margin,
        also=(also,),
    )


def _remedies(loop: Eyes | Part, short: float, lines: int, ask: Ask) -> tuple[Remedy, ...]:
    """A larger ring; for the eye of a part, another way to hold the lines."""
    gather = "gather the strands in a cone or a bead tip" if lines > 1 else "take a finer line"
    if not isinstance(loop, Eyes):
        return wider_ring(loop, ask.of(loop, sized_by(loop)), short, gather)
    them = "them" if lines > 1 else "it"
    return (Remedy(f"{gather}, or tie {them} to a soldered ring"),)


RULE = Rule(
    name="line-in-eye",
    family="fit",
    subject=LinesInEye,
    check=check,
    fault="too many lines in one eye",
    title="the lines of strands go through the one eye or ring that they are tied or crimped to (a"
    " hole each: `strand-holes`)",
    why="the third strand is found not to go through the loop of the clasp when the other two are"
    " knotted there",
    sources=(
        "equal circles in a circle: published best ratios, Graham, Lubachevsky, Nurmela, Östergård"
        " 1998; three by Descartes' theorem; more by search",
    ),
    bad="three strands on 0.5 mm silk at an eye of 1 mm",
    good="three strands on 0.5 mm silk at an eye of 1.5 mm",
)
