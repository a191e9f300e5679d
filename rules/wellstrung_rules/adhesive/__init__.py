"""Rules of the family `adhesive`, and the remedies that several of them offer."""

from collections.abc import Collection

from wellstrung.rulebook import Remedy
from wellstrung.rulebook.plan import Part
from wellstrung.rulebook.values import table

_EPOXY = "two-part epoxy"


def take_epoxy(glue: Part) -> Remedy:
    """What to take instead of an adhesive that does not suit: epoxy fills gaps and cures unseen."""
    text = f"take a {_EPOXY} for `{glue.name}`"
    return Remedy.write(glue.place_of("type"), _EPOXY, text)


def take_what_suits(glue: Part, fibres: Collection[str]) -> Remedy:
    """What the trade takes on thread of these fibres; epoxy where nothing is known for them."""
    known = (row for row in table("adhesives").rows.values() if row.text("suits") in fibres)
    row = next(known, None)
    if row is None:
        return take_epoxy(glue)
    text = f"take a {row.name}, which stays {row.text('stays')}, for `{glue.name}`"
    return Remedy.write(glue.place_of("type"), row.name, text)
