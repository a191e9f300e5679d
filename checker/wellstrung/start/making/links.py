"""Wired work: beads on wire links, as in a rosary."""

from __future__ import annotations

from typing import Any

from wellstrung.start.leaves import Choose, Fill
from wellstrung.start.making import ends
from wellstrung.start.making.draft import Draft
from wellstrung.start.making.styles import EYED, OVER_HEAD, Role, Style
from wellstrung.start.words import Fields


def wire(draft: Draft) -> Any:
    """The wire that goes through the beads and still holds its loops."""
    gauges = ("22 AWG", "24 AWG", "20 AWG", "26 AWG")
    return draft.value("wire", Choose(gauges, "goes through the beads and holds its loops"))


def _linked(draft: Draft) -> None:
    names = draft.repeat(draft.answers["strand beads"], "bead", "second", "third")
    fields: Fields = {"kind": "wire link", "type": "link", "wire": wire(draft)}
    fields |= {"loops": draft.answers["loops"], "loop": {"hole": "2.5 mm"}}
    fields |= {"beads": names[0]} if len(names) == 1 else {"beads": names}
    long = Choose(tuple(f"{mm} mm" for mm in range(30, 121, 5)), "wire for beads, loops and pliers")
    draft.parts["link"] = draft.metal({**fields, "length": long})
    count = Fill(30.0, "so that the piece comes out as long as asked", counted=True)
    group: Any = {"repeat": count, "of": ["link"]}
    if draft.answers["closing"] == OVER_HEAD:
        draft.run, draft.head["run_is"] = [group], "loop"
    else:
        least = 3 if draft.answers["closing"] == "toggle" else 1
        rings = Choose(tuple(range(least, least + 5)), "rings that make up the length")
        ends.eyed(draft, [group], [], {"part": "ring", "linked": rings})
    draft.work.insert(0, {"do": "wrap loop", "part": "link"})
    draft.work[1:1] = draft.before_ends


STYLES = (
    Style(
        "wire links", "a bead on each link, link in link: a rosary chain", "wired",
        ("necklace", "bracelet", "anklet"),
        (Role("strand beads", "Which beads are on a link?", "6 mm glass pearl", several=True),),
        _linked, (*EYED, OVER_HEAD), counted="2 cm", linked=True,
        also=("rosary", "links", "wire linked", "linked"),
    ),
)  # fmt: skip
