"""Thread that runs bare over the sharp ends of a bead's hole."""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung.rulebook import (
    Answer,
    Ask,
    Held,
    Misfit,
    Missing,
    Remedy,
    Rule,
    Threaded,
    bare_edges,
    edges_of,
    passes_of,
)
from wellstrung.rulebook.plan import Item, Part, Role


def check(join: Threaded, ask: Ask) -> Answer:
    part, bead, edges = join.part, join.bead, edges_of(join.bead)
    if part.traits.on_wire or (bead.seed and not bead.has("edges")):
        return None  # wire is not cut, and seed beads are rounded
    line = part.thread_said
    passes = passes_of(ask.plan, part) or part.count("passes", default=1)
    if edges == "smooth" or part.thread.steel or (part.thread.resists_cuts and passes > 1):
        return Held()
    if not edges:
        raise Missing(f"`edges` of `{bead.name}`, whether the ends of its hole catch a thread")
    if bead not in bare_edges(ask.plan, part):
        return Held()
    if not line and part.takes("thread"):
        raise part.missing("thread", "type")
    thread = f"{line} thread" if line else "cord"
    tube = "" if bead.has("edges") else ", a long tube,"
    return Misfit(
        says=f"the holes of bead `{bead.name}`{tube} have sharp ends, and the {thread} of"
        f" `{part.name}` runs over them bare: wear saws it through",
        place=part.place_of("beads"),
        found=f"`{bead.name}` with no smooth bead at each end",
        needed="a smooth bead between the thread and every sharp end",
        remedies=(Remedy("; or ".join(_ways(bead, part))),),
        also=(bead.place_of("edges"), part.place_of("thread")),
    )


def _ways(bead: Item, part: Part) -> Iterator[str]:
    if part.kind.role in (Role.STRAND, Role.DROP):
        yield f"write a smooth bead before and after each `{bead.name}` in the order of `beads`"
    if part.takes("thread"):
        yield "take fused line twice through"
    if part.kind.role is Role.STRAND:
        yield "string it on flexible wire"
    yield f"take beads with smooth holes{'' if bead.has('edges') else ', written `edges: smooth`'}"


RULE = Rule(
    name="sharp-edge",
    family="hold",
    subject=Threaded,
    check=check,
    fault="thread on a sharp edge",
    title="thread stays off the sharp ends of bugles, crystals and sawn metal beads",
    why="a bugle is a tube snapped to length: in a month of wear its rim saws the thread through",
    sources=(
        "bugle ends are sharp, a seed bead goes at each end: trade table `other_beads`, bugle;"
        " Back stitch bugle bead, copy seen",
        "lines that resist a cut, flexible wire, tubes known by their length: common practice",
    ),
    bad="beads: [spray, bugle] on nylon, with bugle: {type: other, edges: sharp, ...}",
    good="beads: [spray, bugle, spray] on nylon, with bugle: {type: other, edges: sharp, ...}",
    level="warning",
)
