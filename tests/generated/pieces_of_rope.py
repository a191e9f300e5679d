"""Pieces along a rope or a braid: capped collars and bracelets, lariats, loops with a pouch."""

from __future__ import annotations

from typing import Any

from generated import aims, clasps, findings, glues, hangers, strung, woven
from generated.draft import Draft
from generated.woven import Woven


def capped(draft: Draft) -> None:
    """A rope or a braid in end caps, with a clasp, and often something hanging from it."""
    size = draft.pick(aims.NECKLACES, aims.NECKLACES, aims.BRACELETS, aims.ANKLETS)
    total = draft.between(*size, 5)
    rest = draft.chance(45)
    clasp = clasps.eyed(draft)
    ring = findings.ring(draft)
    linked = draft.pick(1, 1, 2, 3) if clasp.type == "toggle" else draft.pick(1, 1, 1, 2)
    ends = clasp.along + (1 + linked) * ring.inside + 2 * 3.8
    body = _body(draft, total - ends, rest=rest)
    _made(draft, body)
    cap = findings.cap(draft, body, takes="nub" if body.nub and draft.chance(75) else "beads")
    draft.run = [
        f"{clasp.name}.a", ring.name, cap, body.name, cap, linked_ring(draft, ring.name, linked),
        f"{clasp.name}.b",
    ]  # fmt: skip
    _glued(draft, cap, body.name)
    draft.step("close", "close ring", ring.name)
    if draft.chance(55):
        hangers.from_rope(draft, body.name, body.outside)
        if draft.chance(20):
            draft.head["centre"] = draft.hung[0]["part"]
    aims.worn(draft, total, body.outside, rest=rest)


def _body(draft: Draft, length: float, *, rest: bool) -> Woven:
    if draft.chance(25):
        return woven.braid(draft, length, rest=rest)
    return woven.rope(draft, length, rest=rest)


def _made(draft: Draft, body: Woven) -> None:
    draft.step("make", "weave", body.name)
    if draft.chance(50):
        draft.step("measure", "measure", body.name)
    more = {"ends": 2} if draft.chance(15) else {}
    if draft.chance(93):
        draft.step("finish", "finish thread", body.name, **more)


def linked_ring(draft: Draft, ring: str, linked: int) -> Any:
    """A ring in the run, or several linked in a row."""
    if linked == 1:
        return {"part": ring} if draft.chance(5) else ring
    return {"part": ring, "linked": linked}


def _glued(draft: Draft, cap: str, rope: str) -> None:
    if draft.chance(6):
        draft.step("sew", "sew", cap, to=rope, times=2, passes=draft.whole(2, 4))
        return
    glue = glues.adhesive(draft)
    more: dict[str, Any] = {"to": rope, "with_": glue, "joints": 2}
    if draft.chance(65):
        more["prepared"] = draft.pick(
            ["roughened", "degreased"], ["degreased"], ["roughened", "degreased", "eye plugged"]
        )
    if draft.chance(8):
        more["mixes"] = draft.pick(1, 2)
    draft.step("glue", "glue", cap, **more)
    if draft.chance(93):
        draft.step("wait", "wait", time=draft.pick("24 h", "24 h", "1 day", "2 days", "1 h"))


def lariat(draft: Draft) -> None:
    """A long rope that closes through the ring at its end."""
    total = draft.between(800, 1200, 10)
    rest = draft.chance(40)
    small = findings.ring(draft)
    body = woven.rope(draft, total - 40, rest=rest)
    _made(draft, body)
    cap = findings.cap(draft, body)
    within = round(body.outside * 2 + 6)
    loop = findings.ring(draft, inside=(within, within + 4), closing="soldered", wire=1.6)
    draft.run = [loop.name, small.name, cap, body.name, cap]
    _glued(draft, cap, body.name)
    draft.step("close", "close ring", small.name, joins=[loop.name, cap])
    if draft.chance(70):
        plumb = findings.pendant(draft)
        hangers.hang(draft, plumb.name, cap, small.name)
    draft.head |= {"piece": "lariat", "closes": "through its loop"}
    draft.maybe(80, draft.head, wearer={"age": "adult"})
    if rest or draft.chance(70):
        draft.head["finished_length"] = draft.sizes.window(total, 20)


def pouch_on_rope(draft: Draft) -> None:
    """A pouch on a rope or a strand that goes over the head."""
    total = draft.between(*aims.LONG, 10)
    pouch = woven.pouch(draft)
    draft.step("make", "weave", pouch.name)
    draft.step("finish", "finish thread", pouch.name)
    strap = draft.chance(70)
    rest = draft.chance(30)
    if strap:
        body = woven.rope(draft, total - 30, rest=rest)
        _made(draft, body)
        name, thick = body.name, body.outside
    else:
        row = strung.strand(draft, total - 30, stitch="strung", rest=rest)
        draft.step("make", "string", row.name)
        name, thick = row.name, row.outside
    draft.step("sew", "sew", name, to=pouch.name, times=2)
    draft.run = [pouch.name, name]
    draft.head["run_is"] = "loop"
    if draft.chance(75):
        edge = draft.pick("bottom edge", "bottom edge", "top edge", "corners")
        eyes = 2 if edge == "corners" else pouch.columns
        hangers.fringe(draft, pouch.name, edge, eyes, pouch.bead, spread=edge != "corners")
    draft.head |= {"piece": "necklace", "closes": "over the head"}
    wearer = {"age": "adult", "neck": draft.length(360), "head": draft.length(580)}
    draft.maybe(90, draft.head, wearer=wearer)
    if rest or draft.chance(80):
        draft.head["finished_length"] = draft.sizes.window(total, 20)
    assert thick > 0


def bangle(draft: Draft) -> None:
    """A rope sewn to a ring, that goes over the hand or the head."""
    hand = draft.chance(60)
    total = draft.between(205, 235, 5) if hand else draft.between(*aims.LONG, 10)
    body = woven.rope(draft, total)
    _made(draft, body)
    draft.step("sew", "sew", body.name)
    draft.run = [body.name]
    draft.head |= {
        "piece": "bracelet" if hand else "necklace", "run_is": "loop",
        "closes": draft.pick("over the hand", "sewn") if hand else "over the head",
    }  # fmt: skip
    around = {"wrist": draft.length(165), "hand": draft.length(205)}
    if not hand:
        around = {"neck": draft.length(360), "head": draft.length(580)}
    draft.maybe(90, draft.head, wearer={"age": "adult", **around})
    if draft.chance(60):
        draft.head["inside"] = draft.sizes.window(total - 3.14 * body.outside, 6)


ALL = (capped, capped, capped, lariat, pouch_on_rope, bangle)
