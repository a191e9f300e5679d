"""Pages from the command line: one sheet, or a class page with a sheet for each plan."""

from __future__ import annotations

import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from pages import keeper
from running import SAMPLES, SHARED, Run
from wellstrung.judging.result import Result
from wellstrung.report.pages import folder, index

pytestmark = pytest.mark.slow

CLASS = SAMPLES / "class"
ORLA = SHARED / "lantern_collar.yaml"


def test_a_sheet_is_written_where_one_says(run: Run, tmp_path: Path) -> None:
    out = tmp_path / "deep" / "orla.html"
    ran = run("sheet", ORLA, "--out", out)
    assert (ran.code, ran.out, ran.err) == (1, f"wrote {out}\n", "")
    assert out.read_text(encoding="utf-8").startswith("<!doctype html>")


def test_a_sheet_is_named_like_its_plan(run: Run, tmp_path: Path) -> None:
    ran = run("sheet", SHARED / "slack_tide_collar.yaml", cwd=tmp_path)
    assert (ran.code, ran.out) == (0, "wrote slack_tide_collar.html\n")
    assert (tmp_path / "slack_tide_collar.html").exists()


def test_a_plan_that_is_not_there_has_a_sheet_that_says_so(run: Run, tmp_path: Path) -> None:
    ran = run("sheet", "nowhere.yaml", cwd=tmp_path)
    assert ran.code == 1
    assert "NOT CHECKED YET" in (tmp_path / "nowhere.html").read_text(encoding="utf-8")


def test_a_page_that_cannot_be_written_is_told(run: Run, tmp_path: Path) -> None:
    (tmp_path / "taken").write_text("", encoding="utf-8")
    ran = run("sheet", ORLA, "--out", tmp_path / "taken" / "orla.html")
    assert ran.code == 2 and "cannot be written" in ran.err and "Traceback" not in ran.err


def test_a_folder_has_a_page_that_links_one_sheet_each(run: Run, tmp_path: Path) -> None:
    out = tmp_path / "pages"
    ran = run("check", CLASS, "--as", "html", "--out", out)
    assert ran.code == 1 and ran.err == ""
    plans = sorted(CLASS.glob("*.yaml"))
    assert ran.out == f"wrote {out / 'index.html'} and {len(plans)} more beside it\n"
    index = (out / "index.html").read_text(encoding="utf-8")
    links = re.findall(r'<a href="([^"]+)">', index)
    assert sorted(links) == sorted(f"{plan.stem}.html" for plan in plans)
    assert all((out / link).exists() for link in links)
    assert index.index("Orla") < index.index("take 22 AWG wire")
    assert index.count("work in fresh air") == 2, "once for either kind of glue"
    assert index.lower().count("cut ends of wire, pins and chain fly") == 1, "in whatever step"
    alone = tmp_path / "alone.html"
    run("sheet", CLASS / "daveth_loom_band.yaml", "--out", alone)
    assert alone.read_bytes() == (out / "daveth_loom_band.html").read_bytes()
    assert "Checkpoints" in index and "stays at any likely size" in index
    assert "How large the pieces will be" in index and "104.8 cm" in index


def test_pages_want_a_folder_and_only_they_do(run: Run, tmp_path: Path) -> None:
    for arguments in (
        ("--as", "html"),
        ("--out", str(tmp_path / "x")),
        ("--as", "json", "--out", "x"),
    ):
        ran = run("check", ORLA, *arguments)
        assert ran.code == 2 and "--out DIR" in ran.err and ran.out == ""
    assert not (tmp_path / "x").exists()


def test_plans_of_one_name_have_pages_of_their_own() -> None:
    text = ORLA.read_text(encoding="utf-8")
    files = ["a/plan.yaml", "b/plan.yaml", "c/index.yaml", "d/Plan.yaml"]
    result = Result(tuple(keeper().check_text(text, file) for file in files))
    names = folder(result)
    assert len({name.casefold() for name in names}) == 5 and next(iter(names)) == "index.html"
    links = re.findall(r'<a href="([^"]+)">', names["index.html"])
    assert sorted(links) == sorted(set(names) - {"index.html"})


def test_a_class_page_has_the_worst_first_and_every_outcome() -> None:
    texts = [
        ("right.yaml", (SHARED / "slack_tide_collar.yaml").read_text(encoding="utf-8")),
        ("wrong.yaml", ORLA.read_text(encoding="utf-8")),
        ("broken.yaml", ": : :"),
    ]
    result = Result(tuple(keeper().check_text(text, file) for file, text in texts))
    page = index(result)
    found = re.findall(r'class="outcome [a-z-]+">([^<]+)<', page)
    assert found == ["not checked yet", "not makeable", "makeable"]


def test_the_time_lines_of_a_large_class_stand_on_several_pages() -> None:
    text = ORLA.read_text(encoding="utf-8")
    result = Result((keeper().check_text(text),) * 30)
    page = index(result)
    assert re.findall(r"<h3>(Plans [^<]+)</h3>", page) == [
        "Plans 1 to 14", "Plans 15 to 28", "Plans 29 to 30",
    ]  # fmt: skip
    heights = re.findall(r'<svg [^>]*height="([\d.]+)mm"[^>]*roomy', page)
    assert len(heights) == 3 and all(float(height) < 240 for height in heights)


def test_a_check_without_pages_never_loads_the_templates(tmp_path: Path) -> None:
    said = "import sys; from wellstrung.commands.cli import main; main(sys.argv[1:])"
    said += "; print('jinja2' in sys.modules)"
    for arguments, loaded in (
        (["check", str(ORLA)], "False"),
        (["check", str(ORLA), "--as", "json"], "False"),
        (["sheet", str(ORLA), "--out", str(tmp_path / "o.html")], "True"),
    ):
        done = subprocess.run(
            [sys.executable, "-c", said, *arguments],
            capture_output=True,
            encoding="utf-8",
            check=True,
        )
        assert done.stdout.splitlines()[-1] == loaded


@pytest.fixture
def many(tmp_path: Path) -> Path:
    home = tmp_path / "many"
    home.mkdir()
    for number in range(24):
        shutil.copy(ORLA, home / f"plan_{number}.yaml")
    return home


def test_a_long_run_is_silent_when_piped(run: Run, many: Path) -> None:
    ran = run("check", many)
    assert ran.err == "" and "checking" not in ran.out
