"""One fit to draw: the join, the values it has, and what was said of it."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Generic, NamedTuple, TypeVar

from msgspec import Struct

from wellstrung.common import units
from wellstrung.common.places import Place
from wellstrung.drawing import Figure
from wellstrung.drawing.looks.sizes import Sizes
from wellstrung.drawing.marks import Mark
from wellstrung.drawing.sections.section import Section
from wellstrung.judging.result import Remark
from wellstrung.model.item import Item, Missing
from wellstrung.quantity.value import Quantity
from wellstrung.rulebook import Ask, Subject

Join = TypeVar("Join", bound=Subject, covariant=True)


class Said(NamedTuple):
    """A remark about a fit, and the number it has in the report.

    `instead` where the fit's own rule is silent, because this remark is about the cause.
    """

    number: int
    remark: Remark
    instead: bool = False


class Case(Struct, Generic[Join], frozen=True):
    """A join, how often the piece has it, and the numbered remarks of the plan."""

    join: Join
    ask: Ask
    times: int
    numbered: tuple[Said, ...]

    def of(self, item: Item, what: str) -> Quantity:
        """A size that can be drawn; raises Missing."""
        return drawable(self.ask.of(item, what))

    def get(self, name: str) -> Quantity:
        """The same by the quantity's name."""
        return drawable(self.ask.get(name))

    def limit(self, name: str) -> float:
        """A limit of the rule that judges the fit; raises Missing where no such rule is there."""
        try:
            return self.ask.limit(name).middle
        except KeyError:
            raise Missing(f"the limit `{name}`") from None

    def perhaps(self, item: Item, what: str) -> Quantity | None:
        """A size that the drawing can do without."""
        try:
            return self.of(item, what)
        except Missing:
            return None

    def said(
        self, rules: Sequence[str], *places: Place, collides: bool = False
    ) -> tuple[Said, ...]:
        """The remarks of these rules about the join, found by its `places`.

        One remark may stand for several joins with the same thing to change: it names the parts of
        the first and the places of all. Where what is drawn `collides` and these rules are silent,
        the remark that names the cause stands instead.
        """
        own = [one for one in self.numbered if one.remark.rule in rules and self._is(one, places)]
        if own or not collides:
            return tuple(own)
        return tuple(
            one._replace(instead=True)
            for one in self.numbered
            if set(one.remark.affects) & set(rules) and set(one.remark.parts) & set(self.join.parts)
        )

    def _is(self, said: Said, places: Sequence[Place]) -> bool:
        parts, remark = self.join.parts, said.remark
        if not places:
            return remark.parts == parts
        here = any(place in (remark.place, *remark.also) for place in places)
        return here and remark.parts[:1] == parts[:1]

    def figure(
        self, section: Section, title: str, found: str, needed: str, said: Sequence[Said]
    ) -> Figure:
        """The finished figure; what is needed is in the words of its remark, where it has one."""
        own = [one for one in said if not one.instead]
        if own:
            needed = "; ".join(
                f"{one.remark.needed} (remark {one.number}, {one.remark.level})" for one in own
            )
        first = [f"remark {one.number} comes first" for one in said if one.instead]
        needed = "; ".join(filter(None, [needed, *first]))
        if self.times > 1:
            title = f"{title}, {self.times} times"
        caption = f"found: {found}" + (f"; needed: {needed}" if needed else "")
        return Figure(
            title=title,
            alt=f"section: {title}. {caption}",
            caption=caption,
            svg=section.svg(title, caption, Sizes(self.ask)),
            remarks=tuple(one.number for one in said),
        )


def drawable(quantity: Quantity) -> Quantity:
    """The quantity, where its size is more than nothing; raises Missing."""
    if not 0 < quantity.middle < float("inf"):
        raise Missing(f"{quantity.name} above zero")
    return quantity


def mm(value: float) -> str:
    """A size in mm, in no finer steps than a bench can measure."""
    return units.show(value, "mm")


def size(quantity: Quantity) -> str:
    """A size as its author wrote it, with the mm where that is another unit.

    >>> from wellstrung.quantity.arithmetic import leaf
    >>> size(leaf("bore", 8.73, "mm", spelling="11/32 in"))
    '11/32 in (8.73 mm)'
    >>> size(leaf("bore", 8.5, "mm", spelling="8.5 mm"))
    '8.5 mm'
    """
    if not quantity.spelling:
        return mm(quantity.middle)
    if quantity.spelling.endswith("mm"):
        return quantity.spelling
    return f"{quantity.spelling} ({mm(quantity.middle)})"


def with_range(quantity: Quantity) -> str:
    """The same with its likely range, where it has one that can be printed.

    >>> from wellstrung.quantity.arithmetic import leaf
    >>> from wellstrung.quantity.causes import Cause, Spread
    >>> with_range(leaf("bore", 8.5, "mm", [Spread(Cause("make"), 0.1, 0.1)]))
    '8.5 mm, likely 8.4..8.6 mm'
    """
    low, high = (mm(end) for end in quantity.likely)
    if low == high:
        return size(quantity)
    return f"{size(quantity)}, likely {low.removesuffix(' mm')}..{high}"


def clearance(hole: Quantity, thing: Quantity) -> str:
    """What is left of a hole over the likely sizes, in words.

    >>> from wellstrung.quantity.arithmetic import exact
    >>> clearance(exact("bore", 6.0, "mm"), exact("rope", 7.5, "mm"))
    'too thick by 1.5 mm'
    """
    least, most = hole.likely.low - thing.likely.high, hole.likely.high - thing.likely.low
    if least >= 0 or most <= 0:
        low, high = sorted((abs(least), abs(most)))
        ends = mm(high) if mm(low) == mm(high) else f"{mm(low).removesuffix(' mm')}..{mm(high)}"
        return f"{'clearance' if least >= 0 else 'too thick by'} {ends}"
    return f"from {mm(-least)} too thick to {mm(most)} clear"


def marks_of(said: Sequence[Said]) -> list[Mark]:
    """Remarks as a section marks them."""
    return [Mark(one.number, one.remark.level) for one in said]
