"""What thread alone carries: strands of the run, what hangs by thread, what is sewn on.

Here too is what is known of the edges that a thread runs over: those of the holes of its beads.
"""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung.model.parts import WOVEN_WORK, Hung, Item, Part, Plan, Role, Step, beads_named
from wellstrung.quantity.value import SLACK
from wellstrung.subjects.joins import Subject

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

    @property
    def parts(self) -> tuple[str, ...]:
        """Whose thread it is, then what hangs by it."""
        held = (self.held.name,) if self.held else ()
        return tuple(dict.fromkeys((self.thread.name, *held)))


def find(plan: Plan) -> tuple[OnThread, ...]:
    """Every thread that alone carries a weight, once."""
    return tuple(dict.fromkeys((*_strands(plan), *_hung(plan), *_sewn(plan))))


def _strands(plan: Plan) -> Iterator[OnThread]:
    """The strands of the run: knotted all along, tied at the ends, or whole from crimp to crimp."""
    ends: dict[Part, list[Part]] = {}
    for pair in plan.neighbours:
        for entry, beside in (pair, pair[::-1]):
            for part in entry.parts:
                if part.kind.role is Role.STRAND:
                    ends.setdefault(part, []).append(beside.part)
    for entry in plan.run:
        for part in entry.parts:
            if part.kind.role is not Role.STRAND:
                continue
            met = ends.get(part, [])
            crimped = len(met) > 1 and all(end.kind.role is Role.CRIMP for end in met)
            tied = "" if crimped else "any other knot"
            knot = "overhand" if part.text("stitch") == "knotted" else tied
            lines = part.count("passes", default=1)
            yield OnThread(part.place_of("thread"), part, None, lines, knot)


def _hung(plan: Plan) -> Iterator[OnThread]:
    """What hangs by thread: by its own, or by that of the part it hangs from."""
    for line in plan.hung:
        if line.on_thread:
            owner = next((one for one in (line.part, line.source) if one.has("thread")), line.part)
            place = line.place_of("by")
            yield OnThread(place, owner, line.part, line.passes, "any other knot", line)


def _sewn(plan: Plan) -> Iterator[OnThread]:
    """A rope or a band beside a clasp, a ring or an eye: sewn to it by its own thread."""
    for pair in plan.neighbours:
        for entry, beside in (pair, pair[::-1]):
            woven = entry.part.kind.role in WOVEN_WORK and entry.part.takes("thread")
            if not woven or beside.part.kind.role not in _SEWN_TO:
                continue
            step = _sewing(plan, entry.part, beside.part)
            passes = step.get("passes") if step else None
            lines = passes if isinstance(passes, int) else 1
            place = step.place if step else entry.part.place_of("thread")
            yield OnThread(place, entry.part, None, lines, "any other knot", None, step)


def _sewing(plan: Plan, one: Part, other: Part) -> Step | None:
    """The step that sews two parts together."""
    names = {one.name, other.name}
    for step in plan.steps:
        if step.verb == "sew" and step.get("part") in names and step.get("to") in (*names, None):
            return step
    return None


def edges_of(bead: Item) -> str:
    """Whether the ends of a bead's hole are `sharp` or `smooth`; empty where nothing tells.

    As the plan says; seed beads are rounded, and a long tube is cut glass (common practice; bugles:
    trade table `other_beads`).
    """
    if bead.has("edges"):
        return bead.text("edges")
    if bead.text("type") != "other":
        return "smooth"
    if not bead.has("length") or not bead.has("outside"):
        return ""
    tube = _TUBE * bead.length("outside").middle + SLACK
    return "sharp" if bead.length("length").middle > tube else ""


def bare_edges(plan: Plan, part: Part) -> tuple[Item, ...]:
    """The sharp beads of a part that its thread runs over with nothing smooth on either side.

    Flexible wire has none: its steel stands an edge that cuts thread (common practice).
    """
    if part.has("thread", "type") and part.text("thread", "type") == "flexible wire":
        return ()
    fields = ("beads", "core_bead", "turn")
    named = dict.fromkeys(name for one in fields for name in beads_named(part, one))
    beads = (plan.beads[name] for name in named)
    return tuple(
        bead for bead in beads if edges_of(bead) == "sharp" and not between_smooth(plan, part, bead)
    )


def between_smooth(plan: Plan, part: Part, bead: Item) -> bool:
    """Whether a bead has, on both its sides, one whose edges do not cut.

    A strand repeats its beads from end to end; a drop begins with its first bead and ends with its
    turn bead. Beads told by their shares alone, or in woven work, lie in no order.
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
