"""A maker's drawer: beads and parts by name, and those of a plan that are taken from it.

`cap: {from: brass cap}` stands for all that the drawer writes of its `brass cap`; a field that the
plan writes beside it replaces the drawer's. Every value keeps its place, so that a remark
about a bore points into the drawer, where the bore would be changed. What the drawer has on hand of
it is on hand for the plan, unless the plan has lines of `supplies` for it: those replace the
drawer's. A drawer is written by hand, or is a list from a spreadsheet.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from copy import copy
from pathlib import Path, PurePath
from typing import NamedTuple

from wellstrung.common import money, units
from wellstrung.common.places import Edit, Fault
from wellstrung.common.wording import nearest, one_of
from wellstrung.reading import parser, schema, tree
from wellstrung.reading.faults import fault
from wellstrung_schemas import drawer as drawer_schema
from wellstrung_schemas import fragment, kind_names

DRAWER = parser.Expected(
    "drawer",
    "write parts below `drawer: 1`, or delete the file",
    "a drawer is made of named entries: begin with `drawer: 1`",
)
#: how the names of lists from spreadsheets end
LIST_ENDINGS = (".csv", ".tsv")
_EXAMPLE = "as in `drawer: drawer.yaml`"
#: what may be taken from a drawer, what one is called, and the field by which it is the plan's own
_TAKEN = {"parts": ("part", "kind"), "beads": ("bead", "")}
#: of what a line of supplies may be, and where that stands
_SUPPLIED = {"bead": "beads", "part": "parts", "chain": "parts", "thread": "parts"}
Kinds = Mapping[str, Mapping[str, object]]


class Filled(NamedTuple):
    """A plan with what it takes from its drawer in it, or what keeps it from being filled.

    `prices` are the drawer's, by the names of the plan.
    """

    read: tree.Read
    faults: tuple[Fault, ...] = ()
    prices: Mapping[str, str] = {}


def read(path: Path, kinds: Kinds | None = None) -> tree.Read:
    """A drawer file; what is wrong with it is in its faults, never an exception.

    `kinds` are the kinds of parts there are, by schema fragment; without them, our own.

    >>> read(Path("no such drawer.yaml")).faults[0].says
    '`no such drawer.yaml` cannot be read: no such file or directory'
    """
    found = parser.text_of(path, DRAWER)
    return found if found.faults else read_text(found.text, found.file, kinds)


def read_text(text: str, file: str, kinds: Kinds | None = None) -> tree.Read:
    r"""A drawer given as text.

    >>> read_text("drawer: 1\nparts: {cap: {kind: end cap, bore: 8 mm}}", "drawer.yaml").faults
    ()
    >>> read_text("name,kind,bore\ncap,end cap,8 mm", "drawer.csv").tree.value["parts"]
    {'cap': {'kind': 'end cap', 'bore': '8 mm'}}
    """
    if is_list(file):
        from wellstrung.reading import stock_list  # most plans have none

        found = parser.allowed(text, file, DRAWER)
        shapes = kinds or {kind: fragment(kind) for kind in kind_names()}
        found = found if found.faults else stock_list.read_text(found.text, file, shapes)
    else:
        found = parser.read_text(text, file, DRAWER)
    if found.tree is None:
        return found
    faults = [
        *schema.against(found.tree, drawer_schema(), "the drawer"),
        *_unknown_supplies(found),
        *_bad_prices(found),
    ]
    return tree.Read(found.file, found.text, found.tree, faults, found.notes)


def is_list(file: str) -> bool:
    """Whether a file is a list from a spreadsheet, by the end of its name."""
    return file.lower().endswith(LIST_ENDINGS)


def _unknown_supplies(found: tree.Read) -> Iterator[Fault]:
    """Lines of supplies that name what the drawer does not have."""
    for line in _lines(found):
        for what, group in _SUPPLIED.items():
            entry = line.entries.get(what)
            if entry is not None and str(entry.node.value) not in _named(found, group):
                yield _unknown(what, entry.node, _named(found, group))


def _bad_prices(found: tree.Read) -> Iterator[Fault]:
    for name, entry in _named(found, "prices").items():
        try:
            money.price(entry.node.value)
        except units.UnitFault as wrong:
            says = f"the price of `{name}`: {wrong.says}"
            yield fault(says, entry.node.place)


def named_by(plan: tree.Read, folder: Path | None, kinds: Kinds | None = None) -> tree.Read | None:
    """The drawer that a plan names, in the plan's folder or in one below; None if it names none.

    A plan may come from anyone, so a drawer elsewhere is not read, however it is named.
    """
    entry = plan.tree.entries.get("drawer") if plan.tree is not None else None
    if entry is None or not isinstance(entry.node, tree.Scalar):
        return None
    name = str(entry.node.value)
    if folder is None:
        return _none(plan, entry, "the plan was given as text, which has no folder to look in")
    inside = PurePath(name)
    if inside.is_absolute() or ".." in inside.parts or "\\" in name or ":" in name:
        return _none(plan, entry, f"`{name}` is outside the plan's folder: name one inside it")
    path = folder / inside
    try:
        if not path.resolve().is_relative_to(folder.resolve()):
            return _none(plan, entry, f"`{name}` is a link out of the plan's folder: copy it here")
    except (OSError, RuntimeError, ValueError):
        pass  # a link that leads to itself cannot be read either, which gives a fault below
    found = read(path, kinds)
    if found.faults and not _is_file(path):
        says = found.faults[0].says
        return _none(plan, entry, f"{says}; name a drawer beside the plan, {_EXAMPLE}")
    return found


def _is_file(path: Path) -> bool:
    try:
        return path.is_file()
    except OSError:  # a folder that may not be looked into, a name too long
        return False


def _none(plan: tree.Read, entry: tree.Entry, says: str) -> tree.Read:
    """A drawer that cannot be used, with a fault at the line that names it."""
    name = str(entry.node.value)
    return tree.Read(plan.file, "", None, [fault(says, entry.node.place, name)])


def filled(plan: tree.Read, drawer: tree.Read | None) -> Filled:
    """The plan with every bead and part that is taken `from` the drawer written out."""
    if drawer is not None and drawer.faults:
        return Filled(plan, drawer.faults)
    assert plan.tree is not None
    faults: list[Fault] = []
    names: dict[tuple[str, str], str] = {}
    outer = dict(plan.tree.entries)
    for group in _TAKEN:
        whole = dict(_taken_from(plan, group, drawer, faults, names))
        if whole:
            at = outer[group]
            assert isinstance(at.node, tree.Mapping)
            outer[group] = tree.Entry(at.key, tree.group(at.node, {**at.node.entries, **whole}))
    if faults or drawer is None or not names:
        return Filled(plan, tuple(faults))
    on_hand = [*_on_hand(plan, drawer, names)]
    if on_hand:
        outer["supplies"] = _with_lines(outer.get("supplies"), on_hand)
    prices = {
        own: str(_named(drawer, "prices")[name].node.value)
        for (_, name), own in names.items()
        if name in _named(drawer, "prices")
    }
    return Filled(tree.Read(plan.file, plan.text, tree.group(plan.tree, outer), ()), (), prices)


def _taken_from(
    plan: tree.Read,
    group: str,
    drawer: tree.Read | None,
    faults: list[Fault],
    names: dict[tuple[str, str], str],
) -> Iterator[tuple[str, tree.Entry]]:
    """The beads or parts of a plan that are taken from the drawer, written out.

    `names` keeps what the plan calls each; what is taken twice is on hand for the first.
    """
    what, own = _TAKEN[group]
    has = _named(drawer, group) if drawer is not None else {}
    for name, entry in _named(plan, group).items():
        node = entry.node
        if not isinstance(node, tree.Mapping) or "from" not in node.entries or own in node.entries:
            continue
        word = node.entries["from"].node
        kept = has.get(str(word.value)) if isinstance(word, tree.Scalar) else None
        if drawer is None:
            says = f"`{name}` comes from a drawer, but the plan names none: write one,"
            faults.append(fault(f"{says} {_EXAMPLE}", word.place))
        elif not isinstance(word, tree.Scalar):
            says = f"`from` of `{name}` is not a name: write the name of a {what} in the drawer"
            faults.append(fault(says, word.place))
        elif kept is None:
            faults.append(_unknown(what, word, has))
        elif isinstance(kept.node, tree.Mapping):
            names.setdefault((group, str(word.value)), name)
            yield name, tree.Entry(entry.key, _merged(kept.node, node))


def _on_hand(
    plan: tree.Read, drawer: tree.Read, names: Mapping[tuple[str, str], str]
) -> Iterator[tree.Node]:
    """The drawer's lines of supplies, by the plan's names, but for what the plan has lines of."""
    own = {(group, name) for line in _lines(plan) for group, name in _is_of(line)}
    for line in _lines(drawer):
        for what, group in _SUPPLIED.items():
            entry = line.entries.get(what)
            name = names.get((group, str(entry.node.value))) if entry is not None else None
            if entry is None or name is None or (group, name) in own:
                continue
            called = copy(entry.node)
            called.value = name
            yield tree.group(line, {**line.entries, what: tree.Entry(entry.key, called)})


def _is_of(line: tree.Mapping) -> Iterator[tuple[str, str]]:
    for what, group in _SUPPLIED.items():
        if what in line.entries:
            yield group, str(line.entries[what].node.value)


def _with_lines(entry: tree.Entry | None, lines: list[tree.Node]) -> tree.Entry:
    """The supplies of a plan, with lines of the drawer behind its own."""
    key = entry.key if entry is not None else next(iter(lines[0].entries.values())).key
    if entry is not None and isinstance(entry.node, tree.Sequence):
        lines = [*entry.node.items, *lines]
    elif entry is not None:
        return entry  # the schema says what is wrong with it
    return tree.Entry(key, tree.sequence(key, lines))


def _lines(found: tree.Read) -> list[tree.Mapping]:
    """The lines of supplies."""
    entry = found.tree.entries.get("supplies") if found.tree is not None else None
    items = entry.node.items if entry and isinstance(entry.node, tree.Sequence) else []
    return [line for line in items if isinstance(line, tree.Mapping)]


def _named(found: tree.Read, group: str) -> dict[str, tree.Entry]:
    entry = found.tree.entries.get(group) if found.tree is not None else None
    node = entry.node if entry is not None else None
    return node.entries if isinstance(node, tree.Mapping) else {}


def _unknown(what: str, word: tree.Node, has: Mapping[str, tree.Entry]) -> Fault:
    """The fault of a name that the drawer does not have."""
    asked = str(word.value).replace("\n", " ")
    near = nearest(asked, has)
    advice = f"write `{near}`" if near else ""
    says = f"there is no {what} called `{asked}` in the drawer"
    return fault(
        f"{says}: {advice}" if near else says if has else f"{says}, which has no {what}s",
        word.place,
        found=asked,
        needed=near or (one_of(has, asked) if has else f"a {what} in the drawer"),
        remedy=advice,
        edits=(Edit(word.place, near),) if near else (),
    )


def _merged(kept: tree.Mapping, own: tree.Mapping) -> tree.Mapping:
    """The fields that the drawer writes of a part, replaced by those that the plan writes."""
    beside = {field: entry for field, entry in own.entries.items() if field != "from"}
    return tree.group(own, {**kept.entries, **beside})
