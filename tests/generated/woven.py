"""Woven parts: ropes of every stitch, bands, pouches, bezels and braids."""

from __future__ import annotations

import math
from typing import NamedTuple

from generated import lines, palette
from generated.draft import Bead, Draft, Fields
from wellstrung.formulas import stones

ROPES = (
    "tubular peyote", "odd tubular peyote", "tubular herringbone", "twisted herringbone",
    "tubular square", "slip-stitch bead crochet", "cubic right-angle weave", "spiral rope",
    "flat spiral", "Russian spiral", "Dutch spiral", "tubular netting",
)  # fmt: skip
#: chains of one line, and the beads of their loop
CHAINS = {
    "daisy chain": 8, "chevron chain": 10, "Saint Petersburg chain": 0, "ladder between cords": 0,
}  # fmt: skip
BANDS = (
    "flat peyote", "flat herringbone", "brick", "ladder", "square", "loom", "right-angle weave",
    "hexagon weave", "netting", "two-hole strung", *CHAINS,
)  # fmt: skip


class Woven(NamedTuple):
    """A woven part, and what others need to know of its sizes, mm."""

    name: str
    outside: float
    length: float
    bead: Bead | None
    nub: float = 0.0
    solid: bool = False


REST = "fills the rest"


def rope(draft: Draft, length: float, *, stitch: str = "", rest: bool = False) -> Woven:
    """A woven rope of about a length, or one that fills the rest."""
    stitch = stitch or draft.pick(*ROPES)
    bead = palette.seed(draft, "11/0", "8/0", "10/0") if draft.chance(90) else palette.seed(draft)
    fields: Fields = {"kind": "woven rope", "stitch": stitch}
    if stitch in ("spiral rope", "flat spiral"):
        outside, rise = _spiral(draft, fields, bead)
    elif stitch == "Dutch spiral":
        small = palette.another(draft, bead).name
        fields["beads"] = [small, small, bead.name, small]
        fields["outer"] = [small] * draft.whole(3, 7)
        outside, rise = (
            (8 * bead.length + 5 * bead.length) / math.pi + bead.outside,
            bead.outside / 2,
        )
    elif stitch == "Russian spiral":
        outside, rise = _russian(draft, fields, bead)
    else:
        outside, around = _around(draft, fields, stitch, bead)
        two = palette.another(draft, bead) if draft.chance(35) else None
        fields["beads"] = lines.mixed(draft, bead, two, around)
        if two and stitch in ("tubular peyote", "tubular herringbone") and draft.chance(40):
            _listed(draft, fields, bead, two)
        rise = _rise(stitch, bead)
    rows = "rows" if "core_bead" in fields else "rounds"
    if rest:
        fields["length"] = REST
    elif draft.chance(18):
        fields[rows] = max(4, round(length / rise))
        if "rounds" in fields.get("repeat", {}) and draft.chance(85):
            fields[rows] -= fields[rows] % fields["repeat"]["rounds"]
    else:
        fields["length"] = draft.length(length)
    solid = False
    if stitch in ("tubular peyote", "tubular herringbone", "slip-stitch bead crochet"):
        solid = _filled(draft, fields, outside - 2 * bead.outside)
    draft.maybe(3, fields, outside=draft.length(round(outside, 1), 50))
    _embellished(draft, fields, bead, (), layer=6)
    lines.woven_on(draft, fields)
    nub = 0.0
    if draft.chance(10):
        nub = round(outside * 0.6, 1)
        fields["nub"] = {"outside": draft.length(nub), "length": draft.length(10.0)}
    outside = _measured(draft, fields, outside)
    return Woven(draft.add(draft.pick("rope", "cord", "line of beads"), fields), outside, length,
                 bead, nub, solid)  # fmt: skip


def _listed(draft: Draft, fields: Fields, one: Bead, two: Bead) -> None:
    """Beads in a list, one for each column or each round."""
    fields["one_for"] = draft.pick("each column", "each round")
    fields.pop("repeat", None)
    if fields["one_for"] == "each round":
        swell = [two.name] * draft.whole(1, 6)
        fields["beads"] = [{"repeat": draft.whole(2, 20), "of": [one.name]}, *swell]
        return
    each = fields.get("around", 0) or fields["each_round"] * (1 + ("peyote" in fields["stitch"]))
    if draft.chance(60):
        fields.pop("around", fields.pop("each_round", None))
    fields["beads"] = [one.name] * (each - each // 3) + [two.name] * (each // 3)


def _spiral(draft: Draft, fields: Fields, bead: Bead) -> tuple[float, float]:
    """The outside of a spiral rope, about, and what a stitch adds to it, mm."""
    middle = palette.seed(draft, "8/0", "6/0", kind="round") if draft.chance(70) else bead
    outer = [bead.name] * draft.whole(3, 4)
    if draft.chance(40):
        outer[1] = palette.another(draft, bead).name
    fields["core_bead"] = middle.name
    fields["outer"] = outer if draft.chance(80) else {bead.name: 3}
    draft.maybe(30, fields, core_at_start=draft.whole(3, 5))
    return middle.outside + 2 * bead.outside, middle.length


def _russian(draft: Draft, fields: Fields, bead: Bead) -> tuple[float, float]:
    """The outside of a Russian spiral, about, and what a round adds to it, mm."""
    small = palette.another(draft, bead)
    fields["around"] = draft.whole(3, 4)
    fields["beads"] = [bead.name] + [small.name] * draft.whole(2, 3)
    if draft.chance(20):
        fields["beads"] = {bead.name: 1, small.name: 2}
    stitch = bead.length + 2 * small.length
    return fields["around"] * stitch * 0.87 / math.pi + bead.outside, bead.outside


def _around(draft: Draft, fields: Fields, stitch: str, bead: Bead) -> tuple[float, int]:
    """The outside of a rope, about, and the count that its repeat of beads comes out in."""
    if stitch == "cubic right-angle weave":
        if draft.chance(60):
            fields["around"] = 4
        elif draft.chance(60):
            fields["each_round"] = 8
        return _cube(bead) + bead.outside, 8
    if stitch == "tubular netting":
        points = draft.whole(3, 6)
        fields |= {"around": points, "loop": (5, 3, 7, 5)[points - 3]}
        half = _net(fields["loop"], bead)[1]
        return half / math.tan(math.pi / 2 / points) + bead.outside, fields["loop"]
    if stitch == "slip-stitch bead crochet":
        around = draft.whole(4, 8)
        fields["around"] = around
        draft.maybe(10, fields, repeat={"columns": around, "rounds": 4})
        return bead.outside * (1 + 1 / math.sin(math.pi / around)) * 0.97, around
    if stitch in ("tubular herringbone", "twisted herringbone"):
        stacks = 2 * draft.whole(2, 4)
        fields[draft.pick("around", "around", "each_round")] = stacks
        draft.maybe(15, fields, repeat={"columns": 2, "rounds": draft.whole(2, 6)})
        return bead.outside * (1 + 1 / math.sin(math.pi / stacks)) * 0.965, stacks
    if stitch == "odd tubular peyote":
        ring = 2 * draft.whole(3, 6) + 1
        fields["around"] = ring
    else:
        ring = 2 * draft.whole(3, 8)
        if draft.chance(20):
            fields["each_round"] = ring // 2
        else:
            fields["around"] = ring
        draft.maybe(15, fields, repeat={"columns": ring // 2, "rounds": draft.whole(2, 6)})
    return bead.length * 1.05 / math.tan(math.pi / ring) + bead.outside, ring


def _rise(stitch: str, bead: Bead) -> float:
    if "peyote" in stitch:
        return bead.outside / 2
    if "herringbone" in stitch:
        return bead.length * (0.9 if "twisted" in stitch else 1)
    if stitch == "cubic right-angle weave":
        return _cube(bead)
    if stitch == "tubular netting":
        return 3 * bead.length
    return bead.outside


def _cube(bead: Bead) -> float:
    """From one cube to the next, mm."""
    return 2.12 * bead.length * bead.outside / math.hypot(bead.length, bead.outside)


def _filled(draft: Draft, fields: Fields, bore: float) -> bool:
    """Whether the rope is filled: by a core with a name, or one that is only said to be there."""
    if bore > 1 and draft.chance(18):
        fields["core"] = lines.core(draft, draft.fit(round(bore * 0.78, 1)))
        return True
    if draft.chance(8):
        fields["core"] = draft.pick("yes", "no")
        return bool(fields["core"] == "yes")
    return False


def _measured(draft: Draft, fields: Fields, outside: float) -> float:
    if not draft.chance(45):
        return outside
    outside = round(outside, 1)
    measured: Fields = {"outside": draft.pick(f"{outside} mm", f"{outside} ± 0.1 mm")}
    draft.maybe(15, measured, mass=f"{draft.whole(8, 40)} g")
    if fields["kind"] == "woven rope":
        draft.maybe(10, measured, inside=f"{max(0.5, round(outside * 0.4, 1))} mm")
    fields["measured"] = measured
    return outside


def braid(draft: Draft, length: float, *, rest: bool = False) -> Woven:
    """A braid, beaded on eight warps or of bare cord."""
    cord = draft.pick(0.5, 0.6, 0.8)
    bead = None
    fields: Fields = {"kind": "braid", "stitch": "8-warp beaded braid"}
    if draft.chance(30):
        fields |= {"stitch": "beaded braid", "warps": draft.pick(8, 12, 16)}
    if draft.chance(70):
        bead = palette.seed(draft, "8/0", "6/0", kind="round")
        outside, nub = round(2 * bead.outside + 4.3 * cord, 1), round(cord * 7, 1)
        two = palette.another(draft, bead) if draft.chance(40) else None
        fields["beads"] = lines.mixed(draft, bead, two)
        draft.maybe(30, fields, warps=8)
        draft.maybe(20, fields, core=draft.pick("yes", "no"))
        if draft.chance(85):
            fields["cord"] = {"outside": f"{cord} mm"}
            draft.maybe(40, fields["cord"], type=draft.pick("waxed polyester", "rayon", "cotton"))
        fields["nub"] = {"outside": draft.length(nub, 30), "length": draft.length(10.0)}
    else:
        cord = draft.pick(1.0, 1.2, 1.5, 2.0)
        warps = draft.pick(8, 8, 6, 5, 12)
        ratio = {5: 2.7, 6: 3.0, 8: 3.3, 12: 4.03}[warps]
        outside = nub = round(cord * ratio, 1)
        fields["stitch"] = "plain braid"
        fields["cord"] = {"outside": f"{cord} mm"}
        draft.maybe(40, fields["cord"], type=draft.pick("leather", "satin cord"))
        draft.maybe(100 if warps != 8 else 30, fields, warps=warps)
    fields["length"] = REST if rest else draft.length(length)
    draft.maybe(8, fields, outside=draft.length(outside, 50))
    outside = _measured(draft, fields, outside)
    return Woven(draft.add("braid", fields), outside, length, bead, nub, True)


_EDGES = ("both edges", "all round", "first edge", "last edge", "bottom edge", "top edge")


def _embellished(
    draft: Draft, fields: Fields, bead: Bead, edges: tuple[str, ...] = _EDGES, *, layer: int = 10
) -> None:
    """Picots along edges, and in so many of a hundred parts a second layer."""
    if edges and draft.chance(15):
        small = palette.another(draft, bead)
        beads = [small.name] * draft.pick(1, 3)
        fields["edging"] = {"beads": beads, "along": draft.pick(*edges)}
        draft.maybe(30, fields["edging"], every=2)
    if draft.chance(layer):
        fields["layer"] = {"beads": palette.another(draft, bead).name}
        draft.maybe(80, fields["layer"], every=draft.whole(2, 6))


class Band(NamedTuple):
    """A woven band, and what others need to know of its sizes, mm."""

    name: str
    width: float
    thickness: float
    length: float
    across: int
    bead: Bead


def band(
    draft: Draft, length: float, width: float, *, stitch: str = "", rest: bool = False
) -> Band:
    """A woven band of about a length and a width."""
    stitch = stitch or draft.pick(*BANDS)
    flat = stitch == "two-hole strung"
    bead = palette.two_hole(draft) if flat else palette.seed(draft, "11/0", "8/0", "10/0")
    two = palette.another(draft, bead) if draft.chance(45) and not flat else None
    fields: Fields = {"kind": "woven band", "stitch": stitch}
    if stitch in CHAINS:
        fields |= {"loop": loop} if (loop := CHAINS[stitch]) else {}
        if "cords" in stitch:
            fields |= {"cords": {"outside": "2 mm", "type": "leather"}, "wraps": 1}
        column, row = width / (1 + ("Saint" in stitch)), 3 * bead.length
    elif stitch == "netting":
        fields["loop"] = 5 if draft.chance(60) else draft.pick(3, 7)
        column, row = _net(fields["loop"], bead)
    else:
        column, row = _grid(stitch, bead)
    narrow = stitch in CHAINS
    across = 1 if flat else max(1 if narrow else 2, round(width / column))
    if stitch == "netting" and across % 2:
        fields["stitch"] = "vertical netting"
    if stitch == "flat peyote":
        across = max(4, across)
        if draft.chance(35):
            across += across % 2
            fields["bead_up"] = 2
    if stitch == "flat herringbone":
        across += across % 2
        if across > 2:
            draft.maybe(30, fields, between=draft.pick(1, 1, 2))
    if stitch == "right-angle weave":
        draft.maybe(20, fields, loop=draft.pick(4, 6), needles=draft.pick(1, 2))
        draft.maybe(15, fields, sides=palette.another(draft, bead).name)
    if stitch == "loom":
        draft.maybe(80, fields, warp=draft.pick("0.2 mm", "0.15 mm", "0.25 mm"))
    _embellished(draft, fields, bead)
    fields["across"] = across
    fields["beads"] = lines.mixed(draft, bead, two, across)
    if stitch == "daisy chain" and two is not None:
        fields["beads"] = {bead.name: CHAINS[stitch], two.name: 1}
    if stitch == "right-angle weave" and not {"loop", "sides"} & {*fields} and draft.chance(20):
        other = palette.another(draft, bead)
        fields["one_for"] = draft.pick("each side", "each unit")
        fields["beads"] = [bead.name, other.name] * 2
    if rest:
        fields["length"] = REST
    elif draft.chance(40):
        fields["rows"] = max(2, round(length / row))
    else:
        fields["length"] = draft.length(length)
    _repeats(draft, fields, across)
    lines.woven_on(draft, fields, tail=300.0)
    if draft.chance(25):
        measured: Fields = {"width": f"{round(across * column, 1)} mm"}
        draft.maybe(50, measured, thickness=f"{bead.outside} mm")
        draft.maybe(25 if not rest else 0, measured, length=f"{round(length)} ± 2 mm")
        draft.maybe(20, measured, mass=f"{draft.whole(4, 20)} g")
        fields["measured"] = measured
    return Band(draft.add("band", fields), across * column, bead.outside, length, across, bead)


def _grid(stitch: str, bead: Bead) -> tuple[float, float]:
    """From column to column and from row to row, about, mm."""
    if stitch == "flat peyote":
        return bead.length * 1.03, bead.outside / 2
    if stitch in ("brick", "flat herringbone"):
        return bead.outside, bead.length
    if stitch == "loom":
        return bead.length + 0.2, bead.outside
    if stitch == "square":
        return bead.length, bead.outside
    if stitch == "ladder":
        return bead.length, bead.outside
    if stitch == "two-hole strung":
        return bead.outside, bead.length
    if stitch == "hexagon weave":
        side = math.hypot(bead.length, bead.outside / math.sqrt(3))
        return math.sqrt(3) * side, 1.5 * side
    unit = 1.02 * math.hypot(bead.length, bead.outside)
    return unit, unit


def _net(loop: int, bead: Bead) -> tuple[float, float]:
    """From loop to loop and from row to row of a net laid down square, mm."""
    half = 0.72 * ((loop - 1) / 2 * bead.length + bead.outside * 0.8)
    return 2 * half, half


def _repeats(draft: Draft, fields: Fields, across: int) -> None:
    if not draft.chance(25):
        return
    columns = next((n for n in (6, 5, 4, 3, 2) if across % n == 0), 2)
    repeat: Fields = {"columns": columns}
    if "rows" in fields:
        draft.maybe(60, repeat, rows=draft.pick(2, 4, 6))
    fields["repeat"] = repeat


def panel(draft: Draft, across: int) -> Band:
    """A small shaped panel, such as hangs from an ear: rows grow or lose beads."""
    stitch = draft.pick("brick", "brick", "flat peyote", "square", "ladder")
    bead = palette.seed(draft, "11/0", "15/0", "8/0")
    fields: Fields = {"kind": "woven band", "stitch": stitch, "across": across}
    fields["beads"] = bead.name
    rows = max(2, across - draft.whole(0, 3))
    if stitch == "brick" and draft.chance(60):
        fields["each_row"] = draft.pick(-1, 1)
        rows = across - 1 if fields["each_row"] == -1 else 4
    fields["rows"] = rows
    if fields.get("each_row") == -1 and draft.chance(50):
        counts = [*range(across, 1, -1)]
        fields["each_row"] = draft.pick(counts, {"mirror": counts})
        del fields["rows"], fields["across"]
        if draft.chance(30):
            other, mirrored = palette.another(draft, bead), isinstance(fields["each_row"], dict)
            total = sum(counts) + (sum(counts[:-1]) if mirrored else 0)
            fields["beads"] = [f"{total - 1} {bead.name}", other.name]
    lines.woven_on(draft, fields)
    width = across * (bead.outside if stitch == "brick" else bead.length)
    name = draft.add(draft.pick("panel", "leaf", "wedge"), fields)
    return Band(name, width, bead.outside, rows * bead.length, across, bead)


def bezel(draft: Draft, *, eye: bool = False) -> Woven:
    """A round stone in a bezel: a ring of peyote drawn in over its edge."""
    round_or_not = draft.pick("cylinder", "cylinder", "round")
    middle = palette.seed(draft, "11/0", kind=round_or_not, measured=60)
    small = palette.seed(draft, "15/0", kind="round")
    stone = draft.between(10, 28, 1)
    pitch, girth = middle.length * 1.05, float(stone)
    of_stone: Fields = {"outside": draft.length(stone, 30)}
    if draft.chance(35):
        shape, width = draft.pick("round", "oval", "square", "pear"), round(stone * 0.75, 1)
        of_stone["shape"] = shape
        if shape in ("oval", "pear"):
            of_stone["width"] = draft.length(width)
            girth = stones.PERIMETERS[shape](stone, width) / math.pi
        elif shape == "square":
            of_stone["corner"] = "1 mm"
            girth = stones.square_perimeter(stone, stone, 1.0) / math.pi
    ring = math.pi / math.atan(pitch / (girth + middle.outside))
    around = 2 * round(draft.fit(ring) / 2)
    deep = draft.whole(2, 3)
    fields: Fields = {
        "kind": "bezel", "stitch": "tubular peyote", "around": max(8, around),
        "beads": [small.name] * 2 + [middle.name] * deep + [small.name] * 2,
    }  # fmt: skip
    if draft.chance(15):
        fields["beads"][2] = [middle.name, small.name]
    if draft.chance(15):
        fields["base"] = {
            "stitch": draft.pick("right-angle weave", "ladder", "square"), "beads": middle.name
        }  # fmt: skip
        draft.maybe(40, fields["base"], rows=2)
    draft.maybe(85, of_stone, edge=draft.length(draft.between(1.0, 1.8, 0.2)))
    draft.maybe(70, of_stone, thickness=draft.length(draft.between(4.5, 6, 0.5)))
    draft.maybe(30, of_stone, back=draft.pick("flat", "pointed"))
    draft.maybe(85, of_stone, mass=draft.pick(f"{round(stone / 8, 1)} g", f"{round(stone / 2)} ct"))
    fields["stone"] = of_stone
    if eye or draft.chance(80):
        top: Fields = {"count": 1, "hole": draft.length(3.0), "wire": "1.4 mm"}
        draft.maybe(60, top, faces=draft.pick("side", "front"))
        draft.maybe(80, top, opens="yes")
        draft.maybe(8, top, through="1.4 mm", edge="1.4 mm", spacing="5 mm")
        fields["top_eyes"] = top
    _embellished(draft, fields, middle, ("edge",), layer=0)
    lines.woven_on(draft, fields)
    draft.maybe(12, fields, measured={"mass": f"{round(stone / 6, 1)} g"})
    return Woven(draft.add(draft.pick("setting", "bezel"), fields), stone + 4, stone + 4, middle)


def cabochon(draft: Draft) -> Woven:
    """A stone sewn down on a backing, with rows round it."""
    base = palette.seed(draft, "11/0", kind="cylinder")
    other = palette.seed(draft, "11/0", kind="round")
    shape, long = draft.pick("round", "oval", "square", "pear"), draft.between(18, 40, 1)
    stone: Fields = {"outside": draft.length(long), "mass": f"{round(long / 4, 1)} g"}
    draft.maybe(90, stone, shape=shape)
    draft.maybe(100 if shape == "oval" else 30, stone, width=draft.length(round(long * 0.7)))
    draft.maybe(60 if shape == "square" else 0, stone, corner="2 mm")
    draft.maybe(40, stone, edge="2 mm", thickness="6 mm")
    mixed = [base.name, other.name]
    fields: Fields = {
        "kind": "embroidered cabochon", "stone": stone,
        "beads": [base.name, *([mixed] if draft.chance(40) else [other.name])],
    }  # fmt: skip
    draft.maybe(70, fields, bezel=[base.name, draft.pick(other.name, mixed)])
    draft.maybe(70, fields, edge_row=other.name)
    draft.maybe(20, fields, seam="1 mm")
    eyes: Fields = {"count": 1, "hole": draft.length(3.0), "wire": "1.4 mm", "opens": "yes"}
    draft.maybe(8, eyes, through="1.4 mm", edge="1.4 mm", spacing="5 mm", faces="front")
    fields["top_eyes"] = eyes
    draft.maybe(60, fields, bottom_eyes=dict(eyes))
    lines.woven_on(draft, fields)
    draft.maybe(12, fields, measured={"mass": f"{round(long / 3, 1)} g"})
    return Woven(draft.add("cabochon", fields), long + 8, long + 8, base)


class Pouch(NamedTuple):
    """A pouch, with the columns of one of its faces."""

    name: str
    columns: int
    height: float
    bead: Bead


def pouch(draft: Draft) -> Pouch:
    """A pouch, with or without something that it is made to hold."""
    stitch = draft.pick("tubular peyote", "tubular peyote", "tubular herringbone")
    bead = palette.seed(draft, "11/0", "10/0")
    columns = draft.whole(8, 26)
    around = 2 * columns
    rise = bead.outside / 2 if stitch == "tubular peyote" else bead.length
    height = draft.between(30, 70, 5)
    fields: Fields = {"kind": "pouch", "stitch": stitch, "around": around, "beads": bead.name}
    if draft.chance(40):
        fields["beads"] = lines.mixed(draft, bead, palette.another(draft, bead), around)
    if draft.chance(60):
        fields["rounds"] = round(height / rise / 4) * 4
        draft.maybe(30, fields, repeat={"columns": 2, "rounds": draft.pick(2, 4)})
    else:
        fields["length"] = draft.length(height)
    pitch = bead.length if stitch == "tubular peyote" else bead.outside
    inside = around * pitch / 2 - bead.outside
    if draft.chance(65):
        wide, thick = draft.fit(inside * 0.8), draft.between(2, 5, 0.5)
        holds = {"width": draft.length(max(5, wide - thick)), "thickness": draft.length(thick)}
        draft.maybe(70, holds, height=draft.length(draft.fit(height * 0.8)))
        fields["holds"] = holds
    _embellished(draft, fields, bead, ("top edge", "bottom edge", "all round"))
    lines.woven_on(draft, fields)
    if draft.chance(30):
        measured: Fields = {"width": f"{round(inside + 2 * bead.outside, 1)} mm"}
        draft.maybe(25, measured, outside=f"{round(2 * inside / 3.14 + bead.outside, 1)} mm")
        draft.maybe(40, measured, mass=f"{draft.whole(5, 20)} g")
        fields["measured"] = measured
    return Pouch(draft.add("pouch", fields), columns, height, bead)
