"""Chain for several plans: pieces of one chain are cut together, from what is on hand first."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING

from msgspec.structs import replace

from wellstrung.formulas import chain as links
from wellstrung.kinds.chain import MOST_LINKS, link_inside, run_length
from wellstrung.model.item import Missing
from wellstrung.model.parts import Part
from wellstrung.model.plan import Plan
from wellstrung.quantity.value import Quantity
from wellstrung.quantity.verdict import SLACK
from wellstrung.subjects.chain import ChainCut, CutFromChain, chain_cuts, pattern_of

if TYPE_CHECKING:
    from wellstrung.derived.of_plan import Quantities


def alike(asked: Iterable[Quantities]) -> dict[tuple[str, str], list[tuple[Plan, ChainCut]]]:
    """Every chain that pieces are cut from, by its name and description, with the plans it is for.

    Chains of one name and other links are other chains.
    """
    found: dict[tuple[str, str], list[tuple[Plan, ChainCut]]] = {}
    for ask in asked:
        for cut in chain_cuts(ask.plan):
            if cut.pieces:
                key = (cut.chain.name, described(cut.chain))
                found.setdefault(key, []).append((ask.plan, cut))
    return found


def described(chain: Part) -> str:
    """A chain as one asks for it: its links in turn with their sizes, and whether they open."""
    sizes = ", ".join(
        f"{link} {chain.text('links', link, 'length')}"
        for link in dict.fromkeys(pattern_of(chain))
        if chain.has("links", link, "length")
    )
    ends = " ".join(chain.text(field) for field in ("links_are", "metal") if chain.has(field))
    return f"{sizes}, {ends}" if sizes else ends


def merged(cuts: Sequence[ChainCut], makers: int) -> ChainCut:
    """The cuts of one chain for several plans and makers as one."""
    pieces: dict[tuple[str, tuple[str, ...]], CutFromChain] = {}
    for cut in cuts:
        for one in cut.pieces:
            before = pieces.get((one.piece.name, one.links))
            count = one.count * makers + (before.count if before else 0)
            pieces[one.piece.name, one.links] = replace(one, count=count)
    on_hand = tuple(length for cut in cuts for length in cut.on_hand)
    return replace(cuts[0], pieces=tuple(pieces.values()), on_hand=on_hand)


def gives(lengths: Sequence[float], whole: Quantity) -> bool:
    """Whether one length on hand gives every piece, as the check holds it."""
    return len(lengths) == 1 and lengths[0] >= whole.likely.high - SLACK


def one_stretch(cut: ChainCut, pieces: Sequence[Sequence[str]]) -> Quantity:
    """The length that gives these pieces when they are cut from one, mm; raises Missing."""
    _bounded(cut)
    run = links.run_of(cut.pattern, pieces, soldered=cut.soldered)
    return run_length(f"{cut.chain.name} needed", cut.chain, run)


def _bounded(cut: ChainCut) -> None:
    """More links than anyone cuts are not laid out; raises Missing."""
    if sum(len(one.links) * one.count for one in cut.pieces) > MOST_LINKS:
        raise Missing(f"fewer than {MOST_LINKS} links to be cut from `{cut.chain.name}`")


def not_had(cut: ChainCut, lengths: Sequence[float]) -> list[tuple[str, ...]]:
    """The pieces that lengths do not give, with every link as long as is likely."""
    had = {number for one in laid_out(cut, lengths) for number in one}
    return [piece for number, piece in enumerate(cut.every_piece) if number not in had]


def laid_out(cut: ChainCut, lengths: Sequence[float]) -> list[list[int]]:
    """For each length the numbers of the pieces cut from it, with every link as long as likely.

    Ends of chain are used up first; where that does not give every piece, as many as can be had.
    Raises Missing, as `one_stretch` does.
    """
    _bounded(cut)
    names = dict.fromkeys(cut.pattern)
    insides = {link: link_inside(cut.chain, link).likely.high for link in names}
    wires = {link: cut.chain.wire("links", link, "wire").middle for link in names}
    as_listed = list(range(len(lengths)))
    shortest_first = sorted(as_listed, key=lambda one: lengths[one])
    best: list[list[int]] = [[] for _ in lengths]
    for order in (shortest_first, as_listed):
        laid = links.laid_out(
            [lengths[one] for one in order],
            cut.pattern,
            cut.every_piece,
            insides,
            wires,
            soldered=cut.soldered,
        )
        if sum(map(len, laid)) > sum(map(len, best)):
            best = [laid[order.index(one)] for one in as_listed]
    return best
