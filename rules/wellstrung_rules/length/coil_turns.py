"""The turns of memory wire in its length: a coil of a size has the same length in every turn."""

from __future__ import annotations

from wellstrung.formulas.arithmetic import pi
from wellstrung.rulebook import Answer, Ask, Limit, Misfit, Remedy, Rule, Woven, kept
from wellstrung.rulebook.values import Quantity, derived, exact, times
from wellstrung.rulebook.wording import about, in_unit_of

TURN = Limit(
    "turns of memory wire",
    0.2,
    "",
    "of the turns: coils give that much, and ends may stand apart or overlap, common practice",
)


def check(woven: Woven, ask: Ask) -> Answer:
    part = woven.part
    if not part.thread.springs:
        return None
    turns = exact("turns", part.count("thread", "turns"))
    length, coil = ask.of(part, "length"), ask.of(part, "coil")
    found = derived(
        f"{part.name}.turns",
        "",
        turns_in,
        length=length,
        coil=coil,
        line=ask.of(part, "line"),
        source="length = turns x pi x (coil + wire): geometry",
    )
    gives = times(ask.limit(TURN), part.count("thread", "turns"))
    over, under = gives - (found - turns), gives - (turns - found)
    if answer := kept(over, under):
        return answer
    return _misfit(woven, found, min(over, under, key=lambda margin: margin.likely.low), ask)


def turns_in(length: float, coil: float, line: float) -> float:
    """How often a length of wire goes round in its coil: its middle line is a circle. Geometry.

    >>> round(turns_in(length=571.0, coil=60.0, line=0.6), 2)
    3.0
    """
    return length / (pi * (coil + line))


def _misfit(woven: Woven, found: Quantity, margin: Quantity, ask: Ask) -> Misfit:
    part = woven.part
    length, turns = ask.of(part, "length"), part.count("thread", "turns")
    wanted = in_unit_of(length.middle / found.middle * turns, length)
    return Misfit(
        says=f"`{part.name}` ({about(length)}) {{goes|may go}} round {found.middle:.1f} times in"
        f" the coils of its wire, not {turns} times",
        place=part.place_of("thread"),
        found=f"{found.middle:.1f} turns",
        needed=f"about {wanted} for {turns} turns",
        remedies=(Remedy(f"string about {wanted}, or take wire with coils of another size"),),
        margin=margin,
        also=(part.place_of("length"),),
    )


RULE = Rule(
    name="coil-turns",
    family="length",
    subject=Woven,
    check=check,
    fault="turns and coils disagree",
    title="memory wire goes round as often as its coils are long",
    why="memory wire keeps its coil: half a turn too few leaves a gap at the wrist, and a coil of"
    " another size springs off or pinches",
    limits=(TURN,),
    sources=("coils of memory wire: trade table `memory_wires`, memory wire bracelet: one page",),
    bad="a strand of 40 cm on memory wire bracelet with 3 turns",
    good="a strand of 57 cm on memory wire bracelet with 3 turns",
    level="warning",
)
