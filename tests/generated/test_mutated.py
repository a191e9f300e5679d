"""Right plans with a few bytes changed: whatever they have become, they break nothing."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from generated.choices import Drawn, Seeded, chance, pick
from generated.folders import Folder, seeded_folders
from generated.mutated import mutated
from generated.plans import seeded, written
from generated.survives import reports_well, survives
from turns import some
from wellstrung.judging.checker import Checker
from wellstrung.plugins.host import Host

#: of 500 files each; the first few are in the quick suite
PIECES = 40
EACH = 500
QUICK = 200
#: of so many files one is checked with remedies, its quantities and its reports
ALL = 10


@cache
def _sources() -> list[Folder]:
    return [*map(Folder, seeded(120)), *seeded_folders(40)]


def changed(number: int) -> tuple[bytes, bytes]:
    """The n-th changed plan and its drawer; they are the same whenever they are asked for."""
    choices = Seeded(f"mutated {number}")
    folder, other = pick(choices, _sources()), pick(choices, _sources())
    plan, drawer = folder.plan.encode(), folder.drawer.encode()
    if drawer and chance(choices, 50):
        return plan, mutated(choices, drawer, (other.drawer or other.plan).encode())
    return mutated(choices, plan, other.plan.encode()), drawer


def broken(numbers: range, folder: Path, quick: Checker, whole: Checker) -> list[str]:
    """What breaks, by number."""
    found = []
    for number in numbers:
        try:
            plan, drawer = changed(number)
            (folder / "drawer.yaml").write_bytes(drawer)
            checker = quick if number % ALL else whole
            result = survives(checker, folder / "plan.yaml", plan)
            if not number % ALL:
                reports_well(result)
        except Exception as error:  # each is listed; what stops the test itself is not caught
            found.append(f"{number}: {type(error).__name__}: {error}")
    return found


@pytest.mark.parametrize(
    "numbers",
    [
        range(QUICK),
        *(
            pytest.param(range(n * EACH, (n + 1) * EACH), marks=pytest.mark.slow)
            for n in some(range(PIECES), 5)
        ),
    ],
    ids=str,
)
def test_changed_bytes_break_nothing(numbers: range, tmp_path: Path, installed: Host) -> None:
    quick, whole = Checker(installed, trials=0), Checker(installed, quantities=True)
    assert not broken(numbers, tmp_path, quick, whole)


@st.composite
def near_right(draw: st.DrawFn) -> bytes:
    """A right plan with a few bytes changed."""
    choices = Drawn(draw)
    return mutated(choices, written(choices).encode(), _sources()[0].plan.encode())


@pytest.mark.slow
@settings(max_examples=60, suppress_health_check=list(HealthCheck))
@given(near_right())
def test_near_right_plans_that_are_drawn_break_nothing(
    tmp_path: Path, installed: Host, plan: bytes
) -> None:
    checker = Checker(installed, quantities=True)
    reports_well(survives(checker, tmp_path / "plan.yaml", plan))
