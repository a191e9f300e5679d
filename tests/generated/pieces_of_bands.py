"""Pieces of woven bands: cuffs, bracelets with buttons and slides, panels, a bezel with a fringe."""

from __future__ import annotations

from generated import aims, clasps, findings, glues, hangers, woven
from generated.draft import Draft


def bracelet(draft: Draft) -> None:
    """A band with a slide, ribbon ends, or a button and its loop."""
    total = draft.between(*draft.pick(aims.BRACELETS, aims.BRACELETS, aims.NECKLACES), 5)
    rest = draft.chance(45)
    type_ = draft.pick(*clasps.ON_BANDS)
    band = woven.band(draft, total - 15, draft.between(8, 28, 1), rest=rest)
    if type_ == "slide":
        clasp = clasps.slide(draft, band.width, band.thickness)
    elif type_ == "ribbon end":
        clasp = clasps.ribbon_end(draft, band.width, band.thickness)
    else:
        clasp = clasps.button(draft)
    if not rest and "length" in draft.parts[band.name]:
        draft.parts[band.name]["length"] = draft.length(round(total - clasp.along, 1))
    draft.run = [f"{clasp.name}.a", band.name, f"{clasp.name}.b"]
    _woven(draft, band.name)
    if type_ == "ribbon end" and draft.chance(70) or type_ == "slide" and draft.chance(20):
        glue = glues.adhesive(draft)
        draft.step("glue", "glue", clasp.name, to=band.name, with_=glue, joints=2)
        draft.step("wait", "wait", time="24 h")
    else:
        more = {"times": 2} if type_ != "button and loop" else {}
        draft.maybe(30, more, passes=draft.whole(2, 4))
        draft.step("sew", "sew", clasp.name, to=band.name, **more)
    aims.worn(draft, total, band.thickness, rest=rest)


def _woven(draft: Draft, band: str) -> None:
    draft.step("make", "weave", band)
    if draft.chance(45):
        draft.step("measure", "measure", band)
    draft.step("finish", "finish thread", band)


def fringed_collar(draft: Draft) -> None:
    """A band with rings sewn to its ends, a clasp, and a fringe or charms along it."""
    total = draft.between(*draft.pick(aims.NECKLACES, aims.BRACELETS), 5)
    rest = draft.chance(40)
    clasp = clasps.eyed(draft)
    shut = findings.ring(draft, closing=draft.pick("soldered", "closed"))
    ring = findings.ring(draft)
    band = woven.band(draft, total - clasp.along - 16, draft.between(5, 14, 1), rest=rest)
    _woven(draft, band.name)
    draft.run = [f"{clasp.name}.a", ring.name, shut.name, band.name, shut.name, ring.name,
                 f"{clasp.name}.b"]  # fmt: skip
    draft.step("sew", "sew", shut.name, to=band.name, times=2)
    draft.step("close", "close ring", ring.name)
    if draft.chance(70):
        edge = draft.pick("first edge", "last edge")
        hangers.fringe(draft, band.name, edge, band.across, band.bead)
    aims.worn(draft, total, band.thickness, rest=rest)


def brooch(draft: Draft) -> None:
    """A small panel with a fringe: a brooch or a pendant without more."""
    panel = woven.panel(draft, draft.whole(6, 14))
    draft.step("make", "weave", panel.name)
    draft.step("finish", "finish thread", panel.name)
    draft.run = [panel.name]
    hangers.fringe(draft, panel.name, "first edge", panel.across, panel.bead)
    draft.head |= {"piece": draft.pick("brooch", "pendant", "key ring")}
    draft.maybe(40, draft.head, wearer={"age": "adult"})
    draft.maybe(40, draft.head, closes="open")


def finger_ring(draft: Draft) -> None:
    """A narrow band sewn to a ring for a finger."""
    total = draft.between(55, 70, 1)
    band = woven.band(draft, total, draft.between(4, 9, 1))
    _woven(draft, band.name)
    draft.step("sew", "sew", band.name)
    draft.run = [band.name]
    draft.head |= {"piece": "ring", "run_is": "loop", "closes": draft.pick("sewn", "sewn", "open")}
    if draft.head["closes"] == "open":
        del draft.head["closes"]
    draft.maybe(60, draft.head, inside=draft.sizes.window(total - 6, 3))


def bezel_pendant(draft: Draft) -> None:
    """A stone in a bezel on a bail, often with a fringe."""
    setting = woven.bezel(draft)
    draft.step("make", "weave", setting.name)
    draft.step("finish", "finish thread", setting.name)
    inside = draft.between(4, 8, 0.5)
    held = findings.ring(draft, inside=(inside, inside + 1), closing=draft.pick("soldered", "open"))
    draft.run = [held.name, setting.name]
    draft.step("sew", "sew", held.name, to=setting.name)
    if draft.chance(50):
        edge = draft.parts[setting.name]["around"] // 2
        at = list(range(edge // 2 - 1, edge // 2 + 2))
        hangers.fringe(draft, setting.name, "edge", 3, setting.bead, spread=False)
        draft.maybe(60, draft.hung[-1], at=at) if draft.hung[-1].get("times", 1) == 3 else None
    if draft.chance(30):
        bail = findings.bail(draft, 4)
        del draft.parts[bail]
    draft.head |= {"piece": draft.pick("pendant", "pendant", "key ring")}
    draft.maybe(80, draft.head, wearer={"age": "adult"})


ALL = (bracelet, bracelet, fringed_collar, brooch, finger_ring, bezel_pendant)
