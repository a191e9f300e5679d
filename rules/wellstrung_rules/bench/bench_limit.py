"""A quantity against a limit that the bench sets of its own."""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung.rulebook import (
    Answer,
    Ask,
    HeldToHouseLimit,
    Misfit,
    Remedy,
    Rule,
    exact,
    kept,
    tightest,
)
from wellstrung.rulebook.values import Quantity
from wellstrung.rulebook.wording import lowered, raised, spelled


def check(held: HeldToHouseLimit, ask: Ask) -> Answer:
    found = ask.held_to_house_limit(held)
    if found is None:
        return None
    size, place = found
    limit, ends = held.limit, _ends(held, size)
    if answer := kept(*ends.values()):
        return answer
    margin = tightest(*ends.values())
    than = next(word for word, end in ends.items() if end is margin)
    called = f"`{held.item.name if held.item else limit.whose}.{limit.what}`"
    because = f": {limit.because}" if limit.because else ""
    return Misfit(
        says=f"{called} ({spelled(size)}) {{is|may be}} {than} than your bench allows"
        f" ({limit.text}){because}",
        place=place,
        found=spelled(size),
        needed=limit.text,
        remedies=(
            *_written(size, margin, than, called),
            Remedy(f"bring {called} to {limit.text}, or change the limit in your bench"),
        ),
        margin=margin,
        at_most=limit.level,
        also=(limit.place,),
    )


def _ends(held: HeldToHouseLimit, size: Quantity) -> dict[str, Quantity]:
    """The room up to each end of the limit, by what a size beyond that end is."""
    limit = held.limit
    source = f"{limit.place.file}:{limit.place.line}, written `{limit.text}`"
    ends = {}
    if limit.high is not None:
        ends["more"] = exact("the most", limit.high, limit.unit, source=source) - size
    if limit.low is not None:
        ends["less"] = size - exact("the least", limit.low, limit.unit, source=source)
    return ends


def _written(size: Quantity, margin: Quantity, than: str, called: str) -> Iterator[Remedy]:
    """The nearest size that keeps the limit, where the plan writes it."""
    if size.place is not None and size.spelling:
        new = lowered(size, margin) if than == "more" else raised(size, margin)
        yield Remedy.write(size.place, new, f"make {called} {new}")


RULE = Rule(
    name="bench-limit",
    family="bench",
    subject=HeldToHouseLimit,
    check=check,
    fault="outside a limit of the bench",
    title="a quantity keeps to the limit that your bench sets for it under `limits`",
    why=(
        "a school, a shop or a maker has reasons of its own: scales that stop at 60 g, a box that"
        " holds 50 cm, a rope that the kit's caps must take"
    ),
    sources=("the bench file of the maker",),
    bad="limits: {piece.mass: at most 60 g} where the piece weighs 72 g",
    good="limits: {piece.mass: at most 60 g} where the piece weighs 48 g",
)
