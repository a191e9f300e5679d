"""Lines to write for a step that was not understood, with the plan's own parts in them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from msgspec import Struct

from wellstrung_schemas import verbs

#: the words before the second part that a step names; each is the field that takes it
BEFORE = ("to", "onto", "with", "around", "from", "by")
#: kinds that are woven, to which others are sewn
WOVEN = (
    "woven rope", "woven band", "pouch", "bezel", "braid", "beaded bead", "embroidered cabochon",
)  # fmt: skip
#: a kind of part -> what is done to make it or to put it on, the most usual first
_DONE: Mapping[str, tuple[str, ...]] = {
    **dict.fromkeys((*WOVEN, "ring weave"), ("weave",)),
    "strand": ("string", "knot"),
    "jump ring": ("close ring",),
    "crimp": ("crimp",),
    "bead tip": ("crimp",),
    "wire link": ("wrap loop", "hang"),
    "chain piece": ("cut", "hang"),
    "brooch pin": ("sew",),
    **dict.fromkeys(("bead drop", "tassel", "pendant"), ("hang",)),
}  # fmt: skip
#: the parts that steps are explained with in the schema -> kinds of the plan that stand for them
_SUCH: Mapping[str, tuple[str, ...]] = {
    "rope": ("woven rope", "braid", "woven band", "strand", "pouch", "bezel"),
    "band": ("woven band", "woven rope", "strand"),
    "strand": ("strand",),
    "cap": ("end cap", "cone", "brooch pin"),
    "glue": ("adhesive",),
    "small": ("jump ring",),
    "carrier": ("jump ring", "bail"),
    "frame": ("pendant", "tassel", "bead drop"),
    "drop": ("chain piece",),
    "closure": ("clasp", "brooch pin"),
    "crimp": ("crimp", "bead tip"),
    "link": ("wire link",),
}
#: what these steps make or end is of such kinds, whatever part explains them
_MADE_BY: Mapping[str, tuple[str, ...]] = {
    **dict.fromkeys(("weave", "finish thread"), WOVEN),
    "string": ("strand", "tassel", "bead drop"),
}
#: what beads are on or in: a clasp beside it is sewn to it
_SOFT = ("strand", "woven rope", "woven band", "braid")


class OfPlan(Struct, frozen=True):
    """What a plan says before its steps are read: the kind of each part, and its run by names."""

    kinds: Mapping[str, str]
    run: tuple[str, ...] = ()

    def example(self, verb: str) -> str:
        """A step of a verb in full, with parts of the plan where it has such parts."""
        [shown, *_] = verbs()[verb]["examples"]
        names = [field for field in ("part", *BEFORE) if field in shown]
        own = {name: self.such(str(shown[name]), verb * (name == "part")) for name in names}
        return said(verb, own, str(shown.get("time", "")))

    def such(self, word: str, verb: str = "") -> str:
        """A part of the plan that stands for one by which a step is explained, or else that."""
        kinds = _MADE_BY.get(verb) or _SUCH.get(word, ())
        found = (name for kind in kinds for name, of in self.kinds.items() if of == kind)
        return next(found, word)

    def about(self, part: str) -> tuple[str, ...]:
        """The lines of steps that make a part, or join it to what stands beside it in the run."""
        kind = self.kinds.get(part, "")
        if kind == "clasp":
            return tuple(dict.fromkeys(self._joining(part)))
        own = tuple(said(verb, {"part": part}) for verb in _DONE.get(kind, ()))
        return own or (self.example("glue"),) * (kind in _SUCH["cap"])

    def _joining(self, part: str) -> Iterator[str]:
        for at, name in enumerate(self.run):
            for beside in ((*self.run[max(at - 1, 0) : at], *self.run[at + 1 : at + 2])) * (
                name == part
            ):
                kind = self.kinds.get(beside, "")
                if kind in _SOFT:
                    yield f"sew {part} to {beside}"
                elif kind not in ("clasp", ""):
                    yield from self.about(beside)[:1]


def said(verb: str, fields: Mapping[str, str], time: str = "") -> str:
    """A step in one line, as one says it: `glue cap to rope with glue`."""
    part = fields.get("part", "")
    words = [verb, *([part] if part and not (part == "ring" and verb == "close ring") else [])]
    words += [f"{field} {fields[field]}" for field in BEFORE if fields.get(field)]
    return " ".join([*words, *([time] if time else [])])
