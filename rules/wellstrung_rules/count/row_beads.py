"""A list of beads over rows that are shaped: as many beads as the rows have, row by row."""

from __future__ import annotations

from collections import Counter

from wellstrung.rulebook import Answer, Ask, Held, Misfit, Remedy, Rule, Woven
from wellstrung.rulebook.plan import Part, beads_named
from wellstrung.rulebook.wording import plural


def check(woven: Woven, ask: Ask) -> Answer:
    band, listed = woven.part, _row_by_row(woven.part)
    if not listed or woven.stitch.columns != "beads":
        return None
    beads = round(ask.of(band, "beads").middle)
    over = len(listed) - beads
    if beads % len(listed) == 0:
        return Held()
    off = f"{plural(abs(over), 'bead')} {'over' if over > 0 else 'short'}"
    mix = ", ".join(f"{bead}: {n}" for bead, n in Counter(listed).items())
    return Misfit(
        says=f"`{band.name}` lists {len(listed)} beads, row by row, and its rows take {beads}: the"
        f" list is {off}, and the pattern shifts",
        place=band.place_of("beads"),
        found=f"{len(listed)} beads listed",
        needed=f"{beads} beads listed",
        remedies=(
            Remedy(
                f"count the rows of the list, and write {beads} beads; or"
                f" `beads: {{{mix}}}`, if the order does not matter"
            ),
        ),
        also=(band.place_of("each_row"),),
    )


def _row_by_row(band: Part) -> tuple[str, ...]:
    """The beads of a list that is longer than the widest of shaped rows; none of another."""
    node = band.node_at("beads")
    if not band.lists("each_row") or node is None or not isinstance(node.value, list):
        return ()
    longer = len(node.value) > max(band.counts("each_row"))
    return band.texts("beads") if longer and len(beads_named(band, "beads")) > 1 else ()


RULE = Rule(
    name="row-beads",
    family="count",
    subject=Woven,
    check=check,
    fault="list and rows differ",
    title="a list of beads over shaped rows has as many beads as the rows",
    why="one bead too few in the list of a leaf shifts every row after it, and the vein wanders",
    sources=("counting",),
    bad="each_row: [2, 3, 4] and beads: [2 reed, 3 sand, 3 reed]",
    good="each_row: [2, 3, 4] and beads: [2 reed, 3 sand, 4 reed]",
    level="warning",
)
