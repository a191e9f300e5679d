"""The weight of each earring, against what an ear carries comfortably all day."""

from __future__ import annotations

from collections import Counter

from wellstrung.rulebook import (
    Answer,
    Ask,
    Choice,
    Limit,
    Misfit,
    Missing,
    Piece,
    Remedy,
    Rule,
    hung_in_all,
    kept,
)
from wellstrung.rulebook.plan import Part
from wellstrung.rulebook.values import Quantity, table, times
from wellstrung.rulebook.wording import about, number

EAR_WEIGHT = Limit(
    "ear weight",
    8.0,
    "g",
    "the most for all day, trade table `earring_weights`: chosen from seven pages",
    Choice(5.0, 15.0, "common practice, no source; trade table `earring_weights`"),
)


def check(piece: Piece, ask: Ask) -> Answer:
    if ask.plan.piece != "earrings":
        return None
    weighed = _weighed(ask)
    if not weighed:
        raise Missing("`run` or `hung`, the parts of one earring")
    limit, mass = ask.limit(EAR_WEIGHT), ask.get("piece.mass")
    margin = limit - mass
    if answer := kept(margin, over="worst"):
        return answer
    heaviest = max(weighed, key=lambda part: weighed[part].middle)
    return Misfit(
        says=f"an earring weighs {about(mass)}, {{|which may be }}more than the"
        f" {number(limit.middle)} g that an ear carries comfortably all day{_class(mass, limit)}",
        place=heaviest.place_of("mass"),
        found=about(mass),
        needed=f"{number(limit.middle)} g or less",
        remedies=(
            Remedy(
                f"make it lighter, first `{heaviest.name}`, which is"
                f" {number(weighed[heaviest].middle)} g of it"
            ),
        ),
        margin=margin,
        also=(piece.place,),
    )


def _weighed(ask: Ask) -> dict[Part, Quantity]:
    """What each part of one earring weighs, all of its kind together, g."""
    counts: Counter[Part] = Counter()
    for entry in ask.plan.run:
        counts.update({part: entry.linked for part in entry.parts})
    for line in ask.plan.hung:
        pieces, joints = hung_in_all(ask.plan, line)
        counts.update({line.part: pieces})
        if line.by is not None:
            counts.update({line.by: joints})
    return {part: times(ask.of(part, "mass"), count) for part, count in counts.items()}


def _class(mass: Quantity, limit: Quantity) -> str:
    """The heaviest class of the tables that it reaches, in words."""
    for name, words in _CLASSES.items():
        if limit.middle < table("earring_weights").row(name).cell("mass").value <= mass.worst.low:
            return f": {words}"
    return ""


_CLASSES = {
    "too heavy": "too heavy for a hook in the ear",
    "heavy": "wear it for an evening at most",
}


RULE = Rule(
    name="ear-weight",
    family="hold",
    subject=Piece,
    check=check,
    fault="earring too heavy",
    title="an earring is light enough to be worn all day",
    why="a heavy earring is worn once: by evening the lobe is tired, the piercing stretched, and"
    " the earring hangs with its face to the floor",
    limits=(EAR_WEIGHT,),
    sources=(
        "trade table `earring_weights`: 4 to 14 g an ear on seven pages, classes chosen from them;"
        " comfort, never more than a warning",
        "5 to 15 g by makers: common practice, no source",
    ),
    bad="an earring of a 16 g drop on a hook of 0.3 g",
    good="an earring of a 3 g drop on a hook of 0.3 g",
    level="warning",
    over="worst",
)
