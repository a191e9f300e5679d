"""Rules of the family `adhesive`, and the remedy that several of them offer."""

from wellstrung.rulebook import Remedy
from wellstrung.rulebook.plan import Part


def take_epoxy(glue: Part) -> Remedy:
    """What to take instead of an adhesive that does not suit: epoxy fills gaps and cures unseen."""
    text = f"take a two-part epoxy for `{glue.name}`"
    return Remedy.write(glue.place_of("type"), "two-part epoxy", text)
