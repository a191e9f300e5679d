"""Files that are no plans: each is a result with one plain sentence, and never a crash."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest
import yaml
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from generated.survives import inside
from running import Run
from turns import ALL_OF_THEM
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import Result
from wellstrung.reading import parser
from wellstrung.reading.parser import MAX_BYTES, read, read_text
from wellstrung.report.text import write
from wellstrung.report.writer import Options


def written(data: bytes) -> Callable[[Path], object]:
    return lambda path: path.write_bytes(data)


FILES: dict[str, tuple[Callable[[Path], object], str]] = {
    "missing": (lambda path: None, "`{}` cannot be read: no such file or directory"),
    "a link to nothing": (
        lambda path: path.symlink_to("nothing"),
        "`{}` cannot be read: no such file or directory",
    ),
    "a link to itself": (
        lambda path: path.symlink_to(path),
        "`{}` cannot be read: too many levels of symbolic links",
    ),
    "a device": (
        lambda path: path.symlink_to("/dev/zero"),
        "`{}` is not a regular file: name a plan",
    ),
    "a folder": (Path.mkdir, "`{}` is not a regular file: name a plan"),
    "a pipe": (os.mkfifo, "`{}` is not a regular file: name a plan"),
    "larger than 4 MB": (
        written(b"a: 1\n" + b"#" * MAX_BYTES),
        "`{}` is larger than 4 MB, more than any plan needs",
    ),
    "UTF-16": (
        written("plan: 1".encode("utf-16")),
        "`{}` is written in UTF-16: save it as UTF-8",
    ),
    "UTF-16, unmarked": (
        written("plan: 1".encode("utf-16-be")),
        "`{}` is written in UTF-16: save it as UTF-8",
    ),
    "UTF-32": (
        written("plan: 1".encode("utf-32")),
        "`{}` is written in UTF-32: save it as UTF-8",
    ),
    "UTF-32, unmarked": (
        written("plan: 1".encode("utf-32-be")),
        "`{}` is written in UTF-32: save it as UTF-8",
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
    assert result.outcome == "not checked yet"
    assert [(remark.rule, remark.says) for remark in result.remarks] == [
        ("plan-file", says.format(path))
    ]


@pytest.mark.skipif(os.geteuid() == 0, reason="root may read every file")
def test_a_file_that_may_not_be_read(tmp_path: Path) -> None:
    path = tmp_path / "plan.yaml"
    path.write_text("plan: 1")
    path.chmod(0)
    (fault,) = read(path).faults
    assert fault.says == f"`{path}` cannot be read: permission denied"


def test_a_plan_of_just_4_mb_is_read(tmp_path: Path) -> None:
    path = tmp_path / "plan.yaml"
    path.write_bytes(b"a: 1\n".ljust(MAX_BYTES, b"#"))
    assert read(path).faults == ()


def test_bytes_that_are_no_text_are_pointed_to(tmp_path: Path) -> None:
    path = tmp_path / "plan.yaml"
    path.write_bytes(b"\xef\xbb\xbfplan: 1\rtitle: caf\xe9 \xc3\xa9\x1b")
    bad = read(path)
    (fault,) = bad.faults
    assert fault.place[1:] == (2, 11, 2, 12)
    assert bad.text == "plan: 1\rtitle: caf\ufffd \u00e9\ufffd"


def test_a_name_that_steers_a_terminal_is_spelt_out(tmp_path: Path) -> None:
    path = Path(os.fsdecode(bytes(tmp_path) + b"/\xff\x1b[31m.yaml"))
    assert read(path).file == f"{tmp_path}/\\udcff\\x1b[31m.yaml"


@pytest.mark.parametrize("name", ["-", "/dev/stdin"])
def test_one_plan_is_read_from_standard_input(name: str, tmp_path: Path) -> None:
    (tmp_path / "bench.yaml").write_text("bench: 1\n")
    ran = subprocess.run(
        [sys.executable, "-m", "wellstrung", "check", name, "-", "/dev/stdin", "--as", "json"],
        input=Path("tests/plans/slack_tide_collar.yaml").read_bytes(),
        cwd=tmp_path,
        capture_output=True,
        check=False,
    )
    (plan,) = json.loads(ran.stdout)["plans"]
    assert ran.returncode == 0 and plan["title"] == "Slack Tide collar"
    assert (plan["file"], plan["bench"]) == ("standard input", "bench.yaml")


def test_standard_input_that_is_closed_is_said(tmp_path: Path) -> None:
    line = f"{sys.executable} -m wellstrung check - <&-"
    ran = subprocess.run(line, shell=True, capture_output=True, text=True, check=False)
    assert ran.returncode == 1 and ran.stderr == ""
    assert "`standard input` cannot be read: it is closed" in ran.stdout


def test_a_plan_that_steers_a_terminal_is_shown_without(run: Run, tmp_path: Path) -> None:
    plan = tmp_path / "plan.yaml"
    plan.write_text("plan: 1\ntitle: a\x1b[31mb")
    ran = run("check", plan)
    assert ran.code == 1 and "\x1b" not in ran.out + ran.err
    assert "(U+001B)" in ran.out


@pytest.mark.parametrize("sign", ["\\x1b", "\\a", "\\x9b", "\\0", "\\u2028", "\\u202e", "\\ud800"])
def test_names_with_signs_that_cannot_be_shown_reach_no_terminal(
    sign: str, tmp_path: Path, checker: Checker
) -> None:
    """An escape in quotes is how a plan can hold them."""
    name, plan = f'"r{sign}[2Jow"', tmp_path / "plan.yaml"
    plan.write_text(
        f'plan: 1\ntitle: "Tide {sign}[31m"\npiece: bracelet\nmaker: "{sign}]0;own"\n'
        f"beads: {{reed: {{type: round, size: 8/0, make: Japanese, colour: {name}}}}}\n"
        f"parts: {{{name}: {{kind: strand, stitch: strung, beads: reed, count: 60}}}}\n"
        f"run: [{name}]\nhung: [{{part: {name}, from: {name}}}]\nsupplies: [{{bead: {name}}}]\n"
    )
    result = checker.check_file(plan)
    assert result.remarks and not result.failures
    shown = write(Result((result,)), Options(80)).replace("\n", "")
    assert shown.isprintable()


def test_a_byte_order_mark_is_taken(tmp_path: Path) -> None:
    path = tmp_path / "plan.yaml"
    path.write_bytes(b"\xef\xbb\xbfplan: 1")
    assert read(path).faults == ()


def test_a_bad_file_leaves_the_others_their_report(run: Run, tmp_path: Path) -> None:
    (tmp_path / "bad.yaml").write_bytes(b"\xff\xfe\x00")
    good = tmp_path / "good.yaml"
    good.write_bytes(Path("tests/plans/slack_tide_collar.yaml").read_bytes())
    ran = run("check", tmp_path, tmp_path / "missing.yaml")
    assert ran.code == 1
    assert "Slack Tide collar" in ran.out and ran.out.count("NOT CHECKED YET") == 2
    assert "Traceback" not in ran.out + ran.err


BOMBS = {
    "brackets": "a: " + "[" * 200_000,
    "braces": "a: " + "{b: " * 100_000,
    "dashes": "- " * 100_000,
    "laughs": "a: &a [x, x]\nb: &b [*a, *a]\nc: &c [*b, *b]\nd: [*c, *c]\n",
    "one long line": "a: " + "x" * 3_000_000,
    "many keys": "".join(f"k{n}: 1\n" for n in range(20_000)),
    "many empty lines of a list": "a:\n" + "-\n" * 500_000,
    "many quotes": "a: " + '"' * 9_999,
    "deep indents": "".join(" " * n + f"k{n}:\n" for n in range(500)),
}


@pytest.mark.slow
@pytest.mark.parametrize("name", BOMBS)
def test_bombs_are_refused_or_told_in_the_usual_way(name: str, checker: Checker) -> None:
    result = checker.check_text(BOMBS[name])
    assert result.remarks and result.outcome in ("not checked yet", "not makeable")


SCRAPS = [
    *("a", "b: ", ": ", "- ", "[", "]", "{", "}", ",", "\n", "\n  ", "\r", "\r\n", "\t", "'", '"'),
    *("#", " #8", " # x", "|\n", "|2\n", "> ", "&x ", "*x ", "!t ", "? ", "<<: ", "---\n", "...\n"),
    *("010", "1:30", "0x1f", "-.5", "~", "=", "%", "@", "`", "\\", "\\U00110000", "8 mm", "\u00e9"),
]


@pytest.mark.parametrize("loader", ["libyaml", "no libyaml"])
@settings(max_examples=400, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    text=st.one_of(st.text(max_size=200), st.lists(st.sampled_from(SCRAPS)).map("".join)),
    sound=st.booleans(),
)
def test_no_text_raises_and_faults_lie_inside_it(
    monkeypatch: pytest.MonkeyPatch, loader: str, text: str, sound: bool
) -> None:
    if loader == "no libyaml":
        monkeypatch.setattr(parser, "_LOADER", yaml.SafeLoader)
    done = read_text("a: 1\n" * sound + text, "plan.yaml")
    assert (done.tree is None) == bool(done.faults)
    for fault in done.faults:
        assert all(inside(done.text, place) for place in (fault.place, *fault.also))


@settings(max_examples=200)
@given(st.binary(max_size=200))
def test_no_bytes_raise(data: bytes) -> None:
    path = Path(os.environ.get("TMPDIR", "/tmp")) / f"wellstrung-{os.getpid()}.yaml"
    path.write_bytes(data)
    try:
        done = read(path)
        assert done.file == str(path)
        assert all(inside(done.text, fault.place) for fault in done.faults)
    finally:
        path.unlink()


_HEAD = "plan: 1\ntitle: Tag\npiece: bracelet\n"
#: plans that broke a stage once, found by changing right ones
ONCE = {
    "no drawer, a bead of no size": "drawer: drawer.yaml\nbeads: {a: {type: round, size: 6/3}}\n"
    "parts: {b: {from: c}, d: {kind: strand, stitch: strung, beads: a, count: 3}}\n",
    "no drawer, a kind that is none": "drawer: drawer.yaml\nbeads: {a: {type: round}}\n"
    "parts: {b: {from: c}, d: {kind: woven stitch}}\nhung: [{from: d}]\n",
    "beads that have no names": "beads: {a: {type: round, size: 8/0}}\nwork: [string d]\n"
    "parts: {d: {kind: strand, stitch: strung, beads: [{}, [], a], count: 3}}\n",
    "beads that are a number": "beads: {a: {type: round, size: 8/0}}\nwork: [string d]\n"
    "parts: {d: {kind: strand, stitch: strung, beads: 2.5, count: 3}}\n",
}


@pytest.mark.parametrize("name", ONCE)
def test_what_broke_once_does_not_again(name: str, checker: Checker) -> None:
    result = checker.check_text(_HEAD + ONCE[name])
    assert result.remarks and not result.failures


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


@pytest.mark.slow
@settings(
    max_examples=150 if ALL_OF_THEM else 75,
    deadline=None,  # a remark or two more, each with a remedy to be tried, is no crash
    suppress_health_check=[HealthCheck.function_scoped_fixture],
)
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
