"""The same bytes come out whatever is around a run: locale, time zone, hash seed, folder, order."""

from __future__ import annotations

import shutil
from functools import cache
from pathlib import Path

import pytest

from running import ROOT, SAMPLES, Ran, Run, ran

PLANS = [SAMPLES / "quay_lamp_necklace.yaml", SAMPLES / "class" / "kerra_lariat.yaml"]
#: what may differ around two runs
AROUND: dict[str, dict[str, str]] = {
    "another locale": {"LC_ALL": "C", "LANG": "C"},
    "a locale with decimal commas": {"LC_ALL": "de_DE.UTF-8", "LANG": "de_DE.UTF-8"},
    "another time zone": {"TZ": "Pacific/Auckland"},
    "a hash seed": {"PYTHONHASHSEED": "1"},
    "another hash seed": {"PYTHONHASHSEED": "4242"},
    "another home": {"HOME": "/nonexistent", "USER": "somebody"},
}
COMMANDS = (("check", "--workings"), ("check", "--as", "json"), ("supplies", "--as", "json"))


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Two plans in a folder of their own."""
    made = tmp_path_factory.mktemp("plans")
    for plan in PLANS:
        shutil.copy(plan, made)
    return made


@pytest.mark.slow
@pytest.mark.parametrize("command", COMMANDS, ids=" ".join)
@pytest.mark.parametrize("around", AROUND)
def test_what_is_around_a_run_changes_no_byte(
    around: str, command: tuple[str, ...], folder: Path, run: Run
) -> None:
    arguments = (*command[:1], ".", *command[1:])
    assert run(*arguments, cwd=folder, **AROUND[around]) == with_nothing_around(arguments, folder)


@cache
def with_nothing_around(arguments: tuple[str, ...], folder: Path) -> Ran:
    return ran(*arguments, cwd=folder)


def test_a_hash_seed_changes_no_byte_of_a_page(folder: Path, run: Run) -> None:
    pages = []
    for seed, zone in (("1", "UTC"), ("77", "Asia/Tokyo")):
        out = folder / f"{seed}.html"
        ran = run("sheet", folder / PLANS[0].name, "--out", out, PYTHONHASHSEED=seed, TZ=zone)
        assert ran.code == 0
        pages.append(out.read_bytes())
        out.unlink()
    assert pages[0] == pages[1]


def test_the_folder_one_stands_in_changes_no_byte(folder: Path, run: Run) -> None:
    from_there = run("check", folder, cwd=ROOT)
    assert run("check", folder, cwd=folder.parent) == from_there
    assert run("check", folder, cwd=Path("/")) == from_there


def test_windows_line_ends_change_no_finding(folder: Path, run: Run, tmp_path: Path) -> None:
    for plan in folder.glob("*.yaml"):
        data = plan.read_bytes()
        assert b"\r" not in data
        (tmp_path / plan.name).write_bytes(data.replace(b"\n", b"\r\n"))
    assert run("check", ".", "--workings", cwd=tmp_path) == run(
        "check", ".", "--workings", cwd=folder
    )
