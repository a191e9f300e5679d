"""Pieces of woven bands: bracelets with buttons and slides, panels, a bezel with a fringe."""

from __future__ import annotations

from generated import aims, clasps, findings, glues, hangers, strung, woven
from generated.draft import Draft


def bracelet(draft: Draft) -> None:
    """A band with a slide, ribbon ends, or a button and its loop."""
    total = draft.within(draft.pick(aims.BRACELETS, aims.BRACELETS, aims.NECKLACES), 5)
    rest = draft.chance(45)
    type_ = draft.pick(*clasps.ON_BANDS)
    closed = draft.between(10, 16, 1)
    band = woven.band(draft, total - closed, draft.between(8, 28, 1), rest=rest)
    if type_ == "slide":
        clasp = clasps.slide(draft, band.width, band.thickness)
    elif type_ == "ribbon end":
        clasp = clasps.ribbon_end(draft, band.width, band.thickness)
    elif type_ == "snap":
        clasp = clasps.snap(draft, band.width)
    else:
        clasp = clasps.button(draft)
    if not rest:
        total += clasp.along - closed
    draft.run = [f"{clasp.name}.a", band.name, f"{clasp.name}.b"]
    woven_up(draft, band.name)
    if (type_ == "ribbon end" and draft.chance(70)) or (type_ == "slide" and draft.chance(20)):
        glues.glued(draft, clasp.name, band.name)
    else:
        more = {"times": 2} if type_ != "button and loop" else {}
        draft.maybe(30, more, passes=draft.whole(2, 4))
        draft.step("sew", "sew", clasp.name, to=band.name, **more)
    aims.worn(draft, total, band.thickness, rest=rest)


def woven_up(draft: Draft, band: str) -> None:
    """The steps that make a band."""
    draft.step("make", "weave", band)
    if draft.chance(45):
        draft.step("measure", "measure", band)
    draft.step("finish", "finish thread", band)


def fringed_collar(draft: Draft) -> None:
    """A band with rings sewn to its ends, a clasp, and a fringe or charms along it."""
    total = draft.within(draft.pick(aims.NECKLACES, aims.BRACELETS), 5)
    rest = draft.chance(40)
    clasp = clasps.eyed(draft)
    shut = findings.ring(draft, closing=draft.pick("soldered", "closed"))
    ring = findings.ring(draft)
    ends = clasp.along + 2 * (ring.inside + shut.inside)
    band = woven.band(draft, total - ends, draft.between(5, 14, 1), rest=rest)
    woven_up(draft, band.name)
    draft.run = [f"{clasp.name}.a", ring.name, shut.name, band.name, shut.name, ring.name,
                 f"{clasp.name}.b"]  # fmt: skip
    draft.step("sew", "sew", shut.name, to=band.name, times=2)
    draft.step("close", "close ring", ring.name)
    if draft.chance(70):
        edge = draft.pick("first edge", "last edge")
        hangers.fringe(draft, band.name, edge, band.across, band.bead)
    else:
        hangers.along(draft, band.name, total, draft.pick("bottom edge", "top edge"))
    aims.worn(draft, total, band.thickness, rest=rest)


def band_and_strand(draft: Draft) -> None:
    """A woven middle with a strand on either side, in crimps."""
    total = draft.within(draft.pick(aims.NECKLACES, aims.BRACELETS), 5)
    clasp = clasps.eyed(draft)
    long = round(total / 3)
    middle = woven.band(draft, long, draft.between(6, 14, 1))
    woven_up(draft, middle.name)
    row = strung.strand(draft, (total - long - clasp.along) / 2, stitch="strung")
    draft.step("make", "string", row.name)
    draft.step("sew", "sew", row.name, to=middle.name, times=2)
    draft.step("sew", "sew", clasp.name, to=row.name, times=2)
    draft.run = [f"{clasp.name}.a", row.name, middle.name, row.name, f"{clasp.name}.b"]
    draft.maybe(50, draft.head, centre=middle.name)
    aims.worn(draft, long + 2 * row.length + clasp.along, middle.thickness)


def brooch(draft: Draft) -> None:
    """A small panel with a fringe: a brooch or a pendant without more."""
    panel = woven.panel(draft, draft.whole(6, 14))
    draft.step("make", "weave", panel.name)
    draft.step("finish", "finish thread", panel.name)
    draft.run = [panel.name]
    hangers.fringe(draft, panel.name, "first edge", panel.across, panel.bead)
    draft.head |= {"piece": draft.pick("brooch", "pendant", "key ring")}
    if draft.head["piece"] == "brooch":
        findings.brooch_pin(draft, panel.name)
    draft.maybe(40, draft.head, wearer={"age": "adult"})
    draft.maybe(40, draft.head, closes="open")


def finger_ring(draft: Draft) -> None:
    """A narrow band sewn to a ring for a finger."""
    total = draft.between(55, 70, 1)
    band = woven.band(draft, total, draft.between(4, 9, 1))
    woven_up(draft, band.name)
    draft.step("sew", "sew", band.name)
    draft.run = [band.name]
    draft.head |= {"piece": "ring", "run_is": "loop"}
    draft.maybe(70, draft.head, closes="sewn")
    draft.maybe(60, draft.head, inside=draft.sizes.window(total - 3.14 * band.thickness, 3))


def bezel_pendant(draft: Draft) -> None:
    """A stone in a bezel on a ring, often with a fringe."""
    sewn = draft.chance(30)
    setting = woven.cabochon(draft) if sewn else woven.bezel(draft, eye=True)
    if sewn and draft.chance(60):
        glues.on_layers(draft, setting.name)
    draft.step("make", "weave", setting.name)
    draft.step("finish", "finish thread", setting.name)
    inside = draft.between(4, 8, 0.5)
    closing = draft.pick("soldered", "closed", "open")
    held = findings.ring(draft, inside=(inside, inside + 1), closing=closing)
    draft.run = [held.name, setting.name]
    draft.step("sew", "sew", held.name, to=setting.name)
    if closing == "open":
        draft.step("close", "close ring", held.name)
    if draft.chance(50) and setting.bead is not None and not sewn:
        edge = draft.parts[setting.name]["around"] // 2
        hangers.fringe(draft, setting.name, "edge", draft.pick(3, 5), setting.bead, spread=False)
        line = draft.hung[-1]
        count = line.get("times", 1)
        first = max(1, edge // 2 - count // 2)
        draft.maybe(60, line, at=list(range(first, first + count)))
    if sewn and "edge_row" in draft.parts[setting.name]:
        draft.step("hang", "edge", setting.name)
    draft.head |= {"piece": draft.pick("pendant", "pendant", "key ring")}
    draft.maybe(80, draft.head, wearer={"age": "adult"})


ALL = (bracelet, bracelet, bracelet, fringed_collar, band_and_strand, brooch, finger_ring,
       bezel_pendant)  # fmt: skip
