"""What a plan takes of each supply, and what of it is on hand.

Each amount is one quantity, over all the pieces that the plan makes. Rules, supply list, cutting
list, pages and JSON all ask for it.
"""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Callable, Iterable, Iterator

from wellstrung.derived.beads_taken import beads_in
from wellstrung.derived.coils import at_ends
from wellstrung.derived.drops import drops_on_knots
from wellstrung.derived.ends import cords_of_knots, end_in_cap
from wellstrung.derived.packs import in_one_pack, in_packs, one_spool
from wellstrung.formulas import thread
from wellstrung.formulas.arithmetic import floor, most
from wellstrung.formulas.glue import joint_volume, to_mix
from wellstrung.model.item import Bead, Item, Missing
from wellstrung.model.parts import Formula, Part, Role
from wellstrung.model.plan import Quantities
from wellstrung.quantity.arithmetic import derived, exact, product, times, total
from wellstrung.quantity.value import Quantity
from wellstrung.subjects.counts import how_many
from wellstrung.subjects.glued import GluedEnd, GlueUsed, glue_used
from wellstrung.subjects.supplies import beads_needed, supply_lines, threaded
from wellstrung.subjects.wires import wires

#: the units of amounts: lengths, volumes, and pieces, which have none
LENGTH, VOLUME, PIECES = "mm", "ml", ""

# --- beads


def _beads_needed(bead: Bead, ask: Quantities) -> Quantity:
    """Beads of all the parts woven of it, and of the loops that buttons go through."""
    woven = beads_needed(ask.plan, bead).woven
    terms = [beads_in(part, bead, count, ask) for part, count in woven]
    loops = beads_in_loops(bead, ask)
    if loops:
        terms.append(exact("beads of loops", loops))
    return total(f"{bead.name}.needed", PIECES, terms)


def beads_in_loops(bead: Bead, ask: Quantities) -> int:
    """Beads that the loops of clasps take."""
    return sum(
        part.count("loop", "count", default=0) * how_many(ask.plan, part)
        for part in ask.plan.parts.values()
        if part.bead("loop", "beads") is bead
    )


def _beads_on_hand(bead: Bead, ask: Quantities) -> Quantity:
    """Beads in the packs on hand, by mass or by count."""
    lines = beads_needed(ask.plan, bead).lines
    if not lines:
        raise Missing(f"a line `{{bead: {bead.name}, pack: ..., packs: ...}}` under `supplies`")
    return total(f"{bead.name}.on hand", "", [in_packs(bead, line, ask) for line in lines])


def _spare(bead: Bead, ask: Quantities) -> Quantity:
    """Beads over, for culling: a share of those woven, by the make, in whole beads.

    Larger beads, whose sizes the plan gives, are looked at one by one when they are bought: none
    over, unless they come by weight. Common practice, no source.
    """
    if not bead.seed and not any(line.has("pack") for line in beads_needed(ask.plan, bead).lines):
        return exact(f"{bead.name}.spare", 0, source="larger beads are bought by the piece")
    czech = bead.made_in == "Czech"
    make = "Czech" if czech else "Japanese"
    name = f"spare {'cylinder' if bead.cylinder else make} beads"
    return derived(
        f"{bead.name}.spare",
        PIECES,
        lambda beads, share: floor(beads * share + 1e-9),
        beads=ask.of(bead, "needed"),
        share=_limit(name, ask),
    )


def _limit(name: str, ask: Quantities) -> Quantity:
    setting = ask.plan.bench.limits[name]
    return exact(name, *setting)


def _packs_wanted(bead: Bead, ask: Quantities) -> Quantity:
    """Packs in the last line of the supplies that make the beads enough, spare ones included."""
    over = ask.of(bead, "on_hand") - ask.of(bead, "needed") - ask.of(bead, "spare")
    line = beads_needed(ask.plan, bead).lines[-1]
    each = in_one_pack(bead, line, ask).likely.low
    # packs are whole: rounded up at the end, from what is short over the likely range
    more = math.ceil(max(0.0, -over.likely.low) / each)
    return exact(f"{bead.name}.packs", line.count("packs") + more)


# --- thread


def thread_in_all(part: Part, ask: Quantities) -> Quantity:
    """Thread that every one of a part takes, with the tails of all its threads, mm."""
    count, tail, path = how_many(ask.plan, part), tail_of(part), ask.of(part, "thread")
    name = f"{part.name}.thread in all"
    if part.kind.role is Role.STRAND:
        if any(part in one.strands for one in wires(ask.plan)):
            lines = [times(length, many) for many, length, _ in lines_of(part, ask)]
            return total(name, LENGTH, lines)
        return derived(
            name,
            LENGTH,
            lambda count, line, first, last: count * (line + first + last),
            {"line": path, **_ends(part, ask)},
            count=exact("strung", count),
            source="strung in one go, a tail at each end: counting",
        )
    if ask.offers(part, "warps"):
        return derived(
            name,
            LENGTH,
            lambda count, path, warps, warp, working, tail: (
                count * (thread.with_tails(path - warps * warp, working, tail) + warps * warp)
            ),
            count=exact("woven", count),
            path=path,
            warps=ask.of(part, "warps"),
            warp=ask.of(part, "warp_length"),
            working=working_length_of(part),
            tail=tail,
            source="two tails for every working length of weft; a warp has its ends: counting",
        )
    if part.kind.role is Role.DROP:
        # the legs of a fringe hang on one thread, which goes on from one to the next in each piece
        path, count = times(path, count // ask.plan.makes), ask.plan.makes
    return derived(
        name,
        LENGTH,
        lambda count, path, working, tail: count * thread.with_tails(path, working, tail),
        count=exact("woven", count),
        path=path,
        working=working_length_of(part),
        tail=tail,
        source="two tails for every working length: counting",
    )


def _ends(part: Part, ask: Quantities) -> dict[str, Quantity]:
    return dict(zip(("first", "last"), tails_at_ends(part, ask), strict=True))


def lines_of(part: Part, ask: Quantities) -> Iterator[tuple[int, Quantity, tuple[Part, ...]]]:
    """The lines that are cut for a strand: how many, how long each, and the bars it goes through.

    A line that goes on through bars is cut for the first of its strands.
    """
    lines, makes = wires(ask.plan), ask.plan.makes
    alone = how_many(ask.plan, part) - makes * sum(one.strands.count(part) for one in lines)
    if alone > 0:
        terms = [ask.of(part, "thread"), *tails_at_ends(part, ask)]
        yield alone, total(f"{part.name}.line", LENGTH, terms), ()
    for line, many in Counter(one for one in lines if one.strands[0] is part).items():
        ends = tails_at_ends(part, ask)[0], tails_at_ends(line.strands[-1], ask)[1]
        terms = [*ends, *(ask.of(one, "thread") for one in line.strands)]
        terms += [ask.of(bar, "along") for bar in line.bars]
        yield many * makes, total(f"{part.name}.line through bars", LENGTH, terms), line.bars


def threads_of(part: Part, ask: Quantities) -> Quantity:
    """How many threads one of a part is woven with, each of its working length."""
    path = ask.of(part, "thread")
    if ask.offers(part, "warps"):
        warps = product("warps", LENGTH, ask.of(part, "warps"), ask.of(part, "warp_length"))
        path = path - warps
    return derived(
        f"threads of {part.name}",
        PIECES,
        thread.threads,
        path=path,
        length=working_length_of(part),
        tail=tail_of(part),
        source="path over the working length less its tails, rounded up: counting",
    )


def tail_of(part: Part) -> Quantity:
    """The tail at each end of a thread, as written or as is usual, mm."""
    return _of_thread(part, "tail", thread.USUAL_TAIL)


def tails_at_ends(part: Part, ask: Quantities) -> tuple[Quantity, Quantity]:
    """The tail at either end of a strand, mm; where it ends in sliding knots what they take."""
    usual = tail_of(part)
    if part.has("thread", "tail"):
        return usual, usual
    if part.thread.springs:  # a loop is turned in it, or it goes into a ball
        return at_ends(part, ask), at_ends(part, ask)
    sliding = [ask.of(end, "tail") for end in ask.plan.met[part] if end.traits.slides]
    first, last = (*sliding, usual, usual)[:2]
    return first, last


def working_length_of(part: Part) -> Quantity:
    """The length of thread to work with, as written or as is usual, mm.

    Raises Missing where two tails are longer than it.
    """
    working = _of_thread(part, "working_length", thread.USUAL_LENGTH)
    if working.worst.low <= 2 * tail_of(part).worst.high:
        raise Missing(f"a `thread.working_length` of `{part.name}` that is longer than two tails")
    return working


def _of_thread(part: Part, what: str, usual: float) -> Quantity:
    if part.has("thread", what):
        return part.length("thread", what)
    return exact(what.replace("_", " "), usual, LENGTH, "usual: trade table `stitch_facts`")


def thread_needed(spool: Part, ask: Quantities) -> Quantity:
    """Thread for every part worked with it, with all tails, mm."""
    return thread_for(spool.name, threaded(ask.plan).get(spool, ()), ask)


def thread_for(name: str, parts: Iterable[Part], ask: Quantities) -> Quantity:
    """Thread for some parts, with all tails, mm, and what is cut of it to knot over their ends."""
    lengths = {part: ask.of(part, "thread_in_all") for part in parts}
    return total(f"{name}.needed", LENGTH, [*lengths.values(), *cords_of_knots(lengths, ask)])


def thread_on_hand(spool: Part, ask: Quantities) -> Quantity:
    """Thread in the lines of supplies, mm; raises Missing."""
    lines = supply_lines(ask.plan, "thread", spool.name)
    if not lines:
        raise Missing(f"a line `{{thread: {spool.name}, spools: ...}}` under `supplies`")
    return total(f"{spool.name}.on hand", LENGTH, [_wound(spool, line) for line in lines])


def _wound(spool: Part, line: Item) -> Quantity:
    length = one_spool(spool, line)
    return times(length, line.count("pieces", default=line.count("spools", default=1)))


# --- glue


def glue_needed(adhesive: Part, ask: Quantities) -> Quantity:
    """Glue for every joint, ml: of a glue that is stirred, all of its mixes.

    Each mix is twice what goes into its joints, since half stays on card and stick, and no less
    than can be measured out.
    """
    used = glue_used(ask.plan, adhesive)
    drops = drops_on_knots(adhesive, ask)
    if not used.mixes and drops is not None:
        return drops
    if not used.mixes:
        raise Missing(f"a step `{{do: glue, with: {adhesive.name}, ...}}`")
    held = total(
        f"{adhesive.name} in its joints",
        VOLUME,
        [*_in_joints(used, ask), *([drops] if drops else [])],
    )
    if not used.stirred:
        return held
    return derived(
        f"{adhesive.name}.needed",
        VOLUME,
        lambda mixes, least, joints: mixes * most(least, to_mix(joints / mixes)),
        mixes=exact("mixes", used.mixes),
        least=_limit("smallest mix", ask),
        joints=held,
    )


def _in_joints(used: GlueUsed, ask: Quantities) -> Iterator[Quantity]:
    for part, layer, count in used.films:
        yield times(ask.of(part, f"glue_on_{layer}"), count)
    if not (used.ends or used.films or used.stirred):
        raise Missing(f"a cap with a `bore` that `{used.adhesive.name}` holds")
    for end, count in used.ends:
        yield times(_in_one(end, ask), count)


def _in_one(end: GluedEnd, ask: Quantities) -> Quantity:
    """Glue in one cap, ml: the sleeve round an end that is taken as solid."""
    return derived(
        f"glue in `{end.cap.name}`",
        VOLUME,
        lambda bore, end, depth: joint_volume(bore, end, depth) / 1000,
        bore=ask.of(end.cap, "bore"),
        end=ask.of(end.rope, end_in_cap(end.rope, end.cap, ask)),
        depth=ask.of(end.cap, "depth"),
    )


def glue_on_hand(adhesive: Part, ask: Quantities) -> Quantity:
    """Glue in the lines of supplies, ml; raises Missing."""
    lines = supply_lines(ask.plan, "part", adhesive.name)
    if not lines:
        raise Missing(f"a line `{{part: {adhesive.name}, volume: ...}}` under `supplies`")
    return total(f"{adhesive.name}.on hand", VOLUME, [_in_bottles(line) for line in lines])


def _in_bottles(line: Item) -> Quantity:
    if not line.has("volume"):
        raise Missing(f"`volume` in the line of `{line.name}` under `supplies`")
    return times(
        line.volume("volume"), line.count("packs", default=1) * line.count("count", default=1)
    )


# --- what is cut to its length: cord, core and wire


def wire_of(part: Part, ask: Quantities) -> Quantity:
    """Wire cut for one link, mm: as it is written, or as its beads and loops need."""
    return ask.of(part, "length" if part.has("length") else "needed")


def lengths_on_hand(part: Part, ask: Quantities) -> Quantity:
    """Cord, core or wire in the lines of supplies, mm; none where there is no line."""
    lines = supply_lines(ask.plan, "part", part.name)
    lengths = [times(line.length("length"), line.count("pieces", default=1)) for line in lines]
    return total(f"{part.name}.on hand", LENGTH, lengths)


OF_BEAD: dict[str, Callable[[Bead, Quantities], Quantity]] = {
    "needed": _beads_needed,
    "spare": _spare,
    "packs_wanted": _packs_wanted,
    "on_hand": _beads_on_hand,
}
OF_PART: dict[str, Formula] = {"thread_in_all": thread_in_all}
