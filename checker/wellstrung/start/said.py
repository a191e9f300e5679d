"""Phrases of the trade in an answer, read as the same phrase in a plan is read."""

from __future__ import annotations

from typing import Any

from wellstrung.reading import parser
from wellstrung.short_forms import spelled_out
from wellstrung.start.question import Refused
from wellstrung.start.writer import flow

Fields = dict[str, Any]


def bead(text: str) -> Fields:
    """The fields of a bead.

    >>> bead("8/0 Japanese, matte green")
    {'type': 'round', 'size': '8/0', 'make': 'Japanese', 'colour': 'matte green'}
    """
    return _fields({"beads": {"bead": text}}, "beads", "bead")


def thread(text: str) -> Fields:
    """The fields of a thread, a wire or a cord.

    >>> thread("6 lb fused"), thread("silk No. 4")
    ({'type': 'fused', 'rating': '6 lb'}, {'type': 'silk', 'size': '4'})
    """
    part = {"kind": "strand", "thread": text}
    return _fields({"parts": {"work": part}}, "parts", "work", "thread")


def _fields(plan: Fields, *path: str) -> Fields:
    """What a phrase at a place of a plan means; raises Refused."""
    read = parser.read_text("\n".join(f"{name}: {flow(value)}" for name, value in plan.items()), "")
    faults = tuple(read.faults)
    if read.tree is not None:
        read, faults = spelled_out(read)
    if faults or read.tree is None:
        raise Refused(faults[0].says)
    found: Any = read.tree.value
    for name in path:
        found = found[name]
    if not isinstance(found, dict):
        raise Refused(f"`{found}` cannot be read")
    return found
