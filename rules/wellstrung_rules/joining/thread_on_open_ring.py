"""Thread is tied to a closed loop: it slips out through the gap of an open ring or eye."""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung.rulebook import Answer, Ask, Hangs, Held, Misfit, Remedy, Rule
from wellstrung.rulebook.plan import Eyes, Part
from wellstrung.rulebook.remedies import other_closings


def check(hangs: Hangs, ask: Ask) -> Answer:
    line = hangs.line
    sides = [side for side in (hangs.below, hangs.above) if side is not None]
    if not line.on_thread or not sides:
        return None
    with_gaps = [side for side in sides if _has_gap(side, ask)]
    if not with_gaps:
        return Held()
    loose = with_gaps[0]
    if isinstance(loose, Part):
        words, place = f"the open ring `{loose.name}`", loose.place_of("closing")
    else:
        words, place = f"{loose.words}, which can be opened", line.place_of("by")
    return Misfit(
        says=f"`{line.part.name}` hangs from `{line.source.name}` by thread, on {words}: the"
        " thread can slip out through the gap",
        place=place,
        found="a loop with a gap",
        needed="a closed loop for the thread",
        remedies=tuple(_remedies(loose)),
        also=(line.place_of("by"),),
    )


def _has_gap(side: Eyes | Part, ask: Ask) -> bool:
    """An open ring, or an eye that opens; a split ring is wound twice and holds thread."""
    if isinstance(side, Part):
        return side.traits.gapes
    opens = ask.opens(side)
    if opens is None:
        raise side.part.missing(*side.path, "opens")
    return opens


def _remedies(loose: Eyes | Part) -> Iterator[Remedy]:
    if isinstance(loose, Part):
        yield from other_closings(loose, "soldered", "split")
    yield Remedy("tie the thread to a soldered ring, and hang that by a ring of its own")


RULE = Rule(
    name="thread-on-open-ring",
    family="joining",
    subject=Hangs,
    check=check,
    title="thread is tied to a loop without a gap",
    why="the gap of a jump ring looks shut and is wider than a thread: in wear the thread slips"
    " out, or the edge of the gap saws it through",
    sources=("thread goes to soldered or split rings: common practice, no source",),
    level="warning",
    bad="{part: charm, from: loop, by: thread} with `closing: open` of the ring `loop`",
    good="{part: charm, from: loop, by: thread} with `closing: soldered` of the ring `loop`",
)
