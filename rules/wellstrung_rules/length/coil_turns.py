"""The turns of memory wire in its length: a coil of a size has the same length in every turn."""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung.formulas.rings import turns_in
from wellstrung.rulebook import Answer, Ask, Limit, Misfit, Remedy, Rule, Woven, kept
from wellstrung.rulebook.coils import a_turn, a_turn_wanted, goes_by_turns, other_turns
from wellstrung.rulebook.plan import Part
from wellstrung.rulebook.remedies import with_length
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
    if not part.thread.springs or goes_by_turns(part):
        return None
    turns = part.count("thread", "turns")
    found = derived(
        f"{part.name}.turns",
        "",
        turns_in,
        length=ask.of(part, "length"),
        coil=ask.of(part, "coil"),
        line=ask.of(part, "line"),
        source="length = turns x pi x (coil + wire): geometry",
    )
    gives, wanted = times(ask.limit(TURN), turns), exact("turns", turns)
    over, under = gives - (found - wanted), gives - (wanted - found)
    if answer := kept(over, under):
        return answer
    return _misfit(part, found, min(over, under, key=lambda margin: margin.likely.low), ask)


def _misfit(part: Part, found: Quantity, margin: Quantity, ask: Ask) -> Misfit:
    length, turns = ask.of(part, "length"), part.count("thread", "turns")
    long = in_unit_of(round(turns * _turn(part, ask)), length)
    return Misfit(
        says=f"`{part.name}` ({about(length)}) {{goes|may go}} round {found.middle:.1f} times in"
        f" the coils of its wire, not {turns} times",
        place=part.place_of("thread"),
        found=f"{found.middle:.1f} turns",
        needed=f"about {long} for {turns} turns",
        remedies=tuple(_remedies(part, long, round(found.middle), ask)),
        margin=margin,
        also=(part.place_of("length"),),
    )


def _turn(part: Part, ask: Ask) -> float:
    """One turn, mm, as wide as the plan asks where the coils give as much; else as they lie."""
    lies, wanted = a_turn(part, ask), a_turn_wanted(part, ask)
    gives = ask.limit(TURN).middle * lies / 2  # half, so that bead and ruler may be off as well
    return wanted if wanted is not None and abs(wanted - lies) <= gives else lies


def _remedies(part: Part, long: str, turns: int, ask: Ask) -> Iterator[Remedy]:
    if part in with_length(ask):
        text = f"string {long} of `{part.name}` instead of {part.length('length').spelling}"
        yield Remedy.write(part.place_of("length"), long, text)
    yield from other_turns(part, turns)
    yield Remedy(f"string about {long}, or take wire with coils of another size")


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
