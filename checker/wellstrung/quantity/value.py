"""Values that know their spread, what causes it, and how they were worked out.

A quantity is a small graph: leaves carry what was written, measured or looked up, with one or more
named causes of spread; nodes carry a plain float function, which is their formula. A graph is
evaluated as a whole, so a cause that enters twice moves both places together and counts once.

* **middle** - every cause at rest.
* **likely** - independent causes by root-sum-square (NIST Technical Note 1297, section 5).
* **worst** - every cause at its limit, in the least favourable combination.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Collection, Iterable, Mapping
from enum import Enum
from functools import partial
from itertools import product
from types import MappingProxyType
from typing import NamedTuple

from msgspec import Struct, field
from msgspec.structs import replace

from wellstrung.common.places import Place
from wellstrung.common.records import once
from wellstrung.formulas.arithmetic import added
from wellstrung.formulas.tracing import Traced, traced

#: A comparison forgives a micrometre (or a milligram, a millinewton): less than any bench measures.
SLACK = 1e-3
_ALL_CORNERS_UP_TO = 5
_SCAN = (-1.0, -0.75, -0.5, -0.25, 0.25, 0.5, 0.75, 1.0)
_ENDS = (-1.0, 1.0)


class Cause:
    """Why a value varies: `name` of `scope`; `cure` is what the maker can do about it.

    Two causes are the same when name and scope are. Every working of a spread looks causes up in
    dictionaries, thousands of times a plan, so a cause knows its hash.
    """

    __slots__ = ("_hash", "cure", "name", "scope")

    def __init__(self, name: str, scope: str = "", cure: str = "") -> None:
        self.name = name
        self.scope = scope
        self.cure = cure
        self._hash = hash((name, scope))

    def __hash__(self) -> int:
        return self._hash

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Cause) and self.name == other.name and self.scope == other.scope

    def __repr__(self) -> str:
        return f"Cause({self.name!r}, {self.scope!r})"

    def __str__(self) -> str:
        return f"{self.name} of {self.scope}" if self.scope else self.name


#: how far each cause moves a value, at its low and its high end or at all points of a scan
Moves = dict[Cause, tuple[float, ...]]
_UNMOVED: Moves = {}
_NO_MOVE = (0.0, 0.0)


class Spread(NamedTuple):
    """How far one cause moves a leaf below and above its middle, both as distances >= 0."""

    cause: Cause
    down: float
    up: float


class Window(NamedTuple):
    """A range, both ends included."""

    low: float
    high: float


class Quantity(Struct, frozen=True, eq=False, dict=True):
    """A value with its spread; build one with `leaf`, `exact`, `derived` or `total`."""

    name: str
    unit: str
    # a leaf
    at_rest: float = 0.0
    spreads: tuple[Spread, ...] = ()
    place: Place | None = None
    spelling: str = ""
    spelled_unit: str = ""
    source: str = ""
    grade: str = ""
    # a node; `slopes` says by how much each argument moves it, where it is a sum of them
    function: Callable[..., float] | None = None
    args: Mapping[str, Quantity] = field(default=MappingProxyType({}))
    scan: bool = False
    slopes: Mapping[str, float] | None = None

    @once
    def causes(self) -> tuple[Cause, ...]:
        """Every cause that may move the value, each once, in order of first appearance."""
        if self._separate is not None:
            return tuple(self._separate)
        causes = [cause for arg in self._varying.values() for cause in arg.causes]
        return tuple(dict.fromkeys(causes))

    @once
    def leaves(self) -> tuple[Quantity, ...]:
        """The leaves under this value, each once."""
        if self.function is None:
            return (self,)
        found: dict[int, Quantity] = {}
        for arg in self.args.values():
            found |= {id(leaf): leaf for leaf in arg.leaves}
        return tuple(found.values())

    def at(self, moved: Mapping[Cause, float]) -> float:
        """The value with each cause moved to a point from -1 (its low end) to 1 (its high end)."""
        moves = self._separate
        if moves is None:
            assert self.function is not None
            values = {key: arg.at(moved) for key, arg in self._varying.items()}
            return self.function(**{**self._resting, **values})
        return self.middle + math.fsum(
            [abs(by) * moves[cause][by > 0] for cause, by in moved.items() if cause in moves]
        )

    def _with(self, cause: Cause, by: float) -> float:
        """`at` for one cause alone, which is what is asked for most."""
        moves = self._separate
        if moves is None:
            assert self.function is not None
            values = {key: arg._with(cause, by) for key, arg in self._varying.items()}
            return self.function(**{**self._resting, **values})
        ends = moves.get(cause)
        return self.middle if ends is None else self.middle + abs(by) * ends[by > 0]

    @once
    def middle(self) -> float:
        """The value with every cause at rest."""
        return self.at_rest if self.function is None else self.function(**self._resting)

    @once
    def _resting(self) -> Mapping[str, float]:
        """The middle of every argument."""
        return {key: arg.middle for key, arg in self.args.items()}

    @once
    def _varying(self) -> Mapping[str, Quantity]:
        """The arguments that vary; all others are always at rest."""
        varying = {key: arg for key, arg in self.args.items() if arg._separate != _UNMOVED}
        return varying if len(varying) < len(self.args) else self.args

    @once
    def traced(self) -> Traced:
        """What the function of a node does with its arguments."""
        assert self.function is not None
        return traced(self.function, tuple(self.args))

    @once
    def _slopes(self) -> Mapping[str, float] | None:
        """How far the value moves when an argument moves by one; None where that varies."""
        if self.slopes is not None or self.function is None or self.scan:
            return self.slopes
        rest, middle = self._resting, self.middle
        if not self.traced.is_linear(tuple(self._varying)):
            return None
        return {
            key: self.function(**{**rest, key: rest[key] + 1}) - middle for key in self._varying
        }

    @once
    def _separate(self) -> Moves | None:
        """How far each cause moves the value, at its low and at its high end.

        None where causes do not move it by amounts of their own, whatever the others do.
        """
        if self.function is None:
            moves: Moves = {}
            for cause, down, up in self.spreads:
                if down or up:
                    low, high = moves.get(cause, _NO_MOVE)
                    moves[cause] = (low - down, high + up)
            return moves
        if not self._varying:
            return _UNMOVED
        slopes = self._slopes
        if slopes is None:
            return None
        of_each = []
        for arg in self._varying.values():
            if arg._separate is None:
                return None
            of_each.append(arg._separate)
        return self._summed(slopes, of_each)

    @once
    def _moves(self) -> Moves:
        """How far each cause alone moves the value, at each of its points (the low end first)."""
        if self._separate is not None:
            return self._separate
        if self._slopes is not None and not self._scanned:
            return self._summed(self._slopes, [arg._moves for arg in self._varying.values()])
        ends = _SCAN if self._scanned else _ENDS
        return {
            cause: tuple([self._with(cause, end) - self.middle for end in ends])
            for cause in self.causes
        }

    def _summed(self, slopes: Mapping[str, float], of_each: Iterable[Moves]) -> Moves:
        """The moves of each argument that varies, times its slope, added up."""
        moves: Moves = {}
        for key, own in zip(self._varying, of_each, strict=True):
            slope = slopes[key]
            if slope == 1 and not moves:
                moves = dict(own)
                continue
            for cause, (low, high) in own.items():
                before = moves.get(cause, _NO_MOVE)
                moves[cause] = (before[0] + slope * low, before[1] + slope * high)
        return moves

    @once
    def _kinked(self) -> bool:
        """Whether a cause moves its leaf further one way, so that resting may be an end as well."""
        lopsided = any([down != up for _, down, up in self.spreads])
        return lopsided or any([arg._kinked for arg in self._varying.values()])

    @once
    def _scanned(self) -> bool:
        tangled = [arg for arg in self._varying.values() if arg._separate is None]
        return self.scan or any([arg._scanned for arg in tangled])

    @once
    def effects(self) -> dict[Cause, Window]:
        """How far each cause alone moves the value: (down <= 0, up >= 0)."""
        return {
            cause: Window(min(0.0, *moves), max(0.0, *moves))
            for cause, moves in self._moves.items()
        }

    @once
    def _by_root_sum_square(self) -> Window:
        moves = self._moves.values()
        return Window(
            self.middle - math.hypot(*[min(0.0, *ends) for ends in moves]),
            self.middle + math.hypot(*[max(0.0, *ends) for ends in moves]),
        )

    @once
    def likely(self) -> Window:
        """Independent causes combined by root-sum-square, each side by itself."""
        low, high = self._by_root_sum_square
        if self._separate is not None:
            return Window(low, high)
        # where causes hinder each other the root-sum-square may reach beyond what can be
        return Window(max(low, self.worst.low), min(high, self.worst.high))

    def likely_at_least(self, limit: float) -> bool:
        """Whether the whole likely range reaches a limit; spares the worst range where it can."""
        return self._by_root_sum_square.low >= limit or self.likely.low >= limit

    @once
    def worst(self) -> Window:
        """The least and the greatest value that any combination of the causes gives."""
        if self._separate is not None:
            moves = self._moves.values()
            low = self.middle + math.fsum([min(0.0, *ends) for ends in moves])
            return Window(low, self.middle + math.fsum([max(0.0, *ends) for ends in moves]))
        merged = self._merged(())
        if merged is not self:
            return merged.worst
        if len(self.causes) <= _ALL_CORNERS_UP_TO and not self._scanned:
            values = [
                self.at(dict(zip(self.causes, corner, strict=True)))
                for corner in product(*map(self._points, self.causes))
            ]
            return Window(min(self.middle, *values), max(self.middle, *values))
        return Window(-self._climb(-1.0), self._climb(1.0))

    def _points(self, cause: Cause) -> tuple[float, ...]:
        """Where a cause may push the value furthest: at its ends; at rest too, if leaves share it.

        One leaf alone has nothing at rest that it has not at an end.
        """
        leaves = sum(spread.cause == cause for one in self.leaves for spread in one.spreads)
        return (*_ENDS, 0.0) if self._kinked and leaves > 1 else _ENDS

    def _merged(self, elsewhere: Collection[Cause]) -> Quantity:
        """The same value with each argument whose causes move nothing else made one leaf.

        Such an argument reaches its own worst whatever the others do, so it counts as one cause.
        """
        met, shared = set(elsewhere), set(elsewhere)
        for arg in self._varying.values():
            shared.update(met.intersection(arg.causes))
            met.update(arg.causes)
        args = {}
        for key, arg in self._varying.items():
            if not shared.isdisjoint(arg.causes):
                args[key] = arg._merged(shared)
            elif len(arg.causes) > 1:
                low, high = arg.worst
                as_one = Cause(arg.name, str(id(arg)))
                spread = Spread(as_one, arg.middle - low, high - arg.middle)
                args[key] = leaf(arg.name, arg.middle, arg.unit, [spread])
        if all([self.args[key] is arg for key, arg in args.items()]):
            return self
        return replace(self, args={**self.args, **args})

    def _climb(self, sign: float) -> float:
        """The greatest `sign` x value, going from each cause's own best end until none helps."""
        points = (*(_SCAN if self._scanned else _ENDS), 0.0)
        moved = {
            cause: max(points, key=partial(self._signed, sign, cause)) for cause in self.causes
        }
        best = sign * self.at(moved)
        improved = True
        while improved:
            improved = False
            for cause in self.causes:
                for point in points:
                    trial = sign * self.at({**moved, cause: point})
                    if trial > best + 1e-12:
                        best, improved = trial, True
                        moved[cause] = point
        return max(best, sign * self.middle)

    def _signed(self, sign: float, cause: Cause, end: float) -> float:
        return sign * self._with(cause, end)

    @once
    def chief_cause(self) -> tuple[Cause, float] | None:
        """The cause that moves the value most when it moves alone, and by how much (+/-)."""
        if not self.effects:
            return None
        cause, effect = max(self.effects.items(), key=lambda item: max(-item[1].low, item[1].high))
        return cause, max(-effect.low, effect.high)

    def __add__(self, other: Quantity) -> Quantity:
        return _sum(self, other, 1.0, "+")

    def __sub__(self, other: Quantity) -> Quantity:
        return _sum(self, other, -1.0, "-")

    def working(self) -> list[str]:
        """The arithmetic, leaves first, one line a step, for a person to follow."""
        lines: dict[int, str] = {}
        _work_out(self, lines)
        return list(dict.fromkeys(line for line in lines.values() if line))


def _sum(a: Quantity, b: Quantity, sign: float, symbol: str) -> Quantity:
    if a.unit != b.unit:
        raise ValueError(f"{a.name} is in {a.unit}, {b.name} is in {b.unit}: they cannot be added")
    return Quantity(
        name=f"{a.name} {symbol} {b.name}",
        unit=a.unit,
        function=_plus if sign > 0 else _minus,
        args={"a": a, "b": b},
        slopes={"a": 1.0, "b": sign},
    )


def _plus(a: float, b: float) -> float:
    return 0.0 + a + b  # counts are added too, and a sum of them is printed as any other


def _minus(a: float, b: float) -> float:
    return 0.0 + a - b


def _of_all(**values: float) -> float:
    return added(values.values())


def _times(n: float, each: float) -> float:
    return n * each


def leaf(
    name: str,
    middle: float,
    unit: str,
    spreads: Iterable[Spread] = (),
    *,
    place: Place | None = None,
    spelling: str = "",
    spelled_unit: str = "",
    source: str = "",
    grade: str = "",
) -> Quantity:
    """A value that was written, measured or looked up.

    >>> bore = leaf("cap.bore", 8.0, "mm", [Spread(Cause("make of", "cap"), 0.1, 0.1)])
    >>> bore.worst
    Window(low=7.9, high=8.1)
    """
    return Quantity(
        name,
        unit,
        middle,
        tuple(spreads),
        place=place,
        spelling=spelling,
        spelled_unit=spelled_unit,
        source=source,
        grade=grade,
    )


def exact(name: str, value: float, unit: str = "", source: str = "") -> Quantity:
    """A value with no spread: a count, a limit, a rule of practice."""
    return Quantity(name, unit, value, source=source)


def worked(
    name: str,
    unit: str,
    function: Callable[..., float],
    args: Mapping[str, Quantity],
    *,
    scan: bool = False,
    source: str = "",
) -> Quantity:
    """`derived`, for arguments that are gathered at run time.

    >>> held = {"rope": exact("rope", 7.8, "mm"), "eye": exact("eye", 1.0, "mm")}
    >>> worked("room", "mm", lambda rope, eye: rope + eye, held).middle
    8.8
    """
    return Quantity(name, unit, function=function, args=args, scan=scan, source=source)


def derived(
    name: str,
    unit: str,
    function: Callable[..., float],
    *,
    scan: bool = False,
    source: str = "",
    **args: Quantity,
) -> Quantity:
    """A value worked out by `function`, a formula (see `formulas.arithmetic`), from `args`.

    `scan` marks a function that is not monotone in each of its causes: its causes are then tried
    at points between their ends as well.

    >>> side = leaf("side", 10.0, "mm", [Spread(Cause("cutting"), 1.0, 1.0)])
    >>> area = derived("area", "mm2", lambda a, b: a * b, a=side, b=side)
    >>> area.worst
    Window(low=81.0, high=121.0)
    """
    return worked(name, unit, function, args, scan=scan, source=source)


def total(name: str, unit: str, terms: Iterable[Quantity], source: str = "") -> Quantity:
    """The sum of `terms`.

    >>> total("run", "mm", [exact("cap", 5.0, "mm"), exact("rope", 400.0, "mm")]).middle
    405.0
    """
    args = {f"t{number}": term for number, term in enumerate(terms, 1)}
    return Quantity(
        name,
        unit,
        function=_of_all,
        args=args,
        slopes=dict.fromkeys(args, 1.0),
        source=source,
    )


def times(each: Quantity, count: int) -> Quantity:
    """`count` of the same thing: what varies in one varies in all of them.

    >>> times(exact("ring", 3.4, "mm"), 3).middle
    10.2
    """
    if count == 1:
        return each
    return derived(
        f"{count} x {each.name}",
        each.unit,
        _times,
        n=exact("count", count),
        each=each,
    )


class Verdict(Enum):
    """How a margin stands over its range."""

    HOLDS = "holds"
    MAY_FAIL = "may fail"
    FAILS = "fails"


def compare(margin: Quantity, *, over: str = "likely") -> Verdict:
    """Whether a margin is at least zero over all, part or none of its range.

    This is the one comparison in the project. `over` is `likely`, or `worst` for rules of hold and
    of safety.

    >>> compare(exact("room", 0.0, "mm"))
    <Verdict.HOLDS: 'holds'>
    """
    if over == "likely":
        if margin.likely_at_least(-SLACK):
            return Verdict.HOLDS
        return Verdict.FAILS if margin.likely.high < -SLACK else Verdict.MAY_FAIL
    if margin.worst.low >= -SLACK:
        return Verdict.HOLDS
    return Verdict.FAILS if margin.worst.high < -SLACK else Verdict.MAY_FAIL


def number(value: float) -> str:
    """A number as a beader writes it: at most three figures after the point, no trailing zeros."""
    size = abs(value)
    digits = 0 if size >= 1000 else 1 if size >= 100 else 2 if size >= 1 else 3
    text = f"{value:.{digits}f}"
    text = text.rstrip("0").rstrip(".") if "." in text else text
    return "0" if text in ("-0", "") else text


def described(quantity: Quantity) -> str:
    """Middle, likely and worst in one phrase."""
    unit = f" {quantity.unit}" if quantity.unit else ""
    text = f"{number(quantity.middle)}{unit}"
    if quantity.causes:
        likely = f"{number(quantity.likely.low)}..{number(quantity.likely.high)}"
        worst = f"{number(quantity.worst.low)}..{number(quantity.worst.high)}"
        text += f" (likely {likely}" + (f", worst {worst})" if worst != likely else ")")
    return text


def _work_out(quantity: Quantity, lines: dict[int, str]) -> None:
    if id(quantity) in lines:
        return
    if quantity.function is None:
        lines[id(quantity)] = _leaf_line(quantity)
        return
    for arg in quantity.args.values():
        _work_out(arg, lines)
    args = quantity.args
    symbols = quantity.traced.text(lambda key: args[key].name)
    numbers = quantity.traced.text(lambda key: number(args[key].middle))
    lines[id(quantity)] = (
        f"{described(quantity)} = {symbols} = {numbers}"
        if quantity.name == symbols
        else f"{quantity.name} = {symbols} = {numbers} = {described(quantity)}"
    ) + (f"   [{quantity.source}]" if quantity.source else "")


def _leaf_line(leaf: Quantity) -> str:
    # bare constants (a count of eyes, a factor) read well enough inside the formula itself
    if not leaf.spreads and not leaf.source and not leaf.spelling:
        return ""
    line = f"{leaf.name} = {described(leaf)}"
    notes = [f"written `{leaf.spelling}`" if leaf.spelling else ""]
    notes += [
        f"{spread.cause} "
        + (
            f"± {number(spread.up)}"
            if math.isclose(spread.up, spread.down)
            else f"-{number(spread.down)} / +{number(spread.up)}"
        )
        for spread in leaf.spreads
        if spread.down or spread.up
    ]
    notes += [leaf.source]
    return line + "".join(f"; {note}" for note in notes if note)
