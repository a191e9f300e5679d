"""For authors of rules: cases as data, run by pytest.

With `-p wellstrung.testing` pytest collects every YAML file that begins with `rule:`. Such a file
names the rule, a plan for which it holds, and cases: which words of that plan to change, and what
the rule must answer then, each text whole::

    rule: cap-bore
    rule_file: cap_bore.py       # of a rule that is not installed: the file that ends with it
    plan_file: ../collar.yaml    # or plan: | and the plan itself
    cases:
      - name: too tight
        change: {"bore: 8 mm": "bore: 6 mm"}
        expect: error            # held | error | warning | caution | unjudged | silent
        at: "14:27"              # line:column of the remark
        says: the bore of cap `cap` ...
        needed: a bore of ...
        remedy: take a cap ...
        fault: cap too small     # where the rule has words for more than one

`bench: |` beside `plan_file:` is a bench file to judge them by. Each case is a test, and each that
expects an error or a warning a second one: what it advises is followed until nothing is left of
it. `--rewrite` writes the texts anew after a deliberate change; `--rewrite-answers` verdicts,
places and edits, too.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest

from wellstrung.judging.checker import Checker
from wellstrung.plugins import host
from wellstrung.testing.cases import TEXTS, Case, answer, cases, judged, rewritten, rule_file
from wellstrung.testing.following import troubles

_BEGINS = b"rule:"


def pytest_addoption(parser: pytest.Parser) -> None:
    """The options that write what is pinned anew."""
    parser.addoption(
        "--rewrite",
        action="store_true",
        help="write pinned texts anew after a deliberate change; read the diff before you commit",
    )
    parser.addoption(
        "--rewrite-answers",
        action="store_true",
        help="write anew what cases of rules expect: verdicts, places and edits, too",
    )


def pytest_collect_file(file_path: Path, parent: pytest.Collector) -> pytest.Collector | None:
    """A YAML file that begins with `rule:` is a file of cases."""
    if file_path.suffix not in (".yaml", ".yml"):
        return None
    with file_path.open("rb") as stream:
        begins = stream.read(len(_BEGINS)) == _BEGINS
    return _CaseFile.from_parent(parent, path=file_path) if begins else None


class _CaseFile(pytest.File):
    """The cases of one rule."""

    def collect(self) -> Iterator[pytest.Item]:
        """A test for each case, and one for each that has advice."""
        own = rule_file(self.path)
        for case in cases(self.path):
            yield _Answers.from_parent(self, name=case.name, case=case, own=own)
            if case.expect in ("error", "warning"):
                name = f"{case.name}, as it advises"
                yield _Advice.from_parent(self, name=name, case=case, own=own)


class _Item(pytest.Item):
    def __init__(self, *, case: Case, own: Path | None, **kwargs: object) -> None:
        super().__init__(**kwargs)  # type: ignore[arg-type]
        self.case = case
        self._own = own

    @property
    def checker(self) -> Checker:
        """What the case is judged by."""
        return _checker(self._own)

    def reportinfo(self) -> tuple[Path, int, str]:
        """Where the case stands."""
        line = self.path.read_text(encoding="utf-8").partition(f"name: {self.case.name}")[0]
        return self.path, line.count("\n"), str(self.case)


class _Answers(_Item):
    """The whole answer of the rule, word for word."""

    def runtest(self) -> None:
        """Hold the answer against what the case pins, or write it there."""
        case, option = self.case, self.config.getoption
        found, pinned = answer(case, self.checker), {"expect": case.expect, **case.pinned}
        in_words = {key for key in found if found[key] != pinned.get(key)} <= TEXTS
        if option("--rewrite-answers"):
            rewritten(case, found, answers=True)
            pinned = found
        elif option("--rewrite") and in_words:
            rewritten(case, found)
            pinned |= {key: found[key] for key in TEXTS & found.keys() & pinned.keys()}
        assert found == pinned


class _Advice(_Item):
    """What a remark advises leaves nothing of it; advice of another rule is tried in its cases."""

    def runtest(self) -> None:
        """Follow every edit and target."""
        checker = judged(self.case, self.checker)
        before = checker.check_text(self.case.text)
        for remark in before.remarks:
            can = bool(remark.edits) or remark.target is not None
            if can and remark.counts and remark.rule == self.case.rule:
                assert list(troubles(self.case.text, before, remark, checker)) == []


@cache
def _checker(own: Path | None) -> Checker:
    return Checker(host.load([own] if own is not None else []))
