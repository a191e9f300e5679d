"""Pages from templates: what they can show, and the style that each page carries.

Jinja2 escapes whatever a plan says; drawings come from ElementTree, which escapes by itself.
"""

from __future__ import annotations

from functools import cache
from importlib import resources
from typing import Any

from jinja2 import Environment, PackageLoader, StrictUndefined
from markupsafe import Markup

from wellstrung.common.wording import visible
from wellstrung.quantity.value import Quantity
from wellstrung.quantity.working import number
from wellstrung.report.checks import answers, counts, says_all, together, totals
from wellstrung.report.pages import both_units
from wellstrung.report.pages.work_order import days
from wellstrung.report.terminal import counted


def render(template: str, **values: Any) -> str:
    """A page of a template, with these values and its style."""
    return _environment().get_template(template).render(style=Markup(_style()), **values)


@cache
def _environment() -> Environment:
    environment = Environment(
        loader=PackageLoader("wellstrung.report"),
        autoescape=True,
        trim_blocks=True,
        lstrip_blocks=True,
        undefined=StrictUndefined,
        finalize=lambda value: type(value)(visible(value)) if isinstance(value, str) else value,
    )
    environment.filters |= {
        "both_units": both_units.pieces,
        "plain": both_units.plain,
        "inches": both_units.inches,
        "number": number,
        "counted": counted,
        "counts": counts,
        "answers": answers,
        "says_all": says_all,
        "together": together,
        "totals": totals,
        "days": days,
        "spare": _spare,
        "svg": lambda figure: Markup(figure.svg),
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


def _spare(margin: Quantity) -> str:
    """What a check leaves, at its middle and at its likely least."""
    unit = margin.unit
    said = f"{number(margin.middle)} {unit} to spare"
    least = number(margin.likely.low)
    return said if least == number(margin.middle) else f"{said}, at least {least} {unit} likely"
