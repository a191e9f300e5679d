"""Parts as a shop sells them, in a phrase: `lobster 12 mm`, `5 mm jump ring 20 AWG, brass`.

A phrase says what it is, its size, and what else decides: gauge, metal, holes. What it leaves out
is what shops usually sell, assumed as a range: `size: usual` where it has no size at all. What
follows a comma and is not known is a note.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from functools import cache
from typing import NamedTuple

from wellstrung.common.patterns import Pattern
from wellstrung.common.places import Fault
from wellstrung.common.trade_words import ACCEPTED, answer, close, fields_of, meaning, plain, words
from wellstrung.common.units import USUAL
from wellstrung.common.wording import article, nearest, one_of
from wellstrung.reading import tree
from wellstrung.reading.faults import EVERY_WORD, fault, shown
from wellstrung.short_forms.lines import line, line_words, names_line
from wellstrung.short_forms.loops import STRANDS, loops_of
from wellstrung.short_forms.metals import metals
from wellstrung.short_forms.named import named, of_no_field
from wellstrung.short_forms.phrase import LENGTH, NUMBER, TO, Phrase
from wellstrung.short_forms.phrase import part as within
from wellstrung.short_forms.uncut import cut_of, size_of_stones
from wellstrung.short_forms.words import answered


class Noun(NamedTuple):
    """What the noun of a finding stands for, and which sizes beside its own a phrase may give."""

    fields: Mapping[str, str]
    takes: tuple[str, ...] = ()


def _clasp(type_: str, *takes: str) -> Noun:
    return Noun({"kind": "clasp", "type": type_}, takes or ("a", "b"))


def _ring(**closing: str) -> Noun:
    return Noun({"kind": "jump ring", **closing}, ("wire", "inside", "closing"))


def _of_wire(kind: str, **type_: str) -> Noun:
    return Noun({"kind": kind, **type_}, ("wire", "eye", "loop"))


_NOUNS: Mapping[str, Noun] = {
    "lobster": _clasp("lobster"),
    "spring ring": _clasp("spring ring"),
    "toggle": _clasp("toggle", "ring inside", "bar"),
    "hook clasp": _clasp("hook"),
    "magnetic clasp": _clasp("magnetic"),
    "box clasp": _clasp("box"),
    "slide clasp": _clasp("slide", "a", "b", "tube"),
    "ribbon end": _clasp("ribbon end", "jaw"),
    "S-hook": _clasp("S-clasp"),
    "fold-over clasp": _clasp("fold-over"),
    "barrel clasp": _clasp("barrel"),
    "sew-on snap": _clasp("snap", "snap"),
    "sliding knots": _clasp("sliding knots", "sliding"),
    "end cap": Noun({"kind": "end cap"}, ("bore", "eye")),
    "fold over end": Noun({"kind": "end cap", "type": "fold-over"}, ("bore", "eye")),
    "end ball": Noun({"kind": "end cap", "type": "ball"}, ("bore",)),
    "cup chain end": Noun({"kind": "end cap", "type": "cup chain"}, ("bore", "stones", "eye")),
    "cone": Noun({"kind": "cone"}, ("bore",)),
    "bead tip": Noun({"kind": "bead tip"}, ("eye",)),
    "crimp": Noun({"kind": "crimp"}, ("cover",)),
    "crimp cover": Noun({"kind": "crimp cover"}),
    "crimp tube": Noun({"kind": "crimp", "type": "tube"}, ("cover",)),
    "crimp bead": Noun({"kind": "crimp", "type": "bead"}, ("cover",)),
    "jump ring": _ring(),
    "split ring": _ring(closing="split"),
    "open ring": _ring(closing="open"),
    "closed ring": _ring(closing="closed"),
    "soldered ring": _ring(closing="soldered"),
    "french wire": Noun({"kind": "french wire"}, ("grade",)),
    "ear wire": _of_wire("ear wire"),
    "ear hook": _of_wire("ear wire", type="hook"),
    "lever back": _of_wire("ear wire", type="lever back"),
    "hoop": _of_wire("ear wire", type="hoop"),
    "ear post": _of_wire("ear post"),
    "ear post with loop": _of_wire("ear post", type="loop"),
    "kidney wire": _of_wire("ear wire", type="kidney"),
    "clip on": _of_wire("ear wire", type="clip-on"),
    "head pin": _of_wire("wire link", type="head pin"),
    "eye pin": _of_wire("wire link", type="eye pin"),
    "spectacle loop": Noun({"kind": "spectacle loop"}, ("eye",)),
    "brooch pin": Noun({"kind": "brooch pin"}, ("behind", "long")),
    "bail": Noun({"kind": "bail"}, ("inside", "long", "eye")),
    "pinch bail": Noun({"kind": "bail", "type": "pinch"}, ("inside", "long", "eye")),
    "spacer bar": Noun({"kind": "spacer bar"}, ("holes",)),
    "end bar": Noun({"kind": "end bar"}, ("holes", "eye")),
    "cable chain": Noun({"kind": "chain", "type": "cable"}, ("links",)),
    "rolo chain": Noun({"kind": "chain", "type": "rolo"}, ("links",)),
    "curb chain": Noun({"kind": "chain", "type": "curb"}, ("links",)),
    "cup chain": Noun({"kind": "chain", "type": "cup"}, ("links",)),
}
#: words of shops for the same, beside those of the table of trade words
_ALSO: Mapping[str, str] = {
    "trigger clasp": "lobster",
    "hook and eye": "hook clasp",
    "magnet clasp": "magnetic clasp",
    "leverback": "lever back",
    "earring post": "ear post",
    "earring wire": "ear wire",
    "earwire": "ear wire",
    "endcap": "end cap",
    "memory wire end": "end ball",
    "ribbon clamp": "ribbon end",
    "ball pin": "head pin",
    "double ring": "split ring",
    "ring": "jump ring",
}
_GRADES = {word: word for word in ("fine", "medium", "heavy")}
_CLOSINGS = {word: word for word in ("soldered", "closed", "open", "split")}
_SIZE = Pattern(LENGTH)
#: length and width, of which the first is the size that shops go by
_BOTH = Pattern(
    rf"(?<![\w./])({NUMBER}(?:{TO}{NUMBER})?)\s*(?:mm)?\s*[x×]\s*{NUMBER}(?:\s*mm)?(?![\w.])"
)
_GAUGE = Pattern(r"(?<![\w./])\d{1,2}\s*(?:AWG|SWG|gauge|ga)\b\.?(?:\s+wire)?", re.IGNORECASE)
_WIRE = Pattern(rf"(?:wire\s+({LENGTH})|({LENGTH})\s+(?:thick|wire))", re.IGNORECASE)
_INSIDE = Pattern(
    rf"(?:(?:inside|inner|bore|ID)\s+({LENGTH})|({LENGTH})\s+(?:inside|inner|ID)(?!\w))",
    re.IGNORECASE,
)
_BESIDE_BORE = Pattern(rf"(?<!\w)outside\s+({LENGTH})", re.IGNORECASE)
_OUTSIDE = Pattern(r"(?<!\w)(?:outside|outer|OD)(?: diameter)?(?!\w)", re.IGNORECASE)
_HOLES = Pattern(r"(?<![\w./])(\d{1,2})[\s-]*(?:holes?|strands?|rows?|loops?)\b", re.IGNORECASE)
_BEHIND = Pattern(r"(?<!\w)(?:behind|to)\s+(?:the\s+)?([^,\0]+?)(?=\s*(?:,|\0|$))", re.IGNORECASE)
_COVER = Pattern(
    r"(?<!\w)cover(?:ed)?(?:\s+(?:with|by|in))?\s+([^,;\0]+?)(?=\s*(?:[,;\0]|$))", re.IGNORECASE
)
_GLUED = Pattern(r"(?<!\w)glue[\s-]?(?:on|in)(?!\w)", re.IGNORECASE)
_NEEDLE = Pattern(r"(?<!\w)needles?(?!\w)", re.IGNORECASE)
_NOTE = Pattern(r",\s*([^\W\d_][^,\0\d]*)")
_EXAMPLE = "`lobster 12 mm`, `5 mm jump ring 20 AWG` or `end cap 8 mm, brass`"


def part(node: tree.Scalar, name: str, faults: list[Fault]) -> tree.Mapping | None:
    """A part from a phrase."""
    phrase = Phrase(node)
    if (other := _glue(node) or _needle(node) or _thread(node, name)) is not None:
        return other
    answered = _answered(node, name, (4, 3, 2))  # `crimp cover` before `crimp`
    word = phrase.take_word(_known()) if answered is None else None
    if word is None:
        if answered is None and names_line(node):
            line(node, name, faults)  # says what is wrong with it
        else:
            faults.append(answered or _answered(node, name, (1,)) or _no_noun(node, name))
        return None
    noun = _NOUNS[word.value]
    same = {said: meant for said, meant in _known().items() if meant == word.value}
    phrase.take_word(same)  # `clamshell bead tip` says it twice
    if noun.fields["kind"] == "end cap":
        phrase.take(_GLUED)
    fields: dict[str, tree.Node | None] = {
        field: tree.implied(word, value) for field, value in noun.fields.items()
    }
    fields["kind"] = _in_their_word(word, noun.fields["kind"])
    sizes = _sizes(phrase, noun, name, faults)
    size = sizes.pop("size", None) or phrase.take(_BOTH) or phrase.take(_SIZE)
    if size is not None and str(size.value)[-1].isdigit():  # the first of two, as in `12 x 7 mm`
        size.value = f"{size.value} mm"
    if "grade" in noun.takes:  # sold by a word; what is measured is how long it is cut
        fields |= {"size": phrase.take_word(_GRADES), "length": size}
    else:
        fields["size"] = size or tree.implied(node, USUAL)
    if "long" in noun.takes:  # sold by how long it is; not listed in the trade tables
        fields["length"] = size
        del fields["size"]
    if "behind" in noun.takes:
        fields |= _behind(phrase)
    fields |= sizes
    fields["metal"] = phrase.take_word(metals())
    if counted := phrase.how_many(f"`{name}`", sized=size is not None):
        faults.append(counted)
    fields["note"] = phrase.take(_NOTE)
    advice = "take it out, or write it after a comma, as in `lobster 12 mm, plain`"
    if unknown := phrase.unknown(f"`{name}`", advice):
        faults.append(unknown)
    return tree.Spelled(node, fields)


def _in_their_word(word: tree.Scalar, kind: str) -> tree.Scalar:
    """The kind of a part, with the author's word for it where that is another than ours."""
    if close(word.text).removesuffix("s") == close(word.value).removesuffix("s"):
        return tree.implied(word, kind)
    own = tree.meaning(word, kind)
    own.text = word.text if plain(word.text) in _spoken() else word.text.removesuffix("s")
    return own


def _behind(phrase: Phrase) -> dict[str, tree.Node | None]:
    """What a pin is behind, where the phrase says it, and how it is held there."""
    held = phrase.take_word(
        {"sewn": "sewn", "sewn on": "sewn", "glued": "glued", "glued on": "glued"}
    )
    return {"behind": phrase.take(_BEHIND), "held": held}


def _glue(node: tree.Scalar) -> tree.Mapping | None:
    """An adhesive by its type; other words become a note."""
    phrase, types = Phrase(node), ACCEPTED["type of adhesive"]
    said = {plain(word): own for own, same in types.items() for word in (own, *words(same))}
    type_ = phrase.take_word(said)
    if type_ is None or phrase.take_word(_known()) is not None:
        return None
    fields = {"kind": tree.implied(node, "adhesive"), "type": type_, "note": phrase.take_rest()}
    return tree.Spelled(node, fields)


def _needle(node: tree.Scalar) -> tree.Mapping | None:
    """A needle, whose class and size are read with those of all needles."""
    if not _NEEDLE.search(node.text):
        return None
    return tree.Spelled(node, {"kind": tree.implied(node, "needle"), "size": node})


def _thread(node: tree.Scalar, name: str) -> tree.Mapping | None:
    """A thread, wire or cord on its spool; None where words are left that name a finding.

    So `leather end cap 5 mm` is a cap, and `memory wire ring` wire.
    """
    if not names_line(node) and Phrase(node).take_word(_known()) is not None:
        return None
    fields = line(node, name, [])
    said = {one: entry.node for one, entry in fields.entries.items()} if fields else {}
    colour, size = said.get("colour"), said.get("size")
    if isinstance(colour, tree.Scalar) and Phrase(colour).take_word(_known()) is not None:
        return None
    if not said or (isinstance(size, tree.Scalar) and size.text == node.text):
        return None  # nothing, or a bare size
    return tree.Spelled(node, {"kind": tree.implied(node, "thread"), **said})


def _sizes(
    phrase: Phrase, noun: Noun, name: str, faults: list[Fault]
) -> dict[str, tree.Node | None]:
    """What a phrase says beside the size that the finding is sold by, by field."""
    kind, counted = noun.fields["kind"], None
    found = dict(_own_sizes(phrase, noun))
    if "holes" in noun.takes and (counted := phrase.take(_HOLES)):
        counted.value = int(counted.text)
        found["holes"] = tree.Spelled(counted, {"count": counted})
    elif kind == "clasp" and (counted := phrase.take(STRANDS)):
        found |= loops_of(counted, name, faults)
    found |= named(phrase, kind, noun.takes, found)
    if wrong := of_no_field(phrase, name, kind):
        faults.append(wrong)
    if "links" in noun.takes:
        found |= cut_of(phrase, _BOTH)
    phrase.take(_OUTSIDE)
    return {field: size for field, size in found.items() if size is not None}


def _own_sizes(phrase: Phrase, noun: Noun) -> Iterator[tuple[str, tree.Node | None]]:
    """What only some findings have beside their size, by field."""
    if "stones" in noun.takes:
        yield "size", size_of_stones(phrase)
    if "wire" in noun.takes:
        yield "wire", phrase.take(_WIRE) or phrase.take(_GAUGE)
    if "inside" in noun.takes:
        yield "inside", phrase.take(_INSIDE)
    if "bore" in noun.takes:
        yield "bore", phrase.take(_INSIDE)
        yield "outside", phrase.take(_BESIDE_BORE)
    if "closing" in noun.takes and "closing" not in noun.fields:
        yield "closing", phrase.take_word(_CLOSINGS)
    if "links" in noun.takes:
        yield "links_are", phrase.take_word({word: word for word in ("open", "soldered")})
    if "cover" in noun.takes:  # a part, by its name
        yield "cover", phrase.take(_COVER)
    if "ring inside" in noun.takes and (inside := phrase.take(_INSIDE)):
        yield "ring", tree.Spelled(inside, {"inside": inside})


def _answered(node: tree.Scalar, name: str, lengths: tuple[int, ...]) -> Fault | None:
    """The fault of words of the trade that no phrase can say, with what to write instead."""
    spans = [found.span() for found in re.finditer(r"[^\s,;]+", node.text)]
    for count in lengths:
        for start in range(len(spans) - count + 1):
            word = within(node, spans[start][0], spans[start + count - 1][1])
            if plain(word.text) in _known():
                continue
            for place in _ANSWERED_AT:
                for one in (word.text, word.text.removesuffix("s")):
                    if (known := answer(place, one)) is not None:
                        return answered(f"`{name}`", word, *known)
    return None


#: where a word of a finding may be answered
_ANSWERED_AT = ("kind", "type of clasp", "type of ear wire", "type of wire link")


def _no_noun(node: tree.Scalar, name: str) -> Fault:
    """The fault of a phrase that names no finding, with the one that it most likely means."""
    near, known = None, {**_spoken(), **line_words()}
    said = plain(node.text).split()
    some = [" ".join(said[at : at + count]) for count in (2, 1) for at in range(len(said))]
    which: dict[str, list[str]] = {}
    for noun, stands in _NOUNS.items():
        which.setdefault(stands.fields["kind"], []).append(noun)
    kinds = which.keys() | {fields_of(own)[0] for own in ACCEPTED["kind"]}
    for word in dict.fromkeys(some):
        meant = meaning("kind", word)
        kind = word if word in kinds else fields_of(meant[0])[0] if meant else ""
        if kind in which:
            says = f"{shown(node)} of part `{name}` does not say which {kind} it is"
            return fault(f"{says}: write {one_of(which[kind], node.text, EVERY_WORD)}", node.place)
        if kind == "adhesive":
            types = one_of(ACCEPTED["type of adhesive"], node.text, "wellstrung tables adhesives")
            says = f"{shown(node)} of part `{name}` does not say which adhesive it is"
            return fault(f"{says}: write what its label says, {types}", node.place)
        if kind:
            says = f"{shown(node)} of part `{name}` is {article(kind)}, which has no phrase"
            return fault(f"{says}: write its fields, as in `{{kind: {kind}, ...}}`", node.place)
        near = near or nearest(word, known)
    advice = f"write `{near}`" if near else f"write a part such as {_EXAMPLE}, or its fields"
    says = f"{shown(node)} of part `{name}` names no known finding: {advice}"
    return fault(says, node.place)


@cache
def _spoken() -> Mapping[str, str]:
    """Every word of a finding, as people write it -> its noun."""
    by_fields = {tuple(noun.fields.items()): word for word, noun in _NOUNS.items()}
    known = {word: word for word in _NOUNS} | dict(_ALSO)
    for own, same in ACCEPTED["kind"].items():
        kind, beside = fields_of(own)
        noun = by_fields.get(tuple({"kind": kind, **beside}.items()))
        if noun is not None and "closing" not in beside:  # which the phrase says by itself
            for word in words(same):
                known.setdefault(plain(word), noun)
    return known


@cache
def _known() -> Mapping[str, str]:
    """Every word of a finding, one or several of it, however it is spaced -> its noun."""
    known = {**{close(word): noun for word, noun in _spoken().items()}, **_spoken()}
    return {**{f"{word}s": noun for word, noun in known.items()}, **known}
