"""Report writers, one module a writer, all fed the same results."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from wellstrung.judging.result import PlanResult, Result, Summary
from wellstrung.report.writer import Options, PlanByPlan, Writer


def _text_plan(plan: PlanResult, options: Options) -> str:
    from wellstrung.report.text import each

    return each(plan, options)


def _text(plans: Iterable[tuple[str, Summary]], options: Options) -> Iterable[str]:
    from wellstrung.report.text import whole

    return whole(plans, options)


def _json_plan(plan: PlanResult, options: Options) -> str:
    from wellstrung.report.json import plan_entry

    return plan_entry(plan, ascii_only=options.ascii_only)


def _json(plans: Iterable[tuple[str, Summary]], options: Options) -> Iterable[str]:
    from wellstrung.report.json import whole

    return whole(plans, ascii_only=options.ascii_only, compared=options.compared)


def _json_line(plan: PlanResult, options: Options) -> str:
    from wellstrung.report.json import plan_line

    return plan_line(plan, ascii_only=options.ascii_only)


def _json_lines(plans: Iterable[tuple[str, Summary]], options: Options) -> Iterable[str]:
    return (line for line, _ in plans)


def _sarif(result: Result, options: Options) -> str:
    from wellstrung.report.sarif import write

    return write(result, options)


def _pages(result: Result, options: Options) -> Mapping[str, str]:
    from wellstrung.judging.checker import Checker
    from wellstrung.report.pages import folder

    trying = Checker(options.installed) if options.installed is not None else None
    return folder(result, trying, options)


WRITERS = (
    Writer("text", by_plan=PlanByPlan(_text_plan, _text), since=True),
    Writer("json", quantities=True, by_plan=PlanByPlan(_json_plan, _json), since=True),
    Writer("jsonl", quantities=True, by_plan=PlanByPlan(_json_line, _json_lines), since=True),
    Writer("sarif", _sarif),
    Writer("html", quantities=True, pages=_pages, since=True),
)
