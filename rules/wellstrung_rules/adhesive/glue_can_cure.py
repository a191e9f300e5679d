"""A resin that cures by light needs light: inside a metal cap it stays liquid."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, GluedEnd, Held, Misfit, Remedy, Rule
from wellstrung.rulebook.plan import Edit
from wellstrung.rulebook.values import table


def check(end: GluedEnd, ask: Ask) -> Answer:
    glue, cap = end.adhesive, end.cap
    row = table("adhesives").row(glue.text("type"))
    if row.text("cures_by") != "light":
        return Held()
    metal = cap.text("metal")  # every metal keeps light out
    epoxy = (Edit(glue.place_of("type"), "two-part epoxy"),)
    return Misfit(
        says=(
            f"`{glue.name}` is {row.name}, which cures by light, and no light reaches it inside cap"
            f" `{cap.name}` ({metal})"
        ),
        place=glue.place_of("type"),
        found=f"{row.name} inside {metal}",
        needed="an adhesive that cures without light",
        remedies=(
            Remedy(f"take a two-part epoxy for `{glue.name}`", epoxy),
            Remedy(f"take a two-part epoxy for `{glue.name}`"),
        ),
        also=(cap.place_of("metal"),),
    )


RULE = Rule(
    name="glue-can-cure",
    family="adhesive",
    subject=GluedEnd,
    check=check,
    title="an adhesive that cures by light is not shut into a metal cap",
    why=(
        "the rim of the cap sets under the lamp and looks done, while the resin behind it stays"
        " liquid, creeps out on warm days and is a sensitiser on the wearer's skin"
    ),
    sources=(
        "trade table `adhesives`, UV resin: it cures only where its light reaches, copies seen",
        "metal is opaque: common knowledge",
    ),
    bad="glue: {kind: adhesive, type: UV resin} in a cap with `metal: brass`",
    good="glue: {kind: adhesive, type: two-part epoxy} in a cap with `metal: brass`",
)
