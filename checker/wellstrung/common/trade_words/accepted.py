"""Words of the trade that are accepted as written, by the place where they stand.

Common practice, no source. At each place: the plan's own word -> the words that mean the same, in
the US or in the UK. A word may say more than one thing: `clasp, type: lobster` is the kind `clasp`
with its field `type`.
"""

from __future__ import annotations

from collections.abc import Mapping

from wellstrung.common.trade_words.fields import FIELDS
from wellstrung.common.trade_words.stitches import STITCHES

#: words that mean the same wherever they stand, and the same again under a longer name
_GLUES = {
    "two-part epoxy": "epoxy, epoxy resin, 2-part epoxy, epoxy glue, two-part glue, epoxy adhesive",
    "cyanoacrylate": "superglue, super glue, instant glue, CA glue",
    "contact cement": "contact adhesive, contact glue",
    "UV resin": "UV cure resin, UV curing resin",
    "jeweller's cement": "jeweler's cement, jewellers' cement, jewelers' cement, jewellers cement,"
    " jewelers cement, jewellery cement, jewelry cement, jewellery glue, jewelry glue,"
    " jewellery adhesive, jewelry adhesive, flexible cement, flexible glue, flexible adhesive,"
    " watch crystal cement, crystal cement, bead cement, beading cement, beading glue, knot cement",
    "fabric glue": "textile glue, cloth glue, fabric adhesive, fabric cement, textile adhesive",
}
_THREADS = {
    "elastic": "elastic cord, stretch cord, stretchy cord, clear elastic, clear stretch cord, "
    "elastic thread, elastic line, beading elastic, stretch, stretchy",
    "flexible wire": "stringing wire, beading wire, tiger tail, flexible beading wire, "
    "nylon-coated wire, coated wire, stranded wire, bead wire, "
    "nylon-coated stainless steel wire, nylon-coated steel wire, coated steel wire",
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
    "satin": "satin cord, rattail",
    "rubber": "rubber cord, rubber tube, buna cord",
    "waxed linen": "linen, linen thread, linen cord, irish linen, irish waxed linen",
    "hemp": "hemp cord, hemp twine",
    "perle cotton": "pearl cotton, perle, coton perle, cotton perle",
    "crochet cotton": "crochet thread, cotton crochet thread",
    "memory wire": "memory steel wire",
}
_LOBSTER = "lobster clasp, lobster claw, lobster claw clasp, trigger clasp, parrot clasp"
_SPRING_RING = "spring ring clasp, bolt ring, bolt ring clasp"
_TOGGLE = (
    "toggle clasp, T-bar, T-bar clasp, bar and ring, ring and bar, toggle and ring, toggle and bar,"
    " bar and toggle, T-bar and ring"
)
_HOOK = "hook clasp, hook and eye, hook and eye clasp"
_S_HOOK = "S-hook, S-hook clasp"
_FOLD = "fold-over clasp, watch clasp"
_BARREL = (
    "barrel clasp, screw clasp, torpedo clasp, barrel screw clasp, screw barrel clasp,"
    " breakaway clasp, breakaway, breakaway barrel, breakaway barrel clasp, breakaway connector,"
    " lanyard breakaway, safety breakaway, pop barrel"
)
_SNAP = "sew-on snap, press stud, popper, snap fastener, sew-on press stud"
_BOX = (
    "box clasp, tongue clasp, filigree box clasp, tab clasp, fishhook clasp, fish hook clasp,"
    " pearl clasp"
)
_MAGNET = "magnetic clasp, magnet clasp, magnet"
_SLIDING = "sliding knot, adjustable knot, adjustable knots, sliding knot closure, slip knots"
_RIBBON = "ribbon clamp, ribbon crimp, ribbon end clasp, ribbon crimp end"
_BUTTON = (
    "button clasp, button and loop clasp, loop and button, bead and loop, button and thread loop,"
    " bead button and loop"
)
_EAR_HOOK = (
    "earring hook, shepherd's hook, fish hook, french hook, hook ear wire, ear hook,"
    " fish hook ear wire, fishhook ear wire, french hook ear wire, french ear wire,"
    " shepherd's hook ear wire"
)
_HEAD_PIN = "ball pin, ball head pin, ball-headed pin, flat head pin, ball-end pin"
_EYE_PIN = "loop pin"
_LINKS = (
    "beaded link, bead link, rosary link, turned link, wire-wrapped link, wrapped link,"
    " wrapped bead link"
)
ACCEPTED: Mapping[str, Mapping[str, str]] = {
    "kind": {
        "bead tip": "clamshell, clamshell tip, knot cover, calotte, knot end",
        "brooch pin": "brooch back, pin back, bar pin, brooch finding, pin finding, brooch bar",
        "crimp cover": "crimp bead cover, crimp cover bead, crimp tube cover",
        "french wire": "gimp, bullion, bouillon, gimp wire, purl wire",
        "ear wire": "earring wire",
        "ear wire, type: hook": _EAR_HOOK,
        "ear wire, type: lever back": "lever back, lever back ear wire",
        "ear wire, type: hoop": "ear hoop, earring hoop, hoop earring, hoop ear wire",
        "ear wire, type: kidney": "kidney wire, kidney ear wire",
        "ear wire, type: clip-on": "clip-on, ear clip, clip-on earring, earring clip",
        "ear post, type: loop": "ear stud with loop, stud with loop, post with loop,"
        " ball post with loop",
        "ear post": "earring post, post, stud, ear stud, earring stud, post earring, stud earring,"
        " post with ball, ball post",
        "clasp": "fastener, fastening, closure, catch",
        "clasp, type: lobster": f"lobster, {_LOBSTER}",
        "clasp, type: spring ring": f"spring ring, {_SPRING_RING}",
        "clasp, type: toggle": f"toggle, {_TOGGLE}",
        "clasp, type: magnetic": _MAGNET,
        "clasp, type: hook": _HOOK,
        "clasp, type: box": _BOX,
        "clasp, type: S-clasp": f"S-clasp, {_S_HOOK}",
        "clasp, type: fold-over": _FOLD,
        "clasp, type: barrel": _BARREL,
        "clasp, type: snap": f"snap, {_SNAP}",
        "clasp, type: sliding knots": _SLIDING,
        "clasp, type: slide": "slide clasp, slide lock clasp, slide lock, sliding tube clasp,"
        " tube clasp, slide tube clasp",
        "clasp, type: ribbon end": f"ribbon end, {_RIBBON}",
        "clasp, type: button and loop": f"button and loop, {_BUTTON}",
        "jump ring": "jumpring, jump hoop",
        "jump ring, closing: open": "open ring, open jump ring",
        "jump ring, closing: split": "split ring, split jump ring, double ring",
        "jump ring, closing: soldered": "soldered ring, soldered jump ring",
        "jump ring, closing: closed": "closed ring, closed jump ring",
        "end cap": "cord end, glue-in end, glue-in cord end, cord cap, rope end, barrel end,"
        " kumihimo end, kumihimo end cap, glue-in end cap, end cup, tube end cap",
        "end bar": "multi-strand end bar, strand reducer, multi-strand end, end spacer bar",
        "end cap, type: ball": "end ball, memory wire end, memory wire end ball, half-drilled ball,"
        " glue-on ball, end bead",
        "end cap, type: fold-over": "crimp end, folding crimp end, fold-over cord end,"
        " fold-over crimp end",
        "end cap, type: cup chain": "cup chain end, cup chain connector, cup chain end connector,"
        " cup chain ending, rhinestone chain end,"
        " rhinestone chain connector, crystal chain end, rhinestone cup chain end",
        "ring weave": "chain maille, maille, chain mail",
        "cone": "cord cone, cone end, end cone",
        "crimp": "crimp bead, crimping bead",
        "crimp, type: tube": "crimp tube, crimp tube bead",
        "spacer bar": "separator bar, bar spacer, multi-strand spacer,"
        " multi-hole spacer, multi-strand bar",
        "spectacle loop": "eyeglass holder, eyeglass loop, eyeglass end, glasses loop, glasses end,"
        " glasses holder, spectacle end, spectacle holder, spectacle chain end, eyeglass chain end",
        "connector": "connector link, link connector, connector bar, station, curved bar,"
        " rosary centre, rosary center, centrepiece, centerpiece",
        "bail": "pendant bail, bale, beaded bail",
        "bail, type: pinch": "pinch bail",
        "wire link": "wire-wrapped component, wirework link",
        "wire link, type: link": _LINKS,
        "wire link, type: head pin": f"head pin, {_HEAD_PIN}",
        "wire link, type: eye pin": f"eye pin, {_EYE_PIN}",
        "wire link, type: briolette wrap": "briolette wrap, wrapped briolette, wrapped drop",
        "pendant": "charm, medal, medallion, tag, focal, focal pendant, drop pendant, crucifix,"
        " cross, badge clip, badge reel, id clip, lanyard clip, swivel clip, swivel hook, key clip,"
        " bulldog clip",
        "bead drop": "fringe, fringe leg, fringe strand, bead dangle, beaded dangle, bead fringe,"
        " beaded fringe, tassel leg, tassel, bead tassel, beaded tassel",
        "chain, type: cable": "cable chain",
        "chain, type: rolo": "rolo chain, belcher chain",
        "chain, type: curb": "curb chain",
        "chain, type: cup": "cup chain, crystal cup chain, rhinestone cup chain,"
        " rhinestone chain, crystal chain, strass chain, stone chain, diamante chain",
        "chain piece": "piece of chain, length of chain, cut chain, chain length, extender,"
        " extender chain, extension chain, safety chain, chain extender",
        "adhesive": "glue",
        **{f"adhesive, type: {name}": f"{name}, {words}" for name, words in _GLUES.items()},
        "thread": "beading thread, bead thread",
        **{
            f"thread, type: {name}": f"{name}, {_THREADS[name]}"
            for name in ("elastic", "flexible wire", "fused", "memory wire")
        },
        "needle": "beading needle",
        "strand": "string of beads, strung strand, bead strand",
        "strand, stitch: knotted": "knotted strand",
        "woven rope": "beaded rope, bead rope, beadwoven rope, beadwoven tube",
        "woven rope, stitch: tubular peyote": "peyote rope, peyote tube, tubular peyote rope",
        "woven rope, stitch: tubular herringbone": "herringbone rope, herringbone tube,"
        " ndebele rope, tubular herringbone rope",
        "woven rope, stitch: twisted herringbone": "twisted herringbone rope, twisted ndebele rope",
        "woven rope, stitch: spiral rope": "spiral rope",
        "woven rope, stitch: slip-stitch bead crochet": "bead crochet rope, crochet rope,"
        " crocheted rope, slip-stitch rope, beaded crochet rope",
        "woven rope, stitch: cubic right-angle weave": "CRAW rope, cubic RAW rope",
        "woven rope, stitch: tubular netting": "netted rope, netted tube, netting rope",
        "woven band": "beaded band, bead band, beadwoven band, woven strip, beaded strip",
        "woven band, stitch: flat peyote": "peyote band, peyote strip, peyote strap",
        "woven band, stitch: flat herringbone": "herringbone band, ndebele band",
        "woven band, stitch: brick": "brick stitch band",
        "woven band, stitch: square": "square stitch band",
        "woven band, stitch: loom": "loomed band, loom band, loomed strip, loomwork band",
        "woven band, stitch: right-angle weave": "RAW band, right-angle weave band",
        "woven band, stitch: netting": "netted band, netted collar",
        "woven band, stitch: ladder between cords": "wrap bracelet band, leather wrap band",
        "woven band, stitch: vertical netting": "vertical net collar, vertically netted collar",
        "embroidered cabochon": "bead-embroidered cabochon, bead embroidery, beaded cabochon,"
        " embroidered stone",
        "beaded bead": "beaded ball, covered bead, woven bead, bead over a core",
        "bezel": "beaded bezel, peyote bezel, bezelled stone, bezeled stone, bezelled cabochon",
        "pouch": "amulet bag, amulet pouch, beaded pouch, beaded bag, amulet purse",
        "braid": "kumihimo, kumihimo braid, kumihimo rope, kumihimo cord",
        "braid, stitch: 8-warp beaded braid": "beaded kumihimo, beaded kumihimo rope,"
        " beaded kumihimo braid, beaded braid",
        "core": "rope core, core cord",
    },
    "row": {"bead": "seed bead"},  # of a list of stock, where beads stand beside parts
    **STITCHES,
    "type of clasp": {
        "lobster": f"claw, {_LOBSTER}",
        "spring ring": _SPRING_RING,
        "toggle": _TOGGLE,
        "magnetic": _MAGNET,
        "hook": _HOOK,
        "box": _BOX,
        "S-clasp": _S_HOOK,
        "fold-over": _FOLD,
        "barrel": f"screw, torpedo, {_BARREL}",
        "snap": _SNAP,
        "sliding knots": _SLIDING,
        "slide": "slide clasp, slide lock, slide lock clasp, tube clasp",
        "ribbon end": _RIBBON,
        "button and loop": f"button, {_BUTTON}",
    },
    "type of end cap": {"cup chain": "cup chain end, rhinestone chain end"},
    "type of ring weave": {
        "single": "one by one, two-in-one, 2-in-1, simple",
        "two by two": "2 x 2, two-in-two, 2-in-2, double",
        "Byzantine": "birdcage, king's braid",
        "four-in-one": "european four-in-one, european 4-in-1, 4-in-1",
    },
    "type of ear wire": {
        "hook": _EAR_HOOK,
        "lever back": "lever back ear wire",
        "hoop": "hoops, ear hoop, creole",
        "post": "ear post, stud, earring post",
        "kidney": "kidney wire, kidney ear wire",
        "clip-on": "clip, ear clip, clip-on earring",
    },
    "type of wire link": {"head pin": _HEAD_PIN, "eye pin": _EYE_PIN, "link": _LINKS},
    "type of bail": {"pinch": "pinch bail, prong"},
    "type of adhesive": _GLUES,
    "thread": _THREADS,
    "closing": {
        "open": "open ring, butted, open jump ring",
        "split": "split ring, double loop, double coil",
        "soldered": "soldered ring, soldered shut, welded",
        "closed": "closed ring",
    },
    "knot": {
        "overhand": "single knot, single overhand, simple knot, thumb knot",
        "double overhand": "double knot, two overhands",
        "figure eight": "figure 8, figure of eight",
    },
    "links_are": {"soldered": "soldered shut, welded, closed", "open": "unsoldered, opening"},
    "temper": {
        "annealed": "dead soft, soft",
        "hard": "full hard, hard drawn",
        "spring": "spring hard, spring temper",
    },
    "loops": {
        "simple": "simple loops, plain, plain loops, turned, turned loops, open loops",
        "wrapped": "wrapped loops, wire-wrapped, wire-wrapped loops",
    },
    "back": {"flat": "flat back, flat-backed, cabochon", "pointed": "pointed back, point back"},
    "metal": {
        "sterling silver": "sterling, 925, 925 silver, silver 925, .925, ster",
        "nickel silver": "german silver, alpaca, alpaca silver",
        "aluminium": "aluminum",
        "stainless steel": "stainless",
        "surgical steel": "surgical stainless steel, surgical stainless",
        "gold-filled brass": "gold filled, rolled gold, 14/20, 14/20 gold filled,"
        " 14k gold-filled, gold-fill",
        "14k gold": "14kt gold, 14 karat gold, 14 carat gold, 14ct gold, 585 gold",
        "fine silver": "999 silver, silver 999",
        "zinc alloy": "zinc-based alloy, zamak",
    },
    "piece": {
        "necklace": "neck piece, neckwear",
        "necklace, called: choker": "choker",
        "bracelet": "bangle, wristlet, wristband",
        "anklet": "ankle bracelet, ankle chain",
        "earrings": "earring, pair of earrings, ear rings, drop earrings, hoop earrings",
        "lariat": "lariat necklace, wrap lariat",
        "brooch": "brooch pin, lapel pin",
        "ring": "finger ring",
        "key ring": "key fob, key chain",
        "pendant": "pendant only",
        "spectacle chain": "glasses chain, eyeglass chain, eyeglasses chain, reading glasses chain,"
        " spectacle cord, glasses cord, sunglasses chain",
        "lanyard": "badge lanyard, id lanyard, badge holder, badge necklace",
    },
    "called": {
        "collar": "collar length",
        "choker": "choker length",
        "princess": "princess length",
        "matinee": "matinée, matinee length, matinée length",
        "opera": "opera length",
        "rope": "rope length",
    },
    "closes": {
        "clasp": "with a clasp, a clasp, clasped, by a clasp",
        "knot": "tied, knotted, tied in a knot, with a knot",
        "sewn": "sewn together, stitched together, joined",
        "over the head": "slips over the head, slip-on over the head, pulled over the head",
        "over the hand": "slips over the hand, slip-on, stretches over the hand, elastic, rolls on",
        "through its loop": "through a loop, drawn through its loop, looped through itself",
        "open": "no clasp, open-ended, open ends",
    },
    "age": {
        "adult": "grown-up, woman, man, lady, adult woman, adult man",
        "child": "kid, boy, girl",
        "under three": "baby, infant, newborn, under 3",
    },
    "sold_as": {"strand": "string", "spool": "reel, bobbin", "bag": "packet, pouch"},
    "do": {
        "weave": "bead, beadweave, net, braid, loom, crochet, weave rope, weave band",
        "finish thread": "weave in tail, weave in tails, weave in the tail, weave in the tails,"
        " weave in ends, weave in the ends, weave in thread, tie off, tie off thread, end thread,"
        " finish off, finish off thread, bury tail, bury tails, bury the tail, bury the tails,"
        " finish tails, finish the thread, bind, bind ends, bind the ends, bind off, whip,"
        " whip ends, whip the ends, secure ends, secure the ends, secure tails",
        "close ring": "close jump ring, close the ring, close rings, close jump rings,"
        " close the jump ring, open and close ring",
        "glue": "glue in, glue on, glue cap, cement",
        "wait": "let cure, cure, let dry, dry, let it dry, leave overnight, let set, let glue dry",
        "slide": "slide on, slip on, slip",
        "hang": "suspend, hang from",
        "cut": "cut chain, cut the chain",
        "measure": "check length, check the length",
        "string": "string beads, string on, thread beads",
        "take apart": "unstring, cut apart, take down, cut open",
        "clean": "wash, wipe, wipe clean",
        "pack": "box, box up, package, gift wrap",
        "wear": "try on, put on",
        "sew": "sew on, sew down, stitch on, stitch down, stitch together",
        "edge": "sew edge, sew the edge, sew edging, sew the edging, sew edge row, stitch edge",
        "knot": "tie knot, tie a knot, tie the knot, tie knots, knot ends, knot the ends,"
        " knot between, knot between beads, knot pearls",
        "crimp": "squash, flatten, close crimp, squash crimp, flatten crimp, fold crimp,"
        " crimp the end, fold, fold over, fold down, fold shut, fold the tabs of",
        "wrap loop": "make loop, make wrapped loop, wrap a loop, make a wrapped loop, turn loop,"
        " turn a loop, turn loops, make loops, make a loop, wire wrap",
    },
    **FIELDS,
}
