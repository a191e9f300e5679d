"""The library: plain records that travel between threads and processes, and no word printed."""

from __future__ import annotations

import pickle
from collections.abc import Iterator
from concurrent.futures import Executor, ProcessPoolExecutor, ThreadPoolExecutor
from multiprocessing import get_context
from pathlib import Path

import pytest
from msgspec import Struct
from msgspec.structs import replace

import wellstrung
from running import ROOT
from wellstrung import LoadedPlan, check, library, load_plan, quantities, supplies
from wellstrung.judging.checker import Checker
from wellstrung.plugins import host as hosts
from wellstrung.plugins.error import HostError

PLANS = [*sorted((ROOT / "sample_plans").glob("*.yaml")), ROOT / "no such plan.yaml"]


def everything(plan: LoadedPlan) -> tuple[object, ...]:
    return check(plan), quantities(plan), supplies([plan], makers=3)


def within(value: object) -> Iterator[object]:
    """A result with all that it holds."""
    yield value
    if isinstance(value, Struct):
        value = {name: getattr(value, name) for name in value.__struct_fields__}
    if isinstance(value, dict):
        value = list(value.values())
    if isinstance(value, list | tuple):
        for one in value:
            yield from within(one)


@pytest.mark.slow
def test_threads_and_processes_give_the_same_as_one_after_another() -> None:
    loaded = [load_plan(path) for path in PLANS]
    alone = [[plan] for plan in loaded]

    def by(pool: Executor) -> list[list[object]]:
        return [
            list(pool.map(check, loaded)),
            list(pool.map(quantities, loaded)),
            list(pool.map(supplies, alone)),
        ]

    want = [list(map(check, loaded)), list(map(quantities, loaded)), list(map(supplies, alone))]
    with ThreadPoolExecutor(4) as threads:
        assert by(threads) == want
    with ProcessPoolExecutor(2, mp_context=get_context("spawn")) as processes:
        assert by(processes) == want


def test_a_result_is_data_alone() -> None:
    plan = load_plan(ROOT / "tests/plans/slack_tide_collar.yaml")
    found = everything(plan)
    assert pickle.loads(pickle.dumps((plan, found)))[1] == found
    assert not [one for one in within(found) if callable(one)]


def test_faults_of_a_file_that_is_no_plan_are_listed_and_never_raised(
    capfd: pytest.CaptureFixture[str],
) -> None:
    plan = load_plan(PLANS[-1])
    (remark,) = check(plan).remarks
    assert remark.says == f"`{PLANS[-1]}` cannot be read: no such file or directory"
    assert (quantities(plan), supplies([plan])) == ({}, ())
    assert capfd.readouterr() == ("", "")


def test_the_bench_and_the_drawer_beside_a_plan_go_with_it(tmp_path: Path) -> None:
    (tmp_path / "plan.yaml").write_text("plan: 1\ndrawer: own.yaml\n", encoding="utf-8")
    (tmp_path / "own.yaml").write_text("drawer: 1\nparts: {}\n", encoding="utf-8")
    (tmp_path / "bench.yaml").write_text("bench: 1\nlimits: {pin grip: 8 mm}\n", encoding="utf-8")
    plan = load_plan(tmp_path / "plan.yaml")
    assert plan.bench is not None and plan.bench.limits["pin grip"].value == 8
    assert plan.drawer is not None and plan.drawer.file == str(tmp_path / "own.yaml")
    (tmp_path / "bench.yaml").write_text("bench: 1\nlimits: {pin girp: 8 mm}\n", encoding="utf-8")
    with pytest.raises(HostError, match="there is no limit called `pin girp`: write `pin grip`"):
        load_plan(tmp_path / "plan.yaml")


def test_a_text_has_no_folder_to_find_a_drawer_in() -> None:
    (remark,) = check(load_plan("tag.yaml", text="plan: 1\ndrawer: own.yaml\n")).remarks
    assert remark.says.startswith("the plan was given as text, which has no folder")


def test_a_list_beside_a_plan_may_hold_the_kinds_of_plugins(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    host = hosts.load()
    kind = replace(host.kinds["end cap"], name="gangway cap")
    with_kind = replace(host, kinds={**host.kinds, kind.name: kind})
    monkeypatch.setattr(library, "_checker", lambda: Checker(with_kind))
    (tmp_path / "plan.yaml").write_text("plan: 1\ndrawer: own.csv\n", encoding="utf-8")
    (tmp_path / "own.csv").write_text("name,kind,bore\ncup,gangway cap,8 mm\n", encoding="utf-8")
    drawer = load_plan(tmp_path / "plan.yaml").drawer
    assert drawer is not None and drawer.tree is not None
    assert drawer.tree.value["parts"] == {"cup": {"kind": "gangway cap", "bore": "8 mm"}}


def test_a_name_that_is_not_offered_is_refused() -> None:
    with pytest.raises(AttributeError, match="module `wellstrung` has no `chek`"):
        wellstrung.chek  # noqa: B018 - asked for to see it refused


def test_the_example_of_the_developers_page_runs(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    page = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    _, _, rest = page.partition("## As a library\n\n```python\n")
    monkeypatch.chdir(ROOT)
    exec(rest.partition("```")[0], {})
    assert capsys.readouterr().out.startswith("makeable (")
