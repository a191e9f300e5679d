"""Cup chain is joined by its ends: a cup has no hole for a ring."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Held, HeldInPlace, Misfit, Remedy, Rule, of_cups
from wellstrung.rulebook.plan import Part, Role
from wellstrung.rulebook.wording import article


def check(held: HeldInPlace, ask: Ask) -> Answer:
    cups, other = (held.part, held.other) if of_cups(held.part) else (held.other, held.part)
    chain = cups.cut_from
    if chain is None or not chain.traits.cups:
        return None
    by = held.line.by if held.line is not None else None
    if (held.line is not None and held.line.on_thread) or (other.traits.cups and by is None):
        return Held()
    meets = f"`{by.name}`" if by is not None else f"`{other.name}`"
    return Misfit(
        says=f"the last cup of `{cups.name}` meets {meets}, {article((by or other).noun)}, and a"
        " cup has no hole for it",
        place=held.place,
        found="no hole",
        needed="a cup chain end",
        remedies=_remedies(f"cup chain end {chain.said('size')}", cups, other, meets),
        also=(cups.key.place,),
    )


def _remedies(end: str, cups: Part, other: Part, meets: str) -> tuple[Remedy, ...]:
    if other.traits.cups:
        return (Remedy(f"take `by` out: the tabs of `{other.name}` hold the cup"),)
    if other.kind.role is Role.CAP:
        return (Remedy(f"take a `{end}` for `{other.name}`, or another beside it for these cups"),)
    return (
        Remedy(f"add `end: {end}` to `parts`, and `end` between `{cups.name}` and {meets}"),
        Remedy(
            "or bind thin wire round the little link between the last two cups, with a loop in it"
            f" for {meets}, and write it as a wire link"
        ),
    )


RULE = Rule(
    name="cup-end",
    family="joining",
    subject=HeldInPlace,
    check=check,
    fault="no end on cup chain",
    title="the last cup of cup chain is in a cup chain end, whose eye takes a ring",
    why="a cup is a closed setting: a ring finds no way through it, and one round the little link"
    " behind it bends that link until it breaks",
    sources=("a ring, a loop or thread does not go through a cup: common practice, no source",),
    bad="run: [clasp.a, ring, sparkle, ring, clasp.b] with `sparkle: ss12 cup chain, 15 cm`",
    good="run: [clasp.a, ring, end, sparkle, end, ring, clasp.b] with `end: ss12 cup chain end`",
)
