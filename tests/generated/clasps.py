"""Clasps of all types."""

from __future__ import annotations

from typing import NamedTuple

from generated import palette
from generated.draft import Draft, Fields
from generated.findings import eye

EYED = (
    "toggle", "hook", "lobster", "spring ring", "magnetic", "box", "S-clasp", "fold-over", "barrel",
)  # fmt: skip
ON_BANDS = ("slide", "ribbon end", "button and loop", "snap")
#: closed by the cord of a strand itself
ON_CORD = "sliding knots"
#: those that several strands come to
IN_ROWS = ("hook", "magnetic", "lobster", "box", "slide", "fold-over")


class Clasp(NamedTuple):
    """A clasp, with what it adds to the run when closed, about, mm."""

    name: str
    type: str
    along: float


def eyed(draft: Draft, *, type_: str = "", strands: int = 1, spacing: float = 6.0) -> Clasp:
    """A clasp that a ring, a wire or a thread holds by an eye at either half."""
    type_ = type_ or draft.pick(*EYED)
    fields: Fields = {"kind": "clasp", "type": type_}
    if type_ == "toggle" and strands == 1:
        along = _toggle(draft, fields)
    else:
        closed = draft.between(12, 24, 1)
        along = closed - 2
        _halves(draft, fields, type_, strands, spacing)
        draft.maybe(93, fields, closed_length=draft.length(closed))
    if type_ == "magnetic":
        _magnet(draft, fields)
    draft.metalwork(fields, draft.between(1, 5, 0.5))
    draft.maybe(15, fields, breakaway=draft.pick("12 N", "3 lb", "20 N"))
    return Clasp(draft.add(draft.pick(type_, "clasp"), fields), type_, along)


def loose(draft: Draft) -> Clasp:
    """A clasp of any type, by itself."""
    type_ = draft.pick(*EYED, *ON_BANDS, ON_CORD)
    if type_ == ON_CORD:
        return sliding(draft)
    if type_ == "slide":
        return slide(draft, 18.0, 2.0)
    if type_ == "ribbon end":
        return ribbon_end(draft, 18.0, 2.0)
    if type_ == "snap":
        return snap(draft, 18.0)
    return button(draft) if type_ == "button and loop" else eyed(draft, type_=type_)


def _toggle(draft: Draft, fields: Fields) -> float:
    wire = draft.between(1.6, 2.0, 0.2)
    outside = draft.between(12, 18, 1)
    opening = outside - 2 * wire
    stem, hole = 3.0, 2.4
    fields["ring"] = {
        "outside": draft.length(outside, 5),
        "wire": draft.length(wire),
        "eye": eye(draft, hole, 1.2, faces=False),
    }
    bar = {
        "length": draft.length(round(draft.fit(2 * opening - stem + 1.5), 1)),
        "thickness": draft.length(wire),
        "stem": draft.length(stem),
    }
    draft.maybe(15, bar, stem_width=draft.length(1.2))
    fields["bar"] = {**bar, "eye": eye(draft, hole, 1.2, faces=False)}
    if draft.chance(15):
        fields["ring"], fields["bar"], opening, wire = _woven_halves(draft)
    elif draft.chance(12):
        closed = opening + wire + 2 * (hole + 1.2) + stem
        fields["closed_length"] = draft.length(round(closed))
    return hole + wire + opening + stem + hole


def _woven_halves(draft: Draft) -> tuple[Fields, Fields, float, float]:
    """A ring and a bar of peyote, the ring's opening and how thick it is, about, mm."""
    bead = palette.seed(draft, "11/0")
    tube = {"kind": "woven rope", "stitch": "tubular peyote", "beads": bead.name}
    joined = draft.pick("edges", "ends", "")
    size: Fields = {"around": 40, "rounds": 8}
    if joined == "ends":
        size = {"around": 6, "length": "60 mm"}
    hoop = draft.add("hoop", {**tube, **size})
    bar = draft.add("bar", {**tube, "around": 8, "length": "30 mm"})
    ring: Fields = {"woven": hoop, **({"joined": joined} if joined else {})}
    for part in (hoop, bar):
        draft.step("make", "weave", part)
    return (
        {**ring, "eye": eye(draft, 2.4, 1.2, faces=False)},
        {"woven": bar, "stem": draft.length(6), "eye": eye(draft, 2.4, 1.2, faces=False)},
        14.0,
        3.6,
    )


def _halves(draft: Draft, fields: Fields, type_: str, strands: int, spacing: float) -> None:
    for half, hole in (("a", 1.9), ("b", 3.2 if type_ == "lobster" else 2.2)):
        of = eye(draft, hole, 1.0, opens=draft.pick("no", "no", "no", "yes"), faces=False)
        if strands > 1:
            of = {"count": strands, **of}
            draft.maybe(85, of, spacing=draft.length(round(draft.fit(spacing), 1)))
        fields[half] = {"eye": of}
    if type_ == "slide":
        fields["tube"] = {"length": draft.length(strands * spacing)}


def _magnet(draft: Draft, fields: Fields) -> None:
    draft.maybe(65, fields, pull=draft.pick("12 N", "20 N", "4 lb", "1.2 kgf", "8 N"))
    if draft.chance(25):
        fields["flux_index"] = draft.pick(30, 45, 60)
    elif draft.chance(30):
        fields["magnet"] = {"outside": draft.length(5.0), "flux_density": draft.pick(0.2, 0.3)}


def slide(draft: Draft, width: float, thickness: float) -> Clasp:
    """A slide clasp on the ends of a band."""
    tube: Fields = {"length": draft.length(round(draft.fit(width + 1.4), 1), 10)}
    draft.maybe(45, tube, slot=draft.length(round(thickness + 0.8, 1)))
    return _on_band(draft, "slide", {"tube": tube}, draft.between(8, 14, 1))


def ribbon_end(draft: Draft, width: float, thickness: float) -> Clasp:
    """Ribbon ends that bite on the ends of a band."""
    jaw: Fields = {"width": draft.length(round(draft.fit(width + 1.4), 1), 10)}
    jaw["gap"] = draft.length(round(thickness + 0.8, 1))
    draft.maybe(85, jaw, depth=draft.length(4.0))
    return _on_band(draft, "ribbon end", {"jaw": jaw}, draft.between(20, 30, 2), less=8)


def snap(draft: Draft, width: float) -> Clasp:
    """Snaps sewn between the ends of a band."""
    outside = min(draft.fit(7.0), width / 2)
    of: Fields = {"outside": draft.length(round(outside, 1))}
    draft.maybe(92, of, overlap=draft.length(9.0))
    draft.maybe(25, of, count=2)
    fields: Fields = {"kind": "clasp", "type": "snap", "snap": of}
    draft.metalwork(fields, 0.3)
    return Clasp(draft.add("snap", fields), "snap", -9.0)


def sliding(draft: Draft) -> Clasp:
    """Knots that slide along the ends of a cord."""
    ends = draft.between(40, 90, 5)
    of: Fields = {}
    draft.maybe(95, of, ends=draft.length(ends))
    draft.maybe(40, of, knots=draft.pick(1, 2))
    draft.maybe(50, of, turns=draft.pick(3, 4, 5))
    draft.maybe(20, of, knot=draft.length(6.0))
    fields: Fields = {"kind": "clasp", "type": ON_CORD, "sliding": of}
    return Clasp(draft.add("slider", fields), ON_CORD, 6.0 if of.get("knots") == 1 else ends)


def button(draft: Draft) -> Clasp:
    """A button and a loop that goes over it."""
    outside = draft.between(9, 16, 1)
    of_button: Fields = {"outside": draft.length(outside)}
    draft.maybe(85, of_button, thickness=draft.length(4.0))
    draft.maybe(50, of_button, hole=draft.length(1.5))
    loop: Fields = {}
    if draft.chance(70):
        bead = palette.seed(draft, "11/0", "8/0", measured=50)
        loop["beads"] = bead.name
        loop["count"] = round(draft.fit(2 * outside + 14) / bead.length)
    else:
        loop["around"] = draft.length(round(draft.fit(2 * outside + 9)))
    draft.maybe(35, loop, stretch=draft.pick("no", "yes"))
    return _on_band(draft, "button and loop", {"button": of_button, "loop": loop}, outside + 4)


def _on_band(draft: Draft, type_: str, with_: Fields, closed: float, less: float = 0) -> Clasp:
    fields: Fields = {"kind": "clasp", "type": type_, **with_}
    draft.maybe(93, fields, closed_length=draft.length(closed))
    draft.metalwork(fields, 3.0)
    return Clasp(draft.add("closure", fields), type_, closed - less)
