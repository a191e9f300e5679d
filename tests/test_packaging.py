"""The pages name each dependency, its licence and the version."""

from __future__ import annotations

import re
import tomllib
from importlib.metadata import metadata, version

from running import ROOT

PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
NEEDS = [re.split(r"[<>=]", one)[0] for one in PROJECT["dependencies"]]


def licence(name: str) -> str:
    """The licence that a distribution states, in one word."""
    found = metadata(name)
    stated = " ".join(found[key] for key in ("License-Expression", "License") if key in found)
    classes = [one for one in found.get_all("Classifier") or () if one.startswith("License")]
    known = ("MIT", "BSD", "MPL-2.0", "Apache")
    return next((word for word in known if word in f"{stated} {classes}"), stated)


def test_the_licence_of_every_dependency_is_listed() -> None:
    page = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    listed = page.partition("Their licences")[2].partition("\n\n")[0]
    for name in NEEDS:
        said = re.search(rf"`{name}` ([\w.-]+)", listed)
        assert said and said[1].startswith(licence(name)), name


def test_every_dependency_has_its_oldest_version_and_its_reason() -> None:
    page = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    assert all(">=" in one for one in PROJECT["dependencies"])
    assert [name for name in NEEDS if page.count(f"`{name}`") < 2] == []


def test_the_changes_name_this_version() -> None:
    changes = (ROOT / "checker/wellstrung/CHANGES.md").read_text(encoding="utf-8")
    newest = re.findall(r"^## ([\d.]+)", changes, re.MULTILINE)[0]
    assert version("wellstrung").startswith(newest) == ("not yet released" not in changes)
