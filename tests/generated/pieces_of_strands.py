"""Pieces of strands: in tips and crimps, knotted, on elastic, several side by side."""

from __future__ import annotations

from typing import Any

from generated import aims, chains, clasps, findings, glues, hangers, palette, strung
from generated.draft import Draft
from generated.pieces_of_rope import linked_ring
from generated.strung import Strand

WIRE = "flexible wire"


def _strand(draft: Draft, length: float, *, rest: bool, on: str = "") -> Strand:
    if not rest and draft.chance(12):
        return strung.graduated(draft, length)
    return strung.strand(draft, length, rest=rest, on=on)


def _brought_in(draft: Draft, row: Strand, clasp: str) -> None:
    """The strand came for repair: what was counted, measured and weighed, and what is wished."""
    written = draft.parts[row.name]["beads"]
    if isinstance(written, dict):  # graduated, `{mirror: [12 kelp, 5 sand]}`; or in shares
        written = written.get("mirror", list(written))
    first = str(written if isinstance(written, str) else written[0])
    count, _, bead = first.partition(" ")  # `12 kelp`, or `amber light`
    came: dict[str, Any] = {"beads": {bead if count.isdigit() else first: draft.whole(20, 90)}}
    draft.maybe(60, came, parts={clasp: 1})
    draft.maybe(70, came, length=f"{row.length / 10:.1f} cm", mass=draft.pick("24 g", "31.5 g"))
    draft.maybe(50, came, line="cotton", knots=draft.whole(1, 80))
    draft.maybe(50, came, damage=[draft.pick("frayed at the clasp", "two beads worn")])
    draft.head["repair"] = {"came": came, "wished": [draft.pick("restrung", "a longer strand")]}
    for verb, part in (("take apart", row.name), ("clean", clasp)):
        more: dict[str, Any] = {}
        draft.maybe(50, more, takes="25 min", note="with its owner")
        draft.step("apart", verb, part, **more)


def single(draft: Draft) -> None:
    """One strand, in bead tips, in crimps, or knotted to its clasp."""
    size = draft.pick(aims.NECKLACES, aims.NECKLACES, aims.BRACELETS, aims.ANKLETS)
    total = draft.within(size, 5)
    rest = draft.chance(35)
    ending = draft.pick("tip", "tip", "crimp", "crimp", "tied", "gimp")
    slides = ending == "tied" and draft.chance(50)
    clasp = clasps.sliding(draft) if slides else clasps.eyed(draft)
    ring = findings.ring(draft) if ending not in ("tied", "gimp") else None
    linked = draft.pick(1, 1, 1, 2, 3)
    ends = clasp.along + ((1 + linked) * ring.inside if ring else 0)
    ends += {"tip": 13.6, "crimp": 8, "tied": 0, "gimp": 7.6}[ending]
    if ending == "tip" and draft.chance(85):
        row = strung.strand(draft, total - ends, stitch=draft.pick("strung", "spaced"), rest=rest)
    else:
        row = _strand(draft, total - ends, rest=rest, on=WIRE if ending == "crimp" else "")
    draft.step("make", "string", row.name)
    middle: list[Any] = [row.name]
    wanted = total if rest else row.length + ends
    if ending == "tip":
        tip = findings.bead_tip(draft, row.line)
        middle = [tip.name, row.name, tip.name]
        wanted += 0 if rest else 2 * (tip.along - 6.8)
        covers = draft.parts[tip.name].get("covers")
        if covers in draft.parts:
            draft.step("knot", "crimp", covers, to=row.name, times=2)
        else:
            draft.step("knot", "knot", row.name, times=2)
    elif ending == "crimp":
        crimp = findings.crimp(draft, row.line)
        middle = [crimp, row.name, crimp]
        draft.step("knot", "crimp", crimp, to=row.name, times=2)
    elif ending == "gimp":
        gimp = findings.french_wire(draft, row.line)
        middle = [gimp, row.name, gimp]
        draft.step("knot", "knot", row.name, times=row.knots)
    elif slides:
        draft.step("knot", "knot", clasp.name, times=2)
    else:
        _tied(draft, row, clasp.name)
    if ring:
        middle = [ring.name, *middle, linked_ring(draft, ring.name, linked)]
        draft.step("close", "close ring", ring.name)
    draft.run = [f"{clasp.name}.a", *middle, f"{clasp.name}.b"]
    if draft.chance(20):
        _brought_in(draft, row, clasp.name)
    elif ring and draft.chance(15):
        links = chains.piece(draft, draft.between(40, 60, 5))
        draft.parts[links.name]["extender"] = draft.pick("yes", "yes", "no")
        chains.cut(draft, links)
        draft.run[-1] = links.name
    elif ring and draft.chance(20):
        guard = chains.piece(draft, draft.between(30, 90, 10))
        draft.parts[guard.name]["safety"] = draft.pick("yes", "yes", "yes", "no")
        chains.cut(draft, guard)
        small = findings.ring(draft)
        hangers.hang(draft, guard.name, ring.name, small.name, 2)
    if draft.chance(35):
        _in_the_middle(draft, row)
    elif draft.chance(15):
        beads = draft.parts[row.name]["beads"]
        named = beads.get("mirror") if isinstance(beads, dict) else None
        one = named[-1].partition(" ")[2] if named else next(iter(beads))
        draft.head["centre"] = beads if isinstance(beads, str) else one
    aims.worn(draft, wanted, row.outside, rest=rest)


def _tied(draft: Draft, row: Strand, clasp: str) -> None:
    if draft.parts[row.name]["stitch"] == "knotted":
        draft.step("knot", "knot", row.name, times=row.knots)
    draft.step("sew", "sew", clasp, to=row.name, times=2)


def _in_the_middle(draft: Draft, row: Strand) -> None:
    if draft.chance(60):
        hangers.in_the_middle(draft, row.name, row.line + 1)
    else:
        drop = strung.drop(draft)
        hangers.hang(draft, drop.name, row.name, "thread", draft.pick(1, 3), stage="fringe")
    if draft.chance(25):
        draft.head["centre"] = draft.hung[0]["part"]


def on_a_button(draft: Draft) -> None:
    """A strand that closes by a button and a loop."""
    total = draft.within(draft.pick(aims.NECKLACES, aims.BRACELETS, aims.ANKLETS), 5)
    rest = draft.chance(35)
    clasp = clasps.button(draft)
    row = strung.strand(draft, total - clasp.along, rest=rest)
    draft.step("make", "string", row.name)
    _tied(draft, row, clasp.name)
    draft.run = [f"{clasp.name}.a", row.name, f"{clasp.name}.b"]
    aims.worn(draft, total if rest else row.length + clasp.along, row.outside, rest=rest)


def stretch(draft: Draft) -> None:
    """Beads on elastic, knotted, that go over the hand."""
    inside = draft.between(160, 195, 5)
    row = strung.elastic(draft, inside)
    draft.step("make", "string", row.name)
    drop = {"with_": glues.adhesive(draft, likely=False)} if draft.chance(35) else {}
    draft.step("knot", "knot", row.name, **drop)
    if drop and draft.chance(85):
        draft.step("wait", "wait", time="2 days")
    draft.run = [row.name]
    draft.head |= {"piece": "bracelet", "run_is": "loop"}
    draft.head["closes"] = draft.pick("over the hand", "over the hand", "knot")
    wearer = {"wrist": draft.length(inside - 12), "hand": draft.length(inside + 40)}
    draft.maybe(90, draft.head, wearer={"age": "adult", **wearer})
    draft.maybe(85, draft.head, inside=draft.sizes.window(row.length - 3.14 * row.outside, 8))


def knotted_loop(draft: Draft) -> None:
    """A long strand knotted to a loop that goes over the head."""
    total = draft.within(aims.LONG, 10)
    row = strung.strand(draft, total)
    draft.step("make", "string", row.name)
    draft.step("knot", "knot", row.name, times=draft.pick(1, row.knots))
    draft.run = [row.name]
    draft.head |= {"piece": "necklace", "run_is": "loop"}
    draft.head["closes"] = draft.pick("over the head", "knot")
    aims.put_on(draft, row.length, "head")
    draft.maybe(60, draft.head, finished_length=draft.sizes.window(row.length, 15))


def in_cones(draft: Draft) -> None:
    """Two to four strands gathered by cones, or sewn into end caps."""
    total = draft.within(draft.pick(aims.NECKLACES, aims.BRACELETS), 5)
    count = draft.whole(2, 4)
    clasp = clasps.eyed(draft)
    ring = findings.ring(draft)
    rows = _rows(draft, total - clasp.along - 40, count)
    bundle = max(row.outside for row in rows) * {2: 2.0, 3: 2.16, 4: 2.42}[count]
    if draft.chance(30):
        cap = findings.bundle_cap(draft, bundle)
        for row in rows:
            draft.step("sew", "sew", cap.name, to=row.name, times=2)
        ends, along = [ring.name, cap.name], cap.along
    else:
        cone = findings.cone(draft, bundle)
        wire = strung.wire_link(draft, "link", over=cone)
        draft.step("wire", "wrap loop", wire.name, times=4)
        ends, along = [ring.name, wire.name, cone], wire.along - 3
    inside: dict[str, Any] = {"strands": [row.name for row in rows]}
    draft.maybe(20, inside, twisted=draft.whole(2, 6))
    draft.run = [f"{clasp.name}.a", *ends, inside, *reversed(ends), f"{clasp.name}.b"]
    draft.step("close", "close ring", ring.name)
    if draft.chance(30):
        drop = strung.drop(draft)
        hangers.hang(draft, drop.name, rows[-1].name, "thread", 3, stage="fringe")
    shortest = min(row.length for row in rows)
    whole = shortest + clasp.along + 2 * (ring.inside + along)
    aims.worn(draft, whole, max(row.outside for row in rows))


def _rows(draft: Draft, length: float, count: int) -> list[Strand]:
    """Strands of one length, or each so much longer that it lies outside the one before."""
    step = draft.pick(0, 0, 35, 15)
    rows = []
    for n in range(count):
        rows.append(strung.strand(draft, length + n * step, stitch="strung"))
        draft.step("make", "string", rows[-1].name)
    return rows


def in_holes(draft: Draft) -> None:
    """Strands side by side, each at an eye of the clasp, with or without bars between."""
    total = draft.within(draft.pick(aims.NECKLACES, aims.BRACELETS), 5)
    count = draft.whole(2, 4)
    thick = draft.between(3, 6, 0.5)
    gathered = draft.chance(25)
    type_ = draft.pick(*clasps.IN_ROWS)
    strands = 1 if gathered else count
    clasp = clasps.eyed(draft, type_=type_, strands=strands, spacing=thick + 1)
    bead = palette.other(draft, thick, thick + 1)
    bars = draft.chance(80)
    length = (total - clasp.along) / (2 if bars else 1)
    rows = [strung.strand(draft, length, stitch="strung", beads=[bead]) for _ in range(count)]
    for row in rows:
        draft.step("make", "string", row.name)
        draft.step("knot", "knot", row.name, times=2)
        draft.step("sew", "sew", "end bar" if gathered else clasp.name, to=row.name)
    side = {"strands": [row.name for row in rows]}
    middle: list[Any] = [side]
    whole = rows[0].length + clasp.along
    if bars:
        if draft.chance(75):
            between, long = findings.spacer(draft, count, bead.outside), 3.0
        else:
            long = draft.between(14, 24, 2)
            between = findings.connector(draft, length=long, count=2 * count)
        middle = [side, between, side]
        whole += rows[0].length + long
    if gathered:
        end, ring = findings.end_bar(draft, count, bead.outside), findings.ring(draft)
        draft.step("close", "close ring", ring.name)
        middle = [ring.name, end, *middle, end, ring.name]
        whole += 2 * (7 + ring.inside)
    draft.run = [f"{clasp.name}.a", *middle, f"{clasp.name}.b"]
    aims.worn(draft, whole, bead.outside)


def with_a_bar(draft: Draft) -> None:
    """Two short strands on either side of a connector, in crimps."""
    total = draft.within(draft.pick(aims.BRACELETS, aims.NECKLACES), 5)
    clasp = clasps.eyed(draft)
    ring = findings.ring(draft)
    long = draft.between(16, 40, 2)
    bar = findings.connector(draft, length=long)
    room = total - long - clasp.along - 4 * ring.inside - 16
    side = strung.strand(draft, room / 2, stitch="strung", on=WIRE)
    draft.step("make", "string", side.name)
    crimp = findings.crimp(draft, side.line)
    draft.step("knot", "crimp", crimp, to=side.name, times=4)
    draft.step("close", "close ring", ring.name)
    half = [crimp, side.name, crimp]
    linked = draft.pick(1, 2, 4)
    draft.run = [f"{clasp.name}.a", ring.name, *half, bar, *half,
                 linked_ring(draft, ring.name, linked), f"{clasp.name}.b"]  # fmt: skip
    draft.maybe(50, draft.head, centre=bar)
    whole = 2 * side.length + 16 + long + clasp.along + (1 + linked) * ring.inside
    aims.worn(draft, whole, side.outside)


ALL = (
    single, single, single, on_a_button, stretch, knotted_loop, in_cones, in_cones, in_holes,
    in_holes, with_a_bar,
)  # fmt: skip
