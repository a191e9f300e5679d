"""A package of others, built, installed beside ours in a fresh environment, and used there."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from running import ROOT

PACKAGE = ROOT / "tests" / "example_package"
PLAN = """\
plan: 1
title: Floats on a band
piece: bracelet
beads: {pebble: {type: round, size: 8/0, make: Japanese}}
parts:
  band: {kind: woven band, stitch: gangway, beads: pebble, across: 5, length: 16 cm}
  ring: {kind: jump ring, outside: 5 mm, wire: 20 AWG, closing: open}
  float: {kind: bobber, height: 40 mm, eye: {hole: 2 mm, wire: 1 mm}}
run: [band, ring, float]
"""


def ran(*command: str | Path, cwd: Path, code: int = 0) -> str:
    """What a command printed; it has to end in this code."""
    around = {name: value for name, value in os.environ.items() if name != "PYTHONPATH"}
    done = subprocess.run(
        list(map(str, command)), cwd=cwd, env=around, capture_output=True, text=True, check=False
    )
    assert done.returncode == code, done.stdout + done.stderr
    return done.stdout


@pytest.mark.slow
def test_it_is_built_installed_and_used(tmp_path: Path) -> None:
    for name in ("checker", "rules", "schemas", "pyproject.toml", "README.md", "LICENSE"):
        source = ROOT / name
        copy = shutil.copytree if source.is_dir() else shutil.copy
        copy(source, tmp_path / name)
    shutil.copytree(PACKAGE, tmp_path / "package")
    for folder in (tmp_path, tmp_path / "package"):
        build = (sys.executable, "-m", "build", "--wheel", "--outdir", tmp_path / "dist", ".")
        ran(*build, cwd=folder)
    ran(sys.executable, "-m", "venv", tmp_path / "venv", cwd=tmp_path)
    programs = tmp_path / "venv" / "bin"
    wheels = sorted((tmp_path / "dist").glob("*.whl"))
    assert [wheel.name.partition("-")[0] for wheel in wheels] == ["harbour_extras", "wellstrung"]
    ran(programs / "pip", "install", "-q", "pytest", *wheels, cwd=tmp_path)
    (tmp_path / "plan.yaml").write_text(PLAN, encoding="utf-8")

    def wellstrung(*arguments: str, code: int = 0) -> str:
        return ran(programs / "wellstrung", *arguments, cwd=tmp_path, code=code)

    said = wellstrung("check", "plan.yaml", code=1)
    assert (
        "1. ERROR: " in said and "[high-float]" in said and "do this    take one of 28 mm" in said
    )
    assert "[enough-floats]" in said and "plan-shape" not in said
    assert wellstrung("check", "plan.yaml", "--as", "tally", code=1) == (
        "Floats on a band: not makeable\n"
    )
    assert wellstrung("tally", "plan.yaml", code=1) == "Floats on a band: not makeable\n"
    assert "tally" in wellstrung("--help")
    assert "density: 0.2 g/cm3 (0.12..0.28); from memory" in wellstrung("tables", "floats")
    (tmp_path / "bench.yaml").write_text(
        "bench: 1\nlimits: {float width: 45 mm, fewest floats: 1}\n", encoding="utf-8"
    )
    said = wellstrung("check", "plan.yaml")
    assert "high-float" not in said and "enough-floats" not in said
    cases = tmp_path / "package" / "cases"
    # none of our own options, one of which asks for a package that is not installed there
    alone = ("-q", "-o", "addopts=", "-p", "wellstrung.testing")
    said = ran(programs / "pytest", *alone, cases, cwd=tmp_path)
    assert said.splitlines()[-1].startswith("6 passed")
