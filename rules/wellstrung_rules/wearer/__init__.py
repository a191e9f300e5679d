"""Rules of the family `wearer`, and the words and look-ups that several of them share."""

from collections.abc import Mapping

from wellstrung.rulebook import MetalParts, Missing
from wellstrung.rulebook.plan import STATEMENTS, Part
from wellstrung.rulebook.values import metal as metal_row
from wellstrung.rulebook.wording import listed

CHILDREN = {"child": "a child", "under three": "a child under three"}
#: pieces that go round the neck
ROUND_THE_NECK = ("necklace", "lariat", "pendant", "lanyard", "spectacle chain")
LAW_FIRST = "local law and qualified advice come first"


def may_hold(metal: MetalParts, ruled_out: Mapping[str, set[str]]) -> dict[Part, list[str]]:
    """The parts whose metal may hold some substances, by the trade tables, with what each may hold.

    `ruled_out` has for each substance the statements of a supplier that rule it out. Raises Missing
    where no part may hold any and the metal of one is not known.
    """
    found, unknown = {}, None
    for part in metal.metal_parts:
        stated = set(part.texts("states"))
        asked = [what for what, statements in ruled_out.items() if not statements & stated]
        if asked and not part.has("metal"):
            unknown = unknown or part
        elif asked:
            row = metal_row(part.text("metal"))
            if held := [what for what in asked if row.text(what)]:
                found[part] = held
    if unknown and not found:
        raise Missing(f"`metal` of `{unknown.name}`, or what its supplier `states`")
    return found


def metal_of(part: Part) -> str:
    """The metal of a part as written, and what states nothing.

    A finish, or a name that no table has, states no alloy; nor does a word such as hypoallergenic.
    """
    if not part.has("metal"):
        return "metal unknown"
    name, row = part.said("metal"), metal_row(part.text("metal")).name
    unknown = row == "unknown" and name != "unknown"
    empty = [word for word in part.texts("states") if word not in STATEMENTS]
    says = f", {listed(empty)} states nothing" if empty else ""
    return f"{name}{', alloy unknown' if unknown else ''}{says}"


def with_metals(parts: Mapping[Part, object]) -> str:
    """The names of parts, and in brackets the metals they are made of."""
    metals = dict.fromkeys(metal_of(part) for part in parts)
    between = "; " if any("," in metal for metal in metals) else ", "
    return f"{listed(part.name for part in parts)} ({between.join(metals)})"
