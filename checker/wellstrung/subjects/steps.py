"""The bench steps: what each part needs done, and which step has to come before which."""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung.model.beads import held_by_crimps, holds
from wellstrung.model.item import Item
from wellstrung.model.parts import UNPLACED, Part, Role
from wellstrung.model.plan import Hung, Plan, Step
from wellstrung.subjects.base import (
    Eyes,
    Side,
    Subject,
    hanging_eyes,
    named,
    opens,
    shut_by_wraps,
    side_facing,
)
from wellstrung.subjects.chain import of_cups
from wellstrung.subjects.counts import has_place, hung_in_all
from wellstrung.subjects.glued import caps_at, closing_glue
from wellstrung.subjects.stones import sets_stone


class RingOnCappedRope(Subject, frozen=True):
    """A ring that must be slid on a rope, the step that does it, and the rope's caps.

    `capped` is the step that glues the last of them on.
    """

    ring: Part
    rope: Part
    line: Hung
    caps: tuple[Part, ...]
    step: Step | None
    capped: Step | None

    @property
    def parts(self) -> tuple[str, ...]:
        """Ring, rope."""
        return (self.ring.name, self.rope.name)


class ThreadEnds(Subject, frozen=True):
    """The thread ends of a rope, the steps that finish them, and those that glue the rope.

    `closing` are the glue steps from the one that closes the last open end.
    """

    rope: Part
    finishing: tuple[Step, ...]
    glued: tuple[Step, ...]
    closing: tuple[Step, ...]

    @property
    def finished_first(self) -> Iterator[tuple[Step, Step]]:
        """Each step that finishes ends, with each glue step that has to come after it.

        Some ends are finished before any glue; the others may wait while an end is open.
        """
        for number, finish in enumerate(self.finishing):
            for glue in self.closing if number else self.glued:
                yield finish, glue


class WrappedLoop(Subject, frozen=True):
    """A loop that is wrapped shut, what it has to take, and a later step that brings that.

    `wrapped` is the last step that wraps a loop of the wire; `brought` is None where nothing is
    brought after it.
    """

    link: Part
    takes: Side
    wrapped: Step
    brought: Step | None


class PartAtWork(Subject, frozen=True):
    """A part, how many times a verb must be done to it, and the steps that do it or need it done.

    `verb` is empty for a part that steps work on and that has no place in the piece. `rings` is how
    many times it must be done where rings are counted: a frame on two rings may be hung twice.
    """

    part: Part
    verb: str
    wanted: int
    rings: int
    made: tuple[Step, ...]
    needed_by: tuple[Step, ...]


class Cutting(Subject, frozen=True):
    """Every part of which metal is cut at the bench, and the steps that cut, crimp or turn loops.

    It is shown once, however many there are.
    """

    cut: tuple[Part, ...]
    steps: tuple[Step, ...]

    @property
    def parts(self) -> tuple[str, ...]:
        """What is cut."""
        return named(self.cut)


class ClassMeets(Subject, frozen=True):
    """The class that a piece is made in, and the parts that are brought to it ready made.

    `makes` are the steps that make one of the other parts, by that part.
    """

    meets: Item
    makes: tuple[tuple[Part, tuple[Step, ...]], ...]
    prepared: tuple[Part, ...]

    @property
    def parts(self) -> tuple[str, ...]:
        """None: it is about the class."""
        return ()


def find(plan: Plan) -> Iterator[Subject]:
    """What the steps give, glue aside."""
    yield from _rings_on_ropes(plan)
    yield from _thread_ends(plan)
    yield from _wrapped(plan)
    if plan.steps:
        yield from _parts_at_work(plan)
    yield from _cutting(plan)
    yield from _class(plan)


#: steps after which a metal end is cut off: of chain, of the wire in a crimp, of a loop's wire
_CUTS = ("cut", "crimp", "wrap loop")


def _cutting(plan: Plan) -> Iterator[Subject]:
    """Chain, wire and pins with loops to turn, wire that beads are strung on."""
    cut = tuple(
        part
        for part in plan.parts.values()
        if part.traits.cut_from or part.traits.on_wire or part.thread.steel
    )
    steps = tuple(
        step
        for step in plan.steps_that(*_CUTS, "string")
        if any(part in cut for part in step.parts.values())
        and (step.verb != "string" or step.parts["part"].thread.springs)  # cut as it is strung
    )
    if cut:
        yield Cutting((steps[0].place if steps else cut[0].key.place), cut, steps)


def _wrapped(plan: Plan) -> Iterator[WrappedLoop]:
    """What each wrapped loop takes; a simple one is opened again with the pliers."""
    for link in plan.parts.values():
        wraps = plan.steps_that("wrap loop", part=link)
        if not wraps or not shut_by_wraps(link):
            continue
        for side in dict.fromkeys(_taken_by(plan, link)):
            part = side.part if isinstance(side, Eyes) else side
            later = plan.steps[wraps[-1].number :]
            brought = next((step for step in later if _brings(step, part, link)), None)
            yield WrappedLoop(wraps[-1].place, link, side, wraps[-1], brought)


def _taken_by(plan: Plan, link: Part) -> Iterator[Side]:
    """The rings and the eyes that the loops of a wire meet."""
    for entry, (behind, ahead) in plan.with_neighbours():
        if entry.part is link:
            sides = [side_facing(place, onwards=True) for place in behind]
            sides += [side_facing(place) for place in ahead]
            yield from (side for side in sides if side is not None)
    for line in plan.hung:
        if line.on_thread or link not in (line.part, line.source):
            continue
        above = Eyes(line.source, line.source_eyes) if line.source_eyes else None
        side = line.ring or (hanging_eyes(line.part) if line.source is link else above)
        if side is not None:
            yield side


def _brings(step: Step, part: Part, link: Part) -> bool:
    """Whether a step makes what a loop takes, or hangs it there."""
    if step.verb == "hang":
        two = {step.parts.get("part"), step.parts.get("from")}
        return part in two and two <= {part, link, None}
    return step.verb in _MAKING and step.parts.get("part") is part


def _rings_on_ropes(plan: Plan) -> Iterator[Subject]:
    for line in plan.hung:
        ring, rope = line.ring, line.source
        if ring is None or rope.kind.role is not Role.ROPE:
            continue
        step = next((one for one in plan.steps if puts_on(one, ring, line, rope)), None)
        place, caps = (
            step.place if step else line.place_of("by" if line.by else "part"),
            tuple(caps_at(plan, rope)),
        )
        capped = next(iter(closing_glue(plan, rope)), None) if caps else None
        yield RingOnCappedRope(place, ring, rope, line, caps, step, capped)


def puts_on(step: Step, ring: Part, line: Hung, rope: Part) -> bool:
    """Whether a step is the one that brings the ring (with what it carries) on the rope."""
    part = step.parts.get("part")
    if step.verb == "slide":
        return part in (ring, line.part) and step.parts.get("onto") is rope
    if step.verb == "hang":
        return part is line.part and step.parts.get("from") in (None, rope)
    return step.verb == "close ring" and part is ring


def _thread_ends(plan: Plan) -> Iterator[Subject]:
    for rope in plan.parts.values():
        glued = plan.steps_that("glue", to=rope)
        if glued and not rope.thread.springs and not of_cups(rope):  # wire has no thread ends
            finishing = tuple(plan.steps_that("finish thread", part=rope))
            closing = closing_glue(plan, rope)
            yield ThreadEnds(glued[0].place, rope, finishing, tuple(glued), closing)


#: Verbs whose work on a part can be done at home, and the part be brought.
_AT_HOME = frozenset({"weave", "string", "knot", "cut", "wrap loop", "finish thread", "measure"})


def prepared(plan: Plan) -> tuple[Part, ...]:
    """The parts that are brought to the class ready made."""
    node = plan.written("class", "prepared")
    return tuple(plan.parts[str(name)] for name in node.value) if node is not None else ()


def done_at_home(plan: Plan, step: Step) -> bool:
    """Whether a step makes a part that is brought to the class ready made."""
    return step.verb in _AT_HOME and step.parts.get("part") in prepared(plan)


def _class(plan: Plan) -> Iterator[Subject]:
    meets = plan.section("class")
    if meets is None:
        return
    makes: dict[Part, list[Step]] = {}
    brought = prepared(plan)
    for step in plan.steps_that(*_AT_HOME):
        part = step.parts.get("part")
        if part is not None and part not in brought:
            makes.setdefault(part, []).append(step)
    each = tuple((part, tuple(steps)) for part, steps in makes.items())
    yield ClassMeets(meets.key.place, meets, each, brought)


#: verbs that make a part, so that every other step with it comes later
_MAKING = frozenset({"weave", "string", "cut"})
#: verbs that work on a part as it came for repair
_AS_IT_CAME = frozenset({"take apart", "clean"})


def _before_it_is_made(step: Step, plan: Plan) -> bool:
    """Whether a step works on what is not made yet: as it came, its stone, one end of its wire."""
    return step.verb in _AS_IT_CAME or sets_stone(step) or _first_end(step, plan)


def _first_end(step: Step, plan: Plan) -> bool:
    """Whether it glues a ball on one end of memory wire: the beads go on from the other."""
    wire = step.parts.get("to")
    if step.verb != "glue" or wire is None or not wire.thread.springs:
        return False
    return step.joints == 1 and step is next(iter(plan.steps_that("glue", to=wire)))


#: the fields of a step that name a part of the piece
_NAMED = ("part", "to", "onto", "from", "by", "around")


def _parts_at_work(plan: Plan) -> Iterator[Subject]:
    """What each part of the piece needs done."""
    steps_of: dict[Part, dict[Step, str]] = {}
    for step in plan.steps:
        for name in _NAMED:
            part = step.parts.get(name)
            if part is not None and part.kind.role not in UNPLACED:
                steps_of.setdefault(part, {}).setdefault(step, name)
    for (part, verb), (times, rings) in _wanted(plan).items():
        steps = steps_of.get(part, {})
        # the knots of a strand that is knotted all along are tied as it is strung
        verbs = {verb, "knot"} if part.stitch is not None and part.stitch.knot else {verb}
        made = [step for step, name in steps.items() if step.verb in verbs and name == "part"]
        later = [step for step in steps if step not in made and not _before_it_is_made(step, plan)]
        needed_by = later if verb in _MAKING else []
        yield PartAtWork(part.key.place, part, verb, times, rings, tuple(made), tuple(needed_by))
    placed = has_place(plan)
    for part, steps in steps_of.items():
        if part not in placed:
            yield PartAtWork(part.key.place, part, "", 0, 0, (), tuple(steps))


def _wanted(plan: Plan) -> dict[tuple[Part, str], tuple[int, int]]:
    """How many times each part must be made, glued, hung, crimped or closed; and by its rings."""
    wanted: dict[tuple[Part, str], tuple[int, int]] = {}

    def want(part: Part, verb: str, count: int, rings: int) -> None:
        before = wanted.get((part, verb), (0, 0))
        wanted[part, verb] = (before[0] + count, before[1] + rings)

    for part in plan.in_run:
        _want_made(part, wanted)
        if (crimp := held_by_crimps(part)) is not None:
            want(crimp, "crimp", holds(part), holds(part))
    for line in plan.hung:
        _want_made(line.part, wanted)
        if line.part.kind.role is not Role.BAIL:  # it is slid on or closed round
            want(line.part, "hang", *hung_in_all(plan, line))
    hanging = {line.by for line in plan.hung} | {line.part for line in plan.hung}
    for entry in plan.run:
        part = entry.part
        if part.kind.role in (Role.CRIMP, Role.TIP):
            want(part, "crimp", entry.pieces, entry.pieces)
        elif part.kind.role is Role.RING and opens(part) and part not in hanging:
            want(part, "close ring", entry.pieces, entry.pieces)
    for end, inner in plan.meetings:
        capped = inner.part.kind.role is Role.ROPE or inner.part.thread.springs
        if end.part.kind.role is Role.CAP and capped:
            want(end.part, "crimp" if end.part.traits.pressed else "glue", 1, 1)
    return wanted


def _want_made(part: Part, wanted: dict[tuple[Part, str], tuple[int, int]]) -> None:
    if part.traits.made_by:
        wanted[part, part.traits.made_by] = (1, 1)
