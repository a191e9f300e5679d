"""Which file is a plan, a bench or a drawer: by its key `plan:`, `bench:` or `drawer:`.

The name of a file does not matter, with one exception: the bench of a plan is the nearest
`bench.yaml`, unless `--bench` names another.
"""

from __future__ import annotations

import os
import re
from collections.abc import Callable, Iterable, Iterator, Sequence
from pathlib import Path
from typing import Literal

from wellstrung.commands.output import note
from wellstrung.common.patterns import Pattern
from wellstrung.common.places import Fault
from wellstrung.plugins.error import HostError
from wellstrung.reading import drawer as drawers
from wellstrung.reading import parser, tree
from wellstrung.reading.settings import Bench
from wellstrung.rulebook.installed import Installed

PLAN_ENDINGS = (".yaml", ".yml")
BENCH_FILE = "bench.yaml"
Holds = Literal["plan", "bench", "drawer"]
Say = Callable[[str], None]

#: A key at the left margin, quoted or not, or the first of a file in braces.
_KEY = Pattern(r"^(?:\{\s*)?[\"']?(plan|bench|drawer)[\"']?[ \t]*:(?=\s)", re.MULTILINE)
_CALLED = {"bench": "a bench file", "drawer": "a drawer"}
#: What a plan has and hardly any other YAML file: fields of one whose `plan: 1` is missing.
_FIELDS_OF_PLANS = frozenset({"piece", "beads", "parts", "run", "hung"})


def holds(path: Path) -> Holds | None:
    """What a file holds; None if it has none of the three keys or cannot be read.

    A list from a spreadsheet is a drawer. A file with more than one key is a plan if one is `plan:`
    (a plan names its drawer), or else what the first says.
    """
    try:
        if not path.is_file():
            return None
        if drawers.is_list(path.name):
            return "drawer"
        with path.open("rb") as stream:
            text = stream.read(parser.MAX_BYTES).decode("utf-8-sig", "replace")
    except OSError:
        return None
    found: list[Holds] = [match[1] for match in _KEY.finditer(text)]  # type: ignore[misc]
    return "plan" if "plan" in found else next(iter(found), None)


def plans(named: Sequence[Path], *, bench_is_named: bool = False) -> Iterator[Path]:
    """The plans among the files named and in the folders named, each once.

    What is skipped is noted, but for benches and drawers where a folder is expected to have them.
    A file that cannot be read counts as a plan, so that its faults are reported.
    """
    seen: set[Path] = set()
    for path in named:
        if str(path) == "/dev/stdin":
            path = parser.STDIN
        if not path.is_dir():
            if path not in seen and _is_plan_named(path):
                seen.add(path)
                yield path
            continue
        found = sorted(path.rglob("*"))
        for folder in (path, *filter(Path.is_dir, found)):
            if not os.access(folder, os.R_OK | os.X_OK):
                note(f"{folder} cannot be opened: its plans are not checked")
        for file in found:
            if file.suffix in PLAN_ENDINGS and file not in seen:
                seen.add(file)
                if _is_plan_in_folder(file, bench_is_named=bench_is_named):
                    yield file


def _is_plan_named(file: Path) -> bool:
    kind = holds(file)
    if kind is None or kind == "plan":
        return True
    note(f"{file} is {_CALLED[kind]}, not a plan: skipped; give it as --{kind} {file}")
    return False


def _is_plan_in_folder(file: Path, *, bench_is_named: bool) -> bool:
    kind = holds(file)
    if kind == "bench" and file.name != BENCH_FILE and not bench_is_named:
        note(f"{file} is a bench file and is not used: call it {BENCH_FILE}, or give it as --bench")
    if kind is None:
        other = _other(file)
        if other:
            note(f"{file} is not a plan: skipped; it has {other}, a plan begins with `plan: 1`")
        return not other
    return kind == "plan"


def _other(file: Path) -> str:
    """What a YAML file without one of our keys has, if it is readable and is no plan; or empty."""
    read = parser.read(file)
    if read.tree is not None:
        keys = list(read.tree.entries)
        return "" if _FIELDS_OF_PLANS.intersection(keys) else f"`{keys[0]}:`"
    return "no names" if [fault.says for fault in read.faults] == [parser.PLAN.begin] else ""


class Benches:
    """The bench of each plan: the one named, or the nearest beside the plan or above it.

    `say` reports a bench file that is skipped.
    """

    def __init__(self, installed: Installed, named: Path | None, *, say: Say | None = note) -> None:
        self._installed = installed
        self._say = say
        self._named = self._read(named) if named is not None else None
        self._folders: dict[str, bool] = {}
        self._found: dict[str, Bench] = {}

    def of(self, plan: Path) -> Bench | None:
        """The bench for a plan, or None if it has none; raises HostError."""
        if self._named is not None:
            return self._named
        file = nearest_bench(str(plan), self._folders, self._say)
        if file is None:
            return None
        if file not in self._found:
            here = os.path.join(os.getcwd(), "")
            near = not plan.is_absolute() and file.startswith(here)
            self._found[file] = self._read(Path(file.removeprefix(here) if near else file))
        return self._found[file]

    def _read(self, file: Path) -> Bench:
        from wellstrung.reading import bench as bench_file  # most plans have none

        here = self._installed
        bench, faults = bench_file.read(file, here.stitches, here.limits, here.measures)
        if bench is not None and bench.swatches is not None:
            from wellstrung.judging import swatches  # most benches have none

            bench, faults = swatches.learnt(bench, here)
        if bench is None:
            raise _unusable("bench file", faults)
        return bench


def nearest_bench(file: str, seen: dict[str, bool], say: Say | None = note) -> str | None:
    """The `bench.yaml` beside a plan or in the nearest folder above; None if there is none.

    A plan or a drawer of that name is no bench. `seen` keeps the folders looked into, so that each
    is looked into once.
    """
    folder = os.path.dirname(os.path.abspath(file))
    while True:
        found = os.path.join(folder, BENCH_FILE)
        if folder not in seen:
            seen[folder] = _is_bench(found, folder, say)
        if seen[folder]:
            return found
        above = os.path.dirname(folder)
        if above == folder:
            return None
        folder = above


def _is_bench(file: str, folder: str, say: Say | None) -> bool:
    """Whether a file is there that plans of its folder go by; a link out of the folder is not."""
    if not os.path.lexists(file):
        return False
    inside = os.path.join(os.path.realpath(folder), "")
    if os.path.islink(file) and not os.path.realpath(file).startswith(inside):
        if say is not None:
            says = f"{file} is a link out of its folder and is not used"
            say(f"{says}: copy it, or give it as --bench")
        return False
    return holds(Path(file)) in (None, "bench")


def drawer(file: Path, installed: Installed) -> tree.Read:
    """The drawer that was named, for every plan; raises HostError."""
    found = drawers.read(file, installed.fragments)
    if found.faults:
        raise _unusable("drawer", found.faults)
    return found


def _unusable(what: str, faults: Iterable[Fault]) -> HostError:
    lines = (f"{f.place.file}:{f.place.line}:{f.place.column} {f.in_a_line}" for f in faults)
    return HostError("\n  ".join((f"the {what} cannot be used:", *lines)))
