"""Reading: every refusal names its line and what to write, and every value keeps its place."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from wellstrung.place import Place
from wellstrung.reading import MAX_DEPTH, Mapping, Node, Sequence, offset, read_text, replaced

REFUSED: dict[str, list[tuple[int, int, str]]] = {
    "a: 010": [
        (1, 4, "`010` begins with a zero, which some readers take for another number: write 10, or"
               ' "010" if it is text'),
    ],
    "a: 1_000": [(1, 4, "`1_000` has an underline inside a number: write 1000")],
    "a: 0x1f": [
        (1, 4, "`0x1f` is a number in another base to some readers: write it in tens, or"
               ' "0x1f" if it is text'),
    ],
    "a: 1e3": [
        (1, 4, "`1e3` is a number to some readers and text to others: write it out in full"),
    ],
    "a: .5": [(1, 4, "`.5` has no figure before its point: write 0.5")],
    "a: 5.": [(1, 4, "`5.` has no figure after its point: write 5.0")],
    "a: +5": [(1, 4, "`+5` needs no plus sign: write 5")],
    "a: 1:30": [
        (1, 4, "`1:30` is a number in sixties to some readers: write a time with its unit, such as"
               ' `90 min`, or "1:30" if it is text'),
    ],
    "a: 2026-11-25": [(1, 4, '`2026-11-25` is a date to some readers: write "2026-11-25"')],
    "a: .nan": [(1, 4, "`.nan` is not a number that can be measured: write a figure")],
    "a: -.inf": [(1, 4, "`-.inf` is not a number that can be measured: write a figure")],
    "a: NaN": [(1, 4, "`NaN` is not a number that can be measured: write a figure")],
    "a: ~": [(1, 4, "`~` stands for nothing: write a value, or take the line out")],
    "a: null": [(1, 4, "`null` stands for nothing: write a value, or take the line out")],
    "<<: {b: 1}": [(1, 1, '`<<` has a meaning of its own in YAML: write "<<" if it is text')],
    "a: &one 1\nb: *one": [
        (1, 4, "`&one` marks a place to repeat: take it out, parts have names"),
        (2, 4, "`*one` repeats another place: write it out, parts have names"),
    ],
    "a: !!str 8": [(1, 4, "`!!str` is a tag: take it out, plain words and numbers will do")],
    "a:1": [(1, 1, "`a:1` lacks a space after the colon: write `a: 1`")],
    "b: 2\na:1\nc: 3": [(2, 1, "`a:1` lacks a space after the colon: write `a: 1`")],
    "a: {b:1, c: 2}": [(1, 5, "`b:1` lacks a space after the colon: write `b: 1`")],
    "a: #8": [
        (1, 1, "`a` has no value: write one, or take the line out; after a space, `#` begins a"
               " comment, so put a text that holds it in quotes"),
    ],
    "a: [1,, 2]": [(1, 7, "something is missing here: write a value")],
    "a:\n  - 1\n  -\n": [(3, 4, "this line of the list is empty: write something, or take it out")],
    "a: 1\na: 2": [(2, 1, "`a` is there twice: keep one")],
    "a: [1, 2": [(1, 1, "a comma or a closing ] is missing: each [ needs its ]")],
    "a: {b: 1": [(1, 1, "a comma or a closing } is missing: each { needs its }")],
    "a: 'b": [(1, 6, "the file ends inside quotes or brackets: close them")],
    "a: b: c": [(1, 5, "there is a colon too many here: put text that holds `: ` in quotes")],
    "\ta: 1": [
        (1, 1, "a tab or a sign such as @ or ` begins a value: indent with spaces, or put the text"
               " in quotes"),
    ],
    "a: 1\n---\nb: 2": [(2, 1, "a second plan begins here: put each plan in a file of its own")],
    "": [(1, 1, "the file is empty: write a plan, or begin one from the README")],
    "# nothing yet\n": [(1, 1, "the file is empty: write a plan, or begin one from the README")],
    "- a": [(1, 1, "a plan is made of named entries: begin with `plan: 1`")],
    "? [a]\n: 1": [(1, 3, "a name must be plain words, not a list or a group")],
    "a: b\x07": [(1, 5, "there is a character here that YAML forbids (U+0007): take it out")],
    "a: 010\nb: 1:30\na: 2": [
        (1, 4, "`010` begins with a zero, which some readers take for another number: write 10, or"
               ' "010" if it is text'),
        (2, 4, "`1:30` is a number in sixties to some readers: write a time with its unit, such as"
               ' `90 min`, or "1:30" if it is text'),
        (3, 1, "`a` is there twice: keep one"),
    ],
}  # fmt: skip


@pytest.mark.parametrize("text", REFUSED)
def test_refused(text: str) -> None:
    read = read_text(text, "plan.yaml")
    assert read.tree is None
    assert [(f.place.line, f.place.column, f.says) for f in read.faults] == REFUSED[text]
    assert {fault.rule for fault in read.faults} == {"plan-file"}


def test_a_repeated_key_points_to_the_first_as_well() -> None:
    (fault,) = read_text("a: 1\nb: 2\na: 3", "plan.yaml").faults
    assert [(place.line, place.column) for place in fault.also] == [(1, 1)]


@pytest.mark.parametrize("open_close", ["[]", "{}"])
def test_nesting_is_taken_to_the_limit_and_refused_beyond(open_close: str) -> None:
    first, last = open_close[0], open_close[1]
    inner = "" if first == "[" else "a: "
    deep = "a: " + (first + inner) * (MAX_DEPTH - 1) + "1" + last * (MAX_DEPTH - 1)
    assert read_text(deep, "plan.yaml").faults == ()
    (fault, *_) = read_text("a: " + (first + inner) * 5000, "plan.yaml").faults
    assert fault.says == "this nests deeper than 64: a plan is flat"


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


@given(st.integers(-(10**15), 10**15))
def test_whole_numbers_keep_their_value(number: int) -> None:
    tree = read_text(f"a: {number}", "plan.yaml").tree
    assert tree is not None and tree.value == {"a": number}


@given(st.from_regex(r"[a-z][a-z ]{0,20}[a-z]", fullmatch=True))
def test_plain_words_keep_their_text(words: str) -> None:
    read = read_text(f"a: {words}", "plan.yaml")
    if words in ("null", "nan"):
        assert read.faults
    else:
        assert read.tree is not None and read.tree.value == {"a": words}
