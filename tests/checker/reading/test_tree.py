"""Reading: every refusal names its line and what to write, and every value keeps its place."""

from __future__ import annotations

from pathlib import Path

import pytest
import yaml
from hypothesis import example, given, settings
from hypothesis import strategies as st

from running import Pinned, entries, pinned_at
from wellstrung.common.places import Place
from wellstrung.reading import parser
from wellstrung.reading.builder import MAX_FAULTS
from wellstrung.reading.parser import read_text
from wellstrung.reading.tree import Mapping, Node, Scalar, Sequence, offset, replaced
from wellstrung.reading.yaml_errors import MAX_DEPTH

REFUSED = Path(__file__).with_name("refused.yaml")


def refused(text: str, *, columns: bool = True) -> list[str]:
    """The messages for a text that is no plan, with their places."""
    read = read_text(text, "plan.yaml")
    assert read.tree is None and {fault.rule for fault in read.faults} == {"plan-file"}
    return [
        f"{fault.place.line}:{fault.place.column if columns else ''} {fault.says}"
        for fault in read.faults
    ]


def test_refused(pinned: Pinned) -> None:
    """Each text with every fault, word for word."""
    pinned_at(REFUSED, "faults", lambda entry: "\n".join(refused(entry["text"])), pinned)


@pytest.mark.parametrize("text", [entry["text"] for entry in entries(REFUSED)])
def test_refused_in_the_same_words_without_libyaml(
    text: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    quick = refused(text, columns=False)
    monkeypatch.setattr(parser, "_LOADER", yaml.SafeLoader)
    assert refused(text, columns=False) == quick


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
@example(['"', "{", '"', '"'])
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


def test_a_letter_with_an_accent_is_one_letter_however_it_is_written() -> None:
    read = read_text("plan: 1\nco\u0302ne: o\u0302\n", "plan.yaml")
    assert read.tree is not None
    assert read.tree.value == {"plan": 1, "c\u00f4ne": "\u00f4"}
    assert read.tree.entries["c\u00f4ne"].node.place == Place("plan.yaml", 2, 8, 2, 10)


@pytest.mark.parametrize(
    ("text", "place"),
    [("plan: 1\n{}: 3\n", (2, 1)), ("plan: 1\nbeads:\n  {}: 8/0\n", (3, 3))],
)
@pytest.mark.parametrize(("signs", "read"), [(1024, True), (1025, False), (10_000, False)])
def test_a_name_as_long_as_yaml_lets_it_be(
    text: str, place: tuple[int, int], signs: int, read: bool
) -> None:
    found = parser.read_text(text.format("a" * signs), "plan.yaml").faults
    says = f"this name is {signs:,} signs long, and a name has at most 1,024: shorten it"
    assert [(one.says, one.place[1:3]) for one in found] == ([] if read else [(says, place)])


def test_in_braces_a_name_that_is_too_long_is_said_so() -> None:
    [found] = parser.read_text(f"beads: {{{'a' * 1025}: 8/0}}\n", "plan.yaml").faults
    assert found.says == "this name is 1,025 signs long, and a name has at most 1,024: shorten it"
