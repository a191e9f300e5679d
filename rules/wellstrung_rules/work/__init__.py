"""Rules of the family `work`, and what they say of steps in the wrong order."""

from wellstrung.rulebook import Ask, Misfit, Remedy
from wellstrung.rulebook.plan import Step


def out_of_order(says: str, late: Step, before: Step, at: Step, ask: Ask) -> Misfit:
    """A step that must come before another and does not; the remark stands `at` one of the two."""
    move = ask.moved_before(late, before)
    return Misfit(
        says=says,
        place=at.place,
        found=f"step {late.number}",
        needed=f"before step {before.number}",
        remedies=(move, *ask.in_order(Remedy(move.text))),
        also=((late if at is before else before).place,),
    )
