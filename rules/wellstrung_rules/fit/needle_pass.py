"""The needle through a bead in which the thread lies already: woven, or strung more than once."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Misfit, Rule, Threaded, kept, needle_from
from wellstrung.rulebook.remedies import in_words
from wellstrung.rulebook.wording import about, raised
from wellstrung_rules.fit import needle_hole, needle_passes


def check(join: Threaded, ask: Ask) -> Answer:
    part, passes = join.part, needle_passes(join, ask)
    if passes is None:
        return None
    said = needle_from(ask.plan, part)
    needle, hole = ask.of(said, "needle"), ask.of(join.bead, "hole")
    needed = needle_hole(join, passes, ask)
    margin = hole - needed
    if answer := kept(margin):
        return answer
    whose = f"`{said.name}`" if said is part else f"`{said.name}`, in `{part.name}`,"
    return Misfit(
        says=f"needle `{said.text('needle')}` ({about(needle)}) of {whose} {{does|may}} not"
        f" pass bead `{join.bead.name}` ({about(hole)} hole) at pass {passes}, where the hole would"
        f" need to be {about(needed, hole)}",
        place=said.place_of("needle"),
        found=about(hole),
        needed=f"a hole of {raised(hole, margin)}",
        remedies=(
            in_words(
                "take a finer needle of the same class, a thinner thread, or beads with wider"
                " holes",
                *(join.bead, "hole"),
                low=hole.middle - margin.likely.low,
            ),
        ),
        margin=margin,
        also=(join.bead.key.place,),
    )


RULE = Rule(
    name="needle-pass",
    family="fit",
    subject=Threaded,
    check=check,
    fault="needle too thick",
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
