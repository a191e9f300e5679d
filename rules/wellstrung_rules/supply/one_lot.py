"""The beads of a part come from one lot, where the supplies list several."""

from __future__ import annotations

import math

from wellstrung.rulebook import Answer, Ask, BeadsNeeded, Misfit, Remedy, Rule, kept
from wellstrung.rulebook.plan import Item, Part
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
    return Misfit(
        says=f"`{part.name}` takes {number(round(takes.middle))} beads of `{bead.name}`, but"
        f" {{|perhaps }}no lot on hand has that many: the largest has {number(round(most.middle))}",
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
    """Lines of supplies by their lot; a line that names none is a lot of its own."""
    lots: dict[str | int, list[Item]] = {}
    for n, line in enumerate(lines):
        lots.setdefault(line.text("lot") if line.has("lot") else n, []).append(line)
    return list(lots.values())


RULE = Rule(
    name="one-lot",
    family="supply",
    subject=BeadsNeeded,
    check=check,
    fault="beads of more than one lot",
    title="the beads of a part come from one lot, of the several listed (how many: `beads-enough`)",
    why=(
        "lots of one colour differ a little in dye and firing, and the place where the next lot"
        " begins shows as a step across the rope in any light"
    ),
    sources=("lots of one colour differ: common practice, no source", "counting"),
    bad="{bead: kelp, pack: 20 g, packs: 2} and, from last term, {bead: kelp, pack: 20 g}",
    good="{bead: kelp, pack: 20 g, packs: 2, lot: A7} and {bead: kelp, pack: 20 g, lot: A7}",
    level="warning",
    yields_to=("beads-enough",),
)
