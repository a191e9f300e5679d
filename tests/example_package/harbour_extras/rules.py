"""Two rules about parts that a plan names by their kind: how many floats, and how wide."""

from __future__ import annotations

from wellstrung.rulebook import (
    Answer,
    Ask,
    Held,
    Limit,
    Misfit,
    Named,
    Part,
    Piece,
    Remedy,
    Rule,
    in_unit_of,
    kept,
)

_FEWEST = Limit("fewest floats", 2.0, "", "one float looks forgotten: the class, no source")
_WIDEST = Limit("float width", 30.0, "mm", "wider ones catch on sleeves: the class, no source")


def _floats(ask: Ask) -> list[Part]:
    return [part for part in ask.plan.parts.values() if part.kind.name == "cork float"]


def _enough(piece: Piece, ask: Ask) -> Answer:
    floats, fewest = _floats(ask), ask.limit(_FEWEST).middle
    if not floats:
        return None
    if len(floats) >= fewest:
        return Held()
    return Misfit(
        says=f"the piece has {len(floats)} float, which looks forgotten",
        place=floats[0].key.place,
        found=f"{len(floats)}",
        needed=f"{fewest:g} floats or none",
        remedies=(Remedy("hang one more, or leave it out"),),
        at_most="warning",
    )


def _narrow(named: Named, ask: Ask) -> Answer:
    if named.item not in _floats(ask):
        return None
    wide, widest = ask.of(named.item, "height"), ask.limit(_WIDEST)
    margin = widest - wide
    if answer := kept(margin):
        return answer
    most, sold = (in_unit_of(size, wide) for size in (widest.middle, widest.middle - 2))
    return Misfit(
        says=f"`{named.item.name}` {{is|may be}} wider than {most}, and catches on sleeves",
        place=named.item.place_of("height"),
        found=in_unit_of(wide.middle, wide),
        needed=f"{most} or narrower",
        remedies=(Remedy.write(named.item.place_of("height"), sold, f"take one of {sold}"),),
        margin=margin,
    )


FLOATS = Rule(
    "enough-floats", "count", Piece, _enough,
    title="no float alone", why="one float looks forgotten",
    sources=("the class, no source",), good="two floats", limits=(_FEWEST,),
)  # fmt: skip
HIGH_FLOAT = Rule(
    "high-float", "fit", Named, _narrow,
    title="floats that pass a sleeve", why="a wide float catches and tears the thread",
    sources=("the class, no source",), good="height: 20 mm", limits=(_WIDEST,),
)  # fmt: skip
