"""What is generated is right to read, comes out alike each time, and leaves nothing out."""

from __future__ import annotations

import tempfile
from collections import Counter
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

import pytest
import yaml
from hypothesis import HealthCheck, given, settings

from generated import program
from generated.folders import Folder, folders, seeded_folders
from generated.kinds import KINDS, OnePart, one_of_kind, seeded_kind
from generated.plans import PIECES, plans, seeded
from wellstrung.plugins import host

pytestmark = pytest.mark.slow

CHECKED = 5 * len(PIECES)
IN_FOLDERS = len(PIECES)
#: enough for fields that a maker seldom writes
READ = 1200

#: rules that no generated plan is judged by, each with its reason
NOT_JUDGED: Mapping[str, str] = {
    "bench-limit": "limits of a bench to sizes: tests/rules/bench/bench-limit.yaml has them",
    **dict.fromkeys(
        (
            "bead-cap",
            "bezel-rise",
            "cost-limit",
            "cup-end",
            "first-row",
            "hoop-beads",
            "row-beads",
            "safety-chain",
            "stone-first",
            "top-drilled",
        ),
        "what it looks at is seldom drawn: its own cases in tests/rules have it",
    ),
    "bead-type": "it asks which of two a word means, and judges nothing",
    "line-type": "it asks which of several a word means, and judges nothing",
}
#: fields and words that no generated plan has, each with its reason
_REPEATED = "tests/generated/test_repeat.py writes generated runs with it"
_SOLD = "as shops sell it: tests/generated/test_sold.py and tests/ordinary/sold have it"
_RARE = "seldom written: tests/schemas/test_every_field.py has every field and word"
_SOLD_KINDS = (
    "bead tip", "clasp", "cone", "ear post", "ear wire", "jump ring",
    "spacer bar", "spectacle loop", "wire link",
)  # fmt: skip
NOT_WRITTEN: Mapping[tuple[str, ...], str] = {
    **{(kind, "size"): _SOLD for kind in _SOLD_KINDS},
    **{
        path: _SOLD
        for path in (
            *(("chain", "type", f"= {word}") for word in ("cable", "rolo", "curb")),
            ("clasp", "ring", "inside"),
            ("plan", "supplies", "strand"),
            ("plan", "supplies", "strands"),
            ("plan", "supplies", "sold_as", "= loop"),
        )
    },
    **{
        path: _RARE
        for path in (
            ("bead drop", "needle"),
            ("bead tip", "measured", "hole"),
            ("beaded bead", "note"),
            ("beaded bead", "source"),
            ("braid", "measured", "mass"),
            ("braid", "note"),
            ("brooch pin", "note"),
            ("clasp", "sliding", "knot"),
            ("core", "note"),
            ("crimp cover", "note"),
            ("ear post", "type", "= pad"),
            ("edge", "note"),
            ("edge", "takes"),
            ("embroidered cabochon", "stone", "shape", "= round"),
            ("end bar", "note"),
            ("end cap", "takes", "= wire"),
            ("end bar", "size"),
            ("french wire", "size", "= heavy"),
            ("plan", "beads", "*", "drilled", "= through"),
            ("ring weave", "note"),
            ("spacer bar", "source"),
            *(
                ("embroidered cabochon", eyes, *field)
                for eyes in ("top_eyes", "bottom_eyes")
                for field in (
                    ("edge",),
                    ("faces",),
                    ("faces", "= front"),
                    ("faces", "= side"),
                    ("spacing",),
                    ("through",),
                )
            ),
        )
    },
    ("plan", "run", "repeat"): _REPEATED,
    ("plan", "run", "of"): _REPEATED,
    **{
        (verb, "times"): "one step makes each part once; the tests of hours have it"
        for verb in (
            "weave",
            "slide",
            "close ring",
            "cut",
            "measure",
            "string",
            "clean",
            "take apart",
        )
    },
    ("plan", "accept", "part"): "no part draws a sure warning; tests/checker/judging has some",
    ("plan", "metal"): "each part states its own; tests/checker/short_forms/test_words.py",
}

few = settings(
    max_examples=15,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large],
)


@pytest.fixture(scope="module")
def reports(tmp_path_factory: pytest.TempPathFactory) -> list[dict[str, Any]]:
    """The reports on seeded plans, and on seeded plans with files of their own beside them."""
    files = {f"plans/{n:04}.yaml": text for n, text in enumerate(seeded(CHECKED))}
    for n, folder in enumerate(seeded_folders(IN_FOLDERS)):
        files |= {f"folders/{n:04}/{name}": text for name, text in folder.files().items()}
    report = program.checked(tmp_path_factory.mktemp("generated"), files)
    assert report["failures"] == []
    assert len(report["plans"]) == CHECKED + IN_FOLDERS
    reported: list[dict[str, Any]] = report["plans"]
    return reported


def refused(report: dict[str, Any]) -> list[str]:
    """What is said of a plan that cannot be read or built."""
    return [
        f"{plan['file']}: {remark['says']}"
        for plan in report["plans"]
        for remark in plan["remarks"]
        if remark["rule"].startswith("plan-")
    ]


def faults(*texts: str) -> list[str]:
    """What keeps plans from being read and built; fails where the program breaks."""
    with tempfile.TemporaryDirectory() as folder:
        named = {f"{n:04}.yaml": text for n, text in enumerate(texts)}
        report = program.checked(Path(folder), named)
    assert report["failures"] == []
    return refused(report)


def test_every_plan_is_read_and_built(reports: list[dict[str, Any]]) -> None:
    assert refused({"plans": reports}) == []


def test_most_can_be_made_and_some_are_near_a_limit(reports: list[dict[str, Any]]) -> None:
    outcomes = Counter(plan["outcome"] for plan in reports)
    assert outcomes["not makeable"] < 0.4 * len(reports)
    assert outcomes["makeable"] > 0.15 * len(reports)
    levels = Counter(remark["level"] for plan in reports for remark in plan["remarks"])
    assert min(levels["error"], levels["warning"], levels["caution"]) > len(reports) / 10


def test_every_rule_judges_something(reports: list[dict[str, Any]]) -> None:
    judged = {entry["rule"] for plan in reports for entry in (*plan["remarks"], *plan["held"])}
    assert set(program.rules()) - judged == set(NOT_JUDGED)


def test_every_kind_every_stitch_and_every_clasp_is_there() -> None:
    parts = [part for text in seeded(READ) for part in _read(text)["parts"].values()]
    assert {part["kind"] for part in parts} == set(program.kinds())
    assert {part["stitch"] for part in parts if "stitch" in part} == _stitches()
    clasps = {part["type"] for part in parts if part["kind"] == "clasp"}
    assert clasps == set(program.kinds()["clasp"]["properties"]["type"]["enum"])


def _read(text: str) -> dict[str, Any]:
    plan: dict[str, Any] = yaml.load(text, yaml.CBaseLoader)
    return plan


def _stitches() -> set[str]:
    """Every stitch that a plan can name, by what is installed."""
    return set(host.load().stitches)


def test_every_field_is_written_somewhere() -> None:
    written: set[tuple[str, ...]] = set()
    for text in (*seeded(READ), *(folder.plan for folder in seeded_folders(IN_FOLDERS))):
        plan = _read(text)
        for part in plan.pop("parts").values():
            written |= set(_paths(part, (part.get("kind", "in a drawer"),)))
        for step in plan.pop("work", []):
            written |= set(_paths(step, (step["do"],)))
        written |= set(_paths(plan, ("plan",)))
    known = {path for name, schema in _schemas().items() for path in _fields(schema, (name,))}
    assert {path for path in known if path not in written} == set(NOT_WRITTEN)


def _schemas() -> dict[str, dict[str, Any]]:
    plan = dict(program.plan_schema()["properties"])
    del plan["parts"], plan["work"]
    return {**program.kinds(), **program.verbs(), "plan": {"properties": plan}}


def _fields(schema: dict[str, Any], start: tuple[str, ...]) -> Iterator[tuple[str, ...]]:
    """Every field of a schema, and every word that it lets one choose."""
    for name, field in schema.get("properties", {}).items():
        path = (*start, name)
        yield path
        for inner in (field, field.get("items", {})):
            yield from ((*path, f"= {word}") for word in inner.get("enum", ()))
            yield from _fields(inner, path)
    others = schema.get("additionalProperties")
    if isinstance(others, dict):
        yield from _fields(others, (*start, "*"))


_NAMED_BY_THEIR_AUTHOR = (
    ("plan", "beads"),
    ("chain", "links"),
    ("plan", "repair", "came", "beads"),
    ("plan", "repair", "came", "parts"),
)


def _paths(node: Any, start: tuple[str, ...]) -> Iterator[tuple[str, ...]]:
    """Every field of a plan, and every word; of what has names of its own, by a star."""
    if isinstance(node, dict):
        own_names = start in _NAMED_BY_THEIR_AUTHOR
        for name, value in node.items():
            path = (*start, "*" if own_names else name)
            yield path
            yield from _paths(value, path)
    elif isinstance(node, list):
        for value in node:
            yield from _paths(value, start)
    else:
        yield (*start, f"= {node}")


def test_seeded_plans_come_out_alike() -> None:
    assert seeded(40) == seeded(80)[:40]
    assert seeded(40) != seeded(40, seed=1)
    assert len(set(seeded(200))) == 200
    assert seeded_folders(20) == seeded_folders(40)[:20]
    assert seeded_kind("clasp", 5) == seeded_kind("clasp", 9)[:5]


def test_there_is_a_strategy_for_every_kind() -> None:
    assert set(KINDS) == set(program.kinds())
    with pytest.raises(ValueError, match="no kind called `caps`"):
        one_of_kind("caps")


def test_a_part_of_every_kind_is_read_and_built() -> None:
    made = [part for kind in KINDS for part in seeded_kind(kind, 8)]
    assert all(part.fields["kind"] in KINDS for part in made)
    assert faults(*(part.text for part in made)) == []


@pytest.mark.parametrize("kind", ["clasp", "strand", "woven rope"])
def test_a_part_of_a_kind_can_be_drawn(kind: str) -> None:
    @few
    @given(one_of_kind(kind))
    def drawn(part: OnePart) -> None:
        assert part.fields["kind"] == kind
        assert faults(part.text) == []

    drawn()


@few
@given(plans())
def test_drawn_plans_are_read_and_built(text: str) -> None:
    assert faults(text) == []


@few
@given(folders())
def test_drawn_plans_with_files_beside_them_are_read_and_built(folder: Folder) -> None:
    with tempfile.TemporaryDirectory() as lies_in:
        report = program.checked(Path(lies_in), folder.files())
    assert report["failures"] == []
    assert refused(report) == []
