"""The rule book, for people and as JSON."""

from __future__ import annotations

import json
from typing import Any

from wellstrung.report.styled import Text
from wellstrung.report.terminal import STYLES, Page
from wellstrung.report.writer import Options
from wellstrung.rulebook import Limit, Rule
from wellstrung.rulebook.installed import Installed


def write(installed: Installed, names: list[str], options: Options) -> str:
    """All rules, one line each by family, or the named ones in full."""
    page = Page(options)
    if names:
        for name in names:
            _whole(page, installed.rules[name], installed.owners[name])
    else:
        for family in sorted({rule.family for rule in installed.rules.values()}):
            page.line(family, style="bold")
            for rule in installed.rules.values():
                if rule.family == family:
                    page.line(_head(rule), 2)
                    page.hanging(Text(rule.title), 6, 4)
            page.line()
    return page.text()


def as_json(installed: Installed, names: list[str]) -> str:
    """The same as JSON: a list of rules."""
    chosen = [installed.rules[name] for name in names] or list(installed.rules.values())
    return json.dumps(
        [
            {
                "name": rule.name,
                "family": rule.family,
                "level": rule.level,
                "owner": installed.owners[rule.name],
                "title": rule.title,
                "why": rule.why,
                "bad": rule.bad,
                "good": rule.good,
                "yields_to": list(rule.yields_to),
                "subject": rule.looks_at,
                "judged_over": rule.over,
                "limits": [_limit(limit) for limit in rule.limits],
                "sources": list(rule.sources),
            }
            for rule in chosen
        ],
        indent=2,
        ensure_ascii=False,
    )


def _limit(limit: Limit) -> dict[str, Any]:
    choice = limit.choice._asdict() if limit.choice is not None else None
    return {**limit._asdict(), "choice": choice}


def _whole(page: Page, rule: Rule, owner: str) -> None:
    page.line(_head(rule, style="bold"))
    page.line(rule.title, 2)
    page.line()
    page.pair("looks at", rule.looks_at, 2)
    page.pair("why", rule.why, 2)
    page.pair("wrong", rule.bad, 2)
    page.pair("right", rule.good, 2)
    page.pair("judged", f"over the {rule.over} range", 2)
    page.pair("yields to", ", ".join(rule.yields_to), 2)
    limits = (f"{one.name}: {_value(one)}, {one.reason}" for one in rule.limits)
    page.several("limits", limits, 2)
    page.several("sources", rule.sources, 2)
    page.pair("from", owner, 2)
    page.line()


def _head(rule: Rule, style: str = "") -> Text:
    return Text(rule.name, style=style).append(f"  {rule.level}", style=STYLES[rule.level])


def _value(limit: Limit) -> str:
    value = f"{limit.value:g} {limit.unit}".rstrip()
    if limit.choice is None or limit.choice.careful:
        return value
    return f"{value} ({limit.choice.low:g} to {limit.choice.high:g}: makers differ)"
