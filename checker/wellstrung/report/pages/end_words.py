"""How the ends of a line are made, in sentences for a student: knots, tips, crimps, thread ends."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import suppress

from wellstrung.common.wording import article, hours
from wellstrung.model.beads import held_by_crimps
from wellstrung.model.item import Missing
from wellstrung.model.parts import Part, Role
from wellstrung.model.plan import Plan, RunEntry, Step
from wellstrung.quantity.value import Quantity
from wellstrung.quantity.working import number
from wellstrung.report.pages.cut_words import Bench
from wellstrung.report.pages.held_words import pressed
from wellstrung.report.pages.making_words import made
from wellstrung.report.pages.round_words import about
from wellstrung.report.terminal import counted
from wellstrung.subjects import run
from wellstrung.subjects.base import Eyes, side_facing
from wellstrung.work import minutes
from wellstrung.work.minutes import times_done

#: how a line ends in its own beads: common practice, no source
BACK = "Knot it round the other line, go back through the next bead, and so on: trim it after three"


def _reckoned(step: Step, at: Bench) -> Quantity | None:
    """How often a step does its work, from the beads or the thread of its part."""
    with suppress(Missing):
        return minutes.counted(step, at.result.ask.quantities) if at.result.ask else None
    return None


def finish_thread(step: Step, at: Bench) -> Iterator[str]:
    """The ends of every piece of thread that was cut, or as many as the author wrote."""
    part, ends = step.parts["part"], times_done(at.plan, step)
    if not part.takes("thread"):
        yield f"Bind {counted(ends, 'end')} of `{part.name}`, and trim what stands out"
        return
    if _reckoned(step, at) is not None:
        said = f"the 2 ends of each piece of thread of `{part.name}`"
    else:
        said = f"{counted(ends, 'thread end')} of `{part.name}`"
    yield f"Take {said} back through the beads"
    yield "Turn once or twice on the way; when it holds to a pull, cut it close to a bead"


def knot(step: Step, at: Bench) -> Iterator[str]:
    """The knots of a strand, and how it is strung where no step before does that."""
    part, times = step.parts["part"], times_done(at.plan, step)
    if part.traits.slides:
        yield from _sliding(part, at)
        return
    if at.plan.steps_that("string", "knot", part=part)[:1] == [step]:
        yield from made(part, at)
    if cups := _tied_before(at.plan).intersection(at.plan.met[part]):
        for tip in sorted(cups, key=lambda one: one.name):
            yield from _into_cup(tip, max(1, times // len(cups)))
    elif _is_knotted(part):
        knots = _reckoned(step, at)
        many = counted(times, "knot") if knots is None else f"{about(knots)} knots"
        last = (
            "; those of the last three beads at an end come last" if _coils(part, at.plan) else ""
        )
        yield f"Tie {many} in `{part.name}`, one between two beads, tight{last}"
    else:
        yield f"Tie {counted(times, 'knot')} in `{part.name}` and pull tight"
    yield from brought_back(step, at)
    for tip in dict.fromkeys(minutes.tips_knotted(at.plan, part)):
        yield f"An end knot lies in the cup of `{tip.name}`, which is then closed over it"
    glue = step.parts.get("with")
    if glue is not None:
        drop = f"Put a drop of `{glue.name}` on {each_of(times)} with the tip of a pin"
        yield f"{drop}, and wipe off the rest"
        cure = at.known(glue, "full_cure")
        if cure is not None:
            yield f"It has its full strength after {hours(cure.likely.high, days=True)}"


def brought_back(step: Step, at: Bench) -> Iterator[str]:
    """How a line goes through its coils of French wire and back, when all is strung and knotted.

    How often it is knotted on its way back: common practice, no source.
    """
    strand = step.parts["part"]
    if at.plan.steps_that("string", "knot", part=strand)[-1] is not step:
        return
    coils = _coils(strand, at.plan)
    for sleeve in dict.fromkeys(join.sleeve for join in coils):
        long = at.known(sleeve, "length")
        each = f", {number(long.middle)} mm," if long is not None else ""
        loops = [join.loop for join in coils if join.sleeve is sleeve]
        words = [one.words if isinstance(one, Eyes) else f"`{one.name}`" for one in loops]
        end = "At each end" if len(loops) > 1 else "There"
        yield f"{end} string a piece of `{sleeve.name}`{each} after the last bead"
        through = " or ".join(dict.fromkeys(words))
        yield f"Take coil and line through {through}, and the line back through the last bead"
        yield "Pull until the coil closes to a small loop and no line shows"
    if coils:
        yield BACK


def _coils(strand: Part, plan: Plan) -> list[run.LineInSleeve]:
    """The coils of French wire that the line of a strand goes through."""
    joins = (one for one in run.joins(plan) if isinstance(one, run.LineInSleeve))
    return [one for one in joins if strand in one.strands]


def side_words(one: RunEntry, *, onwards: bool = False) -> str:
    """What a place in the run is met by, as it is called: an eye, or a ring."""
    side = side_facing(one, onwards=onwards)
    return side.words if isinstance(side, Eyes) else f"`{one.called}`"


def _is_knotted(strand: Part) -> bool:
    """Whether a strand is knotted between its beads."""
    return strand.stitch is not None and bool(strand.stitch.knot)


def _sliding(clasp: Part, at: Bench) -> Iterator[str]:
    """Knots that slide along the cord ends, and how they are tried: common practice, no source."""
    turns = counted(clasp.count("sliding", "turns", default=4), "turn")
    yield "Lay the two ends of the cord over each other, so that they point past each other"
    if clasp.count("sliding", "knots", default=2) > 1:
        yield f"Take one end round both cords in {turns}, and back through them under the turns"
        yield "Draw it tight enough to hold, loose enough to slide; tie the other end the same way"
    else:
        cord = at.known(clasp, "cord")
        yield f"Cut {at.long(cord.middle)} of cord for the knot" if cord else "Cut a cord for it"
        yield f"Tie it over both ends in {turns.replace('turn', 'square knot')}, and trim it"
        yield "Tie a stopper knot in each end of the cord"
    yield "Slide it wide and shut a few times, and only then trim the ends"


def first_end(coil: Part, plan: Plan) -> Iterator[str]:
    """What is done to one end of memory wire before it is strung: common practice."""
    yield "File both cut ends smooth"
    if any(end.kind.role is Role.CAP for end in plan.met[coil]):
        yield "Stop one of them with tape or a clip, or the beads run off as you string"
    else:
        yield "Turn a loop in one of them first, or the beads run off as you string"


def into_ball(cap: Part, coil: Part, joints: int) -> Iterator[str]:
    """How balls or caps are glued on memory wire: common practice, several pages seen."""
    deep = f", {cap.text('depth')} deep" if cap.has("depth") else ""
    each = counted(joints, "end")
    yield f"Roughen {each} of `{coil.name}` with abrasive paper{deep}, and wipe off dust and grease"
    yield f"With a pin put a little glue in the hole of {many_of(cap, joints)}, and on the wire"
    yield f"Push {each} in to the floor of the hole, and wipe off what comes out"


def coil_loops(coil: Part, times: int) -> Iterator[str]:
    """The loops at the ends of memory wire: common practice, several pages seen."""
    yield f"Grip the filed tip of `{coil.name}` with the round pliers"
    yield f"Turn {counted(times, 'loop')}, each outward, against the curve of the coil, and shut it"
    yield "Push the beads up to the loop, so that no bare wire is left beside it"


def crimp(step: Step, at: Bench) -> Iterator[str]:
    """A crimp on its line, a bead tip over its knot or its crimp, an end pressed on what it holds.

    How each is closed, and with which pliers: common practice, no source.
    """
    part, to, times = step.parts["part"], step.parts.get("to"), times_done(at.plan, step)
    if part.kind.role is Role.TIP:
        yield from _tip(part, times, at.plan)
    elif tips := [tip for tip in at.plan.parts.values() if tip.part("covers") is part]:
        for tip in tips:
            yield from _into_cup(tip, times // len(tips))
    elif part in (held := {held_by_crimps(one): one for one in at.plan.in_run}) and part not in (
        end.part for end in at.plan.run
    ):
        yield from pressed(part, held[part])
        yield from _covered(part, times)
    elif part.kind.role is Role.CRIMP:
        line = f"the line of `{to.name}`" if to is not None else "the line"
        yield f"Take {line} through `{part.name}`, through the eye behind it, and back through it"
        tried = f"try {each_of(times)} with a pull"
        yield f"Close {many_of(part, times)} with crimping pliers, and {tried}"
        yield from _covered(part, times)
    elif part.traits.cups:
        yield from _over_cups(part, to, times)
    else:
        end = f"the end of `{to.name}`" if to is not None else "the end"
        yield f"Lay {end} into {many_of(part, times)}, as far as it goes"
        yield f"Press {each_of(times)} shut with flat pliers, and try {each_of(times)} with a pull"
    if to is not None and to.has("thread", "tail"):
        yield f"Hide the tail of {to.text('thread', 'tail')} in the beads as far as it goes"


def _over_cups(end: Part, to: Part | None, times: int) -> Iterator[str]:
    """The last cup in its end: the order of the tabs is common practice, no source."""
    of = f" of `{to.name}`" if to is not None else ""
    yield f"Lay the last cup{of} into {many_of(end, times)}, stone up, its link towards the chain"
    yield "Fold the tabs over the cup with flat-nose pliers, two that face each other first"
    yield f"Press on the metal, never on the stone, and try {each_of(times)} with a pull"


def _tip(tip: Part, times: int, plan: Plan) -> Iterator[str]:
    inside = tip.part("covers")
    pressed_before = plan.steps_that("crimp", part=inside) if inside is not None else []
    if not pressed_before and tip not in _tied_before(plan):
        yield from _into_cup(tip, times)
    yield "Trim the line, and shut the cup with chain-nose pliers"
    ahead = dict.fromkeys(near for one, near in plan.meetings if one.part is tip)
    held = [near for near in ahead if near.part.kind.role is not Role.STRAND]
    if held and all(plan.steps_that("close ring", part=near.part) for near in held):
        yield "Roll its hook with round-nose pliers into a loop that is shut"
        return
    onto = " or ".join(sorted({f"`{near.called}`" for near in held}))
    yield f"Roll its hook shut round {onto or 'the ring'} with round-nose pliers"


def _into_cup(tip: Part, times: int) -> Iterator[str]:
    """How a line is held in the cup of a bead tip: by a crimp, or by a knot."""
    inside, knot_ = tip.part("covers"), tip.text("covers") if tip.has("covers") else ""
    hole = f"the hole of {'each ' if times > 1 else ''}`{tip.name}`"
    yield f"Take the line out through {hole}, into the cup"
    if inside is not None:
        yield f"String `{inside.name}` in the cup, draw the line tight, and press the crimp"
    else:
        what = f"{article(knot_)} knot" if knot_ else "a knot that the hole holds back"
        yield f"Tie {what} in the cup, and draw it down to the hole"


def _tied_before(plan: Plan) -> set[Part]:
    """The tips whose knots a step ties in the strand, which has no others: between its beads."""
    return {
        end.part
        for end, inner in plan.meetings
        for strand in inner.parts
        if end.part.kind.role is Role.TIP and end.part.part("covers") is None
        if not _is_knotted(strand) and plan.steps_that("knot", part=strand)
    }


def many_of(part: Part, count: int) -> str:
    """A part by its name, and how many of it where there are several."""
    return f"`{part.name}`" if count == 1 else f"{count} of `{part.name}`"


def each_of(count: int) -> str:
    """What stands for a part that was named before, or for each of several."""
    return "it" if count == 1 else "each"


def _covered(crimp: Part, times: int) -> Iterator[str]:
    """The cover that hides a crimp."""
    if (cover := crimp.part("cover")) is not None:
        yield f"Lay {each_of(times)}, folded round, into its `{cover.name}`"
        yield f"Close {each_of(times)} with chain-nose pliers until the edges meet, as a ball"
