"""How the ends of a line are made, in sentences for a student: knots, tips, crimps, thread ends."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import suppress

from wellstrung.common.wording import article, hours
from wellstrung.model.beads import held_by_crimps
from wellstrung.model.item import Missing
from wellstrung.model.parts import Part, Role
from wellstrung.model.plan import Plan, Step
from wellstrung.quantity.value import Quantity
from wellstrung.report.pages.cut_words import Bench
from wellstrung.report.pages.held_words import pressed
from wellstrung.report.pages.making_words import made
from wellstrung.report.pages.round_words import about
from wellstrung.report.terminal import counted
from wellstrung.work import minutes
from wellstrung.work.minutes import times_done


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
    if part.stitch is not None and part.stitch.knot:
        knots = _reckoned(step, at)
        many = counted(times, "knot") if knots is None else f"{about(knots)} knots"
        yield f"Tie {many} in `{part.name}`, one between two beads, tight"
    else:
        yield f"Tie {counted(times, 'knot')} in `{part.name}` and pull tight"
    for tip in dict.fromkeys(minutes.tips_knotted(at.plan, part)):
        yield f"An end knot lies in the cup of `{tip.name}`, which is then closed over it"
    glue = step.parts.get("with")
    if glue is not None:
        drop = f"Put a drop of `{glue.name}` on {each_of(times)} with the tip of a pin"
        yield f"{drop}, and wipe off the rest"
        cure = at.known(glue, "full_cure")
        if cure is not None:
            yield f"It has its full strength after {hours(cure.likely.high, days=True)}"


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


def crimp(step: Step, at: Bench) -> Iterator[str]:
    """A crimp on its line, a bead tip over its knot or its crimp, an end pressed on what it holds.

    How each is closed, and with which pliers: common practice, no source.
    """
    part, to, times = step.parts["part"], step.parts.get("to"), times_done(at.plan, step)
    if part.kind.role is Role.TIP:
        yield from _tip(part, times, at.plan)
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
    else:
        end = f"the end of `{to.name}`" if to is not None else "the end"
        yield f"Lay {end} into {many_of(part, times)}, as far as it goes"
        yield f"Press {each_of(times)} shut with flat pliers, and try {each_of(times)} with a pull"
    if to is not None and to.has("thread", "tail"):
        yield f"Hide the tail of {to.text('thread', 'tail')} in the beads as far as it goes"


def _tip(tip: Part, times: int, plan: Plan) -> Iterator[str]:
    inside, knot_ = tip.part("covers"), tip.text("covers") if tip.has("covers") else ""
    hole = f"the hole of `{tip.name}`" if times == 1 else f"the hole of each `{tip.name}`"
    yield f"Take the line out through {hole}, into the cup"
    if inside is not None:
        yield f"String `{inside.name}` in the cup, draw the line tight, and press the crimp"
    else:
        what = f"{article(knot_)} knot" if knot_ else "a knot that the hole holds back"
        yield f"Tie {what} in the cup, and draw it down to the hole"
    yield "Trim the line, and shut the cup with chain-nose pliers"
    ahead = {near.called for one, near in plan.meetings if one.part is tip}
    rings = sorted(
        name for name in ahead if plan.parts[name.partition(".")[0]].kind.role is not Role.STRAND
    )
    onto = " or ".join(f"`{name}`" for name in rings)
    yield f"Roll its hook shut round {onto or 'the ring'} with round-nose pliers"


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
