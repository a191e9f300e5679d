"""`--since OLD`: which earlier plan each plan follows, and the plans compared with those."""

from __future__ import annotations

import argparse
from collections import Counter
from collections.abc import Hashable, Mapping, Sequence
from pathlib import Path

from msgspec.structs import replace

from wellstrung.commands.checked import checked_files
from wellstrung.commands.files import plans
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import PlanResult, Result
from wellstrung.judging.since import since
from wellstrung.plugins.error import HostError


def since_last_time(result: Result, options: argparse.Namespace, checker: Checker) -> Result:
    """The result, compared with the earlier plans if the command names any."""
    return Earlier(options, checker).of(result) if options.since is not None else result


class Earlier:
    """The earlier plans that a command names, each checked once, when it is needed.

    Raises HostError where they are not there, or are the plans themselves.
    """

    def __init__(self, options: argparse.Namespace, checker: Checker) -> None:
        self._options, self._checker = options, checker
        self._old: Path = options.since
        if not self._old.exists():
            takes = "`--since` takes the earlier plan, or the folder of the earlier plans"
            raise HostError(f"{self._old} is not there: {takes}")
        if any(path.exists() and path.samefile(self._old) for path in options.plans):
            which = "folder" if self._old.is_dir() else "file"
            raise HostError(f"{self._old} is the very {which} to check: name the earlier one")
        self._results: dict[Path, PlanResult] = {}

    def of(self, result: Result) -> Result:
        """The plans with what changed in each; a plan without an earlier one is new."""
        if len(result.plans) > 1 and not self._old.is_dir():
            raise HostError(f"{self._old} is one plan: name the folder of the earlier plans")
        here = {Path(plan.file).resolve() for plan in result.plans}
        named = self._options.bench is not None
        found = plans([self._old], bench_is_named=named)
        olds = [file for file in found if file.resolve() not in here]
        if not olds:
            raise HostError(f"there is no earlier plan in {self._old}")
        pairs = self._pairs(result.plans, olds)
        self._checked([*pairs.values()])
        folders = [path for path in self._options.plans if path.is_dir()]
        gone = [file for file in olds if file not in pairs.values()] if folders else []
        return replace(
            result,
            plans=tuple(self._compared(plan, pairs.get(plan.file)) for plan in result.plans),
            since=str(self._old),
            gone=tuple(self._checked(gone).values()),
        )

    def _pairs(self, news: Sequence[PlanResult], olds: Sequence[Path]) -> dict[str, Path]:
        """The earlier file of each plan: by its name, or else by its title and its maker."""
        if not self._old.is_dir():
            return {news[0].file: olds[0]}
        pairs: dict[str, Path] = {}
        pairs |= _alike({one.file: self._within(one) for one in news}, _within(self._old, olds))
        rest, left = _rest(news, olds, pairs)
        pairs |= _alike({one.file: Path(one.file).name for one in rest}, {o: o.name for o in left})
        rest, left = _rest(news, olds, pairs)
        for known in (_title_and_maker, _title) if rest and left else ():
            earlier = self._checked(left)
            found = _alike(
                {one.file: known(one) for one in rest},
                {file: known(one) for file, one in earlier.items()},
            )
            by_file = {one.file: one for one in rest}
            pairs |= {
                new: old for new, old in found.items() if _one_maker(by_file[new], earlier[old])
            }
            rest, left = _rest(news, olds, pairs)
        if not pairs and len(news) == 1:
            raise HostError(f"there is no earlier {Path(news[0].file).name} in {self._old}")
        return pairs

    def _within(self, plan: PlanResult) -> str:
        """The path of a plan within the folder that was named."""
        file = Path(plan.file)
        folder = next((one for one in self._options.plans if one in file.parents), file.parent)
        return str(file.relative_to(folder))

    def _checked(self, files: Sequence[Path]) -> dict[Path, PlanResult]:
        new = [file for file in files if file not in self._results]
        if new:
            found = checked_files(new, self._options, self._checker).plans
            self._results.update(zip(new, found, strict=True))
        return {file: self._results[file] for file in files}

    def _compared(self, plan: PlanResult, file: Path | None) -> PlanResult:
        if file is None:
            return plan
        old = self._checked([file])[file]
        notes = [] if _bench(old) == _bench(plan) else [_benches(old, plan)]
        return replace(plan, since=since(old, plan, notes))


def _alike(news: Mapping[str, Hashable], olds: Mapping[Path, Hashable]) -> dict[str, Path]:
    """The plans that have something in common with an earlier one and with no other."""
    counts = Counter(news.values()), Counter(olds.values())
    by_key = {key: file for file, key in olds.items()}
    return {
        file: by_key[key]
        for file, key in news.items()
        if key and counts[0][key] == counts[1][key] == 1
    }


def _rest(
    news: Sequence[PlanResult], olds: Sequence[Path], pairs: Mapping[str, Path]
) -> tuple[list[PlanResult], list[Path]]:
    """What is not paired yet."""
    taken = {*pairs.values()}
    return [one for one in news if one.file not in pairs], [o for o in olds if o not in taken]


def _within(folder: Path, files: Sequence[Path]) -> dict[Path, str]:
    return {file: str(file.relative_to(folder)) for file in files}


def _title(plan: PlanResult) -> str:
    return plan.title.casefold()


def _title_and_maker(plan: PlanResult) -> tuple[str, str] | None:
    maker = plan.maker.casefold()
    return (_title(plan), maker) if plan.title and maker else None


def _one_maker(new: PlanResult, old: PlanResult) -> bool:
    """Whether two plans may be of one person: one names no maker, or both the same."""
    makers = {one.maker.casefold() for one in (new, old)} - {""}
    return len(makers) < 2


def _bench(plan: PlanResult) -> bytes:
    try:
        return Path(plan.bench).read_bytes() if plan.bench else b""
    except OSError:
        return b""


def _benches(old: PlanResult, new: PlanResult) -> str:
    """That two versions were checked by different benches."""
    now, then = new.bench or "no bench", old.bench or "no bench"
    return f"the benches differ: {now} now, {then} for the earlier plan"
