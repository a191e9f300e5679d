"""An eye linked straight into that of a clasp or a bail: each wall passes the other's hole.

A link of chain, or the loop of a connector or cap, is opened and hooked into the clasp; the foot of
a bail is hooked into a pendant. Either wall lies in the other's hole, so that both holes count.
"""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, EyesMeet, Misfit, Rule, holds, kept
from wellstrung.rulebook.plan import Eyes, Role
from wellstrung.rulebook.remedies import in_words
from wellstrung.rulebook.values import Quantity, printed
from wellstrung.rulebook.wording import raised, spelled


def check(meeting: EyesMeet, ask: Ask) -> Answer:
    one, other = meeting.one, meeting.other
    if not (isinstance(one, Eyes) and isinstance(other, Eyes)):
        return None
    if {Role.CLASP, Role.BAIL}.isdisjoint((one.part.kind.role, other.part.kind.role)):
        return None
    margins = [(_room(one, other, ask), one, other), (_room(other, one, ask), other, one)]
    margin, outer, inner = min(margins, key=lambda found: found[0].likely.low)
    moves = margin - printed("jump_rings", "through a loop", "room")
    if answer := kept(moves):
        return answer
    forced = not holds(margin)
    hole, wall = ask.get(outer.quantity("hole")), ask.get(inner.quantity("wire"))
    need = f"{raised(hole, moves)} or wider"
    does = "{does|may} not pass" if forced else "{passes|may pass} without play"
    return Misfit(
        says=f"the wall of {inner.words} ({spelled(wall)}) {does} {outer.words}, which is"
        f" {spelled(hole)} wide",
        place=meeting.place,
        found=f"a hole of {spelled(hole)}",
        needed=f"a hole of {need}",
        remedies=(
            in_words(
                f"put a jump ring between `{inner.part.name}` and `{outer.part.name}`, or take a"
                f" part whose eye is {need}",
                outer.part,
                *outer.path,
                "hole",
                low=hole.middle - moves.likely.low,
            ),
        ),
        margin=margin if forced else moves,
        at_most="error" if forced else "warning",
        also=(outer.part.place_of(*outer.path, "hole"),),
    )


def _room(outer: Eyes, inner: Eyes, ask: Ask) -> Quantity:
    """What is left of the hole of the one with the wall of the other in it."""
    return ask.get(outer.quantity("hole")) - ask.get(inner.quantity("wire"))


RULE = Rule(
    name="clasp-eye",
    family="fit",
    subject=EyesMeet,
    check=check,
    fault="eye too small to link",
    title=(
        "an eye that is linked into the eye of a clasp or a bail fits through it, and the other way"
        " round (with a ring: `ring-through-eye`; whether one opens: `no-way-in`)"
    ),
    why=(
        "the last link of a chain is opened to be hooked straight into the clasp, and the clasp's"
        " cast loop turns out thicker than the link is wide"
    ),
    sources=(
        "trade table `jump_rings`, through a loop: the loop is wider than the wire by 0.1 mm,"
        " common practice",
        "a wall in a hole: geometry",
    ),
    bad="run: [toggle.a, tail] with a link 1 mm wide inside and a clasp's loop of 1.2 mm",
    good="run: [toggle.a, tail] with a link 2 mm wide inside and a clasp's loop of 1.2 mm",
)
