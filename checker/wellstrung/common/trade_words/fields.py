"""Names of fields that are accepted for the plan's own: common practice, no source.

A name that several fields of one group have in common is asked about. What stands under `field of
thread` is looked up there before `field`.
"""

from __future__ import annotations

from collections.abc import Mapping

_HOLE = "diameter, inside diameter, inner diameter, inside, id, i.d., size, opening"

FIELDS: Mapping[str, Mapping[str, str]] = {
    "field": {
        "kind": "kind of part, part type",
        "do": "action, what to do",
        "wire": "gauge, wire gauge, wire size, wire thickness, wire diameter",
        "width": "wide, breadth",
        "thickness": "thick, height, high",
        "edge_row": "edging, edge beading, edge stitch",
        "length": "long",
        "height": "high, tall",
        "depth": "deep",
        "mass": "weight, weighs, wt",
        "inside": "inside diameter, inner diameter, internal diameter, id, i.d., diameter, size",
        "bore": "inside diameter, inner diameter, internal diameter, id, i.d., inside, diameter,"
        " opening, mouth, size",
        "outside": "outside diameter, outer diameter, external diameter, overall diameter, od,"
        " o.d., diameter, size",
        "hole": "hole size, hole diameter, drill hole",
        "count": "number, quantity, qty, how many",
        "times": "number, quantity, qty, how many, count",
        "joints": "times, number, quantity, qty, how many, count",
        "makes": "number, quantity, qty, how many, number of pieces",
        "colour": "color, col, colourway",
        "closing": "closed by",
        "closes": "closure, fastening, fastener, closing, closed by",
        "stitch": "technique, weave",
        "type": "style, sort",
        "beads": "bead, palette",
        "make": "origin, made in",
        "around": "beads around, round",
        "across": "beads across, columns",
        "bead_up": "drop, beads up",
        "finished_length": "length, total length, overall length, long, wanted length",
        "closed_length": "overall length, total length, length closed, length, long",
        "centre": "center, focal, focal bead, middle",
        "title": "name",
        "maker": "designer, teacher, made by",
        "note": "notes, comment, comments, remark, remarks",
        "budget": "cost limit, maximum cost, max cost",
        "work": "steps, method, instructions",
        "supplies": "stock, on hand, materials, supply",
        "parts": "components, findings",
        "states": "statements, statement",
        "thread": "cord, strung on, stringing material",
        "lot": "dye lot, batch",
        "sold_as": "sold in, sold by",
        "neck": "neck size",
        "wrist": "wrist size",
        "per_gram": "beads per gram, count per gram",
        "time": "for, how long, duration",
        "with": "glue, adhesive",
        "because": "reason, why",
        "top_eyes": "top eye, top loop, top loops, loop at the top",
        "bottom_eyes": "bottom eye, bottom loops, bottom loop",
        "eye": "loop",
        "edging": "picots, picot edging, picot edge, border, edge",
        "layer": "second layer, embellishment, embellished with",
        "one_for": "one per, one each",
        "repeats": "repeat, repeated",
        "passes": "thread passes",
        "working_length": "working thread, arm length",
        "rating": "test, breaking strength, strength, pound test",
    },
    "field of thread": {
        "outside": "thickness, thick, width",
        "type": "material, fibre, fiber",
    },
    "field of loop": {"hole": _HOLE},
    "field of eye": {"hole": _HOLE},
    "field of top_eyes": {"hole": _HOLE},
    "field of bottom_eyes": {"hole": _HOLE},
    "field of hung": {"by": "with, using", "from": "on, onto"},
    "field of plan": {"inside": "inside circumference, inner circumference"},
}
