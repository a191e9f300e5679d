"""Files that are no plans: each is a result with one plain sentence, and never a crash."""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from running import Run
from wellstrung.checking import Checker
from wellstrung.reading import MAX_BYTES, read, read_text


def written(data: bytes) -> Callable[[Path], object]:
    return lambda path: path.write_bytes(data)


FILES: dict[str, tuple[Callable[[Path], object], str]] = {
    "missing": (lambda path: None, "`{}` cannot be read: no such file or directory"),
    "a folder": (Path.mkdir, "`{}` is not a regular file: name a plan file"),
    "a pipe": (os.mkfifo, "`{}` is not a regular file: name a plan file"),
    "larger than 4 MB": (
        written(b"a: 1\n" + b"#" * MAX_BYTES),
        "`{}` is larger than 4 MB: a plan is one piece",
    ),
    "UTF-16": (
        written("plan: 1".encode("utf-16")),
        "`{}` is written in UTF-16: save it as UTF-8",
    ),
    "Latin-1": (
        written("plan: 1\ntitle: caf\u00e9".encode("latin-1")),
        "`{}` is not UTF-8 in line 2: save it as UTF-8",
    ),
}


@pytest.mark.parametrize("name", FILES)
def test_no_plan(name: str, tmp_path: Path, checker: Checker) -> None:
    make, says = FILES[name]
    path = tmp_path / "plan.yaml"
    make(path)
    result = checker.check_file(path)
    assert result.outcome == "unreadable"
    assert [(remark.rule, remark.says) for remark in result.remarks] == [
        ("plan-file", says.format(path))
    ]


def test_a_byte_order_mark_is_taken(tmp_path: Path) -> None:
    path = tmp_path / "plan.yaml"
    path.write_bytes(b"\xef\xbb\xbfplan: 1")
    assert read(path).faults == ()


def test_a_bad_file_leaves_the_others_their_report(run: Run, tmp_path: Path) -> None:
    (tmp_path / "bad.yaml").write_bytes(b"\xff\xfe\x00")
    good = tmp_path / "good.yaml"
    good.write_bytes(Path("sample_plans/slack_tide_collar.yaml").read_bytes())
    ran = run("check", tmp_path, tmp_path / "missing.yaml")
    assert ran.code == 1
    assert "Slack Tide collar" in ran.out and ran.out.count("UNREADABLE") == 2
    assert "Traceback" not in ran.out + ran.err


BOMBS = {
    "brackets": "a: " + "[" * 200_000,
    "braces": "a: " + "{b: " * 100_000,
    "dashes": "- " * 100_000,
    "laughs": "a: &a [x, x]\nb: &b [*a, *a]\nc: &c [*b, *b]\nd: [*c, *c]\n",
    "one long line": "a: " + "x" * 3_000_000,
    "many keys": "".join(f"k{n}: 1\n" for n in range(20_000)),
    "many quotes": "a: " + '"' * 9_999,
    "deep indents": "".join(" " * n + f"k{n}:\n" for n in range(500)),
}


@pytest.mark.parametrize("name", BOMBS)
def test_bombs_are_refused_or_told_in_the_usual_way(name: str, checker: Checker) -> None:
    result = checker.check_text(BOMBS[name])
    assert result.remarks and result.outcome in ("unreadable", "not makeable")


def inside(text: str, line: int, column: int) -> bool:
    lines = text.splitlines() or [""]
    return 1 <= line <= len(lines) + 1 and column >= 1


@settings(max_examples=300, suppress_health_check=[HealthCheck.too_slow])
@given(st.text(max_size=200))
def test_no_text_raises_and_faults_lie_inside_it(text: str) -> None:
    for fault in read_text(text, "plan.yaml").faults:
        assert inside(text, fault.place.line, fault.place.column)


@settings(max_examples=200)
@given(st.binary(max_size=200))
def test_no_bytes_raise(data: bytes) -> None:
    path = Path(os.environ.get("TMPDIR", "/tmp")) / f"wellstrung-{os.getpid()}.yaml"
    path.write_bytes(data)
    try:
        assert read(path).file == str(path)
    finally:
        path.unlink()


words = st.sampled_from(
    ["plan", "parts", "run", "cap", "kind", "end cap", "bore", "8 mm", "8", "no", "010", "~", "x:y"]
)
yamlish = st.recursive(
    words,
    lambda inner: st.one_of(
        st.lists(inner, max_size=3).map(lambda items: "[" + ", ".join(items) + "]"),
        st.lists(st.tuples(words, inner), max_size=3).map(
            lambda pairs: "{" + ", ".join(f"{key}: {value}" for key, value in pairs) + "}"
        ),
    ),
    max_leaves=8,
)


@settings(max_examples=200, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(st.lists(st.tuples(words, yamlish), max_size=6))
def test_nothing_that_looks_like_a_plan_breaks_a_stage(
    checker: Checker, pairs: list[tuple[str, str]]
) -> None:
    text = "".join(f"{key}: {value}\n" for key, value in pairs)
    result = checker.check_text(text)
    assert result.remarks and not result.failures


@settings(max_examples=150, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(st.data())
def test_a_plan_with_something_torn_out_breaks_no_stage(
    checker: Checker, collar: str, data: st.DataObject
) -> None:
    """Cut a stretch out of a right plan, or put a stretch of it elsewhere."""
    start = data.draw(st.integers(0, len(collar) - 1))
    end = data.draw(st.integers(start, min(len(collar), start + 40)))
    put = data.draw(st.integers(0, len(collar)))
    torn = collar[:start] + collar[end:]
    moved = torn[:put] + collar[start:end] + torn[put:]
    for text in (torn, moved):
        assert not checker.check_text(text).failures
