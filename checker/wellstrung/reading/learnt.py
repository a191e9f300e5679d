"""What the swatches of a bench taught, as plain data; `judging.swatches` works it out."""

from __future__ import annotations

import math
from collections.abc import Mapping

from msgspec import Struct, field
from msgspec.structs import replace

from wellstrung.common.places import Place
from wellstrung.reading import tree as reading


class LearntCause(Struct, frozen=True):
    """A cause of spread that swatches narrowed, in shares of its half range before.

    `of` is `bead` (a size of one lot), `hand` (of one hand in one stitch) or `rate`, and `whose`
    the bead, the stitch or nothing; `bead` are the fields of the bead, `lot` its lot, `hand`,
    `thread` and `passes` those of the work. `shift` is how far its middle went, `loadings` how far
    each of the new, independent causes moves it, and `day` how far the hand is off it on one day.
    `middle`, `down` and `up` are what it was before, in `unit`. `by` are its swatches.
    """

    of: str
    whose: str
    name: str
    shift: float
    loadings: tuple[float, ...]
    middle: float
    down: float
    up: float
    unit: str
    by: tuple[Place, ...]
    day: float = 0.0
    bead: Mapping[str, str] = field(default_factory=dict)
    lot: str = ""
    hand: str = ""
    thread: str = ""
    passes: str = ""

    @property
    def reach(self) -> float:
        """What is left of its half range, as a share."""
        return math.hypot(*self.loadings, self.day)

    def sides(self, down: float, up: float) -> tuple[float, float]:
        """Its half ranges before, each on the side where it is now.

        A range that is wider upwards and lies all above its old middle is as wide both ways.
        """
        if self.shift > self.reach:
            return up, up
        return (down, down) if -self.shift > self.reach else (down, up)


class Learnt(Struct, frozen=True):
    """All that swatches taught, and what they leave open.

    Every new cause bears the name of the one in `causes` at its number. `hand` is whose hand makes
    the plan in force, None where a student's does; `lots` are those that the plan has of each bead.
    `doubts` say what contradicts the tables and is not used, `maker` whose bench it is.
    """

    causes: tuple[LearntCause, ...] = ()
    doubts: tuple[tuple[Place, str], ...] = ()
    maker: str = ""
    hand: str | None = None
    lots: Mapping[str, tuple[str, ...]] = field(default_factory=dict)

    def _called(self, name: str) -> str:
        """A hand as the bench spells it."""
        known = (self.maker, *(row.hand for row in self.causes))
        return next((one for one in known if _plain(one) == _plain(name)), name)

    def for_plan(self, tree: reading.Mapping) -> Learnt:
        """The same for one plan: for the hand that makes it and the lots that it has.

        The hand is that of its `maker`. Without one it is that of the bench, but for a plan of a
        class, which students make.
        """
        maker = tree.value.get("maker")
        hand = (
            self._called(str(maker)) if maker else None if "class" in tree.entries else self.maker
        )
        lots: dict[str, tuple[str, ...]] = {}
        for line in tree.value.get("supplies") or ():
            if isinstance(line, dict) and "bead" in line and "lot" in line:
                lot, bead = " ".join(str(line["lot"]).split()), str(line["bead"])
                lots[bead] = tuple(dict.fromkeys((*lots.get(bead, ()), lot)))
        return replace(self, hand=hand, lots=lots)


def _plain(name: str) -> str:
    return " ".join(name.casefold().split())
