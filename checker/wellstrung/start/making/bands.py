"""Woven bands: cuffs, loomed bands, netted collars."""

from __future__ import annotations

from typing import Any

from wellstrung.start.leaves import Noted
from wellstrung.start.making import ends, lines
from wellstrung.start.making.draft import Draft
from wellstrung.start.making.styles import BUTTON, SLIDE, Role, Style
from wellstrung.start.question import Choice
from wellstrung.start.words import Fields

_LENGTH = "what the closure leaves of the length asked for: worked out at each check"
_PIECES = ("bracelet", "necklace", "anklet")
_WOVEN = ("fused 6 lb", "fused 8 lb", "fused 4 lb", "nylon D", "nylon B", "gel-spun braided 10 lb")


def _band(stitch: str, more: Fields) -> Any:
    def build(draft: Draft) -> None:
        answers = draft.answers
        names = draft.repeat(answers["band beads"], "band bead", "second")
        mixed: Any = names[0] if len(names) == 1 else {name: names.count(name) for name in names}
        band: Fields = {"kind": "woven band", "stitch": stitch, "beads": mixed}
        counted = "loops from edge to edge" if "loop" in more else "beads from edge to edge"
        band["across"] = draft.asked("across", answers["across"], counted)
        band |= {"length": Noted("fills the rest", _LENGTH), **more, **lines.sewn(draft)}
        draft.parts["band"] = band
        draft.do("weave", "band")
        draft.do("measure", "band")
        draft.work += draft.before_ends
        if answers["closing"] == SLIDE:
            ends.slide(draft, "band")
        else:
            ends.button(draft, "band", names[0])
        draft.do("finish thread", "band")

    return build


def _style(
    name: str, about: str, counts: tuple[Choice, ...], usual: str, bead: str, **more: Any
) -> Style:
    closings, also = more.pop("closings", (BUTTON, SLIDE)), more.pop("also", ())
    roles = (Role("band beads", "Which beads is the band of?", bead, several=True),)
    return Style(
        name, about, "woven", _PIECES, roles, _band(name, more), closings, "across", counts, usual,
        _WOVEN, also=also,
    )  # fmt: skip


_CUFF = (Choice("8", "narrow"), Choice("14", "usual"), Choice("20", "wide"))
STYLES = (
    _style(
        "flat peyote",
        "a smooth flat band, a cuff",
        _CUFF,
        "14",
        "11/0 Japanese",
        also=("peyote", "even count peyote"),
    ),
    _style(
        "square",
        "square stitch: beads in straight rows",
        _CUFF,
        "8",
        "11/0 Japanese",
    ),
    _style("loom", "woven on a loom, on warp threads", _CUFF, "14", "11/0 cylinder", warp="0.2 mm"),
    _style(
        "right-angle weave",
        "RAW: squares of four beads, supple",
        (Choice("3", "narrow"), Choice("4", "usual"), Choice("6", "wide")),
        "4",
        "11/0 Japanese",
        closings=(BUTTON,),
    ),
    _style(
        "netting",
        "open meshes: a light collar",
        (Choice("3", "narrow"), Choice("5", "usual"), Choice("8", "wide")),
        "5",
        "11/0 Japanese",
        loop=5,
        also=("netted collar",),
        closings=(BUTTON,),
    ),
)
