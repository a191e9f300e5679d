"""Pieces of other places than neck, wrist and ear: finger rings, spectacle chains, lanyards."""

from __future__ import annotations

from typing import Any

from generated import clasps, findings, palette, strung, woven
from generated.draft import Draft, Fields
from generated.pieces_of_bands import woven_up

_US_7 = ("US 7", "UK N 1/2", "EU 54", "54.4 mm", "54 mm")


def finger_ring(draft: Draft) -> None:
    """A band sewn to a ring, or seed beads on elastic."""
    if draft.chance(70):
        band = woven.band(draft, 54.4 + 3.14 * 1.8, draft.between(4, 8, 1))
        woven_up(draft, band.name)
        draft.step("sew", "sew", band.name)
        name, closes = band.name, "sewn"
    else:
        bead = palette.seed(draft, "8/0", "6/0")
        fields: Fields = {"kind": "strand", "stitch": "strung", "beads": bead.name}
        fields["length"] = f"{54.4 + 3.14 * bead.outside:.1f} mm"
        fields["thread"] = {"type": "elastic", "outside": "0.5 mm", "tail": "10 cm"}
        name, closes = draft.add("stretch", fields), "knot"
        draft.step("make", "string", name)
        draft.step("knot", "knot", name)
    draft.run = [name]
    draft.head |= {"piece": "ring", "run_is": "loop", "closes": closes}
    draft.maybe(90, draft.head, wearer={"finger": draft.pick(*_US_7)})


def spectacle_loop(draft: Draft) -> str:
    """A loop that grips the arm of spectacles."""
    fields: Fields = {"kind": "spectacle loop", "length": draft.length(20.0)}
    fields["eye"] = findings.eye(draft, 2.2, 0.8, opens="no", faces=False)
    draft.metalwork(fields, 0.3)
    draft.maybe(15, fields, source="the optician's box")
    return draft.add("loop", fields)


def round_the_neck(draft: Draft) -> None:
    """A spectacle chain on its loops, or a lanyard that breaks away or does not."""
    ring = findings.ring(draft)
    if draft.chance(60):
        draft.head["piece"], total = "spectacle chain", draft.within((680, 800), 10)
        loop = spectacle_loop(draft)
        ends: tuple[Any, Any] = (loop, loop)
    else:
        draft.head["piece"], total = "lanyard", draft.within((820, 960), 10)
        clasp = clasps.eyed(draft)
        ends = (f"{clasp.name}.a", f"{clasp.name}.b")
        draft.maybe(60, draft.parts[clasp.name], breakaway="2 lb")
        draft.maybe(50, draft.head, wearer={"neck": "38 cm"})
    row = strung.strand(draft, total - 60, stitch="strung", on="flexible wire")
    draft.step("make", "string", row.name)
    crimp = findings.crimp(draft, row.line)
    draft.step("knot", "crimp", crimp, to=row.name, times=2)
    draft.step("close", "close ring", ring.name)
    draft.run = [ends[0], ring.name, crimp, row.name, crimp, ring.name, ends[1]]


def _between_balls(draft: Draft, coil: str) -> list[Any]:
    """A coil with a half-drilled ball glued on either end of its wire."""
    ball: Fields = {"kind": "end cap", "type": "ball", "size": f"{draft.whole(3, 6)} mm"}
    draft.maybe(50, ball, bore="0.8 mm", depth="2 mm")
    name = draft.add("ball", ball)
    glue = draft.add("glue", {"kind": "adhesive", "type": "two-part epoxy"})
    prepared = ["roughened", "degreased"]
    draft.step("glue", "glue", name, to=coil, joints=2, prepared=prepared, with_=glue)
    return [name, coil, name]


def coiled(draft: Draft) -> None:
    """Beads on memory wire that goes round the wrist a few times."""
    bead, turns = palette.seed(draft, "8/0", "6/0"), draft.whole(2, 5)
    fields: Fields = {"kind": "strand", "stitch": "strung", "beads": bead.name}
    thread: Fields = {"type": "memory wire", "turns": turns}
    if draft.chance(50):
        fields["length"] = draft.length(round(draft.fit(turns * 190.4)))
        thread["size"] = "bracelet"
    else:
        thread["coil"] = f"{round(draft.fit(60))} mm"
    fields["thread"] = thread
    name = draft.add("coil", fields)
    draft.step("make", "string", name)
    if draft.chance(60):
        draft.step("wire", "wrap loop", name, times=2)
        draft.run = [name]
    else:
        draft.run = _between_balls(draft, name)
    draft.head |= {"piece": "bracelet", "closes": "open"}
    draft.maybe(80, draft.head, wearer={"wrist": "16.5 cm"})


ALL = (finger_ring, round_the_neck, coiled)
