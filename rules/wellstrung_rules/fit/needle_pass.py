"""The needle through a bead in which the thread lies already: woven, or strung more than once."""

from __future__ import annotations

from wellstrung.formulas import thread
from wellstrung.rulebook import Answer, Ask, Misfit, Remedy, Rule, Threaded, kept, passes_of
from wellstrung.rulebook.plan import Role
from wellstrung.rulebook.values import derived, exact
from wellstrung.rulebook.wording import about, raised


def check(join: Threaded, ask: Ask) -> Answer:
    part, passes = join.part, passes_of(ask.plan, join.part)
    if part.kind.role is Role.STRAND and part.has("needle"):
        passes = part.count("passes", default=1)
    if passes is None or not part.takes("needle"):
        return None
    needle, hole = ask.of(part, "needle"), ask.of(join.bead, "hole")
    line = ask.of(part, "line") if passes > 1 else exact("no thread yet", 0.0, "mm")
    needed = derived(
        "hole for the needle",
        "mm",
        thread.hole_needed,
        needle=needle,
        thread=line,
        there=exact("there", passes - 1),
        source="k = 1.3: trade table `stitch_facts`, thread packed in a hole, per thread",
    )
    margin = hole - needed
    if answer := kept(margin):
        return answer
    return Misfit(
        says=f"needle `{part.text('needle')}` ({about(needle)}) of `{part.name}` {{does|may}} not"
        f" pass bead `{join.bead.name}` ({about(hole)} hole) at pass {passes}, where the hole would"
        f" need to be {about(needed, hole)}",
        place=part.place_of("needle"),
        found=about(hole),
        needed=f"a hole of {raised(hole, margin)}",
        remedies=(Remedy("take a finer needle of the same class, or a thinner thread"),),
        margin=margin,
        also=(join.bead.key.place,),
    )


RULE = Rule(
    name="needle-pass",
    family="fit",
    subject=Threaded,
    check=check,
    title=(
        "the needle passes each bead beside the thread that lies in it (the thread alone is"
        " `hole-passes`, of a strand `string-in-hole`)"
    ),
    why="a needle that is forced on the last pass breaks the bead, or itself",
    sources=(
        "hole >= sqrt(needle^2 + k n thread^2), k = 1.3, held against three printed figures: trade"
        " table `stitch_facts`, thread packed in a hole, per thread: from memory",
        "needle thickness: trade table `needles`, which grades each size; most are recalled",
    ),
    bad="needle: beading 10 in 15/0 beads",
    good="needle: beading 11 in 8/0 beads",
    yields_to=("hole-passes", "string-in-hole"),
)
