"""`start`: asks for what a plan needs and writes the plan; or takes the answers from a file."""

from __future__ import annotations

import argparse
import re
import sys
from pathlib import Path

from wellstrung.commands.files import PLAN_ENDINGS, Benches
from wellstrung.commands.output import BROKEN, OK, answer, looks, note, save, show
from wellstrung.judging.checker import Checker
from wellstrung.plugins import host as hosts
from wellstrung.start.answers_file import answered
from wellstrung.start.dialogue import Dialogue
from wellstrung.start.talk import Quit, Talk
from wellstrung.start.trial import Trial, Tried

_STOPPED = "stopped: nothing was written"


def run(options: argparse.Namespace) -> int:
    """Ask, and write the plan; the exit code."""
    host = hosts.load(options.rule_files)
    bench = Benches(host, options.bench).of(options.out or Path("plan.yaml"))
    dialogue = Dialogue(Trial(Checker(host, bench=bench, keep=True, trials=0)))
    try:
        if options.answers is not None:
            refused = answered(dialogue, options.answers)
            if refused:
                note("\n  ".join((f"{options.answers} cannot be used:", *refused)))
                return BROKEN
            return _written(dialogue.tried(), options, asking=False)
        tried = Talk(dialogue, _line, show, looks(options).width).run()
        return _written(tried, options, asking=True)
    except Quit:
        note(_STOPPED)
        return OK
    except EOFError:
        show("")
        note("the input ended: nothing was written")
        return BROKEN
    except KeyboardInterrupt:
        show("")
        note(_STOPPED)
        return BROKEN


def _line(prompt: str) -> str:
    """A line that is typed; one that is piped in is shown, as a typed one is."""
    given = answer(prompt)
    if given is None:
        raise EOFError
    if not sys.stdin.isatty():
        show(given)
    return given


def _written(tried: Tried, options: argparse.Namespace, *, asking: bool) -> int:
    """Write the plan, never over another file unasked."""
    out = options.out or Path(_file_name(str(tried.plan["title"])))
    while out.exists() and not options.force:
        if not asking:
            note(f"{out} is there already: give another --out, or take --force")
            return BROKEN
        given = _line(f"{out} is there already. Another name, or `over` to write over it > ")
        if given == "over":
            break
        if given:
            out = Path(given if given.endswith(PLAN_ENDINGS) else f"{given}.yaml")
    read = [one for one in (options.answers, options.bench, *options.rule_files) if one]
    save({out: tried.text}, read, force=True)
    show(f"check it with: wellstrung check {out}")
    return OK


def _file_name(title: str) -> str:
    """A name of a file that any system takes.

    >>> _file_name("Spiral rope, necklace")
    'spiral_rope_necklace.yaml'
    """
    return f"{re.sub(r'[^a-z0-9]+', '_', title.casefold()).strip('_') or 'plan'}.yaml"
