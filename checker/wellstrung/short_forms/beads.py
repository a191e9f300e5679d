"""Beads in a phrase: `8/0 round Japanese, matte green`, `6 mm glass pearl, cream`.

The words for each type of bead are in the trade table `other_beads`. What nothing takes is colour
text, unless it is a slip of a word that has a meaning here.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from functools import cache

from wellstrung import tables
from wellstrung.common.patterns import Pattern
from wellstrung.common.places import Edit, Fault
from wellstrung.common.trade_words import plain
from wellstrung.common.wording import either, nearest
from wellstrung.reading import tree
from wellstrung.reading.faults import LONGEST, fault, shown
from wellstrung.short_forms.phrase import LENGTH, Phrase, known_in, named_sizes

#: the size of a seed bead, which is no length
_OUGHT = Pattern(r"(?<![\w/])\d{1,2}\s*(?:/\s*[0oO]|°|º)(?![\w/])")
_FIGURE = r"\d+(?:\.\d+)?"
_UNIT = r"(?:mm|millimet(?:er|re)s?|cm|in(?:ch(?:es)?)?|\")"
_TO = r"(?:±|\+/?-|\.\.|-|–|\bto\b)"
_SPAN = rf"{_FIGURE}\s*{_UNIT}?(?:\s*{_TO}\s*{_FIGURE}\s*{_UNIT}?)?"
_TWO = Pattern(rf"(?<![\w.#/]){_SPAN}\s*(?:[x×*]|\bby\b)\s*{_SPAN}(?!\w)", re.IGNORECASE)
_ONE = Pattern(
    rf"(?<![\w.#/])(?:{_FIGURE}\s*{_UNIT}?\s*{_TO}\s*)?(?:(?:\d+\s+)?\d+/\d+|{_FIGURE})"
    rf"\s*{_UNIT}(?:\s*±\s*{_FIGURE})?(?!\w)",
    re.IGNORECASE,
)
_NUMBER = Pattern(
    r"(?<![\w.])(?:#\s*|no\.?\s*|number\s+|size\s+)?(\d{1,2})(?![\w./])", re.IGNORECASE
)
_OF_SEEDS = Pattern(r"(?<!\w)size\s+(\d{1,2})(?![\w./])", re.IGNORECASE)
#: sizes beside the one that a bead is sold by; `pearl 6 mm hole 1 mm` has a hole of 1 mm
_NAMED = named_sizes(hole=r"(?:holes?|drill)(?!\s+\d)", length="long", outside="(?:across|wide)")
_LONG = Pattern(LENGTH, re.IGNORECASE)
_HEAVY = Pattern(r"(?<![\w.])\d+(?:\.\d+)?\s*(?:g|grams?)(?!\w)", re.IGNORECASE)
#: a spacer of such a shape is no ball, however round it is
_FLAT = Pattern(r"(?<!\w)(?:flat|dis[ck]s?|dais(?:y|ies)|washers?)(?!\w)", re.IGNORECASE)
_SAYS_NOTHING = ("bead", "beads", "size", "in size", "a", "of", "some")
_MAKES = {"japanese": "Japanese", "japan": "Japanese", "czech": "Czech", "bohemian": "Czech"}
_DRILLED = {"top-drilled": "top", "top drilled": "top", "through-drilled": "through"}
#: the last word of a name for a family itself, which states no material of its own
_NO_MATERIAL = frozenset(
    ("round", "rounds", "bead", "beads", "ball", "balls", "gemstone", "wooden", "plastic")
)
#: metals that are no colour as well
_METALS = {
    word: word for word in ("brass", "pewter", "sterling silver", "fine silver", "stainless steel")
}
#: colours and finishes that are a letter or two from a word for a bead
_COLOURS = frozenset(
    ("gloss", "glossy", "pearly", "stony", "woody", "rosy", "wool", "glassy", "metallic", "jetty",
     "smoke", "smoked")
)  # fmt: skip


def bead(node: tree.Scalar, name: str, faults: list[Fault]) -> tree.Mapping | None:
    """A bead of the palette from a phrase."""
    phrase = Phrase(node)
    by_number = phrase.take(_OUGHT)
    two = None if by_number else phrase.take(_TWO)
    named = {field: phrase.take(pattern) for field, pattern in _NAMED.items()}
    size = by_number or two or phrase.take(_ONE)
    family, kind, material = _type(phrase, bool(by_number))
    if size is None and family is not None and "number 1" in family.cells:
        size = _in_numbers(phrase.take(_NUMBER), family)
    if size is None and (family is None or family.text("seed")):
        size = by_number = phrase.take(_OF_SEEDS)
        if size is not None:
            size.value = f"{size.text}/0"
            family, kind, _ = (family, kind, None) if family else _type(phrase, by_number=True)
    if family is None and by_number is not None:
        family, kind = _families()["round"], tree.implied(node, "round")
    make = phrase.take_word(_MAKES)
    drilled = phrase.take_word(_DRILLED)
    while phrase.take_word(dict.fromkeys(_SAYS_NOTHING, "")):
        pass
    counted = phrase.how_many(f"`{name}`", sized=size is not None)
    colour = phrase.take_rest()
    wrong = counted or (colour and _slip(colour, node, name, typed=family is not None))
    if wrong:
        faults.append(wrong)
    elif size is None or family is None:
        faults.append(fault(_lacks(node, name, size, family), node.place))
    else:
        if by_number is None:
            size.value = _in_mm(size.text)
        fields = {"type": kind, "size": size, "make": make, "material": material, "colour": colour}
        return tree.Spelled(node, {**fields, "drilled": drilled, **named})
    return None


def bead_group(node: tree.Mapping, faults: list[Fault]) -> tree.Mapping | None:
    """A group with its type by the name that the tables have, and a size by number in mm."""
    kind, size = (_scalar(node, field) for field in ("type", "size"))
    if kind is None or kind.value in ("", "other"):
        return None
    new: dict[str, tree.Node] = {}
    family = _families().get(str(kind.value))
    if family is None:
        family = _named(kind)
        if family is None:
            return None
        new["type"] = tree.meaning(kind, family.name)
    if size is not None and "number 1" in family.cells:
        number = _NUMBER.fullmatch(size.text)
        said = _in_numbers(size if number else None, family)
        if said is not None:
            new["size"] = said
    elif size is not None and family.text("largest") and re.fullmatch(_FIGURE, size.text):
        if family.text("seed") and "make" in node.entries:
            return None  # of a seed bead, which is asked for as one
        faults.append(_without_unit(size, family))
        new["size"] = tree.implied(size, f"{size.text} mm")
    return tree.with_nodes(node, new) if new else None


def _named(kind: tree.Scalar) -> tables.Row | None:
    """The family that the words of a type name, and nothing else; None where they do not."""
    for by_number in (False, True):
        phrase = Phrase(kind)
        family, _, material = _type(phrase, by_number)
        if family is not None:
            return family if material is None and phrase.take_rest() is None else None
    return None


def _without_unit(size: tree.Scalar, family: tables.Row) -> Fault:
    """The fault of a bare number, which may be mm, or the number of a seed bead."""
    near = f"{size.text} mm"
    if family.text("seed") and size.text.isdigit():
        says = f"`{size.text}` may be the number of a seed bead, or mm"
        return fault(f"{says}: write `{size.text}/0` or `{near}`", size.place)
    says, remedy = (
        f"`{size.text}` has no unit, and {family.name} beads are sold by mm",
        (f"write `{near}`"),
    )
    edits = (Edit(size.place, near),)
    return fault(f"{says}: {remedy}", size.place, remedy=remedy, edits=edits)


def _scalar(node: tree.Mapping, field: str) -> tree.Scalar | None:
    entry = node.entries.get(field)
    return entry.node if entry is not None and isinstance(entry.node, tree.Scalar) else None


def _type(
    phrase: Phrase, by_number: bool
) -> tuple[tables.Row | None, tree.Scalar | None, tree.Scalar | None]:
    """The family that a phrase names, its word, and a material that is named beside it.

    A shape comes before what it is made of, and before `round`, which most beads are; what stands
    before the first comma, before the colours after it.
    """
    every = {word: of for words in _words(by_number) for word, of in words.items()}
    # `mother of pearl` is no pearl
    found = phrase.take_word({word: of for word, of in every.items() if " of " in word})
    for head in (True, False):
        for words in _words(by_number):
            found = found or phrase.take_word(words, head=head)
    if found is None:
        return None, None, None
    family, material = _families()[str(found.value)], None
    if by_number:
        return family, found, None
    if family.text("rank") == "3" and plain(found.text).split()[-1] not in _plain_words(family):
        material = tree.implied(found, plain(found.text).removesuffix("s"))  # amethyst is a stone
    elif family.text("of"):
        material = phrase.take_word(_materials(family.text("of")), head=True)
        if material is not None and material.value == "":
            material.value = plain(material.text)
    material = material or phrase.take_word({"glass": "glass"}, head=True)
    if family.text("rank") != "4":
        ball = phrase.take_word(_plural("round, ball", "round"))
        flat = _FLAT.search(phrase.node.text.partition(",")[0])
        if ball is not None and family.text("if_round") and not flat:
            family = _families()[family.text("if_round")]
            found = tree.meaning(found, family.name)
    return family, found, material


def _in_numbers(number: tree.Scalar | None, family: tables.Row) -> tree.Scalar | None:
    """The length of a bugle given by its number; None where the tables have none."""
    found = _NUMBER.fullmatch(number.text) if number else None
    cell = family.cells.get(f"number {found[1]}") if found else None
    if number is None or cell is None:
        return None
    low, high = f"{cell.low:g}", f"{cell.high:g}"
    return tree.implied(number, f"{low} mm" if low == high else f"{low}..{high} mm")


def _in_mm(size: str) -> str:
    """A size of a phrase as a value with units has it."""
    size = re.sub(r"(?<=[\d\s])(?:-|–|\bto\b)\s*(?=\d)", "..", size)
    return re.sub(r"millimet(?:er|re)s?", "mm", size, flags=re.IGNORECASE)


def _lacks(
    node: tree.Scalar, name: str, size: tree.Scalar | None, family: tables.Row | None
) -> str:
    """What a phrase lacks, with what to write."""
    of = f"{shown(node)} of bead `{name}`"
    if size is not None:
        head = node.text.partition(",")[0].strip()
        named = head != size.text and len(head) < LONGEST  # a material, and no shape
        own = f"its shape behind it, as in `{head} round`, or " if named else "it as "
        such = either(f"`{size.text} {word}`" for word in ("glass pearl", "stone round", "wood"))
        return f"{of} does not say what bead it is: write {own}{such}"
    such = "8/0 round Japanese" if family is None else family.text("example")
    return f"{of} has no size: write it as {either(f'`{each}`' for each in such.split(', '))}"


def _slip(colour: tree.Scalar, said: tree.Scalar, name: str, *, typed: bool) -> Fault | None:
    """The fault of what is left over and is no colour: a size, or a slip of a known word.

    Once the type is known, what follows a comma may be any colour.
    """
    for pattern, advice in (
        (_LONG, "if it is the hole, write `hole {said}`"),
        (_HEAVY, "what is on hand goes under `supplies`, as `{said} of {name}`"),
    ):
        if measured := Phrase(colour).take(pattern):
            advice = f"{advice.format(said=measured.text, name=name)}; else take it out"
            says = f"`{measured.text}` of bead `{name}` is no colour: {advice}"
            return fault(says, measured.place, remedy=advice)
    head, _, rest = said.text.partition(",")
    for word in re.findall(r"[^\W\d_]{4,}", colour.text):
        small = word.casefold()
        if small in _COLOURS or small in _every_word():
            continue
        free = typed and word in rest and word not in head  # as any colour may be called
        near = nearest(small, _MAKES if free else _every_word())
        if near is not None:
            near = _MAKES.get(near, near)
            there = Phrase(said).take(re.compile(rf"(?<!\w){word}(?!\w)"))
            place = (there or colour).place
            alone = place.end_column - place.column == len(word)  # not the whole phrase
            edits = (Edit(place, near),) if alone else ()
            says = f"in bead `{name}`, `{word}` is no known word: write `{near}`"
            return fault(says, place, word, near, remedy=f"write `{near}`", edits=edits)
    return None


@cache
def _families() -> Mapping[str, tables.Row]:
    return tables.load("other_beads").rows


@cache
def _words(by_number: bool) -> tuple[Mapping[str, str], ...]:
    """The words for types, by what comes first; of seed beads those of their own types."""
    ranks: dict[str, dict[str, str]] = {}
    for family in _families().values():
        if family.text("seed" if by_number else "largest"):
            rank = family.text("rank") or "1"
            ranks.setdefault(rank, {}).update(_plural(family.text("words"), family.name))
    return tuple(ranks[rank] for rank in sorted(ranks))


@cache
def _materials(of: str) -> Mapping[str, str]:
    """The words for what a bead of any material, or of metal, is made of."""
    words = _METALS if of == "any" else {plain(name): name for name in tables.load("metals").rows}
    words = {**words, "glass": "glass"}
    if of == "any":
        for family in _families().values():
            if family.text("rank") in ("2", "3"):
                words |= dict.fromkeys(_plural(family.text("words"), ""), "")
        words |= {plain(name): name for name in tables.load("materials").rows}
    return words


def _plural(words: str, meaning: str) -> dict[str, str]:
    """Comma separated words, and more than one of each."""
    each = [plain(word) for word in words.split(",")]
    return dict.fromkeys([*each, *(f"{word}s" for word in each)], meaning)


def _plain_words(family: tables.Row) -> frozenset[str]:
    """The last words of the names for a family itself, which say no more than its name."""
    return _NO_MATERIAL | {family.name, f"{family.name}s"}


@cache
def _every_word() -> frozenset[str]:
    """Each single word that has a meaning in a phrase; of short ones too many colours are near."""
    texts = (*(family.text("words") for family in _families().values()), *_MAKES)
    words = {one for text in texts for one in plain(text.replace(",", " ")).split()}
    long = frozenset(word for word in words if len(word) > 4)
    return long | {f"{word}s" for word in long}


def says_a_bead(words: str) -> bool:
    """Whether words name a type of bead and a size, as in the palette.

    >>> says_a_bead("6 mm glass pearl"), says_a_bead("moonlight")
    (True, False)
    """
    sized = _OUGHT.search(words) or _TWO.search(words) or _ONE.search(words)
    named = (one for by_number in (True, False) for one in _words(by_number))
    return bool(sized) and any(known_in(words, each) for each in named)


def words_of_types() -> Iterator[tuple[str, str]]:
    """Every word or words for a type of bead, with the type."""
    for family in _families().values():
        yield from _plural(family.text("words"), family.name).items()
