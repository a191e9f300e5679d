"""What does not work as written among the things to buy, and what to take instead."""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Iterator, Mapping, Sequence
from math import inf

from msgspec import Struct
from msgspec.structs import replace

from wellstrung.common.places import Place
from wellstrung.judging.result import PlanResult, Remark, understood
from wellstrung.lists import shopping
from wellstrung.lists.line import SupplyLine
from wellstrung.model.item import Item
from wellstrung.model.parts import Part
from wellstrung.reading import tree

_HALVES = (("a",), ("b",))
#: what a remark needs a size of, and fields that say how wide a thing is inside
_OF = re.compile(r"an? (?:\w+ )?(\w+) of ")
_ROUND = ("inside", "outside", "bore", "size")


class Unfit(Struct, frozen=True):
    """A thing that a remark says does not work: its line in a supply list, the size, and why.

    `path` is where the size stands in its entry, at `place`; empty where the whole thing does not
    work.
    """

    thing: str
    path: tuple[str, ...]
    remark: Remark
    place: Place

    @property
    def says(self) -> str:
        """What does not work, and what to take."""
        does = "does not work" if self.sure else "may not work"
        what = f"the {called(self.path)} as written" if self.path else "as written it"
        take = f"take {self.remark.needed}{self._such_as}" if self.asked else self.remark.remedy
        return f"{what} {does} ({take})" if take else f"{what} {does}"

    @property
    def _such_as(self) -> str:
        """The size that the remark advises; empty where what is needed names it already."""
        advised = (edit.new for edit in self.remark.edits if edit.place == self.place)
        sizes = [new for new in advised if new[:1].isdigit() and new not in self.remark.needed]
        return f", such as {sizes[0]}" if sizes and self.path else ""

    @property
    def asked(self) -> bool:
        """Whether what is needed is this size: a ring's wire may need a wider hole elsewhere."""
        needed, path = self.remark.needed, self.path
        if not path:
            return True
        if ", or a " in needed and self.remark.edits:
            return False  # either of two: the remedy says which
        of = _OF.match(needed)
        return of[1] in path if of else "inside" not in needed or path[-1] in _ROUND

    @property
    def sure(self) -> bool:
        """Whether it does not work; else it may not."""
        return self.remark.level == "error"


def called(path: tuple[str, ...]) -> str:
    """A size in words; the halves of a clasp are called `a` and `b`.

    >>> called(("top_eyes", "hole")), called(("a", "eye", "hole"))
    ('top eyes hole', 'eye hole of half a')
    """
    if path[:1] in _HALVES and len(path) > 1:
        return f"{called(path[1:])} of half {path[0]}"
    return " ".join(path).replace("_", " ")


def unfit(result: PlanResult) -> Iterator[Unfit]:
    """Every part and bead of a plan that a remark asks to change, with what it asks for."""
    if result.ask is None:
        return
    plan = result.ask.plan
    things = (*plan.beads.values(), *plan.parts.values())
    by_place: dict[Place, list[Item]] = {}
    for thing in things:
        by_place.setdefault(thing.node.place, []).append(thing)
    places = sorted(by_place)

    def standing(at: Place) -> Sequence[Item]:
        """What stands there; no part or bead is written within another."""
        after = bisect_right(places, (*at[:3], inf))
        before = (place for place in places[after - 1 : after] if place.holds(at))
        return [thing for place in before for thing in by_place[place]]

    wearer = plan.written("wearer")
    for remark in result.numbered:
        if not remark.counts or not remark.needed:
            continue
        found = [(thing, at) for at in _places(remark) for thing in standing(at)]
        if not found and wearer is not None and wearer.place.holds(remark.place):
            # what does not suit its wearer is the part, not the person
            found = [(part, part.key.place) for part in things if remark.parts == (part.name,)]
        for thing, at in dict(found).items():
            path = path_to(thing.node, at)
            yield Unfit(_line_of(thing, path), path, remark, at)


def concerns(remark: Remark, place: Place) -> bool:
    """Whether a remark asks to change something at a place of the plan."""
    return any(place.holds(at) for at in _places(remark))


def _places(remark: Remark) -> list[Place]:
    return [remark.place, *([remark.target.place] if remark.target else [])]


def to_buy(results: Sequence[PlanResult], makers: int = 1, *, on_hand: bool) -> list[SupplyLine]:
    """The supply list of the plans; a line says which size of it does not work as written."""
    found: dict[tuple[str, str], list[tuple[bool, str]]] = {}
    for result in results:
        of = f"for {result.title} " if len(results) > 1 else ""
        for one in unfit(result):
            found.setdefault((result.file, one.thing), []).append((one.sure, f"{of}{one.says}"))
    return [
        replace(line, unfit=_says(line, found, sure=True), doubt=_says(line, found, sure=False))
        for line in shopping.needed(understood(results), makers, on_hand=on_hand)
    ]


def _says(
    line: SupplyLine, found: Mapping[tuple[str, str], Sequence[tuple[bool, str]]], *, sure: bool
) -> tuple[str, ...]:
    of_line = (one for file in line.files for one in found.get((file, line.name), ()))
    return tuple(says for so, says in of_line if so is sure)


def _line_of(thing: Item, path: tuple[str, ...]) -> str:
    """The line of a thing; the stone of a bezel has one of its own."""
    stone = thing.traits.made_round if isinstance(thing, Part) else ""
    return f"{stone} of {thing.name}" if stone and path[:1] == (stone,) else thing.name


def path_to(node: tree.Node, place: Place) -> tuple[str, ...]:
    """The field of a group that a place lies in, by the names that lead to it."""
    if isinstance(node, tree.Mapping):
        for name, entry in node.entries.items():
            if entry.node.place.holds(place) and entry.node.place != node.place:
                return (name, *path_to(entry.node, place))
    return ()
