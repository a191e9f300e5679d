"""What a wrapped loop takes is in it before it is wrapped: afterwards only cutting opens it."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Held, Misfit, Remedy, Rule, WrappedLoop
from wellstrung.rulebook.plan import Eyes


def check(loop: WrappedLoop, ask: Ask) -> Answer:
    side, link, wrapped, brought = loop.takes, loop.link, loop.wrapped, loop.brought
    if brought is None or ask.opens(side):
        return Held()
    part = side.part if isinstance(side, Eyes) else side
    closed = side.words if isinstance(side, Eyes) else f"the {side.text('closing')} ring"
    return Misfit(
        says=f"step {wrapped.number} wraps the last loop of `{link.name}`, and only step"
        f" {brought.number} (`{brought.verb}`) brings `{part.name}`, which it has to take: neither"
        f" a wrapped loop nor {closed} opens",
        place=brought.place,
        found=f"step {brought.number}",
        needed=f"before step {wrapped.number}",
        remedies=(
            ask.moved_before(brought, wrapped),
            Remedy(f"slip `{part.name}` into the loop of `{link.name}` before you wrap it"),
        ),
        also=(wrapped.place,),
    )


RULE = Rule(
    name="wrapped-too-soon",
    family="work",
    subject=WrappedLoop,
    check=check,
    fault="loop wrapped too soon",
    title="what a wrapped loop takes is in it before the loop is wrapped",
    why="a wrapped loop does not open again: the chain that should hang in it is still on the mat,"
    " and the wire is cut off and made anew",
    sources=("two closed loops cannot be linked without cutting one: geometry",),
    bad="{do: wrap loop, part: link, times: 2}, {do: cut, part: chain piece} of soldered chain",
    good="{do: cut, part: chain piece}, {do: wrap loop, part: link, times: 2}",
)
