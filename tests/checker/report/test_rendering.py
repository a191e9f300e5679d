"""Templates are compiled once a machine, not once a run, where that can be kept."""

from __future__ import annotations

import sys
from pathlib import Path

import jinja2
import pytest

from wellstrung.report.pages.rendering import environment


def _compiled(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """The templates that a new run compiles for the page of a plan."""
    names: list[str] = []

    class Watched(jinja2.Environment):
        def _generate(self, source, name, *rest, **options):  # type: ignore[no-untyped-def]
            names.append(name)
            return super()._generate(source, name, *rest, **options)

    monkeypatch.setattr("wellstrung.report.pages.rendering.Environment", Watched)
    environment.__wrapped__().get_template("sheet.html")
    return names


@pytest.mark.parametrize(
    ("place", "dont_write", "again"),
    [
        ("folder", False, []),
        ("a file/in its way", False, ["sheet.html"]),
        ("folder", True, ["sheet.html"]),
    ],
)
def test_a_template_is_compiled_once(
    place: str, dont_write: bool, again: list[str], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "a file").touch()
    monkeypatch.setattr(sys, "pycache_prefix", str(tmp_path / place))
    monkeypatch.setattr(sys, "dont_write_bytecode", dont_write)
    assert _compiled(monkeypatch) == ["sheet.html"]
    assert _compiled(monkeypatch) == again
