"""The beads of a part and of the piece come from one lot, where the supplies list several."""

from __future__ import annotations

import math
from collections.abc import Sequence

from wellstrung.rulebook import Answer, Ask, BeadsNeeded, Misfit, Remedy, Rule, kept
from wellstrung.rulebook.plan import Item, Part
from wellstrung.rulebook.wording import number, together


def check(need: BeadsNeeded, ask: Ask) -> Answer:
    lots, bead = _lots(need.lines), need.bead
    if len(lots) < 2:
        return None  # bought together, or in packs of one lot
    each = [(ask.beads_in(part, bead, count), part) for part, count in need.woven]
    most = max((ask.in_packs(bead, lines) for lines in lots), key=lambda beads: beads.middle)
    takes, part = max(each, key=lambda found: found[0].middle)
    parts = [part]
    if kept(most - takes):  # no part is of two lots, but the piece may be
        takes, parts = ask.of(bead, "needed"), [part for _, part in each]
    margin = most - takes
    if answer := kept(margin):
        return answer
    take = "take" if parts[1:] else "takes"
    return Misfit(
        says=f"{_names(parts)} {take} {number(round(takes.middle))} beads of"
        f" `{bead.name}`, but {{|perhaps }}no lot on hand has that many: the largest has"
        f" {number(round(most.middle))}",
        place=need.lines[-1].node.place,
        found=" and ".join(ask.source(line.node.place) for line in need.lines),
        needed=f"{math.ceil(takes.likely.high)} beads of one lot",
        remedies=(Remedy(_remedy(need, parts)),),
        margin=margin,
        also=tuple(part.key.place for part in parts),
    )


def _remedy(need: BeadsNeeded, parts: Sequence[Part]) -> str:
    mixed = "mix the lots bead by bead"
    if parts[1:]:
        mixed = "lay the lots side by side, and work each part from one where it is enough"
    bought = f"buy the beads of {_names(parts)} together, or {mixed}"
    if all(line.has("lot") for line in need.lines):
        return bought
    same = f"write the same `lot: ...` on the lines of `{need.bead.name}` if their packs match"
    return f"{same}, {bought}"


def _names(parts: Sequence[Part]) -> str:
    return together(f"`{part.name}`" for part in parts)


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
    title="the beads of the piece come from one lot, of the several listed (see `beads-enough`)",
    why=(
        "lots of one colour differ a little in dye and firing, and the place where the next lot"
        " begins shows as a step across the rope in any light; their sizes differ a little too"
    ),
    sources=("lots of one colour differ: common practice, no source", "counting"),
    bad="{bead: kelp, pack: 20 g, packs: 2} and, from last term, {bead: kelp, pack: 20 g}",
    good="{bead: kelp, pack: 20 g, packs: 2, lot: A7} and {bead: kelp, pack: 20 g, lot: A7}",
    level="warning",
    yields_to=("beads-enough",),
)
