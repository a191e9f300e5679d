"""Which other sizes of a ring or a finding would work.

Each size is changed alone, in steps of a twentieth of a millimetre, on a copy of the plan that is
judged again. A size works if no rule makes a new remark, or a more serious one. One that a remark
is about, or that would cure one, is not offered. One that no rule looks at between half and double
is left out; an end that is not met there is looked for up to `FAR` times what is written. Of a very
long plan so many copies are judged as `MOST_READ` allows.
"""

from __future__ import annotations

from collections.abc import Callable, Container, Iterator, Mapping, Sequence
from typing import NamedTuple

from msgspec import Struct

from wellstrung.common import units
from wellstrung.common.places import Place
from wellstrung.derived.taken import bought_parts
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import Identity, PlanResult
from wellstrung.model.item import Missing
from wellstrung.model.parts import Part
from wellstrung.model.plan import Plan
from wellstrung.quantity.value import Quantity
from wellstrung.reading import tree
from wellstrung.rulebook import at_least, at_most, within
from wellstrung.what_if.unfit import called, unfit
from wellstrung.what_if.unsettled import Raised, Ranks, Unsettling

#: Steps in which sizes are tried, mm.
STEP = 0.05
#: A size without a limit holds at so many times what is written, and at one so-many-th of it.
FAR = 5
#: So many characters of changed copies are read in all; no plan of a piece comes near it.
MOST_READ = 1_200_000
#: A place of the run costs as much to judge as so many characters.
_PLACE = 40
#: Values of these kinds are sizes that a shop sells by; measured values and weights are not.
_SIZES = frozenset({"length", "wire"})
_NO_SIZES = frozenset({"measured", "closed_length"})


class Substitute(Struct, frozen=True):
    """The range of one size of a part that works, mm; None where there is no limit within reach.

    `says` is for a shop: `bore 9.85..10.7 mm`. If the size as written does not work, `works` is
    false and `says` is what the rule needs.
    """

    part: str
    field: str
    says: str
    low: float | None = None
    high: float | None = None
    works: bool = True


class Sizes(NamedTuple):
    """The sizes found; `stopped` says that the search ended before it had tried all."""

    found: list[Substitute]
    stopped: bool = False

    @property
    def note(self) -> str:
        """What to say of a search that ended early; empty where it did not."""
        return "the plan is long: not every size was tried" if self.stopped else ""


def found(result: PlanResult, checker: Checker, names: Container[str]) -> Sizes:
    """The sizes that matter, of rings and findings by these names, and the ranges that work."""
    if result.ask is None:
        return Sizes([])
    plan, sizes = result.ask.plan, list[Substitute]()
    asked = {part: list(_readable(part, plan)) for part in bought_parts(plan) if part.name in names}
    judge = _Copies(checker, plan, asked)
    try:
        for part, own in asked.items():
            sizes.extend(_of(part, own, result, judge))
    except _Stopped:
        return Sizes(sizes, stopped=True)
    finally:
        judge.let_go()
    return Sizes(sizes)


class _Stopped(Exception):
    """As many copies were judged as may be."""


class _Asked(NamedTuple):
    """A size of a part, where its field stands, and the size as it is read; None if it is not."""

    path: tuple[str, ...]
    size: Quantity | None


class _Copies:
    """Judges a plan with one size changed, until `MOST_READ` characters are read."""

    def __init__(
        self, checker: Checker, plan: Plan, asked: Mapping[Part, Sequence[_Asked]]
    ) -> None:
        self.plan, self._checker, self._left = plan, checker, MOST_READ
        self._short = Unsettling(
            checker,
            plan,
            [
                (part.name, path, size.place)
                for part, own in asked.items()
                for path, size in own
                if size is not None and size.place is not None
            ],
        )

    def as_written(self, part: Part) -> Mapping[Identity, int]:
        """The rank of each remark about the part; raises _Stopped."""
        self._count()
        return self._short.as_written(part.name)

    def of(self, part: Part, path: Sequence[str], place: Place) -> Raised:
        """What the part brings with another text at a place; raises _Stopped."""
        short = self._short.of(part.name, place)
        line = tree.BREAK.split(self.plan.text)[place.line - 1][: place.column - 1].rstrip()
        # in a phrase a gauge says by itself that it is the wire, and mm do not
        gauge = isinstance(part.node, tree.Spelled) and path[-1] == "wire"
        named = "wire " if gauge and not line.endswith("wire") else ""

        def raised(written: str) -> Ranks | None:
            self._count()
            if short is not None:
                return short(written)
            text = tree.replaced(self.plan.text, [(place, named + written)])
            found = self._checker.raised_about(text, self.plan, part.name)
            return found.items() if found is not None else None

        return raised

    def let_go(self) -> None:
        """Free the memory of the copy at once."""
        self._short.let_go()

    def _count(self) -> None:
        self._left -= len(self.plan.text) + _PLACE * len(self.plan.run)
        if self._left < 0:
            raise _Stopped


def _of(
    part: Part, asked: Sequence[_Asked], result: PlanResult, judge: _Copies
) -> Iterator[Substitute]:
    before = judge.as_written(part) if asked else {}
    wrong = {
        node.place: one.remark.needed
        for one in unfit(result)
        if one.thing == part.name and (node := part.node_at(*one.path))
    }
    for path, size in asked:
        name, node = called(path), part.node_at(*path)
        if node and node.place in wrong:  # a phrase may say several fields in one word
            yield Substitute(part.name, name, wrong[node.place], works=False)
            continue
        if size is None:
            continue
        assert size.place is not None
        trial = _Trial(part, size, before, judge.of(part, path, size.place))
        if trial.decides() and not trial.cures():
            low, high = trial.end(-1), trial.end(1)
            yield Substitute(part.name, name, f"{name} {_range_words(low, high, size)}", low, high)


def _readable(part: Part, plan: Plan) -> Iterator[_Asked]:
    """The sizes of a part that stand in the plan, not in its drawer."""
    for path, kind in _sizes(part):
        node = part.node_at(*path)
        if node and node.place.file == plan.file:
            try:
                size = part.wire(*path) if kind == "wire" else part.size(*path)
            except Missing:
                size = None
            yield _Asked(path, size)


def _sizes(part: Part) -> Iterator[tuple[tuple[str, ...], str]]:
    """The paths of a part's sizes, by its kind's schema, with what kind of value they are."""

    def walk(
        node: tree.Node, schema: object, path: tuple[str, ...]
    ) -> Iterator[tuple[tuple[str, ...], str]]:
        fields = schema.get("properties", {}) if isinstance(schema, Mapping) else {}
        if isinstance(node, tree.Mapping):
            for name, entry in node.entries.items():
                if name not in _NO_SIZES:
                    yield from walk(entry.node, fields.get(name), (*path, name))
        elif isinstance(schema, Mapping) and schema.get("$comment") in _SIZES:
            yield path, schema["$comment"]

    yield from walk(part.node, part.kind.fragment, ())


class _Trial:
    """One size of one part, changed on copies of the plan."""

    def __init__(
        self,
        part: Part,
        size: Quantity,
        before: Mapping[Identity, int],
        raised: Raised,
    ) -> None:
        self._part, self._size, self._before, self._raised = part, size, before, raised
        self._known: dict[int, bool] = {}

    def decides(self) -> bool:
        """Whether half or double the size breaks a rule that is about the part."""
        for steps in map(self._most, (-1, 1)):
            self._known[steps] = False
            for parts in self._new(steps):
                self._known[steps] = True
                if parts:
                    return True
        return False

    def cures(self) -> bool:
        """Whether half or double the size answers a remark: as it is written it does not work."""
        now = self._ranks(0) if any(self._before.values()) else None
        if not now:
            return False
        ends = [self._ranks(self._most(way)) for way in (-1, 1)]
        return any(
            end.get(one, 0) < rank for end in ends if end is not None for one, rank in now.items()
        )

    def end(self, way: int) -> float | None:
        """The last size that works downwards (-1) or upwards (1), mm; None where all of them do."""
        good, bad, most = 0, 1, abs(self._most(way))
        if not self._broken(way * most):
            good, bad = most, abs(self._most(way, FAR))
            if not self._broken(way * bad):
                return None
        while bad < most and not self._broken(way * bad):
            good, bad = bad, min(most, 2 * bad)
        while bad - good > 1:
            middle = (good + bad) // 2
            good, bad = (good, middle) if self._broken(way * middle) else (middle, bad)
        return self._at(way * good)

    def _most(self, way: int, times: int = 2) -> int:
        """Steps to one so-many-th of the size, or to so many times as much."""
        share = 1 / times - 1 if way < 0 else times - 1
        return round(self._size.middle / STEP * share)

    def _at(self, steps: int) -> float:
        return self._size.middle + steps * STEP

    def _broken(self, steps: int) -> bool:
        """Whether there are new remarks when the size is changed by so many steps."""
        if steps not in self._known:
            self._known[steps] = any(True for _ in self._new(steps))
        return self._known[steps]

    def _new(self, steps: int) -> Iterator[tuple[str, ...]]:
        """The parts of each new remark; it is judged no further than they are read."""
        after = self._raised(self._written(steps))
        if after is None:
            yield (self._part.name,)
            return
        for (rule, parts), rank in after:
            if rank > self._before.get((rule, parts), 0):
                yield parts

    def _ranks(self, steps: int) -> dict[Identity, int] | None:
        """The rank of each remark about the size, so many steps off; None where it is no plan."""
        after, found = self._raised(self._written(steps)), dict[Identity, int]()
        if after is None:
            return None
        for one, rank in after:
            found[one] = max(rank, found.get(one, 0))
        return found

    def _written(self, steps: int) -> str:
        """The size changed by so many steps, as it is written, with its tolerance."""
        low, high = self._size.worst if self._written_with_tolerance() else (0.0, 0.0)
        written = units.show(self._at(steps), "mm", 4)
        if high > low:
            written += f" ± {units.show((high - low) / 2, 'mm', 4)}"
        return written

    def _written_with_tolerance(self) -> bool:
        return any(sign in self._size.spelling for sign in ("±", "..", "+/-"))


def _range_words(low: float | None, high: float | None, size: Quantity) -> str:
    """A range as one asks for it in a shop; of wire in gauges, the gauges."""
    gauge: Callable[[int], float] | None = {"AWG": units.awg, "SWG": units.swg}.get(
        size.spelled_unit.upper()
    )
    if gauge is not None:
        fits = [
            number
            for number in range(10, 31)
            if (low or 0.0) - 1e-6 <= gauge(number) <= (high or 99.0) + 1e-6
        ]
        if fits:
            thick, thin = fits[0], fits[-1]
            unit = size.spelled_unit
            if low is not None and high is not None:
                return f"{thin}..{thick} {unit}" if thin != thick else f"{thin} {unit}"
            return f"{thin} {unit} or thicker" if high is None else f"{thick} {unit} or thinner"
    if low is not None and high is not None:
        return within(low, high, size)
    if low is not None:
        return f"from {at_least(low, size)}"
    return f"up to {at_most(high or 0.0, size)}"
