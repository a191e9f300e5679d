"""A clasp for several strands, in a phrase: as many loops at either half."""

from __future__ import annotations

import re

from wellstrung.common.patterns import Pattern
from wellstrung.common.places import Fault
from wellstrung.reading import tree
from wellstrung.reading.faults import fault, shown

_COUNTS = ("", "", "two", "three", "four", "five", "six", "seven")
#: how many strands a phrase says
STRANDS = Pattern(
    rf"(?<![\w./])(\d+|{'|'.join(_COUNTS[2:])}|multi(?:ple)?)[\s-]*(?:strands?|rows?|loops?)\b",
    re.IGNORECASE,
)


def loops_of(said: tree.Scalar, name: str, faults: list[Fault]) -> dict[str, tree.Node | None]:
    """The loops of a clasp for several strands, as many at either half."""
    word = said.text.lower()
    if word.startswith("multi"):
        advice = "write how many, as in `box clasp 18 mm, 3 strands`"
        says = f"`{name}` says {shown(said)} and not how many strands it takes"
        faults.append(fault(f"{says}: {advice}", said.place, remedy=advice))
        return {}
    said.value = _COUNTS.index(word) if word in _COUNTS else int(word)
    eye = tree.Spelled(said, {"eye": tree.Spelled(said, {"count": said})})
    return {"a": eye, "b": eye}
