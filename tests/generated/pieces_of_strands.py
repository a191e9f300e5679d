"""Pieces of strands: in tips and crimps, knotted, on elastic, several side by side."""

from __future__ import annotations

from typing import Any

from generated import aims, chains, clasps, findings, glues, hangers, strung
from generated.draft import Draft
from generated.pieces_of_rope import linked_ring
from generated.strung import Strand


def _strand(draft: Draft, length: float, *, rest: bool) -> Strand:
    if not rest and draft.chance(12):
        return strung.graduated(draft, length)
    return strung.strand(draft, length, rest=rest)


def single(draft: Draft) -> None:
    """One strand, in bead tips, in crimps, or knotted to its clasp."""
    size = draft.pick(aims.NECKLACES, aims.NECKLACES, aims.BRACELETS, aims.ANKLETS)
    total = draft.between(*size, 5)
    rest = draft.chance(35)
    clasp = clasps.eyed(draft)
    ending = draft.pick("tip", "tip", "crimp", "crimp", "tied")
    ring = findings.ring(draft) if ending != "tied" else None
    ends = clasp.along + (2 * ring.inside if ring else 0) + (14 if ending == "tip" else 4)
    row = _strand(draft, total - ends, rest=rest)
    draft.step("make", "string", row.name)
    middle: list[Any] = [row.name]
    if ending == "tip":
        tip = findings.bead_tip(draft, row.line)
        middle = [tip, row.name, tip]
        covers = draft.parts[tip].get("covers")
        if covers in draft.parts:
            draft.step("knot", "crimp", covers, to=row.name, times=2)
        else:
            draft.step("knot", "knot", row.name, times=2)
    elif ending == "crimp":
        crimp = findings.crimp(draft, row.line)
        middle = [crimp, row.name, crimp]
        draft.step("knot", "crimp", crimp, to=row.name, times=2)
    else:
        _tied(draft, row, clasp.name)
    if ring:
        linked = draft.pick(1, 1, 1, 2, 3)
        middle = [ring.name, *middle, linked_ring(draft, ring.name, linked)]
        draft.step("close", "close ring", ring.name)
    draft.run = [f"{clasp.name}.a", *middle, f"{clasp.name}.b"]
    if draft.chance(35):
        _in_the_middle(draft, row)
    aims.worn(draft, total, row.outside, rest=rest)


def _tied(draft: Draft, row: Strand, clasp: str) -> None:
    if draft.parts[row.name]["stitch"] == "knotted":
        draft.step("knot", "knot", row.name, times=row.knots)
    draft.step("sew", "sew", clasp, to=row.name, times=2)


def _in_the_middle(draft: Draft, row: Strand) -> None:
    if draft.chance(60):
        hangers.from_rope(draft, row.name, row.line + 1)
    else:
        drop = strung.drop(draft)
        hangers.hang(draft, drop.name, row.name, "thread", draft.pick(1, 3), stage="fringe")
    if draft.chance(25):
        draft.head["centre"] = draft.hung[0]["part"]


def stretch(draft: Draft) -> None:
    """Beads on elastic, knotted, that go over the hand."""
    inside = draft.between(160, 195, 5)
    row = strung.elastic(draft, inside)
    draft.step("make", "string", row.name)
    draft.step("knot", "knot", row.name)
    draft.run = [row.name]
    draft.head |= {"piece": "bracelet", "run_is": "loop"}
    draft.head["closes"] = draft.pick("over the hand", "over the hand", "knot")
    wearer = {"wrist": draft.length(inside - 10), "hand": draft.length(inside + 40)}
    draft.maybe(90, draft.head, wearer={"age": "adult", **wearer})
    draft.maybe(85, draft.head, inside=draft.sizes.window(inside, 8))


def knotted_loop(draft: Draft) -> None:
    """A long strand knotted to a loop that goes over the head."""
    total = draft.between(*aims.LONG, 10)
    row = strung.strand(draft, total)
    draft.step("make", "string", row.name)
    draft.step("knot", "knot", row.name, times=draft.pick(1, row.knots))
    draft.run = [row.name]
    draft.head |= {"piece": "necklace", "run_is": "loop"}
    draft.head["closes"] = draft.pick("over the head", "knot")
    wearer = {"age": "adult", "neck": draft.length(360), "head": draft.length(575)}
    draft.maybe(85, draft.head, wearer=wearer)
    draft.maybe(60, draft.head, finished_length=draft.sizes.window(total, 15))


def gathered(draft: Draft) -> None:
    """Two to four strands gathered by cones, by end caps, or by the eyes of a clasp and bars."""
    total = draft.between(*draft.pick(aims.NECKLACES, aims.BRACELETS), 5)
    count = draft.whole(2, 4)
    way = draft.pick("cone", "cone", "cap", "holes", "bars")
    thick = draft.between(3, 6, 0.5)
    if way in ("cone", "cap"):
        _in_cones(draft, total, count, thick, capped=way == "cap")
    else:
        _in_holes(draft, total, count, thick, bars=way == "bars")
    aims.worn(draft, total, thick * 1.5, rest=False)


def _rows(draft: Draft, length: float, count: int, step: float) -> list[Strand]:
    same = draft.chance(40)
    rows = []
    for n in range(count):
        rows.append(strung.strand(draft, length + (0 if same else n * step), stitch="strung"))
        draft.step("make", "string", rows[-1].name)
    return rows


def _in_cones(draft: Draft, total: float, count: int, thick: float, *, capped: bool) -> None:
    clasp = clasps.eyed(draft)
    ring = findings.ring(draft)
    rows = _rows(draft, total - clasp.along - 30, count, 20)
    bundle = max(row.outside for row in rows) * {2: 2.0, 3: 2.16, 4: 2.42}[count]
    inside = {"strands": [row.name for row in rows]}
    ends: list[str]
    if capped:
        cap = findings.bundle_cap(draft, bundle)
        glue = glues.adhesive(draft)
        draft.step("glue", "glue", cap, to=rows[0].name, with_=glue, joints=2)
        draft.steps.pop()  # strands are sewn in: glue is for ropes
        del draft.parts[glue]
        draft.step("sew", "sew", cap, to=rows[0].name, times=2)
        ends = [ring.name, cap]
    else:
        cone = findings.cone(draft, bundle)
        wire = strung.wire_link(draft, "link", over=cone)
        draft.step("wire", "wrap loop", wire.name, times=4)
        ends = [ring.name, wire.name, cone]
    draft.run = [f"{clasp.name}.a", *ends, inside, *reversed(ends), f"{clasp.name}.b"]
    draft.step("close", "close ring", ring.name)
    if draft.chance(30):
        drop = strung.drop(draft)
        hangers.hang(draft, drop.name, rows[-1].name, "thread", 3, stage="fringe")


def _in_holes(draft: Draft, total: float, count: int, thick: float, *, bars: bool) -> None:
    clasp = clasps.eyed(draft, type_=draft.pick("hook", "magnetic", "lobster"), strands=count)
    beads = strung_beads = [strung.palette.other(draft, thick, thick + 1)]
    length = (total - clasp.along) / (2 if bars else 1)
    rows = [
        strung.strand(draft, length, stitch="strung", beads=strung_beads) for _ in range(count)
    ]
    for row in rows:
        draft.step("make", "string", row.name)
        draft.step("knot", "knot", row.name, times=2)
        draft.step("sew", "sew", clasp.name, to=row.name)
    side = {"strands": [row.name for row in rows]}
    middle: list[Any] = [side]
    if bars:
        if draft.chance(50):
            between = findings.spacer(draft, count, beads[0].outside)
        else:
            between = findings.connector(draft, count=2 * count)
        middle = [side, between, side]
    draft.run = [f"{clasp.name}.a", *middle, f"{clasp.name}.b"]


def with_a_bar(draft: Draft) -> None:
    """Two short strands on either side of a connector, in crimps."""
    total = draft.between(*draft.pick(aims.BRACELETS, aims.NECKLACES), 5)
    clasp = clasps.eyed(draft)
    ring = findings.ring(draft)
    long = draft.between(16, 40, 2)
    bar = findings.connector(draft, length=long)
    side = strung.strand(draft, (total - long - clasp.along - 4 * ring.inside) / 2, stitch="strung")
    draft.step("make", "string", side.name)
    crimp = findings.crimp(draft, side.line)
    draft.step("knot", "crimp", crimp, to=side.name, times=4)
    draft.step("close", "close ring", ring.name)
    half = [crimp, side.name, crimp]
    linked = draft.pick(1, 2, 4)
    draft.run = [f"{clasp.name}.a", ring.name, *half, bar, *half,
                 linked_ring(draft, ring.name, linked), f"{clasp.name}.b"]  # fmt: skip
    draft.maybe(50, draft.head, centre=bar)
    aims.worn(draft, total, side.outside, rest=False)


def linked(draft: Draft) -> None:
    """Wire links and connectors in a row, joined by rings or by their own loops."""
    total = draft.between(*draft.pick(aims.BRACELETS, aims.NECKLACES), 5)
    clasp = clasps.eyed(draft)
    ring = findings.ring(draft)
    link = strung.wire_link(draft, "link")
    plate = findings.connector(draft) if draft.chance(50) else ""
    each = link.along + ring.inside
    count = max(1, min(24, round((total - clasp.along - ring.inside) / each)))
    row: list[Any] = [ring.name]
    for n in range(count):
        row += [plate if plate and n == count // 2 else link.name, ring.name]
    draft.run = [f"{clasp.name}.a", *row, f"{clasp.name}.b"]
    draft.step("wire", "wrap loop", link.name, times=2 * count)
    draft.step("close", "close ring", ring.name)
    if draft.chance(40) and plate:
        charm = findings.pendant(draft)
        hangers.hang(draft, charm.name, {"part": plate, "eyes": "eyes"}, ring.name)
    aims.worn(draft, count * each + clasp.along + ring.inside, 2, rest=False)


def of_chain(draft: Draft) -> None:
    """Chain with a clasp, and a pendant on a bail or on a ring."""
    total = draft.between(*draft.pick(aims.NECKLACES, aims.BRACELETS, aims.LONG), 5)
    clasp = clasps.eyed(draft)
    ring = findings.ring(draft, inside=(3.0, 4.0))
    of = chains.chain(draft)
    piece = chains.piece(draft, total - clasp.along - 8, of=of)
    draft.step("cut", "cut", piece.name)
    draft.run = [f"{clasp.name}.a", ring.name, piece.name, ring.name, f"{clasp.name}.b"]
    draft.step("close", "close ring", ring.name)
    if draft.chance(60):
        bail = findings.bail(draft, 5)
        draft.hung.append({"part": bail, "from": piece.name})
        draft.step("slide", "slide", bail, onto=piece.name)
        draft.steps.pop()
        draft.step("hang", "hang", bail, from_=piece.name)
        charm = findings.pendant(draft, bottom=draft.pick(0, 1, 3))
        hangers.hang(draft, charm.name, bail)
        hangers.underneath(draft, charm)
    elif draft.chance(50):
        tassel = chains.piece(draft, 30, of=of)
        draft.step("cut", "cut", tassel.name, every=draft.whole(4, 9))
        hangers.hang(draft, tassel.name, {"part": piece.name, "eyes": "last link"}, ring.name, 3)
    aims.worn(draft, piece.length + clasp.along + 2 * ring.inside, 2, rest=False)


ALL = (single, single, single, stretch, knotted_loop, gathered, gathered, with_a_bar, linked, of_chain)
