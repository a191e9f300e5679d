"""Words with a meaning of their own, which are no slip of another.

Common practice, no source. A bead cap is no end cap, and German silver no sterling silver.
"""

from __future__ import annotations

#: words that mean something else than any that looks like them
OWN = """
    bead cap, bead cone, crimp end, ribbon end, kidney wire, lever back, hoop, post
    hook, swivel snap, snap, split ring, soldered ring, closed ring, open ring, wire link
    chain link, link, connector, bail, spacer bead, spacer, end bar, bar, toggle, toggle bead
    button, t-pin, eye pin, head pin, ball pin, pin, french wire, gimp, bullion, french hook
    craft wire, memory wire, wire, cord, cap, core, cone, tube, cube, bead, band, rope, collar
    choker, cuff, ear cuff, clip, ear clip, stud, ball, tip, chain, ring, finger ring, pouch
    spool, bobbin, hank, loop, gauge, slide, dagger, drop, charm, tag
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
    bead crochet, crochet, macrame, daisy chain, chenille, saint petersburg chain, chevron chain
    netted rope
    crystal, rock crystal, quartz, lead glass, lead crystal, glass, pearl, freshwater pearl
    glass pearl, shell pearl, crystal pearl, shell, stone
    crimp, round, diameter, inner, outer, waist, size, bore, hole
    baby, teenager, toddler, infant, kid
    """.replace("\n", ",")
