"""Nodes of a tree made of the cells of a list: each value stands at its cell, under its heading."""

from __future__ import annotations

from collections.abc import Iterable

import yaml

from wellstrung.common.places import Place
from wellstrung.reading import tree
from wellstrung.reading.rfc_4180 import Cell

#: values by their path, each with its heading
Entries = list[tuple[tuple[str, ...], Cell, tree.Node]]


def scalar(cell: Cell, text: str, *, numeric: bool = False) -> tree.Scalar:
    """A word at a cell; where a number is asked for, a number if it is one."""
    node = tree.Scalar(cell.place.file, *_marks(cell.place, cell.place), text)
    node.quoted = False
    if numeric and text.isascii():
        whole, point, rest = text.partition(".")
        if len(text) < 10 and whole.isdigit() and (not point or rest.isdigit()):
            node.value = float(text) if point else int(text)
    return node


def listed(cell: Cell, words: Iterable[str]) -> tree.Sequence:
    """Several words of one cell."""
    return tree.sequence(scalar(cell, cell.text), [scalar(cell, word) for word in words])


def group(cells: Iterable[Cell], entries: Entries) -> tree.Mapping:
    """Entries by their path, each with its heading; the group reaches over the cells.

    Where two stand at one path, the first counts.
    """
    places = [cell.place for cell in cells]
    node = tree.Mapping(places[0].file, *_marks(min(places), max(places)))
    inner: dict[str, Entries] = {}
    for (first, *rest), head, value in entries:
        if rest:
            inner.setdefault(first, []).append((tuple(rest), head, value))
        else:
            node.entries.setdefault(first, tree.Entry(scalar(head, first), value))
    for first, under in inner.items():
        head = under[0][1]
        node.entries.setdefault(first, tree.Entry(scalar(head, first), group(cells, under)))
    node.value = {name: entry.node.value for name, entry in node.entries.items()}
    return node


def _marks(start: Place, end: Place) -> tuple[yaml.Mark, yaml.Mark]:
    return (
        yaml.Mark("", 0, start.line - 1, start.column - 1, None, 0),
        yaml.Mark("", 0, end.end_line - 1, end.end_column - 1, None, 0),
    )
