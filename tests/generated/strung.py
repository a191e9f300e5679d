"""Strung parts: strands of every kind, bead drops, wire links and pins."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from generated import beaded_beads, findings, glues, lines, palette
from generated.draft import Bead, Draft, Fields
from generated.woven import REST


class Strand(NamedTuple):
    """A strand, with how thick it and its line are and how long it is, about, mm."""

    name: str
    outside: float
    line: float
    length: float
    knots: int


def strand(
    draft: Draft,
    length: float,
    *,
    stitch: str = "",
    rest: bool = False,
    beads: Sequence[Bead] = (),
    on: str = "",
) -> Strand:
    """A strand of about a length: strung, knotted or spaced; by repeat, by count or by length.

    `on` is the type of its line, where what ends it needs one.
    """
    stitch = stitch or draft.pick("strung", "strung", "knotted", "spaced")
    used = list(beads) or _strung_beads(draft)
    repeat = _order(draft, used)
    fields: Fields = {"kind": "strand", "stitch": stitch}
    named = [bead.name for bead in repeat]
    fields["beads"] = named[0] if len(set(named)) == 1 and len(named) == 1 else named
    if len(set(named)) == 2 and draft.chance(15):
        repeat = [used[0]] * 3 + [used[1]]
        fields["beads"] = {used[0].name: 3, used[1].name: 1}
    passes = 2 if draft.chance(8) else 1
    draft.maybe(100 if passes > 1 else 5, fields, passes=passes)
    line = lines.strung_on(draft, fields, min(bead.hole for bead in used), passes, on)
    between = _between(draft, fields, stitch, line)
    repeated = sum(bead.length + between for bead in repeat)
    repeats = max(1, round(length / repeated))
    if rest:
        fields["length"] = REST
    elif draft.chance(25) and not isinstance(fields["beads"], dict):
        fields["repeats"] = repeats
    elif draft.chance(35):
        fields["count"] = repeats * len(repeat)
    else:
        fields["length"] = draft.length(round(repeats * repeated, 1))
    thick = max(bead.outside for bead in used)
    if draft.chance(8):
        fields["measured"] = {"outside": f"{thick} mm"}
        draft.maybe(40, fields["measured"], mass=f"{draft.whole(8, 40)} g")
    ends = _held(draft, fields, line, repeats * len(repeat)) if stitch == "spaced" else 0.0
    if stitch == "knotted" or fields.get("held_by") == "knots":
        draft.maybe(30, fields, knot=draft.pick("overhand", "double overhand", "figure eight"))
    name = draft.add(draft.pick("strand", "row", "string"), fields)
    if fields.get("held_by") == "knots":
        draft.step("knot", "knot", name)
    knots = max(1, repeats * len(repeat) - 1)
    return Strand(name, thick, line, repeats * repeated + ends, knots)


def _held(draft: Draft, fields: Fields, line: float, beads: int) -> float:
    """What holds the beads apart, where they are counted; how much longer the strand is by it."""
    bare: int = draft.pick(0, 0, 0, 20)
    draft.maybe(100 if bare else 0, fields, bare_ends=draft.length(bare))
    counted = "count" in fields or "repeats" in fields
    held = draft.pick("", "knots", "crimp", "glue") if counted else ""
    groups: int = -(-beads // fields.get("group", 1))
    if held == "knots":
        fields["held_by"] = held
        return 2.0 * bare + 4 * groups * line
    if held == "crimp":
        fields["held_by"] = crimp = findings.crimp(draft, line / 2)
        draft.step("knot", "crimp", crimp, times=2 * groups)
        return 2.0 * bare + 4 * groups
    if held == "glue":
        fields["held_by"] = glues.adhesive(draft)
        draft.step("wait", "wait", time=draft.pick("24 h", "2 days"))
    return 2.0 * bare


def _strung_beads(draft: Draft) -> list[Bead]:
    if draft.chance(25):
        one = palette.seed(draft, "8/0", "6/0")
        return [one, palette.another(draft, one)] if draft.chance(50) else [one]
    one = palette.other(draft, 4, 10)
    if draft.chance(50):
        return [one, palette.seed(draft, "8/0", "11/0", "6/0")]
    return [one]


def _order(draft: Draft, used: Sequence[Bead]) -> list[Bead]:
    """The repeat: one bead, several in turn, or graduated to the middle and back."""
    if len(used) == 1:
        return [used[0]]
    one, two = used[0], used[1]
    return list(draft.pick([one, two], [one, one, two], [two, one, two], [one, two, two, two]))


def _between(draft: Draft, fields: Fields, stitch: str, line: float) -> float:
    if stitch == "knotted":
        draft.maybe(50, fields, knot_adds=draft.length(round(line * 1.5, 2), 50))
        return round(line * 1.4, 2)
    if stitch == "spaced":
        spacing = draft.between(10, 30, 5)
        fields["spacing"] = draft.length(spacing)
        group = draft.pick(1, 1, 1, 2, 3)
        draft.maybe(100 if group > 1 else 5, fields, group=group)
        return float(spacing / group)
    return 0.0


def graduated(draft: Draft, length: float) -> Strand:
    """A strand whose beads grow towards its middle, listed from one end to the other."""
    small, middle, large = (palette.other(draft, *size) for size in ((4, 5), (6, 7), (8, 10)))
    side = [small] * 6 + [middle] * 5
    long = sum(bead.length for bead in side) * 2
    wide = max(1, round((length - long) / large.length)) if length > long else 1
    order = [*side, *[large] * min(wide, 40), *reversed(side)]
    fields: Fields = {"kind": "strand", "stitch": "strung", "beads": [bead.name for bead in order]}
    fields["repeats"] = 1
    if draft.chance(50):
        del fields["repeats"]
        fields["beads"] = {
            "mirror": [f"6 {small.name}", f"5 {middle.name}", f"{min(wide, 40)} {large.name}"]
        }
    line = lines.strung_on(draft, fields, small.hole)
    name = draft.add("graduated strand", fields)
    return Strand(name, large.outside, line, sum(bead.length for bead in order), len(order) - 1)


def elastic(draft: Draft, around: float) -> Strand:
    """Beads on elastic, knotted to a ring."""
    bead = palette.other(draft, 6, 10, hole=draft.pick(1.6, 1.5, 1.8))
    thick = draft.pick(0.7, 0.5, 0.8)
    fields: Fields = {"kind": "strand", "stitch": "strung", "beads": bead.name}
    repeat = bead.length
    if draft.chance(30):
        two = palette.seed(draft, "6/0", kind="round")
        fields["beads"], repeat = [bead.name, two.name], bead.length + two.length
    repeats = max(6, round((around + 3.14 * bead.outside) / repeat))
    fields |= {"count": repeats * 2} if repeat > bead.length else {"count": repeats}
    draft.maybe(60, fields, passes=2)
    fields["thread"] = {"type": "elastic", "outside": f"{thick} mm", "tail": draft.length(150.0)}
    if draft.chance(75):
        lines.spool_for(draft, fields["thread"], 5_000.0)
    return Strand(draft.add("stretch", fields), bead.outside, thick, repeats * repeat, 1)


class Drop(NamedTuple):
    """A bead drop; `listed` is how many drops its list of counts has, or 0."""

    name: str
    listed: int


def drop(draft: Draft, *, like: Bead | None = None, legs: int = 0) -> Drop:
    """A bead drop: one count, listed beads, or a graduated fringe of `legs`."""
    alike = like is not None and draft.chance(50)
    bead = like if alike and like is not None else palette.seed(draft, "11/0", "15/0")
    fields: Fields = {"kind": "bead drop", "beads": bead.name}
    count = 0
    if legs and draft.chance(70):
        half = [draft.whole(3, 5) + n for n in range((legs + 1) // 2)]
        if legs % 2 and draft.chance(70):
            fields["count"] = {"mirror": half}
        else:
            other_way = list(reversed(half[:-1] if legs % 2 else half))
            fields["count"] = [*half, *other_way]
        count = legs if legs > 1 else 0
        if legs == 1:
            fields["count"] = half[0]
    elif draft.chance(50):
        fields["count"] = draft.whole(4, 16)
    else:
        tip = palette.other(draft, 3, 5, hole=0.9)
        fields["beads"] = [bead.name] * draft.whole(4, 10) + [tip.name]
    turned = draft.chance(80)
    if turned:
        fields["turn"] = bead.name if draft.chance(70) else palette.seed(draft, "15/0", "11/0").name
    lines.drop_thread(draft, fields)
    if not legs and draft.chance(20):
        fields["legs"] = draft.whole(8, 16)
    if draft.chance(10) and not count:
        fields["measured"] = {"length": f"{draft.whole(15, 35)} mm"}
        draft.maybe(50, fields["measured"], mass=f"{draft.between(0.1, 0.6)} g")
    return Drop(draft.add(draft.pick("leg", "drop", "tassel leg"), fields), count)


def wrapped_drop(draft: Draft) -> str:
    """A drop by the hole across its top, in a wire that is bent up on both its sides."""
    bead = palette.other(draft, 5, 9, hole=0.9)
    draft.beads[bead.name]["drilled"] = "top" if draft.chance(90) else "through"
    fields: Fields = {"kind": "wire link", "type": "briolette wrap", "beads": bead.name}
    fields |= {"wire": draft.wire(0.4, 0.6).written, "loop": {"hole": draft.length(2.4)}}
    draft.maybe(60, fields, loops="wrapped", wraps=draft.pick(2, 3))
    draft.maybe(70, fields, length=draft.length(60.0))
    return draft.add("wrap", fields)


class Pin(NamedTuple):
    """A wire link or a pin, with what it adds along the run, about, mm."""

    name: str
    along: float
    wrapped: bool


def wire_link(draft: Draft, type_: str = "", *, over: str = "", cone_over: float = 10.0) -> Pin:
    """A wire link or a pin; `over` names the cone that it runs through."""
    type_ = type_ or draft.pick("link", "head pin", "eye pin")
    loops = draft.pick("simple", "wrapped")
    wraps = draft.pick(2, 3) if loops == "wrapped" else 0
    fields: Fields = {"kind": "wire link", "type": type_}
    stack, hole = 0.0, draft.between(2.2, 3.0, 0.2)
    wire = draft.wire(0.6, 0.82)
    fields["wire"] = wire.written
    draft.maybe(100 if loops == "wrapped" else 80, fields, loops=loops)
    fields["loop"] = {"hole": draft.length(hole)}
    draft.maybe(60 if wraps == 3 else 100 if wraps else 0, fields, wraps=wraps)
    if over:
        fields["over"] = over
        stack = cone_over
    else:
        bead = palette.other(draft, 4, 8, hole=draft.pick(1.0, 1.2))
        if draft.chance(8):
            del draft.beads[bead.name]
            bead = beaded_beads.woven(draft)
        if draft.chance(30):
            two = palette.seed(draft, "8/0")
            fields["beads"] = [two.name, bead.name, two.name]
            stack = bead.length + 2 * two.length
        else:
            fields["beads"] = bead.name
            count = draft.whole(1, 3)
            draft.maybe(100 if count > 1 else 60, fields, count=count)
            stack = count * bead.length
    ends = 2 if type_ == "link" else 1
    need = stack + ends * (3.15 * (hole + wire.mm) + wraps * 6.3 * wire.mm + 12)
    draft.maybe(90, fields, length=draft.length(round(draft.fit(need) / 5 + 0.8) * 5))
    draft.maybe(25, fields, temper=draft.pick("half hard", "annealed", "hard", "spring"))
    draft.metalwork(fields, 0.4)
    if not draft.chance(20):
        fields.pop("mass", None)
    along = stack + 2 * (hole + wire.mm + wraps * wire.mm)
    draft.maybe(8, fields, measured={"along": f"{round(along, 1)} mm"})
    called = {"link": "beaded link", "head pin": "pin", "eye pin": "eye pin"}[type_]
    return Pin(draft.add(called if not over else "cone wire", fields), along, loops == "wrapped")
