"""What a rule may answer: kept, a misfit with its remedies, or a caution."""

from __future__ import annotations

from math import inf
from typing import Literal

from msgspec import Struct

from wellstrung.common.patterns import Pattern
from wellstrung.common.places import Edit, Place
from wellstrung.model.plan import Step
from wellstrung.quantity.value import Quantity
from wellstrung.quantity.verdict import holds

Level = Literal["error", "warning", "caution"]
#: what range a margin is judged over: `worst` for rules of hold and of safety
Range = Literal["likely", "worst"]


class Held(Struct, frozen=True):
    """The rule was kept; `margin` is what is left, where there is one to name.

    `differ` says in what makers differ, where it is kept by the choice of some; `assumed` what the
    plan leaves open and the check took from the bench.
    """

    margin: Quantity | None = None
    differ: str = ""
    assumed: str = ""


def kept(*margins: Quantity, over: Range = "likely") -> Held | None:
    """The answer where every margin holds, with the tightest of them; None where one fails.

    >>> from wellstrung.quantity.arithmetic import exact
    >>> kept(exact("room", 0.4, "mm"), exact("slack", 0.1, "mm")).margin.name
    'slack'
    """
    if all(holds(margin, over=over) for margin in margins):
        return Held(tightest(*margins))
    return None


def tightest(*margins: Quantity) -> Quantity:
    """The margin that leaves the least; the first of equal ones.

    >>> from wellstrung.quantity.arithmetic import exact
    >>> tightest(exact("room", 0.4, "mm"), exact("slack", 0.1, "mm")).name
    'slack'
    """
    first, *others = margins
    # the likely range of a margin costs more than the comparison; one alone is not asked for it
    return min(margins, key=lambda margin: margin.likely.low) if others else first


class Target(Struct, frozen=True):
    """What words advise, for a machine to follow: any value of `low` to `high`, at `place`."""

    place: Place
    low: float
    high: float = inf
    unit: str = "mm"


class Remedy(Struct, frozen=True):
    """What would put it right, in words and - where it can be said exactly - as edits.

    Edits are tried on a changed copy of the plan before they are offered. Where words leave a value
    open, `target` has the place where it is written and the values that will do.
    """

    text: str
    edits: tuple[Edit, ...] = ()
    target: Target | None = None

    @classmethod
    def write(cls, place: Place, new: str, text: str) -> Remedy:
        """A remedy that writes something new at one place."""
        return cls(text, (Edit(place, new),))


class Misfit(Struct, frozen=True):
    """The rule was not kept.

    `says` marks where it depends on how sure the misfit is: `the bore {is|may be} too tight` takes
    the first wording where `margin` fails over its whole range, the second where it fails over part
    of it. Without a margin the misfit is a matter of counting, and sure. `at_most` lowers the level
    of one kind of misfit below the rule's own. `fault` says what is wrong, of a rule with more than
    one way to be wrong.
    """

    says: str
    place: Place
    found: str
    needed: str
    remedies: tuple[Remedy, ...]
    margin: Quantity | None = None
    at_most: Level = "error"
    also: tuple[Place, ...] = ()
    working: tuple[str, ...] = ()
    fault: str = ""


class Caution(Struct, frozen=True):
    """A safety text; it never changes the outcome and cannot be accepted away.

    `steps` are the steps at which a page repeats it; `cuts` says that a cutting list does so too.
    """

    says: str
    place: Place
    steps: tuple[Step, ...] = ()
    cuts: bool = False


#: a name in backticks, which stands as it is, or two wordings
_WORDINGS = Pattern(r"`[^`]*`|\{([^{}|]*)\|([^{}|]*)\}")


def worded(says: str, *, sure: bool) -> str:
    """The text of a misfit in its sure or its doubtful wording.

    >>> worded("cap `a{b|c}` {is|may be} too tight", sure=False)
    'cap `a{b|c}` may be too tight'
    """
    choice = 1 if sure else 2
    return _WORDINGS.sub(lambda found: found[0] if found[1] is None else found[choice], says)


Answer = Held | Misfit | Caution | None
