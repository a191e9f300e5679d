"""A wire link or a pin is long enough for its beads, its loops and the pliers."""

from __future__ import annotations

import math

from wellstrung.rulebook import Answer, Ask, Misfit, Remedy, Rule, WireLink, kept
from wellstrung.rulebook.wording import about, at_least, spelled


def check(subject: WireLink, ask: Ask) -> Answer:
    link = subject.link
    length, needed = ask.of(link, "length"), ask.of(link, "needed")
    margin = length - needed
    if answer := kept(margin):
        return answer
    on_it = ["the part it goes through"] * bool(link.part("over"))
    on_it += ["its beads"] * link.has("beads")
    carried = ", ".join([*on_it, "its loops"])
    wanted = math.ceil((length.middle - margin.likely.low) / 5 - 1e-9) * 5
    size = at_least(wanted, length)
    return Misfit(
        says=f"`{link.name}` ({spelled(length)}) {{is|may be}} too short: {carried} and the"
        f" pliers take {about(needed, length)}",
        place=link.place_of("length"),
        found=spelled(length),
        needed=f"{at_least(length.middle - margin.likely.low, length)} or longer",
        remedies=(
            Remedy.write(link.place_of("length"), size, f"cut or take {size} for `{link.name}`"),
            Remedy(f"take {size} or longer, or a smaller loop"),
        ),
        margin=margin,
    )


RULE = Rule(
    name="pin-length",
    family="length",
    subject=WireLink,
    check=check,
    fault="pin too short",
    title="a wire link or a pin reaches through its beads and leaves wire for its loops",
    why="a pin that is 5 mm too short cannot be turned into a loop, and the beads have to come off",
    sources=(
        "loop = pi x (hole + wire), a wrap = pi x 2 wires: geometry, worked out for this project",
        "10 mm for the pliers: common practice, no source",
    ),
    bad="a head pin of 20 mm under two 8 mm beads",
    good="a head pin of 50 mm under two 8 mm beads",
)
