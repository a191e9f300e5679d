"""Threads, needles and cores: what beads are woven and strung on."""

from __future__ import annotations

from generated.draft import Bead, Draft, Fields

#: threads by what a plan calls them: type, rating or size, thickness where it is written, mm
THREADS = (
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
STRINGS = (
    ({"type": "flexible wire"}, 0.38),
    ({"type": "flexible wire"}, 0.46),
    ({"type": "flexible wire"}, 0.3),
    ({"type": "twisted nylon", "rating": "20 lb"}, 0.5),
    ({"type": "silk"}, 0.4),
    ({"type": "silk"}, 0.5),
    ({"type": "fused", "rating": "10 lb"}, 0.2),
)


def woven_on(draft: Draft, fields: Fields, *, tail: float = 200.0) -> None:
    """The thread of woven work, and the needle that it is woven with."""
    if not draft.chance(92):
        return
    thread: Fields = dict(draft.pick(*THREADS))
    written = tail if draft.chance(90) else draft.pick(60.0, 80.0, 120.0)
    draft.maybe(85, thread, tail=draft.length(written))
    draft.maybe(85, thread, working_length=draft.length(draft.pick(1800.0, 1600.0, 1200.0, 3500.0)))
    fields["thread"] = thread
    if draft.chance(80):
        fields["needle"] = draft.pick(*NEEDLES)
    if draft.chance(75):
        spool_for(draft, thread)


def spool_for(draft: Draft, thread: Fields) -> None:
    """A spool of a thread, as a part; woven work may name it."""
    known = {key: thread[key] for key in ("type", "rating", "size") if key in thread}
    for name, part in draft.parts.items():
        if part["kind"] == "thread" and all(part.get(key) == known[key] for key in known):
            draft.maybe(60, thread, spool=name)
            return
    spool = spool_of(draft, known)
    draft.maybe(60, thread, spool=spool)


def spool_of(draft: Draft, known: Fields) -> str:
    """A spool of thread."""
    fields: Fields = {"kind": "thread", **known}
    draft.maybe(85, fields, length=draft.length(draft.pick(45_000.0, 91_000.0, 9_000.0, 2_000.0)))
    return draft.add(draft.pick("line", "spool", "reel"), fields)


def strung_on(draft: Draft, fields: Fields, bead_hole: float, passes: int = 1) -> float:
    """The line of a strand, thin enough for its beads; gives its thickness, mm."""
    fitting = [row for row in STRINGS if row[1] * (2 if passes > 1 else 1) * 1.3 <= bead_hole]
    known, thickness = draft.pick(*(fitting or [STRINGS[-1]]))
    thread: Fields = dict(known)
    if thread["type"] == "silk" and draft.chance(40):
        thread["size"] = "6" if thickness == 0.4 else "8"
    else:
        thread["outside"] = draft.pick(f"{thickness} mm", f"{thickness} ± 0.02 mm")
    draft.maybe(85, thread, tail=draft.length(draft.pick(150.0, 120.0, 260.0)))
    draft.maybe(20, thread, working_length=draft.length(1800.0))
    fields["thread"] = thread
    if draft.chance(70):
        spool_for(draft, thread)
    draft.maybe(15, fields, needle=draft.pick("big-eye 1", "long stringing 10", "twisted medium"))
    if "needle" in fields and not draft.chance(50):
        del fields["needle"]
    return thickness


def drop_thread(draft: Draft, fields: Fields) -> None:
    """The thread that a drop hangs by."""
    if draft.chance(90):
        thread: Fields = dict(draft.pick(*THREADS[:4]))
        draft.maybe(15, thread, tail=draft.length(150.0))
        draft.maybe(10, thread, working_length=draft.length(1500.0))
        if draft.chance(25):
            spool_for(draft, thread)
        fields["thread"] = thread


def needle(draft: Draft) -> str:
    """A needle as a part of the plan."""
    return draft.add("needle", {"kind": "needle", "size": draft.pick(*NEEDLES)})


def core(draft: Draft, outside: float) -> str:
    """A core that fills the bore of a rope."""
    fields: Fields = {"kind": "core", "outside": draft.length(outside, 30)}
    draft.maybe(70, fields, material=draft.pick("cotton cord", "rubber tube", "plied twine"))
    draft.maybe(60, fields, mass=f"{draft.pick(2, 3, 5)} g")
    draft.maybe(15, fields, measured={"outside": f"{round(outside, 1)} mm"})
    return draft.add("core", fields)


def mixed(draft: Draft, one: Bead, two: Bead | None) -> object:
    """Beads of a part: one kind, a repeat in order, or shares."""
    if two is None:
        return one.name
    ways: tuple[object, ...] = (
        [one.name, two.name],
        [one.name, one.name, two.name],
        {one.name: 3, two.name: 1},
        {one.name: 2, two.name: 2},
        [one.name, one.name, one.name, two.name],
    )
    return draft.pick(*ways)
