"""Values with units, read one by one, and words that other YAML readers take for switches."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from math import inf, log
from typing import Any

from wellstrung.common import money, units
from wellstrung.common.packs import in_words
from wellstrung.common.places import Edit, Fault
from wellstrung.common.units.known import LENGTH, TIME, WINDOW
from wellstrung.common.wording import either
from wellstrung.reading import tree as reading
from wellstrung.reading.branch import Branch, Path
from wellstrung.reading.faults import fault, in_quotes

#: Who reads a value of each kind that the schemas name in `$comment`.
READERS: Mapping[str, Callable[[str | int | float], object]] = {
    "length": units.length,
    "length_or_rest": lambda value: value if value == units.REST else units.length(value),
    "sold_size": lambda value: value if value == units.USUAL else units.length(value),
    "window": units.target,
    "mass": units.mass,
    "pack": lambda value: value if in_words(value) else units.mass(value),
    "rating": units.force,
    "duration": units.duration,
    "volume": units.volume,
    "temperature": units.temperature,
    "wire": units.wire,
    "bead_size": units.bead_figures,
    "amount": money.budget,
    "age": units.age,
    "finger": units.finger,
}

#: kinds of values that are words, which another reader may take for a switch
_WORDS = frozenset({"text", "name", "metal", "lot"})
_SWITCHES = frozenset({"yes", "no", "on", "off", "true", "false", "y", "n"})


#: Kinds of values that are lengths, and how each is read.
_LENGTHS = {"length": LENGTH, "length_or_rest": LENGTH, "window": WINDOW}
_INCHES = ("in", "ft", "yd")


def values(branch: Branch, among: Iterable[Branch] = ()) -> Iterator[Fault]:
    """Read every value with a unit, and ask for quotes where a word may be taken for a switch.

    A length without its unit is offered the unit that lengths of its sort have in `among`.
    """
    for node, schema, path in _scalars(branch):
        kind = schema.get("$comment", "")
        wrong = unit_fault(kind, node) if kind in READERS else None
        if wrong is not None:
            if wrong.bare and kind in _LENGTHS:
                wrong = _in_its_unit(wrong.bare, schema, among)
            elif wrong.bare and kind == "duration":
                own = units.duration(schema["examples"][0]).unit
                each = dict.fromkeys((own, *TIME.usual))
                wrong = units.lacks_unit(wrong.bare, TIME, list(each)[:2])
            elif wrong.bare and kind == "pack" and wrong.bare.isdigit():
                several = f"`{wrong.bare} pieces` if that is how many it holds"
                wrong = units.UnitFault(f"a pack needs a unit: write `{wrong.bare} g` or {several}")
            near = wrong.suggestion
            yield fault(
                f"{branch.called(path)}: {wrong.says}",
                node.place,
                str(node.value),
                edits=(Edit(node.place, near),) if near else (),
            )
        elif kind == "count" and isinstance(node.value, float) and node.value.is_integer():
            # 12.5 is refused by its schema; 1.000 may be a thousand
            whole, _, rest = node.text.partition(".")
            meant = [f"`{whole}`", *([f"`{whole}{rest}`"] if rest == "000" else [])]
            says = f"{branch.called(path)} is `{node.text}`: write {either(meant)}"
            yield fault(says, node.place, node.text, "a whole number")
        elif kind in _WORDS and not node.quoted and node.text.lower() in _SWITCHES:
            says = (
                f"{branch.called(path)}: `{node.text}` may be read as yes or no, and not as a word"
            )
            yield in_quotes(says, node)


def _scalars(branch: Branch) -> Iterator[tuple[reading.Scalar, Mapping[str, Any], Path]]:
    """Every single value of a branch with its schema."""
    waiting: list[tuple[reading.Node, Mapping[str, Any], Path]] = [(branch.node, branch.schema, ())]
    while waiting:
        node, schema, path = waiting.pop()
        if isinstance(node, reading.Mapping):
            fields, rest = schema.get("properties", {}), schema.get("additionalProperties")
            for word, entry in node.entries.items():
                inner = fields.get(word, rest)
                if isinstance(inner, dict):
                    waiting.append((entry.node, inner, (*path, word)))
        elif isinstance(node, reading.Sequence):
            inner = schema.get("items")
            if isinstance(inner, dict):
                waiting += [(item, inner, (*path, at)) for at, item in enumerate(node.items)]
        elif isinstance(node, reading.Scalar):
            yield node, schema, path


def _in_its_unit(bare: str, schema: Mapping[str, Any], among: Iterable[Branch]) -> units.UnitFault:
    """The fault of a length without its unit: first the one that makes it most like the others.

    Sizes of parts are compared with sizes, what is cut or worn with its like.
    """
    kind, own = _LENGTHS[schema["$comment"]], _example(schema)
    lengths = [
        ((_example(its) == "mm") == (own == "mm"), units.length(node.value))
        for branch in among
        for node, its, _ in _scalars(branch)
        if its.get("$comment") in _LENGTHS and unit_fault("length", node) is None
    ]
    alike = [one for like, one in lengths if like]
    if alike:
        likely = _unit(min(alike, key=lambda one: _unlike(bare, one)))
    else:
        likely = "in" if lengths and all(_unit(one) in _INCHES for _, one in lengths) else own
    return units.lacks_unit(bare, kind, list(dict.fromkeys((likely, own, *kind.usual)))[:2])


def _unlike(bare: str, other: units.Parsed) -> float:
    """How many times larger or smaller a number would be than a length in the same unit, as log."""
    try:
        return abs(log(units.length(f"{bare} {_unit(other)}").value / other.value))
    except units.UnitFault:  # larger than any piece
        return inf


def _unit(length: units.Parsed) -> str:
    return length.unit.strip("/")


def _example(schema: Mapping[str, Any]) -> str:
    """The unit in which a field is shown: mm for sizes of parts, cm for what is cut or worn."""
    example = schema.get("examples", ("",))[0]
    return "cm" if example == units.REST else _unit(units.length(example or LENGTH.example))


def unit_fault(kind: str, node: reading.Node) -> units.UnitFault | None:
    """What is wrong with a value of that kind; None if nothing is."""
    try:
        READERS[kind](node.value)
    except units.UnitFault as wrong:
        return wrong
    return None
