"""`check`: the remarks on plans, by any of the report writers."""

from __future__ import annotations

import argparse

from msgspec.structs import replace

from wellstrung.commands.by_plan import plan_by_plan
from wellstrung.commands.checked import checked, exit_code, inputs
from wellstrung.commands.output import BROKEN, looks, note, save, show, unknown
from wellstrung.commands.progress import doing
from wellstrung.common.wording import either
from wellstrung.judging.checker import Checker
from wellstrung.plugins import host as hosts


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
        totals = plan_by_plan(writer.by_plan, options, checker)
        return exit_code(totals, strict=options.strict)
    result = checked(options, checker)
    if options.since is not None:
        from wellstrung.commands.since import since_last_time  # few runs compare

        result = since_last_time(result, options, checker)
    look = replace(looks(options), installed=host)
    doing("writing the report")
    if writer.pages is not None:
        pages = {options.out / name: page for name, page in writer.pages(result, look).items()}
        save(pages, inputs(options, result), force=options.force)
    elif writer.write is not None:
        show(writer.write(result, look))
    return exit_code(result, strict=options.strict)
