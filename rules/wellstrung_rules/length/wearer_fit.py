"""The way round inside the piece against the neck, wrist or ankle that it goes round."""

from __future__ import annotations

import math
from collections.abc import Mapping

from wellstrung.rulebook import Answer, Ask, Fitted, Held, Level, Misfit, Remedy, Rule, holds, kept
from wellstrung.rulebook.remedies import run_longer
from wellstrung.rulebook.values import Quantity, exact, table
from wellstrung.rulebook.wording import about, in_unit_of, spelled


def check(worn: Fitted, ask: Ask) -> Answer:
    body, inside = worn.wearer.length(worn.measure), ask.get("piece.inside")
    room = inside - body
    if worn.measure not in _EASES:
        if answer := kept(room):
            return answer
        return _misfit(worn, ask, room, "close round", -room.likely.low, "error")
    least, most = (exact(f"{word} ease", ease, "mm") for word, ease in _eases(worn).items())
    binds, slips = room - least, most - room
    if not holds(room):
        return _misfit(worn, ask, room, "close round", -binds.likely.low, "error")
    if not holds(binds):
        return _misfit(worn, ask, binds, "bind on", -binds.likely.low, "warning")
    if not holds(slips) and not _over_the_hand(ask):
        return _misfit(worn, ask, slips, "slip off over", slips.likely.low, "warning")
    return Held(min(binds, slips, key=lambda margin: margin.likely.low))


#: rows and columns of the trade tables for the least and the most ease
_EASES: Mapping[str, tuple[str, str, str, str, str]] = {
    "wrist": ("bracelet_eases", "worn", "ease_least", "worn", "ease_most"),
    "ankle": ("anklets", "snug", "ease", "loose", "ease"),
}


def _eases(worn: Fitted) -> dict[str, float]:
    name, tight, least, loose, most = _EASES[worn.measure]
    eases = table(name)
    return {"least": eases.row(tight).cell(least).low, "most": eases.row(loose).cell(most).high}


def _over_the_hand(ask: Ask) -> bool:
    """A bangle is wide on purpose."""
    return bool(ask.plan.tree.value.get("closes") == "over the hand")


def _misfit(
    worn: Fitted, ask: Ask, margin: Quantity, fault: str, more: float, level: Level
) -> Misfit:
    """`more` is what the inside lacks; less than zero where it is too long."""
    body, inside = worn.wearer.length(worn.measure), ask.get("piece.inside")
    will = "cannot|may not" if level == "error" else "will|may"
    goal, place = ask.plan.goal, worn.wearer.place_of(worn.measure)
    wanted, by = in_unit_of(inside.middle + more, body), in_unit_of(abs(more), body)
    return Misfit(
        says=f"the {ask.plan.piece} ({about(inside, body)} inside) {{{will}}} {fault} the"
        f" {worn.measure} ({spelled(body)})",
        place=goal.place if goal else place,
        found=f"{in_unit_of(inside.middle, body)} inside",
        needed=f"{wanted} inside, or {'more' if more > 0 else 'less'}",
        remedies=(
            # whole millimetres, on the side that fits
            *run_longer(ask, more, math.ceil if more > 0 else math.floor),
            Remedy(f"make the run about {by} {'longer' if more > 0 else 'shorter'}"),
        ),
        margin=margin,
        at_most=level,
        also=(place,),
    )


RULE = Rule(
    name="wearer-fit",
    family="length",
    subject=Fitted,
    check=check,
    title="the piece closes round the wearer, with ease where a table gives one",
    why=(
        "a thick rope loses three times its thickness on the inside: a bracelet that is right on"
        " the ruler is tight on the wrist"
    ),
    sources=(
        "inside = length - pi x thickness: trade table `bracelet_eases`, thick beads: several"
        " pages",
        "1/8 in to 2 in of ease on a wrist: trade table `bracelet_eases`, worn: common practice",
        "1/2 in to 2 1/2 in of ease on an ankle: trade table `anklets`, snug: several pages; trade"
        " table `anklets`, loose: one page",
    ),
    bad="wearer: {neck: 44 cm} and a rope collar of 43 cm inside",
    good="wearer: {neck: 36 cm} and a rope collar of 43 cm inside",
    yields_to=("finished-length",),
)
