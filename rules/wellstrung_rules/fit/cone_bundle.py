"""The gathered ends of strands in the wide end of a cone: circles in a circle."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from wellstrung.rulebook import Answer, Ask, Misfit, Remedy, Rule, StrandsInCone, kept, taken
from wellstrung.rulebook.plan import Part, Role
from wellstrung.rulebook.remedies import in_words, next_up, wider_bore
from wellstrung.rulebook.values import Quantity
from wellstrung.rulebook.wording import about, article, in_unit_of, raised, spelled, together
from wellstrung_rules.fit import packed


def check(join: StrandsInCone, ask: Ask) -> Answer:
    cone, bore = join.cone, ask.of(join.cone, "bore")
    bundle = packed("bundle", [_end(strand, cone, ask) for strand in join.strands])
    margin = bore - bundle
    if answer := kept(margin):
        return answer
    end = "nub" if taken(cone) == "nub" else "end"
    names = _names(join.strands)
    ends, narrower = f"{end} of {names}, which takes {about(bundle, bore)}", "take a thinner rope"
    if len(join.strands) > 1:
        ends = f"{end}s of {names}, which take {about(bundle, bore)} side by side"
        narrower = "end the strands in smaller beads"
    mouth = "the wide end of cone" if cone.kind.role is Role.CONE else "the bore of cap"
    wanted = next_up(bore.middle - margin.likely.low, 0.5)
    other = f"take {article(cone.noun)} of {in_unit_of(wanted, bore)}"
    return Misfit(
        says=f"{mouth} `{cone.name}` ({spelled(bore)}) {{is|may be}} too small for the {ends}",
        place=cone.place_of("bore"),
        found=spelled(bore),
        needed=f"{raised(bore, margin)} or wider",
        remedies=(
            Remedy(f"{other} inside", wider_bore(cone, wanted)),
            in_words(f"{other} or wider, or {narrower}", cone, "bore", low=wanted),
        ),
        margin=margin,
        also=(join.place,),
    )


def _end(strand: Part, cone: Part, ask: Ask) -> Quantity:
    """How thick a strand is where it goes in; a leg as the fattest of its beads that go in."""
    if strand.kind.role is not Role.DROP:
        return ask.end(strand, cone)
    deep = next((ask.of(cone, field) for field in ("depth", "length") if cone.has(field)), None)
    slabs = ask.outline(strand, 0)
    inside = [slab.width for slab in slabs if deep is None or slab.top < deep.likely.high]
    return max(inside, key=lambda size: size.middle)


def _names(strands: Sequence[Part]) -> str:
    counts = Counter(strand.name for strand in strands)
    each = (f"{n} of `{name}`" if n > 1 else f"`{name}`" for name, n in counts.items())
    return together(each)


RULE = Rule(
    name="cone-bundle",
    family="fit",
    subject=StrandsInCone,
    check=check,
    fault="cone too small for its strands",
    title="the gathered ends of all strands go into their cone or cap (of a rope: `cap-bore`)",
    why="three strands take more than twice the room of one, and a cone is bought by its look",
    sources=(
        "equal circles in a circle: published best ratios, Graham, Lubachevsky, Nurmela, Östergård"
        " 1998; three by Descartes' theorem; more by search",
    ),
    bad="cone: {kind: cone, bore: 5 mm} on three strands of 3 mm, which take 6.46 mm",
    good="cone: {kind: cone, bore: 7 mm} on three strands of 3 mm, which take 6.46 mm",
)
