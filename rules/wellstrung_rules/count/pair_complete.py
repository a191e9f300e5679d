"""A pair of earrings is planned as two."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Held, Misfit, Piece, Remedy, Rule
from wellstrung.rulebook.plan import Edit


def check(piece: Piece, ask: Ask) -> Answer:
    if ask.plan.piece != "earrings":
        return None
    makes, tree = ask.plan.makes, ask.plan.tree
    if makes % 2 == 0:
        return Held()
    written = tree.entries.get("makes")
    kind = tree.entries["piece"].node.place
    if written is None:
        edit = Edit(kind, "earrings\nmakes: 2")
    else:
        edit = Edit(written.node.place, str(makes + 1))
    planned = "one earring is" if makes == 1 else f"{makes} earrings are"
    return Misfit(
        says=f"{planned} planned, so one has no pair and supplies are counted for {makes}",
        place=written.node.place if written else kind,
        found=f"{makes} made" if written else "no `makes`",
        needed=f"`makes: {makes + 1}`",
        remedies=(Remedy(f"write `makes: {makes + 1}`", (edit,)), Remedy("plan both of a pair")),
    )


RULE = Rule(
    name="pair-complete",
    family="count",
    subject=Piece,
    check=check,
    title="a plan of earrings makes both of a pair, so that its supplies cover both",
    why="beads, rings and chain are counted for what the plan makes: one earring is half a pair",
    sources=("counting",),
    bad="piece: earrings",
    good="piece: earrings with makes: 2",
    level="warning",
)
