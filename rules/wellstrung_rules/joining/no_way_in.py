"""Of two linked loops of metal, one must open to let the other in."""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung.rulebook import Answer, Ask, EyesMeet, Held, Misfit, Remedy, Rule, rings_to_open
from wellstrung.rulebook.plan import Eyes, Part, Place
from wellstrung.rulebook.remedies import other_closings


def check(meeting: EyesMeet, ask: Ask) -> Answer:
    sides = (meeting.one, meeting.other)
    if ask.opens(*sides):
        return Held()
    rings = [side for side in sides if isinstance(side, Part) and side in rings_to_open(ask.plan)]
    alike = rings and meeting.one == meeting.other
    other = "others of its kind" if alike else _words(meeting.other)
    return Misfit(
        says=f"the plan links {_words(meeting.one)} and {other}, but neither opens to let the"
        " other in",
        place=rings[0].place_of("closing") if rings else meeting.place,
        found="two closed loops",
        needed="one that opens",
        remedies=tuple(_remedies(meeting, rings, ask)),
        also=(meeting.place, *(_place(side) for side in sides)),
    )


def _words(side: Eyes | Part) -> str:
    if isinstance(side, Eyes):
        return side.words
    return f"the {side.text('closing')} ring `{side.name}`"


def _place(side: Eyes | Part) -> Place:
    return side.place_of("closing") if isinstance(side, Part) else side.part.place_of(*side.path)


def _remedies(meeting: EyesMeet, rings: list[Part], ask: Ask) -> Iterator[Remedy]:
    for ring in rings:
        yield from other_closings(ring, ask, "open", "split")
    if rings:
        yield Remedy(f"take a ring that opens for `{rings[0].name}`")
    elif meeting.line is not None:
        yield Remedy("hang it by a ring that opens: `by: ...` with an open jump ring")
    else:
        yield Remedy("put an open jump ring between the two in `run`")


RULE = Rule(
    name="no-way-in",
    family="joining",
    subject=EyesMeet,
    check=check,
    fault="two closed loops to link",
    title="of two linked loops - ring, eye or chain link - one opens",
    why="a soldered ring and a cast loop cannot be linked, and you find out when everything else"
    " is glued; while the plan is on paper, an open ring between them costs nothing",
    sources=(
        "two closed loops cannot be linked without cutting one: geometry",
        "open and split rings open, closed and soldered ones do not: common practice",
    ),
    bad="run: [cap, connector] with `opens: no` in both eyes",
    good="run: [cap, ring, connector] with a ring of `closing: open`",
)
