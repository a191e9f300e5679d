"""What hangs by thread alone, what it runs through, and the sharp edges of holes on its way."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from wellstrung.model.beads import beads_named, beads_on_thread, knot_of
from wellstrung.model.item import Bead
from wellstrung.model.parts import WOVEN_WORK, Part, Role, Stitch
from wellstrung.model.plan import Hung, Plan, Step
from wellstrung.quantity.verdict import SLACK
from wellstrung.subjects.base import Eyes, Side, Subject, named, side_facing
from wellstrung.subjects.linked import Hangs
from wellstrung.subjects.run import StopsAt

#: Roles that a rope or a band is sewn to by its own thread where nothing else joins them.
_SEWN_TO = frozenset({Role.CLASP, Role.RING, Role.EYED})
#: A bead that is longer than this many times its outside is a tube, as bugles are: common practice.
_TUBE = 1.5


class OnThread(Subject, frozen=True):
    """What hangs by the thread of one part and by nothing else.

    `held` is what hangs, with all that hangs from it; None where it is the whole piece, as when it
    is lifted by one end. `lines` bear side by side: every pass counts as one, though both its sides
    bear, since passes never share a load evenly. `knot` is the row of the trade table `knots` that
    weakens the thread, empty where nothing is tied.
    """

    thread: Part
    held: Part | None
    lines: int
    knot: str
    line: Hung | None = None
    step: Step | None = None


class TiedTo(Subject, frozen=True):
    """The thread of a part on the ring or the eye that it is sewn or tied to.

    `line` is what hangs by it, or by a ring on its stretch cord; None in the run, where a part is
    sewn on by its own thread.
    """

    tied: Part
    loop: Side
    line: Hung | None = None

    @property
    def parts(self) -> tuple[str, ...]:
        """What is tied, then to what."""
        line = self.line
        return named(self.tied, line.source if line is not None and line.on_thread else self.loop)


class Threaded(Subject, frozen=True):
    """A bead on the thread, line or wire of a part."""

    part: Part
    bead: Bead

    @property
    def lines(self) -> int:
        """How often lines of strands go through it, those of all that share it counted."""
        return self.part.count("passes", default=1) * self.bead.shared


class CapOnBead(Subject, frozen=True):
    """A bead cap beside the bead that it sits on."""

    cap: Bead
    bead: Bead


class Woven(Subject, frozen=True):
    """A part that is woven or strung in a stitch, as its counts say.

    `sewn_to_clasp`: its own thread sews it to a clasp, with no cap between.
    """

    part: Part
    stitch: Stitch
    sewn_to_clasp: bool


def find(plan: Plan) -> Iterator[OnThread]:
    """Every thread that alone carries a weight."""
    yield from _strands(plan)
    yield from _hung(plan)
    yield from _sewn(plan)


def _strands(plan: Plan) -> Iterator[OnThread]:
    """The strands of the run: knotted all along, tied at the ends, or whole from crimp to crimp.

    Wire is crimped or turned to a loop, never tied.
    """
    met: dict[Part, list[Role]] = {}
    for entry, beside in plan.meetings:
        for part in entry.parts:
            met.setdefault(part, []).append(beside.part.kind.role)
    for part in plan.in_run:
        if part.kind.role is Role.STRAND and not part.thread.springs:
            ends = met.get(part, [])
            crimped = len(ends) > 1 and set(ends) == {Role.CRIMP}
            tied = "" if crimped or part.thread.steel else "any other knot"
            knot = knot_of(part) if part.stitch and part.stitch.knot else tied
            lines = part.count("passes", default=1)
            yield OnThread(part.place_of("thread"), part, None, lines, knot)


def _hung(plan: Plan) -> Iterator[OnThread]:
    """What hangs by thread: by its own, or by that of the part it hangs from."""
    for line in plan.hung:
        if line.on_thread:
            said = (one for one in (line.part, line.source) if one.has("thread"))
            owner = next((one for one in said if not one.implies("thread")), line.part)
            place = line.place_of("by")
            yield OnThread(place, owner, line.part, line.passes, "any other knot", line)


def _sewn(plan: Plan) -> Iterator[OnThread]:
    """A rope or a band beside a clasp, a ring or an eye: sewn to it by its own thread."""
    for entry, beside in plan.meetings:
        woven = entry.part.kind.role in WOVEN_WORK and entry.part.takes("thread")
        if not woven or entry.part.on_cords or beside.part.kind.role not in _SEWN_TO:
            continue
        step = _sewing(plan, entry.part, beside.part)
        passes = step.get("passes") if step else None
        lines = passes if isinstance(passes, int) else 1
        place = step.place if step else entry.part.place_of("thread")
        yield OnThread(place, entry.part, None, lines, "any other knot", None, step)


def _sewing(plan: Plan, *two: Part) -> Step | None:
    """The step that sews two parts together."""
    for step in plan.steps_that("sew"):
        if step.parts.get("part") in two and step.parts.get("to") in (*two, None):
            return step
    return None


def ties(plan: Plan) -> Iterator[TiedTo]:
    """Every loop of metal that takes a thread. Crimped wire is no thread: it stays in a gap."""
    for line in plan.hung:
        hanging = Hangs(line.place_of("by"), line)
        sides = (hanging.below, hanging.above) if line.on_thread else ()
        for side in sides:
            if side is not None:
                yield TiedTo(hanging.place, line.part, side, line)
        if line.ring is not None and _on_stretch_cord(line.source):
            yield TiedTo(hanging.place, line.source, line.ring, line)
    for entry, beside in plan.meetings:
        loop = side_facing(beside) if beside.part.kind.role in _SEWN_TO else None
        if loop is None or _gripped(beside.part) or (isinstance(loop, Eyes) and loop.field.strung):
            continue
        for part in entry.parts:
            soft = part.kind.role in WOVEN_WORK or part.kind.role is Role.STRAND
            if soft and part.takes("thread") and not part.thread.steel:
                yield TiedTo(entry.place, part, loop)


def _on_stretch_cord(part: Part) -> bool:
    return part.kind.role is Role.STRAND and part.takes("thread") and part.thread.stretches


def turns(plan: Plan) -> Iterator[StopsAt]:
    """Each turn bead below the last bead of its leg; beads in shares lie in no order."""
    for drop in plan.parts.values():
        turn, node = (
            drop.bead("turn") if drop.kind.role is Role.DROP else None,
            drop.node_at("beads"),
        )
        if turn is None or node is None or isinstance(node.value, Mapping):
            continue
        leg = node.value if isinstance(node.value, list) else [node.value]
        counts = drop.counts("count") or (len(leg),)
        for name in dict.fromkeys(str(leg[(count - 1) % len(leg)]) for count in counts):
            yield StopsAt(drop.place_of("turn"), drop, turn, plan.beads[name])


def threaded(plan: Plan) -> Iterator[Threaded]:
    """Each bead that a thread or a wire of a part goes through."""
    for part in plan.parts.values():
        for name in beads_on_thread(part):
            yield Threaded(part.place_of("beads"), part, plan.beads[name])


def caps_on_beads(plan: Plan) -> Iterator[CapOnBead]:
    """Every bead cap and the bead beside it, where a part lists its beads in their order.

    Between two beads it sits on the larger; where two caps meet, each on the bead behind it.
    """
    caps = {bead for bead in plan.beads.values() if _sits_on(bead)}
    for part in plan.parts.values() if caps else ():
        node = part.node_at("beads")
        if node is None or not isinstance(node.value, list):
            continue
        row = [plan.beads[name] for name in map(str, node.value) if name in plan.beads]
        for at, cap in enumerate(row):
            beside = [bead for bead in row[max(at - 1, 0) : at + 2] if bead not in caps]
            if cap in caps and beside:
                yield CapOnBead(part.place_of("beads"), cap, max(beside, key=_across))


def _sits_on(bead: Bead) -> bool:
    """Whether it is a cap for another bead."""
    return bead.family is not None and bool(bead.family.text("sits"))


def _across(bead: Bead) -> float:
    return bead.size("outside").middle if bead.has("outside") else 0.0


def woven(plan: Plan) -> Iterator[Woven]:
    """Every part made by a stitch."""
    sewn = {
        part
        for entry, beside in plan.meetings
        if beside.part.kind.role is Role.CLASP and not _gripped(beside.part)
        for part in entry.parts
        if not part.on_cords
    }
    for part in plan.parts.values():
        if part.stitch is not None:
            yield Woven(part.key.place, part, part.stitch, part in sewn)


def _gripped(clasp: Part) -> bool:
    """Whether a clasp holds a band without thread: by glue in its slot, or between its jaws."""
    end = clasp.traits.band_end
    return end is not None and bool(end.grips) and clasp.has(*end.grips)


def needle_from(plan: Plan, part: Part) -> Part:
    """The part that says the needle of a part: of a leg that says none the work it hangs from.

    It is worked with the same thread. The part itself where nothing else says it.
    """
    if part.kind.role is not Role.DROP or part.has("needle"):
        return part
    works = (line.source for line in plan.hung if line.part is part and line.on_thread)
    same = (work for work in works if work.takes("needle") and _of_one_thread(work, part))
    return next(same, part)


def _of_one_thread(work: Part, leg: Part) -> bool:
    """Whether nothing that both say of their thread differs."""
    thread, other = work.node_at("thread"), leg.node_at("thread")
    if thread is None or other is None:
        return other is None
    return all(
        thread.value.get(name, said) == said
        for name, said in other.value.items()
        if name in _WHICH_THREAD
    )


#: what says which thread it is
_WHICH_THREAD = ("spool", "type", "rating", "size", "outside")


def passes_of(plan: Plan, part: Part, bead: Bead | None = None) -> int | None:
    """How often the thread goes through a woven bead at least; None for what is not woven.

    The fullest bead counts: along an edge that carries a fringe, the thread of the fringe too.
    """
    if part.kind.role is Role.DROP:
        turns = bead is not None and bead.name not in beads_named(part, "beads")
        return 1 if turns else 2  # down the leg and up again, once through the bead at its foot
    if part.kind.role is Role.STRAND or (part.stitch is None and not part.kind.passes):
        return None
    passes = part.stitch.passes if part.stitch is not None else part.kind.passes
    return passes + fringe_passes(plan, part) if passes else None


def fringe_passes(plan: Plan, part: Part) -> int:
    """How often thread goes through a bead of a woven edge to hang what hangs there; at most.

    The layers of a fringe go through the same beads.
    """
    layers: dict[tuple[str, int], int] = {}
    for line in plan.hung:
        if _sewn_to_edge(line, part):
            at = line.source_eyes, line.layer
            layers[at] = max(layers.get(at, 0), line.passes)
    edges = {edge for edge, _ in layers}
    return max((sum(n for at, n in layers.items() if at[0] == edge) for edge in edges), default=0)


def _sewn_to_edge(line: Hung, part: Part) -> bool:
    """Whether a line hangs something from a woven edge of the part, by thread."""
    on_edge = line.source is part and line.source_eyes and line.on_thread
    return bool(on_edge) and Eyes(part, line.source_eyes).woven


def edges_of(bead: Bead) -> str:
    """Whether the ends of a bead's hole are `sharp` or `smooth`; empty where nothing shows it.

    As the plan says; seed beads are rounded, other families are as the trade table `other_beads`
    has them, and a long tube is cut glass (common practice).
    """
    if bead.has("edges"):
        return bead.text("edges")
    if bead.seed:
        return "smooth"
    if bead.family is not None:
        return bead.family.text("edges")
    if not bead.has("length") or not bead.has("outside"):
        return ""
    tube = _TUBE * bead.size("outside").middle + SLACK
    return "sharp" if bead.size("length").middle > tube else ""


def bare_edges(plan: Plan, part: Part) -> tuple[Bead, ...]:
    """The sharp beads of a part that its thread runs over with nothing smooth on either side.

    Flexible wire has none: its steel stands an edge that cuts thread (common practice).
    """
    if part.thread.steel:
        return ()
    beads = (plan.beads[name] for name in beads_on_thread(part))
    return tuple(
        bead for bead in beads if edges_of(bead) == "sharp" and not between_smooth(plan, part, bead)
    )


def between_smooth(plan: Plan, part: Part, bead: Bead) -> bool:
    """Whether a bead has, on both its sides, one whose edges do not cut.

    A strand repeats its beads from end to end; a drop begins with its first bead and ends with its
    turn bead. Beads given by their shares alone, or in woven work, lie in no order.
    """
    node = part.node_at("beads")
    if part.kind.role not in (Role.STRAND, Role.DROP) or node is None:
        return False
    if not isinstance(node.value, list):
        return False
    names = [str(name) for name in node.value]
    names += beads_named(part, "turn")
    row = [names[-1], *names, names[0]] if part.kind.role is Role.STRAND else ["", *names, ""]
    beside = [
        side
        for index, name in enumerate(row[1:-1], 1)
        if name == bead.name
        for side in (row[index - 1], row[index + 1])
    ]
    return all(side and edges_of(plan.beads[side]) != "sharp" for side in beside)
