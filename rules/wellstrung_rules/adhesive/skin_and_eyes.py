"""Gloves, eyes and first aid, told once wherever a plan uses adhesives."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Caution, Glues, Rule
from wellstrung.rulebook.plan import Part
from wellstrung.rulebook.values import table


def check(glues: Glues, ask: Ask) -> Answer:
    each = dict.fromkeys(_said(adhesive) for adhesive in glues.adhesives)
    return Caution(
        f"wear eye protection and keep what has not cured off your skin: {'; '.join(each)}; if it"
        " gets on skin or in an eye, do what the first-aid section of the product's own safety"
        " data sheet says, and see a doctor where it says so: the sheet comes before this line",
        glues.adhesives[0].place_of("type"),
    )


def _said(adhesive: Part) -> str:
    row = table("adhesives").row(adhesive.text("type"))
    return f"for {row.name}, {row.text('skin')}"


RULE = Rule(
    name="skin-and-eyes",
    family="adhesive",
    subject=Glues,
    check=check,
    title="gloves, eye protection and first aid are named wherever a plan uses an adhesive",
    why=(
        "an allergy to epoxy or acrylate resins comes with contact, drop by drop, and a splash in"
        " the eye leaves no time to look for the sheet"
    ),
    sources=(
        "hazard statements H315, H317, H319 of an epoxy resin part: safety data sheet, copy seen",
        "EUH202 of cyanoacrylate, safety data sheet; first aid: a registered dossier, copies seen",
        "gloves and acrylates: Zwanenburg 2000, copy seen",
        "solvents on skin and eyes (H315, H319): from memory, the product's sheet decides",
    ),
    good="glue: {kind: adhesive, type: two-part epoxy}",
    level="caution",
)
