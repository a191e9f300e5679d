"""Strung and knotted work: one strand, several in cones or between bars, pearls, elastic."""

from __future__ import annotations

from typing import Any

from wellstrung.start.leaves import Choose, Fill, Noted
from wellstrung.start.making import ends, lines
from wellstrung.start.making.draft import Draft
from wellstrung.start.making.styles import EYED, KNOT, OVER_HEAD, Role, Style
from wellstrung.start.question import Choice
from wellstrung.start.words import Fields

_AROUND = ("necklace", "bracelet", "anklet")
_WIRE = ("flexible wire 0.015 in", "flexible wire 0.014 in", "flexible wire 0.019 in",
         "flexible wire 0.012 in", "flexible wire 0.018 in")  # fmt: skip
_REST = "what the ends leave of the length asked for: worked out at each check"
_FOUND = "so that the piece comes out as long as asked"
_BACK = "back through the crimp and the first beads"


def _unit(draft: Draft) -> str:
    asked = draft.answers["length"]
    return asked.unit if asked is not None and asked.unit.startswith("in") else "cm"


def _beads(draft: Draft) -> Any:
    names = draft.repeat(draft.answers["strand beads"], "bead", "spacer")
    return names[0] if len(names) == 1 else names


def _strand(draft: Draft, stitch: str, length: Any, tail: str, why: str) -> Fields:
    fields: Fields = {"kind": "strand", "stitch": stitch, "beads": _beads(draft)}
    return {**fields, **length, **lines.strung(tail, why)}


def _one(draft: Draft) -> None:
    rest = {"length": Noted("fills the rest", _REST)}
    draft.parts["strand"] = _strand(draft, "strung", rest, "5 cm", _BACK)
    draft.do("string", "strand")
    draft.work += draft.before_ends
    ends.crimp(draft)
    if draft.answers["closing"] == OVER_HEAD:
        draft.run, draft.head["run_is"] = ["strand", "crimp"], "loop"
        draft.do("crimp", "crimp", to="strand")
    else:
        draft.do("crimp", "crimp", to="strand", times=2)
        ends.eyed(draft, ["strand"], ["crimp"])


def _knotted(draft: Draft) -> None:
    rest = {"length": Noted("fills the rest", _REST)}
    strand = _strand(draft, "knotted", rest, "8 cm", "for the knot at each end")
    note = "tie ten test knots between beads and measure what one adds; from the thread until then"
    strand["knot_adds"] = Noted(None, note)
    draft.parts["strand"] = strand
    draft.do("string", "strand")
    draft.do("knot", "strand")
    draft.work += draft.before_ends
    ends.bead_tip(draft)
    ends.eyed(draft, ["strand"], ["tip"])


def _together(draft: Draft) -> list[Any]:
    """Strands side by side, the innermost first."""
    many = draft.answers["strands"]
    base = {"length": Fill(400.0, _FOUND, unit=_unit(draft), give=" ± 1 mm")}
    draft.parts["strand"] = _strand(draft, "strung", base, "5 cm", _BACK)
    draft.do("string", "strand", times=many)
    draft.work += draft.before_ends
    return [{"strands": ["strand"] * many}]


def _cones(draft: Draft) -> None:
    inner = _together(draft)
    sizes = tuple(f"{wide} mm" for wide in range(6, 19))
    bore = draft.value("cone", Choose(sizes, "takes the ends side by side"))
    draft.parts["cone"] = draft.metal({"kind": "cone", "size": "usual", "bore": bore})
    link: Fields = {"kind": "wire link", "type": "link", "wire": "20 AWG", "loops": "wrapped"}
    link |= {"loop": {"hole": "3 mm"}, "length": "90 mm", "over": "cone"}
    note = "its inner loop takes the strands, its outer loop stands out of the cone"
    draft.parts["link"] = Noted(draft.metal(link), note)
    draft.do("wrap loop", "link", times=4)
    ends.eyed(draft, inner, ["link", "cone"])


def _bars(draft: Draft) -> None:
    many = draft.answers["strands"]
    inner = _together(draft)
    apart = Choose(
        tuple(f"{half / 2:g} mm" for half in range(6, 31)),
        "the strands lie flat",
        near="strand.outside",
    )
    holes = {"count": many, "spacing": apart}
    draft.parts["bar"] = draft.metal({"kind": "spacer bar", "size": "usual", "holes": holes})
    name = ends.clasp(draft, draft.answers["closing"], strands=many)
    ends.crimp(draft)
    sections = [*inner, "bar", *inner, "bar", *inner]
    draft.run = [f"{name}.a", "crimp", *sections, "crimp", f"{name}.b"]
    step = {"do": "crimp", "part": "crimp", "to": "strand"}
    draft.work.append(Noted(step, f"one on each strand at each end: {2 * many} crimps"))


def _elastic(draft: Draft) -> None:
    count = {"count": Fill(24.0, _FOUND, counted=True)}
    strand = _strand(draft, "strung", count, "5 cm", "to tie with, then trimmed")
    draft.parts["strand"] = strand
    draft.run, draft.head["run_is"] = ["strand"], "loop"
    draft.do("string", "strand")
    draft.do("knot", "strand")


def _role(asks: str, bead: str) -> tuple[Role, ...]:
    return (Role("strand beads", asks, bead, several=True),)


_WHICH = "Which beads, in the order of their repeat?"
_MANY = (Choice("2"), Choice("3", "usual"), Choice("5"))
STYLES = (
    Style(
        "one strand", "strung on flexible wire, crimped", "strung", _AROUND,
        _role(_WHICH, "6 mm glass pearl"), _one, (*EYED, OVER_HEAD), threads=_WIRE, ends="crimp",
        also=("one", "single", "single strand", "simple", "strand"),
    ),
    Style(
        "several strands in cones", "their ends gathered in a cone at each side", "strung",
        ("necklace", "bracelet"), _role(_WHICH, "4 mm glass pearl"), _cones, EYED, "strands", _MANY,
        "3", _WIRE, "cone", also=("cones", "in cones"),
    ),
    Style(
        "several strands with spacer bars", "kept side by side by bars with a hole for each",
        "strung", ("necklace", "bracelet"), _role(_WHICH, "4 mm glass pearl"), _bars,
        ("magnetic", "hook"), "strands", _MANY, "3", _WIRE, "crimp",
        also=("bars", "spacer bars", "with bars", "separator bars"), ringed=False,
    ),
    Style(
        "elastic", "stretched over the hand and knotted", "strung", ("bracelet", "anklet"),
        _role(_WHICH, "8 mm stone round"), _elastic, (KNOT,),
        threads=("elastic 0.7 mm", "elastic 0.5 mm", "elastic 1 mm"), counted="2 cm",
    ),
    Style(
        "knotted pearls", "a knot between beads, the ends in bead tips", "knotted", _AROUND,
        _role(_WHICH, "6 mm glass pearl"), _knotted, EYED,
        threads=("silk 4", "silk 5", "silk 3", "silk 2", "silk 6", "silk 8"), ends="bead tip",
        also=("pearls", "knotted", "knotted strand"),
    ),
)  # fmt: skip
