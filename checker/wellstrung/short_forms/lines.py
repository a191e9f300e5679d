"""Threads, wires and cords in a phrase: `8 lb fused line, crystal`, `silk No. 4`, or a spool."""

from __future__ import annotations

import re
from collections.abc import Collection, Mapping
from functools import cache

from wellstrung import tables
from wellstrung.common.patterns import Pattern
from wellstrung.common.places import Edit, Fault
from wellstrung.common.trade_words import ACCEPTED, plain, words
from wellstrung.common.wording import either, listed, nearest
from wellstrung.reading import tree
from wellstrung.reading.faults import fault, shown
from wellstrung.short_forms.phrase import Phrase
from wellstrung.short_forms.sizes import RATING, THICK, is_coil, length, rating, size_of

_NUMBER = r"\d+(?:[.,]\d+)?(?: \d+/\d+|/\d+)?"
_OFF = rf"(?: ?(?:±|\.\.|to) ?{_NUMBER})?"
_UNIT = r"(?:(?:mm|cm|m|in(?:ch(?:es)?)?|ft|feet|yd|yds|yards?|metres?|meters?)\b|[\"″”])"
_LENGTH = rf"(?<![\w.,/])(?:\d+ ?(?:ft|feet|['′’]) ?)?{_NUMBER}{_OFF} ?{_UNIT}"
_LENGTH += rf"(?: ?(?:±|\.\.|to) ?[\d.]+ ?{_UNIT})?"
_TAIL = rf"(?<!tiger )(?<!rat )\btails?(?: of)? ({_LENGTH})|({_LENGTH})(?: long)? tails?\b"
_WORKING = rf"\bwork(?:ed|ing)(?: length| in| with)*(?: of)? ({_LENGTH})"
#: what stands beside the type of a line, each by words or a unit of its own
_BESIDE: Mapping[str, Pattern] = {
    field: Pattern(pattern, re.IGNORECASE)
    for field, pattern in {
        "tail": _TAIL,
        "working_length": _WORKING,
        "strands": r"\b(\d+)[ -]*strands?\b",
        "turns": r"\b(\d+) ?(?:turns?|coils?|times (?:a)?round)\b",
        "coil": rf"\bcoils?(?: of| size)? ({_LENGTH})|({_LENGTH})(?: wide)? coils?\b",
        "rating": RATING,
        "outside": THICK,
        "length": rf"\b(?:spool of )?({_LENGTH})",
    }.items()
}
#: fields that only a part has, and those that only a spool has
_OF_A_PART, _OF_A_SPOOL = ("tail", "working_length", "turns", "coil"), ("length",)
#: words that say nothing of size or fibre: what a line is for, how it is made up, a matter of taste
_NOTHING = Pattern(
    r"(?<![\w-])(?:beading|bead|stringing|jewell?e?ry|threads?|lines?|cords?|strings?|wires?|test|"
    r"size|braided|twisted|round|natural|polyethylene|gel[ -]?spun|(?:pre-?)?waxed|conditioned|"
    r"(?:pre-?)?stretched|spools?|cards?|carded|kumihimo|macram[eé]|(?:its )?needle attached|"
    r"on|of|a|an|the|in|with|around|about|colou?r)(?![\w-])|[()]",
    re.IGNORECASE,
)
_DOUBLED = Pattern(r"(?<!\w)(?:doubled?|single|two (?:lines|threads|strands))(?!\w)", re.I)
_FIGURE = Pattern(
    r"\d|(?<!\w)[A-Z]{1,3}(?!\w)"
    r"|\b(?:pounds?|lbs?|mm|inch(?:es)?|gauge|ply|tex|or|coated)\b"
)


def thread(
    node: tree.Scalar, name: str, spools: Collection[str], faults: list[Fault]
) -> tree.Mapping | None:
    """The thread of a part from a phrase, or from the name of a thread of the plan."""
    fields: dict[str, tree.Node] | None
    phrase = Phrase(node)
    spool = phrase.take(re.compile(r"\s*([^,;]*[^,;\s])"))
    if spool is not None and spool.text in spools and spool.text != name:
        fields = {"spool": spool} | _beside(phrase, _OF_A_SPOOL) | _doubled(phrase)
        left = phrase.unknown(
            f"`thread` of `{name}`", "beside a spool it takes `tail 20 cm` and `working length 2 m`"
        )
        if left is not None:
            faults.append(left)
            return None
    else:
        fields = _read(node, f"`thread` of `{name}`", spools, faults, _OF_A_SPOOL)
    return tree.Spelled(node, fields) if fields else None


def line(node: tree.Scalar, name: str, faults: list[Fault]) -> tree.Mapping | None:
    """A thread, wire or cord on its spool from a phrase: its fields but for its kind."""
    fields = _read(node, f"`{name}`", (), faults, _OF_A_PART)
    return tree.Spelled(node, fields) if fields else None


def names_line(node: tree.Scalar) -> bool:
    """Whether a phrase names a type of line."""
    return Phrase(node).take_word(line_words()) is not None


def in_fields(group: tree.Mapping, what: str, faults: list[Fault]) -> tree.Mapping | None:
    """A line in fields, of which `type` or `size` is a phrase; None where neither is."""
    kind, size = (group.entries.get(name) for name in ("type", "size"))
    known, new = _types().keys(), {name: entry.node for name, entry in group.entries.items()}
    if kind is not None and isinstance(kind.node, tree.Scalar) and kind.node.text not in known:
        fields = _read(kind.node, what, (), [], (*_OF_A_PART, *_OF_A_SPOOL))
        if not fields or "type" not in fields or "colour" in fields:
            return None  # no type of ours: one of a plugin, or none
        whole = tree.implied(kind.node, str(fields.pop("type").value))
        whole.text = kind.node.text
        first = {name: new[name] for name in new if name != "type" and _before(new[name], whole)}
        new = first | {"type": whole} | {**fields, **{n: v for n, v in new.items() if n != "type"}}
    if size is not None and isinstance(size.node, tree.Scalar) and "type" in new:
        by, sold = size_of(size.node, _types().get(str(new["type"].value)))
        if sold is not None and (by == "size" or by not in new):
            new = {(by if name == "size" else name): node for name, node in new.items()}
            new[by] = sold
    if all(entry.node is new.get(name) for name, entry in group.entries.items()):
        return None
    return tree.with_fields(group, new)


def _before(node: tree.Node, other: tree.Node) -> bool:
    return (node.line, node.column) < (other.line, other.column)


def _read(
    node: tree.Scalar,
    what: str,
    spools: Collection[str],
    faults: list[Fault],
    never: Collection[str],
) -> dict[str, tree.Node] | None:
    """The fields of a line, each at its own words; None and a fault where words are left over."""
    phrase = Phrase(node)
    fields = _beside(phrase, ())
    kind = phrase.take_word(_words(unsure=False)) or phrase.take_word(_words(unsure=True))
    other = phrase.take_word(_words(unsure=False)) if kind is not None else None
    while other is not None and kind is not None and other.value == kind.value:
        other = phrase.take_word(_words(unsure=False))  # the same in other words
    if other is not None and kind is not None:
        says = f"{what} says both {shown(kind)} and {shown(other)}: write the one that it is"
        faults.append(fault(says, other.place))
        return None
    if (unfit := next((fields[name] for name in never if name in fields), None)) is not None:
        faults.append(_unfit(unfit, what, "length" in never))
        return None
    if "size" not in fields:
        by, size = size_of(phrase, _types().get(str(kind.value)) if kind is not None else None)
        if size is not None:
            fields[by] = size
    doubled = _doubled(phrase)
    if doubled and "tail" in never:
        says = f"{what} says {shown(doubled['doubled'])}, which is how a line is used:"
        advice = "leave the word out, and write it in the strand that takes the line, as in"
        own = f"`thread: {what.strip('`')}, doubled`"
        faults.append(fault(f"{says} {advice} {own}", doubled["doubled"].place))
        return None
    while phrase.take(_NOTHING) is not None:
        pass
    head = phrase.head
    if kind is None and not head:
        kind = _implied(node, fields)
    if kind is None:
        faults.append(_no_type(node, phrase, what, spools))
        return None
    sold = _types()[str(kind.value)]
    if _FIGURE.search(head):
        faults.append(_no_size(phrase, what, sold))
        return None
    outside = fields.get("outside")
    if isinstance(outside, tree.Scalar) and is_coil(str(outside.value), sold):
        fields = {"coil" if field == "outside" else field: node for field, node in fields.items()}
    if "outside" in fields and {"mm", "inches"} & {*sold.text("sold_by").split(", ")}:
        fields = {"size" if field == "outside" else field: node for field, node in fields.items()}
    colour, fields = phrase.take_rest(), fields | doubled
    return {"type": kind} | fields | ({"colour": colour} if colour is not None else {})


def passes_of(
    thread: tree.Mapping, part: tree.Mapping, what: str, faults: list[Fault]
) -> dict[str, tree.Node]:
    """The thread of a part without the word that it is doubled, and the passes that it means."""
    said = thread.entries.get("doubled")
    if said is None:
        return {"thread": thread}
    plain = tree.without(thread, "doubled")
    written, kind = part.entries.get("passes"), part.entries.get("kind")
    says = f"{what} says {shown(said.node)}"
    if kind is not None and kind.node.value != "strand":
        why = f"{says}, and only a strand is worked out on a doubled line: leave the word out"
        faults.append(fault(why, said.node.place))
    elif written is not None and written.node.value != 2:
        why = f"{says}, and `passes` is {shown(written.node)}: correct one of them"
        faults.append(fault(why, said.node.place, also=(written.node.place,)))
    elif written is None:
        two = tree.implied(said.node, "2")
        two.value = 2
        return {"thread": plain, "passes": two}
    return {"thread": plain}


def _doubled(phrase: Phrase) -> dict[str, tree.Node]:
    """That a line is used doubled; `single` says nothing."""
    said = phrase.take(_DOUBLED)
    return {"doubled": said} if said is not None and said.text.lower() != "single" else {}


def _beside(phrase: Phrase, never: Collection[str]) -> dict[str, tree.Node]:
    """What stands beside the type: a tail, a rating, a thickness, each by its own words."""
    fields: dict[str, tree.Node] = {}
    for field, pattern in _BESIDE.items():
        said = phrase.take(pattern) if field not in never else None
        if said is not None:
            if field in ("strands", "turns"):
                said.value = int(said.text)
            elif field == "rating":
                said.value = rating(said.text)
            elif field == "outside":
                said.value = length(said.text)
            fields[field] = said
    return fields


def _implied(node: tree.Scalar, fields: Mapping[str, tree.Node]) -> tree.Scalar | None:
    """The type of a line given by its size alone, where the size shows it."""
    inches = "outside" in fields and not str(fields["outside"].value).endswith("mm")
    if "outside" in fields and re.search(r"\bwires?\b", node.text) and not inches:
        inches = "strands" in fields
        if not inches:
            return None  # to string on, to wrap or to shape
    by = next((field for field in ("rating", "size", "outside") if field in fields), None)
    if by is None:
        return None
    kind = tree.implied(node, "flexible wire" if inches else _BY[by])
    kind.text = node.text
    return kind


#: what may be sold by such a size alone: words of several types, so that the check asks which
_BY = {"rating": "fishing line", "size": "thread", "outside": "cord"}


def _unfit(node: tree.Node, what: str, in_part: bool) -> Fault:
    assert isinstance(node, tree.Scalar)
    if in_part:
        needs = (
            f"write `tail {node.text}` or `working length {node.text}`; how much a spool holds is"
            " the `length` of a part of kind `thread`"
        )
    else:
        needs = "a spool has no tail and no turns: write them in the `thread` of what it makes"
    return fault(f"{what} says {shown(node)}: {needs}", node.place)


def _no_type(node: tree.Scalar, phrase: Phrase, what: str, spools: Collection[str]) -> Fault:
    """The fault of words of which none is a type of line, with the nearest."""
    rest = phrase.take_rest()
    examples = either(f"`{_types()[name].text('example')}`" for name in _EXAMPLES)
    named = f", or {listed(spools)}" if spools else ""
    if rest is None:  # `line`, `cord`: words that any of them has
        says = (
            f"{what} says {shown(node)}: the plan has no thread of that name, so write what it is,"
        )
        return fault(f"{says} as {examples}{named}", node.place)
    for word in (rest.text, *rest.text.split()):
        near = nearest(word, spools) or nearest(word, line_words())
        if near is not None:
            at = node.text.find(word)
            place = phrase.part(at, at + len(word)).place if at >= 0 else rest.place
            edits = (Edit(place, near),) if at >= 0 else ()
            says = f"{what} says `{word}`, which is no thread, wire or cord: write `{near}`"
            return fault(says, place, word, f"`{near}`", f"write `{near}`", edits=edits)
    return fault(
        f"{what} says {shown(rest)}, which is no type of thread, wire or cord: write what it is"
        f" made of, not who makes it, as {examples}{named}",
        rest.place,
    )


_EXAMPLES = ("nylon", "fused", "silk", "flexible wire", "elastic", "leather")


def _no_size(phrase: Phrase, what: str, sold: tables.Row) -> Fault:
    """The fault of a figure that no type of line of that name has."""
    rest = phrase.take_rest()
    assert rest is not None
    two = sold.text("sold_by") == "number, letter" and re.fullmatch(r"[A-Z]+|\d+", rest.text)
    says = f"{what} says {shown(rest)}, which is no size of {sold.name}"
    if two:
        says += (
            ", and letters on spools and numbers on cards are two systems: write one of them, as"
        )
        return fault(f"{says} `{sold.name} E` or `{sold.text('example')}`", rest.place)
    return fault(f"{says}: write it as `{sold.text('example')}`", rest.place)


def _types() -> Mapping[str, tables.Row]:
    return tables.load("line_types").rows


@cache
def line_words() -> Mapping[str, str]:
    """Every word for a type of line."""
    return {**_words(unsure=True), **_words(unsure=False)}


@cache
def _words(*, unsure: bool) -> Mapping[str, str]:
    """Every word for a type of line; `unsure` ones may mean several.

    What any line is called, `thread` and `cord`, is left to the size to say.
    """
    types = {
        name
        for name, row in _types().items()
        if bool(row.text("either")) == unsure and not (unsure and row.text("sold_by"))
    }
    listed_in = ACCEPTED["thread"].items()
    same = {plain(word): name for name, its in listed_in if name in types for word in words(its)}
    return {plain(name): name for name in types} | same
