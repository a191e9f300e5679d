"""The way round inside a closed loop against the hand or the head that it goes on over."""

from __future__ import annotations

import math

from wellstrung.formulas.arithmetic import added
from wellstrung.rulebook import Answer, Ask, Limit, Misfit, Missing, PutOn, Remedy, Rule, kept
from wellstrung.rulebook.plan import Part, Role
from wellstrung.rulebook.remedies import run_longer
from wellstrung.rulebook.values import Quantity, derived
from wellstrung.rulebook.wording import about, at_least, in_unit_of, spelled

ELASTIC_STRETCH = Limit(
    "elastic stretch",
    1.5,
    "",
    "times its length that a strand on elastic goes on over a hand, common practice",
)


def check(loop: PutOn, ask: Ask) -> Answer:
    if loop.wearer is None:
        raise Missing(f"`wearer: {{{loop.measure}: ...}}`")
    body, inside = loop.wearer.girth(loop.measure), ask.filled("piece.inside")
    if any(part.traits.slides for part in ask.plan.in_run):
        inside = inside + (ask.get("piece.longest") - ask.get("piece.length"))
    elastic = [p for p in loop.strands if p.kind.role is Role.STRAND and p.thread.stretches]
    opened = _opened(inside, elastic, ask) if elastic else inside
    margin = opened - body
    if answer := kept(margin):
        return answer
    drawn_out = f", {about(opened, body)} stretched" if elastic else ""
    more = -margin.likely.low / (ask.limit(ELASTIC_STRETCH).middle if elastic else 1)
    by_hand = f"make the run about {at_least(more, body)} longer, or give it a clasp"
    return Misfit(
        says=f"the {ask.plan.piece} ({about(inside, body)} inside{drawn_out}) {{cannot|may not}} go"
        f" on over the {loop.measure} ({spelled(body)})",
        place=loop.place,
        found=f"{in_unit_of(opened.middle, body)} at most",
        needed=f"{at_least(body.middle, body)} or more",
        remedies=(*run_longer(ask, more, math.ceil), Remedy(by_hand)),
        margin=margin,
        at_most="warning" if elastic else "error",
        also=(loop.wearer.place_of(loop.measure),),
    )


def _opened(inside: Quantity, elastic: list[Part], ask: Ask) -> Quantity:
    """The way round inside with what is on elastic drawn out, mm."""
    return derived(
        "inside, stretched",
        "mm",
        lambda inside, stretch, **strands: inside + (stretch - 1) * added(strands.values()),
        {f"strand{n}": ask.of(part, "length") for n, part in enumerate(elastic, 1)},
        inside=inside,
        stretch=ask.limit(ELASTIC_STRETCH),
        source="counting",
    )


RULE = Rule(
    name="over-hand-or-head",
    family="fit",
    subject=PutOn,
    check=check,
    fault="does not go over hand or head",
    title="a piece that nothing opens goes on over the hand or the head",
    why="a bangle that fits the wrist stops at the knuckles, and a strung loop at the ears",
    limits=(ELASTIC_STRETCH,),
    sources=(
        "inside = length - pi x thickness: trade table `bracelet_eases`, thick beads: several"
        " pages",
        "a strand on elastic draws out to 1.5 times its length: common practice, no source",
    ),
    bad="closes: over the hand and wearer: {hand: 20 cm} for a bangle of 18 cm inside",
    good="closes: over the hand and wearer: {hand: 20 cm} for a bangle of 21 cm inside",
)
