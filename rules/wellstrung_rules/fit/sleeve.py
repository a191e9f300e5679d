"""French wire: the line goes through it, it goes through the eye, and it covers half a turn."""

from __future__ import annotations

from wellstrung.formulas.arithmetic import pi
from wellstrung.rulebook import Answer, Ask, LineInSleeve, Misfit, Remedy, Rule, kept
from wellstrung.rulebook.plan import Eyes
from wellstrung.rulebook.values import Quantity, derived, printed
from wellstrung.rulebook.wording import about, lowered, raised
from wellstrung_rules.fit import packed


def check(join: LineInSleeve, ask: Ask) -> Answer:
    sleeve = join.sleeve
    inside, outside = ask.of(sleeve, "inside"), ask.of(sleeve, "outside")
    lines: list[Quantity] = []
    for strand in join.strands:
        lines += [ask.of(strand, "line")] * strand.count("passes", default=1)
    line, loop = packed("lines in the coil", lines), join.loop
    hole = ask.get(loop.quantity("hole")) if isinstance(loop, Eyes) else ask.of(loop, "inside")
    words = loop.words if isinstance(loop, Eyes) else f"ring `{loop.name}`"
    bend = derived(
        "half a turn",
        "mm",
        lambda wall, outside: pi / 2 * (wall + outside),
        wall=ask.of(sleeve, "wall"),
        outside=outside,
        source="half round the wall of the eye: geometry",
    )
    passes, goes, covers = inside - line, hole - outside, ask.of(sleeve, "length") - bend
    if answer := kept(passes, goes, covers):
        return answer
    worst = min((passes, goes, covers), key=lambda margin: margin.likely.low)
    name = f"`{sleeve.name}`"
    if worst is passes:
        says = (
            f"the line of `{join.strands[0].name}` ({about(line)}) {{does|may}} not go through"
            f" {name} ({about(inside)} inside)"
        )
        found, needed = about(inside), f"{raised(inside, passes)} inside, or a thinner line"
        wider = [size for size in _sold() if size.middle > outside.middle]
        fits = bool(wider) and wider[0].likely.high <= hole.likely.low
        remedy = f"take {'the next size of French wire, or ' * fits}a thinner line"
    elif worst is goes:
        says = f"{name} ({about(outside)}) {{does|may}} not go through {words} ({about(hole)})"
        found, needed = about(outside), f"{lowered(outside, goes)} or thinner"
        remedy = "take a finer French wire, or a ring between it and the clasp"
    else:
        says = (
            f"{name} ({about(ask.of(sleeve, 'length'))} long) {{does|may}} not cover the line round"
            f" {words}, which takes {about(bend)}"
        )
        found, needed = about(ask.of(sleeve, "length")), f"{about(bend)} or longer"
        remedy = "cut it longer: 8 to 10 mm are usual"
    return Misfit(
        says=says,
        place=join.place,
        found=found,
        needed=needed,
        remedies=(Remedy(remedy),),
        margin=worst,
        also=(sleeve.key.place,),
    )


def _sold() -> list[Quantity]:
    """How thick each size of French wire is, from the finest on."""
    return [printed("french_wires", size, "outside") for size in ("fine", "medium", "heavy")]


RULE = Rule(
    name="sleeve",
    family="fit",
    subject=LineInSleeve,
    check=check,
    fault="coil of gimp does not fit",
    title="a coil of French wire takes the line, goes through the eye, and covers the line there",
    why="silk that shows at the eye of the clasp wears through first; a coil that the doubled silk"
    " does not pass uncoils when it is forced",
    sources=(
        "thickness of French wire: trade table `french_wires`, medium: one page",
        "half a turn round the eye: geometry, worked out for this project",
    ),
    bad="gimp: {kind: french wire, size: fine} on two lines of silk of 0.5 mm",
    good="gimp: {kind: french wire, size: medium} on silk of 0.5 mm",
)
