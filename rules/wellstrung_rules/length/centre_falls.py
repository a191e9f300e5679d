"""The centre of a piece lies in the middle: the run is as long before it as after it."""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung.rulebook import Answer, Ask, Centred, Limit, Misfit, Missing, Remedy, Rule, kept
from wellstrung.rulebook.plan import Item, Part, Role, RunEntry
from wellstrung.rulebook.values import Quantity, derived, exact, times, total
from wellstrung.rulebook.wording import about, number

CENTRE_OFF = Limit(
    "centre off",
    3.0,
    "mm",
    "a centre piece further off the middle is seen, common practice, no source",
)


def check(centred: Centred, ask: Ask) -> Answer:
    strung = None if isinstance(centred.item, Part) else _strung(centred.entry.part)
    sides = [[ask.adds(entry) for entry in side] for side in (centred.before, centred.after)]
    if strung:
        at = _nearest(strung, centred.item)
        sides[0] += _beads(strung[:at], centred.entry.part, ask)
        sides[1] += _beads(strung[at + 1 :], centred.entry.part, ask)
    before, after = total("before it", "mm", sides[0]), total("after it", "mm", sides[1])
    off = derived(
        "off the middle",
        "mm",
        lambda before, after: abs(before - after) / 2,
        scan=True,
        before=before,
        after=after,
        source="half of what one side is longer: geometry, worked out for this project",
    )
    margin = ask.limit(CENTRE_OFF) - off
    if answer := kept(margin):
        return answer
    long = "before" if before.middle > after.middle else "after"
    part = centred.entry.part
    even = strung is not None and len(strung) % 2 == 0 and part.has("count")
    return Misfit(
        says=f"`{centred.item.name}` belongs in the middle, but {{lies|may lie}} {about(off)} off"
        f" it: {about(before)} come before it and {about(after)} after it",
        place=part.place_of("count") if even else centred.entry.place,
        found=f"{about(off)} off the middle",
        needed=f"{about(ask.limit(CENTRE_OFF))} off the middle at most",
        remedies=tuple(_remedies(centred, ask, strung, off, long)),
        margin=margin,
        also=(centred.place,),
    )


def _strung(part: Part) -> list[str]:
    """The beads of a strand in their order; raises Missing without a number or an order."""
    node = part.node_at("beads")
    written = node.value if node is not None else []
    if isinstance(written, dict):
        raise Missing(f"the beads of `{part.name}` in their order, as a list")
    repeat = [str(name) for name in written] if isinstance(written, list) else [str(written)]
    if part.has("repeats"):
        return repeat * part.count("repeats")
    number = part.count("count")
    return (repeat * (number // len(repeat) + 1))[:number]


def _nearest(strung: list[str], bead: Item) -> int:
    """Where in the strand such a bead is nearest to the middle, counted from 0."""
    middle = (len(strung) - 1) / 2
    places = [n for n, name in enumerate(strung) if name == bead.name]
    return min(places, key=lambda place: abs(place - middle))


def _beads(names: list[str], part: Part, ask: Ask) -> list[Quantity]:
    """What the beads on one side of a bead take, each with the knot or the gap beside it."""
    found = [
        times(ask.of(ask.plan.beads[name], "length"), names.count(name))
        for name in dict.fromkeys(names)
    ]
    between = ask.of(part, "between")
    if names and between.middle:
        found.append(times(between, len(names)))
    return found or [exact("none", 0.0, "mm")]


def _remedies(
    centred: Centred, ask: Ask, strung: list[str] | None, off: Quantity, long: str
) -> Iterator[Remedy]:
    part = centred.entry.part
    if strung and len(set(strung)) == 1 and len(strung) % 2 == 0 and part.has("count"):
        for odd in (len(strung) + 1, len(strung) - 1):
            text = f"string {odd} of `{centred.item.name}`: an odd number has a middle"
            yield Remedy.write(part.place_of("count"), str(odd), text)
        yield Remedy("string an odd number of beads: an even number has no bead in the middle")
        return
    shorter = centred.after if long == "before" else centred.before
    for entry in shorter:
        if entry.part.kind.role is Role.RING:
            yield _more_rings(entry, off, ask)
    side = "after" if long == "before" else "before"
    more = f"{number(2 * off.middle)} mm"
    yield Remedy(f"add about {more} {side} it, or take as much away {long} it")


def _more_rings(entry: RunEntry, off: Quantity, ask: Ask) -> Remedy:
    each = ask.of(entry.part, "along").middle
    linked = entry.linked + round(2 * off.middle / each)
    name = entry.part.name
    text = f"link {linked} of `{name}` there instead of {entry.linked}"
    return Remedy.write(entry.place, f"{{part: {name}, linked: {linked}}}", text)


RULE = Rule(
    name="centre-falls",
    family="length",
    subject=Centred,
    check=check,
    title="the centre of a piece lies in the middle, opposite the middle of the clasp",
    why=(
        "a centre stone looks right on the mat; when worn, the clasp creeps forward on the side"
        " that is a centimetre too short"
    ),
    limits=(CENTRE_OFF,),
    sources=(
        "half of what one side is longer: geometry, worked out for this project",
        "3 mm off the middle is seen: common practice, no source",
    ),
    bad="centre: stone, with count: 48 of `stone`",
    good="centre: stone, with count: 49 of `stone`",
    level="warning",
)
