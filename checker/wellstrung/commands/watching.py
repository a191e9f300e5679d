"""`check --watch`: plans checked again at each save of one of them, of a bench or of a drawer."""

from __future__ import annotations

import argparse
import os
import time
from collections.abc import Collection, Iterable, Iterator, Sequence
from pathlib import Path

from msgspec.structs import replace

from wellstrung.commands.checked import checked_files, exit_code, plan_files
from wellstrung.commands.files import PLAN_ENDINGS
from wellstrung.commands.output import BROKEN, looks, note, show
from wellstrung.commands.since import Earlier
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import PlanResult, Result
from wellstrung.plugins.error import HostError
from wellstrung.reading.drawer import LIST_ENDINGS
from wellstrung.report.text import write

#: So long, in ms, it waits for a save before it looks whether to go on; and so long after a save
#: for the next, since editors write in several steps.
_WAIT, _SETTLES = 250, 50
#: So many changed plans are named above a round, and the rest counted.
_NAMED = 3
_ENDINGS = (*PLAN_ENDINGS, *LIST_ENDINGS)


class Watch:
    """The plans that a command names, checked at each save until ctrl-C."""

    def __init__(self, options: argparse.Namespace, checker: Checker) -> None:
        self._options, self._checker = options, checker
        self._earlier = Earlier(options, checker) if options.since is not None else None
        self._files: list[Path] = []
        self._results: dict[Path, PlanResult] = {}
        #: what was shown last of each plan, by all that its result was made of
        self._shown: dict[Path, object] = {}
        self._code = BROKEN

    def run(self) -> int:
        """Check at each save; once a person ends it, the exit code of the last round."""
        from watchfiles import watch  # a run that does not watch does without

        self._files = plan_files(self._options)
        self._check(self._files)
        try:
            note("checked again at each save; ctrl-C ends it")
            while True:
                folders, fresh = self._folders(), True
                changes = watch(
                    *folders, watch_filter=lambda _, path: self._wanted(path), recursive=False,
                    step=_SETTLES, rust_timeout=_WAIT, yield_on_timeout=True,
                )  # fmt: skip
                for saved in changes:
                    if fresh or saved:  # fresh: what was saved before it watched
                        self._round({path for _, path in saved}, every=fresh)
                    fresh = False
                    if saved and self._folders() != folders:
                        break
        except KeyboardInterrupt:
            show("")
            return self._code

    def _round(self, saved: Collection[str], *, every: bool) -> None:
        """Check what was saved; all plans if one came or went, or a bench or a drawer was saved."""
        plans = {path: file for file in self._files for path in _paths(file)}
        try:
            if every or not all(path in plans and os.path.exists(path) for path in saved):
                self._files = plan_files(self._options)
                self._check(self._files)
            else:
                self._check(dict.fromkeys(plans[path] for path in saved))
        except HostError as error:
            self._shown.clear()
            self._code = BROKEN
            _mark(())
            note(str(error))

    def _check(self, files: Iterable[Path]) -> None:
        """Check these plans, and show those that are not as they were shown."""
        there = [file for file in files if file.exists() or file not in self._results]
        for file in files:
            if file not in there and self._shown.pop(file, None) is not None:
                _mark((f"{file} is not there any more: waiting for it",))
        gone = self._results.keys() - {*self._files}
        for file in gone:
            del self._results[file]
            self._shown.pop(file, None)
        found = checked_files(there, self._options, self._checker).plans if there else ()
        self._results.update(zip(there, found, strict=True))
        made_of = {file: _made_of(self._results[file]) for file in there}
        new = [file for file in there if made_of[file] != self._shown.get(file)]
        if not new and not gone:
            return
        again, self._shown = bool(self._shown), {**self._shown, **made_of}
        whole = Result(tuple(self._results[file] for file in self._files))
        if self._earlier is not None:
            whole = self._earlier.of(whole)
        self._code = exit_code(whole, strict=self._options.strict)
        if again:
            _mark([self._results[file].file for file in new])
        only = frozenset(self._results[file].file for file in new)
        show(write(whole, replace(looks(self._options), only=only)))

    def _folders(self) -> list[str]:
        """Every folder in which a save may matter."""
        named = [file for file in (self._options.bench, self._options.drawer) if file]
        within = [
            folder for path in self._options.plans if path.is_dir() for folder in _below(path)
        ]
        holding = [
            os.path.dirname(path) for file in (*self._read(), *named) for path in _paths(file)
        ]
        return sorted({*map(_there, (*within, *holding))})

    def _wanted(self, path: str) -> bool:
        known = {name for file in self._read() for name in _paths(file)}
        return path in known or path.endswith(_ENDINGS) or os.path.isdir(path)

    def _read(self) -> Iterator[Path]:
        """The files that the results were made of."""
        yield from self._files
        for result in self._results.values():
            yield from map(Path, result.beside)
            yield from [Path(result.bench)] if result.bench else ()


def _made_of(result: PlanResult) -> object:
    """What a result depends on; two that are alike in it are shown once."""
    try:
        bench = Path(result.bench).read_bytes() if result.bench else b""
    except OSError:
        bench = b""
    said = [(one.says, one.level) for one in result.remarks]
    return result.text, dict(result.beside), result.bench, bench, said, result.failures


def _paths(file: Path) -> tuple[str, str]:
    """The names under which a save of a file may be seen: its own, and what a link leads to."""
    return os.path.abspath(file), os.path.realpath(file)


def _below(folder: Path) -> Iterator[str]:
    """A folder and those in it, without hidden ones."""
    for path, names, _ in os.walk(os.path.abspath(folder)):
        names[:] = [name for name in names if not name.startswith(".")]
        yield path


def _there(folder: str) -> str:
    """A folder, or the nearest above it that is there."""
    while not os.path.isdir(folder):
        folder = os.path.dirname(folder)
    return folder


def _mark(names: Sequence[str]) -> None:
    """The line that a round begins with: the time, and what was saved."""
    more = [f"{len(names) - _NAMED} more"] if len(names) > _NAMED else []
    show(f"\n== {time.strftime('%H:%M:%S')}  {', '.join([*names[:_NAMED], *more])}".rstrip())
