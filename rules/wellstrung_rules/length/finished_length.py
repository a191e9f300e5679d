"""The length of the piece, added up along its run, against the length in the plan."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Held, Missing, Piece, Remedy, Rule, kept
from wellstrung.rulebook.coils import coils_decide, wider
from wellstrung.rulebook.plan import Role
from wellstrung.rulebook.remedies import run_longer, with_length
from wellstrung.rulebook.values import exact, leaf, turns
from wellstrung.rulebook.wording import between, by_ruler, in_unit_of
from wellstrung_rules.length import long_already, off_length


def check(piece: Piece, ask: Ask) -> Answer:
    goal = ask.plan.goal
    if goal is None:
        return None
    low, high = goal.window
    wanted = leaf("wanted", (low + high) / 2, "mm", spelling=goal.text, spelled_unit=goal.unit)
    inside = goal.field == "inside"
    try:
        found = ask.get("piece.inside" if inside else "piece.length")
    except Missing as lacks:
        if not inside and (too_long := long_already(goal, wanted, lacks.field, ask)):
            return too_long
        raise
    short = found - exact("shortest wanted", low, "mm")
    long = exact("longest wanted", high, "mm") - found
    if answer := kept(short, long):
        return Held(answer.margin, assumed=goal.assumed)
    # where it may be either, what is likeliest says which way to go
    either = max(short.likely.low, long.likely.low) < 0
    too_short = found.middle <= wanted.middle if either else short.likely.low < long.likely.low
    word = "short" if too_short else "long"
    # what goes round several times is shared out over them
    off = abs(found.middle - wanted.middle) * (turns(ask.plan).middle if inside else 1)
    more = off if too_short else -off
    longer = run_longer(ask, more, round)
    by_hand = f"make the run about {by_ruler(off, wanted)} {'longer' if too_short else 'shorter'}"
    clasp = any(part.kind.role is Role.CLASP for part in ask.plan.in_run)
    taut = "taut with the clasp closed" if clasp else "taut"
    measured = "inside the loop" if inside else taut
    comes_out = f"{in_unit_of(found.middle, wanted)}, likely {between(*found.likely, wanted)}"
    remedies = (
        *longer,
        *(wider(ask, wanted.middle - found.middle) if inside else ()),
        *(Remedy(run.text) for run in longer if not with_length(ask)),  # the nearest count
        # nobody sets a run nearer than that
        *((Remedy(by_hand),) if off >= 0.5 and not coils_decide(ask) else ()),
    )
    says, margin = f"it will be {comes_out}, {measured}", short if too_short else long
    return off_length(goal, word, says, comes_out, remedies, margin, ask)


RULE = Rule(
    name="finished-length",
    family="length",
    subject=Piece,
    check=check,
    fault="length not as planned",
    title="the run adds up to the length that the plan asks for, taut or inside",
    why=(
        "caps, rings and clasp add their own centimetres to the rope; a necklace that is 3 cm off"
        " shows it only when the caps are glued"
    ),
    sources=(
        "taut length between bearing points: geometry, worked out for this project",
        "inside = length - pi x thickness: trade table `bracelet_eases`, thick beads: several"
        " pages",
    ),
    bad="finished_length: 46 cm ± 1 cm over a run of 43 cm",
    good="finished_length: 46 cm ± 1 cm over a run of 46.2 cm",
    yields_to=("asked-length",),
)
