"""Of two loops of metal that are linked, one must open to let the other in."""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung.rulebook import Answer, Ask, EyesMeet, Held, Misfit, Remedy, Rule
from wellstrung.rulebook.plan import Eyes, Part, Place


def check(meeting: EyesMeet, ask: Ask) -> Answer:
    sides = (meeting.one, meeting.other)
    can = [ask.opens(side) for side in sides]
    if any(can):
        return Held()
    for side, opens in zip(sides, can, strict=True):
        if opens is None and isinstance(side, Eyes):
            raise side.part.missing(*side.path, "opens")
    rings = [side for side in sides if isinstance(side, Part)]
    if meeting.one == meeting.other and rings:
        pair = f"{_words(meeting.one)} and others of its kind"
    else:
        pair = f"{_words(meeting.one)} and {_words(meeting.other)}"
    return Misfit(
        says=f"{pair} are to be linked, and neither can be opened to let the other in",
        place=rings[0].place_of("closing") if rings else meeting.place,
        found="two closed loops",
        needed="one that opens",
        remedies=tuple(_remedies(meeting, rings)),
        also=(meeting.place, *(_place(side) for side in sides)),
    )


def _words(side: Eyes | Part) -> str:
    return (
        side.words if isinstance(side, Eyes) else f"the {side.text('closing')} ring `{side.name}`"
    )


def _place(side: Eyes | Part) -> Place:
    return side.place_of("closing") if isinstance(side, Part) else side.part.place_of(*side.path)


def _remedies(meeting: EyesMeet, rings: list[Part]) -> Iterator[Remedy]:
    for ring in rings:
        for closing in ("open", "split"):
            yield Remedy.write(
                ring.place_of("closing"),
                closing,
                f"take a ring that can be opened for `{ring.name}`: `closing: {closing}`",
            )
    if rings:
        yield Remedy(f"take a ring that can be opened for `{rings[0].name}`")
    elif meeting.line is not None:
        yield Remedy("hang it by a ring that can be opened: `by: ...` with an open jump ring")
    else:
        yield Remedy("put an open jump ring between the two in `run`")


RULE = Rule(
    name="no-way-in",
    family="joining",
    subject=EyesMeet,
    check=check,
    title="of two loops that are linked - ring, eye or chain link - one can be opened",
    why=(
        "a soldered ring and a cast loop cannot be linked, and it shows when everything else is"
        " glued; an open ring between them costs nothing while the plan is on paper"
    ),
    sources=(
        "two closed loops cannot be linked without cutting one: geometry",
        "open and split rings open, closed and soldered ones do not: common practice",
    ),
    bad="run: [cap, connector] with `opens: no` in both eyes",
    good="run: [cap, ring, connector] with a ring of `closing: open`",
)
