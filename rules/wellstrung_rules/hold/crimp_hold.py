"""A crimp on the end of a strand: closed by hand, it holds a share of the strength of the line."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Misfit, Remedy, Rule, StrandInCrimp, kept
from wellstrung.rulebook.loads import pull_at_clasp, pull_to_spare, weakest
from wellstrung.rulebook.remedies import stronger_line
from wellstrung.rulebook.values import product
from wellstrung.rulebook.wording import about, at_least
from wellstrung_rules.hold import in_wear
from wellstrung_rules.limits import HOLD_FACTOR


def check(join: StrandInCrimp, ask: Ask) -> Answer:
    if join.apart:
        return None  # it carries the beads beside it alone
    load, pulls = pull_at_clasp(ask.plan, ask.get("piece.mass"), join.strand)
    factor = ask.limit(HOLD_FACTOR)
    share = weakest("share held", "crimps", "closed by hand", "held")
    bears = product(f"{join.crimp.name} lets go at", "N", ask.of(join.strand, "breaking"), share)
    margin = pull_to_spare(bears, load, factor)
    if answer := kept(margin, over="worst"):
        return answer
    wanted = load.worst.high * factor.middle
    return Misfit(
        says=f"crimp `{join.crimp.name}`, closed by hand, holds {about(bears)} on the line of"
        f" `{join.strand.name}`; {pulls} pulls like {in_wear(load, factor, bears)}",
        place=join.strand.place_of("thread", "rating"),
        found=about(bears),
        needed=at_least(wanted, bears),
        remedies=(
            *stronger_line(join.strand, wanted / share.middle, ask),
            Remedy("make the piece lighter, or share its weight between strands"),
        ),
        margin=margin,
        also=(join.place,),
    )


RULE = Rule(
    name="crimp-hold",
    family="hold",
    subject=StrandInCrimp,
    check=check,
    fault="crimp too weak",
    title="a crimp holds the piece that hangs from it, with room for wear",
    why="a crimp that looks closed may hold less than half of what its wire bears: the wire slips"
    " out unbroken, and every bead follows",
    limits=(HOLD_FACTOR,),
    sources=(
        "sleeves that looked sound let go at 0.4 of the line: Can you trust your crimps?, a page"
        " on fishing line, copy seen; no test of a crimp bead was found",
        "breaking over working load 5:1 to 12:1: CI 1401-06, copy seen",
    ),
    bad="a necklace of 180 g on flexible wire of 0.25 mm, which bears about 5 lb",
    good="a necklace of 60 g on flexible wire of 0.38 mm, which bears about 20 lb",
    over="worst",
    loads=True,
)
