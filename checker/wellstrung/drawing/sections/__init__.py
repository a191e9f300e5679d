"""Each fit of a plan drawn in section, to scale: what is found, what is needed, what is said of it.

A section is drawn where the plan has the values for it; one join that is made several times is
drawn once. What does not fit is told by hatching and by the number of its remark, never by colour
alone. `looks.css` beside this package says what these classes of a section look like:

* `metal work thread` and the same with `-lines`: what is cut, and its hatching; `opening`: a hole
* `edge axis hidden reckoned`: outlines, middle lines, what lies behind, a simpler shape reckoned
* `held needle`: round things in a hole
* `likely likely-lines worst`: how far a size may be off; `clash`: what has no room
* `taken`: the hole that things take together; `true`: what an open ring still closes true round
* `lost`: what a cut loses; `scissors`: where it is cut; `break`: where a thing goes on
* `measure tick reach words`: dimensions and their words
* `flag flag-number pointer pointed`: the number of a remark and what it is about
* `bar bar-block`: the check bar, 50 mm on paper; `swatch`: patches of the key
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

from wellstrung import joins
from wellstrung.checking import PlanResult
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
from wellstrung.model import Missing
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

#: the style sheet for sections, for a page to take in
LOOKS = Path(__file__).parent.parent / "looks.css"

#: what draws each kind of join; one that lacks a value raises Missing and is left out
_DRAWN: dict[type[Subject], tuple[Callable[[Case[Any]], Figure | None], ...]] = {
    RopeInCap: (cap.draw,),
    StrandsInCone: (cone.draw,),
    RingHolds: (ring.holding, ring.reaching),
    RingThroughEye: (eye.draw,),
    Threaded: (hole.draw,),
    CoreInRope: (fitted.in_rope,),
    StrandInCrimp: (fitted.in_crimp,),
    EyesMeet: (fitted.in_eye,),
    Toggle: (toggle.lying, toggle.swung),
    EndLink: (link.draw,),
    PieceCut: (chain.draw,),
    HungOnEyes: (fringe.draw,),
}


def sections(result: PlanResult) -> list[Figure]:
    """Every fit of the plan that can be drawn, misfits first: errors, then warnings, then the rest.

    Empty where the result keeps no plan: `Checker(host, quantities=True)` keeps it.
    """
    return [figure for _, figure in sorted(_drawn(result), key=lambda one: one[0])]


def _drawn(result: PlanResult) -> Iterator[tuple[tuple[int, int], Figure]]:
    """Figures with what they are sorted by; equal ones stay in the order of the joins."""
    if result.ask is None:
        return
    ask = result.ask
    said = tuple(Said(number, remark) for number, remark in enumerate(result.numbered, 1))
    times = joins.times_made(ask.plan)
    for join in joins.find(ask.plan):
        for draw in _DRAWN.get(type(join), ()):
            try:
                figure = draw(Case(join, ask, max(times[join], 1), said))
            except Missing:
                continue
            if figure is not None:
                yield _rank(figure, said), figure


def _rank(figure: Figure, said: tuple[Said, ...]) -> tuple[int, int]:
    """Errors before warnings, these before what is accepted or held; then by number."""
    marked = [said[number - 1] for number in figure.remarks]
    ranks = [
        (("error", "warning").index(one.remark.level) if one.remark.counts else 2, one.number)
        for one in marked
    ]
    return min(ranks, default=(3, 0))
