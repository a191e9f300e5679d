"""What beaders say in a phrase, spelled out as the fields that the phrase means.

`pearl: 8/0 round Japanese, matte green` means the same as a group of fields. Each field keeps
the place of its own words, so that a remark about the size points at `8/0`, and an edit changes it
alone.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Mapping
from typing import Any, TypeGuard

from wellstrung.common.places import Edit, Fault
from wellstrung.reading import tree
from wellstrung.reading.faults import fault
from wellstrung.short_forms import lines
from wellstrung.short_forms.beads import bead, bead_group
from wellstrung.short_forms.figures import in_plain_figures
from wellstrung.short_forms.hung import hung
from wellstrung.short_forms.needles import needle
from wellstrung.short_forms.parts import part
from wellstrung.short_forms.repeats import written_out
from wellstrung.short_forms.step_lines import WOVEN as FRONTS
from wellstrung.short_forms.step_lines import OfPlan
from wellstrung.short_forms.steps import step
from wellstrung.short_forms.supplies import named_by, supply
from wellstrung.short_forms.uncut import of_chain, of_stones, uncut
from wellstrung.short_forms.words import in_our_words, with_sections

#: what spells out a value; where it cannot, it adds a fault and answers None
Speller = Callable[[tree.Node, str, list[Fault]], tree.Mapping | None]
_NONE: Mapping[str, Mapping[str, Any]] = {}


def spelled_out(
    read: tree.Read,
    kinds: Mapping[str, Mapping[str, Any]] = _NONE,
    stitches: Collection[str] = (),
) -> tuple[tree.Read, tuple[Fault, ...]]:
    """The plan in its own words, every phrase spelled out, and what is wrong with the others.

    `kinds` are the schemas of the kinds of parts that there are.
    """
    assert read.tree is not None
    faults: list[Fault] = []
    plain = in_plain_figures(with_sections(read.tree), faults)
    spelled = _section(plain, "parts", _part, faults)
    spelled, said = in_our_words(spelled, kinds, stitches)
    faults += said
    spelled = _section(written_out(spelled, faults), "beads", _bead, faults)
    spelled = _pins_behind(spelled, read.tree, faults)
    spelled = _parts(spelled, faults)
    spelled = _clasped(spelled)
    spelled, chains = _cut(spelled)
    spelled = _supplies(spelled, read.tree, chains, faults)
    spelled = _hung(spelled, faults)
    spelled = _steps(spelled, faults)
    if spelled is read.tree:
        return read, tuple(faults)
    return tree.Read(read.file, read.text, spelled, ()), tuple(faults)


def _section(
    whole: tree.Mapping, section: str, spell: Speller, faults: list[Fault]
) -> tree.Mapping:
    """The plan with the entries of a section spelled out; the very same where none needs it."""
    node = _node(whole, section)
    if not isinstance(node, tree.Mapping):
        return whole
    new = {
        name: group
        for name, entry in node.entries.items()
        if (group := spell(entry.node, name, faults)) is not None
    }
    return tree.with_nodes(whole, {section: tree.with_nodes(node, new)}) if new else whole


def _part(node: tree.Node, name: str, faults: list[Fault]) -> tree.Mapping | None:
    """A part that is written as a phrase."""
    return part(node, name, faults) if _is_phrase(node) else None


def _bead(node: tree.Node, name: str, faults: list[Fault]) -> tree.Mapping | None:
    """A bead that is written as a phrase, or as a group with words of the trade in a field."""
    if _is_phrase(node):
        return bead(node, name, faults)
    if isinstance(node, tree.Mapping) and not isinstance(node, tree.Spelled):
        return bead_group(node, faults)
    return None


def _pins_behind(whole: tree.Mapping, read: tree.Mapping, faults: list[Fault]) -> tree.Mapping:
    """The plan with what each brooch pin lies behind; a phrase that leaves it out is a fault."""
    parts, as_read = _node(whole, "parts"), _node(read, "parts")
    if not isinstance(parts, tree.Mapping) or as_read is None:
        return whole
    kinds, new = _kinds(parts), dict[str, tree.Node]()
    fronts = [name for name, kind in kinds.items() if kind in FRONTS]
    for name, kind in kinds.items():
        pin, said = parts.entries[name].node, _node(as_read, name)
        if kind != "brooch pin" or not _is_phrase(said) or not isinstance(pin, tree.Mapping):
            continue
        if _node(pin, "behind") is not None:
            continue
        front = next(iter(fronts), "panel")
        line = f"{said.text}, behind {front}"
        advice = f"write {'it as in ' * (len(fronts) != 1)}`{line}`"
        says = f"`{name}` (a brooch pin) does not say what it is behind: {advice}"
        edits = (Edit(said.place, line),) if len(fronts) == 1 else ()
        faults.append(fault(says, said.place, remedy=advice, edits=edits))
        new[name] = tree.with_more(pin, {"behind": tree.implied(said, front)})
    return tree.with_nodes(whole, {"parts": tree.with_nodes(parts, new)}) if new else whole


def _parts(whole: tree.Mapping, faults: list[Fault]) -> tree.Mapping:
    """The plan with the phrases in its parts spelled out: of threads and needles first."""
    node = _node(whole, "parts")
    if not isinstance(node, tree.Mapping):
        return whole
    groups = {name: entry.node for name, entry in node.entries.items()}
    tools = {
        name: _tool(group, name, faults)
        for name, group in groups.items()
        if isinstance(group, tree.Mapping)
    }
    spools = {name: None for name, node in (groups | tools).items() if _is_spool(node)}
    sizes = {name: _node(tool, "size") for name, tool in tools.items() if _is(tool, "needle")}
    needles = {name: size for name, size in sizes.items() if isinstance(size, tree.Scalar)}
    worked = {name: _worked(tool, name, spools, needles, faults) for name, tool in tools.items()}
    new = {name: part for name, part in worked.items() if part is not groups[name]}
    return tree.with_nodes(whole, {"parts": tree.with_nodes(node, new)}) if new else whole


def _tool(group: tree.Mapping, name: str, faults: list[Fault]) -> tree.Mapping:
    """A thread or a needle among the parts, its words understood, what is sold by its stones in mm.

    Any other part is as it is.
    """
    if _is(group, "thread"):
        return lines.in_fields(group, f"`{name}`", faults) or group
    if _is(group, "chain") or _is(group, "end cap"):
        return of_stones(group)
    size = _node(group, "size") if _is(group, "needle") else None
    said = needle(size, name, {}, faults) if isinstance(size, tree.Scalar) else None
    return tree.with_nodes(group, {"size": said}) if said is not None else group


def _worked(
    group: tree.Mapping,
    name: str,
    spools: Collection[str],
    needles: Mapping[str, tree.Scalar],
    faults: list[Fault],
) -> tree.Mapping:
    """A part with the phrases of its `thread` and its `needle` spelled out.

    They may name one of the `spools` and one of the `needles` of the plan.
    """
    new: dict[str, tree.Node] = {}
    said, told = _node(group, "thread"), _node(group, "needle")
    spelled: tree.Node | None = None
    if isinstance(said, tree.Scalar):
        spelled = lines.thread(said, name, spools, faults)
    elif isinstance(said, tree.Mapping):
        spelled = lines.in_fields(said, f"`thread` of `{name}`", faults)
    if isinstance(spelled, tree.Mapping):
        new |= lines.passes_of(spelled, group, f"`thread` of `{name}`", faults)
    elif isinstance(said, tree.Scalar):
        new["thread"] = tree.meaning(said, said.text)
    if isinstance(told, tree.Scalar):
        new["needle"] = needle(told, name, needles, faults) or tree.meaning(told, told.text)
    passes = new.pop("passes", None)
    group = tree.with_nodes(group, new) if new else group
    return tree.with_more(group, {"passes": passes}) if passes is not None else group


def _is(part: tree.Node, kind: str) -> bool:
    return part.entries.get("kind") is not None and part.entries["kind"].node.value == kind


def _is_spool(node: tree.Node) -> bool:
    """A thread among the parts, or a phrase for one that has a fault of its own."""
    if isinstance(node, tree.Scalar):
        return _is_phrase(node) and lines.names_line(node)
    return _is(node, "thread")


def _cut(whole: tree.Mapping) -> tuple[tree.Mapping, Mapping[str, str]]:
    """The plan with every chain that says how much is cut of it in two; their chains by name."""
    node = _node(whole, "parts")
    if not isinstance(node, tree.Mapping):
        return whole, {}
    parts, chains = uncut(node)
    return (tree.with_nodes(whole, {"parts": parts}) if chains else whole), chains


def _supplies(
    whole: tree.Mapping, read: tree.Mapping, chains: Mapping[str, str], faults: list[Fault]
) -> tree.Mapping:
    """The plan with the phrases of its supplies spelled out; the very same where it has none.

    A length of what is one of the `chains` is of the chain that it is cut from.
    """
    node = _node(whole, "supplies")
    if not isinstance(node, tree.Sequence):
        return whole
    names = {**named_by(whole), **dict.fromkeys(chains, "chain")}
    sections = (_node(read, section) for section in ("beads", "parts"))
    by_phrase = {
        entry.node.text: name
        for section in sections
        for name, entry in (section.entries.items() if section else ())
        if name in names and _is_phrase(entry.node)
    }
    by_phrase = {**_by_wire(_node(whole, "parts")), **by_phrase}
    new = [supply(item, names, faults, by_phrase) for item in node.items]
    said = [line or item for line, item in zip(new, node.items, strict=True)]
    said = [of_chain(line, chains) for line in said]
    return tree.with_nodes(whole, {"supplies": tree.with_items(node, said)})


def _by_wire(parts: tree.Node | None) -> dict[str, str]:
    """The links by what their wire is called on its spool, where one link alone is of it."""
    found: dict[str, list[str]] = {}
    for name, entry in parts.entries.items() if parts is not None else ():
        wire = _node(entry.node, "wire") if _is(entry.node, "wire link") else None
        if isinstance(wire, tree.Scalar):
            found.setdefault(f"{wire.text} wire", []).append(name)
    return {said: links[0] for said, links in found.items() if len(links) == 1}


def _clasped(whole: tree.Mapping) -> tree.Mapping:
    """The plan with a clasp that stands at both ends of the run by its name there by its halves."""
    run, parts = _node(whole, "run"), _node(whole, "parts")
    if not isinstance(run, tree.Sequence) or len(run.items) < 2 or parts is None:
        return whole
    first, *between, last = run.items
    if not (_is_phrase(first) and _is_phrase(last)) or first.value != last.value:
        return whole
    if _kinds(parts).get(first.text) != "clasp":
        return whole
    halves = [tree.meaning(end, f"{end.text}.{half}") for end, half in ((first, "a"), (last, "b"))]
    items = [halves[0], *between, halves[1]]
    return tree.with_nodes(whole, {"run": tree.with_items(run, items)})


def _hung(whole: tree.Mapping, faults: list[Fault]) -> tree.Mapping:
    """The plan with the phrases of what is hung spelled out; the very same where it has none."""
    node, parts = _node(whole, "hung"), _node(whole, "parts")
    if not isinstance(node, tree.Sequence) or parts is None:
        return whole
    lines = [(_is_phrase(one) and hung(one, parts.entries, faults)) or one for one in node.items]
    return tree.with_nodes(whole, {"hung": tree.with_items(node, lines)})


def _steps(whole: tree.Mapping, faults: list[Fault]) -> tree.Mapping:
    """The plan with the phrases of its work spelled out; the very same where it has none."""
    node, parts = _node(whole, "work"), _node(whole, "parts")
    if not isinstance(node, tree.Sequence) or parts is None:
        return whole
    named = _by_words(parts)
    said: list[tree.Node] = []
    woven: dict[str, None] = {}
    of_plan = _of_plan(whole, parts)
    for item in node.items:
        said.append((_is_phrase(item) and step(item, named, [*woven], faults, of_plan)) or item)
        if isinstance(part := _node(said[-1], "part"), tree.Scalar) and _does(said[-1], "weave"):
            woven[part.text] = None
    if all(new is old for new, old in zip(said, node.items, strict=True)):
        return whole
    return tree.with_nodes(whole, {"work": tree.with_items(node, said)})


def _of_plan(whole: tree.Mapping, parts: tree.Node) -> OfPlan:
    """The kinds of the parts, and the run by their names."""
    run = _node(whole, "run")
    places = run.items if isinstance(run, tree.Sequence) else ()
    names = [
        str(one.value).partition(".")[0] if isinstance(one, tree.Scalar) else "" for one in places
    ]
    return OfPlan(_kinds(parts), tuple(names))


def _kinds(parts: tree.Node) -> dict[str, str]:
    return {
        name: str(kind.value)
        for name, entry in parts.entries.items()
        if (kind := _node(entry.node, "kind")) is not None
    }


def _does(step: tree.Node, verb: str) -> bool:
    done = _node(step, "do")
    return done is not None and done.value == verb


def _by_words(parts: tree.Node) -> dict[str, str]:
    """Every part by its name, and by the name of a bead that no other part is made of."""
    users: dict[str, list[str]] = {}
    for name, entry in parts.entries.items():
        for field in ("beads", "core_bead", "outer"):
            beads = _node(entry.node, field)
            listed = beads.items if isinstance(beads, tree.Sequence) else [beads]
            for bead_name in dict.fromkeys(
                one.text for one in listed if isinstance(one, tree.Scalar)
            ):
                users.setdefault(bead_name, []).append(name)
    alone = {word: {*made} for word, made in users.items()}
    of_beads = {word: min(made) for word, made in alone.items() if len(made) == 1}
    return of_beads | {name: name for name in parts.entries}


def _is_phrase(node: tree.Node | None) -> TypeGuard[tree.Scalar]:
    return isinstance(node, tree.Scalar) and isinstance(node.value, str)


def _node(group: tree.Node, name: str) -> tree.Node | None:
    entry = group.entries.get(name)
    return entry.node if entry is not None else None
