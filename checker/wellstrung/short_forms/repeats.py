"""Beads in the order in which they are strung, with groups that repeat, written out.

`beads: [{repeat: 20, of: [pearl, gold]}, shell]` is forty-one beads one after another, and so is
`beads: {mirror: [12 small, 8 medium, 1 large]}`, which goes up to its last bead and back.
A group alone, `beads: {repeat: 20, of: [pearl, gold]}`, is a list of it.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator
from itertools import islice, repeat

from wellstrung.common.patterns import Pattern
from wellstrung.common.places import Fault
from wellstrung.common.wording import nearest
from wellstrung.reading import tree
from wellstrung.short_forms.phrase import part as within

#: the most beads of one list and of a whole plan, with their groups written out: our own choice
_MOST, _MOST_IN_ALL = 10_000, 100_000
_LISTS = ("beads", "outer")
#: so many of a bead, one after another
_COUNTED = Pattern(r"([1-9]\d{0,3}) +(?:x +)?(\S.*)")


def written_out(whole: tree.Mapping, faults: list[Fault]) -> tree.Mapping:
    """The plan with every group of beads that repeats written out; the very same without one.

    A list that comes to too many beads is a fault, and is left empty.
    """
    parts, palette = whole.entries.get("parts"), whole.entries.get("beads")
    if parts is None or not isinstance(parts.node, tree.Mapping):
        return whole
    known = palette.node.entries.keys() if palette is not None else ()
    new: dict[str, tree.Node] = {}
    left = _MOST_IN_ALL
    for name, entry in parts.node.entries.items():
        node = entry.node
        if isinstance(node, tree.Mapping):
            strung: dict[str, tree.Node] = {}
            for field in (field for field in _LISTS if field in node.entries):
                said = node.entries[field].node
                beads = _all_of(said, known, min(left, _MOST))
                if beads is None:
                    says = f"`{field}` of `{name}` comes to more beads than can be checked"
                    says += f" ({_MOST:,} in a list, {_MOST_IN_ALL:,} in a plan)"
                    do = f"write its group once, and the `length` of `{name}`"
                    faults.append(Fault("plan-shape", f"{says}: {do}", said.place))
                    strung[field] = tree.sequence(said, [])  # gets no second message
                elif beads is not said:
                    strung[field] = beads
                    left -= len(beads.items) if isinstance(beads, tree.Sequence) else 0
            new[name] = _once(node, tree.with_nodes(node, strung))
    return tree.with_nodes(whole, {"parts": tree.with_nodes(parts.node, new)})


#: what says how many beads a strand has
_HOW_MANY = frozenset({"length", "count", "repeats"})


def _once(said: tree.Mapping, part: tree.Mapping) -> tree.Mapping:
    """A strand whose beads are mirrored, or one group that repeats, has all of them, once."""
    kind, beads = said.entries.get("kind"), said.entries.get("beads")
    if (
        kind is None
        or kind.node.value != "strand"
        or beads is None
        or _HOW_MANY & said.entries.keys()
    ):
        return part
    if part is said or not {"mirror", "repeat"} & beads.node.entries.keys():
        return part
    return tree.with_more(part, {"repeats": tree.implied_data(beads.node, 1)})


def _all_of(node: tree.Node, known: Collection[str], most: int) -> tree.Node | None:
    """A list with its groups written out; None where it has more than so many beads."""
    mirror = node.entries.get("mirror")
    half = mirror.node if mirror is not None and len(node.entries) == 1 else None
    group = node.entries.get("of")
    if group is not None and "repeat" not in known:
        items = list(islice(_repeated(node, known), most + 1))
        # one that is not read stands in a list as well, so that what is refused is what is wrong
        return tree.sequence(group.node, items) if len(items) <= most else None
    listed = half or node
    if not isinstance(listed, tree.Sequence):
        return node
    each = (one for item in listed.items for one in _repeated(item, known))
    items = list(islice(each, most + 1))
    if half is not None and listed.items:  # back again from its last entry, which is the middle
        last = listed.items[-1]
        turn = list(_repeated(last, known))
        items += reversed(items[: len(items) - len(turn)])
    return tree.with_items(listed, items) if len(items) <= max(most, len(listed.items)) else None


def _repeated(item: tree.Node, known: Collection[str]) -> Iterator[tree.Node]:
    """What one item of a list stands for: itself, or the beads of a group so many times over."""
    if isinstance(item, tree.Scalar) and item.text not in known:
        counted = _COUNTED.fullmatch(item.text)
        if counted is not None and (counted[2] in known or nearest(counted[2], known)):
            yield from repeat(within(item, *counted.span(2)), int(counted[1]))
            return
    times, beads = item.entries.get("repeat"), item.entries.get("of")
    if (
        not isinstance(item, tree.Mapping)
        or times is None
        or beads is None
        or isinstance(beads.node, tree.Mapping)
    ):
        yield item
        return
    of = beads.node.items if isinstance(beads.node, tree.Sequence) else [beads.node]
    many = times.node.value
    if isinstance(many, int) and 0 < many <= _MOST and len(item.entries) == 2:
        for _ in range(many):
            yield from of
    else:
        yield tree.with_nodes(item, {"of": tree.sequence(beads.node, of)})
