"""Every join of the piece with the steps that make it: a ring is closed, a cap glued, a clasp sewn.

Two places that meet in the run are joined by what stands between them: an open ring by being
closed, a crimp by being pressed, a wire by its loops, a rope's end by glue or thread. A join that
can be made in more than one way counts as made by any of them.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

from wellstrung.common.cache import cached
from wellstrung.common.wording import in_yaml
from wellstrung.model.parts import WOVEN_WORK, Part, Role
from wellstrung.model.plan import Hung, Plan, RunEntry, Step
from wellstrung.subjects.base import Subject, opens, side_facing
from wellstrung.subjects.chain import of_cups


class JoinAtWork(Subject, frozen=True):
    """A join, what the plan says of it, the steps that make it, and a step that would.

    `does` is what such a step does to it, in words; `line` the step as it would be written, where
    all of it is known.
    """

    joined: tuple[Part, ...]
    words: str
    does: str
    line: str
    made: tuple[Step, ...]

    @property
    def parts(self) -> tuple[str, ...]:
        """What is joined, as often as it stands there."""
        return tuple(part.name for part in self.joined)


def find(plan: Plan) -> Iterator[JoinAtWork]:
    """Every join of a plan that has steps, in the order of run and hung; once for each step."""
    found: dict[object, JoinAtWork] = {}
    for join in every(plan) if plan.steps else ():
        found.setdefault(join.line or frozenset(join.parts), join)
    yield from found.values()


@cached
def every(plan: Plan) -> Sequence[JoinAtWork]:
    """Every join of a plan at each of its places, in the order of run and hung."""
    steps = _Steps(plan)
    return (*_rings(plan, steps), *_met(plan, steps), *_loop(plan), *hung(plan))


#: parts made of thread and beads, which thread can sew to something
_SOFT = WOVEN_WORK | {Role.STRAND, Role.DROP}


class _Steps:
    """The steps of a plan by the parts they name, and the wires by the cones they run through."""

    def __init__(self, plan: Plan) -> None:
        self._naming: dict[str, list[Step]] = {}
        for step in plan.steps:
            for name in _named(step):
                self._naming.setdefault(name, []).append(step)
        self.through: dict[str, list[Part]] = {}
        for part in plan.parts.values():
            cone = part.part("over")
            if cone is not None:
                self.through.setdefault(cone.name, []).append(part)

    def about(self, *names: str) -> list[Step]:
        """Every step that names one of these parts, in their order."""
        found = {step.number: step for name in names for step in self._naming.get(name, ())}
        return [found[number] for number in sorted(found)]


def _named(step: Step) -> set[str]:
    """The parts that a step names."""
    named = {part.name for field, part in step.parts.items() if field != "with"}
    return named | {name.partition(".")[0] for name in step.joins}


def _does(step: Step, verb: str, part: Part) -> bool:
    return step.verb == verb and step.parts.get("part") is part


def _can_open(part: Part) -> bool:
    return part.kind.role is Role.RING and bool(opens(part))


def _rings(plan: Plan, steps: _Steps) -> Iterator[JoinAtWork]:
    """Rings of the run that open, place by place: closed there, or by a step for all of them."""
    places: dict[Part, list[tuple[RunEntry, list[RunEntry]]]] = {}
    for entry, (behind, ahead) in plan.with_neighbours():
        if (behind or ahead) and (_can_open(entry.part) or _shut_in(entry, behind, ahead)):
            places.setdefault(entry.part, []).append((entry, [*behind, *ahead]))
    for ring, stands in places.items():
        if ring.traits.opens and not ring.traits.gapes:
            yield from _put_on(ring, stands, steps)
            continue
        closing = [
            step for step in plan.steps_that("close ring", part=ring) if not step.has("around")
        ]
        if not closing and len(stands) > 1:
            words = f"ring `{ring.name}` stands in {len(stands)} places of the run"
            line = f"{{do: close ring, part: {in_yaml(ring.name)}}}"
            yield JoinAtWork(stands[0][0].place, (ring,), words, "closes it", line, ())
            continue
        for entry, beside in stands:
            yield _ring(entry, beside, closing, alone=len(stands) == 1)


def _put_on(
    ring: Part, stands: list[tuple[RunEntry, list[RunEntry]]], steps: _Steps
) -> Iterator[JoinAtWork]:
    """A ring that closes by itself, as a split ring does: it is put on, by any step that names it.

    Such a step does for every place where it stands.
    """
    entry, beside = stands[0]
    onto = next((near.part.name for near in beside), "")
    line = f"{{do: hang, part: {in_yaml(ring.name)}, from: {in_yaml(onto)}}}" if onto else ""
    words = f"ring `{ring.name}` stands in the run"
    made = [step for step in steps.about(ring.name) if step.verb in _PUTS_ON]
    yield JoinAtWork(entry.place, (ring,), words, "puts it on", line, tuple(made))


_PUTS_ON = ("hang", "close ring", "slide", "sew", "crimp", "glue", "knot")


def _shut_in(entry: RunEntry, behind: tuple[RunEntry, ...], ahead: tuple[RunEntry, ...]) -> bool:
    """Whether a ring that does not open meets what does not open either: it has to be another.

    The one that takes its place is to be closed.
    """
    if entry.part.kind.role is not Role.RING:
        return False
    met = [side_facing(near, onwards=True) for near in behind] + [
        side_facing(near) for near in ahead
    ]
    return entry.linked > 1 or any(side is not None and opens(side) is False for side in met)


def _ring(
    entry: RunEntry, beside: list[RunEntry], closing: list[Step], *, alone: bool
) -> JoinAtWork:
    """One place where rings stand, and the steps that close them there."""
    name, called = entry.part.name, [near.called for near in beside]
    made = tuple(step for step in closing if set(step.joins) <= set(called))
    where = f"between {' and '.join(f'`{near}`' for near in called)}"
    one = f"ring `{name}` stands" if entry.linked == 1 else f"{entry.linked} of `{name}` stand"
    joins = "" if alone else f", joins: [{', '.join(map(in_yaml, called))}]"
    return JoinAtWork(
        entry.place,
        (entry.part, *(near.part for near in beside)),
        f"{one} {where if len(called) > 1 else f'at `{called[0]}`' if called else 'alone'}",
        "closes it" if entry.linked == 1 else "closes them",
        f"{{do: close ring, part: {in_yaml(name)}{joins}}}",
        made,
    )


def _met(plan: Plan, steps: _Steps) -> Iterator[JoinAtWork]:
    """Places of the run that meet with no ring between them that would be closed."""
    for before, after in plan.neighbours:
        if _can_open(before.part) or _can_open(after.part):
            continue  # reported as rings
        if before.half and after.half and before.part is after.part:
            continue  # the halves of a clasp, which is worn closed
        sides = ((before, after), (after, before))
        ways = [
            (one, other, way)
            for one, other in sides
            if (way := _way(one.part, other, steps)) is not None
        ]
        if not ways and (hooked := _hooked(before, after)) is not None:
            ways = [(before, after, hooked)]
        if not ways:
            continue
        one, other, (does, line, _) = ways[0]
        words = f"`{one.called}` and `{other.called}` meet in the run"
        inside = one.part.part("covers")
        names = [part.name for part in (one.part, *other.parts, *([inside] if inside else []))]
        names += [wire.name for wire in steps.through.get(one.part.name, [])]
        made = tuple(
            step for step in steps.about(*names) if any(makes(step) for *_, (*_, makes) in ways)
        )
        yield JoinAtWork(one.place, (one.part, *other.parts), words, does, line, made)


_Way = tuple[str, str, Callable[[Step], bool]]


def _way(part: Part, other: RunEntry, steps: _Steps) -> _Way | None:
    """How a part is joined to its neighbour, where that is for the part to say."""
    if part.traits.on_wire:
        return _wrapped(part, other)
    if part.kind.role is Role.CRIMP:
        return _crimped(part)
    if part.kind.role is Role.SLEEVE:
        if other.part.kind.role is not Role.STRAND:
            return None
        return "strings it on", f"{{do: string, part: {other.part.name}}}", _strings(part, other)
    if part.kind.role is Role.CONE:
        return _in_cone(part, other, steps.through.get(part.name, []))
    if part.kind.role is Role.CAP and (other.part.kind.role in _SOFT or of_cups(other.part)):
        pressed = part.traits.pressed
        does = "presses it on" if pressed else "glues or sews them together"
        line = f"{{do: crimp, part: {in_yaml(part.name)}}}" if pressed else ""
        verbs = ("glue", "sew", *(("crimp",) if pressed else ()))
        return does, line, _naming(part, other, verbs)
    if part.kind.role is Role.TIP and other.part.kind.role is Role.STRAND:
        return _in_tip(part, other)
    strung = any(eye.strung for eye in part.kind.eyes.values())
    if strung or other.part.kind.role not in _SOFT:
        return None  # strung through; or for the other to say; or two eyes meet
    return _sewn(part, other)


def _strings(part: Part, other: RunEntry) -> Callable[[Step], bool]:
    """A coil of French wire is strung on with its beads, or drawn over the line as it is tied."""
    sewn = _naming(part, other, ("sew", "knot"))
    return lambda step: sewn(step) or any(_does(step, "string", one) for one in other.parts)


def _crimped(crimp: Part) -> _Way:
    line = f"{{do: crimp, part: {crimp.name}}}"
    return "presses the crimp", line, lambda s: _does(s, "crimp", crimp)


def _in_cone(cone: Part, other: RunEntry, over: list[Part]) -> _Way:
    """A cone is held by a wire that runs through it, or is sewn or knotted to its strands."""
    sewn = _naming(cone, other, ("sew", "glue", "knot", "crimp"))
    line = f"{{do: wrap loop, part: {over[0].name}}}" if over else ""
    does = "turns the loops of its wire" if over else "sews or knots them together"

    def makes(step: Step) -> bool:
        return sewn(step) or any(_does(step, "wrap loop", wire) for wire in over)

    return does, line, makes


def _wrapped(link: Part, other: RunEntry) -> _Way:
    line = f"{{do: wrap loop, part: {link.name}}}"
    named = _naming(link, other, ("hang",))
    return ("turns its loops", line, lambda s: _does(s, "wrap loop", link) or named(s))


def _in_tip(tip: Part, other: RunEntry) -> _Way:
    """What a bead tip covers holds the strand: a knot, or a crimp."""
    crimp = tip.part("covers")
    if crimp is not None:
        return _crimped(crimp)
    tied = _naming(tip, other, ("knot", "sew", "glue"))
    line = "" if other.beside else f"{{do: knot, part: {other.part.name}}}"
    return "ties the knot that it covers", line, tied


def _sewn(part: Part, other: RunEntry) -> _Way:
    soft, wire = other.part, other.part.thread.steel
    sewn = _naming(part, other, ("sew", "crimp", "glue", "hang", *(("wrap loop",) if wire else ())))
    # the knots of a strand that is knotted all along stand between its beads
    tied = soft.kind.role is Role.STRAND and (soft.stitch is None or not soft.stitch.knot)
    end = part.traits.band_end
    if part.traits.slides:
        line = f"{{do: knot, part: {in_yaml(part.name)}}}"
        return "ties its knots", line, lambda step: sewn(step) or _does(step, "knot", part)
    verb = end.joined_by if end is not None else "sew"
    if soft.part("started_on") is part:
        line = f"{{do: weave, part: {soft.name}}}"
        return "weaves it on", line, lambda step: _does(step, "weave", soft) or sewn(step)
    line = "" if other.beside or wire else f"{{do: {verb}, part: {part.name}, to: {soft.name}}}"

    def makes(step: Step) -> bool:
        return sewn(step) or (tied and _does(step, "knot", soft))

    if wire:
        return "crimps the wire or turns a loop in it", line, makes
    return "sews or ties them together" if verb == "sew" else "presses it on", line, makes


def _hooked(before: RunEntry, after: RunEntry) -> _Way | None:
    """Two eyes meet, or an eye and a closed ring: one opens to take the other in."""
    if Role.SLEEVE in (before.part.kind.role, after.part.kind.role):
        return None  # a coil goes through the eye as it is strung
    meeting = (side_facing(before, onwards=True), side_facing(after))
    if not any(side is not None and opens(side) for side in meeting):
        return None  # nothing opens, or nobody says what does: for another rule to say
    line = f"{{do: hang, part: {after.part.name}, from: {before.part.name}}}"
    return "hangs one from the other", line, _naming(before.part, after, ("hang", "close ring"))


def _naming(part: Part, other: RunEntry, verbs: tuple[str, ...]) -> Callable[[Step], bool]:
    """Whether a step with one of these verbs joins the two: it names both, or one and no other."""
    others = {beside.name for beside in other.parts}

    def names(step: Step) -> bool:
        named = _named(step)
        both = part.name in named and bool(named & others)
        return step.verb in verbs and (
            both or named == {part.name} or (bool(named) and named <= others)
        )

    return names


def _loop(plan: Plan) -> Iterator[JoinAtWork]:
    """A run of one part alone that meets itself: a strand is knotted, a band sewn, metal ringed."""
    if not plan.is_loop or len(plan.run) != 1:
        return
    entry = plan.run[0]
    verb = "knot" if entry.part.kind.role is Role.STRAND else "sew"
    verbs = ("knot", "sew", "crimp", "glue")
    line, does = f"{{do: {verb}, part: {entry.part.name}}}", f"{verb}s it"
    if entry.part.kind.role not in _SOFT:
        line, verbs = "", ("close ring", "wrap loop", "crimp", "glue")
        does = f"closes a ring between its ends, last in `run` as in `[{entry.part.name}, ring]`"
    made = plan.steps_that(*verbs, part=entry.part)
    words = f"the run closes on itself where `{entry.part.name}` meets its own beginning"
    yield JoinAtWork(entry.place, (entry.part,), words, does, line, tuple(made))


def hung(plan: Plan) -> Iterator[JoinAtWork]:
    """Every line of `hung`, with the steps that hang it."""
    steps = _Steps(plan)
    for line in plan.hung:
        by = f", by: {line.by.name}" if line.by is not None else ""
        step = f"{{do: hang, part: {line.part.name}, from: {line.source.name}{by}}}"
        words = f"`{line.part.name}` hangs from `{line.source.name}`"
        names = (line.part.name, *((line.by.name,) if line.by is not None else ()))
        made = tuple(step for step in steps.about(*names) if _hangs(step, line))
        parts = (line.part, line.source)
        yield JoinAtWork(line.place_of("part"), parts, words, "hangs it there", step, made)


def _hangs(step: Step, line: Hung) -> bool:
    """Whether a step hangs what a line hangs, or brings or closes the ring that carries it."""
    part, source, by = step.parts.get("part"), line.source, line.by or line.part
    if step.verb == "sew":
        return {part, step.parts.get("to")} in ({line.part, source}, {line.part, None})
    if step.verb == "hang":
        return part is line.part and step.parts.get("from") in (None, source)
    if step.verb == "slide":
        return part in (line.part, by) and step.parts.get("onto") is source
    if step.verb != "close ring" or part is not by:
        return False
    joins = {name.partition(".")[0] for name in step.joins}
    around = step.parts.get("around")
    return around in (None, source) and joins <= {line.part.name, source.name}
