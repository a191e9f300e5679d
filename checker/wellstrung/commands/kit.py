"""`kit`: what one maker is given in lettered bags, what it takes of the stock, what it costs."""

from __future__ import annotations

import argparse
from collections.abc import Sequence
from pathlib import Path

from wellstrung.commands.checked import checked_alone, exit_code, exit_code_of_list, inputs
from wellstrung.commands.output import BROKEN, looks, note, protect, save, show, write_all
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import PlanResult, Result
from wellstrung.lists import costs, stock
from wellstrung.lists.kit import kit
from wellstrung.lists.stock import Stocked
from wellstrung.plugins import host as hosts
from wellstrung.plugins.error import HostError
from wellstrung.reading import drawer
from wellstrung.report import kit_list
from wellstrung.report.kit_list import ForMakers
from wellstrung.what_if import size_range, stock_left
from wellstrung.what_if.work_found import with_work


def run(options: argparse.Namespace) -> int:
    """Check the plan and list its kit, or write its pages; the exit code."""
    if (options.form == "html") != (options.out is not None):
        note("only `--as html` writes pages, and takes --out DIR, the folder for them")
        return BROKEN
    checker = Checker(hosts.load(options.rule_files), keep=True, quantities=True)
    plan, result = checked_alone(options, checker)
    if plan.ask is None:
        note(f"{plan.file} cannot be read yet: `wellstrung check` says why")
        return exit_code(result)
    made = _grown(plan, options.up_to, checker) if options.up_to is not None else plan
    shown = with_work(made, checker) or made
    assert shown.ask is not None
    ask, makers = shown.ask.quantities, options.makers
    one = kit(ask)
    taken = stock.taken(ask, one, makers)
    found = ForMakers(
        made,
        makers,
        one,
        tuple(taken),
        costs.of_piece(ask),
        costs.of_class(ask),
        tuple(stock.uncounted(ask)),
    )
    read = inputs(options, result)
    if options.form == "html":
        from wellstrung.report.pages.kit import pages  # lists need no templates

        written = pages(found, shown, looks(options))
        files = {options.out / name: page for name, page in written.items()}
        save(files, read, force=options.force)
        read += files
    elif options.form == "json":
        show(kit_list.as_json(found))
    else:
        show(kit_list.write(found, looks(options)))
    if options.new_stock is not None:
        _write_stock(options.new_stock, plan, taken, found.uncounted, read, force=options.force)
    return exit_code_of_list(Result((made,)))


def _grown(plan: PlanResult, size: str, checker: Checker) -> PlanResult:
    """The plan in the largest size that its kit serves."""
    try:
        made = size_range.grown(plan, size, checker)
    except size_range.NoSizes as why:
        raise HostError(str(why)) from why
    if made.ask is None:
        raise HostError(f"{plan.file} cannot be made in {size}")
    return made


def _write_stock(
    out: Path,
    plan: PlanResult,
    taken: Sequence[Stocked],
    by_hand: Sequence[str],
    read: Sequence[Path],
    *,
    force: bool,
) -> None:
    """Write the stock list with what is left; over the list itself only with `--force`.

    No other file that was `read` or written for the kit is overwritten.
    """
    text = plan.beside.get(plan.drawer or "", "")
    if not plan.drawer or not drawer.is_list(plan.drawer):
        raise HostError("only a drawer that is a list, as `drawer: stock.csv`, is written anew")
    protect([one for one in read if one != Path(plan.drawer)], out, "--new-stock")
    if out.exists() and not force:
        raise HostError(f"{out} is there already: take --force to write over it")
    new = stock_left.written(text, plan.drawer, taken)
    write_all({out: new.text.encode()})
    note(f"wrote {out}, the stock that is left")
    for says in (*new.by_hand, *by_hand):
        note(f"write this by hand: {says}")
