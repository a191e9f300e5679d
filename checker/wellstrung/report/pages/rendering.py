"""Pages from templates: what they can show, and the style that each page carries.

Jinja2 escapes whatever a plan says; drawings come from ElementTree, which escapes by itself.
"""

from __future__ import annotations

import sys
from contextlib import suppress
from functools import cache
from importlib import resources
from importlib.util import cache_from_source
from pathlib import Path
from typing import Any

from jinja2 import Environment, PackageLoader, StrictUndefined, pass_context
from jinja2.bccache import Bucket, FileSystemBytecodeCache
from jinja2.runtime import Context
from markupsafe import Markup

from wellstrung.common import units
from wellstrung.common.wording import visible
from wellstrung.judging.result import PlanResult, Result
from wellstrung.quantity.value import Quantity
from wellstrung.quantity.working import number
from wellstrung.report.checks import answers, says_all, to_fix, together
from wellstrung.report.pages import both_units
from wellstrung.report.pages.file_names import short_names, shortened
from wellstrung.report.pages.work_order import days
from wellstrung.report.terminal import counted
from wellstrung.rulebook.wording import about


def render(template: str, **values: Any) -> str:
    """A page of a template, with these values and its style."""
    result = values.get("result")
    plans = result.plans if isinstance(result, Result) else [result] if result is not None else ()
    return (
        environment()
        .get_template(template)
        .render(style=Markup(_style()), files=short_names(plans), **values)
    )


@pass_context
def _shown(context: Context, value: Any) -> Any:
    """What stands on the page: no sign that hides, and of a file no more than its name."""
    if not isinstance(value, str):
        return value
    return type(value)(shortened(visible(value), context.get("files", {})))


class _Compiled(FileSystemBytecodeCache):
    """Templates compiled once, kept where Python keeps compiled modules, if that can be written."""

    def load_bytecode(self, bucket: Bucket) -> None:
        """Read a compiled template, if there is one."""
        with suppress(OSError):
            super().load_bytecode(bucket)

    def dump_bytecode(self, bucket: Bucket) -> None:
        """Write a compiled template."""
        with suppress(OSError):
            Path(self.directory).mkdir(parents=True, exist_ok=True)
            super().dump_bytecode(bucket)


@cache
def environment() -> Environment:
    """What turns the templates into pages."""
    kept = str(Path(cache_from_source(__file__)).parent)
    environment = Environment(
        loader=PackageLoader("wellstrung.report"),
        bytecode_cache=None if sys.dont_write_bytecode else _Compiled(kept, "%s.template"),
        autoescape=True,
        trim_blocks=True,
        lstrip_blocks=True,
        undefined=StrictUndefined,
        finalize=_shown,
    )
    environment.filters |= {
        "both_units": both_units.pieces,
        "plain": both_units.plain,
        "inches": both_units.inches,
        "number": number,
        "counted": counted,
        "answers": answers,
        "says_all": says_all,
        "together": together,
        "to_fix": to_fix,
        "days": days,
        "spare": _spare,
        "at_least": _at_least,
        "svg": lambda figure: Markup(figure.svg + figure.narrow),
        "sentence": _sentence,
        "css_string": _css_string,
        "capital": lambda text: text[:1].upper() + text[1:],
    }
    return environment


@cache
def _style() -> str:
    """The style of the pages and that of every kind of drawing."""
    folders = (
        resources.files("wellstrung.report") / "templates",
        resources.files("wellstrung.drawing"),
    )
    sheets = (
        entry
        for home in folders
        for entry in sorted(home.iterdir(), key=lambda entry: entry.name)
        if entry.name.endswith(".css")
    )
    return "\n".join(entry.read_text(encoding="utf-8") for entry in sheets)


def _at_least(margin: Quantity) -> str:
    """What a check leaves at its likely least."""
    low = margin.likely.low
    least = _sized(low, margin.unit)
    if margin.unit == "N":
        least = f"{units.hanging(low, 'down')} hanging ({least})"
    return f"{least} or more to spare"


def _spare(margin: Quantity) -> str:
    """What a check leaves, at its middle and at its likely least."""
    unit = margin.unit
    if unit == "N":
        return f"{about(margin)} to spare"
    middle, least = _sized(margin.middle, unit), _sized(margin.likely.low, unit)
    said = f"{middle} to spare"
    return said if least == middle else f"{said}, at least {least} likely"


def _sized(value: float, unit: str) -> str:
    """A value with its unit; metres of thread are not said in mm."""
    return units.by_length(value) if unit == "mm" and value >= 1000 else f"{number(value)} {unit}"


#: what each outcome means to whoever made the plan
_MEANS = {
    "not checked yet": "the plan cannot be read as it is",
    "not makeable": "it cannot be made as written",
    "not fully checked": "a check could not be made",
    "no error found": "too much is open to say that it can be made",
    "nothing wrong found": "too much is open to say that it can be made",
    "makeable with warnings": "it can be made, and something may go wrong",
    "makeable": "it can be made as written",
}


def _sentence(plan: PlanResult) -> str:
    """The verdict in a sentence, with how many remarks and checks it rests on."""
    found = [
        counted(plan.count(level), level) for level in ("error", "warning") if plan.count(level)
    ]
    if not plan.readable:
        return f"{_MEANS[plan.outcome]}: {counted(len(plan.remarks), 'slip')} to put right."
    found += ["its length not checked"] if plan.length_waits else []
    held = f"{counted(len(plan.held), 'check')} passed, {len(plan.unjudged) or 'none'} open"
    return f"{_MEANS[plan.outcome]}: {', '.join([*found, held])}."


def _css_string(text: str) -> Markup:
    """Text as a string of a style sheet, which cannot end it, nor the style."""
    plain = (sign if sign.isalnum() or sign == " " else f"\\{ord(sign):x} " for sign in text)
    return Markup(f'"{"".join(plain)}"')
