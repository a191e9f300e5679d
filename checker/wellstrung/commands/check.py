"""`check`: the remarks on plans, by any of the report writers."""

from __future__ import annotations

import argparse
from collections.abc import Iterable, Iterator

from msgspec.structs import replace

from wellstrung.commands.checked import checked, exit_code, inputs, one_by_one, plan_files
from wellstrung.commands.output import BROKEN, looks, note, save, show, unknown
from wellstrung.commands.since import since_last_time
from wellstrung.common.wording import either
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import PlanResult, Result
from wellstrung.judging.summary import Summary, Totals, summary
from wellstrung.plugins import host as hosts
from wellstrung.report.writer import PlanByPlan


def run(options: argparse.Namespace) -> int:
    """Check the plans and write the report; the exit code."""
    host = hosts.load(options.rule_files)
    refused = unknown("report", [options.form], host.writers)
    if refused is not None:
        return refused
    writer = host.writers[options.form]
    if (writer.pages is None) != (options.out is None):
        with_pages = " and ".join(f"--as {one.name}" for one in host.writers.values() if one.pages)
        note(f"only {with_pages} writes pages, and takes --out DIR, the folder for them")
        return BROKEN
    if options.since is not None and not writer.since:
        taking = [f"`--as {one.name}`" for one in host.writers.values() if one.since]
        note(f"`--as {options.form}` shows no earlier plan: `--since` goes with {either(taking)}")
        return BROKEN
    checker = Checker(host, quantities=writer.quantities or options.since is not None)
    if options.watch:
        if options.form != "text":
            note(f"`--watch` shows each round as text: leave out `--as {options.form}`")
            return BROKEN
        from wellstrung.commands.watching import Watch  # seldom asked for

        return Watch(options, checker).run()
    if writer.by_plan is not None:
        totals = _plan_by_plan(writer.by_plan, options, checker)
        return exit_code(totals, strict=options.strict)
    result = since_last_time(checked(options, checker), options, checker)
    look = replace(looks(options), installed=host)
    if writer.pages is not None:
        pages = {options.out / name: page for name, page in writer.pages(result, look).items()}
        save(pages, inputs(options, result), force=options.force)
    elif writer.write is not None:
        show(writer.write(result, look))
    return exit_code(result, strict=options.strict)


def _plan_by_plan(writer: PlanByPlan, options: argparse.Namespace, checker: Checker) -> Totals:
    """Write each plan as soon as it is checked; what they total.

    Plans that are compared with earlier ones are all checked before: which follows which may depend
    on the others.
    """
    files = plan_files(options)
    look = replace(looks(options), several=len(files) > 1)
    results: Iterable[PlanResult] = one_by_one(files, options, checker)
    if options.since is not None:
        whole = since_last_time(Result(tuple(results)), options, checker)
        look, results = replace(look, compared=whole), whole.plans
    kept: list[Summary] = []

    def written() -> Iterator[tuple[str, Summary]]:
        for result in results:
            kept.append(summary(result))
            yield writer.each(result, look), kept[-1]
            result.let_go()

    for piece in writer.whole(written(), look):
        show(piece)
    return Totals(kept)
