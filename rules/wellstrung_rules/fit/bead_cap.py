"""A bead cap against the bead that it sits on."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, CapOnBead, Misfit, Rule, kept
from wellstrung.rulebook.remedies import in_words
from wellstrung.rulebook.values import Cause, Spread, leaf
from wellstrung.rulebook.wording import about, lowered, spelled


def check(join: CapOnBead, ask: Ask) -> Answer:
    cap, bead = join.cap, join.bead
    outside, over = ask.of(cap, "outside"), ask.of(bead, "outside")
    cure = f"try one of `{cap.name}` on a `{bead.name}`"
    sheet = Spread(Cause("how thick its sheet is", f"`{cap.name}`", cure), 0.3, 0.4)
    walls = leaf("both walls", 0.8, "mm", [sheet], source="sheet of 0.25 to 0.6 mm: from memory")
    margin = over + walls - outside
    if answer := kept(margin):
        return answer
    most = lowered(outside, margin)
    text = f"take a bead cap of {most} or less, or a larger bead"
    return Misfit(
        says=f"bead cap `{cap.name}` ({spelled(outside)} across) {{is|may be}} too wide for"
        f" `{bead.name}` ({about(over, outside)}): the bead slips into it",
        place=cap.place_of("outside" if cap.has("outside") else "size"),
        found=spelled(outside),
        needed=f"{most} or less",
        remedies=(in_words(text, cap, "outside", high=outside.middle + margin.likely.low),),
        margin=margin,
        at_most="warning",
        also=(bead.key.place, join.place),
    )


RULE = Rule(
    name="bead-cap",
    family="fit",
    subject=CapOnBead,
    check=check,
    fault="bead cap too wide",
    title="a bead cap is no wider inside than the bead that it sits on",
    why="a cap sits on its bead by its rim: over a smaller bead it wobbles, tips on the thread and"
    " hides the bead",
    sources=("the rim rests on the bead: geometry, its walls are from memory",),
    bad="an 8 mm bead cap on a 6 mm bead",
    good="a 6 mm bead cap on an 8 mm bead",
    level="warning",
)
