"""What commands write: all of a file or nothing, and never over what they read."""

from __future__ import annotations

from pathlib import Path

import pytest

from running import SHARED, Run

GOOD = SHARED / "slack_tide_collar.yaml"


@pytest.fixture
def plan(tmp_path: Path) -> Path:
    path = tmp_path / "plan.yaml"
    path.write_bytes(GOOD.read_bytes())
    return path


@pytest.mark.parametrize("force", [[], ["--force"]])
def test_no_page_is_written_over_what_was_read(force: list[str], run: Run, plan: Path) -> None:
    (plan.parent / "bench.yaml").write_text("bench: 1\n", encoding="utf-8")
    for read in ("plan.yaml", "bench.yaml"):
        before = (plan.parent / read).read_bytes()
        ran = run("sheet", "plan.yaml", "--out", read, *force, cwd=plan.parent)
        assert (ran.code, ran.out) == (2, "")
        assert ran.err == f"wellstrung: {read} is read for the page: give another --out\n"
        assert (plan.parent / read).read_bytes() == before


def test_only_a_page_of_ours_is_written_over_unasked(run: Run, plan: Path) -> None:
    page = plan.parent / "mine.html"
    page.write_text("the story of the piece", encoding="utf-8")
    ran = run("sheet", plan, "--out", page)
    assert ran.code == 2 and page.read_text(encoding="utf-8") == "the story of the piece"
    assert (
        ran.err == f"wellstrung: {page} is there already and is not a page of ours: take --force\n"
    )
    assert run("sheet", plan, "--out", page, "--force").code == 0
    assert run("sheet", plan, "--out", page).code == 0, "now it is ours"
    assert sorted(file.name for file in plan.parent.iterdir()) == ["mine.html", "plan.yaml"]


def test_a_folder_with_something_else_in_the_way_stays_as_it_was(run: Run, plan: Path) -> None:
    out = plan.parent / "pages"
    out.mkdir()
    (out / "index.html").write_text("my own", encoding="utf-8")
    ran = run("check", plan, "--as", "html", "--out", out)
    assert ran.code == 2 and [file.name for file in out.iterdir()] == ["index.html"]


def test_a_link_stays_and_what_it_leads_to_is_written(run: Run, plan: Path) -> None:
    page, link = plan.parent / "page.html", plan.parent / "link.html"
    link.symlink_to(page)
    assert run("sheet", plan, "--out", link).code == 0
    assert link.is_symlink() and page.read_text(encoding="utf-8").startswith("<!doctype html>")


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="no full disk to write to")
def test_a_full_disk_is_said_in_one_line(run: Run, plan: Path) -> None:
    ran = run("sheet", plan, "--out", "/dev/full")
    assert (ran.code, ran.err) == (
        2, "wellstrung: /dev/full cannot be written: No space left on device\n",
    )  # fmt: skip


def test_signs_that_hide_or_turn_text_show_as_their_numbers(run: Run, plan: Path) -> None:
    text = plan.read_text(encoding="utf-8").replace("Slack Tide", "Slack \u202eTide\u200b")
    plan.write_text(text, encoding="utf-8")
    assert "Slack <U+202E>Tide<U+200B> collar" in run("check", plan).out
    assert run("sheet", plan, "--out", plan.parent / "page.html").code == 0
    page = (plan.parent / "page.html").read_text(encoding="utf-8")
    assert "Slack &lt;U+202E&gt;Tide&lt;U+200B&gt; collar" in page
    assert "\u202e" not in page and "\u200b" not in page


def test_pieces_of_one_title_show_their_files(run: Run, plan: Path) -> None:
    (plan.parent / "second.yaml").write_bytes(plan.read_bytes())
    ran = run("check", "plan.yaml", "second.yaml", cwd=plan.parent, COLUMNS="120")
    assert "Slack Tide collar plan.yaml" in ran.out
    assert "Slack Tide collar second.yaml" in ran.out
