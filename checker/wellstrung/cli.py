"""The command line. Exit: 0 no errors, 1 a plan has errors, 2 the checker could not do its job."""

from __future__ import annotations

import argparse
import gc
import os
import sys
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from wellstrung.report import Options
from wellstrung.words import nearest

if TYPE_CHECKING:
    from wellstrung.bench import Bench
    from wellstrung.host import Host

OK, WRONG, BROKEN = 0, 1, 2
PLAN_ENDINGS = (".yaml", ".yml")
#: Files beside plans that are not plans.
NOT_PLANS = ("bench.yaml", "bench.yml")
_ASCII = str.maketrans(
    {
        "±": "+/-",
        "×": "x",
        "π": "pi",
        "°": " deg",
        "²": "2",
        "½": "1/2",
        "┃": "|",
        "—": "-",
        "…": "...",
    }
)


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the command line; returns the exit code."""
    if arguments is None:  # a process of its own: nothing that it loads is garbage
        gc.disable()
    options = _parser().parse_args(arguments)
    from wellstrung.host import HostError

    try:
        code: int = options.run(options)
    except HostError as error:
        print(f"wellstrung: {error}", file=sys.stderr)
        return BROKEN
    except KeyboardInterrupt:
        print("wellstrung: stopped before it was done", file=sys.stderr)
        return BROKEN
    except BrokenPipeError:  # the reader has seen enough
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return BROKEN
    return code


class _Parser(argparse.ArgumentParser):
    """Says how wide its help may be: to look for itself it imports `shutil` and all archives."""

    def _get_formatter(self) -> argparse.HelpFormatter:
        return self.formatter_class(prog=self.prog, width=_columns() - 2)  # type: ignore[call-arg]


class _Version(argparse.Action):
    """Looks the version up only when it is asked for."""

    def __call__(self, parser: argparse.ArgumentParser, *_: object) -> None:
        from importlib.metadata import version

        print(f"wellstrung {version('wellstrung')}")
        parser.exit()


def _parser() -> argparse.ArgumentParser:
    parser = _Parser(
        prog="wellstrung",
        description="Reads a written plan of a beaded piece and says what will not work.",
    )
    parser.add_argument("--version", action=_Version, nargs=0, help="say the version and stop")
    commands = parser.add_subparsers(title="commands", required=True, metavar="COMMAND")

    check = commands.add_parser("check", help="check plans: files, or folders of them")
    check.add_argument("plans", nargs="+", type=Path, metavar="PLAN")
    check.add_argument("--as", dest="form", default="text", help="text (the default) or json")
    check.add_argument(
        "--workings", action="store_true", help="show the arithmetic of every remark"
    )
    check.add_argument("--strict", action="store_true", help="exit 1 on warnings too")
    check.add_argument(
        "--bench",
        type=Path,
        metavar="FILE",
        help="your settings, instead of the bench.yaml beside a plan or in a folder above it",
    )
    check.set_defaults(run=_check)

    rules = commands.add_parser("rules", help="what is checked, why, and by which sources")
    rules.add_argument("names", nargs="*", metavar="NAME")
    rules.add_argument("--as", dest="form", choices=("text", "json"), default="text")
    rules.set_defaults(run=_rules)

    tables = commands.add_parser("tables", help="every reference value, with grade and source")
    tables.add_argument("names", nargs="*", metavar="NAME")
    tables.add_argument("--as", dest="form", choices=("text", "json"), default="text")
    tables.set_defaults(run=_tables)

    for command in (check, rules):
        command.add_argument(
            "--rules",
            dest="rule_files",
            action="append",
            type=Path,
            default=[],
            metavar="FILE",
            help="a Python file with rules of your own; its code is run",
        )
    return parser


def _check(options: argparse.Namespace) -> int:
    from wellstrung import host as hosts
    from wellstrung.checking import Checker, Result

    host = hosts.load(options.rule_files)
    writer = host.writers.get(options.form)
    if writer is None:
        return _unknown("report", options.form, list(host.writers))
    files = list(_plans(options.plans))
    if not files:
        print("wellstrung: there is no plan (a .yaml file) in what was named", file=sys.stderr)
        return BROKEN
    if not gc.isenabled():  # all is loaded: from now on there may be garbage, among what is new
        gc.freeze()
        gc.enable()
    checker = Checker(host, quantities=writer.quantities)
    benches = _Benches(host, options.bench)
    result = Result(tuple(checker.check_file(file, benches.of(file)) for file in files))
    _print(writer.write(result, _looks(options)))
    if result.failures:
        return BROKEN
    wrong = result.count("error") or any(not plan.readable for plan in result.plans)
    return WRONG if wrong or (options.strict and result.count("warning")) else OK


class _Benches:
    """The bench of each plan: the one named, or the nearest beside the plan or above it."""

    def __init__(self, host: Host, named: Path | None) -> None:
        self._host = host
        self._named = self._read(named) if named is not None else None
        self._folders: dict[str, bool] = {}
        self._found: dict[str, Bench] = {}

    def of(self, plan: Path) -> Bench | None:
        """The bench for a plan, or None where it has none; raises HostError."""
        from wellstrung.bench import nearest_bench

        if self._named is not None:
            return self._named
        file = nearest_bench(str(plan), self._folders)
        if file is None:
            return None
        if file not in self._found:
            here = os.path.join(os.getcwd(), "")
            near = not plan.is_absolute() and file.startswith(here)
            self._found[file] = self._read(Path(file.removeprefix(here) if near else file))
        return self._found[file]

    def _read(self, file: Path) -> Bench:
        from wellstrung import bench_file  # only where there is one
        from wellstrung.host import HostError

        bench, faults = bench_file.read(file, self._host.stitches)
        if bench is None:
            lines = (f"{f.place.file}:{f.place.line}:{f.place.column} {f.says}" for f in faults)
            raise HostError("\n  ".join(("the bench file cannot be used:", *lines)))
        return bench


def _rules(options: argparse.Namespace) -> int:
    from wellstrung import host as hosts
    from wellstrung.report import rule_list

    host = hosts.load(options.rule_files)
    for name in options.names:
        if name not in host.rules:
            return _unknown("rule", name, list(host.rules))
    if options.form == "json":
        _print(rule_list.as_json(host, options.names))
    else:
        _print(rule_list.write(host, options.names, _looks(options)))
    return OK


def _tables(options: argparse.Namespace) -> int:
    from wellstrung import tables
    from wellstrung.report import table_list

    for name in options.names:
        if name not in tables.names():
            return _unknown("table", name, list(tables.names()))
    if options.form == "json":
        _print(table_list.as_json(options.names))
    else:
        _print(table_list.write(options.names, _looks(options)))
    return OK


def _unknown(what: str, name: str, known: list[str]) -> int:
    near = nearest(name, known)
    advice = f"write `{near}`" if near else f"there are {', '.join(known)}"
    print(f"wellstrung: there is no {what} called `{name}`: {advice}", file=sys.stderr)
    return BROKEN


def _plans(named: Sequence[Path]) -> Iterator[Path]:
    """The named files, and every plan in the named folders, each once."""
    seen: set[Path] = set()
    for path in named:
        found = [path]
        if path.is_dir():
            found = sorted(
                file
                for file in path.rglob("*")
                if file.suffix in PLAN_ENDINGS and file.name not in NOT_PLANS
            )
        for file in found:
            if file not in seen:
                seen.add(file)
                yield file


def _looks(options: argparse.Namespace) -> Options:
    terminal = sys.stdout.isatty()
    return Options(
        width=max(40, min(_columns(), 120)),
        colour=terminal and not os.environ.get("NO_COLOR") and os.environ.get("TERM") != "dumb",
        workings=getattr(options, "workings", False),
        ascii_only=not (sys.stdout.encoding or "ascii").lower().startswith("utf"),
    )


def _columns() -> int:
    """The width of the terminal: as `COLUMNS` says, as it is, or 80."""
    said = os.environ.get("COLUMNS", "")
    if said.isdecimal() and int(said):
        return int(said)
    try:
        return os.get_terminal_size(sys.stdout.fileno()).columns
    except (OSError, ValueError):
        return 80


def _print(text: str) -> None:
    """Print, in ASCII where the terminal cannot show more."""
    encoding = sys.stdout.encoding or "ascii"
    try:
        text.encode(encoding)
    except UnicodeEncodeError:
        text = text.translate(_ASCII).encode(encoding, "replace").decode(encoding)
    sys.stdout.write(text + "\n")
    sys.stdout.flush()
