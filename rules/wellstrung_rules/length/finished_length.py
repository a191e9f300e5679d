"""The piece, added up along its run, against the length wanted."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Misfit, Piece, Remedy, Rule, kept
from wellstrung.rulebook.plan import Edit, Part
from wellstrung.rulebook.values import Quantity, derived, exact, leaf
from wellstrung.rulebook.wording import between, in_unit_of


def check(piece: Piece, ask: Ask) -> Answer:
    goal = ask.plan.goal
    if goal is None:
        return None
    low, high = goal.window
    wanted = leaf("wanted", (low + high) / 2, "mm", spelling=goal.text, spelled_unit=goal.unit)
    found = ask.get("piece.inside" if goal.field == "inside" else "piece.length")
    short = found - exact("shortest wanted", low, "mm")
    long = derived(
        "room under the longest wanted",
        "mm",
        lambda longest, found: longest - found,
        longest=exact("longest wanted", high, "mm"),
        found=found,
    )
    if answer := kept(short, long):
        return answer
    too_short = short.likely.low < long.likely.low
    word = "short" if too_short else "long"
    off = in_unit_of(abs(found.middle - wanted.middle), wanted)
    measured = "inside the loop" if goal.field == "inside" else "taut with the clasp closed"
    comes_out = f"{in_unit_of(found.middle, wanted)}, likely {between(*found.likely, wanted)}"
    tail = f": it comes to {comes_out}, {measured}, and {goal.text} is wanted"
    return Misfit(
        says=f"the piece {{is|may be}} too {word}{tail}",
        place=goal.place,
        found=comes_out,
        needed=goal.text,
        remedies=_remedies(ask, found, wanted, f"about {off} {'more' if too_short else 'less'}"),
        margin=short if too_short else long,
        also=tuple(rope.place_of("length") for rope in _ropes(ask)),
    )


def _ropes(ask: Ask) -> list[Part]:
    """The woven parts of the run whose length is written."""
    return [
        rope
        for rope in ask.plan.in_run
        if rope.stitch and rope.has("length") and not rope.fills_rest
    ]


def _strung(ask: Ask) -> list[Part]:
    """The parts of the run that are strung or woven."""
    return [part for entry in ask.plan.run for part in entry.parts if part.stitch]


def _more_beads(ask: Ask, strand: Part, more: float) -> Remedy:
    """So many beads that a counted strand comes out right."""
    had = strand.count("count")
    count = max(1, round(had + more * had / ask.of(strand, "length").middle))
    edit = Edit(strand.place_of("count"), str(count))
    return Remedy(f"string {count} beads of `{strand.name}` instead of {had}", (edit,))


def _remedies(ask: Ask, found: Quantity, wanted: Quantity, off: str) -> tuple[Remedy, ...]:
    by_hand = Remedy(f"make the run {off}")
    ropes = _ropes(ask)
    counted = [part for part in _strung(ask) if part.has("count")]
    if len(counted) == 1 and not ropes:
        return (_more_beads(ask, counted[0], wanted.middle - found.middle), by_hand)
    if len(ropes) != 1:
        return (by_hand,)
    (rope,) = ropes
    length = ask.of(rope, "length")
    places = sum(entry.parts.count(rope) for entry in ask.plan.run)
    new = length.middle + (wanted.middle - found.middle) / places
    if new <= 0:
        return (by_hand,)
    text = in_unit_of(round(new), length)
    edit = Edit(rope.place_of("length"), text)
    return (Remedy(f"weave {text} of `{rope.name}` instead of {length.spelling}", (edit,)), by_hand)


RULE = Rule(
    name="finished-length",
    family="length",
    subject=Piece,
    check=check,
    title="the run adds up to the length wanted, taut or inside as the plan says",
    why=(
        "caps, rings and clasp add their own centimetres to the rope; a necklace is found 3 cm"
        " short when the caps are glued"
    ),
    sources=(
        "taut length between bearing points: geometry, worked out for this project",
        "inside = length - pi x thickness: trade table `bracelet_eases`, several pages",
    ),
    bad="finished_length: 46 cm ± 1 cm over a run that comes to 43 cm",
    good="finished_length: 46 cm ± 1 cm over a run that comes to 46.2 cm",
)
