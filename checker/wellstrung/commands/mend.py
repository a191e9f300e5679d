"""`mend`: the remedies that can be written, put into the plan at their places."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Iterable, Mapping
from pathlib import Path

from wellstrung.commands.checked import exit_code, only_plan, plan_files
from wellstrung.commands.files import Benches, drawer
from wellstrung.commands.output import BROKEN, answer, looks, note, show
from wellstrung.commands.rewriting import rewrite
from wellstrung.common.wording import one_of
from wellstrung.judging.checker import Checker
from wellstrung.judging.mending import Mended, Texts, all_carried_out, carried_out, remedies
from wellstrung.judging.result import PlanResult, Remark, Result
from wellstrung.plugins import host as hosts
from wellstrung.reading import drawer as drawers
from wellstrung.reading import parser, tree
from wellstrung.report.mended import changed, offered

_ASKS = "write which? numbers, `all` or `none`: "


class _Plan:
    """A plan, with what it is checked by, whatever its text becomes."""

    def __init__(self, options: argparse.Namespace) -> None:
        host = hosts.load(options.rule_files)
        self.path = only_plan(plan_files(options))
        bench = Benches(host, options.bench).of(self.path)
        self._drawer = drawer(options.drawer, host) if options.drawer is not None else None
        self._kinds = host.fragments
        self._offering = Checker(host, bench=bench)
        self._checker = Checker(host, bench=bench, trials=0)
        self.result = self._offering.check_file(self.path, drawer=self._drawer)

    @property
    def files(self) -> dict[str, Path]:
        """The files that may be changed, by the names in places: the plan, and its drawer."""
        folder = self.path.parent.resolve()
        beside = {file: Path(file) for file in self.result.beside}
        own = {file: at for file, at in beside.items() if at.resolve().is_relative_to(folder)}
        return {**own, self.result.file: self.path}

    def check(self, texts: Texts) -> PlanResult:
        """The result with these texts; no remedies are looked for."""
        return self._checker.check_read(*self._read(texts))

    def offer(self, texts: Texts) -> PlanResult:
        """The result with these texts, with remedies."""
        return self._offering.check_read(*self._read(texts))

    def _read(self, texts: Texts) -> tuple[tree.Read, None, tree.Read | None]:
        file = self.result.file
        read = parser.read_text(texts[file], file)
        kept = self._drawer or drawers.named_by(read, self.path.parent, self._kinds)
        if kept is not None and kept.file != file and kept.file in texts:
            kept = drawers.read_text(texts[kept.file], kept.file, self._kinds)
        return read, None, kept


def run(options: argparse.Namespace) -> int:
    """List what can be written, write what is chosen and check again; the exit code."""
    if str(options.plans[0]) in ("-", "/dev/stdin"):
        note("`mend` writes into the plan's file, and standard input is none: name the file")
        return BROKEN
    plan = _Plan(options)
    can = remedies(plan.result, plan.files)
    if options.all:
        mended = all_carried_out(plan.result, plan.files, plan.check, plan.offer)
        return _written(plan, mended, options)
    if options.only:
        chosen, wrong = _named(options.only, can)
        if wrong:
            note(wrong)
            return BROKEN
    else:
        elsewhere = {e.place.file for one in plan.result.numbered for e in one.edits}
        show(offered(plan.result, can, sorted(elsewhere - {*plan.files}), looks(options)))
        chosen = _asked(can) if can else []
    if not chosen:
        return exit_code(Result((plan.result,)))
    return _written(plan, carried_out(plan.result, chosen, plan.check), options)


def _asked(can: Mapping[int, Remark]) -> list[Remark]:
    """The remedies that a person chooses; none without a terminal to ask at."""
    if not (sys.stdin.isatty() and sys.stdout.isatty()):
        show("nothing is changed: `--all` writes them, `--only 1 3` those with these numbers")
        return []
    while True:
        typed = answer(f"\n{_ASKS}")
        words = (typed or "").split()
        if typed is None:
            show("")
        if words in ([], ["none"]):
            show("nothing is changed")
            return []
        if words == ["all"]:
            return list(can.values())
        chosen, wrong = _named(words, can)
        if not wrong:
            return chosen
        show(wrong)


def _named(words: Iterable[str], can: Mapping[int, Remark]) -> tuple[list[Remark], str]:
    """The remedies by number or by the name of their check, or what is wrong with a word."""
    numbers: set[int] = set()
    for word in " ".join(words).replace(",", " ").split():
        found = {at for at, one in can.items() if word in (str(at), one.rule)}
        if not found:
            there = f"name {one_of(map(str, can), word)}" if can else "there is no other either"
            return [], f"there is nothing to write under `{word}`: {there}"
        numbers |= found
    return [can[at] for at in sorted(numbers)], ""


def _written(plan: _Plan, mended: Mended, options: argparse.Namespace) -> int:
    """Write what was mended, with copies, and show what changed; the exit code."""
    before = plan.result
    old = {**before.beside, before.file: before.text}
    changes = {
        path: (old[file], mended.texts[file])
        for file, path in plan.files.items()
        if mended.texts[file] != old[file]
    }
    copies = rewrite(changes)
    after = plan.offer(mended.texts) if changes else before
    kept = {file: str(copies[path]) for file, path in plan.files.items() if path in copies}
    show(changed(before, after, mended, kept, looks(options)))
    return exit_code(Result((after,)))
