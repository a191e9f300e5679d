"""Fresh air at the bench for every adhesive that a plan uses."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Caution, Glue, Rule
from wellstrung.rulebook.values import table


def check(glue: Glue, ask: Ask) -> Answer:
    row = table("adhesives").row(glue.adhesive.text("type"))
    place = glue.adhesive.place_of("type")
    steps = tuple(step for step in ask.plan.gluing if step.parts["with"] is glue.adhesive)
    return Caution(f"`{glue.adhesive.name}` ({row.name}): {row.text('caution')}", place, steps)


RULE = Rule(
    name="bench-air",
    family="adhesive",
    subject=Glue,
    check=check,
    fault="fresh air",
    title="every adhesive comes with a reminder of fresh air",
    why="vapours gather over a small bench, and a class breathes them for a whole evening",
    sources=(
        "EU-OSHA on occupational exposure to epoxy resins: airway and eye irritant, copy seen",
        "trade table `adhesives`: hazards of the others, from safety data sheets seen as copies",
    ),
    good="glue: {kind: adhesive, type: two-part epoxy}",
    level="caution",
)
