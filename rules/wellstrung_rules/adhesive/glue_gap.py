"""The gap between the end of a rope and the bore, against the gap that the adhesive bridges."""

from __future__ import annotations

from wellstrung.formulas.glue import gap
from wellstrung.rulebook import Answer, Ask, GluedEnd, Held, Misfit, Remedy, Rule, kept
from wellstrung.rulebook.remedies import in_words
from wellstrung.rulebook.values import derived, table
from wellstrung.rulebook.wording import about, at_most, in_unit_of, spelled
from wellstrung_rules.adhesive import take_epoxy


def check(end: GluedEnd, ask: Ask) -> Answer:
    glue = end.adhesive
    if not glue.has("bridges") and table("adhesives").row(glue.text("type")).text("gaps"):
        return Held()
    bore, bridges = ask.of(end.cap, "bore"), ask.of(glue, "bridges")
    wide = derived("gap", "mm", gap, bore=bore, end=ask.end(end.rope, end.cap))
    margin = bridges - wide
    if answer := kept(margin):
        return answer
    epoxy, widest = take_epoxy(glue), bore.middle + 2 * margin.likely.low
    most = at_most(widest, bore)
    return Misfit(
        says=f"`{glue.name}` bridges gaps of up to {spelled(bridges)}; the gap between"
        f" `{end.rope.name}` and the bore of cap `{end.cap.name}` {{is|may be wider:}}"
        f" {about(wide, bore)}",
        place=glue.place_of("type"),
        found=f"a gap of {in_unit_of(wide.middle, bore)} all round",
        needed=f"a gap of {at_most(bridges.middle, bore)} or less",
        remedies=(
            Remedy(
                f"{epoxy.text}, which fills such a gap", () if glue.has("bridges") else epoxy.edits
            ),
            in_words(f"take a cap with a bore of {most} or less", end.cap, "bore", high=widest),
        ),
        margin=margin,
        also=(end.cap.place_of("bore"), end.rope.key.place),
    )


RULE = Rule(
    name="glue-gap",
    family="adhesive",
    subject=GluedEnd,
    check=check,
    fault="glue too thin for the gap",
    title="the adhesive bridges the gap between the rope's end and its cap",
    why="a thin adhesive runs out of a wide joint and leaves only a skin on either side: the cap"
    " looks glued, and a week later it turns on the rope",
    sources=(
        "trade table `adhesives`: cyanoacrylate up to 0.2 mm; epoxy and UV resin fill more",
        "gap all round = (bore - outside) / 2: geometry, worked out for this project",
    ),
    bad="cyanoacrylate on a rope 9.2 mm outside in a cap of 10 mm bore",
    good="two-part epoxy on a rope 9.2 mm outside in a cap of 10 mm bore",
    level="warning",
    yields_to=("cap-bore",),
)
