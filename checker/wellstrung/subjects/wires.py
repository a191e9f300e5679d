"""Lines that run on through spacer bars, from one group of strands to the next."""

from __future__ import annotations

from typing import NamedTuple

from wellstrung.common.cache import cached
from wellstrung.model.parts import Part, Role
from wellstrung.model.plan import Plan


class Wire(NamedTuple):
    """One line: the strands on it, one after another, and all the bars that it goes through."""

    strands: tuple[Part, ...]
    bars: tuple[Part, ...]


@cached
def wires(plan: Plan) -> tuple[Wire, ...]:
    """The lines that go through a bar: one for each of the strands that lie side by side."""
    found, lines, bars = list[Wire](), list[Wire](), tuple[Part, ...]()
    for entry in plan.run:
        if entry.part.kind.role is Role.STRAND:
            if not (bars and len(lines) == len(entry.parts)):
                found, lines, bars = [*found, *lines], [Wire((), ())] * len(entry.parts), ()
            lines = [
                Wire((*one.strands, part), (*one.bars, *bars))
                for one, part in zip(lines, entry.parts, strict=True)
            ]
            bars = ()
        elif lines and any(eye.strung for eye in entry.part.kind.eyes.values()):
            bars = (*bars, entry.part)
        else:
            found, lines, bars = [*found, *lines], [], ()
    return tuple(one for one in (*found, *lines) if one.bars)
