"""The centre of a piece lies in the middle: the run is as long before it as after it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from wellstrung.rulebook import Answer, Ask, Centred, Limit, Misfit, Remedy, Rule, kept
from wellstrung.rulebook.plan import Part, Role, beads_in_order
from wellstrung.rulebook.values import Quantity, derived, exact, times, total
from wellstrung.rulebook.wording import about, number

CENTRE_OFF = Limit(
    "centre off",
    3.0,
    "mm",
    "a centre piece further off the middle is seen, common practice, no source",
)


def check(centred: Centred, ask: Ask) -> Answer:
    item, part = centred.item, centred.entry.part
    strung = [] if isinstance(item, Part) else beads_in_order(part)
    sides = [[ask.adds(entry) for entry in side] for side in (centred.before, centred.after)]
    if strung:  # of such beads the one nearest to the middle
        middle = (len(strung) - 1) / 2
        places = (n for n, name in enumerate(strung) if name == item.name)
        at = min(places, key=lambda n: abs(n - middle))
        sides[0] += _beads(strung[:at], part, ask)
        sides[1] += _beads(strung[at + 1 :], part, ask)
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
    even = part if strung and len(strung) % 2 == 0 and part.has("count") else None
    if even and len(set(strung)) == 1:
        remedies = _odd_number(part, strung)
    else:
        remedies = _longer_side(centred, off, ask, after=before.middle > after.middle)
    return Misfit(
        says=f"`{item.name}` belongs in the middle, but {{lies|may lie}} {about(off)} off it:"
        f" {about(before)} come before it and {about(after)} after it",
        place=even.place_of("count") if even else centred.entry.place,
        found=f"{about(off)} off the middle",
        needed=f"{about(ask.limit(CENTRE_OFF))} off the middle at most",
        remedies=tuple(remedies),
        margin=margin,
        also=(centred.place,),
    )


def _beads(names: list[str], part: Part, ask: Ask) -> list[Quantity]:
    """What the beads on one side of a bead take, each with the knot or the gap beside it."""
    found = [times(ask.of(ask.plan.beads[name], "length"), n) for name, n in Counter(names).items()]
    between = ask.of(part, "between")
    if names and between.middle:
        found.append(times(between, len(names)))
    return found or [exact("none", 0.0, "mm")]


def _odd_number(part: Part, strung: list[str]) -> Iterator[Remedy]:
    for odd in (len(strung) + 1, len(strung) - 1):
        text = f"string {odd} of `{strung[0]}`: an odd number has a middle"
        yield Remedy.write(part.place_of("count"), str(odd), text)
    yield Remedy("string an odd number of beads: an even one has none in the middle")


def _longer_side(centred: Centred, off: Quantity, ask: Ask, *, after: bool) -> Iterator[Remedy]:
    short, long = ("after", "before") if after else ("before", "after")
    for entry in centred.after if after else centred.before:
        if entry.part.kind.role is Role.RING:
            linked = entry.linked + round(2 * off.middle / ask.of(entry.part, "along").middle)
            text = f"{{part: {entry.part.name}, linked: {linked}}}"
            said = f"link {linked} of `{entry.part.name}` there instead of {entry.linked}"
            yield Remedy.write(entry.place, text, said)
    yield Remedy(f"add about {number(2 * off.middle)} mm {short} it, or remove as much {long} it")


RULE = Rule(
    name="centre-falls",
    family="length",
    subject=Centred,
    check=check,
    fault="centre off the middle",
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
