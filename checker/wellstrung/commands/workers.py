"""Many plans checked and written by several processes: in order, and as one process writes them."""

from __future__ import annotations

import argparse
import signal
from collections.abc import Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from concurrent.futures.process import BrokenProcessPool
from itertools import islice
from multiprocessing import get_context
from pathlib import Path

from wellstrung.commands.checked import checking, collect_new_garbage
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import Summary
from wellstrung.judging.summary import summary
from wellstrung.plugins import host as hosts
from wellstrung.plugins.error import HostError
from wellstrung.report.writer import Options, PlanByPlan

Written = tuple[str, Summary]
#: So many plans go to a process at a time; so many such lots wait for each.
_LOT, _LOTS_AHEAD = 10, 4


def by_workers(
    files: Sequence[Path], options: argparse.Namespace, look: Options, count: int
) -> Iterator[Written]:
    """What is written of each plan, with its summary, in the order of the files.

    The processes are begun afresh, as on every system they can be. They do not hear ctrl-C, which
    this process answers by letting them end what they are at.
    """
    lots = (files[at : at + _LOT] for at in range(0, len(files), _LOT))
    heard = signal.signal(signal.SIGINT, signal.SIG_IGN)  # which they take over
    pool = ProcessPoolExecutor(
        count, get_context("spawn"), initializer=_begin, initargs=(options, look)
    )
    try:
        waiting = [pool.submit(_of_lot, lot) for lot in islice(lots, count * _LOTS_AHEAD)]
        signal.signal(signal.SIGINT, heard)
        while waiting:
            yield from waiting.pop(0).result()
            waiting += [pool.submit(_of_lot, lot) for lot in islice(lots, 1)]
    except BrokenProcessPool:
        says = "a process that checked plans ended before it was done: take --workers 1"
        raise HostError(says) from None
    finally:
        signal.signal(signal.SIGINT, heard)
        pool.shutdown(cancel_futures=True)


class _Worker:
    """What a process checks and writes plans with."""

    def __init__(self, options: argparse.Namespace, look: Options) -> None:
        host = hosts.load(options.rule_files)
        writer = host.writers[options.form]
        assert writer.by_plan is not None
        self._writer: PlanByPlan = writer.by_plan
        self._look = look
        checker = Checker(host, quantities=writer.quantities)
        self._check = checking(options, checker, alone=False, say=None)

    def written(self, file: Path) -> Written:
        """What is written of a plan, and what is kept of it."""
        result = self._check(file)
        text = self._writer.each(result, self._look)
        result.let_go()
        return text, summary(result)


_workers: list[_Worker] = []


def _begin(options: argparse.Namespace, look: Options) -> None:
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    _workers.append(_Worker(options, look))
    collect_new_garbage()


def _of_lot(files: Sequence[Path]) -> list[Written]:
    return [_workers[0].written(file) for file in files]
