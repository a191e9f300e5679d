"""Pieces along a rope or a braid: capped collars and bracelets, lariats, loops with a pouch."""

from __future__ import annotations

from typing import Any

from generated import aims, clasps, findings, glues, hangers, strung, woven
from generated.draft import Draft
from generated.woven import Woven


def capped(draft: Draft) -> None:
    """A rope or a braid in end caps, with a clasp, and often something hanging from it."""
    size = draft.pick(aims.NECKLACES, aims.NECKLACES, aims.BRACELETS, aims.ANKLETS)
    total = draft.within(size, 5)
    rest = draft.chance(45)
    clasp = clasps.eyed(draft)
    ring = findings.ring(draft)
    linked = draft.pick(1, 1, 2, 3) if clasp.type == "toggle" else draft.pick(1, 1, 1, 2)
    ends = clasp.along + (1 + linked) * ring.inside + 2 * 3.9
    body = _body(draft, total - ends, rest=rest)
    made(draft, body)
    cap = findings.cap(draft, body, takes="nub" if body.nub and draft.chance(80) else "beads")
    draft.run = [
        f"{clasp.name}.a", ring.name, cap.name, body.name, cap.name,
        linked_ring(draft, ring.name, linked), f"{clasp.name}.b",
    ]  # fmt: skip
    _into_caps(draft, cap.name, body.name)
    draft.step("close", "close ring", ring.name)
    if draft.chance(55):
        hangers.in_the_middle(draft, body.name, body.outside)
        if draft.chance(20):
            draft.head["centre"] = draft.hung[0]["part"]
    wanted = total if rest else total + 2 * (cap.along - 3.9)
    aims.worn(draft, wanted, body.outside, rest=rest)


def _body(draft: Draft, length: float, *, rest: bool) -> Woven:
    if draft.chance(25):
        return woven.braid(draft, length, rest=rest)
    return woven.rope(draft, length, rest=rest)


def made(draft: Draft, body: Woven) -> None:
    """The steps that make a rope: weave, measure, finish its thread."""
    draft.step("make", "weave", body.name)
    if draft.chance(50):
        draft.step("measure", "measure", body.name)
    more = {"ends": 2} if draft.chance(15) else {}
    if draft.chance(95):
        draft.step("finish", "finish thread", body.name, **more)


def linked_ring(draft: Draft, ring: str, linked: int) -> Any:
    """A ring in the run, or several linked in a row."""
    if linked == 1:
        return {"part": ring} if draft.chance(5) else ring
    return {"part": ring, "linked": linked}


def _into_caps(draft: Draft, cap: str, rope: str) -> None:
    if draft.chance(6):
        draft.step("sew", "sew", cap, to=rope, times=2, passes=draft.whole(2, 4))
    else:
        glues.glued(draft, cap, rope)


def two_in_a_cap(draft: Draft) -> None:
    """Two ropes or braids side by side, gathered in end caps."""
    total = draft.within(draft.pick(aims.NECKLACES, aims.BRACELETS), 5)
    clasp = clasps.eyed(draft)
    ring = findings.ring(draft)
    length = total - clasp.along - 2 * ring.inside - 8
    bodies = [_body(draft, length, rest=False) for _ in range(2)]
    for body in bodies:
        made(draft, body)
    bundle = sum(body.outside for body in bodies)
    cap = findings.bundle_cap(draft, bundle + 0.8)
    side = {"strands": [body.name for body in bodies]}
    draft.run = [f"{clasp.name}.a", ring.name, cap.name, side, cap.name, ring.name,
                 f"{clasp.name}.b"]  # fmt: skip
    glues.glued(draft, cap.name, bodies[0].name)
    draft.step("close", "close ring", ring.name)
    aims.worn(draft, total, max(body.outside for body in bodies))


def with_a_plate(draft: Draft) -> None:
    """Two halves of rope on either side of a connector."""
    total = draft.within(draft.pick(aims.NECKLACES, aims.BRACELETS), 5)
    clasp = clasps.eyed(draft)
    ring = findings.ring(draft)
    long = draft.between(16, 36, 2)
    plate = findings.connector(draft, length=long)
    half = woven.rope(draft, (total - clasp.along - long - 4 * ring.inside - 16) / 2)
    made(draft, half)
    cap = findings.cap(draft, half)
    side = [cap.name, half.name, cap.name]
    draft.run = [f"{clasp.name}.a", ring.name, *side, ring.name, plate, ring.name, *side, ring.name,
                 f"{clasp.name}.b"]  # fmt: skip
    glues.glued(draft, cap.name, half.name, joints=4)
    draft.step("close", "close ring", ring.name)
    draft.maybe(60, draft.head, centre=plate)
    aims.worn(draft, total, half.outside)


def lariat(draft: Draft) -> None:
    """A long rope that closes through the ring at its end, or that is only wound and worn open."""
    total = draft.between(800, 1200, 10)
    closes = draft.pick("through its loop", "through its loop", "open", "knot")
    rest = draft.chance(40)
    small = findings.ring(draft)
    body = woven.rope(draft, total - 40, rest=rest)
    made(draft, body)
    cap = findings.cap(draft, body)
    within = round(body.outside * 2 + 6)
    closing = draft.pick("soldered", "soldered", "closed")
    loop = findings.ring(draft, inside=(within, within + 4), closing=closing, wire=1.6)
    draft.run = [loop.name, small.name, cap.name, body.name, cap.name]
    _into_caps(draft, cap.name, body.name)
    draft.step("close", "close ring", small.name, joins=[loop.name, cap.name])
    if draft.chance(70):
        plumb = findings.pendant(draft)
        hangers.hang(draft, plumb.name, cap.name, small.name)
    draft.head |= {"piece": "lariat", "closes": closes}
    if closes == "open":
        draft.maybe(90, draft.head, run_is="open")
    draft.maybe(80, draft.head, wearer={"age": "adult"})
    if rest or draft.chance(70):
        draft.head["finished_length"] = draft.sizes.window(total, 20)


def pouch_on_a_strap(draft: Draft) -> None:
    """A pouch on a rope or a strand that goes over the head."""
    total = draft.within(aims.LONG, 10)
    pouch = woven.pouch(draft)
    draft.step("make", "weave", pouch.name)
    draft.step("finish", "finish thread", pouch.name)
    rest = draft.chance(30)
    if draft.chance(70):
        body = woven.rope(draft, total - 30, rest=rest)
        made(draft, body)
        name = body.name
    else:
        row = strung.strand(draft, total - 30, stitch="strung", rest=rest)
        draft.step("make", "string", row.name)
        name = row.name
    draft.step("sew", "sew", name, to=pouch.name, times=2)
    draft.run = [pouch.name, name]
    draft.head["run_is"] = "loop"
    if draft.chance(75):
        edge = draft.pick("bottom edge", "bottom edge", "top edge", "corners")
        eyes = 2 if edge == "corners" else pouch.columns
        hangers.fringe(draft, pouch.name, edge, eyes, pouch.bead, spread=edge != "corners")
    draft.head |= {"piece": "necklace", "closes": "over the head"}
    aims.put_on(draft, total, "head")
    if rest or draft.chance(80):
        draft.head["finished_length"] = draft.sizes.window(total, 20)


def bangle(draft: Draft) -> None:
    """A rope sewn to a ring, that goes over the hand or the head."""
    hand = draft.chance(60)
    total = draft.between(235, 265, 5) if hand else draft.within(aims.LONG, 10)
    body = woven.rope(draft, total)
    made(draft, body)
    draft.step("sew", "sew", body.name)
    draft.run = [body.name]
    draft.head |= {
        "piece": "bracelet" if hand else "necklace", "run_is": "loop",
        "closes": draft.pick("over the hand", "sewn") if hand else "over the head",
    }  # fmt: skip
    inside = total - 3.14 * body.outside
    aims.put_on(draft, inside, "hand" if hand else "head")
    if draft.chance(60):
        draft.head["inside"] = draft.sizes.window(inside, 6)


ALL = (
    capped, capped, capped, capped, two_in_a_cap, with_a_plate, lariat, pouch_on_a_strap, bangle,
)  # fmt: skip
