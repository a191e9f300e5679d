"""A hole for every strand that lies side by side, where bar, connector or clasp has several."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Held, Misfit, Remedy, Rule, StrandsAtHoles


def check(join: StrandsAtHoles, ask: Ask) -> Answer:
    strands, all_holes = len(join.strands), join.eyes.count
    if all_holes % join.ends:
        return None  # uneven ends: how many are on which side is not in the plan
    holes = all_holes // join.ends
    if strands == holes:
        return Held()
    name = join.eyes.part.name
    off = abs(strands - holes)
    over = f"{off} {'has' if off == 1 else 'have'} no hole"
    empty = f"{off} {'stays' if off == 1 else 'stay'} empty"
    at = " at that end" if join.ends > 1 else ""
    lie = "1 strand meets" if strands == 1 else f"{strands} strands side by side meet"
    return Misfit(
        says=f"{lie} `{name}`, which has {holes} hole{'s' if holes > 1 else ''}{at}:"
        f" {over if strands > holes else empty}",
        place=join.eyes.count_place,
        found=f"{holes} for {strands}",
        needed=f"{strands}, one for each strand",
        remedies=(
            Remedy.write(
                join.eyes.count_place,
                str(strands * join.ends),
                f"take a `{name}` of {strands} holes, or make {holes} strands",
            ),
            Remedy("gather the strands in cones before they meet it"),
        ),
        at_most="error" if strands > holes else "warning",
        also=(join.place,),
    )


RULE = Rule(
    name="strand-holes",
    family="joining",
    subject=StrandsAtHoles,
    check=check,
    title=(
        "strands side by side find a hole each (gathered in a cone they are `cone-bundle`, and a"
        " single eye takes them all)"
    ),
    why="a strand that has no hole of its own crosses its neighbour, and the row will not lie flat",
    sources=("counting",),
    bad="{strands: [inner, middle, outer]} beside a spacer bar of two holes",
    good="{strands: [inner, middle, outer]} beside a spacer bar of three holes",
)
