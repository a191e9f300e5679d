"""A value that knows its spread, what causes it, and how it was worked out.

A quantity is a small graph: a leaf carries what was written, measured or looked up, with one or
more named causes of spread; a node carries a plain float function, which is its formula. A graph is
evaluated as a whole, so a cause that enters twice moves both places together and counts once.

* **middle** - every cause at rest.
* **likely** - independent causes by root-sum-square (NIST Technical Note 1297, section 5).
* **worst** - every cause at its limit, in the least favourable combination.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Collection, Mapping
from types import MappingProxyType

from msgspec import Struct, field
from msgspec.structs import replace

from wellstrung.common.choice import Choice
from wellstrung.common.places import Place
from wellstrung.formulas.tracing import Traced, traced
from wellstrung.quantity import extremes
from wellstrung.quantity.causes import Cause, Moves, Spread, Window, around, moves_of, summed
from wellstrung.quantity.once import once

_UNMOVED: Moves = {}
_SCAN = (-1.0, -0.75, -0.5, -0.25, 0.25, 0.5, 0.75, 1.0)
_ENDS = (-1.0, 1.0)
_ALL_CORNERS_UP_TO = 5


class Quantity(Struct, frozen=True, eq=False, dict=True):
    """A value with its spread; build one with `leaf`, `exact`, `derived` or `total`.

    What follows from its fields is kept in its `__dict__` once it was asked for. Slots would be
    smaller, but most of it is read once or twice, and the first read of an empty slot costs more
    than a later one saves: a check took about 7 % longer with them.
    """

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
    choice: Choice | None = None
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
        return tuple(dict.fromkeys(one for arg in self._varying.values() for one in arg.causes))

    @once
    def _bounding(self) -> tuple[Cause, ...]:
        """The causes that the worst range is made of."""
        return tuple([cause for cause in self.causes if cause.only != "likely"])

    @property
    def leaves(self) -> tuple[Quantity, ...]:
        """The leaves under this value, each once."""
        return (self,) if self.function is None else self._leaves

    @once
    def _leaves(self) -> tuple[Quantity, ...]:
        return tuple({id(leaf): leaf for arg in self.args.values() for leaf in arg.leaves}.values())

    def at(self, moved: Mapping[Cause, float]) -> float:
        """The value with each cause moved to a point from -1 (its low end) to 1 (its high end)."""
        moves = self._separate
        if moves is None:
            assert self.function is not None
            values = {key: arg.at(moved) for key, arg in self._varying.items()}
            return self.function(**{**self._resting, **values})
        if len(moves) < len(moved):  # a leaf among many others
            own = [(cause, moved[cause]) for cause in moves if cause in moved]
        else:
            own = [(cause, by) for cause, by in moved.items() if cause in moves]
        return self.middle + math.fsum([abs(by) * moves[cause][by > 0] for cause, by in own])

    def _from_those_under(self, moved: Mapping[Cause, float], known: Mapping[int, float]) -> float:
        """`at`, from the values of its arguments, which are `known` by their ids."""
        if self._separate is not None:
            return self.at(moved)
        assert self.function is not None
        values = {key: known[id(arg)] for key, arg in self._varying.items()}
        return self.function(**{**self._resting, **values})

    def _with(self, cause: Cause, by: float) -> float:
        """`at` for one cause alone, which is what is asked for most."""
        moves = self._separate
        if moves is None:
            assert self.function is not None
            args = self._moved_by.get(cause, ())
            values = {key: self.args[key]._alone_at(cause, by) for key in args}
            return self.function(**{**self._resting, **values})
        ends = moves.get(cause)
        return self.middle if ends is None else self.middle + abs(by) * ends[by > 0]

    def _alone_at(self, cause: Cause, by: float) -> float:
        """The same of a cause that moves it, as it was found once where it was tried."""
        if self._separate is not None:
            return self._with(cause, by)
        found = self._alone[cause].get(by)
        return self._with(cause, by) if found is None else found

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
    def _moved_by(self) -> Mapping[Cause, list[str]]:
        """The arguments that each cause moves."""
        found: dict[Cause, list[str]] = {}
        for key, arg in self._varying.items():
            for cause in arg.causes:
                found.setdefault(cause, []).append(key)
        return found

    @once
    def traced(self) -> Traced:
        """The function of a node as an expression of its arguments."""
        assert self.function is not None
        return traced(self.function, tuple(self.args))

    @once
    def _slopes(self) -> Mapping[str, float] | None:
        """How far the value moves when an argument moves by one; None where that varies."""
        if self.slopes is not None or self.function is None or self.scan:
            return self.slopes
        if not self.traced.is_linear(tuple(self._varying)):
            return None
        return {key: self._slope(self.function, key) for key in self._varying}

    def _slope(self, function: Callable[..., float], key: str) -> float:
        rest, step = self._resting, 1.0
        try:
            there = function(**{**rest, key: rest[key] + step})
        except ValueError:
            # the formula does not take that much: go as far as the argument may
            step = max((end for ends in self.args[key]._moves.values() for end in ends), key=abs)
            there = function(**{**rest, key: rest[key] + step})
        return (there - self.middle) / step

    @once
    def _separate(self) -> Moves | None:
        """How far each cause moves the value, at its low and at its high end.

        None where causes do not move it by amounts of their own, whatever the others do.
        """
        if self.function is None:
            return moves_of(self.spreads)
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
        return summed([slopes[key] for key in self._varying], of_each)

    @once
    def _moves(self) -> Moves:
        """How far each cause alone moves the value, at each of its points (the low end first)."""
        if self._separate is not None:
            return self._separate
        if self._slopes is not None and not self._scanned:
            slopes = [self._slopes[key] for key in self._varying]
            return summed(slopes, [arg._moves for arg in self._varying.values()])
        return {
            cause: tuple([value - self.middle for value in values.values()])
            for cause, values in self._alone.items()
        }

    @once
    def _alone(self) -> Mapping[Cause, Mapping[float, float]]:
        """The value with each cause alone at each of its points."""
        points = _SCAN if self._scanned else _ENDS
        return {cause: {by: self._with(cause, by) for by in points} for cause in self.causes}

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
            if cause.only != "worst"
        }

    @property
    def tilts(self) -> dict[Cause, float]:
        """How far each cause moves the value on the way to its high end; down is less than 0."""
        return {c: (by[-1] - by[0]) / 2 for c, by in self._moves.items() if c.only != "worst"}

    def made_of(self, but: str, combined: Callable[..., float]) -> Window:
        """The range by all that each cause does alone, but for causes that are `only` for one."""
        moves = [moves for cause, moves in self._moves.items() if cause.only != but]
        return around(self.middle, moves, combined)

    @once
    def _by_root_sum_square(self) -> Window:
        return self.made_of("worst", math.hypot)

    @once
    def likely(self) -> Window:
        """Independent causes combined by root-sum-square, each side by itself."""
        low, high = self._by_root_sum_square
        # where causes hinder each other the root-sum-square may reach beyond what can be
        known = self.__dict__.get("worst", Window(math.inf, -math.inf))
        as_far = self._separate is not None or known.low <= low <= high <= known.high
        if as_far or self._reaches(min) <= low <= high <= self._reaches(max):
            return Window(low, high)
        return Window(max(low, self.worst.low), min(high, self.worst.high))

    def _reaches(self, end: Callable[..., float]) -> float:
        """A value of the worst range; `likely` rarely needs more of it (a check: 5 % less)."""
        alone = {cause: self._moves[cause] for cause in self._bounding}
        points = _SCAN if self._scanned else _ENDS
        return extremes.reached(self._nodes({}).values(), alone, end, points)

    def likely_at_least(self, limit: float) -> bool:
        """Whether the whole likely range reaches a limit; spares the worst range where it can."""
        return self._by_root_sum_square.low >= limit or self.likely.low >= limit

    @once
    def worst(self) -> Window:
        """The least and the greatest value that any combination of the causes gives."""
        if self._separate is not None:
            return self.made_of("likely", lambda *moves: math.fsum(moves))
        shared = extremes.shared_by([arg._bounding for arg in self._varying.values()], ())
        assert self.function is not None
        if not (shared or self.scan) and len(self._varying) <= _ALL_CORNERS_UP_TO:
            # each argument reaches its own worst whatever the others do
            ends = {key: arg.worst for key, arg in self._varying.items()}
            return extremes.of_ends(self.function, self._resting, self.middle, ends)
        merged = self._merged(shared)
        if merged is not self:
            return merged.worst
        nodes = [*self._nodes({}).values()]
        spreads = [leaf.spreads for leaf in self.leaves]
        points = extremes.points_of(self._bounding, spreads, kinked=self._kinked)
        if not self._scanned and len(points) <= _ALL_CORNERS_UP_TO:
            return extremes.of_corners(nodes, self.middle, points)
        alone = {cause: dict(self._alone[cause]) for cause in points}
        for cause, tried in alone.items():
            if self._scanned or 0.0 in points[cause]:
                tried[0.0] = self.middle
        return extremes.climbed(nodes, self.middle, alone)

    def _merged(self, shared: Collection[Cause]) -> Quantity:
        """The same value with each argument whose causes move nothing else made one leaf.

        Such an argument reaches its own worst whatever the others do, so it counts as one cause.
        """
        args = {}
        for key, arg in self._varying.items():
            if any([cause in shared for cause in arg._bounding]):
                own = [under._bounding for under in arg._varying.values()]
                args[key] = arg._merged(extremes.shared_by(own, shared))
            elif len(arg._bounding) > 1:
                low, high = arg.worst
                as_one = Cause(arg.name, str(id(arg)))
                spread = Spread(as_one, arg.middle - low, high - arg.middle)
                args[key] = Quantity(arg.name, arg.unit, arg.middle, (spread,))
        if all([self.args[key] is arg for key, arg in args.items()]):
            return self
        return replace(self, args={**self.args, **args})

    def _nodes(self, found: dict[int, extremes.Node]) -> dict[int, extremes.Node]:
        """The nodes of the graph below this value, and its own: arguments come first."""
        if id(self) not in found:
            for arg in self._varying.values() if self._separate is None else ():
                arg._nodes(found)
            found[id(self)] = extremes.Node(id(self), self._bounding, self._from_those_under)
        return found

    @once
    def chief_cause(self) -> tuple[Cause, float] | None:
        """The cause that moves the value most when it moves alone, and by how much (+/-)."""
        if not self.effects:
            return None
        cause, effect = max(self.effects.items(), key=lambda item: max(-item[1].low, item[1].high))
        return cause, max(-effect.low, effect.high)

    def __add__(self, other: Quantity) -> Quantity:
        return _sum(self, other, 1.0, "+", _plus)

    def __sub__(self, other: Quantity) -> Quantity:
        return _sum(self, other, -1.0, "-", _minus)


def _sum(
    a: Quantity, b: Quantity, sign: float, symbol: str, function: Callable[..., float]
) -> Quantity:
    if a.unit != b.unit:
        raise ValueError(f"{a.name} is in {a.unit}, {b.name} is in {b.unit}: they cannot be added")
    return Quantity(
        name=f"{a.name} {symbol} {b.name}",
        unit=a.unit,
        function=function,
        args={"a": a, "b": b},
        slopes={"a": 1.0, "b": sign},
    )


def _plus(a: float, b: float) -> float:
    return 0.0 + a + b  # counts are added too, and a sum of them is printed as any other


def _minus(a: float, b: float) -> float:
    return 0.0 + a - b
