"""`--since OLD`: which earlier plan is taken, what is refused, and where the answer is shown."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator

import wellstrung_schemas as schemas
from running import Ran, Run
from terminal import CTRL_C, at_terminal
from wellstrung.judging.checker import Checker
from wellstrung.plugins.host import Host

VALIDATOR = Draft202012Validator(schemas.load("report"))


@pytest.fixture
def tight(whole_collar: str) -> str:
    return whole_collar.replace("bore: 10 mm", "bore: 8 mm")


def saved(folder: Path, **plans: str) -> Path:
    """A folder with these plans, each by the name of its file."""
    folder.mkdir(exist_ok=True, parents=True)
    for name, text in plans.items():
        (folder / f"{name}.yaml").write_text(text, encoding="utf-8")
    return folder


def by(maker: str, text: str, title: str = "Test collar") -> str:
    return text.replace("title: Test collar", f"title: {title}\nmaker: {maker}")


def data(ran: Ran) -> dict[str, Any]:
    found: dict[str, Any] = json.loads(ran.out)
    VALIDATOR.validate(found)
    return found


def followed(ran: Ran) -> dict[str, str | None]:
    """Which earlier file each plan was compared with, by the names of the files."""
    return {
        Path(plan["file"]).stem: Path(plan["since"]["file"]).stem if "since" in plan else None
        for plan in data(ran)["plans"]
    }


# --- which earlier plan


def test_two_files(tmp_path: Path, tight: str, whole_collar: str, run: Run) -> None:
    saved(tmp_path, old=tight, new=whole_collar)
    ran = run("check", "new.yaml", "--since", "old.yaml", cwd=tmp_path)
    assert ran.code == 0 and "since old.yaml, not makeable\n1 of 1 mended\n" in ran.out
    ran = run("check", "old.yaml", "--since", "new.yaml", cwd=tmp_path)
    assert ran.code == 1 and "nothing was to mend, 1 new" in ran.out  # the exit of the new plan


def test_the_copy_that_mend_leaves(tmp_path: Path, tight: str, run: Run) -> None:
    saved(tmp_path, collar=tight)
    run("mend", "--all", "collar.yaml", cwd=tmp_path)
    ran = run("check", "collar.yaml", "--since", "collar.yaml.before", cwd=tmp_path)
    assert ran.code == 0 and "1 of 1 mended" in ran.out


def test_the_plan_of_the_same_name_in_a_folder(
    tmp_path: Path, tight: str, whole_collar: str, run: Run
) -> None:
    saved(tmp_path / "then", collar=tight, other=whole_collar)
    saved(tmp_path, collar=whole_collar)
    ran = run("check", "collar.yaml", "--since", "then", "--as", "json", cwd=tmp_path)
    assert followed(ran) == {"collar": "collar"} and data(ran)["since"]["gone"] == []


def test_a_class_by_file_by_title_and_by_maker(tmp_path: Path, tight: str, run: Run) -> None:
    then = {
        "ann": by("Ann", tight), "ben": by("Ben", tight), "old name": by("Cai", tight),
        "dee": by("Dee", tight, "Drift"), "eve": by("Eve", tight, "Ebb"),
    }  # fmt: skip
    now = {
        "ann": by("Ann", tight, "Another"),  # by its file
        "ben 2": by("Ben", tight), "cai": by("Cai", tight),  # others have that title: by the maker
        "dee 2": tight.replace("Test collar", "Drift"),  # nobody is named: by its title
        "fay": by("Fay", tight, "Ebb"),  # the title of somebody else
    }  # fmt: skip
    saved(tmp_path / "then", **then)
    saved(tmp_path / "now", **now)
    ran = run("check", "now", "--since", "then", "--as", "json", cwd=tmp_path)
    assert followed(ran) == {
        "ann": "ann", "ben 2": "ben", "cai": "old name", "dee 2": "dee", "fay": None,
    }  # fmt: skip
    since = data(ran)["since"]
    assert [Path(file).stem for file in since["came"]] == ["fay"]
    assert [(Path(one["file"]).stem, one["title"]) for one in since["gone"]] == [("eve", "Ebb")]
    shown = run("check", "now", "--since", "then", cwd=tmp_path).out
    assert "5 plans since then: 0 of 4 mended, 0 new, 4 still there; 1 new plan; 1 plan gone" in (
        " ".join(shown.split())
    )
    assert "gone: Ebb, then/eve.yaml" in shown and "there is no earlier version of it" in shown
    assert shown.count("nothing has changed") == 0  # the table says so


def test_folders_within_folders_go_by_their_way_there(
    tmp_path: Path, tight: str, whole_collar: str, run: Run
) -> None:
    for week, text in (("then", tight), ("now", whole_collar)):
        saved(tmp_path / week / "monday", collar=text)
        saved(tmp_path / week / "friday", collar=tight)
    ran = run("check", "now", "--since", "then", "--as", "json", cwd=tmp_path)
    mended = {plan["file"]: len(plan["since"]["mended"]) for plan in data(ran)["plans"]}
    assert mended == {"now/friday/collar.yaml": 0, "now/monday/collar.yaml": 1}


@pytest.mark.parametrize(("new", "old"), [(".", "then"), ("now", ".")])
def test_one_folder_in_the_other(
    new: str, old: str, tmp_path: Path, tight: str, whole_collar: str, run: Run
) -> None:
    """The plans of the inner folder are no plans of the outer one."""
    inner = next(name for name in (new, old) if name != ".")
    outer, within = (whole_collar, tight) if new == "." else (tight, whole_collar)
    saved(tmp_path, collar=outer)
    saved(tmp_path / inner, collar=within)
    ran = run("check", new, "--since", old, "--as", "json", cwd=tmp_path)
    (plan,) = data(ran)["plans"]
    assert len(plan["since"]["mended"]) == 1 and data(ran)["since"]["gone"] == []


def test_an_earlier_plan_in_the_folder_to_check(
    tmp_path: Path, tight: str, whole_collar: str, run: Run
) -> None:
    saved(tmp_path, old=tight, new=whole_collar)
    ran = run("check", ".", "--since", "old.yaml", "--as", "json", cwd=tmp_path)
    assert followed(ran) == {"new": "old"}


# --- what is refused, and what is said


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        (("a.yaml", "--since", "c.yaml"), "c.yaml is not there: `--since` takes the earlier plan"),
        (("a.yaml", "--since", "a.yaml"), "a.yaml is the very file to check"),
        (("a.yaml", "--since", "./a.yaml"), "a.yaml is the very file to check"),
        ((".", "--since", "."), ". is the very folder to check: name the earlier one"),
        ((".", "--since", "then/one.yaml"), "is one plan: name the folder of the earlier plans"),
        (("a.yaml", "--since", "empty"), "there is no earlier plan in empty"),
        (("a.yaml", "--since", "bench.yaml"), "there is no earlier plan in bench.yaml"),
        (("a.yaml", "--since", "then"), "there is no earlier a.yaml in then"),
        (("a.yaml", "--since", "b.yaml", "--as", "sarif"), "`--as sarif` shows no earlier plan"),
    ],
)
def test_what_cannot_be_compared(
    arguments: tuple[str, ...], says: str, tmp_path: Path, tight: str, run: Run
) -> None:
    saved(tmp_path, a=tight, b=tight)
    saved(tmp_path / "then", one=by("Ann", tight, "Ebb"), two=by("Ben", tight, "Flow"))
    (tmp_path / "empty").mkdir()
    (tmp_path / "bench.yaml").write_text("bench: 1\n", encoding="utf-8")
    ran = run("check", *arguments, cwd=tmp_path)
    assert ran.code == 2 and says in ran.err and not ran.out


def test_an_earlier_file_that_is_no_text(tmp_path: Path, whole_collar: str, run: Run) -> None:
    saved(tmp_path, new=whole_collar)
    (tmp_path / "old.yaml").write_bytes(b"\xff\xfe\x00plan")
    ran = run("check", "new.yaml", "--since", "old.yaml", cwd=tmp_path)
    assert ran.code == 0
    assert "the earlier plan could not be checked, so only its slips are compared" in ran.out


def test_benches_that_differ_are_named(
    tmp_path: Path, tight: str, whole_collar: str, run: Run
) -> None:
    saved(tmp_path / "then", collar=tight)
    saved(tmp_path / "now", collar=whole_collar)
    own = tmp_path / "now" / "bench.yaml"
    own.write_text("bench: 1\nlimits: {cap loose: 2 mm}\n", encoding="utf-8")
    says = "the benches differ: now/bench.yaml now, no bench for the earlier plan"
    assert says in run("check", "now", "--since", "then", cwd=tmp_path).out
    ran = run("check", "now", "--since", "then", "--bench", own, cwd=tmp_path)
    assert "benches differ" not in ran.out  # the one that is named counts for both
    (tmp_path / "then" / "bench.yaml").write_bytes(own.read_bytes())
    assert "benches differ" not in run("check", "now", "--since", "then", cwd=tmp_path).out


def test_a_check_that_fails_now_has_mended_nothing(installed: Host, tight: str) -> None:
    from msgspec.structs import replace

    from wellstrung.judging.result import Failure
    from wellstrung.judging.since import since

    checker = Checker(installed, quantities=True)
    old = checker.check_text(tight)
    broken = replace(
        old, remarks=(), raised={}, failures=(Failure("cap-bore", "ours", "it stopped"),)
    )
    found = since(old, broken)
    assert not found.mended and found.unknown[0].note == "the check could not be made"
    assert since(broken, old).notes


# --- where it is shown


def test_json_lines_hold_the_same(tmp_path: Path, tight: str, whole_collar: str, run: Run) -> None:
    saved(tmp_path, old=tight, new=whole_collar)
    of = ("check", "new.yaml", "--since", "old.yaml", "--as")
    line = json.loads(run(*of, "jsonl", cwd=tmp_path).out)
    assert line == data(run(*of, "json", cwd=tmp_path))["plans"][0]
    assert [one["rule"] for one in line["since"]["mended"]] == ["cap-bore"]
    (change,) = line["since"]["changed"]
    assert change == {
        "of": "cap", "what": "bore", "before": "8 mm", "after": "10 mm",
        "unit": "mm", "was": 8.0, "now": 10.0,
    }  # fmt: skip


def test_without_it_no_report_has_a_word_of_it(tmp_path: Path, tight: str, run: Run) -> None:
    saved(tmp_path, collar=tight)
    report = json.loads(run("check", "collar.yaml", "--as", "json", cwd=tmp_path).out)
    assert "since" not in report and "since" not in report["plans"][0]
    run("sheet", "collar.yaml", cwd=tmp_path)
    assert "Since last time" not in (tmp_path / "collar.html").read_text(encoding="utf-8")


def test_a_sheet_and_the_page_of_a_class(
    tmp_path: Path, tight: str, whole_collar: str, run: Run
) -> None:
    saved(tmp_path / "then", collar=tight, gone=by("Eve", tight, "<Ebb>"))
    saved(tmp_path / "now", collar=whole_collar, fay=by("Fay", tight, "Flow"))
    ran = run("sheet", "now/collar.yaml", "--since", "then", "--out", "a.html", cwd=tmp_path)
    page = (tmp_path / "a.html").read_text(encoding="utf-8")
    assert ran.code == 0 and "<h2>Since last time</h2>" in page
    assert "<strong>1 of 1 mended</strong>" in page and "bore 8 mm → 10 mm" in page
    assert "since then/collar.yaml, which was not makeable" in page
    ran = run("check", "now", "--since", "then", "--as", "html", "--out", "pages", cwd=tmp_path)
    index = (tmp_path / "pages" / "index.html").read_text(encoding="utf-8")
    assert "1 of 1" in index and "New plans: Flow" in index and "Gone: &lt;Ebb&gt;" in index
    assert str(tmp_path) not in index
    again = (tmp_path / "pages" / "collar.html").read_text(encoding="utf-8")
    assert "<h2>Since last time</h2>" in again


def test_no_page_is_written_over_the_earlier_plan(
    tmp_path: Path, tight: str, whole_collar: str, run: Run
) -> None:
    saved(tmp_path, old=tight, new=whole_collar)
    ran = run(
        "sheet", "new.yaml", "--since", "old.yaml", "--out", "old.yaml", "--force", cwd=tmp_path
    )
    assert ran.code == 2 and (tmp_path / "old.yaml").read_text(encoding="utf-8") == tight


def test_at_each_save_it_is_compared_again(tmp_path: Path, tight: str, whole_collar: str) -> None:
    saved(tmp_path, old=tight, new=tight)
    of = ("check", "--watch", "new.yaml", "--since", "old.yaml")
    with at_terminal(*of, cwd=tmp_path) as terminal:
        assert "nothing has changed" in terminal.until("ctrl-C ends it")
        saved(tmp_path, new=whole_collar)
        assert "1 of 1 mended" in terminal.until("bore 8 mm -> 10 mm")
        terminal.type(CTRL_C)
        assert terminal.end() == 0
