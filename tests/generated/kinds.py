"""One part of a kind, with the beads and the parts that it names."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import NamedTuple

from hypothesis import strategies as st

from generated import (
    beaded_beads,
    chains,
    clasps,
    ears,
    findings,
    glues,
    lines,
    pieces_worn,
    strung,
    woven,
)
from generated.choices import Choices, Drawn, Seeded
from generated.draft import Draft, Fields
from generated.layout import Layout


class OnePart(NamedTuple):
    """A part: its name, the palette it takes from, and all parts, itself and those it names."""

    name: str
    beads: Fields
    parts: Fields
    text: str

    @property
    def fields(self) -> Fields:
        """The fields of the part itself."""
        fields: Fields = self.parts[self.name]
        return fields


def _rope(draft: Draft) -> str:
    return woven.rope(draft, draft.between(100, 500, 10)).name


def _band(draft: Draft) -> str:
    if draft.chance(25):
        return woven.panel(draft, draft.whole(5, 14)).name
    return woven.band(draft, draft.between(100, 400, 10), draft.between(6, 30, 1)).name


def _bezel(draft: Draft) -> str:
    return woven.bezel(draft).name


def _cabochon(draft: Draft) -> str:
    return woven.cabochon(draft).name


def _pouch(draft: Draft) -> str:
    return woven.pouch(draft).name


def _braid(draft: Draft) -> str:
    return woven.braid(draft, draft.between(100, 500, 10)).name


def _strand(draft: Draft) -> str:
    length = draft.between(120, 500, 10)
    if draft.chance(20):
        return strung.graduated(draft, length).name
    if draft.chance(20):
        return strung.elastic(draft, length).name
    return strung.strand(draft, length).name


def _cap(draft: Draft) -> str:
    takes = draft.pick("beads", "nub", "bundle")
    if takes == "bundle":
        return findings.bundle_cap(draft, draft.between(6, 14, 0.5)).name
    outside = draft.between(4, 12, 0.1)
    of = woven.Woven("", outside, 0, None, round(outside * 0.6, 1))
    return findings.cap(draft, of, takes=takes).name


def _cone(draft: Draft) -> str:
    return findings.cone(draft, draft.between(6, 14, 0.5))


def _tip(draft: Draft) -> str:
    return findings.bead_tip(draft, draft.pick(0.4, 0.5, 0.7)).name


def _crimp(draft: Draft) -> str:
    return findings.crimp(draft, draft.pick(0.38, 0.3, 0.46))


def _ring(draft: Draft) -> str:
    closing = draft.pick("open", "closed", "split", "soldered")
    return findings.ring(draft, inside=(2.6, 18.0), closing=closing).name


def _connector(draft: Draft) -> str:
    return findings.connector(draft, count=draft.pick(2, 2, 4, 6))


def _spacer(draft: Draft) -> str:
    return findings.spacer(draft, draft.whole(2, 5), draft.between(3, 8, 0.5))


def _end_bar(draft: Draft) -> str:
    return findings.end_bar(draft, draft.whole(2, 7), draft.between(3, 8, 0.5))


def _pendant(draft: Draft) -> str:
    top, bottom = draft.whole(1, 3), draft.pick(0, 1, 3, 5, 7)
    return findings.pendant(draft, top=top, bottom=bottom).name


def _bail(draft: Draft) -> str:
    return findings.bail(draft, draft.between(2, 10, 0.5), pinch=draft.chance(40))


def _chain(draft: Draft) -> str:
    return chains.chain(draft)[0]


def _piece(draft: Draft) -> str:
    return chains.piece(draft, draft.between(15, 200, 5)).name


def _drop(draft: Draft) -> str:
    return strung.drop(draft, legs=draft.pick(0, 3, 7, 12)).name


def _link(draft: Draft) -> str:
    if draft.chance(25):
        return strung.wire_link(draft, "link", over=_cone(draft)).name
    return strung.wire_link(draft).name


def _clasp(draft: Draft) -> str:
    strands = draft.pick(1, 1, 1, 2, 3)
    return (clasps.loose(draft) if strands == 1 else clasps.eyed(draft, strands=strands)).name


def _glue(draft: Draft) -> str:
    return glues.adhesive(draft, likely=False)


def _thread(draft: Draft) -> str:
    lines.spool_for(draft, dict(draft.pick(*lines.THREADS)), draft.pick(45_000.0, 9_000.0))
    return next(iter(draft.parts))


def _core(draft: Draft) -> str:
    return lines.core(draft, draft.between(1, 6, 0.2))


#: what makes one of each kind, by the kind's own word
KINDS: Mapping[str, Callable[[Draft], str]] = {
    "woven rope": _rope,
    "woven band": _band,
    "pouch": _pouch,
    "bezel": _bezel,
    "embroidered cabochon": _cabochon,
    "beaded bead": lambda draft: beaded_beads.part(draft)[0],
    "braid": _braid,
    "strand": _strand,
    "wire link": _link,
    "end cap": _cap,
    "cone": _cone,
    "bead tip": _tip,
    "brooch pin": lambda draft: findings.brooch_pin(draft, woven.panel(draft, 9).name),
    "crimp": _crimp,
    "crimp cover": lambda draft: findings.crimp_cover(draft, 1.8),
    "french wire": lambda draft: findings.french_wire(draft, 0.4),
    "jump ring": _ring,
    "connector": _connector,
    "spacer bar": _spacer,
    "end bar": _end_bar,
    "pendant": _pendant,
    "bail": _bail,
    "chain": _chain,
    "chain piece": _piece,
    "ring weave": lambda draft: chains.woven(draft, draft.between(100, 400, 10)),
    "bead drop": _drop,
    "clasp": _clasp,
    "ear wire": ears.ear_wire,
    "ear post": ears.ear_post,
    "spectacle loop": pieces_worn.spectacle_loop,
    "adhesive": _glue,
    "thread": _thread,
    "needle": lines.needle,
    "core": _core,
}


def made(choices: Choices, kind: str) -> OnePart:
    """A part of a kind, by these choices, and the text of a plan that has it and little more."""
    draft = Draft(choices)
    name = KINDS[kind](draft)
    plan: Fields = {"plan": 1, "title": f"One {kind}", "piece": "necklace"}
    if draft.beads:
        plan["beads"] = draft.beads
    plan["parts"] = draft.parts
    return OnePart(name, draft.beads, draft.parts, Layout(choices).text(plan))


def one_of_kind(kind: str) -> st.SearchStrategy[OnePart]:
    """A part of a kind; ValueError where there is no such kind."""
    if kind not in KINDS:
        raise ValueError(f"there is no kind called `{kind}`")

    @st.composite
    def parts(draw: st.DrawFn) -> OnePart:
        return made(Drawn(draw), kind)

    return parts()


def seeded_kind(kind: str, n: int, seed: int = 0) -> list[OnePart]:
    """`n` parts of a kind that are the same whenever they are asked for."""
    return [made(Seeded(f"{kind} {seed}/{number}"), kind) for number in range(n)]
