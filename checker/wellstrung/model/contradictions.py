"""What two fields of a plan say against each other, and what makes no piece."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator

from wellstrung.common import units
from wellstrung.common.places import Fault, Place
from wellstrung.common.wording import article, together
from wellstrung.model.beads import bead_mix, drops_of, legs_of
from wellstrung.model.item import node_at
from wellstrung.model.parts import Part, Role
from wellstrung.model.plan import Hung, Plan
from wellstrung.model.references import LONG
from wellstrung.reading import tree as reading


def contradictions(plan: Plan, *, within_parts: bool = True) -> Iterator[Fault]:
    """Every contradiction of a plan, or all but those `within` one of its parts."""
    yield from _too_much(plan)
    for part in plan.parts.values() if within_parts else ():
        yield from within(part)
    yield from _rest(plan)
    yield from _loop(plan)
    yield from _closing(plan)
    for line in plan.hung:
        yield from _hung(line)
    yield from _circle(plan)
    yield from _centre(plan)


def within(part: Part) -> Iterator[Fault]:
    """What two fields of one part say against each other."""
    return (_fault(says, place, part.key.place) for says, place in _in_part(part))


def _fault(says: str, place: Place, *also: Place) -> Fault:
    return Fault("plan-shape", says, place, also=also)


#: Each is looked at beside all the others. How many is our own choice, no source: far more than any
#: piece that we know has, and few enough to be checked in seconds.
MOST_MADE = 500
MOST_PLACES = 50_000
MOST_HUNG = 1_000
MOST_ON_RING = 50


def _too_much(plan: Plan) -> Iterator[Fault]:
    """More made parts, lines of `hung`, parts on a ring or places of the run than are checked."""
    made = [part for part in plan.parts.values() if not part.traits.bought]
    if len(made) > MOST_MADE:
        says = f"{len(made)} parts are made at the bench, more than is checked ({MOST_MADE})"
        yield _fault(f"{says}: write a plan for each piece", made[MOST_MADE].key.place)
    if len(plan.hung) > MOST_HUNG:
        says = f"`hung` has {len(plan.hung)} lines, more than is checked ({MOST_HUNG})"
        yield _fault(f"{says}: write a plan for each piece", plan.hung[MOST_HUNG].place)
    rings = (line for line in plan.hung if line.source.kind.role is Role.RING)
    on_rings = dict.fromkeys((line.source, line.part) for line in rings)
    for ring, count in Counter(ring for ring, _ in on_rings).items():
        if count > MOST_ON_RING:
            says = f"{count} different parts hang from `{ring.name}`, more than is checked"
            do = "give those that are alike one name and `times`, or name the ring that each is on"
            yield _fault(f"{says} ({MOST_ON_RING}): {do}", ring.key.place)
    if len(plan.run) > MOST_PLACES:
        says = f"the run has over {MOST_PLACES} places, more than is checked"
        yield _fault(f"{says}: write a plan for each piece", plan.run[MOST_PLACES].place)


#: Two sizes of a part, the share of the first that the second has at most, and why.
_LESS = 1 - 1e-9
_INSIDE = (
    (("outside",), ("bore",), _LESS, "the bore of {} is smaller than its outside"),
    (("length",), ("depth",), _LESS, "the depth of {} is less than its length"),
    (("stone", "thickness"), ("stone", "edge"), 1, "the edge of a stone ends below its top"),
    (("cup", "pitch"), ("cup", "outside"), 1, "cups of {} do not lie over each other"),
)
_IN_BALL = ((("outside",), ("depth",), _LESS, "the hole of {} ends inside it"),)


def _in_part(part: Part) -> Iterator[tuple[str, Place]]:
    """What two fields of one part say against each other, as they are written."""
    filled = part.kind.sold.filled(part.node) if part.kind.sold is not None else ()
    size = _written(part, units.length, "size") if filled else None
    own = _written(part, units.length, *filled) if filled else None
    if size and own and size[:3] != own[:3]:
        field = " ".join(filled)
        yield (
            f"`{part.name}` has size {size.text} and {field} {own.text}, and its size is its"
            f" {field}: keep one of them",
            part.place_of("size"),
        )
    for outer, inner, most, words in (*_INSIDE, *(_IN_BALL if part.traits.on_wire_end else ())):
        whole, hollow = _written(part, units.length, *outer), _written(part, units.length, *inner)
        if whole and hollow and hollow.value > whole.value * most:
            yield (
                f"`{part.name}` has {' '.join(inner)} {hollow.text} and {' '.join(outer)}"
                f" {whole.text}: {words.format(article(part.noun))}, so correct one of them",
                part.place_of(*inner),
            )
    two_wires = "two wires leave no inside, so correct one of them"
    if part.kind.role is Role.RING:
        outside, wire = _written(part, units.length, "outside"), _written(part, units.wire, "wire")
        if outside and wire and 2 * wire.value >= outside.value:
            yield (
                f"`{part.name}` is {outside.text} outside and its wire is {wire.text}: {two_wires}",
                part.place_of("wire"),
            )
    links = part.node_at("links")
    for name in links.entries if isinstance(links, reading.Mapping) else ():
        length = _written(part, units.length, "links", name, "length")
        wire = _written(part, units.wire, "links", name, "wire")
        if length and wire and 2 * wire.value >= length.value:
            yield (
                f"link `{name}` of `{part.name}` is {length.text} long and its wire is"
                f" {wire.text}: {two_wires}",
                part.place_of("links", name, "wire"),
            )


def _written(
    part: Part, read: Callable[[str | int | float], units.Parsed], *path: str
) -> units.Parsed | None:
    node = part.node_at(*path)
    words = node is not None and node.value in (units.REST, units.USUAL)
    return read(node.value) if node is not None and not words else None


def _rest(plan: Plan) -> Iterator[Fault]:
    """One part in the run may fill the rest, and only of a length that the plan asks for."""
    filling = [part for part in plan.parts.values() if part.fills_rest]
    alone = {entry.part for entry in plan.run if not entry.beside}
    beside = {part for entry in plan.run if entry.beside for part in entry.parts}
    for part in filling:
        place = part.place_of("length")
        if part in beside:
            yield _fault(
                f"`{part.name}` fills the rest, and it lies side by side with other strands: write"
                " the length of each",
                place,
            )
        elif part not in alone:
            yield _fault(
                f"`{part.name}` fills the rest, and it has no place of its own in the run: write"
                " its length",
                place,
            )
        elif plan.goal is None:
            yield _fault(
                f"`{part.name}` fills the rest, and the plan asks for no length of the piece: write"
                " `finished_length` or `inside`",
                place,
            )
    filling = [part for part in filling if part in alone]
    if len(filling) > 1:
        yield _fault(
            f"{together(f'`{part.name}`' for part in filling)} fill the rest: write the length of"
            " all but one",
            filling[-1].place_of("length"),
            *(part.place_of("length") for part in filling[:-1]),
        )


def _loop(plan: Plan) -> Iterator[Fault]:
    """A run that closes on itself is not open."""
    run_is, closes = plan.written("run_is"), plan.written("closes")
    if plan.is_loop and run_is is not None and closes is not None and closes.value == "open":
        yield _fault(
            "the run is a loop, and the piece stays open: write `run_is: open`, or how it closes",
            closes.place,
            run_is.place,
        )


def _closing(plan: Plan) -> Iterator[Fault]:
    """What closes through its loop has a ring at one end for the other to go through."""
    closes = plan.written("closes")
    if closes is None or closes.value != "through its loop":
        return
    ends = [entry.part.kind.role for entry in (*plan.run[:1], *plan.run[-1:])]
    if len(plan.run) < 2 or Role.RING not in ends:
        yield _fault(
            "the piece closes through its loop, and no end of the run is a ring: begin or end"
            " `run` with a jump ring",
            closes.place,
        )


def _hung(line: Hung) -> Iterator[Fault]:
    """A line that hangs a part from itself, or whose counts do not agree."""
    if line.part is line.source:
        yield _fault(
            f"`{line.part.name}` hangs from itself: name what it hangs from",
            line.place_of("part"),
            (node_at(line.node, "from", "part") or line.node.entries["from"].node).place,
        )
    at, times = line.at, line.times
    if at and times != len(at):
        yield _fault(
            f"`at` names {len(at)} eyes for `{line.part.name}`, and {times} hang: write"
            f" `times: {len(at)}`, or leave `times` out",
            line.place_of("times"),
            line.place_of("at"),
        )
    if line.part.noun == "tassel" and not (line.has("times") or at or legs_of(line.part) > 1):
        yield _fault(
            f"`{line.part.name}` is a tassel and has one leg: write how many hang together, as in"
            " `legs: 14`",
            line.part.key.place,
            line.place_of("part"),
        )
    edge = line.source_eyes
    along = line.source.kind.eyes[edge].along if edge else line.source.kind.role in LONG
    if line.over and not (along and line.on_thread):
        yield _fault(
            f"`over` says how much of a rope, a strand or a long edge a fringe takes, and"
            f" `{line.part.name}` hangs otherwise: take `over` out",
            line.place_of("over"),
        )
    if at and edge and along:
        yield _fault(
            f"`at` names eyes, and the {edge} of `{line.source.name}` has none that are counted:"
            f" write `times: {len(at)}`, and `over` for the length that they take",
            line.place_of("at"),
        )
    drops = drops_of(line.part)
    if drops > 1 and times % drops:
        yield _fault(
            f"`{line.part.name}` lists the counts of {drops} drops, and {times} hang: write"
            f" `times: {drops}`, or as many counts",
            line.place_of("times"),
            line.part.place_of("count"),
        )


def _circle(plan: Plan) -> Iterator[Fault]:
    """The first parts that hang from each other in a circle."""
    above: dict[Part, Hung] = {}
    for line in plan.hung:
        above.setdefault(line.part, line)
    for line in plan.hung:
        if line.part is line.source:
            continue
        trail, part = [line], line.source
        while part in above and part is not line.part and len(trail) <= len(above):
            trail.append(above[part])
            part = above[part].source
        if part is line.part:
            round_trip = " from ".join(f"`{step.part.name}`" for step in trail)
            yield _fault(
                f"{round_trip} from `{part.name}` hangs in a circle: let one of them hang from the"
                " run",
                line.place_of("from"),
                *(step.place_of("from") for step in trail[1:]),
            )
            return


def _centre(plan: Plan) -> Iterator[Fault]:
    """What is meant for the middle has a place in the piece."""
    centre = plan.written("centre")
    if centre is None or not {str(centre.value)} & {*plan.parts, *plan.beads}:
        return
    placed = {part.name for part in (*plan.in_run, *(line.part for line in plan.hung))}
    beads = {bead for part in plan.in_run for bead in bead_mix(part)}
    if str(centre.value) not in placed | beads:
        yield _fault(
            f"`{centre.value}` is meant for the middle, and it has no place in the piece: put it in"
            " `run`, or hang it there",
            centre.place,
        )
