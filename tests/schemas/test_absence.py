"""No field that is left out takes a check with it in silence: the report lists the field as open.

Where it need not, the schema says what its absence means: `absent: "none: ..."` where there is no
such thing, `absent: "default: ..."` where something usual is taken. All of them are listed in
`absences.yaml`.
"""

from __future__ import annotations

import json
import re
from collections.abc import Iterable, Iterator, Mapping
from pathlib import Path
from typing import Any

import pytest
import yaml

import wellstrung_schemas as schemas
from generated.plans import seeded
from running import ROOT, SAMPLES, Pinned
from turns import some
from wellstrung.derived.of_plan import Quantities
from wellstrung.judging.judge import Judge
from wellstrung.model import build
from wellstrung.plugins.host import Host
from wellstrung.reading import parser
from wellstrung.reading import schema as shape
from wellstrung.reading.settings import Bench
from wellstrung.short_forms import spelled_out
from wellstrung.subjects.find import find
from wellstrung.testing.cases import cases

Schema = Mapping[str, Any]
Fields = tuple[str | int, ...]
RIGHT = sorted(SAMPLES.glob("*.yaml"))
CASES = sorted((ROOT / "tests" / "rules").glob("*/*.yaml"))
CHANCES = 6


def entries(value: Any) -> Iterable[tuple[str | int, Any]]:
    """The fields of a group or the items of a list, by name or by number."""
    if isinstance(value, dict):
        return value.items()
    return enumerate(value) if isinstance(value, list) else ()


def schema_of(path: Fields, value: Any, holder: Schema) -> Schema:
    """The schema of a value in the schema that holds it; of parts by kind, of steps by verb."""
    match path:
        case ("parts", _):
            kind = value.get("kind") if isinstance(value, dict) else None  # or it is a phrase
            return schemas.fragment(kind) if kind in KINDS else {}
        case ("work", int()):
            return schemas.verbs()[value["do"]] if isinstance(value, dict) else {}  # or a phrase
        case (*_, int()):
            found = holder.get("items", {})
        case (*_, name):
            rest = holder.get("additionalProperties")
            found = holder.get("properties", {}).get(name) or rest
    return found if isinstance(found, dict) else {}


def optional(value: Any, schema: Schema, path: Fields = ()) -> Iterator[Fields]:
    """Every field that is written and may be left out, and whose absence means nothing."""
    for name, inner in entries(value):
        here = (*path, name)
        its = schema_of(here, inner, schema)
        free = name in schema.get("properties", ()) and name not in schema.get("required", ())
        if free and "absent" not in its:
            yield here
        yield from optional(inner, its, here)


def without(value: Any, path: Fields) -> Any:
    """A plan without one of its fields."""
    first, *rest = path
    changed = value.copy()
    if rest:
        changed[first] = without(value[first], tuple(rest))
    else:
        del changed[first]
    return changed


def called(plan: Any, path: Fields) -> str:
    """A field by its kind or verb, or its heading, whatever the names in the plan."""
    match path:
        case ("parts", name, *_) if len(path) > 2:
            head = plan["parts"][name]["kind"]
        case ("work", int(number), *_):
            head = plan["work"][number]["do"]
        case _:
            return ".".join(name for name in path if isinstance(name, str))
    return ".".join([head, *(name for name in path[2:] if isinstance(name, str))])


def given_otherwise(plan: Any, path: Fields) -> bool:
    """Whether another field gives the same: turns of memory wire the length of its strand."""
    if path[0] != "parts" or path[2:] != ("length",):
        return False
    thread = plan["parts"][path[1]].get("thread")
    return isinstance(thread, dict) and "turns" in thread


class Judged:
    """The rules that judged each part ("" for any), and the fields that open checks name."""

    def __init__(self, judge: Judge) -> None:
        about = [*judge.raised]
        about += [(check.rule, check.parts) for check in judge.held]
        about += [(check.rule, check.parts) for check in judge.unjudged]
        self._rules = {(rule, part) for rule, parts in about for part in (*parts, "")}
        self._lacks = [field for check in judge.unjudged for field in check.missing]

    def rules(self, part: str) -> set[str]:
        return {rule for rule, about in self._rules if about == part}

    def lacks(self, name: str, part: str) -> bool:
        """Whether an open check names a field, and the part that lacks it."""
        of_it = [field for field in self._lacks if f"`{part}`" in field or not part]
        return any(re.search(rf"\b{name}\b", field) for field in of_it)


class Trials:
    """Plans judged by all rules, and the fields that were tried."""

    def __init__(self, installed: Host) -> None:
        self._installed = installed
        self._known = shape.Known({name: kind.fragment for name, kind in installed.kinds.items()})
        self.tried: set[str] = set()

    def judged(self, text: str) -> tuple[Any, Judged] | None:
        """A plan and what the rules say of it; None where it is no plan, or has a drawer."""
        here, read = self._installed, parser.read_text(text, "plan.yaml")
        if read.tree is None or read.faults or "drawer" in read.tree.value:
            return None
        own, said = spelled_out(read, self._known.kinds, here.stitches)
        if said or shape.check(own, self._known):
            return None
        plan, _ = build.build(own, here.kinds, here.stitches, Bench(limits=here.limits), None)
        if plan is None:
            return None
        judge = Judge(here, plan, Quantities(plan, here.quantities))
        judge.run(find(plan))
        assert not judge.failures, judge.failures[0].says
        return read.tree.value, Judged(judge)

    def lost(self, text: str, *, once: bool) -> Iterator[str]:
        """The fields that take rules with them and that no open check names then.

        A field is tried `once`, or again wherever what it stands in is written otherwise.
        """
        before = self.judged(text)
        if before is None:
            return
        plan, as_written = before
        for path in optional(plan, schemas.plan()):
            of_item = path[0] in ("parts", "beads") and len(path) > 2
            about = str(path[1]) if of_item else ""
            trial = called(plan, path)
            if not once:
                trial += json.dumps(plan[path[0]][path[1]] if len(path) > 2 else plan[path[0]])
            if trial in self.tried or given_otherwise(plan, path):
                continue
            self.tried.add(trial)
            left = self.judged(json.dumps(without(plan, path)))
            if left is None or left[1].lacks(str(path[-1]), about):
                continue
            if gone := as_written.rules(about) - left[1].rules(about):
                yield f"without {'.'.join(map(str, path))} there is no {', '.join(sorted(gone))}"


KINDS = schemas.kind_names()


def test_what_the_absence_of_a_field_means_is_listed(pinned: Pinned) -> None:
    found: dict[str, list[str]] = {}

    def gather(schema: Schema, path: str) -> None:
        for name, field in schema.get("properties", {}).items():
            here = f"{path}.{name}" if path else name
            if meaning := field.get("absent"):
                assert meaning.startswith(("none: ", "default: ")), here
                found.setdefault(meaning, []).append(here)
            rest = field.get("additionalProperties")
            for inner in (field, field.get("items"), rest):
                gather(inner if isinstance(inner, dict) else {}, here)

    gather(schemas.plan(), "")
    for name, schema in {**schemas.verbs(), **{k: schemas.fragment(k) for k in KINDS}}.items():
        gather(schema, name)
    pinned(Path(__file__).with_name("absences.yaml"), yaml.safe_dump(found, width=100))


def test_a_field_left_out_of_a_right_sample_takes_no_check_with_it(installed: Host) -> None:
    trials = Trials(installed)
    for file in RIGHT:
        assert [*trials.lost(file.read_text(encoding="utf-8"), once=True)] == [], file.name
    assert len(trials.tried) > 200


@pytest.fixture(scope="module")
def trials(installed: Host) -> Trials:
    """What the cases share they try once."""
    return Trials(installed)


@pytest.mark.slow
@pytest.mark.parametrize("file", some(CASES, 10), ids=lambda file: file.name.removesuffix(".yaml"))
def test_nor_out_of_the_plan_of_a_case(file: Path, trials: Trials) -> None:
    for case in cases(file):
        assert [*trials.lost(case.text, once=False)] == [], str(case)


@pytest.mark.slow
@pytest.mark.parametrize(
    "file", some(sorted(SAMPLES.rglob("*.yaml")), 6), ids=lambda file: file.stem
)
def test_nor_out_of_any_sample(file: Path, trials: Trials) -> None:
    assert [*trials.lost(file.read_text(encoding="utf-8"), once=False)] == []


@pytest.mark.slow
def test_nor_out_of_plans_by_chance(installed: Host) -> None:
    for text in some(seeded(CHANCES), 2):
        assert [*Trials(installed).lost(text, once=False)] == [], text
