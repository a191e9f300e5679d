"""A hole for each of the strands side by side, at a bar, connector or clasp with several."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Held, Misfit, Missing, Remedy, Rule, StrandsAtHoles
from wellstrung.rulebook.wording import plural


def check(join: StrandsAtHoles, ask: Ask) -> Answer:
    strands, all_holes = len(join.strands), join.eyes.stated_count
    chains = any(one.cut_from is not None for one in join.strands)
    each = "chain" if chains else "strand"
    if all_holes % join.ends:
        if strands < all_holes:
            return Held()  # its ends are not alike, and the other has what is left
        lie = f"how the {all_holes} eyes of `{join.eyes.part.name}` lie at its two ends"
        raise Missing(f"{lie}: an even `count` of them")
    holes = all_holes // join.ends
    over = strands - holes
    if not over:
        return Held()
    name, place = join.eyes.part.name, join.eyes.count_place
    if over > 0:
        so = f"{plural(over, each)} {'has' if over == 1 else 'have'} no hole"
    else:
        so = f"{plural(-over, 'hole')} {'stays' if over == -1 else 'stay'} empty"
    at = " at that end" if join.ends > 1 else ""
    lie = f"1 {each} meets" if strands == 1 else f"{strands} {each}s side by side meet"
    fewer = f"{'cut' if chains else 'make'} {plural(holes, each)}"
    text = f"take a `{name}` with {plural(strands, 'hole')}, or {fewer}"
    on_ring = "hang the chains from one ring, and the ring from it"
    return Misfit(
        says=f"{lie} `{name}`, which has {plural(holes, 'hole')}{at}: {so}",
        place=place,
        found=f"{holes} for {strands}",
        needed=f"{strands}, one for each {each}",
        remedies=(
            Remedy.write(place, str(strands * join.ends), text),
            Remedy(on_ring if chains else "gather the strands in cones before they meet it"),
        ),
        at_most="error" if over > 0 else "warning",
        also=(join.place,),
    )


RULE = Rule(
    name="strand-holes",
    family="joining",
    subject=StrandsAtHoles,
    check=check,
    fault="strands without a hole each",
    title="strands or chains side by side have a hole each (`cone-bundle` checks strands gathered"
    " in a cone, `line-in-eye` those that one eye takes)",
    why="a strand without a hole of its own crosses its neighbour, and the row does not lie flat",
    sources=("counting",),
    bad="{strands: [inner, middle, outer]} beside a spacer bar of two holes",
    good="{strands: [inner, middle, outer]} beside a spacer bar of three holes",
)
