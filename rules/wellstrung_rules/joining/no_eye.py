"""What hangs without thread has an eye to hang by: a leg of beads, a band or a rope has none."""

from __future__ import annotations

from wellstrung.rulebook import (
    Answer,
    Ask,
    Held,
    HeldInPlace,
    Misfit,
    Missing,
    Remedy,
    Rule,
    hanging_eyes,
    of_cups,
    own_eyes,
)
from wellstrung.rulebook.plan import Role
from wellstrung.rulebook.wording import article


def check(held: HeldInPlace, ask: Ask) -> Answer:
    part, line, other = held.part, held.line, held.other
    if of_cups(part) or of_cups(other):
        return None  # `cup-end` says what holds them
    if line is None:
        two = f"`{part.name}` and `{other.name}`"
        raise Missing(f"a part that joins {two} in `run`: no check knows how these two go together")
    if line.on_thread:
        return Held()
    lacks = part
    if part.kind.role in (Role.RING, Role.BAIL) or hanging_eyes(part):
        if other.kind.role is not Role.DROP:
            return Held()
        lacks = other
    for key in own_eyes(lacks):
        raise part.missing(*part.eye_path(key))
    by = f"by ring `{line.by.name}`" if line.by is not None else "without a ring or thread"
    return Misfit(
        says=f"`{part.name}` hangs from `{other.name}` {by}, but {article(lacks.noun)} has no"
        " eye for it",
        place=held.place,
        found="no eye",
        needed="an eye, or thread",
        remedies=(
            Remedy(
                f"sew `{lacks.name}` on: `by: thread`", (ask.with_field(line.node, "by", "thread"),)
            ),
            Remedy(f"sew a closed ring to `{lacks.name}`, and take that"),
        ),
        also=(lacks.key.place,),
    )


RULE = Rule(
    name="no-eye",
    family="joining",
    subject=HeldInPlace,
    check=check,
    fault="nothing to hang by",
    title="what hangs has an eye to hang by, or thread that holds it",
    why="a ring needs something to go through: pulled through the last bead of a leg it breaks the"
    " bead, or the thread that the whole leg hangs by",
    sources=("counting: the eyes of its kind",),
    level="warning",
    bad="{part: leg, from: ring, by: small} with `leg` a bead drop",
    good="{part: leg, from: ring, by: thread}",
)
