"""Loads plugins one by one, each with its owner, and stops if one of them cannot be trusted.

A run without all its rules must never pass, so a plugin that fails to load, a hook that nothing
calls, and two owners of one name all end in `HostError`.
"""

from __future__ import annotations

import sys
from collections.abc import Iterable, Mapping, Sequence
from importlib import import_module
from pathlib import Path
from types import ModuleType, UnionType
from typing import Protocol, TypeVar, get_args

import pluggy
from msgspec.structs import replace

from wellstrung import tables
from wellstrung.common import trade_words
from wellstrung.common.trade_words import TradeWord
from wellstrung.derived.of_plan import Brought
from wellstrung.model.parts import Kind, Stitch
from wellstrung.plugins import hooks
from wellstrung.plugins.command import Command
from wellstrung.plugins.entry_points import Point, entry_points
from wellstrung.plugins.error import HostError
from wellstrung.report.writer import Writer
from wellstrung.rulebook import Level, Rule, Subject
from wellstrung.rulebook.installed import Installed
from wellstrung_schemas import inlined


class Named(Protocol):
    """Anything that a plugin brings has a name of its own."""

    @property
    def name(self) -> str:
        """The name."""


T = TypeVar("T", bound=Named)
#: whose fragments have their references to common values written out already
_CORE = "wellstrung: core"


class Host(Installed, frozen=True):
    """All that the plugins brought: what plans are judged by, writers of reports and commands."""

    writers: Mapping[str, Writer]
    commands: Mapping[str, Command]


def load(extra_files: Sequence[Path] = ()) -> Host:
    """The host with every installed plugin and the files the person named; raises HostError."""
    return assemble((*_installed(), *(_from_file(path) for path in extra_files)))


def assemble(plugins: Iterable[tuple[str, object]]) -> Host:
    """The host of these (owner, plugin) pairs; raises HostError."""
    manager = pluggy.PluginManager(hooks.GROUP)
    manager.add_hookspecs(hooks)
    for owner, plugin in plugins:
        written_for = getattr(plugin, "WELLSTRUNG_PLUGIN", hooks.VERSION)
        if written_for != hooks.VERSION:
            says = f"is written for version {written_for} of the hooks, and these are version"
            raise HostError(f"plugin `{owner}` {says} {hooks.VERSION}: install one that fits")
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
    makers: dict[str, str] = {}
    kinds = _collect(manager, "wellstrung_kinds", Kind, makers)
    rules = _collect(manager, "wellstrung_rules", Rule, owners)
    try:
        tables.bring(_collect(manager, "wellstrung_tables", tables.Table, {}))
    except ValueError as error:
        raise HostError(f"a table of a plugin cannot be used: {error}") from error
    try:
        trade_words.bring(_collect(manager, "wellstrung_words", TradeWord, {}).values())
    except ValueError as error:
        raise HostError(f"a word of a plugin cannot be used: {error}") from error
    return Host(
        rules=dict(sorted(rules.items())),
        kinds={
            name: kind if makers[name] == _CORE else replace(kind, fragment=inlined(kind.fragment))
            for name, kind in kinds.items()
        },
        stitches=_collect(manager, "wellstrung_stitches", Stitch, {}),
        quantities=_collect(manager, "wellstrung_quantities", Brought, {}),
        writers=_collect(manager, "wellstrung_writers", Writer, {}),
        commands=_collect(manager, "wellstrung_commands", Command, {}),
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

    unlike = f"{len(sys.modules)}"  # two files may have one name
    spec = importlib.util.spec_from_file_location(f"wellstrung_file_{path.stem}_{unlike}", path)
    if spec is None or spec.loader is None:
        raise HostError(f"`{path}` is not a Python file: name a `.py` file of rules")
    try:
        path.read_bytes()
    except OSError as error:
        why = (error.strerror or str(error)).lower()
        raise HostError(f"`{path}` cannot be read: {why}; name a `.py` file of rules") from None
    module = importlib.util.module_from_spec(spec)
    sys.modules[spec.name] = module  # where dataclasses look up the module of a class
    try:
        spec.loader.exec_module(module)
    except KeyboardInterrupt:
        raise
    except BaseException as error:
        raise HostError(f"`{path}` does not load: {type(error).__name__}: {error}") from error
    if not any(hasattr(value, f"{hooks.GROUP}_impl") for value in vars(module).values()):
        _take_rule(path, module)
    return str(path), module


def _take_rule(path: Path, module: ModuleType) -> None:
    """A file without hooks may end with `RULE = Rule(...)`, as the built-in rules do."""
    rule = getattr(module, "RULE", None)
    if rule is None:
        raise HostError(f"`{path}` brings no rule: end it with `RULE = Rule(...)`, or write a hook")

    def wellstrung_rules() -> Sequence[object]:
        return (rule,)

    vars(module)[wellstrung_rules.__name__] = hooks.hookimpl(wellstrung_rules)


def _collect(
    manager: pluggy.PluginManager, hook: str, wanted: type[T] | UnionType, owners: dict[str, str]
) -> dict[str, T]:
    found: dict[str, T] = {}
    brings = getattr(manager.hook, hook).get_hookimpls()
    for implementation in sorted(brings, key=lambda one: _rank(one.plugin_name)):
        owner = implementation.plugin_name
        try:
            brought = implementation.function()
        except KeyboardInterrupt:
            raise
        except BaseException as error:
            says = f"{type(error).__name__}: {error}"
            raise HostError(f"plugin `{owner}` fails in {hook}: {says}") from error
        if not isinstance(brought, list | tuple):
            raise HostError(f"plugin `{owner}` must return a list from {hook}")
        for item in brought:
            wrong = _wrong_with(item, wanted)
            if wrong:
                raise HostError(f"plugin `{owner}` brings {wrong} from {hook}")
            if item.name in found:
                raise HostError(
                    f"`{item.name}` comes from both `{owners[item.name]}` and `{owner}`:"
                    " rename one of them"
                )
            found[item.name] = item
            owners[item.name] = owner
    return found


def _rank(owner: str) -> tuple[bool, str]:
    """Ours come first, then those of others by name: the order of loading never matters."""
    return owner != _CORE, owner


def _wrong_with(item: object, wanted: type[object] | UnionType) -> str:
    """What is wrong with a thing that a plugin brought, in words; empty if nothing is."""
    if not isinstance(item, wanted):
        return f"`{item!r:.60}`, which is no {getattr(wanted, '__name__', 'quantity')}"
    if not isinstance(item, Rule):
        return ""
    if item.level not in get_args(Level):
        known = ", ".join(get_args(Level))
        return f"the rule `{item.name}` of level `{item.level}`: take one of {known}"
    if not (isinstance(item.subject, type) and issubclass(item.subject, Subject)):
        return f"the rule `{item.name}`, whose subject {item.subject!r} is none that a plan has"
    if not callable(item.check):
        return f"the rule `{item.name}`, whose `check` is no function"
    return ""
