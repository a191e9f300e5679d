"""Both ends of a spectacle chain need something that grips the arms of the spectacles."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Held, Misfit, Piece, Remedy, Rule


def check(piece: Piece, ask: Ask) -> Answer:
    if ask.plan.piece != "spectacle chain" or not ask.plan.run:
        return None
    ends = (ask.plan.run[0], ask.plan.run[-1])
    bare = [end for end in ends if not end.part.traits.grips_spectacles]
    if not bare:
        return Held()
    which = "one end" if len(bare) == 1 else "both ends"
    return Misfit(
        says=f"the spectacle chain ends in `{bare[0].called}` at {which}, which grips no"
        " spectacles",
        place=bare[0].place,
        found=f"{2 - len(bare)} spectacle loops",
        needed="a spectacle loop at each end",
        remedies=(Remedy("end the run in a `spectacle loop` on a ring at each side"),),
    )


RULE = Rule(
    name="spectacle-ends",
    family="joining",
    subject=Piece,
    check=check,
    fault="no spectacle loop",
    title="a spectacle chain ends in loops that grip the arms of the spectacles",
    why="without its rubber loops the chain cannot hold the spectacles, and a loop of beads slips"
    " off the arm",
    sources=("common practice, no source",),
    bad="piece: spectacle chain with run: [ring, chain, ring]",
    good="piece: spectacle chain with run: [loop, ring, chain, ring, loop]",
    level="warning",
)
