"""A list that a shop or a teacher keeps in a spreadsheet, read as a drawer.

A row is a bead or a part by its `name` and `kind`. Every other column is a field of it, or says
what is on hand and what it costs. Two rows of one name are two lots of the same.
"""

from __future__ import annotations

import re
from collections.abc import Mapping

from msgspec import Struct, field

from wellstrung.common.places import Fault, Place
from wellstrung.common.trade_words import plain, said
from wellstrung.common.wording import article, some_of
from wellstrung.reading import cells, schema, tree
from wellstrung.reading.branch import Branch
from wellstrung.reading.faults import fault, meant_by, unknown_word
from wellstrung.reading.rfc_4180 import Cell, table
from wellstrung.reading.stock_columns import OF_A_ROW, Column, Schema, at, bare, column
from wellstrung_schemas import plan as plan_schema

BEAD = "bead"
_SUPPLY: Schema = plan_schema()["properties"]["supplies"]["items"]
_BEAD: Schema = plan_schema()["properties"]["beads"]["additionalProperties"]
#: words for a bead that are types of it: a row of kind `bicone` is a bead of that type
_BEAD_TYPES = frozenset(_BEAD["properties"]["type"]["enum"])
#: what a line of supplies may be of, by the kind of the row; of any other kind it is a `part`
_SUPPLIED = [one["required"][0] for one in _SUPPLY["oneOf"] if "required" in one]
_NOTHING = re.compile(r"0*")
#: what a schema says of a whole that a row need not say: a plan may write the rest beside `from`
_OF_THE_WHOLE = ("required", "if", "then", "oneOf", "anyOf", "allOf", "not")
_MOST_FAULTS = 50


class _Row(Struct, frozen=True):
    """A row by the number that a spreadsheet shows, with its filled cells."""

    number: int
    name: Cell
    kind: str
    word: Cell
    filled: list[tuple[Column, Cell]]

    @property
    def called(self) -> str:
        """Its name in messages."""
        return f"`{_words(self.name)}` in row {self.number}"


class _List(Struct):
    """A list while it is read."""

    kinds: Mapping[str, Schema]
    decimal_comma: bool
    known: schema.Known
    columns: list[Column] = field(default_factory=list)
    faults: list[Fault] = field(default_factory=list)
    items: dict[str, tuple[_Row, tree.Mapping]] = field(default_factory=dict)
    supplies: list[tree.Node] = field(default_factory=list)
    prices: dict[str, tuple[Cell, tree.Node]] = field(default_factory=dict)
    unused: dict[str, list[str]] = field(default_factory=dict)


def read_text(text: str, file: str, kinds: Mapping[str, Schema]) -> tree.Read:
    """The drawer that a list is; every slip in it is a fault at its cell."""
    rows, separator, faults = table(text, file)
    known = {kind: _in_any_words(its) for kind, its in {BEAD: _BEAD, **kinds}.items()}
    here = _List(known, separator != ",", schema.Known({}), faults=list(faults))
    filled = [(number, row) for number, row in enumerate(rows, 1) if any(map(_words, row))]
    if filled:
        _head(filled[0][1], here)
    elif not faults:
        says = "the list is empty: name its columns in the first row, as `name` and `kind`"
        here.faults.append(Fault("plan-file", says, Place(file, 1, 1, 1, 1)))
    if not here.faults:
        for number, cells_of_row in filled[1:]:
            _row(number, cells_of_row, here)
    if here.faults:
        found = sorted(here.faults, key=lambda one: one.place)[:_MOST_FAULTS]
        return tree.Read(file, text, None, found)
    return tree.Read(file, text, _drawer(here, filled[0][1]), (), _notes(file, here))


def slips(drawer: tree.Read, kinds: Mapping[str, Schema]) -> list[Fault]:
    """What is wrong with the words of a list that is in the words of plans, whatever it leaves out.

    What a plan does not take is looked at too, so that all slips of a list come in one round.
    """
    known = {kind: _as_written(its) for kind, its in {BEAD: _BEAD, **kinds}.items()}
    built, found = schema.Known({}), []
    assert drawer.tree is not None
    for group in ("beads", "parts"):
        section = drawer.tree.entries.get(group)
        for name, entry in section.node.entries.items() if section else ():
            item = entry.node
            kind = str(item.value.get("kind", BEAD)) if isinstance(item, tree.Mapping) else ""
            if isinstance(item, tree.Mapping) and kind in known:
                branch = Branch(item, known[kind], f"`{name}`", kind, entry.key)
                found += schema.of_branch(branch, built)
    return found


def _as_written(its: Schema) -> Schema:
    return {word: rule for word, rule in its.items() if word not in _OF_THE_WHOLE}


def _in_any_words(its: Schema) -> Schema:
    """The schema of what is written, in whatever words of the trade."""
    fields = {
        name: {"type": "string"} if "enum" in rule else rule
        for name, rule in its.get("properties", {}).items()
        if name != "kind"
    }
    return {**_as_written(its), "properties": {"kind": {}, **fields}}


def _words(cell: Cell) -> str:
    return " ".join(cell.text.split())


def _head(row: list[Cell], here: _List) -> None:
    """The first row: what each column is."""
    here.columns = [column(cell, here.kinds) for cell in row]
    for name in OF_A_ROW:
        if all(one.own != name for one in here.columns):
            says = f"the list has no column `{name}`: its first row needs `name` and `kind`"
            here.faults.append(fault(says, row[0].place, needed=f"`{name}`"))
    used: dict[tuple[object, ...], Cell] = {}
    for one in here.columns:
        if not one.own and not one.fields:
            if _words(one.head):
                here.unused[f"the column `{_words(one.head)}`"] = []
        elif used.setdefault(one.what, one.head) is not one.head:
            first = used[one.what]
            says = f"`{_words(one.head)}` is a second column for `{_words(first)}`: keep one"
            here.faults.append(fault(says, one.head.place, also=(first.place,)))


def _row(number: int, row: list[Cell], here: _List) -> None:
    """One bead or part, with what is on hand of it."""
    beyond = [cell for cell in row[len(here.columns) :] if _words(cell)]
    if beyond:
        says = f"row {number} has a cell beyond the columns of the first row: name its column"
        here.faults.append(fault(says, beyond[0].place))
    filled = [(its, cell) for its, cell in zip(here.columns, row, strict=False) if _words(cell)]
    own = {its.own: cell for its, cell in filled if its.own}
    lacks = [f"`{name}`" for name in OF_A_ROW if name not in own]
    if lacks:
        says = f"row {number} has no {' and no '.join(lacks)}: write it, or empty the row"
        here.faults.append(fault(says, row[0].place, needed=lacks[0]))
        return
    kind = _kind(number, own["kind"], here)
    if kind is not None:
        one = _Row(number, own["name"], kind, own["kind"], filled)
        _keep(one, _item(one, here), here)
        _stock(one, here)


def _kind(number: int, cell: Cell, here: _List) -> str | None:
    """The kind of a row, by any word that means it, one or many."""
    word = _words(cell)
    for one in (word, word.removesuffix("s")):
        meant = said("kind", one) or said("row", one) or (plain(one), {})
        if meant[0] in here.kinds:
            return meant[0]
        if one.casefold() in _BEAD_TYPES:
            return BEAD
    head = f"there is no kind called `{word}` in row {number}"
    near = meant_by(word, here.kinds)
    here.faults.append(unknown_word(head, word, cell.place, near, here.kinds))
    return None


def _item(row: _Row, here: _List) -> tree.Mapping:
    """The fields of a row, checked so far as they are written."""
    its = here.kinds[row.kind]
    entries: cells.Entries = (
        [] if row.kind == BEAD else [(("kind",), row.word, cells.scalar(row.word, row.kind))]
    )
    for one, cell in row.filled:
        path = one.fields.get(row.kind)
        if path:
            entries.append((path, one.head, _value(one, cell, at(its, path), here)))
        elif one.fields:
            unused = here.unused.setdefault(f"`{_words(one.head)}` of {article(row.kind)}", [])
            unused.append(f"{row.number}")
    word = _words(row.word)
    types = {word.casefold(), word.casefold().removesuffix("s")} & _BEAD_TYPES
    if row.kind == BEAD and types:  # a bicone is a bead of that type
        entries.append((("type",), row.word, cells.scalar(row.word, types.pop())))
    meant = said("kind", word)  # a lobster claw is a clasp of type lobster
    for name, value in meant[1].items() if meant else ():
        entries.append(((name,), row.word, cells.scalar(row.word, value)))
    item = cells.group([cell for _, cell in row.filled], entries)
    here.faults += schema.of_branch(Branch(item, its, row.called, row.kind), here.known)
    return item


def _value(one: Column, cell: Cell, its: Schema, here: _List) -> tree.Node:
    """A cell as the value of its field."""
    words = one.value(cell.text, its, decimal_comma=here.decimal_comma)
    types = its.get("type", "string")
    if types == "array":
        return cells.listed(cell, re.split(r"\s*[,;]\s*", words))
    asked = {"integer", "number"} & {*_several(types)} if its.get("$comment") != "lot" else set()
    # a whole number has no point: 1.000 may be a thousand
    numeric = bool(asked - {"integer"} if "." in words else asked)
    return cells.scalar(cell, words, numeric=numeric)


def _several(types: str | list[str]) -> list[str]:
    return [types] if isinstance(types, str) else types


def _keep(row: _Row, item: tree.Mapping, here: _List) -> None:
    """Keep a row by its name; another row of that name may repeat it, and not contradict it."""
    first, kept = here.items.setdefault(_words(row.name), (row, item))
    for name, entry in item.entries.items():
        before = kept.entries.get(name)
        if first.kind != row.kind or before is None or before.node.value != entry.node.value:
            says = (
                f"{row.called} differs in `{name}` from row {first.number}, which has that name:"
                " give it a name of its own"
            )
            also = () if before is None else (before.node.place,)
            here.faults.append(fault(says, entry.node.place, also=also))


def _stock(row: _Row, here: _List) -> None:
    """What is on hand of a row, as a line of `supplies`, and its price."""
    own = {one.own: (one, cell) for one, cell in row.filled if one.own not in ("", *OF_A_ROW)}
    if "price" in own:
        price = _value(*own.pop("price"), {}, here)
        here.prices.setdefault(_words(row.name), (row.name, price))
    held = {name: given for name, given in own.items() if not _NOTHING.fullmatch(_words(given[1]))}
    counted = {"count", "packs"} & {one.own for one in here.columns}
    if not held.keys() & {"count", "packs", "spools", "on hand length", "volume"} and (
        counted or "pack" not in held
    ):
        return  # none is on hand
    by_weight = "pack" in held and not _is_count(*held["pack"])
    if "packs" not in held and "count" in held and "pack" in held:
        if by_weight:
            held["packs"] = held.pop("count")
        else:
            del held["pack"]  # so many of an opened pack
    what = row.kind if row.kind in _SUPPLIED else "part"
    cut = "on hand length" in held or what not in (BEAD, "part")
    entries: cells.Entries = [((what,), row.word, cells.scalar(row.name, _words(row.name)))]
    for name, (one, cell) in held.items():
        called = {"on hand length": "length", "sold as": "sold_as"}.get(name, name)
        if name == "count" and cut:
            called = "pieces"
        elif name == "pack" and not by_weight:
            called = "pack_of"
        entries.append(((called,), one.head, _value(one, cell, at(_SUPPLY, (called,)), here)))
    line = cells.group([cell for _, cell in row.filled], entries)
    here.faults += schema.of_branch(Branch(line, _SUPPLY, row.called), here.known)
    here.supplies.append(line)


def _is_count(pack: Column, cell: Cell) -> bool:
    """Whether a pack holds so many pieces, and is not sold by weight."""
    return bare(_words(cell)) and not pack.unit


def _drawer(here: _List, head: list[Cell]) -> tree.Mapping:
    """All rows as a drawer."""
    start = head[0]
    entries: cells.Entries = [(("drawer",), start, cells.scalar(start, "1", numeric=True))]
    for name, (row, item) in here.items.items():
        entries.append((("beads" if row.kind == BEAD else "parts", name), row.name, item))
    for name, (cell, price) in here.prices.items():
        entries.append((("prices", name), cell, price))
    if here.supplies:
        lines = tree.sequence(cells.scalar(start, "supplies"), here.supplies)
        entries.append((("supplies",), start, lines))
    return cells.group(head, entries)


def _notes(file: str, here: _List) -> tuple[str, ...]:
    """What of the list is not used, in one line."""
    found = [
        f"{what} ({'row' if len(rows) == 1 else 'rows'} {some_of(rows, 5)})" if rows else what
        for what, rows in here.unused.items()
    ]
    return (f"{file}: not used: {'; '.join(found)}",) if found else ()
