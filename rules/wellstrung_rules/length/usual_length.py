"""The length of a spectacle chain or a lanyard against those that shops sell."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Choice, Misfit, Piece, Remedy, Rule, kept
from wellstrung.rulebook.remedies import run_longer
from wellstrung.rulebook.values import leaf, table
from wellstrung.rulebook.wording import about, between

_SOLD = "trade table `spectacles`"
_MORE = "makers go by their wearer and add or take off 4 in, common practice, no source"
_FOUR_INCHES = 101.6


def check(piece: Piece, ask: Ask) -> Answer:
    row = table("spectacles").rows.get(ask.plan.piece)
    if row is None:
        return None
    cell, goal = row.cell("length"), ask.plan.goal
    found = ask.filled("piece.length")
    low, high = cell.low - _FOUR_INCHES, cell.high + _FOUR_INCHES
    shortest = leaf(
        "usual length", cell.low, "mm", source=_SOLD, choice=Choice(low, cell.low, _MORE)
    )
    longest = leaf(
        "usual length", cell.high, "mm", source=_SOLD, choice=Choice(cell.high, high, _MORE)
    )
    short, long = found - shortest, longest - found
    if answer := kept(short, long):
        return answer
    too_short = short.likely.low < long.likely.low
    like = leaf("usual", cell.value, "mm", spelled_unit=goal.unit) if goal else found
    word, needed = "short" if too_short else "long", between(cell.low, cell.high, like)
    return Misfit(
        says=f"the {ask.plan.piece} is {about(found, like)} long, which {{is|may be}} too {word}"
        f" to wear well: most are {needed}",
        place=goal.place if goal else ask.plan.place_of("piece"),
        found=about(found, like),
        needed=needed,
        remedies=(
            *run_longer(ask, cell.value - found.middle, round),
            Remedy(f"make it {needed}, or measure how its wearer likes it to hang"),
        ),
        margin=short if too_short else long,
        fault=f"piece too {word} to wear well",
    )


RULE = Rule(
    name="usual-length",
    family="length",
    subject=Piece,
    check=check,
    fault="length is not usual",
    title="a spectacle chain and a lanyard have a usual length",
    why="a short spectacle chain pulls at the ears, a long one catches in the table; a lanyard that"
    " is too long hangs in the lap",
    sources=(
        "lengths that shops sell: trade table `spectacles`, spectacle chain: several pages",
        "4 in more or less: common practice, no source",
    ),
    bad="piece: lanyard over a run of 60 cm",
    good="piece: lanyard over a run of 88 cm",
    level="warning",
)
