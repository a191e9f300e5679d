"""Fresh air at the bench wherever a plan uses an adhesive."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Caution, Glue, Rule
from wellstrung.rulebook.values import table


def check(glue: Glue, ask: Ask) -> Answer:
    row = table("adhesives").row(glue.adhesive.text("type"))
    place = glue.adhesive.place_of("type")
    return Caution(f"`{glue.adhesive.name}` ({row.name}): {row.text('caution')}", place)


RULE = Rule(
    name="bench-air",
    family="adhesive",
    subject=Glue,
    check=check,
    title="fresh air is named wherever a plan uses an adhesive",
    why="vapours gather over a small bench, and a class sits over them for a whole evening",
    sources=(
        "EU-OSHA on occupational exposure to epoxy resins: airway and eye irritant, copy seen",
        "trade table `adhesives`: hazards of the others, from safety data sheets seen as copies",
    ),
    good="glue: {kind: adhesive, type: two-part epoxy}",
    level="caution",
)
