"""Rules of the family `fit`, the circles in a circle and the wires in holes that several share."""

from collections.abc import Iterable

from wellstrung.formulas import circles, thread
from wellstrung.rulebook import (
    Answer,
    Ask,
    Misfit,
    Missing,
    Remedy,
    RingHolds,
    Threaded,
    holds,
    kept,
    needle_from,
    passes_of,
    tightest,
)
from wellstrung.rulebook.plan import Bead, Eyes, Part, Role
from wellstrung.rulebook.remedies import in_words, take_wire, thinner_wires
from wellstrung.rulebook.values import Cause, Quantity, Spread, derived, exact, leaf, product
from wellstrung.rulebook.wording import at_most, raised, spelled

#: Thinner thread, mm, is not sold for beads: common practice, no source.
THINNEST = 0.1
IN_A_CIRCLE = "circles in a circle, see `circles.py`"
#: beside the advice to take wider holes, for those who widen theirs: common practice, no source
REAM_WET = (
    "to widen a hole in pearl, shell or stone, ream it under water, because the dust harms the"
    " lungs and a dry bit cracks the bead"
)


def packed(name: str, sizes: Iterable[Quantity], source: str = IN_A_CIRCLE) -> Quantity:
    """The smallest round hole, mm, that takes round things side by side."""
    numbered = {f"circle{number}": size for number, size in enumerate(sizes, 1)}
    found = derived(name, "mm", circles.side_by_side, numbered, source=source)
    if len(numbered) <= circles.MOST_PLACED:
        return found
    # not placed one by one, they may need less: no error comes of that alone
    least = derived(f"{name} at least", "mm", circles.least_side_by_side, numbered, source=source)
    why = Cause(f"how {len(numbered)} lie together", cure="bind them together and measure across")
    return derived(
        name,
        "mm",
        lambda least, most, loose: least + (most - least) * loose,
        least=least,
        most=found,
        loose=leaf("how loosely they lie", 1.0, "", [Spread(why, 1.0, 0.0)]),
    )


def sizes_of_hole(
    hole: Quantity, tight: Quantity, loose: Quantity, least: Quantity, most: Quantity
) -> tuple[float, float]:
    """The sizes of a hole, mm, that hold by the margins `tight` and `loose`, from least to most.

    Where the doubt of the hole's own size leaves none, those of another hole, whose size is known.
    """
    low, high = hole.middle - tight.likely.low, hole.middle + loose.likely.low
    return (low, high) if low <= high else (least.likely.high, most.likely.low)


def lines_in_hole(join: Threaded, lines: int, ask: Ask) -> Quantity:
    """The smallest hole, mm, that takes so many lines of a strand."""
    ratio = exact("ratio", circles.equal_ratio(min(lines, 20)))
    source = "equal circles in a circle, Graham, Lubachevsky, Nurmela, Östergård 1998"
    return product("lines in the hole", "mm", ask.of(join.part, "line"), ratio, source=source)


def bridged(eyes: Eyes) -> bool:
    """Whether a ring through the eye goes round a bridge, from the hole to the edge of the part."""
    return bool(eyes.path) and eyes.part.has(*eyes.path, "edge")


def held(join: RingHolds, ask: Ask, *, bridges: bool) -> list[Quantity]:
    """What lies side by side inside a ring, mm: the rope, walls of eyes or bridges, other rings."""
    rope = [ask.of(join.around, "outside")] if join.around else []
    walls = ["edge" if bridges and bridged(eyes) else "wire" for eyes in join.eyes]
    eyes = [ask.get(eyes.quantity(wall)) for eyes, wall in zip(join.eyes, walls, strict=True)]
    return [*rope, *eyes, *(ask.of(ring, "wire") for ring in join.rings)]


def needle_passes(join: Threaded, ask: Ask) -> int | None:
    """At which pass the needle goes through a bead last; None where there is no needle."""
    part, worked = join.part, needle_from(ask.plan, join.part)
    strand = part.kind.role is Role.STRAND
    if worked.without_needle:
        return None
    if (strand or part.kind.role is Role.DROP) and not worked.has("needle"):
        return None  # the end of its line goes through, or the work that it hangs from is asked
    if strand:
        return join.lines
    return passes_of(ask.plan, part, join.bead) if part.takes("needle") else None


def needle_hole(join: Threaded, passes: int, ask: Ask) -> Quantity:
    """The hole, mm, in which the needle passes beside the thread of its earlier passes."""
    line = ask.of(join.part, "line") if passes > 1 else exact("no thread yet", 0.0, "mm")
    return derived(
        "hole for the needle",
        "mm",
        thread.hole_needed,
        needle=ask.of(needle_from(ask.plan, join.part), "needle"),
        thread=line,
        there=exact("there", passes - 1),
        source="k = 1.3: trade table `stitch_facts`, thread packed in a hole, per thread",
    )


def with_needle(
    join: Threaded, margin: Quantity, thread_most: float, ask: Ask
) -> tuple[Quantity, float]:
    """What a hole too narrow for its thread lacks, and the thickest thread that fits it, mm.

    The needle is counted in, where it is known: else the next remark would ask for it.
    """
    hole, passes = ask.of(join.bead, "hole"), needle_passes(join, ask)
    try:
        needle = ask.of(needle_from(ask.plan, join.part), "needle")
    except Missing:
        return margin, thread_most
    if passes is None:
        return margin, thread_most
    needed = needle_hole(join, passes, ask)
    if passes > 1:
        most = thread.thickest(hole.likely.low, needle.likely.high, passes - 1)
    else:
        most = thread_most if holds(hole - needed) else 0.0
    return tightest(margin, hole - needed), min(thread_most, most)


def thinner_or_wider(
    join: Threaded, short: Quantity, thickest: float, ask: Ask, note: str = ""
) -> Remedy:
    """A remedy for a hole too narrow by a margin: a thread up to the thickest, or a wider hole."""
    hole, line = ask.of(join.bead, "hole"), ask.of(join.part, "line")
    word = "line" if join.part.kind.role is Role.STRAND else "thread"
    thinner = f"a {word} of {at_most(thickest, line)} or thinner"
    if thickest < THINNEST:
        thinner = f"a thinner {word} and a finer needle"
    wider = f"beads with a hole of {raised(hole, short)} or wider{note}"
    # of memory wire there is none so thin
    text = f"take {wider}" if join.part.thread.springs else f"take {thinner}, or {wider}"
    return in_words(text, join.bead, "hole", low=hole.middle - short.likely.low)


def through(link: Part, bored: Part | Bead, its_hole: str, care: str, ask: Ask) -> Answer:
    """Whether the wire of a link passes the hole of what it carries; `care` is said of a wider."""
    wire, hole = ask.of(link, "wire"), ask.of(bored, "hole")
    margin = hole - wire
    if answer := kept(margin):
        return answer
    limit = wire.middle + margin.likely.low
    what = "bead" if isinstance(bored, Bead) else bored.noun
    wider = f"take a {what} with a hole of {raised(hole, margin)} or wider"
    return Misfit(
        says=f"the wire of `{link.name}` ({spelled(wire)}) {{does|may}} not pass {its_hole}"
        f" ({spelled(hole)})",
        place=link.place_of("wire"),
        found=spelled(wire),
        needed=f"{at_most(max(limit, 0), hole)} or thinner",
        remedies=(
            *take_wire(link, thinner_wires(wire, limit), high=limit),
            in_words(
                f"{wider}; {care}" if care else wider,
                bored,
                "hole",
                low=hole.middle - margin.likely.low,
            ),
        ),
        margin=margin,
        also=(bored.place_of("hole") if isinstance(bored, Part) else bored.key.place,),
    )
