"""Beads in a phrase: `8/0 round Japanese, matte green`."""

from __future__ import annotations

import re
from collections.abc import Mapping

from wellstrung.common.places import Fault
from wellstrung.reading import tree
from wellstrung.reading.faults import fault, shown
from wellstrung.short_forms.phrase import Phrase

#: the size of a seed bead, which is no length
_OUGHT = re.compile(r"(?<![\w/])\d{1,2}\s*(?:/\s*0|°)(?![\w/])")
_TYPES: Mapping[str, str] = {
    "round": "round",
    "rocaille": "round",
    "seed bead": "round",
    "seed beads": "round",
    "cylinder": "cylinder",
    "cylinders": "cylinder",
    "cylinder bead": "cylinder",
    "cylinder beads": "cylinder",
}
_MAKES: Mapping[str, str] = {"japanese": "Japanese", "czech": "Czech"}


def bead(node: tree.Scalar, name: str, faults: list[Fault]) -> tree.Mapping | None:
    """A bead of the palette from a phrase."""
    phrase = Phrase(node)
    size = phrase.take(_OUGHT)
    if size is None:
        says = f"{shown(node)} of bead `{name}` has no size: write it as `8/0 round Japanese`"
        faults.append(fault(says, node.place))
        return None
    fields = {
        "type": phrase.take_word(_TYPES) or tree.implied(node, "round"),
        "size": size,
        "make": phrase.take_word(_MAKES),
        "colour": phrase.take_rest(),
    }
    return tree.Spelled(node, fields)
