"""Reading: every refusal names its line and what to write, and every value keeps its place."""

from __future__ import annotations

import pytest
import yaml
from hypothesis import given, settings
from hypothesis import strategies as st

from wellstrung.common.places import Place
from wellstrung.reading import parser
from wellstrung.reading.builder import MAX_FAULTS
from wellstrung.reading.parser import read_text
from wellstrung.reading.tree import Mapping, Node, Scalar, Sequence, offset, replaced
from wellstrung.reading.yaml_errors import MAX_DEPTH

#: what is refused: the text, and every fault's line, column and words
REFUSED: dict[str, list[tuple[int, int, str]]] = {
    # numbers that readers take in more than one way
    "wire: 010": [
        (1, 7, "`wire: 010` begins with a zero, which some readers take for another number: "
               'write 10, or "010" in quotes if it is text'),
    ],
    "a: -010": [
        (1, 4, "`a: -010` begins with a zero, which some readers take for another number: "
               'write -10, or "-010" in quotes if it is text'),
    ],
    "a: 00.5": [
        (1, 4, "`a: 00.5` begins with a zero, which some readers take for another number: "
               'write 0.5, or "00.5" in quotes if it is text'),
    ],
    "a: 1_000": [
        (1, 4, '`a: 1_000` has an underscore inside a number: write 1000, or "1_000" in quotes '
               "if it is text"),
    ],
    "a: 5_.": [
        (1, 4, '`a: 5_.` has an underscore inside a number: write 5.0, or "5_." in quotes if it '
               "is text"),
    ],
    "a: .5_0": [
        (1, 4, '`a: .5_0` has an underscore inside a number: write 0.50, or ".5_0" in quotes if '
               "it is text"),
    ],
    "a: 0x1f": [
        (1, 4, "`a: 0x1f` is a number in another base to some readers: write it in decimal, or "
               '"0x1f" in quotes if it is text'),
    ],
    "a: -0x1f": [
        (1, 4, "`a: -0x1f` is a number in another base to some readers: write it in decimal, or "
               '"-0x1f" in quotes if it is text'),
    ],
    "a: 0o7": [
        (1, 4, "`a: 0o7` is a number in another base to some readers: write it in decimal, or "
               '"0o7" in quotes if it is text'),
    ],
    "a: 0b11": [
        (1, 4, "`a: 0b11` is a number in another base to some readers: write it in decimal, or "
               '"0b11" in quotes if it is text'),
    ],
    "a: 1e3": [
        (1, 4, "`a: 1e3` is a number to some readers and text to others: write it out in full, "
               'or "1e3" in quotes if it is text'),
    ],
    "a: .5E-3": [
        (1, 4, "`a: .5E-3` is a number to some readers and text to others: write it out in "
               'full, or ".5E-3" in quotes if it is text'),
    ],
    "a: 9999999999999999": [
        (1, 4, "`a: 9999999999999999` has more digits than a number can hold: write fewer, or "
               '"9999999999999999" in quotes if it is text'),
    ],
    "a: -1234567890123456.5": [
        (1, 4, "`a: -1234567890123456.5` has more digits than a number can hold: write fewer, "
               'or "-1234567890123456.5" in quotes if it is text'),
    ],
    "a: .5": [
        (1, 4, "`a: .5` has no digit before its decimal point: write 0.5"),
    ],
    "a: -.5": [
        (1, 4, "`a: -.5` has no digit before its decimal point: write -0.5"),
    ],
    "a: +.5": [
        (1, 4, "`a: +.5` has no digit before its decimal point: write 0.5"),
    ],
    "a: 5.": [
        (1, 4, "`a: 5.` has no digit after its decimal point: write 5.0"),
    ],
    "a: +5": [
        (1, 4, "`a: +5` needs no plus sign: write 5"),
    ],
    "a: 1:30": [
        (1, 4, "`a: 1:30` is a number in base 60 to some readers: write a time with its unit, "
               'such as `90 min`, or "1:30" in quotes if it is text'),
    ],
    "a: -1:30": [
        (1, 4, "`a: -1:30` is a number in base 60 to some readers: write a time with its unit, "
               'such as `90 min`, or "-1:30" in quotes if it is text'),
    ],
    "a: 1:30:15.5": [
        (1, 4, "`a: 1:30:15.5` is a number in base 60 to some readers: write a time with its "
               'unit, such as `90 min`, or "1:30:15.5" in quotes if it is text'),
    ],
    "a: 2026-11-25": [
        (1, 4, '`a: 2026-11-25` is a date to some readers: write "2026-11-25" in quotes'),
    ],
    "a: 2026-1-5t8:00:00Z": [
        (1, 4, '`a: 2026-1-5t8:00:00Z` is a date to some readers: write "2026-1-5t8:00:00Z" in '
               "quotes"),
    ],
    "a: .nan": [
        (1, 4, "`a: .nan` is not a number that can be measured: write one"),
    ],
    "a: -.inf": [
        (1, 4, "`a: -.inf` is not a number that can be measured: write one"),
    ],
    "a: NaN": [
        (1, 4, "`a: NaN` is not a number that can be measured: write one"),
    ],
    "010: a": [
        (1, 1, "`010` begins with a zero, which some readers take for another number: write "
               '10, or "010" in quotes if it is text'),
    ],
    "a: [8, 010]": [
        (1, 8, "`010` begins with a zero, which some readers take for another number: write "
               '10, or "010" in quotes if it is text'),
    ],
    # nothing, and YAML's own words
    "a: ~": [
        (1, 4, "`a: ~` means no value: write one, or delete the line"),
    ],
    "a: null": [
        (1, 4, "`a: null` means no value: write one, or delete the line"),
    ],
    "<<: {b: 1}": [
        (1, 1, '`<<` has a meaning of its own in YAML: write "<<" in quotes if it is text'),
    ],
    "a: =": [
        (1, 4, '`a: =` has a meaning of its own in YAML: write "=" in quotes if it is text'),
    ],
    "a: &one 1\nb: *one": [
        (1, 4, "`&one` marks a place to repeat: delete it, or put it in quotes if it is text"),
        (2, 4, "`*one` repeats another place: write it out, or put it in quotes if it is text"),
    ],
    "*one : 1": [
        (1, 1, "`*one` repeats another place: write it out, or put it in quotes if it is text"),
    ],
    "a: &one": [
        (1, 4, "`&one` marks a place to repeat: delete it, or put it in quotes if it is text"),
    ],
    "a: !!str 8": [
        (1, 4, "`!!str` is a tag: delete it, or put it in quotes if it is text"),
    ],
    "a: !!null": [
        (1, 4, "`!!null` is a tag: delete it, or put it in quotes if it is text"),
    ],
    "a: !important": [
        (1, 4, "`!important` is a tag: delete it, or put it in quotes if it is text"),
    ],
    # a colon or a # that does not do what it seems to
    "a:1": [
        (1, 1, "`a:1` lacks a space after the colon: write `a: 1`"),
    ],
    "b: 2\na:1\nc: 3": [
        (2, 1, "`a:1` lacks a space after the colon: write `a: 1`"),
    ],
    "a: {b:1, c: 2}": [
        (1, 5, "`b:1` lacks a space after the colon: write `b: 1`"),
    ],
    "a:\n  bore:8 mm": [
        (2, 3, '`bore:8 mm` lacks a space after the colon: write `bore: 8 mm`, or "bore:8 mm" '
               "in quotes if it is text"),
    ],
    "a:\n  - do:glue": [
        (2, 5, '`do:glue` lacks a space after the colon: write `do: glue`, or "do:glue" in '
               "quotes if it is text"),
    ],
    "cap:\n  bore:8 mm\n  depth: 7 mm": [
        (2, 3, '`bore:8 mm` lacks a space after the colon: write `bore: 8 mm`, or "bore:8 mm" '
               "in quotes if it is text"),
    ],
    "a: #8": [
        (1, 1, '`a: #8` has no value, because # starts a comment: write a: "#8"'),
    ],
    "- #8": [
        (1, 2, '`- #8` is empty, because # starts a comment: write - "#8"'),
    ],
    "a: reed #8": [
        (1, 4, "`a: reed #8` loses what follows #, which starts a comment: put the value in "
               "quotes, or a space after # if it is a comment"),
    ],
    "a: [b, reed\n  green #8\n]": [
        (1, 8, "`green #8` loses what follows #, which starts a comment: put the value in "
               "quotes, or a space after # if it is a comment"),
    ],
    "a:": [
        (1, 1, "`a` has no value: write one, or delete the line"),
    ],
    "a:     # later": [
        (1, 1, "`a` has no value: write one, or delete the line"),
    ],
    "{bore: 8,5 mm}": [
        (1, 10, "`5 mm` has no value, because a comma ends an entry: write a decimal with a "
               "point, bore: 8.5 mm"),
    ],
    "{rule: cap-bore, because: tried it, twice, on samples, part: cap}": [
        (1, 37, '`twice` stands alone, because a comma ends the text before it: put the text in '
                'quotes, because: "tried it, twice, on samples"'),
    ],
    "{kind: end cap, bore}": [
        (1, 17, "`bore` has no value: write one, or delete the line"),
    ],
    "a: b: c": [
        (1, 4, '`a: b: c` has one colon too many: put the text in quotes, a: "b: c"'),
    ],
    "title: Ring: the sequel\na: 1": [
        (1, 8, "`title: Ring: the sequel` has one colon too many: put the text in quotes, title: "
               '"Ring: the sequel"'),
    ],
    'a: 3": wide': [
        (1, 4, "`a: 3\": wide` has one colon too many: put the text in quotes, a: '3\": wide'"),
    ],
    "a: it's: so": [
        (1, 4, "`a: it's: so` has one colon too many: put the text in quotes"),
    ],
    "a: 1\n  b: 2": [
        (2, 4, "this line is indented more than the one above, which already has its value: "
               "give both the same indent"),
    ],
    # lists, names and blocks that are empty or too much
    "a:\n  - 1\n  -\n": [
        (3, 4, "this line of the list is empty: write something, or delete it"),
    ],
    "a: [1,, 2]": [
        (1, 7, "something is missing here: write a value"),
    ],
    "a: }": [
        (1, 4, "something is missing here: write a value"),
    ],
    ": 1": [
        (1, 1, "a name is missing before the colon: write one"),
    ],
    "{: 1}": [
        (1, 2, "a name is missing before the colon: write one"),
    ],
    "a: >5\nb: 1": [
        (1, 4, "`a: >` starts an empty block of text: write the text below it, or put "
               "the value in quotes"),
    ],
    "a: |": [
        (1, 4, "`a: |` starts an empty block of text: write the text below it, or put "
               "the value in quotes"),
    ],
    "a: 1\na: 2": [
        (2, 1, "`a` appears twice: keep one"),
    ],
    "a: 1\n\"a\": 2": [
        (2, 1, "`a` appears twice: keep one"),
    ],
    "? [a]\n: 1": [
        (1, 3, "a name must be plain words, not a list or a group"),
    ],
    "?\n: 1": [
        (1, 2, "a name is missing before the colon: write one"),
    ],
    "? |\n  a\n  b\n: 1": [
        (1, 3, "a name must be on one line"),
    ],
    # brackets, quotes, indents and signs
    "a: [1, 2": [
        (1, 4, "a comma or a closing ] is missing: each [ needs its ]"),
    ],
    "a: [b\nc: 1": [
        (1, 4, "a comma or a closing ] is missing: each [ needs its ]"),
    ],
    "a: {b: 1": [
        (1, 4, "a comma or a closing } is missing: each { needs its }"),
    ],
    "a: {b: c d: e}": [
        (1, 11, "a comma or a closing } is missing: each { needs its }"),
    ],
    "a: 'b": [
        (1, 4, "this quote is not closed: close it"),
    ],
    "a: \"b\n---\n": [
        (1, 4, "this quote is not closed: close it"),
    ],
    "a: 'it's'": [
        (1, 8, "there is text after a closing quote or bracket: put the whole text in "
               "quotes"),
    ],
    'a: "b\\q"': [
        (1, 6, "a backslash inside double quotes starts an escape sequence: use single quotes"),
    ],
    'a: "b\\x1bc"': [
        (1, 4, "this text contains a character that cannot be shown (U+001B): delete it"),
    ],
    "\ta: 1": [
        (1, 1, "there is a tab here: indent with spaces"),
    ],
    "a: 1 # b\n\tc: 2": [
        (2, 1, "there is a tab here: indent with spaces"),
    ],
    "a:\n  b: 1\n\tc: 2": [
        (3, 1, "there is a tab here: indent with spaces"),
    ],
    "a: @b": [
        (1, 4, "a text cannot begin with @: put it in quotes"),
    ],
    "a: `b": [
        (1, 4, "a text cannot begin with `: put it in quotes"),
    ],
    "a: %b": [
        (1, 4, "a text cannot begin with %: put it in quotes"),
    ],
    "a: *new*": [
        (1, 4, "a text cannot begin with *: put it in quotes"),
    ],
    "a: > 5 mm": [
        (1, 4, "a text cannot begin with >: put it in quotes"),
    ],
    "a: ? b": [
        (1, 4, "a text cannot begin with ?: put it in quotes"),
    ],
    "a: - b": [
        (1, 4, "a list cannot begin on this line: begin it on the next"),
    ],
    "a:\n    b: 1\n  c: 2": [
        (3, 3, "this line does not line up with the ones above: give it the same indent"),
    ],
    "- a\nb: 1": [
        (2, 1, "this line does not line up with the list above: give it the same indent"),
    ],
    "a: 1\nb\nc: 1": [
        (2, 1, "a colon is missing in or above this line: write `name: value`"),
    ],
    "%YAML 9.9\n---\na: 1": [
        (1, 1, "a plan has no lines with %: delete this one"),
    ],
    "%TAG ! x|y\n---\na: 1": [
        (1, 9, "a plan has no lines with %: delete this one"),
    ],
    "{a: 1}}": [
        (1, 7, "this does not belong to the plan above: delete it, or line it up"),
    ],
    # files that are no plan, or more than one
    "a: 1\n---\nb: 2": [
        (2, 1, "a second plan begins here: put each plan in a file of its own"),
    ],
    "a: 1\n...\nb: 2": [
        (3, 1, "this does not belong to the plan above: delete it, or line it up"),
    ],
    "": [
        (1, 1, "the file is empty: write a plan, or begin one from the README"),
    ],
    "# nothing yet\n": [
        (1, 1, "the file is empty: write a plan, or begin one from the README"),
    ],
    "- a": [
        (1, 1, "a plan is made of named entries: begin with `plan: 1`"),
    ],
    "a": [
        (1, 1, "a plan is made of named entries: begin with `plan: 1`"),
    ],
    "a: b\x07": [
        (1, 5, "a plan cannot contain this character (U+0007): delete it"),
    ],
    "a: b\u2028c": [
        (1, 5, "a plan cannot contain this character (U+2028): delete it"),
    ],
    "a: b\ufeff": [
        (1, 5, "a plan cannot contain this character (U+FEFF): delete it"),
    ],
    # several at once
    "a: 010\nb: 1:30\na: 2": [
        (1, 4, "`a: 010` begins with a zero, which some readers take for another number: write "
               '10, or "010" in quotes if it is text'),
        (2, 4, "`b: 1:30` is a number in base 60 to some readers: write a time with its unit, "
               'such as `90 min`, or "1:30" in quotes if it is text'),
        (3, 1, "`a` appears twice: keep one"),
    ],
    "a: 010\nb: [1": [
        (1, 4, "`a: 010` begins with a zero, which some readers take for another number: write "
               '10, or "010" in quotes if it is text'),
        (2, 4, "a comma or a closing ] is missing: each [ needs its ]"),
    ],
}  # fmt: skip


@pytest.mark.parametrize("text", REFUSED)
def test_refused(text: str) -> None:
    read = read_text(text, "plan.yaml")
    assert read.tree is None
    assert [(f.place.line, f.place.column, f.says) for f in read.faults] == REFUSED[text]
    assert {fault.rule for fault in read.faults} == {"plan-file"}


@pytest.mark.parametrize("text", REFUSED)
def test_refused_in_the_same_words_without_libyaml(
    text: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(parser, "_LOADER", yaml.SafeLoader)
    faults = read_text(text, "plan.yaml").faults
    assert [(f.place.line, f.says) for f in faults] == [(line, s) for line, _, s in REFUSED[text]]


def test_a_repeated_key_points_to_the_first_every_time() -> None:
    faults = read_text("a: 1\nb: 2\na: 3\na: 4", "plan.yaml").faults
    assert [[(place.line, place.column) for place in fault.also] for fault in faults] == [
        [(1, 1)],
        [(1, 1)],
    ]


def test_faults_end_after_fifty() -> None:
    faults = read_text("a: 010\n" + "b:\n" * 1000, "plan.yaml").faults
    assert len(faults) == MAX_FAULTS + 1
    assert faults[-1].says == "there may be more below: fix these first"


def test_a_byte_order_mark_moves_no_column() -> None:
    read = read_text("\ufeffa: 8", "plan.yaml")
    assert read.tree is not None and read.text == "a: 8"
    assert read.tree.entries["a"].node.place == Place("plan.yaml", 1, 4, 1, 5)


def test_a_refused_text_is_handed_on_without_what_steers_a_terminal() -> None:
    assert read_text("a: \x1b[31m\x00", "plan.yaml").text == "a: \ufffd[31m\ufffd"


@pytest.mark.parametrize("open_close", ["[]", "{}"])
def test_nesting_is_taken_to_the_limit_and_refused_beyond(open_close: str) -> None:
    first, last = open_close[0], open_close[1]
    inner = "" if first == "[" else "a: "
    deep = "a: " + (first + inner) * (MAX_DEPTH - 1) + "1" + last * (MAX_DEPTH - 1)
    assert read_text(deep, "plan.yaml").faults == ()
    one_more = "a: " + (first + inner) * MAX_DEPTH + "1" + last * MAX_DEPTH
    (fault,) = read_text(one_more, "plan.yaml").faults
    assert fault.says == "this nests deeper than 64 levels: use fewer"
    assert fault.place.column == 4 + len(first + inner) * (MAX_DEPTH - 1)
    (fault, *_) = read_text("a: " + (first + inner) * 5000, "plan.yaml").faults
    assert fault.says == "this nests deeper than 64 levels: use fewer"


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("a: 8", 8),
        ("a: -8", -8),
        ("a: 0", 0),
        ("a: 1.50", 1.5),
        ("a: no", "no"),
        ("a: yes", "yes"),
        ("a: true", "true"),
        ("a: 11/0", "11/0"),
        ("a: 10 mm", "10 mm"),
        ('a: 1/2"', '1/2"'),
        ("a: '010'", "010"),
        ('a: "no"', "no"),
        ("a: it's", "it's"),
        ("a: 999999999999999", 999999999999999),
        ("a: 0.05", 0.05),
        ("a: \u0663", "\u0663"),
        ("a: 0bead", "0bead"),
        ("a: nan", "nan"),
        ("a: 1:75", "1:75"),
        ("a: 8,5 mm", "8,5 mm"),
        ("a: 2026-11-25 evening", "2026-11-25 evening"),
        ("a: see:here", "see:here"),
        ("a: {cap:left: 8}", {"cap:left": 8}),
        ("a: reed # 8 rows", "reed"),
        ('a: "reed #8"', "reed #8"),
        ("a: reed#8", "reed#8"),
        ('a: "b\\tc"', "b\tc"),
        ("a: |\n  two\n  lines\n", "two\nlines\n"),
        ("a: [b, {c: 1}]", ["b", {"c": 1}]),
    ],
)
def test_values_are_kept_as_they_are_written(text: str, value: object) -> None:
    read = read_text(text, "plan.yaml")
    assert read.faults == () and read.tree is not None
    assert read.tree.value == {"a": value}


TEXT = """\
parts:
  cap: {kind: end cap, bore: 8 mm}
  rope:
    kind: "woven rope"   # a comment
    length: 40 cm

work:
  - {do: weave}
  - do: glue
    part: cap
run: [cap, 'rope']
"""


def slices(node: Node) -> list[str]:
    place = node.place
    start = offset(TEXT, place.line, place.column)
    found = [TEXT[start : offset(TEXT, place.end_line, place.end_column)]]
    if isinstance(node, Mapping):
        for entry in node.entries.values():
            found += [*slices(entry.key), *slices(entry.node)]
    if isinstance(node, Sequence):
        for item in node.items:
            found += slices(item)
    return found


def test_places_cover_just_the_source_text() -> None:
    tree = read_text(TEXT, "plan.yaml").tree
    assert tree is not None
    found = slices(tree)
    assert found[0] == TEXT.rstrip("\n")
    for piece in (
        "{kind: end cap, bore: 8 mm}",
        'kind: "woven rope"   # a comment\n    length: 40 cm',
        '"woven rope"',
        "40 cm",
        "{do: weave}",
        "do: glue\n    part: cap",
        "[cap, 'rope']",
        "'rope'",
    ):
        assert piece in found


def pieces(node: Node) -> list[Scalar]:
    """Every name, word, number and text of a tree."""
    if isinstance(node, Mapping):
        inner = [part for entry in node.entries.values() for part in (entry.key, entry.node)]
    else:
        inner = node.items if isinstance(node, Sequence) else []
    own = [node] if isinstance(node, Scalar) else []
    return own + [piece for part in inner for piece in pieces(part)]


SCRAPS = [
    *("a", "b: ", "c: ", "- ", "[", "]", "{", "}", ", ", "\n", "\n  ", "\r\n", " ", "'", '"', "''"),
    *(" # x", "|\n  ", "? ", "8 mm", "1.5", "\\x41", "\u00e9", "\U0001d7d8"),
]


@settings(max_examples=400)
@given(st.lists(st.sampled_from(SCRAPS), max_size=14))
def test_a_word_or_text_is_what_stands_at_its_place(scraps: list[str]) -> None:
    text = "a: 8\n" + "".join(scraps)
    tree = read_text(text, "plan.yaml").tree
    for piece in pieces(tree) if tree else []:
        place = piece.place
        start = offset(text, place.line, place.column)
        source = text[start : offset(text, place.end_line, place.end_column)]
        assert source == source.strip()
        if source[0] != "|":
            assert yaml.load(f"- {source}", Loader=yaml.BaseLoader) == [piece.text]


@pytest.mark.parametrize("behind", ["\nb: 8", "\n\n\nb: 8", "\n", ""])
def test_replacing_a_block_of_text_leaves_the_next_line(behind: str) -> None:
    text = f"a: |\n  one\n  two{behind}"
    tree = read_text(text, "plan.yaml").tree
    assert tree is not None
    assert replaced(text, [(tree.entries["a"].node.place, "three")]) == f"a: three{behind}"


@given(st.text(alphabet="0179_.+-:xobeE TtZnaNulif~", min_size=1, max_size=12))
def test_no_value_differs_from_what_another_reader_takes_it_for(word: str) -> None:
    """Yes/no words aside: they stay text, and what they may mean is asked later."""
    tree = read_text(f"a: {word}", "plan.yaml").tree
    if tree is not None:
        other = yaml.safe_load(f"a: {word}")["a"]
        assert isinstance(other, bool) or tree.value["a"] == other


@given(st.text(alphabet="ab\n\r ", max_size=30), st.data())
def test_replacing_a_place_changes_that_stretch_and_no_other(
    text: str, data: st.DataObject
) -> None:
    lines = text.replace("\r\n", "\n").replace("\r", "\n").split("\n")
    line = data.draw(st.integers(1, len(lines)))
    column = data.draw(st.integers(1, len(lines[line - 1]) + 1))
    start = offset(text, line, column)
    assert replaced(text, [(Place("p", line, column, line, column), "X")]) == (
        text[:start] + "X" + text[start:]
    )


@given(st.integers(1 - 10**15, 10**15 - 1))
def test_whole_numbers_keep_their_value(number: int) -> None:
    tree = read_text(f"a: {number}", "plan.yaml").tree
    assert tree is not None and tree.value == {"a": number}


@settings(max_examples=200)
@given(st.from_regex(r"-?(0|[1-9][0-9]{0,14})\.[0-9]{1,20}", fullmatch=True))
def test_decimal_numbers_keep_their_value(number: str) -> None:
    tree = read_text(f"a: {number}", "plan.yaml").tree
    assert tree is not None and tree.value == {"a": float(number)}


@given(st.from_regex(r"[a-z][a-z ]{0,20}[a-z]", fullmatch=True))
def test_plain_words_keep_their_text(words: str) -> None:
    read = read_text(f"a: {words}", "plan.yaml")
    if words == "null":
        assert read.faults
    else:
        assert read.tree is not None and read.tree.value == {"a": words}
