"""Quantities of a piece that came for repair: what came, and what it makes when strung again.

`piece.came_length` and `piece.came_mass` are what the beads that were counted give, to hold against
what was measured and weighed. `piece.restrung_length` is the length with every bead that came, and
`piece.beads_to_take_out` how many of them are too many for the length that is wished; below 0, so
many are to add. `piece.thickest_line` is the line that the narrowest hole takes.
"""

from __future__ import annotations

from collections.abc import Sequence

from wellstrung.derived.beads_taken import beads_in
from wellstrung.derived.line_and_needle import of_type, types_of
from wellstrung.derived.of_plan import Brought, PieceQuantity
from wellstrung.formulas import circles
from wellstrung.formulas.arithmetic import opaque
from wellstrung.model.beads import bead_mix, beads_in_order
from wellstrung.model.item import Bead, Missing
from wellstrung.model.parts import Part, Role
from wellstrung.model.plan import Quantities
from wellstrung.quantity.arithmetic import derived, exact, leaf, product, times, total
from wellstrung.quantity.causes import Cause, Spread
from wellstrung.quantity.value import Quantity
from wellstrung.subjects.repair import beads_that_came, came

#: A knot keeps two beads apart by up to 2.2 cords (see `stitches.strung`), and a cord is no thicker
#: than the hole that it goes through: geometry of this project, for an old line nobody knows.
_KNOT_AT_MOST = 2.2
#: Strung beads lie 0 to 2 % further apart than they are long: trade table `bead_strands`.
_SITS = (1.0, 1.01, 1.02)


def _came_length(ask: Quantities) -> Quantity:
    """The beads that came, with what their knots may add on an old line of unknown thickness.

    Of several strands nobody says how many of the beads each had: raises Missing.
    """
    if len(_strands(ask)) > 1:
        raise Missing("one strand in the `run`: the beads of several do not say how long each was")
    beads = list(beads_that_came(ask.plan))
    low, middle, high = _SITS
    close = Cause("how close the beads lay", "", "measure ten of them as they came")
    lies = leaf("how close the beads lay", middle, "", [Spread(close, middle - low, high - middle)])
    terms = [product(one.name, "mm", times(ask.of(one, "length"), n), lies) for one, n in beads]
    knots = came(ask.plan).count("knots", default=0)
    if knots:
        hole = min((ask.of(bead, "hole") for bead, _ in beads), key=lambda hole: hole.middle)
        half = _KNOT_AT_MOST / 2
        old = Cause("its old knots", "", "measure ten beads of it with the knots between them")
        share = leaf("a knot in holes", half, "", [Spread(old, half, half)])
        terms.append(times(product("knot", "mm", hole, share), knots))
    return total("piece.came_length", "mm", terms, "counting; from the first bead to the last")


def _came_mass(ask: Quantities) -> Quantity:
    """The beads and the parts that came; the line counts for nothing."""
    terms = [
        derived(
            f"{bead.name} that came",
            "g",
            lambda count, per_gram: count / per_gram,
            count=exact("count", count),
            per_gram=ask.of(bead, "per_gram"),
        )
        for bead, count in beads_that_came(ask.plan)
    ]
    parts = came(ask.plan).node_at("parts")
    for name, count in (parts.value if parts is not None else {}).items():
        terms.append(times(ask.of(ask.plan.parts[str(name)], "mass"), int(count)))
    return total("piece.came_mass", "g", terms, "counting; the line is left out")


def restrung(ask: Quantities) -> Part:
    """The strand that takes the beads that came; raises Missing where that is not one."""
    strands = _strands(ask)
    if len(strands) != 1:
        raise Missing("one strand in the `run` that takes the beads that came")
    return strands[0]


def _strands(ask: Quantities) -> list[Part]:
    return [part for part in ask.plan.in_run if part.kind.role is Role.STRAND]


def evened(strand: Part) -> bool:
    """Whether beads are taken out at both ends alike: the strand has more than one sort."""
    return len(bead_mix(strand)) > 1


def _each(bead: Bead, between: Quantity, ask: Quantities) -> Quantity:
    """What one more of a bead adds to its strand, with what lies between two."""
    return derived(
        f"one {bead.name} more",
        "mm",
        lambda length, sits, between: length * sits + between,
        length=ask.of(bead, "length"),
        sits=exact("how close the beads sit", _SITS[1]),
        between=between,
    )


def _restrung(ask: Quantities) -> Quantity:
    strand = restrung(ask)
    between = ask.of(strand, "between")
    terms = [ask.get("piece.length")]
    for bead, count in beads_that_came(ask.plan):
        if bead.name in bead_mix(strand):
            more = exact(f"{bead.name} that came", count) - beads_in(strand, bead, 1, ask)
            terms.append(product(f"more {bead.name}", "mm", more, _each(bead, between, ask)))
    return total("piece.restrung_length", "mm", terms, "counting")


def _to_take_out(ask: Quantities) -> Quantity:
    goal, strand = ask.plan.goal, restrung(ask)
    if goal is None:
        raise Missing("`finished_length`, how long it is wished")
    inside = goal.field == "inside"
    lost = ask.get("piece.length") - ask.get("piece.inside") if inside else exact("lost", 0.0, "mm")
    order = beads_in_order(strand) if evened(strand) else [*bead_mix(strand)]
    between = ask.of(strand, "between")
    ends = [_each(strand.beads[name], between, ask).middle for name in order[: len(order) // 2 + 1]]

    @opaque("beads off both ends of a strand, for so many mm that it is too long:")
    def off(over: float) -> float:
        return off_the_ends(over, ends)

    return derived(
        "piece.beads_to_take_out",
        "",
        off,
        over=derived(
            "too long",
            "mm",
            lambda length, lost, wished: length - lost - wished,
            length=ask.get("piece.restrung_length"),
            lost=lost,
            wished=exact("wished", goal.middle, "mm"),
        ),
        source="counting; below 0, so many are to add",
    )


def off_the_ends(over: float, ends: Sequence[float]) -> float:
    """How many beads make up a length when they are taken off both ends, mm; below 0, added there.

    `ends` are what each takes, from an end inwards; the last goes for all that follow. Counting.

    >>> off_the_ends(20.0, [5.0]), off_the_ends(20.0, [4.0, 6.0]), off_the_ends(-6.0, [4.0, 6.0])
    (4.0, 4.0, -1.5)
    """
    if over <= 0:
        return over / ends[0]
    count, left = 0.0, over
    for each in ends:
        if left <= 2 * each:
            return count + left / each
        count, left = count + 2, left - 2 * each
    return count + left / ends[-1]


def _thickest_line(ask: Quantities) -> Quantity:
    """The thickest line that passes the narrowest hole as often as the strand takes it, mm."""
    strand = restrung(ask)
    holes = [ask.of(strand.beads[name], "hole") for name in bead_mix(strand)]
    ratio = circles.container([1.0] * strand.count("passes", default=1))
    return derived(
        "piece.thickest_line",
        "mm",
        lambda hole, ratio: hole / ratio,
        hole=min(holes, key=lambda hole: hole.likely.low),
        ratio=exact("lines side by side", ratio),
        source="equal circles in a circle, Graham, Lubachevsky, Nurmela, Östergård 1998",
    )


def thickest_sold(ask: Quantities) -> str:
    """The thickest line of the type that the strand takes that passes; empty where none is known.

    Raises Missing.
    """
    strand, room = restrung(ask), ask.get("piece.thickest_line").likely.low
    rows = [row for kind in types_of(strand) for row in of_type(kind)]
    passes = [row for row in rows if row.cell("diameter").high <= room]
    return max(passes, key=lambda row: row.cell("diameter").value).name if passes else ""


def whole(beads: float, *, even: bool) -> int:
    """A number of beads to take out or to add; at both ends alike, an even one (counting).

    >>> whole(4.6, even=False), whole(4.6, even=True), whole(-2.7, even=True)
    (5, 4, -2)
    """
    return 2 * round(beads / 2) if even else round(beads)


REPAIR: tuple[Brought, ...] = (
    PieceQuantity("came_length", _came_length, "mm"),
    PieceQuantity("came_mass", _came_mass, "g"),
    PieceQuantity("restrung_length", _restrung, "mm"),
    PieceQuantity("beads_to_take_out", _to_take_out, ""),
    PieceQuantity("thickest_line", _thickest_line, "mm"),
)
