"""The bench steps, simulated in the order written: what is capped, glued, curing and loaded when.

Only written waits and written `takes:` move the clock: a step that says nothing of its time is
taken as quick, so a joint is never believed to have cured for longer than the plan says.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from itertools import pairwise

from msgspec import Struct

from wellstrung.common.places import Place
from wellstrung.model.parts import WOVEN_WORK, Hung, Item, Part, Plan, Role, Step
from wellstrung.reading import tree
from wellstrung.subjects.joins import Subject, pieces_hung
from wellstrung.subjects.supplies import supply_lines

#: Steps that put a pull on what was glued.
LOADING = frozenset({"hang", "close ring"})
#: Steps after which the piece is worn or leaves the bench.
WEARING = frozenset({"wear", "pack"})


class Moment(Struct, frozen=True):
    """A step and the minutes since the joint before it was made."""

    step: Step | None
    after: float
    place: Place


class GluedJoint(Subject, frozen=True):
    """A glued cap (or a clasp glued to a band) and when it is first loaded and first worn."""

    step: Step
    adhesive: Part
    cap: Part
    loaded: Moment | None
    worn: Moment

    @property
    def parts(self) -> tuple[str, ...]:
        """Adhesive, cap."""
        return (self.adhesive.name, self.cap.name)


class RingOnCappedRope(Subject, frozen=True):
    """A ring that must be slid on a rope, the step that does it, and the caps glued before."""

    ring: Part
    rope: Part
    line: Hung
    step: Step | None
    blocked_by: tuple[tuple[Part, Step], ...]

    @property
    def parts(self) -> tuple[str, ...]:
        """Ring, rope."""
        return (self.ring.name, self.rope.name)


class ThreadEnds(Subject, frozen=True):
    """The thread ends of a rope that is glued, the first step that does so, and their finishing.

    `late` is the first step that finishes ends which glue has closed in; `finished` says whether
    any step finishes them at all.
    """

    rope: Part
    glued: Step
    finished: bool
    late: Step | None

    @property
    def parts(self) -> tuple[str, ...]:
        """The rope."""
        return (self.rope.name,)


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

    @property
    def parts(self) -> tuple[str, ...]:
        """The part."""
        return (self.part.name,)


class Mixed(Subject, frozen=True):
    """What is glued of one stirring: glue steps back to back, until one says its own `mixes`.

    `unsaid` is a step that does not say how many joints it makes, where its cap stands repeatedly.
    """

    adhesive: Part
    steps: tuple[Step, ...]
    joints: int
    mixes: int
    unsaid: Step | None

    @property
    def parts(self) -> tuple[str, ...]:
        """The adhesive."""
        return (self.adhesive.name,)


class GluedEnd(Subject, frozen=True):
    """The end of a rope in a cap and the adhesive that holds it there."""

    adhesive: Part
    cap: Part
    rope: Part

    @property
    def parts(self) -> tuple[str, ...]:
        """Adhesive, cap, rope."""
        return (self.adhesive.name, self.cap.name, self.rope.name)


class GlueUsed(Subject, frozen=True):
    """An adhesive, the ends it holds with how many joints of each, its mixes, and what is on hand.

    Joints and mixes are those of every piece that the plan makes.
    """

    adhesive: Part
    ends: tuple[tuple[GluedEnd, int], ...]
    mixes: int
    lines: tuple[Item, ...]

    @property
    def parts(self) -> tuple[str, ...]:
        """The adhesive."""
        return (self.adhesive.name,)


class Cutting(Subject, frozen=True):
    """Every step that cuts metal: what is told once, however many there are."""

    steps: tuple[Step, ...]

    @property
    def parts(self) -> tuple[str, ...]:
        """What is cut."""
        return tuple(dict.fromkeys(str(step.get("part")) for step in self.steps))


class ClassMeets(Subject, frozen=True):
    """The class that a piece is made in, and the parts that are brought to it ready made.

    `makes` are the steps that make one of the other parts, by that part.
    """

    meets: Item
    makes: tuple[tuple[Part, tuple[Step, ...]], ...]
    prepared: tuple[Part, ...]


def simulate(plan: Plan) -> tuple[Subject, ...]:
    """The subjects that the work steps give."""
    return (
        *_joints(plan),
        *_rings_on_ropes(plan),
        *_thread_ends(plan),
        *_parts_at_work(plan),
        *_mixed(plan),
        *_cutting(plan),
        *_glued_ends(plan),
        *_glue_used(plan),
        *_class(plan),
    )


def caps_at(plan: Plan, rope: Part) -> list[Part]:
    """The caps of a rope in the run's order, one for each end that has one."""
    caps = []
    for before, after in plan.neighbours:
        if after.part is rope and before.part.kind.role is Role.CAP:
            caps.append(before.part)
        if before.part is rope and after.part.kind.role is Role.CAP:
            caps.append(after.part)
    return caps


def _clock(plan: Plan) -> list[float]:
    """Minutes from the start at which each step begins, and the end of the last."""
    times = [0.0]
    for step in plan.steps:
        times.append(times[-1] + passes(step))
    return times


def passes(step: Step) -> float:
    """The minutes that are written for a step: what it takes, and what it waits."""
    return step.minutes("takes") + (step.minutes("time") if step.verb == "wait" else 0.0)


def _joints(plan: Plan) -> Iterator[Subject]:
    clock = _clock(plan)
    for index, step in enumerate(plan.steps):
        adhesive, cap = plan.parts.get(str(step.get("with"))), plan.parts.get(str(step.get("part")))
        if step.verb != "glue" or adhesive is None or cap is None:
            continue
        set_at = clock[index + 1]
        loaded = worn = None
        for later, moment in zip(plan.steps[index + 1 :], clock[index + 1 :], strict=False):
            if loaded is None and later.verb in LOADING and pulls_on(plan, later, cap):
                loaded = Moment(later, moment - set_at, later.place)
            if worn is None and later.verb in WEARING and later.get("part") is None:
                worn = Moment(later, moment - set_at, later.place)
        if worn is None:
            worn = Moment(None, clock[-1] - set_at, plan.steps[-1].place)
        yield GluedJoint(step.place, step, adhesive, cap, loaded, worn)


def pulls_on(plan: Plan, step: Step, cap: Part) -> bool:
    """Whether a step hangs something from what is glued, or from the rope that ends in it."""
    touched = {str(step.get(name)) for name in ("part", "from", "around", "to", "by")}
    if step.verb == "close ring":
        ring = plan.parts.get(str(step.get("part")))
        touched |= {name for entry_ring, name in _ring_neighbours(plan) if entry_ring is ring}
    ropes = {
        rope.name
        for rope in plan.parts.values()
        if rope.kind.role is Role.ROPE and cap in caps_at(plan, rope)
    }
    return bool(touched & (ropes | {cap.name}))


def _ring_neighbours(plan: Plan) -> Iterator[tuple[Part, str]]:
    for before, after in plan.neighbours:
        yield before.part, after.part.name
        yield after.part, before.part.name


def _rings_on_ropes(plan: Plan) -> Iterator[Subject]:
    for line in plan.hung:
        if line.by is None or line.source.kind.role is not Role.ROPE:
            continue
        rope, ring = line.source, line.by
        ends = len(caps_at(plan, rope))
        glued: list[tuple[Part, Step]] = []
        step: Step | None = None
        for step in plan.steps:
            if step.verb == "glue" and step.get("to") == rope.name:
                cap = plan.parts[str(step.get("part"))]
                glued += [(cap, step)] * joints_of(step)
            if puts_on(step, ring, line, rope):
                break
        else:
            step = None
        blocked = tuple(glued) if ends and len(glued) >= ends else ()
        yield RingOnCappedRope(
            step.place if step else line.place_of("by"), ring, rope, line, step, blocked
        )


def puts_on(step: Step, ring: Part, line: Hung, rope: Part) -> bool:
    """Whether a step is the one that brings the ring (with what it carries) on the rope."""
    if step.verb == "slide":
        return step.get("part") in (ring.name, line.part.name) and step.get("onto") == rope.name
    if step.verb == "hang":
        return step.get("part") == line.part.name and step.get("from") in (None, rope.name)
    return step.verb == "close ring" and step.get("part") == ring.name


def joints_of(step: Step) -> int:
    """How many joints a glue step makes: one where it does not say."""
    joints = step.get("joints")
    return joints if isinstance(joints, int) else 1


def _thread_ends(plan: Plan) -> Iterator[Subject]:
    for rope in plan.parts.values():
        glued = [s for s in plan.steps if s.verb == "glue" and s.get("to") == rope.name]
        if not glued:
            continue
        finishes = [
            s for s in plan.steps if s.verb == "finish thread" and s.get("part") == rope.name
        ]
        late = next((s for s in finishes if _too_late(s, finishes, glued, plan, rope)), None)
        yield ThreadEnds(glued[0].place, rope, glued[0], bool(finishes), late)


def _too_late(
    finish: Step, finishes: list[Step], glued: list[Step], plan: Plan, rope: Part
) -> bool:
    """Whether the ends that a step finishes are closed in by glue.

    Where some were finished before the first glue, the others may wait while an end is open.
    """
    before = sum(joints_of(step) for step in glued if step.number < finish.number)
    begun = finishes[0].number < glued[0].number
    return before > 0 and not (begun and before < len(caps_at(plan, rope)))


def _mixed(plan: Plan) -> Iterator[Mixed]:
    rows: list[list[Step]] = []
    for before, step in pairwise((None, *plan.steps)):
        if step is None or step.verb != "glue":
            continue
        same = (
            before is not None
            and before.verb == "glue"
            and before.get("with") == step.get("with")
            and step.get("mixes") is None
        )
        if same:
            rows[-1].append(step)
        else:
            rows.append([step])
    stands = Counter(part.name for entry in plan.run for part in entry.parts)
    for steps in rows:
        first = steps[0]
        mixes = first.get("mixes")
        unsaid = (
            s for s in steps if s.get("joints") is None and stands[str(s.get("part"))] > len(steps)
        )
        yield Mixed(
            first.place,
            plan.parts[str(first.get("with"))],
            tuple(steps),
            sum(joints_of(step) for step in steps),
            mixes if isinstance(mixes, int) else 1,
            next(unsaid, None),
        )


def _cutting(plan: Plan) -> Iterator[Subject]:
    cuts = tuple(step for step in plan.steps if step.verb == "cut")
    if cuts:
        yield Cutting(cuts[0].place, cuts)


def _glued_ends(plan: Plan) -> dict[Subject, None]:
    """Each adhesive, cap and rope that a step glues, once; a clasp on a band has no bore."""
    found: dict[Subject, None] = {}
    for step in plan.steps:
        if step.verb == "glue":
            end = _glued_end(plan, step)
            if end is not None:
                found.setdefault(end)
    return found


def _glued_end(plan: Plan, step: Step) -> GluedEnd | None:
    """What a step glues into a bore; None for a clasp on a band, which has none."""
    adhesive, cap, rope = (plan.parts[str(step.get(n))] for n in ("with", "part", "to"))
    return GluedEnd(step.place, adhesive, cap, rope) if cap.kind.role is Role.CAP else None


def _glue_used(plan: Plan) -> Iterator[Subject]:
    """Each adhesive with all that the steps glue with it."""
    mixes: Counter[str] = Counter()
    for row in _mixed(plan):
        mixes[row.adhesive.name] += row.mixes
    for name, count in mixes.items():
        joints: Counter[GluedEnd] = Counter()
        for step in plan.steps:
            end = _glued_end(plan, step) if step.verb == "glue" else None
            if end is not None and step.get("with") == name:
                joints[end] += joints_of(step) * plan.makes
        adhesive, lines = plan.parts[name], supply_lines(plan, "part", name)
        ends = tuple(joints.items())
        yield GlueUsed(adhesive.key.place, adhesive, ends, count * plan.makes, lines)


#: Verbs whose work on a part can be done at home, and the part be brought.
_AT_HOME = frozenset({"weave", "string", "knot", "cut", "wrap loop", "finish thread", "measure"})


def prepared(plan: Plan) -> tuple[str, ...]:
    """Names of the parts that are brought to the class ready made."""
    node = plan.written("class", "prepared")
    return tuple(str(name) for name in node.value) if node is not None else ()


def done_at_home(plan: Plan, step: Step) -> bool:
    """Whether a step makes a part that is brought to the class ready made."""
    return step.verb in _AT_HOME and step.get("part") in prepared(plan)


def _class(plan: Plan) -> Iterator[Subject]:
    entry = plan.tree.entries.get("class")
    if entry is None or not isinstance(entry.node, tree.Mapping):
        return
    makes: dict[Part, list[Step]] = {}
    for step in plan.steps:
        part = plan.parts.get(str(step.get("part")))
        if part is not None and step.verb in _AT_HOME and part.name not in prepared(plan):
            makes.setdefault(part, []).append(step)
    meets = plan.item("class", entry.key, entry.node)
    each = tuple((part, tuple(steps)) for part, steps in makes.items())
    brought = tuple(plan.parts[name] for name in prepared(plan))
    yield ClassMeets(entry.key.place, meets, each, brought)


def _parts_at_work(plan: Plan) -> Iterator[Subject]:
    """What each part of the piece needs done, where the plan has steps at all."""
    if not plan.steps:
        return
    placed = _placed(plan)
    steps_of: dict[str, dict[Step, str]] = {}
    for step in plan.steps:
        for name in _NAMED:
            part = plan.parts.get(str(step.get(name)))
            if part is not None and part.kind.role not in (Role.LOOSE, Role.GLUE):
                steps_of.setdefault(part.name, {}).setdefault(step, name)
    for (part, verb), counts in _wanted(plan).items():
        steps = steps_of.get(part.name, {})
        made = [step for step, name in steps.items() if step.verb == verb and name == "part"]
        needed_by = [step for step in steps if step not in made] if verb in _MAKING else []
        yield PartAtWork(part.key.place, part, verb, *counts, tuple(made), tuple(needed_by))
    for name, steps in steps_of.items():
        if name not in placed:
            part = plan.parts[name]
            yield PartAtWork(part.key.place, part, "", 0, 0, (), tuple(steps))


#: verbs that make a part, so that every other step with it comes later
_MAKING = frozenset({"weave", "string", "cut"})
#: the fields of a step that name a part of the piece
_NAMED = ("part", "to", "onto", "from", "by", "around")


def _wanted(plan: Plan) -> dict[tuple[Part, str], tuple[int, int]]:
    """How many times each part must be woven, strung, cut, glued or hung; and by counting rings."""
    wanted: dict[tuple[Part, str], tuple[int, int]] = {}

    def want(part: Part, verb: str, count: int, rings: int) -> None:
        before = wanted.get((part, verb), (0, 0))
        wanted[part, verb] = (before[0] + count, before[1] + rings)

    for entry in plan.run:
        for part in entry.parts:
            _want_made(part, wanted)
    for line in plan.hung:
        _want_made(line.part, wanted)
        if line.part.kind.role is not Role.BAIL:  # it is slid on or closed round
            want(line.part, "hang", pieces_hung(line), line.times)
    for before, after in plan.neighbours:
        roles = {before.part.kind.role: before.part, after.part.kind.role: after.part}
        if set(roles) == {Role.ROPE, Role.CAP}:
            want(roles[Role.CAP], "glue", 1, 1)
    return wanted


def _want_made(part: Part, wanted: dict[tuple[Part, str], tuple[int, int]]) -> None:
    if part.kind.role in WOVEN_WORK:
        wanted[part, "weave"] = (1, 1)
    elif part.kind.role is Role.STRAND:
        wanted[part, "string"] = (1, 1)
    elif part.has("of"):
        wanted[part, "cut"] = (1, 1)


def _placed(plan: Plan) -> set[str]:
    """Names of the parts that have a place in the piece."""
    names = {part.name for entry in plan.run for part in entry.parts}
    for line in plan.hung:
        names |= {line.part.name, line.source.name}
        if line.by is not None:
            names.add(line.by.name)
    return names
