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
from wellstrung.rulebook.plan import Part, Role
from wellstrung.rulebook.wording import article


def check(held: HeldInPlace, ask: Ask) -> Answer:
    part, line, other = held.part, held.line, held.other
    if of_cups(part) or of_cups(other):
        return None  # `cup-end` says what holds them
    if line is None:
        unknown = "no check knows how these two go together"
        bail, below = (part, other) if part.kind.role is Role.BAIL else (other, part)
        if bail.kind.role is Role.BAIL:
            hang = f"`{{part: {below.name}, from: {bail.name}}}` under `hung`, with all that hangs"
            raise Missing(f"{hang} below it: in `run` {unknown}")
        two = f"`{part.name}` and `{other.name}` in `run`"
        raise Missing(f"a part that joins {two}: {unknown}")
    if line.on_thread:
        return Held()
    if part.traits.in_ear and (worn := _worn_above(part, ask)) is not None:
        return _two_in_one_ear(held, worn)
    hangs = part.kind.role in (Role.RING, Role.BAIL) or hanging_eyes(part)
    if hangs and other.kind.role is not Role.DROP:
        return Held()
    lacks = other if hangs else part
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


def _worn_above(part: Part, ask: Ask) -> Part | None:
    """What goes through the ear, of all that a part hangs from; None where nothing does."""
    above = {line.part: line.source for line in ask.plan.hung}
    seen = {part}
    while (source := above.get(part)) is not None and source not in seen:
        if source.traits.in_ear:
            return source
        seen.add(source)
        part = source
    run = ask.plan.in_run if part in ask.plan.in_run else ()
    return next((one for one in run if one.traits.in_ear), None)


def _two_in_one_ear(held: HeldInPlace, worn: Part) -> Misfit:
    name, noun = held.part.name, article(held.part.noun)
    return Misfit(
        says=f"`{name}` hangs from `{worn.name}`, and {noun} goes through the ear itself",
        place=held.place,
        found=f"`{name}` and `{worn.name}` in one ear",
        needed="one that goes through the ear",
        remedies=(
            Remedy(f"take `{worn.name}` out, or write `{name}` as a `connector`, which hangs"),
        ),
        fault="two through one ear",
        also=(held.part.key.place,),
    )


RULE = Rule(
    name="no-eye",
    family="joining",
    subject=HeldInPlace,
    check=check,
    fault="nothing to hang by",
    title="what hangs has an eye to hang by, or thread, and does not go through the ear itself",
    why="a ring needs something to go through: pulled through the last bead of a leg it breaks the"
    " bead, or the thread that the whole leg hangs by",
    sources=("counting: the eyes of its kind",),
    level="warning",
    bad="{part: leg, from: ring, by: small} with `leg` a bead drop",
    good="{part: leg, from: ring, by: thread}",
)
