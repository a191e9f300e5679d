"""Every field of every kind, of every step and of a plan left out, and given what it cannot be."""

from __future__ import annotations

import copy
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any

import pytest
import yaml

from generated.kinds import seeded_kind
from generated.plans import seeded
from generated.survives import survives
from running import SAMPLES
from turns import some
from wellstrung.judging.checker import Checker
from wellstrung.plugins.host import Host
from wellstrung_schemas import fragment, kind_names, plan, verbs

#: what a field may be given, whatever it should be
WRONG: tuple[Any, ...] = (
    None, True, "", " ", "no such word", "8", "8 mm", "-8 mm", "0 mm", "8 mm ± 9 mm", "1/0 in", 0,
    1, -3, 2.5, 1e308, float("inf"), float("nan"), 10**30, "9" * 400, "a\u202e\x07b", [], [[]], [0],
    ["8 mm"], ["x", "x"], {}, {"x": 1}, {"kind": "end cap"}, {"kind": {}}, {"hole": "8 mm"},
    {"count": -1}, {"type": []}, "2026-01-01",
)  # fmt: skip
#: so many of all changes are tried in the quick suite
QUICK = 40

Path_ = tuple[str | int, ...]


def fields(schema: Any, at: Path_ = ()) -> Iterator[Path_]:
    """The path of every field that a schema knows; the first item and name where there are any."""
    for name, field in schema.get("properties", {}).items():
        yield (*at, name)
        yield from fields(field, (*at, name))
    for inner in ("items", "additionalProperties"):
        if isinstance(schema.get(inner), dict):
            yield from fields(schema[inner], (*at, 0))
    for other in ("anyOf", "oneOf", "allOf"):
        for one in schema.get(other, ()):
            yield from fields(one, at)


def changed(data: Any, path: Path_, value: Any = None, *, without: bool = False) -> Any:
    """Data with another value at a path, or none; what is missing on the way is put in."""
    if isinstance(path[0], int):
        data = data if isinstance(data, (list, dict)) and data else [{}]
        key = path[0] if isinstance(data, list) else next(iter(data))
    else:
        data = data if isinstance(data, dict) else {}
        key = path[0]
    data = copy.copy(data)
    if len(path) > 1:
        inner = data[key] if isinstance(data, list) else data.get(key)
        data[key] = changed(inner, path[1:], value, without=without)
    elif not without:
        data[key] = value
    elif isinstance(data, list) or key in data:
        del data[key]
    return data


#: of the wrong values each so many-th is tried, by turns over the fields
TURN = 13


@cache
def plans_with() -> dict[tuple[str, str], tuple[Any, Path_]]:
    """A plan that has each kind and each step, and where in it that stands."""
    found: dict[tuple[str, str], tuple[Any, Path_]] = {}
    texts = [*seeded(240), *(seeded_kind(kind, 1)[0].text for kind in kind_names())]
    # a stone with an edge is too rare among them for a step that sews it
    lamp = (SAMPLES / "roadstead_lamp_pendant.yaml").read_text(encoding="utf-8")
    texts.append(lamp.replace("- {do: weave, part: lamp}", "- {do: edge, part: lamp}"))
    for text in texts:
        data = yaml.load(text, yaml.CSafeLoader)
        for name, part in data["parts"].items():
            found.setdefault(("kind", part["kind"]), (data, ("parts", name)))
        for number, step in enumerate(data.get("work", ())):
            found.setdefault(("step", step["do"]), (data, ("work", number)))
        found.setdefault(("plan", "plan"), (data, ()))
    return found


def changes(what: str, name: str) -> list[Any]:
    """Every plan with one field of a kind, a step or the plan itself missing or wrong."""
    schema = plan() if what == "plan" else fragment(name) if what == "kind" else verbs()[name]
    data, at = plans_with()[what, name]
    paths = list(dict.fromkeys((*at, *path) for path in fields(schema)))
    missing = [changed(data, path, without=True) for path in paths]
    wrong = [changed(data, path, value) for path in paths for value in WRONG]
    return [*missing, *some(wrong, TURN)]


ALL = [("plan", "plan"), *(("kind", kind) for kind in kind_names()),
       *(("step", verb) for verb in verbs())]  # fmt: skip


def broken(tried: list[Any], folder: Path, checker: Checker) -> list[str]:
    """What breaks, with the plan that does it."""
    found = []
    for data in tried:
        text = yaml.dump(data, Dumper=yaml.CSafeDumper, sort_keys=False, allow_unicode=True)
        try:
            survives(checker, folder / "plan.yaml", text.encode())
        except Exception as error:  # each is listed
            found.append(f"{type(error).__name__}: {error}\n{text}")
    return found


@pytest.mark.slow
@pytest.mark.parametrize(("what", "name"), ALL)
def test_a_field_that_is_missing_or_wrong_breaks_nothing(
    what: str, name: str, tmp_path: Path, installed: Host
) -> None:
    assert not broken(changes(what, name), tmp_path, Checker(installed, trials=0))


def test_some_of_them_break_nothing(tmp_path: Path, installed: Host) -> None:
    checker = Checker(installed, trials=0)
    tried = [one for what, name in ALL for one in changes(what, name)]
    assert not broken(tried[:: len(tried) // QUICK], tmp_path, checker)
