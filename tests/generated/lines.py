"""Threads, needles and cores: what beads are woven and strung on."""

from __future__ import annotations

from generated.choices import pick
from generated.draft import Bead, Draft, Fields

#: threads for weaving, as plans name them
THREADS: tuple[Fields, ...] = (
    {"type": "fused", "rating": "6 lb"},
    {"type": "fused", "rating": "8 lb"},
    {"type": "fused", "rating": "4 lb"},
    {"type": "braided", "rating": "10 lb"},
    {"type": "braided", "rating": "8 lb"},
    {"type": "nylon", "size": "D"},
    {"type": "nylon", "size": "B"},
    {"type": "monofilament", "rating": "6 lb"},
    {"type": "fused", "rating": "6 lb", "outside": "0.15 ± 0.02 mm"},
    {"type": "polyester", "outside": "0.2 mm"},
    {"type": "fused", "rating": "27 N"},
    {"type": "bonded nylon", "size": "46"},
)
NEEDLES = (
    "beading 12", "beading 11", "beading 10", "beading 13", "sharps 12", "beading 15", "sharps 10",
)  # fmt: skip
#: lines that a strand can be strung on, with their thickness, mm
STRINGS: tuple[tuple[Fields, float], ...] = (
    ({"type": "flexible wire"}, 0.38),
    ({"type": "flexible wire"}, 0.46),
    ({"type": "flexible wire"}, 0.3),
    ({"type": "twisted nylon", "rating": "20 lb"}, 0.5),
    ({"type": "silk"}, 0.4),
    ({"type": "silk"}, 0.5),
    ({"type": "fused", "rating": "10 lb"}, 0.2),
)
_STRING_NEEDLES = ("twisted medium", "twisted fine", "beading 12")


def woven_on(draft: Draft, fields: Fields, *, tail: float = 200.0) -> None:
    """The thread of woven work, and the needle that it is woven with."""
    if not draft.chance(94):
        return
    thread: Fields = dict(draft.pick(*THREADS))
    written = tail if draft.chance(92) else draft.pick(60.0, 80.0, 120.0)
    draft.maybe(90, thread, tail=draft.length(written))
    long = 3500.0 if draft.chance(8) else draft.pick(1800.0, 1600.0, 1200.0)
    draft.maybe(90, thread, working_length=draft.length(long))
    fields["thread"] = thread
    if draft.chance(80):
        fields["needle"] = draft.pick(*NEEDLES)
    if draft.chance(75):
        spool_for(draft, thread, draft.pick(91_000.0, 45_000.0, 115_000.0, 9_000.0))


def spool_for(draft: Draft, thread: Fields, length: float) -> None:
    """A spool of a thread, as a part; what is made of it may name it, and must among several."""
    named = ("type", "rating", "size")
    known: Fields = {key: thread[key] for key in named if key in thread}
    spools = {name: part for name, part in draft.parts.items() if part["kind"] == "thread"}
    for name, part in spools.items():
        if all(part.get(key) == known[key] for key in known):
            thread["spool"] = name
            return
    fields: Fields = {"kind": "thread", **known}
    draft.maybe(90, fields, length=draft.length(length))
    draft.maybe(15, fields, colour=draft.pick("smoke", "crystal"))
    if "outside" in thread and draft.chance(30):
        fields["outside"] = thread["outside"]
    if thread["type"] == "flexible wire":
        draft.maybe(40, fields, strands=draft.pick(7, 19, 49))
    spool = draft.add(draft.pick("line", "spool", "reel"), fields)
    draft.maybe(100 if spools else 85, thread, spool=spool)


def strung_on(
    draft: Draft, fields: Fields, bead_hole: float, passes: int = 1, type_: str = ""
) -> float:
    """The line of a strand, thin enough for its beads; gives its thickness, mm."""
    of_type = [row for row in STRINGS if type_ in ("", row[0]["type"])]
    room = bead_hole * (0.4 if passes > 1 else 0.75)
    fitting = [row for row in of_type if row[1] <= room]
    known, thickness = pick(draft.choices, fitting or [min(of_type, key=lambda row: row[1])])
    thread: Fields = {**known}
    if thread["type"] == "silk" and thickness == 0.4 and bead_hole >= 1 and draft.chance(40):
        thread["size"] = "4"
    else:
        thread["outside"] = draft.pick(f"{thickness} mm", f"{thickness} ± 0.02 mm")
    draft.maybe(90, thread, tail=draft.length(draft.pick(260.0, 150.0, 120.0)))
    draft.maybe(20, thread, working_length=draft.length(1800.0))
    fields["thread"] = thread
    if draft.chance(70):
        spool_for(draft, thread, draft.pick(9_000.0, 20_000.0, 5_000.0, 2_000.0))
    draft.maybe(10, fields, needle=draft.pick(*_STRING_NEEDLES))
    return thickness


def drop_thread(draft: Draft, fields: Fields) -> None:
    """The thread that a drop hangs by."""
    if draft.chance(90):
        thread: Fields = dict(draft.pick(*THREADS[:4], THREADS[5], THREADS[8]))
        draft.maybe(15, thread, tail=draft.length(150.0))
        draft.maybe(10, thread, working_length=draft.length(1500.0))
        if draft.chance(25):
            spool_for(draft, thread, 45_000.0)
        fields["thread"] = thread


def needle(draft: Draft) -> str:
    """A needle as a part of the plan."""
    return draft.add("needle", {"kind": "needle", "size": draft.pick(*NEEDLES)})


def core(draft: Draft, outside: float) -> str:
    """A core that fills the bore of a rope."""
    fields: Fields = {"kind": "core", "outside": draft.length(outside, 30)}
    draft.maybe(70, fields, material=draft.pick("cotton cord", "rubber tube", "plied twine"))
    draft.maybe(60, fields, mass=f"{draft.pick(2, 3, 5)} g")
    draft.maybe(35, fields, measured={"outside": f"{max(0.3, round(outside, 1))} mm"})
    draft.maybe(20, fields, woven_over=draft.pick("no", "yes"))
    return draft.add("core", fields)


def mixed(draft: Draft, one: Bead, two: Bead | None, count: int = 0) -> object:
    """Beads of a part: one kind, a repeat in order, or shares.

    `count` is what a repeat has to come out in, around or across; most do.
    """
    if two is None:
        return one.name
    ways: list[object] = [
        {one.name: 3, two.name: 1},
        {one.name: 2, two.name: 2},
        {one.name: 5, two.name: 1},
    ]
    for repeat in (
        [one.name, two.name],
        [one.name, one.name, two.name],
        [one.name, one.name, one.name, two.name],
    ):
        if not count or count % len(repeat) == 0 or draft.chance(10):
            ways.append(repeat)
    return draft.pick(*ways)
