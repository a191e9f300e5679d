"""Chain for several plans: pieces of one chain are cut together, from what is on hand first."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Callable, Iterable, Sequence
from itertools import islice, permutations
from typing import NamedTuple

from msgspec.structs import replace

from wellstrung.common.units import USUAL
from wellstrung.derived.taken import asked_for
from wellstrung.formulas import chain as links
from wellstrung.formulas import chain_cutting
from wellstrung.formulas.cutting_stock import CutPlan, cut
from wellstrung.kinds.chain import bounded, end_wall, link_inside, one_stretch, pieces_had
from wellstrung.model.parts import Part
from wellstrung.model.plan import Plan, Quantities
from wellstrung.quantity.arithmetic import exact
from wellstrung.quantity.value import Quantity
from wellstrung.quantity.verdict import SLACK, holds
from wellstrung.subjects.chain import ChainCut, CutFromChain, chain_cuts, pattern_of

#: Orders of the kinds of pieces on one length that are tried.
_MOST_ORDERS = 720
_MICROMETRE = 1e-3
Piece = tuple[str, ...]


class Laid(NamedTuple):
    """Which pieces are cut from which length, and how far another way of cutting may be better.

    `of` has the numbers of the pieces for each length. Another way may give up to `more` pieces
    more; where every piece is had, it may cut into up to `less` mm less. Both 0: none is better.
    """

    of: tuple[tuple[int, ...], ...]
    more: int = 0
    less: float = 0.0

    def left(self, chain: ChainCut) -> list[int]:
        """The numbers of the pieces that the lengths on hand do not give."""
        had = {number for numbers in self.of for number in numbers}
        return [number for number in range(len(chain.every_piece)) if number not in had]


def alike(plans: Iterable[Quantities]) -> dict[tuple[str, str], list[tuple[Plan, ChainCut]]]:
    """Every chain that pieces are cut from, by its name and description, with the plans it is for.

    Chains of one name and other links are other chains.
    """
    found: dict[tuple[str, str], list[tuple[Plan, ChainCut]]] = {}
    for ask in plans:
        for one in chain_cuts(ask.plan):
            if one.pieces:
                key = (one.chain.name, described(one.chain))
                found.setdefault(key, []).append((ask.plan, one))
    return found


def described(chain: Part) -> str:
    """A chain as a shop asks for it: its links in turn with their sizes, and whether they open."""
    sizes = ", ".join(
        f"{link} {chain.text('links', link, 'length')}"
        for link in dict.fromkeys(pattern_of(chain))
        if chain.has("links", link, "length")
    )
    if chain.by_size and not sizes:
        usual = chain.text("size") == USUAL
        sizes = asked_for(chain) if usual else f"{asked_for(chain)} {chain.said('size')}"
    told = ("metal",) if chain.traits.cups else ("links_are", "metal")
    ends = " ".join(chain.text(field) for field in told if chain.has(field))
    return ", ".join(filter(None, (sizes, ends)))


def merged(cuts: Sequence[ChainCut], makers: int) -> ChainCut:
    """The cuts of one chain for several plans and makers as one."""
    pieces: dict[tuple[str, Piece], CutFromChain] = {}
    for one in (one for chain in cuts for one in chain.pieces):
        before = pieces.get((one.piece.name, one.links))
        count = one.count * makers + (before.count if before else 0)
        pieces[one.piece.name, one.links] = replace(one, count=count)
    on_hand = tuple(length for chain in cuts for length in chain.on_hand)
    return replace(cuts[0], pieces=tuple(pieces.values()), on_hand=on_hand)


def enough(chain: ChainCut) -> bool:
    """Whether the lengths on hand give every piece, as the check judges it; raises Missing."""
    lengths = chain.lengths
    if len(lengths) == 1:
        whole = one_stretch(chain)
        return lengths[0] >= whole.likely.high - SLACK
    return holds(pieces_had(chain) - exact("pieces", len(chain.every_piece)))


def laid_out(chain: ChainCut) -> Laid:
    """The pieces cut from each length on hand, with every link as long as is likely.

    As many pieces as can be had, from as little chain as is found. Raises Missing.
    """
    bounded(chain)
    found = _Search(chain, lambda size: size.likely.high).laid_out()
    if found.left(chain) and enough(chain):
        # not every kind of link is likely to be long at once
        found = _Search(chain, lambda size: size.middle).laid_out()
    return found


def stretch_to_spare(chain: ChainCut, numbers: Sequence[int]) -> float:
    """How much shorter, mm, another order of some pieces may make the length that gives them."""
    search = _Search(chain, lambda size: size.middle)
    pieces = [chain.every_piece[number] for number in numbers]
    return max(0.0, search.length(pieces) - search.least_length(pieces))


class _Search:
    """Ways to cut the pieces of a chain from lengths, with each kind of link of one size."""

    def __init__(self, chain: ChainCut, of: Callable[[Quantity], float]) -> None:
        self.pattern, self.soldered = chain.pattern, chain.soldered
        self.pieces, self.lengths = chain.every_piece, chain.lengths
        names = dict.fromkeys(chain.pattern)
        self.insides = {link: of(link_inside(chain.chain, link)) for link in names}
        self.wires = {link: end_wall(chain.chain, link).middle for link in names}
        self.kinds = list(dict.fromkeys(self.pieces))
        losses = {
            kind: links.least_lost(
                self.pattern, kind, self.kinds, self.insides, soldered=self.soldered
            )
            for kind in self.kinds
        }
        #: the least that is lost between two pieces; more of it counts to the size of the second.
        #: Both are down to the micrometre, and so are the walls at both ends, less what the first
        #: piece does not lose: no way of cutting is left out
        self.lost = _down(min(losses.values()))
        self.sizes = {
            kind: _down(sum(self.insides[link] for link in kind) + losses[kind] - self.lost)
            for kind in self.kinds
        }
        # a piece can be turned, so either of its ends may be the first or the last of a length
        wall = min(self.wires[kind[end]] for kind in self.kinds for end in (0, -1))
        self.ends = _down(2 * wall - (max(losses.values()) - self.lost))

    def laid_out(self) -> Laid:
        """The best way found, and how far another may be better."""
        found = self._first_found()
        had = sum(map(len, found))
        best = cut(
            [self.sizes[one] for one in self.pieces], self.lengths, self.lost, ends=self.ends
        )
        if had < len(self.pieces):
            most = len(self.pieces) - (len(best.missing) if best.proved else 0)
            return Laid(found, more=most - had)
        used = sum(length for length, of in zip(self.lengths, found, strict=True) if of)
        as_searched = self._as_searched(best) if best.used < used - _MICROMETRE else None
        if as_searched is not None:
            found, used = as_searched, best.used
        less = used - best.at_least
        return Laid(found, less=less if less > _MICROMETRE else 0.0)

    def length(self, order: Sequence[Piece]) -> float:
        """The length that these pieces take when they are cut in this order, mm."""
        run = links.run_of(self.pattern, order, soldered=self.soldered)
        return links.length_of(run, self.insides, self.wires)

    def least_length(self, pieces: Sequence[Piece]) -> float:
        """A length that these pieces take in any order, mm."""
        sizes = sum(self.sizes[piece] for piece in pieces)
        return sizes + (len(pieces) - 1) * self.lost + self.ends

    def _first_found(self) -> tuple[tuple[int, ...], ...]:
        """As many pieces as can be had; of two ways that give as many the one that uses up ends."""
        as_listed = list(range(len(self.lengths)))
        shortest_first = sorted(as_listed, key=lambda one: self.lengths[one])
        best: tuple[tuple[int, ...], ...] = tuple(() for _ in self.lengths)
        for order in (shortest_first, as_listed):
            laid = chain_cutting.laid_out(
                [self.lengths[one] for one in order],
                self.pattern,
                self.pieces,
                self.insides,
                self.wires,
                soldered=self.soldered,
            )
            if sum(map(len, laid)) > sum(map(len, best)):
                best = tuple(tuple(laid[order.index(one)]) for one in as_listed)
        return best

    def _as_searched(self, plan: CutPlan) -> tuple[tuple[int, ...], ...] | None:
        """The pieces of a plan by their numbers; None where they do not fit their lengths."""
        left: dict[Piece, list[int]] = {kind: [] for kind in self.kinds}
        for number, kind in enumerate(self.pieces):
            left[kind].append(number)
        laid: list[tuple[int, ...]] = [() for _ in self.lengths]
        for one in plan.cuts:
            wanted: Counter[Piece] = Counter()
            for size in one.pieces:
                # kinds of one size are alike to the search: take any that is left
                alike = (kind for kind in self.kinds if math.isclose(self.sizes[kind], size))
                wanted[next(kind for kind in alike if len(left[kind]) > wanted[kind])] += 1
            orders = islice(permutations(wanted), _MOST_ORDERS)
            in_turn = ([kind for kind in order for _ in range(wanted[kind])] for order in orders)
            fits = (order for order in in_turn if self.length(order) <= one.length + 1e-6)
            order = next(fits, None)
            if order is None:
                return None
            laid[one.on_hand] = tuple(left[kind].pop(0) for kind in order)
        return tuple(laid)


def _down(length: float) -> float:
    """A length down to the micrometre."""
    return math.floor(length / _MICROMETRE + 1e-6) * _MICROMETRE
