"""Reading the fields of one entry of a plan: texts, counts and sizes, each with its place."""

from __future__ import annotations

import math
from collections.abc import Callable, Collection, Mapping
from decimal import Decimal

from msgspec import Struct

from wellstrung import tables
from wellstrung.common import units
from wellstrung.common.cache import Cache
from wellstrung.common.places import Place
from wellstrung.common.wording import together
from wellstrung.quantity.arithmetic import leaf
from wellstrung.quantity.causes import Cause, Spread
from wellstrung.quantity.value import Quantity
from wellstrung.reading import tree as reading
from wellstrung.reading.settings import SHARE_AT_MOST, UPWARDS, Bench

#: what calipers are laid on, mm; longer things are laid along a tape: common practice
_BY_CALIPERS = 100.0


class Missing(Exception):
    """Values that were asked for are not in the plan: `fields` is what the author would fill in."""

    def __init__(self, *fields: str) -> None:
        super().__init__(*fields)
        self.fields = tuple(dict.fromkeys(fields))

    @property
    def field(self) -> str:
        """All of them, in words."""
        return together(self.fields)


def node_at(node: reading.Node, *path: str) -> reading.Node | None:
    """The node at a path of field names under another, or None."""
    for step in path:
        entry = node.entries.get(step)
        if entry is None:
            return None
        node = entry.node
    return node


class Item(Struct, frozen=True, eq=False):
    """An entry of the plan: a part, a bead of the palette, a line of supplies, the wearer."""

    name: str
    key: reading.Scalar
    node: reading.Mapping
    bench: Bench
    cache: Cache

    def __repr__(self) -> str:
        return f"{type(self).__name__}({self.name!r})"

    def node_at(self, *path: str) -> reading.Node | None:
        """The node at a path of field names, or None."""
        return node_at(self.node, *path)

    def has(self, *path: str) -> bool:
        """Whether the author wrote the field."""
        if len(path) == 1:  # the usual question, asked a thousand times a plan
            return path[0] in self.node.entries
        return self.node_at(*path) is not None

    def place_of(self, *path: str) -> Place:
        """The field's place; where it is missing, the place of what should hold it.

        What was measured is what counts, so that it is what an edit has to change.
        """
        if measured := self.node_at("measured", *path):
            return measured.place
        for end in range(len(path), 0, -1):
            node = self.node_at(*path[:end])
            if node is not None:
                return node.place
        return self.key.place

    @property
    def measurable(self) -> Collection[str]:
        """The fields that may stand under `measured:`."""
        return ()

    def _cure(self, path: tuple[str, ...], parsed: units.Parsed, unit: str, spread: float) -> str:
        """What the author can do about the spread of a field, written or allowed for."""
        what = " ".join(path).replace("_", " ")
        if len(path) == 1 and path[0] in self.measurable:
            return f"measure the {what} and write `measured: {{{path[0]}: ...}}` in `{self.name}`"
        if unit == "°C":
            return f"measure how warm it is where `{self.name}` cures"
        if unit == "N":
            return f"ask for the {what} of `{self.name}` with a closer tolerance"
        if unit == "g":
            return f"weigh `{self.name}` to the tenth of a gram and write its `{path[-1]}`"
        # calipers read a twentieth of a millimetre, a tape along what is long one millimetre
        closely = 0.05 if parsed.value < _BY_CALIPERS else 1.0
        if spread <= closely + 1e-9:
            tolerance = units.show(spread, "mm")
            return f"measure the {what} of `{self.name}` more closely than ± {tolerance}"
        plain = parsed.low == parsed.high and "±" not in parsed.text
        example = (
            f"{parsed.text if plain else units.show(parsed.value, parsed.unit)} ± {closely:g} mm"
        )
        return (
            f"measure the {what} of `{self.name}` and write it with its tolerance, as `{example}`"
        )

    def assumed(self, *path: str) -> Quantity | None:
        """What the trade tables have of a field that is not there; None where nothing."""
        return None

    def missing(self, *path: str) -> Missing:
        """The exception to raise for a field that is not there."""
        return Missing(f"`{'.'.join(path)}` of `{self.name}`")

    def text(self, *path: str) -> str:
        """A text field as written; raises Missing."""
        node = self.node_at(*path)
        if node is None:
            raise self.missing(*path)
        if isinstance(node, reading.Scalar) and isinstance(node.value, float):
            return node.text  # lot 12.10 is not lot 12.1
        return str(node.value)

    def said(self, *path: str) -> str:
        """A text field in the author's own word, which may mean the same as `text`."""
        node = self.node_at(*path)
        return node.text if isinstance(node, reading.Scalar) else self.text(*path)

    def texts(self, *path: str) -> tuple[str, ...]:
        """A list of texts as written; empty where it is not there."""
        node = self.node_at(*path)
        return tuple(str(text) for text in node.value) if node is not None else ()

    def count(self, *path: str, default: int | None = None) -> int:
        """A whole number; raises Missing when it is not there and has no default."""
        return int(self.number(*path, default=default))

    def number(self, *path: str, default: float | None = None) -> float:
        """A plain number; raises Missing when it is not there and has no default."""
        node = self.node_at(*path)
        if node is None:
            if default is None:
                raise self.missing(*path)
            return default
        return float(node.value)

    def rounded(self, field: str, *, cure: str) -> Quantity:
        """A plain number, no closer than half of its last figure; a `measured:` one comes first."""
        node = self.node_at("measured", field) or self.node_at(field)
        if node is None:
            raise self.missing(field)
        text = node.text if isinstance(node, reading.Scalar) else str(node.value)
        written = Decimal(text)
        half = 10.0 ** int(written.as_tuple().exponent) / 2
        cause = Cause(f"rounding of `{field}`", f"`{self.name}`", cure)
        name, spreads = f"{self.name}.{field.replace('_', ' ')}", [Spread(cause, half, half)]
        return leaf(name, float(written), "", spreads, place=node.place, spelling=text)

    def counts(self, *path: str) -> tuple[int, ...]:
        """A field of one count, a list of them, or a mirrored list; empty where it is not there.

        `mirror` goes up to its last count and back: `{mirror: [3, 5, 7]}` is 3 5 7 5 3.
        """
        node = self.node_at(*path)
        if node is None:
            return ()
        value = node.value
        if isinstance(value, Mapping):
            half = [int(count) for count in value["mirror"]]
            return (*half, *half[-2::-1])
        return tuple(int(count) for count in value) if isinstance(value, list) else (int(value),)

    def lists(self, *path: str) -> bool:
        """Whether a field that takes one count or several gives a list of them."""
        node = self.node_at(*path)
        return node is not None and not isinstance(node.value, int)

    def length(self, *path: str, allowance: str = "") -> Quantity:
        """What is cut, worn or sold by length, in mm; messages give it in the author's unit.

        A `measured:` value of the same name beats what is written; raises Missing.
        """
        return self._value(units.length, "mm", path, allowance)

    def girth(self, measure: str) -> Quantity:
        """How far it is round a part of the body, in mm: of a finger by a ring size as well."""
        return self._value(
            units.finger if measure == "finger" else units.length, "mm", (measure,), ""
        )

    def size(self, *path: str, allowance: str = "") -> Quantity:
        """The size of a part, a bead or a hole, as `length`; messages give it in mm."""
        return self._value(units.size, "mm", path, allowance)

    def wire(self, *path: str) -> Quantity:
        """A wire thickness in mm."""
        return self._value(units.wire, "mm", path, "wire")

    def mass(self, *path: str) -> Quantity:
        """A mass in g."""
        return self._value(units.mass, "g", path, "")

    def force(self, *path: str) -> Quantity:
        """A pull in N."""
        return self._value(units.force, "N", path, "")

    def duration(self, *path: str) -> Quantity:
        """A time in minutes."""
        return self._value(units.duration, "min", path, "")

    def volume(self, *path: str) -> Quantity:
        """A volume in ml."""
        return self._value(units.volume, "ml", path, "")

    def temperature(self, *path: str) -> Quantity:
        """How warm it is, in °C."""
        return self._value(units.temperature, "°C", path, "")

    def _value(
        self,
        parse: Callable[[str | int | float], units.Parsed],
        unit: str,
        path: tuple[str, ...],
        allowance: str,
    ) -> Quantity:
        """The field as one leaf, whoever asks."""
        return self.cache.get(Item._read, self, parse, unit, path, allowance)

    def _read(
        self,
        parse: Callable[[str | int | float], units.Parsed],
        unit: str,
        path: tuple[str, ...],
        allowance: str,
    ) -> Quantity:
        measured = self.node_at("measured", *path)
        node = measured or self.node_at(*path)
        if node is None:
            found = self.assumed(*path)
            if found is None:
                raise self.missing(*path)
            return found
        parsed = parse(node.value)
        what = ".".join(path).replace("_", " ")
        down, up = parsed.value - parsed.low, parsed.high - parsed.value
        source = ""
        if not (down or up) and allowance and not measured:
            setting = self.bench.allowances[allowance]
            up = min(setting.value, SHARE_AT_MOST.get(allowance, math.inf) * parsed.value)
            down = 0.0 if allowance in UPWARDS else up
            source = setting.reason
        spreads = []
        if down or up:
            cause = Cause(
                what.replace(".", " "),
                f"`{self.name}`",
                self._cure(path, parsed, unit, max(down, up)),
            )
            spreads.append(Spread(cause, down, up))
        return leaf(
            f"{self.name}.{what}",
            parsed.value,
            unit,
            spreads,
            place=node.place,
            spelling=parsed.text,
            spelled_unit=parsed.unit,
            source=source,
        )


class Bead(Item, frozen=True, eq=False):
    """A bead of the palette."""

    @property
    def cylinder(self) -> bool:
        """Whether it is a cylinder, which one maker sells and which fill their tube evenly."""
        return self.family is not None and bool(self.family.text("even"))

    @property
    def family(self) -> tables.Row | None:
        """The row of its type in the trade table `other_beads`; None where it has its own sizes."""
        return tables.load("other_beads").rows.get(self.text("type"))

    @property
    def reamed_dry(self) -> bool:
        """Whether it is no pearl, shell, stone or glass, which are reamed under water."""
        return self.family is not None and bool(self.family.text("reamed"))

    @property
    def two_hole(self) -> bool:
        """Whether it has two holes side by side, so that it lies flat on two threads."""
        return self.family is not None and bool(self.family.text("holes"))

    @property
    def seed(self) -> bool:
        """Whether it is a seed bead, whose size is a number such as 11/0."""
        size = self.node_at("size") if self.family is not None else None
        return size is not None and not units.bead_figures(size.value)

    @property
    def made_in(self) -> str:
        """Its make, as the plan says it or as its type has it; empty where neither does."""
        if self.has("make") or self.family is None:
            return self.text("make") if self.has("make") else ""
        return self.family.text("make")

    @property
    def hangs(self) -> bool:
        """Whether its hole goes through its top, so that it hangs below its thread."""
        return self.family is not None and self.family.text("largest") == "height"

    @property
    def shared(self) -> int:
        """How many strands run through one of it, where they meet in it."""
        return self.count("shared", default=1)

    @property
    def top_drilled(self) -> bool:
        """Whether its hole goes across its top: as the plan says it, or as its type has it."""
        return self.text("drilled") == "top" if self.has("drilled") else self.hangs

    @property
    def row(self) -> str:
        """The name of its row in the trade table `beads`; raises Missing without a make."""
        named = self.family.text("seed") if self.family is not None else ""
        make = self.text("make") if "{make}" in named else ""
        return named.format(size=units.bead_size(self.text("size")), make=make)
