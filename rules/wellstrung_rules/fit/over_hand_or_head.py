"""The way round inside a closed loop against the hand or the head that it goes on over."""

from __future__ import annotations

import math

from wellstrung.rulebook import Answer, Ask, Limit, Misfit, Missing, PutOn, Remedy, Rule, kept
from wellstrung.rulebook.plan import Edit, Part, Role
from wellstrung.rulebook.values import Quantity, derived
from wellstrung.rulebook.wording import about, in_unit_of, spelled

ELASTIC_STRETCH = Limit(
    "elastic stretch",
    1.5,
    "",
    "times its length that a strand on elastic goes on over a hand, common practice",
)


def check(loop: PutOn, ask: Ask) -> Answer:
    if loop.wearer is None:
        raise Missing(f"`wearer: {{{loop.measure}: ...}}`")
    body, inside = loop.wearer.length(loop.measure), ask.get("piece.inside")
    elastic = [part for part in loop.strands if _stretches(part)]
    opened = _opened(inside, elastic, ask) if elastic else inside
    margin = opened - body
    if answer := kept(margin):
        return answer
    stretched = f", {about(opened, body)} stretched" if elastic else ""
    head = f"the {ask.plan.piece} ({about(inside, body)} inside{stretched})"
    tail = f"go on over the {loop.measure} ({spelled(body)})"
    more = -margin.likely.low / (ask.limit(ELASTIC_STRETCH).middle if elastic else 1)
    return Misfit(
        says=f"{head} {{cannot|may not}} {tail}",
        place=loop.place,
        found=f"{in_unit_of(opened.middle, body)} at most",
        needed=f"{in_unit_of(body.middle, body)} or more",
        remedies=_remedies(loop, ask, more, body),
        margin=margin,
        at_most="warning" if elastic else "error",
        also=(loop.wearer.place_of(loop.measure),),
    )


def _stretches(part: Part) -> bool:
    """Whether a strand is on elastic; no other part gives."""
    return part.kind.role is Role.STRAND and part.thread.stretches


def _opened(inside: Quantity, elastic: list[Part], ask: Ask) -> Quantity:
    """The way round inside with what is on elastic drawn out, mm."""
    strands = {f"strand{n}": ask.of(part, "length") for n, part in enumerate(elastic, 1)}
    return derived(
        "inside, stretched",
        "mm",
        lambda inside, stretch, **strands: stretched(inside, sum(strands.values()), stretch),
        {"inside": inside, "stretch": ask.limit(ELASTIC_STRETCH), **strands},
        source="geometry, worked out for this project",
    )


def stretched(inside: float, strands: float, stretch: float) -> float:
    """The way round inside, mm, where strands of a length are drawn out `stretch` times as long.

    Counting.

    >>> stretched(inside=170.0, strands=180.0, stretch=1.5)
    260.0
    """
    return inside + (stretch - 1) * strands


def _remedies(loop: PutOn, ask: Ask, more: float, body: Quantity) -> tuple[Remedy, ...]:
    by = in_unit_of(more, body)
    by_hand = Remedy(f"make the run about {by} longer, or give it a clasp")
    written = [part for part in loop.strands if part.stitch and part.has("length")]
    if len(written) != 1 or written[0].fills_rest or len(ask.plan.run[0].parts) > 1:
        return (by_hand,)
    (part,) = written
    length = part.length("length")
    places = sum(entry.part is part for entry in ask.plan.run)
    text = in_unit_of(math.ceil(length.middle + more / places), length)
    edit = Edit(part.place_of("length"), text)
    return (Remedy(f"make `{part.name}` {text} instead of {length.spelling}", (edit,)), by_hand)


RULE = Rule(
    name="over-hand-or-head",
    family="fit",
    subject=PutOn,
    check=check,
    title="a piece that nothing opens goes on over the hand or the head",
    why="a bangle that fits the wrist stops at the knuckles, and a strung loop at the ears",
    limits=(ELASTIC_STRETCH,),
    sources=(
        "inside = length - pi x thickness: trade table `bracelet_eases`, several pages",
        "a strand on elastic draws out to 1.5 times its length: common practice, no source",
    ),
    bad="closes: over the hand and wearer: {hand: 20 cm} for a bangle of 18 cm inside",
    good="closes: over the hand and wearer: {hand: 20 cm} for a bangle of 21 cm inside",
)
