"""A piece that closes through its own ring: the other end, and what hangs there, goes through."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Misfit, Rule, TailThroughLoop, holds, kept
from wellstrung.rulebook.remedies import next_up, sized_by, wider_ring
from wellstrung.rulebook.wording import about, at_least
from wellstrung_rules.limits import RING_SWING


def check(closing: TailThroughLoop, ask: Ask) -> Answer:
    loop = closing.loop
    inside = ask.of(loop, "inside")
    rooms = {part: inside - ask.across(part) for part in closing.tail}
    part, fits = min(rooms.items(), key=lambda found: found[1].likely.low)
    runs = fits - ask.limit(RING_SWING)
    if answer := kept(runs):
        return answer
    forced, size = not holds(fits), ask.of(loop, sized_by(loop))
    short = -runs.likely.low
    return Misfit(
        says=f"`{part.name}`, {about(ask.across(part), size)} across, {{does|may}} not go"
        f" {'' if forced else 'freely '}through the ring `{loop.name}` (inside"
        f" {about(inside, size)}), which closes the {ask.plan.piece}",
        place=loop.place_of(sized_by(loop)),
        found=f"inside {about(inside, size)}",
        needed=f"inside {at_least(next_up(inside.middle + short, 0.1), size)} or more",
        remedies=wider_ring(loop, size, short, "take a narrower end"),
        margin=fits if forced else runs,
        at_most="error" if forced else "warning",
        also=(closing.place, part.key.place),
    )


RULE = Rule(
    name="tail-through-loop",
    family="fit",
    subject=TailThroughLoop,
    check=check,
    fault="tail does not go through its ring",
    title="the end of a piece that closes through its ring goes through it, with what hangs there",
    why=(
        "a lariat is put on every day by drawing its tail through: a cap or a drop that catches is"
        " forced, and the thread behind it gives"
    ),
    limits=(RING_SWING,),
    sources=(
        "what goes through a ring is narrower than its inside: geometry",
        "0.2 mm left to run: common practice, no source",
    ),
    bad="closes: through its loop with a ring of 10 mm inside and a cap of 11.5 mm at the tail",
    good="closes: through its loop with a ring of 16 mm inside and a cap of 11.5 mm at the tail",
)
