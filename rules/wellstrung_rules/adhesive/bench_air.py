"""Air, gloves and eyes at the bench wherever a plan uses an adhesive."""

from __future__ import annotations

from wellstrung import tables
from wellstrung.rulebook import Answer, Ask, Caution, Glue, Rule


def check(glue: Glue, ask: Ask) -> Answer:
    row = tables.load("adhesives").row(glue.adhesive.text("type"))
    place = glue.adhesive.place_of("type")
    return Caution(f"`{glue.adhesive.name}` ({row.name}): {row.text('caution')}", place)


RULE = Rule(
    name="bench-air",
    family="adhesive",
    subject=Glue,
    check=check,
    title="fresh air, gloves and eye protection are named wherever a plan uses an adhesive",
    why="epoxy and acrylate resins are known sensitisers, and vapours gather over a small bench",
    sources=(
        "hazard statements H315, H317, H319 of an epoxy resin part: safety data sheet, copy seen",
        "EU-OSHA on occupational exposure to epoxy resins, copy seen",
    ),
    good="glue: {kind: adhesive, type: two-part epoxy}",
    level="caution",
)
