"""The options of every command; each command is run by the module of its name."""

from __future__ import annotations

import argparse
from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING

from wellstrung.commands.output import columns, show
from wellstrung.common.wording import nearest, one_of
from wellstrung.plugins.error import HostError

if TYPE_CHECKING:
    from wellstrung.plugins.command import Command

EXIT_CODES = (
    "Exit: 0 no errors; 1 a plan has errors or cannot be read; 2 the checker could not do its job."
)
#: More processes than most machines run at once.
_MOST_PROCESSES = 64
#: More makers than any class has.
_MOST_MAKERS = 10_000


class _Parser(argparse.ArgumentParser):
    """Sets the width of its help: argparse itself would import `shutil` and all archives."""

    def _get_formatter(self) -> argparse.HelpFormatter:
        return self.formatter_class(prog=self.prog, width=columns() - 2)  # type: ignore[call-arg]

    def print_help(self, file: object = None) -> None:
        """Show the help as any other text is shown."""
        show(self.format_help().rstrip())

    def _check_value(self, action: argparse.Action, value: str) -> None:
        """Refuse a word that is not known with the nearest that is."""
        if action.choices is None or value in action.choices:
            return
        near, known = nearest(value, map(str, action.choices)), map(str, action.choices)
        advice = f"`{near}`" if near else one_of(known, value, f"{self.prog} --help")
        raise argparse.ArgumentError(action, f"there is no `{value}`: write {advice}")


class _Version(argparse.Action):
    """Looks the version up only when it is asked for."""

    def __call__(self, parser: argparse.ArgumentParser, *_: object) -> None:
        from importlib.metadata import version

        show(f"wellstrung {version('wellstrung')}")
        parser.exit()


def _path(text: str) -> Path:
    """A file or a folder; an empty name, as of an unset variable, would be the current folder."""
    if not text:
        raise argparse.ArgumentTypeError("the name is empty: name a file, or `.` for this folder")
    return Path(text)


def parser() -> argparse.ArgumentParser:
    """The parser of the command line; `command` names the module that runs it."""
    whole = _Parser(
        prog="wellstrung",
        description="Checks the written plan of a beaded piece and shows what will not work.",
        epilog=EXIT_CODES,
    )
    whole.add_argument("--version", action=_Version, nargs=0, help="show the version and stop")
    commands = whole.add_subparsers(
        title="commands", required=True, metavar="COMMAND", dest="command"
    )

    start = commands.add_parser("start", help="answer questions in trade words, get a plan")
    start.add_argument(
        "--out", type=_path, metavar="FILE", help="the plan to write; by default named by its title"
    )
    start.add_argument(
        "--answers",
        type=_path,
        metavar="FILE",
        help="take the answers from a file, `piece: necklace`",
    )
    start.add_argument("--force", action="store_true", help="write over a file that is there")

    check = commands.add_parser("check", help="check plans: files, or folders of them")
    check.add_argument(
        "--as",
        dest="form",
        default="text",
        help="text (the default), json, jsonl, sarif, or html with --out",
    )
    check.add_argument(
        "--out",
        type=_path,
        metavar="DIR",
        help="the folder for html pages: one for the class, one for each plan",
    )
    check.add_argument(
        "--brief", action="store_true", help="one line a remark: file, line, level and sentence"
    )
    check.add_argument(
        "--workings", action="store_true", help="show the arithmetic of every remark"
    )
    check.add_argument(
        "--trace", action="store_true", help="show where in the code a failed rule stopped"
    )
    check.add_argument(
        "--watch", action="store_true", help="check again at each save, as text, until ctrl-C"
    )
    check.add_argument(
        "--workers",
        type=_processes,
        metavar="N",
        help="check with so many processes; by default one, or several where there are many plans",
    )
    check.add_argument("--strict", action="store_true", help="exit 1 on warnings too")

    sheet = commands.add_parser("sheet", help="one page about a plan, to print and hand back")
    sheet.add_argument(
        "--out", type=_path, metavar="FILE", help="the file to write; by default PLAN.html, here"
    )

    sheet.add_argument(
        "--steps", action="store_true", help="the work in numbered steps in words, for a student"
    )
    sheet.add_argument(
        "--slip", action="store_true", help="the slip to sign when a piece comes in for repair"
    )

    picture = commands.add_parser("picture", help="the piece drawn, as an .svg or .png file")
    picture.add_argument(
        "--out", type=_path, metavar="FILE", required=True, help="the file, piece.svg or piece.png"
    )
    size = picture.add_mutually_exclusive_group()
    size.add_argument(
        "--width", metavar="WIDTH", help="not life-size but so wide, `12cm` or `800px`"
    )
    size.add_argument(
        "--fit", choices=("A4", "A5", "letter"), help="as large as the sheet between its margins"
    )
    how = picture.add_mutually_exclusive_group()
    how.add_argument("--worn", action="store_true", help="curved as it is worn, not straight")
    how.add_argument(
        "--marks", action="store_true", help="with names, a ruler, and the numbers of the remarks"
    )

    mend = commands.add_parser("mend", help="write the remedies into a plan, those you choose")
    which = mend.add_mutually_exclusive_group()
    which.add_argument(
        "--all",
        action="store_true",
        help="all that can be written, without asking, until none is left",
    )
    which.add_argument(
        "--only",
        nargs="+",
        metavar="WHICH",
        help="only these, by number as `check` gives them or by the name of the check",
    )

    supplies = commands.add_parser("supplies", help="what to buy for plans, or a class of makers")
    _forms(supplies, "text", "json", "csv")
    supplies.add_argument(
        "--nothing-on-hand",
        action="store_true",
        help="ignore what is on hand: list all that the pieces take",
    )

    kit = commands.add_parser("kit", help="what one maker is given, in bags as the steps call them")
    _forms(kit, "text", "json", "html")
    kit.add_argument(
        "--out", type=_path, metavar="DIR", help="the folder for html: list, labels, class notice"
    )
    kit.add_argument(
        "--up-to", metavar="LENGTH", help="enough for every size up to this one, as 50cm"
    )
    kit.add_argument(
        "--new-stock",
        type=_path,
        metavar="FILE",
        help="write the stock list (CSV) anew, with what the kits leave",
    )

    cuts = commands.add_parser("cuts", help="what to cut, from which length, at which link")
    _forms(cuts, "text", "json")

    sizes = commands.add_parser("sizes", help="one plan over a range of sizes: what changes")
    sizes.add_argument("--from", dest="first", metavar="LENGTH", help="the smallest, as 40cm")
    sizes.add_argument("--to", dest="last", metavar="LENGTH", help="the largest, as 50cm")
    sizes.add_argument("--step", metavar="LENGTH", help="from one size to the next, as 2cm")
    _forms(sizes, "text", "json")

    rules = commands.add_parser("rules", help="what is checked, why, and from which sources")
    tables = commands.add_parser("tables", help="every reference value, with grade and source")
    bench = commands.add_parser("bench", help="every setting there is, and who uses it")
    bench.add_argument(
        "file",
        nargs="?",
        type=_path,
        metavar="FILE",
        help="a plan, a bench file or a folder: shows what its bench sets",
    )
    _forms(bench, "text", "json")
    schema = commands.add_parser("schema", help="the JSON Schema of what you write, or its page")
    schema.add_argument("of", choices=("plan", "bench", "drawer", "language"), help="of which file")
    new = commands.add_parser("new", help="the first file of a rule, stitch or kind of your own")
    new.add_argument("what", choices=("rule", "stitch", "kind"), help="what it brings")
    new.add_argument("name", metavar="NAME", help="as plans and reports name it")
    completion = commands.add_parser("completion", help="completion of commands for your shell")
    completion.add_argument("shell", choices=("bash", "zsh", "fish", "tcsh"), help="which shell")
    for command in (rules, tables):
        command.add_argument("names", nargs="*", metavar="NAME")
        _forms(command, "text", "json")

    for command in (check, sheet, kit):
        command.add_argument("--large", action="store_true", help="pages in large type, 14 pt")
    for command in (check, sheet):
        command.add_argument(
            "--full", action="store_true", help="pages with every size, fit, and working, too"
        )
    for command in (check, sheet, picture, kit, new):
        command.add_argument(
            "--force", action="store_true", help="write over files that it did not write"
        )
    for command in (supplies, kit, cuts):
        command.add_argument(
            "--makers", type=_makers, default=1, metavar="N", help="how many make each plan"
        )
    for command in (check, sheet):
        command.add_argument(
            "--since",
            type=_path,
            metavar="OLD",
            help="the earlier plan, or the folder of the earlier plans: what was mended since",
        )
    for command in (check, supplies, cuts):
        command.add_argument("plans", nargs="+", type=_path, metavar="PLAN")
    for command in (sheet, picture, mend, kit, sizes):
        command.add_argument("plans", nargs=1, type=_path, metavar="PLAN")
    for command in (check, sheet, picture, mend, supplies, kit, cuts, sizes, start):
        command.add_argument(
            "--bench",
            type=_path,
            metavar="FILE",
            help="your settings, instead of the bench.yaml beside a plan or in a folder above it",
        )
    for command in (check, sheet, picture, mend, supplies, kit, cuts, sizes):
        command.add_argument(
            "--drawer",
            type=_path,
            metavar="FILE",
            help="your beads, parts and stock (YAML or CSV), not the drawer that a plan names",
        )
    for command in (check, sheet, picture, mend, supplies, kit, cuts, sizes, start, rules, bench):
        command.add_argument(
            "--rules",
            dest="rule_files",
            action="append",
            type=_path,
            default=[],
            metavar="FILE",
            help="a Python file with rules of your own; its code is run",
        )
    return whole


def commands_of(
    whole: argparse.ArgumentParser,
) -> argparse._SubParsersAction[argparse.ArgumentParser]:
    """The commands of a parser."""
    (found,) = (one for one in whole._actions if isinstance(one, argparse._SubParsersAction))
    return found


def add_brought(whole: argparse.ArgumentParser, brought: Mapping[str, Command]) -> None:
    """Add the commands of plugins; raises HostError for one with the name of one of ours."""
    ours = commands_of(whole)
    for name, command in brought.items():
        if name in ours.choices:
            raise HostError(f"a plugin brings a command `{name}`, which is one of ours: rename it")
        command.options(ours.add_parser(name, help=command.help))


def _forms(command: argparse.ArgumentParser, *forms: str) -> None:
    command.add_argument(
        "--as", dest="form", choices=forms, default=forms[0], help=f"{forms[0]} is the default"
    )


def _processes(text: str) -> int:
    if not (text.isdecimal() and text.isascii() and 1 <= int(text[:9]) <= _MOST_PROCESSES):
        says = f"`{text}` is not a number of processes: write one from 1 to {_MOST_PROCESSES}"
        raise argparse.ArgumentTypeError(says)
    return int(text)


def _makers(text: str) -> int:
    if not (text.isdecimal() and text.isascii() and 1 <= int(text[:9]) <= _MOST_MAKERS):
        raise argparse.ArgumentTypeError(f"`{text}` is not a number of makers: write one as 12")
    return int(text)
