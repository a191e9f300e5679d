"""A wire link through the narrow hole of the cone that it holds."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Rule, StopsAt
from wellstrung.rulebook.plan import Part
from wellstrung_rules.fit import through


def check(join: StopsAt, ask: Ask) -> Answer:
    cone = join.at
    if not isinstance(cone, Part):
        return None
    return through(join.carrier, cone, f"the narrow hole of cone `{cone.name}`", "", ask)


RULE = Rule(
    name="wire-in-cone",
    family="fit",
    subject=StopsAt,
    check=check,
    fault="wire too thick for its cone",
    title=(
        "the wire of a link passes the narrow hole of its cone (that its loop does not: `end-stop`)"
    ),
    why="the strands are strung and on the loop before the cone is tried, and the wire stops in it",
    sources=("a wire passes a hole that is no narrower than the wire: geometry",),
    bad="link of 20 AWG (0.81 mm) through a cone with a hole of 0.7 mm",
    good="link of 20 AWG (0.81 mm) through a cone with a hole of 1.5 mm",
)
