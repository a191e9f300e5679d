"""Which file is a plan, a bench or a drawer, and what is noted of the others."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from running import Run
from wellstrung.commands.files import holds, nearest_bench, plans

PLAN = "plan: 1\ntitle: Ring\npiece: pendant\nparts: {drop: {kind: pendant}}\n"
BENCH = "bench: 1\nlimits: {cap loose: 2 mm}\n"
DRAWER = "drawer: 1\nparts: {cap: {kind: end cap, bore: 8 mm}}\n"
UNUSED = "{file} is a bench file and is not used: call it bench.yaml, or give it as --bench"


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        (PLAN, "plan"),
        (BENCH, "bench"),
        (DRAWER, "drawer"),
        ("\ufeff# mine\n---\nplan: 1\n", "plan"),
        ("title: Ring\nplan: 1\n", "plan"),
        ("drawer: drawer.yaml\nplan: 1\n", "plan"),
        ("maker: Tamsin\nbench: 1\n", "bench"),
        ("'drawer' : 1\n", "drawer"),
        ('{"plan": 1, "title": "Ring"}\n', "plan"),
        ('{\n  "bench": 1\n}\n', "bench"),
        ("bench:1\n", None),
        ("title: Ring\nnote: |\n  plan: 1\n", None),
        ("- plan: 1\n", None),
        ("", None),
        (": : :\n", None),
    ],
)
def test_a_key_says_what_a_file_holds(text: str, expected: str | None, tmp_path: Path) -> None:
    file = tmp_path / "bench.yaml"  # its name does not matter
    file.write_text(text, encoding="utf-8")
    assert holds(file) == expected


def test_what_is_no_file_holds_nothing(tmp_path: Path) -> None:
    assert holds(tmp_path) is holds(tmp_path / "none.yaml") is holds(tmp_path / ("a" * 300)) is None


#: a file beside one plan, whether it counts as a plan, and the note on it
BESIDE: dict[str, tuple[str | bytes, bool, str]] = {
    "bench.yaml": (BENCH, False, ""),
    "workbench.yaml": (PLAN, True, ""),
    "my drawer.yaml": (PLAN, True, ""),
    "brass.yaml": (DRAWER, False, ""),
    "deep/brass.yml": (DRAWER, False, ""),
    "mine.yaml": (BENCH, False, UNUSED),
    "bench.yml": (BENCH, False, UNUSED),
    "unclosed.yaml": ("plan: 1\nparts: {cap: {\n", True, ""),
    "slipped.yaml": (": : :\n", True, ""),
    "empty.yaml": ("", True, ""),
    "wide.yaml": ("plan: 1".encode("utf-16"), True, ""),
    "keyless.yaml": ("title: Ring\npiece: pendant\nparts: {}\n", True, ""),
    "class.yaml": (
        "students: [Orla]\n",
        False,
        "{file} is not a plan: skipped; it has `students:`, a plan begins with `plan: 1`",
    ),
    "shopping.yaml": (
        "- milk\n",
        False,
        "{file} is not a plan: skipped; it has no names, a plan begins with `plan: 1`",
    ),
    "notes.txt": ("milk", False, ""),
}


@pytest.mark.parametrize("name", BESIDE)
def test_what_lies_in_a_folder_is_a_plan_or_is_noted(
    name: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    text, is_plan, says = BESIDE[name]
    file = tmp_path / name
    file.parent.mkdir(exist_ok=True)
    file.write_bytes(text if isinstance(text, bytes) else text.encode())
    (tmp_path / "ring.yaml").write_text(PLAN, encoding="utf-8")
    assert set(plans([tmp_path])) == {tmp_path / "ring.yaml", *([file] if is_plan else [])}
    expected = f"wellstrung: {says.format(file=file)}\n" if says else ""
    assert capsys.readouterr().err == expected


def test_a_bench_that_is_named_is_used_whatever_it_is_called(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "mine.yaml").write_text(BENCH, encoding="utf-8")
    assert list(plans([tmp_path], bench_is_named=True)) == []
    assert capsys.readouterr().err == ""


def test_a_bench_or_a_drawer_named_as_a_plan_is_skipped_and_noted(run: Run, tmp_path: Path) -> None:
    for name, text in (("bench.yaml", BENCH), ("brass.yaml", DRAWER), ("ring.yaml", PLAN)):
        (tmp_path / name).write_text(text, encoding="utf-8")
    skipped = (
        "wellstrung: bench.yaml is a bench file, not a plan: skipped;"
        " give it as --bench bench.yaml\n"
        "wellstrung: brass.yaml is a drawer, not a plan: skipped;"
        " give it as --drawer brass.yaml\n"
    )
    ran = run("check", "bench.yaml", "brass.yaml", "ring.yaml", "--as", "json", cwd=tmp_path)
    (plan,) = json.loads(ran.out)["plans"]
    assert plan["file"] == "ring.yaml" and plan["bench"] == "bench.yaml" and ran.err == skipped
    ran = run("check", "bench.yaml", "brass.yaml", cwd=tmp_path)
    none = "wellstrung: there is no plan (a .yaml file that begins with `plan: 1`) here\n"
    assert (ran.code, ran.out, ran.err) == (2, "", skipped + none)


def test_a_plan_that_cannot_be_read_is_reported_from_a_folder(run: Run, tmp_path: Path) -> None:
    (tmp_path / "slipped.yaml").write_text("plan: 1\ntitle: [\n", encoding="utf-8")
    ran = run("check", tmp_path)
    assert ran.code == 1 and "NOT CHECKED YET" in ran.out


def test_a_folder_that_cannot_be_opened_is_noted(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "shut").mkdir()
    (tmp_path / "plan.yaml").write_text(PLAN, encoding="utf-8")
    monkeypatch.setattr("os.access", lambda path, mode: Path(path).name != "shut")
    assert [*plans([tmp_path])] == [tmp_path / "plan.yaml"]
    says = f"{tmp_path / 'shut'} cannot be opened: its plans are not checked"
    assert capsys.readouterr().err == f"wellstrung: {says}\n"


@pytest.mark.parametrize("command", ["check", "mend", "sheet"])
def test_an_empty_name_is_no_folder(run: Run, tmp_path: Path, command: str) -> None:
    ran = run(command, "", cwd=tmp_path)
    assert ran.code == 2
    assert ran.err.endswith("PLAN: the name is empty: name a file, or `.` for this folder\n")


def test_a_plan_called_bench_is_no_bench(run: Run, tmp_path: Path) -> None:
    folder = tmp_path / "class"
    folder.mkdir()
    (tmp_path / "bench.yaml").write_text(BENCH, encoding="utf-8")
    (folder / "bench.yaml").write_text(PLAN, encoding="utf-8")
    (plan,) = json.loads(run("check", "class", "--as", "json", cwd=tmp_path).out)["plans"]
    assert (plan["file"], plan["bench"]) == ("class/bench.yaml", "bench.yaml")


def test_each_folder_is_looked_into_once_and_up_to_the_root(tmp_path: Path) -> None:
    seen: dict[str, bool] = {}
    plan = tmp_path / "a" / "plan.yaml"
    above = [str(folder) for folder in (plan, *plan.parents)][1:]
    if nearest_bench(str(plan), seen) is None:
        assert list(seen) == above
    seen = dict.fromkeys(seen, False) | {str(tmp_path): True}
    assert nearest_bench(str(tmp_path / "a" / "other.yaml"), seen) == str(tmp_path / "bench.yaml")
