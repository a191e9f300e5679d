"""How many of each bead a net takes whose loops are listed, bead by bead."""

from __future__ import annotations

from wellstrung.model.beads import beads_of_loop
from wellstrung.model.parts import Part
from wellstrung.model.plan import Quantities
from wellstrung.quantity.arithmetic import derived, exact
from wellstrung.quantity.value import Quantity

#: what a net gives aside that counts the beads of its loops alone, without its base and its turns
IN_LOOPS = "beads_in_loops"


def lists_loops(part: Part) -> bool:
    """Whether it is a straight net that names every bead of a loop."""
    straight = part.stitch is not None and IN_LOOPS in part.stitch.asides
    return straight and not part.traits.made_round and bool(beads_of_loop(part))


def in_net(part: Part, name: str, ask: Quantities) -> Quantity:
    """How many of one bead a net takes: in its loops by its share of one.

    What is shared in the base, and where a row turns, is the bead in the middle of a loop.
    """
    loop = beads_of_loop(part)
    return derived(
        f"{name} in the net of {part.name}",
        "",
        lambda loops, share, beads, middle: loops * share + (beads - loops) * middle,
        loops=ask.of(part, IN_LOOPS),
        share=exact("share", loop.count(name) / len(loop)),
        beads=ask.of(part, "beads"),
        middle=exact("in the middle", float(loop[len(loop) // 2] == name)),
        source="counting",
    )
