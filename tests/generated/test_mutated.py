"""Right plans with a few bytes changed: whatever they have become, they break nothing."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from generated.choices import Seeded, pick
from generated.folders import seeded_folders
from generated.mutated import mutated
from generated.plans import seeded
from generated.survives import reports_well, survives
from wellstrung.judging.checker import Checker
from wellstrung.plugins.host import Host

#: of 500 files each; the first few are in the quick suite
PIECES = 40
EACH = 500
QUICK = 200
#: of so many files one is checked with remedies, its quantities and its reports
ALL = 10


@cache
def _sources() -> list[bytes]:
    plans = [*seeded(120), *(folder.plan for folder in seeded_folders(10))]
    return [plan.encode() for plan in plans]


def changed(number: int) -> bytes:
    """The n-th changed plan; it is the same whenever it is asked for."""
    choices = Seeded(f"mutated {number}")
    return mutated(choices, pick(choices, _sources()), pick(choices, _sources()))


def broken(numbers: range, folder: Path, quick: Checker, whole: Checker) -> list[str]:
    """What breaks, by number."""
    found = []
    for number in numbers:
        try:
            checker = quick if number % ALL else whole
            result = survives(checker, folder / "plan.yaml", changed(number))
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
            for n in range(PIECES)
        ),
    ],
    ids=str,
)
def test_changed_bytes_break_nothing(numbers: range, tmp_path: Path, installed: Host) -> None:
    quick, whole = Checker(installed, trials=0), Checker(installed, quantities=True)
    assert not broken(numbers, tmp_path, quick, whole)
