"""The way round inside the piece against the neck, wrist or ankle that it goes round."""

from __future__ import annotations

import math

from wellstrung.rulebook import (
    Answer,
    Ask,
    Fitted,
    Held,
    Level,
    Misfit,
    Remedy,
    Rule,
    Verdict,
    compare,
    holds,
)
from wellstrung.rulebook.coils import coils_decide, wider
from wellstrung.rulebook.remedies import asked_longer, run_longer
from wellstrung.rulebook.values import Quantity, turns
from wellstrung.rulebook.wording import about, in_unit_of, spelled
from wellstrung_rules.length import EASES, RING_SNUG, SNUG, SNUG_BEADS, closed_by

#: what a piece that is too small cannot do: a ring has nothing that closes
_GOES_ON = ("close round", "go on")


def check(worn: Fitted, ask: Ask) -> Answer:
    body, least = worn.wearer.girth(worn.measure), ask.filled("piece.inside")
    least, room = least - body, ask.let_out("piece.inside") - body
    eases = EASES.get(worn.measure)
    binds = room - ask.limit(eases[0]) if eases else room
    lacks, closes = -binds.likely.low, closed_by(worn, ask, room)
    goes_on, tight = _GOES_ON[worn.measure == "finger"], compare(room) is Verdict.FAILS
    if closes is not None and not holds(closes):
        if tight and compare(closes) is Verdict.MAY_FAIL:
            return _misfit(worn, ask, room, f"hardly {goes_on}", lacks, "warning")
        return _misfit(worn, ask, closes, goes_on, lacks, "error")
    if not holds(room) and not holds(binds):
        return _misfit(worn, ask, room, "lie tight on", lacks, "warning")
    if eases is None:
        return Held(room)
    slips = ask.limit(eases[1]) - least
    if not holds(binds):
        return _misfit(worn, ask, binds, "bind on", lacks, "warning")
    if not holds(slips) and not _over_the_hand(ask):
        return _misfit(worn, ask, slips, "slip off over", slips.likely.low, "warning")
    return Held(min(binds, slips, key=lambda margin: margin.likely.low))


def _over_the_hand(ask: Ask) -> bool:
    """A bangle is wide on purpose."""
    return bool(ask.plan.tree.value.get("closes") == "over the hand")


def _misfit(
    worn: Fitted, ask: Ask, margin: Quantity, fault: str, more: float, level: Level
) -> Misfit:
    """`more` is what the inside lacks; less than zero where it is too long."""
    body, closed = worn.wearer.girth(worn.measure), ask.filled("piece.inside")
    inside = ask.let_out("piece.inside") if more > 0 else closed
    opened = "inside" if inside.middle == closed.middle else "inside, let out all the way"
    will = "cannot|may not" if level == "error" else "will|may"
    goal, place = ask.plan.goal, worn.wearer.place_of(worn.measure)
    wanted = in_unit_of(inside.middle + more, body)
    more *= turns(ask.plan).middle  # of what goes round several times, at each of them
    # whole millimetres, on the side that fits
    rounded = math.ceil if more > 0 else math.floor
    by = in_unit_of(abs(more), body)
    asked = f" and `{goal.called}`" if goal else ""
    by_hand = f"make the run{asked} about {by} {'longer' if more > 0 else 'shorter'}"
    return Misfit(
        says=f"the {ask.plan.piece} ({about(inside, body)} {opened}) {{{will}}} {fault} the"
        f" {worn.measure} ({spelled(body)})",
        place=goal.place if goal else place,
        found=f"{in_unit_of(inside.middle, body)} inside",
        needed=f"{wanted} inside, or {'more' if more > 0 else 'less'}",
        remedies=(
            *run_longer(ask, more, rounded),
            *wider(ask, more / turns(ask.plan).middle),
            *asked_longer(ask, more, rounded),
            *(() if coils_decide(ask) else (Remedy(by_hand),)),
        ),
        margin=margin,
        at_most=level,
        fault=f"piece too {'small' if more > 0 else 'large'} for its wearer",
        also=(place,),
    )


RULE = Rule(
    name="wearer-fit",
    family="length",
    subject=Fitted,
    check=check,
    fault="does not fit its wearer",
    title="the piece closes round the wearer, with ease where a table gives one",
    why=(
        "a thick rope loses three times its thickness on the inside: a bracelet that is right on"
        " the ruler is tight on the wrist"
    ),
    limits=(*(limit for both in EASES.values() for limit in both), SNUG, SNUG_BEADS, RING_SNUG),
    sources=(
        "inside = length - pi x thickness: trade table `bracelet_eases`, thick beads: several"
        " pages",
        "6 to 25 mm of ease on a wrist: common practice, no source",
        "1/8 in to 2 in of ease on a wrist: trade table `bracelet_eases`, worn: common practice",
        "1/2 in to 2 1/2 in of ease on an ankle: trade table `anklets`, snug: several pages; trade"
        " table `anklets`, loose: one page",
        "a quarter of a US size less to one more on a finger: common practice, no source",
        "skin gives 6 mm, and half an inch under beads: common practice, no source",
    ),
    bad="wearer: {neck: 44 cm} and a rope collar of 43 cm inside",
    good="wearer: {neck: 36 cm} and a rope collar of 43 cm inside",
    yields_to=("finished-length", "asked-length"),
)
