"""A maker's drawer: a file of named parts, and the parts of a plan that are taken from it.

`cap: {from: brass cap}` stands for all that the drawer writes of its `brass cap`; a field that the
plan writes beside it replaces the drawer's. Every value keeps its place, so that a remark
about a bore points into the drawer, where the bore would be changed.
"""

from __future__ import annotations

from copy import copy
from pathlib import Path, PurePath
from typing import NamedTuple

from wellstrung.common.places import Edit, Fault
from wellstrung.common.wording import listed, nearest
from wellstrung.reading import parser, schema, tree
from wellstrung_schemas import drawer as drawer_schema

DRAWER = parser.Expected(
    "drawer",
    "write parts below `drawer: 1`, or delete the file",
    "a drawer is made of named entries: begin with `drawer: 1`",
)
_EXAMPLE = "as in `drawer: drawer.yaml`"


class Filled(NamedTuple):
    """A plan with the parts of its drawer in it, or what keeps it from being filled."""

    read: tree.Read
    faults: tuple[Fault, ...] = ()


def read(path: Path) -> tree.Read:
    """A drawer file; what is wrong with it is in its faults, never an exception.

    >>> read(Path("no such drawer.yaml")).faults[0].says
    '`no such drawer.yaml` cannot be read: no such file or directory'
    """
    return _checked(parser.read(path, DRAWER))


def read_text(text: str, file: str) -> tree.Read:
    r"""A drawer given as text.

    >>> read_text("drawer: 1\nparts: {cap: {kind: end cap, bore: 8 mm}}", "drawer.yaml").faults
    ()
    """
    return _checked(parser.read_text(text, file, DRAWER))


def _checked(found: tree.Read) -> tree.Read:
    if found.tree is None:
        return found
    faults = schema.against(found.tree, drawer_schema(), "the drawer")
    return tree.Read(found.file, found.text, found.tree, faults)


def named_by(plan: tree.Read, folder: Path | None) -> tree.Read | None:
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
    found = read(path)
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
    fault = Fault("plan-shape", says.replace("\n", " "), entry.node.place, found=name)
    return tree.Read(plan.file, "", None, [fault])


def filled(plan: tree.Read, drawer: tree.Read | None) -> Filled:
    """The plan with every part that is taken `from` the drawer written out."""
    taken = _taken(plan)
    if drawer is not None and drawer.faults:
        return Filled(plan, drawer.faults)
    if not taken:
        return Filled(plan)
    assert plan.tree is not None
    has = _parts(drawer) if drawer is not None else {}
    faults, whole = [], {}
    for name, (entry, source) in taken.items():
        word = source.node
        kept = has.get(str(word.value)) if isinstance(word, tree.Scalar) else None
        if drawer is None:
            says = f"`{name}` comes from a drawer, but the plan names none: write one,"
            faults.append(Fault("plan-shape", f"{says} {_EXAMPLE}", word.place))
        elif kept is None:
            faults.append(_unknown(name, word, has))
        elif isinstance(kept.node, tree.Mapping) and isinstance(entry.node, tree.Mapping):
            whole[name] = tree.Entry(entry.key, _merged(kept.node, entry.node))
    if faults:
        return Filled(plan, tuple(faults))
    parts = plan.tree.entries["parts"]
    assert isinstance(parts.node, tree.Mapping)
    inner = _group(parts.node, {**parts.node.entries, **whole})
    outer = {**plan.tree.entries, "parts": tree.Entry(parts.key, inner)}
    return Filled(tree.Read(plan.file, plan.text, _group(plan.tree, outer), ()))


def _taken(plan: tree.Read) -> dict[str, tuple[tree.Entry, tree.Entry]]:
    """The parts that have `from` and no `kind` of their own."""
    return {
        name: (entry, entry.node.entries["from"])
        for name, entry in _parts(plan).items()
        if isinstance(entry.node, tree.Mapping)
        and "from" in entry.node.entries
        and "kind" not in entry.node.entries
    }


def _parts(found: tree.Read) -> dict[str, tree.Entry]:
    entry = found.tree.entries.get("parts") if found.tree is not None else None
    node = entry.node if entry is not None else None
    return node.entries if isinstance(node, tree.Mapping) else {}


def _unknown(name: str, word: tree.Node, has: dict[str, tree.Entry]) -> Fault:
    """The fault of a name that the drawer does not have."""
    if not isinstance(word, tree.Scalar):
        says = f"`from` of `{name}` is not a name: write the name of a part in the drawer"
        return Fault("plan-shape", says, word.place)
    asked = str(word.value).replace("\n", " ")
    near = nearest(asked, has)
    advice = f"write `{near}`" if near else f"it has {listed(has)}"
    return Fault(
        "plan-shape",
        f"there is no part called `{asked}` in the drawer: {advice}",
        word.place,
        found=asked,
        needed=near or listed(has),
        remedy=advice,
        edits=(Edit(word.place, near),) if near else (),
    )


def _merged(kept: tree.Mapping, own: tree.Mapping) -> tree.Mapping:
    """The fields that the drawer writes of a part, replaced by those that the plan writes."""
    beside = {field: entry for field, entry in own.entries.items() if field != "from"}
    return _group(own, {**kept.entries, **beside})


def _group(at: tree.Mapping, entries: dict[str, tree.Entry]) -> tree.Mapping:
    """A group of these entries, at the place of another."""
    group = copy(at)
    group.entries = entries
    group.value = {name: entry.node.value for name, entry in entries.items()}
    return group
