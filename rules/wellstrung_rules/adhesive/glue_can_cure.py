"""A resin that cures by light needs light: inside a metal cap it stays liquid."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, GluedEnd, Held, Misfit, Remedy, Rule
from wellstrung.rulebook.values import table
from wellstrung_rules.adhesive import take_epoxy


def check(end: GluedEnd, ask: Ask) -> Answer:
    glue, cap = end.adhesive, end.cap
    row = table("adhesives").row(glue.text("type"))
    if row.text("cures_by") != "light":
        return Held()
    metal = cap.said("metal")  # every metal keeps light out
    epoxy = take_epoxy(glue)
    return Misfit(
        says=f"`{glue.name}` is {row.name}, which cures by light, and no light reaches it inside"
        f" cap `{cap.name}` ({metal})",
        place=glue.place_of("type"),
        found=f"{row.name} inside {metal}",
        needed="an adhesive that cures without light",
        remedies=(epoxy, Remedy(epoxy.text)),
        also=(cap.place_of("metal"),),
    )


RULE = Rule(
    name="glue-can-cure",
    family="adhesive",
    subject=GluedEnd,
    check=check,
    fault="light-cured glue inside metal",
    title="no adhesive that cures by light is closed into a metal cap",
    why="the resin at the rim sets under the lamp and looks done; behind it the resin stays"
    " liquid, creeps out on warm days and can make the wearer's skin allergic",
    sources=(
        "trade table `adhesives`, UV resin: it cures only where its light reaches, copies seen",
        "metal is opaque: common knowledge",
    ),
    bad="glue: {kind: adhesive, type: UV resin} in a cap with `metal: brass`",
    good="glue: {kind: adhesive, type: two-part epoxy} in a cap with `metal: brass`",
)
