"""Findings: caps, cones, bead tips, crimps, rings, connectors, bars, pendants and bails."""

from __future__ import annotations

from typing import NamedTuple

from generated.draft import Draft, Fields
from generated.woven import Woven


class Finding(NamedTuple):
    """A finding, with what it adds to the run, about, mm."""

    name: str
    along: float


class Ring(NamedTuple):
    """A jump ring, with its inside and its wire, mm."""

    name: str
    inside: float
    wire: float


def eye(draft: Draft, hole: float, wire: float, *, opens: str = "no", faces: bool = True) -> Fields:
    """An eye: its hole, its wall and whether it opens."""
    fields: Fields = {"hole": draft.length(hole, 10), "wire": draft.length(wire)}
    draft.maybe(85 if opens == "no" else 100, fields, opens=opens)
    draft.maybe(10, fields, through=f"{round(wire, 2)} mm")
    draft.maybe(10, fields, edge=draft.length(1.2))
    if faces:
        draft.maybe(15, fields, faces=draft.pick("front", "side"))
    return fields


def ring(
    draft: Draft, *, inside: tuple[float, float] = (3.2, 5.0), closing: str = "", wire: float = 0.0
) -> Ring:
    """A jump ring; its wire is about a fifth of its inside, or as asked for."""
    closing = closing or draft.pick("open", "open", "open", "split")
    within = draft.between(*inside, 0.2)
    thick = wire or min(1.8, max(0.82, within / 4.6))
    of = draft.wire(thick * 0.88, thick * 1.12)
    fields: Fields = {"kind": "jump ring"}
    if draft.chance(65):
        outside = round(within + 2 * of.mm, 1)
        fields["outside"] = draft.length(outside, 5)
        within = outside - 2 * of.mm
    else:
        fields["inside"] = draft.length(within, 5)
    fields["wire"] = of.written
    fields["closing"] = closing
    draft.maybe(25, fields, temper=draft.pick("half hard", "hard", "annealed", "spring"))
    draft.metalwork(fields, 0.2 * within * of.mm**2 / 4)
    if not draft.chance(25):
        fields.pop("mass", None)
    if draft.chance(8):
        which = draft.pick("inside", "outside", "wire")
        sizes = {"inside": within, "outside": within + 2 * of.mm, "wire": of.mm}
        fields["measured"] = {which: f"{round(sizes[which], 2)} mm"}
    called = {"open": "ring", "split": "split ring", "closed": "closed ring"}
    return Ring(draft.add(called.get(closing, "soldered ring"), fields), within, of.mm)


def cap(draft: Draft, of: Woven, *, takes: str = "beads") -> Finding:
    """An end cap that takes the end of a rope or a braid."""
    goes_in = of.nub if takes == "nub" else of.outside
    bore = draft.fit(goes_in + (0.4 if takes == "nub" else 0.7))
    depth = draft.between(6, 8, 0.5)
    around = max(of.outside, bore + 1.7) if takes == "nub" else bore + 1.7
    return _cap(draft, bore, depth, around, takes)


def bundle_cap(draft: Draft, bundle: float) -> Finding:
    """An end cap that takes the gathered ends of strands or ropes."""
    bore = draft.fit(bundle + 0.5)
    return _cap(draft, bore, 7.0, bore + 2, "bundle")


def _cap(draft: Draft, bore: float, depth: float, outside: float, takes: str) -> Finding:
    fields: Fields = {"kind": "end cap", "bore": draft.length(round(bore, 1), 15)}
    draft.maybe(12, fields, type=draft.pick("fold-over", "glue-in"))
    draft.maybe(92, fields, depth=draft.length(depth))
    draft.maybe(85, fields, outside=draft.length(round(outside, 1)))
    draft.maybe(95, fields, length=draft.length(depth + 5))
    draft.maybe(100 if takes != "beads" else 45, fields, takes=takes)
    wall = draft.between(1.0, 1.2)
    fields["eye"] = eye(draft, draft.between(2.0, 2.6), wall)
    draft.metalwork(fields, bore / 5)
    if draft.chance(12):
        fields["measured"] = {"bore": f"{round(bore, 1)} mm"}
        draft.maybe(40, fields["measured"], depth=f"{depth} mm")
    return Finding(draft.add("cap", fields), 5 - wall + (depth if takes == "nub" else 0))


def cone(draft: Draft, bundle: float) -> str:
    """A cone over the gathered ends of strands."""
    bore = round(draft.fit(bundle * 1.12), 1)
    fields: Fields = {"kind": "cone", "bore": draft.length(bore, 15)}
    draft.maybe(95, fields, hole=draft.length(draft.between(1.5, 2.2)))
    draft.maybe(92, fields, depth=draft.length(8.0))
    draft.maybe(60, fields, outside=draft.length(bore + 1.7))
    draft.maybe(92, fields, length=draft.length(draft.between(14, 20, 1)))
    draft.metalwork(fields, 2.0)
    if draft.chance(25):
        fields["measured"] = {"bore": f"{bore} mm"}
        draft.maybe(40, fields["measured"], hole="1.8 mm")
    return draft.add("cone", fields)


def french_wire(draft: Draft, line: float) -> str:
    """French wire over a line, by its size or by its own sizes."""
    fields: Fields = {"kind": "french wire"}
    if draft.chance(60):
        fits = "fine" if line < 0.4 else "medium" if line < 0.55 else "heavy"
        fields["size"] = fits if draft.chance(85) else "heavy"
    else:
        inside = round(draft.fit(line + 0.15), 2)
        fields |= {"inside": draft.length(inside), "outside": draft.length(round(inside + 0.25, 2))}
    draft.maybe(70, fields, length=draft.length(9.5))
    draft.metalwork(fields, 0.05)
    fields.pop("mass", None)
    return draft.add("gimp", fields)


def crimp(draft: Draft, line: float, strands: int = 1) -> str:
    """A crimp that two passes of a line go through."""
    inside = round(draft.fit(2 * line * strands**0.5 + 0.25), 2)
    fields: Fields = {"kind": "crimp", "inside": draft.length(inside, 10)}
    draft.maybe(85, fields, outside=draft.length(inside + 0.6))
    draft.maybe(92, fields, length=draft.length(2.0))
    draft.metalwork(fields, 0.03)
    draft.maybe(15, fields, measured={"inside": f"{inside} mm"})
    if draft.chance(15):
        fields["cover"] = crimp_cover(draft, inside + 0.6)
    return draft.add("crimp", fields)


def crimp_cover(draft: Draft, over: float) -> str:
    """A cover for a crimp, by its size or by its own sizes."""
    inside = round(draft.fit(over + 0.5), 1)
    fields: Fields = {"kind": "crimp cover"}
    draft.maybe(60, fields, size=draft.length(round(inside + 0.6, 1)))
    if "size" not in fields or draft.chance(50):
        fields |= {"inside": draft.length(inside), "outside": draft.length(inside + 0.6)}
    draft.metalwork(fields, 0.06)
    draft.maybe(10, fields, measured={"inside": f"{inside} mm"})
    return draft.add("cover", fields)


def brooch_pin(draft: Draft, behind: str) -> str:
    """A pin that is sewn behind a panel."""
    fields: Fields = {"kind": "brooch pin", "behind": behind}
    draft.maybe(90, fields, length=draft.length(draft.pick(12.0, 19.0, 25.0, 32.0)))
    draft.maybe(30, fields, width=draft.length(5.0))
    draft.maybe(40, fields, held=draft.pick("sewn", "sewn", "glued"))
    draft.metalwork(fields, 2)
    name = draft.add("pin", fields)
    draft.step("sew", "sew", name, to=behind)
    return name


def bead_tip(draft: Draft, line: float) -> Finding:
    """A bead tip over the knot, or over a crimp, at the end of a strand."""
    covers = draft.pick("double overhand", "overhand", "crimp", "")
    across = 4.5 if covers == "double overhand" else 3
    fields: Fields = {"kind": "bead tip", "inside": draft.length(round(across * line + 0.8, 1))}
    draft.maybe(92, fields, hole=draft.length(max(0.6, round(line * 1.7, 1))))
    if covers == "crimp":
        fields["covers"] = crimp(draft, line)
        fields["inside"] = "3 mm"
    elif covers:
        fields["covers"] = covers
    draft.maybe(70, fields, outside=draft.length(4.5))
    length = draft.between(6, 9, 0.5)
    draft.maybe(95, fields, length=draft.length(length))
    fields["eye"] = eye(draft, 1.9, 0.7, opens=draft.pick("yes", "yes", "no"))
    draft.metalwork(fields, 0.1)
    if draft.chance(25):
        which = draft.pick("inside", "hole", "covered")
        fields["measured"] = {
            which: {"inside": "3 mm", "hole": "0.9 mm", "covered": "1.6 mm"}[which]
        }
    return Finding(draft.add("tip", fields), length - 0.7)


def connector(draft: Draft, *, length: float = 0.0, count: int = 2) -> str:
    """A connector with eyes at both ends; `count` is of both."""
    long = length or draft.between(14, 36, 2)
    fields: Fields = {"kind": "connector"}
    draft.maybe(97, fields, length=draft.length(long))
    draft.maybe(50, fields, width=draft.length(6.0))
    draft.maybe(25, fields, curved=draft.pick("yes", "no"))
    eyes = eye(draft, 2.2, 1.0)
    draft.maybe(25, eyes, spacing=draft.length(6.0))
    fields["eyes"] = {"count": count, **eyes} if count != 2 or draft.chance(90) else eyes
    draft.metalwork(fields, long / 12)
    return draft.add(draft.pick("link plate", "bar", "arc"), fields)


def spacer(draft: Draft, holes: int, spacing: float) -> str:
    """A spacer bar that keeps strands apart."""
    of: Fields = {"count": holes}
    draft.maybe(92, of, hole=draft.length(1.2))
    draft.maybe(45, of, wire="0.8 mm")
    draft.maybe(85, of, spacing=draft.length(round(draft.fit(spacing + 0.4), 1)))
    fields: Fields = {"kind": "spacer bar", "holes": of}
    draft.maybe(92, fields, thickness=draft.length(3.0))
    draft.metalwork(fields, 1.0)
    return draft.add(draft.pick("spacer", "rung"), fields)


def end_bar(draft: Draft, strands: int, spacing: float) -> str:
    """A bar that gathers strands to one eye."""
    of: Fields = {"count": strands, **eye(draft, 1.6, 1.0, faces=False)}
    draft.maybe(85, of, spacing=draft.length(round(draft.fit(spacing + 0.4), 1)))
    fields: Fields = {"kind": "end bar", "holes": of, "eye": eye(draft, 2.4, 1.0, faces=False)}
    draft.maybe(92, fields, length=draft.length(9.0))
    draft.metalwork(fields, 1.2)
    return draft.add("end bar", fields)


class Hanging(NamedTuple):
    """Something that hangs, with how many eyes it has at its top and at its bottom."""

    name: str
    top: int
    bottom: int


def pendant(draft: Draft, *, top: int = 1, bottom: int = 0, grams: float = 0.0) -> Hanging:
    """A pendant: eyes at its top, and at its bottom where something hangs from it."""
    weight = grams or draft.between(1, 9, 0.5)
    fields: Fields = {"kind": "pendant"}
    turned = {"faces": draft.pick("front", "side")} if draft.chance(20) else {}
    fields["top_eyes"] = {
        "count": top, **eye(draft, draft.between(2, 3, 0.2), 1.2, faces=False), **turned,
    }  # fmt: skip
    if top > 1:
        draft.maybe(50, fields["top_eyes"], spacing=draft.length(14.0))
    if bottom:
        eyes = eye(draft, draft.between(1.6, 2.2, 0.2), 1.0, faces=False)
        fields["bottom_eyes"] = {"count": bottom, **eyes}
        draft.maybe(75, fields["bottom_eyes"], spacing=draft.length(draft.between(5, 9, 1)))
        draft.maybe(10, fields["bottom_eyes"], faces=draft.pick("front", "side"))
    draft.maybe(70, fields, height=draft.length(draft.between(10, 34, 2)))
    draft.maybe(70, fields, width=draft.length(draft.between(8, 20, 1)))
    draft.maybe(25, fields, thickness=draft.length(2.0))
    draft.maybe(15, fields, faces=draft.pick("front", "side"))
    draft.metalwork(fields, weight)
    return Hanging(draft.add(draft.pick("charm", "frame", "medal"), fields), top, bottom)


def bail(draft: Draft, around: float, *, pinch: bool = False) -> str:
    """A bail that goes round a rope, a strand or a chain."""
    inside = round(draft.fit(around + 1.5), 1)
    fields: Fields = {"kind": "bail"}
    draft.maybe(80, fields, type="pinch" if pinch else "loop")
    fields["inside"] = draft.length(inside, 10)
    draft.maybe(75, fields, opens="yes" if pinch else "no")
    draft.maybe(85, fields, length=draft.length(inside + 4))
    fields["eye"] = eye(draft, 2.4, 1.0, opens="yes")
    draft.metalwork(fields, 0.9)
    draft.maybe(20, fields, measured={"inside": f"{inside} mm"})
    return draft.add("bail", fields)
