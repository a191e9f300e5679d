"""Remedies for memory wire, whose length, turns and coils have to agree with the body's measure."""

from __future__ import annotations

import math
from collections.abc import Iterator

from wellstrung.common.places import Edit
from wellstrung.derived.coils import by_turns, decides, in_turns
from wellstrung.model.item import Missing
from wellstrung.model.parts import Part
from wellstrung.rulebook.answer import Remedy
from wellstrung.rulebook.ask import Ask
from wellstrung.rulebook.wording import in_unit_of


def goes_by_turns(part: Part) -> bool:
    """Whether the turns of memory wire, and no length or count, say how long a part is."""
    return by_turns(part)


def coils_decide(ask: Ask) -> bool:
    """Whether the coils of memory wire say how wide the piece is, whatever its length."""
    return any(decides(part) for part in ask.plan.in_run)


def a_turn(part: Part, ask: Ask) -> float:
    """Wire in one coil as it lies, mm."""
    return in_turns(part, 1, ask.quantities).middle


def a_turn_wanted(part: Part, ask: Ask) -> float | None:
    """Wire in one turn that is as wide inside as the plan asks, mm; None where it asks for none."""
    goal = ask.plan.goal
    if goal is None or goal.field != "inside":
        return None
    return _round(part, goal.middle - ask.get("piece.inside").middle, ask)


def _round(part: Part, more: float, ask: Ask) -> float:
    """Wire in one turn that is `more` mm longer than now."""
    if decides(part):
        return a_turn(part, ask) + more
    return ask.get("piece.length").middle / part.count("thread", "turns") + more


def wider(ask: Ask, more: float) -> Iterator[Remedy]:
    """Remedies that make each turn of memory wire so many mm longer, or shorter.

    So many turns of its length, or wire with other coils, cut anew.
    """
    for part in ask.plan.in_run:
        if not part.thread.springs or not part.has("thread", "turns"):
            continue
        turn, turns = _round(part, more, ask), part.count("thread", "turns")
        if turn <= 0:
            continue
        if not decides(part):
            yield from other_turns(part, round(ask.get("piece.length").middle / turn))
        yield from _other_coil(part, turn, turns, ask)


def other_turns(part: Part, turns: int) -> Iterator[Remedy]:
    """A remedy that lets it go round so many times."""
    if turns > 0 and turns != part.count("thread", "turns"):
        often = {1: "once", 2: "twice"}.get(turns) or f"{turns} times"
        text = f"let `{part.name}` go round {often}: `turns: {turns}`"
        yield Remedy.write(part.place_of("thread", "turns"), str(turns), text)


def _other_coil(part: Part, turn: float, turns: int, ask: Ask) -> Iterator[Remedy]:
    """Wire whose coils are as wide as the turn, and as much of it as goes round so often."""
    try:
        coil, line = ask.of(part, "coil"), ask.of(part, "line").middle
    except Missing:
        return
    off = abs(turn - a_turn(part, ask))
    if by_turns(part) and (coil.likely.high - coil.likely.low) * math.pi > off:
        yield Remedy(
            f"take memory wire with {'wider' if turn > a_turn(part, ask) else 'narrower'} coils"
        )
        return  # it may well do: how wide its coils are is to be measured first
    wide = in_unit_of(round(turn / math.pi - line), coil)
    text, edits = f"take memory wire with coils of {wide} for `{part.name}`", list[Edit]()
    if part.has("length") and not part.fills_rest:
        length = part.length("length")
        long = in_unit_of(round(turn * turns), length)
        text += f", and string {long} of it"
        edits.append(Edit(part.place_of("length"), long))
    if part.has("thread", "coil"):
        edits.append(Edit(part.place_of("thread", "coil"), wide))
        yield Remedy(text, tuple(edits))
    yield Remedy(text)
