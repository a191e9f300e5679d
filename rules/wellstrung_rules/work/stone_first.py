"""A stone is glued down before it is sewn round, then backed, and its edge sewn last."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Held, Rule, StoneGlued
from wellstrung_rules.work import out_of_order


def check(stone: StoneGlued, ask: Ask) -> Answer:
    name = stone.part.name
    for first, then in stone.in_order:
        if first.number > then.number:
            says = f"step {then.number} sews `{name}` round, and only step {first.number} glues its"
            says += " stone down"
            if first is stone.sewn:
                says = f"step {then.number} glues the backing of `{name}`, and only step"
                says += f" {first.number} sews it: the backing covers its threads"
            if then in stone.edged:
                what = "sews its rows" if first is stone.sewn else "glues its backing on"
                says = f"step {then.number} sews the edge of `{name}` through both its layers, and"
                says += f" only step {first.number} {what}"
            return out_of_order(says, first, then, then, ask)
    return Held()


RULE = Rule(
    name="stone-first",
    family="work",
    subject=StoneGlued,
    check=check,
    fault="stone glued out of order",
    title="a stone is glued to its foundation, sewn round, backed, and only then edged",
    why="glue that goes under a stone through a finished bezel stains its beads, and a backing"
    " that is on too early is sewn full of threads",
    sources=(
        "glue the cabochon, let it dry, then sew: `Make a Peyote Bezel`, `Basic Beaded Cabochon`,"
        " excerpts seen",
        "backing after the bezel: `Finishing Techniques for Bead Embroidered Cabochons`, excerpt"
        " seen",
    ),
    bad="{do: weave, part: lamp}, {do: glue, part: lamp, to: foundation, with: glue}",
    good="{do: glue, part: lamp, to: foundation, with: glue}, {do: weave, part: lamp}",
)
