"""The way round inside the piece against the neck, wrist or ankle that it goes round."""

from __future__ import annotations

import math

from wellstrung.rulebook import (
    Answer,
    Ask,
    Choice,
    Fitted,
    Held,
    Level,
    Limit,
    Misfit,
    Remedy,
    Rule,
    Verdict,
    compare,
    holds,
)
from wellstrung.rulebook.coils import coils_decide, wider
from wellstrung.rulebook.plan import Role
from wellstrung.rulebook.remedies import asked_longer, run_longer
from wellstrung.rulebook.values import Quantity, table, turns
from wellstrung.rulebook.wording import about, in_unit_of, spelled

_PRINTED = "trade table `bracelet_eases`, the widest range seen"
_WORN = table("bracelet_eases").row("worn")
EASE_LEAST = Limit(
    "least ease",
    6.0,
    "mm",
    "over a wrist, common practice, no source",
    Choice(_WORN.cell("ease_least").value, 6.0, _PRINTED),
)
EASE_MOST = Limit(
    "most ease",
    25.0,
    "mm",
    "over a wrist, common practice, no source",
    Choice(25.0, _WORN.cell("ease_most").value, _PRINTED),
)
_SNUGLY = "trade table `anklets`, snug: several pages"
_LOOSELY = "trade table `anklets`, loose: one page"
_SNUG, _LOOSE = (table("anklets").row(name).cell("ease") for name in ("snug", "loose"))
ANKLET_LEAST = Limit(
    "least ease of an anklet", _SNUG.value, "mm", _SNUGLY, Choice(_SNUG.low, _SNUG.high, _SNUGLY)
)
ANKLET_MOST = Limit(
    "most ease of an anklet",
    _LOOSE.value,
    "mm",
    _LOOSELY,
    Choice(_LOOSE.low, _LOOSE.high, _LOOSELY),
)
_WIDE = "a wide band takes a quarter to half a US size more, common practice, no source"
_SIZE = "a US size is 2.55 mm round, see `wellstrung.common.units.ring_sizes`; common practice"
RING_LEAST = Limit("least ease of a ring", -0.6, "mm", _WIDE, Choice(-0.6, 1.3, _WIDE))
RING_MOST = Limit("most ease of a ring", 2.6, "mm", _SIZE, Choice(1.3, 2.6, _SIZE))
SNUG = Limit("snug", 6.0, "mm", "skin gives a quarter of an inch, common practice, no source")
SNUG_BEADS = Limit(
    "snug beads", 12.7, "mm", "beads press into the skin twice as far, common practice, no source"
)
RING_SNUG = Limit(
    "snug ring", 2.6, "mm", "no ring two sizes too small passes the knuckle: " + _SIZE
)
#: what a piece that is too small cannot do: a ring has nothing that closes
_GOES_ON = ("close round", "go on")
#: the least and the most ease round what is measured
EASES = {
    "wrist": (EASE_LEAST, EASE_MOST),
    "ankle": (ANKLET_LEAST, ANKLET_MOST),
    "finger": (RING_LEAST, RING_MOST),
}


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


def closed_by(worn: Fitted, ask: Ask, room: Quantity) -> Quantity | None:
    """By how much the piece can be closed at all, mm; None on elastic or coils, which open."""
    strands = [part for part in ask.plan.in_run if part.kind.role is Role.STRAND]
    if any(strand.thread.stretches or strand.thread.springs for strand in strands):
        return None
    snug = SNUG_BEADS if strands else SNUG
    return room + ask.limit(RING_SNUG if worn.measure == "finger" else snug)


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
    limits=(
        EASE_LEAST,
        EASE_MOST,
        ANKLET_LEAST,
        ANKLET_MOST,
        RING_LEAST,
        RING_MOST,
        SNUG,
        SNUG_BEADS,
        RING_SNUG,
    ),
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
