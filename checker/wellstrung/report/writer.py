"""What a report writer is, and the options of a report."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping

from msgspec import Struct

from wellstrung.judging.result import PlanResult, Result, Summary
from wellstrung.rulebook.installed import Installed


class Options(Struct, frozen=True):
    """The options of a report: `width` in columns; colour, workings and ASCII for the terminal.

    `brief` gives each remark a line. `trace` shows the way through the code to each internal error;
    `installed` holds the rules, for a report that describes them. `only` are the files of the plans
    whose remarks are shown; all if it is None. `large` and `full` are for pages: large type, and
    the workings behind each leaf. `compared` is the whole result, where plans were compared with
    earlier ones. `several` says that there are other plans: what they share is said at the end.
    """

    width: int = 80
    colour: bool = False
    workings: bool = False
    brief: bool = False
    ascii_only: bool = False
    trace: bool = False
    installed: Installed | None = None
    only: frozenset[str] | None = None
    large: bool = False
    full: bool = False
    compared: Result | None = None
    several: bool = False


class PlanByPlan(Struct, frozen=True):
    """A report that is written plan by plan, so that it takes no more memory for more plans.

    `each` writes one plan. `whole` puts what was written together with what a run keeps of each
    plan, and gives the report in pieces, each of whole lines, of which the last has no line end.
    """

    each: Callable[[PlanResult, Options], str]
    whole: Callable[[Iterable[tuple[str, Summary]], Options], Iterable[str]]


class Writer(Struct, frozen=True):
    """A report by name; `quantities` says that it prints every quantity of every plan.

    It is written whole (`write`) or plan by plan. One that makes several files gives them as
    `pages`, text by file name, to be put in a folder.
    `since` says that it shows what changed in a plan since an earlier one.
    """

    name: str
    write: Callable[[Result, Options], str] | None = None
    quantities: bool = False
    pages: Callable[[Result, Options], Mapping[str, str]] | None = None
    by_plan: PlanByPlan | None = None
    since: bool = False
