"""Words of the trade that are asked about, or that the project has nothing for, by their place.

Common practice, no source. `ASKED` are words with more than one meaning: the advice names each with
what to write for it. `KNOWN` are words for what a plan cannot describe yet: the advice is what to
write instead. Neither is guessed at.
"""

from __future__ import annotations

from collections.abc import Mapping

_PALETTE = "write it under `beads`, with a name of your own, and name it where it is strung"
_A_PIECE = "it is a piece, not a part: write `piece: {}` at the top of the plan"
_OWN_CLASP = "write a `clasp` of another type"

#: at each place: words, separated by commas -> the meanings, each with what to write
ASKED: Mapping[str, Mapping[str, str]] = {
    "kind": {
        "cap": "write `end cap` for a cup that takes the end of a rope, `cone` for one that several"
        " ends go into, or `type: other` under `beads` for a dish that sits over a bead",
        "link": "write `wire link` for a bead on wire with loops, `connector` for a bought one, or"
        " list it in `links` of a `chain`",
        "ring": "write `jump ring` and its `closing` (`open`, `soldered` or `split`), `connector`"
        " for a large one that parts hang from, or `piece: ring` if it is worn on a finger",
        "loop": "write `wire link` for a loop of wire, `clasp` with `type: button and loop` for one"
        " of beads, or `eye` in the part that carries it",
        "tube": "write `crimp` for a crimp tube, `clasp` with `type: slide` for a tube that a band"
        " is sewn to, or a bead under `beads` for one that is strung",
        "rope": "write `woven rope` with its `stitch` for one of beads, `braid` for one of cords,"
        " or `called: rope` at the top of the plan for the length of a necklace",
        "bar": "write `spacer bar` for one that strands run through, `connector` for one with an"
        " eye at each end, or `clasp` with `type: toggle`, which has a `bar`",
        "pin": "write `head pin` or `eye pin`, or `piece: brooch` if the whole piece is pinned on",
        "hook": "write `ear wire` for one in an ear, or `clasp` with `type: hook`",
        "wire": "write `thread` with `type: flexible wire` or `type: memory wire` for what beads"
        " are strung on, or `wire link` for a bead on wire with loops",
        "cord": "write `core` for what a rope is woven round, `thread` for what beads are strung"
        " on, or `braid` for cords that are braided",
        "spacer": "write `spacer bar` for one with several holes, or a bead under `beads` for one"
        " that is strung",
        "hoop": "write `ear wire` with `type: hoop` for one in an ear, or `connector` for one that"
        " hangs",
        "button": "write `clasp` with `type: button and loop`, which has a `button`, or a bead"
        " under `beads`",
        "safety clasp": "write `breakaway clasp` for one that lets go when it catches, or `clasp`"
        " with `type: fold-over` or `box` for one that a catch keeps shut",
        "tip": "write `bead tip` for a shell over a knot, or `end cap` for a cup that takes a rope",
        "end": "write `end cap` for a cup that takes a rope, `bead tip` for a shell over a knot,"
        " or `clasp` with `type: ribbon end` for a jaw on a band",
        "drop, dangle": "write `bead drop` for beads on a thread, `head pin` for beads on a wire,"
        " or `pendant` for a bought one",
        "band": "write `woven band` with its `stitch`, or `piece: ring` if it is worn on a finger",
        "collar": "write `woven band` for a wide piece, or `called: collar` at the top of the plan"
        " for the length of a necklace",
        "choker": "write `woven band` for a wide piece, or `called: choker` at the top of the plan"
        " for the length of a necklace",
        "cuff": "write `woven band` for a bracelet, or `ear wire` for one worn on an ear",
        "line": "write `thread` with its `type`: `fused` for stiff grey bonded line, `braided` for"
        " limp line, `monofilament` for clear line",
        "clamp": "write `clasp` with `type: ribbon end` for a jaw on a band, or `bead tip` for a"
        " shell over a knot",
        "stone, cabochon": "write `bezel` with its `stone` for one that beads hold,"
        " `embroidered cabochon` for one sewn on a backing, `pendant` for"
        " one with a loop, or a bead under `beads` for one that is drilled",
    },
    "stitch": {
        "peyote, gourd stitch, gourd, peyote stitch": "write `flat peyote` for a `woven band`, or"
        " `tubular peyote` for a `woven rope`",
        "herringbone, ndebele, herringbone stitch, ndebele stitch": "write `flat herringbone` in a"
        " `woven band`, `tubular herringbone` or `twisted herringbone` in a `woven rope`",
        "kumihimo, braid, braided, kumihimo braid": "write `8-warp beaded braid` with its `beads`,"
        " or `plain braid` for cord alone",
        "spiral": "write `spiral rope` for loops round a core of beads, `flat spiral`, `Russian"
        " spiral` or `twisted herringbone`",
        "16-warp beaded braid, 12-warp beaded braid, 16-strand beaded kumihimo, 16-warp beaded"
        " kumihimo, 12-strand beaded kumihimo": "write `beaded braid` with its `warps: 16`",
        "spiral peyote, Cellini, Cellini spiral": "write `tubular peyote` with its `beads` in their"
        " order round the tube and `one_for: each column`",
        "crochet": "write `slip-stitch bead crochet` in a `woven rope`; there is none for crochet"
        " with wire, or with beads inside the stitches",
        "tubular RAW, tubular right-angle weave": "write `cubic right-angle weave` for a rope of"
        " cubes; there is none for a tube of one layer yet",
        "woven, weave, beadweaving": "write which: `flat peyote`, `brick`, `right-angle weave`,"
        " `tubular herringbone` or another",
    },
    "type of clasp": {
        "ring": "write `spring ring` for one that opens by a lever, or `toggle` for ring and bar",
        "loop": "write `button and loop` for one of beads or thread, or `hook` for one of wire",
        "tube": "write `slide` for two tubes that slide into each other and are sewn to a band, or"
        " `box` for one that clicks shut between eyes",
        "bar": "write `toggle` for a bar and a ring, or `slide` for bars sewn to a band",
    },
    "type of ear wire": {
        "french": "write `hook` for an open one, or `lever back` for one that shuts",
    },
    "closing": {
        "close, shut": "write `open` for a ring that you bend open and shut, or `soldered` for one"
        " that has no gap",
    },
    "piece": {
        "collar": "write `piece: necklace`, and `called: collar` if you mean its length",
        "rope": "write `piece: necklace` with `called: rope` for a long one, or `piece: lariat`"
        " for one without a clasp",
        "cuff": "write `piece: bracelet`, or `piece: earrings` for ear cuffs",
        "band": "write `piece: bracelet` for the wrist, or `piece: ring` for a finger",
        "pin": "write `piece: brooch` for one that is pinned on",
        "rosary, prayer beads, mala": "write `piece: necklace`, with `run_is: loop` for the beads"
        " that go round",
        "charm": "write `piece: pendant`, or `piece: key ring` for one on a bag or keys",
        "set": "write a plan for each piece: `piece: necklace`, `piece: earrings`",
        "tassel": "write the piece that it hangs from: `piece: pendant`, `piece: earrings`",
        "wrap": "write `piece: bracelet` for the wrist, or `piece: lariat` for the neck",
    },
    "age": {
        "toddler, infant school": "write the age, such as `2` or `4`: rules differ at three",
        "teenager, teen, young": "write the age, such as `13` or `16`: rules differ at fifteen",
        "senior, elderly": "write `adult`",
    },
    "do": {
        "stitch": "write `weave` for making a part, or `sew` for sewing it to another",
        "attach, join, connect, fix, fasten, link, add": "write `close ring` if a ring does it,"
        " `sew`, `glue`, `hang`, `crimp` or `wrap loop`",
        "tie": "write `knot` for knots between the beads of a strand or at its ends, or `finish"
        " thread` for the ends of a thread",
        "finish, end": "write `finish thread` for the ends of a thread, or `wear` for"
        " the last step",
        "restring, re-string": "write `take apart` for its old line, and `string` or `knot` for the"
        " new one",
        "make": "write how: `weave`, `string`, `knot` or `wrap loop`",
        "thread": "write `string` for beads on a thread, or `slide` for a part onto a rope",
        "close": "write `close ring` for a jump ring, or `crimp` for a crimp or a bead tip",
        "wrap": "write `wrap loop` for a loop of wire, or `pack` for the parcel",
        "assemble": "write each join as a step of its own: `close ring`, `glue`, `sew`, `crimp`",
    },
    "field": {
        "material, made of": "write `metal` if it is of metal, or leave it out",
    },
}

#: at each place: words, separated by commas -> what to write instead
KNOWN: Mapping[str, Mapping[str, str]] = {
    "kind": {
        "ear thread, threader, ear threader": "write `ear wire` with its `wire` and `length`,"
        " without `type`",
        "swivel snap, swivel clasp, swivel, dog clip": "write `clasp` with `type: lobster` and its"
        " `closed_length`; that it turns is not checked",
        "T-pin": "it pins work to a board and is no part of a piece: leave it out",
        "toggle bead": "write `clasp` with `type: button and loop`, with the bead as its `button`",
        "bead cap": f"{_PALETTE}, with `type: bead cap`",
        "bead cone": f"{_PALETTE}, with `type: other` and its own sizes",
        "spacer bead": f"{_PALETTE}",
        "wire guard, wire guardian, wire protector": "leave it out, and add its length to that of"
        " the clasp's half",
        "ear nut, ear back, scroll, butterfly, clutch": "leave it out: it hangs from nothing, and"
        " it is bought with the `ear post`",
        "pearl, pearls, crystal, crystals, bicone, rondelle, bead, beads, seed bead, seed beads,"
        " bugle, fire-polished bead, gemstone, nugget, chips, briolette": _PALETTE,
        "tassel cap": "write an `end cap` with its `bore`",
        "finger ring": _A_PIECE.format("ring"),
        "necklace": _A_PIECE.format("necklace"),
        "bracelet": _A_PIECE.format("bracelet"),
        "earring, earrings": _A_PIECE.format("earrings"),
        "lariat": _A_PIECE.format("lariat"),
        "brooch": _A_PIECE.format("brooch"),
        "key ring": "write a `jump ring` with `closing: split`",
        "ribbon, leather, leather cord, suede, suede lace, rattail, satin cord, rubber cord,"
        " waxed cotton cord": "write a `core` with its `outside` where a rope is woven round it,"
        " or a `strand` where beads run on it",
        "craft wire": "write the `wire` of each `wire link`: no wire is a part of its own",
        "stop bead, bead stopper": "it comes off again and is no part of a piece: leave it out",
        "wax, thread conditioner, conditioner": "leave it out: no check depends on it",
        "setting, bezel cup, sew-on setting, prong setting, tray": "write a `pendant` with its"
        " `top_eyes` for a stone in bought metal, or `bezel` for one in beads",
        "slider, slide bead, stopper bead": "write a bead under `beads`; that it holds by friction"
        " is not checked",
        "hair comb, barrette, hair clip, cufflink, watch": "leave it out and plan what is sewn to"
        " it",
    },
    "stitch": {
        word: "write the nearest stitch that there is, with the `length` of the part and"
        " `measured: {outside: ...}` of your swatch; its count of beads will not hold"
        for word in (
            "prismatic RAW, prismatic right-angle weave",
            "chenille, chenille stitch",
            "diagonal peyote, triangle peyote, circular peyote",
            "triangle weave, hubble, hubble stitch, diamond weave",
            "African helix, helix",
        )
    }
    | {
        "twill": "write `flat peyote` if the beads lie as in peyote; there is no twill of loomed"
        " work yet",
        "flat braid, flat kumihimo": "there is the round `8-warp beaded braid` and the round"
        " `plain braid`",
        "macrame, micro-macrame": "write a `plain braid` with its `measured` thickness",
        "bead embroidery, embroidery, couching, backstitch": "write a `pendant` with its sizes and"
        " its `mass`",
        "soutache": "write a `pendant` with its sizes and its `mass`",
        "herringbone wire weave, wire weave, viking knit": "there is no"
        " stitch of wire: write a `chain` with its `links`, or a `connector`",
        "chain maille, chainmaille": "write `kind: ring weave` with its `type` and its `rings`",
    },
    "type of clasp": {
        "swivel snap, swivel clasp, swivel": "write `lobster`; that it turns is not checked",
        "hook and loop tape, touch fastener": "write `slide` with the length that it adds as"
        " `closed_length`",
        "jump ring, split ring": "it is no clasp: write `kind: jump ring`",
        "crimp end": "write `ribbon end` for a jaw on a band, or `kind: end cap`",
        "T-pin": "write `toggle` for a ring and a bar",
        "toggle bead": "write `button and loop`, with the bead as its `button`",
        "knot": "it is no clasp: leave it out and write `closes: knot` at the top of the plan",
    },
    "type of ear wire": {
        "ear thread, threader": "leave `type` out, and write its `wire` and `length`",
        "ear cuff, cuff": "it goes through no ear: write it as a `pendant` with its loop in"
        " `bottom_eyes`",
    },
    "type of wire link": {
        "T-pin": "it pins work to a board and is no part of a piece: write `head pin`",
        "jump ring": "write `kind: jump ring`",
    },
    "piece": {
        "belt, headband, tiara, crown, hair comb, barrette, bookmark, watch strap, watch band,"
        " purse, bag, ornament": "write the nearest that"
        " there is, such as `necklace` for a long strand or `pendant` for one that hangs, without"
        " `wearer`",
        "body chain, arm band, armband, toe ring, ear cuff, ear cuffs": "write the nearest that"
        " there is (`bracelet`, `ring`, `earrings`), without `wearer`",
    },
    "field": {
        "base row, base rows, first row of beads": "write its bead first in `beads`; a row takes as"
        " many as go round, which the program counts",
        "backing, foundation, ultrasuede, felt": "write `seam` for how far it reaches beyond the"
        " beads of an `embroidered cabochon`, and glue it by steps (`to: foundation`,"
        " `to: backing`)",
        "ends, end": "name what it ends in under `run`, or write the step that makes its ends, as"
        " in `turn 2 loops at coil`",
    },
    "knot": {
        "surgeon's knot, surgeon's, surgeons knot, square knot, square, reef knot, reef": "it ties"
        " off two ends and stands between no beads: write it as a step, as in `tie surgeon's knot"
        " on strand`",
    },
    "do": {
        word: "leave the step out; what time it takes can stand in `takes` of the step that it"
        " belongs to"
        for word in (
            "solder",
            "pickle",
            "polish, file, sand, hammer, anneal",
            "varnish, seal, spray",
            "wax, condition, stretch, stretch thread, wax thread, condition thread, prestretch",
            "add stop bead, stop bead, add a stop bead",
            "add thread, join thread, add new thread, start thread, change thread",
            "block, iron, press, pull taut",
            "sort, cull, lay out, sort beads, cull beads, design",
            "check, test, inspect, photograph",
            "turn, turn over, zip, zip up",
            "wind bobbins, wind the bobbins, load bobbins, load the bobbins, warp loom,"
            " warp the loom, set up loom, set up the loom, cut thread, cut threads",
        )
    }
    | {
        "trim, snip, trim ends, trim tails, cut tails, cover, cover crimp": "leave the step out:"
        " `finish thread` and `crimp` count it",
        ", ".join(
            f"{turned} {the}{line}"
            for turned in ("turn", "thread", "tuck", "pass", "run", "hide")
            for the in ("the ", "")
            for line in ("tail", "tails")
        ): "leave the step out: the `tail` of a `thread` is taken as turned back through the beads,"
        " and `crimp` and `finish thread` count it",
        "glue knot, glue knots, glue the knot, glue the knots": "write it in the step that ties the"
        " knot, as in `knot strand with glue`",
        "picot edging, picots, picot, edging, add picots, add picot, add picot edging,"
        " add edging, sew picots, sew picot edging, weave picots, weave picot edging": "leave the"
        " step out: what is sewn along an edge is written in its part, as in"
        " `edging: {beads: [foam, tide, foam], along: both edges}`",
        "gather": "write `hang` for what a ring carries, or `slide` for what goes onto a rope",
        "roughen, rough up, degrease": "write it in the step that glues, as in"
        " `prepared: [roughened]`",
        "mix, mix glue": "write it in the step that glues, as in `mixes: 2`",
        "open ring, open jump ring": "leave it out: `close ring` counts both",
        "wind, twist, coil": "write `wrap loop` for a loop of wire; leave out what winds cord on"
        " bobbins: its time can stand in `takes` of the step that braids",
        "open, open loop, open loops, open hook": "leave it out: `close ring` counts the opening of"
        " its ring, and `hang` that of a loop",
        "rivet, set stone, bezel": "write `weave` for a bezel of beads",
    },
}
