"""Entry points, held against what `importlib.metadata` says of the same environment."""

from __future__ import annotations

import importlib.metadata
from pathlib import Path

import pytest

from wellstrung.plugins.entry_points import Point, entry_points


@pytest.mark.parametrize("group", ["wellstrung", "console_scripts", "pytest11", "no such group"])
def test_the_same_as_the_standard_library(group: str) -> None:
    expected = {(point.name, point.value) for point in importlib.metadata.entry_points(group=group)}
    assert {(point.name, point.module) for point in entry_points(group)} == expected


def test_the_first_of_two_copies_counts(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    for place, module in (("one", "first"), ("two", "second")):
        folder = tmp_path / place / "Some_Shop-2.1.dist-info"
        folder.mkdir(parents=True)
        (folder / "entry_points.txt").write_text(
            f"[other]\nx = y\n[wellstrung]\n# ours\nshop = {module}:rules\n", encoding="utf-8"
        )
    monkeypatch.setattr("sys.path", [str(tmp_path / "one"), str(tmp_path / "two"), "nowhere.zip"])
    assert entry_points("wellstrung") == [Point("some-shop", "2.1", "shop", "first:rules")]
