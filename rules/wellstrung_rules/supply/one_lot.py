"""The beads of a part come from one lot, where the supplies tell of several."""

from __future__ import annotations

import math

from wellstrung.rulebook import Answer, Ask, BeadsNeeded, Misfit, Remedy, Rule, kept
from wellstrung.rulebook.plan import Item, Part
from wellstrung.rulebook.values import Quantity
from wellstrung.rulebook.wording import number


def check(need: BeadsNeeded, ask: Ask) -> Answer:
    lots = _lots(need.lines)
    if len(lots) < 2:
        return None  # bought together, or in packs of one lot
    bead = need.bead
    takes, part = max(
        ((ask.beads_in(part, bead, count), part) for part, count in need.woven),
        key=lambda found: found[0].middle,
    )
    most = max((ask.in_packs(bead, lines) for lines in lots), key=lambda beads: beads.middle)
    margin = most - takes
    if answer := kept(margin):
        return answer
    head = f"`{part.name}` takes {_beads(takes)} of `{bead.name}`"
    return Misfit(
        says=f"{head}, and no lot on hand {{has|may have}} as many: the most is {_beads(most)}",
        place=need.lines[-1].node.place,
        found=" and ".join(ask.source(line.node.place) for line in need.lines),
        needed=f"{math.ceil(takes.likely.high)} beads of one lot",
        remedies=(Remedy(_remedy(need, part)),),
        margin=margin,
        also=(part.key.place,),
    )


def _remedy(need: BeadsNeeded, part: Part) -> str:
    unsaid = any(not line.has("lot") for line in need.lines)
    same = f"write the same `lot: ...` on the lines of `{need.bead.name}` if their packs match, "
    together = f"buy the beads of `{part.name}` together, or mix the lots bead by bead"
    return f"{same}{together}" if unsaid else together


def _lots(lines: tuple[Item, ...]) -> list[list[Item]]:
    """Lines of supplies by their lot; a line that names none was bought by itself."""
    lots: dict[str | int, list[Item]] = {}
    for place, line in enumerate(lines):
        lots.setdefault(line.text("lot") if line.has("lot") else place, []).append(line)
    return list(lots.values())


def _beads(count: Quantity) -> str:
    return f"{number(round(count.middle))} beads"


RULE = Rule(
    name="one-lot",
    family="supply",
    subject=BeadsNeeded,
    check=check,
    title=(
        "the beads of a part come from one lot, where supplies tell of several (whether there are"
        " enough: `beads-enough`)"
    ),
    why=(
        "one colour is dyed and fired in lots that differ a little, and where the next lot begins a"
        " step shows across the rope that no light hides"
    ),
    sources=("lots of one colour differ: common practice, no source", "counting"),
    bad="{bead: kelp, pack: 20 g, packs: 2} and, from last term, {bead: kelp, pack: 20 g}",
    good="{bead: kelp, pack: 20 g, packs: 2, lot: A7} and {bead: kelp, pack: 20 g, lot: A7}",
    level="warning",
    yields_to=("beads-enough",),
)
