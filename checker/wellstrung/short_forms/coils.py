"""Beads on memory wire as people write them: `kind: memory wire, beads: kelp, turns: 3`."""

from __future__ import annotations

from wellstrung.reading import tree
from wellstrung.short_forms.lines import line_words
from wellstrung.short_forms.phrase import Phrase, known_in

#: what belongs to the wire of a strand that is named by it
_OF_THE_WIRE = ("type", "size", "coil", "outside", "turns", "colour", "spool")


def on_memory_wire(part: tree.Mapping) -> tree.Mapping:
    """A part that is beads on memory wire, as a strand that is strung; any other as it is.

    Nobody knots on it or leaves it bare, so that a stitch need not be written.
    """
    kind, beads = part.entries.get("kind"), part.entries.get("beads")
    if kind is None or beads is None or not isinstance(kind.node, tree.Scalar):
        return part
    if _is_memory_wire(kind.node) and "thread" not in part.entries:
        part = _strand(part, kind)
    thread = part.entries.get("thread")
    if thread is None or "stitch" in part.entries or part.entries["kind"].node.value != "strand":
        return part
    said: tree.Node | None = thread.node
    if isinstance(said, tree.Mapping):
        said = said.entries["type"].node if "type" in said.entries else None
    if not isinstance(said, tree.Scalar) or not _is_memory_wire(said):
        return part
    return tree.with_more(part, {"stitch": tree.implied(thread.node, "strung")})


def _is_memory_wire(said: tree.Scalar) -> bool:
    its = {word: meant for word, meant in line_words().items() if meant == "memory wire"}
    if not known_in(said.text, its):  # the pattern of all words for lines takes long to compile
        return False
    word = Phrase(said).take_word(line_words())
    return word is not None and word.value == "memory wire"


def _strand(part: tree.Mapping, kind: tree.Entry) -> tree.Mapping:
    """The strand on the wire that a part is named by."""
    wire = {name: part.entries[name].node for name in _OF_THE_WIRE if name in part.entries}
    thread = tree.Spelled(kind.node, {"type": kind.node, **wire})
    own = {name: entry for name, entry in part.entries.items() if name not in wire}
    own["kind"] = tree.Entry(kind.key, tree.implied(kind.node, "strand"))
    return tree.with_more(tree.group(part, own), {"thread": thread})
