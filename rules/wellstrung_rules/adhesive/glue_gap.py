"""The gap between a rope's end and the bore, against what the adhesive bridges."""

from __future__ import annotations

from wellstrung.formulas.glue import gap
from wellstrung.rulebook import Answer, Ask, GluedEnd, Held, Misfit, Remedy, Rule, kept
from wellstrung.rulebook.plan import Edit
from wellstrung.rulebook.values import Quantity, derived, table
from wellstrung.rulebook.wording import about, in_unit_of, spelled


def check(end: GluedEnd, ask: Ask) -> Answer:
    glue = end.adhesive
    if not glue.has("bridges") and table("adhesives").row(glue.text("type")).text("gaps"):
        return Held()
    bore, outside = ask.of(end.cap, "bore"), ask.end(end.rope, end.cap)
    bridges = ask.of(glue, "bridges")
    between_them = derived("gap", "mm", gap, bore=bore, end=outside)
    margin = bridges - between_them
    if answer := kept(margin):
        return answer
    head = f"`{glue.name}` bridges {spelled(bridges)}, and the gap between `{end.rope.name}` and"
    tail = f"the bore of cap `{end.cap.name}`"
    return Misfit(
        says=f"{head} {tail} {{is|may be more:}} {about(between_them, bore)}",
        place=glue.place_of("type"),
        found=f"a gap of {in_unit_of(between_them.middle, bore)} all round",
        needed=f"a gap of {in_unit_of(bridges.middle, bore)} or less",
        remedies=_remedies(end, bore, margin),
        margin=margin,
        also=(end.cap.place_of("bore"), end.rope.key.place),
    )


def _remedies(end: GluedEnd, bore: Quantity, margin: Quantity) -> tuple[Remedy, ...]:
    glue, most = end.adhesive, in_unit_of(bore.middle + 2 * margin.likely.low, bore)
    other = (Edit(glue.place_of("type"), "two-part epoxy"),) if not glue.has("bridges") else ()
    return (
        Remedy(f"take a two-part epoxy for `{glue.name}`, which fills such a gap", other),
        Remedy(f"take a cap with a bore of {most} or less"),
    )


RULE = Rule(
    name="glue-gap",
    family="adhesive",
    subject=GluedEnd,
    check=check,
    title="the adhesive bridges the gap between the rope's end and its cap",
    why=(
        "a thin adhesive runs out of a wide joint and cures as a skin on either side: the cap looks"
        " glued and turns on the rope a week later"
    ),
    sources=(
        "trade table `adhesives`: cyanoacrylate up to 0.2 mm; epoxy and UV resin fill more",
        "gap all round = (bore - outside) / 2: geometry, worked out for this project",
    ),
    bad="cyanoacrylate on a rope 9.2 mm outside in a cap of 10 mm bore",
    good="two-part epoxy on a rope 9.2 mm outside in a cap of 10 mm bore",
    level="warning",
    yields_to=("cap-bore",),
)
