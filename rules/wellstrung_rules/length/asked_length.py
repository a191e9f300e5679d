"""The length that a plan asks for against the neck, wrist or ankle that it is to go round."""

from __future__ import annotations

import math

from wellstrung.rulebook import Answer, Ask, Fitted, Held, Misfit, Missing, Rule, Verdict, compare
from wellstrung.rulebook.remedies import asked_longer
from wellstrung.rulebook.values import exact, turns
from wellstrung.rulebook.wording import in_unit_of, spelled
from wellstrung_rules.length import EASES, RING_SNUG, SNUG, SNUG_BEADS, closed_by


def check(worn: Fitted, ask: Ask) -> Answer:
    goal, body = ask.plan.goal, worn.wearer.girth(worn.measure)
    if goal is None or turns(ask.plan).middle > 1:
        return None
    try:
        made, let_out = ask.filled("piece.inside"), ask.let_out("piece.inside")
        taken = ask.filled("piece.length") - made  # by its thickness, of what is laid out
    except Missing:
        return None  # `finished-length` asks for it
    asked = exact("most that is asked for", goal.window.high, "mm")
    asked = asked if goal.field == "inside" else asked - taken
    closes = closed_by(worn, ask, asked + (let_out - made) - body)
    if closes is None:
        return None
    if compare(closes) is not Verdict.FAILS:
        return Held()  # what may fail is for `wearer-fit`
    least = ask.limit(EASES[worn.measure][0]).middle if worn.measure in EASES else 0.0
    lacks = body.middle + least - (asked.middle - goal.window.high + goal.middle)
    more = body.middle + least - made.middle
    return Misfit(
        says=f"`{goal.called}: {goal.text}` cannot close round the {worn.measure}"
        f" ({spelled(body)})",
        place=goal.place,
        found=goal.text,
        needed=f"{in_unit_of(goal.middle + lacks, body)} or more",
        remedies=tuple(asked_longer(ask, more, math.ceil, asked=lacks)),
        margin=closes,
        also=(worn.wearer.place_of(worn.measure),),
    )


RULE = Rule(
    name="asked-length",
    family="length",
    subject=Fitted,
    check=check,
    fault="length asked too small to be worn",
    title="the length that the plan asks for closes round the wearer",
    why="what is made as long as the plan asks cannot be worn, however well it is made",
    limits=(*(least for least, _ in EASES.values()), SNUG, SNUG_BEADS, RING_SNUG),
    sources=(
        "inside = length - pi x thickness: trade table `bracelet_eases`, thick beads: several"
        " pages",
        "skin gives 6 mm, and half an inch under beads: common practice, no source",
    ),
    bad="inside: 15 cm and wearer: {wrist: 17 cm}",
    good="inside: 18 cm and wearer: {wrist: 17 cm}",
)
