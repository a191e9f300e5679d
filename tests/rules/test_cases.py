"""Every case of every rule: the whole answer, word for word; and the remedies that they offer."""

from __future__ import annotations

import ast
import inspect
import re
import sys
from functools import cache
from pathlib import Path

import pytest
import yaml

from wellstrung.judging.checker import Checker
from wellstrung.plugins.host import Host
from wellstrung.reading import tree
from wellstrung.testing import TEXTS, Case, answer, cases, judged, rewritten

FILES = sorted(Path(__file__).parent.rglob("*/*.yaml"))
#: a ring and a glued joint always have what they need, from plan or tables; the others count
ALWAYS_JUDGED = {
    "cure-time", "earwire-gauge", "fringe-lengths", "join-made", "pair-complete", "part-use",
    "ring-gauge", "step-parts", "strand-holes",
}  # fmt: skip


def ruled(file: Path) -> str:
    """A rule with a second plan to change has a second file: `cap-bore.nub.yaml`."""
    return file.name.partition(".")[0]


@cache
def cases_of(file: Path) -> list[Case]:
    return list(cases(file))


def pytest_generate_tests(metafunc: pytest.Metafunc) -> None:
    """A test for each case; with `-k RULE`, only the files of that rule are read."""
    for name in {"case", "misfit"} & set(metafunc.fixturenames):
        wanted = metafunc.config.getoption("keyword")
        files = [file for file in FILES if ruled(file) == wanted] or FILES
        found = [case for file in files for case in cases_of(file)]
        if name == "misfit":
            found = [case for case in found if case.expect in ("error", "warning")]
        metafunc.parametrize(name, found, ids=str)


def test_case(case: Case, checker: Checker, request: pytest.FixtureRequest) -> None:
    found, pinned = answer(case, checker), {"expect": case.expect, **case.pinned}
    in_words = {key for key in found if found[key] != pinned.get(key)} <= TEXTS
    if request.config.getoption("--rewrite-answers"):
        rewritten(case, found, pinned.keys())
    elif request.config.getoption("--rewrite") and in_words:
        rewritten(case, found)
        pinned |= {key: found[key] for key in TEXTS & found.keys() & pinned.keys()}
    assert found == pinned


def test_an_offered_edit_removes_the_remark_and_brings_no_other(
    misfit: Case, checker: Checker
) -> None:
    checker = judged(misfit, checker)
    before = checker.check_text(misfit.text)
    for remark in before.remarks:
        if not remark.edits or remark.rule != misfit.rule:
            continue  # what another rule offers is tried in the cases of that rule
        edits = [(edit.place, edit.new) for edit in remark.edits]
        after = checker.check_text(tree.replaced(misfit.text, edits))
        assert after.readable
        known = {(old.rule, old.parts) for old in before.remarks}
        known |= {(rule, ()) for old in before.remarks for rule in old.affects}
        left = {(new.rule, new.parts) for new in after.remarks if new.counts}
        assert (remark.rule, remark.parts) not in left
        assert all((rule, parts) in known or (rule, ()) in known for rule, parts in left)


def test_every_rule_has_its_cases_and_every_case_file_its_rule(installed: Host) -> None:
    named = {ruled(file) for file in FILES}
    without = [
        f"{rule.family}/{name}.yaml" for name, rule in installed.rules.items() if name not in named
    ]
    assert not without, (
        f"write tests/rules/{without[0]}, as `wellstrung.testing` describes a case file"
    )
    assert not named - set(installed.rules), "a case file of no rule: remove or rename it"
    for file in FILES:
        assert installed.rules[ruled(file)].family == file.parent.name
        read = yaml.load(file.read_text(encoding="utf-8"), Loader=yaml.CSafeLoader)
        assert read["rule"] == ruled(file)


def test_every_rule_has_a_case_kept_one_broken_and_one_it_cannot_judge(installed: Host) -> None:
    answers: dict[str, set[str]] = {}
    for case in (case for file in FILES for case in cases_of(file)):
        answers.setdefault(case.rule, set()).add(case.expect)
    for name, rule in installed.rules.items():
        found = answers.get(name, set())
        if rule.level == "caution":
            assert {"caution", "silent"} <= found, f"{name} needs a case `caution` and one `silent`"
            continue
        assert "held" in found, f"{name} needs a case that is held"
        assert found & {"error", "warning"}, (
            f"{name} needs a case with `expect: error` or `warning`"
        )
        assert "unjudged" in found or name in ALWAYS_JUDGED, f"{name} needs a case `unjudged`"


def test_every_rule_names_its_sources_and_shows_a_line(installed: Host) -> None:
    for rule in installed.rules.values():
        assert rule.sources and all(rule.sources), rule.name
        assert rule.good and rule.why and rule.title[0].islower(), rule.name
        assert not rule.title.endswith("."), rule.name


def test_a_rule_declares_the_limits_it_asks_for(installed: Host) -> None:
    """A limit that is asked for and not declared could not be set in a bench file."""
    for rule in installed.rules.values():
        source = inspect.getsource(sys.modules[rule.check.__module__])
        asked = set(re.findall(r"ask\.limit\((\w+)\)", source))
        module = vars(sys.modules[rule.check.__module__])
        named = {module[name] for name in asked if name in module}
        assert named <= set(rule.limits), rule.name


LONGEST_RULE = 60  # lines of functions: what fits on one screen


def test_a_rule_reads_on_one_screen(installed: Host) -> None:
    """Lines of its functions, without blanks, comments and docstrings."""
    for rule in installed.rules.values():
        source = inspect.getsource(sys.modules[rule.check.__module__])
        functions = [one for one in ast.parse(source).body if isinstance(one, ast.FunctionDef)]
        lines = sum(_lines(one, source.splitlines()) for one in functions)
        assert lines <= LONGEST_RULE, f"{rule.name}: {lines} lines"


def _lines(function: ast.FunctionDef, source: list[str]) -> int:
    first = function.body[0]
    text = ast.get_docstring(function) is not None
    documented = set(range(first.lineno, (first.end_lineno or 0) + 1)) if text else set()
    numbers = range(function.lineno, (function.end_lineno or 0) + 1)
    code = [source[n - 1].strip() for n in numbers if n not in documented]
    return sum(bool(line) and not line.startswith("#") for line in code)
