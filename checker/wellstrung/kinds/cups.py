"""Cups of a cup chain: their sizes, how many a length has, and a length cut between two of them."""

from __future__ import annotations

from wellstrung.derived.declared import GEOMETRY
from wellstrung.formulas.chain import cups_in, gap
from wellstrung.model.parts import Part
from wellstrung.quantity.arithmetic import derived, leaf, total
from wellstrung.quantity.causes import Cause, Spread
from wellstrung.quantity.value import Quantity


def size(chain: Part, what: str) -> Quantity:
    """A size of its cups, mm: `outside`, `pitch` or `height`; raises Missing."""
    return chain.size("cup", what, allowance="link size")


def end_wall(chain: Part) -> Quantity:
    """What a length has at either end beyond its pitches, mm: half a gap less."""
    return derived(
        f"{chain.name}.end cup",
        "mm",
        lambda cup, pitch: -gap(cup, pitch) / 2,
        cup=size(chain, "outside"),
        pitch=size(chain, "pitch"),
        source="half a gap, which the end cups do not have: geometry",
    )


def by_measure(piece: Part) -> bool:
    """Whether cups are cut off by a length, and their number follows from that."""
    return piece.has("length") and piece.cut_from is not None and piece.cut_from.traits.cups


def cut_at(piece: Part, chain: Part) -> Quantity:
    """The length that was asked for, up to half a pitch off: it is cut between two cups."""
    cause = Cause(
        "whole cups", f"`{piece.name}`", f"count the cups of `{piece.name}`: `links: ...`"
    )
    off = size(chain, "pitch").middle / 2
    whole = leaf(
        f"{piece.name}.to the next cup",
        0.0,
        "mm",
        [Spread(cause, off, off)],
        source="cut between two cups, half a pitch off at most",
    )
    return total(f"{piece.name}.length", "mm", [piece.length("length"), whole])


def counted(piece: Part, chain: Part) -> Quantity:
    """How many cups a piece has that is cut off by a length."""
    return derived(
        f"{piece.name}.links",
        "",
        cups_in,
        length=cut_at(piece, chain),
        cup=size(chain, "outside"),
        pitch=size(chain, "pitch"),
        source=GEOMETRY,
    )
