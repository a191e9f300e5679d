"""Chain by the length, and pieces cut from it: link sizes, links a piece, length needed."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from wellstrung import chain as links
from wellstrung.derive import Quantities
from wellstrung.joins import ChainCut, chain_cuts
from wellstrung.kinds.metal import stated_mass
from wellstrung.model import EyeField, Kind, Part, Role
from wellstrung.quantity import Quantity, derived, exact, total
from wellstrung_schemas import fragment


def pattern(chain: Part) -> list[str]:
    """The links of a chain, once through its pattern."""
    node = chain.node_at("pattern")
    return [str(link) for link in node.value] if node else []


def is_soldered(chain: Part) -> bool:
    """Whether a link is lost where the chain is cut."""
    return chain.text("links_are") == "soldered"


def links_of(piece: Part, chain: Part) -> list[str]:
    """The links of one piece, first to last."""
    counted = piece.node_at("count_of")
    counts: int | Mapping[str, int] = counted.value if counted else piece.count("links")
    first = piece.text("starts_with") if piece.has("starts_with") else pattern(chain)[0]
    return links.piece(pattern(chain), first, counts)


def link_inside(chain: Part, link: str) -> Quantity:
    """What a link adds to a length pulled taut: its outside length less two wires."""
    return derived(
        f"{chain.name}.{link} inside",
        "mm",
        lambda length, wire: length - 2 * wire,
        "length - 2 * wire",
        length=chain.length("links", link, "length", allowance="link size"),
        wire=chain.wire("links", link, "wire"),
        source="inside = outside - 2 x wire, trade tables 4e",
    )


def run_length(name: str, chain: Part, run: list[str]) -> Quantity:
    """Outer length of a run of links pulled taut: the insides of all of them and two end walls."""
    terms = [
        derived(
            f"{run.count(link)} x {link}",
            "mm",
            lambda n, inside: n * inside,
            "n * inside",
            n=exact("links", run.count(link)),
            inside=link_inside(chain, link),
        )
        for link in dict.fromkeys(run)
    ]
    walls = [chain.wire("links", link, "wire") for link in (run[0], run[-1])]
    return total(
        name, "mm", [*terms, *walls], "links pulled taut: geometry, worked out for this project"
    )


def _chain_of(piece: Part, ask: Quantities) -> Part:
    return ask.plan.parts[piece.text("of")]


def _links(piece: Part, ask: Quantities) -> Quantity:
    return exact(f"{piece.name}.links", len(links_of(piece, _chain_of(piece, ask))))


def _lost(piece: Part, ask: Quantities) -> Quantity:
    chain = _chain_of(piece, ask)
    run = links_of(piece, chain)
    lost = links.stride(pattern(chain), run, soldered=is_soldered(chain)) - len(run)
    return exact(
        f"{piece.name}.lost", lost, source="counted along the pattern until it is in phase"
    )


def _length(piece: Part, ask: Quantities) -> Quantity:
    chain = _chain_of(piece, ask)
    return run_length(f"{piece.name}.length", chain, links_of(piece, chain))


def _along(piece: Part, ask: Quantities) -> Quantity:
    """Taut between the rings in its end links: its length less both end walls."""
    chain = _chain_of(piece, ask)
    run = links_of(piece, chain)
    return derived(
        f"{piece.name}.along",
        "mm",
        lambda length, first_wire, last_wire: length - first_wire - last_wire,
        "length - first_wire - last_wire",
        length=_length(piece, ask),
        first_wire=chain.wire("links", run[0], "wire"),
        last_wire=chain.wire("links", run[-1], "wire"),
    )


def _end(which: int, what: str) -> Callable[[Part, Quantities], Quantity]:
    def end(piece: Part, ask: Quantities) -> Quantity:
        chain = _chain_of(piece, ask)
        link = links_of(piece, chain)[which]
        if what != "hole":
            return chain.wire("links", link, "wire")
        if chain.has("links", link, "hole"):
            return chain.length("links", link, "hole", allowance="link size")
        return derived(
            f"{chain.name}.{link} hole",
            "mm",
            lambda width, wire: width - 2 * wire,
            "width - 2 * wire",
            width=chain.length("links", link, "width", allowance="link size"),
            wire=chain.wire("links", link, "wire"),
            source="inner opening = outer - 2 x wire, trade tables 4e",
        )

    return end


def _mass(piece: Part, ask: Quantities) -> Quantity:
    chain = _chain_of(piece, ask)
    return derived(
        f"{piece.name}.mass",
        "g",
        lambda length, per_metre: length * per_metre / 1000,
        "length * per_metre / 1000",
        length=_length(piece, ask),
        per_metre=chain.mass("mass_per_metre"),
    )


def cut_list(cut: ChainCut) -> list[list[str]]:
    """The links of every piece of a chain, piece by piece."""
    return [links_of(piece, cut.chain) for piece, count in cut.pieces for _ in range(count)]


def needed(cut: ChainCut) -> Quantity:
    """The length, cut from one stretch, that gives every piece in phase."""
    run = links.run_of(pattern(cut.chain), cut_list(cut), soldered=is_soldered(cut.chain))
    return run_length(f"{cut.chain.name}.needed", cut.chain, run)


def _needed(chain: Part, ask: Quantities) -> Quantity:
    cut = _cut(chain, ask)
    return needed(cut) if cut.pieces else exact(f"{chain.name}.needed", 0.0, "mm")


def _links_per_piece(chain: Part, ask: Quantities) -> Quantity:
    """Links counted off for each piece, lost ones included, where all pieces are alike."""
    cut = _cut(chain, ask)
    if len(cut.pieces) != 1:
        raise chain.missing("one kind of piece cut from it")
    piece = cut.pieces[0][0]
    return _links(piece, ask) + _lost(piece, ask)


def _cut(chain: Part, ask: Quantities) -> ChainCut:
    return next(cut for cut in chain_cuts(ask.plan) if cut.chain is chain)


CHAIN = Kind(
    "chain",
    fragment("chain"),
    quantities={"needed": _needed, "links_per_piece": _links_per_piece, "mass": stated_mass},
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
        "mass": _mass,
    },
)
