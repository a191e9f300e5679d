"""`supplies`: what to buy for plans."""

from __future__ import annotations

import argparse

from wellstrung.commands.checked import checked, exit_code_of_list
from wellstrung.commands.output import looks, note, show, show_as_is
from wellstrung.commands.progress import doing
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import understood
from wellstrung.lists import shopping
from wellstrung.plugins import host as hosts
from wellstrung.report import supplies_data, supplies_list
from wellstrung.report.heading import lacking
from wellstrung.what_if import other_sizes, unfit


def run(options: argparse.Namespace) -> int:
    """Check the plans and list what they take; the exit code."""
    checker = Checker(hosts.load(options.rule_files), keep=True)
    result = checked(options, checker)
    plans, makers = result.plans, options.makers
    asked = understood(plans)
    lines = unfit.to_buy(plans, makers, on_hand=not options.nothing_on_hand)
    to_buy = {line.name for line in lines if line.short}
    doing("trying other sizes")
    tried = [(plan, other_sizes.found(plan, checker, to_buy)) for plan in plans]
    also = [(result.called(plan), size) for plan, sizes in tried for size in sizes.found]
    for plan, sizes in tried:
        if sizes.stopped:
            note(f"{result.called(plan)}: {sizes.note}")
    found = supplies_list.Supplies(
        plans, makers, tuple(lines), tuple(shopping.kits(asked)), tuple(also)
    )
    if options.form == "csv":
        show_as_is(supplies_data.as_csv(found))
        if lacks := lacking(plans):
            note(lacks)
    elif options.form == "json":
        show(supplies_data.as_json(found))
    else:
        show(supplies_list.write(found, looks(options)))
    return exit_code_of_list(result)
