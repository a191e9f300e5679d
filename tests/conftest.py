"""What tests share: one host, one checker, and a run of the command line."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import NamedTuple

import pytest

from wellstrung import host
from wellstrung.checking import Checker

ROOT = Path(__file__).parent.parent
SAMPLES = ROOT / "sample_plans"
COLLAR = (ROOT / "tests" / "rules" / "collar.yaml").read_text(encoding="utf-8")


@pytest.fixture(scope="session")
def installed() -> host.Host:
    return host.load()


@pytest.fixture(scope="session")
def checker(installed: host.Host) -> Checker:
    return Checker(installed)


class Ran(NamedTuple):
    code: int
    out: str
    err: str


@pytest.fixture
def run() -> Callable[..., Ran]:
    """Run the command line in a process of its own, with nothing but these settings around it."""

    def run_it(*arguments: str | Path, cwd: Path = ROOT, **environment: str) -> Ran:
        around = {"PATH": os.environ["PATH"], "COLUMNS": "80", "PYTHONUTF8": "1", **environment}
        done = subprocess.run(
            [sys.executable, "-m", "wellstrung", *map(str, arguments)],
            cwd=cwd,
            env=around,
            capture_output=True,
            encoding="utf-8",
            check=False,
        )
        print(f"exit {done.returncode}\n{done.stdout}\n{done.stderr}")  # shown when a test fails
        return Ran(done.returncode, done.stdout, done.stderr)

    return run_it
