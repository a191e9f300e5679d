"""Entry points of installed distributions, read from their metadata folders.

`importlib.metadata` does the same and more, but imports the e-mail parser, which takes about a
fifth of the time of a check. Here only `entry_points.txt` of folders on the path is read. A test
compares this with `importlib.metadata`.
"""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator
from typing import NamedTuple

_FOLDERS = (".dist-info", ".egg-info")


class Point(NamedTuple):
    """One entry point: the distribution it comes with, its name and the module it names."""

    distribution: str
    version: str
    name: str
    module: str


def entry_points(group: str) -> list[Point]:
    """The entry points of a group, each distribution once, in order of distribution and name."""
    found: dict[str, list[Point]] = {}
    for folder in sys.path:
        for distribution, version, path in _metadata(folder or os.curdir):
            if distribution not in found:
                found[distribution] = list(_points(path, group, distribution, version))
    return sorted(point for points in found.values() for point in points)


def others(group: str) -> bool:
    """Whether any distribution but the one that the group is named after has an entry point."""
    return any(point.distribution != group for point in entry_points(group))


def _metadata(folder: str) -> Iterator[tuple[str, str, str]]:
    try:
        names = os.listdir(folder)
    except OSError:  # a path entry that is a zip file, or is not there
        return
    for name in names:
        if name.endswith(_FOLDERS):
            distribution, _, version = name.rpartition(".")[0].partition("-")
            yield distribution.lower().replace("_", "-"), version, os.path.join(folder, name)


def _points(path: str, group: str, distribution: str, version: str) -> Iterator[Point]:
    try:
        with open(os.path.join(path, "entry_points.txt"), encoding="utf-8") as stream:
            lines = stream.read().splitlines()
    except OSError:
        return
    inside = False
    for line in map(str.strip, lines):
        if line.startswith("["):
            inside = line.strip("[] ") == group
        elif inside and "=" in line and not line.startswith(("#", ";")):
            name, _, module = line.partition("=")
            yield Point(distribution, version, name.strip(), module.strip())
