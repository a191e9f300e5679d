"""What the README shows is what the program does."""

from __future__ import annotations

import re
from pathlib import Path

import yaml

from running import ROOT, Run
from wellstrung.judging.swatches import learnt
from wellstrung.plugins.host import Host
from wellstrung.reading import drawer
from wellstrung.reading.bench import read_text

README = (ROOT / "README.md").read_text(encoding="utf-8")
BLOCKS = re.findall(r"^```(\w+)\n(.*?)^```$", README, flags=re.M | re.S)


def blocks(language: str) -> list[str]:
    return [body for name, body in BLOCKS if name == language]


def test_the_plan_gives_the_printed_answer(installed: Host, run: Run, tmp_path: Path) -> None:
    plan, said, bench, woven, own, kept = blocks("yaml")
    here = installed
    for text in (bench, woven, own):
        settings, faults = read_text(text, "bench.yaml", here.stitches, here.limits, here.measures)
        assert settings is not None, faults
        settings, faults = learnt(settings, here)
        assert settings is not None and not (settings.learnt and settings.learnt.doubts), faults
    (stock,) = blocks("csv")
    assert drawer.read_text(stock, "stock.csv").faults == ()
    assert drawer.read_text(kept, "drawer.yaml").faults == ()
    (tmp_path / "gangway.yaml").write_text(plan, encoding="utf-8")
    ran = run("check", "gangway.yaml", cwd=tmp_path, COLUMNS="80")
    assert ran.code == 1
    for shown in blocks("text"):
        assert shown in ran.out
    (tmp_path / "said.yaml").write_text(said, encoding="utf-8")
    assert "MAKEABLE  0 errors, 0 warnings" in run("check", "said.yaml", cwd=tmp_path).out


def test_a_second_version_shows_what_is_printed(run: Run, tmp_path: Path) -> None:
    (tmp_path / "gangway.yaml").write_text(blocks("yaml")[0], encoding="utf-8")
    run("mend", "--all", "gangway.yaml", cwd=tmp_path)
    ran = run("check", "gangway.yaml", "--since", "gangway.yaml.before", cwd=tmp_path)
    assert ran.code == 0 and blocks("console")[1] in ran.out and "2 of 2 mended" in ran.out


def test_there_are_two_commands_and_they_name_what_is_there() -> None:
    commands = blocks("sh")[0].strip().splitlines()
    assert len(commands) == 2
    assert commands[0].endswith("check sample_plans/quay_lamp_necklace.yaml")
    assert commands[1].endswith("pytest -n auto")


def test_the_job_comes_first() -> None:
    assert README.split("\n\n")[1].startswith("You design beaded pieces")


def test_every_kind_and_verb_is_named() -> None:
    import wellstrung_schemas as schemas

    for word in (*schemas.kind_names(), *schemas.verbs()):
        assert f"`{word}`" in README.replace("\n", " "), word
    assert yaml.safe_load(blocks("yaml")[0])["plan"] == 1


def test_no_row_of_a_table_stands_twice_and_every_stitch_is_there(installed: Host) -> None:
    rows = [line.split("|")[1].strip() for line in README.splitlines() if line.startswith("| `")]
    assert len(rows) == len(set(rows))
    woven = [one.name for one in installed.stitches.values() if one.makes.startswith("woven")]
    assert woven and [name for name in woven if f"`{name}`" not in README] == []
