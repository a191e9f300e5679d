"""A pair of earrings is planned as two."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Held, Misfit, Piece, Remedy, Rule


def check(piece: Piece, ask: Ask) -> Answer:
    if ask.plan.piece != "earrings":
        return None
    makes, tree = ask.plan.makes, ask.plan.tree
    if makes % 2 == 0:
        return Held()
    written = tree.entries.get("makes")
    place = (written or tree.entries["piece"]).node.place
    new, text = str(makes + 1), f"`makes: {makes + 1}`"
    planned = "one earring is" if makes == 1 else f"{makes} earrings are"
    return Misfit(
        says=f"{planned} planned, so one has no partner, and supplies are counted for {makes}",
        place=place,
        found=f"{makes} made" if written else "no `makes`",
        needed=text,
        remedies=(
            Remedy.write(place, new if written else f"earrings\nmakes: {new}", f"write {text}"),
            Remedy("plan both of a pair"),
        ),
    )


RULE = Rule(
    name="pair-complete",
    family="count",
    subject=Piece,
    check=check,
    fault="one earring of a pair",
    title="a plan of earrings makes both of a pair, so that its supplies cover both",
    why="beads, rings and chain are counted for what the plan makes: one earring is half a pair",
    sources=("counting",),
    bad="piece: earrings",
    good="piece: earrings with makes: 2",
    level="warning",
)
