"""Pieces of metal: wire links in a row, chain with a pendant, key rings."""

from __future__ import annotations

from typing import Any

from generated import aims, chains, clasps, findings, hangers, strung
from generated.draft import Draft, Fields


def links(draft: Draft) -> None:
    """Wire links and connectors in a row, joined by rings or by their own loops."""
    total = draft.within(draft.pick(aims.BRACELETS, aims.NECKLACES), 5)
    clasp = clasps.eyed(draft)
    ring = findings.ring(draft)
    link = strung.wire_link(draft, "link")
    long = draft.between(16, 30, 2)
    plate = findings.connector(draft, length=long) if draft.chance(50) else ""
    ringed = draft.chance(70)
    each = link.along + (ring.inside if ringed else 0)
    count = max(1, min(24, round((total - clasp.along - ring.inside) / each)))
    row: list[Any] = []
    for n in range(count):
        row.append(plate if plate and n == count // 2 else link.name)
        if ringed or plate in row[-1:]:
            row.append(ring.name)
    if row[-1] != ring.name:
        row.append(ring.name)
    draft.run = [f"{clasp.name}.a", ring.name, *row, f"{clasp.name}.b"]
    if plate in row and draft.run[draft.run.index(plate) - 1] != ring.name:
        draft.run.insert(draft.run.index(plate), ring.name)
    draft.step("wire", "wrap loop", link.name, times=2 * row.count(link.name))
    draft.step("close", "close ring", ring.name)
    if plate and draft.chance(40):
        charm = findings.pendant(draft)
        eyes = {"part": plate, "eyes": "eyes"} if draft.chance(60) else plate
        hangers.hang(draft, charm.name, eyes, ring.name)
    whole = (
        clasp.along + row.count(link.name) * link.along + draft.run.count(ring.name) * ring.inside
    )
    aims.worn(draft, whole + (long - 2 if plate else 0), 3)


def of_chain(draft: Draft) -> None:
    """Chain with a clasp, and a pendant on a bail or a tassel on a ring."""
    total = draft.within(draft.pick(aims.NECKLACES, aims.BRACELETS, aims.LONG), 5)
    clasp = clasps.eyed(draft)
    ring = findings.ring(draft, inside=(3.0, 4.0))
    of = chains.chain(draft)
    piece = chains.piece(draft, total - clasp.along - 8, of=of)
    chains.cut(draft, piece)
    linked = draft.pick(1, 1, 2)
    if draft.chance(15):
        _side_by_side(draft, of, clasp, ring, piece)
        return
    last: Any = {"part": ring.name, "linked": linked} if linked > 1 else ring.name
    draft.run = [f"{clasp.name}.a", ring.name, piece.name, last, f"{clasp.name}.b"]
    draft.step("close", "close ring", ring.name)
    if draft.chance(60):
        bail = findings.bail(draft, 5)
        draft.hung.append({"part": bail, "from": piece.name})
        draft.step("hang", "hang", bail, from_=piece.name)
        charm = findings.pendant(draft, bottom=draft.pick(0, 1, 3))
        hangers.hang(draft, charm.name, bail)
        hangers.underneath(draft, charm)
    elif draft.chance(60):
        tassel = chains.piece(draft, 30, of=of)
        chains.cut(draft, tassel)
        eyes = {"part": piece.name, "eyes": "last link"}
        hangers.hang(draft, tassel.name, eyes, ring.name, draft.pick(1, 3))
    whole = piece.length + clasp.along + (1 + linked) * ring.inside
    aims.worn(draft, whole, 3)


def _side_by_side(
    draft: Draft, of: Any, clasp: clasps.Clasp, ring: findings.Ring, piece: chains.Piece
) -> None:
    """Two or three chains in one ring at either end."""
    other = chains.piece(draft, piece.length, of=of)
    chains.cut(draft, other)
    names = [piece.name, other.name, *([piece.name] if draft.chance(40) else [])]
    draft.run = [f"{clasp.name}.a", ring.name, {"strands": names}, ring.name, f"{clasp.name}.b"]
    draft.step("close", "close ring", ring.name)
    aims.worn(draft, min(piece.length, other.length) + clasp.along + 2 * ring.inside, 3)


def of_cups(draft: Draft) -> None:
    """Cup chain with a clasp, a cap at either end of it."""
    total = draft.within(draft.pick(aims.BRACELETS, aims.NECKLACES), 5)
    clasp = clasps.eyed(draft)
    ring = findings.ring(draft)
    cups = chains.cups(draft, total - clasp.along - 2 * ring.inside - 8)
    cap: Fields = {
        "kind": "end cap",
        "type": "cup chain",
        "size": draft.pick("SS12", "3 mm", "4 mm"),
    }
    draft.maybe(50, cap, length="8 mm", depth="4 mm", bore=draft.length(draft.fit(4.3)))
    draft.metalwork(cap, 0.2)
    end = draft.add("end", cap)
    draft.run = [f"{clasp.name}.a", ring.name, end, cups, end, ring.name, f"{clasp.name}.b"]
    if draft.chance(20):  # a ring at the last cup
        del draft.run[4]
    draft.step("close", "crimp", end, times=draft.run.count(end))
    draft.step("close", "close ring", ring.name)
    aims.worn(draft, total, 5)


def of_rings(draft: Draft) -> None:
    """A weave of rings with a clasp; or cup chain."""
    if draft.chance(40):
        of_cups(draft)
        return
    total = draft.within(draft.pick(aims.BRACELETS, aims.NECKLACES), 5)
    clasp = clasps.eyed(draft)
    ring = findings.ring(draft)
    weave = chains.woven(draft, total - clasp.along - 2 * ring.inside)
    draft.run = [f"{clasp.name}.a", ring.name, weave, ring.name, f"{clasp.name}.b"]
    draft.step("close", "close ring", ring.name)
    aims.worn(draft, total, 5)


def key_ring(draft: Draft) -> None:
    """A split ring with charms and chain."""
    ring = findings.ring(draft, inside=(18.0, 24.0), closing="split", wire=1.6)
    draft.run = [ring.name]
    piece = chains.piece(draft, draft.between(20, 60, 5))
    chains.cut(draft, piece)
    small = findings.ring(draft)
    hangers.hang(draft, piece.name, ring.name, small.name)
    charm = findings.pendant(draft)
    hangers.hang(draft, charm.name, {"part": piece.name, "eyes": "last link"}, small.name)
    draft.step("close", "close ring", ring.name)
    draft.head |= {"piece": draft.pick("key ring", "key ring", "pendant", "brooch")}


ALL = (links, links, of_chain, of_chain, of_rings, key_ring)
