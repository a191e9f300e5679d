"""Thread is tied to a closed loop: it slips out through the gap of an open ring or eye."""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung.rulebook import Answer, Ask, Held, Misfit, Remedy, Rule, TiedTo
from wellstrung.rulebook.plan import Eyes, Part, Role
from wellstrung.rulebook.remedies import other_closings


def check(tie: TiedTo, ask: Ask) -> Answer:
    loop, line = tie.loop, tie.line
    if not _has_gap(tie, ask):
        return Held()
    if isinstance(loop, Part):
        words, place = f"the open ring `{loop.name}`", loop.place_of("closing")
    else:
        words, place = f"{loop.words}, which can be opened", tie.place
    tied = f"`{tie.tied.name}` is sewn or tied to"
    if line is not None and line.on_thread:
        tied = f"`{line.part.name}` hangs from `{line.source.name}` by thread, on"
    elif line is not None:
        tied = f"the stretch cord of `{line.source.name}` goes through"
    return Misfit(
        says=f"{tied} {words}: the thread can slip out through the gap",
        place=place,
        found="a loop with a gap",
        needed="a closed loop for the thread",
        remedies=tuple(_remedies(loop, ask)),
        also=(tie.place,),
    )


def _has_gap(tie: TiedTo, ask: Ask) -> bool:
    """An open ring, or an eye that opens; a split ring is wound twice and holds thread.

    The eye of a clasp is sold closed, unless the plan says otherwise: common practice.
    """
    side = tie.loop
    if isinstance(side, Part):
        return side.traits.gapes
    part = side.part
    if part.traits.of_wire and part.has("loops") and part.text("loops") == "wrapped":
        return False  # both its loops are wrapped shut; the ready eye of a pin has a gap
    sold_closed = tie.line is None and part.kind.role is Role.CLASP
    return (not sold_closed or part.has(*side.path, "opens")) and ask.opens(side)


def _remedies(loose: Eyes | Part, ask: Ask) -> Iterator[Remedy]:
    if isinstance(loose, Part):
        yield from other_closings(loose, ask, "soldered", "split")
    yield Remedy("tie the thread to a soldered ring, and hang that by a ring of its own")


RULE = Rule(
    name="thread-on-open-ring",
    family="joining",
    subject=TiedTo,
    check=check,
    fault="thread tied to an open ring",
    title="thread is tied to a loop without a gap",
    why="the gap of a jump ring looks shut and is wider than a thread: in wear the thread slips"
    " out, or the edge of the gap saws it through",
    sources=("thread goes to soldered or split rings: common practice, no source",),
    level="warning",
    bad="{part: charm, from: loop, by: thread} with `closing: open` of the ring `loop`",
    good="{part: charm, from: loop, by: thread} with `closing: soldered` of the ring `loop`",
)
