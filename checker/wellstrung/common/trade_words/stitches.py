"""Words for stitches: the plan's own word -> the words that mean the same.

Common practice, no source. What stands under `stitch of woven rope` is looked up there before
`stitch`.
"""

from __future__ import annotations

from collections.abc import Mapping

STITCHES: Mapping[str, Mapping[str, str]] = {
    "stitch": {
        "flat peyote": "flat gourd stitch, flat peyote stitch, flat gourd, even-count flat peyote",
        "flat herringbone": "flat ndebele, flat herringbone stitch, flat ndebele stitch",
        "tubular peyote": "tubular gourd stitch, tubular peyote stitch, even-count tubular peyote,"
        " even tubular peyote, tubular gourd, peyote tube",
        "odd tubular peyote": "odd-count tubular peyote, odd-count peyote tube",
        "tubular herringbone": "tubular ndebele, tubular herringbone stitch",
        "twisted herringbone": "twisted ndebele, twisted tubular herringbone, spiral herringbone",
        "slip-stitch bead crochet": "bead crochet, bead crochet rope, slip-stitch rope,"
        " slip-stitch crochet, tubular bead crochet",
        "cubic right-angle weave": "cubic RAW, CRAW",
        "spiral rope": "spiral rope stitch, spiral stitch",
        "flat spiral": "flat spiral stitch, flat spiral rope",
        "Dutch spiral": "Dutch spiral stitch, Dutch spiral rope",
        "Russian spiral": "Russian spiral stitch, Russian spiral rope, Russian netting",
        "brick": "brick stitch, Comanche stitch",
        "ladder": "ladder stitch",
        "two-hole strung": "two-hole stringing, strung on two lines, two-line stringing",
        "square": "square stitch",
        "tubular square": "tubular square stitch, square stitch tube",
        "loom": "loom work, loomed, loom weaving, bead loom",
        "right-angle weave": "RAW, flat RAW, single-needle RAW",
        "hexagon weave": "hexagon stitch, hexagon angle weave, hexagonal weave, honeycomb weave",
        "netting": "netted, netting stitch, net stitch, flat netting, horizontal netting,"
        " bugle lace, lace netting",
        "ladder between cords": "wrap ladder, leather wrap, laddered wrap, ladder wrap",
        "daisy chain": "daisy stitch, daisy-chain stitch, daisies",
        "Saint Petersburg chain": "St. Petersburg chain, St Petersburg chain, St. Petersburg,"
        " St Petersburg, Saint Petersburg, St. Petersburg stitch, Saint Petersburg stitch",
        "chevron chain": "chevron, chevron stitch, chevron chain stitch",
        "vertical netting": "vertical net, vertical netting stitch",
        "tubular netting": "netted rope, netted tube, tubular net, circular netting",
        "8-warp beaded braid": "beaded kumihimo, 8-strand beaded kumihimo, kumihimo with beads,"
        " 8-warp beaded kumihimo, 8-cord beaded kumihimo",
        "plain braid": "plain kumihimo, kumihimo without beads, round braid",
        "strung": "stringing, threaded, bead stringing",
        "knotted": "pearl knotting, hand-knotted, knotted between, knotting, knotted stringing",
        "spaced": "tin cup, station, illusion, stationed, floating",
    },
    "stitch of woven rope": {
        "tubular peyote": "peyote, peyote stitch, gourd stitch, gourd, even-count peyote",
        "odd tubular peyote": "odd-count peyote, odd peyote",
        "tubular herringbone": "herringbone, ndebele, herringbone stitch, ndebele stitch",
        "tubular square": "square, square stitch",
        "slip-stitch bead crochet": "crochet, slip stitch",
        "spiral rope": "spiral",
        "tubular netting": "netting, netting stitch, net stitch, netted",
    },
    "stitch of woven band": {
        "flat peyote": "peyote, peyote stitch, gourd stitch, gourd, even-count peyote,"
        " odd-count peyote, odd-count flat peyote",
        "flat peyote, bead_up: 2": "two-drop peyote, two-drop, 2-drop peyote, two-drop flat peyote",
        "flat peyote, bead_up: 3": "three-drop peyote, three-drop, 3-drop peyote",
        "flat herringbone": "herringbone, ndebele, herringbone stitch, ndebele stitch",
        "right-angle weave, needles: 2": "cross-needle, cross-needle weave,"
        " double-needle, cross-needle right-angle weave, double-needle right-angle weave",
    },
    "stitch of pouch": {
        "tubular peyote": "peyote, peyote stitch, gourd stitch, gourd, even-count peyote",
        "tubular herringbone": "herringbone, ndebele, herringbone stitch, ndebele stitch",
    },
    "stitch of beaded bead": {
        "tubular peyote": "peyote, peyote stitch, gourd stitch, gourd, even-count peyote",
        "tubular netting": "netting, netting stitch",
    },
    "stitch of bezel": {"tubular peyote": "peyote, peyote stitch, gourd stitch, gourd"},
}
