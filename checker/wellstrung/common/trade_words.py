"""Words of the trade: which mean the same, and which have a meaning of their own.

Common practice, no source. A word with a meaning of its own is never taken for a slip of another:
a bead cap is no end cap, and German silver no sterling silver.
"""

from __future__ import annotations

from collections.abc import Mapping

#: word -> the words that mean the same; which of them is meant depends on where it stands
SAME: Mapping[str, tuple[str, ...]] = {
    word.replace("-", " "): tuple(meant.split(", "))
    for meant, words in {
        # parts
        "bead": "seed bead",
        "bead tip": "clamshell, knot cover, calotte",
        "ear wire": "earring hook, shepherd's hook, fish hook",
        "clasp, lobster": "lobster clasp, lobster claw, lobster claw clasp, trigger clasp",
        "clasp, spring ring": "spring ring clasp, bolt ring",
        "clasp, toggle": "toggle clasp, t-bar, bar and ring",
        "clasp, magnetic": "magnetic clasp",
        "clasp, slide": "slide clasp",
        "clasp, ribbon end": "ribbon end clasp",
        "clasp": "fastener, closure",
        "jump ring": "jumpring",
        "end cap": "cord end, glue-in end",
        "cone": "cord cone",
        "crimp": "crimp tube, crimp bead",
        "spacer bar": "separator bar",
        "wire link, head pin": "headpin",
        "wire link, eye pin": "eyepin",
        "adhesive": "glue",
        "strand": "string of beads",
        # thread and adhesives
        "elastic": "elastic cord, stretch cord, stretchy cord, clear elastic, clear stretch cord, "
        "elastic thread, elastic line, beading elastic, stretch, stretchy",
        "flexible wire": "stringing wire, beading wire, tiger tail, flexible beading wire, "
        "nylon-coated wire, coated wire, stranded wire, bead wire",
        "fused": "fused line, bonded line, fused thread, bonded thread, fused gel-spun, "
        "gel-spun fused, fused polyethylene, fused beading line, fused beading thread",
        "gel-spun braided": "gel-spun braid, plain braid, unfused braid, plain braided line, "
        "braided polyethylene, polyethylene braid",
        "braided": "braided line, braid, braided thread, braided beading thread, gel-spun, "
        "gel-spun line, gel-spun thread, polyethylene line, braided fishing line",
        "monofilament": "mono, nylon monofilament, illusion cord, invisible thread, mono line",
        "nylon": "nylon thread, nylon beading thread, beading nylon",
        "bonded nylon": "bonded nylon thread",
        "twisted nylon": "nylon cord, nylon bead cord, twisted nylon cord, macrame nylon",
        "silk": "silk cord, silk thread, silk bead cord, carded silk, beading silk, bead silk",
        "polyester": "polyester thread, polyester beading thread",
        "leather": "leather cord, leather lace, leather thong, round leather",
        "suede": "suede lace, suede cord, faux suede",
        "waxed cotton": "cotton cord, waxed cotton cord, cotton",
        "waxed polyester": "waxed polyester cord, polyester cord",
        "knotting cord": "chinese knotting cord, nylon knotting cord, knotting nylon",
        "satin": "satin cord, rattail, rat tail",
        "rubber": "rubber cord, rubber tube, buna cord",
        "waxed linen": "linen, linen thread, linen cord, irish linen, irish waxed linen",
        "hemp": "hemp cord, hemp twine",
        "perle cotton": "pearl cotton, perle, coton perle",
        "crochet cotton": "crochet thread, cotton crochet thread",
        "two-part epoxy": "epoxy, epoxy resin, 2-part epoxy, epoxy glue",
        "cyanoacrylate": "superglue, super glue, instant glue",
        "contact cement": "contact adhesive, contact glue",
        # metals
        "sterling silver": "sterling, 925, 925 silver, silver 925",
        "nickel silver": "german silver, alpaca, alpaca silver",
        "aluminium": "aluminum",
        "stainless steel": "stainless",
        "surgical steel": "surgical stainless steel",
        # stitches
        "brick": "brick stitch, comanche stitch",
        "ladder": "ladder stitch",
        "square": "square stitch",
        "loom": "loom work, loomwork",
        "right-angle weave": "raw",
        "cubic right-angle weave": "cubic raw, craw",
        "slip-stitch bead crochet": "bead crochet rope, slip-stitch rope",
        # fields
        "wire": "gauge",
        "width": "wide, breadth",
        "thickness": "thick",
        "length": "long",
        "height": "high, tall",
        "mass": "weight",
        "inside": "inside diameter, inner diameter, id",
        "outside": "outside diameter, outer diameter, od",
        "joints": "times",
        "count": "number, quantity, qty, how many",
        "colour": "color",
        "centre": "center",
    }.items()
    for word in words.split(", ")
}

#: words that mean something else than any that looks like them
OWN = frozenset(
    word.strip().replace("-", " ")
    for word in """
    bead cap, bead cone, crimp cover, crimp end, ribbon end, kidney wire, lever back, hoop, post
    hook, swivel snap, snap, split ring, soldered ring, closed ring, open ring, wire link
    chain link, link, connector, bail, spacer bead, spacer, end bar, bar, toggle, toggle bead
    button, t-pin, eye pin, head pin, ball pin, pin, french wire, gimp, bullion, french hook
    craft wire, memory wire, wire, cord, cap, core, cone, tube, cube, bead, band, rope, collar
    choker, cuff, ear cuff, clip, ear clip, stud, ball, tip, chain, ring, finger ring, pouch
    spool, bobbin, hank, loop, gauge, slide, tassel, dagger, drop, charm, tag
    nylon, silk, linen, cotton, wool, polyester, polyamide, elastic, rubber, latex, leather, suede
    monofilament, fused, braided, bonded nylon, waxed linen, fishing line, gel-spun, hemp
    nylon d, silk d, silk e, silk 4
    brass, copper, bronze, pewter, silver, gold, steel, iron, tin, lead, zinc, nickel
    platinum, palladium, electrum, gunmetal
    tin alloy, pot metal, base metal, raw metal, mystery metal, unknown
    tibetan silver, silver tone, silver plated, plated silver, antique silver, oxidised silver
    gold tone, gold plated, gold filled, rolled gold, rose gold, white gold, yellow gold, red gold
    green gold, vermeil, antique gold, antique brass, antique copper, antique bronze, bronze tone
    copper tone, plated copper, plated zinc, plated bronze, carbon steel, mild steel
    memory steel, spring steel, galvanised steel
    hypoallergenic, nickel safe, nickel tested, low nickel, surgical, lead safe, nickel
    resin, uv glue, hot glue, white glue, pva, fabric glue, wood glue, jewellers' cement, cement
    contact lens fluid, polyurethane glue, silicone
    peyote, gourd stitch, twill, herringbone, ndebele, herringbone wire weave, prismatic raw
    cross-needle, dutch spiral, russian spiral, spiral peyote, spiral, kumihimo, flat braid
    bead crochet, crochet, macrame, daisy chain, chenille, saint petersburg chain, netted rope
    crystal, rock crystal, quartz, lead glass, lead crystal, glass, pearl, freshwater pearl
    glass pearl, shell pearl, crystal pearl, shell, stone
    crimp, round, diameter, inner, outer, waist, size, bore, hole
    baby, teenager, toddler, infant, kid
    """.replace("\n", ",").split(",")
    if word.strip()
)  # fmt: skip
