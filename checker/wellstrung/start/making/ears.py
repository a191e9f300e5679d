"""Earrings: a brick top with a fringe, and a bead on a pin."""

from __future__ import annotations

from typing import Any

from wellstrung.start.leaves import Choose, Noted
from wellstrung.start.making import lines, links
from wellstrung.start.making.draft import Draft
from wellstrung.start.making.styles import Role, Style
from wellstrung.start.question import Choice
from wellstrung.start.words import Fields

_WOVEN = ("fused 6 lb", "fused 4 lb", "fused 8 lb", "nylon B", "nylon D")


def _hook(draft: Draft) -> str:
    fields: Fields = {"kind": "ear wire", "type": draft.answers["ear fitting"], "size": "usual"}
    metal = Noted(draft.answers["metal"], "goes through the ear: ask for its nickel statement")
    draft.parts["hook"] = {**fields, "wire": "20 AWG", "metal": metal}
    return "hook"


def _fringed(draft: Draft) -> None:
    answers = draft.answers
    top = draft.bead(answers["top beads"], "top bead")
    leg = draft.bead(answers["fringe beads"], "leg bead")
    wide = answers["across"]
    panel: Fields = {"kind": "woven band", "stitch": "brick", "beads": top}
    panel["across"] = draft.asked("across", wide, "beads at the widest, where the fringe hangs")
    panel["rows"] = Noted(wide - 1, "one bead fewer in each row, two at the top")
    panel["each_row"] = -1
    panel |= lines.sewn(draft)
    draft.parts["top"] = panel
    draft.hung = _fringe(draft, leg, wide)
    ring: Fields = {"kind": "jump ring", "outside": "4 mm", "wire": "20 AWG", "closing": "soldered"}
    draft.parts["ring"] = {**ring, "metal": answers["metal"]}
    draft.run = [_hook(draft), "ring", "top"]
    draft.do("weave", "top")
    for line in draft.hung:
        times = line["times"] if "times" in line else len(line["at"])
        draft.work.append({"do": "hang", "part": line["part"], "from": "top", "times": times})
    draft.do("sew", "ring", to="top")
    draft.do("finish thread", "top")
    draft.work.append({"do": "hang", "part": "ring", "from": "hook"})


def _fringe(draft: Draft, bead: str, wide: int) -> list[Any]:
    """A leg at each bead of the edge: longest in the middle, or every third ends in a bead."""
    longest, tip = draft.answers["legs"], draft.answers["leg ends"]
    hang = {"from": {"part": "top", "eyes": "first edge"}, "by": "thread", "passes": 2}
    common = {"turn": bead, "thread": lines.thread(short=True)}
    leg: Fields = {"kind": "bead drop", "beads": bead}
    if tip is None:
        half = [longest - 2 * step for step in range((wide + 1) // 2)][::-1]
        count: Any = {"mirror": half} if wide % 2 else [*half, *reversed(half)]
        even = min(half) >= 2
        leg["count"] = Noted(count, "beads down each leg") if even else longest
        draft.parts["leg"] = {**leg, **common}
        return [{"part": "leg", **hang, "times": wide}]
    name, middle = draft.bead(tip, "tip"), (wide + 1) // 2
    at = [place for place in range(1, wide + 1) if (place - middle) % 3 == 0]
    long: Fields = {"kind": "bead drop", "beads": [*[bead] * (longest - 1), name], **common}
    draft.parts["long leg"] = Noted(long, "every third, so that the beads at their ends have room")
    draft.parts["leg"] = {**leg, "count": max(1, longest - 3), **common}
    rest = {"part": "leg", **hang, "times": wide - len(at)}
    return [{"part": "long leg", **hang, "at": at}, rest]


def _pinned(draft: Draft) -> None:
    names = draft.repeat(draft.answers["strand beads"], "bead", "second", "third")
    pin: Fields = {"kind": "wire link", "type": "head pin", "wire": links.wire(draft)}
    pin["loops"] = "wrapped"
    pin |= {"loop": {"hole": "2.5 mm"}, "beads": names[0] if len(names) == 1 else names}
    long = Choose(tuple(f"{mm} mm" for mm in range(30, 121, 5)), "beads, loop and pliers")
    draft.parts["pin"] = draft.metal({**pin, "length": long})
    draft.run = [_hook(draft)]
    draft.hung = [{"part": "pin", "from": "hook"}]
    draft.do("wrap loop", "pin")
    draft.work.append({"do": "hang", "part": "pin", "from": "hook"})


STYLES = (
    Style(
        "brick top with a fringe", "a triangle of brick stitch, legs of beads below it", "woven",
        ("earrings",),
        (
            Role("top beads", "Which bead is the top of?", "11/0 cylinder"),
            Role("fringe beads", "Which bead are the legs of?", "15/0 Japanese"),
        ),
        _fringed, (), "across",
        (Choice("7", "narrow"), Choice("9", "usual"), Choice("11", "wide")), "9", _WOVEN,
        also=("brick", "brick stitch", "brick top", "brick top fringe", "fringe", "tassel"),
    ),
    Style(
        "bead on a pin", "beads on a head pin, its loop on the hook", "wired", ("earrings",),
        (Role("strand beads", "Which beads, bottom up?", "8 mm glass pearl", several=True),),
        _pinned, also=("pin", "head pin", "drop", "drop on a wire"),
    ),
)  # fmt: skip
