"""Every rule has its cases: they lie beside this file, and `wellstrung.testing` runs them."""

from __future__ import annotations

import ast
import inspect
import re
import sys
from functools import cache
from pathlib import Path

import pytest
import yaml

from turns import ALL_OF_THEM, some
from wellstrung.judging.checker import Checker
from wellstrung.plugins.host import Host
from wellstrung.testing.cases import Case, cases, judged

FILES = sorted(Path(__file__).parent.rglob("*/*.yaml"))
#: a ring and a glued joint always have what they need, from plan or tables; the others count
ALWAYS_JUDGED = {
    "asked-length", "breakaway", "closed-already", "cup-end", "cure-time", "earwire-gauge",
    "fringe-lengths", "join-made", "pair-complete", "part-use", "ring-gauge", "row-beads",
    "spectacle-ends", "step-parts", "stone-first", "strand-holes", "top-drilled",
}  # fmt: skip
#: what only asks which of two things a word means, and leaves the rest to other rules
ONLY_ASKS = {"bead-type", "line-type"}
#: remarks with edits that were tried, over the distinct plans of all cases
EDITS_OVER_THE_CASES = 2480
#: rules that advise some of their remarks in words alone: to take another part, to make it another
#: way, to measure, or something else that is no size
IN_WORDS_ALONE = {
    "as-it-came", "bead-mix", "bead-weight", "beads-enough", "bench-limit", "bezel-count",
    "bezel-rise", "bezel-round", "button-loop", "chain-enough", "child-neck", "clasp-eye",
    "coil-turns", "cost-limit", "crimp-hold", "cup-end", "daisy-middle", "ear-weight",
    "end-in-hole", "end-stop", "finish-before-glue", "finished-length", "first-row",
    "fringe-along", "fringe-count", "fringe-mirror", "fringe-spread", "glue-gap", "hangs-square",
    "hole-passes", "hoop-beads", "join-made", "line-in-eye", "link-clearance", "no-eye",
    "no-way-in", "one-lot", "part-use", "pattern-repeat", "pot-life", "pouch-room", "rigid-run",
    "ring-hold", "row-beads", "safety-chain", "sharp-edge", "sleeve", "spare-share",
    "spectacle-ends", "step-parts", "strand-holes", "strand-nest", "strand-twist", "tail-hides",
    "tail-in-bead", "tassel-crowd", "thread-hold", "thread-on-open-ring", "toggle-bar",
    "toggle-swing", "top-drilled", "usual-length", "wearer-fit",
}  # fmt: skip


def ruled(file: Path) -> str:
    """A rule with a second plan to change has a second file: `cap-bore.nub.yaml`."""
    return file.name.partition(".")[0]


@cache
def cases_of(file: Path) -> list[Case]:
    return list(cases(file))


@pytest.mark.slow
def test_advice_does_not_get_safer_by_vanishing(checker: Checker) -> None:
    """Fewer edits or more rules in words alone: only where a false alarm went with them."""
    tried, in_words = 0, set()
    every: dict[tuple[str, str], list[Case]] = {}
    for case in (case for file in FILES for case in cases_of(file)):
        every.setdefault((case.text, case.bench), []).append(case)
    for alike in some([*every.values()], 8):
        rules = {case.rule for case in alike}
        for remark in judged(alike[0], checker).check_text(alike[0].text).remarks:
            if remark.counts and not remark.rule.startswith("plan-"):
                tried += len(remark.edits)  # alike remarks have theirs in one
                if remark.rule in rules and not remark.edits and remark.target is None:
                    in_words.add(remark.rule)
    assert in_words <= IN_WORDS_ALONE
    if ALL_OF_THEM:
        assert tried >= EDITS_OVER_THE_CASES and in_words == IN_WORDS_ALONE
    assert tried >= EDITS_OVER_THE_CASES / 16


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
        if name in ONLY_ASKS:
            assert found == {"silent", "unjudged"}, f"{name} asks, or is silent"
            continue
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
