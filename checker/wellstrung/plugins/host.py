"""Loads plugins one by one, each with its owner, and stops if one of them cannot be trusted.

A run without all its rules must never pass, so a plugin that fails to load, a hook that nothing
calls, and two owners of one name all end in `HostError`.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from importlib import import_module
from pathlib import Path
from typing import TYPE_CHECKING, Protocol, TypeVar

import pluggy

from wellstrung.plugins import hooks
from wellstrung.plugins.entry_points import Point, entry_points
from wellstrung.rulebook.installed import Installed

if TYPE_CHECKING:
    from wellstrung.report.writer import Writer
    from wellstrung.rulebook import Rule


class HostError(Exception):
    """The checker cannot do its job: exit 2."""


class Named(Protocol):
    """Anything that a plugin brings has a name of its own."""

    @property
    def name(self) -> str:
        """The name."""


T = TypeVar("T", bound=Named)


class Host(Installed, frozen=True):
    """All that the plugins brought: what plans are judged by, and the writers of reports."""

    writers: Mapping[str, Writer]


def load(extra_files: Sequence[Path] = ()) -> Host:
    """The host with every installed plugin and the files the person named; raises HostError."""
    return assemble((*_installed(), *(_from_file(path) for path in extra_files)))


def assemble(plugins: Iterable[tuple[str, object]]) -> Host:
    """The host of these (owner, plugin) pairs; raises HostError."""
    manager = pluggy.PluginManager(hooks.GROUP)
    manager.add_hookspecs(hooks)
    for owner, plugin in plugins:
        try:
            manager.register(plugin, name=owner)
        except ValueError as error:
            raise HostError(f"plugin `{owner}` is installed twice: remove one") from error
        except pluggy.PluginValidationError as error:
            raise HostError(f"plugin `{owner}` does not fit this version: {error}") from error
    try:
        manager.check_pending()
    except pluggy.PluginValidationError as error:
        raise HostError(f"a plugin has a hook that nothing calls: {error}") from error
    owners: dict[str, str] = {}
    rules: dict[str, Rule] = _collect(manager, "wellstrung_rules", owners)
    return Host(
        rules=dict(sorted(rules.items())),
        kinds=_collect(manager, "wellstrung_kinds", {}),
        stitches=_collect(manager, "wellstrung_stitches", {}),
        quantities=_collect(manager, "wellstrung_quantities", {}),
        writers=_collect(manager, "wellstrung_writers", {}),
        owners=owners,
    )


def _installed() -> Iterable[tuple[str, object]]:
    for point in entry_points(hooks.GROUP):
        yield f"{point.distribution}: {point.name}", _loaded(point)


def _loaded(point: Point) -> object:
    module, _, attribute = point.module.partition(":")
    try:
        loaded = import_module(module)
        return getattr(loaded, attribute) if attribute else loaded
    except Exception as error:
        raise HostError(
            f"plugin `{point.distribution}: {point.name}` {point.version} does not load:"
            f" {type(error).__name__}: {error}"
        ) from error


def _from_file(path: Path) -> tuple[str, object]:
    import importlib.util

    spec = importlib.util.spec_from_file_location(f"wellstrung_file_{path.stem}", path)
    if spec is None or spec.loader is None:
        raise HostError(f"`{path}` is not a Python file: name a `.py` file of rules")
    module = importlib.util.module_from_spec(spec)
    try:
        spec.loader.exec_module(module)
    except Exception as error:
        raise HostError(f"`{path}` does not load: {type(error).__name__}: {error}") from error
    return str(path), module


def _collect(manager: pluggy.PluginManager, hook: str, owners: dict[str, str]) -> dict[str, T]:
    found: dict[str, T] = {}
    for implementation in getattr(manager.hook, hook).get_hookimpls():
        owner = implementation.plugin_name
        try:
            brought = implementation.function()
        except Exception as error:
            raise HostError(f"plugin `{owner}` fails in {hook}: {error}") from error
        if not isinstance(brought, list | tuple):
            raise HostError(f"plugin `{owner}` must return a list from {hook}")
        for item in brought:
            if item.name in found:
                raise HostError(
                    f"`{item.name}` comes from both `{owners[item.name]}` and `{owner}`:"
                    " rename one of them"
                )
            found[item.name] = item
            owners[item.name] = owner
    return found
