"""Gloves, eye protection and first aid: one caution for all the adhesives of a plan."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Caution, Glues, Rule
from wellstrung.rulebook.values import table


def check(glues: Glues, ask: Ask) -> Answer:
    rows = [table("adhesives").row(adhesive.text("type")) for adhesive in glues.adhesives]
    each = dict.fromkeys(f"for {row.name}, {row.text('skin')}" for row in rows)
    return Caution(
        f"wear eye protection and keep uncured adhesive off your skin: {'; '.join(each)}; if it"
        " gets on your skin or in an eye, follow the first-aid section of the product's own safety"
        " data sheet, and see a doctor where it says so: the sheet comes before this advice",
        glues.adhesives[0].place_of("type"),
        tuple(ask.plan.gluing),
    )


RULE = Rule(
    name="skin-and-eyes",
    family="adhesive",
    subject=Glues,
    check=check,
    fault="gloves and eye protection",
    title="every adhesive comes with a reminder of gloves, eye protection and first aid",
    why="an allergy to epoxy or acrylate resins builds up with every contact, and a splash in the"
    " eye leaves no time to look for the data sheet",
    sources=(
        "hazard statements H315, H317, H319 of an epoxy resin part: safety data sheet, copy seen",
        "corrosive amine hardeners: safety data sheets, msdssafe.com, copies seen",
        "EUH202 of cyanoacrylate, safety data sheet; first aid: a registered dossier, copies seen",
        "gloves and acrylates: Zwanenburg 2000, copy seen",
        "solvents on skin and eyes (H315, H319): from memory, the product's sheet decides",
    ),
    good="glue: {kind: adhesive, type: two-part epoxy}",
    level="caution",
)
