"""What tests share: one host, one checker, and a run of the command line."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import settings

from running import ROOT, Pinned, Ran, Run, ran, ran_apart
from wellstrung.commands.checked import collect_new_garbage
from wellstrung.judging.checker import Checker
from wellstrung.plugins import host

#: a loaded machine is no fault of the program: no test has a time limit
settings.register_profile("untimed", deadline=None)
settings.load_profile("untimed")


def pytest_collection_finish() -> None:
    """What is collected stays: look for garbage among what is new, as the program itself does."""
    collect_new_garbage()


@pytest.fixture
def pinned(request: pytest.FixtureRequest) -> Pinned:
    """Hold a text against the file that pins it; with `--rewrite`, write that file instead."""

    def hold(path: Path, text: str) -> None:
        if request.config.getoption("--rewrite"):
            path.write_text(text, encoding="utf-8")
        assert text == path.read_text(encoding="utf-8"), f"`pytest --rewrite` accepts a new {path}"

    return hold


@pytest.fixture(scope="session")
def installed() -> host.Host:
    return host.load()


@pytest.fixture(scope="session")
def checker(installed: host.Host) -> Checker:
    return Checker(installed)


@pytest.fixture(scope="session")
def collar() -> str:
    """The plan that the rules' cases change: right as it stands, but for steps left out."""
    return (ROOT / "tests" / "rules" / "collar.yaml").read_text(encoding="utf-8")


@pytest.fixture(scope="session")
def whole_collar(collar: str) -> str:
    """The same with the steps that it leaves out: its fringe hung, its rings closed."""
    steps = (
        "  - {do: hang, part: drop, from: frame, by: small}\n  - {do: close ring, part: small}\n"
    )
    return collar.replace("  - {do: wear}\n", f"{steps}  - {{do: wear}}\n")


@pytest.fixture
def run() -> Run:
    """Run the command line: in this process, or in one of its own where that makes a difference."""
    return shown(ran)


@pytest.fixture
def run_apart() -> Run:
    """Run the command line in a process of its own."""
    return shown(ran_apart)


def shown(run: Run) -> Run:
    """A run that is shown when a test fails."""

    def run_it(*arguments: str | Path, cwd: Path = ROOT, **environment: str) -> Ran:
        done = run(*arguments, cwd=cwd, **environment)
        print(f"exit {done.code}\n{done.out}\n{done.err}")
        return done

    return run_it
