"""What closes a piece and what holds its ends: clasps, rings, caps, crimps, bead tips."""

from __future__ import annotations

from typing import Any

from wellstrung.start.leaves import Choose, Noted
from wellstrung.start.making.draft import Draft
from wellstrung.start.making.styles import BREAKAWAY, BUTTON, SLIDE
from wellstrung.start.words import Fields


def clasp(draft: Draft, called: str, *, strands: int = 1) -> str:
    """A clasp that is held by eyes, by the size that shops sell it by; its name."""
    type_ = "hook" if called == BREAKAWAY else called
    size = draft.asked("clasp size", draft.answers["clasp size"], "as the shop sells it")
    fields: Fields = {"kind": "clasp", "type": type_, "size": size}
    if strands > 1:
        fields |= {half: {"eye": {"count": strands}} for half in "ab"}
    if called == BREAKAWAY:
        asked = "the pull at which it opens, as its supplier states it: ask for the test"
        fields["breakaway"] = Noted("15 N", asked)
    if type_ == "magnetic":
        fields["pull"] = Noted("12 N", "as its supplier states it, pulled straight")
    draft.parts["clasp"] = draft.metal(fields)
    return "clasp"


def ring(draft: Draft) -> str:
    """The open ring that joins an end to the clasp."""
    fields: Fields = {"kind": "jump ring"}
    outside = Choose(("5 mm", "6 mm", "4 mm", "7 mm"), "goes through both eyes with room to move")
    wire = Choose(("20 AWG", "18 AWG", "22 AWG"), "stays shut on this weight")
    fields["outside"] = draft.value("ring", outside)
    draft.parts["ring"] = draft.metal({**fields, "wire": wire, "closing": "open"})
    return "ring"


def cap(draft: Draft, rope: str) -> str:
    """The cap that takes the end of a rope, and the glue in it."""
    sizes = tuple(f"{half / 2:g} mm" for half in range(5, 31))
    measure = "measure the first 2 cm of the rope, then take the cap; {} would do for now"
    bore = draft.value(
        "cap",
        Choose(
            sizes,
            "takes the rope",
            else_open=measure,
            near=f"{rope}.outside",
        ),
    )
    fields: Fields = {"kind": "end cap", "size": "usual", "takes": "beads", "bore": bore}
    draft.parts["cap"] = draft.metal(fields)
    glue = Noted({"kind": "adhesive", "type": "two-part epoxy"}, "its own data sheet comes first")
    draft.parts["glue"] = glue
    return "cap"


def glued(draft: Draft, rope: str) -> None:
    """The steps that glue both caps."""
    prepared = ["roughened", "degreased"]
    draft.do("glue", "cap", to=rope, joints=2, prepared=prepared, **{"with": "glue"})
    draft.work.append(Noted({"do": "wait", "time": "24 h"}, "or what the glue's data sheet says"))


def crimp(draft: Draft) -> str:
    """The crimp that holds flexible wire."""
    sizes = ("1.3 mm", "1 mm", "0.75 mm", "1.6 mm", "2.15 mm")
    inside = draft.value("crimp", Choose(sizes, "holds two lines of this wire"))
    fields: Fields = {"kind": "crimp", "size": "usual", "inside": inside}
    draft.parts["crimp"] = draft.metal(fields)
    return "crimp"


def bead_tip(draft: Draft) -> str:
    """The bead tip that shuts over the knot at an end."""
    hole = Choose(("0.8 mm", "1 mm", "0.7 mm", "1.2 mm"), "smaller than the knot that it holds")
    inside = Choose(("3 mm", "3.5 mm", "4 mm"), "shuts over the knot")
    fields: Fields = {"kind": "bead tip", "size": "usual", "inside": inside}
    fields["hole"] = draft.value("bead tip", hole)
    fields |= {"covers": Choose(("double overhand", "overhand"), "the knot at the end")}
    draft.parts["tip"] = draft.metal(fields)
    return "tip"


def button(draft: Draft, sewn_to: str, bead: str) -> None:
    """A button at one end and a loop of beads at the other."""
    counts = tuple(range(20, 44))
    fields: Fields = {"kind": "clasp", "type": BUTTON}
    fields["button"] = {"outside": "12 mm", "thickness": "5 mm", "hole": "1.5 mm"}
    count = Choose(counts, "so many go over the button and do not slip off")
    fields["loop"] = {"beads": bead, "count": count}
    fields["closed_length"] = Noted("17 mm", "edge to edge, closed and pulled: measure yours")
    note = "the button you have: measure across and through"
    draft.parts["button"] = Noted(draft.metal({**fields, "mass": "2 g"}), note)
    draft.run = ["button.a", sewn_to, "button.b"]
    draft.do("sew", "button", to=sewn_to)


def slide(draft: Draft, band: str) -> None:
    """A slide clasp over both ends of a band."""
    tubes = tuple({"length": f"{long} mm"} for long in (*range(8, 30), *range(30, 80, 2)))
    measure = "weave 2 cm and measure how wide it is; a tube of {} would do for now"
    fields: Fields = {"kind": "clasp", "type": SLIDE}
    why, near = "as wide as the band, and a little", f"{band}.width"
    fields["tube"] = Choose(tubes, why, else_open=measure, near=near)
    fields["closed_length"] = Noted("10 mm", "edge to edge of the band, closed: measure yours")
    draft.parts["slide"] = draft.metal({**fields, "mass": "4 g"})
    draft.run = ["slide.a", band, "slide.b"]
    draft.do("sew", "slide", to=band, times=2)


def eyed(draft: Draft, inner: list[Any], holds: list[str], far: Any = None) -> None:
    """A clasp with eyes at both ends of `inner`; `holds` stands between the rings and the work."""
    closing = draft.answers["closing"]
    name, near = clasp(draft, closing), ring(draft)
    if far is None and closing == "toggle":
        swings = "three rings, so that the bar swings through its ring"
        far = Noted({"part": near, "linked": 3}, swings)
    draft.run = [f"{name}.a", near, *holds, *inner, *reversed(holds), far or near, f"{name}.b"]
    draft.do("close ring", near)
