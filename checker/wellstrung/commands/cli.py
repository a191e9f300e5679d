"""The command line. Exit: 0 no errors, 1 a plan has errors, 2 the checker could not do its job."""

from __future__ import annotations

import argparse
import gc
import os
import sys
from collections.abc import Iterable, Iterator, Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from wellstrung.common.wording import nearest
from wellstrung.report import Options

if TYPE_CHECKING:
    from wellstrung.common.places import Fault
    from wellstrung.judging.checker import Checker
    from wellstrung.judging.result import Result
    from wellstrung.plugins.host import Host, HostError
    from wellstrung.reading.settings import Bench
    from wellstrung.reading.tree import Read

OK, WRONG, BROKEN = 0, 1, 2
#: From so many plans on, a run at a terminal shows how far it is.
_LONG_RUN = 20
PLAN_ENDINGS = (".yaml", ".yml")
#: Files beside plans that are not plans.
NOT_PLANS = ("bench.yaml", "bench.yml", "drawer.yaml", "drawer.yml")
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
        "£": "GBP ",
        "€": "EUR ",
        "¥": "JPY ",
    }
)


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the command line; returns the exit code."""
    if arguments is None:  # a process of its own: nothing that it loads is garbage
        gc.disable()
    options = _parser().parse_args(arguments)
    from wellstrung.plugins.host import HostError

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
    check.add_argument(
        "--as", dest="form", default="text", help="text (the default), json, or html with --out"
    )
    check.add_argument(
        "--out",
        type=Path,
        metavar="DIR",
        help="the folder for the pages of html: one for the class, one for each plan",
    )
    check.add_argument(
        "--workings", action="store_true", help="show the arithmetic of every remark"
    )
    check.add_argument("--strict", action="store_true", help="exit 1 on warnings too")
    check.set_defaults(run=_check)

    sheet = commands.add_parser("sheet", help="one page of a plan, to print and hand back")
    sheet.add_argument("plans", nargs=1, type=Path, metavar="PLAN")
    sheet.add_argument(
        "--out", type=Path, metavar="FILE", help="where the page goes: PLAN.html in this folder"
    )
    sheet.set_defaults(run=_sheet)

    supplies = commands.add_parser("supplies", help="what to buy for plans, or a class of makers")
    supplies.add_argument("plans", nargs="+", type=Path, metavar="PLAN")
    supplies.add_argument("--as", dest="form", choices=("text", "json", "csv"), default="text")
    supplies.add_argument(
        "--nothing-on-hand",
        action="store_true",
        help="count nothing as bought already: all that the pieces take",
    )
    supplies.set_defaults(run=_supplies)

    cuts = commands.add_parser("cuts", help="what to cut, from which length, at which link")
    cuts.add_argument("plans", nargs="+", type=Path, metavar="PLAN")
    cuts.add_argument("--as", dest="form", choices=("text", "json"), default="text")
    cuts.set_defaults(run=_cuts)

    for command in (supplies, cuts):
        command.add_argument(
            "--makers", type=_makers, default=1, metavar="N", help="how many make each plan"
        )

    size_range = commands.add_parser("sizes", help="one plan over a range of sizes: what changes")
    size_range.add_argument("plans", nargs=1, type=Path, metavar="PLAN")
    size_range.add_argument("--from", dest="first", metavar="LENGTH", help="the smallest, as 40 cm")
    size_range.add_argument("--to", dest="last", metavar="LENGTH", help="the largest, as 50 cm")
    size_range.add_argument("--step", metavar="LENGTH", help="from one size to the next, as 2 cm")
    size_range.add_argument("--as", dest="form", choices=("text", "json"), default="text")
    size_range.set_defaults(run=_sizes)

    rules = commands.add_parser("rules", help="what is checked, why, and by which sources")
    rules.add_argument("names", nargs="*", metavar="NAME")
    rules.add_argument("--as", dest="form", choices=("text", "json"), default="text")
    rules.set_defaults(run=_rules)

    tables = commands.add_parser("tables", help="every reference value, with grade and source")
    tables.add_argument("names", nargs="*", metavar="NAME")
    tables.add_argument("--as", dest="form", choices=("text", "json"), default="text")
    tables.set_defaults(run=_tables)

    for command in (check, sheet, supplies, cuts, size_range):
        command.add_argument(
            "--bench",
            type=Path,
            metavar="FILE",
            help="your settings, instead of the bench.yaml beside a plan or in a folder above it",
        )
        command.add_argument(
            "--drawer",
            type=Path,
            metavar="FILE",
            help="your parts, instead of the drawer that a plan names",
        )
    for command in (check, sheet, supplies, cuts, size_range, rules):
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


#: More makers than any class has.
_MOST_MAKERS = 10_000


def _makers(text: str) -> int:
    """How many make each plan, from the command line."""
    if not (text.isdecimal() and text.isascii() and 1 <= int(text[:9]) <= _MOST_MAKERS):
        raise argparse.ArgumentTypeError(f"`{text}` is not a number of makers: write one as 12")
    return int(text)


def _check(options: argparse.Namespace) -> int:
    from wellstrung.judging.checker import Checker
    from wellstrung.plugins import host as hosts

    host = hosts.load(options.rule_files)
    writer = host.writers.get(options.form)
    if writer is None:
        return _unknown("report", options.form, list(host.writers))
    if (writer.pages is None) != (options.out is None):
        pages = [f"--as {one.name}" for one in host.writers.values() if one.pages]
        says = f"needs --out DIR, the folder for its pages: only {' and '.join(pages)} takes it"
        print(f"wellstrung: --as {options.form} {says}", file=sys.stderr)
        return BROKEN
    result = _checked(options, host, Checker(host, quantities=writer.quantities))
    if writer.pages is not None:
        _save({options.out / name: page for name, page in writer.pages(result).items()})
    elif writer.write is not None:
        _print(writer.write(result, _looks(options)))
    return _code(result, strict=options.strict)


def _sheet(options: argparse.Namespace) -> int:
    from wellstrung.judging.checker import Checker
    from wellstrung.plugins import host as hosts
    from wellstrung.report.pages import sheet

    host = hosts.load(options.rule_files)
    checker = Checker(host, quantities=True)
    result = _checked(options, host, checker)
    if len(result.plans) > 1:
        raise hosts.HostError(f"there are {len(result.plans)} plans in what was named: name one")
    plan = result.plans[0]
    out = options.out or Path(Path(plan.file).stem + ".html")
    _save({out: sheet(plan, checker)})
    return _code(result)


def collect_what_is_new() -> None:
    """All is loaded and stays: look for garbage among what is new, and seldom.

    Results are kept until they are written, so that looking through them often finds nothing.
    """
    gc.freeze()
    gc.set_threshold(20_000)
    gc.enable()


def _watched(files: Sequence[Path]) -> Iterable[Path]:
    """The files one by one; a long run at a terminal shows how far it is."""
    if len(files) < _LONG_RUN or not sys.stderr.isatty():
        return files
    from rich.console import Console
    from rich.progress import track

    return track(files, "checking", console=Console(stderr=True), transient=True)


def _code(result: Result, *, strict: bool = False) -> int:
    """The exit code that a result asks for."""
    if result.failures:
        return BROKEN
    wrong = result.count("error") or any(not plan.readable for plan in result.plans)
    return WRONG if wrong or (strict and result.count("warning")) else OK


def _save(pages: Mapping[Path, str]) -> None:
    """Write pages and name the first; raises HostError where that cannot be done."""
    from wellstrung.plugins.host import HostError

    for path, page in pages.items():
        try:
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_text(page, encoding="utf-8")
        except OSError as error:
            raise HostError(f"{path} cannot be written: {error.strerror or error}") from None
    more = f" and {len(pages) - 1} more beside it" if len(pages) > 1 else ""
    _print(f"wrote {next(iter(pages))}{more}")


def _checked(options: argparse.Namespace, host: Host, checker: Checker) -> Result:
    """The result of every plan named, each by its bench; raises HostError where there is none."""
    from wellstrung.judging.result import Result
    from wellstrung.plugins.host import HostError

    files = list(_plans(options.plans))
    if not files:
        raise HostError("there is no plan (a .yaml file) in what was named")
    if not gc.isenabled():
        collect_what_is_new()
    benches = _Benches(host, options.bench)
    kept = _drawer(options.drawer) if options.drawer is not None else None
    return Result(
        tuple(checker.check_file(file, benches.of(file), kept) for file in _watched(files))
    )


def _supplies(options: argparse.Namespace) -> int:
    from wellstrung.judging.checker import Checker
    from wellstrung.lists import shopping
    from wellstrung.plugins import host as hosts
    from wellstrung.report import supplies_list
    from wellstrung.what_if import other_sizes

    host = hosts.load(options.rule_files)
    checker = Checker(host, keep=True)
    result = _checked(options, host, checker)
    plans, makers = result.plans, options.makers
    lines = shopping.needed(plans, makers, on_hand=not options.nothing_on_hand)
    to_buy = {line.name for line in lines if line.short}
    also = [
        (plan.title, size) for plan in plans for size in other_sizes.found(plan, checker, to_buy)
    ]
    found = supplies_list.Supplies(
        plans, makers, tuple(lines), tuple(shopping.kits(plans)), tuple(also)
    )
    if options.form == "csv":
        _print_as_is(supplies_list.as_csv(found))
    elif options.form == "json":
        _print(supplies_list.as_json(found))
    else:
        _print(supplies_list.write(found, _looks(options)))
    return _told(result)


def _told(result: Result) -> int:
    """The exit code of a list, with rules that broke told beside it: a list tells of no rules."""
    for broken in result.failures:
        print(f"wellstrung: the rule `{broken.rule}` broke: {broken.message}", file=sys.stderr)
    return _code(result)


def _cuts(options: argparse.Namespace) -> int:
    from wellstrung.judging.checker import Checker
    from wellstrung.lists import cuts
    from wellstrung.plugins import host as hosts
    from wellstrung.report import cuts_list

    host = hosts.load(options.rule_files)
    result = _checked(options, host, Checker(host, keep=True))
    found = cuts.listed(result.plans, options.makers)
    if options.form == "json":
        _print(cuts_list.as_json(result.plans, options.makers, found))
    else:
        _print(cuts_list.write(result.plans, options.makers, found, _looks(options)))
    return _told(result)


def _sizes(options: argparse.Namespace) -> int:
    from wellstrung.judging.checker import Checker
    from wellstrung.plugins import host as hosts
    from wellstrung.report import sizes_list
    from wellstrung.what_if import size_range

    host = hosts.load(options.rule_files)
    result = _checked(options, host, Checker(host, keep=True))
    if len(result.plans) > 1:
        raise hosts.HostError(f"there are {len(result.plans)} plans in what was named: name one")
    try:
        found = size_range.over(result.plans[0], host, options.first, options.last, options.step)
    except size_range.NoSizes as why:
        raise hosts.HostError(str(why)) from why
    if options.form == "json":
        _print(sizes_list.as_json(found))
    else:
        _print(sizes_list.write(found, _looks(options)))
    return _told(result)


def _drawer(file: Path) -> Read:
    """The drawer that was named, for every plan; raises HostError."""
    from wellstrung.reading import drawer

    found = drawer.read(file)
    if found.faults:
        raise _unusable("drawer", found.faults)
    return found


def _unusable(what: str, faults: Iterable[Fault]) -> HostError:
    from wellstrung.plugins.host import HostError

    lines = (f"{f.place.file}:{f.place.line}:{f.place.column} {f.says}" for f in faults)
    return HostError("\n  ".join((f"the {what} cannot be used:", *lines)))


class _Benches:
    """The bench of each plan: the one named, or the nearest beside the plan or above it."""

    def __init__(self, host: Host, named: Path | None) -> None:
        self._host = host
        self._named = self._read(named) if named is not None else None
        self._folders: dict[str, bool] = {}
        self._found: dict[str, Bench] = {}

    def of(self, plan: Path) -> Bench | None:
        """The bench for a plan, or None where it has none; raises HostError."""
        from wellstrung.reading.settings import nearest_bench

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
        from wellstrung.reading import bench as bench_file

        bench, faults = bench_file.read(file, self._host.stitches)
        if bench is None:
            raise _unusable("bench file", faults)
        return bench


def _rules(options: argparse.Namespace) -> int:
    from wellstrung.plugins import host as hosts
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
                if file.suffix in PLAN_ENDINGS and not file.name.endswith(NOT_PLANS)
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


def _print_as_is(text: str) -> None:
    """Print a file: in UTF-8 whatever the terminal shows, and with its own line ends.

    A spreadsheet knows UTF-8 by the mark before it; plain ASCII needs none.
    """
    sys.stdout.flush()
    sys.stdout.buffer.write(text.encode("ascii" if text.isascii() else "utf-8-sig"))
    sys.stdout.buffer.flush()


def _print(text: str) -> None:
    """Print, in ASCII where the terminal cannot show more."""
    encoding = sys.stdout.encoding or "ascii"
    try:
        text.encode(encoding)
    except UnicodeEncodeError:
        text = text.translate(_ASCII).encode(encoding, "replace").decode(encoding)
    sys.stdout.write(text + "\n")
    sys.stdout.flush()
