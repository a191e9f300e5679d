"""Tubes whose beads may be listed, one for each column or each round: how far they are across.

All of it is geometry, worked out for this project, on what a tube of one bead measures.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable

from wellstrung.derived.declared import GEOMETRY, hand
from wellstrung.formulas.arithmetic import most
from wellstrung.model.beads import COLUMN, ROUND, listed_for, rounds_listed
from wellstrung.model.item import Bead
from wellstrung.model.parts import Formula, Part
from wellstrung.model.plan import Quantities
from wellstrung.quantity.arithmetic import derived
from wellstrung.quantity.value import Quantity
from wellstrung.stitches import making

#: a size across a tube, by how a size of its beads is found
Across = Callable[[Callable[[str], Formula]], Formula]


def _thinnest_first(part: Part, names: Iterable[str], ask: Quantities) -> list[Bead]:
    """Beads by their names, each once."""
    beads = [part.beads[name] for name in dict.fromkeys(names)]
    return sorted(beads, key=lambda item: ask.of(item, "outside").middle)


def _of_one(across: Across, item: Bead) -> Formula:
    """A size across a tube of one bead alone."""
    return across(lambda what: lambda part, ask: ask.of(item, what))


def across_tube(what: str, across: Across, *, bore: bool = False) -> Formula:
    """A size across a tube, whose beads may be listed.

    Where its rounds differ each is a ring of its own, and the size is that of the thickest, or of
    the narrowest `bore`. Where its columns differ their mean makes the ring, and the fattest is a
    ridge that winds round it.
    """

    def size(part: Part, ask: Quantities) -> Quantity:
        if rounds := listed_for(part, ROUND):
            beads = _thinnest_first(part, rounds, ask)
            return _of_one(across, beads[0 if bore else -1])(part, ask)
        named = _thinnest_first(part, listed_for(part, COLUMN), ask)
        columns = [ask.of(item, "outside") for item in named]
        if not columns or columns[0].middle == columns[-1].middle:
            return across(making.bead)(part, ask)
        return derived(
            f"{part.name}.{what}",
            "mm",
            _within_ridge if bore else _over_ridge,
            ring=across(making.bead)(part, ask),
            ridge=columns[-1],
            mean=making.bead("outside")(part, ask),
            source=GEOMETRY,
        )

    return size


def _over_ridge(ring: float, ridge: float, mean: float) -> float:
    return ring + ridge - mean


def _within_ridge(ring: float, ridge: float, mean: float) -> float:
    return most(0, ring - ridge + mean)


def changing(across: Callable[[str], Across]) -> dict[str, Formula]:
    """How far a tube whose rounds differ is across at its narrowest, and at both its ends."""

    def at(
        what: str, choose: Callable[[Part, tuple[str, ...], Quantities], Bead]
    ) -> dict[str, Formula]:
        def size(part: Part, ask: Quantities) -> Quantity:
            rounds = listed_for(part, ROUND)
            if not rounds:
                raise part.missing("one_for")
            return _of_one(across(what), choose(part, rounds, ask))(part, ask)

        return {what: size}

    def last(part: Part, rounds: tuple[str, ...], ask: Quantities) -> Bead:
        """Of a list that comes again over a length nobody knows where it ends."""
        if not (counted := rounds_listed(part)):
            raise part.missing("rounds")
        return part.beads[rounds[counted % len(rounds) - 1]]

    return {
        **at("narrowest", lambda part, rounds, ask: _thinnest_first(part, rounds, ask)[0]),
        **at("first_end", lambda part, rounds, ask: part.beads[rounds[0]]),
        **at("last_end", last),
    }


#: Columns of small beads lie stretched, those of large ones wind round them: the share of the way
#: from the smallest bead to the mean that a round rises. No print of it.
_WINDS = (0.3, 0.65, 1.0)


_winds = hand("how the columns wind", _WINDS, cure=making.swatch("weave"))


def rising(what: str) -> Formula:
    """How much of a bead a round adds: of columns that differ less than the mean of their beads."""

    def size(part: Part, ask: Quantities) -> Quantity:
        mean, named = making.bead(what)(part, ask), set(listed_for(part, COLUMN))
        sizes = [ask.of(part.beads[name], what) for name in named]
        if len({one.middle for one in sizes}) < 2:
            return mean
        return derived(
            f"{part.name}.bead {what} that rises",
            "mm",
            lambda least, mean, winds: least + winds * (mean - least),
            least=min(sizes, key=lambda one: one.middle),
            mean=mean,
            winds=_winds(part, ask),
            source=GEOMETRY,
        )

    return size
