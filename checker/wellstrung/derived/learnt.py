"""Values that the bench's swatches narrowed: the lot of a bead, the maker's hand, how fast it is.

What is likely narrows and moves, what can be does not: the `worst` range stays where it was, and
reaches no less far than what is likely. The likely range is made of the causes that are left, each
independent of the others, which one plan shares between all its parts.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Mapping

from msgspec.structs import replace

from wellstrung.common import units
from wellstrung.common.places import Place
from wellstrung.model.item import Bead
from wellstrung.model.parts import Part
from wellstrung.model.plan import Plan
from wellstrung.quantity.arithmetic import leaf, total
from wellstrung.quantity.causes import Cause, Spread
from wellstrung.quantity.value import Quantity
from wellstrung.quantity.working import number
from wellstrung.reading.learnt import Learnt, LearntCause
from wellstrung.reading.settings import Bench

#: what must be the same of a bead in a plan and the bead of a swatch, where both say it
_STATED = ("material", "finish")
#: sizes that calipers are laid on
MEASURED = frozenset({"outside", "inside", "width", "thickness", "length"})
#: narrowed to less of its range than this, a size is the maker's own, not the table's
_OWN = 0.5
_Rows = Mapping[str, LearntCause]
_NONE: _Rows = {}


def of_bead(found: Quantity, bead: Bead) -> Quantity:
    """A size of a bead, by what swatches of its lot show."""
    if bead.bench.learnt is None:
        return found
    rows = bead.cache.get(_rows_of_bead, bead)
    narrowed = _narrowed(found, rows, bead.bench.learnt)
    known = [_row(rows, spread) for spread in found.spreads] if narrowed is not found else []
    own = known and all(row and row.reach < _OWN for row in known)
    return replace(narrowed, grade="") if own else narrowed


def of_hand(found: Quantity, part: Part) -> Quantity:
    """How tight, close or far spread a part is, by what swatches of the same hand show."""
    if part.bench.learnt is None or part.stitch is None:
        return found
    return _narrowed(found, part.cache.get(_rows_of_part, part), part.bench.learnt)


def of_rate(found: Quantity, bench: Bench) -> Quantity:
    """How fast hands are, by what was timed."""
    if bench.learnt is None:
        return found
    rows = {row.name: row for row in bench.learnt.causes if row.of == "rate"}
    timed = _narrowed(found, rows, bench.learnt)
    return found if timed is found else replace(timed, grade="", choice=None)  # it is settled


def used(plan: Plan) -> tuple[tuple[Place, tuple[str, ...]], ...]:
    """The swatches that a plan goes by, from the top of the bench, each with what it narrows."""
    if plan.bench.learnt is None:
        return ()
    found: dict[Place, dict[str, None]] = {}
    for name, rows in _by_name(plan):
        for row in rows:
            for place in row.by:
                found.setdefault(place, {})[name] = None
    return tuple((place, tuple(found[place])) for place in sorted(found))


def _by_name(plan: Plan) -> Iterator[tuple[str, Iterable[LearntCause]]]:
    for bead in plan.beads.values():
        rows = bead.cache.get(_rows_of_bead, bead).items()
        yield f"`{bead.name}`", [row for what, row in rows if not _is_stated(bead, what)]
    for part in plan.parts.values():
        if part.stitch is not None:
            yield f"`{part.name}`", part.cache.get(_rows_of_part, part).values()
    if plan.steps and plan.bench.learnt is not None:
        verbs = {step.verb for step in plan.steps}
        rates = {*verbs, *(p.stitch.name for p in plan.parts.values() if p.stitch is not None)}
        said = {f"rate of {rate}" for rate in rates} | {"pace of the student"}
        timed = [r for r in plan.bench.learnt.causes if r.of == "rate" and r.name in said]
        yield "the minutes", timed


def _is_stated(bead: Bead, what: str) -> bool:
    """Whether the plan has a size of a bead itself, which no swatch changes then."""
    field = what.replace(" ", "_")
    return bead.has(field) or bead.has("measured", field)


def _rows_of_bead(bead: Bead) -> _Rows:
    learnt = bead.bench.learnt
    if learnt is None:
        return _NONE
    by_lot: dict[tuple[str, str], dict[str, LearntCause]] = {}
    for row in learnt.causes:
        if row.of == "bead" and _is_bead(bead, row):
            by_lot.setdefault((row.whose, row.lot), {})[_sort(row.name)] = row
    lots = {lot_of(lot) for lot in learnt.lots.get(bead.name, ())}
    if lots:  # of two lots at once, none is the bead's own
        here = [rows for (_, lot), rows in by_lot.items() if {lot_of(lot)} in ({""}, lots)]
    else:
        here = [*by_lot.values()]
    return here[0] if len(here) == 1 else _NONE


def _sort(name: str) -> str:
    """A cause of a bead without the size of its bead as it is written.

    >>> _sort("8/0 bead length"), _sort("bicone length")
    ('length', 'bicone length')
    """
    return name.rpartition(" bead ")[2]


def lot_of(text: str) -> str:
    """A lot as people write it: `lot 12` and `Lot  12` are `12`.

    >>> lot_of("Lot  12"), lot_of("12b")
    ('12', '12b')
    """
    return " ".join(text.casefold().split()).removeprefix("lot ")


def identity(bead: Bead) -> Mapping[str, str]:
    """What says which bead it is."""
    said = {name: bead.text(name) for name in (*_STATED, "type", "colour") if bead.has(name)}
    size = {"size": units.bead_size(bead.text("size"))} if bead.seed else {}
    if not size and bead.has("size"):
        size = {"size": " ".join(bead.text("size").split())}
    return {**said, **size, "make": bead.made_in}


def _is_bead(bead: Bead, row: LearntCause) -> bool:
    """Whether a bead is that of a swatch: of one sort, and of one name or one colour."""
    here, there = (
        {name: text.casefold() for name, text in one.items()} for one in (identity(bead), row.bead)
    )
    if any(here.get(name) != there.get(name) for name in ("type", "size", "make")):
        return False
    if any(here[n] != there[n] for n in (*_STATED, "colour") if n in here and n in there):
        return False
    return bead.name == row.whose or ("colour" in here and "colour" in there)


def _rows_of_part(part: Part) -> _Rows:
    """What is known of the hand in the stitch of a part: of the work that is most like it."""
    learnt, stitch = part.bench.learnt, part.stitch
    if learnt is None or stitch is None:
        return _NONE
    work = work_of(part)
    works: dict[tuple[str, str], list[LearntCause]] = {}
    for row in learnt.causes:
        if row.of == "hand" and row.whose == stitch.name and row.hand == learnt.hand:
            works.setdefault((row.thread, row.passes), []).append(row)
    alike = []
    for key, rows in works.items():
        both = [(a, b) for a, b in zip(key, work, strict=True) if a and b]
        if all(a == b for a, b in both):
            alike.append((-len(both), -len(rows[0].by), key))
    return {row.name: row for row in works[min(alike)[2]]} if alike else _NONE


def work_of(part: Part) -> tuple[str, str]:
    """The type of its thread and how often that passes, each empty where the plan does not say."""
    return part.of_thread("type"), part.text("passes") if part.has("passes") else ""


def _narrowed(found: Quantity, rows: _Rows, learnt: Learnt) -> Quantity:
    """A leaf by what is known of its causes; the very same where nothing is."""
    if found.function is not None or not any(_row(rows, one) for one in found.spreads):
        return found
    middle, spreads, by = found.at_rest, [], list[LearntCause]()
    for spread in found.spreads:
        row = _row(rows, spread)
        if row is None:
            spreads.append(spread)
            continue
        by.append(row)
        cause, down, up = spread
        shift = row.shift * (up if row.shift > 0 else down)
        middle += shift
        low, high = row.sides(down, up)
        bound = Cause(cause.name, cause.scope, cause.cure, "worst")
        ends = max(down + shift, low * row.reach), max(up - shift, high * row.reach)
        spreads.append(Spread(bound, *ends))
        for load, of in zip(row.loadings, learnt.causes, strict=True):
            if load:
                left = _left(of, cause)
                spreads.append(
                    Spread(left, low * load, high * load)
                    if load > 0
                    else Spread(left, high * load, low * load)
                )
        if row.day:
            name = f"{cause.name} from day to day"
            day = Cause(name, cause.scope, cause.cure, "likely")
            spreads.append(Spread(day, low * row.day, high * row.day))
    source = "; ".join((*(said(row) for row in by), *([found.source] if found.source else [])))
    return replace(found, at_rest=middle, spreads=tuple(spreads), source=source)


def _row(rows: _Rows, spread: Spread) -> LearntCause | None:
    return rows.get(spread.cause.name) or rows.get(_sort(spread.cause.name))


def _left(of: LearntCause, cause: Cause) -> Cause:
    """What swatches leave of a cause: one thing for all the parts of a plan."""
    scope = f"`{of.whose}`" if of.whose else ""
    cure = cause.cure if of.name == cause.name else f"make one swatch more of {of.whose or of.name}"
    return Cause(f"{of.name} after swatches", scope, cure, "likely")


def no_surer(found: Quantity, part: Part) -> Quantity:
    """A size of a part, no surer by swatches than the gauge that measured them; or as it was.

    What is left of its causes may be less, as for a slimmer rope: the gauge then makes it up.
    """
    if part.bench.learnt is None or not any(cause.only == "likely" for cause in found.causes):
        return found
    gauge = part.bench.allowances["gauge on beadwork"].value
    before, after = found.made_of("likely", math.hypot), found.likely
    short = [
        math.sqrt(max(0.0, min(gauge, abs(was - found.middle)) ** 2 - (now - found.middle) ** 2))
        for was, now in zip(before, after, strict=True)
    ]
    if not any(short):
        return found
    cure = f"measure `{part.name}` itself, write `measured: {{...}}`"
    spreads = [Spread(Cause("gauge of its swatches", f"`{part.name}`", cure, "likely"), *short)]
    name, source = found.name, part.bench.allowances["gauge on beadwork"].reason
    off = leaf(f"{name} by the gauge", 0.0, found.unit, spreads, source=source)
    return total(name, found.unit, [replace(found, name=f"{name} by its swatches"), off])


def said(row: LearntCause) -> str:
    """What swatches made of a cause, in words: before, and by which.

    >>> said(LearntCause("hand", "brick", "tension", 0.5, (0.4,), 1.05, 0.05, 0.05, "",
    ...     (Place("bench.yaml", 4, 5, 4, 9), Place("bench.yaml", 6, 5, 6, 9))))
    '1.05 ± 0.05 before 2 swatches, bench.yaml:4, 6'
    """
    unit = f" {row.unit}" if row.unit else ""
    off = f"± {number(row.up)}" if math.isclose(row.up, row.down) else ""
    off = off or f"-{number(row.down)} / +{number(row.up)}"
    lines = ", ".join(str(place.line) for place in row.by)
    count = "1 swatch" if len(row.by) == 1 else f"{len(row.by)} swatches"
    return f"{number(row.middle)} {off}{unit} before {count}, {row.by[0].file}:{lines}"
