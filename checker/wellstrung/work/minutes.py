"""How long hands take for each step: as the plan writes (`takes:`), or by the bench's rates."""

from __future__ import annotations

from collections import Counter

from wellstrung.common.cache import cached
from wellstrung.derived.amounts import threads_of
from wellstrung.derived.embellished import beads_worked
from wellstrung.derived.learnt import of_rate
from wellstrung.derived.of_plan import Quantities
from wellstrung.formulas.arithmetic import most
from wellstrung.model.beads import apart, held_by_crimps, holds
from wellstrung.model.item import Missing
from wellstrung.model.parts import Part, Role
from wellstrung.model.plan import Plan, Step
from wellstrung.quantity.arithmetic import derived, exact, leaf, product, times
from wellstrung.quantity.causes import Cause, Spread
from wellstrung.quantity.value import Quantity
from wellstrung.reading.settings import BEADS_PER_MINUTE, RATE_SPREAD, RATES
from wellstrung.subjects.counts import how_many, hung_in_all, woven_of

#: Verbs whose time is beads over a rate; the others have a rate by their own name.
_BEADING = {"weave": "weaving", "edge": "weaving", "string": "stringing"}
#: Verbs that may string the legs of a fringe, and the rate of these.
_LEGS, _FRINGE = ("string", "hang", "sew"), "fringe"
#: Verbs that take no time of the maker's hands: the piece waits, or is done.
_IDLE = frozenset({"wait", "wear"})
#: Fields that say how often a step does its work.
_COUNTS = ("ends", "joints", "times")


def minutes_of(step: Step, ask: Quantities) -> Quantity:
    """Minutes of hands of a step at the maker's pace, for every piece that the plan makes.

    Raises Missing if the plan does not say.
    """
    return times(_for_one_piece(step, ask), ask.plan.makes)


def _for_one_piece(step: Step, ask: Quantities) -> Quantity:
    plan, name = ask.plan, f"step {step.number} ({step.verb})"
    if step.has("takes"):
        node = step.node.entries["takes"].node
        written = str(node.value)
        return leaf(name, step.minutes("takes"), "min", place=node.place, spelling=written)
    if step.verb in _IDLE:
        return exact(name, 0.0, "min")
    part = step.parts.get("part")
    if part is not None and step.verb == part.traits.made_by and woven_of(part) is not None:
        rings = times(ask.of(part, "rings"), times_done(plan, step))
        return product(name, "min", rings, rate_of(plan, "close ring"), pace(plan, "maker"))
    if part is not None and (rate := _beading_rate(plan, part, step)):
        pieces = times_done(plan, step)
        return derived(
            name,
            "min",
            lambda beads, rate, pace: beads / rate * pace,
            beads=times(_beads_of(step, part, ask), pieces),
            rate=rate_of(plan, rate),
            pace=pace(plan, "maker"),
        )
    if step.verb not in plan.bench.rates:
        raise Missing(f"`takes` of step {step.number}")
    count = counted(step, ask) or exact(f"{name} count", times_done(plan, step))
    return product(name, "min", count, rate_of(plan, step.verb), pace(plan, "maker"))


def _beads_of(step: Step, part: Part, ask: Quantities) -> Quantity:
    """The beads that a step works: an edge may have a step of its own, and is then not woven."""
    if step.verb == "edge":
        return ask.of(part, "edging_beads")
    worked = beads_worked(part, ask)
    if step.verb != "weave" or not ask.plan.steps_that("edge", part=part):
        return worked
    return derived(
        f"{part.name}.beads without its edge",
        "",
        lambda worked, edging: worked - edging,
        worked=worked,
        edging=ask.of(part, "edging_beads"),
    )


def counted(step: Step, ask: Quantities) -> Quantity | None:
    """How often a step does its work, where that follows from the beads or the thread of its part.

    These are the knots of a strand that is knotted all along, and the ends of the threads of what
    is woven; None where the plan writes a count, or nothing is known to count by.
    """
    part = step.parts.get("part")
    if part is None or any(step.get(name) is not None for name in _COUNTS):
        return None
    if step.verb == "knot" and part.stitch is not None and part.stitch.knot:
        return derived(
            f"knots of {part.name}",
            "",
            lambda beads, ends: most(0, beads - 1) + ends,
            beads=ask.of(part, "beads"),
            ends=exact("knots in the cups of tips", len(tips_knotted(ask.plan, part))),
            source="one between every two beads, and one in each tip: counting",
        )
    if step.verb == "finish thread" and part.has("thread"):
        return times(threads_of(part, ask), 2)
    return None


def tips_knotted(plan: Plan, strand: Part) -> list[Part]:
    """The tips at the ends of a strand whose knots no step of the tips ties, end by end."""
    return [
        end.part
        for end, inner in plan.meetings
        if inner.part is strand and end.part.kind.role is Role.TIP
        if end.part.part("covers") is None and not plan.steps_that("crimp", part=end.part)
    ]


def times_done(plan: Plan, step: Step) -> int:
    """How often a step does its work: as written, or as the run and the hung parts need it."""
    written = next((count for name in _COUNTS if (count := step.get(name)) is not None), None)
    if written is not None:
        return int(written)
    part = step.parts.get("part")
    if step.verb == "finish thread":
        return 2
    if step.verb in ("cut", "hang") or _beads_a_leg(plan, step):
        return sum(hung_in_all(plan, line)[0] for line in plan.hung if line.part is part) or 1
    if step.verb == "knot" and part is not None and apart(part) and not held_by_crimps(part):
        return holds(part)
    if step.verb == "close ring" and not step.has("around"):
        return _rings_closed(plan, step) or 1
    if part is not None and step.verb == part.traits.made_by:
        alone = _steps_by_part(plan)[step.verb, part] == 1
        return how_many(plan, part) // plan.makes if alone else 1
    return 1


@cached
def _steps_by_part(plan: Plan) -> Counter[tuple[str, Part | None]]:
    """How many steps do the same to the same part."""
    return Counter((step.verb, step.parts.get("part")) for step in plan.steps)


def pace(plan: Plan, whose: str) -> Quantity:
    """How many times as long as by the rates the maker takes, or a student as the maker."""
    return plan.cache.get(_pace, plan, whose)


def _pace(plan: Plan, whose: str) -> Quantity:
    value, unit, reason, span = plan.bench.paces[whose]
    name, spreads = f"pace of the {whose}", []
    if span is not None:
        cure = f"time a class and write `paces: {{{whose}: {value:g}}}` in bench.yaml"
        spreads = [Spread(Cause(name, "", cure), value - span.low, span.high - value)]
    found = leaf(name, value, unit, spreads, source=reason, choice=span)
    return of_rate(found, plan.bench)


def _beading_rate(plan: Plan, part: Part, step: Step) -> str | None:
    """The rate of a step that takes its time bead by bead; None where it goes by the piece."""
    if _beads_a_leg(plan, step):
        return _FRINGE
    name = part.stitch.name if part.stitch is not None and step.verb == "weave" else ""
    return name if name in plan.bench.rates else _BEADING.get(step.verb)


def _beads_a_leg(plan: Plan, step: Step) -> bool:
    """Whether a step strings the legs of a fringe: the first that works on them."""
    leg = step.parts.get("part")
    if leg is None or leg.kind.role is not Role.DROP:
        return False
    return plan.steps_that(*_LEGS, part=leg)[:1] == [step]


def rate_of(plan: Plan, name: str) -> Quantity:
    """A rate; one from memory may be far off, one of the maker's own is taken as it is."""
    setting, spreads = plan.bench.rates[name], []
    from_memory = setting == RATES.get(name, RATES["weaving"])
    if from_memory:
        wide = RATE_SPREAD * setting.value
        example = "9 beads per min" if setting.unit == BEADS_PER_MINUTE else "4 min"
        cure = f"time your own and write `rates: {{{name}: {example}}}` in bench.yaml"
        spreads = [Spread(Cause(f"rate of {name}", "", cure), wide, wide)]
    found = leaf(
        f"rate of {name}",
        setting.value,
        setting.unit,
        spreads,
        source=setting.reason,
        grade="from memory" if from_memory else "",
    )
    return of_rate(found, plan.bench)


def _rings_closed(plan: Plan, step: Step) -> int:
    """The rings of the run that a step closes: between the parts it joins, or all of them."""
    closed = 0
    for entry, (behind, ahead) in plan.with_neighbours():
        beside = {near.called for near in (*behind, *ahead)}
        if entry.part is step.parts.get("part") and set(step.joins) <= beside:
            closed += entry.pieces
    return closed
