"""The length of a necklace against the name that it is sold under."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Choice, Misfit, Piece, Remedy, Rule, kept
from wellstrung.rulebook.plan import Place
from wellstrung.rulebook.values import Quantity, Window, leaf, table
from wellstrung.rulebook.wording import about, between, in_unit_of


def check(piece: Piece, ask: Ask) -> Answer:
    written = ask.plan.tree.entries.get("called")
    if written is None or ask.plan.piece != "necklace":
        return None
    name = str(written.node.value)
    found, seen, goal = ask.filled("piece.length"), _seen(name), ask.plan.goal
    like = leaf("wanted", 0.0, "mm", spelled_unit=goal.unit) if goal else found
    shortest, longest = _edges(name, like.spelled_unit)
    short, long = found - shortest, longest - found
    if answer := kept(short, long):
        return answer
    too_short = short.likely.low < long.likely.low
    needed = _words(seen, like)
    return Misfit(
        says=f"the necklace is {about(found, like)} long, which {{is|may be}} too"
        f" {'short' if too_short else 'long'} for the name `{name}` ({needed})",
        place=written.node.place,
        found=f"`{name}` of {in_unit_of(found.middle, like)}",
        needed=needed,
        remedies=_remedies(found, needed, written.node.place),
        margin=short if too_short else long,
        fault=f"piece too {'short' if too_short else 'long'} for its name",
        also=(goal.place,) if goal else (),
    )


#: the longest name has no upper end in print: the way round the Earth stands for it
_ENDLESS = 4e10
_TABLE = "trade table `necklace_lengths`, the widest range seen"
_MOVED = "makers move an edge by 2 in, common practice, no source"
_TWO_INCHES = 50.8


def _edges(name: str, unit: str) -> tuple[Quantity, Quantity]:
    """The shortest and the longest of a name, mm, and where makers end it instead."""
    seen, cells = _seen(name), table("necklace_lengths").row(name).cells
    low = min(seen.low, cells["least"].value - _TWO_INCHES)
    high = max(seen.high, cells["most"].value + _TWO_INCHES) if "most" in cells else seen.high
    spans = (seen.low, Choice(low, seen.low, _MOVED)), (seen.high, Choice(seen.high, high, _MOVED))
    shortest, longest = (
        leaf(f"{word} {name}", edge, "mm", spelled_unit=unit, source=_TABLE, choice=span)
        for word, (edge, span) in zip(("shortest", "longest"), spans, strict=True)
    )
    return shortest, longest


def _seen(name: str) -> Window:
    """From the shortest to the longest that pages give for a name, mm."""
    row = table("necklace_lengths").row(name)
    longest = row.cells.get("seen_most")
    return Window(row.cell("seen_least").value, longest.value if longest else _ENDLESS)


def _words(seen: Window, like: Quantity) -> str:
    if seen.high == _ENDLESS:
        return f"{in_unit_of(seen.low, like)} or more"
    return between(seen.low, seen.high, like)


def _remedies(found: Quantity, needed: str, place: Place) -> tuple[Remedy, ...]:
    by_hand = Remedy(f"make it {needed}, or leave the name out")
    fitting = [
        name
        for name in table("necklace_lengths").rows
        if _seen(name).low <= found.likely.low and found.likely.high <= _seen(name).high
    ]
    named = [Remedy.write(place, name, f"call it `{name}`") for name in fitting]
    return (*named, by_hand)


RULE = Rule(
    name="length-name",
    family="length",
    subject=Piece,
    check=check,
    fault="length does not suit its name",
    title="a necklace has the length that its name promises",
    why="a buyer who orders a princess knows where it should lie, and sends a longer one back",
    sources=(
        "makers move an edge of a name by 2 in: common practice, no source",
        "names of necklace lengths, in inches: trade table `necklace_lengths`, several pages",
    ),
    bad="called: princess over a run of 55 cm",
    good="called: princess over a run of 46 cm",
    level="warning",
)
