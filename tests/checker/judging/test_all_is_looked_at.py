"""Nothing that touches goes unjudged in silence, in the samples, the cases and generated plans.

Each part of a piece, and each two that meet or hang together, has a check of fit, join or count: it
holds, it is remarked on, or it is open with the field to write.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import product
from pathlib import Path
from typing import Any

import pytest
import yaml

from generated.draft import Fields
from generated.kinds import KINDS, OnePart, seeded_kind
from generated.plans import seeded
from turns import some
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import HeldCheck, PlanResult, Remark, Unjudged
from wellstrung.model.parts import WOVEN_WORK, Part, Role
from wellstrung.model.plan import Plan
from wellstrung.plugins.host import Host
from wellstrung.subjects.counts import has_place
from wellstrung.testing.cases import cases

ROOT = Path(__file__).parents[3]
SAMPLES = sorted((ROOT / "sample_plans").rglob("*.yaml"))
CASES = sorted((ROOT / "tests" / "rules").rglob("*/*.yaml"))
FAMILIES = {"fit", "joining", "count"}
#: looks at every name, whether or not it meets anything
BY_NAME = "part-use"
#: made of thread and beads: one is sewn to the other, and nothing of either has to fit
SOFT = WOVEN_WORK | {Role.STRAND, Role.DROP}


def touching(plan: Plan) -> Iterator[tuple[Part, Part]]:
    """Each two parts that meet in the run, or of which one hangs from the other."""
    for before, after in plan.neighbours:
        yield from ((one, other) for one in before.parts for other in after.parts)
    for line in plan.hung:
        if line.by is None:
            yield line.part, line.source
        else:
            yield from ((line.part, line.by), (line.by, line.source))


def silent(result: PlanResult, host: Host) -> list[str]:
    """The parts and the contacts that no check of the report is about.

    Knots of the piece's own cord that slide fit it as they are tied.
    """
    if result.ask is None:
        return []  # the plan was refused
    plan, looked = result.ask.plan, set[frozenset[str]]()
    fits = {name for name, rule in host.rules.items() if rule.family in FAMILIES} - {BY_NAME}
    entries: list[HeldCheck | Remark | Unjudged] = [*result.held, *result.remarks]
    for entry in (*entries, *result.unjudged):
        if entry.rule in fits:
            looked |= {frozenset((one, other)) for one in entry.parts for other in entry.parts}
    # a remark may hide what another rule says of the same part
    remarked = {name for one in result.remarks if one.rule in fits for name in one.parts}
    looked |= {frozenset((one.name,)) for one in has_place(plan) if one.traits.slides}
    alone = [part.name for part in has_place(plan) if frozenset((part.name,)) not in looked]
    return alone + [
        f"{one.name} and {other.name}"
        for one, other in touching(plan)
        if not {one.kind.role, other.kind.role} <= SOFT
        if frozenset((one.name, other.name)) not in looked
        if not remarked & {one.name, other.name}
        if not (one.traits.slides or other.traits.slides)
    ]


#: the fields by which a part names beads and other parts
NAMING = {
    "beads",
    "core_bead",
    "outer",
    "turn",
    "core",
    "covers",
    "cover",
    "behind",
    "over",
    "of",
    "spool",
}


def renamed(made: OnePart, more: str) -> tuple[str, Fields, Fields]:
    """A part and all it names under names of their own, so that two stand in one plan."""
    names = {*made.parts, *made.beads}

    def new(name: Any) -> Any:
        if isinstance(name, list):
            return [new(one) for one in name]
        if isinstance(name, dict):
            return {new(key): value for key, value in name.items()}
        return f"{name} {more}" if name in names else name

    def fields(value: Any) -> Any:
        if not isinstance(value, dict):
            return value
        return {key: new(one) if key in NAMING else fields(one) for key, one in value.items()}

    beads, parts = (
        {new(name): fields(value) for name, value in items.items()}
        for items in (made.beads, made.parts)
    )
    return new(made.name), beads, parts


def two_together(one: OnePart, other: OnePart) -> Iterator[str]:
    """Plans in which two parts meet in the run, or one hangs from the other in every way."""
    (first, beads, parts), (second, more, others) = renamed(one, "one"), renamed(other, "two")
    small = {"kind": "jump ring", "inside": "6 mm", "wire": "1 mm", "closing": "open"}
    plan: Fields = {"plan": 1, "title": "Two together", "piece": "necklace"}
    plan |= {"beads": {**beads, **more}} if beads or more else {}
    parts = {**parts, **others, "small": small}
    halves = [f"{name}.a" if parts[name]["kind"] == "clasp" else name for name in (first, second)]
    ways: list[Fields] = [{}, {"by": "thread"}, {"by": "small"}]
    hung = [{"part": first, "from": second, **way} for way in ways]
    forms: list[Fields] = [{"run": halves}, *({"run": halves[1:], "hung": [line]} for line in hung)]
    yield from (yaml.safe_dump({**plan, "parts": parts, **form}, width=1000) for form in forms)


def unlooked_at(texts: dict[str, str], host: Host) -> dict[str, list[str]]:
    checker = Checker(host, quantities=True, trials=0)
    found = {name: silent(checker.check_text(text, name), host) for name, text in texts.items()}
    return {name: silences for name, silences in found.items() if silences}


def test_every_contact_of_a_sample_is_looked_at(installed: Host) -> None:
    texts = {str(path): path.read_text(encoding="utf-8") for path in SAMPLES}
    assert unlooked_at(texts, installed) == {}


@pytest.mark.slow
def test_every_contact_of_a_generated_plan_is_looked_at(installed: Host) -> None:
    texts = {f"plan {number}": text for number, text in enumerate(seeded(80))}
    assert unlooked_at(texts, installed) == {}


@pytest.mark.slow
def test_every_two_kinds_side_by_side_or_hung_are_looked_at(installed: Host) -> None:
    """Each two kinds in some of the ways that there are; their neighbours have the others."""
    made = {kind: next(iter(seeded_kind(kind, 1))) for kind in KINDS}
    every = [
        (f"{one}, {other}, way {way}", text)
        for one, other in product(KINDS, repeat=2)
        for way, text in enumerate(two_together(made[one], made[other]))
    ]
    texts = dict(some(every, 17))
    found = unlooked_at(texts, installed)
    assert {name for name, what in found.items() if any(" and " in one for one in what)} == set()


@pytest.mark.slow
def test_every_contact_of_some_cases_is_looked_at(installed: Host) -> None:
    every = [case for file in CASES for case in cases(file)]
    texts = {case.text: f"{case.rule}: {case.name}" for case in some(every, 8)}
    assert unlooked_at({name: text for text, name in texts.items()}, installed) == {}
