"""Each fit of a plan drawn in section, to scale: what is found, what is needed, and its remarks.

A checked plan in, figures out. A section is drawn where the plan has the values for it; a join that
is made several times is drawn once. Hatching and the number of a remark show what does not fit,
never colour alone. `sections.css` beside this package says what their classes look like.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Any

from wellstrung.drawing import Figure
from wellstrung.drawing.sections import (
    cap,
    chain,
    cone,
    eye,
    fitted,
    fringe,
    hole,
    link,
    ring,
    toggle,
)
from wellstrung.drawing.sections.case import Case, Said
from wellstrung.judging.result import PlanResult
from wellstrung.model.item import Missing
from wellstrung.model.plan import Plan
from wellstrung.rulebook import (
    CoreInRope,
    EndLink,
    EyesMeet,
    HungOnEyes,
    PieceCut,
    RingHolds,
    RingThroughEye,
    RopeInCap,
    StrandInCrimp,
    StrandsInCone,
    Subject,
    Threaded,
    Toggle,
)
from wellstrung.subjects.find import standing, times_made

#: what draws each kind of join; one that lacks a value raises Missing and is left out
_DRAWN: dict[type[Subject], tuple[Callable[[Case[Any]], Figure | None], ...]] = {
    RopeInCap: (cap.draw,),
    StrandsInCone: (cone.draw,),
    RingHolds: (ring.holding, ring.reaching),
    RingThroughEye: (eye.draw,),
    Threaded: (hole.draw, hole.needled),
    CoreInRope: (fitted.in_rope,),
    StrandInCrimp: (fitted.in_crimp,),
    EyesMeet: (fitted.in_eye,),
    Toggle: (toggle.lying, toggle.swung),
    EndLink: (link.draw,),
    PieceCut: (chain.draw,),
    HungOnEyes: (fringe.draw,),
}


#: So many joins are drawn, and the first figures shown: a page has room for a few.
_MOST_DRAWN = 200


def sections(result: PlanResult) -> list[Figure]:
    """Every fit of the plan that can be drawn: errors first, then warnings, then the rest.

    Empty where the result keeps no plan: `Checker(host, quantities=True)` keeps it.
    """
    return [figure for _, figure in sorted(_drawn(result), key=lambda one: one[0])]


def _drawn(result: PlanResult) -> Iterator[tuple[tuple[int, int], Figure]]:
    """Figures with what they are sorted by; equal ones stay in the order of the joins."""
    if result.ask is None:
        return
    ask = result.ask
    said = tuple(Said(number, remark) for number, remark in enumerate(result.numbered, 1))
    times = times_made(ask.plan)
    for join in _worth_most(list(_fits(ask.plan)), result):
        for draw in _DRAWN.get(type(join), ()):
            try:
                figure = draw(Case(join, ask, max(times[join], 1), said))
            except Missing:
                continue
            if figure is not None:
                yield _rank(figure, said), figure


def _fits(plan: Plan) -> Iterator[Subject]:
    """The joins of the plan; an eye that holds several rings is drawn with all of them only."""
    found = standing(plan)
    wires = [join for join in found if isinstance(join, RingThroughEye)]
    several = {(join.ring, join.eyes) for join in wires if join.rings > 1}
    lone = {join for join in wires if join.rings == 1 and (join.ring, join.eyes) in several}
    yield from (join for join in found if join not in lone)


def _worth_most(joins: list[Subject], result: PlanResult) -> list[Subject]:
    """The joins to draw: all, or of very many those about the parts of remarks, then the first."""
    if len(joins) > _MOST_DRAWN:
        marked = {name for remark in result.numbered for name in remark.parts}
        joins.sort(key=lambda join: marked.isdisjoint(join.parts))
    return joins[:_MOST_DRAWN]


def _rank(figure: Figure, said: tuple[Said, ...]) -> tuple[int, int]:
    """Errors before warnings, these before what is accepted or held; then by number."""
    marked = [said[number - 1] for number in figure.remarks]
    ranks = [
        (("error", "warning").index(one.remark.level) if one.remark.counts else 2, one.number)
        for one in marked
    ]
    return min(ranks, default=(3, 0))
