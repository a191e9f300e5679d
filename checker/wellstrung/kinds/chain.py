"""Chain by the length, and pieces cut from it: link sizes, links a piece, length needed."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Sequence

from wellstrung.derived.declared import formula, hand, mass, same_as
from wellstrung.formulas import chain as links
from wellstrung.formulas import chain_cutting, rings
from wellstrung.formulas.arithmetic import most, opaque
from wellstrung.kinds import cups
from wellstrung.model.item import Missing
from wellstrung.model.looks import Look
from wellstrung.model.parts import EyeField, Kind, Part, Role, Traits
from wellstrung.model.plan import Quantities
from wellstrung.model.sold import Sold
from wellstrung.quantity.arithmetic import derived, exact, product, total
from wellstrung.quantity.assumed import assumed_in
from wellstrung.quantity.value import Quantity
from wellstrung.subjects.chain import ChainCut, chain_cuts, links_of, pattern_of
from wellstrung.subjects.counts import is_extender
from wellstrung_schemas import fragment


def link_inside(chain: Part, link: str) -> Quantity:
    """What a link adds to a length pulled taut: its outside length less two wires, or a pitch."""
    if chain.traits.cups:
        return cups.size(chain, "pitch")
    return derived(
        f"{chain.name}.{link} inside",
        "mm",
        rings.inside_of,
        outside=chain.size("links", link, "length", allowance="link size"),
        wire=chain.wire("links", link, "wire"),
        source="inside = outside - 2 x wire, trade table `chains`",
    )


def measured_off(piece: Part) -> bool:
    """Whether a piece is cut off by its length: nobody said how long a link of its chain is."""
    chain = piece.cut_from
    if chain is None or chain.traits.cups:
        return cups.by_measure(piece)
    every = dict.fromkeys(pattern_of(chain)) if piece.has("length") else ()
    return any(assumed_in(link_inside(chain, link)) for link in every)


def end_wall(chain: Part, link: str) -> Quantity:
    """What a length has at either end beyond what its links add: a wire.

    The pitch of a cup has half a gap at either side, which its ends do not have.
    """
    if not chain.traits.cups:
        return chain.wire("links", link, "wire")
    return cups.end_wall(chain)


def run_length(name: str, chain: Part, run: Sequence[str]) -> Quantity:
    """Outer length of a run of links pulled taut: the insides of all of them and two end walls."""
    terms = [
        product(
            f"{run.count(link)} x {link}",
            "mm",
            exact("links", run.count(link)),
            link_inside(chain, link),
        )
        for link in dict.fromkeys(run)
    ]
    walls = [end_wall(chain, link) for link in (run[0], run[-1])]
    return total(
        name, "mm", [*terms, *walls], "links pulled taut: geometry, worked out for this project"
    )


def _chain_of(piece: Part, ask: Quantities) -> Part:
    return ask.plan.parts[piece.text("of")]


def _links(piece: Part, ask: Quantities) -> Quantity:
    if cups.by_measure(piece):
        return cups.counted(piece, _chain_of(piece, ask))
    return exact(f"{piece.name}.links", len(links_of(piece, _chain_of(piece, ask))))


def _lost(piece: Part, ask: Quantities) -> Quantity:
    chain = _chain_of(piece, ask)
    run, soldered = links_of(piece, chain), chain.text("links_are") == "soldered"
    lost = links.stride(pattern_of(chain), run, soldered=soldered) - len(run)
    return exact(
        f"{piece.name}.lost", lost, source="counted along the pattern until it is in phase"
    )


def _length(piece: Part, ask: Quantities) -> Quantity:
    chain = _chain_of(piece, ask)
    if cups.by_measure(piece):
        return cups.cut_at(piece, chain)
    return run_length(f"{piece.name}.length", chain, links_of(piece, chain))


def _along(piece: Part, ask: Quantities) -> Quantity:
    """Taut between the rings in its end links: its length less both end walls.

    An extender is closed in its first link, where the piece is shortest.
    """
    chain = _chain_of(piece, ask)
    if is_extender(piece):
        return link_inside(chain, links_of(piece, chain)[0])
    return _taut(piece, ask)


def _extends(piece: Part, ask: Quantities) -> Quantity:
    """How much longer the piece is with its clasp in the last link of an extender."""
    if not is_extender(piece):
        raise piece.missing("extender")
    return derived(
        f"{piece.name}.extends",
        "mm",
        lambda taut, first: taut - first,
        taut=_taut(piece, ask),
        first=_along(piece, ask),
        source="to the last link instead of the first: geometry",
    )


def _taut(piece: Part, ask: Quantities) -> Quantity:
    chain = _chain_of(piece, ask)
    if chain.traits.cups:
        return _length(piece, ask)  # no ring goes into its last cups
    run = links_of(piece, chain)
    return derived(
        f"{piece.name}.along",
        "mm",
        lambda length, first_wire, last_wire: length - first_wire - last_wire,
        length=_length(piece, ask),
        first_wire=chain.wire("links", run[0], "wire"),
        last_wire=chain.wire("links", run[-1], "wire"),
    )


def _end(which: int, what: str) -> Callable[[Part, Quantities], Quantity]:
    def end(piece: Part, ask: Quantities) -> Quantity:
        chain = _chain_of(piece, ask)
        link = links_of(piece, chain)[which]
        if chain.traits.cups:
            raise Missing(f"a hole in the last cup of `{piece.name}`: a cup chain end has one")
        if what != "hole":
            return chain.wire("links", link, "wire")
        if chain.has("links", link, "hole"):
            return chain.size("links", link, "hole", allowance="link size")
        return derived(
            f"{chain.name}.{link} hole",
            "mm",
            rings.inside_of,
            outside=chain.size("links", link, "width", allowance="link size"),
            wire=chain.wire("links", link, "wire"),
            source="inner opening = outer - 2 x wire, trade table `chains`",
        )

    return end


def _width(piece: Part, ask: Quantities) -> Quantity:
    """Outside width of the widest link that the piece has."""
    chain = _chain_of(piece, ask)
    if chain.traits.cups:
        return cups.size(chain, "outside")
    names = dict.fromkeys(links_of(piece, chain))
    widths = {
        f"link{n}": chain.size("links", link, "width", allowance="link size")
        for n, link in enumerate(names, 1)
    }
    return derived(f"{piece.name}.width", "mm", lambda **widths: most(*widths.values()), widths)


def _thickness(piece: Part, ask: Quantities) -> Quantity:
    chain = _chain_of(piece, ask)
    return cups.size(chain, "height") if chain.traits.cups else _OF_LINKS(piece, ask)


_OF_LINKS = formula(
    "thickness",
    "mm",
    lambda width, wire, lean: 2 * wire + lean * most(0, width - 2 * wire),
    width="width",
    wire="first link.wire",
    lean=hand(
        "how its links lean",
        (0.0, 0.35, 0.7),
        source="from flat, two wires thick, to links that lean half over: from memory",
        cure="try {part} on before its last ring is closed",
        grade="from memory",
    ),
)


def _mass(piece: Part, ask: Quantities) -> Quantity:
    chain = _chain_of(piece, ask)
    return derived(
        f"{piece.name}.mass",
        "g",
        lambda length, per_metre: length * per_metre / 1000,
        length=_length(piece, ask),
        per_metre=chain.mass("mass_per_metre"),
    )


def bounded(cut: ChainCut) -> ChainCut:
    """A cut of no more links than anyone cuts; raises Missing."""
    if sum(len(one.links) * one.count for one in cut.pieces) > MOST_LINKS:
        raise Missing(f"fewer than {MOST_LINKS} links to be cut from `{cut.chain.name}`")
    return cut


def one_stretch(cut: ChainCut, numbers: Sequence[int] | None = None) -> Quantity:
    """The length that gives the pieces of these numbers, or all, in phase, cut from one, mm."""
    every = cut.every_piece
    numbers = range(len(every)) if numbers is None else numbers
    if not numbers:
        return exact(f"{cut.chain.name}.needed", 0.0, "mm")
    if cut.chain.traits.cups:
        return _cups_needed(cut, numbers)
    pieces = [every[number] for number in numbers]
    run = links.run_of(bounded(cut).pattern, pieces, soldered=cut.soldered)
    return run_length(f"{cut.chain.name}.needed", cut.chain, run)


def _cups_needed(cut: ChainCut, numbers: Sequence[int]) -> Quantity:
    """The length with all these cups: none is lost between two pieces, only the link there."""
    chain, name = cut.chain, f"{cut.chain.name}.needed"
    places = [at for at, one in enumerate(cut.pieces) for _ in range(one.count)]
    wall, terms = end_wall(chain, cut.pattern[0]), []
    for at, count in Counter(places[number] for number in numbers).items():
        piece, run = cut.pieces[at].piece, cut.pieces[at].links
        asked = cups.by_measure(piece)
        each = cups.cut_at(piece, chain) if asked else run_length("a piece", chain, run)
        terms.append(product(f"{count} x {len(run)} cups", "mm", exact("pieces", count), each))
    gaps = product("gaps", "mm", exact("between", 2 - 2 * len(numbers)), wall)
    return total(
        name, "mm", [*terms, gaps], "cups pulled taut: geometry, worked out for this project"
    )


def pieces_had(cut: ChainCut) -> Quantity:
    """How many of its pieces the lengths on hand give, cut in phase."""
    chain = bounded(cut).chain
    names = list(dict.fromkeys(cut.pattern))
    wires = {link: end_wall(chain, link).middle for link in names}

    lengths = " and ".join(f"{length:g} mm" for length in cut.lengths) or "none"

    @opaque(f"pieces cut in phase, lost links counted, from {lengths} of")
    def had(**insides: float) -> float:
        sizes = dict(zip(names, insides.values(), strict=True))
        return chain_cutting.pieces_had(
            cut.lengths, cut.pattern, cut.every_piece, sizes, wires, soldered=cut.soldered
        )

    return derived(
        f"{chain.name}.pieces had",
        "",
        had,
        {f"link{n}": link_inside(chain, link) for n, link in enumerate(names)},
    )


def _cut(chain: Part, ask: Quantities) -> ChainCut:
    return next(cut for cut in chain_cuts(ask.plan) if cut.chain is chain)


def _needed(chain: Part, ask: Quantities) -> Quantity:
    cut = _cut(chain, ask)
    return one_stretch(cut)


def _pieces_had(chain: Part, ask: Quantities) -> Quantity:
    return pieces_had(_cut(chain, ask))


def _links_per_piece(chain: Part, ask: Quantities) -> Quantity:
    """Links counted off for each piece, lost ones included, where all pieces are alike."""
    cut = bounded(_cut(chain, ask))
    if len(cut.pieces) != 1:
        raise chain.missing("one kind of piece cut from it")
    piece = cut.pieces[0].piece
    return _links(piece, ask) + _lost(piece, ask)


#: A bound on hostile plans; a class of thirty cuts a few thousand.
MOST_LINKS = 20_000


CHAIN = Kind(
    "chain",
    fragment("chain"),
    Role.CHAIN,
    quantities={
        "needed": _needed,
        "links_per_piece": _links_per_piece,
        "pieces_had": _pieces_had,
        "mass": mass("mass"),
    },
    traits=Traits(bought=False),
    types={
        "open": Traits(bought=False, opens=True),
        "soldered": Traits(bought=False, opens=False),
        "cups": Traits(bought=False, cups=True),
    },
    typed_by="links_are",
    sold=Sold(
        "chains",
        usual={"pattern": ["link"], "links": {"link": {}}, "links_are": "open"},
        usual_of={"cup": {"pattern": ["cup"], "links": {"cup": {}}, "links_are": "cups"}},
    ),
)

CHAIN_PIECE = Kind(
    "chain piece",
    fragment("chain piece"),
    Role.EYED,
    eyes={"first link": EyeField(), "last link": EyeField()},
    quantities={
        **{
            f"{eye} link.{what}": _end(which, what)
            for eye, which in (("first", 0), ("last", -1))
            for what in ("hole", "wire", "through")
        },
        "links": _links,
        "lost": _lost,
        "length": _length,
        "along": _along,
        "extends": _extends,
        "width": _width,
        "outside": same_as("width"),  # what it takes beside other chains
        "thickness": _thickness,
        "mass": _mass,
    },
    traits=Traits(made_by="cut", bought=False, cut_from="of", two_ends=True),
    look=Look("chain", label=(("length", "long"),)),
)
